package main

import (
	"context"
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/coat"
	"example.com/laydown/plating/field"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/units"
)

// meshOthers builds arrangements worth comparing, round a vertical line through
// the middle of the part.
func meshOthers(r *result, s *field.Solution, e effort) []arrangement {
	p := r.c.Mesh.Problem
	total := s.Current
	body := boxOf(p.Surfaces[0].Vertices)
	with := func(change func(*field.Problem) error) func(context.Context) (coat.Way, error) {
		return func(ctx context.Context) (coat.Way, error) {
			q := p
			q.Surfaces = append([]field.Surface(nil), p.Surfaces...)
			q.Drive = field.Drive{Current: total}
			if err := change(&q); err != nil {
				return coat.Way{}, err
			}
			_, w, err := hangMesh(ctx, q, "other arrangements", e)
			return w, err
		}
	}
	add := func(kind field.Kind, name string, m mesh.Mesh, err error) func(*field.Problem) error {
		return func(q *field.Problem) error {
			if err != nil {
				return err
			}
			v := field.Surface{Name: name, Kind: kind, Vertices: m.Vertices, Triangles: m.Triangles}
			if kind == field.Cathode {
				v.Law = p.Surfaces[0].Law
			}
			q.Surfaces = append(q.Surfaces, v)
			return nil
		}
	}
	list := []arrangement{{name: "half the current", way: with(func(q *field.Problem) error { q.Drive.Current = total / 2; return nil })}}
	list = append(list, farther(p, body, with), insideMesh(p, body, with, add))
	gap := math.Max(0.15*body.width(), 5e-3)
	ring, err := placed(mesh.Torus(units.Length(body.width()+2*gap), units.Length(0.05*body.width()+1e-3), mesh.Grid{Size: units.Length(0.04*body.width() + 1e-3)}))(body.middle)
	list = append(list, arrangement{name: fmt.Sprintf("a robber ring %.0f mm off, a quarter more current", 1e3*gap), way: with(func(q *field.Problem) error {
		q.Drive.Current = 1.25 * total
		return add(field.Cathode, "robber", ring, err)(q)
	})})
	tube, err := placed(mesh.Tube(units.Length(body.width()+2*gap+0.06*body.width()), units.Length(body.width()+2*gap), units.Length(body.height()+gap),
		mesh.Grid{Size: units.Length(math.Min(0.12*body.width(), 0.06*body.width()+gap/2)), Grade: 1}))(body.middle)
	list = append(list, arrangement{name: fmt.Sprintf("a shield, a tube %.0f mm off all round", 1e3*gap), way: with(add(field.Insulator, "shield", tube, err))})
	for _, t := range []struct {
		name string
		axis r3.Vec
	}{{"turned half round half of the time", r3.Vec{Z: 1}}, {"upside down half of the time", r3.Vec{X: 1}}} {
		list = append(list, arrangement{name: t.name, way: func(ctx context.Context) (coat.Way, error) { return r.turnedHalf(ctx, p, total, body, t.axis, e) }})
	}
	return list
}

// A block is the box round a part.
type block struct{ low, high, middle r3.Vec }

func boxOf(points []r3.Vec) block {
	b := block{low: points[0], high: points[0]}
	for _, v := range points {
		b.low = r3.Vec{X: math.Min(b.low.X, v.X), Y: math.Min(b.low.Y, v.Y), Z: math.Min(b.low.Z, v.Z)}
		b.high = r3.Vec{X: math.Max(b.high.X, v.X), Y: math.Max(b.high.Y, v.Y), Z: math.Max(b.high.Z, v.Z)}
	}
	b.middle = r3.Scale(0.5, r3.Add(b.low, b.high))
	return b
}

// width is the diagonal of the part seen from above: what a ring must clear.
func (b block) width() float64 { return math.Hypot(b.high.X-b.low.X, b.high.Y-b.low.Y) }

func (b block) height() float64 { return b.high.Z - b.low.Z }

// placed moves a mesh from the origin to a place.
func placed(m mesh.Mesh, err error) func(r3.Vec) (mesh.Mesh, error) {
	return func(at r3.Vec) (mesh.Mesh, error) {
		if err != nil {
			return m, err
		}
		return mesh.Translate(m, at)
	}
}

