// Command bathbook keeps the book of a plating bath: its state, what to add
// now, and when the next additions are due.
//
//	go run ./examples/bathbook                        an embedded book of a clock workshop
//	go run ./examples/bathbook gold.jsonl             a book of your own; - reads standard input
//	go run ./examples/bathbook -plot gold.svg gold.jsonl
//	go run ./examples/bathbook -new examples/bathbook/demo-bath.json gold.jsonl
//	go run ./examples/bathbook -load "charge=12 A·min, drag_out=4 mL, drag_in=4 mL" gold.jsonl
//	go run ./examples/bathbook -analysis "content=7.9 g/L, uncertainty=0.1 g/L" -when 2026-03-02T16:00:00+01:00 gold.jsonl
//
// What is to be added to an acid gold cyanide bath is told only when its pH is
// known: from the book, or measured now with -pH 4.4. Below pH 3 the salt frees
// hydrogen cyanide. When the last entry of a cyanide bath speaks of acid, the pH is
// asked for again.
//
// The file of -new is a bath in the one form that jobs and cases take as well, with what
// only a book has in its member "book": see package plating/ledger.
//
// The other entries are -addition, -evaporation and -correction; -h lists the
// fields of each with their units, and those of the bath of -new. -entries lists
// the book, -working shows the calculations. The file is described in package
// plating/ledger.
//
//	go run ./examples/bathbook -void "entry=12, reason=year mistyped" gold.jsonl
//
// strikes out a wrong entry by its number in the list of -entries: both stay in the
// list, and the book no longer counts it. Enter then what was meant. A time more than
// a day later than the clock of the machine is refused, and a book that holds one says
// so. While an entry is written a file gold.jsonl.lock lies beside the book, so that
// programs that write at once do not spoil it.
//
// Exit status: 0 when all went well, 1 when the book or an entry is wrong, 2 for
// a wrong command line. A book whose last line was cut short is shown as far as
// it is whole, with a word about it on standard error. Of one that is damaged
// further up the state before the damage is shown, without advice, and the exit
// status is 1; nothing can be entered into it.
package main

import (
	"bytes"
	_ "embed"
	"errors"
	"io"
	"os"
	"path/filepath"
	"time"

	"example.com/laydown/examples/internal/bookline"
	"example.com/laydown/examples/internal/pictures"
	"example.com/laydown/examples/internal/terminal"
)

//go:embed demo.jsonl
var demo string

func main() { os.Exit(run(os.Args[1:], time.Now(), os.Stdin, os.Stdout, os.Stderr)) }

// run does what the command line says; now is what the clock shows.
func run(args []string, now time.Time, stdin io.Reader, stdout, stderr io.Writer) int {
	o, status := bookline.Parse(args, now, stderr)
	if o == nil {
		return status
	}
	if err := do(o, stdin, stdout, stderr); err != nil {
		terminal.Error(stderr, "bathbook", err)
		return 1
	}
	return 0
}

// do opens the book, posts, and shows.
func do(o *bookline.Options, stdin io.Reader, stdout, stderr io.Writer) error {
	if err := o.CheckPlot(); err != nil { // before anything is entered
		return err
	}
	book, damage := o.Open(demo, stdin, stderr)
	if book == nil {
		return damage
	}
	errors.As(damage, &o.Page.Damaged)
	var out bytes.Buffer
	err := book.WriteSheet(&out, o.Page)
	if err == nil && o.Plot != "" && damage == nil { // no picture without its end
		var picture []byte
		if picture, err = pictures.Book(book, filepath.Ext(o.Plot)); err == nil {
			err = o.Files.Write(o.Plot, picture)
		}
	}
	if err == nil {
		_, err = stdout.Write(out.Bytes())
	}
	return errors.Join(damage, err)
}
