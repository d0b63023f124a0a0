package pictures

import (
	"bytes"
	"image/color"
	"math"
	"strconv"
	"strings"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgimg"
	"gonum.org/v1/plot/vg/vgsvg"

	"example.com/laydown/plating/ledger"
	"example.com/laydown/units"
)

// Book draws metal content against charge of the book of a bath: what the book holds, how
// sure that is, the analyses, the additions, and the limits. The picture is for black ink,
// 180 mm by 110 mm, with white around it; ending is .svg or .png, of 200 dots an inch.
func Book(book *ledger.Ledger, ending string) ([]byte, error) {
	p, err := drawBook(book)
	if err != nil {
		return nil, err
	}
	const width, height = 18 * vg.Centimeter, 11 * vg.Centimeter
	const edge = 4 * vg.Millimeter // white around it
	var c vg.CanvasWriterTo
	if strings.EqualFold(ending, ".svg") {
		c = vgsvg.New(width, height)
	} else {
		c = vgimg.PngCanvas{Canvas: vgimg.NewWith(vgimg.UseWH(width, height), vgimg.UseDPI(200))}
	}
	paper := draw.New(c)
	paper.SetColor(color.White)
	paper.Fill(paper.Path())
	p.Draw(draw.Crop(paper, edge, -edge, edge, -edge))
	var b bytes.Buffer // no half picture on an error
	_, err = c.WriteTo(&b)
	return b.Bytes(), err
}

// A bookTrace is the book as points of a picture.
type bookTrace struct {
	content, upper, lower plotter.XYs // by charge in A·min and content in g/L
	analyses              plotter.XYs
	bars                  plotter.YErrors // twice the standard uncertainty
	additions             plotter.XYs
}

// traceOfBook follows a book entry by entry: the content after each against the charge since
// the opening. Entries without a charge, as an addition, make a step straight up or down.
func traceOfBook(book *ledger.Ledger) bookTrace {
	var t bookTrace
	b := book.Account()
	// A band of two standard uncertainties either way holds the bath in 19 of 20 cases; no content is
	// below zero.
	add := func(s ledger.State) {
		x, y, u := s.Charge.In(units.AmpereMinute), s.Content.In(units.GramPerLitre),
			2*s.ContentUncertainty.In(units.GramPerLitre)
		t.content = append(t.content, plotter.XY{X: x, Y: y})
		t.upper = append(t.upper, plotter.XY{X: x, Y: y + u})
		t.lower = append(t.lower, plotter.XY{X: x, Y: max(0, y-u)})
	}
	add(ledger.State{Content: b.Content, ContentUncertainty: b.ContentUncertainty})
	for _, r := range book.Records() {
		if _, void := r.Entry.Event.(ledger.Void); void || r.VoidedBy != 0 {
			continue // nothing happened to the bath
		}
		add(r.After)
		x := r.After.Charge.In(units.AmpereMinute)
		switch e := r.Entry.Event.(type) {
		case ledger.Analysis: // where the laboratory saw it, not where the book went after it
			t.analyses = append(t.analyses, plotter.XY{X: x, Y: e.Content.In(units.GramPerLitre)})
			u := 2 * e.Uncertainty.In(units.GramPerLitre)
			t.bars = append(t.bars, struct{ Low, High float64 }{u, u})
		case ledger.Addition:
			if r.Added > 0 { // water is no mark
				t.additions = append(t.additions, plotter.XY{X: x, Y: r.After.Content.In(units.GramPerLitre)})
			}
		}
	}
	return t
}

// unsure reports whether the book knows of any uncertainty.
func (t bookTrace) unsure() bool {
	for i := range t.content {
		if t.upper[i] != t.content[i] {
			return true
		}
	}
	return false
}

