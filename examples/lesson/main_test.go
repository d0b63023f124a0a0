package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"example.com/laydown/examples/internal/lessons"
	"example.com/laydown/units"
)

func call(args ...string) (status int, out, bad string) {
	var o, e bytes.Buffer
	status = run(args, &o, &e)
	return status, o.String(), e.String()
}

// TestRun: the list, one lesson, all, and wrong calls with what would do.
func TestRun(t *testing.T) {
	for _, c := range []struct {
		args   string
		status int
		out    []string
		bad    string
	}{
		{"", 0, []string{"karating           Raise a stock of 14 karat to 18", "alloys\n", "sharedbill"}, ""},
		{"karating", 0, []string{"karating: Raise a stock of 14 karat to 18 (alloys)\n\n30 g of scrap",
			"\nfine gold to add: 20 g\n  a = m·(w₂ - w₁)/(1 - w₂)  [RaisingGold]\n    m = 30 g (mass of the stock)\n",
			"\n\nAnswer: Add 20 g of fine gold;", "\nGood to: exact"}, ""},
		{"salt mass", 0, []string{"\nCaution: Keep acid", "\n\nmass: How much gold"}, ""},
		{"all", 0, []string{"karating: ", "\n\nsharedbill: "}, ""},
		{"karatin", 1, nil, "lesson: no lesson \"karatin\"; near it: karating, karat\n"},
		{"pendulum", 1, nil, "lesson: no lesson \"pendulum\"; lesson without a word lists them\n"},
		{"karating all", 1, nil, "no lesson \"all\""},
		{"-text karating", 2, nil, "usage: lesson"},
		{"-h", 0, nil, "usage: lesson"},
	} {
		status, out, bad := call(strings.Fields(c.args)...)
		if status != c.status || !strings.Contains(bad, c.bad) || c.bad == "" && bad != "" || c.out == nil && out != "" {
			t.Errorf("%q: %d, %q, %q", c.args, status, out, bad)
		}
		for _, part := range c.out {
			if !strings.Contains(out, part) {
				t.Errorf("%q: no %q in %s", c.args, part, out)
			}
		}
	}
}

// TestPropertyJSON: JSON says what the text says.
func TestPropertyJSON(t *testing.T) {
	status, out, bad := call("-json", "all")
	var all []shown
	if err := json.Unmarshal([]byte(out), &all); err != nil || status != 0 || len(all) != len(lessons.All()) {
		t.Fatalf("%d, %v, %s", status, err, bad)
	}
	_, text, _ := call("all")
	for _, s := range all {
		for _, part := range append(append([]string{s.Word + ": " + s.Title, "Answer: " + s.Answer, "Good to: " + s.Good,
			s.Steps[0].Text(), s.Steps[len(s.Steps)-1].Formula}, strings.Split(s.Question, "\n")...), s.Cautions...) {
			if !strings.Contains(text, part) {
				t.Errorf("%s: %q", s.Word, part)
			}
		}
	}
	_, out, _ = call("-json", "karating")
	var one shown
	if err := json.Unmarshal([]byte(out), &one); err != nil || one.Word != "karating" || len(one.Steps) != 2 {
		t.Errorf("%v: %s", err, out)
	}
	_, out, _ = call("-json")
	if err := json.Unmarshal([]byte(out), &all); err != nil || strings.Contains(out, "steps") {
		t.Errorf("%v: %s", err, out)
	}
}

// TestHostileWords: no word reaches the terminal with its control characters.
func TestHostileWords(t *testing.T) {
	const hostile = "kar\x1b[2K\nlesson: fine\r\u202e\u2028"
	for _, args := range [][]string{{hostile}, {"-" + hostile}, {"karating", hostile}, {"-json=" + hostile}} {
		status, out, bad := call(args...)
		said := strings.TrimSuffix(bad, usage)
		if status == 0 || out != "" || strings.Count(said, "\n") != 1 || strings.Contains(said, "\x1b") ||
			units.Printable(strings.TrimSuffix(said, "\n")) != strings.TrimSuffix(said, "\n") {
			t.Errorf("%q: %d, %q, %q", args, status, out, bad)
		}
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("disk full") }

// TestFullDisk: what cannot be written is said.
func TestFullDisk(t *testing.T) {
	for _, args := range [][]string{nil, {"karating"}, {"-json", "karating"}} {
		var bad bytes.Buffer
		if status := run(args, full{}, &bad); status != 1 || bad.String() != "lesson: disk full\n" {
			t.Errorf("%v: %d, %q", args, status, bad.String())
		}
	}
}
