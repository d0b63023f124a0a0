package rinse

import (
	"fmt"
	"math"

	"example.com/laydown/units"
	"example.com/laydown/units/origin"
	"example.com/laydown/units/working"
)

// A Drainage says how a part hangs and drains. The zero Drainage is none.
type Drainage uint8

// The shapes, as the printed table names them.
const (
	NoShape Drainage = iota
	VerticalWell
	VerticalPoor
	VerticalVeryPoor
	HorizontalWell
	HorizontalVeryPoor
	CupVeryPoor
	shapeEnd
)

// String returns the shape in words.
func (s Drainage) String() string {
	names := [...]string{"no shape", "vertical, well drained", "vertical, poorly drained",
		"vertical, very poorly drained",
		"horizontal, well drained", "horizontal, very poorly drained", "cup-shaped, very poorly drained"}
	if s >= shapeEnd {
		s = NoShape
	}
	return names[s]
}

// Pools reports whether most of what the shape carries stands in hollows: such
// liquid waits for tipping or drilling, not for time.
func (s Drainage) Pools() bool {
	return s == VerticalVeryPoor || s == HorizontalVeryPoor || s == CupVeryPoor
}

// A Figure is a published drag-out of one shape. A volume over an area is a
// length, the mean depth of the liquid: 1 mL/m² is 1 µm.
type Figure struct {
	Shape     Drainage
	Low, High units.Length
	Printed   string // as the print has it
	Open      bool   // the print says "or more" behind High
	Seen      origin.Seen
	Source    string // key
}

// Figures returns the published table of drag-out by shape.
//
// It was printed for the drag-out of alkaline cleaners, which are thin and
// warm, and names neither a drain time nor a viscosity. Take it to within a
// factor of two, and weigh a wet rack for anything that matters.
//
// Source: [DragOutTable].
func Figures() []Figure {
	table := []struct {
		s         Drainage
		low, high float64
	}{{VerticalWell, 0.4, 0.4}, {VerticalPoor, 2, 2}, {VerticalVeryPoor, 4, 4}, {HorizontalWell, 0.8, 0.8},
		{HorizontalVeryPoor, 10, 10}, {CupVeryPoor, 8, 24}}
	const one = units.Length(units.USGallon / (1000 * units.Volume(units.SquareFoot)))
	list := make([]Figure, 0, len(table))
	for _, p := range table {
		f := Figure{Shape: p.s, Low: units.Length(p.low) * one, High: units.Length(p.high) * one,
			Printed: fmt.Sprintf("%.1f US gal/1000 ft²", p.low),
			Seen:    origin.Published, Source: "DragOutTable"}
		if p.high > p.low {
			f.Open, f.Printed = true, fmt.Sprintf("%.0f to %.0f or more US gal/1000 ft²", p.low, p.high)
		}
		list = append(list, f)
	}
	return list
}

// A Thickness is a class of viscosity. The zero Thickness keeps the printed figure.
type Thickness uint8

// The classes, with the viscosity each stands for. All three are from memory.
const (
	AsPrinted Thickness = iota
	Thin                // 1 mPa·s: strikes, gold baths, warm cleaners, rinse water
	Medium              // 2 mPa·s: nickel, acid copper and other heavy salt baths
	Syrupy              // 5 mPa·s: strong caustic, chromic acid, electropolish
	thicknessEnd
)

// Viscosity returns what the class stands for; from memory.
func (t Thickness) Viscosity() Viscosity {
	return [...]Viscosity{0, 1, 2, 5, 0}[min(t, thicknessEnd)] * MillipascalSecond
}

// String returns the class in words.
func (t Thickness) String() string {
	return [...]string{"as printed", "thin", "medium", "syrupy", "unknown"}[min(t, thicknessEnd)]
}

// A WetLoad is work on its way out of a bath.
type WetLoad struct {
	Area      units.Area     // all wetted faces, > 0
	Shape     Drainage       // needed
	Drain     units.Duration // over the bath; 0 keeps the printed figure
	Thickness Thickness      // zero keeps the printed figure
}

// A Carried is what a load is thought to carry away.
type Carried struct {
	Low    units.Volume `json:"carried_low" in:"mL"`
	High   units.Volume `json:"carried_high" in:"mL"`
	Factor units.Ratio  `json:"factor"`           // on the printed figure, for time and viscosity
	Seen   origin.Seen  `json:"seen" with:"keep"` // from memory as soon as time or viscosity came in
	Source string       `json:"source"`
	Note   string       `json:"note"` // what a reader should know; may be empty
}

