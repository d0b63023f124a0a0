// Command bathbook keeps the book of a plating bath: its state, what to add
// now, and when the next additions are due.
//
//	go run ./examples/bathbook                        an embedded book of a clock workshop
//	go run ./examples/bathbook gold.jsonl             a book of your own; - reads standard input
//	go run ./examples/bathbook -plot gold.svg gold.jsonl
//	go run ./examples/bathbook -new bath.json gold.jsonl
//	go run ./examples/bathbook -load "charge=12 A·min, drag_out=4 mL, drag_in=4 mL" gold.jsonl
//	go run ./examples/bathbook -analysis "content=7.9 g/L, uncertainty=0.1 g/L" -when 2026-03-02T16:00:00+01:00 gold.jsonl
//
// What is to be added to an acid gold cyanide bath is told only when its pH is
// known: from the book, or measured now with -pH 4.4. Below pH 3 the salt frees
// hydrogen cyanide. When the last entry of a cyanide bath speaks of acid, the pH is
// asked for again.
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
	"flag"
	"fmt"
	"io"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"strings"
	"time"

	"example.com/laydown/examples/internal/files"
	"example.com/laydown/examples/internal/terminal"
	"example.com/laydown/plating"
	"example.com/laydown/plating/ledger"
)

//go:embed demo.jsonl
var demo string

func main() { os.Exit(run(os.Args[1:], time.Now(), os.Stdin, os.Stdout, os.Stderr)) }

// options are what the command line asks for.
type options struct {
	book, newBath, plot string
	entries, working    bool
	pH                  plating.PH // measured now; 0: that of the book
	kind, fields        string     // of an entry to post
	when, now           time.Time  // of the entry; what the clock shows
	note                string
}

// run does what the command line says; now is what the clock shows.
func run(args []string, now time.Time, stdin io.Reader, stdout, stderr io.Writer) int {
	o, status := parse(args, now, stderr)
	if o == nil {
		return status
	}
	if err := o.do(stdin, stdout, stderr); err != nil {
		terminal.Error(stderr, "bathbook", err)
		return 1
	}
	return 0
}

// parse reads the command line; with nil it says why on stderr.
func parse(args []string, now time.Time, stderr io.Writer) (*options, int) {
	o := options{now: now}
	flags := flag.NewFlagSet("bathbook", flag.ContinueOnError)
	flags.StringVar(&o.newBath, "new", "", "open a new book for the bath in this JSON file")
	flags.StringVar(&o.plot, "plot", "", "draw metal content against charge into this .png or .svg file")
	flags.BoolVar(&o.entries, "entries", false, "list the entries")
	flags.BoolVar(&o.working, "working", false, "show the formulas with their numbers and sources")
	posts := map[string]*string{}
	for _, kind := range kinds() {
		posts[kind] = flags.String(kind, "", "enter a `name=value, ...` list into the book; the names stand below")
	}
	flags.TextVar(&o.pH, "pH", plating.PH(0), "`pH` measured now, before anything is added; left out, that of the book")
	when := flags.String("when", "",
		"time of the entry or of the new book, as 2026-03-02T09:30:00+01:00; now when left out")
	flags.StringVar(&o.note, "note", "", "remark to the entry")
	if status, ok := terminal.Parse(flags, args, stderr, func() {
		fmt.Fprintln(stderr, "usage: bathbook [flags] [book.jsonl | -]")
		flags.PrintDefaults()
		writeFields(stderr)
	}); !ok {
		return nil, status
	}
	wrong := func(format string, a ...any) (*options, int) {
		_ = terminal.Line(stderr, "bathbook: "+format, a...)
		return nil, 2
	}
	empty := ""
	flags.Visit(func(f *flag.Flag) {
		if _, posts := posts[f.Name]; posts && f.Value.String() == "" {
			empty = f.Name
		}
	})
	if empty != "" {
		f := fieldsOf(empty)[0]
		return wrong("-%s is empty: need a list of name=value, as \"%s=%s\"; -h lists the names", empty, f.name, f.example)
	}
	for kind, fields := range posts {
		if *fields == "" {
			continue
		}
		if o.kind != "" {
			return wrong("-%s and -%s: one entry at a time", min(kind, o.kind), max(kind, o.kind))
		}
		o.kind, o.fields = kind, *fields
	}
	o.book = flags.Arg(0)
	onFile := flags.NArg() == 1 && o.book != "-" && o.book != ""
	switch {
	case flags.NArg() > 1:
		return wrong("%d books named; need one, or none for the embedded one (flags go before the name)", flags.NArg())
	case flags.NArg() == 1 && o.book == "":
		return wrong("the name of the book is empty; need one, or no argument at all for the embedded one")
	case (o.kind != "" || o.newBath != "") && !onFile:
		return wrong("writing needs a book in a file")
	case o.kind != "" && o.newBath != "":
		return wrong("-new and -%s: open the book first", o.kind)
	case *when != "" && o.kind == "" && o.newBath == "" || o.note != "" && o.kind == "":
		return wrong("-when and -note belong to an entry")
	}
	if o.plot != "" {
		if e := strings.ToLower(filepath.Ext(o.plot)); e != ".png" && e != ".svg" {
			return wrong("-plot %s: need a name that ends in .png or .svg", o.plot)
		}
	}
	o.when = now
	if *when != "" {
		t, err := time.Parse(time.RFC3339, *when)
		if err != nil {
			return wrong("-when %q: need a time as 2026-03-02T09:30:00+01:00", *when)
		}
		o.when = t
	}
	return &o, 0
}

