package faraday_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/integrate"

	"example.com/laydown/faraday"
	"example.com/laydown/units"
)

// By hand. 0 to 2 A in 10 s: 10 C. 2 A for 5 s: 10 C. 2 to -1 A in 6 s: zero
// after 4 s, 4 C one way and 1 C the other. -1 A for 3 s: 3 C. -1 to 0 A in
// 2 s: 1 C. Together 24 C and 5 C in 26 s.
func TestIndependentIntegrateLog(t *testing.T) {
	log, err := faraday.IntegrateLog([]faraday.CurrentReading{{100, 0}, {110, 2}, {115, 2}, {121, -1}, {124, -1}, {126, 0}}, 0)
	if err != nil {
		t.Fatal(err)
	}
	chemNear(t, "deposited", float64(log.Deposited), 24, 1e-14)
	chemNear(t, "stripped", float64(log.Stripped), 5, 1e-14)
	chemNear(t, "time", float64(log.Time), 26, 1e-15)
	chemNear(t, "mean", float64(log.Mean), 19.0/26, 1e-14)
	if log.Gaps != nil {
		t.Errorf("gaps %v without a limit", log.Gaps)
	}
	// Steps of 10, 5, 6, 3, 2 s against 5 s.
	log, err = faraday.IntegrateLog([]faraday.CurrentReading{{100, 0}, {110, 2}, {115, 2}, {121, -1}, {124, -1}, {126, 0}}, 5)
	if err != nil {
		t.Fatal(err)
	}
	if len(log.Gaps) != 2 || log.Gaps[0] != (faraday.Gap{From: 100, To: 110, Charge: 10}) ||
		log.Gaps[1] != (faraday.Gap{From: 115, To: 121, Charge: 3}) {
		t.Errorf("gaps %+v", log.Gaps)
	}
	chemNear(t, "in gaps", float64(log.InGaps()), 13, 1e-14)
	chemNear(t, "deposited, gaps in it", float64(log.Deposited), 24, 1e-14)
}

// A log of the ramp 12.0 + 0.2·t has 280 A·min, however it is sampled.
func TestIndependentLogOfRamp(t *testing.T) {
	for _, minutes := range [][]float64{{0, 20}, {0, 1, 7.5, 20}, {0, 0.1, 0.2, 3, 19.99, 20}} {
		var samples []faraday.CurrentReading
		for _, m := range minutes {
			samples = append(samples, faraday.CurrentReading{At: units.Duration(m) * units.Minute, Current: units.Current(12 + 0.2*m)})
		}
		log, err := faraday.IntegrateLog(samples, 0)
		if err != nil {
			t.Fatal(err)
		}
		chemNear(t, "charge", log.Net().In(units.AmpereMinute), 280, 1e-13)
		chemNear(t, "mean", float64(log.Mean), 14, 1e-13)
	}
}

func TestPropertyIntegrateLog(t *testing.T) {
	// A swinging current at uneven times: the parts add up to what the trapezium
	// rule gives for the whole, and turning the sign round exchanges them.
	var samples, turned []faraday.CurrentReading
	var x, y []float64
	at := -3.0
	for k := range 400 {
		at += 0.05 + 0.04*math.Sin(float64(k))
		i := 2*math.Sin(1.7*at) + 0.3
		samples = append(samples, faraday.CurrentReading{At: units.Duration(at), Current: units.Current(i)})
		turned = append(turned, faraday.CurrentReading{At: units.Duration(at), Current: units.Current(-i)})
		x, y = append(x, at), append(y, i)
	}
	a, err := faraday.IntegrateLog(samples, 0)
	if err != nil {
		t.Fatal(err)
	}
	b, err := faraday.IntegrateLog(turned, 0)
	if err != nil {
		t.Fatal(err)
	}
	chemNear(t, "net", float64(a.Net()), integrate.Trapezoidal(x, y), 1e-12)
	if a.Deposited != b.Stripped || a.Stripped != b.Deposited {
		t.Errorf("turned round %+v becomes %+v", a.SplitCharge, b.SplitCharge)
	}
	// A sample more on a straight line changes nothing.
	var finer []faraday.CurrentReading
	for k, s := range samples {
		if k > 0 {
			before := samples[k-1]
			finer = append(finer, faraday.CurrentReading{At: before.At + (s.At-before.At)/4, Current: before.Current +
				(s.Current-before.Current)/4})
		}
		finer = append(finer, s)
	}
	c, err := faraday.IntegrateLog(finer, 0)
	if err != nil {
		t.Fatal(err)
	}
	chemNear(t, "deposited, finer", c.Deposited, a.Deposited, 1e-12)
	chemNear(t, "stripped, finer", c.Stripped, a.Stripped, 1e-12)
	// A cosine's charge up and down over a period is 2·amplitude/ω each.
	samples = samples[:0]
	for k := range 100001 {
		phase := 2 * math.Pi * float64(k) / 100000
		samples = append(samples, faraday.CurrentReading{At: units.Duration(phase), Current: units.Current(math.Cos(phase))})
	}
	if c, err = faraday.IntegrateLog(samples, 0); err != nil {
		t.Fatal(err)
	}
	chemNear(t, "cosine up", float64(c.Deposited), 2, 1e-8)
	chemNear(t, "cosine down", float64(c.Stripped), 2, 1e-8)
}

