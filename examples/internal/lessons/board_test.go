package lessons

import (
	"errors"
	"testing"

	"example.com/laydown/units/working"
)

// TestPropertyFirstErrorStays: a lesson whose calls fail has no answer, and says what
// failed first.
func TestPropertyFirstErrorStays(t *testing.T) {
	first, second := errors.New("first"), errors.New("second")
	for name, solve := range map[string]func(b *board) string{
		"values": func(b *board) string { value[int](b)(1, first); value[int](b)(1, second); return b.last() },
		"steps":  func(b *board) string { b.one(working.Step{}, first); b.add(nil, second); return b.last() },
		"mixed":  func(b *board) string { b.add(nil, first); b.add(nil, nil); value[int](b)(1, nil); return b.last() },
	} {
		if steps, answer, err := (Lesson{solve: solve}).Work(); err != first || steps != nil || answer != "" {
			t.Errorf("%s: %v, %q, %v", name, steps, answer, err)
		}
	}
}
