package jobfile

import (
	"io"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/units"
)

// Format is the value of the field "format" that this package reads.
const Format = "laydown job 1"

// Read reads a job file. The package comment describes it.
//
// Every quantity is checked as far as it can be by itself; what only shows when
// the job is computed comes from [plating.EstimateJob].
//
// Errors: an [*Error] with line and field.
func Read(r io.Reader) (plating.Job, error) {
	job, err := readJob(r)
	if err != nil {
		return plating.Job{}, atPlace(err)
	}
	return job, nil
}

func readJob(r io.Reader) (plating.Job, error) {
	tree, err := strictjson.Read(r, strictjson.Doc{What: "job", Need: "an object with job, parts and layers"})
	if err != nil {
		return plating.Job{}, err
	}
	o := strictjson.Object(tree)
	if f := o.Must("format", `"`+Format+`"`); f != nil && (f.Kind != "text" || f.Text != Format) {
		o.Keep(f.Fail(nil, "is %s; need %q", strictjson.Describe(f), Format))
	}
	job := plating.Job{Name: o.Text("job"), Substrate: o.Text("substrate")}
	parts := o.Items("parts", "a list of parts", true)
	layers := o.Items("layers", "a list of plated layers, the first one first", true)
	if err := o.Done(); err != nil {
		return plating.Job{}, err
	}
	for _, n := range parts {
		p, err := readPart(n)
		if err != nil {
			return plating.Job{}, err
		}
		job.Parts = append(job.Parts, p)
	}
	area, err := plating.LoadArea(job.Parts...)
	if err != nil {
		return plating.Job{}, &strictjson.Error{Line: tree.Line, Path: "parts", What: err.Error(), Err: err}
	}
	for _, n := range layers {
		l, err := readLayer(n, area)
		if err != nil {
			return plating.Job{}, err
		}
		job.Layers = append(job.Layers, l)
	}
	return job, nil
}

func readPart(n *strictjson.Node) (plating.Part, error) {
	o := strictjson.Object(n)
	p := plating.Part{Name: o.Text("name"), Count: o.Whole("count", 1, 1_000_000, 1)}
	given := strictjson.Positive(o, "area", &p.Area)
	shape := o.Field("shape")
	mask := o.Field("masked")
	var masked units.Area
	hasMask := o.Scan(mask, &masked, false)
	if err := o.Done(); err != nil {
		return p, err
	}
	switch {
	case given == (shape != nil):
		return p, n.Fail(nil, `need either "area" (of one piece) or "shape"`)
	case shape != nil:
		a, err := readShape(shape)
		if err != nil {
			return p, err
		}
		p.Area = a
	}
	if hasMask {
		if err := units.NonNegative("masked area", masked); err != nil {
			return p, mask.Fail(err, "%v", err)
		}
		if masked >= p.Area {
			return p, mask.Fail(nil, "is %s and leaves nothing of %s; need less than the area of one piece", masked, p.Area)
		}
		p.Area -= masked
		p.Masked = masked
	}
	return p, nil
}

func readLayer(n *strictjson.Node, load units.Area) (plating.Layer, error) {
	o := strictjson.Object(n)
	l := plating.Layer{Name: o.Text("name"), CountBelow: o.Yes("count_below")}
	l.Role = [...]plating.Role{plating.RoleFinish, plating.RoleStrike, plating.RoleUnder}[o.Choice("role", "finish", "strike", "underplate")]
	bath := o.Must("bath", "the bath as an object")
	if ratio := o.Must("min_to_mean", "thinnest over mean thickness, 1 only for an even coat"); ratio != nil {
		strictjson.Share(o, ratio, &l.Distribution.MinToMean)
	}
	l.Distribution.Basis = o.Text("basis")
	strictjson.Positive(o, "area", &l.Area)
	strictjson.Positive(o, "promise", &l.Promise)
	strictjson.Positive(o, "time", &l.Time)
	density := strictjson.Positive(o, "current_density", &l.CurrentDensity)
	var current units.Current
	if strictjson.Positive(o, "current", &current) {
		f := o.Member("current")
		if density {
			o.Keep(f.Fail(nil, `need either "current" or "current_density", not both`))
		}
		area := l.Area
		if area == 0 {
			area = load
		}
		j, err := current.PerArea(area)
		if err != nil {
			o.Keep(f.Fail(err, "%v", err))
		}
		l.CurrentDensity = j
	}
	if err := o.Done(); err != nil {
		return l, err
	}
	var err error
	if l.Bath, err = readBath(bath); err != nil {
		return l, err
	}
	probe := l
	if probe.Area == 0 {
		probe.Area = load
	}
	if err := probe.Check(); err != nil {
		return l, n.Fail(err, "%v", err)
	}
	return l, nil
}

