package field

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// plate adds n by n small panels of a square with its low corner at a place,
// facing z.
func (p *panels) plate(low r3.Vec, side float64, n int) {
	h := side / float64(n)
	for i := range n {
		for j := range n {
			at := func(di, dj int) r3.Vec {
				return r3.Add(low, r3.Vec{X: h * float64(i+di), Y: h * float64(j+dj)})
			}
			p.add(triangle{at(0, 0), at(1, 0), at(1, 1)}, 0, 0)
			p.add(triangle{at(0, 0), at(1, 1), at(0, 1)}, 0, 0)
		}
	}
}

// missed returns by how much each row of a stored block is off, the double layer
// of all sources together, the largest value, and by how much a row may be off
// that is off by four mean rows times the tolerance.
func missed(c *compressor, b *block, row, col *node) (off []float64, peak, most float64) {
	c.e.begin(row, col, true)
	m, n := row.hi-row.lo, col.hi-col.lo
	scale := norm3(row.box, col.box)
	g, k := make([]float64, n), make([]float64, n)
	off = make([]float64, m)
	total := 0.0
	for i := range m {
		c.e.rowAt(row.lo+i, g, k)
		exact, got := 0.0, 0.0
		for _, x := range k {
			exact += x
		}
		if b.rank < 0 {
			for _, x := range b.data[i*2*n+n : (i+1)*2*n] {
				got += float64(x)
			}
		} else {
			for r := range int(b.rank) {
				s := 0.0
				for _, x := range b.data[int(b.rank)*m+r*2*n+n : int(b.rank)*m+(r+1)*2*n] {
					s += float64(x)
				}
				got += float64(b.data[r*m+i]) * s
			}
		}
		off[i] = math.Abs(got - exact)
		peak = max(peak, math.Abs(exact))
		total += sum2(g) + scale*scale*sum2(k)
	}
	return off, peak, 4 * c.tol * math.Sqrt(total/float64(m)*float64(n)) / scale
}

// TestPropertyFewRowsOff: most points of a block lie in the plane of its sources,
// where the double layer is nothing, and a few do not. The single layer alone
// converges on the many; the few must not be forgotten, at no tolerance.
func TestPropertyFewRowsOff(t *testing.T) {
	for _, tol := range []float64{1e-4, 1e-5, 1e-6, 1e-7} {
		for few := 1; few <= 5; few++ {
			p := &panels{}
			p.plate(r3.Vec{}, 1, 6) // sources
			n := p.len()
			p.plate(r3.Vec{X: 1.1}, 2, 20) // points in their plane
			for k := range few {
				p.plate(r3.Vec{X: 2.5 + 0.2*float64(k), Y: 1, Z: 5}, 0.1, 1)
			}
			p.finish()
			p.plane = make([]int32, p.len())
			p.rules()
			tr := &tree{nodes: []node{{lo: n, hi: p.len(), left: -1, right: -1}, {lo: 0, hi: n, left: -1, right: -1}}}
			for i := range tr.nodes {
				tr.measure(p, &tr.nodes[i])
			}
			row, col := &tr.nodes[0], &tr.nodes[1]
			b := &block{row: 0, col: 1, double: true}
			c := &compressor{tol: tol, e: evaluator{p: p}}
			c.fill(b, tr)
			off, peak, most := missed(c, b, row, col)
			bad, worst := 0, 0.0
			for _, d := range off {
				if worst = max(worst, d/peak); d > most {
					bad++
				}
			}
			if bad > 0 {
				t.Errorf("tolerance %g, %d panels off the plane: %d of %d rows are off, up to %.1e of the largest", tol, few, bad,
					len(off), worst)
			}
		}
	}
}

