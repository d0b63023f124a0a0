package jobfile

import (
	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/plating/traveller"
	"example.com/laydown/units"
)

func readBath(n *strictjson.Node) (plating.Bath, error) {
	l := traveller.Layer{}
	err := readOwnBath(n, strictjson.Object(n), &l)
	return l.Bath, err
}

// readOwnBath reads a bath of the shop's own into a layer; what a caller has
// asked o for already is known.
func readOwnBath(n *strictjson.Node, o *strictjson.Reader, l *traveller.Layer) error {
	b := &l.Bath
	b.Name, b.Source = o.Text("name"), o.Text("source")
	metal := o.Must("metal", `the symbol of the counted metal, as "Au"`)
	valence := o.Whole("valence", 1, 8, 0)
	hasDensity := strictjson.Positive(o, "density", &b.Deposit.Density)
	mix := o.Field("constituents")
	eff := o.Must("efficiency", `a share as "35 %", or a list of points`)
	window, volts, heat := o.Field("window"), o.Field("volts"), o.Field("temperature")
	strictjson.Positive(o, "content", &b.Content)
	strictjson.Positive(o, "volume", &b.Volume)
	strictjson.Share(o, o.Field("draw_limit"), &b.DrawLimit)
	strictjson.Positive(o, "max_thickness", &b.MaxThickness)
	b.InsolubleAnode = o.Choice("anode", "not given", "soluble", "insoluble") == 2
	b.Anode = o.Text("anode_material")
	if v := readVessel(o); v != nil {
		b.Vessel = *v
	}
	readHazards(o, &b.Hazards)
	acidity := o.Field("pH")
	if metal != nil && (metal.Kind != "text" || metal.Text == "") {
		o.Keep(metal.Fail(nil, `is %s; need a symbol in quotes, as "Au"`, strictjson.Describe(metal)))
	}
	if err := o.Done(); err != nil {
		return err
	}
	b.Metal = metal.Text
	if err := readDeposit(n, b, metal, valence, hasDensity, mix); err != nil {
		return err
	}
	if err := readEfficiency(eff, l); err != nil {
		return err
	}
	if err := readWindow(window, &b.Window.Low, &b.Window.High, nil); err != nil {
		return err
	}
	if err := readPH(acidity, &b.PH); err != nil {
		return err
	}
	if err := readWindow(volts, &b.Volts.Low, &b.Volts.High, nil); err != nil {
		return err
	}
	setting := func(o *strictjson.Reader) { o.Quantity("set", &b.Temperature.Set) }
	if err := readWindow(heat, &b.Temperature.Low, &b.Temperature.High, setting); err != nil {
		return err
	}
	if err := b.Check(); err != nil {
		return n.Fail(err, "%v", err)
	}
	return nil
}

// readPH reads "pH": 4.4, or its low and high end.
func readPH(n *strictjson.Node, r *plating.PHWindow) error {
	if n == nil {
		return nil
	}
	if n.Kind == "object" {
		o := strictjson.Object(n)
		o.Scan(o.Must("low", "a number as 4.2"), &r.Low, true)
		o.Scan(o.Must("high", "a number as 4.8"), &r.High, true)
		if err := o.Done(); err != nil {
			return err
		}
		if r.Low > r.High {
			return n.Fail(units.ErrInconsistent, "runs from %s to %s; need the low end first", r.Low, r.High)
		}
	} else {
		o := strictjson.On(n)
		o.Scan(n, &r.Low, true)
		if r.High = r.Low; o.Err() != nil {
			return o.Err()
		}
	}
	return nil
}

func readHazards(o *strictjson.Reader, h *plating.Hazard) {
	for _, f := range o.Items("hazards", "words", false) {
		var one plating.Hazard
		strictjson.Word(o, f, &one)
		*h |= one
	}
}

// readWindow reads the two ends of a range, either of which may be missing, and
// what else stands beside them.
func readWindow[Q units.Quantity, P strictjson.Pointer[Q]](n *strictjson.Node, low, high P,
	more func(*strictjson.Reader)) error {
	if n == nil {
		return nil
	}
	o := strictjson.Object(n)
	o.Quantity("low", low)
	o.Quantity("high", high)
	if more != nil {
		more(o)
	}
	if err := o.Done(); err != nil {
		return err
	}
	if err := units.NonNegative("low", *low); err != nil {
		return n.Fail(err, "%v", err)
	}
	if err := units.NonNegative("high", *high); err != nil {
		return n.Fail(err, "%v", err)
	}
	if *high != 0 && *low > *high {
		err := &units.ValueError{Field: "window", Value: (*low).String() + " to " + (*high).String(),
			Need: "the low end first", Err: units.ErrInconsistent}
		return n.Fail(err, "runs from %s to %s; need the low end first", *low, *high)
	}
	return nil
}

