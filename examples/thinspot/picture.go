package main

import (
	"image/color"
	"path/filepath"
	"strings"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"example.com/laydown/examples/internal/files"
	"example.com/laydown/units"
)

// drawProfile writes thickness along the profile, with the minimum thickness, to a file.
func drawProfile(r *result, desk *files.Desk, file string) error {
	p := plot.New()
	p.Title.Text = units.Printable(r.c.Name)
	p.X.Label.Text = "along the profile, mm"
	p.Y.Label.Text = "thickness after " + clock(r.time) + ", µm"
	p.Y.Min = 0
	p.Add(plotter.NewGrid())
	var line plotter.XYs
	for i, v := range r.samples() {
		line = append(line, plotter.XY{X: v.S.In(units.Millimetre), Y: r.coat.Thickness[i].In(units.Micrometre)})
	}
	curve, err := plotter.NewLine(line)
	if err != nil {
		return err
	}
	curve.Width = vg.Points(1.6)
	least, err := plotter.NewLine(plotter.XYs{{X: line[0].X, Y: r.c.MinThickness.In(units.Micrometre)},
		{X: line[len(line)-1].X, Y: r.c.MinThickness.In(units.Micrometre)}})
	if err != nil {
		return err
	}
	least.Dashes = []vg.Length{vg.Points(6), vg.Points(4)}
	mean, err := plotter.NewLine(plotter.XYs{{X: line[0].X, Y: r.coat.Average.In(units.Micrometre)}, {X: line[len(line)-1].X,
		Y: r.coat.Average.In(units.Micrometre)}})
	if err != nil {
		return err
	}
	mean.Dashes = []vg.Length{vg.Points(1.5), vg.Points(3)}
	spot, err := plotter.NewScatter(plotter.XYs{line[r.coat.MinPatch]})
	if err != nil {
		return err
	}
	spot.GlyphStyle = draw.GlyphStyle{Color: color.Black, Radius: vg.Points(4), Shape: draw.CircleGlyph{}}
	p.Add(curve, least, mean, spot)
	p.Legend.Add("thickness", curve)
	p.Legend.Add("minimum thickness", least)
	p.Legend.Add("mean over the part", mean)
	p.Legend.Add("thinnest spot", spot)
	p.Legend.Top, p.Legend.Padding = true, vg.Points(2)
	p.Legend.XOffs = vg.Points(-10)
	size(p, 11)
	// an edge may run out of the picture: its height is no property of the part
	p.Y.Max = 1.35 * r.coat.P95.In(units.Micrometre)
	to, err := p.WriterTo(18*vg.Centimeter, 11*vg.Centimeter, strings.TrimPrefix(strings.ToLower(filepath.Ext(file)), "."))
	if err != nil {
		return err
	}
	return write(desk, file, to.WriteTo)
}
