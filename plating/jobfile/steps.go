package jobfile

import (
	"strconv"

	"example.com/laydown/plating"
	"example.com/laydown/plating/baths"
	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/plating/traveller"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// readSteps reads the shop's own sequence.
func readSteps(n *strictjson.Node, layers []traveller.Layer) ([]traveller.Step, error) {
	if n == nil {
		return nil, nil
	}
	list := strictjson.On(n)
	items := list.ItemsOf(n, "tanks, the first one first", true)
	if list.Err() != nil {
		return nil, list.Err()
	}
	var steps []traveller.Step
	next := 0
	for _, item := range items {
		s, err := readStep(item, layers)
		if err != nil {
			return nil, err
		}
		if s.Layer > 0 {
			if next++; s.Layer != next {
				return nil, item.Fail(units.ErrInconsistent,
					"lays layer %s; need %s here: each layer comes once, the first one first", called(layers, s.Layer), called(layers,
						next))
			}
		}
		steps = append(steps, s)
	}
	if next < len(layers) {
		return nil, n.Fail(units.ErrInconsistent, "has no tank for layer %s; need one for each layer, the first one first",
			called(layers, next+1))
	}
	return steps, nil
}

// called is the name of a layer, or its number.
func called(layers []traveller.Layer, number int) string {
	if number > len(layers) {
		return "none"
	}
	if name := layers[number-1].Name; name != "" {
		return strconv.Quote(name)
	}
	return strconv.Itoa(number)
}

func readStep(n *strictjson.Node, layers []traveller.Layer) (traveller.Step, error) {
	o := strictjson.Object(n)
	var s traveller.Step
	s.Tank.LiveEntry = o.Yes("live_entry")
	strictjson.Positive(o, "wait", &s.Tank.Wait)
	if f := o.Field("layer"); f != nil {
		s.Layer = layerNumber(f, layers)
		if s.Layer == 0 {
			return s, f.Fail(units.ErrInconsistent, "is %s; need the name of a layer, or its number from 1 to %d",
				strictjson.Describe(f), len(layers))
		}
		return s, o.Done()
	}
	t := &s.Tank
	kind := o.Must("kind", `what the tank is for, or "layer" with the coat that it lays`)
	if kind != nil {
		strictjson.Word(o, kind, &t.Kind)
	}
	t.Name = o.Text("name")
	switch t.Kind {
	case sequence.Strike, sequence.Underplate, sequence.Plate:
		o.Keep(kind.Fail(units.ErrInconsistent, `is %s; need "layer" for a tank that plates`, strictjson.Describe(kind)))
	case sequence.Rinse, sequence.FinalRinse, sequence.DragOut:
		t.Rinse = sequence.RinseSet{Stages: o.Whole("stages", 1, 9, 1), Station: o.Text("station"),
			Deionised: o.Yes("deionised"), Acidified: o.Yes("acidified")}
		other := sequence.Running
		if t.Kind == sequence.DragOut {
			other = sequence.Still
		}
		flows := []sequence.Flow{other, sequence.Still, sequence.Running, sequence.Counterflow, sequence.Spray}
		if o.Field("flow") != nil {
			t.Rinse.Flow = flows[1+o.Choice("flow", "still", "running", "counterflow", "spray")]
		} else {
			t.Rinse.Flow = other
		}
	default:
		if err := readProcess(o, t); err != nil {
			return s, err
		}
	}
	if err := o.Done(); err != nil {
		return s, err
	}
	if t.Kind == sequence.KindUnknown {
		return s, kind.Fail(units.ErrInconsistent, "is unknown; need what the tank is for")
	}
	if err := t.Check(); err != nil {
		return s, n.Fail(err, "%v", err)
	}
	return s, nil
}

// layerNumber finds the layer that a step names; 0 when there is none.
func layerNumber(f *strictjson.Node, layers []traveller.Layer) int {
	switch f.Kind {
	case "number":
		if k, err := strconv.Atoi(f.Text); err == nil && k >= 1 && k <= len(layers) {
			return k
		}
	case "text":
		for i := range layers {
			if layers[i].Name != "" && layers[i].Name == f.Text {
				return i + 1
			}
		}
	}
	return 0
}

// readProcess reads a tank that cleans, activates, dries or bakes.
func readProcess(o *strictjson.Reader, t *sequence.Tank) error {
	q := &t.Process
	q.Chemistry, q.Source, q.Strong, q.Mild = o.Text("holds"), origin.Job, o.Yes("strong"), o.Yes("mild")
	if f := o.Member("mild"); q.Strong && q.Mild {
		o.Keep(f.Fail(units.ErrInconsistent, `need either "strong" or "mild"`))
	}
	q.Seen = origin.Given
	q.Polarity = [...]sequence.Polarity{sequence.NoCurrent, sequence.Cathodic, sequence.Anodic}[o.Choice("polarity",
		"no current", "cathodic", "anodic")]
	for _, f := range o.Items("does", "words", false) {
		e, ok := effectWords[f.Text]
		if f.Kind != "text" || !ok {
			o.Keep(f.Fail(nil, "is %s; need one of activate, clean, deoxidise, desmut, etch, zincate", strictjson.Describe(f)))
		}
		q.Effect |= e
	}
	readHazards(o, &q.Hazards)
	if t.Kind == sequence.Activate &&
		o.Member("hazards") == nil && plating.NamedHazards(q.Chemistry, t.Name) == 0 && q.Chemistry != "" {
		o.Keep(o.Member("kind").Fail(nil, `field "hazards" is missing, and what the tank holds tells none; `+
			`need a list of words, empty when there are none: the check for hydrogen cyanide goes by it`))
	}
	if v := readVessel(o); v != nil {
		t.Vessel = *v
	}
	q.Counter.Text = o.Text("counter")
	if q.Counter.Text != "" {
		q.Counter.Source, q.Counter.Seen = origin.Job, origin.Given
	}
	acidity := o.Field("pH")
	heat, density, volts, time := o.Field("temperature"), o.Field("current_density"), o.Field("volts"), o.Field("time")
	if err := o.Err(); err != nil {
		return err
	}
	if err := firstError(readPH(acidity, &q.PH), readOwnRange(heat, &q.Temperature), readOwnRange(density,
		&q.CurrentDensity), readOwnRange(volts, &q.Volts), readOwnRange(time, &q.Time)); err != nil {
		return err
	}
	return nil
}

var effectWords = map[string]sequence.Effect{
	"clean": sequence.EffectClean, "deoxidise": sequence.EffectDeoxidise, "activate": sequence.EffectActivate,
	"etch": sequence.EffectEtch, "desmut": sequence.EffectDesmut, "zincate": sequence.EffectZincate,
}

// readOwnRange reads a range of the shop's own tank: "20 s", or low and high.
func readOwnRange[Q units.Quantity, P strictjson.Pointer[Q]](n *strictjson.Node, r *baths.Range[Q]) error {
	if n == nil {
		return nil
	}
	r.Source, r.Seen = origin.Job, origin.Given
	if n.Kind == "object" {
		return readWindow[Q, P](n, &r.Low, &r.High, nil)
	}
	o := strictjson.On(n)
	o.Scan(n, P(&r.Low), false)
	r.High = r.Low
	if err := o.Err(); err != nil {
		return err
	}
	if err := units.Positive("value", r.Low); err != nil {
		return n.Fail(err, "is %s; need a value above zero", strictjson.Describe(n))
	}
	return nil
}

func firstError(all ...error) error {
	for _, err := range all {
		if err != nil {
			return err
		}
	}
	return nil
}
