package ledger_test

import (
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"example.com/laydown/faraday"
	"example.com/laydown/plating/ledger"
	"example.com/laydown/units"
)

var nan = math.NaN()

// wantField checks for a typed error that names the field.
func wantField(t *testing.T, name string, err error, field string, reason error) {
	t.Helper()
	v := (*units.ValueError)(nil)
	if !errors.As(err, &v) || !strings.Contains(v.Field, field) || !errors.Is(err, reason) || v.Need == "" {
		t.Errorf("%s: %v; want field %q, reason %v", name, err, field, reason)
	}
}

func TestBadBath(t *testing.T) {
	inf := units.Volume(math.Inf(1))
	for name, c := range map[string]struct {
		change func(*ledger.Account)
		field  string
		reason error
	}{
		"no name":      {func(b *ledger.Account) { b.Name = " " }, "name", units.ErrSyntax},
		"name no text": {func(b *ledger.Account) { b.Name = "a\xff" }, "name", units.ErrSyntax},
		"source long": {func(b *ledger.Account) { b.Source = strings.Repeat("x", 1001) }, "source",
			units.ErrOutOfRange},
		"no metal":        {func(b *ledger.Account) { b.Metal = "" }, "metal of the bath", units.ErrSyntax},
		"no volume":       {func(b *ledger.Account) { b.Volume = 0 }, "volume", units.ErrNotPositive},
		"volume NaN":      {func(b *ledger.Account) { b.Volume = units.Volume(nan) }, "volume", units.ErrNotFinite},
		"volume infinite": {func(b *ledger.Account) { b.Volume = inf }, "volume", units.ErrNotFinite},
		"volume unsure": {func(b *ledger.Account) { b.VolumeUncertainty = b.Volume }, "uncertainty of the bath volume",
			units.ErrInconsistent},
		"volume u": {func(b *ledger.Account) { b.VolumeUncertainty = -1 }, "uncertainty of the bath volume",
			units.ErrNegative},
		"content": {func(b *ledger.Account) { b.Content = -1 }, "opening content", units.ErrNegative},
		"content u": {func(b *ledger.Account) { b.ContentUncertainty = units.MassConcentration(nan) }, "opening content",
			units.ErrNotFinite},
		"metal too much": {func(b *ledger.Account) { b.Content, b.Volume, b.High = 1e200, 1e200, 0 }, "opening metal",
			units.ErrNotFinite},
		"u too much": {func(b *ledger.Account) { b.ContentUncertainty = 1e200 }, "uncertainty of the metal",
			units.ErrNotFinite},
		"equivalent": {func(b *ledger.Account) { b.Equivalent = 0 }, "equivalent", units.ErrNotPositive},
		"fine":       {func(b *ledger.Account) { b.Fine = 1.1 }, "share of the counted metal", units.ErrOutOfRange},
		"efficiency none": {func(b *ledger.Account) { b.Efficiency = ledger.EfficiencyRange{} }, "current efficiency",
			units.ErrNotPositive},
		"efficiency 35": {func(b *ledger.Account) { b.Efficiency.Value = 35 }, "current efficiency",
			units.ErrOutOfRange},
		"low end only":  {func(b *ledger.Account) { b.Efficiency.High = 0 }, "high end", units.ErrNotPositive},
		"high end only": {func(b *ledger.Account) { b.Efficiency.Low = 0 }, "low end", units.ErrNotPositive},
		"ends": {func(b *ledger.Account) { b.Efficiency.Low = 0.36 }, "current efficiency",
			units.ErrInconsistent},
		"anode share":      {func(b *ledger.Account) { b.Anode.Share = 1.5 }, "soluble anodes", units.ErrOutOfRange},
		"anode efficiency": {func(b *ledger.Account) { b.Anode.Share = 1 }, "anode efficiency", units.ErrNotPositive},
		"anode no share":   {func(b *ledger.Account) { b.Anode.Efficiency.Value = 1 }, "anode", units.ErrInconsistent},
		"anode equivalent": {func(b *ledger.Account) { b.Anode.Equivalent = -1 }, "equivalent of the anode",
			units.ErrNegative},
		"anode of alloy": {func(b *ledger.Account) {
			b.Anode = ledger.Anode{Share: 1,
				Efficiency: ledger.EfficiencyRange{Value: 1}}
		}, "equivalent of the anode", units.ErrInconsistent},
		"salt": {func(b *ledger.Account) { b.Salts = []faraday.Formula{formula("NaCl")} }, "metal content",
			units.ErrNotPositive},
		"zero salt":  {func(b *ledger.Account) { b.Salts = make([]faraday.Formula, 1) }, "", units.ErrNotPositive},
		"many salts": {func(b *ledger.Account) { b.Salts = make([]faraday.Formula, 21) }, "salts", units.ErrOutOfRange},
		"low":        {func(b *ledger.Account) { b.Low = -1 }, "low alarm", units.ErrNegative},
		"high": {func(b *ledger.Account) { b.High = units.MassConcentration(nan) }, "high alarm",
			units.ErrNotFinite},
		"alarms crossed":  {func(b *ledger.Account) { b.Low, b.High = b.High, b.Low }, "low alarm", units.ErrInconsistent},
		"target":          {func(b *ledger.Account) { b.Target = 20 }, "target", units.ErrInconsistent},
		"target negative": {func(b *ledger.Account) { b.Target = -20 }, "target", units.ErrNegative},
		"level":           {func(b *ledger.Account) { b.Level = 6 * units.Litre }, "level", units.ErrInconsistent},
		"level negative":  {func(b *ledger.Account) { b.Level = -1 }, "level", units.ErrNegative},
		"due":             {func(b *ledger.Account) { b.Due = -1 }, "charge between", units.ErrNegative},
		"life":            {func(b *ledger.Account) { b.Life = units.Ratio(nan) }, "life", units.ErrNotFinite},
	} {
		b := goldBath()
		c.change(&b)
		l, err := ledger.New(b, day(0))
		wantField(t, name, err, c.field, c.reason)
		if l != nil {
			t.Errorf("%s: a ledger with an error", name)
		}
	}
	b := goldBath()
	b.Metal = "AU"
	unknown := (*faraday.ElementError)(nil)
	if _, err := ledger.New(b, day(0)); !errors.As(err, &unknown) {
		t.Errorf("symbol: %v", err)
	}
	if _, err := b.Rates(); !errors.As(err, &unknown) {
		t.Errorf("rates: %v", err)
	}
	_, err := ledger.New(goldBath(), time.Time{})
	wantField(t, "no time", err, "time of the opening", units.ErrOutOfRange)
	_, err = ledger.New(goldBath(), time.Date(2026, 1, 1, 0, 0, 0, 0, time.FixedZone("", 30*3600)))
	wantField(t, "offset", err, "time of the opening", units.ErrOutOfRange)
	if _, err := (ledger.EfficiencyRange{Value: 2}).Uncertainty(); err == nil {
		t.Error("efficiency 2")
	}
}

