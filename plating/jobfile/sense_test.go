package jobfile_test

import (
	"strings"
	"testing"

	"example.com/laydown/plating/jobfile"
	"example.com/laydown/testdata"
)

// TestPropertySense: figures that no shop has are refused, with the place and what to
// check.
func TestPropertySense(t *testing.T) {
	const check = "check the unit and the point"
	bob, err := testdata.Files.ReadFile("cases/bob.json")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ name, old string }{{"conductivity", `"conductivity": "`}, {"min_thickness", `"min_thickness": "`}} {
		text := string(bob)
		i := strings.Index(text, c.old)
		if i < 0 {
			t.Fatalf("the case has no %s", c.name)
		}
		i += len(c.old)
		_, err := jobfile.ReadCase(strings.NewReader(text[:i] + "99999" + text[i:]))
		if err == nil || !strings.Contains(err.Error(), check) || !strings.Contains(err.Error(), c.name) {
			t.Errorf("case, %s: %v", c.name, err)
		}
	}
}
