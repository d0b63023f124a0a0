package jobfile

import (
	"errors"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/plating/baths"
	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/plating/traveller"
	"example.com/laydown/units"
)

// readWish reads what is asked of the sequence as a whole.
func readWish(o *strictjson.Reader, job *traveller.Job) {
	if f := o.Field("finish"); f != nil {
		strictjson.Word(o, f, &job.Finish)
	}
	job.SkinContact, job.HighStrength = o.Yes("skin_contact"), o.Yes("high_strength")
	job.Relieved = o.Yes("stress_relieved")
	hasTensile := strictjson.Positive(o, "tensile_strength", &job.Tensile)
	if hasTensile {
		if err := sequence.CheckTensile(job.Tensile); err != nil {
			o.Keep(o.Member("tensile_strength").Fail(err, "%v", err))
		}
	}
	if f := o.Field("hardness"); f != nil {
		if hasTensile {
			o.Keep(f.Fail(units.ErrInconsistent, `need either "tensile_strength" or "hardness", not both`))
		}
		var err error
		if job.Tensile, err = sequence.TensileFromHardness(f.Text); err != nil {
			o.Keep(f.Fail(err, "%v", err))
		}
	}
	strictjson.Positive(o, "min_thickness", &job.MinThickness)
	readDistribution(o, &job.Distribution, false)
}

// fits holds the fields of a job that has a sequence against each other, and
// turns the substrate into one that has a practice.
func fits(tree *strictjson.Node, o *strictjson.Reader, job *traveller.Job, steps *strictjson.Node) error {
	planned := job.Finish != sequence.FinishUnknown
	for _, name := range []string{"skin_contact", "high_strength", "stress_relieved", "tensile_strength", "hardness"} {
		if f := o.Member(name); f != nil && !planned && steps == nil {
			return f.Fail(units.ErrInconsistent, `goes with a "finish" or a "sequence", and there is none`)
		}
	}
	for _, name := range []string{"min_thickness", "min_to_average", "basis", "readings", "shape_class", "uncertainty"} {
		if f := o.Member(name); f != nil && len(job.Layers) > 0 {
			return f.Fail(units.ErrInconsistent, `belongs into each of the "layers" when they are given`)
		}
	}
	if len(job.Layers) == 0 {
		if job.MinThickness == 0 {
			return tree.Fail(units.ErrNotPositive,
				`field "min_thickness" is missing; need the thickness of the finish at its thinnest spot, as "1 µm"`)
		}
		if job.Distribution.MinToAverage == 0 {
			return tree.Fail(units.ErrNotPositive,
				`field "min_to_average" is missing; need thinnest over average thickness, 1 only for an even coat`)
		}
	}
	if !planned && steps == nil {
		return nil
	}
	f := o.Member("substrate")
	if f == nil {
		return tree.Fail(units.ErrInconsistent, `field "substrate" is missing; preparation and strike hang on the base metal`)
	}
	var err error
	if job.Base, err = sequence.ParseSubstrate(f.Text); err != nil {
		return f.Fail(err, "%v", err)
	}
	if _, err := sequence.PracticeFor(job.Base); err != nil {
		return f.Fail(err, "%v", err) // it says how to find out
	}
	return nil
}

// readLayerBath reads the bath of a layer: one that is known by its key, or
// the shop's own.
func readLayerBath(n *strictjson.Node, l *traveller.Layer, known []baths.Bath) error {
	o := strictjson.Object(n)
	whole, like, salt := o.Field("library"), o.Field("like"), o.Field("salt")
	if f := o.Field("evaporation"); f != nil {
		l.Evaporation = new(units.Volume)
		if o.Scan(f, l.Evaporation, false) && *l.Evaporation < 0 {
			o.Keep(f.Fail(units.ErrNegative, "is %s; need zero or more, in the time of a load", strictjson.Describe(f)))
		}
	}
	if salt != nil {
		if salt.Kind != "text" {
			return salt.Fail(nil, `is %s; need a formula in quotes, as "KAu(CN)2"`, strictjson.Describe(salt))
		}
		var err error
		if l.Bath.Salt, err = faraday.ParseFormula(salt.Text); err != nil {
			return salt.Fail(err, "%v", err)
		}
	}
	get := func(f *strictjson.Node) error {
		if f.Kind != "text" {
			return f.Fail(nil, "is %s; need the key of a library bath in quotes", strictjson.Describe(f))
		}
		var err error
		if l.Library, err = baths.Find(known, f.Text); err != nil {
			return f.Fail(err, "%v", err)
		}
		return nil
	}
	switch {
	case whole != nil && like != nil:
		return like.Fail(units.ErrInconsistent, `need either "library" or "like", not both`)
	case whole != nil:
		if err := get(whole); err != nil {
			return err
		}
		l.Whole = true
		if err := readLibraryBath(n, o, l); err != nil {
			return err
		}
	default:
		if like != nil {
			if err := get(like); err != nil {
				return err
			}
		}
		if err := readOwnBath(n, o, l); err != nil {
			return err
		}
		if like != nil && l.Library.Metal != l.Bath.Metal {
			return like.Fail(units.ErrInconsistent, "is a bath of %s; need one of %s", l.Library.Metal, l.Bath.Metal)
		}
	}
	if salt == nil {
		return nil
	}
	if _, err := faraday.MetalContent(l.Bath.Salt, l.Bath.Metal); err != nil {
		return salt.Fail(err, "%v", err)
	}
	return nil
}

// readLibraryBath reads how a bath of the library is run here. A current
// density that the layer leaves open is the middle of the bath's range.
func readLibraryBath(n *strictjson.Node, o *strictjson.Reader, l *traveller.Layer) error {
	var p baths.Point
	strictjson.Positive(o, "content", &p.Content)
	strictjson.Positive(o, "volume", &p.Volume)
	var limit units.Ratio
	vessel := readVessel(o)
	strictjson.Share(o, o.Field("draw_limit"), &limit)
	if heat := o.Field("temperature"); heat != nil {
		h := strictjson.Object(heat)
		if !strictjson.Positive(h, "set", &p.Temperature) {
			h.Keep(heat.Fail(nil, `need "set", the temperature the bath is run at`))
		}
		if err := h.Done(); err != nil {
			return err
		}
	}
	if err := o.Done(); err != nil {
		return err
	}
	if l.CurrentDensity == 0 && (l.MinThickness == 0 || l.Time == 0) {
		l.CurrentDensity = l.Library.CurrentDensity.Mid()
	}
	if l.MinThickness == 0 && l.Time == 0 {
		l.Time = l.Library.Time.Mid() // a strike's usual immersion time
	}
	p.CurrentDensity = l.CurrentDensity
	b, err := l.Library.At(p)
	var outside *units.RangeError
	if err != nil && !(errors.As(err, &outside) && b.Name != "") {
		return n.Fail(err, "%v", err)
	}
	b.DrawLimit = limit
	if !l.Bath.Salt.IsZero() { // the file names one
		b.Salt = l.Bath.Salt
	}
	if vessel != nil {
		b.Vessel = *vessel
	}
	l.Bath = b
	return nil
}

// readVessel reads what a tank is made of; nil when it is not given.
func readVessel(o *strictjson.Reader) *plating.Vessel {
	f := o.Field("vessel")
	if f == nil {
		return nil
	}
	v := new(plating.Vessel)
	strictjson.Word(o, f, v)
	return v
}
