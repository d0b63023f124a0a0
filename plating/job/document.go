package job

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"example.com/laydown/plating"
	"example.com/laydown/plating/price"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
	"example.com/laydown/units/working"
)

// A Document is a sheet in words, as it hangs at the bench: text, page and JSON are made
// from it, so that each says the same.
type Document struct {
	Title    string    `json:"title"`
	Sections []Section `json:"sections"`
}

// A Section is one part of a document: a tank, the price.
type Section struct {
	Heading string      `json:"heading"`
	Tank    bool        `json:"tank"`  // one tank: it is not cut by the end of a page
	Small   bool        `json:"small"` // a tank without figures to set: it is ticked as a whole
	Money   bool        `json:"money"` // values are amounts of money, one below the other
	Items   []SheetItem `json:"items"`
}

// An SheetItem is one line of a section: a setting with its reason (What, Value, Text), or a
// sentence (Text).
type SheetItem struct {
	What  string `json:"what"`
	Value string `json:"value"`
	Text  string `json:"text"`
	Mark  string `json:"mark"`  // STOP, WARNING, ! for a caution, i for a remark
	Tick  bool   `json:"tick"`  // has a box to tick
	Blank bool   `json:"blank"` // leaves room to write what was read
	Sum   bool   `json:"sum"`   // a sum of money
}

// SheetOptions choose what a document holds.
type SheetOptions struct {
	Working bool   // every formula with its numbers and source
	Remark  string // stands under the title, as that the figures are invented
}

// A writer collects the items of a section.
type writer struct{ doc *Document }

func (w *writer) section(heading string) *Section {
	// The pointer holds until the next section is opened; each section is filled before that.
	w.doc.Sections = append(w.doc.Sections, Section{Heading: heading})
	return &w.doc.Sections[len(w.doc.Sections)-1]
}

func (s *Section) say(format string, args ...any) {
	s.Items = append(s.Items, SheetItem{Text: fmt.Sprintf(format, args...)})
}

func (s *Section) mark(mark, text string) {
	s.Items = append(s.Items, SheetItem{Mark: mark, Text: text})
}

func (s *Section) note(n plating.Note) { s.mark(markOf(n.Severity), n.Line()) }

// row is a setting with a box and room for a reading; check has a box alone; fact is a
// figure that nobody sets.
func (s *Section) row(what, value, why string) {
	s.Items = append(s.Items, SheetItem{What: what, Value: value, Text: why, Tick: true, Blank: true})
}

func (s *Section) check(what, value, why string) {
	s.Items = append(s.Items, SheetItem{What: what, Value: value, Text: why, Tick: true})
}

func (s *Section) fact(what, value, why string) {
	s.Items = append(s.Items, SheetItem{What: what, Value: value, Text: why})
}

func (s *Section) task(format string, args ...any) {
	s.Items = append(s.Items, SheetItem{Text: fmt.Sprintf(format, args...), Tick: true})
}

func markOf(s plating.Severity) string {
	return map[plating.Severity]string{plating.SeverityInfo: "i", plating.SeverityCaution: "!",
		plating.SeverityWarning: "WARNING", plating.SeverityStop: "STOP"}[s]
}

// Document puts the sheet into words.
//
// Errors: those of [Sheet.Working], of [price.Quote.Check] and of [price.Quote.Each].
func (s *Sheet) Document(o SheetOptions) (Document, error) {
	if s == nil {
		return Document{}, units.Missing("sheet", "one that Job.Sheet returned")
	}
	// The sheet is put into words once. Text, HTML page and JSON are three renderings of this
	// one document, so they cannot say different things, and a new layout needs no knowledge of
	// plating.
	//
	// The sections follow the work: reasons to stop first, then what comes in, what to mind, the
	// tanks in order, and what is done when the load is out.
	doc := Document{Title: orText(s.Name, "plating job")}
	w := &writer{&doc}
	if reasons := s.Reasons(); len(reasons) > 0 {
		stop := w.section("STOP")
		for _, text := range reasons {
			stop.mark("STOP", text)
		}
	}
	s.load(w, o)
	s.before(w)
	if s.Refused() {
		s.refused(w)
		return doc, nil
	}
	if s.Sequenced {
		s.order(w)
	} else {
		s.prepare(w)
	}
	for i := range s.Stops {
		s.stop(w, i)
	}
	s.afterwards(w)
	s.rinsed(w)
	s.upkeep(w)
	if err := s.quoted(w); err != nil {
		return doc, err
	}
	if o.Working {
		// The working stands last: whoever plates does not read it, whoever checks reads it alone.
		return doc, s.shown(w)
	}
	return doc, nil
}

