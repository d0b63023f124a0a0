package field

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"math"
	"slices"
	"time"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

// Estimate tells what a run will take, without running it. It checks the
// problem as [Solve] does; a run above [MeshOptions.MemoryLimit] returns its cost
// with a [*CostError].
//
// It takes what the checks of the meshes take, a sort of their edges, and no
// more: the cost follows from the number of panels.
func Estimate(p MeshProblem, o MeshOptions) (Cost, error) {
	c, err := p.assemble(&o)
	var big *CostError
	if errors.As(err, &big) {
		return big.Cost, err
	}
	if err != nil {
		return Cost{}, err
	}
	s := o.settings()
	cost := cost(c.p.len(), c.single, o.Galerkin, &s)
	if cost.Bytes > s.limit {
		return cost, &CostError{Cost: cost, Limit: s.limit}
	}
	return cost, nil
}

// Solve computes the current distribution.
//
// It returns the context's error soon after the context is done. Errors: a
// [*units.ValueError] for a value out of range or a contradiction, a
// [*current.TafelError] for a cathode with a Tafel law whose least current density
// lies so low that the reverse reaction counts, a [*MeshError] for a mesh that the
// method cannot take, a [*CostError] above the memory limit, a [*SignError] for a
// primary cathode that seems to dissolve where none can, a [*ConvergenceError] where
// the iteration does not settle.
// A solution that is returned carries its [MeshChecks]; read them and the warnings.
//
// The order of a run:
//
//	assemble    check the description and lay panels
//	newTree     cluster them
//	geometry    solid angles and gaps
//	build       compress both layers, block by block
//	rowSums     the free terms, and what they tell of the mesh
//	newton      the rate laws, with GMRES for each step
//	report      back to the caller's surfaces, with checks
//
// Everything up to the operator depends on the geometry alone.
//
// Source: [Derived] from Green's formula, as the package comment shows.
func Solve(ctx context.Context, p MeshProblem, o MeshOptions) (*MeshSolution, error) {
	c, err := p.assemble(&o)
	if err != nil {
		return nil, err
	}
	s := o.settings()
	if cost := cost(c.p.len(), c.single, o.Galerkin, &s); cost.Bytes > s.limit {
		return nil, &CostError{Cost: cost, Limit: s.limit}
	}
	begin := time.Now()
	// The tree puts the panels in its order, so that the rules come after it.
	t := newTree(c.p)
	c.p.rules()
	notes, err := c.geometry(t)
	if err != nil {
		return nil, err
	}
	op, err := build(ctx, c.p, t, !c.single, o.Galerkin, s.tolerance, &s)
	if err != nil {
		return nil, err
	}
	built := time.Now()
	// From here on the operator is known and only the laws are left.
	m := c.model(p.Drive, float64(p.Conductivity), op, &s)
	sums, err := m.rowSums(c)
	if err != nil {
		return nil, err
	}
	st := m.start(p.Drive)
	r, err := m.newton(ctx, &st, s.converged, s.progress)
	if err != nil {
		return nil, err
	}
	seams := c.seams()
	// What the numbers are worth: compression against exact rows, the sign of
	// primary solutions, the range of Tafel laws.
	out := c.report(m, &st, seams)
	out.Checks.RowSum = sums
	out.Checks.Residual, out.Checks.Change = r.residual, r.change
	out.Checks.Operator = m.sample(&st, m.rows(seams), o.Galerkin)
	out.Work = Work{Unknowns: c.p.len(), OperatorBytes: op.bytes, Newton: r.newton, Krylov: r.krylov,
		Build: built.Sub(begin).Seconds(), Solve: time.Since(built).Seconds()}
	if err := out.reversed(m.single); err != nil {
		return nil, err
	}
	if err := c.signs(out, seams, o.Galerkin, max(s.tolerance, s.converged)); err != nil {
		return nil, err
	}
	out.Warnings = append(notes, out.warnings(m)...)
	low, err := c.tafel(out)
	if err != nil {
		return nil, err
	}
	out.Warnings = append(out.Warnings, low...)
	return out, nil
}

// rowSums returns the largest departure of the row sums from one half, and an
// error where it is beyond all use.
//
// The double layer of a closed surface of flat panels sums to exactly one half
// at each of them, whatever the shape. What is off is quadrature and
// compression, and those are small; or the surfaces are not what they should
// be.
func (m *model) rowSums(c *cell) (float64, error) {
	if m.single {
		return 0, nil
	}
	worst, at := 0.0, 0
	for i, v := range m.c {
		// Not a number is the worst of all, and nothing behind it could be
		// worse.
		if d := math.Abs(v - 0.5); d > worst || d != d {
			if worst, at = d, i; d != d {
				break
			}
		}
	}
	if !(worst <= 1e-2) {
		return worst, &MeshError{Surface: c.surfaces[m.p.surface[at]].Name, Triangle: int(m.p.local[at]),
			Detail: fmt.Sprintf("row sum %.4g instead of 0.5", m.c[at]),
			Need:   "closed surfaces that do not cut each other", Err: current.ErrOverlap}
	}
	return worst, nil
}

