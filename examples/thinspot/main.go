// Command thinspot computes where a part is plated thinnest, how long it has to
// hang until that spot keeps the minimum thickness, and what other arrangements would save.
//
//	go run ./examples/thinspot                     an embedded case: a pendulum bob with a groove in its rim
//	go run ./examples/thinspot case.json           a case of your own; - reads standard input
//	go run ./examples/thinspot testdata/cases/bezel.json    a mesh between two anodes
//	go run ./examples/thinspot -picture thin.png   the part by thickness; also .svg, may be repeated
//	go run ./examples/thinspot -ply thin.ply -csv thin.csv -json case.json
//
// Flags go before the file. The case file, by profile or by mesh, is described at
// jobfile.ReadCaseWith; files that it names are looked for beside it. Exit status:
// 0, 1 when the case is wrong or cannot be computed, 2 for a wrong command line.
// Ctrl-C ends a run.
package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"math"
	"os"
	"os/signal"
	"runtime/debug"
	"strings"

	"example.com/laydown/examples/internal/files"
	"example.com/laydown/examples/internal/terminal"
	"example.com/laydown/plating/field"
	"example.com/laydown/plating/jobfile"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	os.Exit(run(ctx, os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

// names collects a flag that may be repeated.
type names []string

func (n *names) String() string     { return strings.Join(*n, " ") }
func (n *names) Set(v string) error { *n = append(*n, v); return nil }

func run(ctx context.Context, args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("thinspot", flag.ContinueOnError)
	asJSON := flags.Bool("json", false, "print the figures as JSON")
	noAdvice := flags.Bool("no-advice", false, "do not compute other arrangements")
	quick := flags.Bool("quick", false, "do not solve on a second mesh to find the error")
	quiet := flags.Bool("quiet", false, "no progress bar on a terminal")
	most := flags.Float64("memory", 4, "most memory a run may take, in `GB`")
	csvFile := flags.String("csv", "", "write the surface to this CSV `file`")
	plyFile := flags.String("ply", "", "write the surface of a mesh to this PLY `file`, with the thickness of each face")
	var pictures names
	flags.Var(&pictures, "picture", "write the part by thickness to this .png or .svg `file`; may be repeated")
	if status, ok := terminal.Parse(flags, args, stderr, func() {
		fmt.Fprintln(stderr, "usage: thinspot [-json] [-no-advice] [-quick] [-csv file] [-ply file] [-picture file]... [case.json | -]")
		flags.PrintDefaults()
	}); !ok {
		return status
	}
	if flags.NArg() > 1 {
		fmt.Fprintln(stderr, "thinspot: more than one case named; flags go before the file")
		return 2
	}
	if !(*most > 0 && *most <= 1024) {
		fmt.Fprintf(stderr, "thinspot: memory %g: need gigabytes above 0, at most 1024\n", *most)
		return 2
	}
	var desk files.Desk
	c, err := load(&desk, flags.Arg(0), stdin)
	// The names to write to are the command line's: they come before the case's own faults.
	for _, out := range append([]string{*csvFile, *plyFile}, pictures...) {
		if out == "" {
			continue
		}
		ends := []string{".png", ".svg"}
		switch out {
		case *csvFile:
			ends = []string{".csv"}
		case *plyFile:
			ends = []string{".ply"}
		}
		if err := desk.Ending(out, ends...); err != nil {
			terminal.Error(stderr, "thinspot", err)
			return 2
		}
	}
	if err != nil {
		return fail(stderr, err)
	}
	if *plyFile != "" && c.Mesh == nil {
		return fail(stderr, errors.New("-ply wants a case by mesh; this one is by profile: use -csv"))
	}
	// The collector keeps the whole process within what a run may take.
	defer debug.SetMemoryLimit(debug.SetMemoryLimit(int64(*most * 1e9)))
	bar := newBar(stderr, *quiet)
	say := func(format string, args ...any) {
		bar.clear()
		_ = terminal.Line(stderr, "thinspot: "+format, args...)
	}
	r, err := solve(ctx, c, effort{advice: !*noAdvice, second: !*quick, memory: int64(*most * 1e9), seconds: 120,
		progress: bar.step, say: say})
	bar.clear()
	var big *field.CostError
	if errors.As(err, &big) {
		err = fmt.Errorf(`%w: a larger "panel" of the bodies that the case describes, a file written with fewer triangles `+
			`("panel" makes none larger), or -memory %.0f`, err, math.Ceil(1.05e-9*float64(big.Cost.Bytes)))
	}
	if err != nil {
		return fail(stderr, err)
	}
	if err := r.files(&desk, pictures, *plyFile); err != nil {
		return fail(stderr, err)
	}
	if *csvFile != "" {
		if err := desk.Write(*csvFile, r.csv()); err != nil {
			return fail(stderr, err)
		}
	}
	var out bytes.Buffer
	if *asJSON {
		enc := json.NewEncoder(&out)
		enc.SetIndent("", "  ")
		err = enc.Encode(r.figures())
	} else {
		r.text(&out)
	}
	if err == nil {
		_, err = stdout.Write(out.Bytes())
	}
	if err != nil {
		return fail(stderr, err)
	}
	return 0
}

func fail(stderr io.Writer, err error) int {
	terminal.Error(stderr, "thinspot", err)
	return 1
}

// files writes the pictures and the mesh.
func (r *result) files(desk *files.Desk, pictures []string, ply string) error {
	for _, p := range pictures {
		write := drawProfile
		if r.c.Mesh != nil {
			write = drawViews
		}
		if err := write(r, desk, p); err != nil {
			return err
		}
	}
	if ply == "" {
		return nil
	}
	scale := r.scale()
	skin := mesh.Skin{Thickness: r.coat.Thickness, Colour: make([][3]uint8, len(r.coat.Thickness))}
	for i, s := range r.coat.Thickness {
		c := scale.at(s.In(units.Micrometre))
		skin.Colour[i] = [3]uint8{c.R, c.G, c.B}
	}
	var b bytes.Buffer
	if err := mesh.WritePLY(&b, r.mesh, units.Millimetre, skin); err != nil {
		return err
	}
	return desk.Write(ply, b.Bytes())
}

// load reads the case: the embedded one without a name, standard input for -.
// Files that a case names are looked for beside it.
func load(desk *files.Desk, name string, stdin io.Reader) (jobfile.Case, error) {
	switch name {
	case "":
		f, err := testdata.Files.Open("cases/bob.json")
		if err != nil {
			return jobfile.Case{}, err
		}
		defer f.Close()
		return jobfile.ReadCase(f)
	case "-":
		return jobfile.ReadCaseWith(files.Limit(stdin, "standard input"), desk.Beside(name))
	}
	f, err := desk.Open(name)
	if err != nil {
		return jobfile.Case{}, err
	}
	defer f.Close()
	c, err := jobfile.ReadCaseWith(f, desk.Beside(name))
	if err != nil {
		return c, fmt.Errorf("%s: %w", name, err)
	}
	return c, nil
}
