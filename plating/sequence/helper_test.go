package sequence_test

import (
	"slices"
	"testing"

	"example.com/laydown/plating"
	"example.com/laydown/plating/bath"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/units"
)

const um = units.Micrometre

func piece(s sequence.Substrate, f sequence.Finish) sequence.Piece {
	p := sequence.Piece{Name: "hand", Substrate: s, Finish: f, MinThickness: 0.1 * um,
		Area:         124 * units.SquareCentimetre,
		Distribution: plating.Distribution{MinToAverage: 0.6, Basis: "given"}}
	if s == sequence.HighCarbonSteel {
		p.Tensile = 1250 * units.Megapascal
	}
	return p
}

func plan(t *testing.T, p sequence.Piece) []sequence.Tank {
	t.Helper()
	tanks, _, err := sequence.Plan(p)
	if err != nil {
		t.Fatal(err)
	}
	return tanks
}

func libraryBath(t *testing.T, key string) bath.Bath {
	t.Helper()
	b, err := bath.Get(key)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// plated makes a plating tank.
func plated(t *testing.T, kind sequence.TankKind, key string, least units.Length) sequence.Tank {
	b := libraryBath(t, key)
	return sequence.Tank{Name: b.Name, Kind: kind, Bath: b, MinThickness: least, LiveEntry: b.LiveEntry}
}

func rinse(stages int, flow sequence.RinseFlow) sequence.Tank {
	return sequence.Tank{Kind: sequence.Rinse, Rinse: sequence.RinseSet{Stages: stages, Flow: flow}}
}

// A line is a sequence that a test edits; a step that finds nothing fails it.
type line struct {
	t     *testing.T
	piece sequence.Piece
	tanks []sequence.Tank
}

func (l *line) find(match func(sequence.Tank) bool) int {
	l.t.Helper()
	i := slices.IndexFunc(l.tanks, match)
	if i < 0 {
		l.t.Fatal("no such tank")
	}
	return i
}

// bath finds the first tank with a bath of the library, dip the first
// activation, kind the first of a kind.
func (l *line) bath(key string) int {
	return l.find(func(t sequence.Tank) bool { return t.Bath.Key == key })
}
func (l *line) kind(k sequence.TankKind) int {
	return l.find(func(t sequence.Tank) bool { return t.Kind == k })
}

// last finds the finish.
func (l *line) last() int { return l.kind(sequence.Plate) }

func (l *line) remove(i, n int) { l.tanks = slices.Delete(l.tanks, i, i+n) }
func (l *line) insert(i int, t ...sequence.Tank) {
	l.tanks = slices.Insert(l.tanks, i, t...)
}

// codes lists the rules that spoke at a severity or above, each once, in order.
func codes(all []sequence.Finding, from plating.Severity) []sequence.Code {
	var out []sequence.Code
	for _, f := range all {
		if f.Severity >= from && !slices.Contains(out, f.Code) {
			out = append(out, f.Code)
		}
	}
	slices.Sort(out)
	return out
}

func heatNotGiven() bath.Range[units.Temperature] { return bath.Range[units.Temperature]{} }
