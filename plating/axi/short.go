package axi

import "example.com/laydown/plating/current"

// shorts refuses metal of the two rails in contact: a part that stands on a wall
// of the other rail, and two walls beside each other without polarisation,
// between which the current is infinite.
func shorts(p ProfileProblem, bodies []body, vessel []curve) error {
	wallAt := map[int]*WallSegment{}
	for i := range p.Bath.Walls {
		wallAt[p.Bath.Walls[i].Segment] = &p.Bath.Walls[i]
	}
	opposed := func(a, b current.Kind) bool {
		return a == current.Cathode && b == current.Anode || a == current.Anode && b == current.Cathode
	}
	offset := 0.0
	for k, c := range vessel {
		w := wallAt[k]
		if w != nil {
			for i, b := range bodies {
				for _, at := range b.touches {
					if opposed(p.Parts[i].Kind, w.Kind) && at > offset-1e-9 && at < offset+c.length+1e-9 {
						return wrong(partName(i, p.Parts[i]), "standing on "+wallName(*w),
							"insulation between the two rails", ErrShort)
					}
				}
			}
			if n := wallAt[k+1]; n != nil && opposed(w.Kind, n.Kind) && w.Law.Model == current.Primary &&
				n.Law.Model == current.Primary {
				return wrong(wallName(*w), "beside "+wallName(*n), "insulation between the two rails, or polarisation",
					ErrShort)
			}
		}
		offset += c.length
	}
	return nil
}
