package jobfile

import (
	"strings"

	"example.com/laydown/plating"
	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/plating/throwing"
	"example.com/laydown/units"
)

// readDistribution reads the ratio of thinnest to average: as a number with where
// it comes from and how sure it is, as thicknesses read on a trial piece, or as
// a class of shape.
func readDistribution(o *strictjson.Reader, d *plating.Distribution, needed bool) {
	ratio, readings, class := o.Field("min_to_average"), o.Field("readings"), o.Field("shape_class")
	basis := o.Field("basis")
	given := 0
	for _, f := range []*strictjson.Node{ratio, readings, class} {
		if f != nil {
			given++
		}
	}
	switch {
	case given == 0 && needed:
		o.Must("min_to_average", "thinnest over average thickness, 1 only for an even coat")
		return
	case given > 1:
		last := class
		if last == nil {
			last = readings
		}
		o.Keep(last.Fail(units.ErrInconsistent, `need one of "min_to_average", "readings" and "shape_class"`))
	case ratio != nil:
		strictjson.Share(o, ratio, &d.MinToAverage)
		d.Basis = o.Text("basis")
	case readings != nil:
		readReadings(o, readings, d)
	case class != nil:
		readClass(o, class, d)
	}
	if basis != nil && given == 1 && ratio == nil {
		o.Keep(basis.Fail(units.ErrInconsistent,
			`goes with "min_to_average": readings and a class say themselves where they come from`))
	}
	if u := o.Field("uncertainty"); u != nil {
		strictjson.Share(o, u, &d.Uncertainty)
		if given == 0 {
			o.Keep(u.Fail(units.ErrInconsistent, `goes with "min_to_average", "readings" or "shape_class"`))
		}
	}
}

func readReadings(o *strictjson.Reader, f *strictjson.Node, d *plating.Distribution) {
	var list []units.Length
	for _, item := range o.ItemsOf(f, "thicknesses", true) {
		var s units.Length
		o.Scan(item, &s, false)
		list = append(list, s)
	}
	if o.Err() != nil {
		return
	}
	v, err := throwing.FromReadings(list)
	if err != nil {
		o.Keep(f.Fail(err, "%v", err))
		return
	}
	*d = v
}

func readClass(o *strictjson.Reader, f *strictjson.Node, d *plating.Distribution) {
	var words []string
	for c := throwing.SmoothRound; c <= throwing.OpenRecess; c++ {
		if f.Kind == "text" && f.Text == c.String() {
			v, err := c.Distribution()
			if err != nil {
				o.Keep(f.Fail(err, "%v", err))
			}
			*d = v
			return
		}
		words = append(words, `"`+c.String()+`"`)
	}
	o.Keep(f.Fail(units.ErrOutOfRange, "is %s; need one of %s; for anything deeper compute or measure the ratio",
		strictjson.Describe(f), strings.Join(words, "; ")))
}
