package field

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

// geometry checks what needs the panels and the tree: the solid angle at
// some panels of each surface, and gaps. It returns warnings.
//
// These checks run before the operator is built, which takes most of the time
// of a run: what they refuse would be found afterwards in the row sums, or not
// at all.
func (c *cell) geometry(t *tree) ([]current.Warning, error) {
	if err := c.solidAngles(); err != nil {
		return nil, err
	}
	g := gaps{c: c, t: t}
	g.visit(0, 0)
	if g.err != nil {
		return nil, g.err
	}
	return g.notes, nil
}

// solidAngles sums the solid angles of all panels of closed bodies at panels
// spread over each surface, and at those that lie in the box round another
// surface, where two bodies may cut each other. At a free surface of a bath the
// sum is half the full one; at a sheet, which has no inside, nothing.
//
//	Σ_j K_ij = ½ in an unbounded bath, -½ in a bounded one
//
// The solid angle of a closed body is 4π inside, 0 outside and 2π on it,
// whatever its shape and its mesh. So a panel that lies inside another body
// sees a whole view more, one that is cut by it something between. Smooth
// errors of the mesh do not enter: flat panels close exactly.
func (c *cell) solidAngles() error {
	for _, i := range c.suspects() {
		s := &c.surfaces[c.p.surface[i]]
		want := 0.5
		switch {
		case s.Sheet:
			want = 0
		case c.bounded:
			want = -0.5
		}
		// The panel itself adds nothing: it lies in its own plane.
		sum := 0.0
		for j := range c.p.len() {
			if j != i && !c.surfaces[c.p.surface[j]].Sheet {
				_, k := c.p.layersAt(j, c.p.at[i])
				sum += k
			}
		}
		// Quadrature leaves far less. A hundredth of the view is a cut that
		// matters.
		if off := math.Abs(sum - want); off > 0.01 {
			detail := fmt.Sprintf("seen from there bodies fill %.2g of the whole view too much or too little", off)
			if off > 0.9 {
				detail = "it lies inside another body"
			}
			return &MeshError{Surface: s.Name, Triangle: int(c.p.local[i]),
				Detail: detail,
				Need:   "bodies that do not cut or enclose each other, inside the tank", Err: current.ErrOverlap}
		}
	}
	return nil
}

// fewSuspects is how many panels inside another surface's box are looked at at
// the least, sightings how many pairs of panels that may take.
const (
	fewSuspects = 256
	sightings   = 5_000_000
)

// suspects lists panels to look at: some of each surface, and those that lie in
// the box round another one, evenly thinned out.
//
// A body that cuts another one has panels in the box round it. Looking at those
// alone, and at a few of each surface, finds cuts that a spread over all panels
// would miss, without comparing every panel with every other.
func (c *cell) suspects() []int {
	n := c.p.len()
	count := make([]int, len(c.surfaces))
	boxes := make([]box3, len(c.surfaces))
	for i := range n {
		s := c.p.surface[i]
		for _, v := range c.p.tri[i] {
			if b := &boxes[s]; count[s] == 0 {
				*b = box3{v, v}
			} else {
				b.lo = r3.Vec{X: min(b.lo.X, v.X), Y: min(b.lo.Y, v.Y), Z: min(b.lo.Z, v.Z)}
				b.hi = r3.Vec{X: max(b.hi.X, v.X), Y: max(b.hi.Y, v.Y), Z: max(b.hi.Z, v.Z)}
			}
			count[s]++
		}
	}
	// List holds what is looked at in any case, inside what lies in another
	// surface's box: of that no more than the pairs allow.
	var list, inside []int
	seen := make([]int, len(c.surfaces))
	for i := range n {
		s := c.p.surface[i]
		seen[s]++
		// Count holds corners, three for each panel: about four panels of each
		// surface, evenly spread.
		if step := count[s]/3/4 + 1; seen[s]%step == step/2 {
			list = append(list, i)
			continue
		}
		for k := range boxes {
			// The vessel holds all the others, which is as it should be.
			if int32(k) != s && !c.surfaces[k].Vessel && count[k] > 0 && boxes[k].distance2(c.p.at[i]) == 0 {
				inside = append(inside, i)
				break
			}
		}
	}
	few := max(fewSuspects, sightings/max(n, 1))
	step := (len(inside) + few - 1) / few
	for k := 0; k < len(inside); k += step {
		list = append(list, inside[k])
	}
	return list
}

// gaps looks for panels that face each other too closely. Constant panels see
// the field between two faces as a mean over half a panel and more: where the
// gap is narrower than that the current across it is anybody's guess.
type gaps struct {
	c     *cell
	t     *tree
	notes []current.Warning
	said  map[said]bool
	err   error
}

// said is a surface and what was said of it.
type said struct {
	surface int32
	code    current.WarningCode
}

// narrow is the least gap in panels, thin the least thickness of metal.
const (
	narrow = 0.5
	thin   = 0.2
)

// visit walks down the tree in pairs of clusters, and leaves a pair as soon as
// its boxes lie farther apart than its largest panel could make too narrow. Two
// clusters of one plane do not face each other, sheets excepted.
func (g *gaps) visit(a, b int32) {
	na, nb := &g.t.nodes[a], &g.t.nodes[b]
	if g.err != nil || na.box.distance(nb.box) > narrow*max(na.size, nb.size) || na.plane >= 0 && na.plane == nb.plane &&
		!g.c.sheets() {
		return
	}
	switch {
	case na.left < 0 && nb.left < 0:
		g.leaves(na, nb)
	case nb.left < 0 || na.left >= 0 && na.diam >= nb.diam:
		g.visit(na.left, b)
		g.visit(na.right, b)
	default:
		g.visit(a, nb.left)
		g.visit(a, nb.right)
	}
}