// do opens the book, posts, and shows.
func (o *options) do(stdin io.Reader, stdout, stderr io.Writer) error {
	var desk files.Desk
	for _, name := range []string{o.book, o.newBath} {
		if name != "" && name != "-" {
			desk.Remember(name)
		}
	}
	if o.plot != "" { // before anything is entered
		if filepath.Clean(o.plot) == filepath.Clean(o.book) {
			return fmt.Errorf("%q is the book: need another name for the picture", o.plot)
		}
		if err := desk.Free(o.plot); err != nil {
			return err
		}
	}
	book, damage := o.open(&desk, stdin, stderr)
	if book == nil {
		return damage
	}
	var out bytes.Buffer
	err := writeSheet(&out, book, o, damage != nil)
	if err == nil && o.plot != "" && damage == nil { // no picture without its end
		err = drawFile(&desk, o.plot, book)
	}
	if err == nil {
		_, err = stdout.Write(out.Bytes())
	}
	return errors.Join(damage, err)
}

// open returns the book after the entry, if there is one to post. A book to be
// shown that is damaged comes as far as it is whole, together with the error.
func (o *options) open(desk *files.Desk, stdin io.Reader, stderr io.Writer) (*ledger.Ledger, error) {
	switch {
	case o.book == "":
		return ledger.Open(strings.NewReader(demo))
	case o.book == "-":
		text, err := io.ReadAll(files.Limit(stdin, "standard input"))
		if err != nil {
			return nil, err
		}
		return toShow("standard input", text, stderr)
	case o.newBath != "":
		bath, err := readBath(desk, o.newBath)
		if err != nil {
			return nil, err
		}
		if err := ledger.CheckClock("time of the new book", o.when, o.now); err != nil {
			return nil, fmt.Errorf("no book was opened: %w", err)
		}
		if _, err := ledger.New(bath, o.when); err != nil {
			return nil, fmt.Errorf("%s: %w", o.newBath, err)
		}
		f, err := ledger.CreateFile(o.book, bath, o.when.Truncate(time.Second))
		if errors.Is(err, fs.ErrExist) {
			return nil, fmt.Errorf("%s: there is a file of that name already; give the new book another name, or leave -new away to go on with this one", o.book)
		}
		if err != nil {
			return nil, err
		}
		if err := f.Close(); err != nil {
			return nil, err
		}
		return f.Ledger, nil
	case o.kind == "": // only to read: the file may be write-protected
		text, err := readBook(desk, o.book)
		if err != nil {
			return nil, err
		}
		return toShow(o.book, text, stderr)
	}
	event, err := readEvent(o.kind, o.fields)
	if err != nil {
		return nil, err
	}
	if err := ledger.CheckClock("time of the entry", o.when, o.now); err != nil {
		return nil, fmt.Errorf("nothing was entered: %w", err)
	}
	plain, err := desk.Open(o.book) // a plain file, and not too long
	if err != nil {
		return nil, fmt.Errorf("nothing was entered: %w", err)
	}
	plain.Close()
	for try := 1; ; try++ {
		l, err := o.enter(event, stderr)
		// Another program was faster: its entry comes first, and ours is not in the book.
		if errors.Is(err, ledger.ErrChanged) && !errors.Is(err, ledger.ErrUnsure) && try < 100 {
			continue
		}
		return l, err
	}
}

// enter puts one entry into the book.
func (o *options) enter(event ledger.Event, stderr io.Writer) (*ledger.Ledger, error) {
	f, torn := ledger.OpenFile(o.book)
	if f == nil {
		return nil, fmt.Errorf("nothing was entered: %w", remedy(o.book, torn))
	}
	err := slip(f.Ledger, event)
	var entered ledger.Record
	if err == nil {
		entered, err = f.Append(ledger.Entry{When: o.when.Truncate(time.Second), Event: event, Note: o.note})
		if ahead := f.Ahead(o.now); err != nil && len(ahead) > 0 && !errors.Is(err, ledger.ErrChanged) {
			err = errors.Join(err, errors.New(lateWords(f.Ledger, ahead[0])))
		}
	}
	if torn != nil && !errors.Is(err, ledger.ErrChanged) {
		terminal.Error(stderr, "bathbook", torn)
	}
	if err == nil { // said at once: what fails later must not make anyone book it twice
		what := ""
		if v, ok := event.(ledger.Void); ok {
			what = fmt.Sprintf("; no. %d no longer counts: enter now what was meant, if anything", v.Entry)
		}
		_ = terminal.Line(stderr, "bathbook: entered as no. %d of %s%s", entered.Seq, o.book, what)
	}
	if err := errors.Join(err, f.Close()); err != nil {
		return nil, err
	}
	return f.Ledger, nil
}

