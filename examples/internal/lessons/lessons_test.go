package lessons_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"example.com/laydown/examples/internal/lessons"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// near reports whether two figures agree but for the rounding of float64.
func near(a, b float64) bool { return math.Abs(a-b) <= 1e-11*max(math.Abs(a), math.Abs(b)) }

// TestPropertySteps: every formula that is shown gives the figure that is shown, from a
// source that the library knows; the answer is one sentence or two in one line and holds
// the last figure.
func TestPropertySteps(t *testing.T) {
	refs, err := os.ReadFile("../../../testdata/REFERENCES.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range lessons.All() {
		steps, answer, err := l.Work()
		if err != nil || len(steps) == 0 {
			t.Errorf("%s: %d steps, %v", l.Word, len(steps), err)
			continue
		}
		for _, s := range steps {
			if v, err := s.Recompute(); err != nil || !near(v, s.Result.SI) {
				t.Errorf("%s: %s gives %v, shown is %v: %v", l.Word, s.Formula, v, s.Result.SI, err)
			}
			// "given" is what shape.Known says of an area that somebody measured.
			if !strings.Contains(string(refs), "**["+s.Source+"]**") && s.Source != "given" {
				t.Errorf("%s: %s: no key %q", l.Word, s.Formula, s.Source)
			}
		}
		last := steps[len(steps)-1].Result.Value
		if !regexp.MustCompile(`(^|[^\d.])` + regexp.QuoteMeta(last) + `($|\D)`).MatchString(answer) {
			t.Errorf("%s: the answer lacks the last figure, %s: %s", l.Word, last, answer)
		}
		if strings.ContainsAny(answer, "\n!") || !strings.HasSuffix(answer, ".") {
			t.Errorf("%s: %q", l.Word, answer)
		}
	}
}

// TestPropertyWords: each lesson has its own word and says all that a pupil is told.
func TestPropertyWords(t *testing.T) {
	seen := map[string]bool{}
	for _, l := range lessons.All() {
		if seen[l.Word] || !regexp.MustCompile(`^[a-z]+$`).MatchString(l.Word) || l.Word == "all" {
			t.Errorf("word %q", l.Word)
		}
		seen[l.Word] = true
		if n := len([]rune(l.Title)); n == 0 || n > 56 {
			t.Errorf("%s: a title of %d characters", l.Word, n)
		}
		if l.Good == "" || !strings.HasSuffix(l.Question, "?") && !strings.HasSuffix(l.Question, ".") {
			t.Errorf("%s: %q, good to %q", l.Word, l.Question, l.Good)
		}
		for _, line := range strings.Split(l.Question, "\n") {
			if len([]rune(line)) > 110 || units.Printable(line) != line {
				t.Errorf("%s: %q", l.Word, line)
			}
		}
		if _, err := os.Stat(filepath.Join("../../..", l.Package, "doc.go")); err != nil {
			t.Errorf("%s: %v", l.Word, err)
		}
	}
	if steps, answer, err := (lessons.Lesson{}).Work(); err == nil || steps != nil || answer != "" {
		t.Errorf("an empty lesson: %v, %q, %v", steps, answer, err)
	}
}

// TestPropertyFind: a word is found in any case; another one brings what is near.
func TestPropertyFind(t *testing.T) {
	for word, want := range map[string]string{"karating": "", "KaraTing": "", "karatin": "karating karat",
		"mas":     "mass masked",
		"vermeil": "", "zinc": "", "ka": "", "": "", "pedulum": ""} {
		l, near, ok := lessons.Find(word)
		if got := strings.Join(near, " "); got != want || ok && l.Word != strings.ToLower(word) {
			t.Errorf("%q: %q %v, near %q", word, l.Word, ok, got)
		}
	}
	if _, near, ok := lessons.Find("screws"); ok || strings.Join(near, " ") != "scrap screw" {
		t.Errorf("screws: %v", near)
	}
}

// TestPropertyCautions: who would handle a salt of gold reads first what it does.
func TestPropertyCautions(t *testing.T) {
	for word, want := range map[string]string{"salt": "cyanide", "trial": "cyanide", "feed": "cid"} {
		l, _, _ := lessons.Find(word)
		notes := l.Cautions()
		if len(notes) < 3 || !strings.Contains(notes[0].Line(), want) {
			t.Errorf("%s: %v", word, notes)
		}
	}
	if l, _, _ := lessons.Find("karating"); l.Cautions() != nil {
		t.Errorf("karating: %v", l.Cautions())
	}
}

