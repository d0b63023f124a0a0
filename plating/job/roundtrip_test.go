package job_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"math"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"example.com/laydown/plating/job"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/plating/shape"
	"example.com/laydown/units"
)

// everything lets cmp look into unexported fields too.
var everything = cmp.Exporter(func(reflect.Type) bool { return true })

// comesBack writes a job and reads it: it must be the same.
func comesBack(t testing.TB, j job.Job, open job.Opener, but ...cmp.Option) job.Job {
	t.Helper()
	var b bytes.Buffer
	if err := j.Write(&b); err != nil {
		t.Fatal(err)
	}
	back, err := job.Read(bytes.NewReader(b.Bytes()), open)
	if err != nil {
		t.Fatalf("%v in\n%s", err, b.Bytes())
	}
	if diff := cmp.Diff(j, back, append(but, everything)...); diff != "" {
		t.Fatalf("the job does not come back from\n%s\n%s", b.Bytes(), diff)
	}
	return back
}

// TestPropertyShippedJobsComeBack: the jobs of the workshop come back from what Write
// writes.
func TestPropertyShippedJobsComeBack(t *testing.T) {
	files := shippedFiles(t)
	files["right"], files["shop"] = []byte(right), []byte(shop)
	for name, raw := range files {
		t.Run(name, func(t *testing.T) {
			j, err := job.Read(bytes.NewReader(raw), nil)
			if err != nil {
				t.Fatal(err)
			}
			comesBack(t, j, nil)
		})
	}
}

// opener gives the files that the jobs of a maker name.
func opener(t testing.TB) job.Opener {
	t.Helper()
	m, err := mesh.Box(30*units.Millimetre, 20*units.Millimetre, 10*units.Millimetre,
		mesh.Grid{Size: 8 * units.Millimetre})
	if err != nil {
		t.Fatal(err)
	}
	var block bytes.Buffer
	if err := mesh.WritePLY(&block, m, units.Millimetre, mesh.Skin{}); err != nil {
		t.Fatal(err)
	}
	files := map[string]string{"block.ply": block.String(), "ours.json": ourBaths}
	return func(name string) (io.ReadCloser, error) {
		text, ok := files[name]
		if !ok {
			return nil, errors.New("no such file")
		}
		return io.NopCloser(strings.NewReader(text)), nil
	}
}

// TestPropertyJobsComeBack: jobs with every field that files know come back from what
// Write writes, and what was read comes back with all that reading adds.
func TestPropertyJobsComeBack(t *testing.T) {
	open := opener(t)
	met := map[string]bool{}
	for n := range uint64(300) {
		j := maker{rand.New(rand.NewPCG(n, 7))}.job()
		given := covered(j)
		back := comesBack(t, j, open, cmpopts.IgnoreUnexported(job.MeshFile{}))
		comesBack(t, back, open)
		for name := range given {
			met[name] = true
		}
	}
	for _, name := range fieldsOf(reflect.TypeFor[job.Job]()) {
		if !met[name] {
			t.Errorf("no job gives %s", name)
		}
	}
	for _, body := range []any{shape.Plate{}, shape.Disc{}, shape.Ring{}, shape.Cylinder{}, shape.Tube{}, shape.Cone{},
		shape.Sphere{}, shape.Cap{}, shape.Torus{}, shape.HexBar{}, shape.Wire{}, shape.Thread{}, shape.Chain{},
		shape.ScrewHead{},
		shape.Hole{}, shape.Assembly{}} {
		typ := reflect.TypeOf(body)
		if typ.Kind() != reflect.Struct {
			if !met[typ.String()] {
				t.Errorf("no job has a %s", typ)
			}
			continue
		}
		for _, name := range fieldsOf(typ) {
			if !met[name] {
				t.Errorf("no job gives %s", name)
			}
		}
	}
}

// fieldName is a field of a type, whatever the quantity of a range.
func fieldName(t reflect.Type, f reflect.StructField) string {
	name, _, _ := strings.Cut(t.String(), "[")
	return name + "." + f.Name
}

// ours reports whether a struct is one of a job, not a number or a formula.
func ours(t reflect.Type) bool {
	return t.Kind() == reflect.Struct && (strings.Contains(t.PkgPath(), "/plating/") || t.Name() == "")
}