// Steps of a tenth of a second are no gaps at a limit of a tenth, though their
// differences round to either side; not with a clock since 1970 either.
func TestPropertyGapRounding(t *testing.T) {
	for _, start := range []float64{0, 1.7e9} {
		var samples []faraday.CurrentReading
		for k := range 1000 {
			samples = append(samples, faraday.CurrentReading{At: units.Duration(start + float64(k)/10), Current: 1})
		}
		log, err := faraday.IntegrateLog(samples, 0.1)
		if err != nil {
			t.Fatal(err)
		}
		if len(log.Gaps) != 0 {
			t.Errorf("start %v: %d gaps, the first %+v", start, len(log.Gaps), log.Gaps[0])
		}
		if log, err = faraday.IntegrateLog(samples, 0.0999); err != nil || len(log.Gaps) != 999 {
			t.Errorf("start %v: %d gaps, %v; want 999", start, len(log.Gaps), err)
		}
	}
}

func TestIntegrateLogErrors(t *testing.T) {
	good := []faraday.CurrentReading{{0, 1}, {1, -1}, {2, 1}}
	for _, c := range []struct {
		what    string
		samples []faraday.CurrentReading
		gap     units.Duration
		err     error
	}{
		{"none", nil, 0, units.ErrOutOfRange},
		{"one", good[:1], 0, units.ErrOutOfRange},
		{"twice the same time", []faraday.CurrentReading{{0, 1}, {1, 1}, {1, 2}}, 0, units.ErrInconsistent},
		{"back in time", []faraday.CurrentReading{{5000, 1}, {4999.75, 1}}, 0, units.ErrInconsistent},
		{"negative gap", good, -1, units.ErrNegative},
		{"NaN gap", good, units.Duration(math.NaN()), units.ErrNotFinite},
		{"overflow", []faraday.CurrentReading{{0, 1e300}, {1e300, 1e300}}, 0, units.ErrNotFinite},
		{"time overflow at a crossing", []faraday.CurrentReading{{-1.7e308, 5e-324}, {1.7e308, -1e10}}, 0, units.ErrNotFinite},
		{"time overflow", []faraday.CurrentReading{{-1.7e308, 1}, {1.7e308, -1}}, 0, units.ErrNotFinite},
	} {
		log, err := faraday.IntegrateLog(c.samples, c.gap)
		if !errors.Is(err, c.err) || log.Time != 0 {
			t.Errorf("%s: %+v, %v; want %v", c.what, log, err, c.err)
		}
		chemTyped(t, c.what, 0, err)
	}
	if _, err := faraday.IntegrateLog([]faraday.CurrentReading{{5000, 1}, {4999.75, 1}}, 0); err == nil ||
		!strings.Contains(err.Error(), "4999.75") {
		t.Errorf("the error hides the fraction of a second: %v", err)
	}
	for k := range good {
		chemSweep(2, func(v []float64) {
			samples := append([]faraday.CurrentReading(nil), good...)
			samples[k] = faraday.CurrentReading{At: units.Duration(v[0]), Current: units.Current(v[1])}
			for _, gap := range chemBad {
				log, err := faraday.IntegrateLog(samples, units.Duration(gap))
				chemTyped(t, "IntegrateLog charge", float64(log.Gross()), err)
				chemTyped(t, "IntegrateLog mean", float64(log.Mean), err)
				if err == nil {
					chemTyped(t, "InGaps", float64(log.InGaps()), nil)
				}
			}
		})
	}
	// Two tiny currents of opposite signs.
	if log, err := faraday.IntegrateLog([]faraday.CurrentReading{{0, 5e-324}, {1e6, -5e-324}}, 0); err != nil || log.Time != 1e6 {
		t.Errorf("%+v, %v", log, err)
	}
}
