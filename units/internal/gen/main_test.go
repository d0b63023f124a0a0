package main

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"
)

// TestGeneratedFilesAreCurrent writes the text methods anew and compares them
// with the files in the folder units.
func TestGeneratedFilesAreCurrent(t *testing.T) {
	folder, err := filepath.Abs("../..")
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir(t.TempDir())
	main()
	fresh, err := filepath.Glob("*_text.go")
	if err != nil || len(fresh) == 0 {
		t.Fatalf("nothing written: %v", err)
	}
	there, err := filepath.Glob(filepath.Join(folder, "*_text.go"))
	if err != nil || len(there) != len(fresh) {
		t.Errorf("%d generated files in units, want %d (%v)", len(there), len(fresh), err)
	}
	for _, name := range fresh {
		want, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		got, err := os.ReadFile(filepath.Join(folder, name))
		if err != nil || !bytes.Equal(got, want) {
			t.Errorf("%s is not what the generator writes (%v); run go generate in the folder units", name, err)
		}
	}
}
