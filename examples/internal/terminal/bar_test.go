package terminal

import (
	"bytes"
	"strings"
	"testing"
)

// TestPropertyBar: the bar shows on nothing but a terminal.
func TestPropertyBar(t *testing.T) {
	var b bytes.Buffer
	bar := NewBar(&b, false)
	bar.Step("mesh", "solve", 1, 2)
	bar.Clear()
	if b.Len() != 0 {
		t.Errorf("%q", b.String())
	}
	bar.on = true
	bar.Step("mesh", "solve", 1, 2)
	bar.Clear()
	if s := b.String(); !strings.Contains(s, "############............") || !strings.Contains(s, "mesh: solve") ||
		!strings.HasSuffix(s, "\r") {
		t.Errorf("%q", s)
	}
}
