package origin_test

import (
	"errors"
	"fmt"
	"os"
	"strings"
	"testing"

	"example.com/laydown/testdata"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// TestPropertySeenReadsBack: each word reads back as itself, others are refused.
func TestPropertySeenReadsBack(t *testing.T) {
	for s := origin.FromMemory; s <= origin.Measured; s++ {
		text, err := s.MarshalText()
		if err != nil {
			t.Fatal(err)
		}
		var back origin.Seen
		if err := back.UnmarshalText(text); err != nil || back != s {
			t.Errorf("%s reads back as %s, %v", s, back, err)
		}
	}
	for _, word := range []string{"", "Published", "stored copy", "second-hand", string(make([]byte, 100))} {
		var v *units.ValueError
		if _, err := origin.Parse(word); !errors.As(err, &v) {
			t.Errorf("%q: %v", word, err)
		}
	}
	if got := origin.Seen(200).String(); got != "from memory" {
		t.Errorf("a number past the list reads %q", got)
	}
}

// TestPropertyWeakest: the order is that of trust, and nothing is no better than memory.
func TestPropertyWeakest(t *testing.T) {
	if got := origin.Weakest(); got != origin.FromMemory {
		t.Error(got)
	}
	order := []origin.Seen{origin.FromMemory, origin.SecondHand, origin.Computed, origin.Published, origin.Given,
		origin.Measured}
	for i, a := range order {
		for _, b := range order[i:] {
			if got := origin.Weakest(b, a); got != a {
				t.Errorf("weakest of %s and %s is %s", a, b, got)
			}
		}
	}
}

func ExampleText() {
	fmt.Println(origin.Text(origin.Published, "Guidebook2011"))
	fmt.Println(origin.Text(origin.FromMemory, origin.Memory))
	fmt.Println(origin.Text(origin.FromMemory, origin.Practice))
	// Output:
	// published, Guidebook2011
	// from memory
	// common practice, no source
}

func ExampleWeakest() {
	fmt.Println(origin.Weakest(origin.Measured, origin.SecondHand, origin.Given))
	// Output: second hand
}

func ExampleParse() {
	_, err := origin.Parse("printed")
	fmt.Println(err)
	// Output: how the figure was seen printed: out of range; need one of from memory, second hand, computed, published, given, measured
}

// TestPropertyTables: every reference table says how it was seen in the words
// of this package, one or several with what each holds for behind it.
func TestPropertyTables(t *testing.T) {
	files, err := testdata.List()
	if err != nil || len(files) < 90 {
		t.Fatalf("%d tables, %v", len(files), err)
	}
	for _, file := range files {
		table, err := testdata.Read(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, part := range strings.Split(table.Header["seen"], ";") {
			word, _, _ := strings.Cut(strings.TrimSpace(part), " (")
			word, _, _ = strings.Cut(word, " for ")
			if _, err := origin.Parse(word); err != nil {
				t.Errorf("%s: %v", file, err)
			}
		}
	}
}

// TestPropertyNoRegistry: a source that a package carries is named by package and
// version; the address of a registry of packages stands nowhere in the tables.
func TestPropertyNoRegistry(t *testing.T) {
	hosts := []string{"npm" + "js.", "registry" + ".", "py" + "pi.", "cran.r-" + "project", "packages." + "debian",
		"crates" + ".io", "proxy." + "golang"}
	check := func(file string, raw []byte) {
		for _, h := range hosts {
			if strings.Contains(strings.ToLower(string(raw)), h) {
				t.Errorf("%s holds an address at %s", file, h)
			}
		}
	}
	files, err := testdata.List()
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range append(files, "REFERENCES.md") {
		raw, err := testdata.Files.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		check(file, raw)
	}
	raw, err := os.ReadFile("../../plating/mesh/testdata/README.md")
	if err != nil {
		t.Fatal(err)
	}
	check("plating/mesh/testdata/README.md", raw)
}
