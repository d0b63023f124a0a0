package shape

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"example.com/laydown/units"
)

// mayBeZero lists the dimensions whose zero has a meaning.
var mayBeZero = map[string]bool{
	"Plate.Thickness": true, "Disc.Thickness": true, "Ring.Thickness": true, "Cone.TopDiameter": true,
	"ScrewHead.Shank": true, "WeighedSheet.Outline": true, "Masked.Covered": true,
}

// TestPropertyBadDimensions puts bad numbers into every field of every body. NaN,
// an infinity and a negative value must be refused, a zero unless it means
// something, and anything else must give a typed error or a finite area above
// zero; Working must fail where Area does.
func TestPropertyBadDimensions(t *testing.T) {
	fields := 0
	for _, p := range samples() {
		typ := reflect.TypeOf(p)
		if typ.Kind() != reflect.Struct {
			continue
		}
		for i := range typ.NumField() {
			if typ.Field(i).Type.Kind() != reflect.Float64 {
				continue
			}
			fields++
			for _, bad := range []float64{nan, math.Inf(1), math.Inf(-1), 0, -1, 1e300, math.MaxFloat64, 1e-300, 5e-324} {
				v := reflect.New(typ).Elem()
				v.Set(reflect.ValueOf(p))
				unused := v.Field(i).Float() == 0
				v.Field(i).SetFloat(bad)
				name := typ.Name() + "." + typ.Field(i).Name
				refuse := bad-bad != 0 || bad < 0 || (bad == 0 && !mayBeZero[name] && !unused)
				held(t, fmt.Sprintf("%s = %g in %+v", name, bad, p), v.Interface().(Body), refuse)
			}
		}
	}
	if fields < 60 {
		t.Errorf("only %d fields were tried", fields)
	}
}

// held checks the minimum thickness of Piece on a piece that may be bad.
func held(t *testing.T, name string, p Body, refuse bool) {
	t.Helper()
	a, err := p.Area()
	steps, err2 := p.Working()
	if (err == nil) != (err2 == nil) {
		t.Errorf("%s: Area %v, Working %v", name, err, err2)
	}
	if err == nil {
		if refuse {
			t.Errorf("%s: accepted, area %v", name, a)
		}
		if !(a > 0 && a <= math.MaxFloat64) {
			t.Errorf("%s: area %v", name, a)
		}
		return
	}
	if a != 0 || steps != nil {
		t.Errorf("%s: an area %v or steps came with the error", name, a)
	}
	typed(t, name, err)
}

// typed checks that an error says what, how much and what would do.
func typed(t *testing.T, name string, err error) {
	t.Helper()
	var e *units.ValueError
	if !errors.As(err, &e) || e.Field == "" || e.Value == "" || e.Need == "" || e.Err == nil {
		t.Errorf("%s: %T %v is no complete ValueError", name, err, err)
	}
}

