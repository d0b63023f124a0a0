package throwing

import (
	"math"

	"example.com/laydown/units"
)

// A Recess is a hole or a trench in a surface that plates: deeper than wide,
// closed at the bottom.
type Recess struct {
	Width  units.Length // diameter of a round hole, distance of a trench's walls; > 0
	Depth  units.Length // > 0
	Trench bool         // a trench with parallel walls; otherwise a round hole
	// BareFloor leaves the floor out: it is masked, or the recess is one half of
	// a through hole or slot that plates from both ends, Depth being that half.
	BareFloor bool
}

// A Throw is how the coat falls off into a recess.
type Throw struct {
	Bottom units.Ratio // current density at the bottom over that at the mouth
	Mean   units.Ratio // mean over the side walls, over that at the mouth
}

// Number returns what decides the fall: the depth over the depth that current
// reaches.
//
//	ν² = 4 D²/(κ r d) for a round hole
//	ν² = 2 D²/(κ r w) for a trench
//
//	D     r.Depth       > 0 [m]
//	d, w  r.Width       > 0 [m]
//	κ     conductivity  of the bath, > 0 [S/m]
//	r     slope         dη/dj of the polarisation, > 0; for Tafel kinetics b/j at
//	                    the mouth, b in volts for a factor e [Ω·m²]
//
// It is the square root of an inverse Wagner number. Below 0.3 the coat is even
// to 5 %, above 3 the bottom gets a tenth or less.
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [Derived]: the current that leaves through the walls is what the
// solution in the recess loses, κ A φ″ = p φ/r with section A and girth p.
func (r Recess) Number(conductivity units.Conductivity, slope units.AreaResistance) (units.Ratio, error) {
	if err := r.check(); err != nil {
		return 0, err
	}
	reach, err := r.reach(conductivity, slope)
	if err != nil {
		return 0, err
	}
	return positive("number of the recess", units.Ratio(float64(r.Depth)/reach))
}

// reach returns √(κ r d/4) or √(κ r w/2), the depth at which ν is 1 [m].
func (r Recess) reach(conductivity units.Conductivity, slope units.AreaResistance) (float64, error) {
	if err := units.Positive("conductivity", conductivity); err != nil {
		return 0, err
	}
	if err := units.Positive("slope of the polarisation", slope); err != nil {
		return 0, err
	}
	reach := math.Sqrt(float64(conductivity)) * math.Sqrt(float64(slope)) * math.Sqrt(float64(r.Width)*r.section())
	l, err := positive("reach of the current", units.Length(reach))
	return float64(l), err
}

// section is section over girth and width: d/4 of a hole, w/2 of a trench.
func (r Recess) section() float64 {
	if r.Trench {
		return 0.5
	}
	return 0.25
}

// floor is what the floor takes against the walls: section over girth and depth,
// or 0 when it is bare.
func (r Recess) floor() float64 {
	if r.BareFloor {
		return 0
	}
	return r.section() * float64(r.Width) / float64(r.Depth)
}

// Linear returns the fall of the coat with linear polarisation.
//
//	bottom/mouth = 1/(cosh ν + β ν sinh ν)
//	mean/mouth   = (sinh ν/ν + β (cosh ν - 1)) · bottom/mouth
//
//	ν  number of the recess, see [Recess.Number]
//	β  d/(4 D) for a hole, w/(2 D) for a trench, 0 with a bare floor
//
// With a bare floor that is 1/cosh ν and tanh ν/ν. One dimension: the recess is
// deeper than wide, and metal ions are not used up in it, which stirring and a low
// current density have to see to; where they are, the bottom gets less.
//
// Errors: a [*units.ValueError] for an argument out of range; a
// [*units.RangeError], and no value, for a recess wider than deep.
//
// Source: [Derived]: φ″ = ν² φ along the depth, φ′ = β ν² φ at the floor.
func (r Recess) Linear(conductivity units.Conductivity, slope units.AreaResistance) (Throw, error) {
	n, err := r.Number(conductivity, slope)
	if err != nil {
		return Throw{}, err
	}
	if err := r.oneDimension(); err != nil {
		return Throw{}, err
	}
	return linearThrow(float64(n), r.floor()), nil
}

