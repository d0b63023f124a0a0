package main

import (
	"fmt"
	"io"
	"strings"

	"example.com/laydown/examples/internal/terminal"
	"example.com/laydown/plating"
)

const width = 96

// A sheet writes lines and keeps the first error.
type sheet struct {
	w    io.Writer
	wide bool // do not fold: a page folds by itself
	err  error
}

func (s *sheet) line(format string, args ...any) {
	if s.err == nil {
		s.err = terminal.Line(s.w, "%s", strings.TrimRight(fmt.Sprintf(format, args...), " "))
	}
}

// caution prints the line of what a tank can do, under its name.
func (s *sheet) caution(notes []plating.Note) {
	if line := plating.TankLine(notes); line != "" {
		s.wrap("   ! ", line)
	}
}

func (s *sheet) note(n plating.Note) {
	s.wrap("   "+mark(n.Severity)+" ", n.Line())
}

func (s *sheet) row(what, value, why string) {
	const indent = 34
	head := fmt.Sprintf("   [ ] %-8s %-16s ", what, value)
	lines := fold(why, width-indent)
	for i, l := range lines {
		if i == 0 {
			s.line("%-*s%s", indent, head, l)
		} else {
			s.line("%*s%s", indent, "", l)
		}
	}
}

// wrap writes text folded, behind a prefix on the first line.
func (s *sheet) wrap(prefix, text string) {
	if s.wide {
		s.line("%s%s", prefix, text)
		return
	}
	n := len([]rune(prefix))
	for i, l := range fold(text, width-n) {
		if i > 0 {
			prefix = strings.Repeat(" ", n)
		}
		s.line("%s%s", prefix, l)
	}
}

// fold breaks text at blanks into lines of at most n runes, one at least.
func fold(text string, n int) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		if line != "" && len([]rune(line))+1+len([]rune(word)) > n {
			lines, line = append(lines, line), ""
		}
		if line != "" {
			line += " "
		}
		line += word
	}
	return append(lines, line)
}
