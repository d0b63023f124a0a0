package main

import "html/template"

// pageTemplate is the page: black on white, without anything from elsewhere.
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
section.flow { break-inside: auto; page-break-inside: auto; }
p, li, tr { break-inside: avoid; }
h2 { break-after: avoid; }
table { border-collapse: collapse; width: 100%; }
td, th { text-align: left; vertical-align: top; padding: 0.8mm 1.5mm; border-bottom: 0.4pt solid #777; font-weight: normal; }
td.w, td.v { white-space: nowrap; }
td.v { font-weight: bold; }
td.m { width: 26mm; border-bottom: 0.75pt solid #000; }
ul { margin: 1mm 0; padding-left: 5mm; }
td.n { text-align: right; white-space: nowrap; }
tr.sum td { font-weight: bold; border-bottom: 1pt solid #000; }
.slim { padding: 1mm 3mm; }
.slim h2, .slim p { display: inline; }
.box { display: inline-block; width: 3.2mm; height: 3.2mm; border: 0.75pt solid #000; margin-right: 1.5mm; }
.stop { border: 2.5pt solid #000; font-weight: bold; }
.small { font-size: 9.5pt; }
.warn, .caution { font-weight: bold; }
.caution { margin: 0.5mm 0; }
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
{{range .Stops}}<section class="stop">{{.}}</section>
{{end}}{{if .Demo}}<p>The embedded example, with invented figures. Name a job file of your own before you plate.</p>
{{end}}{{if .Refused}}<section>
<h2>Tanks as they stand</h2>
<ol>
{{range .Refused}}<li>{{.}}</li>
{{end}}</ol>
{{if .Beside}}<ul>
{{range .Beside}}<li>{{.}}</li>
{{end}}</ul>
{{end}}<p>No amps, no minutes and no price are printed before this is mended.</p>
</section>
{{end}}<section>
<h2>Load</h2>
<table>
{{range .Parts}}<tr><td class="v">{{.Count}} × {{.Name}}</td><td>{{.Area}} each</td><td>{{if .Mask}}<span class="box"></span>mask {{.Mask}} on each before cleaning{{end}}</td></tr>
{{end}}<tr><td class="v">together</td><td>{{.Area}}</td><td>base metal: {{.Substrate}}</td></tr>
{{range .Mended}}<tr><td>mended</td><td></td><td>{{.}}</td></tr>
{{end}}<tr><td class="v">weight before, dry</td><td class="m"></td><td>date and initials: ______________________</td></tr>
</table>
</section>
<section>
<h2>Before you start</h2>
<ul>
{{range .Cautions}}<li>{{.}}</li>
{{end}}</ul>
{{if not (or .Sequence .Refused)}}<p><span class="box"></span>cleaned until water runs off without a break, rinsed twice, {{.Substrate}} activated by your own proven procedure, kept wet [common practice, no source]</p>
{{end}}</section>
{{if .Sequence}}<section>
<h2>Sequence</h2>
{{range .Sequence}}<p class="small">{{.}}</p>
{{end}}{{if .Findings}}<ul>
{{range .Findings}}<li>{{.}}</li>
{{end}}</ul>
{{end}}</section>
{{end}}
{{range .Tanks}}<section{{if .Tick}} class="slim"{{end}}>
<h2>{{if .Tick}}<span class="box"></span>{{end}}{{.Number}}. {{.Name}} ({{.Role}})</h2>
{{if .Caution}}<p class="caution">! {{.Caution}}</p>
{{end}}{{if .Bath}}<p class="small">{{if .Tick}}&#160; {{end}}{{.Bath}}{{if .Source}}; {{.Source}}{{end}}</p>
{{end}}
{{if .Way}}<ul class="small">{{range .Way}}<li{{if gt .Severity 1}} class="warn"{{end}}>{{.Severity}}, on the way here: {{.Line}}</li>{{end}}</ul>
{{end}}<table>
{{range .Rows}}<tr><td class="w">{{if .Measured}}<span class="box"></span>{{end}}{{.What}}</td><td class="v">{{.Value}}</td><td>{{.Why}}</td>{{if .Measured}}<td class="m" title="measured"></td>{{else}}<td></td>{{end}}</tr>
{{end}}</table>
{{if .Notes}}<ul class="small">{{range .Notes}}<li{{if gt .Severity 1}} class="warn"{{end}}>{{.Severity}}: {{.Line}}</li>{{end}}</ul>
{{end}}{{if .Then}}<p><span class="box"></span>{{.Then}}</p>
{{end}}</section>
{{end}}{{if not .Refused}}<section>
<h2>Afterwards</h2>
<ul>
{{range .Metals}}<li>{{.}}</li>
{{end}}{{range .Claim}}<li>{{.}}</li>
{{end}}</ul>
<table>
<tr><td class="v">the load should have gained</td><td class="v">{{.Gain}}</td><td>dry, of all layers: that is the mean</td></tr>
<tr><td class="v">weight after, dry</td><td class="m"></td><td>gauge at the thinnest spot: ______________________</td></tr>
</table>
</section>
{{end}}{{if .Rinsing}}<section class="flow">
<h2>Rinsing</h2>
{{range .Rinsing}}<p>{{.}}</p>
{{end}}</section>
{{end}}{{if .Baths}}<section class="flow">
<h2>Baths afterwards</h2>
{{range .Baths}}<p>{{if .Tick}}<span class="box"></span>{{end}}{{.Text}}</p>
{{end}}</section>
{{end}}{{if .Price}}<section>
<h2>Price</h2>
<table>
{{range .Price}}<tr{{if .Sum}} class="sum"{{end}}><td>{{.What}}</td><td>{{.Basis}}</td><td class="n">{{.Amount}}</td></tr>
{{end}}</table>
{{range .PriceNotes}}<p class="small">{{.}}</p>
{{end}}</section>
{{end}}</body>
</html>
`))
}
