package main

import (
	"bytes"
	"fmt"
	"image/color"
	"io"
	"math"
	"path/filepath"
	"sort"
	"strconv"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	vgdraw "gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgimg"
	"gonum.org/v1/plot/vg/vgsvg"

	"example.com/laydown/examples/internal/files"
	"example.com/laydown/units"
)

// The page: six views in two rows, the scale, and a curve below.
const (
	pageWidth  = 18 * vg.Centimeter
	viewSize   = 5.6 * vg.Centimeter
	pageHeight = 23.4 * vg.Centimeter
)

// drawViews writes the part from six sides, coloured by thickness, with its
// scale and the share of the area that is thinner than each thickness.
func drawViews(r *result, desk *files.Desk, file string) error {
	var c vg.CanvasSizer
	var save func() error
	var canvas vgdraw.Canvas
	if strings.EqualFold(filepath.Ext(file), ".svg") {
		s := vgsvg.New(pageWidth, pageHeight)
		c, save = s, func() error { return write(desk, file, s.WriteTo) }
	} else {
		s := vgimg.PngCanvas{Canvas: vgimg.NewWith(vgimg.UseWH(pageWidth, pageHeight), vgimg.UseDPI(110))}
		c, save = s, func() error { return write(desk, file, s.WriteTo) }
	}
	canvas = vgdraw.New(c)
	canvas.FillPolygon(color.White, []vg.Point{{}, {X: pageWidth}, {X: pageWidth, Y: pageHeight}, {Y: pageHeight}})
	scale := r.scale()
	words := textStyle(9)
	head := textStyle(12)
	canvas.FillText(head, vg.Point{X: 0.5 * vg.Centimeter, Y: pageHeight - 0.9*vg.Centimeter},
		units.Printable(fmt.Sprintf("%s: %s after %s", r.c.Name, r.part, clock(r.time))))
	seen := r.drawSides(&canvas, words, scale)
	if err := r.drawScale(vgdraw.Crop(canvas, 1*vg.Centimeter, -1*vg.Centimeter, 7.0*vg.Centimeter,
		-(pageHeight-9.0*vg.Centimeter)), scale, seen); err != nil {
		return err
	}
	if err := r.drawShares(vgdraw.Crop(canvas, 0.5*vg.Centimeter, -0.8*vg.Centimeter, 0.3*vg.Centimeter,
		-(pageHeight - 6.8*vg.Centimeter))); err != nil {
		return err
	}
	return save()
}

// scale runs from the thinnest to where 95 % of the area lies below: an edge may
// run out of it, its height is no property of the part.
func (r *result) scale() ramp {
	least := r.coat.Thickness[0]
	for _, s := range r.coat.Thickness {
		least = min(least, s)
	}
	high := max(r.coat.P95, r.coat.Average)
	if high <= least {
		high = least * 1.01
	}
	return ramp{least.In(units.Micrometre), high.In(units.Micrometre)}
}

// drawSides draws the six views and reports whether one of them sees the thinnest
// spot: a recess may hide it from all.
func (r *result) drawSides(c *vgdraw.Canvas, words text.Style, scale ramp) (seen bool) {
	colours := make([]color.RGBA, len(r.mesh.Triangles))
	for i, s := range r.coat.Thickness {
		colours[i] = scale.at(s.In(units.Micrometre))
	}
	body := boxOf(r.mesh.Vertices)
	size := r3.Norm(r3.Sub(body.high, body.low))
	var largest float64 // the largest side of the box: what a view must hold
	for _, d := range []float64{body.high.X - body.low.X, body.high.Y - body.low.Y, body.high.Z - body.low.Z} {
		largest = math.Max(largest, d)
	}
	size = math.Min(size, largest*1.02)
	spot := r.surface.Patches[r.coat.MinPatch]
	for i, v := range views() {
		img := render(r.mesh, colours, v, 460, body.middle, size)
		seen = img.ring(spot.At, spot.Normal) || seen
		x := 0.4*vg.Centimeter + vg.Length(i%3)*(viewSize+0.2*vg.Centimeter)
		y := pageHeight - 1.4*vg.Centimeter - vg.Length(i/3+1)*(viewSize+0.55*vg.Centimeter)
		c.DrawImage(vg.Rectangle{Min: vg.Point{X: x, Y: y + 0.5*vg.Centimeter}, Max: vg.Point{X: x + viewSize, Y: y +
			0.5*vg.Centimeter + viewSize}}, img.img)
		c.FillText(words, vg.Point{X: x + viewSize/2 - 1.1*vg.Centimeter, Y: y + 0.1*vg.Centimeter}, v.name)
	}
	return seen
}

