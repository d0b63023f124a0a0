package main

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/laydown/testdata"
)

// htmlOf runs a job through -html and returns the page.
func htmlOf(t *testing.T, job string) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "sheet.html")
	var out, bad bytes.Buffer
	if status := run([]string{"-html", file, "-"}, strings.NewReader(job), &out, &bad); status != 0 {
		t.Fatalf("status %d: %s", status, bad.String())
	}
	raw, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return string(raw)
}

// TestPage: the page of each job is well formed, stands alone, and holds amps,
// volts, minutes and temperature with room for what was measured.
func TestPage(t *testing.T) {
	for job, wants := range map[string][]string{
		"hands":  {"0.523 A", "2.0 V to 3.0 V", "38 °C", "stainless steel"},
		"bezels": {"8.50 A", "4.0 V to 8.0 V", "55 °C", "mask 2.50 cm² on each", "12 min 27 s", "NICKEL SALTS"},
		"finial": {"0.8", "0.5 V to 2.0 V", "24 °C", "copper"},
	} {
		raw, err := testdata.Files.ReadFile("jobs/" + job + ".json")
		if err != nil {
			t.Fatal(err)
		}
		page := htmlOf(t, string(raw))
		d := xml.NewDecoder(strings.NewReader(page))
		d.Strict = true
		for {
			if _, err := d.Token(); err == io.EOF {
				break
			} else if err != nil {
				t.Fatalf("%s: %v", job, err)
			}
		}
		for _, want := range append(wants, "Before you start", "local codes", "Afterwards", "should have gained", "@page",
			"width=device-width", `class="m"`) {
			if !strings.Contains(page, want) {
				t.Errorf("%s: no %q", job, want)
			}
		}
		for _, not := range []string{"<script", "<link", "<img", "src=", "@import", "url("} {
			if strings.Contains(page, not) {
				t.Errorf("%s: holds %q", job, not)
			}
		}
		// A card for each tank, and load, cautions, sequence, afterwards, rinsing, baths, price.
		_, out, _ := call(t, string(raw), "-json", "-")
		var r result
		if err := json.Unmarshal([]byte(out), &r); err != nil {
			t.Fatal(err)
		}
		if n := strings.Count(page, "<section"); n != len(r.Tanks)+7 || len(r.Tanks) < 12 {
			t.Errorf("%s: %d cards for %d tanks", job, n, len(r.Tanks))
		}
	}
}

// TestPinnedPage pins the page of one job; what it says is pinned by its text.
func TestPinnedPage(t *testing.T) {
	raw, err := testdata.Files.ReadFile("jobs/bezels.json")
	if err != nil {
		t.Fatal(err)
	}
	golden(t, "bezels-page.golden", htmlOf(t, string(raw)))
}

// TestPageIsSafe: text of a job stays text.
func TestPageIsSafe(t *testing.T) {
	raw, err := testdata.Files.ReadFile("jobs/hands.json")
	if err != nil {
		t.Fatal(err)
	}
	page := htmlOf(t, strings.NewReplacer("24 hands of mantel clocks", "<script>alert(1)</script><b>", "minute hand",
		`</td><img src=x>`).Replace(string(raw)))
	if strings.Contains(page, "<script") || strings.Contains(page, "<img") || strings.Contains(page, "<b>") ||
		!strings.Contains(page, "&lt;script&gt;") {
		t.Error("markup of a job name is let through")
	}
}

// TestPageStops: a stop stands first, and a file that cannot be written is said.
func TestPageStops(t *testing.T) {
	raw, err := testdata.Files.ReadFile("jobs/hands.json")
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "stop.html")
	var out, bad bytes.Buffer
	job := strings.NewReplacer(`"volume": "5 L"`, `"volume": "10 mL"`, `"evaporation": "40 mL"`,
		`"evaporation": "1 mL"`).Replace(string(raw))
	if status := run([]string{"-html", file, "-"}, strings.NewReader(job), &out, &bad); status != 1 {
		t.Errorf("status %d", status)
	}
	page, err := os.ReadFile(file)
	if err != nil || !(bytes.Index(page, []byte(">STOP</span> ")) < bytes.Index(page, []byte("<h2>Load"))) ||
		!bytes.Contains(page, []byte(">STOP</span> ")) {
		t.Error("no stop in front", err)
	}
	if status := run([]string{"-html", "/no/such/folder/x.html"}, strings.NewReader(""), &out, &bad); status != 1 ||
		!strings.Contains(bad.String(), "no/such/folder") {
		t.Errorf("status %d, %s", status, bad.String())
	}
}
