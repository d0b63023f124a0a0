package jobfile

import (
	"io"
	"path"
	"strings"

	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/units"
)

// readMeshFile reads a mesh from a file that a job or a case names: STL or PLY,
// with its unit, mended when that is asked for, and sound.
func readMeshFile(o *strictjson.Reader, n *strictjson.Node, open func(name string) (io.ReadCloser, error)) (m mesh.Mesh, mended []string, err error) {
	var unit, weld units.Length
	if !strictjson.Positive(o, "unit", &unit) {
		o.Keep(n.Fail(nil, `needs "unit" beside it, the length that 1 stands for in the file, as "1 mm"`))
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
			return m, nil, n.Fail(err, "cannot be mended: %v", err)
		}
		for _, a := range done {
			mended = append(mended, n.Text+": "+a.String())
		}
	}
	rep, err := mesh.Check(m)
	if err != nil {
		return m, nil, n.Fail(err, "%v", err)
	}
	if !rep.Sound() {
		return m, nil, n.Fail(units.ErrInconsistent, "is no sound closed surface (%s); mend it, or try \"repair\": true", strings.Join(strings.Fields(rep.String()), " "))
	}
	return m, mended, nil
}
