package job

import (
	"html/template"
	"io"

	"example.com/laydown/units"
)

// WriteHTML writes the sheet as a page of its own that prints on A4 and Letter, black on
// white, without anything from elsewhere.
//
// Errors: those of [Sheet.Document]; those of w.
func (s *Sheet) WriteHTML(w io.Writer, o Options) error {
	doc, err := s.Document(o)
	if err != nil {
		return err
	}
	return doc.WriteHTML(w)
}

// WriteHTML writes the document as a page.
//
// Errors: those of w.
func (d *Document) WriteHTML(w io.Writer) error {
	if w == nil {
		return units.Missing("writer", "one that takes the page")
	}
	t, err := template.New("page").Parse(page)
	if err != nil {
		return err
	}
	return t.Execute(w, d)
}

const page = `<!DOCTYPE html>
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
{{range .Sections}}<section class="{{if eq .Heading "STOP"}}stop{{else if .Small}}slim{{else if not .Tank}}flow{{end}}">
<h2>{{if .Small}}<span class="box"></span>{{end}}{{.Heading}}</h2>
<table>
{{range .Items}}<tr{{if .Sum}} class="sum"{{end}}>{{/*
*/}}{{if eq .Mark "="}}<td colspan="4" class="small"><pre>{{.Text}}</pre></td>{{/*
*/}}{{else if .What}}<td class="w">{{if .Tick}}<span class="box"></span>{{end}}{{.What}}</td><td class="v">{{.Value}}</td>{{/*
*/}}<td>{{.Text}}</td><td{{if .Blank}} class="m" title="measured"{{end}}></td>{{/*
*/}}{{else}}<td colspan="4"{{if or (eq .Mark "STOP") (eq .Mark "WARNING") (eq .Mark "!")}} class="warn"{{end}}>{{/*
*/}}{{if .Tick}}<span class="box"></span>{{end}}{{with .Mark}}{{.}} {{end}}{{.Text}}</td>{{end}}</tr>
{{end}}</table>
</section>
{{end}}</body>
</html>
`
