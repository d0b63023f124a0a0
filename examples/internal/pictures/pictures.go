// Package pictures draws what the library gives as data: curves over axes, and views
// with the scale of their colours. It is shared by the programs in examples.
package pictures

import (
	"fmt"
	"image/color"
	"io"
	"math"
	"strconv"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgimg"
	"gonum.org/v1/plot/vg/vgsvg"

	"example.com/laydown/plating/thinspot"
	"example.com/laydown/units"
)

// What is drawn; see package thinspot.
type (
	Picture = thinspot.Picture
	Chart   = thinspot.Chart
	Axis    = thinspot.Axis
	Curve   = thinspot.Curve
	Stroke  = thinspot.Stroke
	View    = thinspot.View
	Scale   = thinspot.ColourScale
)

// Kinds of stroke.
const (
	Solid  = thinspot.Solid
	Dashed = thinspot.Dashed
	Dotted = thinspot.Dotted
	Marks  = thinspot.Marks
)

// The page: views in rows of three, the scale, and the chart below. A chart alone is a
// page of its own.
const (
	pageWidth   = 18 * vg.Centimeter
	viewSize    = 5.6 * vg.Centimeter
	pageHeight  = 23.4 * vg.Centimeter
	chartHeight = 11 * vg.Centimeter
)

// Endings are the kinds of file that [Encode] writes.
var Endings = []string{".png", ".svg"}

// Encode writes a picture as a file with an ending of [Endings].
func Encode(w io.Writer, p Picture, ending string) error {
	height, dots := vg.Length(pageHeight), 110
	if len(p.Views) == 0 {
		height, dots = chartHeight, vgimg.DefaultDPI
	}
	var c interface {
		vg.CanvasSizer
		io.WriterTo
	}
	switch ending {
	case ".svg":
		c = vgsvg.New(pageWidth, height)
	case ".png":
		c = vgimg.PngCanvas{Canvas: vgimg.NewWith(vgimg.UseWH(pageWidth, height), vgimg.UseDPI(dots))}
	default:
		return fmt.Errorf("a picture is no %q; need one of %v", units.Clip(ending), Endings)
	}
	canvas := draw.New(c)
	if len(p.Views) == 0 {
		chart, err := plotOf(p.Chart, 11)
		if err != nil {
			return err
		}
		chart.Title.Text = units.Printable(p.Title)
		chart.Draw(canvas)
	} else if err := page(canvas, p); err != nil {
		return err
	}
	_, err := c.WriteTo(w)
	return err
}

// page draws views, scale and chart.
func page(c draw.Canvas, p Picture) error {
	c.FillPolygon(color.White, []vg.Point{{}, {X: pageWidth}, {X: pageWidth, Y: pageHeight}, {Y: pageHeight}})
	c.FillText(style(12), vg.Point{X: 0.5 * vg.Centimeter, Y: pageHeight - 0.9*vg.Centimeter}, units.Printable(p.Title))
	for i, v := range p.Views {
		x := 0.4*vg.Centimeter + vg.Length(i%3)*(viewSize+0.2*vg.Centimeter)
		y := pageHeight - 1.4*vg.Centimeter - vg.Length(i/3+1)*(viewSize+0.55*vg.Centimeter)
		c.DrawImage(vg.Rectangle{Min: vg.Point{X: x, Y: y + 0.5*vg.Centimeter},
			Max: vg.Point{X: x + viewSize, Y: y + 0.5*vg.Centimeter + viewSize}}, v.Image)
		c.FillText(style(9), vg.Point{X: x + viewSize/2 - 1.1*vg.Centimeter, Y: y + 0.1*vg.Centimeter},
			units.Printable(v.Name))
	}
	scale, err := scaleOf(p.Scale)
	if err != nil {
		return err
	}
	scale.Draw(draw.Crop(c, 1*vg.Centimeter, -1*vg.Centimeter, 7.0*vg.Centimeter, -(pageHeight - 9.0*vg.Centimeter)))
	chart, err := plotOf(p.Chart, 9)
	if err != nil {
		return err
	}
	chart.Draw(draw.Crop(c, 0.5*vg.Centimeter, -0.8*vg.Centimeter, 0.3*vg.Centimeter, -(pageHeight - 6.8*vg.Centimeter)))
	return nil
}