// leaves compares pairs of panels whose normals oppose each other. The gap is
// the distance of one's centroid from the other triangle. Faces that meet at
// an acute edge come near each other whatever the mesh: they give a warning only.
func (g *gaps) leaves(na, nb *node) {
	p := g.c.p
	for i := na.lo; i < na.hi; i++ {
		for j := nb.lo; j < nb.hi; j++ {
			sheet := g.c.surfaces[p.surface[i]].Sheet || g.c.surfaces[p.surface[j]].Sheet
			// Normals that oppose each other by 120° or more.
			facing := r3.Dot(p.n[i], p.n[j])
			if sheet {
				facing = -math.Abs(facing) // a sheet is wet on both sides
			}
			if facing > -0.5 || i == j {
				continue
			}
			// The size of a panel is the side of a square of twice its area,
			// the pair of triangles that it is half of; short is its height on
			// the longest side. A long panel across a narrow slot is refused by
			// its short side only.
			size := math.Sqrt(2 * max(p.area[i], p.area[j]))
			d := r3.Sub(p.at[i], p.at[j])
			h := r3.Dot(p.n[j], d) // negative in the bath in front of j
			if math.Abs(h) > narrow*size || norm(d) > 2*p.diam[j]+narrow*size || share(&p.tri[i], &p.tri[j]) {
				continue
			}
			gap := distance(&p.tri[j], p.at[i])
			short := max(2*p.area[i]/p.diam[i], 2*p.area[j]/p.diam[j])
			switch {
			// Sheets: only two of them, parallel and with the whole gap to
			// themselves.
			case sheet && p.surface[i] != p.surface[j] && gap < narrow*short && facing < -0.9:
				g.err = &MeshError{Surface: g.name(i), Triangle: int(p.local[i]),
					Detail: fmt.Sprintf("%.3g mm from a panel of %q that is %.3g mm wide", 1e3*gap, units.Clip(g.name(j)),
						1e3*short),
					Need: "panels no wider than twice the gap", Err: ErrGap}
				return
			case sheet:
			// Both see the other in front of them, and they are parallel: a
			// true gap, refused.
			case h < 0 && r3.Dot(p.n[i], d) > 0 && gap < narrow*short && r3.Dot(p.n[i], p.n[j]) < -0.9:
				g.err = &MeshError{Surface: g.name(i), Triangle: int(p.local[i]),
					Detail: fmt.Sprintf("%.3g mm from a panel of %q that is %.3g mm wide", 1e3*gap, units.Clip(g.name(j)),
						1e3*short),
					Need: "panels no wider than twice the gap", Err: ErrGap}
				return
			// In front of each other, but at an angle or by the long side only:
			// worth a warning.
			case h < 0 && r3.Dot(p.n[i], d) > 0 && gap < narrow*size:
				g.note(i, current.NarrowGap, "a gap of %.2g mm is filled by panels of %.2g mm; the current there is not "+
					"well resolved: give the part a smaller panel", 1e3*gap, 1e3*size)
			// Behind each other on one body: thin metal. Its two sides take
			// potential from each other through panels much larger than the
			// metal is thick.
			case h > 0 && gap < thin*size && p.surface[i] == p.surface[j]:
				g.note(i, current.ThinMetal, "the body is %.2g mm thick at a panel of %.2g mm; its two sides are not told "+
					"apart well", 1e3*gap,
					1e3*size)
			}
		}
	}
}

// name returns the name of a panel's surface.
func (g *gaps) name(i int) string { return g.c.surfaces[g.c.p.surface[i]].Name }

// note adds a warning, once for each surface and code.
func (g *gaps) note(i int, code current.WarningCode, format string, a ...any) {
	// Hundreds of panels in one gap are one finding.
	key := said{g.c.p.surface[i], code}
	if g.said[key] {
		return
	}
	if g.said == nil {
		g.said = map[said]bool{}
	}
	g.said[key] = true
	g.notes = append(g.notes, current.Warning{Code: code, Surface: g.name(i), Text: fmt.Sprintf(format, a...)})
}

// distance returns the distance of a point from a triangle: that from its plane
// where the foot lies inside, else that from the nearest side.
func distance(t *triangle, x r3.Vec) float64 {
	n := r3.Unit(r3.Cross(r3.Sub(t[1], t[0]), r3.Sub(t[2], t[0])))
	best := math.Inf(1)
	inside := true
	for k := range 3 {
		a, b := t[k], t[(k+1)%3]
		e, d := r3.Sub(b, a), r3.Sub(x, a)
		if r3.Dot(r3.Cross(e, d), n) < 0 {
			inside = false
		}
		s := max(0, min(1, r3.Dot(d, e)/r3.Dot(e, e)))
		best = min(best, norm(r3.Sub(d, r3.Scale(s, e))))
	}
	if inside {
		return math.Abs(r3.Dot(n, r3.Sub(x, t[0])))
	}
	return best
}

// sheets tells whether any surface is a sheet.
func (c *cell) sheets() bool {
	for i := range c.surfaces {
		if c.surfaces[i].Sheet {
			return true
		}
	}
	return false
}
