package ledger

import (
	"math"
	"testing"
	"time"
)

// TestPropertyAlarmLimits walks each alarm over its threshold: on it, and a step to either side.
func TestPropertyAlarmLimits(t *testing.T) {
	// Content, uncertainty, volume, charge since an analysis and turnovers are well within.
	good := State{Content: 8, ContentUncertainty: 0.125, Volume: 5, SinceAnalysis: 100, Turnovers: 3}
	bath := Account{Low: 7, High: 9, Level: 4, Due: 200, Life: 5}
	for name, c := range map[string]struct {
		change func(*State, *Account)
		want   Alarms
	}{
		"good":             {func(s *State, b *Account) {}, 0},
		"low":              {func(s *State, b *Account) { s.Content = 6.9375 }, AlarmLow},
		"on low":           {func(s *State, b *Account) { s.Content = 7 }, AlarmPerhapsLow},
		"near low":         {func(s *State, b *Account) { s.Content = 7.1875 }, AlarmPerhapsLow},
		"two from low":     {func(s *State, b *Account) { s.Content = 7.25 }, 0},
		"high":             {func(s *State, b *Account) { s.Content = 9.0625 }, AlarmHigh},
		"on high":          {func(s *State, b *Account) { s.Content = 9 }, AlarmPerhapsHigh},
		"near high":        {func(s *State, b *Account) { s.Content = 8.8125 }, AlarmPerhapsHigh},
		"two from high":    {func(s *State, b *Account) { s.Content = 8.75 }, 0},
		"on the level":     {func(s *State, b *Account) { s.Volume = 4 }, 0},
		"below the level":  {func(s *State, b *Account) { s.Volume = 3.9375 }, AlarmLevel},
		"not yet due":      {func(s *State, b *Account) { s.SinceAnalysis = 199 }, 0},
		"due":              {func(s *State, b *Account) { s.SinceAnalysis = 200 }, AlarmAnalysisDue},
		"life":             {func(s *State, b *Account) { s.Turnovers = 5 }, AlarmLife},
		"not yet its life": {func(s *State, b *Account) { s.Turnovers = 4.9375 }, 0},
		"unsure": {func(s *State, b *Account) { s.ContentUncertainty = 20 },
			AlarmPerhapsLow | AlarmPerhapsHigh},
		"unsure and not watched": {func(s *State, b *Account) { *b, s.ContentUncertainty = Account{}, 20 }, 0},
		"a low of one":           {func(s *State, b *Account) { b.Low, s.Content, b.High = 1, 0.9375, 0 }, AlarmLow},
		"perhaps a low of one":   {func(s *State, b *Account) { b.Low, s.Content, b.High = 1, 1, 0 }, AlarmPerhapsLow},
		"a high of one":          {func(s *State, b *Account) { b.Low, s.Content, b.High = 0, 1.0625, 1 }, AlarmHigh},
		"perhaps a high of one":  {func(s *State, b *Account) { b.Low, s.Content, b.High = 0, 1, 1 }, AlarmPerhapsHigh},
		"due of one":             {func(s *State, b *Account) { b.Due = 1 }, AlarmAnalysisDue},
		"life of one":            {func(s *State, b *Account) { b.Life = 1 }, AlarmLife},
	} {
		s, b := good, bath
		c.change(&s, &b)
		if got := s.alarms(&b, false); got != c.want {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
		if got := s.alarms(&b, true); got != c.want|AlarmDisagree {
			t.Errorf("%s and apart: %q, want %q", name, got, c.want|AlarmDisagree)
		}
	}
}

// TestPinnedAlarmTexts: each alarm has its words, and both stand in a fixed order.
func TestPinnedAlarmTexts(t *testing.T) {
	all := ""
	for alarm, words := range map[Alarms]string{
		AlarmLow:         "metal content below the low alarm: feed before the next load",
		AlarmPerhapsLow:  "metal content may be below the low alarm: analyse",
		AlarmHigh:        "metal content above the high alarm: add no metal, look at the anodes",
		AlarmPerhapsHigh: "metal content may be above the high alarm: analyse",
		AlarmLevel:       "solution below its level: top up",
		AlarmAnalysisDue: "analysis due",
		AlarmDisagree:    "the last analysis and the book lie more than two uncertainties apart: find out why",
		AlarmLife:        "as many metal turnovers as the bath was meant for",
	} {
		if got := alarm.Texts(); len(got) != 1 || got[0] != words || alarm.String() != words {
			t.Errorf("%d: %q, want %q", alarm, got, words)
		}
		all += words
	}
	var joined string
	for _, s := range (AlarmLife<<1 - 1).Texts() {
		joined += s
	}
	if len(joined) != len(all) || (AlarmLow|AlarmLife).String() != AlarmLow.String()+"; "+AlarmLife.String() ||
		Alarms(0).String() != "none" {
		t.Errorf("%q", joined)
	}
}

// TestPropertyTotal: a sum keeps the digits that a float64 drops, whichever of the two is the larger.
func TestPropertyTotal(t *testing.T) {
	for _, c := range []struct {
		add  []float64
		want float64
	}{
		{[]float64{1e16, 1, -1e16}, 1}, {[]float64{1, 1e16, -1e16}, 1}, {[]float64{1e16, 1, 1, 1, -1e16}, 3},
		{[]float64{3, -1e17, 5, 1e17, -1}, 7}, {[]float64{1, 2, 4}, 7}, {[]float64{-1e16, -1, 1e16, 4}, 3},
		{[]float64{5, -5, 1e-3}, 1e-3},
	} {
		var s total
		for _, x := range c.add {
			s.add(x)
		}
		if s.value() != c.want {
			t.Errorf("%v add up to %v", c.add, s.value())
		}
	}
}

// TestPropertyAfter: a charge at so much a day passes at a time of the calendar, to the
// minute; two hundred years are the most.
func TestPropertyAfter(t *testing.T) {
	now := time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC)
	for _, c := range []struct {
		charge, perDay float64
		want           time.Time
	}{
		{3, 2, now.Add(36 * time.Hour)}, {0, 2, now}, {1, 24 * 60, now.Add(time.Minute)},
		{1.4, 24 * 60, now.Add(time.Minute)},
		{1.6, 24 * 60, now.Add(2 * time.Minute)}, {73000, 1, now.Add(73000 * 24 * time.Hour)},
		{73000.001, 1, time.Time{}}, {1, 0, time.Time{}}, {0, 0, time.Time{}}, {math.Inf(1), 1, time.Time{}},
	} {
		if got := after(now, c.charge, c.perDay); !got.Equal(c.want) {
			t.Errorf("%g at %g a day: %v, want %v", c.charge, c.perDay, got, c.want)
		}
	}
}
