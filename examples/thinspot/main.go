// Command thinspot computes where a body of revolution is plated thinnest, how
// long it has to hang until that spot keeps the promise, and what other
// arrangements would save.
//
//	go run ./examples/thinspot                     an embedded case: a pendulum bob with a groove in its rim
//	go run ./examples/thinspot case.json           a case of your own; - reads standard input
//	go run ./examples/thinspot -picture thin.png   thickness along the profile; also .svg, may be repeated
//	go run ./examples/thinspot -csv thin.csv -json case.json
//
// Flags go before the file. The case file is described at jobfile.ReadCase.
// Exit status: 0, 1 when the case is wrong or cannot be computed, 2 for a wrong
// command line. Ctrl-C ends a run.
package main

import (
	"bytes"
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"os"
	"os/signal"
	"path/filepath"
	"strings"

	"example.com/laydown/plating/jobfile"
	"example.com/laydown/testdata"
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
	flags.SetOutput(stderr)
	asJSON := flags.Bool("json", false, "print the figures as JSON")
	noAdvice := flags.Bool("no-advice", false, "do not compute other arrangements")
	csvFile := flags.String("csv", "", "write the surface to this CSV `file`")
	var pictures names
	flags.Var(&pictures, "picture", "write thickness along the profile to this .png or .svg `file`; may be repeated")
	flags.Usage = func() {
		fmt.Fprintln(stderr, "usage: thinspot [-json] [-no-advice] [-csv file] [-picture file]... [case.json | -]")
		flags.PrintDefaults()
	}
	if err := flags.Parse(args); err != nil {
		if err == flag.ErrHelp {
			return 0
		}
		return 2
	}
	if flags.NArg() > 1 {
		fmt.Fprintln(stderr, "thinspot: more than one case named; flags go before the file")
		return 2
	}
	for _, p := range pictures {
		if e := strings.ToLower(filepath.Ext(p)); e != ".png" && e != ".svg" {
			fmt.Fprintf(stderr, "thinspot: picture %q: need a name that ends in .png or .svg\n", p)
			return 2
		}
	}
	c, err := load(flags.Arg(0), stdin)
	if err != nil {
		return fail(stderr, err)
	}
	r, err := solve(ctx, c, !*noAdvice)
	if err != nil {
		return fail(stderr, err)
	}
	for _, p := range pictures {
		if err := drawProfile(r, p); err != nil {
			return fail(stderr, err)
		}
	}
	if *csvFile != "" {
		if err := os.WriteFile(*csvFile, r.csv(), 0o644); err != nil {
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
	fmt.Fprintln(stderr, "thinspot:", err)
	return 1
}

func load(name string, stdin io.Reader) (jobfile.Case, error) {
	switch name {
	case "":
		f, err := testdata.Files.Open("cases/bob.json")
		if err != nil {
			return jobfile.Case{}, err
		}
		defer f.Close()
		return jobfile.ReadCase(f)
	case "-":
		return jobfile.ReadCase(stdin)
	}
	f, err := os.Open(name)
	if err != nil {
		return jobfile.Case{}, err
	}
	defer f.Close()
	return jobfile.ReadCase(f)
}
