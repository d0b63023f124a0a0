package faraday_test

import (
	"errors"
	"math"
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/units"
)

// 12.0 A rising by 0.2 A a minute for 20 min, by hand: from 12 to 16 A, 14 A on
// the mean, 280 A·min; the integral of 12 + 0.2·t gives 240 + 40.
func TestIndependentRamp(t *testing.T) {
	r := faraday.Ramp{From: 12, To: 16, Time: 20 * units.Minute}
	q, err := r.Charge()
	if err != nil {
		t.Fatal(err)
	}
	chemNear(t, "charge", q.In(units.AmpereMinute), 280, 1e-14)
	mean, err := r.Mean()
	if err != nil || mean != 14 {
		t.Errorf("mean %v, %v; want 14 A", mean, err)
	}
	for _, p := range []faraday.Ramp{{From: 0, To: 0, Time: 1}, {From: 0, To: 4, Time: 60}, {From: 4, To: 0, Time: 60},
		{From: math.MaxFloat64, To: math.MaxFloat64, Time: 1}} {
		q, err := p.Charge()
		if err != nil {
			t.Errorf("%+v: %v", p, err)
		}
		chemNear(t, "charge", float64(q), (float64(p.From)/2+float64(p.To)/2)*float64(p.Time), 1e-15)
	}
}

// By hand: 5 A for 10 ms, 1 A for 40 ms. A period is 50 + 40 mC; in 125 ms two
// of them, then 10 ms at 5 A and 15 ms at 1 A: 180 + 50 + 15 = 245 mC. The mean
// is 90 mC/50 ms = 1.8 A, the duty 0.2.
func TestIndependentPulse(t *testing.T) {
	p := faraday.Pulse{Peak: 5, Base: 1, On: 10 * units.Millisecond, Off: 40 * units.Millisecond}
	for _, c := range []struct{ ms, mC float64 }{
		{0, 0}, {4, 20}, {10, 50}, {30, 70}, {50, 90}, {55, 115}, {125, 245}, {1000, 1800}, {3600e3, 6480e3}, {3600e3 + 5,
			6480e3 + 25},
	} {
		q, err := p.Charge(units.Duration(c.ms) * units.Millisecond)
		if err != nil {
			t.Fatal(err)
		}
		chemNear(t, "charge", float64(q)*1000, c.mC, 1e-12)
	}
	mean, err := p.Mean()
	if err != nil {
		t.Fatal(err)
	}
	chemNear(t, "mean", float64(mean), 1.8, 1e-14)
	duty, err := p.Duty()
	if err != nil {
		t.Fatal(err)
	}
	chemNear(t, "duty", float64(duty), 0.2, 1e-14)
	chemNear(t, "period", float64(p.Period()), 0.05, 1e-15)
}

func TestPropertyPulse(t *testing.T) {
	// Without off time, or with the base as high as the peak, it is steady.
	for _, p := range []faraday.Pulse{{Peak: 3, On: 0.02}, {Peak: 3, Base: 3, On: 0.02, Off: 0.08}} {
		q, err := p.Charge(600)
		if err != nil {
			t.Fatal(err)
		}
		chemNear(t, "charge", float64(q), 1800, 1e-12)
		mean, err := p.Mean()
		if err != nil {
			t.Fatal(err)
		}
		chemNear(t, "mean", float64(mean), 3, 1e-15)
	}
	// The charge never falls with time, has no jumps, and after many periods is
	// the mean times the time; tenths have no exact binary period.
	p := faraday.Pulse{Peak: 2, Base: 0.5, On: 0.1, Off: 0.2}
	mean, _ := p.Mean()
	last := 0.0
	for k := range 5000 {
		total := units.Duration(k) * 0.01
		q, err := p.Charge(total)
		if err != nil {
			t.Fatal(err)
		}
		if step := float64(q) - last; k > 0 && (step < 0.005*(1-1e-6) || step > 0.02*(1+1e-6)) {
			t.Fatalf("from %v s the charge steps by %v", float64(total), step)
		}
		last = float64(q)
	}
	q, _ := p.Charge(3e6)
	chemNear(t, "ten million periods", float64(q), 3e6*float64(mean), 1e-12)
}

// By hand: 2 A for 8 s, 1 A back for 3 s. A cycle has 16 C and 3 C, net 13 C in
// 11 s. In 30 s two cycles, then 8 s forward: 48 C and 6 C; in 32.5 s half a
// second back as well.
func TestIndependentReverse(t *testing.T) {
	r := faraday.Reverse{Forward: 2, ForwardTime: 8, Backward: 1, BackwardTime: 3}
	for _, c := range []struct{ total, up, down float64 }{
		{0, 0, 0}, {5, 10, 0}, {8, 16, 0}, {9.5, 16, 1.5}, {11, 16, 3}, {30, 48, 6}, {30.5, 48, 6.5}, {33, 48, 9}, {11e5,
			16e5, 3e5},
	} {
		q, err := r.Charge(units.Duration(c.total))
		if err != nil {
			t.Fatal(err)
		}
		chemNear(t, "deposited", float64(q.Deposited), c.up, 1e-14)
		chemNear(t, "stripped", float64(q.Stripped), c.down, 1e-14)
		chemNear(t, "net", float64(q.Net()), c.up-c.down, 1e-14)
		chemNear(t, "gross", float64(q.Gross()), c.up+c.down, 1e-14)
	}
	mean, err := r.Mean()
	if err != nil {
		t.Fatal(err)
	}
	chemNear(t, "mean", float64(mean), 13.0/11, 1e-14)
	for _, bad := range []faraday.Reverse{
		{Forward: 1, ForwardTime: 3, Backward: 1, BackwardTime: 3},
		{Forward: 1, ForwardTime: 3, Backward: 4, BackwardTime: 1},
	} {
		if _, err := bad.Charge(1); !errors.Is(err, units.ErrInconsistent) {
			t.Errorf("%+v plates nothing: %v", bad, err)
		}
	}
}

