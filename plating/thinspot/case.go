package thinspot

import (
	"errors"
	"fmt"
	"io"
	"slices"

	"example.com/laydown/plating"
	"example.com/laydown/plating/axi"
	"example.com/laydown/plating/bath"
	"example.com/laydown/plating/coat"
	"example.com/laydown/plating/current"
	"example.com/laydown/plating/field"
	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/plating/sense"
	"example.com/laydown/units"
)

// A Case asks where a workpiece is plated thinnest: a body of revolution (Cell), or
// any other (Mesh). The first part of either is the workpiece. [Read] makes it of what the
// file says, which it keeps.
type Case struct {
	CaseFile
	Bath        plating.OperatingBath // the solution at its operating point
	Cell        axi.ProfileProblem    // of a case by profile
	Mesh        *MeshCell             // of a case by mesh; nil by profile
	Robbers     []int                 // parts whose metal is not wanted
	Significant coat.Selector         // of the workpiece; nil means all of it
}

// A MeshCell is a case by mesh: what hangs in the bath. The first surface is
// the workpiece.
type MeshCell struct {
	Problem   field.MeshProblem
	Positions []Position // nil: the workpiece stays as it hangs
	Mended    []string   // what was done to the files, in words
}

// A Position is the cell with the workpiece in another place.
type Position struct {
	Share   units.Ratio // of the time
	Problem field.MeshProblem
}

// Read reads a case. The package comment describes the file. The files that it
// names, as of a mesh, are opened with open, by the name that the case gives; nil
// opens none.
//
// Every entry is checked as far as it can be without solving.
//
// Errors: a [*units.FileError] with line and field.
func Read(r io.Reader, open func(name string) (io.ReadCloser, error)) (Case, error) {
	c, err := read(r, open)
	if err != nil {
		return Case{}, units.InFile("case file", err)
	}
	return c, nil
}

func read(r io.Reader, open func(name string) (io.ReadCloser, error)) (Case, error) {
	tree, err := strictjson.Read(r, strictjson.Doc{What: "case", Need: "an object with bath, parts and min_thickness"})
	if err != nil {
		return Case{}, err
	}
	var f form
	if err := strictjson.Decode(tree, &f); err != nil {
		return Case{}, err
	}
	// A case becomes a problem in a fixed order: the bath at its operating point, the bodies
	// that hang in it, and last the significant surface, which needs the workpiece. The builder
	// keeps the tree beside it, so that each step can tell the line of what it cannot use.
	b := builder{Case: Case{CaseFile: f.CaseFile}, tree: tree, open: open}
	for name, err := range map[string]error{"conductivity": sense.Conductivity().Check(b.Conductivity),
		"min_thickness": sense.Coat().CheckAs("min_thickness", b.MinThickness),
		"voltage":       sense.Volts().Check(b.Voltage)} {
		if err != nil {
			return Case{}, b.at(name).Fail(err, "%v", err)
		}
	}
	// A rectifier holds one of the two. The other follows from the solution.
	if (b.Current > 0) == (b.Voltage > 0) {
		return Case{}, tree.Fail(nil, `need either "current" or "voltage"`)
	}
	if err := b.solution(); err != nil {
		return Case{}, err
	}
	if b.Method == "mesh" {
		err = b.meshes()
	} else {
		err = b.profiles()
	}
	if err == nil && b.Marks != nil {
		err = b.significant()
	}
	return b.Case, err
}

// A builder makes of what the file says what is to be solved. What cannot be is told by its
// place in the file.
type builder struct {
	Case
	tree *strictjson.Node
	open func(name string) (io.ReadCloser, error)
}

// at is the place of a path in the file.
func (b *builder) at(path string) *strictjson.Node {
	n, _ := b.tree.At(path)
	return n
}

// solution puts in the bath, run at its operating point.
func (b *builder) solution() error {
	own := b.Solution
	if own.Use == 0 {
		own.Use = bath.UseFinish
	}
	// The bath is resolved as that of a job is. The efficiency curve matters more here: it is
	// taken at the density of each patch.
	full, err := own.Resolve(bath.Library())
	if err == nil {
		b.Bath, err = full.At(bath.OperatingPoint{})
	}
	var outside *units.RangeError
	if err == nil || errors.As(err, &outside) {
		err = plating.KnownDeadly(b.Bath.Solution())
	}
	if err != nil {
		return b.at("bath").Fail(err, "%v", err)
	}
	return nil
}

// drive is what the rectifier holds: one of the two is given.
func (f *CaseFile) drive() current.Drive {
	if f.Current > 0 {
		return current.ByCurrent(f.Current)
	}
	return current.ByVoltage(f.Voltage)
}

// A role is what a part is in the bath.
type role int

const (
	workpiece role = iota
	anode
	shield
	robber
	floating
)

// role is what a part is, by its kind.
func (s *CaseSurface) role() role {
	return role(max(slices.Index([]string{"cathode", "anode", "shield", "robber", "floating"}, s.Kind), 0))
}

// electric is the role as the solvers know it.
func (r role) electric() current.Kind {
	return [...]current.Kind{current.Cathode, current.Anode, current.Insulator, current.Cathode, current.Floating}[r]
}

// law says how the potential of a surface rises with its current density; without one it is
// primary.
func (s *CaseSurface) law() current.Law {
	l := s.Law
	if l == nil {
		return current.Law{}
	}
	return current.Law{Model: current.Model(max(slices.Index([]string{"primary", "linear", "tafel", "butler-volmer"},
		l.Model), 0)),
		Resistance: l.Resistance, Exchange: l.Exchange, Anodic: float64(l.Anodic), Cathodic: float64(l.Alpha + l.Cathodic),
		Temperature: l.Temperature}
}

// partAt is the path of a part.
func partAt(i int) string { return fmt.Sprintf("parts[%d]", i+1) }

// surface returns role, law and name of a part.
func (b *builder) surface(i int, s *CaseSurface) (role, current.Law, string, error) {
	name := s.Name
	if name == "" {
		name = fmt.Sprintf("part %d", i+1)
	}
	law := s.law()
	if err := law.Check(); err != nil {
		return 0, law, name, b.at(partAt(i)+".law").Fail(err, "%v", err)
	}
	return s.role(), law, name, nil
}
