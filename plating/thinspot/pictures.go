package thinspot

import (
	"fmt"
	"image"
	"image/color"
	"sort"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/units"
)

// A Picture is what may be drawn of a result, as data: views of the workpiece with the
// scale of their colours, or none, and below them a chart.
type Picture struct {
	Title string
	Views []View
	Scale ColourScale // of the views
	Chart Chart
}

// A View is the workpiece from one side.
type View struct {
	Name  string
	Image image.Image
}

// A Chart is curves over two axes.
type Chart struct {
	X, Y       Axis
	Curves     []Curve
	LegendLeft bool // the legend stands at the left, where the curves leave room
}

// An Axis is one axis of a chart.
type Axis struct {
	Label     string
	Low, High float64 // the ends; both 0 for those of the curves
}

// A Curve is a line through points, or marks at them.
type Curve struct {
	Name   string
	Stroke Stroke
	Points [][2]float64
}

// A Stroke is how a curve is drawn.
type Stroke uint8

// Kinds of stroke.
const (
	Solid Stroke = iota
	Dashed
	Dotted
	Marks // no line: a mark at each point
)

// Pictures returns what may be drawn of the result: by profile the thickness along it,
// by mesh the workpiece from six sides, coloured by thickness, with the share of the area
// that is thinner than each thickness. It is nil for a result that is not of [Case.Solve].
func (r Result) Pictures() []Picture {
	switch {
	case r.check() != nil:
		return nil
	case r.byMesh():
		return []Picture{r.views()}
	}
	return []Picture{r.alongProfile()}
}

const thicknessAxis = "thickness, µm"

// alongProfile is the thickness along the profile, with the minimum thickness.
func (r *Result) alongProfile() Picture {
	var line [][2]float64
	for i, s := range r.Along {
		line = append(line, [2]float64{s.In(units.Millimetre), r.Coat.Thickness[i].In(units.Micrometre)})
	}
	level := func(l units.Length) [][2]float64 {
		y := l.In(units.Micrometre)
		return [][2]float64{{line[0][0], y}, {line[len(line)-1][0], y}}
	}
	return Picture{Title: r.Case.Name, Chart: Chart{
		X: Axis{Label: "along the profile, mm"},
		// an edge may run out of the picture: its height is no property of the workpiece
		Y: Axis{Label: "thickness after " + clock(r.Coat.Time) + ", µm", High: 1.35 * r.Coat.P95.In(units.Micrometre)},
		Curves: []Curve{{"thickness", Solid, line}, {"minimum thickness", Dashed, level(r.Case.MinThickness)},
			{"average over the workpiece", Dotted, level(r.Coat.Average)},
			{"thinnest spot", Marks, [][2]float64{line[r.Coat.MinPatch]}}},
	}}
}

// views is the workpiece from six sides, coloured by thickness, and how its area is shared.
func (r *Result) views() Picture {
	p := Picture{Title: fmt.Sprintf("%s: %s after %s", r.Case.Name, r.Workpiece, clock(r.Coat.Time)),
		Scale: r.scale(), Chart: r.shares()}
	colours := make([]color.RGBA, len(r.Mesh.Triangles))
	for i, s := range r.Coat.Thickness {
		colours[i] = p.Scale.Colour(s.In(units.Micrometre))
	}
	body := boxOf(r.Mesh.Vertices)
	size := min(r3.Norm(r3.Sub(body.high, body.low)), body.longest()*1.02) // what a view must hold
	seen := false
	for _, v := range sides() {
		img := render(r.Mesh, colours, v, 460, body.middle, size)
		seen = img.ring(r.Spot, r.Surface.Patches[r.Coat.MinPatch].Normal) || seen
		p.Views = append(p.Views, View{v.name, img.img})
	}
	where := "the ring marks the thinnest spot"
	if !seen { // a recess may hide it from all sides
		where = fmt.Sprintf("the thinnest spot, at x %.0f, y %.0f, z %.0f mm, is hidden", 1e3*r.Spot.X, 1e3*r.Spot.Y,
			1e3*r.Spot.Z)
	}
	p.Scale.Label = thicknessAxis + ", at the light end and more; " + where + "; the line: minimum thickness"
	return p
}

// scale runs from the thinnest to where 95 % of the area lies below: an edge may
// run out of it, its height is no property of the workpiece.
func (r *Result) scale() ColourScale {
	least := r.Coat.Thickness[0]
	for _, s := range r.Coat.Thickness {
		least = min(least, s)
	}
	high := max(r.Coat.P95, r.Coat.Average)
	if high <= least {
		high = least * 1.01
	}
	return ColourScale{Low: least.In(units.Micrometre), High: high.In(units.Micrometre),
		Mark: r.Case.MinThickness.In(units.Micrometre)}
}

// shares is the share of the significant area below each thickness.
func (r *Result) shares() Chart {
	type bit struct{ s, a float64 }
	var bits []bit
	total := 0.0
	for i, p := range r.Surface.Patches {
		if r.significant(i) {
			bits = append(bits, bit{r.Coat.Thickness[i].In(units.Micrometre), float64(p.Area)})
			total += float64(p.Area)
		}
	}
	// Sorted by thickness, the area summed up to a patch is the area that is no thicker.
	sort.Slice(bits, func(i, k int) bool { return bits[i].s < bits[k].s })
	var line [][2]float64
	sum := 0.0
	for i, b := range bits {
		sum += b.a
		if i == 0 {
			line = append(line, [2]float64{b.s, 0})
		}
		// Steps below a fifth of a per cent are not seen; thousands of patches make a short curve.
		if 100*sum/total-line[len(line)-1][1] < 0.2 && i < len(bits)-1 {
			continue
		}
		line = append(line, [2]float64{b.s, 100 * sum / total})
	}
	upright := func(l units.Length) [][2]float64 {
		x := l.In(units.Micrometre)
		return [][2]float64{{x, 0}, {x, 100}}
	}
	high := 1.35 * r.Coat.P95.In(units.Micrometre)
	if n := len(bits); n > 0 {
		high = max(high, bits[n-1].s)
	}
	return Chart{X: Axis{Label: thicknessAxis, High: high}, Y: Axis{Label: "% of the area that is thinner", High: 100},
		LegendLeft: true, Curves: []Curve{{"share of the area", Solid, line},
			{"minimum thickness", Dashed, upright(r.Case.MinThickness)},
			{"average over the workpiece", Dotted, upright(r.Coat.Average)}}}
}
