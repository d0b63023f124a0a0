package job

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"example.com/laydown/plating/bath"
	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/units"
)

// Format is the value of the field "format" that this package reads.
const Format = "laydown job 1"

// A file is a job with its format.
type file struct {
	Format string `json:"format" is:"laydown job 1"`
	Job
}

// An Opener opens a file by the name that a job gives it.
type Opener func(name string) (io.ReadCloser, error)

// Read reads a job file; the package comment describes it. Parts may be meshes in files
// of their own, and layers may name baths of a file of the shop's own: they are opened
// with open, by the name that the job gives. A nil open opens none.
//
// Every figure is checked as far as it can be by itself and beside the others; what only
// shows when the job is computed comes from [Job.Sheet].
//
// Errors: a [*units.FileError] with line and field.
func Read(r io.Reader, open Opener) (Job, error) {
	j, err := read(r, open)
	if err != nil {
		return Job{}, units.InFile("job file", err)
	}
	return j, nil
}

func read(r io.Reader, open Opener) (Job, error) {
	// A file is read in three steps. The tree holds each value with its line. Decode checks each
	// figure by itself, by the tags of the struct. Check then holds the fields against each
	// other; what it finds carries a path, and the tree turns the path into a line.
	tree, err := strictjson.Read(r, strictjson.Doc{What: "job", Need: "an object with job, parts and layers"})
	if err != nil {
		return Job{}, err
	}
	var f file
	if err := strictjson.Decode(tree, &f); err != nil {
		return Job{}, err
	}
	j := f.Job
	for i := range j.Parts {
		if j.Parts[i].Count == 0 {
			j.Parts[i].Count = 1
		}
	}
	// Meshes and baths are loaded before the checks: the area of a part and the baths that
	// layers name come from them.
	if err := j.load(tree, open); err != nil {
		return Job{}, err
	}
	for i := range j.Layers {
		at, rest := tree.At(fmt.Sprintf("layers[%d].bath.hazards", i+1))
		if rest == "" && j.Layers[i].Bath.Library != "" {
			return Job{}, at.Fail(units.ErrInconsistent, `does not go with "library": that bath has its own`)
		}
	}
	// An empty list of hazards and a missing one are the same bits once decoded. The difference
	// matters: with a sequence the check for hydrogen cyanide goes by this list. So the tree is
	// asked.
	if j.sequenced() {
		for i := range j.Layers {
			b := &j.Layers[i].Bath
			at, rest := tree.At(fmt.Sprintf("layers[%d].bath.hazards", i+1))
			if rest != "" && b.Library == "" && b.Like == "" {
				return Job{}, at.Fail(units.ErrInconsistent, `field "hazards" is missing; need what the bath holds, as `+
					`["cyanide", "acid"], or [] for none: the check of the sequence goes by it`)
			}
		}
	}
	var fault *Fault
	if err := j.Check(); errors.As(err, &fault) {
		return Job{}, tree.Place(fault.Path, fault.Err)
	} else if err != nil {
		return Job{}, err
	}
	return j, nil
}

// load reads the files that the job names.
func (j *Job) load(tree *strictjson.Node, open Opener) error {
	for i := range j.Parts {
		m := j.Parts[i].Mesh
		if m == nil {
			continue
		}
		if m.File == "" {
			at, _ := tree.At(fmt.Sprintf("parts[%d].mesh", i+1))
			return at.Fail(units.ErrInconsistent, `field "file" is missing; need the name of an STL or PLY file`)
		}
		if err := m.load(j.Parts[i].Name, open); err != nil {
			return tree.Place(fmt.Sprintf("parts[%d].mesh.file", i+1), err)
		}
	}
	if j.BathFile == "" {
		if n, rest := tree.At("baths"); rest == "" {
			return n.Fail(nil, "is empty; need the name of a file of baths in quotes")
		}
		return nil
	}
	at, _ := tree.At("baths")
	if open == nil {
		return at.Fail(units.ErrInconsistent, "names a file, and this file is read where no files can be opened")
	}
	f, err := open(j.BathFile)
	if err != nil {
		return at.Fail(err, "cannot be opened: %v", err)
	}
	defer f.Close()
	if j.Baths, err = bath.Read(f); err != nil {
		return at.Fail(err, "%q: %v", j.BathFile, err)
	}
	return nil
}

// Write writes the job as a file that [Read] reads back. Files that the job names are not
// written.
//
// Errors: a [*units.FileError] for a value that no file can hold, as NaN; those of w.
func (j Job) Write(w io.Writer) error {
	if w == nil {
		return units.Missing("writer", "one that takes the job file")
	}
	raw, err := j.MarshalJSON()
	if err != nil {
		return &units.FileError{File: "job file", What: err.Error(), Err: err}
	}
	_, err = w.Write(raw)
	return err
}

// MarshalJSON writes the job file.
//
// A layer of a job without a sequence need not list its hazards, and no list is not an empty
// list. So there an empty list is left out: with a sequence, [Read] then asks for it.
func (j Job) MarshalJSON() ([]byte, error) {
	if j.sequenced() {
		return strictjson.Encode(file{Job: j})
	}
	return strictjson.Encode(file{Job: j}, "layers.bath.hazards")
}

// sequenced reports whether the job has tanks, its own or proposed, that are judged.
func (j *Job) sequenced() bool { return j.Finish != sequence.FinishUnknown || len(j.Steps) > 0 }

// UnmarshalJSON reads a job file that names no other files.
//
// Errors: a [*units.FileError] with line and field.
func (j *Job) UnmarshalJSON(raw []byte) error {
	if j == nil {
		return units.Missing("job to read into", "a pointer to one")
	}
	v, err := Read(strings.NewReader(string(raw)), nil)
	if err == nil {
		*j = v
	}
	return err
}

// Schema returns the JSON Schema of job files, from the fields that [Read] knows.
func Schema() ([]byte, error) { return strictjson.Schema("job of laydown", file{}) }

// DecodeNode reads a name, or a number from 1.
func (l *LayerRef) DecodeNode(n *strictjson.Node) error {
	if err := strictjson.Ready(n, l); err != nil {
		return err
	}
	if n.Kind != "text" && n.Kind != "number" || n.Text == "" {
		return n.Fail(units.ErrInconsistent, "is %s; need the name of a layer, or its number from 1",
			strictjson.Describe(n))
	}
	*l = LayerRef(n.Text)
	return nil
}

// EncodeNode gives the name.
func (l LayerRef) EncodeNode() any { return string(l) }

// Schema is that of a name or a number.
func (l *LayerRef) Schema(*strictjson.Definitions) map[string]any {
	return map[string]any{"type": []string{"string", "integer"}}
}
