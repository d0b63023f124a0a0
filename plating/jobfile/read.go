package jobfile

import (
	"io"

	"example.com/laydown/plating"
	"example.com/laydown/plating/baths"
	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/plating/traveller"
	"example.com/laydown/units"
)

// Format is the value of the field "format" that this package reads.
const Format = "laydown job 1"

// Read reads a job file and returns its parts and coats, for
// [plating.EstimateJob]. The package comment describes the file. What it says
// beyond that, as finish, rinse and price, is checked and left out: [ReadShop]
// returns all of it.
//
// Every quantity is checked as far as it can be by itself; what only shows when
// the job is computed comes from [plating.EstimateJob].
//
// Errors: an [*Error] with line and field; a file without layers is one.
func Read(r io.Reader) (plating.Job, error) {
	shop, err := ReadShop(r)
	if err != nil {
		return plating.Job{}, err
	}
	if len(shop.Layers) == 0 {
		return plating.Job{}, &Error{Path: "layers",
			What: "is missing: the coats are planned from the finish; read the job with ReadShop", Err: units.ErrNotPositive}
	}
	job := plating.Job{Name: shop.Name, Substrate: shop.Substrate, Parts: shop.Parts}
	for _, l := range shop.Layers {
		job.Layers = append(job.Layers, l.Layer)
	}
	return job, nil
}

// ReadShop reads a job file with all that it says, for [traveller.Make]. A file
// that names a mesh is refused: see [ReadShopWith].
//
// Errors: an [*Error] with line and field.
func ReadShop(r io.Reader) (traveller.Job, error) { return ReadShopWith(r, nil) }

// ReadShopWith reads a job file whose parts may be meshes in files of their own,
// and whose layers may name baths of a file of the shop's own. They are opened
// with open, by the name that the job gives.
//
// Errors: an [*Error] with line and field.
func ReadShopWith(r io.Reader, open func(name string) (io.ReadCloser, error)) (traveller.Job, error) {
	job, err := readShop(r, open)
	if err != nil {
		return traveller.Job{}, atPlace(err)
	}
	return job, nil
}

func readShop(r io.Reader, open func(name string) (io.ReadCloser, error)) (traveller.Job, error) {
	tree, err := strictjson.Read(r, strictjson.Doc{What: "job", Need: "an object with job, parts and layers"})
	if err != nil {
		return traveller.Job{}, err
	}
	o := strictjson.Object(tree)
	if f := o.Must("format", `"`+Format+`"`); f != nil && (f.Kind != "text" || f.Text != Format) {
		o.Keep(f.Fail(nil, "is %s; need %q", strictjson.Describe(f), Format))
	}
	job := traveller.Job{Name: o.Text("job"), Substrate: o.Text("substrate")}
	parts := o.Items("parts", "a list of parts", true)
	readWish(o, &job)
	var layers []*strictjson.Node
	if f := o.Field("layers"); f != nil {
		layers = o.ItemsOf(f, "plated layers, the first one first", true)
	} else if job.Finish == sequence.FinishUnknown {
		o.Keep(tree.Fail(units.ErrNotPositive,
			`field "layers" is missing; need a list of plated layers, the first one first, or a "finish" to plan for`))
	}
	steps, water, cost := o.Field("sequence"), o.Field("rinse"), o.Field("price")
	file := o.Field("baths")
	if err := o.Done(); err != nil {
		return traveller.Job{}, err
	}
	for _, n := range parts {
		p, mended, err := readPart(n, open)
		if err != nil {
			return traveller.Job{}, err
		}
		job.Parts, job.Mended = append(job.Parts, p), append(job.Mended, mended...)
	}
	area, err := plating.LoadArea(job.Parts...)
	if err != nil {
		return traveller.Job{}, &strictjson.Error{Line: tree.Line, Path: "parts", What: err.Error(), Err: err}
	}
	known, err := readBaths(file, open)
	if err != nil {
		return traveller.Job{}, err
	}
	for _, n := range layers {
		l, err := readLayer(n, area, known)
		if err != nil {
			return traveller.Job{}, err
		}
		job.Layers = append(job.Layers, l)
	}
	if err := fits(tree, o, &job, steps); err != nil {
		return traveller.Job{}, err
	}
	if steps != nil || job.Finish != sequence.FinishUnknown {
		if err := sayHazards(layers); err != nil {
			return traveller.Job{}, err
		}
	}
	if job.Steps, err = readSteps(steps, job.Layers); err != nil {
		return traveller.Job{}, err
	}
	if job.Rinse, err = readRinse(water); err != nil {
		return traveller.Job{}, err
	}
	if job.Rinse != nil && job.Rinse.Stages > 0 && steps != nil {
		for _, f := range water.Values {
			if f.Path == "rinse.stages" {
				return traveller.Job{}, f.Fail(units.ErrInconsistent,
					`goes with proposed rinses; in a "sequence" each tank says its own: leave it out here`)
			}
		}
	}
	pieces := 0
	for _, p := range job.Parts {
		pieces += p.Count
	}
	job.Price, err = readPrice(cost, pieces)
	return job, err
}

