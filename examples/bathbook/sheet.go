package main

import (
	"fmt"
	"io"
	"strings"
	"time"

	"example.com/laydown/examples/internal/terminal"
	"example.com/laydown/plating"
	"example.com/laydown/plating/ledger"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// A sheet writes lines and keeps the first error. What a book of before holds of
// control characters is shown as escapes.
type sheet struct {
	w   io.Writer
	err error
}

func (s *sheet) line(format string, args ...any) {
	if s.err == nil {
		s.err = terminal.Line(s.w, "%s", strings.TrimRight(fmt.Sprintf(format, args...), " "))
	}
}

func date(t time.Time) string { return t.Format("2 January 2006") }

func grams(m units.Mass) string { return m.Text(units.Gram, 2) }

func perLitre(c units.MassConcentration) string { return c.Text(units.GramPerLitre, 2) }

func minutes(q units.Charge) string { return q.Text(units.AmpereMinute, 0) }

// within writes a content with its standard uncertainty. Zero is one that
// nobody gave: no content is known without error.
func within(c, u units.MassConcentration) string {
	switch {
	case u == 0:
		return perLitre(c) + ", uncertainty not given"
	case u < 0.005*units.GramPerLitre:
		return perLitre(c) + " ± less than 0.01 g/L"
	}
	return perLitre(c) + " ± " + perLitre(u)
}

// writeSheet shows the book. Of a damaged one it shows what is whole, without
// advice: what to add depends on the lines behind the damage.
func writeSheet(w io.Writer, book *ledger.Ledger, o *options, damaged bool) error {
	s := &sheet{w: w}
	b := book.Bath()
	title := "BATH BOOK"
	if o.book == "" {
		title += "   embedded demo, invented data"
	}
	s.line("%s", title)
	s.line("")
	st := book.State()
	s.line("%s; anodes: %s", b.Name, b.Anode)
	s.line("opened %s, %s", date(book.Opened()), entries(book))
	if o.book != "" {
		for _, n := range book.Ahead(o.now) {
			s.wrap("   ! ", lateWords(book, n))
		}
	}
	if damaged {
		s.line("")
		s.line("DAMAGED in line %d: this is the bath as it was before it. The lines from there on are", book.Len()+2)
		s.line("not counted, so what to add and the forecast are left out.")
	}
	s.cautions(o.solution(book))
	s.state(b, st, book.Records())
	s.balance(b, st.Balance)
	if !damaged {
		if err := s.additions(book, o.solution(book)); err != nil {
			return err
		}
		if err := s.forecast(book, o.solution(book)); err != nil {
			return err
		}
	}
	if o.entries {
		s.entries(book)
	}
	if o.working && !damaged {
		if err := s.working(book, o.solution(book)); err != nil {
			return err
		}
	}
	return s.err
}

// entries counts the entries, the voided ones beside.
func entries(book *ledger.Ledger) string {
	voids := 0
	for _, r := range book.Records() {
		if r.VoidedBy != 0 {
			voids++
		}
	}
	n, last := book.Len(), date(book.State().When)
	switch {
	case n == 0:
		return "no entry yet"
	case voids > 0 && n == 2*voids:
		return fmt.Sprintf("%d entries, none of which counts", n)
	case voids > 0:
		return fmt.Sprintf("%d entries, %d of them voided, the last that counts on %s", n, voids, last)
	case n == 1:
		return "1 entry, on " + last
	}
	return fmt.Sprintf("%d entries, the last on %s", n, last)
}

// analyses returns the last comparison, and whether any analysis counted alone,
// so that the opening content does not matter any more.
func analyses(records []ledger.Record) (last *ledger.Comparison, alone bool) {
	for _, r := range records {
		if r.Comparison != nil {
			last = r.Comparison
			alone = alone || last.Weight == 1
		}
	}
	return last, alone
}

func (s *sheet) state(b ledger.Bath, st ledger.State, records []ledger.Record) {
	last, alone := analyses(records)
	s.line("")
	s.line("STATE")
	s.line("   content      %s %s", within(st.Content, st.ContentUncertainty), limits(b))
	metal, unsure := grams(st.Metal), ""
	if st.MetalUncertainty == 0 {
		unsure = ", uncertainty not given"
	} else {
		metal += " ± " + grams(st.MetalUncertainty)
	}
	s.line("   metal        %s %s in %s (mark %s)%s", metal, b.Metal, st.Volume.Text(units.Litre, 2),
		b.Volume.Text(units.Litre, 2), unsure)
	if b.ContentUncertainty == 0 && st.MetalUncertainty > 0 && !alone {
		s.line("                (uncertainty of the opening content not given: the true one is larger)")
	}
	s.line("   charge       %s; %s since metal was added, %s since an analysis", minutes(st.Charge),
		minutes(st.SinceAddition), minutes(st.SinceAnalysis))
	s.line("   turnovers    %.2f", float64(st.Turnovers))
	eff := b.Efficiency.Value.Percent(1) + " in the book"
	if b.Efficiency.High != 0 {
		eff += " (" + b.Efficiency.Low.Percent(1) + " to " + b.Efficiency.High.Percent(1) + ")"
	}
	if last != nil && last.Efficiency != 0 {
		eff += "; the last analysis speaks for " + last.Efficiency.Percent(1) + " ± " + last.EfficiencyUncertainty.Percent(1)
	}
	s.line("   efficiency   %s", eff)
	if last != nil {
		s.line("   analysis     %s against %s in the book: %+.1f uncertainties apart", within(last.Lab.Content,
			last.Lab.Uncertainty),
			within(last.Book.Content, last.Book.Uncertainty), float64(last.Apart))
	}
	for i, text := range append(st.Alarms.Texts(), "none")[:max(1, len(st.Alarms.Texts()))] {
		s.line("   %-12s %s", []string{"alarms", ""}[min(i, 1)], text)
	}
}

func limits(b ledger.Bath) string {
	var parts []string
	for _, l := range []struct {
		name  string
		value units.MassConcentration
	}{{"low", b.Low}, {"target", target(b)}, {"high", b.High}} {
		if l.value != 0 {
			parts = append(parts, l.name+" "+perLitre(l.value))
		}
	}
	return "   (" + strings.Join(parts, ", ") + ")"
}

func target(b ledger.Bath) units.MassConcentration {
	if b.Target == 0 {
		return b.Content
	}
	return b.Target
}

func (s *sheet) balance(b ledger.Bath, m ledger.Balance) {
	s.line("")
	s.line("BALANCE of %s", b.Metal)
	for _, l := range []struct {
		what  string
		value units.Mass
	}{{"opening", m.Opening}, {"added", m.Added}, {"from anodes", m.FromAnode}, {"dragged in", m.DraggedIn}, {"deposited",
		-m.Deposited},
		{"dragged out", -m.DraggedOut}, {"corrected", m.Corrected}, {"by analyses", m.Analysed}, {"now", m.Now}} {
		s.line("   %-12s %10.2f g", l.what, l.value.In(units.Gram)+0) // no negative zero
	}
}

func (s *sheet) additions(book *ledger.Ledger, solution plating.Solution) error {
	b := book.Bath()
	s.line("")
	s.line("TO ADD NOW")
	if s.stopped(solution) {
		return nil
	}
	if len(b.Salts) == 0 {
		s.line("   no salt named in the book")
	}
	for _, salt := range b.Salts {
		if n := solution.Adding(salt); n.Do != "" {
			s.wrap("   ! ", plating.Sentences(n.Do)+" ["+n.Source+"]")
		}
		r, err := book.ByAnalysis(salt)
		if err != nil {
			return err
		}
		water := ""
		if r.Water > 0 {
			water = "; then water to the mark, " + r.Water.Text(units.Millilitre, 0)
		}
		if r.Over > 0 {
			s.line("   to target    no %s: %s %s over it%s", salt, grams(r.Over), b.Metal, water)
		} else {
			s.line("   to target    %s of %s, of it %s %s%s", grams(r.SaltMass), salt, grams(r.Metal), b.Metal, water)
		}
		m, err := book.ByCharge(salt)
		if err != nil { // the anodes give as much as the deposit takes
			s.line("   by meter     nothing: the anodes give what the deposit takes")
			continue
		}
		f, err := b.SaltPerCharge(salt)
		if err != nil {
			return err
		}
		s.line("   by meter     %s of %s for %s at %s (drag-out not in it)", grams(m.SaltMass), salt,
			minutes(book.State().SinceAddition), f.Text(units.GramPerAmpereMinute, 4))
	}
	return nil
}

func (s *sheet) forecast(book *ledger.Ledger, solution plating.Solution) error {
	b := book.Bath()
	if plating.Deadly(solution) != nil {
		return nil
	}
	s.line("")
	s.line("FORECAST")
	if len(b.Salts) == 0 || b.Low == 0 || book.State().Charge == 0 {
		s.line("   needs a salt, a low alarm and a load with a charge in the book")
		return nil
	}
	salt := b.Salts[0]
	f, err := book.Forecast(ledger.Plan{Salt: salt, Loads: 20, Next: 4})
	if err != nil {
		s.line("   none: %v", err)
		return nil
	}
	days := ""
	if f.PerDay > 0 {
		days = ", " + minutes(f.PerDay) + " a day"
	}
	loads := "the last load"
	if f.Loads > 1 {
		loads = fmt.Sprintf("mean of the last %d loads", f.Loads)
	}
	s.line("   %s %s lost for an A·min, drag-out in it (%s)%s", f.PerCharge.Of(units.AmpereMinute).Text(units.Milligram,
		1), b.Metal, loads, days)
	switch {
	case f.High > 0:
		s.line("   the bath grows richer: at its high alarm after %s", minutes(f.High))
	case len(f.Next) == 0:
		s.line("   the bath does not grow poorer")
	}
	if len(f.Next) > 0 {
		s.line("   fed at %s up to %s:", perLitre(b.Low), perLitre(target(b)))
	}
	for i, n := range f.Next {
		s.line("   %d. after %-13s %-23s %s of %s", i+1, minutes(n.Charge), when(n), grams(n.SaltMass), salt)
	}
	return nil
}

func when(n ledger.Planned) string {
	switch {
	case n.Charge == 0:
		return "due"
	case n.When.IsZero():
		return ""
	}
	return "about " + date(n.When)
}

func (s *sheet) entries(book *ledger.Ledger) {
	s.line("")
	s.line("ENTRIES")
	metal := book.Bath().Metal
	for _, r := range book.Records() {
		what := happened(metal, r)
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

// happened tells an entry in a line. Of a voided one it tells what was written, not
// what came of it.
func happened(metal string, r ledger.Record) string {
	switch e := r.Entry.Event.(type) {
	case ledger.Load:
		what := "load         " + minutes(e.Charge)
		if r.VoidedBy == 0 {
			what += ", deposit " + grams(r.Deposited)
		} else if e.Weighed > 0 {
			what += ", weighed " + grams(e.Weighed)
		}
		if r.FromAnode > 0 {
			what += ", anodes " + grams(r.FromAnode)
		}
		if e.DragOut > 0 {
			what += ", drag-out " + e.DragOut.Text(units.Millilitre, 1)
		}
		return what
	case ledger.Evaporation:
		return "evaporation  " + e.Volume.Text(units.Millilitre, 0)
	case ledger.Addition:
		what := "addition     water"
		if m, err := e.MetalMass(metal); err == nil && m > 0 {
			what = "addition     " + grams(m) + " metal"
		}
		if e.SaltMass > 0 {
			what += " as " + grams(e.SaltMass) + " of " + e.Salt.String()
		}
		if v := e.Water + e.Solution; v > 0 {
			what += ", " + v.Text(units.Millilitre, 0)
		}
		return what
	case ledger.Analysis:
		return "analysis     " + within(e.Content, e.Uncertainty)
	case ledger.Correction:
		return "correction   " + grams(e.Metal) + ", " + e.Volume.Text(units.Millilitre, 0) + ": " + e.Reason
	case ledger.Void:
		return fmt.Sprintf("void         no. %d: %s", e.Entry, e.Reason)
	}
	return ""
}

func (s *sheet) working(book *ledger.Ledger, solution plating.Solution) error {
	if plating.Deadly(solution) != nil {
		return nil
	}
	b, st := book.Bath(), book.State()
	s.line("")
	s.line("WORKING")
	for _, salt := range b.Salts {
		steps, err := b.SaltPerChargeWorking(salt)
		if err != nil { // nothing to feed by the meter: show why
			if steps, err = b.RatesWorking(); err != nil {
				return err
			}
		}
		more, err := ledger.ReplenishWorking(ledger.Need{Metal: st.Metal, Volume: st.Volume, Mark: b.Volume,
			Target: target(b)}, b.Metal, salt)
		if err != nil {
			return err
		}
		for _, line := range strings.Split(working.Text(append(steps, more...)), "\n") {
			s.line("%s", line)
		}
	}
	return nil
}

// solution is the bath of the book as its dangers are judged, with the pH that was
// measured now. When the last entry speaks of acid and nobody has measured since, the
// pH of the book counts no more, and the bath counts as acid.
func (o *options) solution(book *ledger.Ledger) plating.Solution {
	b := book.Bath()
	solution := b.Solution()
	switch {
	case o.pH != 0:
		solution.PH = plating.PHWindow{Low: o.pH, High: o.pH}
	case acidAdded(book):
		solution.PH = plating.PHWindow{}
		solution.Hazards |= plating.HazardAcid
	}
	return solution
}

// acidAdded reports whether the last entry of the book names acid.
func acidAdded(book *ledger.Ledger) bool {
	records := book.Records()
	if len(records) == 0 {
		return false
	}
	last := records[len(records)-1].Entry
	texts := []string{last.Note}
	if c, ok := last.Event.(ledger.Correction); ok {
		texts = append(texts, c.Reason)
	}
	return plating.NamedHazards(texts...).Has(plating.HazardAcid)
}

// cautions prints what the bath can do, and who decides.
func (s *sheet) cautions(solution plating.Solution) {
	s.line("")
	s.line("CAUTION")
	if line := plating.TankLine(solution.AtTank()); line != "" {
		s.wrap("   ! ", line)
	}
	front := plating.FrontCautions(solution.AllHazards())
	s.wrap("   ! ", front[len(front)-1].Line()) // waste, and who decides
}

// stopped prints why nothing may be added, when nothing may.
func (s *sheet) stopped(solution plating.Solution) bool {
	stop := false
	for _, n := range solution.Review() {
		if n.Severity == plating.SeverityStop {
			stop = true
			s.wrap("   STOP  ", n.Line())
			if n.Code == plating.CodePHNotGiven || n.Code == plating.CodeCyanideInAcid && !solution.PH.Given() {
				s.wrap("         ", "Measure the pH and run this again with -pH and what the meter shows, as -pH 4.4.")
			}
		}
	}
	return stop
}

// wrap writes text folded at 96 columns behind a prefix.
func (s *sheet) wrap(prefix, text string) {
	line := prefix
	indent := strings.Repeat(" ", len(prefix))
	for i, word := range strings.Fields(text) {
		if i > 0 && len([]rune(line))+1+len([]rune(word)) > 96 {
			s.line("%s", line)
			line = indent
		} else if i > 0 {
			line += " "
		}
		line += word
	}
	s.line("%s", line)
}
