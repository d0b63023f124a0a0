package main

import (
	"bytes"
	"fmt"
	"io"
	"strings"

	"example.com/laydown/plating"
	"example.com/laydown/plating/price"
	"example.com/laydown/plating/traveller"
	"example.com/laydown/units"
	"github.com/shopspring/decimal"
)

// A page is what the printable sheet shows.
type page struct {
	Title, Substrate, Area string
	Demo                   bool
	Stops                  []string
	Claim                  []string // what may be said of the gold
	Beside                 []string // what the review says besides
	Refused                []string // the tanks of a sequence that must not be run: nothing is to be set
	Parts                  []pagePart
	Mended                 []string
	Cautions               []string
	Sequence               []string // practice, trust and time; empty without a sequence
	Findings               []string
	Tanks                  []tank
	Gain                   string
	Metals                 []string
	Rinsing                []string
	Baths                  []ticked
	Price                  []priceLine
	PriceNotes             []string
}

// A ticked is a paragraph that may have a box to tick.
type ticked struct {
	Text string
	Tick bool
}

// A priceLine is one line of the quote; a sum stands out.
type priceLine struct {
	What, Basis, Amount string
	Sum                 bool
}

type pagePart struct{ Count, Name, Area, Mask string }

// A tank is one immersion in a bath, as a card that is not cut by a page break.
type tank struct {
	Number     int
	Name, Role string
	Bath       string
	Caution    string         // what it can do, in one line
	Way, Notes []plating.Note // on the way there; about the tank
	Tick       bool           // a tank without figures to set is ticked as a whole
	Rows       []pageRow
	Source     string
	Then       string // what to do before the next tank
}

// A pageRow is one setting with its reason; Measured leaves room for a reading.
type pageRow struct {
	What, Value, Why string
	Measured         bool
}

// writePage writes the sheet as a page of its own that prints on A4 and Letter.
func writePage(w io.Writer, made *traveller.Sheet, demo bool) error {
	job, res := &made.Job, &made.Result
	p := page{Title: orText(job.Name, "plating job"), Substrate: orText(job.Substrate, "not given"),
		Area: figure(made.Area, units.SquareCentimetre, 3, 1), Demo: demo}
	for _, c := range made.Cautions() {
		p.Cautions = append(p.Cautions, c.Line())
	}
	p.Cautions = append(p.Cautions, unlisted(made)...)
	for _, v := range job.Parts {
		row := pagePart{Count: fmt.Sprint(v.Count), Name: orText(v.Name, "part"), Area: figure(v.Area, units.SquareCentimetre,
			3, 2)}
		if v.Masked > 0 {
			row.Mask = figure(v.Masked, units.SquareCentimetre, 3, 2)
		}
		p.Parts = append(p.Parts, row)
	}
	p.Mended = job.Mended
	p.Stops = collect(func(s *sheet) { s.stops(made) })
	if made.Refused() {
		p.Refused = asTheyStand(made)
		for _, n := range made.Beside() {
			p.Beside = append(p.Beside, n.Severity.String()+": "+n.Text)
		}
		return pageTemplate().Execute(w, p)
	}
	if len(made.Tanks) > 0 {
		p.line(made)
	} else {
		p.coats(made)
	}
	var gain units.Mass
	for _, m := range res.Metals {
		gain += m.Mass
		p.Metals = append(p.Metals, fmt.Sprintf("%s: %s at the thinnest spot, %s on average, %s of metal", orText(m.Metal,
			"metal not named"),
			micrometres(m.Thinnest), micrometres(m.Average), weight(m.FineMass)))
	}
	p.Gain, p.Claim = weight(gain), made.Claim.Lines()
	p.Rinsing = headless(collect(func(s *sheet) { s.rinsing(made) }))
	for i, l := range collect(func(s *sheet) { s.baths(made) }) {
		if text, tick := strings.CutPrefix(l, "[ ] "); i > 0 { // the page has its own heading
			p.Baths = append(p.Baths, ticked{text, tick})
		}
	}
	if text := unmetered(made); text != "" {
		p.Baths = append(p.Baths, ticked{text, true})
	}
	if err := p.price(made); err != nil {
		return err
	}
	return pageTemplate().Execute(w, p)
}

// coats are the tanks of a job without a sequence.
func (p *page) coats(made *traveller.Sheet) {
	res := &made.Result
	for i := range res.Layers {
		lr := &res.Layers[i]
		t := pageTank(i+1, i, lr, made.AtTank(i))
		switch {
		case i+1 == len(res.Layers):
			t.Then = "held over the drag-out tank, rinsed twice, last in deionised water, dried [common practice, no source]"
		case plating.Precious(lr.Layer.Bath.Metal):
			t.Then = "held over the drag-out tank, rinsed twice, wet to the next tank [common practice, no source]"
		default:
			t.Then = "rinsed twice, wet to the next tank [common practice, no source]"
		}
		p.Tanks = append(p.Tanks, t)
	}
}

