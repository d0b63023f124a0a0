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
func (s *Sheet) WriteHTML(w io.Writer, o SheetOptions) error {
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
	if d == nil {
		return units.Missing("document", "one that Sheet.Document returned")
	}
	if w == nil {
		return units.Missing("writer", "one that takes the page")
	}
	// The template escapes every text: names come from a file and may hold any sign.
	t, err := template.New("page").Funcs(template.FuncMap{"class": class}).Parse(page)
	if err != nil {
		return err
	}
	return t.Execute(w, d)
}

// class names the style of a sentence by its mark.
func class(mark string) string {
	return map[string]string{"STOP": "stop", "WARNING": "warning", "!": "caution", "i": "info"}[mark]
}

const page = `<!DOCTYPE html>
<html xmlns="http://www.w3.org/1999/xhtml" lang="en">
<head>
<meta charset="utf-8" />
<meta name="viewport" content="width=device-width, initial-scale=1" />
<title>{{.Title}}</title>
<style>
@page { margin: 14mm; }
body { font: 10.5pt/1.35 serif; color: #000; background: #fff; max-width: 178mm; margin: 0 auto; padding: 2mm; }
h1 { font-size: 16pt; margin: 0 0 3mm; padding-bottom: 1mm; border-bottom: 2pt solid #000; }
h2 { font-size: 12pt; margin: 0 0 1mm; break-after: avoid; }
section { break-inside: avoid; page-break-inside: avoid; border: 0.75pt solid #000; padding: 1.5mm 3mm 2mm; margin: 2.5mm 0; }
section.flow { break-inside: auto; page-break-inside: auto; }
section.stop { border: 2.5pt solid #000; font-weight: bold; }
section.slim { padding: 1mm 3mm; }
section.slim h2, section.slim p { display: inline; margin: 0 2mm 0 0; }
table { border-collapse: collapse; width: 100%; table-layout: fixed; font-variant-numeric: tabular-nums lining-nums; }
tr { break-inside: avoid; }
td { text-align: left; vertical-align: top; padding: 0.7mm 1.5mm; overflow-wrap: break-word; }
tr.row td { border-top: 0.4pt solid #999; }
tr.first td { border-top: 0; }
td.v { font-weight: bold; }
td.m { border-bottom: 0.75pt solid #000; }
td.n { text-align: right; white-space: nowrap; padding-right: 4mm; }
tr.sum td { font-weight: bold; border-bottom: 1pt solid #000; }
td.stop, td.warning, td.caution, td.info { padding-left: 6mm; text-indent: -4.5mm; }
.k { font-weight: bold; }
td > .k { display: inline-block; min-width: 3.5mm; text-indent: 0; }
td.hazard > .k { min-width: 0; }
.stop, .warning, .hazard { font-weight: bold; }
td.work { padding: 0 1.5mm; }
pre { margin: 0; white-space: pre-wrap; font-size: 8.5pt; line-height: 1.2; }
.box { display: inline-block; width: 3mm; height: 3mm; border: 0.75pt solid #000; margin-right: 1.5mm; text-indent: 0; }
@media (max-width: 600px) {
  body { padding: 3mm; }
  table { table-layout: auto; }
  tr { display: block; padding: 1mm 0; }
  td { display: inline; padding: 0 1mm 0 0; border: 0; }
  tr.row td { border: 0; }
  tr.row { border-top: 0.4pt solid #999; }
  td.m { display: block; width: 60%; height: 6mm; }
}
</style>
</head>
<body>
<h1>{{.Title}}</h1>
{{range $s := .Sections}}{{if .Small}}{{template "slim" .}}{{else}}{{/*
*/}}<section class="{{if eq .Heading "STOP"}}stop{{else if .Tank}}tank{{else}}flow{{end}}">
<h2>{{.Heading}}</h2>
<table>
{{if .Money}}<colgroup><col style="width: 62mm" /><col style="width: 30mm" /><col /></colgroup>{{/*
*/}}{{else}}<colgroup><col style="width: {{if .Tank}}23mm{{else}}45mm{{end}}" /><col style="width: 42mm" /><col />{{/*
*/}}<col style="width: 28mm" /></colgroup>{{end}}
{{range $i, $it := .Items}}{{if eq .Mark "="}}<tr><td colspan="4" class="work"><pre>{{.Text}}</pre></td></tr>{{/*
*/}}{{else if and .What $s.Money}}<tr class="row{{if not $i}} first{{end}}{{if .Sum}} sum{{end}}"><td>{{.What}}</td>{{/*
*/}}<td class="n">{{.Value}}</td><td colspan="2">{{.Text}}</td></tr>{{/*
*/}}{{else if .What}}<tr class="row{{if not $i}} first{{end}}"><td{{if $s.Tank}} class="w"{{end}}>{{template "box" .}}{{.What}}</td>{{/*
*/}}{{if .Value}}<td class="v">{{.Value}}</td><td{{if not .Blank}} colspan="2"{{end}}>{{.Text}}</td>{{/*
*/}}{{else}}<td colspan="{{if .Blank}}2{{else}}3{{end}}">{{.Text}}</td>{{end}}{{if .Blank}}<td class="m" title="measured"></td>{{end}}</tr>{{/*
*/}}{{else}}<tr><td colspan="4"{{if and $s.Tank (not $i) (eq .Mark "!")}} class="hazard"{{else if .Mark}} class="{{class .Mark}}"{{end}}>{{/*
*/}}{{template "box" .}}{{with .Mark}}<span class="k">{{.}}</span> {{end}}{{.Text}}</td></tr>{{end}}
{{end}}</table>
</section>
{{end}}{{end}}</body>
</html>
{{define "box"}}{{if .Tick}}<span class="box"></span>{{end}}{{end}}{{/*
*/}}{{define "slim"}}<section class="slim">
<h2><span class="box"></span>{{.Heading}}</h2>
{{range .Items}}<p{{if eq .Mark "!"}} class="hazard"{{end}}>{{with .Mark}}<span class="k">{{.}}</span> {{end}}{{.What}}{{if .Value}} {{.Value}}{{end}}{{if .What}}: {{end}}{{.Text}}</p>
{{end}}</section>
{{end}}`
