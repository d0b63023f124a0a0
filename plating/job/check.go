package job

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/plating/bath"
	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/plating/price"
	"example.com/laydown/plating/rinse"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/plating/throwing"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// A Fault is what is wrong at one place of a job.
type Fault struct {
	Path string // as layers[1].bath.efficiency
	Err  error  // says what it holds and what would do
}

// Error returns path and reason in one line.
func (f *Fault) Error() string { return units.Printable(f.Path + ": " + f.Err.Error()) }

// Unwrap returns the reason.
func (f *Fault) Unwrap() error { return f.Err }

func fault(path string, err error) error {
	if err == nil {
		return nil
	}
	return &Fault{path, err}
}

// needs makes a fault in the words of a file.
func needs(path, format string, args ...any) error {
	return &Fault{path, &said{fmt.Sprintf(format, args...), units.ErrInconsistent}}
}

// said is a sentence with the kind of fault it tells.
type said struct {
	text string
	kind error
}

func (s *said) Error() string { return s.text }
func (s *said) Unwrap() error { return s.kind }

// Check holds the fields of a job against each other, and each bath against what an
// estimate takes.
//
// Errors: a [*Fault] with the place of the first.
func (j *Job) Check() error {
	if j == nil {
		return units.Missing("job", "a job with its parts")
	}
	// The area comes first: a layer that is given by its current has no current density without
	// it. The layers are checked before the sequence, which names them, and the price last, as
	// it counts the pieces.
	load, err := j.area()
	if err != nil {
		return err
	}
	if err := j.wish(); err != nil {
		return err
	}
	known := j.known()
	for i := range j.Layers {
		path := fmt.Sprintf("layers[%d]", i+1)
		if err := j.Layers[i].check(path, load, known); err != nil {
			return err
		}
	}
	if err := j.fits(); err != nil {
		return err
	}
	if err := j.steps(); err != nil {
		return err
	}
	if err := j.Rinse.check(len(j.Steps) > 0); err != nil {
		return err
	}
	return j.Price.check(j.pieces())
}

func (j *Job) pieces() int {
	n := 0
	for _, p := range j.Parts {
		n += p.Count
	}
	return n
}

// known are the baths that layers may name.
func (j *Job) known() []bath.Bath { return append(bath.Library(), j.Baths...) }

// area is that of the load.
func (j *Job) area() (units.Area, error) {
	parts, err := j.parts()
	if err != nil {
		return 0, err
	}
	a, err := plating.LoadArea(parts...)
	return a, fault("parts", err)
}

// parts are those of package plating: their area known, what is masked taken off.
func (j *Job) parts() ([]plating.Item, error) {
	if len(j.Parts) == 0 {
		return nil, needs("parts", "is empty; need a list of parts")
	}
	list := make([]plating.Item, len(j.Parts))
	for i := range j.Parts {
		p := &j.Parts[i]
		path := fmt.Sprintf("parts[%d]", i+1)
		ways := 0
		for _, is := range []bool{p.Area != 0, p.Shape != nil, p.Mesh != nil} {
			if is {
				ways++
			}
		}
		// Exactly one source of the area. Two could disagree, and nobody would see which was used.
		if ways != 1 {
			return nil, needs(path, `need one of "area" (of one piece), "shape" and "mesh"`)
		}
		a, err := p.area()
		if err != nil {
			return nil, fault(path, err)
		}
		if err := units.NonNegative("masked area", p.Masked); err != nil {
			return nil, fault(path+".masked", err)
		}
		if p.Masked > 0 && a <= 0 {
			return nil, needs(path+".masked", "is %s and leaves nothing of %s; need less than the area of one piece",
				p.Masked, a+p.Masked)
		}
		list[i] = plating.Item{Name: p.Name, Count: p.Count, Area: a, Masked: p.Masked}
	}
	return list, nil
}

// wish holds what is asked of the sequence against each other.
func (j *Job) wish() error {
	switch {
	case j.Tensile != 0 && j.Hardness != "":
		return needs("hardness", `need either "tensile_strength" or "hardness", not both`)
	case j.Tensile != 0:
		return fault("tensile_strength", sequence.CheckTensile(j.Tensile))
	}
	if _, err := j.tensile(); err != nil {
		return fault("hardness", err)
	}
	return nil
}

