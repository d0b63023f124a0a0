package baths

import (
	"errors"
	"io"
	"strings"

	"example.com/laydown/plating"
	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// Format is the value of the field "format" that [Read] takes.
const Format = "laydown baths 1"

// An Error reports what is wrong with a bath file, and where.
type Error struct {
	Line int    // counted from 1; 0 when the file as a whole is meant
	Path string // the field, as baths[1].efficiency.low; "" for the whole
	What string // what is wrong and what would do
	Err  error  // the reason below, if any
}

// Error returns line, field and reason in one line.
func (e *Error) Error() string { return strictjson.Message("bath file", e.Line, e.Path, e.What) }

// Unwrap returns the reason below: a [*units.ParseError], a [*units.ValueError] ...
func (e *Error) Unwrap() error { return e.Err }

// Read reads baths of your own from JSON. The package comment describes the
// format. Every figure must say where it comes from and how it was seen;
// unknown fields are refused with the known ones.
//
// Errors: an [*Error] with line and field.
func Read(r io.Reader) ([]Bath, error) {
	all, err := read(r)
	var e *strictjson.Error
	if errors.As(err, &e) {
		return nil, &Error{Line: e.Line, Path: e.Path, What: e.What, Err: e.Err}
	}
	return all, err
}

func read(r io.Reader) ([]Bath, error) {
	tree, err := strictjson.Read(r, strictjson.Doc{What: "baths", Need: `an object with format and baths`})
	if err != nil {
		return nil, err
	}
	o := strictjson.Object(tree)
	if f := o.Must("format", `"`+Format+`"`); f != nil && (f.Kind != "text" || f.Text != Format) {
		o.Keep(f.Fail(nil, "is %s; need %q", strictjson.Describe(f), Format))
	}
	items := o.Items("baths", "a list of baths", true)
	if err := o.Done(); err != nil {
		return nil, err
	}
	var all []Bath
	keys := map[string]bool{}
	for _, b := range Library() {
		keys[b.Key] = true
	}
	for _, n := range items {
		b, err := readBath(n)
		if err != nil {
			return nil, err
		}
		if keys[b.Key] {
			return nil, n.Fail(nil, "key %q is taken, by the library or by a bath before; need another", units.Clip(b.Key))
		}
		keys[b.Key] = true
		all = append(all, b)
	}
	return all, nil
}

func readBath(n *strictjson.Node) (Bath, error) {
	o := strictjson.Object(n)
	b := Bath{Key: o.Text("key"), Name: o.Text("name")}
	if strings.TrimSpace(b.Key) == "" || strings.TrimSpace(b.Name) == "" {
		o.Keep(n.Fail(nil, `need "key", a short name for programs, and "name", by chemistry`))
	}
	if metal := o.Must("metal", `the symbol of the counted metal, as "Au"`); metal != nil {
		if b.Metal = metal.Text; metal.Kind != "text" {
			o.Keep(metal.Fail(nil, `is %s; need a symbol in quotes, as "Au"`, strictjson.Describe(metal)))
		}
	}
	b.Valence = o.Whole("valence", 1, 8, 0)
	for _, u := range o.Items("use", "words: strike, underplate, finish", true) {
		b.Use |= Use(word(o, u, useWords()))
	}
	for _, f := range o.Items("hazards", "words; an empty list when there are none", false) {
		var h plating.Hazard
		strictjson.Word(o, f, &h)
		b.Hazards |= h
	}
	if o.Err() == nil && o.Member("hazards") == nil {
		o.Keep(n.Fail(nil, `field "hazards" is missing; need a list of words, empty when there are none: a plan is judged by them`))
	}
	if left := plating.Unsaid(b.Hazards, b.Name); o.Err() == nil && left != 0 {
		o.Keep(o.Member("hazards").Fail(units.ErrInconsistent,
			"leaves out what the name says, %s; need it in the list, or another name: the check for hydrogen cyanide goes by the hazards", left))
	}
	if f := o.Field("salt"); f != nil {
		strictjson.Word(o, f, &b.Salt)
	}
	parts := o.Field("deposit")
	figure(o, "density", &b.Density, false)
	figure(o, "content", &b.Content, false)
	figure(o, "temperature", &b.Temperature, false)
	figure(o, "current_density", &b.CurrentDensity, false)
	figure(o, "volts", &b.Volts, false)
	figure(o, "pH", &b.PH, true)
	figure(o, "efficiency", &b.Efficiency, true)
	figure(o, "time", &b.Time, false)
	figure(o, "max_thickness", &b.MaxThickness, false)
	figure(o, "anode_ratio", &b.AnodeRatio, true)
	lines := o.Items("efficiency_lines", "lines of points", false)
	b.Insoluble = o.Choice("anode_kind", "soluble", "insoluble") == 1
	b.Anode, b.Agitation = words(o, "anode"), words(o, "agitation")
	b.LiveEntry = o.Yes("live_entry")
	for _, l := range o.Items("look", "texts", false) {
		b.Look = append(b.Look, plain(o, l))
	}
	for _, r := range o.Items("remarks", "texts with source and seen", false) {
		b.Remarks = append(b.Remarks, wordsOf(o, r))
	}
	if err := o.Done(); err != nil {
		return b, err
	}
	if err := readDeposit(&b, parts); err != nil {
		return b, err
	}
	for _, l := range lines {
		line, err := readLine(l)
		if err != nil {
			return b, err
		}
		b.Lines = append(b.Lines, line)
	}
	if err := b.Check(); err != nil {
		return b, n.Fail(err, "%v", err)
	}
	if err := plating.Deadly(b.Solution()); err != nil {
		return b, n.Fail(err, "%v", err)
	}
	return b, nil
}

// word reads one of a few words into the bit of its place.
func word(o *strictjson.Reader, n *strictjson.Node, all []string) uint {
	for i, w := range all {
		if n.Kind == "text" && n.Text == w {
			return 1 << i
		}
	}
	o.Keep(n.Fail(nil, "is %s; need one of %s", strictjson.Describe(n), strings.Join(all, ", ")))
	return 0
}

func plain(o *strictjson.Reader, n *strictjson.Node) string {
	if n.Kind != "text" {
		o.Keep(n.Fail(nil, "is %s; need text in quotes", strictjson.Describe(n)))
	}
	return n.Text
}

// figure reads a band with its origin; nothing when it is not there.
func figure[Q units.Quantity, P strictjson.Pointer[Q]](o *strictjson.Reader, name string, dst *Range[Q], bare bool) {
	n := o.Field(name)
	if n == nil {
		return
	}
	f := strictjson.Object(n)
	end := func(name string, v P) bool {
		m := f.Field(name)
		if !f.Scan(m, v, bare) {
			return false
		}
		if err := units.Positive(name, *v); err != nil {
			f.Keep(m.Fail(err, "is %s; need a value above zero, or leave it out", strictjson.Describe(m)))
		}
		return true
	}
	low, high := end("low", &dst.Low), end("high", &dst.High)
	if !low && !high {
		f.Keep(n.Fail(nil, `need "low" and "high", or one of them`))
	}
	dst.Note = f.Text("note")
	dst.Source, dst.Seen = from(f, n)
	if err := f.Done(); err != nil {
		o.Keep(err)
	} else if err := dst.Check(name); err != nil {
		o.Keep(n.Fail(err, "%v", err))
	}
}

// from reads where a figure comes from.
func from(f *strictjson.Reader, n *strictjson.Node) (string, origin.Seen) {
	source := f.Text("source")
	var seen origin.Seen
	if m := f.Field("seen"); m != nil {
		strictjson.Word(f, m, &seen)
	} else {
		f.Keep(n.Fail(nil, `field "seen" is missing; need one of %s`, strings.Join(origin.Words(), ", ")))
	}
	if source == "" && seen != origin.FromMemory {
		f.Keep(n.Fail(nil, `field "source" is missing; need where the figure was read or measured`))
	}
	if source == "" {
		source = origin.Memory
	}
	return source, seen
}

func words(o *strictjson.Reader, name string) Words {
	n := o.Field(name)
	if n == nil {
		return Words{}
	}
	return wordsOf(o, n)
}

func wordsOf(o *strictjson.Reader, n *strictjson.Node) Words {
	f := strictjson.Object(n)
	w := Words{Text: f.Text("text")}
	if w.Text == "" {
		f.Keep(n.Fail(nil, `need "text", "source" and "seen"`))
	}
	w.Source, w.Seen = from(f, n)
	o.Keep(f.Done())
	return w
}