// reversed refuses a solution in which the current runs the wrong way. With
// primary electrodes alone no cathode dissolves and no anode plates anywhere,
// whatever their shapes: where the numbers say so the surfaces cut each other.
// The mesh of a deep recess may be too coarse for the little current there, and
// then a few hundredths of the mean mean nothing: such a minimum is unresolved.
// A tank whose currents do not balance by half has no solution that means
// anything.
func (s *MeshSolution) reversed(single bool) error {
	if math.Abs(s.Checks.CurrentImbalance) > 0.5 {
		return &ConvergenceError{Residual: s.Checks.Residual, Change: s.Checks.CurrentImbalance, Err: current.ErrNotConverged}
	}
	if !single {
		return nil
	}
	// The boxes tell which panels lie where another surface may be.
	boxes := make([]box3, len(s.Surfaces))
	for i := range boxes {
		boxes[i] = emptyBox()
		for _, x := range s.Surfaces[i].Centroid {
			boxes[i].add(x)
		}
	}
	for i := range s.Surfaces {
		r := &s.Surfaces[i]
		sign := 1.0
		switch r.Kind {
		case current.Anode:
			sign = -1
		case current.Cathode:
		default:
			continue
		}
		mean := math.Abs(float64(r.Mean()))
		for k, j := range r.Density {
			// A tenth of the mean is forgiven where a coarse recess may be the
			// reason, a hundredth where another body comes near, for there a
			// cut is the likelier one.
			least := -1e-1
			for b := range boxes {
				if b != i && boxes[b].distance2(r.Centroid[k]) == 0 {
					least = -1e-2
				}
			}
			if sign*float64(j) < least*mean {
				return &MeshError{Surface: r.Name, Triangle: k, Detail: fmt.Sprintf("%s, the wrong way for a primary %s", j,
					r.Kind),
					Need: "bodies that do not cut or enclose each other, and panels as small as the gaps between them",
					Err:  current.ErrOverlap}
			}
		}
	}
	return nil
}

// evenRows is how many rows are taken over all panels alike, worstRows how many
// of each kind where the geometry is worst.
const (
	evenRows  = 16
	worstRows = 4
)