// tensile is the strength of the steel, as given or from its hardness; 0: not given.
func (j *Job) tensile() (units.Pressure, error) {
	if j.Hardness == "" {
		return j.Tensile, nil
	}
	return sequence.TensileFromHardness(j.Hardness)
}

// fits holds a job that has a sequence against what a sequence asks for.
func (j *Job) fits() error {
	planned, steps := j.Finish != sequence.FinishUnknown, len(j.Steps) > 0
	if len(j.Layers) == 0 && !planned {
		return needs("layers",
			`field "layers" is missing; need a list of plated layers, the first one first, or a "finish" to plan for`)
	}
	if len(j.Layers) == 0 && steps {
		return needs("layers", `field "layers" is missing; need the coats that the "sequence" names`)
	}
	if path := first("skin_contact", j.SkinContact, "high_strength", j.HighStrength, "stress_relieved", j.Relieved,
		"tensile_strength", j.Tensile != 0, "hardness", j.Hardness != ""); path != "" && !planned && !steps {
		return needs(path, `goes with a "finish" or a "sequence", and there is none`)
	}
	if len(j.Layers) > 0 {
		if path := first("min_thickness", j.MinThickness != 0, "min_to_average", j.MinToAverage != 0, "readings",
			len(j.Readings) > 0, "shape_class", j.ShapeClass != 0, "basis", j.Basis != "", "uncertainty",
			j.Uncertainty != 0); path != "" {
			return needs(path, `belongs into each of the "layers" when they are given`)
		}
	} else {
		if j.MinThickness == 0 {
			return needs("min_thickness",
				`field "min_thickness" is missing; need the thickness of the finish at its thinnest spot, as "1 µm"`)
		}
		if err := units.Positive("minimum thickness", j.MinThickness); err != nil {
			return fault("min_thickness", err)
		}
		if _, err := j.Evenness.distribution(""); err != nil {
			return err
		}
	}
	if !planned && !steps {
		return nil
	}
	if j.Substrate == "" {
		return needs("substrate", `field "substrate" is missing; preparation and strike depend on the base metal`)
	}
	base, err := sequence.ParseSubstrate(j.Substrate)
	if err == nil {
		_, err = sequence.PracticeFor(base) // it says how to find out
	}
	return fault("substrate", err)
}

// distribution is the evenness as an estimate takes it.
func (e *Evenness) distribution(path string) (plating.Distribution, error) {
	at := func(name string) string {
		if path == "" {
			return name
		}
		return path + "." + name
	}
	var d plating.Distribution
	var err error
	ratio, readings, class := e.MinToAverage != 0, len(e.Readings) > 0, e.ShapeClass != 0
	switch {
	case !ratio && !readings && !class:
		return d, needs(at("min_to_average"),
			`field "min_to_average" is missing; need thinnest over average thickness, 1 only for an even coat`)
	// The three kinds of evenness exclude each other. The message points at the weaker of the
	// two that are given: a class is a rule of thumb beside readings, readings are beside a
	// stated ratio.
	case ratio && readings || class && (ratio || readings):
		return d, needs(at(first("shape_class", class, "readings", readings)),
			`need one of "min_to_average", "readings" and "shape_class"`)
	case ratio:
		d = plating.Distribution{MinToAverage: e.MinToAverage, Basis: e.Basis}
		err = fault(at("min_to_average"), units.PositiveFraction("ratio of thinnest to average", e.MinToAverage))
	case e.Basis != "":
		return d, needs(at("basis"), `goes with "min_to_average": readings and a class say themselves where they come from`)
	case readings:
		d, err = throwing.FromReadings(e.Readings)
		err = fault(at("readings"), err)
	default:
		d, err = e.ShapeClass.Distribution()
		err = fault(at("shape_class"), err)
	}
	if err == nil && e.Uncertainty != 0 {
		d.Uncertainty = e.Uncertainty
		err = fault(at("uncertainty"), units.PositiveFraction("uncertainty of the ratio", e.Uncertainty))
	}
	return d, err
}

// check holds a layer against what can be estimated.
func (l *OwnCoat) check(path string, load units.Area, known []bath.Bath) error {
	if l.CurrentDensity != 0 && l.Current != 0 {
		return needs(path+".current", `need either "current" or "current_density", not both`)
	}
	if _, err := l.resolve(path, load, known); err != nil {
		return err
	}
	return nil
}

