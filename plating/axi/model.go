package axi

import (
	"fmt"
	"math"

	"example.com/laydown/plating/current"
)

// A model is a checked problem in plain numbers: lengths in units of size,
// potentials in volts, flux ∂φ/∂n in volts over size.
//
// In units of size, the largest coordinate, all lengths are about one, and the tolerances
// of the package are plain numbers: 1e-9 for what meets, 1e-12 for what cancels.
type model struct {
	size, kappa float64
	surfaces    []surface
	pieces      []piece
	joint       [][2]joint // the neighbours of each piece at its ends
	mirror      bool       // half space: each source has an image below the floor
	outside     float64    // 1 when the bath has no vessel: the weight of the far potential
	far         bool       // far anode
	drive       current.Drive
}

// A surface is a part or an electrode wall; all insulating walls share one.
type surface struct {
	name    string
	kind    current.Kind
	law     current.Law
	bias    float64
	part    int // index among the parts, -1 for walls
	wall    int // index among the walls, -1 for parts and insulating walls
	profile Profile
	sheet   bool
}

// A piece is a stretch of a line or arc that the bath wets.
type piece struct {
	c       curve
	s0, s1  float64
	before  float64      // arc length of s = 0 along the profile
	owner   int          // surface
	kind    current.Kind // of this piece: Insulator where masked
	flip    float64      // +1 when the outward normal of the bath is left of travel
	sheet   bool
	ends    [2]corner
	segment int
}

// normal returns the normal out of the bath.
func (p piece) normal(s float64) vec {
	t := p.c.along(s)
	return vec{-p.flip * t.z, p.flip * t.r}
}

// build checks a problem and turns it into a model: bath, drive and each part by itself;
// parts in place in the vessel, and apart from each other; rails that do not touch; then
// the pieces that the bath wets, with their corners.
//
// The order matters for the messages: what is wrong with one part is said before what is
// wrong between two.
func build(p ProfileProblem) (*model, error) {
	if err := checkBath(p.Bath); err != nil {
		return nil, err
	}
	if err := p.Drive.Check(); err != nil {
		return nil, err
	}
	for i, part := range p.Parts {
		if err := checkPart(partName(i, part), part, p.Bath); err != nil {
			return nil, err
		}
	}
	m := &model{kappa: float64(p.Bath.Conductivity), mirror: p.Bath.Extent == HalfSpace, far: p.Bath.FarAnode,
		drive: p.Drive}
	if p.Bath.Extent != Vessel {
		m.outside = 1
	}
	if err := m.checkSides(p); err != nil {
		return nil, err
	}
	m.size = extent(p)
	vessel := scaledCurves(p.Bath.Shape, m.size)
	var dry []stretch
	var bodies []body
	for i, part := range p.Parts {
		b, err := m.place(i, part, vessel)
		if err != nil {
			return nil, err
		}
		for k, other := range bodies {
			if b.overlaps(other) {
				return nil, wrong(partName(i, part), "overlapping "+partName(k, p.Parts[k]),
					"parts apart from each other", current.ErrOverlap)
			}
		}
		bodies = append(bodies, b)
		dry = append(dry, b.dry...)
	}
	if err := shorts(p, bodies, vessel); err != nil {
		return nil, err
	}
	if p.Bath.Extent == Vessel {
		if err := m.addVessel(p.Bath, vessel, dry); err != nil {
			return nil, err
		}
	}
	for i, b := range bodies {
		m.addPart(i, p.Parts[i], b)
	}
	m.joinCorners()
	return m, nil
}

