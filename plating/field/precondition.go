package field

import (
	"sync"

	"gonum.org/v1/gonum/mat"
)

// A preconditioner solves with the panels of each leaf among themselves, and
// exactly with the borders for that approximation.
//
//	P·w = r    S = D - C·P⁻¹·B    S·x = s - C·w    u = w - P⁻¹·B·x
//
// P is the matrix of the leaves, B, C and D the border columns, rows and
// corner.
//
// The leaves hold what makes GMRES slow: panels of very different sizes next to
// each other, and rows of different kinds, where an insulator meets an
// electrode. Both are matters of neighbours. What is left between the leaves is
// smooth, and a few steps see it. The borders have to be exact: a row that sums
// the current of a whole electrode is no matter of neighbours at all.
type preconditioner struct {
	// n is the number of panels.
	n int
	// work is the number of goroutines.
	work int
	// leaves are factorised one by one.
	leaves []leaf
	// cols are P⁻¹·B, a vector for each border.
	cols [][]float64
	// rows are C, the derivative of each border by the unknowns of the panels.
	rows [][]float64
	// schur is S, as small as the number of borders.
	schur mat.LU
	tmp   []float64
}

// A leaf is one cluster at the bottom of the tree, with its factors.
type leaf struct {
	lo, hi int
	lu     mat.LU
}

// precondition prepares the preconditioner at the slopes.
//
// The matrices of the leaves are dense blocks of the operator already: those of
// a leaf with itself.
func (m *model) precondition(slopes []float64, jac func(in, out []float64)) *preconditioner {
	n, k := m.p.len(), len(m.borders)
	pc := &preconditioner{n: n, work: m.workers, tmp: make([]float64, n)}
	var blocks []*block
	for b := range m.op.blocks {
		if o := &m.op.blocks[b]; o.row == o.col {
			blocks = append(blocks, o)
		}
	}
	// Leaves are shared out in turn: they are all about as large.
	pc.leaves = make([]leaf, len(blocks))
	var wait sync.WaitGroup
	for w := range m.workers {
		wait.Add(1)
		go func() {
			defer wait.Done()
			for b := w; b < len(blocks); b += m.workers {
				m.leaf(&pc.leaves[b], blocks[b], slopes)
			}
		}()
	}
	wait.Wait()
	if k == 0 {
		return pc
	}
	in, out := make([]float64, n+k), make([]float64, n+k)
	corner := mat.NewDense(k, k, nil)
	for b := range k {
		// A column of B is what a change of one volt at the border's potential
		// does to the equations: one product for each border.
		in[n+b] = 1
		jac(in, out)
		in[n+b] = 0
		col := append([]float64(nil), out[:n]...)
		pc.inner(col)
		pc.cols = append(pc.cols, col)
		for a := range k {
			corner.Set(a, b, out[n+a])
		}
		pc.rows = append(pc.rows, m.borderRow(b, slopes))
	}
	for a := range k {
		for b := range k {
			corner.Set(a, b, corner.At(a, b)-dot(pc.rows[a], pc.cols[b]))
		}
	}
	pc.schur.Factorize(corner)
	return pc
}

// borderRow returns the derivative of a border by the panels' unknowns.
func (m *model) borderRow(b int, slopes []float64) []float64 {
	row := make([]float64, m.p.len())
	o := m.borders[b]
	for i := range row {
		if !m.counts(b, i) {
			continue
		}
		// κ·q·A in units of the border rows; a kinetic panel's flux falls as
		// its own potential rises.
		w := o.sign * m.kappa * m.p.area[i] / m.unit
		switch m.role[i] {
		case fixed:
			row[i] = w
		case kinetic:
			row[i] = -w * slopes[i]
		}
	}
	return row
}

// leaf factorises the matrix of one leaf.
//
// The entry for the unknown of panel j in the equation of panel i follows from
// the role of j, as in [model.jacobian]: -G for a flux, K with c on the
// diagonal for a potential, and K + G·s where the flux follows the potential
// with the slope s.
func (m *model) leaf(l *leaf, b *block, slopes []float64) {
	nd := &m.op.t.nodes[b.row]
	l.lo, l.hi = nd.lo, nd.hi
	n := l.hi - l.lo
	width := n
	if b.double {
		width = 2 * n
	}
	a := mat.NewDense(n, n, nil)
	for i := range n {
		for j := range n {
			g := float64(b.data[i*width+j])
			k := 0.0
			if b.double {
				k = float64(b.data[i*width+n+j])
			}
			if i == j {
				k += m.c[l.lo+i]
			}
			switch m.role[l.lo+j] {
			case fixed:
				a.Set(i, j, -g)
			case insulated:
				a.Set(i, j, k)
			default:
				a.Set(i, j, k+g*slopes[l.lo+j])
			}
		}
	}
	l.lu.Factorize(a)
}

// inner solves with the leaves in place. They do not touch each other, so the
// result does not depend on the number of goroutines.
func (pc *preconditioner) inner(r []float64) {
	var wait sync.WaitGroup
	for w := range pc.work {
		wait.Add(1)
		go func() {
			defer wait.Done()
			for i := w; i < len(pc.leaves); i += pc.work {
				l := &pc.leaves[i]
				v := mat.NewVecDense(l.hi-l.lo, r[l.lo:l.hi])
				// A condition number comes back as an error with a usable result; a
				// singular leaf leaves its part as it is. Neither matters here: the
				// residual of the whole is watched.
				_ = l.lu.SolveVecTo(v, false, v)
			}
		}()
	}
	wait.Wait()
}

// solve is the whole preconditioner: the leaves, then the borders, then what
// the borders' potentials do to the leaves.
func (pc *preconditioner) solve(in, out []float64) {
	copy(out, in)
	n := pc.n
	pc.inner(out[:n])
	k := len(pc.cols)
	if k == 0 {
		return
	}
	x := mat.NewVecDense(k, out[n:])
	for b := range k {
		out[n+b] = in[n+b] - dot(pc.rows[b], out[:n])
	}
	_ = pc.schur.SolveVecTo(x, false, x) // as above
	for b := range k {
		axpy(-out[n+b], pc.cols[b], out[:n])
	}
}
