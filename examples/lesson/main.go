// Command lesson shows the mathematics of plating to those who learn it or teach it:
// a question of a clock-restoration workshop, every formula with its numbers and its
// source, the answer in one sentence, and what the answer is good to.
//
//	go run ./examples/lesson                  the lessons: word, title, package
//	go run ./examples/lesson karating         one of them
//	go run ./examples/lesson all              all of them
//	go run ./examples/lesson -json karating   the same facts as JSON
//
// The lessons are in examples/internal/lessons. Exit status: 0, 1 for a word that
// names no lesson, 2 for a wrong call.
package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"

	"example.com/laydown/examples/internal/lessons"
	"example.com/laydown/examples/internal/terminal"
	"example.com/laydown/units/working"
)

const usage = `usage: lesson [-json] [word ... | all]

  lesson                   list the lessons
  lesson karating          show one: question, formulas with numbers and source, answer
  lesson karating density  show several
  lesson all               show all
  lesson -json karating    the same facts as JSON
`

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run returns the exit status.
func run(args []string, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("lesson", flag.ContinueOnError)
	asJSON := flags.Bool("json", false, "")
	if status, ok := terminal.Parse(flags, args, stderr, func() { fmt.Fprint(stderr, usage) }); !ok {
		return status
	}
	chosen, err := choose(flags.Args())
	if err == nil {
		err = write(stdout, chosen, len(flags.Args()) > 0, *asJSON)
	}
	if err != nil {
		terminal.Error(stderr, "lesson", err)
		return 1
	}
	return 0
}

// choose returns the lessons of some words: all of them for none or for "all".
func choose(words []string) ([]lessons.Lesson, error) {
	if len(words) == 0 || len(words) == 1 && words[0] == "all" {
		return lessons.All(), nil
	}
	var chosen []lessons.Lesson
	for _, word := range words {
		l, near, ok := lessons.Find(word)
		switch {
		case ok:
			chosen = append(chosen, l)
		case len(near) > 0:
			return nil, fmt.Errorf("no lesson %q; near it: %s", word, strings.Join(near, ", "))
		default:
			return nil, fmt.Errorf("no lesson %q; lesson without a word lists them", word)
		}
	}
	return chosen, nil
}

// shown is a lesson with its working, as JSON has it.
type shown struct {
	lessons.Lesson
	Steps    []working.Step `json:"steps,omitempty"`
	Answer   string         `json:"answer,omitempty"`
	Cautions []string       `json:"cautions,omitempty"`
}

// write shows the lessons: each in full, or one a line.
func write(w io.Writer, chosen []lessons.Lesson, full, asJSON bool) error {
	var all []shown
	for i, l := range chosen {
		s := shown{Lesson: l}
		if full {
			var err error
			if s.Steps, s.Answer, err = l.Work(); err != nil {
				return fmt.Errorf("%s: %w", l.Word, err)
			}
		}
		for _, n := range l.Cautions() {
			s.Cautions = append(s.Cautions, n.Line())
		}
		all = append(all, s)
		var err error
		switch {
		case asJSON:
		case full:
			err = s.text(w, i > 0)
		default:
			err = terminal.Line(w, "%-18s %-56s %s", l.Word, l.Title, l.Package)
		}
		if err != nil {
			return err
		}
	}
	if !asJSON {
		return nil
	}
	out := json.NewEncoder(w)
	out.SetEscapeHTML(false)
	out.SetIndent("", "  ")
	if full && len(all) == 1 {
		return out.Encode(all[0])
	}
	return out.Encode(all)
}

// text writes a lesson for people, behind an empty line when it is not the first.
func (s shown) text(w io.Writer, next bool) error {
	lines := []string{fmt.Sprintf("%s: %s (%s)", s.Word, s.Title, s.Package), ""}
	if next {
		lines = append([]string{""}, lines...)
	}
	lines = append(append(lines, strings.Split(s.Question, "\n")...), "")
	lines = append(lines, strings.Split(strings.TrimSuffix(working.Text(s.Steps), "\n"), "\n")...)
	lines = append(lines, "", "Answer: "+s.Answer, "Good to: "+s.Good)
	for _, c := range s.Cautions {
		lines = append(lines, "Caution: "+c)
	}
	for _, line := range lines {
		if err := terminal.Line(w, "%s", line); err != nil {
			return err
		}
	}
	return nil
}