// sayHazards wants the hazards of each bath of the shop's own: the check for
// hydrogen cyanide goes by them, and silence is not "none".
func sayHazards(layers []*strictjson.Node) error {
	for _, n := range layers {
		bath := strictjson.On(n).Member("bath")
		o := strictjson.On(bath)
		if o.Member("hazards") == nil && o.Member("library") == nil && o.Member("like") == nil {
			return bath.Fail(units.ErrInconsistent,
				`field "hazards" is missing; need what the bath holds, as ["cyanide", "acid"], or [] for none: the check of the sequence goes by it`)
		}
	}
	return nil
}

func readPart(n *strictjson.Node, open func(name string) (io.ReadCloser, error)) (p plating.Part, mended []string,
	err error) {
	o := strictjson.Object(n)
	p = plating.Part{Name: o.Text("name"), Count: o.Whole("count", 1, 1_000_000, 1)}
	given := strictjson.Positive(o, "area", &p.Area)
	shape, body := o.Field("shape"), o.Field("mesh")
	mask := o.Field("masked")
	var masked units.Area
	hasMask := o.Scan(mask, &masked, false)
	if err := o.Done(); err != nil {
		return p, nil, err
	}
	ways := 0
	for _, is := range []bool{given, shape != nil, body != nil} {
		if is {
			ways++
		}
	}
	switch {
	case ways != 1:
		return p, nil, n.Fail(nil, `need one of "area" (of one piece), "shape" and "mesh"`)
	case shape != nil:
		p.Area, err = readShape(shape)
	case body != nil:
		p.Area, mended, err = readMeshArea(body, p.Name, open)
	}
	if err != nil {
		return p, nil, err
	}
	if hasMask {
		if err := units.NonNegative("masked area", masked); err != nil {
			return p, nil, mask.Fail(err, "%v", err)
		}
		if masked >= p.Area {
			return p, nil, mask.Fail(nil, "is %s and leaves nothing of %s; need less than the area of one piece", masked, p.Area)
		}
		p.Area -= masked
		p.Masked = masked
	}
	return p, mended, nil
}

// readMeshArea reads the area of a part from a mesh in a file.
func readMeshArea(n *strictjson.Node, name string, open func(name string) (io.ReadCloser, error)) (units.Area, []string,
	error) {
	o := strictjson.Object(n)
	file := o.Must("file", "the name of an STL or PLY file")
	if err := o.Err(); err != nil {
		return 0, nil, err
	}
	m, mended, err := readMeshFile(o, file, open)
	if err == nil {
		err = o.Done()
	}
	if err != nil {
		return 0, nil, err
	}
	part, err := mesh.PartOf(m, name, false)
	if err != nil {
		return 0, nil, n.Fail(err, "%v", err)
	}
	a, err := part.Area()
	if err != nil {
		return 0, nil, n.Fail(err, "%v", err)
	}
	return a, mended, nil
}

// readBaths returns the baths that layers may name: those of package baths, and
// those of the file that the job names, for [baths.Read].
func readBaths(n *strictjson.Node, open func(name string) (io.ReadCloser, error)) ([]baths.Bath, error) {
	known := baths.Library()
	switch {
	case n == nil:
		return known, nil
	case n.Kind != "text" || n.Text == "":
		return nil, n.Fail(nil, `is %s; need the name of a file of baths in quotes`, strictjson.Describe(n))
	case open == nil:
		return nil, n.Fail(units.ErrInconsistent, "names a file, and this file is read where no files can be opened")
	}
	f, err := open(n.Text)
	if err != nil {
		return nil, n.Fail(err, "cannot be opened: %v", err)
	}
	defer f.Close()
	own, err := baths.Read(f)
	if err != nil {
		return nil, n.Fail(err, "%q: %v", n.Text, err)
	}
	return append(known, own...), nil
}

func readLayer(n *strictjson.Node, load units.Area, known []baths.Bath) (traveller.Layer, error) {
	o := strictjson.Object(n)
	l := traveller.Layer{Layer: plating.Layer{Name: o.Text("name"), CountBelow: o.Yes("count_below")}}
	l.Role = [...]plating.Role{plating.RoleFinish, plating.RoleStrike, plating.RoleUnder}[o.Choice("role", "finish",
		"strike", "underplate")]
	bath := o.Must("bath", "the bath as an object")
	readDistribution(o, &l.Distribution, true)
	strictjson.Positive(o, "area", &l.Area)
	strictjson.Positive(o, "min_thickness", &l.MinThickness)
	strictjson.Positive(o, "time", &l.Time)
	density := strictjson.Positive(o, "current_density", &l.CurrentDensity)
	var current units.Current
	if strictjson.Positive(o, "current", &current) {
		f := o.Member("current")
		if density {
			o.Keep(f.Fail(nil, `need either "current" or "current_density", not both`))
		}
		area := l.Area
		if area == 0 {
			area = load
		}
		j, err := current.PerArea(area)
		if err != nil {
			o.Keep(f.Fail(err, "%v", err))
		}
		l.CurrentDensity = j
	}
	if err := o.Done(); err != nil {
		return l, err
	}
	if err := readLayerBath(bath, &l, known); err != nil {
		return l, err
	}
	probe := l.Layer
	if probe.Area == 0 {
		probe.Area = load
	}
	if err := probe.Check(); err != nil {
		return l, n.Fail(err, "%v", err)
	}
	return l, nil
}
