// Command thinspot computes where a part is plated thinnest, how long it has to
// hang until that spot has the minimum thickness, and what other arrangements would save.
//
//	go run ./examples/thinspot                     an embedded case: a pendulum bob with a groove in its rim
//	go run ./examples/thinspot case.json           a case of your own; - reads standard input
//	go run ./examples/thinspot testdata/cases/bezel.json    a mesh between two anodes
//	go run ./examples/thinspot -picture thin.png   the part by thickness; also .svg, may be repeated
//	go run ./examples/thinspot -ply thin.ply -csv thin.csv -json case.json
//
// Flags go before the file. Package thinspot describes the case file; files that it names are looked for beside it.
// Exit status: 0, 1 when the case is wrong or cannot be computed, 2 for a wrong command line. Ctrl-C ends a run.
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
	"path/filepath"
	"runtime/debug"
	"strings"

	"example.com/laydown/examples/internal/files"
	"example.com/laydown/examples/internal/pictures"
	"example.com/laydown/examples/internal/terminal"
	"example.com/laydown/plating/field"
	"example.com/laydown/plating/thinspot"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	os.Exit(run(ctx, os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

// An output is a file to write, with the endings that its flag takes.
type output struct {
	name    string
	endings []string
}

func run(ctx context.Context, args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	fail := func(status int, err error) int {
		terminal.Error(stderr, "thinspot", err)
		return status
	}
	flags := flag.NewFlagSet("thinspot", flag.ContinueOnError)
	asJSON := flags.Bool("json", false, "print the figures as JSON")
	noAdvice := flags.Bool("no-advice", false, "do not compute other arrangements")
	quick := flags.Bool("quick", false, "do not solve on a second mesh to find the error")
	quiet := flags.Bool("quiet", false, "no progress bar on a terminal")
	most := flags.Float64("memory", 4, "most memory a run may take, in `GB`")
	var outputs []output
	write := func(name, usage string, endings ...string) {
		flags.Func(name, usage, func(to string) error { outputs = append(outputs, output{to, endings}); return nil })
	}
	write("csv", "write the surface to this CSV `file`", ".csv")
	write("ply", "write the surface of a mesh to this PLY `file`, with the thickness of each face", ".ply")
	write("picture", "write the part by thickness to this .png or .svg `file`; may be repeated", pictures.Endings...)
	const use = "usage: thinspot [-json] [-no-advice] [-quick] [-csv file] [-ply file] [-picture file]... [case.json | -]"
	if status, ok := terminal.Parse(flags, args, stderr, func() { fmt.Fprintln(stderr, use); flags.PrintDefaults() }); !ok {
		return status
	}
	switch {
	case flags.NArg() > 1:
		return fail(2, errors.New("more than one case named; flags go before the file"))
	case !(*most > 0 && *most <= 1024):
		return fail(2, fmt.Errorf("memory %g: need gigabytes above 0, at most 1024", *most))
	}
	var desk files.Desk
	c, err := load(&desk, flags.Arg(0), stdin)
	// The names to write to are the command line's: they come before the case's own faults.
	for _, out := range outputs {
		if wrong := desk.Ending(out.name, out.endings...); wrong != nil {
			return fail(2, wrong)
		}
		if err == nil && c.Mesh == nil && out.endings[0] == ".ply" {
			err = errors.New("-ply wants a case by mesh; this one is by profile: use -csv")
		}
	}
	if err != nil {
		return fail(1, err)
	}
	defer debug.SetMemoryLimit(debug.SetMemoryLimit(int64(*most * 1e9))) // of the whole process
	bar := terminal.NewBar(stderr, *quiet)
	r, err := c.Solve(ctx, thinspot.Options{NoAdvice: *noAdvice, Quick: *quick, Memory: int64(*most * 1e9),
		Progress: bar.Step, Announce: func(cost thinspot.RunCost) {
			if bar.Clear(); cost.Time > 15*units.Second {
				_ = terminal.Line(stderr, "thinspot: %v", cost)
			}
		}})
	bar.Clear()
	var big *field.CostError
	if errors.As(err, &big) {
		err = fmt.Errorf(`%w: a larger "panel" of the bodies that the case describes, a file written with fewer triangles `+
			`("panel" makes none larger), or -memory %.0f`, err, math.Ceil(1.05e-9*float64(big.Cost.Bytes)))
	}
	for i := 0; err == nil && i < len(outputs); i++ {
		err = save(&desk, outputs[i].name, r)
	}
	if enc := json.NewEncoder(stdout); err == nil && *asJSON {
		enc.SetIndent("", "  ")
		err = enc.Encode(r)
	} else if err == nil {
		err = r.WriteText(stdout)
	}
	if err != nil {
		return fail(1, err)
	}
	return 0
}

// save writes what the ending of a file names: table, mesh or picture.
func save(desk *files.Desk, name string, r thinspot.Result) (err error) {
	var b bytes.Buffer
	switch ending := strings.ToLower(filepath.Ext(name)); ending {
	case ".csv":
		err = r.WriteCSV(&b)
	case ".ply":
		err = r.WritePLY(&b)
	default:
		err = pictures.Encode(&b, r.Pictures()[0], ending)
	}
	if err != nil {
		return err
	}
	return desk.Write(name, b.Bytes())
}

// load reads the case, the embedded one without a name, and beside it the files that it names.
func load(desk *files.Desk, name string, stdin io.Reader) (c thinspot.Case, err error) {
	f, err := desk.Input(name, stdin, testdata.Files, "cases/bob.json")
	if err != nil {
		return c, err
	}
	defer f.Close()
	if c, err = thinspot.Read(f, desk.Beside(name)); err != nil && name != "" && name != "-" {
		err = fmt.Errorf("%s: %w", name, err)
	}
	return c, err
}
