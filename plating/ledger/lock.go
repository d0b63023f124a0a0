package ledger

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"example.com/laydown/units"
)

// lockName is what the name of the lock file has behind that of the book.
const lockName = ".lock"

// How long [File.Append] waits for another program: some ten seconds in steps that
// grow. A program holds the lock for the milliseconds of one line.
const (
	lockTries = 600
	// tries when the folder takes no new file: a lock that is being removed looks like that on some systems
	lockRefused = 40
	lockStep    = 20 * time.Millisecond
)

// whole returns the path of the file that a name stands for in the end, from the root
// and through all links, so that two names of one book have one lock.
func whole(book string) string {
	if real, err := filepath.EvalSymlinks(book); err == nil {
		book = real
	}
	if from, err := filepath.Abs(book); err == nil {
		book = from
	}
	return book
}

// takeLock makes the lock file, which only one program can, and returns what takes
// it away again. It waits while another program holds it.
//
// Errors: one that wraps [ErrLocked], with who holds it since when, and what to do;
// that of the file system when no file can be made there.
func takeLock(path string, tries int) (release func(), err error) {
	for try := range tries {
		var f *os.File
		f, err = os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
		if err == nil {
			return held(f, path), nil
		}
		if !errors.Is(err, fs.ErrExist) && (!errors.Is(err, fs.ErrPermission) || try >= lockRefused) {
			return nil, fmt.Errorf("%w; need a folder that takes the lock file beside the book", err)
		}
		time.Sleep(min(lockStep, time.Millisecond*time.Duration(1+try/4)))
	}
	return nil, fmt.Errorf("%w%s; wait and try again; if no program writes to the book, as after a power failure, "+
		"remove %s",
		ErrLocked, holder(path), units.Printable(path))
}

// held writes into the lock file who holds it, for whoever waits, and returns what
// removes it. What cannot be written is left out: the lock is the file itself.
func held(f *os.File, path string) (release func()) {
	host, err := os.Hostname()
	if err != nil {
		host = "this machine"
	}
	fmt.Fprintf(f, "process %d on %s\n", os.Getpid(), host)
	mine, mineErr := f.Stat()
	f.Close()
	return func() {
		now, err := os.Stat(path)
		if err != nil || mineErr == nil && (!os.SameFile(mine, now) || !mine.ModTime().Equal(now.ModTime())) {
			return // somebody took it away, and it may be another program's now
		}
		for range lockRefused { // some systems keep a file that another program looks at
			if os.Remove(path) == nil {
				return
			}
			time.Sleep(lockStep)
		}
	}
}

// holder tells from the lock file who holds it since when, as far as it can be read.
// The time is that of the file: nothing here reads a clock.
func holder(path string) string {
	text, err := os.ReadFile(path)
	if err != nil {
		return ""
	}
	who := units.Printable(strings.TrimSpace(string(text[:min(len(text), 200)])))
	if who == "" {
		who = "a program that left no name"
	}
	if info, err := os.Stat(path); err == nil {
		who += ", since " + info.ModTime().Format("2006-01-02 15:04:05")
	}
	return ": " + who
}