// load tells what comes in.
func (s *Sheet) load(w *writer, o SheetOptions) {
	v := w.section("Load")
	if o.Remark != "" {
		v.say("%s", o.Remark)
	}
	v.say("base metal: %s", orText(s.Substrate, "not given"))
	for _, p := range s.Parts {
		v.fact(strconv.Itoa(p.Count)+" × "+orText(p.Name, "part"), figure(p.Area, units.SquareCentimetre, 3, 2), "each")
		if p.Masked > 0 {
			v.Items = append(v.Items, SheetItem{Tick: !s.Refused(), Text: "mask " + figure(p.Masked, units.SquareCentimetre,
				3, 2) + " on each before cleaning; it is not in the area above"})
		}
	}
	// What was done to a mesh changes the area, and with it all amps: it stands with the load.
	for i := range s.Job.Parts {
		if m := s.Job.Parts[i].Mesh; m != nil {
			for _, text := range m.mended {
				v.mark("i", "mended "+text)
			}
		}
	}
	v.fact("together", figure(s.Area, units.SquareCentimetre, 3, 1), "plated area of the load")
	if s.Refused() { // nobody is to start
		return
	}
	v.row("weigh", "", "before the first tank, dry")
	v.Items = append(v.Items, SheetItem{What: "date", Text: "and initials", Blank: true})
}

// before prints the cautions of everything that follows.
func (s *Sheet) before(w *writer) {
	v := w.section("Before you start")
	for _, c := range s.Cautions() {
		v.mark("!", c.Line())
	}
	for _, c := range s.Coats() {
		// Silence is no statement. A bath without named hazards is told to be one of which nothing
		// is known.
		if c.Layer.Bath.AllHazards() == 0 {
			v.mark("!", "Read the safety data sheets of the bath of "+c.Name+
				". The job names no hazards for it; that does not say that it has none.")
		}
	}
}

// refused prints what is left of a job that must not be run: the names of its tanks, and
// nothing to set.
func (s *Sheet) refused(w *writer) {
	v := w.section("Tanks as they stand")
	for i := range s.Stops {
		t := &s.Stops[i].Tank
		kind := t.Kind.String()
		if c := s.Stops[i].Coat; c != nil && !s.Sequenced {
			kind = c.Layer.Role.String()
		}
		text := fmt.Sprintf("%d. %s (%s)", i+1, t.Name, kind)
		if s.stopped(i) {
			text += ": STOP"
		}
		v.say("%s", text)
	}
	for _, n := range s.Beside() {
		v.mark(markOf(n.Severity), n.Text)
	}
	v.say("No amps, no minutes and no price are printed before this is mended.")
}

// stopped reports whether a reason to stop concerns a tank.
func (s *Sheet) stopped(i int) bool {
	for _, f := range s.Findings {
		if f.Severity == plating.SeverityStop && slices.Contains(f.Tanks, i) {
			return true
		}
	}
	c := s.Stops[i].Coat
	return c != nil && !s.Sequenced && slices.ContainsFunc(c.Notes, func(n plating.Note) bool {
		return n.Severity == plating.SeverityStop
	})
}

