package axi

import "math"

// meet looks for a point that two curves have in common, other than the joint
// of neighbours: the end of c that is the start of d when joined, the start
// of c that is the end of d when wraps.
func meet(c, d curve, joined, wraps bool) (vec, bool) {
	tol := 1e-9 * (c.length + d.length)
	for _, p := range common(c, d) {
		if joined && p.minus(c.b).norm() <= tol || wraps && p.minus(c.a).norm() <= tol {
			continue
		}
		return p, true
	}
	return vec{}, false
}

// common returns the points that two curves share. Of curves that lie on one
// another for a stretch it returns the middle of the stretch and its ends.
func common(c, d curve) []vec {
	switch {
	case c.oval:
		var found []vec
		for _, l := range c.lines() {
			found = append(found, common(l, d)...)
		}
		return found
	case d.oval:
		return common(d, c)
	case !c.arc && !d.arc:
		return lineLine(c, d)
	case c.arc && d.arc:
		return arcArc(c, d)
	case c.arc:
		return lineArc(d, c)
	}
	return lineArc(c, d)
}

// on tells whether a point of a curve's line or circle lies on the curve.
func (c curve) on(p vec, tol float64) bool {
	if p.minus(c.a).norm() <= tol || p.minus(c.b).norm() <= tol {
		return true
	}
	s := real(c.preimage(p))
	return s > 0 && s < c.length && p.minus(c.at(s)).norm() <= tol
}

// lineLine returns the point where two lines meet, or what they share when they are
// parallel.
//
//	c.a + t u = d.a + k v,  t = (d.a - c.a)×v / (u×v)
//
// Lines count as parallel when the sine of their angle is below 1e-10.
func lineLine(c, d curve) []vec {
	tol := 1e-10 * (c.length + d.length)
	u, v := c.b.minus(c.a), d.b.minus(d.a)
	w := u.cross(v)
	if math.Abs(w) > 1e-10*c.length*d.length {
		t := d.a.minus(c.a).cross(v) / w
		p := vec{c.a.r + t*u.r, c.a.z + t*u.z}
		if c.on(p, tol) && d.on(p, tol) {
			return []vec{p}
		}
		return nil
	}
	return overlap(c, d, tol)
}

// overlap returns the ends that lie on the other curve, and the middle of
// each two of them that lies on both.
func overlap(c, d curve, tol float64) []vec {
	var ends []vec
	for _, p := range []vec{c.a, c.b} {
		if d.on(p, tol) {
			ends = append(ends, p)
		}
	}
	for _, p := range []vec{d.a, d.b} {
		if c.on(p, tol) {
			ends = append(ends, p)
		}
	}
	found := ends
	for i := range ends {
		for k := range i {
			if m := c.at(0.5 * (real(c.preimage(ends[i])) + real(c.preimage(ends[k])))); d.on(m, tol) &&
				ends[i].minus(ends[k]).norm() > 100*tol {
				found = append(found, m)
			}
		}
	}
	return found
}

// lineArc returns the points where a line meets an arc.
//
//	s = foot ± √(R² - h²)
//
//	foot  arc length along the line of the point next to the centre
//	h     distance of the centre from the line
//
// A root just below zero is a line that touches, and counts as touching.
func lineArc(l, c curve) []vec {
	tol := 1e-10 * (l.length + c.length)
	t := l.along(0)
	d := l.a.minus(c.centre)
	foot := -d.dot(t)
	h := d.cross(t)
	disc := c.radius*c.radius - h*h
	if disc < -2*tol*c.radius {
		return nil
	}
	half := math.Sqrt(math.Max(disc, 0))
	var found []vec
	for _, s := range []float64{foot - half, foot + half} {
		p := vec{l.a.r + s*t.r, l.a.z + s*t.z}
		if l.on(p, tol) && c.on(p, 10*tol) {
			found = append(found, p)
		}
	}
	return found
}

// arcArc returns the points where two arcs meet, or what they share when they lie on one
// circle.
//
//	x = (D² + R₁² - R₂²) / (2D),  y = ±√(R₁² - x²)
//
//	D     distance of the centres
//	x, y  along the line of the centres from the first, and across it
func arcArc(c, d curve) []vec {
	tol := 1e-10 * (c.length + d.length)
	ab := d.centre.minus(c.centre)
	dist := ab.norm()
	if dist <= tol && math.Abs(c.radius-d.radius) <= tol {
		return overlap(c, d, 10*tol)
	}
	if dist <= tol || dist > c.radius+d.radius+tol || dist < math.Abs(c.radius-d.radius)-tol {
		return nil
	}
	x := (dist*dist + c.radius*c.radius - d.radius*d.radius) / (2 * dist)
	y := math.Sqrt(math.Max(0, c.radius*c.radius-x*x))
	u := vec{ab.r / dist, ab.z / dist}
	var found []vec
	for _, y := range []float64{y, -y} {
		p := vec{c.centre.r + x*u.r - y*u.z, c.centre.z + x*u.z + y*u.r}
		if c.on(p, 10*tol) && d.on(p, 10*tol) {
			found = append(found, p)
		}
	}
	return found
}

// inside tells whether p lies inside a closed chain of points: the sum of the angles under
// which p sees its chords is ±2π inside, 0 outside. Either sense of travel will do.
func inside(p vec, chain []vec) bool {
	turn := 0.0
	for i := range chain {
		u, v := chain[i].minus(p), chain[(i+1)%len(chain)].minus(p)
		turn += math.Atan2(u.cross(v), u.dot(v))
	}
	return math.Abs(turn) > math.Pi
}

// chords returns points along the curves, arcs cut finely, without the last.
func chords(cs []curve) []vec { return chordsOf(cs, 64) }

// chordsOf cuts each arc into so many chords.
func chordsOf(cs []curve, pieces int) []vec {
	var out []vec
	for _, c := range cs {
		n := 1
		if c.arc || c.oval {
			n = pieces
		}
		for k := range n {
			out = append(out, c.at(c.length*float64(k)/float64(n)))
		}
	}
	return out
}

// signedArea returns the area within a closed chain, positive when it runs from R towards
// Z.
//
//	A = ½ Σ p_i × p_i+1
func signedArea(chain []vec) float64 {
	sum := 0.0
	for i := range chain {
		sum += 0.5 * chain[i].cross(chain[(i+1)%len(chain)])
	}
	return sum
}
