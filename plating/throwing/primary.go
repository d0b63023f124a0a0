package throwing

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/mathext"

	"example.com/laydown/units"
)

// A PrimaryMap is the primary current distribution of a [Trapezoid]: without
// polarisation, by the shape alone. [Trapezoid.Primary] makes one; the zero value
// answers with errors.
type PrimaryMap struct {
	length units.Length // of the cathode
	b, t   float64      // angle at the low end over π; the map's parameter
	mean   float64      // length over flux of the cathode, in the map's own units
	edges  []float64    // of the pieces, in y, falling: from the high end to the low
	sums   []float64    // length from the high end to each edge, in the map's own unit
	rule   rule
}

// Primary computes the primary distribution by conformal mapping.
//
//	dz/dw = w^(-1/2) (w - 1)^(B-1) (w - 1 - t)^(-B)
//	dW/dw = 1/√(w (w - 1)(w - 1 - t))
//
//	z  plan of the cell, w  upper half plane, W  potential and flux
//	B  angle between long wall and cathode, over π
//	t  parameter, such that long wall and cathode have their lengths
//
// The corners are at w = 0 (anode and long wall), 1 (the low end), 1 + t (the
// high end) and infinity. With u = (w - 1)/t and y = ln(u/(1 - u)) the
// singularities at the ends of the cathode go to infinity and the integrand is
// smooth: it is cut into pieces two wide with 16 Gauss-Legendre points each, and
// falls off beyond as an exponential whose integral is known. Tests hold it to 1e-8
// against values of 25-digit arithmetic.
//
// Errors: those of [Trapezoid.Cathode].
//
// Source: [Derived]: the map of a half plane on a polygon. [TestCellMap1992]
// treats the same cell.
func (t Trapezoid) Primary() (PrimaryMap, error) {
	length, err := t.Cathode()
	if err != nil {
		return PrimaryMap{}, err
	}
	m := PrimaryMap{length: length, b: math.Atan2(float64(t.Anode), float64(t.Long-t.Short)) / math.Pi, rule: newRule()}
	want := float64(t.Long) / float64(length)
	// The long wall over the cathode falls as t rises: halve ln t.
	low, high := -50.0, 50.0
	for range 200 {
		mid := low + (high-low)/2
		if mid == low || mid == high {
			break
		}
		if m.t = math.Exp(mid); m.wall() > want*m.cut() {
			low = mid
		} else {
			high = mid
		}
	}
	whole := m.cut()
	m.mean = whole * math.Sqrt(1+m.t) / (2 * mathext.CompleteK(m.t/(1+m.t)))
	return m, nil
}

// A rule is a Gauss-Legendre rule on (-1, 1).
type rule struct{ x, weight [16]float64 }

func newRule() rule {
	var r rule
	quad.Legendre{}.FixedLocations(r.x[:], r.weight[:], -1, 1)
	return r
}

func (r *rule) integrate(f func(float64) float64, from, to float64) float64 {
	half, mid, sum := (to-from)/2, (to+from)/2, 0.0
	for i, x := range r.x {
		sum += r.weight[i] * f(mid+half*x)
	}
	return half * sum
}

// far is where a factor 1 + e^-y is 1 to the last digit.
const far = 40.0

// speed returns dx/dy on the cathode: u^B (1 - u)^(1-B)/√(1 + t u) with
// u = 1/(1 + e^-y).
func (m *PrimaryMap) speed(y float64) float64 {
	u, v := logistic(y)
	return math.Pow(u, m.b) * math.Pow(v, 1-m.b) / math.Sqrt(1+m.t*u)
}

// highTail and lowTail are the cathode's lengths beyond y, where only one
// factor still changes.
func (m *PrimaryMap) highTail(y float64) float64 {
	return math.Exp(-(1-m.b)*y) / ((1 - m.b) * math.Sqrt(1+m.t))
}

func (m *PrimaryMap) lowTail(y float64) float64 { return math.Exp(m.b*y) / m.b }

// cut measures the cathode piece by piece and returns its whole length.
func (m *PrimaryMap) cut() float64 {
	bottom := -far - math.Log1p(m.t)
	n := int(math.Ceil((far - bottom) / 2))
	m.edges, m.sums = m.edges[:0], m.sums[:0]
	m.edges, m.sums = append(m.edges, far), append(m.sums, m.highTail(far))
	for k := 1; k <= n; k++ {
		y := far + (bottom-far)*float64(k)/float64(n)
		m.sums = append(m.sums, m.sums[k-1]+m.rule.integrate(m.speed, y, m.edges[k-1]))
		m.edges = append(m.edges, y)
	}
	return m.sums[n] + m.lowTail(bottom)
}

// wall measures the long wall, w from 0 to 1 with w = 1/(1 + e^-y): the
// integral of w^(1/2) (1 - w)^B/(1 - w + t)^B.
func (m *PrimaryMap) wall() float64 {
	f := func(y float64) float64 {
		w, v := logistic(y)
		return math.Sqrt(w) * math.Pow(v/(v+m.t), m.b)
	}
	top := far + math.Log1p(1/m.t)
	n := int(math.Ceil((top + far) / 2))
	sum := 2*math.Exp(-far/2)/math.Pow(1+m.t, m.b) + math.Exp(-m.b*(top+math.Log(m.t)))/m.b
	for k := range n {
		from, to := -far+(top+far)*float64(k)/float64(n), -far+(top+far)*float64(k+1)/float64(n)
		sum += m.rule.integrate(f, from, to)
	}
	return sum
}

