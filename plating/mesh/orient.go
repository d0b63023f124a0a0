package mesh

// agree turns triangles so that all of a component that share an edge by two
// run against each other along it, and returns how many it turned. Of the two
// ways it takes the one in which fewer triangles turn. A component that cannot
// agree with itself has one side only.
//
// Two triangles agree when they run along their common edge in opposite directions. The
// search goes out from one triangle over edges of two, and says of each triangle whether it
// keeps its direction or turns; a triangle that is reached twice with different answers
// closes a band with one side. Edges of three triangles or more say nothing.
//
// Errors: a [*FaultError] with [ErrOrientation] and the triangle where the surface meets
// itself the wrong way round.
func (m *Mesh) agree() (int, error) {
	type link struct {
		to     int32
		differ bool // the two disagree as they are
	}
	links := make([][]link, len(m.Triangles))
	all := m.sides()
	runs(all, func(edge []side) {
		if len(edge) != 2 {
			return
		}
		p, q := edge[0], edge[1]
		differ := p.forward == q.forward
		links[p.triangle] = append(links[p.triangle], link{q.triangle, differ})
		links[q.triangle] = append(links[q.triangle], link{p.triangle, differ})
	})
	const unseen, keep, turn = 0, 1, 2
	state := make([]uint8, len(m.Triangles))
	total := 0
	for start := range m.Triangles {
		if state[start] != unseen {
			continue
		}
		state[start] = keep
		group := []int32{int32(start)}
		var count [3]int
		for n := 0; n < len(group); n++ {
			i := group[n]
			count[state[i]]++
			for _, l := range links[i] {
				want := state[i]
				if l.differ {
					want = keep + turn - want
				}
				switch state[l.to] {
				case unseen:
					state[l.to] = want
					group = append(group, l.to)
				case want:
				default:
					return total, aboutTriangle(int(l.to), ErrOrientation, "a surface with two sides",
						"a surface with one side only: going around it, inside becomes outside")
				}
			}
		}
		turned := uint8(turn)
		if count[turn] > count[keep] {
			turned = keep
		}
		for _, i := range group {
			if state[i] == turned {
				m.flip(int(i))
				total++
			}
		}
	}
	return total, nil
}

// flip turns triangle i: two of its corners change places.
func (m *Mesh) flip(i int) {
	t := &m.Triangles[i]
	t[1], t[2] = t[2], t[1]
}

// outsideOut turns closed components that are inside out, and returns how many
// triangles it turned. Of a component inside another it is not known whether it
// is a hollow or a body: one that is not turned as its place has it is refused.
func (m *Mesh) outsideOut() (int, error) {
	all := m.sides()
	shells := m.shells(m.components(all), all)
	enclosed, _ := nest(*m, shells)
	total := 0
	for k, s := range shells {
		if !s.closed || s.volume >= 0 == (s.depth%2 == 0) || s.volume == 0 {
			continue
		}
		if enclosed < 0 {
			return total, about(ErrOrientation, "at most "+itoa(mostNested)+" components, or all turned outside out",
				"component %d of %d is inside out, and which lies in which is not looked at", k, len(shells))
		}
		if s.depth > 0 {
			return total, aboutTriangle(int(s.triangles[0]), ErrOrientation,
				"the inner surface turned as it is meant, or left out",
				"a closed surface inside another: a hollow runs the other way, a body cannot be there")
		}
		for _, i := range s.triangles {
			m.flip(int(i))
		}
		total += len(s.triangles)
	}
	return total, nil
}
