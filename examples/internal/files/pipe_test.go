//go:build unix

package files_test

import (
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"example.com/laydown/examples/internal/files"
)

// TestPropertyPipesDoNotHang: a pipe at whose other end nobody is, by its name,
// by a link and beside a job, is refused at once, to read and to write.
func TestPropertyPipesDoNotHang(t *testing.T) {
	dir := t.TempDir()
	pipe, link, zero := filepath.Join(dir, "part.stl"), filepath.Join(dir, "link.stl"), filepath.Join(dir, "zero.stl")
	if err := syscall.Mkfifo(pipe, 0o600); err != nil {
		t.Skip("no pipe can be made here: ", err)
	}
	for name, target := range map[string]string{link: pipe, zero: "/dev/zero"} {
		if err := os.Symlink(target, name); err != nil {
			t.Fatal(err)
		}
	}
	var desk files.Desk
	for name, try := range map[string]func() error{
		"is a pipe; need a plain file, or":    func() error { _, err := desk.Open(pipe); return err },
		"link.stl is a pipe":                  func() error { _, err := desk.Open(link); return err },
		"zero.stl is a device":                func() error { _, err := desk.Open(zero); return err },
		"part.stl is a pipe; need":            func() error { _, err := desk.Beside(zero)("part.stl"); return err },
		"is a pipe: need the name":            func() error { return desk.Write(pipe, []byte("a sheet")) },
		"link.stl\" is a pipe: need the name": func() error { return desk.Ending(link, ".stl") },
	} {
		done := make(chan error, 1)
		go func() { done <- try() }()
		select {
		case err := <-done:
			if err == nil || !strings.Contains(err.Error(), name) {
				t.Errorf("%v, want %q", err, name)
			}
		case <-time.After(10 * time.Second):
			t.Errorf("%q: hangs", name)
		}
	}
}
