package jobfile

import (
	"example.com/laydown/plating"
	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/plating/traveller"
	"example.com/laydown/units"
)

// readEfficiency reads a share, a band with a low and a high end, or points of
// a curve, each a share or a band. The middle of a band is what is computed
// with; its ends go to the layer's Low and High.
func readEfficiency(n *strictjson.Node, l *traveller.Layer) error {
	if n.Kind != "list" {
		v, err := readEfficiencyBand(n)
		if err != nil {
			return err
		}
		l.Bath.Efficiency = plating.ConstantEfficiency(v.middle())
		if v.low < v.high {
			l.Low, l.High = plating.ConstantEfficiency(v.low), plating.ConstantEfficiency(v.high)
		}
		return nil
	}
	var low, middle, high []plating.EfficiencyPoint
	band := false
	for _, item := range n.Values {
		o := strictjson.Object(item)
		var j units.CurrentDensity
		var v efficiencyBand
		known := strictjson.Positive(o, "current_density", &j)
		if f := o.Field("efficiency"); f != nil {
			strictjson.Share(o, f, &v.low)
			v.high = v.low
			if o.Field("low") != nil || o.Field("high") != nil {
				o.Keep(item.Fail(nil, `need either "efficiency" or "low" and "high"`))
			}
		} else if a, b := o.Field("low"), o.Field("high"); a != nil && b != nil {
			strictjson.Share(o, a, &v.low)
			strictjson.Share(o, b, &v.high)
		} else {
			known = false
		}
		if !known {
			o.Keep(item.Fail(nil, `need "current_density" and "efficiency", or "current_density", "low" and "high"`))
		}
		if err := o.Done(); err != nil {
			return err
		}
		if v.low > v.high {
			return item.Fail(units.ErrInconsistent, "runs from %s to %s; need the low end first", v.low.Percent(-1),
				v.high.Percent(-1))
		}
		band = band || v.low < v.high
		low = append(low, plating.EfficiencyPoint{CurrentDensity: j, Efficiency: v.low})
		middle = append(middle, plating.EfficiencyPoint{CurrentDensity: j, Efficiency: v.middle()})
		high = append(high, plating.EfficiencyPoint{CurrentDensity: j, Efficiency: v.high})
	}
	var err error
	if l.Bath.Efficiency, err = plating.NewEfficiencyCurve(middle...); err != nil {
		return n.Fail(err, "%v", err)
	}
	if !band {
		return nil
	}
	if l.Low, err = plating.NewEfficiencyCurve(low...); err != nil {
		return n.Fail(err, "%v", err)
	}
	if l.High, err = plating.NewEfficiencyCurve(high...); err != nil {
		return n.Fail(err, "%v", err)
	}
	return nil
}

type efficiencyBand struct{ low, high units.Efficiency }

func (v efficiencyBand) middle() units.Efficiency {
	if v.low == v.high {
		return v.low
	}
	return v.low + (v.high-v.low)/2
}

// readEfficiencyBand reads "35 %" or {"low": "30 %", "high": "40 %"}.
func readEfficiencyBand(n *strictjson.Node) (v efficiencyBand, err error) {
	if n.Kind != "object" {
		o := strictjson.On(n)
		strictjson.Share(o, n, &v.low)
		v.high = v.low
		return v, o.Err()
	}
	o := strictjson.Object(n)
	if a, b := o.Must("low", "the lowest it has been"), o.Must("high", "the highest it has been"); a != nil && b != nil {
		strictjson.Share(o, a, &v.low)
		strictjson.Share(o, b, &v.high)
	}
	if err := o.Done(); err != nil {
		return v, err
	}
	if v.low > v.high {
		return v, n.Fail(units.ErrInconsistent, "runs from %s to %s; need the low end first", v.low.Percent(-1),
			v.high.Percent(-1))
	}
	return v, nil
}
