package main

import (
	"fmt"
	"io"
	"os"
	"strings"
	"time"

	"example.com/laydown/units"
)

// A bar shows on a terminal how far a run is. On anything else it stays silent.
type bar struct {
	w     io.Writer
	on    bool
	last  time.Time
	drawn bool
}

// newBar returns a bar for a writer; it is on when that is a terminal.
func newBar(w io.Writer, quiet bool) *bar {
	b := &bar{w: w}
	if f, ok := w.(*os.File); ok && !quiet {
		info, err := f.Stat()
		b.on = err == nil && info.Mode()&os.ModeCharDevice != 0
	}
	return b
}

// step draws the bar anew, at most ten times a second.
func (b *bar) step(what, stage string, done, total int) {
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

// clear takes the bar away.
func (b *bar) clear() {
	if b.drawn {
		fmt.Fprintf(b.w, "\r%80s\r", "")
		b.drawn = false
	}
}
