package files_test

import (
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/laydown/examples/internal/files"
)

// TestPropertyNoFileOverItself: what was read is not written over by its name, a
// longer path, a link or a hard link; what was not read is.
func TestPropertyNoFileOverItself(t *testing.T) {
	dir := t.TempDir()
	part := filepath.Join(dir, "part.ply")
	if err := os.WriteFile(part, []byte("a drawing"), 0o644); err != nil {
		t.Fatal(err)
	}
	link, hard := filepath.Join(dir, "link.ply"), filepath.Join(dir, "hard.ply")
	if err := os.Symlink(part, link); err != nil {
		t.Fatal(err)
	}
	if err := os.Link(part, hard); err != nil {
		t.Fatal(err)
	}
	var desk files.Desk
	f, err := desk.Open(part)
	if err != nil {
		t.Fatal(err)
	}
	text, err := io.ReadAll(f)
	if err != nil || string(text) != "a drawing" {
		t.Errorf("read %q, %v", text, err)
	}
	f.Close()
	for _, name := range []string{part, filepath.Join(dir, ".", "x", "..", "part.ply"), link, hard} {
		if err := desk.Write(name, []byte("a picture")); err == nil || !strings.Contains(err.Error(), "another name") &&
			!os.IsNotExist(err) {
			if name != filepath.Join(dir, "x", "..", "part.ply") {
				t.Errorf("%s: %v", name, err)
			}
		}
	}
	if text, _ := os.ReadFile(part); string(text) != "a drawing" {
		t.Errorf("the drawing now holds %q", text)
	}
	out := filepath.Join(dir, "out.ply")
	for _, want := range []string{"first", "second"} {
		if err := desk.Write(out, []byte(want)); err != nil {
			t.Fatal(err)
		}
		if got, _ := os.ReadFile(out); string(got) != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	if left, _ := filepath.Glob(filepath.Join(dir, ".laydown-*")); len(left) != 0 {
		t.Errorf("left behind: %v", left)
	}
	if err := desk.Write(dir, nil); err == nil {
		t.Error("a folder was written to")
	}
	if err := desk.Write(filepath.Join(dir, "none", "out.ply"), nil); err == nil {
		t.Error("a folder that is not there was written to")
	}
}

func TestPropertyEndings(t *testing.T) {
	var desk files.Desk
	dir := t.TempDir()
	for name, taken := range map[string]bool{"a.svg": true, "A.SVG": true, "a.png": true, "a": false, "a.json": false,
		"svg": false} {
		if err := desk.Ending(filepath.Join(dir, name), ".png", ".svg"); (err == nil) != taken {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// endless never ends.
type endless struct{}

func (endless) Read(p []byte) (int, error) { return len(p), nil }

// TestPropertyBoundedReads: a folder, a device and an endless text are refused in
// a sentence.
func TestPropertyBoundedReads(t *testing.T) {
	var desk files.Desk
	for _, name := range []string{t.TempDir(), os.DevNull, filepath.Join(t.TempDir(), "none")} {
		if _, err := desk.Open(name); err == nil {
			t.Errorf("%s was opened", name)
		}
	}
	buf := make([]byte, 1<<21)
	r := files.Limit(endless{}, "standard input")
	var err error
	for range 1000 {
		if _, err = r.Read(buf); err != nil {
			break
		}
	}
	if err == nil || !strings.Contains(err.Error(), "standard input goes on past") {
		t.Errorf("%v", err)
	}
}
