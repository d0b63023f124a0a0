package thinspot

import (
	"context"
	"math"
	"strings"
	"testing"

	"example.com/laydown/plating/coat"
	"example.com/laydown/testdata"
)

// runOf is a run of a case within a gigabyte.
func runOf(t *testing.T, c Case) run {
	t.Helper()
	o, err := Options{Memory: 1e9}.filled()
	if err != nil {
		t.Fatal(err)
	}
	return run{c, o}
}

// TestPropertyRobbedByShares: what a robber takes counts by the share of the time.
func TestPropertyRobbedByShares(t *testing.T) {
	testdata.SlowOnly(t)
	block, err := testdata.Files.ReadFile("cases/block.json")
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Replace(string(block), `{"name": "wall"`,
		`{"name": "thief", "kind": "robber", "sphere": {"diameter": "8 mm"}, "panel": "4 mm", "at": ["70 mm", "50 mm", "25 mm"]}, {"name": "wall"`, 1)
	c, err := Read(strings.NewReader(text), nil)
	if err != nil {
		t.Fatal(err)
	}
	u, p := runOf(t, c), c.Mesh.Problem
	once, err := u.positions(context.Background(), []Position{{Share: 1, Problem: p}}, "once")
	if err != nil {
		t.Fatal(err)
	}
	twice, err := u.positions(context.Background(), []Position{{Share: 0.3, Problem: p}, {Share: 0.7, Problem: p}},
		"twice")
	if err != nil {
		t.Fatal(err)
	}
	// What the part takes is not robbed: the two together are the current of the cell.
	own := 0.0
	for _, v := range once.way.Surface.Patches {
		own += float64(v.Density) * float64(v.Area)
	}
	total, _ := p.Drive.Current()
	if all := own + float64(once.way.Robbed); math.Abs(all/float64(total)-1) > 1e-3 {
		t.Errorf("part %v A and robber %v A, the cell has %v", own, once.way.Robbed, total)
	}
	if a, b := float64(once.way.Robbed), float64(twice.way.Robbed); !(a > 0) || math.Abs(b/a-1) > 1e-9 {
		t.Errorf("robbed of %v A in one position, %v A in the same one twice", a, b)
	}
	for i, v := range once.way.Surface.Patches {
		if w := twice.way.Surface.Patches[i]; math.Abs(float64(w.Density/v.Density)-1) > 1e-9 {
			t.Fatalf("patch %d: %v once, %v in the same position twice", i, v.Density, w.Density)
		}
	}
}

// TestPropertyAnodeFarther: a rod before a block is moved out, and the coat gets evener;
// where there is no room it says so.
func TestPropertyAnodeFarther(t *testing.T) {
	testdata.SlowOnly(t)
	block, err := testdata.Files.ReadFile("cases/block.json")
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range []struct {
		x    string
		fits bool
	}{{"30 mm", true}, {"15 mm", false}} {
		text := strings.Replace(string(block), `{"name": "wall", "kind": "anode", "wall": "low x"}`,
			`{"name": "rod", "kind": "anode", "box": {"length": "4 mm", "width": "40 mm", "height": "60 mm"}, "panel": "15 mm", "grade": 1, "at": ["`+s.x+`", "50 mm", "50 mm"]}`, 1)
		c, err := Read(strings.NewReader(text), nil)
		if err != nil {
			t.Fatal(err)
		}
		u, list := runOf(t, c), c.Mesh.positions()
		still, err := u.positions(context.Background(), list, "still")
		if err != nil {
			t.Fatal(err)
		}
		far, err := meshWays{&u, list, still}.farther(c.Mesh.Problem).way(context.Background())
		if !s.fits {
			if err == nil || !strings.Contains(err.Error(), "would not fit into the tank") {
				t.Errorf("at %s: %v", s.x, err)
			}
			continue
		}
		if err != nil {
			t.Fatal(err)
		}
		spread := func(s coat.Surface) float64 {
			least, most := math.Inf(1), 0.0
			for _, p := range s.Patches {
				least, most = math.Min(least, float64(p.Density)), math.Max(most, float64(p.Density))
			}
			return most / least
		}
		if a, b := spread(far.Surface), spread(still.way.Surface); a >= b {
			t.Errorf("most over least: %v farther, %v still", a, b)
		}
	}
}