// TestPropertyWater: what stands behind a dot of a salt is water, or another
// part of a double or basic salt; slips of the pen are refused with the remedy.
func TestPropertyWater(t *testing.T) {
	for text, fine := range map[string]bool{
		"NiSO4.7H2O": true, "NiSO4·6H2O": true, "2NiCO3·3Ni(OH)2·4H2O": true, "NiSO4·(NH4)2SO4·6H2O": true,
		"3NiSO4·8/3H2O": true, "NiSO4·3H4O2": true,
		"NiSO4": true, "NiO·HCl": true, "NiSO4.7H2": false, "NiSO4.7H20": false, "NiSO4.7O": false, "NiSO4.6HO": false,
		"NiSO4.6HO2":          false,
		"NiSO4.(NH4)2SO4.6H2": false,
	} {
		b := nickelBath()
		b.Salts = []faraday.Formula{formula(text)}
		_, err := ledger.New(b, day(0))
		l := must(ledger.New(nickelBath(), day(0)))
		_, added := l.Post(ledger.Entry{When: day(1), Event: ledger.Addition{Salt: formula(text), SaltMass: units.Gram}})
		if fine {
			if err != nil || added != nil {
				t.Errorf("%s: %v, %v", text, err, added)
			}
			continue
		}
		wantField(t, text, err, "salt of the bath", units.ErrInconsistent)
		wantField(t, text, added, "salt of the addition", units.ErrInconsistent)
		if err != nil && !strings.Contains(err.Error(), "number of H2O") {
			t.Errorf("%s: %v names no remedy", text, err)
		}
	}
}

