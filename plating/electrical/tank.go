package electrical

import (
	"math"

	"example.com/laydown/plating/sense"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// A HeatedTank is a mass of solution that is warmed and cools.
type HeatedTank struct {
	Mass         units.Mass   // of the solution; add the water's worth of tank and anodes if it matters
	SpecificHeat SpecificHeat // of the solution
	Loss         HeatLoss     // to the room for each kelvin; 0 means none
	Room         units.Temperature
}

// Check returns a [*units.ValueError] for the first field no tank can have.
func (t HeatedTank) Check() error {
	if err := units.Positive("mass of the solution", t.Mass); err != nil {
		return err
	}
	if err := units.Positive("specific heat", t.SpecificHeat); err != nil {
		return err
	}
	if err := units.NonNegative("heat loss", t.Loss); err != nil {
		return err
	}
	if err := units.Positive("temperature of the room", t.Room); err != nil {
		return err
	}
	if err := sense.Solution().CheckAs("temperature of the room", t.Room); err != nil {
		return err
	}
	return units.Positive("heat capacity", units.Energy(t.capacity())) // does not overflow either
}

func (t HeatedTank) capacity() float64 { return float64(t.Mass) * float64(t.SpecificHeat) }

// phi is (1 - exp(-x))/x: how much of the warming at the start is left over on
// the mean of a time x.
func phi(x float64) float64 {
	if x == 0 {
		return 1
	}
	return -math.Expm1(-x) / x
}

// After returns the temperature after a time of steady heat.
//
//	T = T₀ + (P - h·(T₀ - Ta))·t/C·(1 - e^-x)/x
//	x = h·t/C
//	C = m·c
//
//	T₀, Ta  start, Room   temperatures, > 0 [K]
//	P       heat          from heater and current; below zero a cooler [W]
//	h       Loss          ≥ 0 [W/K]
//	m, c    Mass, SpecificHeat
//	t       time          ≥ 0 [s]
//
// Exact for a loss in proportion to the difference and a bath that is stirred.
// An open warm tank loses more than in proportion, by evaporation: take h from
// near the temperature in question.
//
// Errors: those of [HeatedTank.Check]; a [*units.ValueError] for the other arguments
// and for a result that is not above absolute zero.
//
// Source: [OpenStaxCollegePhysics] (Q = m·c·ΔT), [Derived].
func (t HeatedTank) After(start units.Temperature, heat units.Power, time units.Duration) (units.Temperature, error) {
	if err := t.checkHeat(start, heat); err != nil {
		return 0, err
	}
	if err := units.NonNegative("time", time); err != nil {
		return 0, err
	}
	x := float64(t.Loss) * float64(time) / t.capacity()
	rise := (float64(heat) - float64(t.Loss)*float64(start-t.Room)) * float64(time) / t.capacity() * phi(x)
	end := start + units.Temperature(rise)
	if err := units.Positive("temperature afterwards", end); err != nil {
		return 0, err
	}
	return end, nil
}

func (t HeatedTank) checkHeat(start units.Temperature, heat units.Power) error {
	if err := t.Check(); err != nil {
		return err
	}
	if err := units.Positive("temperature at the start", start); err != nil {
		return err
	}
	return units.Finite("heat", heat)
}

// Steady returns the temperature at which the loss takes all the heat.
//
//	T = Ta + P/h
//
// with the letters of [HeatedTank.After]. Errors: those of [HeatedTank.Check]; a
// [*units.ValueError] for a tank without loss.
//
// Source: [Derived].
func (t HeatedTank) Steady(heat units.Power) (units.Temperature, error) {
	if err := t.checkHeat(t.Room, heat); err != nil {
		return 0, err
	}
	if err := units.Positive("heat loss", t.Loss); err != nil {
		return 0, err
	}
	end := t.Room + units.Temperature(float64(heat)/float64(t.Loss))
	if err := units.Positive("steady temperature", end); err != nil {
		return 0, err
	}
	return end, nil
}

// TimeTo returns how long steady heat takes from one temperature to another.
//
//	t = C/h·ln((P - h·(T₀ - Ta))/(P - h·(T - Ta)))
//
// with the letters of [HeatedTank.After]; without loss t = C·(T - T₀)/P.
//
// Errors: those of [HeatedTank.Check]; a [*units.ValueError] for a target that is
// never reached.
//
// Source: [Derived].
func (t HeatedTank) TimeTo(start, target units.Temperature, heat units.Power) (units.Duration, error) {
	if err := t.checkHeat(start, heat); err != nil {
		return 0, err
	}
	if err := units.Positive("target temperature", target); err != nil {
		return 0, err
	}
	if target == start {
		return 0, nil
	}
	h, c := float64(t.Loss), t.capacity()
	first := float64(heat) - h*float64(start-t.Room)
	last := float64(heat) - h*float64(target-t.Room)
	way := float64(target - start)
	if first*way <= 0 || last*way <= 0 { // it goes the other way, or stops before
		return 0, &units.ValueError{Field: "target temperature", Value: target.String(),
			Need: "one on the way of this heat: it starts with " + units.Power(first).String() +
				" over the loss and would have " + units.Power(last).String() + " left there", Err: units.ErrInconsistent}
	}
	// ln(first/last) with first = last + h·way, in a form that stays sound for small h.
	x := h * way / last
	mean := 1 / last
	if x != 0 {
		mean = math.Log1p(x) / (x * last)
	}
	return finite("time", units.Duration(c*way*mean))
}

// Hold returns the heater's power that keeps a temperature.
//
//	Ph = h·(T - Ta) - P
//
//	P  own  heat that comes anyway, from the current [W]
//
// with the letters of [HeatedTank.After]. Below zero it is cooling that the bath
// needs. Errors: those of [HeatedTank.Check]; a [*units.ValueError] for the arguments.
//
// Source: [Derived].
func (t HeatedTank) Hold(at units.Temperature, own units.Power) (units.Power, error) {
	if err := t.checkHeat(at, own); err != nil {
		return 0, err
	}
	return finite("power to hold", units.Power(float64(t.Loss)*float64(at-t.Room)-float64(own)))
}

// Reach returns the heater's power that brings the bath to a temperature in a
// given time.
//
//	Ph = h·(T₀ - Ta) + C·(T - T₀)/t·x/(1 - e^-x) - P
//
// with the letters of [HeatedTank.After] and [HeatedTank.Hold]. Below zero it is cooling.
// Errors: those of [HeatedTank.Check]; a [*units.ValueError] for the arguments.
//
// Source: [OpenStaxCollegePhysics] (Q = m·c·ΔT), [Derived].
func (t HeatedTank) Reach(start, target units.Temperature, time units.Duration, own units.Power) (units.Power, error) {
	if err := t.checkHeat(start, own); err != nil {
		return 0, err
	}
	if err := units.Positive("target temperature", target); err != nil {
		return 0, err
	}
	if err := units.Positive("time", time); err != nil {
		return 0, err
	}
	x := float64(t.Loss) * float64(time) / t.capacity()
	p := float64(t.Loss)*float64(start-t.Room) + t.capacity()*float64(target-start)/(float64(time)*phi(x)) - float64(own)
	return finite("power to reach", units.Power(p))
}

// LossFromCooling returns the heat loss of a tank from one cooling with the
// heater off. The Loss of t itself is not looked at.
//
//	h = C/t·ln((T₀ - Ta)/(T - Ta))
//
//	T₀, T  start, end  temperatures, Ta < T < T₀ [K]
//	t      time        > 0 [s]
//
// with the letters of [HeatedTank.After]. Measure near the temperature at work, covered
// or open as at work. Errors: those of [HeatedTank.Check]; a [*units.ValueError] for
// temperatures out of order.
//
// Source: [Derived].
func (t HeatedTank) LossFromCooling(start, end units.Temperature, time units.Duration) (HeatLoss, error) {
	t.Loss = 0
	if err := t.checkHeat(start, 0); err != nil {
		return 0, err
	}
	if err := units.Positive("temperature at the end", end); err != nil {
		return 0, err
	}
	if err := units.Positive("time", time); err != nil {
		return 0, err
	}
	if !(t.Room < end && end < start) {
		return 0, &units.ValueError{Field: "temperatures", Value: start.String() + " to " + end.String() +
			" in a room of " + t.Room.String(),
			Need: "a bath that cooled and is still warmer than the room", Err: units.ErrInconsistent}
	}
	return finite("heat loss", HeatLoss(t.capacity()/float64(time)*math.Log(float64(start-t.Room)/float64(end-t.Room))))
}

// HeaterWorking shows the calculations of [HeatedTank.Reach] and [HeatedTank.Hold].
//
// Errors: as there.
//
// Source: [OpenStaxCollegePhysics], [Derived].
func (t HeatedTank) HeaterWorking(start, target units.Temperature, time units.Duration,
	own units.Power) ([]working.Step,
	error) {
	reach, err := t.Reach(start, target, time, own)
	if err != nil {
		return nil, err
	}
	hold, err := t.Hold(target, own)
	if err != nil {
		return nil, err
	}
	c := working.Constant("C", "heat capacity", t.capacity(), "J/K")
	h, room := working.Of("h", "heat loss", t.Loss), working.Of("Ta", "temperature of the room", t.Room)
	own1, end := working.Of("P", "heat from the current", own), working.Of("T", "temperature to reach", target)
	begin, dt := working.Of("T₀", "temperature at the start", start), working.Of("t", "time", time)
	steps := []working.Step{{Formula: "C = m·c", Terms: []working.Term{working.Of("m", "mass of the solution", t.Mass),
		working.Of("c", "specific heat", t.SpecificHeat)},
		Result: c, Source: "OpenStaxCollegePhysics"}}
	share := working.Number("y", "share of the first warming that is left on the mean",
		phi(float64(t.Loss)*float64(time)/t.capacity()))
	if x := float64(t.Loss) * float64(time) / t.capacity(); x > 1e-3 {
		steps = append(steps,
			working.Step{Formula: "x = h·t/C", Terms: []working.Term{h, dt, c}, Result: working.Number("x",
				"time over the time constant of the tank", x), Source: "Derived"},
			working.Step{Formula: "y = (1 - exp(-x))/x", Terms: []working.Term{working.Number("x",
				"time over the time constant of the tank", x)}, Result: share, Source: "Derived"})
	}
	return append(steps,
		working.Step{Formula: "Pr = h·(T₀ - Ta) + C·(T - T₀)/(t·y) - P", Terms: []working.Term{h, begin, room, c, end, dt,
			share, own1},
			Result: working.Of("Pr", "heater to reach it", reach), Source: "Derived"},
		working.Step{Formula: "Ph = h·(T - Ta) - P", Terms: []working.Term{h, end, room, own1}, Result: working.Of("Ph",
			"heater to hold it", hold), Source: "Derived"}), nil
}