// A resolved layer is what an estimate takes, and what the review of the sequence looks at.
type resolved struct {
	layer plating.Layer
	full  bath.Bath // with what a bath of like chemistry lends
	own   bath.Bath // without, but for what dangers are judged by
}

// resolve puts in the bath that a layer names, and finds its current density.
func (l *OwnCoat) resolve(path string, load units.Area, known []bath.Bath) (resolved, error) {
	var r resolved
	d, err := l.Evenness.distribution(path)
	if err != nil {
		return r, err
	}
	out := plating.Layer{Name: l.Name, Role: l.Role, Area: l.Area, Distribution: d, MinThickness: l.MinThickness,
		CurrentDensity: l.CurrentDensity, Time: l.Time, CountBelow: l.CountBelow}
	// The layer's own area, where only a part of the piece is plated; else that of the load.
	// Current over this area is the current density, which everything after goes by.
	area := l.Area
	if area == 0 {
		area = load
	}
	if l.Current != 0 {
		if out.CurrentDensity, err = l.Current.PerArea(area); err != nil {
			return r, fault(path+".current", err)
		}
	}
	b := l.Bath
	if b.Library == "" && b.Metal == "" {
		return r, needs(path+".bath.metal", `field "metal" is missing; need the symbol of the counted metal, as "Au"`)
	}
	if b.Library == "" && !b.Efficiency.Given() && len(b.Lines) == 0 {
		return r, needs(path+".bath.efficiency",
			`field "efficiency" is missing; need a share as "35 %%", or "efficiency_lines"`)
	}
	if b.Library == "" && b.CurrentDensity.Set != 0 {
		return r, needs(path+".bath.current_density.set", `belongs to the layer: need "current_density" there`)
	}
	if field := first("pH", oneEnd(b.PH), "efficiency", oneEnd(b.Efficiency), "density", oneEnd(b.Density)); field != "" {
		return r, needs(path+".bath."+field, oneOfTwo)
	}
	// What a bath is used for follows from the role of the layer when the job does not say it:
	// the review of the sequence looks for strikes by their use.
	if b.Use == 0 && b.Library == "" {
		b.Use = map[plating.Role]bath.Use{plating.RoleStrike: bath.UseStrike, plating.RoleUnder: bath.UseUnder}[l.Role]
		if b.Use == 0 {
			b.Use = bath.UseFinish
		}
	}
	place := func(err error) error { // the figure that an error of a bath names
		var placed *strictjson.Placed
		if errors.As(err, &placed) {
			return fault(path+".bath."+placed.Path, placed.Err)
		}
		return fault(path+".bath", err)
	}
	// The bath as the sheet shows it: the library bath in use, or the shop's own figures over
	// those of a bath of like chemistry.
	if r.full, err = b.Resolve(known); err != nil {
		return r, place(err)
	}
	if !b.Salt.IsZero() {
		if _, err := faraday.MetalContent(b.Salt, r.full.Metal); err != nil {
			return r, fault(path+".bath.salt", err)
		}
	}
	// The same bath without what is lent. An estimate must not take efficiency or density from a
	// relative, so it is resolved once more without Like. Hazards, pH and anode are then put
	// back: there a guess from like chemistry is safer than none.
	r.own = r.full
	if b.Like != "" {
		like := b
		like.Like = ""
		if r.own, err = like.Resolve(known); err != nil {
			return r, place(err)
		}
		r.own.Lend(r.full)
	}
	if r.own.Name == "" {
		r.full.Name = "bath of " + titleOf(l.Name, "", 0)
	}
	if b.Library != "" {
		// Two of minimum thickness, time and current density fix a layer. A library bath fills in
		// what is missing: its usual current density first, then a strike's usual time.
		if out.CurrentDensity == 0 && (out.MinThickness == 0 || out.Time == 0) {
			out.CurrentDensity = r.full.CurrentDensity.Point()
		}
		if out.MinThickness == 0 && out.Time == 0 {
			out.Time = r.full.Time.Mid() // a strike's usual immersion time
		}
	}
	p := bath.OperatingPoint{CurrentDensity: out.CurrentDensity}
	// A point outside the printed ranges is no error here. The estimate warns of it, and the
	// shop may know its bath better than the table.
	out.Bath, err = r.own.At(p)
	var outside *units.RangeError
	if err != nil && !errors.As(err, &outside) {
		return r, place(err)
	}
	if b.Library == "" { // what is not set here is not set
		out.Bath.Temperature.Set = b.Temperature.Set
		if b.Temperature.Set == 0 && b.Temperature.Low == b.Temperature.High {
			out.Bath.Temperature.Set = b.Temperature.Low
		}
		out.Bath.Source = b.Source
	}
	r.layer = out
	probe := out
	// The layer is checked with the area filled in, but kept without: an empty area means the
	// load, which may still change with the parts.
	probe.Area = area
	return r, fault(path, probe.Check())
}

