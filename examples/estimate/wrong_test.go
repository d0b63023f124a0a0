package main

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/iotest"
)

func TestCommandLines(t *testing.T) {
	dir := t.TempDir()
	good := shipped(t, "hands")
	if err := os.WriteFile(filepath.Join(dir, "job.html"), []byte(bare), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name   string
		args   []string
		stdin  string
		status int
		want   string
	}{
		{"help", []string{"-h"}, "", 0, "usage: estimate [-json] [-working]"},
		{"unknown flag", []string{"-amps"}, "", 2, "usage: estimate"},
		{"flag with a wrong value", []string{"-json=maybe"}, "", 2, "usage: estimate"},
		{"two files", []string{good, good}, "", 2, "2 files named; need one"},
		{"flag behind the file", []string{good, "-json"}, "", 2, "flags go before the file"},
		{"empty name", []string{""}, "", 2, "the name of the file is empty"},
		{"a page over the job", []string{"-html", good, good}, "", 2, "does not end in .html"},
		{"a page over the job of that name", []string{"-html", filepath.Join(dir, "job.html"), filepath.Join(dir,
			"job.html")}, "", 2, "the file that is read"},
		{"no such file", []string{filepath.Join(dir, "none.json")}, "", 1, "none.json"},
		{"a directory", []string{dir}, "", 1, "is a folder"},
		{"empty input", []string{"-"}, "", 1, "empty; need an object"},
		{"not JSON", []string{write(t, "{\n\n]")}, "", 1, "line 3"},
		{"wrong field", []string{"-"}, strings.Replace(bare, "min_thickness", "promised", 1), 1,
			"unknown field; known here are"},
		{"promise met below", []string{"-"}, twice(), 1, "lies below already"},
	} {
		t.Run(c.name, func(t *testing.T) {
			status, out, bad := call(t, c.stdin, c.args...)
			if status != c.status || !strings.Contains(bad, c.want) {
				t.Errorf("status %d, standard error %q; want %d and %q", status, bad, c.status, c.want)
			}
			if out != "" {
				t.Errorf("it printed a sheet all the same:\n%s", out)
			}
		})
	}
}

// twice plates a minimum thickness that the layer below has met already.
func twice() string {
	layer := bare[strings.Index(bare, `{"bath"`):strings.LastIndex(bare, "]")]
	thin := strings.Replace(strings.Replace(layer, "1 µm", "0.5 µm", 1), `"min_to_average"`,
		`"count_below": true, "min_to_average"`, 1)
	return strings.Replace(bare, layer, layer+", "+thin, 1)
}

type failing struct{}

var errFull = errors.New("no space left")

func (failing) Write([]byte) (int, error) { return 0, errFull }

func TestWriteError(t *testing.T) {
	for _, args := range [][]string{{}, {"-json"}, {"-working"}} {
		var bad bytes.Buffer
		if status := run(args, nil, failing{}, &bad); status != 1 || !strings.Contains(bad.String(), errFull.Error()) {
			t.Errorf("%v: status %d, %q: a sheet that could not be written must not pass", args, status, bad.String())
		}
	}
}

func TestReadError(t *testing.T) {
	var out, bad bytes.Buffer
	status := run([]string{"-"}, iotest.ErrReader(errFull), &out, &bad)
	if status != 1 || out.Len() > 0 || !strings.Contains(bad.String(), errFull.Error()) {
		t.Errorf("status %d, %q", status, bad.String())
	}
}

// TestWideNames: long names and words fold or run over, and nothing is lost.
func TestWideNames(t *testing.T) {
	long := strings.Repeat("Pendeluhr µ ", 40)
	job := strings.Replace(bare, `"parts"`, `"job": "`+long+`", "substrate": "`+long+`", "parts"`, 1)
	job = strings.Replace(job, `"metal"`, `"name": "`+long+`", "source": "`+strings.Repeat("x", 500)+`", "metal"`, 1)
	status, out, _ := call(t, job, "-")
	if status != 0 || strings.Count(out, "Pendeluhr") < 80 || !strings.Contains(out, strings.Repeat("x", 500)) {
		t.Errorf("status %d:\n%s", status, out)
	}
}