// TestPropertyRowsChecked: the rows that are compared with exact ones take in those
// where the geometry is worst, and one that is off there shows in the check.
func TestPropertyRowsChecked(t *testing.T) {
	const mm = units.Millimetre
	ring, err := mesh.Tube(20*mm, 17*mm, 4*mm, mesh.Grid{Size: 1.5 * mm, Grade: 2})
	if err != nil {
		t.Fatal(err)
	}
	p := one(Boundary{Name: "ring", Kind: current.Cathode, Vertices: ring.Vertices, Triangles: ring.Triangles})
	o := MeshOptions{Equation: Direct}
	c, err := p.assemble(&o)
	if err != nil {
		t.Fatal(err)
	}
	s := o.settings()
	tr := newTree(c.p)
	c.p.rules()
	op, err := build(t.Context(), c.p, tr, true, false, s.tolerance, &s)
	if err != nil {
		t.Fatal(err)
	}
	m := c.model(p.Drive, 1, op, &s)
	st := m.start(p.Drive)
	for i := range st.u {
		st.u[i] = 1
	}
	rows := m.rows(c.seams())
	n := c.p.len()
	small := 0
	for i, a := range c.p.area {
		if a < c.p.area[small] {
			small = i
		}
	}
	if len(rows) < 30 || len(rows) > 48 || !slices.Contains(rows, small) || !slices.IsSorted(rows) ||
		rows[len(rows)-1] >= n {
		t.Errorf("rows %v of %d, smallest panel %d", rows, n, small)
	}
	whole := m.sample(&st, rows, false)
	if !(whole < 2e-5) {
		t.Errorf("a sound operator is off by %.1e", whole)
	}
	// Spoil the largest compressed block in the row nearest to its sources.
	var big *block
	for b := range op.blocks {
		if o := &op.blocks[b]; o.rank >= 0 && (big == nil || cells(tr, o) > cells(tr, big)) {
			big = o
		}
	}
	row, col := &tr.nodes[big.row], &tr.nodes[big.col]
	near := 0
	for i := range row.hi - row.lo {
		if col.box.distance2(c.p.at[row.lo+i]) < col.box.distance2(c.p.at[row.lo+near]) {
			near = i
		}
	}
	for r := range int(big.rank) {
		big.data[r*(row.hi-row.lo)+near] = 0
	}
	if spoiled := m.sample(&st, rows, false); !(spoiled > 20*s.tolerance) {
		t.Errorf("a row without one block is off by %.1e only", spoiled)
	}
}

// TestPropertyRowsOfRing: on a ring every row sum of the compressed double layer
// is that of a closed surface, about as well as the tolerance says.
func TestPropertyRowsOfRing(t *testing.T) {
	testdata.SlowOnly(t)
	const mm = units.Millimetre
	ring, err := mesh.Tube(21*mm, 18*mm, 5*mm, mesh.Grid{Size: 0.5 * mm})
	if err != nil {
		t.Fatal(err)
	}
	p := one(Boundary{Name: "ring", Kind: current.Cathode, Vertices: ring.Vertices, Triangles: ring.Triangles})
	o := MeshOptions{Equation: Direct}
	c, err := p.assemble(&o)
	if err != nil {
		t.Fatal(err)
	}
	s := o.settings()
	tr := newTree(c.p)
	c.p.rules()
	op, err := build(t.Context(), c.p, tr, true, false, s.tolerance, &s)
	if err != nil {
		t.Fatal(err)
	}
	worst, bad := 0.0, 0
	for _, v := range c.model(p.Drive, 1, op, &s).c {
		d := math.Abs(v-0.5) / 0.5
		if worst = max(worst, d); d > 1.5*s.tolerance {
			bad++
		}
	}
	t.Logf("%d panels, row sums off by at most %.1e, %d MB", c.p.len(), worst, op.bytes>>20)
	if bad > 0 {
		t.Errorf("%d of %d rows are off, up to %.1e at a tolerance of %g", bad, c.p.len(), worst, s.tolerance)
	}
}

func cells(t *tree, b *block) int {
	r, c := &t.nodes[b.row], &t.nodes[b.col]
	return (r.hi - r.lo) * (c.hi - c.lo)
}