// oneOfTwo refuses one end of what is computed with, or of what dangers are judged by.
const oneOfTwo = `has one end of two; need "low" and "high", or one value`

func oneEnd[Q units.Quantity](r bath.Range[Q]) bool { return (r.Low == 0) != (r.High == 0) }

// titleOf names a layer for a message or a sheet.
func titleOf(name, bath string, i int) string {
	switch {
	case name != "":
		return name
	case bath != "":
		return bath
	}
	return "layer " + strconv.Itoa(i+1)
}

// steps holds the shop's own sequence against the layers.
func (j *Job) steps() error {
	next := 0
	for i := range j.Steps {
		s := &j.Steps[i]
		path := fmt.Sprintf("sequence[%d]", i+1)
		if s.Layer == "" {
			t, err := s.tank()
			if err != nil {
				return s.at(path, err)
			}
			if s.Hazards == nil && t.Kind == sequence.Activate && plating.NamedHazards(s.Holds, s.Name) == 0 &&
				s.Holds != "" {
				return needs(path+".hazards", `field "hazards" is missing, and what the tank holds tells none; `+
					`need a list of words, empty when there are none: the check for hydrogen cyanide goes by it`)
			}
			continue
		}
		if field := s.beside(); field != "" {
			return needs(path+"."+field, `does not go with "layer": a tank that plates takes everything but "wait" and `+
				`"live_entry" from there`)
		}
		// A step names a layer by name or by number. Each layer must come once and in order,
		// because thickness below and adhesion both depend on what lies under a coat.
		k := j.layerOf(s.Layer)
		if k < 0 {
			return needs(path+".layer", "is %q; need the name of a layer, or its number from 1 to %d",
				units.Clip(string(s.Layer)), len(j.Layers))
		}
		if k != next {
			return needs(path, "lays layer %s; need %s here: each layer comes once, the first one first", j.called(k),
				j.called(next))
		}
		next++
	}
	if len(j.Steps) > 0 && next < len(j.Layers) {
		return needs("sequence", "has no tank for layer %s; need one for each layer, the first one first", j.called(next))
	}
	return nil
}

// layerOf finds a layer by name or number; -1 for none.
func (j *Job) layerOf(ref LayerRef) int {
	for i := range j.Layers {
		if j.Layers[i].Name != "" && j.Layers[i].Name == string(ref) {
			return i
		}
	}
	if k, err := strconv.Atoi(string(ref)); err == nil && k >= 1 && k <= len(j.Layers) {
		return k - 1
	}
	return -1
}

// called is the name of a layer, or its number.
func (j *Job) called(i int) string {
	if i >= len(j.Layers) {
		return "none"
	}
	if name := j.Layers[i].Name; name != "" {
		return strconv.Quote(name)
	}
	return strconv.Itoa(i + 1)
}

// beside names the first field of a step that is given beside its layer.
func (s *OwnTank) beside() string {
	if s.Kind != sequence.KindUnknown {
		return "kind"
	}
	if field := s.rinseField(); field != "" {
		return field
	}
	if s.Name != "" {
		return "name"
	}
	return s.processField()
}

// rinseField names the first given field that only a rinse has, processField that only
// another tank has.
func (s *OwnTank) rinseField() string {
	return first("stages", s.Stages != 0, "flow", s.Flow != nil, "deionised", s.Deionised, "acidified", s.Acidified,
		"station", s.Station != "")
}

