package plating_test

import (
	"encoding/csv"
	"errors"
	"math"
	"os"
	"strings"
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// TestPropertyNamesGiveAway holds what names give away against the table of names.
func TestPropertyNamesGiveAway(t *testing.T) {
	f, err := os.Open("testdata/bathnames.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) < 150 {
		t.Errorf("only %d names", len(rows))
	}
	for _, row := range rows[1:] {
		var want plating.Hazard
		for _, w := range strings.FieldsFunc(row[1], func(r rune) bool { return r == '|' }) {
			h, err := plating.ParseHazard(strings.TrimSpace(w))
			if err != nil && strings.TrimSpace(w) != "" {
				t.Fatal(err)
			}
			want |= h
		}
		if got := plating.NamedHazards(row[0]); got != want {
			t.Errorf("%q: %s, want %s", row[0], got, want)
		}
	}
}

// TestIndependentMinThicknessAndTimeOnACurve finds the current density for a minimum thickness
// in a given time on a curve of efficiency by search: the smallest one at which
// enough metal is laid. Outside the points the end values hold, with a warning.
func TestIndependentMinThicknessAndTimeOnACurve(t *testing.T) {
	type point struct{ j, eff float64 }
	for name, points := range map[string][]point{
		"falling":  {{30, 0.40}, {60, 0.36}, {120, 0.28}},
		"rising":   {{10, 0.30}, {50, 0.70}, {90, 0.90}},
		"a hump":   {{20, 0.50}, {40, 0.90}, {100, 0.20}, {200, 0.15}},
		"straight": {{20, 0.50}, {40, 0.50}, {100, 0.50}},
	} {
		var list []plating.EfficiencyPoint
		for _, p := range points {
			list = append(list, plating.EfficiencyPoint{CurrentDensity: units.CurrentDensity(p.j),
				Efficiency: units.Efficiency(p.eff)})
		}
		curve, err := plating.NewEfficiencyCurve(list...)
		if err != nil {
			t.Fatal(err)
		}
		first, last := points[0], points[len(points)-1]
		efficiency := func(j float64) float64 {
			if j <= first.j {
				return first.eff
			}
			for i := 1; i < len(points); i++ {
				if p, q := points[i-1], points[i]; j <= q.j {
					return (p.eff*(q.j-j) + q.eff*(j-p.j)) / (q.j - p.j)
				}
			}
			return last.eff
		}
		for _, target := range []float64{1, 0.5 * first.j * first.eff, first.j * first.eff * 1.0001,
			12.5, 15, 19, 25, 29.9, 33,
			last.j * last.eff * 0.9999, last.j * last.eff * 1.5, 500} {
			// The smallest current density of those that lay enough, by a fine comb and then by halves.
			low, high := 0.0, 5000.0
			for j := 0.0; j < high; j += 0.05 {
				if j*efficiency(j) >= target {
					low, high = j-0.05, j
					break
				}
			}
			for range 60 {
				if mid := (low + high) / 2; mid*efficiency(mid) >= target {
					high = mid
				} else {
					low = mid
				}
			}
			l := hardGold(t)
			l.Bath.Efficiency, l.CurrentDensity, l.Time = curve, 0, 1000
			// The mean that a partial current density of target lays in the time.
			mean := target * float64(l.Time) * float64(l.Bath.Deposit.Equivalent) / float64(l.Bath.Deposit.Density)
			l.MinThickness = units.Length(mean * float64(l.Distribution.MinToAverage))
			r, err := plating.Estimate(&l)
			if err != nil {
				t.Errorf("%s, %g A/m²: %v", name, target, err)
				continue
			}
			if relative(float64(r.CurrentDensity), high) > 1e-6 || relative(float64(r.Efficiency),
				efficiency(high)) > 1e-6 {
				t.Errorf("%s, %g A/m² in metal: %g A/m² at %g, by search %g at %g", name, target,
					float64(r.CurrentDensity), float64(r.Efficiency), high, efficiency(high))
			}
			if held := high < first.j*(1-1e-9) || high > last.j*(1+1e-9); r.Warnings.Has(
				plating.WarnEfficiencyHeld) != held {
				t.Errorf("%s, %g A/m²: warning %v, want %v", name, target, r.Warnings.Has(plating.WarnEfficiencyHeld),
					held)
			}
		}
		// The ends are measured points themselves.
		for _, p := range points {
			if eff, within := curve.At(units.CurrentDensity(p.j)); !within || float64(eff) != p.eff {
				t.Errorf("%s at %v: %v, %v", name, p.j, eff, within)
			}
		}
	}
}

// TestPropertyEstimateRefusesWhatCheckRefuses: the quick look of Estimate lets
// nothing pass that Check finds, at and beyond each limit of sense.
func TestPropertyEstimateRefusesWhatCheckRefuses(t *testing.T) {
	const tiny, above = 1e-9, 1 + 1e-9
	numbers := func(set func(*plating.Layer, float64), most float64, zero bool) func(string) {
		return func(name string) {
			try := func(v float64, ok bool) {
				t.Helper()
				l := hardGold(t)
				set(&l, v)
				check := l.Check()
				_, err := plating.Estimate(&l)
				if (check == nil) != ok || (check != nil && (err == nil || err.Error() != check.Error())) {
					t.Errorf("%s %v: Check says %v, Estimate %v, want ok %v", name, v, check, err, ok)
				}
			}
			try(0, zero)
			try(-tiny, false)
			try(-1, false)
			try(math.NaN(), false)
			try(math.Inf(1), false)
			try(math.Inf(-1), false)
			if most > 0 {
				try(most, true)
				try(most*above, false)
				try(most*1.5, false)
				try(most*3, false)
			}
		}
	}
	type set = func(*plating.Layer, float64)
	for name, f := range map[string]func(string){
		"equivalent": numbers(func(l *plating.Layer, v float64) { l.Bath.Deposit.Equivalent = units.Equivalent(v) }, 0,
			false),
		"density": numbers(func(l *plating.Layer, v float64) { l.Bath.Deposit.Density = units.Density(v) },
			25000, false),
		"fine":       numbers(func(l *plating.Layer, v float64) { l.Bath.Fine = units.MassFraction(v) }, 1, true),
		"draw limit": numbers(func(l *plating.Layer, v float64) { l.Bath.DrawLimit = units.Ratio(v) }, 1, true),
		"area":       numbers(func(l *plating.Layer, v float64) { l.Area = units.Area(v) }, 1e6, false),
		"min_thickness": numbers(func(l *plating.Layer, v float64) {
			l.MinThickness, l.Time = units.Length(v), units.Minute
		}, 0.1, true),
		"current density": numbers(func(l *plating.Layer, v float64) { l.CurrentDensity = units.CurrentDensity(v) },
			1e6, false),
		"time": numbers(func(l *plating.Layer, v float64) { l.Time = units.Duration(v) },
			366*24*3600, true),
		"ratio": numbers(func(l *plating.Layer, v float64) { l.Distribution.MinToAverage = units.Ratio(v) }, 1, false),
		"uncertainty": numbers(func(l *plating.Layer, v float64) { l.Distribution.Uncertainty = units.Ratio(v) },
			0, true),
		"efficiency": numbers(func(l *plating.Layer, v float64) {
			l.Bath.Efficiency = plating.ConstantEfficiency(units.Efficiency(v))
		}, 1, false),
		"content": numbers(func(l *plating.Layer, v float64) { l.Bath.Content = units.MassConcentration(v) }, 0, true),
		"volume":  numbers(func(l *plating.Layer, v float64) { l.Bath.Volume = units.Volume(v) }, 0, true),
		"maximum thickness": numbers(func(l *plating.Layer, v float64) { l.Bath.MaxThickness = units.Length(v) },
			0, true),
		"bath temperature": numbers(func(l *plating.Layer, v float64) {
			l.Bath.Temperature = plating.TemperatureWindow{Set: units.Temperature(v)}
		}, 0, true),
		"low temperature": numbers(func(l *plating.Layer, v float64) { l.Bath.Temperature.Low = units.Temperature(v) },
			float64(units.Celsius(42)), true),
		"low amps": numbers(func(l *plating.Layer, v float64) { l.Bath.Window.Low = units.CurrentDensity(v) },
			120, true),
		"low volts": numbers(func(l *plating.Layer, v float64) { l.Bath.Volts.Low = units.Voltage(v) }, 3, true),
		"low pH": numbers(func(l *plating.Layer, v float64) { l.Bath.PH = plating.PHWindow{Low: plating.PH(v)} }, 16,
			true),
		"high pH": numbers(func(l *plating.Layer, v float64) { l.Bath.PH = plating.PHWindow{High: plating.PH(v)} }, 16,
			true),
		"low pH of two": numbers(func(l *plating.Layer, v float64) {
			l.Bath.PH = plating.PHWindow{Low: plating.PH(v),
				High: 5}
		},
			5, true),
	} {
		f(name)
	}
	for valence, ok := range map[int]bool{-1: false, 0: true, 1: true, 3: true, 8: true, 9: false} {
		l := hardGold(t)
		l.Bath.Valence = valence
		check := l.Check()
		if _, err := plating.Estimate(&l); (check == nil) != ok || (err == nil) != ok {
			t.Errorf("valence %d: %v, %v", valence, check, err)
		}
	}
	l := hardGold(t)
	l.Role = plating.RoleUnder
	if _, err := plating.Estimate(&l); err != nil {
		t.Errorf("underplate: %v", err)
	}
	if l.Role++; l.Check() == nil {
		t.Error("a role beyond the last is taken")
	}
	// With one of the three given, or none, nothing can be computed.
	for _, f := range []set{func(l *plating.Layer, _ float64) { l.MinThickness = 0 }, func(l *plating.Layer,
		_ float64) {
		l.CurrentDensity = 0
	}} {
		l := hardGold(t)
		f(&l, 0)
		if _, err := plating.Estimate(&l); err == nil {
			t.Error("one of three is enough")
		}
	}
	// A mean over a kilometre is a slip; so are products beyond float64.
	for ratio, ok := range map[units.Ratio]bool{1.01e-4: true, 0.99e-4: false} {
		l := hardGold(t)
		l.MinThickness, l.CurrentDensity, l.Time, l.Distribution.MinToAverage = 0.1, 1e6, 0, ratio
		if _, err := plating.Estimate(&l); (err == nil) != ok {
			t.Errorf("100 mm at a ratio of %v: %v", ratio, err)
		}
	}
}

// TestPropertyFlagsAtLimits: what is just within a limit has no flag, what is
// just beyond has it, and what is on it goes by the word of the comment.
func TestPropertyFlagsAtLimits(t *testing.T) {
	flag := func(name string, w plating.Warnings, want bool, change func(*plating.Layer)) {
		t.Helper()
		l := hardGold(t)
		l.Bath.Window, l.Bath.Content, l.Bath.MaxThickness = plating.CurrentDensityWindow{Low: 1, High: 1000}, 100, 1
		change(&l)
		r, err := plating.Estimate(&l)
		if err != nil {
			t.Errorf("%s: %v", name, err)
		} else if r.Warnings.Has(w) != want {
			t.Errorf("%s: %v, want %v", name, r.Warnings.Has(w), want)
		}
		found := false
		for _, n := range plating.Notes(&l, &r) {
			found = found || n.Text != ""
		}
		if want && !found {
			t.Errorf("%s: no note", name)
		}
	}
	type L = plating.Layer
	const less, more = 1 - 1e-9, 1 + 1e-9
	amps := func(low, high units.CurrentDensity) func(*L) {
		// plated at 50 A/m²
		return func(l *L) { l.Bath.Window = plating.CurrentDensityWindow{Low: low * 50, High: high * 50} }
	}
	flag("at the high end", plating.WarnDensityHigh, false, amps(0.1, 1))
	flag("above", plating.WarnDensityHigh, true, amps(0.1, less))
	flag("no high end", plating.WarnDensityHigh, false, amps(0.1, 0))
	flag("at the low end", plating.WarnDensityLow, false, amps(1, 2))
	flag("below", plating.WarnDensityLow, true, amps(more, 2))
	flag("no window", plating.WarnWindowUnknown, true, amps(0, 0))
	flag("a low end alone", plating.WarnWindowUnknown, false, amps(0.5, 0))
	mean := units.Length(1e-6 / 0.6)
	flag("as thick as it may be", plating.WarnTooThick, false, func(l *L) { l.Bath.MaxThickness = mean })
	flag("thicker", plating.WarnTooThick, true, func(l *L) { l.Bath.MaxThickness = mean * less })
	flag("no limit", plating.WarnTooThick, false, func(l *L) { l.Bath.MaxThickness = 0 })
	l := hardGold(t)
	r, err := plating.Estimate(&l)
	if err != nil {
		t.Fatal(err)
	}
	flag("the minimum thickness met", plating.WarnMinThicknessMissed, false,
		func(l *L) { l.Time = r.Time * (1 + 1e-15) })
	flag("the minimum thickness missed", plating.WarnMinThicknessMissed, true, func(l *L) { l.Time = r.Time * less })
	flag("as uneven as half", plating.WarnUneven, false, func(l *L) { l.Distribution.MinToAverage = 0.5 })
	flag("more uneven", plating.WarnUneven, true, func(l *L) { l.Distribution.MinToAverage = 0.5 * less })
	flag("uneven without a minimum thickness", plating.WarnUneven, false, func(l *L) {
		l.Distribution.MinToAverage, l.MinThickness,
			l.Time = 0.3, 0, 60
	})
	flag("known to 5 %", plating.WarnRatioUnsure, true, func(l *L) { l.Distribution.Uncertainty = 0.05 })
	flag("known better", plating.WarnRatioUnsure, false, func(l *L) { l.Distribution.Uncertainty = 0.05 * less })
	flag("without a minimum thickness", plating.WarnRatioUnsure, false, func(l *L) {
		l.Distribution.Uncertainty, l.MinThickness,
			l.Time = 0.1, 0, 60
	})
	flag("10 s", plating.WarnTimeShort, false, func(l *L) { l.MinThickness, l.Time = 0, 10 })
	flag("less", plating.WarnTimeShort, true, func(l *L) { l.MinThickness, l.Time = 0, 10*less })
	heat := func(low, set, high float64) func(*L) {
		return func(l *L) {
			l.Bath.Temperature = plating.TemperatureWindow{Low: units.Temperature(low), Set: units.Temperature(set),
				High: units.Temperature(high)}
		}
	}
	flag("as cold as it may be", plating.WarnTemperatureLow, false, heat(300, 300, 310))
	flag("colder", plating.WarnTemperatureLow, true, heat(300, 299.9, 310))
	flag("colder than a low end alone", plating.WarnTemperatureLow, true, heat(300, 299.9, 0))
	flag("not set", plating.WarnTemperatureLow, false, heat(300, 0, 310))
	flag("as hot as it may be", plating.WarnTemperatureHigh, false, heat(300, 310, 310))
	flag("hotter", plating.WarnTemperatureHigh, true, heat(300, 310.1, 310))
	flag("no high end of heat", plating.WarnTemperatureHigh, false, heat(300, 310.1, 0))
	flag("half of the current", plating.WarnGas, false,
		func(l *L) { l.Bath.Efficiency = plating.ConstantEfficiency(0.5) })
	flag("less than half", plating.WarnGas, true,
		func(l *L) { l.Bath.Efficiency = plating.ConstantEfficiency(0.5 * less) })
	drawn := func(limit, factor float64) func(*L) {
		return func(l *L) { // a bath of one litre of which the load takes factor times the limit
			l.Bath.Fine, l.Bath.DrawLimit, l.Bath.Volume = 1, units.Ratio(limit), units.Litre
			l.Bath.Content = units.MassConcentration(float64(r.Mass) / 0.001 / (limit * factor))
		}
	}
	flag("less drawn than the limit", plating.WarnBathDrawn, false, drawn(0.25, less))
	flag("more drawn than the limit", plating.WarnBathDrawn, true, drawn(0.25, more))
	flag("not all drawn", plating.WarnBathEmpty, false, drawn(1, less))
	flag("more than all drawn", plating.WarnBathEmpty, true, drawn(1, more))
	flag("no content", plating.WarnMetalUnknown, true, func(l *L) { l.Bath.Content = 0 })
	flag("no volume", plating.WarnMetalUnknown, true, func(l *L) { l.Bath.Volume = 0 })
}

// TestPropertyErrorsLeaveNoFigure: a figure never comes with an error, except
// beside a *units.RangeError, and is finite; no argument makes a panic.
func TestPropertyErrorsLeaveNoFigure(t *testing.T) {
	beside := func(err error) bool {
		var r *units.RangeError
		return errors.As(err, &r)
	}
	estimate := func(l plating.Layer) (plating.LayerEstimate, error) { return plating.Estimate(&l) }
	gold, err := faraday.NewDeposit("Au", 1)
	if err != nil {
		t.Fatal(err)
	}
	parts := []plating.Item{{Name: "hand", Count: 3, Area: 0.001}, {Name: "case", Count: 1, Area: 0.02}}
	for _, c := range []struct {
		name string
		fn   any
		args []any
	}{
		{"Estimate", estimate, []any{hardGold(t)}},
		{"EstimateSystem", plating.EstimateSystem,
			[]any{plating.System{Parts: parts, Layers: []plating.Layer{hardGold(t)}}}},
		{"LoadArea", plating.LoadArea, []any{parts}},
		{"Spread", plating.Spread, []any{parts}},
		{"Trial", plating.Trial.Efficiency, []any{plating.Trial{Before: 0.01, After: 0.01011, Current: 1, Time: 60,
			Resolution: 1e-7}, gold}},
		{"NewEfficiencyCurve", plating.NewEfficiencyCurve, []any{[]plating.EfficiencyPoint{{CurrentDensity: 10,
			Efficiency: 0.5},
			{CurrentDensity: 20, Efficiency: 0.4}}}},
	} {
		if testdata.WrongCalls(t, beside, c.name, c.fn, c.args...) == 0 {
			t.Errorf("%s refuses nothing", c.name)
		}
	}
	for _, count := range []int{0, 1, 1_000_000_000, 1_000_000_001} {
		_, err := plating.LoadArea(plating.Item{Count: count, Area: 1e-6})
		if ok := count > 0 && count <= 1_000_000_000; (err == nil) != ok {
			t.Errorf("%d parts: %v", count, err)
		}
	}
	if a, err := plating.LoadArea(); err == nil || a != 0 {
		t.Errorf("no parts: %v, %v", a, err)
	}
	if k, err := plating.Spread(); err == nil || k != 0 {
		t.Errorf("no parts: %v, %v", k, err)
	}
}