func linearThrow(nu, beta float64) Throw {
	// By exp(-ν), so that nothing overflows.
	e := math.Exp(-2 * nu)
	cosh, sinh := (1+e)/2, -math.Expm1(-2*nu)/2 // each times exp(-ν)
	down := cosh + beta*nu*sinh
	part := math.Tanh(nu/2) * sinh // cosh ν - 1, times exp(-ν)
	t := Throw{Bottom: units.Ratio(math.Exp(-nu) / down), Mean: units.Ratio((sinh/nu + beta*part) / down)}
	return t
}

// Tafel returns the fall of the coat with Tafel polarisation.
//
//	bottom/mouth = cos²(θ + δ)/cos² δ
//	mean/mouth   = cos²(θ + δ) (tan(θ + δ) - tan δ)/θ
//
//	√2 θ/cos(θ + δ) = ν, 0 < θ + δ < π/2
//	sin 2δ = 2 β θ
//
//	ν  number of the recess with slope b/j at the mouth
//	β  d/(4 D) for a hole, w/(2 D) for a trench, 0 with a bare floor
//
// With a bare floor δ = 0 and bottom/mouth is cos² θ. The mouth's current density
// is that of the surface around it. Otherwise as for [Recess.Linear]. Tafel
// kinetics throws better than linear with the same slope at the mouth, since the
// slope b/j grows inwards.
//
// Errors: a [*units.ValueError] for an argument out of range; a
// [*units.RangeError], and no value, for a recess wider than deep.
//
// Source: [Derived]: (ln j)″ = ν² j/j_mouth along the depth.
func (r Recess) Tafel(conductivity units.Conductivity, mouthSlope units.AreaResistance) (Throw, error) {
	n, err := r.Number(conductivity, mouthSlope)
	if err != nil {
		return Throw{}, err
	}
	if err := r.oneDimension(); err != nil {
		return Throw{}, err
	}
	return tafelThrow(float64(n), r.floor()), nil
}

// tafelThrow finds δ and θ by halving. With a floor it goes by δ, which gives θ =
// sin 2δ/(2β) without a choice of branch: for a recess deeper than wide, β ≤ 1/2,
// θ + δ comes to a right angle before δ comes to half of one, and ν rises with δ
// from 0 to infinity on the way.
func tafelThrow(nu, beta float64) Throw {
	angles := func(x float64) (theta, delta float64) {
		if beta == 0 {
			return x, 0
		}
		return math.Sin(2*x) / (2 * beta), x
	}
	low, high := 0.0, math.Pi/2
	if beta != 0 {
		high = math.Pi / 4
	}
	for range 200 {
		x := low + (high-low)/2
		if x == low || x == high {
			break
		}
		theta, delta := angles(x)
		if sum := theta + delta; sum < math.Pi/2 && math.Sqrt2*theta < nu*math.Cos(sum) {
			low = x
		} else {
			high = x
		}
	}
	theta, delta := angles(low)
	// cos(θ + δ) by ν: near the right angle the cosine itself has no digits left.
	cos := math.Sqrt2 * theta / nu
	if theta == 0 {
		return Throw{Bottom: 1, Mean: 1}
	}
	bottom := cos * cos / (math.Cos(delta) * math.Cos(delta))
	// tan(θ + δ) - tan δ = sin θ/(cos(θ + δ) cos δ)
	mean := cos * math.Sin(theta) / math.Cos(delta) / theta
	return Throw{Bottom: units.Ratio(min(bottom, 1)), Mean: units.Ratio(min(mean, 1))}
}