// The drain time that the printed figures are taken to have: from memory, as
// the usual advice of ten seconds over the bath.
const printedDrain = 10 * units.Second

// DragOut returns the volume that a load carries out of its bath.
//
//	d = h·A·√(μ/μ₁)·√(t₁/t)
//
//	h  Shape      printed depth of liquid [m]
//	A  Area       wetted area, > 0 [m²]
//	μ  Thickness  viscosity of the class; μ₁ = 1 mPa·s
//	t  Drain      drain time; t₁ = 10 s
//
// Without drain time and class the result is the printed figure on the area.
// The two roots are those of a film that drains by its weight ([Hanging.DrainedFilm]);
// what they refer to, μ₁ and t₁, is from memory, and the result then says so.
// A shape that [Drainage.Pools] keeps its printed figure whatever the time.
//
// Errors: a [*units.ValueError] for no shape, an unknown class or a value out of
// range; with the value, a [*units.RangeError] for a drain time outside 3 to 60 s.
//
// Source: [DragOutTable]; roots [DrainingPlate1930], [Derived].
func (l WetLoad) DragOut() (Carried, error) {
	c, _, err := l.dragOut()
	return c, err
}

// DragOutWorking shows how [WetLoad.DragOut] computes, with the same errors.
func (l WetLoad) DragOutWorking() ([]working.Step, error) {
	_, steps, err := l.dragOut()
	return steps, err
}

func (l WetLoad) dragOut() (Carried, []working.Step, error) {
	if err := units.Positive("area of the load", l.Area); err != nil {
		return Carried{}, nil, err
	}
	if l.Shape == NoShape || l.Shape >= shapeEnd {
		return Carried{}, nil, bad("shape of the load", fmt.Sprint(uint8(l.Shape)), "one of VerticalWell to CupVeryPoor",
			units.ErrOutOfRange)
	}
	if l.Thickness >= thicknessEnd {
		return Carried{}, nil, bad("thickness class of the bath", fmt.Sprint(uint8(l.Thickness)),
			"AsPrinted, Thin, Medium or Syrupy", units.ErrOutOfRange)
	}
	if err := units.NonNegative("drain time", l.Drain); err != nil {
		return Carried{}, nil, err
	}
	f := Figures()[l.Shape-1]
	mu, drain := Thin.Viscosity(), printedDrain
	c := Carried{Seen: f.Seen, Source: f.Source, Note: "The table was printed for cleaners; good to a factor of two."}
	var out error
	switch {
	case l.Drain == 0 && l.Thickness == AsPrinted:
	case l.Shape.Pools():
		c.Note = "Liquid in hollows does not drain with time; the printed figure stands. Tip the part, or drill it."
	default:
		if l.Thickness != AsPrinted {
			mu = l.Thickness.Viscosity()
		}
		if l.Drain != 0 {
			drain = l.Drain
		}
		c.Seen, c.Note = origin.FromMemory, "Refers the printed figure to 1 mPa·s and 10 s of draining, both from memory."
		if drain < 3 || drain > 60 {
			out = &units.RangeError{Field: "drain time", Value: l.Drain.String(), Low: "3 s", High: "60 s",
				Source: origin.Practice}
		}
	}
	factor := math.Sqrt(float64(mu)/float64(Thin.Viscosity())) * math.Sqrt(float64(printedDrain)/float64(drain))
	c.Factor = units.Ratio(factor)
	c.Low = units.Volume(float64(f.Low) * float64(l.Area) * factor)
	c.High = units.Volume(float64(f.High) * float64(l.Area) * factor)
	if !numbers(c.Low, c.High) {
		return Carried{}, nil, tooFar("drag-out")
	}
	terms := []working.Term{working.Of("A", "wetted area", l.Area), working.Of("μ", "viscosity of the bath", mu),
		working.Of("μ₁", "viscosity behind the figure", Thin.Viscosity()),
		working.Of("t₁", "drain time behind the figure", printedDrain), working.Of("t", "drain time", drain)}
	step := func(symbol, meaning string, h units.Length, v units.Volume) working.Step {
		return working.Step{Formula: "d = h·A·√(μ/μ₁)·√(t₁/t)", Terms: append([]working.Term{working.Of("h",
			"printed depth of liquid, "+f.Printed, h)}, terms...),
			Result: working.Of(symbol, meaning, v), Source: "DragOutTable", Note: c.Note}
	}
	steps := []working.Step{step("d", "carried out", f.Low, c.Low)}
	if f.High > f.Low {
		steps[0].Result.Meaning = "carried out, at least"
		steps = append(steps, step("d", "carried out, at most as printed", f.High, c.High))
	}
	return c, steps, out
}
