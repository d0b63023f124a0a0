package job_test

import (
	"bytes"
	"encoding/json"
	"html"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"example.com/laydown/plating/job"
	"example.com/laydown/testdata"
)

var (
	styles = regexp.MustCompile(`(?s)<style>.*?</style>`)
	tags   = regexp.MustCompile(`<[^>]*>`)
	rule   = regexp.MustCompile(`(?m)^=+$`)
)

// spoken takes the words out of a text or page; capitals and boxes do not count.
func spoken(text string) []string {
	text = rule.ReplaceAllString(strings.ReplaceAll(text, "[ ]", " "), " ")
	return strings.Fields(strings.ToLower(text))
}

// written are the words of a document in their order; on a page the names of a tank
// that is ticked as a whole end in a colon.
func written(d *job.Document, page bool) []string {
	var b strings.Builder
	for _, s := range d.Sections {
		if page || s.Heading != "STOP" { // the lines of the text say it themselves
			b.WriteString(" " + s.Heading)
		}
		for _, it := range s.Items {
			what := it.What
			if page && s.Small && what != "" {
				what += ":"
			}
			mark := it.Mark
			if mark == "=" { // a line of the working
				mark = ""
			}
			for _, part := range []string{mark, what, it.Value, it.Text} {
				b.WriteString(" " + part)
			}
		}
	}
	return spoken(b.String())
}

// same compares two lists of words and shows where they part.
func same(t *testing.T, name string, got, want []string) {
	t.Helper()
	for i := range max(len(got), len(want)) {
		if i >= len(got) || i >= len(want) || got[i] != want[i] {
			from := max(0, i-8)
			t.Errorf("%s: after %d words\n%q, and in the document\n%q", name, i, got[min(from, len(got)):min(i+8, len(got))],
				want[min(from, len(want)):min(i+8, len(want))])
			return
		}
	}
}

// documentJobs are the shipped jobs, and some of them refused, stopped, and without a
// sequence.
func documentJobs(t *testing.T) map[string]string {
	t.Helper()
	all := map[string]string{}
	for _, name := range []string{"hands", "bezels", "finial"} {
		raw, err := testdata.Files.ReadFile("jobs/" + name + ".json")
		if err != nil {
			t.Fatal(err)
		}
		all[name] = string(raw)
	}
	edit := func(name, base string, pairs ...string) {
		text := all[base]
		for i := 0; i < len(pairs); i += 2 {
			if strings.Count(text, pairs[i]) != 1 {
				t.Fatalf("%s: %q stands there %d times", name, pairs[i], strings.Count(text, pairs[i]))
			}
			text = strings.Replace(text, pairs[i], pairs[i+1], 1)
		}
		all[name] = text
	}
	edit("refused: a gold strike at pH 1", "hands", `"pH": {"low": 3.2, "high": 4.0}`, `"pH": 1`)
	edit("refused without a sequence", "hands", `"pH": {"low": 3.2, "high": 4.0}`, `"pH": 1`, `  "finish": "hard gold",`,
		"")
	edit("refused, with masked parts", "bezels", `"pH": {"low": 3.5, "high": 4.0}`, `"pH": 1`)
	edit("stopped: a bath of a thimble", "hands", `"volume": "5 L"`, `"volume": "10 mL"`, `"evaporation": "40 mL"`,
		`"evaporation": "1 mL"`)
	edit("without a sequence", "finial", `  "finish": "silver",`, "")
	return all
}

// TestPropertyDocument: text, page and JSON of a sheet say the same, word for word and
// in the same order: what the document holds and nothing else. So do those of a job that
// must not be run, and of a sheet with its working.
func TestPropertyDocument(t *testing.T) {
	for name, text := range documentJobs(t) {
		for _, o := range []job.SheetOptions{{}, {Working: true, Remark: "The figures are invented."}} {
			j, err := job.Read(strings.NewReader(text), nil)
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			s, err := j.Sheet()
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			if refused := strings.HasPrefix(name, "refused"); s.Refused() != refused ||
				s.Forbidden() != (refused || strings.HasPrefix(name, "stopped")) {
				t.Errorf("%s: refused %v, %v", name, s.Refused(), s.Reasons())
			}
			d, err := s.Document(o)
			if err != nil || len(d.Sections) < 4 {
				t.Fatalf("%s: %d sections, %v", name, len(d.Sections), err)
			}
			var sheet, page, raw bytes.Buffer
			for _, err := range []error{s.WriteText(&sheet, o), s.WriteHTML(&page, o), s.WriteJSON(&raw, o)} {
				if err != nil {
					t.Fatalf("%s: %v", name, err)
				}
			}
			title := spoken(d.Title)
			same(t, name+", text", spoken(sheet.String()), append(spoken("BENCH SHEET: "+d.Title), written(&d, false)...))
			body := html.UnescapeString(tags.ReplaceAllString(styles.ReplaceAllString(page.String(), " "), " "))
			same(t, name+", page", spoken(body), append(append(title, title...), written(&d, true)...))
			var back struct {
				Stop     bool          `json:"stop"`
				Document []job.Section `json:"document"`
			}
			if err := json.Unmarshal(raw.Bytes(), &back); err != nil || back.Stop != s.Forbidden() {
				t.Errorf("%s: JSON says stop %v, %v", name, back.Stop, err)
			}
			o.Working = false // JSON has the steps at each coat
			if d, err = s.Document(o); err != nil || !reflect.DeepEqual(back.Document, d.Sections) {
				t.Errorf("%s: JSON has another document, %v", name, err)
			}
		}
	}
}

// TestPropertyNothingToTick: a job that must not be run has no box to tick and no room
// for a reading.
func TestPropertyNothingToTick(t *testing.T) {
	n := 0
	for name, text := range documentJobs(t) {
		j, err := job.Read(strings.NewReader(text), nil)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		s, err := j.Sheet()
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		d, err := s.Document(job.SheetOptions{})
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		boxes := 0
		for _, v := range d.Sections {
			for _, it := range v.Items {
				if it.Tick || it.Blank || v.Small {
					boxes++
				}
			}
		}
		if s.Refused() {
			n++
		}
		if s.Refused() != (boxes == 0) {
			t.Errorf("%s: refused %v, and %d boxes", name, s.Refused(), boxes)
		}
	}
	if n < 3 {
		t.Errorf("only %d jobs are refused", n)
	}
}
