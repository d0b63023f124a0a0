// Package lessons holds questions of a clock-restoration workshop, one for each
// formula that a pupil of plating mathematics meets. A [Lesson] is data: a question
// with figures of our own, what its answer is good to, and the calls of the library
// that answer it with their working. [All] lists them by field, one file a field.
package lessons

import (
	"errors"
	"slices"
	"strings"

	"example.com/laydown/plating"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// A Lesson is one question.
type Lesson struct {
	Word     string         `json:"word"`     // by which it is asked for: karating
	Title    string         `json:"title"`    // in one line
	Package  string         `json:"package"`  // of the library that answers it
	Question string         `json:"question"` // lines of the workshop's question
	Good     string         `json:"good_to"`  // how far the answer may be trusted
	Hazards  plating.Hazard `json:"-"`        // of what the pupil would handle; see [Lesson.Cautions]

	solve func(b *board) string
}

// Work computes the lesson: each formula with its numbers, and the answer in one
// sentence, which holds the figure of the last step.
func (l Lesson) Work() ([]working.Step, string, error) {
	if l.solve == nil {
		return nil, "", errors.New("an empty lesson: none of All")
	}
	var b board
	answer := l.solve(&b)
	if b.err != nil {
		return nil, "", b.err
	}
	return b.steps, answer, nil
}

// Cautions returns what to mind before anybody does at a tank what the lesson
// computes on paper; none where nothing dangerous is handled.
func (l Lesson) Cautions() []plating.Note {
	if l.Hazards == 0 {
		return nil
	}
	return plating.Cautions(l.Hazards)
}

// All returns the lessons in the order of a course: metal, charge, current, shape,
// distribution, rinses, tank, book.
func All() []Lesson {
	return slices.Concat(alloyLessons(), markLessons(), faradayLessons(), currentLessons(), kineticLessons(),
		shapeLessons(), throwingLessons(), rinseLessons(), recoveryLessons(), electricalLessons(), bookLessons())
}

// Find returns the lesson of a word. Where there is none it returns false and the
// words that are near: those that begin alike, and those with the text in their title.
func Find(word string) (found Lesson, near []string, ok bool) {
	word = strings.ToLower(word)
	for _, l := range All() {
		switch begin := []rune(word); {
		case l.Word == word:
			return l, nil, true
		case len(begin) < 3:
		case strings.HasPrefix(l.Word, string(begin[:3])) || strings.Contains(strings.ToLower(l.Title), word):
			near = append(near, l.Word)
		}
	}
	return Lesson{}, near, false
}

// A board collects the steps of a lesson. The first error stays; what is written
// behind it does not count.
type board struct {
	steps []working.Step
	err   error
}

// add takes the steps of a Working function.
func (b *board) add(steps []working.Step, err error) {
	b.steps = append(b.steps, steps...)
	b.keep(err)
}

// one takes the step of a Working function that has one.
func (b *board) one(step working.Step, err error) { b.add([]working.Step{step}, err) }

// show writes a step of a function that has no Working of its own.
func (b *board) show(formula, source string, result working.Term, terms ...working.Term) {
	b.steps = append(b.steps, working.Step{Formula: formula, Source: source, Result: result, Terms: terms})
}

func (b *board) keep(err error) {
	if b.err == nil {
		b.err = err
	}
}

// last returns the figure that the last step came to.
func (b *board) last() string {
	if len(b.steps) == 0 {
		return ""
	}
	return b.steps[len(b.steps)-1].Result.Value
}

// value takes what a function of the library returns and keeps its error:
// value[units.Mass](b)(lot.Find()).
func value[T any](b *board) func(T, error) T {
	return func(v T, err error) T {
		b.keep(err)
		return v
	}
}

// Units that most lessons use.
const (
	g   = units.Gram
	mg  = units.Milligram
	mm  = units.Millimetre
	um  = units.Micrometre
	cm2 = units.SquareCentimetre
	dm2 = units.SquareDecimetre
	asd = units.AmperePerSquareDecimetre
	gcc = units.GramPerCubicCentimetre
	gl  = units.GramPerLitre
)
