package job_test

import (
	"errors"
	"io"
	"strings"
	"testing"

	"example.com/laydown/plating"
	"example.com/laydown/plating/bath"
	"example.com/laydown/plating/job"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// TestPropertySense: figures that no shop has are refused by every reader, with the
// place and what to check; figures outside the usual are questioned in the notes.
func TestPropertySense(t *testing.T) {
	raw, err := testdata.Files.ReadFile("jobs/hands.json")
	if err != nil {
		t.Fatal(err)
	}
	edit := func(old, changed string) string {
		t.Helper()
		if !strings.Contains(string(raw), old) {
			t.Fatalf("the job has no %s", old)
		}
		return strings.Replace(string(raw), old, changed, 1)
	}
	const check = "check the unit and the point"
	for _, c := range []struct{ old, changed, field string }{
		{`"content": "8 g/L"`, `"content": "1e6 g/L"`, "metal content"},
		{`"content": "8 g/L"`, `"content": "1e-12 mg/L"`, "metal content"},
		{`"high": "3 V"`, `"high": "1e6 V"`, "voltage"},
		{`"current_density": "3 A/dm²"`, `"current_density": "1e6 A/dm²"`, "current density"},
		{`"high": "5 A/dm²"`, `"high": "1e6 A/dm²"`, "high end of the current density"},
		{`"high": "42 °C"`, `"high": "5000 °C"`, "high end of the temperature"},
		{`"set": "38 °C"`, `"set": "5000 °C"`, "bath temperature"},
		{`"volume": "5 L"`, `"volume": "5e9 L"`, "bath volume"},
		{`"time": "20 s"`, `"time": "400 d"`, "time"},
		{`"min_thickness": "1 µm"`, `"min_thickness": "1 m"`, "minimum thickness"},
		{`"min_thickness": "1 µm"`, `"min_thickness": "1e-6 nm"`, "minimum thickness"},
	} {
		_, err := job.Read(strings.NewReader(edit(c.old, c.changed)), nil)
		var value *units.ValueError
		if !errors.As(err, &value) || !strings.Contains(err.Error(), check) || !strings.Contains(err.Error(), c.field) ||
			!strings.Contains(err.Error(), "layers[") {
			t.Errorf("%s: %v", c.changed, err)
		}
	}
	for _, c := range []struct{ old, changed, asks string }{
		{`"content": "8 g/L"`, `"content": "400 g/L"`, "400 g/L is outside the usual"}, // beside a sequence too
		{`"volume": "5 L"`, `"volume": "25000 L"`, "25000 L is outside the usual"},
		{`"high": "3 V"`, `"high": "30 V"`, "30 V is outside the usual"},
		{`"set": "38 °C"`, `"set": "99 °C"`, "99 °C is outside the usual"},
	} {
		j, err := job.Read(strings.NewReader(edit(c.old, c.changed)), nil)
		if err != nil {
			t.Errorf("%s: %v", c.changed, err)
			continue
		}
		sheet, err := j.Sheet()
		if err != nil {
			t.Errorf("%s: %v", c.changed, err)
			continue
		}
		asked := false
		for _, coat := range sheet.Coats() {
			for _, n := range coat.Notes {
				asked = asked || strings.Contains(n.Text, c.asks) && n.Severity == plating.SeverityWarning
			}
		}
		if !asked {
			t.Errorf("%s: no question in %v", c.changed, sheet.Coats())
		}
	}
	own := func(more string) io.Reader {
		return strings.NewReader(
			`{"format": "laydown baths 1", "baths": [{"key": "bench", "name": "copper, acid", "metal": "Cu",
  "use": ["finish"], "hazards": ["acid"], "density": {"low": "8.9 g/cm³", "high": "8.96 g/cm³", "source": "bench book", "seen": "measured"},
  "efficiency": {"low": "98 %", "high": "99 %", "source": "bench book", "seen": "measured"}` + more + `}]}`)
	}
	if _, err := bath.Read(own("")); err != nil {
		t.Fatal(err)
	}
	for _, more := range []string{`"content": {"low": "1e6 g/L"`, `"volts": {"high": "1e6 V"`,
		`"temperature": {"high": "5000 °C"`, `"current_density": {"high": "1e6 A/dm²"`, `"time": {"high": "400 d"`} {
		_, err := bath.Read(own(", " + more + `, "source": "bench book", "seen": "measured"}`))
		if err == nil || !strings.Contains(err.Error(), check) {
			t.Errorf("bath file, %s: %v", more, err)
		}
	}
}
