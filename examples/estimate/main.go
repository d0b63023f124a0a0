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
// The job file is described in package plating/job. Exit status: 0 when
// the job can be run, 1 when the file is wrong, no sequence can be planned, or a
// finding says stop; 2 for a wrong command line.
package main

import (
	"bytes"
	"flag"
	"fmt"
	"io"
	"os"

	"example.com/laydown/examples/internal/files"
	"example.com/laydown/examples/internal/terminal"
	"example.com/laydown/plating/job"
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
		fmt.Fprintln(stderr,
			"estimate: the name of the file is empty; need one, or no argument at all for the embedded job")
		return 2
	}
	fail := func(status int, err error) int {
		terminal.Error(stderr, "estimate", err)
		return status
	}
	var desk files.Desk
	j, err := load(&desk, flags.Arg(0), stdin)
	if *html != "" { // before the job's own faults: the name is the command line's
		if err := desk.Ending(*html, ".html", ".htm", ".xhtml"); err != nil {
			return fail(2, err)
		}
	}
	if err != nil {
		return fail(1, err)
	}
	sheet, err := j.Sheet()
	if err != nil {
		if name := flags.Arg(0); name != "" && name != "-" {
			err = fmt.Errorf("%s: %w", name, err)
		}
		return fail(1, err)
	}
	options := job.SheetOptions{Working: *steps}
	if demo {
		options.Remark = "The embedded example, with invented figures. Name a job file of your own before you plate."
	}
	if *html != "" {
		var page bytes.Buffer
		if err = sheet.WriteHTML(&page, job.SheetOptions{Remark: options.Remark}); err == nil {
			err = desk.Write(*html, page.Bytes())
		}
		if err != nil {
			return fail(1, err)
		}
	}
	write := sheet.WriteText
	if *asJSON {
		write = sheet.WriteJSON
	}
	var out bytes.Buffer
	if err = write(&out, options); err == nil {
		_, err = stdout.Write(out.Bytes())
	}
	if err != nil {
		return fail(1, err)
	}
	if sheet.Forbidden() {
		fmt.Fprintln(stderr, "estimate: STOP: do not start this job as it stands; the reasons are on the sheet")
		return 1
	}
	return 0
}

// load reads the job: the embedded one without a name, standard input for -.
// Meshes that it names are looked for beside it.
func load(desk *files.Desk, name string, stdin io.Reader) (job.Job, error) {
	switch name {
	case "":
		f, err := testdata.Files.Open("jobs/hands.json")
		if err != nil {
			return job.Job{}, err
		}
		defer f.Close()
		return job.Read(f, nil)
	case "-":
		return job.Read(files.Limit(stdin, "standard input"), desk.Beside(name))
	}
	f, err := desk.Open(name)
	if err != nil {
		return job.Job{}, err
	}
	defer f.Close()
	j, err := job.Read(f, desk.Beside(name))
	if err != nil {
		err = fmt.Errorf("%s: %w", name, err)
	}
	return j, err
}
