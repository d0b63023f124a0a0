package job

import (
	"bufio"
	"bytes"
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"runtime"
	"strconv"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"example.com/laydown/testdata"
)

// TestStreaming feeds 200 000 rows through pipes: each comes out before the
// next ones go in, in order, and the heap stays flat.
func TestStreaming(t *testing.T) {
	total := 200_000
	if !testdata.Slow() {
		total = 20_000
	}
	inRead, inWrite := io.Pipe()
	outRead, outWrite := io.Pipe()
	var bad bytes.Buffer
	status := make(chan int, 1)
	go func() {
		s := runRows(inRead, outWrite, &bad)
		_ = outWrite.Close()
		status <- s
	}()
	lines := make(chan string, 10)
	go func() {
		defer close(lines)
		scan := bufio.NewScanner(outRead)
		for scan.Scan() {
			lines <- scan.Text()
		}
	}()
	next := func() string {
		t.Helper()
		select {
		case line := <-lines:
			return line
		case <-time.After(20 * time.Second):
			t.Fatal("no output while the input is open")
		}
		return ""
	}
	send := func(s string) {
		t.Helper()
		if _, err := io.WriteString(inWrite, s); err != nil {
			t.Fatal(err)
		}
	}
	row := func(i int) string {
		if i%1000 == 999 {
			return fmt.Sprintf("p%d,0,5.06,Au,1,17.3,0.37,0.5,1,0.6,98.50,x\n", i)
		}
		return fmt.Sprintf("p%d,%d,5.06,Au,,,0.37,0.5,1,0.6,98.50,x\n", i, 1+i%50)
	}
	send(rowHeader + "\n")
	if line := next(); !strings.HasPrefix(line, rowHeader+",current_A") {
		t.Fatalf("header %q", line)
	}
	heap := func() uint64 {
		runtime.GC()
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		return m.HeapAlloc
	}
	var early, most uint64
	const batch = 500
	for i := 0; i < total; i += batch {
		var b strings.Builder
		for k := range batch {
			b.WriteString(row(i + k))
		}
		go func() { _, _ = io.WriteString(inWrite, b.String()) }() // what is lost is missed below
		for k := range batch {
			if line, want := next(), fmt.Sprintf("p%d,", i+k); !strings.HasPrefix(line, want) {
				t.Fatalf("%q where %q should stand", line, want)
			}
		}
		switch {
		case i == total/20:
			early = heap()
		case i > total/20 && i%(total/10) == 0:
			most = max(most, heap())
		}
	}
	if err := inWrite.Close(); err != nil {
		t.Fatal(err)
	}
	if line, more := <-lines; more {
		t.Errorf("one more line: %q", line)
	}
	if s := <-status; s != 1 || !strings.Contains(bad.String(), fmt.Sprintf("%d of %d rows failed", total/1000, total)) {
		t.Errorf("status %d, %q", s, bad.String())
	}
	if most > early+1<<20 {
		t.Errorf("the heap grew from %d to %d bytes", early, most)
	}
}

