package field

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// planes numbers the planes in which panels lie. A file in single precision
// scatters the normals of a flat face, the more the smaller the panel and the
// farther it lies from the origin of the file.
//
// Two tolerances answer that, one for the angle and one for the distance. They
// grow with the rounding of the coordinates that a panel can show, so that a
// face read from such a file is one face, while the facets of a round body,
// which are turned against each other by far more, stay apart. To take two
// planes for one costs accuracy: their double layer would be left out as zero.
// To take one for two costs only compression.
type planes struct {
	// order is that of the panels, the largest first: the plane of a large one
	// is known best.
	order []int32
	// size is that of everything.
	size float64
	// extent is the largest distance from the origin: that of the file, as far
	// as anyone can tell, by which its coordinates are rounded.
	extent float64
	// first is the panel that stands for each plane.
	first []int32
	// cells hold the planes by the direction of their normals.
	cells map[[3]int32][]int32
}

// single is half the last digit of a number in single precision; loose is the
// largest angle that it may account for, strict the distance of two faces that
// look away from each other, as a share of the whole, and step the largest of
// two that look the same way.
const (
	single = 1.0 / (1 << 24)
	loose  = 1e-3
	strict = 1e-7
	step   = 2e-5
)

func newPlanes(p *panels, b box3) *planes {
	v := &planes{size: b.diam(), cells: map[[3]int32][]int32{}, order: make([]int32, p.len())}
	for i := range v.order {
		v.order[i] = int32(i)
		v.extent = max(v.extent, norm(p.at[i]))
	}
	slices.SortStableFunc(v.order, func(i, k int32) int { return cmp.Compare(p.area[k], p.area[i]) })
	return v
}

// number returns the number of the plane of a panel, a new one when no plane is
// near enough. Panels come in the order of the book.
func (v *planes) number(p *panels, i int32) int {
	n := p.n[i]
	if n.X+n.Y*1e-3+n.Z*1e-6 < 0 {
		n = r3.Scale(-1, n) // both sides of a plane in one group
	}
	// What rounding does to the corners, over the size of the panel, is what it
	// does to the normal; a few times that is allowed.
	rough := single * v.extent
	angle := min(max(16*rough/math.Sqrt(p.area[i]), 1e-6), loose)
	c := [3]float64{n.X / (2 * loose), n.Y / (2 * loose), n.Z / (2 * loose)}
	// Cells are twice the largest angle wide: what is near lies in this one or in
	// the nearer neighbour along each axis.
	for side := range 8 {
		var cell [3]int32
		for k, x := range c {
			cell[k] = int32(math.Floor(x))
			if side>>k&1 == 1 {
				cell[k] += int32(math.Copysign(1, x-math.Floor(x)-0.5))
			}
		}
		for _, k := range v.cells[cell] {
			f := v.first[k]
			// Faces that look away from each other are the two sides of
			// something: they count as one plane only where they lie in it to
			// the last digits.
			facing := r3.Dot(p.n[f], p.n[i])
			if norm(r3.Cross(p.n[f], p.n[i])) > angle {
				continue
			}
			away := math.Abs(r3.Dot(p.n[f], r3.Sub(p.at[i], p.at[f])))
			most := strict * v.size
			if facing > 0 {
				most = max(most, min(8*rough*(1+v.size/math.Sqrt(p.area[f])), step*v.size))
			}
			if away <= most {
				return int(k)
			}
		}
	}
	home := [3]int32{int32(math.Floor(c[0])), int32(math.Floor(c[1])), int32(math.Floor(c[2]))}
	v.cells[home] = append(v.cells[home], int32(len(v.first)))
	v.first = append(v.first, i)
	return len(v.first) - 1
}
