package ledger_test

import (
	"errors"
	"io"
	"reflect"
	"slices"
	"strings"
	"testing"
	"testing/iotest"

	"example.com/laydown/plating"
	"example.com/laydown/plating/ledger"
	"example.com/laydown/units"
)

// known returns the names of the fields of an entry in their order, and those that it needs.
func known(t *testing.T, kind string, v any) (all, needed []string) {
	t.Helper()
	_, err := ledger.ParseEvent(kind, "colour=red")
	var e *ledger.FieldError
	if !errors.As(err, &e) {
		t.Fatal(err)
	}
	_, list, _ := strings.Cut(e.What, "known here are ")
	all = strings.Split(list, ", ")
	for i := range reflect.TypeOf(v).NumField() {
		tag := reflect.TypeOf(v).Field(i).Tag
		if name, _, _ := strings.Cut(tag.Get("json"), ","); strings.Contains(tag.Get("with"), "must") {
			needed = append(needed, name)
		}
	}
	return all, needed
}

// TestPropertyFieldLists: the fields that are listed are those of the entries, in their order,
// "needed" where they are, and each example can be read.
func TestPropertyFieldLists(t *testing.T) {
	of := map[string]any{"load": ledger.Load{}, "addition": ledger.Addition{}, "analysis": ledger.Analysis{},
		"evaporation": ledger.Evaporation{}, "correction": ledger.Correction{}, "void": ledger.Void{}}
	if len(ledger.Kinds()) != len(of) {
		t.Errorf("kinds %v", ledger.Kinds())
	}
	for kind, v := range of {
		var listed, entry []string
		all, needed := known(t, kind, v)
		for _, f := range ledger.Fields(kind) {
			listed, entry = append(listed, f.Name), append(entry, f.Name+"="+f.Example)
			if slices.Contains(needed, f.Name) != strings.HasPrefix(f.Means, "needed") {
				t.Errorf("%s: %s is needed: %t; the list says %q", kind, f.Name, slices.Contains(needed, f.Name), f.Means)
			}
		}
		if !slices.Equal(listed, all) {
			t.Errorf("%s: listed are %v, the fields are %v", kind, listed, all)
		}
		if e, err := ledger.ParseEvent(kind, strings.Join(entry, ", ")); err != nil ||
			reflect.TypeOf(e) != reflect.TypeOf(v) {
			t.Errorf("%s: %T, %v", kind, e, err)
		}
	}
	if ledger.Fields("colour") != nil {
		t.Error("a kind that is none has fields")
	}
}

// members are the fields of a kind but one as a file has them.
func members(kind, but string) string {
	var list []string
	for _, f := range ledger.Fields(kind) {
		if f.Example[0] != '{' && f.Example[0] != '[' {
			f.Example = `"` + f.Example + `"`
		}
		if f.Name == "valence" {
			f.Example = strings.Trim(f.Example, `"`)
		}
		if f.Name != but {
			list = append(list, `"`+f.Name+`": `+f.Example)
		}
	}
	return strings.Join(list, ",\n")
}

// TestPropertyAccountFields: the examples of the fields of a bath and of its book make a book;
// without one that is needed there is none, without any other there is.
func TestPropertyAccountFields(t *testing.T) {
	b, err := ledger.ReadAccount(strings.NewReader("{" + members("bath", "") + "}"))
	if err != nil {
		t.Fatal(err)
	}
	if err := b.Check(); err != nil || b.Anode.Soluble() || len(b.Salts) != 1 || b.Valence != 1 || b.Low == 0 ||
		b.Hazards != plating.HazardCyanide|plating.HazardAcid || b.PH.Low != 4.2 || b.Fine != 0.996 ||
		b.Efficiency != (ledger.EfficiencyRange{Value: 0.35, Low: 0.32, High: 0.38}) {
		t.Errorf("%+v: %v", b, err)
	}
	for _, f := range ledger.Fields("bath") {
		_, err := ledger.ReadAccount(strings.NewReader("{" + members("bath", f.Name) + "}"))
		if (err != nil) != strings.HasPrefix(f.Means, "needed") || err != nil && !strings.Contains(err.Error(), f.Name) &&
			!strings.Contains(err.Error(), "efficiency") {
			t.Errorf("without %s: %v", f.Name, err)
		}
	}
	soluble := strings.Replace("{"+members("bath", "book"), "insoluble", "soluble", 1) + `, "book": {`
	b, err = ledger.ReadAccount(strings.NewReader(soluble + members("book", "") + "}}"))
	if err != nil || b.Check() != nil || b.Anode.Share != 1 || b.Anode.Efficiency.Value != 0.98 || b.Life != 5 ||
		b.Target != 8*units.GramPerLitre || b.Due != 200*units.AmpereMinute || b.Anode.Equivalent == 0 {
		t.Errorf("%+v: %v, %v", b, err, b.Check())
	}
	for _, f := range ledger.Fields("book") {
		_, err := ledger.ReadAccount(strings.NewReader(soluble + members("book", f.Name) + "}}"))
		if (err != nil) != strings.HasPrefix(f.Means, "needed") {
			t.Errorf("without %s: %v", f.Name, err)
		}
	}
}