// scaleOf draws the colours with their values.
func scaleOf(s Scale) (*plot.Plot, error) {
	p := plot.New()
	p.X.Label.Text = units.Printable(s.Label)
	margin := 0.008 * (s.High - s.Low)
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = s.Low-margin, s.High+margin, 0, 1
	const steps = 200
	for k := range steps {
		a := s.Low + (s.High-s.Low)*float64(k)/steps
		b := s.Low + (s.High-s.Low)*float64(k+1)/steps
		bar, err := plotter.NewPolygon(plotter.XYs{{X: a, Y: 0}, {X: b, Y: 0}, {X: b, Y: 1}, {X: a, Y: 1}})
		if err != nil {
			return nil, err
		}
		bar.Color = s.Colour((a + b) / 2)
		bar.LineStyle.Width = vg.Points(0.5)
		bar.LineStyle.Color = bar.Color
		p.Add(bar)
	}
	if s.Mark >= s.Low && s.Mark <= s.High {
		line, err := plotter.NewLine(plotter.XYs{{X: s.Mark, Y: 0}, {X: s.Mark, Y: 1}})
		if err != nil {
			return nil, err
		}
		line.Width, line.Color = vg.Points(2.5), color.RGBA{200, 30, 30, 255}
		p.Add(line)
	}
	size(p, 9)
	p.HideY()
	return p, nil
}

// plotOf makes a chart of curves, its text in one size.
func plotOf(c Chart, points float64) (*plot.Plot, error) {
	p := plot.New()
	p.Add(plotter.NewGrid())
	for _, v := range c.Curves {
		list := make(plotter.XYs, len(v.Points))
		for i, at := range v.Points {
			list[i] = plotter.XY{X: at[0], Y: at[1]}
		}
		drawn, err := stroke(v.Stroke, list)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", v.Name, err)
		}
		p.Add(drawn)
		p.Legend.Add(units.Printable(v.Name), drawn)
	}
	p.Legend.Top, p.Legend.Left, p.Legend.Padding = true, c.LegendLeft, vg.Points(2)
	p.Legend.XOffs = vg.Points(-10)
	if c.LegendLeft {
		p.Legend.XOffs, p.Legend.YOffs = vg.Points(8), vg.Points(-4)
	}
	size(p, points)
	for _, a := range []struct {
		to   *plot.Axis
		from Axis
	}{{&p.X, c.X}, {&p.Y, c.Y}} {
		a.to.Label.Text = units.Printable(a.from.Label)
		if a.from.High > a.from.Low {
			a.to.Min, a.to.Max = a.from.Low, a.from.High
		}
	}
	return p, nil
}

// A drawn is a curve on the paper and in the legend.
type drawn interface {
	plot.Plotter
	plot.Thumbnailer
}

func stroke(s Stroke, list plotter.XYs) (drawn, error) {
	if s == Marks {
		spots, err := plotter.NewScatter(list)
		if err == nil {
			spots.GlyphStyle = draw.GlyphStyle{Color: color.Black, Radius: vg.Points(4), Shape: draw.CircleGlyph{}}
		}
		return spots, err
	}
	line, err := plotter.NewLine(list)
	if err != nil {
		return nil, err
	}
	switch s {
	case Dashed:
		line.Dashes = []vg.Length{vg.Points(6), vg.Points(4)}
	case Dotted:
		line.Dashes = []vg.Length{vg.Points(1.5), vg.Points(3)}
	default:
		line.Width = vg.Points(1.6)
	}
	return line, nil
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

func style(points float64) text.Style {
	return text.Style{Color: color.Black, Font: font.From(plot.DefaultFont, font.Points(points)),
		Handler: plot.DefaultTextHandler}
}