// logistic returns 1/(1 + e^-y) and 1/(1 + e^y).
func logistic(y float64) (u, v float64) {
	if y > 0 {
		e := math.Exp(-y)
		return 1 / (1 + e), e / (1 + e)
	}
	e := math.Exp(y)
	return e / (1 + e), 1 / (1 + e)
}

// At returns the current density at a place on the cathode over its mean.
//
//	j/j_mean ~ (u/(1 - u))^(1/2 - B), x ~ ∫ du u^(B-1) (1 - u)^(-B)/√(1 + t u) from u to 1
//
//	x  fromHigh  from the end with the high current density, 0 < x ≤ length [m]
//	u, B, t      as for [Trapezoid.Primary]
//
// At the high end itself it is infinite, at the low end zero, when the panel
// slants: no bath has either. Do not hold it against [Panel.Density]: that is a
// panel with polarisation.
//
// Errors: a [*units.ValueError] for a place that is not on the panel, for the high
// end, and for the zero map.
//
// Source: [Derived], as for [Trapezoid.Primary].
func (m PrimaryMap) At(fromHigh units.Length) (units.Ratio, error) {
	if err := m.made(); err != nil {
		return 0, err
	}
	if err := units.Positive("place on the panel", fromHigh); err != nil {
		return 0, err
	}
	if fromHigh > m.length {
		return 0, &units.ValueError{Field: "place on the panel", Value: fromHigh.String(),
			Need: "at most the panel's length, " + m.length.String(), Err: units.ErrOutOfRange}
	}
	if m.b == 0.5 {
		return 1, nil
	}
	whole := m.whole()
	x := float64(fromHigh) / float64(m.length) * whole
	return finite("current density over the mean", units.Ratio(m.mean*math.Exp((0.5-m.b)*m.find(x, whole-x))))
}

// whole returns the cathode's length in the map's own unit.
func (m *PrimaryMap) whole() float64 {
	n := len(m.sums) - 1
	return m.sums[n] + m.lowTail(m.edges[n])
}

// find returns y for a length x from the high end, rest from the low end.
func (m *PrimaryMap) find(x, rest float64) float64 {
	n := len(m.sums) - 1
	switch {
	case x <= m.sums[0]:
		return -math.Log(x*(1-m.b)*math.Sqrt(1+m.t)) / (1 - m.b)
	case x >= m.sums[n]:
		return math.Log(max(rest, 0)*m.b) / m.b // minus infinity at the low end
	}
	k := sort.SearchFloat64s(m.sums, x)
	low, high := m.edges[k], m.edges[k-1]
	y := low + (high-low)/2
	for range 100 { // Newton, halving where it would leave the piece
		over := m.sums[k-1] + m.rule.integrate(m.speed, y, m.edges[k-1]) - x
		if over > 0 {
			low = y
		} else {
			high = y
		}
		next := y + over/m.speed(y)
		if !(next > low && next < high) {
			next = low + (high-low)/2
		}
		if math.Abs(next-y) <= 1e-15*(1+math.Abs(y)) || next == low || next == high {
			return next
		}
		y = next
	}
	return y
}

// Place returns where on the cathode the current density has a ratio to its
// mean: the inverse of [PrimaryMap.At].
//
// Errors: a [*units.ValueError] for a ratio that is not above zero, for a panel
// that does not slant, on which all places are alike, and for the zero map.
//
// Source: [Derived], as for [Trapezoid.Primary].
func (m PrimaryMap) Place(ratio units.Ratio) (units.Length, error) {
	if err := m.made(); err != nil {
		return 0, err
	}
	if err := units.Positive("current density over the mean", ratio); err != nil {
		return 0, err
	}
	if m.b == 0.5 {
		return 0, &units.ValueError{Field: "slant of the panel", Value: "none",
			Need: "a long wall that is longer than the short one", Err: units.ErrInconsistent}
	}
	y := math.Log(float64(ratio)/m.mean) / (0.5 - m.b)
	n := len(m.edges) - 1
	whole := m.whole()
	var x float64
	switch {
	case y >= m.edges[0]:
		x = m.highTail(y)
	case y <= m.edges[n]:
		x = whole - m.lowTail(y)
	default:
		k := sort.Search(len(m.edges), func(k int) bool { return m.edges[k] <= y })
		x = m.sums[k-1] + m.rule.integrate(m.speed, y, m.edges[k-1])
	}
	return units.Length(x/whole) * m.length, nil
}

// ShapeFactor returns what the cell's conductance is to that of the bath.
//
//	S = I/(κ U h) = K(m)/K(1 - m), m = t/(1 + t)
//
//	I, U  current and voltage without polarisation
//	κ     conductivity of the bath
//	h     depth of the solution
//	K     complete elliptic integral of the first kind, of the parameter m
//
// Errors: a [*units.ValueError] for the zero map.
//
// Source: [Derived], as for [Trapezoid.Primary].
func (m PrimaryMap) ShapeFactor() (units.Ratio, error) {
	if err := m.made(); err != nil {
		return 0, err
	}
	return units.Ratio(mathext.CompleteK(m.t/(1+m.t)) / mathext.CompleteK(1/(1+m.t))), nil
}

// Cathode returns the length of the panel; 0 for the zero map.
func (m PrimaryMap) Cathode() units.Length { return m.length }

func (m *PrimaryMap) made() error {
	if len(m.sums) == 0 {
		return &units.ValueError{Field: "primary map", Value: "empty", Need: "one made by Trapezoid.Primary",
			Err: units.ErrInconsistent}
	}
	return nil
}