// Coplanar panels: a tree that mixes faces lets the compression stop early.
// The row sum and the local minimum tell; the total does not.
func TestPropertyTrapCoplanar(t *testing.T) {
	testdata.SlowOnly(t)
	for _, n := range []int{12, 16} {
		p := hung(n, n/2, 2)
		loose, tight := solve(t, p, MeshOptions{}), solve(t, p, MeshOptions{Tolerance: 1e-7})
		if loose.Checks.RowSum > 5e-5 {
			t.Errorf("%d panels: row sums off by %.1e", loose.Work.Unknowns, loose.Checks.RowSum)
		}
		for k, j := range tight.Surfaces[0].Density {
			if d := math.Abs(float64(loose.Surfaces[0].Density[k]/j) - 1); d > 1e-3 {
				t.Fatalf("triangle %d: %v at tolerance 1e-5, %v at 1e-7", k, loose.Surfaces[0].Density[k], j)
			}
		}
	}
}

// The tolerance shows in the local flux before it shows in the total.
func TestPropertyTrapTolerance(t *testing.T) {
	testdata.SlowOnly(t)
	p := one(ball(26, 1))
	local := func(tol float64) (total, worst float64) {
		s := solve(t, p, MeshOptions{Tolerance: tol})
		for _, j := range s.Surfaces[0].Density {
			worst = max(worst, math.Abs(float64(j)-1))
		}
		return capacitance(s), worst
	}
	t3, w3 := local(1e-3)
	t5, w5 := local(1e-5)
	_, w7 := local(1e-7)
	t.Logf("local errors %.2e, %.2e, %.2e at tolerances 1e-3, 1e-5, 1e-7", w3, w5, w7)
	near2(t, "total at 1e-3", t3, t5, 5e-4)
	if math.Abs(w5-w7) > 3e-4 {
		t.Errorf("local error %.2e at 1e-5, %.2e at 1e-7: the default tolerance shows", w5, w7)
	}
	if w3 < w5 {
		t.Errorf("local error %.2e at 1e-3 below %.2e at 1e-5", w3, w5)
	}
}

// A file in single precision scatters the normals of a flat face: a tilted cube
// read from one must fare as well as one in full.
func TestPropertyTrapSinglePrecision(t *testing.T) {
	testdata.SlowOnly(t)
	turn := func(v r3.Vec) r3.Vec {
		v = r3.NewRotation(0.4, r3.Vec{X: 1, Y: 0.3, Z: 0.2}).Rotate(v)
		return r3.Add(v, r3.Vec{X: 0.31, Y: 0.17, Z: 0.23})
	}
	single := func(x float64) float64 { return float64(float32(1e3*x)) / 1e3 } // millimetres, as files hold
	var full, short MeshProblem
	for k, p := range []*MeshProblem{&full, &short} {
		*p = hung(12, 6, 2)
		p.Box = nil
		p.Drive = current.ByCurrent(1)
		s := &p.Surfaces[0]
		seen := map[r3.Vec]r3.Vec{}
		for i, v := range s.Vertices {
			w, ok := seen[v]
			if !ok {
				if w = turn(v); k == 1 {
					w = r3.Vec{X: single(w.X), Y: single(w.Y), Z: single(w.Z)}
				}
				seen[v] = w
			}
			s.Vertices[i] = w
		}
	}
	one := MeshOptions{Workers: 1} // memory comes in pieces, of which each worker may leave one half full
	a, b := solve(t, full, one), solve(t, short, one)
	if a.Checks.RowSum > 5e-5 || b.Checks.RowSum > 1e-4 ||
		float64(b.Work.OperatorBytes) > 1.1*float64(a.Work.OperatorBytes) {
		t.Errorf("row sums off by %.1e in full and %.1e in single precision, %d and %d bytes", a.Checks.RowSum,
			b.Checks.RowSum, a.Work.OperatorBytes, b.Work.OperatorBytes)
	}
	for i, j := range a.Surfaces[0].Density {
		if d := math.Abs(float64(b.Surfaces[0].Density[i]/j) - 1); d > 1e-3 {
			t.Fatalf("triangle %d: %v in full, %v in single precision", i, j, b.Surfaces[0].Density[i])
		}
	}
}
