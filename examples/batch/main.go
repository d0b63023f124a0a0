// Command batch estimates many rows of parts: CSV in, CSV out.
//
//	go run ./examples/batch < jobs.csv > estimates.csv
//
// The first row names the columns, in any order: those of [job.Rows]. Others are passed
// through, and those of [job.RowWriter] are added on the right. A bad row says why under
// error, has its numbers empty, and the others go on; every row that goes in comes out.
// How mass and cost are rounded is said in [job.Row.Estimate].
//
// Rows stream: memory does not grow with their number, and the order stays.
// Exit status: 0, 1 when a row failed (their count and the first one's line are on
// standard error), 2 when nothing can be done: no header, a missing column, unreadable
// input.
package main

import (
	"fmt"
	"io"
	"os"

	"example.com/laydown/examples/internal/terminal"
	"example.com/laydown/plating/job"
)

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	if len(args) > 0 {
		fmt.Fprintln(stderr, "usage: batch < jobs.csv > estimates.csv")
		return 2
	}
	rows, err := job.EstimateRows(stdout, stdin)
	switch {
	case err != nil:
		terminal.Error(stderr, "batch", err)
		return 2
	case rows.Failed > 0:
		fmt.Fprintln(stderr, "batch:", rows)
		return 1
	}
	return 0
}
