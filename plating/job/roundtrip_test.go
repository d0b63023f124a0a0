package job_test

import (
	"bytes"
	"reflect"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/laydown/plating/job"
)

// everything lets cmp look into unexported fields too.
var everything = cmp.Exporter(func(reflect.Type) bool { return true })

// comesBack writes a job and reads it: it must be the same.
func comesBack(t testing.TB, j job.Job, open job.Opener) {
	t.Helper()
	var b bytes.Buffer
	if err := j.Write(&b); err != nil {
		t.Fatal(err)
	}
	back, err := job.Read(bytes.NewReader(b.Bytes()), open)
	if err != nil {
		t.Fatalf("%v in\n%s", err, b.Bytes())
	}
	if diff := cmp.Diff(j, back, everything); diff != "" {
		t.Fatalf("the job does not come back from\n%s\n%s", b.Bytes(), diff)
	}
}

// TestPropertyShippedJobsComeBack: the jobs of the workshop come back from what Write
// writes.
func TestPropertyShippedJobsComeBack(t *testing.T) {
	files := shipped(t)
	files["right"], files["shop"] = []byte(right), []byte(shop)
	for name, raw := range files {
		t.Run(name, func(t *testing.T) {
			j, err := job.Read(bytes.NewReader(raw), nil)
			if err != nil {
				t.Fatal(err)
			}
			comesBack(t, j, nil)
		})
	}
}
