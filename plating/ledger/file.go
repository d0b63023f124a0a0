package ledger

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"

	"example.com/laydown/units"
)

// A File is a book together with the file that holds it. Each entry is on the
// disk before [File.Append] returns. Several programs may have a book open, and
// one at a time writes: while a line is written, a lock file lies beside the book,
// its name with .lock behind it. A program that opened the book before another one
// wrote gets [ErrChanged] and opens it again. CreateFile and OpenFile make a File;
// the zero File holds no book.
type File struct {
	*Ledger
	store store
	path  string     // of the file, through all links; "" in tests of the store alone
	size  int64      // what the file should be long
	sum   uint32     // checksum of the last line in it
	torn  *TornError // to be mended before the next line
	shut  bool
}

// A store is what a File asks of an *os.File.
type store interface {
	Write([]byte) (int, error)
	ReadAt([]byte, int64) (int, error)
	Sync() error
	Truncate(int64) error
	Stat() (os.FileInfo, error)
	Close() error
}

// CreateFile opens a new book and the file for it, which must not exist yet.
//
// Errors: those of [New] and of the file system.
func CreateFile(path string, bath Account, opened time.Time) (*File, error) {
	if err := checkPath(path); err != nil {
		return nil, err
	}
	if _, err := New(bath, opened); err != nil { // before there is a file
		return nil, err
	}
	file, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE|os.O_EXCL|os.O_APPEND, 0o644)
	if err != nil {
		return nil, err
	}
	f := &File{store: file, path: whole(path)}
	f.Ledger, err = Start(file, bath, opened)
	if err == nil {
		err = file.Sync()
	}
	if err == nil {
		f.size, err = f.length()
	}
	if err != nil {
		file.Close()
		os.Remove(path) // a book without its first line is of no use
		return nil, err
	}
	syncFolder(filepath.Dir(path))
	f.sum = f.Ledger.last
	return f, nil
}

// checkPath refuses what no file is called, before the system repeats all of it.
func checkPath(path string) error {
	if path != "" && len(path) <= 4096 && !strings.Contains(path, "\x00") {
		return nil
	}
	return &units.ValueError{Field: "name of the file", Value: fmt.Sprintf("%q", units.Clip(path)),
		Need: "1 to 4096 bytes, none of them zero", Err: units.ErrOutOfRange}
}

// syncFolder puts the name of a new file on the disk, where the system can.
func syncFolder(path string) {
	if d, err := os.Open(path); err == nil {
		d.Sync() // some systems cannot sync a folder; the file itself is safe
		d.Close()
	}
}

// OpenFile opens the file of a book to read it and to go on writing.
//
// Errors: those of [Open] and of the file system. A [*TornError] comes together
// with a File that can be used: the first [File.Append] puts its line in the
// place of the torn one. Nothing is written until then.
func OpenFile(path string) (*File, error) {
	if err := checkPath(path); err != nil {
		return nil, err
	}
	file, err := os.OpenFile(path, os.O_RDWR|os.O_APPEND, 0)
	if err != nil {
		return nil, err
	}
	f, err := openStore(file)
	if f == nil {
		file.Close()
		return nil, fmt.Errorf("%s: %w", units.Clip(path), err)
	}
	f.path = whole(path)
	if err != nil {
		return f, fmt.Errorf("%s: %w", path, err)
	}
	return f, nil
}

// openStore reads a book. A [*TornError] comes with a File, any other error without.
func openStore(file interface {
	store
	io.Reader
}) (*File, error) {
	f := &File{store: file}
	read := &counted{r: file}
	var err error
	f.Ledger, err = Open(read)
	if err != nil && !errors.As(err, &f.torn) || f.Ledger == nil {
		return nil, err
	}
	// Not the length of the file, which another program may have added to since.
	f.sum, f.size = f.Ledger.last, read.n
	return f, err
}

// A counted reader knows how many bytes it gave.
type counted struct {
	r io.Reader
	n int64
}

func (c *counted) Read(p []byte) (int, error) {
	n, err := c.r.Read(p)
	c.n += int64(n)
	return n, err
}

func (f *File) length() (int64, error) {
	info, err := f.store.Stat()
	if err != nil {
		return 0, err
	}
	return info.Size(), nil
}

