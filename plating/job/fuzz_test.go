package job_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"math"
	"reflect"
	"strings"
	"testing"

	"example.com/laydown/plating/job"
	"example.com/laydown/units"
)

// FuzzRead: any bytes give a job or a *units.FileError. A job that reads comes back the same
// from what Write writes, and gives a sheet of finite numbers or a typed error, in text,
// page and JSON.
func FuzzRead(f *testing.F) {
	for _, raw := range shippedFiles(f) {
		f.Add(raw)
	}
	for _, text := range []string{right, shop, "\ufeff{}",
		`{"format": "laydown job 1", "parts": [{"shape": {"kind": "tube", "outer": "2 in", "inner": "0.1 ft", "length": "3 mil"}}],
		"layers": [{"bath": {"metal": "Cr", "valence": 6, "efficiency": "15 %"}, "min_to_average": "1", "current": "1e300 A", "time": "1e9 h"}]}`} {
		f.Add([]byte(text))
	}
	for _, w := range wrongs {
		f.Add([]byte(strings.Replace(right, w.old, w.new, 1)))
	}
	for _, w := range shopWrongs {
		f.Add([]byte(strings.Replace(shop, w.old, w.new, 1)))
	}
	f.Fuzz(func(t *testing.T, raw []byte) {
		j, err := job.Read(bytes.NewReader(raw), nil)
		if err != nil {
			var e *units.FileError
			if !errors.As(err, &e) || e.What == "" {
				t.Fatalf("error %v (%T), want a *units.FileError", err, err)
			}
			if e.Line < 0 || e.Line > 1+bytes.Count(raw, []byte("\n")) {
				t.Fatalf("line %d of %d", e.Line, 1+bytes.Count(raw, []byte("\n")))
			}
			return
		}
		comesBack(t, j, nil)
		s, err := j.Sheet()
		if err != nil {
			return
		}
		finite(t, "sheet", reflect.ValueOf(s))
		var b bytes.Buffer
		for _, err := range []error{s.WriteText(&b, job.SheetOptions{Working: true}),
			s.WriteHTML(&b, job.SheetOptions{Working: true})} {
			if err != nil {
				t.Fatal(err)
			}
		}
		b.Reset()
		if err := s.WriteJSON(&b, job.SheetOptions{Working: true}); err != nil || !json.Valid(b.Bytes()) {
			t.Fatalf("%v: %s", err, b.Bytes())
		}
	})
}

// finite walks everything exported in v and wants finite numbers.
func finite(t *testing.T, path string, v reflect.Value) {
	switch v.Kind() {
	case reflect.Float64:
		if x := v.Float(); math.IsNaN(x) || math.IsInf(x, 0) {
			t.Fatalf("%s is %v", path, x)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.IsExported() {
				finite(t, path+"."+f.Name, v.Field(i))
			}
		}
	case reflect.Pointer:
		if !v.IsNil() {
			finite(t, path, v.Elem())
		}
	case reflect.Slice:
		for i := range v.Len() {
			finite(t, path, v.Index(i))
		}
	}
}

// TestHugeJobs: figures at the edge of float64 give an error, not infinity.
func TestHugeJobs(t *testing.T) {
	for _, l := range []string{
		`"min_to_average": 1, "current": "1e300 A", "time": "1e9 h"`,
		`"min_to_average": 1, "current": "1e151 A", "time": "1e151 s", "area": "1 m²"`,
		`"min_to_average": 1e-300, "min_thickness": "1e300 m", "time": "1 s"`,
		`"min_to_average": 1, "min_thickness": "1e-320 m", "current_density": "1 A/m²"`,
		`"min_to_average": 1, "current_density": "1e-320 A/m²", "min_thickness": "1 m"`,
	} {
		layer := `{"bath": {"metal": "Au", "efficiency": 1}, ` + l + `}`
		j, err := job.Read(strings.NewReader(`{"format": "laydown job 1", "parts": [{"area": "1 cm²"}], "layers": [`+
			layer+","+layer+"]}"), nil)
		if err != nil {
			continue // refused with a line: good
		}
		if s, err := j.Sheet(); err == nil {
			finite(t, l, reflect.ValueOf(s))
		}
	}
}
