package sequence_test

import (
	"math"
	"strings"
	"testing"

	"example.com/laydown/plating/sequence"
	"example.com/laydown/testdata"
)

// TestReferenceSteps: the printed figures of preparation and bake stand in the
// plans, with their keys.
func TestReferenceSteps(t *testing.T) {
	rows := 0
	for _, file := range []string{"guidebook2013.csv"} {
		table, err := testdata.Read(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, row := range table.Rows {
			rows++
			base, err := sequence.ParseSubstrate(row.Text("bath"))
			if err != nil {
				t.Fatal(err)
			}
			tanks := plan(t, piece(base, hard))
			check := row.Text("check")
			high := strings.HasSuffix(check, "_high")
			end := func(low, up float64) float64 {
				if high {
					return up
				}
				return low
			}
			done := false
			for _, k := range tanks {
				p := k.Process
				var v float64
				var key string
				switch {
				case strings.HasPrefix(check, "activation_current") && k.Kind == sequence.Activate:
					v, key = end(float64(p.CurrentDensity.Low), float64(p.CurrentDensity.High))*0.3048*0.3048,
						p.CurrentDensity.Source
				case strings.HasPrefix(check, "activation_time") && k.Kind == sequence.Activate,
					strings.HasPrefix(check, "electroclean_time") && k.Kind == sequence.Electroclean:
					v, key = end(float64(p.Time.Low), float64(p.Time.High))/60, p.Time.Source
				default:
					continue
				}
				done = true
				if err := row.Check(v); err != nil {
					t.Error(err)
				}
				if key != table.Header["key"] {
					t.Errorf("%s: source %q", row.Name(), key)
				}
			}
			if !done {
				t.Errorf("%s: nothing to compare", row.Name())
			}
		}
	}
	if rows != 6 {
		t.Errorf("%d rows", rows)
	}
}

// TestIndependentCard: amps, anode area and minutes of one card by hand:
// 2.5 µm of silver on 124 cm², thinnest to average 0.6, at the middle of
// 0.5 to 4 A/dm², efficiency 98 to 100 %, density 10.5 g/cm³.
func TestIndependentCard(t *testing.T) {
	p := piece(brass, silver)
	p.MinThickness = 2.5 * um
	tanks := plan(t, p)
	cards, err := sequence.Cards(tanks, p)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range cards {
		if c.Kind != sequence.Plate {
			continue
		}
		near(t, "amps", float64(c.Amps), 2.25*1.24)
		near(t, "least amps", float64(c.AmpsLow), 0.5*1.24)
		near(t, "most amps", float64(c.AmpsTop), 4*1.24)
		near(t, "anode", float64(c.AnodeHigh), 2*0.0124)
		seconds := func(eff float64) float64 {
			return 10500 * (2.5e-6 / 0.6) * 96485.33212331 / (0.1078682 * eff * 225)
		}
		near(t, "least time", float64(c.Time.Low), seconds(1))
		near(t, "most time", float64(c.Time.High), seconds(0.98))
		near(t, "time", float64(c.Time.Typical), seconds(0.99))
		if c.TimeBy != "min_thickness" || !strings.Contains(c.Text(),
			"computed from the minimum thickness (from memory)") {
			t.Errorf("%s", c.Text())
		}
	}
	// Nickel etch: 15 to 25 A/ft² on 124 cm².
	p = piece(sequence.Nickel, hard)
	if cards, err = sequence.Cards(plan(t, p), p); err != nil {
		t.Fatal(err)
	}
	for _, c := range cards {
		if c.Kind == sequence.Activate {
			near(t, "etch", float64(c.Amps), 20*0.0124/(0.3048*0.3048))
		}
	}
}

func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-8*math.Abs(want)) {
		t.Errorf("%s: %.12g, want %.12g", what, got, want)
	}
}
