package job_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"reflect"
	"strings"
	"testing"

	"example.com/laydown/plating/job"
	"example.com/laydown/units"
)

// leaves calls f with a way to set each value of a tree that is neither object nor list,
// and each object and list too.
func leaves(v any, set func(any), f func(old any, set func(any))) {
	f(v, set)
	switch v := v.(type) {
	case map[string]any:
		for name, one := range v {
			leaves(one, func(x any) { v[name] = x }, f)
		}
	case []any:
		for i, one := range v {
			leaves(one, func(x any) { v[i] = x }, f)
		}
	}
}

// spoilt gives values in place of one: of other kinds, and figures at the edge of what a
// float64 holds.
func spoilt(old any) []any {
	list := []any{nil, true, 0.0, -1.0, 1e300, "", " ", "NaN", "x", []any{}, map[string]any{}}
	text, _ := old.(string)
	if _, unit, is := strings.Cut(text, " "); is {
		for _, n := range []string{"0 ", "-1 ", "1e-300 ", "1e-9 ", "1e9 ", "1e300 ", "5e-324 ", "NaN ", "1e999 "} {
			list = append(list, n+unit)
		}
	}
	return list
}

// TestPropertySpoiltJobs: a job with one value of another kind or size is refused with a
// line, or it comes back from its file and gives a sheet or an error: never a panic, and
// no figure that is none.
func TestPropertySpoiltJobs(t *testing.T) {
	files := map[string][]byte{"shop": []byte(shop)}
	refused, read, made := 0, 0, 0
	for name, raw := range files {
		var tree any
		if err := json.Unmarshal(raw, &tree); err != nil {
			t.Fatal(err)
		}
		leaves(tree, func(any) {}, func(old any, set func(any)) {
			for _, wrong := range spoilt(old) {
				set(wrong)
				text, err := json.Marshal(tree)
				if err != nil {
					t.Fatal(err)
				}
				j, err := job.Read(bytes.NewReader(text), nil)
				if err != nil {
					var e *units.FileError
					if !errors.As(err, &e) || e.Line < 1 || e.What == "" || strings.Contains(err.Error(), "%!") {
						t.Errorf("%s, %v for %v: %v (%T)", name, wrong, old, err, err)
					}
					refused++
					continue
				}
				comesBack(t, j, nil)
				if read++; read%4 != 0 {
					continue
				}
				if s, err := j.Sheet(); err == nil {
					made++
					finite(t, "sheet", reflect.ValueOf(s))
					var b bytes.Buffer
					if err := s.WriteJSON(&b, job.SheetOptions{Working: true}); err != nil || !json.Valid(b.Bytes()) {
						t.Errorf("%s, %v for %v: %v", name, wrong, old, err)
					}
				}
			}
			set(old)
		})
	}
	if refused < 1000 || made < 20 {
		t.Errorf("%d refused, %d made", refused, made)
	}
}
