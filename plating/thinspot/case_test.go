package thinspot_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/laydown/plating/current"
	"example.com/laydown/plating/thinspot"
	"example.com/laydown/units"
)

func TestPropertyReadCase(t *testing.T) {
	c, err := thinspot.Read(strings.NewReader(bobCase(t)), nil)
	if err != nil {
		t.Fatal(err)
	}
	if len(c.Cell.Parts) != 2 || c.Cell.Parts[1].Kind != current.Anode || c.MinThickness != 1*units.Micrometre ||
		c.PricePerGram.String() != "98.5" || c.Cell.Parts[0].Law.Cathodic != 0.5 {
		t.Errorf("%+v", c)
	}
	// Two caps of 6 mm on 36 mm radius, two rings 36 to 40, two rims of 1.5 mm, and a groove 3 by 3 mm.
	mm := 1e-3
	want := 2*math.Pi*(36*36+6*6)*mm*mm + 2*math.Pi*(40*40-36*36)*mm*mm + 2*2*math.Pi*40*1.5*mm*mm +
		2*math.Pi*(40*40-37*37)*mm*mm + 2*math.Pi*37*3*mm*mm
	if got := float64(c.Cell.Parts[0].Profile.Area()); math.Abs(got/want-1) > 1e-9 {
		t.Errorf("area %v, by hand %v", got, want)
	}
	other := strings.NewReplacer(`"tank": {"radius": "150 mm", "depth": "300 mm"},`, "", `"current": "0.6 A"`,
		`"voltage": "0.5 V"`,
		`"kind": "anode", "tube": {"inner": "130 mm", "outer": "132 mm", "low": "50 mm", "high": "250 mm"}`,
		`"kind": "robber", "torus": {"radius": "60 mm", "height": "150 mm", "thickness": "3 mm"}, "law": {"model": "butler-volmer", "exchange": "1 A/m²", "anodic": 0.5, "cathodic": 0.5, "temperature": "38 °C"}`).
		Replace(bobCase(t))
	c, err = thinspot.Read(strings.NewReader(other), nil)
	if err != nil || len(c.Robbers) != 1 || c.Robbers[0] != 1 || !c.Cell.Bath.FarAnode {
		t.Errorf("%+v %v", c, err)
	}
}

// TestPropertyWrongCases: each spoiled case is refused with a line and a remedy.
func TestPropertyWrongCases(t *testing.T) {
	for _, s := range []struct{ old, new, want string }{
		{"laydown case 1", "laydown job 1", `need "laydown case 1"`},
		{`"conductivity": "6 S/m"`, `"conductivity": "6"`, "no unit after the number"},
		{`"conductivity": "6 S/m",`, ``, `"conductivity" is missing`},
		{`"conductivity": "6 S/m"`, `"conductivity": "0 S/m"`, "above zero"},
		{`"min_thickness": "1 µm",`, ``, `"min_thickness" is missing`},
		{`"current": "0.6 A"`, `"voltage": "-1 V"`, "above zero"},
		{`"current": "0.6 A"`, `"current": "0.6 A", "voltage": "1 V"`, `either "current" or "voltage"`},
		{`"current": "0.6 A",`, ``, `either "current" or "voltage"`},
		{`"98.50"`, `98.50`, "amount of 0 or more in quotes"},
		{`"98.50"`, `"1e99"`, "amount of 0 or more in quotes"},
		{`"radius": "150 mm", `, ``, `"radius" and "depth"`},
		{`"radius": "150 mm"`, `"radius": "150 A"`, "is one of current"},
		{`"kind": "cathode"`, `"kind": "anode"`, "need kind cathode"},
		{`"kind": "cathode"`, `"kind": "thing"`, "need one of cathode, anode"},
		{`"model": "tafel"`, `"model": "guess"`, "need one of primary"},
		{`"alpha": 0.5`, `"alpha": 9`, "transfer coefficient"},
		{`"alpha": 0.5, `, ``, "transfer coefficient"},
		{`{"to": ["40 mm", "147 mm"]},`, `{"to": ["40 mm"]},`, "need two, radius and height"},
		{`{"to": ["40 mm", "147 mm"]},`, `{"to": ["40 mm", "147 mm"], "by": "arc"},`, "an arc needs it"},
		{`{"to": ["40 mm", "147 mm"]},`, `{"to": ["-40 mm", "147 mm"]},`, "below zero"},
		{`"tube": {"inner"`, `"tube": {"innermost"`, "unknown field"},
		{`"tube": {`, `"ball": {"radius": "3 mm", "height": "3 mm"}, "tube": {`, "need one of profile"},
		{`"outer": "132 mm"`, `"outer": "532 mm"`, "need"},
		{`"efficiency_lines": [`, `"efficiencies": [`, "unknown field"},
		{`"min_thickness": "1 µm"`, `"min_thickness": "1 µm", "minutes": 3`, "unknown field"},
	} {
		text := strings.Replace(bobCase(t), s.old, s.new, 1)
		if text == bobCase(t) {
			t.Errorf("%q is not in the file", s.old)
			continue
		}
		_, err := thinspot.Read(strings.NewReader(text), nil)
		var at *units.FileError
		if !errors.As(err, &at) || at.Line == 0 || !strings.Contains(err.Error(), s.want) {
			t.Errorf("%s: %v, want %q with a line", s.new, err, s.want)
		}
	}
	if _, err := thinspot.Read(strings.NewReader(""), nil); err == nil {
		t.Error("an empty file: no error")
	}
}

// FuzzReadCase: no panic, and what is read passes the cell's own check and is written as the
// same.
func FuzzReadCase(f *testing.F) {
	f.Add(bobCase(f))
	f.Add(meshCase)
	f.Add(`{"format": "laydown case 1", "parts": [{"rod": {}}]}`)
	f.Fuzz(func(t *testing.T, text string) {
		c, err := thinspot.Read(strings.NewReader(text), nil)
		if err != nil {
			var e *units.FileError
			if !errors.As(err, &e) {
				t.Fatalf("error %v (%T), want a *units.FileError", err, err)
			}
			return
		}
		if c.Mesh == nil {
			if err := c.Cell.Check(); err != nil {
				t.Fatal(err)
			}
		} else if len(c.Mesh.Problem.Surfaces) == 0 {
			t.Fatal("a mesh case without surfaces")
		}
		if err := c.Bath.Check(); err != nil || !(c.MinThickness > 0) {
			t.Fatal(err, c.MinThickness)
		}
		if back, written := again(t, c, nil); !same(c, back) {
			t.Fatalf("not the same again:\n%s", written)
		}
	})
}

// TestPropertyUnusualFigures: what no shop has is refused with the field.
func TestPropertyUnusualFigures(t *testing.T) {
	for _, name := range []string{"conductivity", "min_thickness"} {
		text, at := bobCase(t), `"`+name+`": "`
		i := strings.Index(text, at)
		if i < 0 {
			t.Fatalf("the case has no %s", name)
		}
		i += len(at)
		_, err := thinspot.Read(strings.NewReader(text[:i]+"99999"+text[i:]), nil)
		if err == nil || !strings.Contains(err.Error(), "check the unit and the point") || !strings.Contains(err.Error(),
			name) {
			t.Errorf("%s: %v", name, err)
		}
	}
}