// TestPropertyParsedEvents: a list is read as it is meant, and what is wrong is told with
// its field.
func TestPropertyParsedEvents(t *testing.T) {
	for list, want := range map[string]ledger.Event{
		"charge=12 A·min,drag_out = 4 mL": ledger.Load{Charge: 720, DragOut: 4 * units.Millilitre},
		" charge=720 C ":                  ledger.Load{Charge: 720},
	} {
		e, err := ledger.ParseEvent("load", list)
		got, _ := e.(ledger.Load)
		if err != nil || got.Charge != want.(ledger.Load).Charge || got.DragOut.Text(units.Millilitre, 6) !=
			want.(ledger.Load).DragOut.Text(units.Millilitre, 6) {
			t.Errorf("%s: %+v, %v", list, e, err)
		}
	}
	e, err := ledger.ParseEvent("correction", "reason=spill, wiped up, pH=4, volume=-10 mL")
	if err == nil {
		t.Errorf("a field pH was taken: %+v", e)
	}
	e, err = ledger.ParseEvent("correction", "reason=spill, wiped up, volume=-10 mL")
	if c, _ := e.(ledger.Correction); err != nil || c.Reason != "spill, wiped up" {
		t.Errorf("%+v, %v", e, err)
	}
	for _, c := range []struct {
		text  string
		reset bool
	}{{"true", true}, {"false", false}, {"true, and alone", true}} {
		e, err = ledger.ParseEvent("analysis", "content=7 g/L, uncertainty=1 g/L, reset="+c.text)
		if a, _ := e.(ledger.Analysis); err != nil || a.Reset != c.reset {
			t.Errorf("reset=%s: %+v, %v", c.text, e, err)
		}
	}
	for _, c := range []struct{ kind, list, field, what string }{
		{"load", "", "", "no equals sign"},
		{"load", "12 A·min", "", `"12 A·min" has no equals sign`},
		{"load", "charge=1 C, charge=2 C", "", `"charge" twice`},
		{"load", "chrge=1 C", "chrge", "unknown field; known here are charge, weighed"},
		{"load", "charge=12", "charge", "no unit after the number; accepted: C, A·s"},
		{"void", "entry=x, reason=y", "entry", "a whole number"},
		{"void", "entry=1", "reason", `"reason" is missing; need a few words`},
		{"analysis", "reset=maybe", "reset", "true or false"},
	} {
		_, err := ledger.ParseEvent(c.kind, c.list)
		var e *ledger.FieldError
		if !errors.As(err, &e) || e.Field != c.field || !strings.Contains(e.What, c.what) ||
			!strings.HasPrefix(err.Error(), c.field) {
			t.Errorf("%s %s: %v", c.kind, c.list, err)
		}
	}
	var parse *units.ParseError
	if _, err := ledger.ParseEvent("load", "charge=12"); !errors.As(err, &parse) {
		t.Errorf("the reason is not wrapped: %v", err)
	}
	if _, err := ledger.ParseEvent("feast", "charge=12 C"); !errors.Is(err, units.ErrSyntax) ||
		!strings.Contains(err.Error(), "load, addition") {
		t.Errorf("another kind: %v", err)
	}
}

// TestPropertyReadAccount: a fault of a bath is told with its line, and a bath has an end.
func TestPropertyReadAccount(t *testing.T) {
	_, err := ledger.ReadAccount(strings.NewReader("{\"name\": \"silver\",\n\"volume\": 20}"))
	var e *ledger.FieldError
	if !errors.As(err, &e) || e.Line != 2 || e.Field != "volume" ||
		!strings.Contains(e.What, "number and unit in quotes") {
		t.Errorf("%+v", err)
	}
	for name, r := range map[string]io.Reader{"no reader": nil, "broken": iotest.ErrReader(io.ErrUnexpectedEOF),
		"endless": iotest.HalfReader(strings.NewReader(strings.Repeat(" ", 2<<20)))} {
		if b, err := ledger.ReadAccount(r); err == nil || b.Name != "" {
			t.Errorf("%s: %+v", name, b)
		}
	}
}

// FuzzReadAccount: no text makes the reader of baths panic or speak of Go types.
func FuzzReadAccount(f *testing.F) {
	f.Add(`{"name": "n", "metal": "Ni", "efficiency": "95 %", "book": {"salts": ["NiSO4"]}}`)
	f.Add("{" + members("bath", "") + "}")
	f.Add("{\"name\":\n}")
	f.Add("\xef\xbb\xbf[null, 1e999]")
	f.Fuzz(func(t *testing.T, text string) {
		_, err := ledger.ReadAccount(strings.NewReader(text))
		if err != nil && (err.Error() == "" || strings.Contains(err.Error(), "json:")) {
			t.Error(err)
		}
	})
}

// FuzzParseEvent: no list makes the reader of entries panic, and what it takes has no
// figures that are no numbers.
func FuzzParseEvent(f *testing.F) {
	for _, kind := range ledger.Kinds() {
		for _, field := range ledger.Fields(kind) {
			f.Add(kind, field.Name+"="+field.Example)
		}
	}
	f.Add("load", "charge=,=,,x")
	f.Fuzz(func(t *testing.T, kind, list string) {
		e, err := ledger.ParseEvent(kind, list)
		if (e == nil) == (err == nil) || err != nil && (err.Error() == "" || len(err.Error()) > 2000) {
			t.Errorf("%v, %v", e, err)
		}
	})
}