func readBath(n *strictjson.Node) (plating.Bath, error) {
	o := strictjson.Object(n)
	b := plating.Bath{Name: o.Text("name"), Source: o.Text("source")}
	metal := o.Must("metal", `the symbol of the counted metal, as "Au"`)
	valence := o.Whole("valence", 1, 8, 0)
	hasDensity := strictjson.Positive(o, "density", &b.Deposit.Density)
	mix := o.Field("constituents")
	eff := o.Must("efficiency", `a share as "35 %", or a list of points`)
	window, volts, heat := o.Field("window"), o.Field("volts"), o.Field("temperature")
	strictjson.Positive(o, "content", &b.Content)
	strictjson.Positive(o, "volume", &b.Volume)
	strictjson.Share(o, o.Field("draw_limit"), &b.DrawLimit)
	strictjson.Positive(o, "most_thickness", &b.MostThickness)
	b.InsolubleAnode = o.Choice("anode", "not given", "soluble", "insoluble") == 2
	for _, h := range o.Items("hazards", "words", false) {
		flag, ok := hazardWords[h.Text]
		if h.Kind != "text" || !ok {
			o.Keep(h.Fail(nil, "is %s; need one of acid, ammonia, caustic, chromate, cyanide, fluoride, hot, nickel", strictjson.Describe(h)))
		}
		b.Hazards |= flag
	}
	if metal != nil && (metal.Kind != "text" || metal.Text == "") {
		o.Keep(metal.Fail(nil, `is %s; need a symbol in quotes, as "Au"`, strictjson.Describe(metal)))
	}
	if err := o.Done(); err != nil {
		return b, err
	}
	b.Metal = metal.Text
	if err := readDeposit(n, &b, metal, valence, hasDensity, mix); err != nil {
		return b, err
	}
	var err error
	if b.Efficiency, err = readEfficiency(eff); err != nil {
		return b, err
	}
	if err := readWindow(window, &b.Window.Low, &b.Window.High, nil); err != nil {
		return b, err
	}
	if err := readWindow(volts, &b.Volts.Low, &b.Volts.High, nil); err != nil {
		return b, err
	}
	setting := func(o *strictjson.Reader) { o.Quantity("set", &b.Heat.Set) }
	if err := readWindow(heat, &b.Heat.Low, &b.Heat.High, setting); err != nil {
		return b, err
	}
	if err := b.Check(); err != nil {
		return b, n.Fail(err, "%v", err)
	}
	return b, nil
}

var hazardWords = map[string]plating.Hazard{
	"cyanide": plating.HazardCyanide, "acid": plating.HazardAcid, "caustic": plating.HazardCaustic,
	"nickel": plating.HazardNickel, "hot": plating.HazardHot, "ammonia": plating.HazardAmmonia,
	"chromate": plating.HazardChromate, "fluoride": plating.HazardFluoride,
}

// readWindow reads the two ends of a range, either of which may be missing, and
// what else stands beside them.
func readWindow[Q units.Quantity, P strictjson.Pointer[Q]](n *strictjson.Node, low, high P, more func(*strictjson.Reader)) error {
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
		err := &units.ValueError{Field: "window", Value: (*low).String() + " to " + (*high).String(), Need: "the low end first", Err: units.ErrInconsistent}
		return n.Fail(err, "runs from %s to %s; need the low end first", *low, *high)
	}
	return nil
}

// readDeposit finds equivalent, density and share of the counted metal, from
// one metal and valence or from a list of constituents.
func readDeposit(n *strictjson.Node, b *plating.Bath, metal *strictjson.Node, valence int, hasDensity bool, mix *strictjson.Node) error {
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
		if valence == 0 {
			valence = e.UsualValence()
		}
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
			if symbol == b.Metal {
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
	return nil
}

func readEfficiency(n *strictjson.Node) (plating.EfficiencyCurve, error) {
	if n.Kind != "list" {
		var eff units.Efficiency
		o := strictjson.On(n)
		strictjson.Share(o, n, &eff)
		return plating.ConstantEfficiency(eff), o.Err()
	}
	var points []plating.EfficiencyPoint
	for _, item := range n.Values {
		o := strictjson.Object(item)
		var p plating.EfficiencyPoint
		if !strictjson.Positive(o, "current_density", &p.CurrentDensity) || !strictjson.Share(o, o.Field("efficiency"), &p.Efficiency) {
			o.Keep(item.Fail(nil, `need "current_density" and "efficiency"`))
		}
		if err := o.Done(); err != nil {
			return plating.EfficiencyCurve{}, err
		}
		points = append(points, p)
	}
	c, err := plating.NewEfficiencyCurve(points...)
	if err != nil {
		return c, n.Fail(err, "%v", err)
	}
	return c, nil
}