// FuzzRow: whatever the rows hold, the output is CSV with a row for each row,
// and each has either finite numbers or an error and no numbers.
func FuzzRow(f *testing.F) {
	f.Add("hand,12,5.06,Au,1,17.3,0.37,0.5,1,0.6,98.50,x\n")
	f.Add("\"a\r\nb\",1e0,.5,Ag,,,1,1,1,1,0,\"\"\"\"\n,,\n")
	for _, w := range wrongCells {
		row := goodRow()
		for i, name := range strings.Split(rowHeader, ",") {
			if name == w.column {
				row[i] = w.cell
			}
		}
		f.Add(strings.Join(row, ","))
	}
	columns := len(strings.Split(rowHeader, ","))
	f.Fuzz(func(t *testing.T, body string) {
		status, out, bad := callRows(t, rowHeader+"\n"+body)
		if status != 0 && status != 1 {
			t.Fatalf("status %d, %q", status, bad)
		}
		r := csv.NewReader(strings.NewReader(out))
		r.FieldsPerRecord = columns + len(addedColumns)
		all, err := r.ReadAll()
		if err != nil {
			t.Fatalf("the output is not CSV: %v\n%q", err, out)
		}
		failed := 0
		for _, row := range all[1:] {
			reason := row[len(row)-1]
			if reason != "" {
				failed++
				if !utf8.ValidString(reason) || strings.ContainsAny(reason, "\n\r") {
					t.Fatalf("error %q", reason)
				}
			}
			for _, cell := range row[columns : len(row)-1] {
				if (cell == "") != (reason != "") {
					t.Fatalf("numbers %q and error %q", row[columns:], reason)
				}
				if cell == "" {
					continue
				}
				if v, err := strconv.ParseFloat(cell, 64); err != nil || math.IsNaN(v) || math.IsInf(v, 0) || v < 0 {
					t.Fatalf("%q is no number: %v", cell, err)
				}
			}
		}
		if (failed > 0) != (status == 1) || (failed > 0) != strings.Contains(bad, fmt.Sprintf("%d of %d rows failed",
			failed, len(all)-1)) {
			t.Fatalf("%d rows failed: status %d, %q", failed, status, bad)
		}
	})
}

// FuzzRecords holds the reader of this program against that of package csv,
// which it must agree with on everything but carriage returns inside quotes and the
// apostrophe before a formula. Behind a fault over several lines they part: package csv
// goes on behind it, ours on the second of the lines.
func FuzzRecords(f *testing.F) {
	for _, s := range []string{"a,b\n", "a,\"b\"\"c\"\n", "\"a\nb\",c\r\n\n\r\nd", "a\"b,c\nd", "\"a\"b\nc", "\"a\"\r\nb",
		"\"a\"\rb\nc", "\"a\"\r,b\nc", "\"open\nc", "a\r", "'=1,''=1,'a", "\"a\nb\"c\nd", ",,\n", "\"\"", "\r\r\n"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if strings.HasPrefix(text, "\ufeff") || len(text) > maxRow || strings.Count(text, "\n") >= maxLines {
			return
		}
		ours := newRecords(strings.NewReader(text))
		theirs := csv.NewReader(strings.NewReader(text))
		theirs.FieldsPerRecord = -1
		for {
			a, errA := ours.next()
			b, errB := theirs.Read()
			if (errA == io.EOF) != (errB == io.EOF) || (errA == nil) != (errB == nil) {
				t.Fatalf("%q: %q, %v; package csv: %q, %v", text, a, errA, b, errB)
			}
			if errA == io.EOF {
				return
			}
			if errA != nil && len(ours.pending) > 0 {
				return
			}
			if errA != nil {
				continue // both say so, and both go on
			}
			for i := range b {
				b[i] = spreadsheetText(b[i])
			}
			left := strings.ReplaceAll(strings.Join(a, "\x00"), "\r", "")
			right := strings.ReplaceAll(strings.Join(b, "\x00"), "\r", "")
			if left != right || len(a) != len(b) {
				t.Fatalf("%q: %q; package csv: %q", text, a, b)
			}
		}
	})
}

// TestLongRowsAreBounded: a row without end does not fill the memory.
func TestLongRowsAreBounded(t *testing.T) {
	testdata.SlowOnly(t)
	for _, piece := range []string{"y", ",", "\"", "y\n"} {
		r := newRecords(io.MultiReader(strings.NewReader(`"`), io.LimitReader(&endlessRows{piece: piece}, 50<<20)))
		for {
			_, err := r.next()
			if err == io.EOF {
				break
			}
		}
		if len(r.buf) > maxRow || cap(r.buf) > 4*maxRow || len(r.ends) > maxRow {
			t.Errorf("%q: %d bytes and %d cells kept", piece, cap(r.buf), len(r.ends))
		}
	}
}

type endlessRows struct {
	piece string
	at    int
}

func (e *endlessRows) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = e.piece[e.at%len(e.piece)]
		e.at++
	}
	return len(p), nil
}