// lateWords says of an entry that is later than the clock what to do about it.
func lateWords(l *ledger.Ledger, entry int) string {
	if entry == 0 {
		return fmt.Sprintf("the book is opened on %s, later than the clock shows: set the clock if it is wrong, else start a new book",
			date(l.Opened()))
	}
	return fmt.Sprintf("no. %d is dated %s, later than the clock shows: set the clock if it is wrong, else strike the entry out with "+
		"-void \"entry=%d, reason=year mistyped\" and enter it again", entry, date(l.Records()[entry-1].Entry.When), entry)
}

// readBook reads the text of a book. A last line that is cut short may be one that
// another program is writing just now: it gets a moment to end it.
func readBook(desk *files.Desk, name string) ([]byte, error) {
	for try := 1; ; try++ {
		text, err := readFile(desk, name)
		if err != nil {
			return nil, err
		}
		if _, err := ledger.Read(bytes.NewReader(text)); !errors.Is(err, ledger.ErrTorn) || try == 5 {
			return text, nil
		}
		time.Sleep(100 * time.Millisecond)
	}
}

// readFile reads a file as [files.Desk.Open] bounds it.
func readFile(desk *files.Desk, name string) ([]byte, error) {
	f, err := desk.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return io.ReadAll(f)
}

// toShow opens the text of a book as far as its lines are whole. That the last
// line is torn is only said; damage further up is an error beside the book.
func toShow(name string, text []byte, stderr io.Writer) (*ledger.Ledger, error) {
	l, err := ledger.Open(bytes.NewReader(text))
	damage := (*ledger.DamageError)(nil)
	switch {
	case l != nil && err != nil: // torn
		_ = terminal.Line(stderr, "bathbook: %s: %v", name, err)
		err = nil
	case errors.As(err, &damage) && damage.Line > 1:
		before, openErr := ledger.Open(bytes.NewReader(text[:damage.Offset]))
		if openErr != nil {
			return nil, openErr
		}
		l = before
	}
	return l, remedy(name, err)
}

// remedy says what to do about a book that is not whole.
func remedy(name string, err error) error {
	torn, damage := (*ledger.TornError)(nil), (*ledger.DamageError)(nil)
	switch {
	case errors.As(err, &torn) && torn.Line == 1:
		return fmt.Errorf("%s: no opening is left (the file is empty, cut short in its first line, or no book at all); move the file away and start again with -new", name)
	case errors.As(err, &damage) && damage.Line == 1:
		return fmt.Errorf("%s: %w; without its opening nothing can be shown: put a copy of the file in its place, or move it away and start again with -new", name, damage)
	case errors.As(err, &damage):
		return fmt.Errorf("%s: %w; put a copy of the file in its place; without one, take %s into a new file, go on with that, and enter again what came after", name, damage, firstLines(damage.Line-1))
	}
	return err
}

// firstLines names the first lines of a file.
func firstLines(n int) string {
	if n == 1 {
		return "the first line"
	}
	return fmt.Sprintf("the first %d lines", n)
}

// readBath reads the bath of a new book.
func readBath(desk *files.Desk, name string) (ledger.Bath, error) {
	var b ledger.Bath
	text, err := readFile(desk, name)
	if err != nil {
		return b, err
	}
	if err := readObject(text, &b); err != nil {
		return b, fmt.Errorf("%s: %w", name, err)
	}
	return b, nil
}

// slip refuses an analysis so far from the book that a slip of the pen is likelier
// than either: averaged, both would be wrong and look certain.
func slip(l *ledger.Ledger, event ledger.Event) error {
	a, ok := event.(ledger.Analysis)
	if !ok || a.Reset {
		return nil
	}
	s := l.State()
	u := math.Hypot(float64(a.Uncertainty), float64(s.ContentUncertainty))
	if apart := math.Abs(float64(a.Content - s.Content)); apart > 10*u && apart > 0.2*float64(s.Content) {
		return fmt.Errorf("an analysis of %s lies far from the %s of the book: a slip? not entered; if it is right, enter it with reset=true, and look for what the book does not know", a.Content, s.Content)
	}
	return nil
}
