package main

import (
	"fmt"
	"html/template"
	"io"

	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// A page is what the printable sheet shows.
type page struct {
	Title, Substrate, Area string
	Demo                   bool
	Stops                  []string
	Parts                  []pagePart
	Cautions               []plating.Note
	Tanks                  []tank
	Gain                   string
	Metals                 []string
}

type pagePart struct{ Count, Name, Area, Mask string }

// A tank is one stay in a bath, as a card that is not cut by a page break.
type tank struct {
	Number     int
	Name, Role string
	Bath       string
	Way, Notes []plating.Note // on the way there; about the tank
	Rows       []pageRow
	Source     string
	Then       string // what to do before the next tank
}

// A pageRow is one setting with its reason; Measured leaves room for a reading.
type pageRow struct {
	What, Value, Why string
	Measured         bool
}

// writePage writes the sheet as a page of its own that prints on A4 and Letter.
func writePage(w io.Writer, job plating.Job, res plating.JobResult, demo bool) error {
	p := page{Title: orText(job.Name, "plating job"), Substrate: orText(job.Substrate, "not given"),
		Area: figure(res.Area, units.SquareCentimetre, 3, 1), Demo: demo, Cautions: plating.Cautions(res.Hazards())}
	for _, v := range job.Parts {
		row := pagePart{Count: fmt.Sprint(v.Count), Name: orText(v.Name, "part"), Area: figure(v.Area, units.SquareCentimetre, 3, 2)}
		if v.Masked > 0 {
			row.Mask = figure(v.Masked, units.SquareCentimetre, 3, 2)
		}
		p.Parts = append(p.Parts, row)
	}
	var gain units.Mass
	for i := range res.Layers {
		lr := &res.Layers[i]
		t := pageTank(i, lr)
		switch {
		case i+1 == len(res.Layers):
			t.Then = "held over the drag-out tank, rinsed twice, last in deionised water, dried"
		case precious(lr.Layer.Bath.Metal):
			t.Then = "held over the drag-out tank, rinsed twice, wet to the next tank"
		default:
			t.Then = "rinsed twice, wet to the next tank"
		}
		p.Tanks = append(p.Tanks, t)
		for _, n := range lr.Notes {
			if n.Severity == plating.SeverityStop {
				p.Stops = append(p.Stops, name(&lr.Layer, i)+": "+n.Text+dash(n.Do))
			}
		}
	}
	for _, m := range res.Metals {
		gain += m.Mass
		p.Metals = append(p.Metals, fmt.Sprintf("%s: %s at the thinnest spot, %s in the mean, %s of metal", orText(m.Metal, "metal not named"),
			micrometres(m.Thinnest), micrometres(m.Mean), weight(m.FineMass)))
	}
	p.Gain = weight(gain)
	return pageTemplate().Execute(w, p)
}

func pageTank(i int, lr *plating.LayerResult) tank {
	l, r := &lr.Layer, &lr.Result
	b := &l.Bath
	t := tank{Number: i + 1, Name: name(l, i), Role: l.Role.String(), Bath: orText(b.Name, "not named"), Way: lr.Before, Notes: lr.Notes, Source: orText(b.Source, "source not given")}
	add := func(measured bool, what, value, why string) {
		t.Rows = append(t.Rows, pageRow{what, value, why, measured})
	}
	celsius := func(v units.Temperature) string { return v.Text(units.CelsiusScale, 0) }
	heat := orText(rangeOf(b.Heat.Low, b.Heat.High, celsius), "no range given")
	if b.Heat.Set > 0 {
		add(true, "bath at", celsius(b.Heat.Set), "its figures hold for "+heat)
	} else {
		add(true, "bath at", "not given", heat)
	}
	add(true, "set", amps(r.Current), figure(r.CurrentDensity, units.AmperePerSquareDecimetre, 2, 2)+" on "+figure(l.Area, units.SquareDecimetre, 3, 3))
	volts := rangeOf(b.Volts.Low, b.Volts.High, func(v units.Voltage) string { return figure(v, units.Volt, 1, 1) })
	add(true, "expect", orText(volts, "not given"), "the amps decide, not the volts")
	add(true, "time", clock(r.Time), timeReason(lr))
	add(false, "gives", micrometres(r.Thinnest), "at the thinnest spot, "+micrometres(r.Mean)+" in the mean")
	add(false, "takes", weight(r.FineMass), "of "+orText(b.Metal, "metal"))
	return t
}

func pageTemplate() *template.Template {
	return template.Must(template.New("page").Parse(`<!DOCTYPE html>
<html xmlns="http://www.w3.org/1999/xhtml" lang="en">
<head>
<meta charset="utf-8" />
<meta name="viewport" content="width=device-width, initial-scale=1" />
<title>{{.Title}}</title>
<style>
@page { margin: 14mm; }
body { font: 11pt/1.35 serif; color: #000; background: #fff; max-width: 178mm; margin: 0 auto; padding: 2mm; }
h1 { font-size: 16pt; margin: 0 0 2mm; border-bottom: 2pt solid #000; }
h2 { font-size: 12.5pt; margin: 0 0 1mm; }
section { break-inside: avoid; page-break-inside: avoid; border: 0.75pt solid #000; padding: 2mm 3mm; margin: 3mm 0; }
table { border-collapse: collapse; width: 100%; }
td, th { text-align: left; vertical-align: top; padding: 0.8mm 1.5mm; border-bottom: 0.4pt solid #777; font-weight: normal; }
td.v { white-space: nowrap; font-weight: bold; }
td.m { width: 26mm; border-bottom: 0.75pt solid #000; }
ul { margin: 1mm 0; padding-left: 5mm; }
.box { display: inline-block; width: 3.2mm; height: 3.2mm; border: 0.75pt solid #000; margin-right: 1.5mm; }
.stop { border: 2.5pt solid #000; font-weight: bold; }
.small { font-size: 9.5pt; }
@media (max-width: 600px) {
  body { padding: 3mm; }
  tr { display: block; border-bottom: 0.4pt solid #777; padding: 1mm 0; }
  td { display: inline; border: 0; padding: 0 1mm 0 0; }
  td.m { display: block; width: 60%; height: 6mm; border-bottom: 0.75pt solid #000; }
}
</style>
</head>
<body>
<h1>{{.Title}}</h1>
{{range .Stops}}<section class="stop">STOP: {{.}}</section>
{{end}}{{if .Demo}}<p>The embedded example, with invented figures. Name a job file of your own before you plate.</p>
{{end}}<section>
<h2>Load</h2>
<table>
{{range .Parts}}<tr><td class="v">{{.Count}} × {{.Name}}</td><td>{{.Area}} each</td><td>{{if .Mask}}<span class="box"></span>mask {{.Mask}} on each before cleaning{{end}}</td></tr>
{{end}}<tr><td class="v">together</td><td>{{.Area}}</td><td>base metal: {{.Substrate}}</td></tr>
<tr><td class="v">weight before, dry</td><td class="m"></td><td>date and initials: ______________________</td></tr>
</table>
</section>
<section>
<h2>Before you start</h2>
<ul>
{{range .Cautions}}<li>{{.Text}}: {{.Do}}</li>
{{end}}</ul>
<p class="small">These remind you; safety data sheets, local law and licensed practice decide. [common practice, no source]</p>
<p><span class="box"></span>cleaned until water runs off without a break, rinsed twice, {{.Substrate}} activated by your own proven procedure, kept wet [common practice, no source]</p>
</section>
{{range .Tanks}}<section>
<h2>{{.Number}}. {{.Name}} ({{.Role}})</h2>
<p class="small">{{.Bath}}; figures of this bath: {{.Source}}</p>
{{if .Way}}<ul class="small">{{range .Way}}<li>on the way here: {{.Text}}: {{.Do}} [{{.Source}}]</li>{{end}}</ul>
{{end}}<table>
{{range .Rows}}<tr><td>{{if .Measured}}<span class="box"></span>{{end}}{{.What}}</td><td class="v">{{.Value}}</td><td>{{.Why}}</td>{{if .Measured}}<td class="m" title="measured"></td>{{else}}<td></td>{{end}}</tr>
{{end}}</table>
{{if .Notes}}<ul class="small">{{range .Notes}}<li>{{.Severity}}: {{.Text}}{{if .Do}}: {{.Do}}{{end}} [{{.Source}}]</li>{{end}}</ul>
{{end}}<p><span class="box"></span>{{.Then}} [common practice, no source]</p>
</section>
{{end}}<section>
<h2>Afterwards</h2>
<ul>
{{range .Metals}}<li>{{.}}</li>
{{end}}</ul>
<table>
<tr><td class="v">the load should have gained</td><td class="v">{{.Gain}}</td><td>dry, of all layers: that is the mean</td></tr>
<tr><td class="v">weight after, dry</td><td class="m"></td><td>gauge at the thinnest spot: ______________________</td></tr>
</table>
</section>
</body>
</html>
`))
}
