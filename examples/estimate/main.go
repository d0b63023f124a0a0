// Command estimate computes a plating job and prints the sheet that goes with
// it: tanks in their order with what to set at each, coats, rinsing, baths
// afterwards and the price, as far as the job asks for them.
//
//	go run ./examples/estimate                  an embedded job of a clock workshop
//	go run ./examples/estimate job.json         a job of your own; - reads standard input
//	go run ./examples/estimate -working job.json
//	go run ./examples/estimate -json job.json
//	go run ./examples/estimate -html sheet.html job.json    also a page to print
//
// The job file is described in package plating/jobfile. Exit status: 0 when
// the job can be run, 1 when the file is wrong, no sequence can be planned, or a
// finding says stop; 2 for a wrong command line.
package main

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"os"

	"example.com/laydown/examples/internal/files"
	"example.com/laydown/examples/internal/terminal"
	"example.com/laydown/plating/jobfile"
	"example.com/laydown/plating/traveller"
	"example.com/laydown/testdata"
)

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("estimate", flag.ContinueOnError)
	asJSON := flags.Bool("json", false, "print the result as JSON, quantities as text")
	steps := flags.Bool("working", false, "show every formula with its numbers and source")
	html := flags.String("html", "", "write the sheet as a printable page to this `file`")
	if status, ok := terminal.Parse(flags, args, stderr, func() {
		fmt.Fprintln(stderr, "usage: estimate [-json] [-working] [-html file] [job.json | -]")
		flags.PrintDefaults()
	}); !ok {
		return status
	}
	if flags.NArg() > 1 {
		fmt.Fprintf(stderr, "estimate: %d files named; need one, or none for the embedded job (flags go before the file)\n",
			flags.NArg())
		return 2
	}
	demo := flags.NArg() == 0
	if !demo && flags.Arg(0) == "" {
		fmt.Fprintln(stderr, "estimate: the name of the file is empty; need one, or no argument at all for the embedded job")
		return 2
	}
	var desk files.Desk
	job, err := load(&desk, flags.Arg(0), stdin)
	if *html != "" { // before the job's own faults: the name is the command line's
		if err := desk.Ending(*html, ".html", ".htm", ".xhtml"); err != nil {
			terminal.Error(stderr, "estimate", err)
			return 2
		}
	}
	if err != nil {
		terminal.Error(stderr, "estimate", err)
		return 1
	}
	made, err := traveller.Make(job)
	if err != nil {
		if name := flags.Arg(0); name != "" && name != "-" {
			err = fmt.Errorf("%s: %w", name, err)
		}
		terminal.Error(stderr, "estimate", err)
		return 1
	}
	report, err := jobfile.NewShopReport(&made, *steps)
	if err != nil {
		terminal.Error(stderr, "estimate", err)
		return 1
	}
	if *html != "" {
		var p bytes.Buffer
		if err = writePage(&p, &made, demo); err == nil {
			err = desk.Write(*html, p.Bytes())
		}
		if err != nil {
			terminal.Error(stderr, "estimate", err)
			return 1
		}
	}
	var out bytes.Buffer
	if *asJSON {
		enc := json.NewEncoder(&out)
		enc.SetEscapeHTML(false)
		enc.SetIndent("", "  ")
		err = enc.Encode(report)
	} else {
		err = writeSheet(&out, &made, *steps, demo)
	}
	if err == nil {
		_, err = stdout.Write(out.Bytes())
	}
	if err != nil {
		terminal.Error(stderr, "estimate", err)
		return 1
	}
	if report.Stop {
		fmt.Fprintln(stderr, "estimate: STOP: do not start this job as it stands; the reasons are on the sheet")
		return 1
	}
	return 0
}

// load reads the job: the embedded one without a name, standard input for -.
// Meshes that it names are looked for beside it.
func load(desk *files.Desk, name string, stdin io.Reader) (traveller.Job, error) {
	switch name {
	case "":
		f, err := testdata.Files.Open("jobs/hands.json")
		if err != nil {
			return traveller.Job{}, err
		}
		defer f.Close()
		return jobfile.ReadShop(f)
	case "-":
		return jobfile.ReadShopWith(files.Limit(stdin, "standard input"), desk.Beside(name))
	}
	f, err := desk.Open(name)
	if err != nil {
		return traveller.Job{}, err
	}
	defer f.Close()
	job, err := jobfile.ReadShopWith(f, desk.Beside(name))
	if err != nil {
		return job, fmt.Errorf("%s: %w", name, err)
	}
	return job, nil
}
