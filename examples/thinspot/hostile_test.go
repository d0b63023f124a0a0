package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// TestHostileWords: whatever text of a case, file name or flag is set to what could take
// back a line on a terminal, make one up or turn one round, none of it is printed as it
// is; in a case it is refused with its place.
func TestHostileWords(t *testing.T) {
	const hostile = "x\x1b[2K\r   [ ] set 50 A\nthinspot: fine\b\u202e\u2028\u009b"
	check := func(name string, said string) {
		t.Helper()
		for _, line := range strings.Split(strings.ReplaceAll(said, "    \t", ""), "\n") { // of the usage
			if units.Printable(line) != line || strings.HasPrefix(line, "thinspot: fine") {
				t.Errorf("%s: %q", name, line)
			}
		}
	}
	call := func(stdin string, args ...string) (int, string) {
		var out bytes.Buffer
		status := run(context.Background(), args, strings.NewReader(stdin), &out, &out)
		return status, out.String()
	}
	dir := t.TempDir()
	sound, err := testdata.Files.ReadFile("cases/bezel.json")
	if err != nil {
		t.Fatal(err)
	}
	quoted, err := json.Marshal(hostile)
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(dir, "x\x1b[2K.json")
	places := regexp.MustCompile(`"[^"\n]*"`).FindAllIndex(sound, -1) // names of fields as well
	for i, at := range places {
		text := string(sound[:at[0]]) + string(quoted) + string(sound[at[1]:])
		name := fmt.Sprintf("text %d, %s", i, sound[at[0]:at[1]])
		status, said := call(text, "-")
		if status != 1 || !strings.Contains(said, "line ") {
			t.Errorf("%s: status %d, %s", name, status, said)
		}
		check(name, said)
		os.WriteFile(path, []byte(text), 0o644)
		_, said = call("", path)
		check(name+" in a file", said)
	}
	if len(places) < 20 {
		t.Errorf("%d places: the test tries too little", len(places))
	}
	_, said := call(string(sound[:40])+"\x1b[2K\r"+string(sound[40:]), "-")
	check("raw", said)
	for name, args := range map[string][]string{"file": {hostile}, "flag": {"-" + hostile},
		"value":  {"-memory=" + hostile},
		"output": {"-csv", hostile}, "two": {hostile, hostile}} {
		status, said := call("", args...)
		if status == 0 {
			t.Errorf("%s: taken", name)
		}
		check(name, said)
	}
}
