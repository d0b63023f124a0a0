package thinspot

import (
	"context"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/coat"
	"example.com/laydown/plating/current"
	"example.com/laydown/plating/field"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/units"
)

// solvesOfWays is how many problems the other arrangements may be.
const solvesOfWays = 8

// A meshWays builds arrangements worth comparing, round a vertical line through
// the middle of the workpiece. A case with positions has each of them changed.
type meshWays struct {
	run  *run
	list []Position
	as   hung // as it hangs
}

// A change is what an arrangement does to one position; body is the box round the workpiece.
type change func(q *field.MeshProblem, body block) error

// all lists the arrangements.
func (o meshWays) all() []arrangement {
	p := o.list[0].Problem
	// Robber and shield stand off by a share of the width of the piece, and by 5 mm at least.
	gap := func(b block) float64 { return math.Max(0.15*b.width(), 5e-3) }
	off := 1e3 * gap(boxOf(p.Surfaces[0].Vertices))
	list := []arrangement{
		{name: "half the current",
			way: o.way(func(q *field.MeshProblem, _ block) error { q.Drive = q.Drive.Scaled(0.5); return nil })},
		o.farther(p), o.inside(p),
		{name: fmt.Sprintf("a robber ring %.0f mm off, a quarter more current", off),
			way: o.way(func(q *field.MeshProblem, b block) error {
				// The robber takes current of its own. Without more of it the piece would get less
				// than as it hangs, and the two could not be compared.
				q.Drive = q.Drive.Scaled(1.25)
				size := units.Length(0.05*b.width() + 1e-3)
				ring, err := mesh.Torus(units.Length(b.width()+2*gap(b)), size, mesh.Grid{Size: 0.8 * size})
				return add(q, current.Cathode, "robber", b.middle, ring, err)
			})},
		{name: fmt.Sprintf("a shield, a tube %.0f mm off all round", off),
			way: o.way(func(q *field.MeshProblem, b block) error {
				wall, bore := 0.06*b.width(), b.width()+2*gap(b)
				tube, err := mesh.Tube(units.Length(bore+wall), units.Length(bore), units.Length(b.height()+gap(b)),
					mesh.Grid{Size: units.Length(math.Min(2*wall, wall+gap(b)/2)), Grade: 1})
				return add(q, current.Insulator, "shield", b.middle, tube, err)
			})},
	}
	for _, t := range []struct {
		name  string
		axis  r3.Vec
		angle float64
	}{{"turned half round half of the time", r3.Vec{Z: 1}, math.Pi},
		{"turned a quarter round half of the time", r3.Vec{Z: 1}, math.Pi / 2},
		{"upside down half of the time", r3.Vec{X: 1}, math.Pi}} {
		a := arrangement{name: t.name}
		if len(o.list) > 1 {
			a.no = "the case has positions of its own"
		} else {
			a.way = o.turned(t.axis, t.angle)
		}
		list = append(list, a)
	}
	return list
}

// changed is one position with the current that it has as it hangs, and a
// change made to it.
func (o meshWays) changed(k int, c change) (field.MeshProblem, error) {
	q := o.list[k].Problem
	q.Surfaces = slices.Clone(q.Surfaces)
	// At the current of the first run, also where the case holds a voltage: only the place
	// changes.
	q.Drive = current.ByCurrent(o.as.solutions[k].Current)
	return q, c(&q, boxOf(q.Surfaces[0].Vertices))
}

// way solves every position with a change made to it.
func (o meshWays) way(c change) func(context.Context) (coat.Way, error) {
	return func(ctx context.Context) (coat.Way, error) {
		list := slices.Clone(o.list)
		for k := range list {
			var err error
			if list[k].Problem, err = o.changed(k, c); err != nil {
				return coat.Way{}, err
			}
		}
		v, err := o.run.positions(ctx, list, otherWays)
		return v.way, err
	}
}

// add puts one more body into the bath, about a place.
func add(q *field.MeshProblem, kind current.Kind, name string, at r3.Vec, m mesh.Mesh, err error) error {
	if err == nil {
		m, err = mesh.Translate(m, at)
	}
	if err != nil {
		return err
	}
	v := field.Boundary{Name: name, Kind: kind, Vertices: m.Vertices, Triangles: m.Triangles}
	// A robber plates from the same solution, so it obeys the rate law of the piece.
	if kind == current.Cathode {
		v.Law = q.Surfaces[0].Law
	}
	q.Surfaces = append(q.Surfaces, v)
	return nil
}