// TestPropertyTornWords: the words fit what is left.
func TestPropertyTornWords(t *testing.T) {
	l := must(ledger.New(goldBath(), day(0)))
	must(l.Post(ledger.Entry{When: day(1), Event: ledger.Load{Charge: units.AmpereMinute}}))
	must(l.Post(ledger.Entry{When: day(2), Event: ledger.Load{Charge: units.AmpereMinute}}))
	text := bytesOf(l)
	starts := lineStarts(text)
	for cut, want := range map[int]string{0: "no opening is left; move the file away",
		starts[1] / 2: "no opening is left; move the file away",
		starts[1] + 9: "line 2: cut short: the line before it is whole", starts[2] +
			9: "line 3: cut short: the 2 lines before it are whole"} {
		_, err := ledger.Open(reader(text[:cut]))
		if err == nil || !strings.Contains(err.Error(), want) || strings.Contains(want, "no opening") &&
			strings.Contains(err.Error(), "enter what it said") {
			t.Errorf("cut at %d: %v, want %q", cut, err, want)
		}
	}
}

// TestBadEquivalent: no charge brings more metal than one electron for each atom;
// a point slipped by a place either way is refused, an alloy's small share is not.
func TestBadEquivalent(t *testing.T) {
	per := units.GramPerAmpereHour
	for _, c := range []struct {
		equivalent units.Equivalent
		fine       units.MassFraction
		field      string // "" when it is taken
	}{
		{7.3489 * per, 1, ""}, {7.3489 * per / 3, 1, ""}, {7.35 * per, 0, ""},
		{73.49 * per, 1, "electrochemical equivalent"},
		{0.7349 * per, 1, "electrochemical equivalent"},
		{7.5 * per, 1, "electrochemical equivalent"}, {9 * per, 0.75, ""}, {0.7349 * per, 0.75, ""}, {11 * per, 0.75,
			"electrochemical equivalent"},
	} {
		b := goldBath()
		b.Equivalent, b.Fine, b.Salts = c.equivalent, c.fine, nil // the salt is of gold(I)
		_, err := ledger.New(b, day(0))
		if c.field == "" {
			if err != nil {
				t.Errorf("%v, %v: %v", c.equivalent, c.fine, err)
			}
			continue
		}
		wantField(t, c.equivalent.String(), err, c.field, units.ErrOutOfRange)
	}
	b := nickelBath()
	b.Anode.Equivalent = 10.95 * per // 1.095 with the point slipped
	_, err := ledger.New(b, day(0))
	wantField(t, "anode", err, "equivalent of the anode", units.ErrOutOfRange)
}

type foreign struct{ ledger.Load }