func (s *OwnTank) processField() string {
	return first("holds", s.Holds != "", "does", s.Does != 0, "hazards", s.Hazards != nil, "pH", s.PH.Given(), "mild",
		s.Mild, "strong", s.Strong, "polarity", s.Polarity != sequence.NoCurrent, "counter", s.Counter.Text != "",
		"agitation", s.Agitation.Text != "", "look", len(s.Look) > 0, "current_density",
		s.CurrentDensity.Given(), "volts", s.Volts.Given(), "temperature", s.Temperature.Given(), "time", s.Time.Given(),
		"vessel", s.Vessel != 0)
}

// first names the first field of pairs of name and whether it is given.
func first(pairs ...any) string {
	for i := 0; i < len(pairs); i += 2 {
		if pairs[i+1].(bool) {
			return pairs[i].(string)
		}
	}
	return ""
}

// at places an error of a tank: at its kind, or at the whole.
func (s *OwnTank) at(path string, err error) error {
	var f *Fault
	if errors.As(err, &f) {
		return fault(path+"."+f.Path, f.Err)
	}
	return fault(path, err)
}

// tank is the step as package sequence takes it.
func (s *OwnTank) tank() (sequence.Tank, error) {
	t := sequence.Tank{Kind: s.Kind, Name: s.Name, LiveEntry: s.LiveEntry, Wait: s.Wait}
	switch s.Kind {
	case sequence.KindUnknown:
		return t, needs("kind", `field "kind" is missing; need what the tank is for, or "layer" with the coat that it lays`)
	case sequence.Strike, sequence.Underplate, sequence.Plate:
		return t, needs("kind", `is %q; need "layer" for a tank that plates`, s.Kind)
	case sequence.Rinse, sequence.FinalRinse, sequence.DragOut:
		if field := s.processField(); field != "" {
			return t, needs(field, "does not go with a %s: a tank that holds anything but water is of another kind", s.Kind)
		}
		t.Rinse = sequence.RinseSet{Stages: max(s.Stages, 1), Station: s.Station, Deionised: s.Deionised,
			Acidified: s.Acidified, Flow: sequence.Running}
		if s.Kind == sequence.DragOut {
			t.Rinse.Flow = sequence.Still
		}
		// Without a word of its own a rinse runs and a drag-out tank stands still: a drag-out tank
		// with running water would keep nothing.
		if s.Flow != nil {
			t.Rinse.Flow = *s.Flow
		}
		return t, t.Check()
	}
	if field := s.rinseField(); field != "" {
		return t, needs(field, "does not go with a tank for %s: it is of a rinse", s.Kind)
	}
	if s.Strong && s.Mild {
		return t, needs("mild", `need either "strong" or "mild"`)
	}
	if field := first("pH", s.PH.Set != 0, "temperature", s.Temperature.Set != 0, "current_density",
		s.CurrentDensity.Set != 0, "volts", s.Volts.Set != 0, "time", s.Time.Set != 0); field != "" {
		return t, needs(field+".set", `goes with a bath; need "low" and "high" here, or one value`)
	}
	if oneEnd(s.PH) {
		return t, needs("pH", oneOfTwo)
	}
	q := &t.Process
	*q = sequence.Process{Chemistry: s.Holds, Source: origin.Job, Seen: origin.Given, Strong: s.Strong, Mild: s.Mild,
		Polarity: s.Polarity, Effect: s.Does, PH: plating.PHWindow{Low: s.PH.Low, High: s.PH.High},
		Temperature: given(s.Temperature), CurrentDensity: given(s.CurrentDensity), Volts: given(s.Volts),
		Time: given(s.Time)}
	if s.Hazards != nil {
		q.Hazards = *s.Hazards
	}
	q.Look = s.Look
	if q.Counter = s.Counter; s.Counter.Text != "" && s.Counter.Source == "" {
		q.Counter.Source, q.Counter.Seen = origin.Job, origin.Given
	}
	if q.Agitation = s.Agitation; s.Agitation.Text != "" && s.Agitation.Source == "" {
		q.Agitation.Source, q.Agitation.Seen = origin.Job, origin.Given
	}
	t.Vessel = s.Vessel
	return t, t.Check()
}

// given is a figure of the shop's own tank: its own word where nothing else is said.
func given[Q units.Quantity](r bath.Range[Q]) bath.Range[Q] {
	if r.Given() && r.Source == "" {
		r.Source, r.Seen = origin.Job, origin.Given
	}
	return r
}