// farther moves every anode half as far again from the workpiece.
func (o meshWays) farther(p field.MeshProblem) arrangement {
	a := arrangement{name: "the anodes half as far again"}
	bodies, walls := anodes(p)
	switch {
	case len(bodies) == 0 && walls > 0:
		a.no = "the anodes are walls of the tank"
		return a
	case len(bodies) == 0:
		a.no = "the anode is far away already"
		return a
	}
	a.way = o.way(func(q *field.MeshProblem, body block) error {
		for _, i := range bodies {
			s := &q.Surfaces[i]
			by := r3.Scale(0.5, r3.Sub(boxOf(s.Vertices).middle, body.middle))
			// Anodes move sideways only: up or down they would leave the solution or change its
			// height.
			by.Z = 0
			m, err := mesh.Translate(meshOf(*q, i), by)
			if err != nil {
				return err
			}
			if box := q.Box; box != nil {
				if b := boxOf(m.Vertices); b.low.X <= box.Low.X || b.low.Y <= box.Low.Y || b.high.X >= box.High.X ||
					b.high.Y >= box.High.Y {
					return fmt.Errorf("%s would not fit into the tank", s.Name)
				}
			}
			s.Vertices = m.Vertices
		}
		return nil
	})
	return a
}

// anodes lists the bodies that are anodes and counts the walls that are.
func anodes(p field.MeshProblem) (bodies []int, walls int) {
	for i := range p.Surfaces {
		if p.Surfaces[i].Kind == current.Anode {
			bodies = append(bodies, i)
		}
	}
	if p.Box != nil {
		for _, w := range p.Box.Walls {
			if w.Kind == current.Anode {
				walls++
			}
		}
	}
	return bodies, walls
}

// inside puts an anode rod into a hollow of the workpiece.
func (o meshWays) inside(p field.MeshProblem) arrangement {
	a := arrangement{name: "an anode inside"}
	bodies, walls := anodes(p)
	_, _, fits := hollow(meshOf(p, 0))
	switch {
	case !fits:
		a.no = noHollow
		return a
	case len(bodies)+walls == 0:
		a.no = "the anode is far away: one inside would be the only one"
		return a
	}
	a.way = o.way(func(q *field.MeshProblem, b block) error {
		floor, clear, fits := hollow(meshOf(*q, 0))
		if !fits {
			return fmt.Errorf("no hollow that an anode rod would go into from above, in one of the positions")
		}
		deep := b.high.Z - floor
		radius, length := math.Min(0.25*clear, 0.06*b.width()), 0.9*deep
		rod, err := mesh.Cylinder(units.Length(2*radius), units.Length(length),
			mesh.Grid{Size: units.Length(1.2 * radius), Grade: 1})
		return add(q, current.Anode, "anode inside", r3.Vec{X: b.middle.X, Y: b.middle.Y, Z: floor + 0.1*deep + length/2},
			rod, err)
	})
	return a
}

// turned hangs the workpiece half of the time turned about an axis through its middle.
func (o meshWays) turned(axis r3.Vec, angle float64) func(context.Context) (coat.Way, error) {
	return func(ctx context.Context) (coat.Way, error) {
		// The piece as it hangs is solved already. Only the turned position is solved, and the two
		// are put together with half of the time each.
		q, err := o.changed(0, func(q *field.MeshProblem, b block) error {
			m, err := mesh.Translate(meshOf(*q, 0), r3.Scale(-1, b.middle))
			if err == nil {
				m, err = mesh.Rotate(m, angle, axis)
			}
			if err == nil {
				m, err = mesh.Translate(m, b.middle)
			}
			q.Surfaces[0].Vertices = m.Vertices
			return err
		})
		if err != nil {
			return coat.Way{}, err
		}
		_, other, err := o.run.hangMesh(ctx, q, otherWays)
		if err != nil {
			return coat.Way{}, err
		}
		return half(o.run.c, coat.Way{Surface: o.as.surfaces[0], Robbed: o.as.way.Robbed}, other)
	}
}