func TestBadEntries(t *testing.T) {
	g, ml := units.Gram, units.Millilitre
	for name, c := range map[string]struct {
		event  ledger.Event
		field  string
		reason error
	}{
		"none":       {nil, "event", units.ErrSyntax},
		"by pointer": {&ledger.Load{Charge: 1}, "event", units.ErrSyntax},
		"foreign":    {foreign{}, "event", units.ErrSyntax},
		"empty load": {ledger.Load{}, "load", units.ErrNotPositive},
		"charge":     {ledger.Load{Charge: -1}, "charge", units.ErrNegative},
		"charge NaN": {ledger.Load{Charge: units.Charge(nan)}, "charge", units.ErrNotFinite},
		"weighed":    {ledger.Load{Weighed: -1}, "weighed", units.ErrNegative},
		"weighed u": {ledger.Load{Weighed: g, WeighedUncertainty: -1}, "uncertainty of the weighed",
			units.ErrNegative},
		"over 100 %":      {ledger.Load{Charge: units.AmpereMinute, Weighed: 0.2 * g}, "weighed", units.ErrInconsistent},
		"drag-out":        {ledger.Load{DragOut: -1}, "drag-out", units.ErrNegative},
		"drag-out u":      {ledger.Load{DragOut: ml, DragOutUncertainty: -1}, "drag-out", units.ErrNegative},
		"drag-out all":    {ledger.Load{DragOut: 5 * units.Litre}, "drag-out", units.ErrInconsistent},
		"drag-in":         {ledger.Load{DragIn: units.Volume(math.Inf(1))}, "drag-in", units.ErrNotFinite},
		"drag-in content": {ledger.Load{DragIn: ml, DragInContent: -1}, "drag-in", units.ErrNegative},
		"more than there": {ledger.Load{Charge: 2000 * units.AmpereMinute}, "metal in the bath", units.ErrNegative},
		"evaporation":     {ledger.Evaporation{}, "evaporated", units.ErrNotPositive},
		"dried up":        {ledger.Evaporation{Volume: 5 * units.Litre}, "volume of the bath", units.ErrNotPositive},
		"empty addition":  {ledger.Addition{}, "addition", units.ErrNotPositive},
		"salt no mass":    {ledger.Addition{Salt: formula("KAu(CN)2")}, "salt", units.ErrInconsistent},
		"mass no salt":    {ledger.Addition{SaltMass: g}, "salt", units.ErrInconsistent},
		"label no salt":   {ledger.Addition{Metal: g, Label: 0.5}, "salt", units.ErrInconsistent},
		"label 68": {ledger.Addition{Salt: formula("KAu(CN)2"), SaltMass: g, Label: 68.3}, "label",
			units.ErrOutOfRange},
		"other salt":    {ledger.Addition{Salt: formula("KCN"), SaltMass: g}, "metal content", units.ErrNotPositive},
		"salt negative": {ledger.Addition{Salt: formula("KAu(CN)2"), SaltMass: -g}, "mass of salt", units.ErrNegative},
		"metal":         {ledger.Addition{Metal: -g}, "mass of metal", units.ErrNegative},
		"metal too much": {ledger.Addition{Solution: 1e200, SolutionContent: 1e200}, "metal of the addition",
			units.ErrNotFinite},
		"solution":         {ledger.Addition{Solution: -ml}, "solution", units.ErrNegative},
		"content":          {ledger.Addition{Solution: ml, SolutionContent: -1}, "solution", units.ErrNegative},
		"feed, no content": {ledger.Addition{Solution: 100 * ml}, "solution", units.ErrInconsistent},
		"content, no feed": {ledger.Addition{Metal: g, SolutionContent: 100}, "solution", units.ErrInconsistent},
		"500 L of water":   {ledger.Addition{Water: 500 * units.Litre}, "volume of the bath", units.ErrOutOfRange},
		"found 50 L": {ledger.Correction{Volume: 50 * units.Litre, Reason: "x"}, "volume of the bath",
			units.ErrOutOfRange},
		"dragged in 6 L":  {ledger.Load{DragIn: 6 * units.Litre}, "volume of the bath", units.ErrOutOfRange},
		"water":           {ledger.Addition{Water: units.Volume(nan)}, "water", units.ErrNotFinite},
		"addition u":      {ledger.Addition{Water: ml, Uncertainty: -1}, "uncertainty", units.ErrNegative},
		"addition u huge": {ledger.Addition{Water: ml, Uncertainty: 1e200}, "uncertainty", units.ErrNotFinite},
		"analysis":        {ledger.Analysis{Content: -1, Uncertainty: 1}, "analysed", units.ErrNegative},
		"analysis u":      {ledger.Analysis{Content: 8}, "uncertainty of the analysis", units.ErrNotPositive},
		"correction":      {ledger.Correction{Reason: "x"}, "correction", units.ErrNotPositive},
		"no reason":       {ledger.Correction{Metal: g}, "reason", units.ErrSyntax},
		"correction NaN":  {ledger.Correction{Metal: units.Mass(nan), Reason: "x"}, "corrected metal", units.ErrNotFinite},
		"correction volume": {ledger.Correction{Volume: units.Volume(nan), Reason: "x"}, "corrected volume",
			units.ErrNotFinite},
		"correction u": {ledger.Correction{Metal: g, Uncertainty: -1, Reason: "x"}, "correction", units.ErrNegative},
		"drawn off":    {ledger.Correction{Metal: -41 * g, Reason: "x"}, "metal in the bath", units.ErrNegative},
		"emptied": {ledger.Correction{Volume: -5 * units.Litre, Reason: "x"}, "volume of the bath",
			units.ErrNotPositive},
	} {
		l := must(ledger.New(goldBath(), day(0)))
		before := bytesOf(l)
		_, err := l.Post(ledger.Entry{When: day(1), Event: c.event})
		wantField(t, name, err, c.field, c.reason)
		if l.Len() != 0 || string(bytesOf(l)) != string(before) || l.State().Seq != 0 {
			t.Errorf("%s: the book changed", name)
		}
	}
	l := must(ledger.New(goldBath(), day(1)))
	ok := ledger.Load{Charge: 1}
	_, err := l.Post(ledger.Entry{When: day(0), Event: ok})
	wantField(t, "older", err, "time of the entry", units.ErrInconsistent)
	_, err = l.Post(ledger.Entry{Event: ok})
	wantField(t, "no time", err, "time of the entry", units.ErrOutOfRange)
	_, err = l.Post(ledger.Entry{When: day(2), Event: ok, Note: "\xff"})
	wantField(t, "note", err, "note", units.ErrSyntax)
}