// line is the whole sequence.
func (p *page) line(made *traveller.Sheet) {
	if v := &made.Practice; v.Title != "" {
		p.Sequence = append(p.Sequence, fmt.Sprintf("For %s to %s: %s %s (%s); its steps here are %s. When unsure: %s. [%s]",
			made.Job.Base, finish(made), v.Standard, v.Title, v.Seen, v.Detail, v.Unsure, v.Source))
	}
	for _, w := range made.Practice.Reasons {
		p.Sequence = append(p.Sequence, "Why: "+w.String())
	}
	p.Sequence = append(p.Sequence, confidence(made), atTheLine(made), gas(made))
	for _, f := range made.Findings {
		if f.Severity != plating.SeverityStop {
			p.Findings = append(p.Findings, f.String())
		}
	}
	for i := range made.Cards {
		c := &made.Cards[i]
		if k := made.Coats[i]; k >= 0 {
			t := pageTank(c.Number, k, &made.Result.Layers[k], c.Cautions)
			l := &made.Job.Layers[k]
			in := stop{card: *c, power: made.Powers[k], lent: l.PHLent()}
			t.Rows = append(t.Rows, in.more()...)
			t.card(c)
			t.spread(&made.Result.Layers[k].Layer, made.Result.Layers[k].Below, &made.Spreads[k])
			p.Tanks = append(p.Tanks, t)
			continue
		}
		p.Tanks = append(p.Tanks, processTank(c))
	}
}

// price is the quote as a table.
func (p *page) price(made *traveller.Sheet) error {
	q := made.Quote
	if q == nil {
		return nil
	}
	money := func(d decimal.Decimal) string { return d.StringFixed(q.Currency.Places) }
	for _, l := range q.Lines {
		if l.Kind == price.KindTax {
			p.Price = append(p.Price, priceLine{"to pay before tax", "", money(q.Net), true})
		}
		if l.Amount.IsZero() && l.Basis == "" {
			continue
		}
		p.Price = append(p.Price, priceLine{l.Kind.String() + blank(l.Name), l.Basis, money(l.Amount), false})
	}
	each, err := q.Each(q.Total)
	if err != nil {
		return err
	}
	p.Price = append(p.Price, priceLine{"total", each.String(), money(q.Total) + " " + q.Currency.Code, true})
	lines := collect(func(s *sheet) { s.price(made) })
	for _, v := range q.Prices {
		p.PriceNotes = append(p.PriceNotes, fmt.Sprintf("%s at %s %s for 1 %s on %s", v.Symbol, v.Amount, q.Currency, v.Per,
			v.AsOf))
	}
	if n := len(lines); n > 0 && len(made.Swings) > 0 {
		p.PriceNotes = append(p.PriceNotes, lines[n-1])
	}
	for _, n := range made.Notes {
		p.PriceNotes = append(p.PriceNotes, n.Text+dash(n.Do))
	}
	return nil
}

func blank(name string) string {
	if name == "" {
		return ""
	}
	return ": " + name
}

// collect returns what a part of the sheet prints, one paragraph an item.
func collect(print func(*sheet)) []string {
	var b bytes.Buffer
	print(&sheet{w: &b, wide: true})
	var list []string
	for _, l := range strings.Split(b.String(), "\n") {
		if l = strings.TrimSpace(l); l != "" {
			list = append(list, l)
		}
	}
	return list
}

// headless drops the heading of a part: the page has its own.
func headless(list []string) []string {
	if len(list) == 0 {
		return nil
	}
	for i, l := range list {
		list[i] = strings.TrimPrefix(l, "[ ] ")
	}
	return list[1:]
}

// togetherWith tells the thickness with what lies below, where that counts.
func togetherWith(lr *plating.LayerResult) string {
	if lr.Below == 0 {
		return ""
	}
	return " (" + micrometres(lr.Result.Thinnest+lr.Below) + " with what lies below)"
}

func pageTank(number, i int, lr *plating.LayerResult, cautions []plating.Note) tank {
	l, r := &lr.Layer, &lr.Result
	b := &l.Bath
	t := tank{Number: number, Name: name(l, i), Role: l.Role.String(), Bath: orText(b.Name, "not named"),
		Caution: plating.TankLine(cautions), Way: noted(lr.Before), Notes: noted(lr.Notes), Source: "figures of this bath: " +
			orText(b.Source, "source not given")}
	add := func(measured bool, what, value, why string) {
		t.Rows = append(t.Rows, pageRow{what, value, why, measured})
	}
	degrees := func(v units.Temperature) string { return v.Text(units.CelsiusScale, 0) }
	heat := orText(rangeOf(b.Temperature.Low, b.Temperature.High, degrees), "no range given")
	if b.Temperature.Set > 0 {
		add(true, "bath at", degrees(b.Temperature.Set), "its figures hold for "+heat)
	} else {
		add(true, "bath at", "not given", heat)
	}
	density := func(j units.CurrentDensity) string { return figure(j, units.AmperePerSquareDecimetre, 2, 2) }
	on := density(r.CurrentDensity)
	if window := rangeOf(b.Window.Low, b.Window.High, density); window != "" {
		on += " (window " + window + ")"
	}
	add(true, "set", amps(r.Current), on+" on "+figure(l.Area, units.SquareDecimetre, 3, 3))
	volts := rangeOf(b.Volts.Low, b.Volts.High, func(v units.Voltage) string { return figure(v, units.Volt, 1, 1) })
	add(true, "expect", orText(volts, "not given"), "the amps decide, not the volts")
	add(true, "time", clock(r.Time), timeReason(lr))
	add(false, "gives", micrometres(r.Thinnest), "at the thinnest spot"+togetherWith(lr)+", "+micrometres(r.Average)+
		" on average (ratio "+plain(float64(l.Distribution.MinToAverage))+sure(&l.Distribution)+", "+
		orText(l.Distribution.Basis, "basis not said")+")")
	add(false, "takes", weight(r.FineMass), "of "+orText(b.Metal, "metal")+", at a current efficiency of "+
		r.Efficiency.Percent(decimals(100*float64(r.Efficiency), 2)))
	if what, why := rest(lr); what != "" {
		add(false, "gas", what, why)
	}
	return t
}