// By hand: 3 A for 10 s, a pause of 5 s, 2 A back for 4 s, 1 A for 6 s.
func TestIndependentSequence(t *testing.T) {
	s := faraday.Sequence{{3, 10}, {0, 5}, {-2, 4}, {1, 6}}
	q, err := s.Charge()
	if err != nil || q != (faraday.SplitCharge{Deposited: 36, Stripped: 8}) {
		t.Errorf("%+v, %v; want 36 C and 8 C", q, err)
	}
	total, err := s.Time()
	if err != nil || total != 25 {
		t.Errorf("%v, %v; want 25 s", total, err)
	}
	mean, err := s.Mean()
	if err != nil {
		t.Fatal(err)
	}
	chemNear(t, "mean", float64(mean), 28.0/25, 1e-15)
	// A reverse current and its cycles laid out one by one agree.
	r := faraday.Reverse{Forward: 2.3, ForwardTime: 7, Backward: 0.9, BackwardTime: 2}
	var cycles faraday.Sequence
	for range 5 {
		cycles = append(cycles, faraday.Segment{Current: 2.3, Time: 7}, faraday.Segment{Current: -0.9, Time: 2})
	}
	a, err := r.Charge(45)
	if err != nil {
		t.Fatal(err)
	}
	b, err := cycles.Charge()
	if err != nil {
		t.Fatal(err)
	}
	chemNear(t, "deposited", a.Deposited, b.Deposited, 1e-14)
	chemNear(t, "stripped", a.Stripped, b.Stripped, 1e-14)
	m, _ := cycles.Mean()
	n, _ := r.Mean()
	chemNear(t, "mean", m, n, 1e-14)
}

func TestProfileErrors(t *testing.T) {
	chemSweep(3, func(v []float64) {
		ramp := faraday.Ramp{From: units.Current(v[0]), To: units.Current(v[1]), Time: units.Duration(v[2])}
		q, err := ramp.Charge()
		chemTyped(t, "Ramp.Charge", float64(q), err)
		i, err := ramp.Mean()
		chemTyped(t, "Ramp.Mean", float64(i), err)
		if err == nil && (v[0] < 0 || v[1] < 0 || !(v[2] > 0)) {
			t.Errorf("%+v passes", ramp)
		}
		for _, d := range []float64{0, 0.04, math.Inf(1), math.NaN(), -1, 1e300} {
			p := faraday.Pulse{Peak: units.Current(v[0]), Base: units.Current(d), On: units.Duration(v[1]),
				Off: units.Duration(v[2])}
			checkPulse(t, p)
			p.Base, p.Off = p.Peak/2, units.Duration(d)
			checkPulse(t, p)
			r := faraday.Reverse{Forward: units.Current(v[0]), ForwardTime: units.Duration(v[1]), Backward: units.Current(v[2]),
				BackwardTime: units.Duration(d)}
			chemTyped(t, "Reverse.Check", 0, r.Check())
			i, err := r.Mean()
			chemTyped(t, "Reverse.Mean", float64(i), err)
			if err == nil && i < 0 {
				t.Errorf("%+v: mean %v", r, i)
			}
			for _, total := range chemBad {
				q, err := r.Charge(units.Duration(total))
				chemTyped(t, "Reverse.Charge", float64(q.Gross()), err)
				if err == nil && !(total >= 0) {
					t.Errorf("%v seconds pass", total)
				}
			}
		}
		s := faraday.Sequence{{1, 1}, {units.Current(v[0]), units.Duration(v[1])}, {units.Current(v[2]), 1}}
		c, err := s.Charge()
		chemTyped(t, "Sequence.Charge", float64(c.Gross()), err)
		i, err = s.Mean()
		chemTyped(t, "Sequence.Mean", float64(i), err)
		d, err := s.Time()
		chemTyped(t, "Sequence.Time", float64(d), err)
	})
	for _, err := range []error{
		second(faraday.Sequence{}.Charge()), second(faraday.Sequence(nil).Mean()), second(faraday.Sequence{}.Time()),
		faraday.Pulse{}.Check(), faraday.Reverse{}.Check(), second(faraday.Ramp{}.Mean()),
	} {
		if err == nil {
			t.Error("an empty profile passes")
		}
		chemTyped(t, "empty", 0, err)
	}
	p := faraday.Pulse{Peak: 1, Base: 2, On: 1, Off: 1}
	if err := p.Check(); !errors.Is(err, units.ErrInconsistent) {
		t.Errorf("base over peak: %v", err)
	}
}

func checkPulse(t *testing.T, p faraday.Pulse) {
	t.Helper()
	chemTyped(t, "Pulse.Check", 0, p.Check())
	duty, err := p.Duty()
	chemTyped(t, "Pulse.Duty", float64(duty), err)
	if err == nil && !(duty >= 0 && duty <= 1) {
		t.Errorf("%+v: duty %v", p, duty)
	}
	i, err := p.Mean()
	chemTyped(t, "Pulse.Mean", float64(i), err)
	if err == nil && (float64(i) < float64(p.Base)*(1-1e-15) || float64(i) > float64(p.Peak)*(1+1e-15)) {
		t.Errorf("%+v: mean %v", p, i)
	}
	for _, total := range chemBad {
		q, err := p.Charge(units.Duration(total))
		chemTyped(t, "Pulse.Charge", float64(q), err)
	}
}
