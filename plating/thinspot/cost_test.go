package thinspot

import (
	"context"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"example.com/laydown/plating/field"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

func shippedCase(t *testing.T, name string) Case {
	t.Helper()
	raw, err := testdata.Files.ReadFile("cases/" + name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	c, err := Read(strings.NewReader(string(raw)), nil)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// TestPropertyPace: what a first run took over its estimate counts for what is still to
// come: the finer mesh is left out when it would pass the limit of memory or of time at
// that pace, and what is said beforehand covers everything that will run.
func TestPropertyPace(t *testing.T) {
	c := shippedCase(t, "bezel")
	one, err := field.Estimate(c.Mesh.Problem, field.MeshOptions{})
	if err != nil {
		t.Fatal(err)
	}
	finer, err := field.Estimate(field.Refined(c.Mesh.Problem), field.MeshOptions{})
	if err != nil {
		t.Fatal(err)
	}
	o, err := Options{Memory: 4 << 30}.filled()
	if err != nil {
		t.Fatal(err)
	}
	p, err := run{c, o}.planOf(c.Mesh.positions())
	if err != nil {
		t.Fatal(err)
	}
	ran := func(seconds, bytes float64) pace {
		w := field.Work{Build: seconds * one.Seconds, OperatorBytes: int64(bytes * float64(one.Bytes))}
		return p.paceOf([]*field.MeshSolution{{Work: w}})
	}
	if as := ran(0.5, 0.5); as != (pace{1, 1}) {
		t.Errorf("a quick run: %v", as)
	}
	if why := p.noFiner(ran(1, 1)); why != "" {
		t.Errorf("at the pace of the estimate: %s", why)
	}
	if why := p.noFiner(ran(1, 1.1*float64(o.Memory)/float64(finer.Bytes))); !strings.Contains(why, "GB") {
		t.Errorf("too large at the pace of the first run: %q", why)
	}
	if why := p.noFiner(ran(1.1*float64(o.FinerTime)/finer.Seconds, 1)); !strings.Contains(why, "some 132 s") {
		t.Errorf("too slow at the pace of the first run: %q", why)
	}
	// The case, eight arrangements that are somewhat larger, and the finer mesh.
	slow := 1000 / one.Seconds
	said := p.cost(pace{slow, 1}, "", false)
	if want := slow * (one.Seconds*(1+1.3*8) + finer.Seconds); math.Abs(float64(said.Time)/want-1) > 1e-12 ||
		said.Memory != finer.Bytes || said.Unknowns != finer.Unknowns {
		t.Errorf("%+v, want %.0f s and %d bytes", said, want, finer.Bytes)
	}
	late := p.cost(pace{1, 1}, "", true)
	if want := one.Seconds*1.3*8 + finer.Seconds; !late.Late || math.Abs(float64(late.Time)/want-1) > 1e-12 {
		t.Errorf("still to come %+v, want %v s", late, want)
	}
	if text := late.String(); !strings.HasPrefix(text, "more than estimated; still to come: up to ") ||
		!strings.Contains(text, fmt.Sprintf("some %.0f s in all", float64(late.Time))) ||
		!strings.HasSuffix(text, " of memory, at most 4.3 GB") {
		t.Error(text)
	}
}

// TestPropertyCost: what is not asked for costs nothing; too little memory is refused
// with what it would take, before anything is solved.
func TestPropertyCost(t *testing.T) {
	for _, name := range []string{"bob", "bezel"} {
		c := shippedCase(t, name)
		all, err := c.Cost(Options{})
		if err != nil || !(all.Time > 0) || all.Memory <= 0 || all.Unknowns <= 0 {
			t.Errorf("%s: %+v, %v", name, all, err)
		}
		less, err := c.Cost(Options{NoAdvice: true, Quick: true})
		if err != nil || !(less.Time < all.Time) || (less.NoFiner == "") != (c.Mesh == nil) {
			t.Errorf("%s, quick: %+v of %+v, %v", name, less, all, err)
		}
	}
	c := shippedCase(t, "block")
	var big *field.CostError
	if _, err := c.Cost(Options{Memory: 1000}); !errors.As(err, &big) || big.Limit != 1000 {
		t.Error(err)
	}
	if _, err := c.Solve(context.Background(), Options{Memory: 1000}); !errors.As(err, &big) {
		t.Error(err)
	}
	for _, o := range []Options{{Memory: -1}, {FinerTime: -1}, {FinerTime: units.Duration(math.NaN())}} {
		var value *units.ValueError
		if _, err := c.Cost(o); !errors.As(err, &value) {
			t.Errorf("%+v: %v", o, err)
		}
	}
	if _, err := (Case{}).Cost(Options{}); err == nil {
		t.Error("an empty case: no error")
	}
}

// TestIndependentEstimate: the blocks of a run stay within what is estimated for all.
func TestIndependentEstimate(t *testing.T) {
	testdata.SlowOnly(t)
	c := shippedCase(t, "bezel")
	one, err := field.Estimate(c.Mesh.Problem, field.MeshOptions{})
	if err != nil {
		t.Fatal(err)
	}
	s, err := field.Solve(context.Background(), c.Mesh.Problem, field.MeshOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if s.Work.OperatorBytes > one.Bytes {
		t.Errorf("blocks of %d bytes, estimated %d for all", s.Work.OperatorBytes, one.Bytes)
	}
}
