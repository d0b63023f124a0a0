// Package files opens what a program reads and writes what it makes, so that no
// program writes over a file that it reads: a customer's drawing is not replaced
// by a picture of it. It is shared by the programs in examples.
package files

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"example.com/laydown/plating/mesh"
)

// Most is the largest file that is read, in bytes: a mesh of some million
// triangles. What is larger is no drawing of a part.
const Most = mesh.MaxBytes

// A Desk remembers what was read. Its zero value is ready for use.
type Desk struct {
	read  []fs.FileInfo
	names []string // beside them, for messages and for files that are gone
}

// Open opens a file to read and remembers it. Of more than [Most] bytes nothing
// is read past them; then comes an error. A device, pipe or folder is refused:
// it has no end, or would never begin.
func (d *Desk) Open(name string) (io.ReadCloser, error) {
	return d.open(name, "need a plain file, or standard input as -")
}

// open opens a file; need is what would do instead of a device, pipe or folder.
func (d *Desk) open(name, need string) (io.ReadCloser, error) {
	info, err := os.Stat(name)
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, fmt.Errorf("%s is %s; %s", name, sort(info.Mode()), need)
	}
	if info.Size() > Most {
		return nil, fmt.Errorf("%s holds %d MB; need at most %d MB", name, info.Size()>>20, Most>>20)
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	d.read, d.names = append(d.read, info), append(d.names, name)
	return struct {
		io.Reader
		io.Closer
	}{Limit(f, name), f}, nil
}

// Input opens what a program is to read by the name on its command line: the demo of
// that path without a name, standard input for -, else the file, as [Desk.Open] does.
func (d *Desk) Input(name string, stdin io.Reader, demos fs.FS, demo string) (io.ReadCloser, error) {
	switch name {
	case "":
		return demos.Open(demo)
	case "-":
		return io.NopCloser(Limit(stdin, "standard input")), nil
	}
	return d.Open(name)
}

// Remember notes a file that something else reads or writes: a book.
func (d *Desk) Remember(name string) {
	if info, err := os.Stat(name); err == nil {
		d.read, d.names = append(d.read, info), append(d.names, name)
	}
}

// sort names what a file is that is no plain one.
func sort(m fs.FileMode) string {
	switch {
	case m.IsDir():
		return "a folder"
	case m&fs.ModeNamedPipe != 0:
		return "a pipe"
	case m&fs.ModeSocket != 0:
		return "a socket"
	}
	return "a device"
}

// limited reads up to a bound and then says that there was more.
type limited struct {
	r    io.Reader
	left int64
	name string
}

// Limit returns a reader that gives at most [Most] bytes of r and then an error
// that names what was read.
func Limit(r io.Reader, name string) io.Reader { return &limited{r, Most, name} }

func (l *limited) Read(p []byte) (int, error) {
	if l.left <= 0 {
		return 0, fmt.Errorf("%s goes on past %d MB; need at most that", l.name, Most>>20)
	}
	n, err := l.r.Read(p[:min(int64(len(p)), l.left)])
	l.left -= int64(n)
	return n, err
}

// Ending refuses a name that does not end in one of the endings, and one that
// would write over what was read.
func (d *Desk) Ending(name string, endings ...string) error {
	if e := strings.ToLower(filepath.Ext(name)); !slices.Contains(endings, e) {
		return fmt.Errorf("%q does not end in %s: need the name of the file to write", name, strings.Join(endings, " or "))
	}
	return d.Free(name)
}

// Free refuses a name that stands for a file that was read, by whatever path, link
// or spelling, and a folder, a pipe and a socket.
func (d *Desk) Free(name string) error {
	info, err := os.Stat(name)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	for i, was := range d.read {
		if os.SameFile(was, info) {
			return fmt.Errorf("%q is the file that is read as %q: need another name to write to", name, d.names[i])
		}
	}
	if m := info.Mode(); m.IsDir() || m&(fs.ModeNamedPipe|fs.ModeSocket) != 0 { // a pipe waits for one who reads
		return fmt.Errorf("%q is %s: need the name of a file to write", name, sort(m))
	}
	return nil
}

// Write writes a file whole or not at all: beside the name, then renamed. It
// refuses what [Desk.Free] refuses. A device such as the null device is written to as it is.
func (d *Desk) Write(name string, data []byte) error {
	if err := d.Free(name); err != nil {
		return err
	}
	if info, err := os.Stat(name); err == nil && !info.Mode().IsRegular() {
		return os.WriteFile(name, data, 0o644)
	}
	target := name
	if real, err := filepath.EvalSymlinks(name); err == nil { // write through a link, do not replace it
		target = real
	}
	f, err := os.CreateTemp(filepath.Dir(target), ".laydown-*")
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	if err == nil {
		err = f.Chmod(0o644)
	}
	if closeErr := f.Close(); err == nil {
		err = closeErr
	}
	if err == nil {
		err = os.Rename(f.Name(), target)
	}
	if err != nil {
		os.Remove(f.Name())
	}
	return err
}

// Beside returns what opens the files that a file names: looked for beside it, or
// in the working folder for standard input, and remembered.
func (d *Desk) Beside(name string) func(file string) (io.ReadCloser, error) {
	folder := ""
	if name != "" && name != "-" {
		folder = filepath.Dir(name)
	}
	return func(file string) (io.ReadCloser, error) {
		if !filepath.IsAbs(file) {
			file = filepath.Join(folder, filepath.FromSlash(file))
		}
		return d.open(file, "need a plain file")
	}
}