// farther moves every anode half as far again from the part.
func farther(p field.Problem, body block, with func(func(*field.Problem) error) func(context.Context) (coat.Way, error)) arrangement {
	a := arrangement{name: "the anodes half as far again"}
	var anodes []int
	for i := range p.Surfaces {
		if p.Surfaces[i].Kind == field.Anode {
			anodes = append(anodes, i)
		}
	}
	switch {
	case len(anodes) == 0 && p.Tank.Box != nil:
		a.no = "the anodes are walls of the tank"
		return a
	case len(anodes) == 0:
		a.no = "the anode is far away already"
		return a
	}
	a.way = with(func(q *field.Problem) error {
		for _, i := range anodes {
			by := r3.Scale(0.5, r3.Sub(boxOf(p.Surfaces[i].Vertices).middle, body.middle))
			by.Z = 0
			m, err := mesh.Translate(mesh.Mesh{Vertices: p.Surfaces[i].Vertices, Triangles: p.Surfaces[i].Triangles}, by)
			if err != nil {
				return err
			}
			if box := p.Tank.Box; box != nil {
				if b := boxOf(m.Vertices); b.low.X <= box.Low.X || b.low.Y <= box.Low.Y || b.high.X >= box.High.X || b.high.Y >= box.High.Y {
					return fmt.Errorf("%s would not fit into the tank", p.Surfaces[i].Name)
				}
			}
			q.Surfaces[i].Vertices = m.Vertices
		}
		return nil
	})
	return a
}

// insideMesh puts an anode rod into a hollow: where a vertical line through the
// part's middle is free of metal for a good part of its height.
func insideMesh(p field.Problem, body block, with func(func(*field.Problem) error) func(context.Context) (coat.Way, error),
	add func(field.Kind, string, mesh.Mesh, error) func(*field.Problem) error) arrangement {
	a := arrangement{name: "an anode inside"}
	s := &p.Surfaces[0]
	top := body.high.Z
	floor, clear := top, math.Inf(1)
	const steps = 60
	for k := range steps {
		z := top - (float64(k)+0.5)/steps*body.height()
		d := nearest(s, r3.Vec{X: body.middle.X, Y: body.middle.Y, Z: z})
		if d < 0.08*body.width() {
			break
		}
		floor, clear = z, math.Min(clear, d)
	}
	enclosed := 0 // directions in which metal stands round the line
	if floor < top {
		enclosed = around(s, body, (top+floor)/2)
	}
	if top-floor < 0.25*body.height() || enclosed < 6 {
		a.no = "the part has no hollow that an anode rod would go into from above"
		return a
	}
	radius := math.Min(0.25*clear, 0.06*body.width())
	length := (top - floor) * 0.9
	rod, err := placed(mesh.Cylinder(units.Length(2*radius), units.Length(length), mesh.Grid{Size: units.Length(1.2 * radius), Grade: 1}))(
		r3.Vec{X: body.middle.X, Y: body.middle.Y, Z: floor + 0.1*(top-floor) + length/2})
	a.way = with(add(field.Anode, "anode inside", rod, err))
	return a
}

// nearest is the distance of a point to the corners and middles of a surface.
func nearest(s *field.Surface, at r3.Vec) float64 {
	d := math.Inf(1)
	for _, t := range s.Triangles {
		a, b, c := s.Vertices[t[0]], s.Vertices[t[1]], s.Vertices[t[2]]
		m := r3.Scale(1.0/3, r3.Add(a, r3.Add(b, c)))
		for _, q := range []r3.Vec{a, b, c, m} {
			d = math.Min(d, r3.Norm(r3.Sub(q, at)))
		}
	}
	return d
}

// around counts in how many of eight sectors the part stands at a height.
func around(s *field.Surface, body block, z float64) int {
	var sectors [8]bool
	for _, v := range s.Vertices {
		if math.Abs(v.Z-z) < 0.15*body.height() {
			angle := math.Atan2(v.Y-body.middle.Y, v.X-body.middle.X) + math.Pi
			sectors[min(int(angle/(math.Pi/4)), 7)] = true
		}
	}
	n := 0
	for _, in := range sectors {
		if in {
			n++
		}
	}
	return n
}

// turnedHalf hangs the part half of the time turned by half a turn about an
// axis through its middle.
func (r *result) turnedHalf(ctx context.Context, p field.Problem, total units.Current, body block, axis r3.Vec, e effort) (coat.Way, error) {
	m, err := mesh.Translate(mesh.Mesh{Vertices: p.Surfaces[0].Vertices, Triangles: p.Surfaces[0].Triangles}, r3.Scale(-1, body.middle))
	if err != nil {
		return coat.Way{}, err
	}
	if m, err = mesh.Rotate(m, math.Pi, axis); err != nil {
		return coat.Way{}, err
	}
	if m, err = mesh.Translate(m, body.middle); err != nil {
		return coat.Way{}, err
	}
	p.Drive = field.Drive{Current: total}
	q := p
	q.Surfaces = append([]field.Surface(nil), p.Surfaces...)
	q.Surfaces[0].Vertices = m.Vertices
	var list []coat.Surface
	var way coat.Way
	for _, one := range []field.Problem{p, q} {
		_, w, err := hangMesh(ctx, one, "other arrangements", e)
		if err != nil {
			return way, err
		}
		list = append(list, w.Surface)
		way.Robbed += w.Robbed / 2
	}
	way.Surface, err = together(&r.c.Bath, list, []units.Ratio{0.5, 0.5})
	return way, err
}