// LinearDepth returns how deep the recess may be for the bottom to get a required
// share of the current density at the mouth; r.Depth is not looked at.
//
//	y = (1/ρ + √(1/ρ² - 1 + γ²))/(1 + γ)
//	D = l ln y
//
//	ρ  required  bottom over mouth, 0 < ρ < 1
//	γ           l/(κ r): √(d/(4 κ r)) or √(w/(2 κ r)); 0 with a bare floor
//	l           √(κ r d/4) or √(κ r w/2) [m]
//	κ, r        as for [Recess.Number]
//
// Errors: a [*units.ValueError] for an argument out of range; a
// [*units.RangeError], and no value, when the recess comes out wider than deep.
//
// Source: [Derived], [Recess.Linear] solved for D.
func (r Recess) LinearDepth(required units.Ratio, conductivity units.Conductivity,
	slope units.AreaResistance) (units.Length, error) {
	reach, err := r.need(required, conductivity, slope)
	if err != nil {
		return 0, err
	}
	gamma := 0.0
	if !r.BareFloor {
		gamma = reach / (float64(conductivity) * float64(slope))
	}
	// ln y without loss for a required ratio near 1: by y - 1.
	x := 1 / float64(required)
	more := (1 - float64(required)) / float64(required) // 1/ρ - 1
	m := more * (x + 1)                                 // 1/ρ² - 1
	y1 := (more + m/(math.Sqrt(m+gamma*gamma)+gamma)) / (1 + gamma)
	return r.deep(reach * math.Log1p(y1))
}

// TafelDepth returns how deep the recess may be for the bottom to get a required
// share of the current density at the mouth; r.Depth is not looked at.
//
//	sin δ = √(ρ g/8) for a hole, √(ρ g/4) for a trench; 0 with a bare floor
//	cos(θ + δ) = √ρ cos δ
//	D = l √2 θ/cos(θ + δ)
//
//	ρ  required  bottom over mouth, 0 < ρ < 1
//	g           d/(κ r) or w/(κ r)
//	l           √(κ r d/4) or √(κ r w/2) [m]
//	κ, r        as for [Recess.Tafel]
//
// Errors: a [*units.ValueError] for an argument out of range; a
// [*units.RangeError], and no value, when the recess comes out wider than deep.
//
// Source: [Derived], [Recess.Tafel] solved for D.
func (r Recess) TafelDepth(required units.Ratio, conductivity units.Conductivity,
	mouthSlope units.AreaResistance) (units.Length, error) {
	reach, err := r.need(required, conductivity, mouthSlope)
	if err != nil {
		return 0, err
	}
	sin := 0.0
	if !r.BareFloor {
		// γ = l/(κ r); sin δ = γ √(ρ/2)
		sin = reach / (float64(conductivity) * float64(mouthSlope)) * math.Sqrt(float64(required)/2)
	}
	if !(sin < math.Sqrt2/2) { // beyond it the depth is less than the width
		return 0, &units.RangeError{Field: "width of the recess", Value: r.Width.String(),
			Low: "0", High: "the depth that keeps the required ratio", Source: "Derived"}
	}
	delta := math.Asin(sin)
	cos := math.Sqrt(float64(required)) * math.Cos(delta)
	// sin²(θ + δ) = 1 - cos², with 1 - ρ + ρ sin² δ for the digits.
	sum := math.Atan2(math.Sqrt((1-float64(required))+float64(required)*sin*sin), cos)
	return r.deep(reach * math.Sqrt2 * (sum - delta) / cos)
}

func (r Recess) need(required units.Ratio, conductivity units.Conductivity, slope units.AreaResistance) (float64,
	error) {
	if err := units.Positive("width of the recess", r.Width); err != nil {
		return 0, err
	}
	if err := units.PositiveFraction("required ratio of bottom to mouth", required); err != nil {
		return 0, err
	}
	if required == 1 {
		return 0, &units.ValueError{Field: "required ratio of bottom to mouth", Value: "1", Need: "less than 1",
			Err: units.ErrOutOfRange}
	}
	return r.reach(conductivity, slope)
}

func (r Recess) deep(depth float64) (units.Length, error) {
	r.Depth = units.Length(depth)
	if _, err := positive("depth of the recess", r.Depth); err != nil {
		return 0, err
	}
	if err := r.oneDimension(); err != nil {
		return 0, err
	}
	return r.Depth, nil
}

func (r Recess) check() error {
	if err := units.Positive("width of the recess", r.Width); err != nil {
		return err
	}
	return units.Positive("depth of the recess", r.Depth)
}

// oneDimension returns a [*units.RangeError] for a recess wider than deep.
func (r Recess) oneDimension() error {
	if r.Depth >= r.Width {
		return nil
	}
	return &units.RangeError{Field: "depth of the recess", Value: r.Depth.String(),
		Low: "its width, " + r.Width.String(), High: "any depth", Source: "Derived"}
}
