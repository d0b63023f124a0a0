package bookline

import (
	"bytes"
	"strings"
	"testing"
	"time"

	"example.com/laydown/plating/ledger"
)

// TestPropertyHelp: -h lists every field of the entries and of the bath with its example as it
// is typed, and the units.
func TestPropertyHelp(t *testing.T) {
	var b bytes.Buffer
	if o, status := Parse([]string{"-h"}, time.Time{}, &b); o != nil || status != 0 {
		t.Errorf("status %d", status)
	}
	help := b.String()
	for _, kind := range ledger.Kinds() {
		if !strings.Contains(help, "  -"+kind+" name=value, ...\n") || !strings.Contains(help, "\nfields of -"+kind+",") {
			t.Errorf("-h has no -%s", kind)
		}
		for _, f := range ledger.Fields(kind) {
			if !strings.Contains(help, "\n   "+f.Name+"="+f.Example) {
				t.Errorf("-h has no %s of %s", f.Name, kind)
			}
		}
	}
	for _, f := range append(ledger.Fields("bath"), ledger.Fields("book")...) {
		if !strings.Contains(help, "\n   \""+f.Name+`": `) || !strings.Contains(help, f.Example) {
			t.Errorf("-h has no %s of the bath or its book", f.Name)
		}
	}
	for _, want := range []string{"A·min, A·h", "oz/US gal", "none, or %", "in the list of -entries", `"name": "gold,`,
		`"pH": {"low"`} {
		if !strings.Contains(help, want) {
			t.Errorf("-h says nothing of %q", want)
		}
	}
}

// TestPropertyOptions: what the flags say is what the options hold.
func TestPropertyOptions(t *testing.T) {
	now := time.Date(2027, 1, 4, 8, 0, 0, 0, time.UTC)
	var b bytes.Buffer
	o, _ := Parse([]string{"-entries", "-pH", "4.4", "-load", "charge=1 C", "-when", "2026-03-02T09:30:00+01:00", "-note",
		"six hands", "gold.jsonl"}, now, &b)
	if o == nil || !o.Page.Entries || o.Page.Working || o.Page.PH != 4.4 || o.kind != "load" ||
		o.fields != "charge=1 C" ||
		o.When.UTC().Hour() != 8 || o.Note != "six hands" || o.Book != "gold.jsonl" || o.Page.Now != now ||
		o.Page.Remark != "" {
		t.Errorf("%+v, %s", o, b.String())
	}
	if o, _ = Parse(nil, now, &b); o == nil || o.Page.Remark == "" || !o.Page.Now.IsZero() || !o.When.Equal(now) ||
		o.posts() {
		t.Errorf("%+v", o)
	}
}
