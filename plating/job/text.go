package job

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"example.com/laydown/units"
)

// width is that of a sheet in characters.
const width = 96

// WriteText writes the sheet as text for a terminal or a printer.
//
// Errors: those of [Sheet.Document]; those of w.
func (s *Sheet) WriteText(w io.Writer, o SheetOptions) error {
	doc, err := s.Document(o)
	if err != nil {
		return err
	}
	return doc.WriteText(w)
}

// WriteText writes the document as text, folded to 96 characters.
//
// Errors: those of w.
func (d *Document) WriteText(w io.Writer) error {
	if d == nil {
		return units.Missing("document", "one that Sheet.Document returned")
	}
	if w == nil {
		return units.Missing("writer", "one that takes the text")
	}
	var b bytes.Buffer
	wrap(&b, "BENCH SHEET: ", d.Title)
	b.WriteString(strings.Repeat("=", width) + "\n")
	for i := range d.Sections {
		d.Sections[i].text(&b)
	}
	_, err := w.Write(b.Bytes())
	return err
}

// text writes a section: its heading, then a line for each item.
func (s *Section) text(b *bytes.Buffer) {
	const value = 16
	if s.Heading != "STOP" {
		heading := s.Heading
		if s.Tank {
			end := strings.LastIndex(heading, " (")
			if end < 0 {
				end = len(heading)
			}
			heading = strings.ToUpper(heading[:end]) + heading[end:]
		}
		wrap(b, "", heading)
	}
	what := 8 // wide enough for the longest name of a figure
	for _, it := range s.Items {
		what = max(what, min(34, utf8.RuneCountInString(it.What)))
	}
	for _, it := range s.Items {
		box := "   "
		if it.Tick {
			box = "[ ]"
		}
		switch {
		// A formula keeps its spaces and is never folded: its terms stand in columns.
		case it.Mark == "=":
			b.WriteString(strings.TrimRight("    "+it.Text, " ") + "\n")
		case it.Mark == "STOP" && s.Heading == "STOP":
			wrap(b, "STOP  ", it.Text)
		case s.Money && it.What != "":
			wrap(b, fmt.Sprintf("   %s %s  ", pad(it.What, what), left(it.Value, 12)), it.Text)
		case it.What == "" && it.Mark == "" && !it.Tick:
			wrap(b, "   ", it.Text)
		case it.What == "" && it.Mark == "":
			wrap(b, "   [ ] ", it.Text)
		case it.What == "":
			wrap(b, "   "+it.Mark+" ", it.Text)
		case utf8.RuneCountInString(it.Value) <= value:
			wrap(b, fmt.Sprintf("   %s %s %s ", box, pad(it.What, what), pad(it.Value, value)), it.Text)
		default:
			wrap(b, fmt.Sprintf("   %s %s ", box, pad(it.What, what)), it.Value+" "+it.Text)
		}
	}
	b.WriteByte('\n')
}

func pad(s string, n int) string {
	return s + strings.Repeat(" ", max(0, n-utf8.RuneCountInString(s)))
}

func left(s string, n int) string {
	return strings.Repeat(" ", max(0, n-utf8.RuneCountInString(s))) + s
}

// wrap writes text folded at blanks, behind a prefix on the first line.
func wrap(b *bytes.Buffer, prefix, text string) {
	text = units.Printable(text)
	n := utf8.RuneCountInString(prefix)
	line := prefix
	length := n
	for i, word := range strings.Fields(text) {
		size := utf8.RuneCountInString(word)
		if i > 0 && length+1+size > width {
			b.WriteString(strings.TrimRight(line, " ") + "\n")
			line, length = strings.Repeat(" ", n), n
		} else if i > 0 {
			line, length = line+" ", length+1
		}
		line, length = line+word, length+size
	}
	b.WriteString(strings.TrimRight(line, " ") + "\n")
}