// order tells which practice the tanks follow, how far it may be trusted, how long it takes.
func (s *Sheet) order(w *writer) {
	v := w.section("Sequence")
	finish := "the coats of the job"
	if s.Job.Finish != sequence.FinishUnknown {
		finish = s.Job.Finish.String()
	}
	if p := &s.Practice; p.Title != "" {
		v.say("For %s to %s: %s (%s); its steps here are %s. When unsure: %s. [%s]", s.Base, finish,
			strings.TrimPrefix(p.Standard+", "+p.Title, ", "), p.Seen, p.Detail, p.Unsure, p.Source)
	}
	for _, why := range s.Practice.Reasons {
		v.say("Why: %s", why.String())
	}
	v.say("%s", s.trust())
	v.say("%s", s.atTheLine())
	v.say("%s", s.hydrogen())
	for _, f := range s.Findings {
		v.mark(markOf(f.Severity), f.Sentence())
	}
}

// prepare says in words what must be around the plating tanks of a job without a sequence.
func (s *Sheet) prepare(w *writer) {
	v := w.section("Prepare")
	v.task("Clean until water runs off without a break (dirt under a coat makes it peel). Rinse twice (what the first "+
		"rinse holds still carries over). Keep the parts wet from here to the last rinse. This sheet starts at the first "+
		"plating tank: activate %s by your own proven procedure. [common practice, no source]",
		orText(s.Substrate, "the base metal"))
	if strings.Contains(strings.ToLower(s.Substrate), "stainless") {
		v.say("Stainless steel carries a film that no coat holds on; activation takes it off and air or plain water " +
			"brings it back: do not dry, go to the strike by the shortest way, through a slightly acid rinse. [ASTMB254]")
	}
	v.say("%s", s.hydrogen())
}

// trust says how far the sheet may be trusted.
func (s *Sheet) trust() string {
	var weak []string
	for i := range s.Stops {
		t := &s.Stops[i].Tank
		// Water and air need no figures, so their tanks weaken nothing.
		if t.Confidence == origin.FromMemory && t.Water == "" && t.Kind != sequence.Dry {
			weak = append(weak, strconv.Itoa(t.Number))
		}
	}
	if len(weak) == 0 {
		return "Every tank's figures are the shop's own or published. A trial piece still tells more than a table."
	}
	return fmt.Sprintf("Figures from memory stand at tank %s: run one piece through, look and weigh, before the rest.",
		strings.Join(weak, ", "))
}

// atTheLine says how long the load keeps somebody at the line.
func (s *Sheet) atTheLine() string {
	line := fmt.Sprintf("At the line for about %s (%s to %s): immersion times", roughly(s.Line.Typical),
		roughly(s.Line.Low), roughly(s.Line.High))
	if p := s.Job.Price; p != nil && p.Handling > 0 {
		line += fmt.Sprintf(" and %s from tank to tank", roughly(p.Handling))
	}
	line += ", the rinses not counted."
	if s.Oven.Typical > 0 {
		line += fmt.Sprintf(" The oven takes %s to %s on top.", roughly(s.Oven.Low), roughly(s.Oven.High))
	}
	return line
}

// hydrogen says where most of it comes off and what air that asks for at least.
func (s *Sheet) hydrogen() string {
	g := s.Gas
	if g == nil || g.Flow.Hydrogen == 0 {
		return "No tank gives off hydrogen worth speaking of."
	}
	return fmt.Sprintf("Most hydrogen comes off at tank %d, up to %s. Were it mixed at once, %s of fresh air would "+
		"keep it under a quarter of the lower flammable limit; above a tank it is not: draw off there, several times as "+
		"much. [HydrogenPractice]",
		g.Tank+1, flow(g.Flow.Hydrogen), flow(g.Flow.Air))
}

// afterwards sums the metals and says what to check.
func (s *Sheet) afterwards(w *writer) {
	v := w.section("Afterwards")
	var mass units.Mass
	for _, m := range s.Metals {
		mass += m.Mass
		v.fact(orText(m.Metal, "metal not named"), micrometres(m.Thinnest),
			fmt.Sprintf("at the thinnest spot, %s on average, %s of metal", micrometres(m.Average), weight(m.FineMass)))
	}
	v.row("weigh", "",
		fmt.Sprintf("after the last tank, dry. The load should have gained %s, of all layers. That is the "+
			"average; only a gauge or a cut shows the thinnest spot", weight(mass)))
	v.row("gauge", "", "at the thinnest spot")
	for _, text := range s.Claim.Lines() {
		v.say("%s", text)
	}
	if text := s.unmetered(); text != "" {
		v.task("%s", text)
	}
}

