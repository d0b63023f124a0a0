package mesh

import (
	"errors"
	"io"
	"path"
	"reflect"
	"strconv"
	"strings"
	"unicode"

	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/units"
)

// A Named is a mesh in a file that a job or a case names: STL or PLY, neither of which
// knows its unit.
type Named struct {
	File   string       `json:"file" need:"the name of an STL or PLY file"`
	Unit   FileUnit     `json:"unit" doc:"the length that 1 stands for in the file, as mm"`
	Repair bool         `json:"repair" doc:"what is safe is mended, and said"`
	Weld   units.Length `json:"weld" rule:"positive" in:"mm" doc:"vertices closer than this become one; goes with repair"`
}

// A FileUnit is the length that 1 stands for in a file of triangles.
type FileUnit struct{ Length units.Length }

type unitForm struct {
	Value units.Length `json:"unit" rule:"positive"`
}

// DecodeNode reads "mm", or a length as "25.4 mm".
func (u *FileUnit) DecodeNode(n *strictjson.Node) error {
	if err := strictjson.Ready(n, u); err != nil {
		return err
	}
	one := *n
	if n.Kind == "text" && strings.IndexFunc(n.Text, unicode.IsLetter) == 0 {
		one.Text = "1 " + n.Text
	}
	var f unitForm
	err := strictjson.DecodeOne(&one, &f)
	u.Length = f.Value
	return err
}

// EncodeNode gives the length.
func (u FileUnit) EncodeNode() any { return u.Length }

// Schema is that of a length.
func (u *FileUnit) Schema(d *strictjson.Definitions) map[string]any {
	return d.Of(reflect.TypeFor[string]())
}

// Load reads the file, mends it when that is asked for, and returns a sound mesh with
// what was done to it, in words. A nil open opens none.
//
// Errors: a [*units.ValueError] for what is not given or does not fit; those of open,
// [ReadSTL], [ReadPLY] and [Repair]; the fault of a mesh that is no sound closed surface.
func (f *Named) Load(open func(name string) (io.ReadCloser, error)) (m Mesh, mended []string, err error) {
	need := func(field, value, need string) error {
		return &units.ValueError{Field: field, Value: value, Need: need, Err: units.ErrInconsistent}
	}
	switch {
	case f == nil:
		return m, nil, units.Missing("mesh file", "the name of an STL or PLY file with its unit")
	case f.File == "":
		return m, nil, need("file", "empty", "the name of a file in quotes")
	case f.Unit.Length == 0:
		return m, nil, need("file", f.File, `"unit" beside it, the length that 1 stands for in the file, as "mm"`)
	case f.Weld != 0 && !f.Repair:
		return m, nil, need("weld", f.Weld.String(), `"repair": true beside it`)
	case open == nil:
		return m, nil, need("file", f.File, "a reader that opens files: it is read where none can be opened")
	}
	read := ReadSTL
	switch strings.ToLower(path.Ext(f.File)) {
	case ".stl":
	case ".ply":
		read = ReadPLY
	default:
		return m, nil, &units.ValueError{Field: "file", Value: strconv.Quote(units.Clip(f.File)),
			Need: "a name that ends in .stl or .ply", Err: units.ErrOutOfRange}
	}
	r, err := open(f.File)
	if err != nil {
		return m, nil, &NamedError{f.File, "cannot be opened", err, ""}
	}
	defer r.Close()
	if m, err = read(r, f.Unit.Length); err != nil {
		return m, nil, err
	}
	if f.Repair {
		var done []Action
		if m, done, err = Repair(m, RepairOptions{Weld: f.Weld}); err != nil {
			return m, nil, &NamedError{f.File, "cannot be mended", err, inFile(err, f.Weld != 0)}
		}
		for _, a := range done {
			mended = append(mended, f.File+": "+a.String())
		}
	}
	rep, err := Check(m)
	if err != nil {
		return m, nil, err
	}
	if err := rep.Fault(); err != nil {
		return m, nil, &NamedError{f.File, "is no sound closed surface", err, inFile(err, false)}
	}
	return m, mended, nil
}

// A NamedError says what is wrong with the mesh of a file, and what to write in the job
// or case that names it.
type NamedError struct {
	File   string
	What   string
	Err    error
	Remedy string // "" for none
}

// Error returns file, fault and remedy in one line.
func (e *NamedError) Error() string {
	return units.Printable(strconv.Quote(e.File) + " " + e.What + ": " + e.Err.Error() + e.Remedy)
}

// Unwrap returns the fault.
func (e *NamedError) Unwrap() error { return e.Err }

// inFile says how the Repair that a fault speaks of is asked for in a file.
func inFile(err error, hasWeld bool) string {
	switch {
	case errors.Is(err, ErrOpen) && !hasWeld:
		return `; in the file: "repair": true, "weld": "0.01 mm"`
	case strings.Contains(err.Error(), "Repair") && !hasWeld:
		return `; in the file: "repair": true`
	}
	return ""
}
