package baths

import (
	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/units"
)

// readDeposit reads the constituents of an alloy deposit, or checks the
// valence of a pure one.
func readDeposit(b *Bath, n *strictjson.Node) error {
	if n == nil {
		return nil // Check asks for the metal and takes its usual valence for 0
	}
	o := strictjson.Object(n)
	items := o.Items("constituents", "constituents of the deposit", true)
	b.Composition = Words{Text: "constituents as given"}
	b.Composition.Source, b.Composition.Seen = from(o, n)
	if err := o.Done(); err != nil {
		return err
	}
	for _, item := range items {
		f := strictjson.Object(item)
		c := Constituent{Symbol: f.Text("metal"), Valence: f.Whole("valence", 1, 8, 0)}
		inclusion := f.Yes("inclusion")
		if share := f.Must("share", `a share of the mass, as "99.7 %"`); share != nil {
			strictjson.Share(f, share, &c.Share)
		}
		if err := f.Done(); err != nil {
			return err
		}
		if inclusion != (c.Symbol == "") || inclusion && c.Valence != 0 {
			return item.Fail(nil, `need either "metal" with its symbol, or "inclusion": true for what is built in without charge`)
		}
		b.Deposit = append(b.Deposit, c)
	}
	return nil
}

// readLine reads one efficiency line.
func readLine(n *strictjson.Node) (EfficiencyLine, error) {
	o := strictjson.Object(n)
	var l EfficiencyLine
	strictjson.Positive(o, "temperature", &l.Temperature)
	strictjson.Positive(o, "content", &l.Content)
	l.Source, l.Seen = from(o, n)
	points := o.Items("points", "points of rising current density", true)
	if err := o.Done(); err != nil {
		return l, err
	}
	for _, item := range points {
		f := strictjson.Object(item)
		var p EfficiencyPoint
		if !strictjson.Positive(f, "current_density", &p.CurrentDensity) {
			f.Keep(item.Fail(nil, `need "current_density" and "efficiency", or "low" and "high" in its place`))
		}
		var one units.Efficiency
		switch {
		case strictjson.Share(f, f.Field("efficiency"), &one):
			p.Low, p.High = one, one
		default:
			low, high := f.Field("low"), f.Field("high")
			if !strictjson.Share(f, low, &p.Low) || !strictjson.Share(f, high, &p.High) {
				f.Keep(item.Fail(nil, `need "efficiency", or "low" and "high" in its place`))
			}
		}
		if err := f.Done(); err != nil {
			return l, err
		}
		l.Points = append(l.Points, p)
	}
	return l, nil
}