// TestPropertyBadChoices tries options and combinations that contradict.
func TestPropertyBadChoices(t *testing.T) {
	plate := Plate{Length: 0.06, Width: 0.04, Thickness: 0.002}
	disc := Disc{Diameter: 0.05, Thickness: 0.002}
	ball := Sphere{Diameter: 0.01}
	cases := []struct {
		piece Body
		says  string
		why   error
	}{
		{Plate{}, "plate length", units.ErrNotPositive},
		{Plate{Length: 1, Width: 1, Faces: 7}, "plate faces 7", units.ErrOutOfRange},
		{Disc{Diameter: 1, Faces: 2}, "disc faces", units.ErrOutOfRange},
		{Ring{Outer: 1, Inner: 1}, "ring inner diameter", units.ErrInconsistent},
		{Ring{Outer: 1, Inner: 2, Faces: OneFace}, "ring inner diameter", units.ErrInconsistent},
		{Ring{Outer: 1}, "ring inner diameter", units.ErrNotPositive},
		{Cylinder{Diameter: 1, Length: 1, OpenEnds: 3}, "cylinder open ends 3", units.ErrOutOfRange},
		{Cylinder{Diameter: 1, Length: 1, OpenEnds: -1}, "cylinder open ends -1", units.ErrOutOfRange},
		{HexBar{AcrossFlats: 1, Length: 1, OpenEnds: 3}, "hexagonal bar open ends", units.ErrOutOfRange},
		{Tube{Outer: 1, Inner: 1, Length: 1}, "tube inner diameter", units.ErrInconsistent},
		{Tube{Outer: 1, Inner: 0.5, Length: 1, Sides: 3}, "tube sides", units.ErrOutOfRange},
		{Tube{Outer: 1, Inner: 0.5, Length: 1, OpenEnds: 4}, "tube open ends", units.ErrOutOfRange},
		{Cap{Height: 1}, "cap base diameter", units.ErrNotPositive},
		{Cap{BaseDiameter: 1, SphereDiameter: 1, Height: 0.1}, "cap sphere diameter", units.ErrInconsistent},
		{Cap{SphereDiameter: 1, Height: 1.1}, "cap height", units.ErrInconsistent},
		{Torus{CentreDiameter: 1, TubeDiameter: 1.1}, "torus tube diameter", units.ErrInconsistent},
		{Thread{Diameter: 1, Pitch: 0.93, Length: 1}, "thread pitch", units.ErrInconsistent},
		{Chain{WireDiameter: 1, Centreline: 3, Links: 1}, "chain link centreline", units.ErrInconsistent},
		{Chain{WireDiameter: 1, Centreline: 30, Links: -1}, "chain links", units.ErrNegative},
		{Chain{WireDiameter: 1, Centreline: 30, Links: 1, Length: 1}, "chain length", units.ErrInconsistent},
		{Chain{WireDiameter: 1, Centreline: 30, Links: 1, LinkPitch: 1}, "chain link pitch", units.ErrInconsistent},
		{Chain{WireDiameter: 1, Centreline: 30, Length: 100, LinkPitch: 15}, "chain link pitch", units.ErrInconsistent},
		{ScrewHead{Diameter: 1, Height: 1, Shank: 1}, "screw shank diameter", units.ErrInconsistent},
		{ScrewHead{Style: PanHead, Diameter: 1, Height: 0.6}, "pan head height", units.ErrInconsistent},
		{ScrewHead{Style: 9, Diameter: 1, Height: 0.6}, "screw head style 9", units.ErrOutOfRange},
		{WeighedSheet{Mass: 1, Density: 1, Thickness: 1, Faces: 5}, "sheet faces", units.ErrOutOfRange},
		{Assembly{}, "number of parts", units.ErrNotPositive},
		{Assembly{ball, nil}, "piece none", units.ErrInconsistent},
		{Assembly{ball, Sphere{}}, "sphere diameter", units.ErrNotPositive},
		{Assembly{Known{Value: 1.5e308}, Known{Value: 1.5e308}}, "sum of areas", units.ErrNotFinite},
		{Times{Piece: ball}, "number of pieces 0", units.ErrNotPositive},
		{Times{Count: -2, Piece: ball}, "number of pieces -2", units.ErrNotPositive},
		{Times{Count: 2}, "piece none", units.ErrInconsistent},
		{Times{Count: 10, Piece: Known{Value: 1e308}}, "area of all pieces", units.ErrNotFinite},
		{Masked{Covered: 1}, "piece none", units.ErrInconsistent},
		{Masked{ball, units.Area(area(t, ball))}, "masked area", units.ErrInconsistent},
		{Masked{ball, 1}, "masked area", units.ErrInconsistent},
		{Less{ball, nil}, "piece none", units.ErrInconsistent},
		{Less{nil, ball}, "piece none", units.ErrInconsistent},
		{Less{ball, ball}, "area taken off", units.ErrInconsistent},
		{Less{ball, Sphere{}}, "sphere diameter", units.ErrNotPositive},
		{Drilled{}, "piece none", units.ErrInconsistent},
		{Drilled{plate, []Hole{{Diameter: 0.04, Depth: 0.002}}}, "hole diameter", units.ErrInconsistent},
		{Drilled{disc, []Hole{{Diameter: 0.05, Depth: 0.002}}}, "hole diameter", units.ErrInconsistent},
		{Drilled{Ring{Outer: 0.05, Inner: 0.03, Thickness: 0.002}, []Hole{{Diameter: 0.01, Depth: 0.002}}}, "hole diameter",
			units.ErrInconsistent},
		{Drilled{plate, []Hole{{Diameter: 0.01, Depth: 0.003}}}, "through hole depth", units.ErrInconsistent},
		{Drilled{plate, []Hole{{Diameter: 0.01, Depth: 0.002, Blind: true}}}, "blind hole depth", units.ErrInconsistent},
		{Drilled{plate, []Hole{{Diameter: 0.01, Depth: 0.002, Faces: OneFace}}}, "hole faces", units.ErrInconsistent},
		{Drilled{plate, []Hole{{Diameter: 0.03, Depth: 0.002, Count: 4}}}, "area of all hole mouths",
			units.ErrInconsistent},
		{Drilled{ball, []Hole{{Diameter: 0.009, Bare: true, Count: 3}}}, "holes change the area by", units.ErrInconsistent},
		{Drilled{plate, []Hole{{Diameter: 0.01}}}, "hole depth", units.ErrNotPositive},
		{Drilled{plate, []Hole{{Diameter: 0.01, Depth: 0.002, Count: -1}}}, "hole count -1", units.ErrNegative},
		{Drilled{plate, []Hole{{Diameter: 0.01, Depth: 0.002, Faces: 9}}}, "hole faces 9", units.ErrOutOfRange},
		{Assembly{foreign{value: units.Area(nan)}}, "piece area", units.ErrNotFinite},
		{Assembly{foreign{value: -1}}, "piece area", units.ErrNotPositive},
		{Masked{Piece: foreign{}}, "piece area", units.ErrNotPositive},
		{Sphere{Diameter: 1e160}, "sphere area", units.ErrNotFinite},
		{Sphere{Diameter: 1e-170}, "sphere area", units.ErrNotPositive},
	}
	for _, c := range cases {
		name := fmt.Sprintf("%T%+v", c.piece, c.piece)
		held(t, name, c.piece, true)
		_, err := c.piece.Area()
		if err == nil {
			continue
		}
		if !errors.Is(err, c.why) || !strings.HasPrefix(err.Error(), c.says) {
			t.Errorf("%s: %v; want %q, %v", name, err, c.says, c.why)
		}
	}
}

// TestPropertyForeign: a piece from outside that shows no working still counts;
// one whose working fails passes its error on.
func TestPropertyForeign(t *testing.T) {
	boom := errors.New("no working")
	silent, broken := foreign{value: 2}, foreign{value: 2, fail: boom}
	disc := Disc{Diameter: 0.01, Faces: OneFace}
	for _, p := range []Body{Assembly{silent}, Times{3, silent}, Masked{silent, 1}, Less{silent, disc}, Drilled{silent,
		nil}} {
		if steps, err := p.Working(); err != nil || len(steps) == 0 {
			t.Errorf("%T: %v steps, %v", p, len(steps), err)
		}
	}
	for _, p := range []Body{Assembly{broken}, Times{3, broken}, Masked{broken, 1}, Less{broken, disc},
		Less{Known{Value: 9}, broken}, Drilled{broken, nil}} {
		if steps, err := p.Working(); !errors.Is(err, boom) || steps != nil {
			t.Errorf("%T: %v steps, %v", p, len(steps), err)
		}
	}
}