// unmetered lists the charge of each coat whose bath does not have its own lines
// below. Charges of several baths are never added up: each is fed by its own.
func (s *Sheet) unmetered() string {
	var list []string
	for _, c := range s.Coats() {
		if !s.showsBaths() || !slices.ContainsFunc(s.Baths, func(a After) bool { return a.Bath == c.Name }) {
			list = append(list, c.Name+" "+figure(c.Result.Charge, units.AmpereMinute, 3, 2))
		}
	}
	if len(list) == 0 {
		return ""
	}
	return "Write down for the upkeep of the baths, each by itself: " + strings.Join(list, ", ") + "."
}

// quoted is the quote with what it depends on.
func (s *Sheet) quoted(w *writer) error {
	q := s.Quote
	if q == nil {
		if len(s.Notes) > 0 {
			v := w.section("Remarks")
			for _, n := range s.Notes {
				v.note(n)
			}
		}
		return nil
	}
	if err := q.Check(); err != nil {
		return err
	}
	for _, c := range s.Swings {
		if err := c.Check(); err != nil {
			return err
		}
	}
	v := w.section("Price")
	v.Money = true
	money := func(d decimal.Decimal) string { return d.StringFixed(q.Currency.Places) }
	sum := func(what, basis, amount string, total bool) {
		v.Items = append(v.Items, SheetItem{What: what, Text: basis, Value: amount, Sum: total})
	}
	for _, l := range q.Lines {
		// The net sum stands where the tax begins, so that the lines above it add up to it.
		if l.Kind == price.KindTax {
			sum("to pay before tax", "", money(q.Net), true)
		}
		if l.Amount.IsZero() && l.Basis == "" {
			continue
		}
		what := l.Kind.String()
		if l.Name != "" {
			what += ": " + l.Name
		}
		sum(what, l.Basis, money(l.Amount), false)
	}
	each, err := q.Each(q.Total)
	if err != nil {
		return err
	}
	of := "for " + counted(q.Pieces, "piece")
	if q.Pieces > 1 {
		of += ": " + each.String()
	}
	sum("total "+q.Currency.Code, of, money(q.Total), true)
	if !q.CreditLeft.IsZero() {
		v.say("Credit still owed to the customer: %s %s.", money(q.CreditLeft), q.Currency)
	}
	for _, p := range q.Prices {
		v.say("%s at %s %s per %s as of %s.", p.Symbol, p.Amount.StringFixed(max(q.Currency.Places, -p.Amount.Exponent())),
			q.Currency, p.Per, p.AsOf)
	}
	var most []string
	for i, c := range s.Swings {
		change := c.Change.Round(q.Currency.Places + 1)
		// The swings are sorted, the largest first; the fourth no longer changes a decision.
		if i == 3 || change.IsZero() {
			break
		}
		most = append(most, fmt.Sprintf("%s by %s %s", c.Input, change, q.Currency))
	}
	if len(most) > 0 {
		v.say("One per cent more moves the total: %s.", strings.Join(most, ", "))
	}
	for _, n := range s.Notes {
		v.note(n)
	}
	return nil
}

// shown is every formula with its numbers.
func (s *Sheet) shown(w *writer) error {
	list, err := s.Working()
	if err != nil {
		return err
	}
	for i, c := range list {
		v := w.section(fmt.Sprintf("Working %d: %s", i+1, c.Title))
		for _, line := range strings.Split(strings.TrimRight(working.Text(c.Steps), "\n"), "\n") {
			v.Items = append(v.Items, SheetItem{Text: line, Mark: "="})
		}
	}
	return nil
}
