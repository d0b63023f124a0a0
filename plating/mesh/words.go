package mesh

import (
	"bytes"
	"fmt"
	"strconv"
)

// words takes text apart at white space and knows its line.
type words struct {
	data []byte
	at   int
	line int // of the word returned last
}

// next returns the next word, nil at the end. It belongs to data.
func (w *words) next() []byte {
	for w.at < len(w.data) && space(w.data[w.at]) {
		if w.data[w.at] == '\n' || w.data[w.at] == '\r' && !w.feedFollows() {
			w.line++
		}
		w.at++
	}
	from := w.at
	for w.at < len(w.data) && !space(w.data[w.at]) {
		w.at++
	}
	if from == w.at {
		return nil
	}
	return w.data[from:w.at]
}

func (w *words) feedFollows() bool { return w.at+1 < len(w.data) && w.data[w.at+1] == '\n' }

// skipLine passes over the rest of the line.
func (w *words) skipLine() {
	i := bytes.IndexAny(w.data[w.at:], "\r\n")
	if i < 0 {
		w.at = len(w.data)
		return
	}
	w.at += i
}

// want takes words that must come next.
func (w *words) want(all ...string) error {
	for _, want := range all {
		word := w.next()
		if len(word) == 0 {
			return w.fail(ErrTruncated, "the word "+want, "the file ends")
		}
		if !is(word, want) {
			return w.fail(ErrSyntax, "the word "+want, "the word %s", clip(word))
		}
	}
	return nil
}

// number takes a number that must come next: a decimal, finite and with a
// point. Minus zero becomes zero.
func (w *words) number() (float64, error) {
	word := w.next()
	if len(word) == 0 {
		return 0, w.fail(ErrTruncated, "a number", "the file ends")
	}
	return w.value(word)
}

func (w *words) value(word []byte) (float64, error) {
	for _, c := range word {
		if !(c >= '0' && c <= '9' || c == '+' || c == '-' || c == '.' || c == 'e' || c == 'E') {
			if v, err := strconv.ParseFloat(string(word[:min(len(word), 20)]), 64); err == nil && v-v != 0 {
				return 0, w.fail(ErrNotFinite, "a finite number", "the number %s", clip(word))
			}
			return 0, w.fail(ErrSyntax, "a number such as -1.25 or 3e-2, with a point", "%s", clip(word))
		}
	}
	if len(word) > 400 {
		return 0, w.fail(ErrSyntax, "a number of 400 characters at most", "%s", clip(word))
	}
	v, err := strconv.ParseFloat(string(word), 64)
	if v-v != 0 {
		return 0, w.fail(ErrTooLarge, "a number below 1e308", "the number %s", clip(word))
	}
	if err != nil {
		return 0, w.fail(ErrSyntax, "a number such as -1.25 or 3e-2, with a point", "%s", clip(word))
	}
	return v + 0, nil
}

// fail makes an error on the word returned last.
func (w *words) fail(reason error, need, format string, args ...any) error {
	return &FaultError{What: fmt.Sprintf(format, args...), Need: need, Line: w.line, Offset: -1,
		Triangle: -1, Err: reason}
}

func space(c byte) bool { return c == ' ' || c >= '\t' && c <= '\r' }

func is(word []byte, want string) bool {
	return len(word) == len(want) && bytes.EqualFold(word, []byte(want))
}
