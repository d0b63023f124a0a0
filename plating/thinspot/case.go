package thinspot

import (
	"errors"
	"io"

	"github.com/shopspring/decimal"
	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating"
	"example.com/laydown/plating/axi"
	"example.com/laydown/plating/bath"
	"example.com/laydown/plating/coat"
	"example.com/laydown/plating/field"
	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/plating/sense"
	"example.com/laydown/units"
)

// Format is the value of the field "format" that [Read] reads.
const Format = "laydown case 1"

// A Case asks where a workpiece is plated thinnest: a body of revolution (Cell), or
// any other (Mesh). The first part of either is the workpiece.
type Case struct {
	Name         string
	Bath         plating.OperatingBath
	Cell         axi.ProfileProblem // of a case by profile
	Mesh         *MeshCell          // of a case by mesh; nil by profile
	Robbers      []int              // parts whose metal is not wanted
	Significant  coat.Selector      // of the workpiece; nil means all of it
	MinThickness units.Length
	PricePerGram decimal.Decimal // of the counted metal; zero when not given
	Currency     string
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

// An Error reports what is wrong with a case file, and where.
type Error struct {
	Line int    // counted from 1; 0 when the file as a whole is meant
	Path string // the field, as parts[1].law; "" for the whole
	What string // what is wrong and what would do
	Err  error  // the reason below, if any
}

// Error returns line, field and reason in one line.
func (e *Error) Error() string { return strictjson.Message("case file", e.Line, e.Path, e.What) }

// Unwrap returns the reason below: a [*units.ParseError], a [*units.ValueError] ...
func (e *Error) Unwrap() error { return e.Err }

// Read reads a case. The package comment describes the file. The files that it
// names, as of a mesh, are opened with open, by the name that the case gives; nil
// opens none.
//
// Every entry is checked as far as it can be without solving.
//
// Errors: an [*Error] with line and field.
func Read(r io.Reader, open func(name string) (io.ReadCloser, error)) (Case, error) {
	c, err := read(r, open)
	var at *strictjson.Error
	if errors.As(err, &at) {
		return Case{}, (*Error)(at)
	}
	return c, err
}

func read(r io.Reader, open func(name string) (io.ReadCloser, error)) (Case, error) {
	tree, err := strictjson.Read(r, strictjson.Doc{What: "case", Need: "an object with bath, parts and min_thickness"})
	if err != nil {
		return Case{}, err
	}
	o := strictjson.Object(tree)
	if f := o.Must("format", `"`+Format+`"`); f != nil && (f.Kind != "text" || f.Text != Format) {
		o.Keep(f.Fail(nil, "is %s; need %q", strictjson.Describe(f), Format))
	}
	c := Case{Name: o.Text("case"), Currency: o.Text("currency")}
	byMesh := o.Choice("method", "profile", "mesh") == 1
	own := o.Must("bath", "the bath as an object")
	cell := cellReader{tree: tree, open: open}
	strictjson.Needed(o, "conductivity", &cell.kappa, `one as "6 S/m"`)
	strictjson.Needed(o, "min_thickness", &c.MinThickness, `the thickness at the thinnest spot, as "2.5 µm"`)
	cell.tank = o.Field("tank")
	hasCurrent := strictjson.Positive(o, "current", &cell.current)
	hasVoltage := strictjson.Positive(o, "voltage", &cell.voltage)
	if f := o.Field("price_per_g"); f != nil {
		var money amountForm
		if err := strictjson.DecodeOne(f, &money); err != nil {
			o.Keep(err)
		}
		c.PricePerGram = money.Amount
	}
	cell.parts = o.Items("parts", "a list of parts, the workpiece first", true)
	marks := o.Field("significant")
	if byMesh {
		cell.positions = o.Field("positions")
	}
	if err := o.Done(); err != nil {
		return Case{}, err
	}
	for name, err := range map[string]error{"conductivity": sense.Conductivity().Check(cell.kappa),
		"min_thickness": sense.Coat().CheckAs("min_thickness", c.MinThickness),
		"voltage":       sense.Volts().Check(cell.voltage)} {
		if err != nil {
			return Case{}, o.Member(name).Fail(err, "%v", err)
		}
	}
	if hasCurrent == hasVoltage {
		return Case{}, tree.Fail(nil, `need either "current" or "voltage"`)
	}
	if c.Bath, err = readBath(own); err != nil {
		return Case{}, err
	}
	if err := plating.KnownDeadly(c.Bath.Solution()); err != nil {
		return Case{}, own.Fail(err, "%v", err)
	}
	if byMesh {
		err = cell.readMeshes(&c)
	} else {
		err = cell.readProfiles(&c)
	}
	if err == nil {
		c.Significant, err = readSignificant(marks, c.Mesh)
	}
	return c, err
}

type amountForm struct {
	Amount decimal.Decimal `json:"price_per_g"`
}

// readBath reads the bath of a case, run at its operating point.
func readBath(n *strictjson.Node) (plating.OperatingBath, error) {
	var b bath.Bath
	if err := strictjson.Decode(n, &b); err != nil {
		return plating.OperatingBath{}, err
	}
	if b.Use == 0 {
		b.Use = bath.UseFinish
	}
	full, err := b.Resolve(bath.Library())
	if err != nil {
		return plating.OperatingBath{}, n.Fail(err, "%v", err)
	}
	out, err := full.At(bath.OperatingPoint{})
	var outside *units.RangeError
	if err != nil && !errors.As(err, &outside) {
		return out, n.Fail(err, "%v", err)
	}
	return out, nil
}

// A cellReader reads what hangs in the bath.
type cellReader struct {
	kappa      units.Conductivity
	current    units.Current
	voltage    units.Voltage
	tree, tank *strictjson.Node // the case as a whole, and its tank
	parts      []*strictjson.Node
	positions  *strictjson.Node
	open       func(name string) (io.ReadCloser, error)
	problem    field.MeshProblem // by mesh
	mended     []string
}

// A role is what a part is in the bath, by the field "kind".
type role int

const (
	workpiece role = iota
	anode
	shield
	robber
	floating
)

// readRole reads the role of a part.
func readRole(o *strictjson.Reader) role {
	return role(o.Choice("kind", "cathode", "anode", "shield", "robber", "floating"))
}

// aLength is what a missing dimension needs.
const aLength = `number and unit in quotes, as "12.5 mm"`

// readLengths reads a list of as many lengths as v holds; what names them. Without the
// list v stays as it is.
func readLengths(o *strictjson.Reader, n *strictjson.Node, what, count string, v []units.Length) {
	if n == nil {
		return // the missing field is reported by its reader
	}
	list := o.ItemsOf(n, what, true)
	if o.Err() == nil && len(list) != len(v) {
		o.Keep(n.Fail(nil, "has %d items; need %s, %s", len(list), count, what))
	}
	for i := range min(len(list), len(v)) {
		o.Scan(list[i], &v[i], false)
	}
}

// readPlace reads x, y and z.
func readPlace(o *strictjson.Reader, n *strictjson.Node) r3.Vec {
	var v [3]units.Length
	readLengths(o, n, "x, y and z", "three", v[:])
	return r3.Vec{X: float64(v[0]), Y: float64(v[1]), Z: float64(v[2])}
}

// readDegrees reads an angle in degrees, a field that cannot be left out.
func readDegrees(o *strictjson.Reader, name string, low, high float64) float64 {
	f := o.Must(name, "an angle in degrees, a plain number")
	var v units.Ratio
	if o.Scan(f, &v, true) && !(float64(v) >= low && float64(v) <= high) {
		o.Keep(f.Fail(units.ErrOutOfRange, "is %s; need degrees from %g to %g", strictjson.Describe(f), low, high))
	}
	return float64(v)
}