// checkSides wants a cathode and, unless the far anode serves, an anode.
func (m *model) checkSides(p ProfileProblem) error {
	var has [current.Floating + 1]bool
	for i, part := range p.Parts {
		bare := len(uniqueInts(part.Masked)) < part.Profile.Segments()
		if part.Kind == current.Floating && !bare {
			return wrong(partName(i, part), "floating and masked all over", "an insulator", ErrNoElectrode)
		}
		has[part.Kind] = has[part.Kind] || bare
	}
	for _, w := range p.Bath.Walls {
		has[w.Kind] = true
	}
	if !has[current.Cathode] {
		return wrong("cell", "without cathode", "a part or wall of kind Cathode with some bare metal", ErrNoElectrode)
	}
	if !has[current.Anode] && !m.far {
		return wrong("cell", "without anode", "a part or wall of kind Anode, or a far anode", ErrNoElectrode)
	}
	return nil
}

// uniqueInts makes a set of a list that may name a segment twice.
func uniqueInts(list []int) map[int]bool {
	set := map[int]bool{}
	for _, v := range list {
		set[v] = true
	}
	return set
}

// extent returns the largest distance from the origin, the unit of length of the model.
func extent(p ProfileProblem) float64 {
	size := 0.0
	grow := func(pr Profile) {
		for _, c := range pr.curves() {
			size = math.Max(size, math.Max(c.a.norm(), c.b.norm()))
			if c.arc {
				size = math.Max(size, c.radius*math.Min(1, c.length/c.radius))
			}
		}
	}
	grow(p.Bath.Shape)
	for _, part := range p.Parts {
		grow(part.Profile)
	}
	return size
}

// scaledCurves returns the curves of a profile in units of size.
func scaledCurves(p Profile, size float64) []curve {
	cs := p.curves()
	for i := range cs {
		cs[i] = cs[i].scaled(size)
	}
	return cs
}

// addPart appends the pieces of a part.
func (m *model) addPart(i int, p Revolved, b body) {
	name := p.Name
	if name == "" {
		name = fmt.Sprintf("part %d", i)
	}
	m.surfaces = append(m.surfaces, surface{name: name, kind: p.Kind, law: p.Law, bias: float64(p.Bias),
		part: i, wall: -1, profile: p.Profile, sheet: p.Sheet})
	masked := uniqueInts(p.Masked)
	offset := 0.0
	for k, c := range b.curves {
		kind := p.Kind
		if masked[k] {
			kind = current.Insulator
		}
		m.pieces = append(m.pieces, piece{c: c, s1: c.length, before: offset, owner: len(m.surfaces) - 1, kind: kind,
			flip: b.flip, sheet: p.Sheet, segment: k})
		offset += c.length
	}
}

// addVessel appends the pieces of the vessel that no part covers.
func (m *model) addVessel(b Electrolyte, cs []curve, dry []stretch) error {
	insulating := -1
	offset := 0.0
	for k, c := range cs {
		owner, kind := -1, current.Insulator
		for i, w := range b.Walls {
			if w.Segment == k {
				name := w.Name
				if name == "" {
					name = fmt.Sprintf("wall %d", k)
				}
				m.surfaces = append(m.surfaces, surface{name: name, kind: w.Kind, law: w.Law, bias: float64(w.Bias),
					part: -1, wall: i, profile: b.Shape})
				owner, kind = len(m.surfaces)-1, w.Kind
			}
		}
		if owner < 0 {
			if insulating < 0 {
				insulating = len(m.surfaces)
				m.surfaces = append(m.surfaces, surface{name: "vessel", kind: current.Insulator, part: -1, wall: -1,
					profile: b.Shape})
			}
			owner = insulating
		}
		wet := false
		for _, w := range remaining(stretch{offset, offset + c.length}, dry) {
			s0, s1 := w.from-offset, w.to-offset
			if c.length-s1 < 1e-9 { // the sums of lengths round
				s1 = c.length
			}
			if s0 < 1e-9 {
				s0 = 0
			}
			m.pieces = append(m.pieces, piece{c: c, s0: s0, s1: s1, before: offset, owner: owner, kind: kind, flip: -1,
				segment: k})
			wet = true
		}
		if !wet && kind != current.Insulator {
			return wrong("wall "+m.surfaces[owner].name, "covered by parts", "an electrode that the bath wets",
				ErrNoElectrode)
		}
		offset += c.length
	}
	return nil
}
