// Package bookline is the command line of examples/bathbook: its flags, its help, and what
// it tells its user to type. What the words are about is in package plating/ledger.
package bookline

import (
	"encoding"
	"errors"
	"flag"
	"fmt"
	"io"
	"path/filepath"
	"strings"
	"time"

	"example.com/laydown/examples/internal/files"
	"example.com/laydown/examples/internal/terminal"
	"example.com/laydown/plating"
	"example.com/laydown/plating/ledger"
	"example.com/laydown/units"
)

// Options are what the command line asks for. [Parse] makes them; [Options.CheckPlot] and
// [Options.Open] do what they say, in this order.
type Options struct {
	Book    string      // file, - for standard input, "" for the embedded book
	NewBath string      // file of the bath of a new book, or ""
	Plot    string      // file of the picture, or ""
	Page    ledger.Page // what the sheet shows
	When    time.Time   // of the entry or of the new book
	Now     time.Time   // what the clock shows
	Note    string
	Files   files.Desk // that are read and written

	kind, fields string // of an entry to post, or ""
}

// Parse reads the command line; now is what the clock shows. With nil it has said why on
// stderr, and the status is that to exit with.
func Parse(args []string, now time.Time, stderr io.Writer) (o *Options, status int) {
	o = &Options{Now: now, When: now}
	o.Page.Void = voidFlag
	o.Page.Measure = "Measure the pH and run this again with -pH and what the meter shows, as -pH 4.4."
	// What is shown.
	flags := flag.NewFlagSet("bathbook", flag.ContinueOnError)
	flags.StringVar(&o.NewBath, "new", "", "open a new book for the bath in this JSON file")
	flags.StringVar(&o.Plot, "plot", "", "draw metal content against charge into this .png or .svg file")
	flags.BoolVar(&o.Page.Entries, "entries", false, "list the entries")
	flags.BoolVar(&o.Page.Working, "working", false, "show the formulas with their numbers and sources")
	// What is entered: a flag for each kind of entry, one of them at a time.
	posts := map[string]*string{}
	for _, kind := range ledger.Kinds() {
		posts[kind] = flags.String(kind, "", "enter a `name=value, ...` list into the book; the names stand below")
	}
	flags.TextVar(&o.Page.PH, "pH", plating.PH(0), "`pH` measured now, before anything is added; left out, that of the "+
		"book")
	when := flags.String("when", "",
		"time of the entry or of the new book, as 2026-03-02T09:30:00+01:00; now when left out")
	flags.StringVar(&o.Note, "note", "", "remark to the entry")
	// The help ends with the fields and their units, since nobody remembers them.
	if status, ok := terminal.Parse(flags, args, stderr, func() {
		fmt.Fprintln(stderr, "usage: bathbook [flags] [book.jsonl | -]")
		flags.PrintDefaults()
		writeFields(stderr)
	}); !ok {
		return nil, status
	}
	if err := o.check(flags, posts, *when); err != nil {
		terminal.Error(stderr, "bathbook", err)
		return nil, 2
	}
	return o, 0
}

// posts reports whether there is an entry to post.
func (o *Options) posts() bool { return o.kind != "" }

// check takes what the flags hold, and refuses what does not go together.
func (o *Options) check(flags *flag.FlagSet, posts map[string]*string, when string) error {
	empty := "" // a flag with nothing to enter: a variable of the shell that was not set
	flags.Visit(func(f *flag.Flag) {
		if _, posts := posts[f.Name]; posts && f.Value.String() == "" {
			empty = f.Name
		}
	})
	if empty != "" {
		f := ledger.Fields(empty)[0]
		return fmt.Errorf("-%s is empty: need a list of name=value, as \"%s=%s\"; -h lists the names", empty, f.Name,
			f.Example)
	}
	for kind, fields := range posts { // in any order: of two the message names both in theirs
		if *fields == "" {
			continue
		}
		if o.kind != "" {
			return fmt.Errorf("-%s and -%s: one entry at a time", min(kind, o.kind), max(kind, o.kind))
		}
		o.kind, o.fields = kind, *fields
	}
	// The embedded book and standard input can be shown, but not written to.
	o.Book = flags.Arg(0)
	onFile := flags.NArg() == 1 && o.Book != "-" && o.Book != ""
	switch {
	case flags.NArg() > 1:
		return fmt.Errorf("%d books named; need one, or none for the embedded one (flags go before the name)", flags.NArg())
	case flags.NArg() == 1 && o.Book == "":
		return errors.New("the name of the book is empty; need one, or no argument at all for the embedded one")
	case (o.posts() || o.NewBath != "") && !onFile:
		return errors.New("writing needs a book in a file")
	case o.posts() && o.NewBath != "":
		return fmt.Errorf("-new and -%s: open the book first", o.kind)
	case when != "" && !o.posts() && o.NewBath == "" || o.Note != "" && !o.posts():
		return errors.New("-when and -note belong to an entry")
	}
	// A wrong ending or time is told before anything is read or entered.
	if e := strings.ToLower(filepath.Ext(o.Plot)); o.Plot != "" && e != ".png" && e != ".svg" {
		return fmt.Errorf("-plot %s: need a name that ends in .png or .svg", o.Plot)
	}
	if when != "" {
		t, err := time.Parse(time.RFC3339, when)
		if err != nil {
			return fmt.Errorf("-when %q: need a time as 2026-03-02T09:30:00+01:00", when)
		}
		o.When = t
	}
	// The embedded book is of its own time: no clock questions it.
	if o.Book == "" {
		o.Page.Remark = "embedded demo, invented data"
	} else {
		o.Page.Now = o.Now
	}
	return nil
}

// writeFields lists for -h the fields of the entries as they are typed, those of the bath as they
// stand in its file, and the units that each kind of figure may have.
func writeFields(w io.Writer) {
	// Names on the left, what they mean in a column of its own.
	line := func(what, means string) {
		fmt.Fprintln(w, strings.TrimRight(fmt.Sprintf("   %-32s  %s", what, means), " "))
	}
	for _, kind := range ledger.Kinds() {
		fmt.Fprintf(w, "\nfields of -%s, with commas between them:\n", kind)
		for _, f := range ledger.Fields(kind) {
			line(f.Name+"="+f.Example, strings.Replace(f.Means, "list of entries", "list of -entries", 1))
		}
	}
	for _, kind := range []string{"bath", "book"} {
		fmt.Fprintf(w, "\nfields of %s, a JSON object, its values in quotes:\n",
			map[string]string{"bath": "the bath file of -new", "book": `its member "book"`}[kind])
		for _, f := range ledger.Fields(kind) {
			if !strings.ContainsAny(f.Example[:1], "{[") && f.Name != "valence" {
				f.Example = `"` + f.Example + `"`
			}
			line(`"`+f.Name+`": `+f.Example, f.Means)
		}
	}
	fmt.Fprintln(w, "\nunits:")
	for _, u := range []struct {
		of string
		v  encoding.TextUnmarshaler
	}{{"charge", new(units.Charge)}, {"mass", new(units.Mass)}, {"volume", new(units.Volume)},
		{"content", new(units.MassConcentration)}, {"equivalent", new(units.Equivalent)}} {
		var e *units.ParseError
		if errors.As(u.v.UnmarshalText(nil), &e) { // the error of no text lists what would do
			fmt.Fprintf(w, "   %-11s %s\n", u.of, strings.Join(e.Accepted, ", "))
		}
	}
	fmt.Fprintln(w, "   share       none, or % or ‰")
}