// fieldsOf lists the fields that files know of a type and of those that it holds.
func fieldsOf(t reflect.Type) []string {
	met := map[reflect.Type]bool{}
	var list []string
	var walk func(t reflect.Type)
	walk = func(t reflect.Type) {
		for t.Kind() == reflect.Pointer || t.Kind() == reflect.Slice {
			t = t.Elem()
		}
		if !ours(t) || met[t] {
			return
		}
		met[t] = true
		for i := range t.NumField() {
			if f := t.Field(i); f.IsExported() && f.Tag.Get("json") != "-" {
				list = append(list, fieldName(t, f))
				walk(f.Type)
			}
		}
	}
	walk(t)
	return list
}

// covered lists the fields of a value that are given.
func covered(v any) map[string]bool {
	met := map[string]bool{}
	var walk func(v reflect.Value)
	walk = func(v reflect.Value) {
		switch v.Kind() {
		case reflect.Pointer, reflect.Interface:
			if !v.IsNil() {
				walk(v.Elem())
			}
		case reflect.Slice:
			met[v.Type().String()] = true
			for i := range v.Len() {
				walk(v.Index(i))
			}
		case reflect.Struct:
			for i := range v.NumField() {
				if f := v.Type().Field(i); f.IsExported() && !v.Field(i).IsZero() {
					met[fieldName(v.Type(), f)] = true
					walk(v.Field(i))
				}
			}
		}
	}
	walk(reflect.ValueOf(v))
	return met
}

// TestPropertyWriteRefuses: what no file can hold is an error with its path.
func TestPropertyWriteRefuses(t *testing.T) {
	good := func() job.Job { return maker{rand.New(rand.NewPCG(1, 7))}.job() }
	for name, c := range map[string]struct {
		change func(j *job.Job)
		want   string
	}{
		"area of no number": {func(j *job.Job) { j.Parts[0] = job.Part{Area: units.Area(math.NaN())} }, "parts[1].area"},
		"body of another kind": {func(j *job.Job) {
			j.Parts[0].Shape = &job.Shape{Piece: shape.Masked{Piece: shape.Sphere{Diameter: 1}}}
		}, "parts[1].shape"},
		"no body": {func(j *job.Job) { j.Parts[0].Shape = &job.Shape{} }, "parts[1].shape"},
		"holes in a bar": {func(j *job.Job) {
			j.Parts[0].Shape = &job.Shape{Piece: shape.Drilled{Piece: shape.Wire{}, Holes: []shape.Hole{{}}}}
		}, "parts[1].shape"},
	} {
		j := good()
		c.change(&j)
		var b bytes.Buffer
		var e *units.FileError
		err := j.Write(&b)
		if !errors.As(err, &e) || !strings.Contains(err.Error(), c.want) || b.Len() > 0 {
			t.Errorf("%s: %v, %d bytes written", name, err, b.Len())
		}
	}
	if err := good().Write(nil); err == nil {
		t.Error("no writer")
	}
}

// TestPropertyPrintedUnitsRead: the units that files and sheets are written in read back,
// in a job and by themselves.
func TestPropertyPrintedUnitsRead(t *testing.T) {
	readShop(t, `"1.2 kWh"`, `"1.2 kW·h"`, `"per": "g"`, `"per": "ozt"`)
	j := readShop(t, `"1.2 kWh"`, `"1.2 kW·h"`)
	close1(t, "kW·h", float64(j.Price.Heating), 1.2*3.6e6)
	var charge units.Charge
	if err := charge.UnmarshalText([]byte("2 A·min")); err != nil || charge != 120 {
		t.Errorf("%v, %v", charge, err)
	}
	var b bytes.Buffer
	if err := j.Write(&b); err != nil || !strings.Contains(b.String(), `"heating": "1.2 kW·h"`) ||
		!strings.Contains(b.String(), `"per": "g"`) {
		t.Errorf("%v\n%s", err, b.Bytes())
	}
}

// TestPropertyJobIsJSON: encoding/json writes and reads a job as Write and Read do.
func TestPropertyJobIsJSON(t *testing.T) {
	j := readShop(t)
	raw, err := json.Marshal(j)
	if err != nil {
		t.Fatal(err)
	}
	var back job.Job
	if err := json.Unmarshal(raw, &back); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(j, back, everything); diff != "" {
		t.Error(diff)
	}
	var e *units.FileError
	if err := json.Unmarshal([]byte(`{"format": "laydown job 1", "parts": []}`), &back); !errors.As(err, &e) ||
		e.Path != "parts" {
		t.Errorf("%v", err)
	}
	if diff := cmp.Diff(j, back, everything); diff != "" {
		t.Errorf("a wrong file changed the job: %s", diff)
	}
	var none *job.Job
	if err := none.UnmarshalJSON(raw); !errors.Is(err, units.ErrNotGiven) {
		t.Errorf("into nil: %v", err)
	}
}