func TestBadAdvice(t *testing.T) {
	salt := formula("KAu(CN)2")
	good := ledger.Need{Metal: units.Gram, Volume: units.Litre, Mark: units.Litre, Target: 8 * units.GramPerLitre}
	for name, c := range map[string]struct {
		change func(*ledger.Need)
		field  string
		reason error
	}{
		"metal":  {func(n *ledger.Need) { n.Metal = -1 }, "metal", units.ErrNegative},
		"volume": {func(n *ledger.Need) { n.Volume = 0 }, "volume of the bath", units.ErrNotPositive},
		"mark":   {func(n *ledger.Need) { n.Mark = units.Volume(nan) }, "volume to keep", units.ErrNotFinite},
		"target": {func(n *ledger.Need) { n.Target = -1 }, "target", units.ErrNegative},
		"huge":   {func(n *ledger.Need) { n.Target, n.Mark = 1e200, 1e200 }, "", units.ErrNotFinite},
	} {
		n := good
		c.change(&n)
		_, err := ledger.Replenish(n, "Au", salt)
		wantField(t, name, err, c.field, c.reason)
		if _, err := ledger.ReplenishWorking(n, "Au", salt); err == nil {
			t.Errorf("%s: a working", name)
		}
		_, err = ledger.ReplenishBySolution(n, 100*units.GramPerLitre)
		wantField(t, name+" solution", err, c.field, c.reason)
	}
	_, err := ledger.Replenish(good, "Au", formula("NaCl"))
	wantField(t, "salt", err, "metal content", units.ErrNotPositive)
	_, err = ledger.ReplenishBySolution(good, 0)
	wantField(t, "feed", err, "feed", units.ErrNotPositive)
	_, err = ledger.ReplenishBySolution(good, 8*units.GramPerLitre)
	wantField(t, "thin feed", err, "feed", units.ErrInconsistent)

	l := must(ledger.New(goldBath(), day(0)))
	for name, c := range map[string]struct {
		plan   ledger.Plan
		field  string
		reason error
	}{
		"next":     {ledger.Plan{Salt: salt}, "foretell", units.ErrOutOfRange},
		"loads":    {ledger.Plan{Salt: salt, Next: 1, Loads: -1}, "look back", units.ErrNegative},
		"feed at":  {ledger.Plan{Salt: salt, Next: 1, FeedAt: -1}, "feed at", units.ErrNotPositive},
		"feed NaN": {ledger.Plan{Salt: salt, Next: 1, FeedAt: units.MassConcentration(nan)}, "feed at", units.ErrNotFinite},
		"target":   {ledger.Plan{Salt: salt, Next: 1, FeedAt: 8 * units.GramPerLitre}, "feed at", units.ErrInconsistent},
		"no load":  {ledger.Plan{Salt: salt, Next: 1}, "charge of the loads", units.ErrNotPositive},
		"no salt":  {ledger.Plan{Next: 1}, "", units.ErrNotPositive},
	} {
		_, err := l.Forecast(c.plan)
		wantField(t, name, err, c.field, c.reason)
	}
	rich := nickelBath()
	rich.Anode.Share = 1
	_, err = rich.SaltPerCharge(rich.Salts[0])
	wantField(t, "rich", err, "metal drawn", units.ErrNotPositive)
	_, err = must(ledger.New(rich, day(0))).ByCharge(rich.Salts[0])
	wantField(t, "rich by charge", err, "metal drawn", units.ErrNotPositive)
	poor := goldBath()
	_, err = poor.SaltPerCharge(formula("KCN"))
	wantField(t, "salt", err, "metal content", units.ErrNotPositive)

	for name, areas := range map[string][2]units.Area{"none": {0, 0}, "negative": {-1, 2}, "other": {1, -1},
		"NaN": {units.Area(nan), 1}} {
		if _, err := ledger.ShareByArea(areas[0], areas[1]); err == nil {
			t.Errorf("areas %s", name)
		}
	}
	e := ledger.Estimate{Content: 1, Uncertainty: 0.1}
	for name, p := range map[string][2]ledger.Estimate{"both exact": {{Content: 1}, {Content: 2}},
		"negative": {{Content: -1, Uncertainty: 1}, e}, "u": {e, {Content: 1, Uncertainty: -1}}, "NaN": {e,
			{Content: units.MassConcentration(nan), Uncertainty: 1}}} {
		if _, _, err := ledger.Combine(p[0], p[1]); err == nil {
			t.Errorf("combine %s", name)
		}
		if _, err := ledger.CombineWorking(p[0], p[1]); err == nil {
			t.Errorf("combine working %s", name)
		}
	}
}

// TestPropertyFarNumbers: figures beyond float64 are refused, and an analysis that
// says nothing implies no efficiency.
func TestPropertyFarNumbers(t *testing.T) {
	_, err := ledger.Replenish(ledger.Need{Metal: math.MaxFloat64, Volume: 1e-3, Mark: 1e-3, Target: 8}, "Au",
		formula("KAu(CN)2"))
	wantField(t, "content", err, "content afterwards", units.ErrNotFinite)
	l := must(ledger.New(goldBath(), day(0)))
	must(l.Post(ledger.Entry{When: day(1), Event: ledger.Load{Charge: units.AmpereMinute}}))
	r := must(l.Post(ledger.Entry{When: day(2), Event: ledger.Analysis{Content: 7, Uncertainty: 1e300}}))
	if c := r.Comparison; c.Efficiency != 0 || c.EfficiencyUncertainty != 0 {
		t.Errorf("%+v", c)
	}
	var none ledger.Ledger
	if s := none.State(); s.Content != 0 || s.Metal != 0 {
		t.Errorf("the zero Ledger: %+v", s)
	}
}
