package pictures

import (
	"bytes"
	"image"
	"image/png"
	"math"
	"strings"
	"testing"
)

// TestPropertyEncode: a chart, and a page of views with their scale, are written as either
// kind of file, with their words; another ending and a curve that is no number are errors.
func TestPropertyEncode(t *testing.T) {
	chart := Chart{X: Axis{Label: "along, mm"}, Y: Axis{Label: "thickness, µm", High: 3}, Curves: []Curve{
		{Name: "thickness", Points: [][2]float64{{0, 1}, {5, 2}}}, {Name: "spot", Stroke: Marks,
			Points: [][2]float64{{0, 1}}}}}
	alone := Picture{Title: "bob\x1b[2K", Chart: chart}
	page := alone
	page.Views = []View{{Name: "front", Image: image.NewGray(image.Rect(0, 0, 8, 8))}}
	page.Scale = Scale{Low: 1, High: 2, Mark: 1.5, Label: "the line: minimum thickness"}
	for name, p := range map[string]Picture{"chart": alone, "page": page} {
		var pixels, drawing bytes.Buffer
		if err := Encode(&pixels, p, ".png"); err != nil {
			t.Fatal(err)
		}
		img, err := png.Decode(&pixels)
		if err != nil || img.Bounds().Dx() < 600 || (img.Bounds().Dy() > img.Bounds().Dx()) != (name == "page") {
			t.Errorf("%s: %v, %v", name, img.Bounds(), err)
		}
		if err := Encode(&drawing, p, ".svg"); err != nil {
			t.Fatal(err)
		}
		text := drawing.String()
		for _, word := range []string{"thickness, µm", "along, mm", ">spot<", `bob\x1b[2K`} {
			if !strings.Contains(text, word) {
				t.Errorf("%s: no %q", name, word)
			}
		}
		if strings.Contains(text, "<image") != (name == "page") || strings.Contains(text, "front") != (name == "page") {
			t.Errorf("%s: its views are not there, or there are some", name)
		}
	}
	var b bytes.Buffer
	if err := Encode(&b, alone, ".gif"); err == nil || !strings.Contains(err.Error(), ".png") {
		t.Error(err)
	}
	alone.Chart.Curves[0].Points = [][2]float64{{0, math.NaN()}}
	if err := Encode(&b, alone, ".svg"); err == nil || b.Len() > 0 {
		t.Errorf("no number: %v, %d bytes", err, b.Len())
	}
}
