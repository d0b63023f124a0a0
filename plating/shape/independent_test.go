package shape

import (
	"math"
	"testing"

	"example.com/laydown/units"
)

// TestIndependentBodies integrates the surface of every body numerically (see
// surface_test.go) and compares to 1e-9. Lengths are plain numbers in metres.
func TestIndependentBodies(t *testing.T) {
	face, edge := prism(0.3, point{0, 0, 0}, point{2, 0, 0}, point{2, 1.5, 0}, point{0, 1.5, 0})
	var hex []point
	for i := range 6 {
		a := float64(i) * math.Pi / 3
		hex = append(hex, point{0.7 / math.Sqrt(3) * math.Cos(a), 0.7 / math.Sqrt(3) * math.Sin(a), 0})
	}
	end, flats := prism(2.5, hex...)
	disc := func(r float64) float64 { return surface(turn(0, 0, r, 0)) }
	dome := surface(ball(1.3, 0, math.Acos(0.3/1.3))) // sphere of 2.6, height 1
	rim := 2 * math.Sqrt(1.3*1.3-0.3*0.3)
	most := surface(ball(1.3, 0, math.Acos(-0.3/1.3))) // height 1.6, past the equator
	outside, inside := surface(turn(1, 0, 1, 3)), surface(turn(0.8, 0, 0.8, 3))
	ring := surface(turn(0.8, 0, 1, 0))
	slope := surface(turn(1, 0, 0.25, 2))
	pan := surface(ball(1.3, 0, math.Asin(0.5/1.3))) // rim 1
	panHeight := 1.3 - math.Sqrt(1.3*1.3-0.25)

	cases := []struct {
		name  string
		piece Body
		want  float64
	}{
		{"plate", Plate{Length: 2, Width: 1.5, Thickness: 0.3}, 2*face + edge},
		{"plate, one face", Plate{Length: 2, Width: 1.5, Thickness: 0.3, Faces: OneFace}, face + edge},
		{"plate, thin", Plate{Length: 2, Width: 1.5}, 2 * face},
		{"disc", Disc{Diameter: 2, Thickness: 0.4}, 2*disc(1) + surface(turn(1, 0, 1, 0.4))},
		{"disc, one face", Disc{Diameter: 2, Faces: OneFace}, disc(1)},
		{"ring", Ring{Outer: 2, Inner: 1.6, Thickness: 0.1},
			2*ring + surface(turn(1, 0, 1, 0.1), turn(0.8, 0, 0.8, 0.1))},
		{"ring, one face", Ring{Outer: 2, Inner: 1.6, Faces: OneFace}, ring},
		{"cylinder", Cylinder{Diameter: 2, Length: 3}, outside + 2*disc(1)},
		{"cylinder, one end", Cylinder{Diameter: 2, Length: 3, OpenEnds: 1}, outside + disc(1)},
		{"cylinder, no ends", Cylinder{Diameter: 2, Length: 3, OpenEnds: 2}, outside},
		{"tube", Tube{Outer: 2, Inner: 1.6, Length: 3}, outside + inside + 2*ring},
		{"tube, outside", Tube{Outer: 2, Inner: 1.6, Length: 3, Sides: OutsideOnly, OpenEnds: 1}, outside + ring},
		{"tube, inside", Tube{Outer: 2, Inner: 1.6, Length: 3, Sides: InsideOnly, OpenEnds: 2}, inside},
		{"hexagonal bar", HexBar{AcrossFlats: 0.7, Length: 2.5}, flats + 2*end},
		{"hexagonal bar, one end", HexBar{AcrossFlats: 0.7, Length: 2.5, OpenEnds: 1}, flats + end},
		{"cone", Cone{BaseDiameter: 2, Height: 2}, surface(turn(1, 0, 0, 2)) + disc(1)},
		{"frustum", Cone{BaseDiameter: 2, TopDiameter: 0.5, Height: 2}, slope + disc(1) + disc(0.25)},
		{"frustum, slope", Cone{BaseDiameter: 2, TopDiameter: 0.5, Height: 2, OpenBase: true, OpenTop: true}, slope},
		{"frustum, upside down", Cone{BaseDiameter: 0.5, TopDiameter: 2, Height: 2, OpenBase: true}, slope + disc(1)},
		{"sphere", Sphere{Diameter: 2.6}, surface(ball(1.3, 0, math.Pi))},
		{"cap by sphere", Cap{SphereDiameter: 2.6, Height: 1, OpenBase: true}, dome},
		{"cap by rim", Cap{BaseDiameter: units.Length(rim), Height: 1}, dome + disc(rim/2)},
		{"cap by sphere, closed", Cap{SphereDiameter: 2.6, Height: 1}, dome + disc(rim/2)},
		{"cap, more than half", Cap{BaseDiameter: units.Length(rim), Height: 1.6, OpenBase: true}, most},
		{"torus", Torus{CentreDiameter: 3, TubeDiameter: 0.8}, surface(bend(1.5, 0.4, 2*math.Pi))},
		{"torus without a hole", Torus{CentreDiameter: 3, TubeDiameter: 3}, surface(bend(1.5, 1.5, 2*math.Pi))},
		{"wire, bent", Wire{Diameter: 0.4, Length: units.Length(5 + 0.6*math.Pi/2)},
			surface(turn(0.2, 0, 0.2, 5), bend(0.6, 0.2, math.Pi/2))},
		{"cheese head", ScrewHead{Diameter: 2, Height: 0.8, Shank: 1},
			surface(turn(0, 0.8, 1, 0.8), turn(1, 0.8, 1, 0), turn(1, 0, 0.5, 0))},
		{"pan head", ScrewHead{Style: PanHead, Diameter: 1, Height: units.Length(panHeight), Shank: 0.4},
			pan + surface(turn(0.5, 0, 0.2, 0))},
		{"countersunk head", ScrewHead{Style: CountersunkHead, Diameter: 2, Height: 0.7, Shank: 1},
			surface(turn(0, 0, 1, 0), turn(1, 0, 0.5, -0.7))},
		{"drilled plate", Drilled{Plate{Length: 2, Width: 1.5, Thickness: 0.3}, []Hole{{Diameter: 0.5, Depth: 0.3}}},
			2*pierced(2, 1.5, 0.25) + edge + surface(turn(0.25, 0, 0.25, 0.3))},
		{"drilled plate, bare hole", Drilled{Plate{Length: 2, Width: 1.5, Thickness: 0.3}, []Hole{{Diameter: 0.5,
			Bare: true}}},
			2*pierced(2, 1.5, 0.25) + edge},
		{"drilled plate, one face", Drilled{Plate{Length: 2, Width: 1.5, Faces: OneFace},
			[]Hole{{Diameter: 0.5, Depth: 0.3, Faces: OneFace}}}, pierced(2, 1.5, 0.25) + surface(turn(0.25, 0, 0.25, 0.3))},
		{"plate, blind hole", Drilled{Plate{Length: 2, Width: 1.5, Thickness: 0.3}, []Hole{{Diameter: 0.5, Depth: 0.2,
			Blind: true}}},
			pierced(2, 1.5, 0.25) + face + edge + surface(turn(0.25, 0, 0.25, 0.2), turn(0, 0, 0.25, 0))},
		{"plate, blind bare hole", Drilled{Plate{Length: 2, Width: 1.5, Thickness: 0.3}, []Hole{{Diameter: 0.5, Depth: 0.2,
			Blind: true, Bare: true}}},
			pierced(2, 1.5, 0.25) + face + edge},
	}
	worst, where := 0., ""
	for _, c := range cases {
		got, err := c.piece.Area()
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		off := apart(float64(got), c.want)
		if off > 1e-9 {
			t.Errorf("%s: %.12g, by integration %.12g, off by %.2g", c.name, float64(got), c.want, off)
		}
		if off >= worst {
			worst, where = off, c.name
		}
	}
	t.Logf("worst: %s, relative %.2g", where, worst)
}