// check holds the fields of a rinse against each other.
func (q *Rinse) check(steps bool) error {
	if q == nil {
		return nil
	}
	if q.Thickness > rinse.Syrupy {
		return needs("rinse.liquid", "is %d; need as printed, thin, medium or syrupy", q.Thickness)
	}
	if err := firstFault("rinse.", "drag_out", units.NonNegative("measured drag-out", q.Measured), "drain",
		units.NonNegative("time of draining", q.Drain), "ratio", units.NonNegative("ratio of rinsing", q.Ratio),
		"drag_out_tank", units.NonNegative("volume of the drag-out tank", q.DragOutTank),
		"evaporation", units.NonNegative("evaporation in the time of a load", q.Evaporation)); err != nil {
		return err
	}
	switch {
	case q.Stages < 0 || q.Stages > 9:
		return needs("rinse.stages", "is %d; need a whole number from 1 to 9", q.Stages)
	case q.Loads < 0 || q.Loads > 1_000_000:
		return needs("rinse.loads", "is %d; need a whole number from 1 to 1000000", q.Loads)
	case (q.Measured > 0) == (q.Shape != rinse.NoShape):
		return needs("rinse", `need either "hangs" (how the work hangs and drains) or "drag_out" (measured, of the load)`)
	case q.Measured > 0 && (q.Drain > 0 || q.Thickness != rinse.AsPrinted):
		return needs("rinse", `"drain" and "liquid" correct the table's figure, and "drag_out" is measured`)
	case q.Ratio != 0 && !(q.Ratio >= 1 && q.Ratio <= 1e12):
		return needs("rinse.ratio",
			"is %s; need a number from 1 to 1e12: how many times weaker than the bath the last water must be", q.Ratio)
	case q.DragOutTank == 0 && (q.Loads > 0 || q.Evaporation > 0):
		return needs("rinse", `"loads" and "evaporation" go with "drag_out_tank", its volume`)
	case q.Stages > 0 && steps:
		return needs("rinse.stages", `goes with proposed rinses; in a "sequence" each tank says its own: leave it out here`)
	}
	return nil
}

// firstFault returns the first error among pairs of field and error.
func firstFault(prefix string, pairs ...any) error {
	for i := 0; i < len(pairs); i += 2 {
		if err, is := pairs[i+1].(error); is && err != nil {
			return fault(prefix+pairs[i].(string), err)
		}
	}
	return nil
}

// check quotes once without metal: what shows only when it is computed shows here.
func (q *Price) check(pieces int) error {
	if q == nil {
		return nil
	}
	if err := firstFault("price.", "handling", units.NonNegative("handling", q.Handling), "heating",
		units.NonNegative("energy of heating", q.Heating), "rectifier",
		units.Fraction("efficiency of the rectifier", q.Rectifier)); err != nil {
		return err
	}
	for i := range q.Prices {
		if _, err := faraday.Lookup(q.Prices[i].Symbol); err != nil {
			return fault(fmt.Sprintf("price.metals[%d].metal", i+1), err)
		}
	}
	for i := range q.Refined {
		if _, err := faraday.Lookup(q.Refined[i].Symbol); err != nil {
			return fault(fmt.Sprintf("price.refined[%d].metal", i+1), err)
		}
	}
	probe := q.Order
	probe.Pieces = pieces
	probe.Prices = append([]price.MetalPrice(nil), q.Prices...)
	// The quote is made once without the metal of this job. Contradictory rates show at the
	// file, with line and field, before anything is computed.
	_, err := probe.Quote()
	var v *units.ValueError
	// Package price names its fields in words. The table leads from the word to the member of
	// the file, so that the message points at the right line.
	if errors.As(err, &v) {
		for _, is := range [][2]string{{"yield", "yield"}, {"recovered", "recovered"}, {"strip", "strip"},
			{"margin", "margin"},
			{"markup", "markup"}, {"minimum", "minimum"}, {"tax", "tax"}, {"share the set-up", "shared_by"},
			{"set-up", "set_up"}} {
			if strings.Contains(v.Field, is[0]) {
				return fault("price."+is[1], err)
			}
		}
	}
	return fault("price", err)
}