// drawBook shows metal content against charge with its limits. It is for black
// ink: greys, dashes and shapes, no colour.
func drawBook(book *ledger.Ledger) (*plot.Plot, error) {
	b := book.Account()
	t := traceOfBook(book)
	p := plot.New()
	// Name, axes with their units, and a legend that stands where the curve is not: below.
	p.Title.Text = units.Printable(b.Name)
	p.Title.Padding = 3 * vg.Millimeter
	p.X.Label.Text = "charge since the opening, A·min"
	p.Y.Label.Text = b.Metal + " content, g/L"
	p.Legend.Top, p.Legend.Left, p.Legend.Padding = false, true, vg.Millimeter
	for _, axis := range []*plot.Axis{&p.X, &p.Y} {
		axis.Label.Padding = 2 * vg.Millimeter
		axis.Tick.Marker = plot.TickerFunc(bookTicks)
	}

	// From back to front: the band, the grid, the curve.
	band, err := plotter.NewPolygon(append(append(plotter.XYs{}, t.upper...), bookBackwards(t.lower)...))
	if err != nil {
		return nil, err
	}
	band.Color, band.LineStyle.Width = color.Gray{215}, 0
	grid := plotter.NewGrid()
	grid.Vertical.Color, grid.Horizontal.Color = color.Gray{190}, color.Gray{190}
	grid.Vertical.Width, grid.Horizontal.Width = vg.Points(0.3), vg.Points(0.3)
	line, err := plotter.NewLine(t.content)
	if err != nil {
		return nil, err
	}
	line.Width = vg.Points(1.3)
	p.Add(band, grid, line)
	p.Legend.Add("content in the book", line)
	if t.unsure() {
		p.Legend.Add("two standard uncertainties", band)
	}

	// Rings with bars of two standard uncertainties for analyses.
	if len(t.analyses) > 0 {
		marks, err := plotter.NewScatter(t.analyses)
		if err != nil {
			return nil, err
		}
		marks.GlyphStyle = draw.GlyphStyle{Color: color.Black, Radius: vg.Points(3.5), Shape: draw.RingGlyph{}}
		bars, err := plotter.NewYErrorBars(struct {
			plotter.XYs
			plotter.YErrors
		}{t.analyses, t.bars})
		if err != nil {
			return nil, err
		}
		p.Add(bars, marks)
		p.Legend.Add("analysis", marks)
	}
	// Triangles for additions.
	if len(t.additions) > 0 {
		marks, err := plotter.NewScatter(t.additions)
		if err != nil {
			return nil, err
		}
		marks.GlyphStyle = draw.GlyphStyle{Color: color.Black, Radius: vg.Points(3.5), Shape: draw.PyramidGlyph{}}
		p.Add(marks)
		p.Legend.Add("metal added", marks)
	}
	return p, bookLimits(p, b, t)
}

// bookLimits draws alarms and target across the picture with their names.
func bookLimits(p *plot.Plot, b ledger.Account, t bookTrace) error {
	right := max(t.content[len(t.content)-1].X, 1)
	p.X.Min, p.X.Max = 0, right*1.16 // room for the names
	low, high := p.Y.Min, p.Y.Max    // widened until every limit is inside
	for _, l := range []struct {
		name   string
		at     units.MassConcentration
		dashes []vg.Length
	}{
		{"low alarm", b.Low, []vg.Length{vg.Points(6), vg.Points(3)}},
		{"target", b.Aim(), []vg.Length{vg.Points(1.5), vg.Points(2.5)}},
		{"high alarm", b.High, []vg.Length{vg.Points(6), vg.Points(3)}},
	} {
		if l.at == 0 { // not watched
			continue
		}
		y := l.at.In(units.GramPerLitre)
		low, high = min(low, y), max(high, y)
		line, err := plotter.NewLine(plotter.XYs{{X: 0, Y: y}, {X: p.X.Max, Y: y}})
		if err != nil {
			return err
		}
		line.Width, line.Dashes = vg.Points(0.9), l.dashes
		name, err := plotter.NewLabels(plotter.XYLabels{XYs: plotter.XYs{{X: p.X.Max, Y: y}}, Labels: []string{l.name}})
		if err != nil {
			return err
		}
		name.TextStyle[0].XAlign, name.TextStyle[0].YAlign = text.XRight, text.YBottom
		name.Offset.Y = vg.Points(3) // clear of the line
		p.Add(line, name)
	}
	span := max(high-low, 0.01*high, 1e-6)
	p.Y.Min, p.Y.Max = max(0, low-0.45*span), high+0.1*span // the legend stands below
	return nil
}

// bookTicks are steps of 1, 2 or 5 with some power of ten, five to twelve of them.
func bookTicks(low, high float64) []plot.Tick {
	span := high - low // none, or no number, has no ticks
	if !(span > 0) || math.IsInf(span, 0) {
		return nil
	}
	step := math.Pow(10, math.Floor(math.Log10(span/5)))
	// The largest of the three steps that still makes five.
	for _, k := range []float64{5, 2} {
		if span/(k*step) >= 5 {
			step *= k
			break
		}
	}
	// As many decimals as the step has, so that no two labels look alike.
	decimals := max(0, -int(math.Floor(math.Log10(step)+1e-9)))
	var list []plot.Tick
	for i := math.Ceil(low/step - 1e-9); i*step <= high+1e-9*span; i++ {
		list = append(list, plot.Tick{Value: i * step, Label: strconv.FormatFloat(i*step+0, 'f', decimals, 64)})
	}
	return list
}

// bookBackwards returns points from the last to the first: the way back around a band.
func bookBackwards(xys plotter.XYs) plotter.XYs {
	out := make(plotter.XYs, 0, len(xys))
	for i := len(xys) - 1; i >= 0; i-- {
		out = append(out, xys[i])
	}
	return out
}
