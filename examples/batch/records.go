package main

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
)

// maxRow bounds the bytes of one row, so that a quote that is never closed
// does not draw the whole input into memory.
const maxRow = 1 << 20

// What can be wrong with a row as such. The rows behind it can still be read.
var (
	errTooLong  = fmt.Errorf("the row is longer than %d bytes; is a quote not closed?", maxRow)
	errUnclosed = errors.New("a quote is not closed; the row was ended at its line")
	errQuote    = errors.New("a quote out of place; put the cell in quotes and double those inside")
)

// records reads CSV one row at a time, in constant memory. It differs from the
// reader of package csv in four points: a row that is too long is an error of
// that row and the next one is whole again; behind a quote that is never closed
// the reading goes on at the next line; a line break inside quotes stays as it
// is, CR LF too; a byte order mark in front goes.
type records struct {
	in    *bufio.Reader
	src   *source
	raw   []byte // of the row being read, as long as it is not too long
	buf   []byte // the cells of the row, one behind the other
	ends  []int  // where each but the last ends in buf
	cells []string
}

func newRecords(r io.Reader) *records {
	src := &source{r: r}
	in := bufio.NewReaderSize(src, 1<<16)
	if head, err := in.Peek(3); err == nil && string(head) == "\ufeff" {
		_, _ = in.Discard(3) // they are in the buffer
	}
	return &records{in: in, src: src}
}

// A source gives back bytes that were read too far, then goes on with r.
type source struct {
	again []byte
	r     io.Reader
}

func (s *source) Read(p []byte) (int, error) {
	if len(s.again) > 0 {
		n := copy(p, s.again)
		s.again = s.again[n:]
		return n, nil
	}
	return s.r.Read(p)
}

// unread puts bytes back in front of what is still to be read.
func (r *records) unread(b []byte) {
	ahead, _ := r.in.Peek(r.in.Buffered())
	r.src.again = slices.Concat(b, ahead, r.src.again)
	r.in.Reset(r.src)
}

// A state tells where in a row the next byte stands.
type state uint8

const (
	fieldStart state = iota
	unquoted
	quoted
	quoteInQuoted // the end of the cell, or the first of a doubled quote
	returnBehind  // a carriage return behind the closing quote: a line feed must follow
	spoiled       // a quote out of place: the row ends with the line
)

// next returns the cells of the next row; they are good until the next call.
// With one of the errors above they are those that could be made out, the last
// one perhaps in part. io.EOF comes when there is no more, any other error when
// the input cannot be read. Empty lines are skipped.
func (r *records) next() ([]string, error) {
	for {
		r.buf, r.ends = r.buf[:0], r.ends[:0]
		at, err := r.scan()
		if err != nil && !ofRow(err) {
			return nil, err
		}
		if at == quoted && err == errUnclosed {
			// End the row at its first line and read the rest again.
			if i := bytes.IndexByte(r.raw, '\n'); i >= 0 {
				r.unread(r.raw[i+1:])
				r.buf, r.ends = r.buf[:0], r.ends[:0]
				for _, cell := range strings.Split(strings.TrimRight(string(r.raw[:i]), "\r"), ",") {
					r.buf = append(r.buf, strings.Trim(cell, `"`)...)
					r.ends = append(r.ends, len(r.buf))
				}
				r.ends = r.ends[:len(r.ends)-1] // the last is added below
				at = spoiled                    // the carriage return is gone already
			}
		}
		if n := len(r.buf); at == unquoted && n > 0 && r.buf[n-1] == '\r' {
			r.buf = r.buf[:n-1] // the line ended in CR LF
		}
		if len(r.buf) == 0 && len(r.ends) == 0 && err == nil && (at == fieldStart || at == unquoted) {
			continue
		}
		r.ends = append(r.ends, len(r.buf))
		text, start := string(r.buf), 0
		r.cells = r.cells[:0]
		for _, end := range r.ends {
			r.cells = append(r.cells, text[start:end])
			start = end
		}
		return r.cells, err
	}
}

// ofRow tells the errors of one row from those that end the work.
func ofRow(err error) bool { return err == errTooLong || err == errUnclosed || err == errQuote }

// scan reads up to the end of a row and returns the state it ended in.
func (r *records) scan() (at state, bad error) {
	r.raw = r.raw[:0]
	for used := 0; ; {
		c, err := r.in.ReadByte()
		if err == nil && used <= maxRow {
			r.raw = append(r.raw, c)
		}
		switch {
		case err == io.EOF && used > 0:
			if at == quoted && bad == nil {
				bad = errUnclosed
			}
			return at, bad
		case err != nil:
			return at, err
		case c == '\n' && at != quoted:
			return at, bad
		}
		if used++; used > maxRow {
			bad = errTooLong
		}
		keep := used <= maxRow
		switch {
		case at == quoted && c != '"':
		case at == quoted:
			at, keep = quoteInQuoted, false
		case at == spoiled:
			keep = false
		case at == quoteInQuoted && c == '"':
			at = quoted
		case at == quoteInQuoted && c == '\r':
			at, keep = returnBehind, false
		case c == ',' && at != returnBehind:
			if keep {
				r.ends = append(r.ends, len(r.buf))
			}
			at, keep = fieldStart, false
		case at == fieldStart && c == '"':
			at, keep = quoted, false
		case at == quoteInQuoted || at == returnBehind || c == '"':
			at, keep = spoiled, false
			if bad == nil {
				bad = errQuote
			}
		default:
			at = unquoted
		}
		if keep {
			r.buf = append(r.buf, c)
		}
	}
}
