package jobfile

import (
	"example.com/laydown/plating/axi"
	"example.com/laydown/plating/current"
	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/units"
)

func readPoint(n *strictjson.Node) (axi.Point, error) {
	var p axi.Point
	if n == nil {
		return p, nil // the missing field is reported by its reader
	}
	o := strictjson.On(n)
	list := o.ItemsOf(n, "radius and height", true)
	if o.Err() == nil && len(list) != 2 {
		return p, n.Fail(nil, "has %d items; need two, radius and height", len(list))
	}
	if o.Err() == nil {
		o.Scan(list[0], &p.R, false)
		o.Scan(list[1], &p.Z, false)
	}
	return p, o.Err()
}

func readLaw(n *strictjson.Node) (current.Law, error) {
	o := strictjson.Object(n)
	model := current.Model(o.Choice("model", "primary", "linear", "tafel", "butler-volmer"))
	law := current.Law{Model: model}
	var alpha, anodic, cathodic units.Ratio
	switch model {
	case current.Linear:
		o.Quantity("resistance", &law.Resistance)
	case current.Tafel:
		o.Quantity("exchange", &law.Exchange)
		o.Scan(o.Field("alpha"), &alpha, true)
		o.Quantity("temperature", &law.Temperature)
		law.Cathodic = float64(alpha)
	case current.ButlerVolmer:
		o.Quantity("exchange", &law.Exchange)
		o.Scan(o.Field("anodic"), &anodic, true)
		o.Scan(o.Field("cathodic"), &cathodic, true)
		o.Quantity("temperature", &law.Temperature)
		law.Anodic, law.Cathodic = float64(anodic), float64(cathodic)
	}
	if err := o.Done(); err != nil {
		return law, err
	}
	if err := law.Check(); err != nil {
		return law, n.Fail(err, "%v", err)
	}
	return law, nil
}