// TestIndependentChain integrates the skin of an oval link: two straight tubes
// and two half tori.
func TestIndependentChain(t *testing.T) {
	const length, width, wire = 12., 8., 1.6
	link := 2*surface(turn(wire/2, 0, wire/2, length-width)) + 2*surface(bend((width-wire)/2, wire/2, math.Pi))
	centre, err := OvalLink(length, width, wire)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		chain Chain
		links float64
	}{
		{Chain{WireDiameter: wire, Centreline: centre, Links: 7}, 7},
		{Chain{WireDiameter: wire, Centreline: centre, Length: 440, LinkPitch: 8.8}, 50},
	} {
		got, err := c.chain.Area()
		if err != nil {
			t.Fatal(err)
		}
		if off := apart(float64(got), c.links*link); off > 1e-9 {
			t.Errorf("%+v: %.12g, by integration %.12g", c.chain, float64(got), c.links*link)
		}
	}
}

// TestIndependentThread integrates the thread twice: as closed rings, where the
// formula must agree, and as the true helix, where it must be too low by less
// than its comment says.
func TestIndependentThread(t *testing.T) {
	for _, ratio := range []float64{1. / 4, 1. / 6, 1. / 10, 1. / 40} {
		const d = 6.
		p := ratio * d
		r := d / 2
		h := math.Sqrt(p*p - p*p/4) // of the equilateral triangle of side P
		r1 := r - 5*h/8
		rings := surface(turn(r, 0, r, p/8), turn(r, p/8, r1, p/8+5*p/16), turn(r1, 0, r1, p/4),
			turn(r1, p/8+9*p/16, r, p))
		flank := patch{func(u, v float64) point {
			x := r1 + (r-r1)*v
			return point{x * math.Cos(u), x * math.Sin(u), (r-x)*math.Tan(math.Pi/6) + p*u/(2*math.Pi)}
		}, 0, 2 * math.Pi, 0, 1}
		strip := func(r, width float64) patch {
			return patch{func(u, v float64) point {
				return point{r * math.Cos(u), r * math.Sin(u), v*width + p*u/(2*math.Pi)}
			}, 0, 2 * math.Pi, 0, 1}
		}
		helix := surface(strip(r, p/8), strip(r1, p/4)) + 2*surface(flank)
		screw := Thread{Diameter: d, Pitch: units.Length(p), Length: units.Length(p)}
		a, err := screw.Area()
		if err != nil {
			t.Fatal(err)
		}
		got := float64(a)
		if apart(got, rings) > 1e-9 {
			t.Errorf("P/d %.3g: %.12g, rings by integration %.12g", ratio, got, rings)
		}
		bound := 3. / 8 * p * p / (math.Pi * math.Pi * 4 * r1 * r1)
		low := (helix - got) / got
		if !(low > 0 && low < bound) {
			t.Errorf("P/d %.3g: helix larger by %.4g, bound %.4g", ratio, low, bound)
		}
		if low < bound/4 {
			t.Errorf("P/d %.3g: bound %.4g is idle, error %.4g", ratio, bound, low)
		}
		t.Logf("P/d %.3g: formula low by %.3g of itself, bound %.3g", ratio, low, bound)
	}
}

