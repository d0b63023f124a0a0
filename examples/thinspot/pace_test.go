package main

import (
	"context"
	"fmt"
	"os"
	"strings"
	"testing"

	"example.com/laydown/plating/field"
	"example.com/laydown/plating/jobfile"
	"example.com/laydown/testdata"
)

// TestPropertyPace: what a first run took over its estimate counts for what is still to
// come: the finer mesh is left out when it would pass the limit of memory or of time at
// that pace, and what is said beforehand covers everything that will run.
func TestPropertyPace(t *testing.T) {
	testdata.SlowOnly(t)
	f, err := os.Open("../../testdata/cases/bezel.json")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	c, err := jobfile.ReadCaseWith(f, nil)
	if err != nil {
		t.Fatal(err)
	}
	list := []jobfile.Position{{Share: 1, Problem: c.Mesh.Problem}}
	one, err := field.Estimate(c.Mesh.Problem, field.MeshOptions{})
	if err != nil {
		t.Fatal(err)
	}
	finer, err := field.Estimate(field.Refined(c.Mesh.Problem), field.MeshOptions{})
	if err != nil {
		t.Fatal(err)
	}
	e := effort{second: true, advice: true, memory: 4 << 30, seconds: 120, say: func(string, ...any) {}}
	ran := func(seconds, bytes float64) pace {
		w := field.Work{Build: seconds * one.Seconds, OperatorBytes: int64(bytes * float64(one.Bytes))}
		p, err := paceOf(list, hung{solutions: []*field.MeshSolution{{Work: w}}}, e)
		if err != nil {
			t.Fatal(err)
		}
		return p
	}
	if p := ran(0.5, 0.5); p != (pace{1, 1}) {
		t.Errorf("a quick run: %v", p)
	}
	if why := tooDear(list, e, ran(1, 1)); why != "" {
		t.Errorf("at the pace of the estimate: %s", why)
	}
	if why := tooDear(list, e, ran(1, 1.1*float64(e.memory)/float64(finer.Bytes))); !strings.Contains(why, "GB") {
		t.Errorf("too large at the pace of the first run: %q", why)
	}
	if why := tooDear(list, e, ran(1.1*e.seconds/finer.Seconds, 1)); !strings.Contains(why, "s") {
		t.Errorf("too slow at the pace of the first run: %q", why)
	}
	said := ""
	e.say = func(format string, args ...any) { said = fmt.Sprintf(format, args...) }
	slow := 1000 / one.Seconds
	if err := announce("", list, true, true, e, pace{slow, 1}); err != nil {
		t.Fatal(err)
	}
	// The case, eight arrangements that are somewhat larger, and the finer mesh.
	want := slow * (one.Seconds*(1+1.3*8) + finer.Seconds)
	if !strings.Contains(said, fmt.Sprintf("some %.0f s in all", want)) || !strings.Contains(said, memory(finer.Bytes)) {
		t.Errorf("%q, want %.0f s and %s", said, want, memory(finer.Bytes))
	}
	// The blocks stay within what the limit leaves.
	s, err := field.Solve(context.Background(), c.Mesh.Problem, field.MeshOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if s.Work.OperatorBytes > one.Bytes {
		t.Errorf("blocks of %d bytes, estimated %d for all", s.Work.OperatorBytes, one.Bytes)
	}
}
