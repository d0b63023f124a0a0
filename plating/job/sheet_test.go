package job_test

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"example.com/laydown/alloys"
	"example.com/laydown/plating"
	"example.com/laydown/plating/bath"
	"example.com/laydown/plating/job"
	"example.com/laydown/plating/price"
	"example.com/laydown/plating/rinse"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// shipped reads one of the jobs of the clock workshop.
func shipped(t *testing.T, name string) job.Job {
	t.Helper()
	f, err := testdata.Files.Open("jobs/" + name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	j, err := job.Read(f, nil)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

func made(t *testing.T, j job.Job) job.Sheet {
	t.Helper()
	s, err := j.Sheet()
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol*math.Abs(want)) {
		t.Errorf("%s: %g, want %g", what, got, want)
	}
}

// planned is a job of one finish on one base metal.
func planned(s sequence.Substrate, f sequence.Finish) job.Job {
	return job.Job{Name: "finial", Substrate: s.String(), Finish: f, MinThickness: 0.4 * units.Micrometre,
		Evenness: job.Evenness{MinToAverage: 0.5, Basis: "given"},
		Parts: []job.Part{{Name: "finial", Count: 3, Area: 30 * units.SquareCentimetre,
			Masked: 2 * units.SquareCentimetre}}}
}

// TestPropertyEveryPlan: each base metal with each finish gives a sheet that
// hangs together, or a refusal with its reason.
func TestPropertyEveryPlan(t *testing.T) {
	testdata.SlowOnly(t)
	sheets := 0
	for _, base := range sequence.Substrates() {
		for _, f := range sequence.Finishes() {
			for flags := range 4 {
				j := planned(base, f)
				j.SkinContact, j.HighStrength = flags&1 != 0, flags&2 != 0
				s, err := j.Sheet()
				var refused *sequence.RefusedError
				var unsure *sequence.UnsureError
				if errors.As(err, &refused) || errors.As(err, &unsure) {
					continue
				}
				if err != nil {
					t.Errorf("%s, %s: %v", base, f, err)
					continue
				}
				sheets++
				name := fmt.Sprintf("%s to %s", base, f)
				if s.Forbidden() {
					t.Errorf("%s: stop %q", name, s.Reasons())
				}
				next := 0
				for i := range s.Stops {
					coat, c := s.Stops[i].Coat, &s.Stops[i].Tank
					if c.Number != i+1 {
						t.Errorf("%s: tank %d is called %d", name, i+1, c.Number)
					}
					if coat == nil {
						continue
					}
					next++
					r, p := &coat.Result, &coat.Spread
					near(t, name+": amps of the card", float64(c.Amps), float64(r.CurrentDensity)*float64(s.Area), 1e-12)
					if !(p.Time.Low <= r.Time && r.Time <= p.Time.High && p.Thinnest.Low <= r.Thinnest*(1+1e-12) &&
						r.Thinnest <= p.Thinnest.High*(1+1e-12)) {
						t.Errorf("%s: the estimate lies outside its spread: %v, %v", name, p.Time, p.Thinnest)
					}
				}
				if next != len(s.Coats()) || next == 0 {
					t.Errorf("%s: %d of %d coats have a tank", name, next, len(s.Coats()))
				}
				if !(0 < s.Line.Low && s.Line.Low <= s.Line.Typical && s.Line.Typical <= s.Line.High) {
					t.Errorf("%s: time at the line %v", name, s.Line)
				}
				last := s.Coats()[next-1].Result
				near(t, name+": thinnest spot of the finish", float64(last.Thinnest), 0.4e-6, 1e-9)
			}
		}
	}
	if sheets < 300 {
		t.Errorf("%d sheets only", sheets)
	}
}

// TestPropertyEveryLibraryBath: each bath of the library can be named in a job
// file, with its minimum thickness or, for a strike, nothing but its name.
func TestPropertyEveryLibraryBath(t *testing.T) {
	for _, b := range bath.Library() {
		what := `"min_thickness": "0.2 µm"`
		if b.Time.Given() {
			what = `"role": "strike"`
		}
		text := fmt.Sprintf(`{"format": "laydown job 1", "parts": [{"area": "50 cm²"}], "layers": [
			{"bath": {"library": %q, "volume": "4 L"}, "min_to_average": 0.5, %s}]}`, b.Key, what)
		j, err := job.Read(strings.NewReader(text), nil)
		if err != nil {
			t.Errorf("%s: %v", b.Key, err)
			continue
		}
		s := made(t, j)
		p, r := &s.Coats()[0].Spread, &s.Coats()[0].Result
		if !p.Known || p.Confidence != b.Confidence() && p.Confidence > b.Confidence() {
			t.Errorf("%s: spread known %v, confidence %v of a bath of %v", b.Key, p.Known, p.Confidence, b.Confidence())
		}
		near(t, b.Key+": current density", float64(r.CurrentDensity), float64(b.CurrentDensity.Mid()), 1e-12)
		if b.Content.Given() && (len(s.Baths) != 1 || s.Baths[0].Before != b.Content.Mid()) {
			t.Errorf("%s: the bath afterwards: %v", b.Key, s.Baths)
		}
	}
}

// TestIndependentHands reckons the sheet of the hands a second time with bare
// numbers: table of drag-out, tank simulated load by load, salt by its formula,
// and money by whole cents.
func TestIndependentHands(t *testing.T) {
	s := made(t, shipped(t, "hands"))
	hole := math.Pi*3*0.4 - 2*math.Pi*1.5*1.5
	area := 12 * (2*62*3.4 + 2*(62+3.4)*0.4 + 2*44*4.2 + 2*(44+4.2)*0.4 + hole) // mm²
	near(t, "area", float64(s.Area), area*1e-6, 1e-12)

	// Printed: vertical, well drained, 0.4 gal per 1000 ft².
	film := 0.4 * 3.785411784e-3 / (1000 * 0.09290304)
	near(t, "drag-out", float64(s.Rinsing.Carried.High), film*float64(s.Wetted), 0.03)

	// One drag-out tank of 3 L, ten loads that come wet, 0.4 L back a round.
	gold := 8.0 // g/L
	d, tank, c := float64(s.Rinsing.Carried.High)*1000, 3.0, 0.0
	var lost, dragged float64
	for range 4000 {
		lost, dragged = 0, 0
		for range 10 {
			c = (c*tank + gold*d) / (tank + d)
			lost += c * d
			dragged += gold * d
		}
		back := math.Min(tank, 10*0.040)
		c *= (tank - back) / tank
	}
	m := s.Rinsing.Metals[1]
	near(t, "gold back", float64(m.Back), 1-lost/dragged, 1e-6)
	near(t, "gold lost", float64(m.Lost)*1000, gold*d*lost/dragged, 1e-4)

	// 1 + r + r² = 1000.
	r := (-1 + math.Sqrt(1+4*999)) / 2
	near(t, "water", float64(s.Rinsing.Water), r*float64(s.Rinsing.Carried.High), 1e-12)
	// Four such rows, and the acid rinse before the strike: two stages with water of their own, (1 + r)² = 1000.
	single := 2 * (math.Sqrt(1000) - 1)
	near(t, "water of all", float64(s.Rinsing.Total), (4*r+single)*float64(s.Rinsing.Carried.High), 1e-12)
	near(t, "running water", float64(s.Rinsing.Single), single*float64(s.Rinsing.Carried.High), 1e-12)

	// 3 A/dm² at 4 to 6 V for 20 s into 3 kg of water.
	near(t, "power, low", float64(s.Coats()[0].Power.Low), 4*300*float64(s.Area), 1e-12)
	near(t, "power, high", float64(s.Coats()[0].Power.High), 6*300*float64(s.Area), 1e-12)
	near(t, "warming", float64(s.Coats()[0].Power.Warms), 6*300*float64(s.Area)*20/(3*4186), 1e-9)

	// Two electrons a molecule, 24.465 L/mol at 25 °C and one atmosphere; a
	// quarter of 4 % by volume. Most current without deposit flows at tank 3.
	amps := 8.0 * float64(s.Area) * 100 // at the top of its window, 8 A/dm²
	near(t, "hydrogen", float64(s.Gas.Flow.Hydrogen), amps/(2*96485.33212)*24.465e-3, 1e-4)
	near(t, "air", float64(s.Gas.Flow.Air), float64(s.Gas.Flow.Hydrogen)*0.99/0.01, 1e-9)
	if s.Gas.Tank != 2 {
		t.Errorf("most hydrogen at tank %d", s.Gas.Tank+1)
	}

	// KAu(CN)2: 39.0983 + 196.96657 + 2·(12.011 + 14.007).
	salt := 196.96657 / (39.0983 + 196.96657 + 2*(12.011+14.007))
	b := s.Baths[1]
	near(t, "salt", float64(b.Feed.SaltMass)*salt, float64(b.Coat+b.Drips), 1e-5)
	near(t, "content now", float64(b.Now), 8-(float64(b.Coat+b.Drips)*1000)/5, 1e-9)
	if want := int(0.1 / float64(b.Drawn)); b.Loads != want {
		t.Errorf("%d loads until the bath is fed, want %d", b.Loads, want)
	}

	var sum, lines int64
	for _, l := range s.Quote.Lines {
		cents := l.Amount.Shift(2)
		if !cents.IsInteger() {
			t.Errorf("%v: %v is not in whole cents", l.Kind, l.Amount)
		}
		sum += cents.IntPart()
		lines++
	}
	if total := s.Quote.Total.Shift(2).IntPart(); total != sum || lines < 8 {
		t.Errorf("%d lines add up to %d cents, total is %d", lines, sum, total)
	}
	near(t, "time at the line", float64(s.Line.Typical), 14*20+3.5*60+90+75+20+735+600, 0.01)
}

// TestPropertyPriceAddsUp: whatever the job, the lines of its quote are its total.
func TestPropertyPriceAddsUp(t *testing.T) {
	testdata.SlowOnly(t)
	r := rand.New(rand.NewPCG(3, 1))
	any := func(most int64) decimal.Decimal { return decimal.New(r.Int64N(most*100), -2) }
	for i := range 200 {
		j := planned(sequence.Substrates()[r.IntN(6)], sequence.Finishes()[r.IntN(3)])
		j.Parts[0].Count = 1 + r.IntN(40)
		code := []string{"EUR", "JPY", "KWD"}[r.IntN(3)]
		currency, err := price.ParseCurrency(code)
		if err != nil {
			t.Fatal(err)
		}
		q := &job.Price{LinePerHour: any(90), Handling: units.Duration(r.IntN(60)), Rectifier: 0.7}
		q.Currency, q.Rounding = currency, price.Rounding(r.IntN(3))
		q.Prices = []price.MetalPrice{{Symbol: "Au", Amount: any(4000), Per: alloys.PerTroyOunce,
			AsOf: price.Date{Year: 2026, Month: 11, Day: 20}}}
		q.Allowance.Yield = decimal.New(50+r.Int64N(51), -2)
		q.Margin.OfPrice = decimal.New(r.Int64N(60), -2)
		q.Tax.Rate = decimal.New(r.Int64N(30), -2)
		q.Electricity.PerKilowattHour = any(1)
		j.Price = q
		j.Rinse = &job.Rinse{Shape: rinse.VerticalPoor, Ratio: 500}
		if r.IntN(2) == 1 {
			j.Rinse.DragOutTank, j.Rinse.Loads, j.Rinse.Evaporation = 4*units.Litre, 5, 30*units.Millilitre
		}
		s, err := j.Sheet()
		if err != nil {
			t.Fatalf("%d: %v", i, err)
		}
		sum := decimal.Zero
		for _, l := range s.Quote.Lines {
			sum = sum.Add(l.Amount)
		}
		if !sum.Equal(s.Quote.Total) || s.Quote.Pieces != j.Parts[0].Count {
			t.Errorf("%d: lines %v, total %v, %d pieces", i, sum, s.Quote.Total, s.Quote.Pieces)
		}
		for _, m := range s.Rinsing.Metals {
			if m.Lost > m.High || m.Low > m.High || m.Back < 0 || m.Back > 1 {
				t.Errorf("%d: %+v", i, m)
			}
		}
	}
}

// TestOwnBathWins: what the shop says of its bath stands on the card, and the
// library lends only what it does not say.
func TestOwnBathWins(t *testing.T) {
	s := made(t, shipped(t, "hands"))
	lib, err := bath.Get("gold-acid-cobalt")
	if err != nil {
		t.Fatal(err)
	}
	for i := range s.Stops {
		if s.Stops[i].Coat != s.Coats()[1] {
			continue
		}
		c := &s.Stops[i].Tank
		if c.Window.Low != 0.3*units.AmperePerSquareDecimetre || c.Volts.High != 3 || c.Window.Seen != origin.Given ||
			c.Chemistry != "gold, acid cyanide, cobalt hardened" {
			t.Errorf("the card shows %v, %v of %s", c.Window, c.Volts, c.Chemistry)
		}
		if c.Anode != lib.Anode || c.Agitation != lib.Agitation || c.AnodeHigh == 0 || len(c.Look) == 0 {
			t.Errorf("the library lends %v, %v, %v", c.Anode, c.Agitation, c.Look)
		}
	}
	j := shipped(t, "hands")
	j.Layers[1].Bath.AnodeKind = bath.SolubleAnode
	s = made(t, j)
	for i := range s.Stops {
		if s.Stops[i].Coat == s.Coats()[1] && s.Stops[i].Tank.Anode.Text != "" {
			t.Error("the library lends an insoluble anode to a bath that has soluble ones")
		}
	}
}

// TestOnward: what a silver strike carries goes into the silver bath, not down
// the rinse; and acid in one tank with cyanide in another is not called a bath
// that holds both.
func TestOnward(t *testing.T) {
	s := made(t, shipped(t, "finial"))
	if m := s.Rinsing.Metals; len(m) != 2 || !m[0].Onward || m[0].Lost != 0 || m[1].Onward || m[1].Lost == 0 {
		t.Errorf("%+v", m)
	}
	for i := range s.Stops {
		if line := plating.TankLine(s.Stops[i].Tank.Cautions); strings.Contains(line, "CYANIDE IN ACID") {
			t.Error("a caution for a bath that is not there: " + line)
		}
	}
	if !s.Baths[1].Soluble || s.Baths[1].Coat == 0 || s.Baths[1].Drawn > 1e-3 {
		t.Errorf("silver anodes do not replace the silver: %+v", s.Baths[1])
	}
}

// TestPropertyCautionOrder: the most dangerous comes first, though the nickel tank
// stands before the cyanide one.
func TestPropertyCautionOrder(t *testing.T) {
	order := plating.FrontCautions(^plating.Hazard(0))
	s := made(t, shipped(t, "bezels"))
	last := -1
	for _, n := range s.Cautions() {
		i := slices.Index(order, n)
		if i <= last {
			t.Errorf("%q stands behind a lesser danger", n.Text)
		}
		last = i
	}
	if first := s.Cautions()[0].Text; !strings.Contains(first, "hydrogen cyanide") {
		t.Errorf("first: %s", first)
	}
}

// TestIndependentEnergy adds up volts, amps and minutes by hand: the plating
// current at the top of its volts, the cleaning current at the top of its own,
// through the rectifier, and the heating.
func TestIndependentEnergy(t *testing.T) {
	j := shipped(t, "hands")
	s := made(t, j)
	joules := 0.0
	for i, k := 0, 0; i < len(s.Stops); i++ {
		c := &s.Stops[i].Tank
		switch {
		case s.Stops[i].Coat != nil:
			r := &s.Stops[i].Coat.Result
			k++
			joules += []float64{6, 3}[k-1] * float64(r.Current) * float64(r.Time)
		case c.Set > 0:
			joules += 6 * float64(c.Amps) * float64(c.Time.Typical) // both at up to 6 V
		}
	}
	kwh := joules/0.8/3.6e6 + 0.6
	found := false
	for _, l := range s.Quote.Lines {
		if l.Kind.String() == "electricity" {
			found = true
			if got, _ := l.Amount.Float64(); math.Abs(got-kwh*0.31) > 0.011 {
				t.Errorf("electricity %v, by hand %v", got, kwh*0.31)
			}
		}
	}
	if !found {
		t.Error("no electricity")
	}
	// With dear current the sum shows in every digit.
	p := *j.Price
	p.Electricity.PerKilowattHour, p.Margin.OfPrice = p.Electricity.PerKilowattHour.Shift(5),
		p.Margin.OfPrice.Sub(p.Margin.OfPrice)
	j.Price = &p
	s = made(t, j)
	for _, l := range s.Quote.Lines {
		if l.Kind.String() == "electricity" {
			if got, _ := l.Amount.Float64(); math.Abs(got-kwh*31000) > 31 { // three places of a kilowatt hour, upwards
				t.Errorf("electricity %v, by hand %v", got, kwh*31000)
			}
		}
	}
}

// TestOneBathTwice: two stays in one bath are one bath afterwards, with the
// charge and the metal of both.
func TestOneBathTwice(t *testing.T) {
	j := shipped(t, "hands")
	j.Finish, j.Steps = sequence.FinishUnknown, nil
	l := j.Layers[1]
	l.CountBelow = false
	j.Layers = []job.OwnCoat{l, l}
	s := made(t, j)
	if len(s.Baths) != 1 {
		t.Fatalf("%d baths", len(s.Baths))
	}
	var charge units.Charge
	var metal units.Mass
	for i := range s.Coats() {
		charge += s.Coats()[i].Result.Charge
		metal += s.Coats()[i].Result.FineMass
	}
	near(t, "charge", float64(s.Baths[0].Charge), float64(charge), 1e-12)
	near(t, "metal", float64(s.Baths[0].Coat), float64(metal), 1e-12)
	j.Layers[0].Bath.Name, j.Layers[1].Bath.Name = "", ""
	if s := made(t, j); len(s.Baths) != 2 {
		t.Errorf("two baths without names are taken for %d", len(s.Baths))
	}
}

// TestStepsCarry: what a step says of waiting reaches the review, and one load
// between returns is the rule when none is said.
func TestStepsCarry(t *testing.T) {
	j := own(t)
	for i := range j.Steps {
		if j.Steps[i].Layer == "acid gold strike" {
			j.Steps[i].Wait = 5 * units.Minute
		}
	}
	found := false
	s := made(t, j)
	for _, f := range s.Findings {
		found = found || f.Code == sequence.CodePassiveWait
	}
	if !found {
		t.Errorf("stainless waits five minutes behind its strike: %v", s.Findings)
	}
	j = shipped(t, "hands")
	water := *j.Rinse
	water.Loads = 0
	j.Rinse = &water
	none := made(t, j)
	water.Loads = 1
	if one := made(t, j); none.Rinsing.Metals[1].Back != one.Rinsing.Metals[1].Back {
		t.Errorf("%v without a number of loads, %v with one", none.Rinsing.Metals[1].Back, one.Rinsing.Metals[1].Back)
	}
	// Load by load, in grams, until every round is like the last.
	water.Loads = 7
	m := made(t, j).Rinsing.Metals[1]
	gold, d, tank := float64(j.Layers[1].Bath.Content.Point()), float64(made(t, j).Rinsing.Carried.High),
		float64(water.DragOutTank)
	grams, back, full, poured := 0.0, 0.0, 0.0, math.Min(tank, 7*float64(water.Evaporation))
	for range 3000 {
		for range 7 {
			grams += gold * d
			grams -= grams * d / (tank + d)
		}
		full = grams / tank
		back = full * poured
		grams -= back
	}
	near(t, "poured back", float64(m.Poured), poured, 1e-12)
	near(t, "share that comes back", float64(m.Back), back/(7*gold*d), 1e-9)
	near(t, "last water behind the drag-out tank", float64(m.LastWater), full/float64(water.Ratio), 1e-9)
	water.DragOutTank, water.Evaporation, water.Loads = 0, 0, 0
	m = made(t, j).Rinsing.Metals[1]
	near(t, "last water without one", float64(m.LastWater), gold/float64(water.Ratio), 1e-12)
	if m.Poured != 0 || m.Loads != 0 || m.Back != 0 {
		t.Errorf("nothing to pour from: %+v", m)
	}
	// The hot bath makes room for what clings to its load, the cold one for nothing.
	water.DragOutTank, water.Evaporation, water.Loads = 3*units.Litre, 40*units.Millilitre, 10
	cold, none2 := j, units.Volume(0)
	cold.Layers = slices.Clone(j.Layers)
	cold.Layers[0].Bath.Evaporation = &none2
	list := made(t, cold).Rinsing.Metals
	if list[0].Back != 0 || !list[0].Full || list[0].Lost != list[0].High || list[1].Full ||
		list[1].Evaporates != water.Evaporation || list[1].Back < 0.9 {
		t.Errorf("a strike from which nothing evaporates: %+v", list)
	}
	minus := -units.Millilitre
	cold.Layers[0].Bath.Evaporation = &minus
	var v *units.ValueError
	if _, err := cold.Sheet(); !errors.As(err, &v) || !strings.Contains(v.Field,
		"evaporation of acid gold strike") {
		t.Errorf("%v", err)
	}
	// What the shop weighed is not called printed.
	water.Shape, water.Measured, water.Drain, water.Thickness = 0, 3*units.Millilitre, 0, 0
	if c := made(t, j).Rinsing.Carried; c.Seen != origin.Measured || c.Seen.String() != "measured" || c.Low != c.High {
		t.Errorf("%+v", c)
	}
	// A minimum thickness above what is timed: the piece is judged by what the last coat comes to.
	j = shipped(t, "hands")
	j.Layers[1].MinThickness, j.Layers[1].Time, j.Layers[1].CountBelow = 0, 10*units.Minute, false
	if s := made(t, j); s.Forbidden() || sequence.Worst(s.Findings) > plating.SeverityCaution {
		t.Errorf("a timed finish: %v", s.Findings)
	}
	// Another metal in the next tank is no onward bath.
	j = shipped(t, "bezels")
	s = made(t, j)
	for _, m := range s.Rinsing.Metals {
		if m.Onward {
			t.Errorf("%s goes onward", m.Bath)
		}
	}
}

// TestGasOfTheLowEnd: hydrogen is reckoned with the lowest efficiency.
func TestGasOfTheLowEnd(t *testing.T) {
	j := shipped(t, "hands")
	j.Finish, j.Price, j.Rinse = sequence.FinishUnknown, nil, nil
	s := made(t, j)
	r := &s.Coats()[0].Result
	want := (1 - 0.08) * float64(r.Current) * 5 / 3 / (2 * 96485.33212) * 24.465e-3 // at the top of the window, 5 A/dm²
	if s.Gas.Tank != 0 {
		t.Fatalf("most hydrogen at coat %d", s.Gas.Tank+1)
	}
	near(t, "hydrogen of the strike", float64(s.Gas.Flow.Hydrogen), want, 1e-4)
	// In a sequence of the two coats alone it is the same.
	j = shipped(t, "hands")
	j.Price, j.Rinse, j.Steps = nil, nil, []job.OwnTank{{Layer: "1"}, {Layer: "2"}}
	s = made(t, j)
	if len(s.Stops) != 2 || s.Gas == nil || s.Gas.Tank != 0 {
		t.Fatalf("%d tanks, most hydrogen %+v", len(s.Stops), s.Gas)
	}
	near(t, "hydrogen of the strike in a sequence", float64(s.Gas.Flow.Hydrogen), want, 1e-4)
	if plating.DefaultDrawLimit != 0.1 {
		t.Error("the draw limit is not that of the documents")
	}
}

// TestPropertyWorking: the shown calculation of each shipped job can be computed
// again from its own formulas, and its last steps are the figures of the sheet.
func TestPropertyWorking(t *testing.T) {
	for _, name := range []string{"hands", "bezels", "finial"} {
		s := made(t, shipped(t, name))
		list, err := s.Working()
		if err != nil {
			t.Fatal(err)
		}
		steps := 0
		var told []string
		for _, c := range list {
			told = append(told, c.Title)
			for i := range c.Steps {
				steps++
				again, err := c.Steps[i].Recompute()
				if want := c.Steps[i].Result.SI; err != nil || math.Abs(again-want) > 1e-9*math.Abs(want) {
					t.Errorf("%s, %s: %v, shown %v, %v", name, c.Title, again, want, err)
				}
			}
		}
		if steps < 15 || !strings.HasPrefix(strings.Join(told, "; "), "area of the load; ") ||
			!strings.Contains(strings.Join(told, "; "), "drag-out of the load; water of one counterflow rinse") {
			t.Errorf("%s: %d steps in %q", name, steps, told)
		}
		for i := range s.Baths {
			if f := s.Baths[i].Feed; f != nil && f.SaltMass > 0 && !slices.Contains(told, "feeding "+s.Baths[i].Bath) {
				t.Errorf("%s: nothing on feeding %s", name, s.Baths[i].Bath)
			}
		}
	}
}

// TestBadRinse: every figure of the rinsing is looked at, also one that the others
// make idle.
func TestBadRinse(t *testing.T) {
	nan := math.NaN()
	for name, change := range map[string]func(*job.Rinse){
		"ratio of rinsing -5":             func(r *job.Rinse) { r.Ratio = -5 },
		"ratio of rinsing NaN":            func(r *job.Rinse) { r.Ratio = units.Ratio(nan) },
		"volume of the drag-out tank -1":  func(r *job.Rinse) { r.DragOutTank = -1 },
		"volume of the drag-out tank NaN": func(r *job.Rinse) { r.DragOutTank = units.Volume(nan) },
		"rinse.loads: is -7":              func(r *job.Rinse) { r.Loads = -7 },
		"rinse.stages: is -3":             func(r *job.Rinse) { r.Ratio, r.Stages = 0, -3 },
		"evaporation in the time of a load NaN": func(r *job.Rinse) {
			r.DragOutTank, r.Evaporation = 0,
				units.Volume(nan)
		},
		"time of draining NaN": func(r *job.Rinse) {
			r.Shape, r.Measured, r.Drain = 0, 1e-6,
				units.Duration(nan)
		},
		"rinse.liquid: is 77": func(r *job.Rinse) { r.Shape, r.Measured, r.Thickness = 0, 1e-6, 77 },
	} {
		j := shipped(t, "hands")
		water := *j.Rinse
		change(&water)
		j.Rinse = &water
		var f *job.Fault
		if _, err := j.Sheet(); !errors.As(err, &f) || !strings.Contains(err.Error(), name) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// TestOwnCosts: what a quote holds already is added to, and nothing is added to a
// number that nobody could write out.
func TestOwnCosts(t *testing.T) {
	j := shipped(t, "hands")
	was := made(t, j).Quote
	own := *j.Price
	own.Deposit = []price.Metal{{Symbol: "Au", Mass: alloys.Weighed{Amount: decimal.New(1, 0), Unit: alloys.PerGram}}}
	j.Price = &own
	now := made(t, j).Quote
	count := func(q *price.Quote) (n int) {
		for _, l := range q.Lines {
			if l.Kind == price.KindDeposit {
				n++
			}
		}
		return n
	}
	if count(now) != count(was)+1 || !now.Total.GreaterThan(was.Total.Add(decimal.New(100, 0))) {
		t.Errorf("a gram of gold more: %s, before %s", now.Total, was.Total)
	}
	own.Electricity.KilowattHours = decimal.New(1, 2_000_000_000)
	if _, err := j.Sheet(); err == nil || !strings.Contains(err.Error(), "energy") {
		t.Errorf("a number without end: %v", err)
	}
}