// readDeposit finds equivalent, density and share of the counted metal, from
// one metal and valence or from a list of constituents.
func readDeposit(n *strictjson.Node, b *plating.Bath, metal *strictjson.Node, valence int, hasDensity bool,
	mix *strictjson.Node) error {
	e, err := faraday.Lookup(b.Metal)
	if err != nil {
		return metal.Fail(err, "%v", err)
	}
	if !hasDensity {
		if b.Deposit.Density = e.Density; e.Density == 0 {
			return n.Fail(nil, `field "density" is missing and %s has no usual one here`, e.Symbol)
		}
	}
	if mix == nil {
		if err := likely(n, b.Deposit.Density, e.Density, e.Symbol); err != nil {
			return err
		}
		if valence == 0 {
			valence = e.UsualValence()
		}
		if err := e.CheckValence(valence); err != nil {
			return n.Fail(err, "%v", err)
		}
		b.Valence = valence
		b.Deposit.Equivalent, err = faraday.EquivalentOf(e.Weight.Value, valence)
		if err != nil {
			return n.Fail(err, "%v", err)
		}
		return nil
	}
	if valence != 0 {
		return n.Fail(nil, `"valence" belongs to each of the "constituents" when they are given`)
	}
	if !hasDensity {
		return n.Fail(nil, `field "density" is missing; need the density of the deposit when it has several constituents`)
	}
	list := strictjson.On(n)
	items := list.ItemsOf(mix, "constituents of the deposit", true)
	if list.Err() != nil {
		return list.Err()
	}
	var parts []faraday.Part
	var volumes bulk
	for _, item := range items {
		o := strictjson.Object(item)
		symbol, valence, inclusion := o.Text("metal"), o.Whole("valence", 1, 8, 0), o.Yes("inclusion")
		var w units.MassFraction
		if f := o.Must("share", `a share of the mass, as "99.7 %"`); f != nil {
			strictjson.Share(o, f, &w)
		}
		if err := o.Done(); err != nil {
			return err
		}
		if inclusion != (symbol == "") {
			return item.Fail(nil, `need either "metal" with its symbol, or "inclusion": true for what is built in without charge`)
		}
		if inclusion && valence != 0 {
			return item.Fail(nil, `an inclusion has no "valence": it is built in without charge`)
		}
		p := faraday.Part{Share: w}
		if !inclusion {
			if p, err = faraday.PartOf(symbol, valence, w); err != nil {
				return item.Fail(err, "%v", err)
			}
			metal, err := faraday.Lookup(symbol)
			if err != nil {
				return item.Fail(err, "%v", err)
			}
			volumes.add(w, metal.Density)
			b.Hazards |= plating.MetalHazards(symbol)
			if symbol == b.Metal {
				if b.Valence = valence; valence == 0 {
					b.Valence = metal.UsualValence()
				}
				b.Fine += w
			}
		}
		parts = append(parts, p)
	}
	if b.Fine == 0 {
		return mix.Fail(nil, "%s is not among them; need the counted metal with its share", b.Metal)
	}
	if b.Deposit.Equivalent, err = faraday.MixedEquivalent(parts...); err != nil {
		return mix.Fail(err, "%v", err)
	}
	return likely(n, b.Deposit.Density, volumes.density(), "the metals of the deposit")
}

// A share of the mass of some metals and the room they take.
type bulk struct {
	share, room float64
	unknown     bool // a metal without a usual density
}

func (v *bulk) add(w units.MassFraction, d units.Density) {
	if d == 0 {
		v.unknown = true
		return
	}
	v.share, v.room = v.share+float64(w), v.room+float64(w)/float64(d)
}

// density is that of the metals together, by their volumes; 0 when not known.
func (v *bulk) density() units.Density {
	if v.unknown || v.room == 0 {
		return 0
	}
	return units.Density(v.share / v.room)
}

// likely refuses a density that can only be a slip of the point or the unit:
// deposits are lighter than the bulk by some tenths at most.
func likely(n *strictjson.Node, d, bulk units.Density, of string) error {
	err := faraday.CheckDensity(d, bulk, of)
	if err == nil {
		return nil
	}
	f := strictjson.On(n).Member("density")
	if f == nil {
		f = n
	}
	return f.Fail(err, "%v", err)
}
