// Package working holds shown calculations: what was computed, by which
// formula, from which numbers, with what result and on whose authority.
//
// A [Step] is data first. [Step.Text] makes a paragraph of it for a bench
// sheet or a lesson, and [Step.Recompute] puts the numbers into the formula
// once more, so that a reader need not believe the program: the printed
// formula and the printed result are held against each other.
package working

import (
	"fmt"
	"strings"

	"example.com/laydown/units"
)

// A Term is one symbol of a formula with the number it stands for.
//
// Value is rounded for people, SI is not: a check of the arithmetic goes by SI.
type Term struct {
	Symbol  string  `json:"symbol"`  // as in the formula: η
	Meaning string  `json:"meaning"` // in words: current efficiency
	Value   string  `json:"value"`   // for people, with unit: 35 %
	SI      float64 `json:"si"`      // the same in SI units: 0.35
}

// A Step is one formula at work.
//
//	Result.SI = right side of Formula with the SI values of Terms
//
// holds for each step of this library to the rounding of float64; [Step.Recompute] puts it
// to the test. Source is a key of testdata/REFERENCES.md, "Definition" for what follows
// from the meaning of the words.
type Step struct {
	Formula string `json:"formula"`        // t = m/(ε·η·I)
	Terms   []Term `json:"terms"`          // the symbols on the right side
	Result  Term   `json:"result"`         // the symbol on the left side
	Source  string `json:"source"`         // key of the publication
	Note    string `json:"note,omitempty"` // what else a reader should know
}

// Of makes a term from a quantity of package units, whose String is the value shown.
func Of[Q interface {
	~float64
	String() string
}](symbol, meaning string, q Q) Term {
	return Term{Symbol: symbol, Meaning: meaning, Value: q.String(), SI: float64(q)}
}

// Number makes a term from a number without unit.
//
// Value shows six digits; SI keeps all.
func Number(symbol, meaning string, v float64) Term {
	return Term{Symbol: symbol, Meaning: meaning, Value: fmt.Sprintf("%.6g", v), SI: v}
}

// Constant makes a term whose shown value carries a unit that package units
// has no type for.
//
// Value shows ten digits, as published constants have; v must be in SI units.
func Constant(symbol, meaning string, v float64, unit string) Term {
	return Term{Symbol: symbol, Meaning: meaning, Value: fmt.Sprintf("%.10g %s", v, unit), SI: v}
}

// Text writes the step as a few lines: the result in words, the formula, the
// numbers put in, the result, the source.
func (s Step) Text() string {
	var b strings.Builder
	line := func(format string, args ...any) {
		b.WriteString(units.Printable(fmt.Sprintf(format, args...)) + "\n")
	}
	line("%s: %s", s.Result.Meaning, s.Result.Value)
	line("  %s  [%s]", s.Formula, s.Source)
	for _, t := range s.Terms {
		line("    %s = %s (%s)", t.Symbol, t.Value, t.Meaning)
	}
	if s.Note != "" {
		line("  %s", s.Note)
	}
	return b.String()
}

// Text writes steps one below the other.
func Text(steps []Step) string {
	var b strings.Builder
	for _, s := range steps {
		b.WriteString(s.Text())
	}
	return b.String()
}
