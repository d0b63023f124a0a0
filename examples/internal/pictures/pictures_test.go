package pictures

import (
	"strings"
	"testing"
)

// TestPropertyMarks: an axis has a few round numbers, each once and none below its end.
func TestPropertyMarks(t *testing.T) {
	if marks(0, 0) != nil {
		t.Error("marks on nothing")
	}
	for _, span := range [][2]float64{{0, 1}, {1, 1.06}, {0.0002, 0.0009}, {0, 123456}} {
		list := marks(span[0], span[1])
		seen := map[string]bool{}
		for _, m := range list {
			if seen[m.Label] || strings.HasPrefix(m.Label, "-") {
				t.Errorf("%v: label %q twice or below zero", span, m.Label)
			}
			seen[m.Label] = true
		}
		if len(list) < 3 || len(list) > 12 {
			t.Errorf("%v: %d marks", span, len(list))
		}
	}
}
