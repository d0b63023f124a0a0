package terminal

import (
	"fmt"
	"io"
	"os"
	"strings"
	"time"

	"example.com/laydown/units"
)

// A Bar shows on a terminal how far a run is. On anything else it stays silent.
type Bar struct {
	w     io.Writer
	on    bool
	last  time.Time
	drawn bool
}

// NewBar returns a bar for a writer; it is on when that is a terminal.
func NewBar(w io.Writer, quiet bool) *Bar {
	b := &Bar{w: w}
	if f, ok := w.(*os.File); ok && !quiet {
		info, err := f.Stat()
		b.on = err == nil && info.Mode()&os.ModeCharDevice != 0
	}
	return b
}

// Step draws the bar anew, at most ten times a second.
func (b *Bar) Step(what, stage string, done, total int) {
	now := time.Now()
	if !b.on || now.Sub(b.last) < 100*time.Millisecond {
		return
	}
	b.last, b.drawn = now, true
	const width = 24
	share := 0
	if total > 0 {
		share = min(done*width/total, width)
	}
	fmt.Fprintf(b.w, "\r%-80.80s", units.Printable(fmt.Sprintf("[%s%s] %s: %s", strings.Repeat("#", share),
		strings.Repeat(".", width-share), what, stage)))
}

// Clear takes the bar away.
func (b *Bar) Clear() {
	if b.drawn {
		fmt.Fprintf(b.w, "\r%80s\r", "")
		b.drawn = false
	}
}
