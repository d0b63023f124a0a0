package main

import (
	"bytes"
	"strings"
	"testing"

	"example.com/laydown/units"
)

// TestHostileWords: no word of the command line reaches the terminal with its control
// characters.
func TestHostileWords(t *testing.T) {
	const hostile = "x\x1b[2K\r25 mm = 1 in\nconvert: fine\b\u202e\u2028\u009b"
	for name, args := range map[string][]string{"flag": {"-" + hostile}, "value": {"-digits=" + hostile},
		"alone": {hostile}, "unit": {"25", "µin", hostile}, "quantity": {hostile, "mm"}, "list": {"-list", hostile},
		"number": {"25" + hostile, "mm"}, "between": {"25\u2028\u200bmm", "in"}} {
		var out, bad bytes.Buffer
		run(args, &out, &bad)
		said := strings.TrimSuffix(out.String()+bad.String(), usage)
		if said == "" {
			t.Errorf("%s: nothing said", name)
		}
		for _, line := range strings.Split(said, "\n") {
			if units.Printable(line) != line || strings.HasPrefix(line, "convert: fine") {
				t.Errorf("%s: %q", name, line)
			}
		}
	}
}
