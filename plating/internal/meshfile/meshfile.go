// Package meshfile reads the mesh that a job or a case names with "file", "unit",
// "repair" and "weld", and says by line and field what is wrong with it.
package meshfile

import (
	"errors"
	"io"
	"path"
	"strconv"
	"strings"
	"unicode"

	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/units"
)

// Read reads a mesh from the file that n names: STL or PLY, with its unit, mended
// when that is asked for, and sound. The unit and what is to be mended stand beside
// n in o. The file is opened with open; mended says in words what was done to it.
//
// Errors: a [*strictjson.Error]; its reason may be one of package mesh.
func Read(o *strictjson.Reader, n *strictjson.Node, open func(name string) (io.ReadCloser, error)) (m mesh.Mesh,
	mended []string, err error) {
	var unit, weld units.Length
	if u := o.Field("unit"); u != nil && u.Kind == "text" && strings.IndexFunc(u.Text, unicode.IsLetter) == 0 {
		one := *u // "mm" stands for the millimetre itself
		one.Text = "1 " + u.Text
		o.Scan(&one, &unit, false)
	} else if !strictjson.Positive(o, "unit", &unit) {
		o.Keep(n.Fail(nil, `needs "unit" beside it, the length that 1 stands for in the file, as "mm"`))
	}
	repair := o.Yes("repair")
	hasWeld := strictjson.Positive(o, "weld", &weld)
	if n.Kind != "text" || n.Text == "" {
		o.Keep(n.Fail(nil, `is %s; need the name of a file in quotes`, strictjson.Describe(n)))
	}
	if err := o.Err(); err != nil {
		return m, nil, err
	}
	if hasWeld && !repair {
		return m, nil, n.Fail(units.ErrInconsistent, `"weld" goes with "repair": true`)
	}
	if open == nil {
		return m, nil, n.Fail(units.ErrInconsistent, "names a file, and this file is read where no files can be opened")
	}
	read := mesh.ReadSTL
	switch strings.ToLower(path.Ext(n.Text)) {
	case ".stl":
	case ".ply":
		read = mesh.ReadPLY
	default:
		return m, nil, n.Fail(units.ErrOutOfRange, "is %s; need a name that ends in .stl or .ply", strictjson.Describe(n))
	}
	f, err := open(n.Text)
	if err != nil {
		return m, nil, n.Fail(err, "cannot be opened: %v", err)
	}
	defer f.Close()
	m, err = read(f, unit)
	if err != nil {
		return m, nil, n.Fail(err, "%v", err)
	}
	if repair {
		var done []mesh.Action
		if m, done, err = mesh.Repair(m, mesh.RepairOptions{Weld: weld}); err != nil {
			return m, nil, n.Fail(err, "%s cannot be mended: %v%s", strconv.Quote(n.Text), err, inFile(err, hasWeld))
		}
		for _, a := range done {
			mended = append(mended, n.Text+": "+a.String())
		}
	}
	rep, err := mesh.Check(m)
	if err != nil {
		return m, nil, n.Fail(err, "%v", err)
	}
	if err := rep.Fault(); err != nil {
		return m, nil, n.Fail(err, "%s is no sound closed surface: %v%s", strconv.Quote(n.Text), err, inFile(err, false))
	}
	return m, mended, nil
}

// inFile says how the Repair that a fault of a mesh speaks of is asked for in a file.
func inFile(err error, hasWeld bool) string {
	switch text := err.Error(); {
	case errors.Is(err, mesh.ErrOpen) && !hasWeld:
		return `; in the file: "repair": true, "weld": "0.01 mm"`
	case strings.Contains(text, "Repair") && !hasWeld:
		return `; in the file: "repair": true`
	}
	return ""
}
