package bookline

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path/filepath"
	"strings"
	"time"

	"example.com/laydown/examples/internal/files"
	"example.com/laydown/examples/internal/terminal"
	"example.com/laydown/plating/ledger"
)

// CheckPlot refuses a name for the picture that stands for the book, or for another file
// that is read. It comes before anything is entered: an entry must not stand in the book while
// the program ends with an error about a picture.
func (o *Options) CheckPlot() error {
	for _, name := range []string{o.Book, o.NewBath} {
		if name != "" && name != "-" {
			o.Files.Remember(name)
		}
	}
	switch {
	case o.Plot == "":
		return nil
	case filepath.Clean(o.Plot) == filepath.Clean(o.Book): // a new book is not there yet
		return fmt.Errorf("%q is the book: need another name for the picture", o.Plot)
	}
	return o.Files.Free(o.Plot)
}

// Open returns the book after the entry, if there is one to post; demo is the text of the
// embedded one. A book to be shown that is damaged comes as far as it is whole, together
// with the error.
func (o *Options) Open(demo string, stdin io.Reader, stderr io.Writer) (*ledger.Ledger, error) {
	switch { // Parse has seen to it that no two of them go together
	case o.Book == "":
		return ledger.Open(strings.NewReader(demo))
	case o.NewBath != "":
		return o.create()
	case o.posts():
		return o.enter(stderr)
	}
	name, book, err := o.read(stdin)
	if book != nil && errors.Is(err, ledger.ErrTorn) { // nothing is lost that was entered
		_ = terminal.Line(stderr, "bathbook: %s: %v", name, err)
		return book, nil
	}
	return book, remedy(name, err)
}

// read reads a book only to show it: its file may be write-protected. A last line that is
// cut short may be one that another program is writing just now: it gets a moment to end it.
func (o *Options) read(stdin io.Reader) (name string, book *ledger.Ledger, err error) {
	if o.Book == "-" {
		name = "standard input"
		book, err = salvage(files.Limit(stdin, name))
		return name, book, err
	}
	for try := 1; ; try++ {
		in, err := o.Files.Open(o.Book) // a plain file, and not too long
		if err != nil {
			return o.Book, nil, err
		}
		book, err = salvage(in)
		in.Close()
		if !errors.Is(err, ledger.ErrTorn) || try == 5 {
			return o.Book, book, err
		}
		time.Sleep(100 * time.Millisecond)
	}
}

// salvage reads a book as far as it is whole.
func salvage(r io.Reader) (*ledger.Ledger, error) {
	text, err := io.ReadAll(r)
	if err != nil {
		return nil, err
	}
	return ledger.Salvage(text)
}

// create opens a new book for the bath in a file. No file of the book is made before bath and
// time are known to be sound.
func (o *Options) create() (*ledger.Ledger, error) {
	in, err := o.Files.Open(o.NewBath)
	if err != nil {
		return nil, err
	}
	defer in.Close()
	bath, err := ledger.ReadAccount(in)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", o.NewBath, err)
	}
	if err := ledger.CheckClock("time of the new book", o.When, o.Now); err != nil {
		return nil, fmt.Errorf("no book was opened: %w", err)
	}
	if _, err := ledger.New(bath, o.When); err != nil { // a fault of the bath, not of the book
		return nil, fmt.Errorf("%s: %w", o.NewBath, err)
	}
	f, err := ledger.CreateFile(o.Book, bath, o.When.Truncate(time.Second))
	if errors.Is(err, fs.ErrExist) {
		return nil, fmt.Errorf("%s: there is a file of that name already; give the new book another name, "+
			"or leave -new away to go on with this one", o.Book)
	}
	if err != nil {
		return nil, err
	}
	return f.Ledger, f.Close()
}

// enter puts the entry into the book and says so. With an error nothing was entered, unless it
// was said before.
func (o *Options) enter(stderr io.Writer) (*ledger.Ledger, error) {
	event, err := ledger.ParseEvent(o.kind, o.fields)
	if err != nil {
		return nil, fmt.Errorf("-%s: %w", o.kind, err)
	}
	// Of a second only: the file of a book is read by people.
	in, err := o.entered(ledger.Entry{When: o.When.Truncate(time.Second), Event: event, Note: o.Note})
	if in.Book == nil {
		return nil, fmt.Errorf("nothing was entered: %w", remedy(o.Book, err))
	}
	// A line that another program was writing is no torn one.
	changed := errors.Is(err, ledger.ErrChanged)
	if in.Torn != nil && !changed {
		terminal.Error(stderr, "bathbook", in.Torn)
	}
	if in.Record.Seq != 0 { // said at once: what fails later must not make anyone book it twice
		what := ""
		if v, ok := event.(ledger.Void); ok {
			what = fmt.Sprintf("; no. %d no longer counts: enter now what was meant, if anything", v.Entry)
		}
		_ = terminal.Line(stderr, "bathbook: entered as no. %d of %s%s", in.Record.Seq, o.Book, what)
		if err == nil {
			return in.Book, nil
		}
		return nil, err
	}
	// An entry far ahead of the clock keeps out those of today: say which one, and how to strike it out.
	if ahead, slip := in.Book.Ahead(o.Now), (*ledger.SlipError)(nil); len(ahead) > 0 && !changed &&
		!errors.As(err, &slip) {
		err = errors.Join(err, errors.New(in.Book.Late(ahead[0], voidFlag(ahead[0]))))
	}
	return nil, err
}

// entered enters into a plain file that is not too long, at a time that the clock does not
// question. Both are asked before the book is opened to write: a device would never end, and
// a slip of the year would stand in the book for good.
func (o *Options) entered(e ledger.Entry) (ledger.Entered, error) {
	if err := ledger.CheckClock("time of the entry", o.When, o.Now); err != nil {
		return ledger.Entered{}, err
	}
	plain, err := o.Files.Open(o.Book)
	if err != nil {
		return ledger.Entered{}, err
	}
	plain.Close()
	return ledger.Enter(o.Book, e)
}

// voidFlag says how an entry is struck out.
func voidFlag(entry int) string { return fmt.Sprintf(`-void "entry=%d, reason=year mistyped"`, entry) }

// remedy adds to an error of a book that is not whole what to do about it.
func remedy(name string, err error) error {
	// A book without its first line is lost; one that is damaged further down is whole before it.
	torn, damage := (*ledger.TornError)(nil), (*ledger.DamageError)(nil)
	switch {
	case errors.As(err, &torn) && torn.Line == 1:
		return fmt.Errorf("%s: no opening is left (the file is empty, cut short in its first line, or no book at all); "+
			"move the file away and start again with -new", name)
	case errors.As(err, &damage) && damage.Line == 1:
		return fmt.Errorf("%s: %w; without its opening nothing can be shown: put a copy of the file in its place, "+
			"or move it away and start again with -new", name, damage)
	case errors.As(err, &damage):
		whole := "the first line"
		if damage.Line > 2 {
			whole = fmt.Sprintf("the first %d lines", damage.Line-1)
		}
		return fmt.Errorf("%s: %w; put a copy of the file in its place; without one, take %s into a new file, "+
			"go on with that, and enter again what came after", name, damage, whole)
	}
	return err
}
