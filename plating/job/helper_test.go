package job_test

import (
	"bytes"
	"encoding/json"
	"io/fs"
	"path"
	"testing"

	"example.com/laydown/plating/job"
	"example.com/laydown/testdata"
)

// shipped returns the job files of the workshop by name.
func shippedFiles(t testing.TB) map[string][]byte {
	t.Helper()
	names, err := fs.Glob(testdata.Files, "jobs/*.json")
	if err != nil || len(names) < 3 {
		t.Fatalf("jobs %v, %v: want three at least", names, err)
	}
	files := map[string][]byte{}
	for _, name := range names {
		raw, err := testdata.Files.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		files[path.Base(name)] = raw
	}
	return files
}

// compute reads a job file and works it out.
func compute(t testing.TB, raw []byte) *job.Sheet {
	t.Helper()
	j, err := job.Read(bytes.NewReader(raw), nil)
	if err != nil {
		t.Fatal(err)
	}
	return sheetOf(t, j)
}

// tree writes a sheet as JSON and reads it as plain maps and lists.
func tree(t testing.TB, s *job.Sheet, o job.SheetOptions) any {
	t.Helper()
	var b bytes.Buffer
	if err := s.WriteJSON(&b, o); err != nil {
		t.Fatal(err)
	}
	var v any
	if err := json.Unmarshal(b.Bytes(), &v); err != nil {
		t.Fatalf("%v in %s", err, b.Bytes())
	}
	return v
}

// at goes down a tree by names and indexes; nil where there is nothing.
func at(t testing.TB, v any, steps ...any) any {
	t.Helper()
	for _, s := range steps {
		switch s := s.(type) {
		case string:
			m, _ := v.(map[string]any)
			v = m[s]
		case int:
			list, _ := v.([]any)
			if s >= len(list) {
				return nil
			}
			v = list[s]
		}
	}
	return v
}