// TestIndependentThreadStretch cuts a helical thread at any length: the area
// between two planes goes by the length alone, as the comment says. The flank
// angle is averaged over the phase at which each direction meets the profile.
func TestIndependentThreadStretch(t *testing.T) {
	const d, p = 6., 1.
	perPitch, err := Thread{Diameter: d, Pitch: p, Length: p}.Area()
	if err != nil {
		t.Fatal(err)
	}
	h := p * math.Sqrt(3) / 2
	radius := func(z float64) float64 { // profile at distance z from the middle of a crest
		z = math.Abs(z - p*math.Round(z/p))
		return math.Min(d/2, math.Max(d/2-5*h/8, d/2-(z-p/16)*math.Sqrt(3)))
	}
	skew := func(z float64) float64 { // length of profile per length of axis
		if r := radius(z); r > d/2-5*h/8 && r < d/2 {
			return 2
		}
		return 1
	}
	for _, length := range []float64{0.3, 1.25, 2.77} {
		const phases, slices = 400, 4000
		sum := 0.
		for i := range phases {
			shift := p * (float64(i) + 0.5) / phases
			for j := range slices {
				z := length*(float64(j)+0.5)/slices + shift
				sum += radius(z) * skew(z) * length / slices * 2 * math.Pi / phases
			}
		}
		if want := float64(perPitch) / p * length; apart(sum, want) > 1e-3 {
			t.Errorf("length %.3g: by slices %.6g, by the formula %.6g", length, sum, want)
		}
	}
}