// TestPropertyWorkingsAreTaught: each function that shows its working is shown in a
// lesson, and each body of package shape.
func TestPropertyWorkingsAreTaught(t *testing.T) {
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	var text strings.Builder
	for _, f := range files {
		if raw, err := os.ReadFile(f); err == nil && !strings.HasSuffix(f, "_test.go") {
			text.Write(raw)
		}
	}
	count := 0
	for _, dir := range []string{"alloys", "faraday", "plating/throwing", "plating/rinse", "plating/electrical",
		"plating/shape"} {
		sources, err := filepath.Glob(filepath.Join("../../..", dir, "*.go"))
		if err != nil {
			t.Fatal(err)
		}
		for _, path := range sources {
			if strings.HasSuffix(path, "_test.go") {
				continue
			}
			file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
			if err != nil {
				t.Fatal(err)
			}
			for _, d := range file.Decls {
				f, ok := d.(*ast.FuncDecl)
				if !ok || !f.Name.IsExported() || !strings.HasSuffix(f.Name.Name, "Working") {
					continue
				}
				count++
				want := "." + f.Name.Name + "("
				if f.Name.Name == "Working" { // a method: its type tells which
					typ, ok := f.Recv.List[0].Type.(*ast.Ident)
					if !ok {
						t.Fatalf("%s: receiver of %s", path, f.Name.Name)
					}
					want = filepath.Base(dir) + "." + typ.Name + "{"
				}
				if !strings.Contains(text.String(), want) {
					t.Errorf("%s: no lesson has %s", path, want)
				}
			}
		}
	}
	if count < 70 {
		t.Errorf("only %d functions found", count)
	}
}

// TestIndependentAnswers computes the last figure of some lessons once more, in plain
// arithmetic and by another way where there is one; in SI units.
func TestIndependentAnswers(t *testing.T) {
	const faraday, gas, au = 96485.33212331, 8.31446261815324, 196.966570
	still := func(tanks int) float64 { // grams per litre in the last of some rinses, load by load
		c := make([]float64, tanks+1)
		c[0] = 8
		for load := 0; load < 50; load++ {
			for k := 1; k <= tanks; k++ {
				c[k] = (10*c[k] + 0.02*c[k-1]) / 10.02
			}
		}
		return c[tanks]
	}
	bore := math.Sqrt(4 * 81e-6 / (5 * 0.02 * 0.003))
	bottom := 1 / (math.Cosh(bore) + bore/12*math.Sinh(bore))
	walls := (math.Sinh(bore)/bore + (math.Cosh(bore)-1)/12) * bottom
	for word, want := range map[string]float64{
		"karating":     0.030 * (1 - 14./24) / (1 - 18./24), // the alloy stays, its share falls
		"lowering":     0.042 * 18 / 14,
		"twostocks":    0.026 * 8 / 13,
		"assay":        586,
		"depositkarat": 24 * 0.99,
		"finemass":     0.030 / (0.75 * 15500),
		"scrap":        18.6*0.75*2000/31.1034768 + 18.6*0.125*0.8,
		"mass":         1e-3 * au * 0.35 * 0.5 * 720 / faraday,
		"minutes":      0.3 / au * faraday / 0.35 / 0.5,
		"salt":         5e-3 * (39.0983 + au + 2*12.011 + 2*14.007) / au,
		"weighcoat":    17000 * 1.5e-6 * 40e-4,
		"thickness":    1e-3 * au / faraday * 0.35 * 45 * 300 / 17000,
		"pulse":        0.3,
		"reverse":      3,
		"ramp":         0.3*120 + 0.5*480,
		"log":          15 + 30 + 0.45*240,
		"gas":          3600 / (4 * faraday) * gas * 298.15 / 101325,
		"weightchain":  200 * math.Pi * 1.6 * (2*4 + math.Pi*6.4) * 1e-6,
		"loosewire":    4 * 0.034 / (8500 * 0.0012),
		"wagner":       1. / 6,
		"bore":         bottom / (0.8 + 0.2*walls),
		"stillrinse":   still(1),
		"threestills":  8 / still(3),
		"spray":        math.E * math.Sqrt(math.E),
		"recovery":     38.4e-3 / 4.75,
		"resistance":   0.1 * math.Ln2 / (5 * 0.01),
		"heater":       320,
		"anodes":       0.5 / 0.0210,
		"ventilation":  3 * 99 * 10 / (2 * faraday) * gas * 293.15 / 101325,
		"twocontents":  1 / math.Hypot(1/0.3, 1/0.1),
		"feed":         40e-6,
		"sharedbill":   100 * 105. / 165,
	} {
		if got := last(t, word); math.Abs(got.SI-want) > 1e-9*want {
			t.Errorf("%s: %v (%s), by hand %v", word, got.SI, got.Value, want)
		}
	}
}

func last(t *testing.T, word string) working.Term {
	t.Helper()
	l, _, ok := lessons.Find(word)
	steps, _, err := l.Work()
	if !ok || err != nil {
		t.Fatalf("%s: %v, %v", word, ok, err)
	}
	return steps[len(steps)-1].Result
}
