package ledger

import (
	"fmt"
	"io"
	"strings"
	"time"

	"example.com/laydown/plating"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// A Page says what [Ledger.WriteSheet] shows beside state, balance, additions and forecast.
// The zero Page shows no more than that.
type Page struct {
	Remark  string       // behind the title
	Now     time.Time    // what the clock shows: entries far ahead of it are questioned; zero: none is
	PH      plating.PH   // measured now, before anything is added; 0: that of the book
	Entries bool         // list them
	Working bool         // show the formulas with their numbers and sources
	Damaged *DamageError // the line behind the entries that is damaged, nil for a whole book

	// What to do about a pH that is not known, and how an entry is struck out, in the words of
	// the program that prints the sheet. Empty and nil leave it to the reader.
	Measure string
	Void    func(entry int) string
}

// sheetWidth is where text is folded.
const sheetWidth = 96

// A sheet writes lines and keeps the first error, so that its parts need not ask after each
// line. It works on the book itself and not on copies: it changes nothing.
type sheet struct {
	Page
	w        io.Writer
	err      error
	book     *Ledger
	bath     *Account
	state    State
	solution plating.Solution // as its dangers are judged now
}

// WriteSheet prints the book for the bench: the bath with its dangers, how much metal there is
// and how sure that is, where it came from and went, what to add now, and when next.
//
// What is to be added to a bath with cyanide is told only where no acid can free hydrogen
// cyanide: see [Ledger.Solution]. Of a damaged book the state before the damage is shown,
// without advice, since what to add depends on the lines behind it. What a book of before
// holds of control characters is shown as escapes.
//
// Errors: those of [Ledger.ByAnalysis] and [Account.SaltPerCharge]; what w returns.
func (l *Ledger) WriteSheet(w io.Writer, p Page) error {
	switch {
	case l == nil:
		return noBook()
	case w == nil:
		return units.Missing("writer", "one that takes the sheet")
	}
	// The dangers stand on top, before any figure: what is read first is what saves a life.
	s := &sheet{Page: p, w: w, book: l, bath: &l.bath, state: l.State(), solution: l.Solution(p.PH)}
	s.top()
	s.cautions()
	s.figures()
	s.balance()
	advice := p.Damaged == nil
	if advice {
		s.keep(s.additions())
		s.forecast()
	}
	if p.Entries {
		s.entries()
	}
	if p.Working && advice {
		s.keep(s.working())
	}
	return s.err
}

// keep keeps the first error.
func (s *sheet) keep(err error) {
	if s.err == nil {
		s.err = err
	}
}

// line writes one line of plain text without blanks at its end. Whatever a book of before
// holds, one line stays one line and no character of it moves a cursor.
func (s *sheet) line(format string, args ...any) {
	if s.err == nil {
		text := units.Printable(strings.TrimRight(fmt.Sprintf(format, args...), " "))
		_, s.err = fmt.Fprintln(s.w, text)
	}
}

// head writes a heading behind an empty line.
func (s *sheet) head(format string, args ...any) {
	s.line("")
	s.line(format, args...)
}

// wrap writes text folded behind a prefix, its further lines as far to the right. A word that is
// longer than a line stands in one of its own.
func (s *sheet) wrap(prefix, text string) {
	line := prefix
	for i, word := range strings.Fields(text) {
		if i > 0 && len([]rune(line))+1+len([]rune(word)) > sheetWidth {
			s.line("%s", line)
			line = strings.Repeat(" ", len(prefix))
		} else if i > 0 {
			line += " "
		}
		line += word
	}
	s.line("%s", line)
}

// sheetDate writes a day with its year: a forecast may reach over the turn of one, and a slip of
// the year should be seen.
func sheetDate(t time.Time) string { return t.Format("2 January 2006") }

// inGrams writes a mass to a hundredth of a gram, which a bench balance shows.
func inGrams(m units.Mass) string { return m.Text(units.Gram, 2) }

// perLitre writes a content to a hundredth of a gram in a litre, which no titration beats.
func perLitre(c units.MassConcentration) string { return c.Text(units.GramPerLitre, 2) }

// inMinutes writes a charge as the meter of a rectifier counts it.
func inMinutes(q units.Charge) string { return q.Text(units.AmpereMinute, 0) }

// plusMinus writes a content with its standard uncertainty. Zero is one that nobody gave:
// no content is known without error.
func plusMinus(c, u units.MassConcentration) string {
	switch {
	case u == 0:
		return perLitre(c) + ", uncertainty not given"
	case u < 0.005*units.GramPerLitre: // "± 0.00 g/L" would say that it is exact
		return perLitre(c) + " ± less than 0.01 g/L"
	}
	return perLitre(c) + " ± " + perLitre(u)
}

// top names the book and what is wrong with it as a whole.
func (s *sheet) top() {
	title := "BATH BOOK"
	if s.Remark != "" {
		title += "   " + s.Remark
	}
	s.line("%s", title)
	s.head("%s; anodes: %s", s.bath.Name, s.bath.Anode)
	s.line("opened %s, %s", sheetDate(s.book.opened), s.counted())
	// A year mistyped keeps out every entry of today until it is struck out.
	if !s.Now.IsZero() {
		for _, n := range s.book.Ahead(s.Now) {
			how := ""
			if s.Void != nil {
				how = s.Void(n)
			}
			s.wrap("   ! ", s.book.Late(n, how))
		}
	}
	if s.Damaged != nil {
		s.head("DAMAGED in line %d: this is the bath as it was before it. The lines from there on are", s.Damaged.Line)
		s.line("not counted, so what to add and the forecast are left out.")
	}
}

// counted counts the entries, the voided ones beside.
func (s *sheet) counted() string {
	voids := 0
	for i := range s.book.records {
		if s.book.records[i].VoidedBy != 0 {
			voids++
		}
	}
	n, last := s.book.Len(), sheetDate(s.state.When)
	switch {
	case n == 0:
		return "no entry yet"
	case voids > 0 && n == 2*voids: // each with its void, which does not count either
		return fmt.Sprintf("%d entries, none of which counts", n)
	case voids > 0:
		return fmt.Sprintf("%d entries, %d of them voided, the last that counts on %s", n, voids, last)
	case n == 1:
		return "1 entry, on " + last
	}
	return fmt.Sprintf("%d entries, the last on %s", n, last)
}

// cautions prints what the bath can do, and who decides.
func (s *sheet) cautions() {
	s.head("CAUTION")
	if line := plating.TankLine(s.solution.AtTank()); line != "" {
		s.wrap("   ! ", line)
	}
	front := plating.FrontCautions(s.solution.AllHazards())
	s.wrap("   ! ", front[len(front)-1].Line()) // waste, and who decides
}

// compared returns the last comparison of an analysis with the book, and whether any
// analysis counted alone, so that the opening content does not matter any more.
func (s *sheet) compared() (last *Comparison, alone bool) {
	for i := range s.book.records {
		if c := s.book.records[i].Comparison; c != nil {
			last, alone = c, alone || c.Weight == 1
		}
	}
	return last, alone
}

// figures prints the state of the bath:
//
//	content     with its standard uncertainty, and between which contents it is kept
//	metal       the same as a mass, in how much solution
//	charge      by the meter: in all, since metal was added, since an analysis
//	turnovers   how often the opening metal was plated out
//	efficiency  that the book counts with, and the one that the last analysis speaks for
//	analysis    the last one that was compared with the book
//	alarms      thresholds that are crossed, or may be
func (s *sheet) figures() {
	b, st := s.bath, &s.state
	last, alone := s.compared()
	s.head("STATE")
	s.line("   content      %s %s", plusMinus(st.Content, st.ContentUncertainty), s.limits())
	metal, unsure := inGrams(st.Metal), ""
	if st.MetalUncertainty == 0 {
		unsure = ", uncertainty not given"
	} else {
		metal += " ± " + inGrams(st.MetalUncertainty)
	}
	s.line("   metal        %s %s in %s (mark %s)%s", metal, b.Metal, st.Volume.Text(units.Litre, 2),
		b.Volume.Text(units.Litre, 2), unsure)
	// What is known of the later entries alone looks surer than the bath is.
	if b.ContentUncertainty == 0 && st.MetalUncertainty > 0 && !alone {
		s.line("                (uncertainty of the opening content not given: the true one is larger)")
	}
	s.line("   charge       %s; %s since metal was added, %s since an analysis", inMinutes(st.Charge),
		inMinutes(st.SinceAddition), inMinutes(st.SinceAnalysis))
	s.line("   turnovers    %.2f", float64(st.Turnovers))
	eff := b.Efficiency.Value.Percent(1) + " in the book"
	if b.Efficiency.High != 0 {
		eff += " (" + b.Efficiency.Low.Percent(1) + " to " + b.Efficiency.High.Percent(1) + ")"
	}
	if last != nil && last.Efficiency != 0 {
		eff += "; the last analysis speaks for " + last.Efficiency.Percent(1) + " ± " +
			last.EfficiencyUncertainty.Percent(1)
	}
	s.line("   efficiency   %s", eff)
	if last != nil {
		s.line("   analysis     %s against %s in the book: %+.1f uncertainties apart", plusMinus(last.Lab.Content,
			last.Lab.Uncertainty), plusMinus(last.Book.Content, last.Book.Uncertainty), float64(last.Apart))
	}
	// One line each, the word before the first only; "none" where there is none.
	alarms := st.Alarms.Texts()
	for i, text := range append(alarms, "none")[:max(1, len(alarms))] {
		s.line("   %-12s %s", []string{"alarms", ""}[min(i, 1)], text)
	}
}

// limits lists target and alarms, those that are watched.
func (s *sheet) limits() string {
	var parts []string
	for _, l := range []struct {
		name  string
		value units.MassConcentration
	}{{"low", s.bath.Low}, {"target", s.bath.Aim()}, {"high", s.bath.High}} {
		if l.value != 0 {
			parts = append(parts, l.name+" "+perLitre(l.value))
		}
	}
	return "   (" + strings.Join(parts, ", ") + ")"
}

// balance prints where the metal came from and went, one account a line, so that they can be
// added up: what went has a minus, and the last line is the sum.
func (s *sheet) balance() {
	s.head("BALANCE of %s", s.bath.Metal)
	m := s.state.Balance
	for _, l := range []struct {
		what  string
		value units.Mass
	}{{"opening", m.Opening}, {"added", m.Added}, {"from anodes", m.FromAnode}, {"dragged in", m.DraggedIn},
		{"deposited", -m.Deposited}, {"dragged out", -m.DraggedOut}, {"corrected", m.Corrected},
		{"by analyses", m.Analysed}, {"now", m.Now}} {
		s.line("   %-12s %10.2f g", l.what, l.value.In(units.Gram)+0) // no negative zero
	}
}

// stopped prints why nothing may be added, when nothing may: every reason, since one that is
// dealt with does not lift another.
func (s *sheet) stopped() bool {
	stop := false
	for _, n := range s.solution.Review() {
		if n.Severity != plating.SeverityStop {
			continue
		}
		stop = true
		s.wrap("   STOP  ", n.Line())
		// Where the pH is all that is missing, a measurement helps.
		missing := n.Code == plating.CodePHNotGiven || n.Code == plating.CodeCyanideInAcid && !s.solution.PH.Given()
		if missing && s.Measure != "" {
			s.wrap("         ", s.Measure)
		}
	}
	return stop
}

// additions prints what to add of each salt. To target is what the book lacks now; by meter is
// what the charge since the last addition took, without drag-out: a feeder adds that by
// itself. They are two answers to one question and not to be added up.
func (s *sheet) additions() error {
	b := s.bath
	s.head("TO ADD NOW")
	if s.stopped() {
		return nil
	}
	if len(b.Salts) == 0 {
		s.line("   no salt named in the book")
	}
	for _, salt := range b.Salts {
		// What to mind comes before the amount.
		if n := s.solution.Adding(salt); n.Do != "" {
			s.wrap("   ! ", plating.Sentences(n.Do)+" ["+n.Source+"]")
		}
		r, err := s.book.ByAnalysis(salt)
		if err != nil {
			return err
		}
		water := ""
		if r.Water > 0 {
			water = "; then water to the mark, " + r.Water.Text(units.Millilitre, 0)
		}
		if r.Over > 0 { // a bath too rich is told as such, and not as a salt of zero grams
			s.line("   to target    no %s: %s %s over it%s", salt, inGrams(r.Over), b.Metal, water)
		} else {
			s.line("   to target    %s of %s, of it %s %s%s", inGrams(r.SaltMass), salt, inGrams(r.Metal), b.Metal, water)
		}
		m, err := s.book.ByCharge(salt)
		if err != nil { // the anodes give as much as the deposit takes
			s.line("   by meter     nothing: the anodes give what the deposit takes")
			continue
		}
		f, err := b.SaltPerCharge(salt)
		if err != nil {
			return err
		}
		s.line("   by meter     %s of %s for %s at %s (drag-out not in it)", inGrams(m.SaltMass), salt,
			inMinutes(s.state.SinceAddition), f.Text(units.GramPerAmpereMinute, 4))
	}
	return nil
}

// forecast prints when the next four additions of the first salt are due, by charge and, where
// the loads tell how much a day is worked, by date. It carries the mean of the last twenty
// loads on and feeds from the low alarm back to the target.
func (s *sheet) forecast() {
	b := s.bath
	if plating.Deadly(s.solution) != nil { // nothing is foretold of what may not be added
		return
	}
	s.head("FORECAST")
	if len(b.Salts) == 0 || b.Low == 0 || s.state.Charge == 0 {
		s.line("   needs a salt, a low alarm and a load with a charge in the book")
		return
	}
	salt := b.Salts[0]
	f, err := s.book.Forecast(Plan{Salt: salt, Loads: 20, Next: 4})
	if err != nil {
		s.line("   none: %v", err)
		return
	}
	// How many loads it rests on is said beside it: of one load it is a guess.
	days, loads := "", "the last load"
	if f.PerDay > 0 {
		days = ", " + inMinutes(f.PerDay) + " a day"
	}
	if f.Loads > 1 {
		loads = fmt.Sprintf("mean of the last %d loads", f.Loads)
	}
	// A load with no drag-out entered still carries bath out; without it the bath is fed too late.
	dragged := "drag-out in it"
	if f.WithDragOut == 0 {
		dragged = "drag-out not in it, for none is entered"
	} else if f.WithDragOut < f.Loads {
		dragged = fmt.Sprintf("drag-out in it for %d of %d loads", f.WithDragOut, f.Loads)
	}
	s.line("   %s %s lost for an A·min, %s (%s)%s",
		f.PerCharge.Of(units.AmpereMinute).Text(units.Milligram, 1), b.Metal, dragged, loads, days)
	switch {
	case f.High > 0:
		s.line("   the bath grows richer: at its high alarm after %s", inMinutes(f.High))
	case len(f.Next) == 0:
		s.line("   the bath does not grow poorer")
	default:
		s.line("   fed at %s up to %s:", perLitre(b.Low), perLitre(b.Aim()))
	}
	for i, n := range f.Next {
		when := "" // the days are not known
		if n.Charge == 0 {
			when = "due"
		} else if !n.When.IsZero() {
			when = "about " + sheetDate(n.When)
		}
		s.line("   %d. after %-13s %-23s %s of %s", i+1, inMinutes(n.Charge), when, inGrams(n.SaltMass), salt)
	}
}

// entries lists the entries with number, time and the content after each, and what was done. The
// voided ones stay in the list, with the number of the void.
func (s *sheet) entries() {
	s.head("ENTRIES")
	for i := range s.book.records {
		r := &s.book.records[i]
		what := r.what(s.bath.Metal)
		if r.Entry.Note != "" {
			what += " (" + r.Entry.Note + ")"
		}
		content := perLitre(r.After.Content)
		if r.VoidedBy != 0 {
			content, what = "voided", fmt.Sprintf("VOIDED by no. %d: %s", r.VoidedBy, what)
		}
		s.line("   %3d  %s  %-9s %s", r.Seq, r.Entry.When.Format("2006-01-02 15:04"), content, what)
	}
}

// what tells an entry in a line: what was done, with the amounts in bench units, and what came
// of it. Of a voided one it tells what was written, not what came of it, which is nothing.
func (r *Record) what(metal string) string {
	switch e := r.Entry.Event.(type) {
	case Load:
		// A deposit that was weighed is the deposit of the record as well.
		what := "load         " + inMinutes(e.Charge)
		if r.VoidedBy == 0 {
			what += ", deposit " + inGrams(r.Deposited)
		} else if e.Weighed > 0 {
			what += ", weighed " + inGrams(e.Weighed)
		}
		if r.FromAnode > 0 {
			what += ", anodes " + inGrams(r.FromAnode)
		}
		if e.DragOut > 0 {
			what += ", drag-out " + e.DragOut.Text(units.Millilitre, 1)
		}
		return what
	case Evaporation:
		return "evaporation  " + e.Volume.Text(units.Millilitre, 0)
	case Addition:
		// Metal in whatever form, the salt that brought it, and what it came in.
		what := "addition     water"
		if m, err := e.MetalMass(metal); err == nil && m > 0 {
			what = "addition     " + inGrams(m) + " metal"
		}
		if e.SaltMass > 0 {
			what += " as " + inGrams(e.SaltMass) + " of " + e.Salt.String()
		}
		if v := e.Water + e.Solution; v > 0 {
			what += ", " + v.Text(units.Millilitre, 0)
		}
		return what
	case Analysis:
		return "analysis     " + plusMinus(e.Content, e.Uncertainty)
	case Correction:
		return "correction   " + inGrams(e.Metal) + ", " + e.Volume.Text(units.Millilitre, 0) + ": " + e.Reason
	case Void:
		return fmt.Sprintf("void         no. %d: %s", e.Entry, e.Reason)
	}
	return ""
}

// working shows the calculations behind what to add, for each salt, with formula, numbers and
// source: how much a unit of charge draws, then how much the target wants.
func (s *sheet) working() error {
	if plating.Deadly(s.solution) != nil {
		return nil
	}
	s.head("WORKING")
	for _, salt := range s.bath.Salts {
		steps, err := s.bath.SaltPerChargeWorking(salt)
		if err != nil { // nothing to feed by the meter: show why
			if steps, err = s.bath.RatesWorking(); err != nil {
				return err
			}
		}
		more, err := ReplenishWorking(Need{Metal: s.state.Metal, Volume: s.state.Volume, Mark: s.bath.Volume,
			Target: s.bath.Aim()}, s.bath.Metal, salt)
		if err != nil {
			return err
		}
		for _, line := range strings.Split(working.Text(append(steps, more...)), "\n") {
			s.line("%s", line)
		}
	}
	return nil
}