// drawScale draws the colours with their thickness in micrometres.
func (r *result) drawScale(c vgdraw.Canvas, scale ramp, seen bool) error {
	p := plot.New()
	where := "the ring marks the thinnest spot"
	if !seen {
		at := r.surface.Patches[r.coat.MinPatch].At
		where = fmt.Sprintf("the thinnest spot, at x %.0f, y %.0f, z %.0f mm, is hidden", 1e3*at.X, 1e3*at.Y, 1e3*at.Z)
	}
	p.X.Label.Text = "thickness, µm, at the light end and more; " + where + "; the line: minimum thickness"
	margin := 0.008 * (scale.high - scale.low)
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = scale.low-margin, scale.high+margin, 0, 1
	const steps = 200
	for k := range steps {
		a := scale.low + (scale.high-scale.low)*float64(k)/steps
		b := scale.low + (scale.high-scale.low)*float64(k+1)/steps
		bar, err := plotter.NewPolygon(plotter.XYs{{X: a, Y: 0}, {X: b, Y: 0}, {X: b, Y: 1}, {X: a, Y: 1}})
		if err != nil {
			return err
		}
		bar.Color = scale.at((a + b) / 2)
		bar.LineStyle.Width = vg.Points(0.5)
		bar.LineStyle.Color = bar.Color
		p.Add(bar)
	}
	least := r.c.MinThickness.In(units.Micrometre)
	if least >= scale.low && least <= scale.high {
		line, err := plotter.NewLine(plotter.XYs{{X: least, Y: 0}, {X: least, Y: 1}})
		if err != nil {
			return err
		}
		line.Width, line.Color = vg.Points(2.5), color.RGBA{200, 30, 30, 255}
		p.Add(line)
	}
	size(p, 9)
	p.HideY()
	p.Draw(c)
	return nil
}

// drawShares draws the share of the significant area below each thickness.
func (r *result) drawShares(c vgdraw.Canvas) error {
	type bit struct{ s, a float64 }
	var bits []bit
	total := 0.0
	for i, p := range r.surface.Patches {
		if r.surface.Significant == nil || r.surface.Significant[i] {
			bits = append(bits, bit{r.coat.Thickness[i].In(units.Micrometre), float64(p.Area)})
			total += float64(p.Area)
		}
	}
	sort.Slice(bits, func(i, k int) bool { return bits[i].s < bits[k].s })
	var line plotter.XYs
	sum := 0.0
	for i, b := range bits {
		sum += b.a
		if i == 0 {
			line = append(line, plotter.XY{X: b.s, Y: 0})
		}
		if n := len(line); n > 0 && 100*sum/total-line[n-1].Y < 0.2 && i < len(bits)-1 {
			continue
		}
		line = append(line, plotter.XY{X: b.s, Y: 100 * sum / total})
	}
	p := plot.New()
	p.X.Label.Text = "thickness, µm"
	p.Y.Label.Text = "% of the area that is thinner"
	p.Y.Min, p.Y.Max = 0, 100
	p.X.Min = 0
	p.X.Max = 1.35 * r.coat.P95.In(units.Micrometre)
	curve, err := plotter.NewLine(line)
	if err != nil {
		return err
	}
	curve.Width = vg.Points(1.6)
	upright := func(x float64, dashes []vg.Length) (*plotter.Line, error) {
		l, err := plotter.NewLine(plotter.XYs{{X: x, Y: 0}, {X: x, Y: 100}})
		if err == nil {
			l.Dashes = dashes
		}
		return l, err
	}
	least, err := upright(r.c.MinThickness.In(units.Micrometre), []vg.Length{vg.Points(6), vg.Points(4)})
	if err != nil {
		return err
	}
	mean, err := upright(r.coat.Average.In(units.Micrometre), []vg.Length{vg.Points(1.5), vg.Points(3)})
	if err != nil {
		return err
	}
	p.Add(plotter.NewGrid(), curve, least, mean)
	p.Legend.Add("share of the area", curve)
	p.Legend.Add("minimum thickness", least)
	p.Legend.Add("mean over the part", mean)
	p.Legend.Left, p.Legend.Top, p.Legend.Padding = true, true, vg.Points(2)
	p.Legend.XOffs, p.Legend.YOffs = vg.Points(8), vg.Points(-4)
	size(p, 9)
	p.Draw(c)
	return nil
}

// marks puts round numbers with as many places as they need on an axis.
func marks(low, high float64) []plot.Tick {
	span := high - low
	if !(span > 0) {
		return nil
	}
	step := math.Pow(10, math.Floor(math.Log10(span/4)))
	for _, k := range []float64{5, 2} {
		if span/(k*step) >= 4 {
			step *= k
			break
		}
	}
	places := max(0, int(math.Ceil(-math.Log10(step)-1e-9)))
	var list []plot.Tick
	for k := math.Ceil(low/step-1e-9) + 0; k*step <= high+1e-9*step; k++ {
		list = append(list, plot.Tick{Value: k * step, Label: strconv.FormatFloat(k*step, 'f', places, 64)})
	}
	return list
}

// size gives all text of a plot one size and round numbers to its axes.
func size(p *plot.Plot, points float64) {
	p.X.Tick.Marker, p.Y.Tick.Marker = plot.TickerFunc(marks), plot.TickerFunc(marks)
	for _, style := range []*text.Style{&p.Title.TextStyle, &p.X.Label.TextStyle, &p.Y.Label.TextStyle, &p.X.Tick.Label,
		&p.Y.Tick.Label, &p.Legend.TextStyle} {
		style.Font.Size = font.Points(points)
	}
}

func textStyle(points float64) text.Style {
	return text.Style{Color: color.Black, Font: font.From(plot.DefaultFont, font.Points(points)),
		Handler: plot.DefaultTextHandler}
}

// write writes a file by a canvas's writer.
func write(desk *files.Desk, name string, to func(io.Writer) (int64, error)) error {
	var b bytes.Buffer
	if _, err := to(&b); err != nil {
		return err
	}
	return desk.Write(name, b.Bytes())
}
