package terminal_test

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"io"
	"strings"
	"testing"

	"example.com/laydown/examples/internal/terminal"
	"example.com/laydown/units"
)

const hostile = "a\x1b[2K\nbathbook: entered as no. 7\r\u202e\u2028"

// TestPropertyOneLine: whatever an error or a flag holds, it stays in its line.
func TestPropertyOneLine(t *testing.T) {
	for name, c := range map[string]struct {
		err   error
		lines int
	}{
		"plain":   {errors.New(hostile), 1},
		"wrapped": {fmt.Errorf("%s: %w", hostile, io.EOF), 1},
		"two":     {fmt.Errorf("%w %w", errors.New(hostile), io.EOF), 1},
		"joined":  {errors.Join(errors.New(hostile), errors.Join(io.EOF, errors.New(hostile))), 3},
	} {
		var b bytes.Buffer
		terminal.Error(&b, "bathbook", c.err)
		check(t, name, b.String(), c.lines)
	}
	for name, args := range map[string][]string{"unknown": {"-" + hostile}, "value": {"-n=" + hostile}, "help": {"-h"},
		"fine": {"-n=3", hostile}} {
		var b bytes.Buffer
		flags := flag.NewFlagSet("bathbook", flag.ContinueOnError)
		n := flags.Int("n", 0, "")
		status, ok := terminal.Parse(flags, args, &b, func() { fmt.Fprintln(&b, "usage") })
		switch name {
		case "fine":
			if !ok || *n != 3 || b.Len() != 0 {
				t.Errorf("%s: %d, %q", name, status, b.String())
			}
		case "help":
			if ok || status != 0 || b.String() != "usage\n" {
				t.Errorf("%s: %d, %q", name, status, b.String())
			}
		default:
			if ok || status != 2 {
				t.Errorf("%s: %d", name, status)
			}
			check(t, name, b.String(), 2)
		}
	}
}

func check(t *testing.T, name, text string, lines int) {
	t.Helper()
	if n := strings.Count(text, "\n"); n != lines || units.Printable(text) != strings.ReplaceAll(text, "\n", `\n`) {
		t.Errorf("%s: %d lines, want %d: %q", name, n, lines, text)
	}
}