// rows lists the panels whose rows are compared with exact ones: some spread over
// all, the smallest and the largest panels, those at the sharpest creases, and in
// the largest compressed blocks the one nearest to the sources.
//
// An error of the compression is seldom spread evenly. It sits where entries
// vary most: on small panels beside large ones, at sharp edges, in large blocks
// near their sources. A sample that looks there finds it with forty rows of a
// hundred thousand.
func (m *model) rows(seams []seam) []int {
	n := m.p.len()
	var list []int
	for i := 0; i < n; i += n/evenRows + 1 {
		list = append(list, i)
	}
	// By size.
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, k int) int { return cmp.Compare(m.p.area[i], m.p.area[k]) })
	list = append(list, order[:min(worstRows, n)]...)
	list = append(list, order[max(0, n-worstRows):]...)
	// By how far the angle is from that of a plane.
	sharp := slices.Clone(seams)
	slices.SortStableFunc(sharp, func(a, b seam) int {
		return cmp.Compare(math.Abs(b.angle-math.Pi), math.Abs(a.angle-math.Pi))
	})
	for _, e := range sharp[:min(worstRows, len(sharp))] {
		list = append(list, int(e.a), int(e.b))
	}
	// By the number of entries that the compression stands for.
	var big []*block
	for b := range m.op.blocks {
		if m.op.blocks[b].rank >= 0 {
			big = append(big, &m.op.blocks[b])
		}
	}
	size := func(b *block) int {
		row, col := &m.op.t.nodes[b.row], &m.op.t.nodes[b.col]
		return (row.hi - row.lo) * (col.hi - col.lo)
	}
	slices.SortStableFunc(big, func(a, b *block) int { return cmp.Compare(size(b), size(a)) })
	for _, b := range big[:min(2*worstRows, len(big))] {
		row, col := &m.op.t.nodes[b.row], &m.op.t.nodes[b.col]
		near := row.lo
		for i := row.lo; i < row.hi; i++ {
			if col.box.distance2(m.p.at[i]) < col.box.distance2(m.p.at[near]) {
				near = i
			}
		}
		list = append(list, near)
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// sample compares some rows of the compressed operator with exact ones,
// applied to the solution, relative to the largest value.
//
// The layers are applied to the flux and potential of the solution itself, not
// to a random vector: what counts is how far this answer is off.
func (m *model) sample(s *state, rows []int, galerkin bool) float64 {
	n := m.p.len()
	for i := range n {
		phi, q, _ := m.values(s, i)
		m.g[i], m.k[i] = q, phi
	}
	y := make([]float64, n)
	zero := make([]float64, n)
	worst, peak := 0.0, 0.0
	e := evaluator{p: m.p, galerkin: galerkin}
	whole := node{lo: 0, hi: n}
	// G and K apart, since the sum of both may cancel.
	for layer := range 2 {
		if layer == 0 {
			m.op.apply(m.g, zero, y)
		} else if m.single {
			break
		} else {
			m.op.apply(zero, m.k, y)
		}
		_, p := largest(y)
		peak = max(peak, p)
		for _, i := range rows {
			sum := e.exact(i, &whole, layer, m.g, m.k)
			worst = max(worst, math.Abs(sum-y[i]))
		}
	}
	return worst / peak
}

// exact returns one row of one layer without compression, applied to g or k.
//
// It goes over all panels with the rule that each distance asks for, so that it
// differs from the blocks by their choice of one rule for a whole cluster too.
func (e *evaluator) exact(i int, all *node, layer int, g, k []float64) float64 {
	points, weights := []r3.Vec{e.p.at[i]}, []float64{1}
	if e.galerkin {
		points, weights = e.p.seven[i][:], sevenWeights[:]
	}
	sum := 0.0
	for m, x := range points {
		for j := all.lo; j < all.hi; j++ {
			a, b := e.p.layersAt(j, x)
			if layer == 0 {
				sum += weights[m] * a * g[j]
			} else {
				sum += weights[m] * b * k[j]
			}
		}
	}
	return sum
}

// warnings lists what the reader of a solution should know.
//
// Each has its limit, well above what sound meshes show: a hundredth for the
// balance of the currents, a ten-thousandth for the row sums at the default
// tolerance, twenty tolerances for the operator.
func (s *MeshSolution) warnings(m *model) []current.Warning {
	var out []current.Warning
	add := func(code current.WarningCode, name, format string, a ...any) {
		out = append(out, current.Warning{Code: code, Surface: name, Text: fmt.Sprintf(format, a...)})
	}
	for i := range s.Surfaces {
		r := &s.Surfaces[i]
		if r.Kind == current.Floating {
			out = append(out, bipolar(r))
		}
		if r.Kind == current.Cathode && r.Minimum.Unresolved {
			add(current.Unresolved, r.Name, "the least current density, at (%.4g, %.4g, %.4g) mm, lies on one panel "+
				"and is not resolved: give the part smaller panels there",
				1e3*r.Minimum.At.X, 1e3*r.Minimum.At.Y, 1e3*r.Minimum.At.Z)
		}
	}
	if d := math.Abs(s.Checks.CurrentImbalance); d > 1e-2 {
		add(current.Unbalanced, "", "anode and cathode currents differ by %.2g %%: the mesh is too coarse", 100*d)
	}
	if s.Checks.RowSum > 1e-4*max(1, m.op.tol/1e-5) {
		add(current.RoughShape, "", "row sums of the double layer are off by %.1e: look for cracks in the mesh, or ask "+
			"for a smaller tolerance",
			s.Checks.RowSum)
	}
	if s.Checks.Operator > 20*m.op.tol {
		add(current.LooseApproximation, "", "the compressed operator is off by %.1e: ask for a smaller tolerance",
			s.Checks.Operator)
	}
	return out
}

// bipolar says which end of a floating part plates and which dissolves.
//
// The current that passes through is half the sum of the absolute currents:
// what enters at one end leaves at the other. Where it dissolves is what a
// plater has to know, for there the metal goes into the bath.
func bipolar(r *MeshResult) current.Warning {
	var plated, dissolved units.Current
	most, least := 0, 0
	for i, j := range r.Density {
		if j > 0 {
			plated += j.Over(r.Area[i])
		} else {
			dissolved -= j.Over(r.Area[i])
		}
		if j > r.Density[most] {
			most = i
		}
		if j < r.Density[least] {
			least = i
		}
	}
	a, b := r.Centroid[most], r.Centroid[least]
	return current.Warning{Code: current.Bipolar, Surface: r.Name, Text: fmt.Sprintf(
		"floating metal is bipolar: it plates (up to %.3g A/dm2) about (%.4g, %.4g, %.4g) m and dissolves "+
			"(up to %.3g A/dm2) about (%.4g, %.4g, %.4g) m; %.3g A pass through it",
		float64(r.Density[most])/100, a.X, a.Y, a.Z, -float64(r.Density[least])/100, b.X, b.Y, b.Z,
		float64(plated+dissolved)/2)}
}