// Append enters something into the book and puts its line on the disk.
//
// When the disk fails the book is as it was, and the file is cut back to the
// lines it had. With an error the entry is not in the book; only where the error
// wraps [ErrUnsure] it may be: open the book again and look.
//
// Errors: those of [Ledger.Post]; [ErrChanged] when another program has written since
// this one opened the book; [ErrLocked] when one goes on writing for ten seconds, or
// left its lock behind; those of the file system; a [*units.ValueError] when the
// Ledger of the File was given an entry past the File.
func (f *File) Append(e Entry) (Record, error) {
	if f == nil || f.shut || f.Ledger == nil || f.store == nil {
		return Record{}, os.ErrClosed
	}
	if f.Ledger.last != f.sum {
		return Record{}, &units.ValueError{Field: "book", Value: "has an entry that its file has not",
			Need: "Append of the File for every entry; open the file again", Err: units.ErrInconsistent}
	}
	if err := admit(e); err != nil {
		return Record{}, err
	}
	if _, err := f.Ledger.try(e); err != nil { // before the file is touched
		return Record{}, err
	}
	if f.path != "" {
		release, err := takeLock(f.path+lockName, lockTries)
		if err != nil {
			return Record{}, err
		}
		defer release()
		if err := f.there(); err != nil {
			return Record{}, err
		}
	}
	if size, err := f.length(); err != nil {
		return Record{}, err
	} else if size != f.size {
		return Record{}, fmt.Errorf("%w: it has %d bytes instead of %d; open it again", ErrChanged, size, f.size)
	}
	if err := f.mend(); err != nil {
		return Record{}, err
	}
	before := *f.Ledger
	line := &kept{to: f.store}
	r, err := f.Ledger.Append(line, e)
	if err == nil {
		err = f.store.Sync()
	}
	size := int64(0)
	if err == nil {
		size, err = f.length()
	}
	if err == nil && size != f.size+int64(len(line.text)) {
		*f.Ledger = before
		return Record{}, f.yield(line.text, size)
	}
	if err != nil {
		*f.Ledger = before
		f.torn = &TornError{Line: before.Len() + 2, Kept: f.size}
		if mendErr := f.mend(); mendErr != nil {
			err = fmt.Errorf("%w; it could not be taken off the file (%w): %w; open the book again and look", err, mendErr,
				ErrUnsure)
		}
		return Record{}, err
	}
	f.size, f.sum = size, f.Ledger.last
	return r, nil
}

// there makes sure that the name still stands for the file that is open: into one that
// was moved away or replaced, an entry would be lost.
func (f *File) there() error {
	mine, err := f.store.Stat()
	if err != nil {
		return err
	}
	if now, err := os.Stat(f.path); err != nil || !os.SameFile(mine, now) {
		return fmt.Errorf("%w: %s was moved away or replaced; open it again", ErrChanged, units.Printable(f.path))
	}
	return nil
}

// A kept remembers what it writes.
type kept struct {
	to   store
	text []byte
}

func (k *kept) Write(p []byte) (int, error) {
	k.text = append(k.text, p...)
	return k.to.Write(p)
}

// yield takes a line off the file again when another program has written at the
// same moment, past the lock. Where ours is the last one it goes, so that the book
// still opens; where it is not, the other program sees the same and takes off its own.
func (f *File) yield(line []byte, size int64) error {
	tail := make([]byte, len(line))
	at := size - int64(len(line))
	if _, err := f.store.ReadAt(tail, max(at, 0)); err == nil && bytes.Equal(tail, line) {
		if err := f.store.Truncate(at); err != nil {
			return fmt.Errorf("%w while this entry was written (%w): %w; open the book again and look", ErrChanged, err,
				ErrUnsure)
		}
		return fmt.Errorf("%w while this entry was written; it was taken off again: open the book again and enter it",
			ErrChanged)
	}
	return fmt.Errorf("%w while this entry was written: %w; open the book again and look", ErrChanged, ErrUnsure)
}

// mend takes a torn line off the file, or ends one that is whole.
func (f *File) mend() error {
	if f.torn == nil {
		return nil
	}
	var err error
	switch {
	case !f.torn.Whole:
		err = f.store.Truncate(f.torn.Kept)
	case f.size == f.torn.Kept: // not mended by an attempt before
		_, err = write(f.store, []byte("\n"))
	}
	size, statErr := f.length()
	if statErr != nil {
		return statErr
	}
	f.size = size
	if err == nil {
		err = f.store.Sync()
	}
	if err == nil {
		f.torn = nil
	}
	return err
}

// Post refuses: an entry of a File belongs on the disk.
func (f *File) Post(Entry) (Record, error) {
	return Record{}, &units.ValueError{Field: "entry", Value: "posted in memory only",
		Need: "Append, which writes the file as well", Err: units.ErrInconsistent}
}

// Close closes the file. The book can still be read.
func (f *File) Close() error {
	if f == nil || f.store == nil {
		return os.ErrClosed
	}
	f.shut = true
	return f.store.Close()
}

// MarshalJSON refuses: the file holds the book, line by line.
func (*File) MarshalJSON() ([]byte, error) {
	return nil, &units.ValueError{Field: "file of a book in JSON", Value: "by itself", Need: "the file that it keeps",
		Err: units.ErrInconsistent}
}
