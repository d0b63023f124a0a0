package bath

import (
	"reflect"
	"slices"
	"strconv"
	"strings"

	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// A figure is written as short as it can be: one value as text, "8 g/L"; a range as an
// object with its ends; source and seen beside them when the figure says its own.

// figureForm is the object form of a [Range].
type figureForm[Q units.Quantity] struct {
	Low    Q            `json:"low" rule:"positive"`
	High   Q            `json:"high" rule:"positive"`
	Set    Q            `json:"set" rule:"positive" doc:"the value in use"`
	Source string       `json:"source" doc:"where the figure comes from"`
	Seen   *origin.Seen `json:"seen"`
	Note   string       `json:"note"`
}

// oneForm reads a single value, which is both ends of its range.
type oneForm[Q units.Quantity] struct {
	Value Q `json:"value" rule:"positive"`
}

// DecodeNode reads "8 g/L", or an object with low, high, set, source, seen and note.
func (r *Range[Q]) DecodeNode(n *strictjson.Node) error {
	if err := strictjson.Ready(n, r); err != nil {
		return err
	}
	switch n.Kind {
	case "object":
	case "list", "null", "true or false":
		return n.Fail(nil, `is %s; need one figure as in %q, or an object with "low" and "high"`, strictjson.Describe(n),
			figure[Q]())
	default:
		// The short form: "8 g/L" is a range whose ends are equal. It goes through a form with one
		// field, so that the same rule holds as for an end of the long one.
		var one oneForm[Q]
		if err := strictjson.DecodeOne(n, &one); err != nil {
			return err
		}
		*r = Range[Q]{Low: one.Value, High: one.Value}
		return nil
	}
	var f figureForm[Q]
	if err := strictjson.Decode(n, &f); err != nil {
		return err
	}
	// The long form. One end alone is a limit, both are a band, "set" alone is the value of the
	// day of a bath whose range is known from elsewhere.
	if f.Low == 0 && f.High == 0 && f.Set == 0 {
		return n.Fail(units.ErrInconsistent, `need "low" and "high", or one of them, or a value that is "set"`)
	}
	if f.High != 0 && f.Low > f.High {
		err := &units.ValueError{Field: "range", Value: f.Low.String() + " to " + f.High.String(),
			Need: "the low end first", Err: units.ErrInconsistent}
		return n.Fail(err, "runs from %s to %s; need the low end first", f.Low, f.High)
	}
	*r = Range[Q]{Low: f.Low, High: f.High, Set: f.Set, Note: f.Note}
	var err error
	r.Source, r.Seen, err = said(n, f.Source, f.Seen)
	return err
}

// figure is one of a kind, for a message.
func figure[Q units.Quantity]() string {
	if s := Q(1).String(); s != "" {
		return s
	}
	return "1"
}

// EncodeNode gives the short form where it says all.
func (r Range[Q]) EncodeNode() any {
	// The short form has no room for a source, a note or a value in use. With any of them the
	// long one is needed, so that what is read comes back as it was.
	if r.Low == r.High && r.Set == 0 && r.Source == "" && r.Note == "" && r.Low != 0 {
		return r.Low
	}
	f := figureForm[Q]{Low: r.Low, High: r.High, Set: r.Set, Note: r.Note}
	f.Source, f.Seen = saying(r.Source, r.Seen)
	return f
}

// Schema gives both forms.
func (r *Range[Q]) Schema(d *strictjson.Definitions) map[string]any {
	return either(d.Of(reflect.TypeFor[Q]()), d.Object(reflect.TypeFor[figureForm[Q]]()))
}

func either(a, b map[string]any) map[string]any { return map[string]any{"oneOf": []any{a, b}} }

// said reads where a figure comes from: neither source nor seen, or both. What is from
// memory needs no source.
func said(n *strictjson.Node, source string, seen *origin.Seen) (string, origin.Seen, error) {
	switch {
	case seen == nil && source == "":
		return "", 0, nil
	case seen == nil:
		return "", 0, n.Fail(units.ErrInconsistent, `field "seen" is missing; need one of %s`,
			strings.Join(origin.Words(), ", "))
	case source == "" && *seen != origin.FromMemory:
		return "", 0, n.Fail(units.ErrInconsistent, `field "source" is missing; need where the figure was read or measured`)
	case source == "":
		source = origin.Memory
	}
	return source, *seen, nil
}

// saying is the way back of said.
func saying(source string, seen origin.Seen) (string, *origin.Seen) {
	if source == "" {
		return "", nil
	}
	if source == origin.Memory && seen == origin.FromMemory {
		source = ""
	}
	return source, &seen
}

type wordsForm struct {
	Text   string       `json:"text" with:"must" need:"\"text\", \"source\" and \"seen\""`
	Source string       `json:"source"`
	Seen   *origin.Seen `json:"seen"`
}

// DecodeNode reads plain text, or an object with text, source and seen.
func (w *Words) DecodeNode(n *strictjson.Node) error {
	if err := strictjson.Ready(n, w); err != nil {
		return err
	}
	if n.Kind == "text" {
		*w = Words{Text: n.Text}
		return nil
	}
	var f wordsForm
	err := strictjson.Decode(n, &f)
	if err == nil {
		w.Text = f.Text
		w.Source, w.Seen, err = said(n, f.Source, f.Seen)
	}
	return err
}

// EncodeNode gives plain text where nothing says where it comes from.
func (w Words) EncodeNode() any {
	if w.Source == "" {
		return w.Text
	}
	f := wordsForm{Text: w.Text}
	f.Source, f.Seen = saying(w.Source, w.Seen)
	return f
}

// Schema gives both forms.
func (w *Words) Schema(d *strictjson.Definitions) map[string]any {
	return either(map[string]any{"type": "string"}, d.Object(reflect.TypeFor[wordsForm]()))
}

type constituentForm struct {
	Metal     string             `json:"metal" doc:"symbol of the element"`
	Valence   int                `json:"valence" rule:"1..8"`
	Share     units.MassFraction `json:"share" with:"must" need:"a share of the mass, as \"99.7 %\"" rule:"share" in:"%"`
	Inclusion bool               `json:"inclusion" doc:"true for what is built in without charge, in place of metal"`
}

// DecodeNode reads a metal with valence and share, or an inclusion with its share: what
// has no symbol is said to have none, so that none is left out by mistake.
func (c *Constituent) DecodeNode(n *strictjson.Node) error {
	if err := strictjson.Ready(n, c); err != nil {
		return err
	}
	var f constituentForm
	if err := strictjson.Decode(n, &f); err != nil {
		return err
	}
	if f.Inclusion != (f.Metal == "") {
		return n.Fail(nil, `need either "metal" with its symbol, or "inclusion": true for what is built in without charge`)
	}
	if f.Inclusion && f.Valence != 0 {
		return n.Fail(nil, `an inclusion has no "valence": it is built in without charge`)
	}
	*c = Constituent{f.Metal, f.Valence, f.Share}
	return nil
}

// EncodeNode gives the form of the file.
func (c Constituent) EncodeNode() any {
	return constituentForm{c.Symbol, c.Valence, c.Share, c.Symbol == ""}
}

// Schema is that of the form of the file.
func (c *Constituent) Schema(d *strictjson.Definitions) map[string]any {
	return d.Object(reflect.TypeFor[constituentForm]())
}

type lineForm struct {
	Temperature units.Temperature       `json:"temperature" rule:"positive" in:"°C"`
	Content     units.MassConcentration `json:"content" rule:"positive" in:"g/L"`
	Points      []EfficiencyBand        `json:"points" with:"must" need:"points of rising current density" rule:"filled"`
	Source      string                  `json:"source"`
	Seen        *origin.Seen            `json:"seen"`
}

// DecodeNode reads the points with what they hold for, and where they come from.
func (l *EfficiencyLine) DecodeNode(n *strictjson.Node) error {
	if err := strictjson.Ready(n, l); err != nil {
		return err
	}
	var f lineForm
	err := strictjson.Decode(n, &f)
	if err == nil {
		*l = EfficiencyLine{Temperature: f.Temperature, Content: f.Content, Points: f.Points}
		l.Source, l.Seen, err = said(n, f.Source, f.Seen)
	}
	return err
}

// EncodeNode gives the form of the file.
func (l EfficiencyLine) EncodeNode() any {
	f := lineForm{Temperature: l.Temperature, Content: l.Content, Points: l.Points}
	f.Source, f.Seen = saying(l.Source, l.Seen)
	return f
}

// Schema is that of the form that files have.
func (l *EfficiencyLine) Schema(d *strictjson.Definitions) map[string]any {
	return d.Object(reflect.TypeFor[lineForm]())
}

type pointForm struct {
	CurrentDensity units.CurrentDensity `json:"current_density" with:"must" need:"one as \"0.8 A/dm²\"" rule:"positive" in:"A/dm²"`
	Efficiency     units.Efficiency     `json:"efficiency" rule:"share" in:"%"`
	Low            units.Efficiency     `json:"low" rule:"share" in:"%"`
	High           units.Efficiency     `json:"high" rule:"share" in:"%"`
}

// DecodeNode reads a current density with an efficiency, or with its low and high end.
func (p *EfficiencyBand) DecodeNode(n *strictjson.Node) error {
	if err := strictjson.Ready(n, p); err != nil {
		return err
	}
	var f pointForm
	if err := strictjson.Decode(n, &f); err != nil {
		return err
	}
	one, band := f.Efficiency > 0, f.Low > 0 && f.High > 0
	if one == band || one && f.Low+f.High > 0 {
		return n.Fail(units.ErrInconsistent,
			`need "current_density" and "efficiency", or "current_density", "low" and "high"`)
	}
	if f.Low > f.High {
		return n.Fail(units.ErrInconsistent, "runs from %s to %s; need the low end first", f.Low.Percent(-1),
			f.High.Percent(-1))
	}
	*p = EfficiencyBand{CurrentDensity: f.CurrentDensity, Low: f.Efficiency + f.Low, High: f.Efficiency + f.High}
	return nil
}

// EncodeNode gives one efficiency where both ends are the same.
func (p EfficiencyBand) EncodeNode() any {
	f := pointForm{CurrentDensity: p.CurrentDensity}
	if p.Low == p.High {
		f.Efficiency = p.Low
	} else {
		f.Low, f.High = p.Low, p.High
	}
	return f
}

// Schema is that of the form that files have.
func (p *EfficiencyBand) Schema(d *strictjson.Definitions) map[string]any {
	return d.Object(reflect.TypeFor[pointForm]())
}

// UnmarshalText reads one use.
//
// Errors: a [*units.ValueError] that lists the words.
func (u *Use) UnmarshalText(text []byte) error {
	if u == nil {
		return units.Missing("use to read into", "a pointer to one")
	}
	i := slices.Index(useWords(), string(text))
	if i < 0 {
		return &units.ValueError{Field: "use of the bath", Value: strconv.Quote(units.Clip(string(text))),
			Need: "one of " + strings.Join(useWords(), ", "), Err: units.ErrOutOfRange}
	}
	*u = 1 << i
	return nil
}

// MarshalJSON writes the uses as a list of words.
func (u Use) MarshalJSON() ([]byte, error) { return units.FlagWords(u, useWords()) }

// UnmarshalJSON reads what MarshalJSON writes.
func (u *Use) UnmarshalJSON(raw []byte) error {
	return units.ReadFlags("use of the bath", u, raw, useWords())
}

// MarshalJSON writes the figure as a bath does.
func (r Range[Q]) MarshalJSON() ([]byte, error) { return strictjson.Encode(r) }

// UnmarshalJSON reads what MarshalJSON writes.
//
// Errors: a [*units.FileError] with line and field.
func (r *Range[Q]) UnmarshalJSON(raw []byte) error { return decode(raw, "figure", r) }

// MarshalJSON writes the remark as a bath does.
func (w Words) MarshalJSON() ([]byte, error) { return strictjson.Encode(w) }

// UnmarshalJSON reads what MarshalJSON writes.
//
// Errors: a [*units.FileError] with line and field.
func (w *Words) UnmarshalJSON(raw []byte) error { return decode(raw, "remark", w) }

// decode reads one value of a bath from JSON; null leaves it as it is.
func decode(raw []byte, what string, into strictjson.NodeDecoder) error {
	n, err := strictjson.Read(strings.NewReader(string(raw)), strictjson.Doc{What: what, Need: "a value"})
	if err == nil && n.Kind != "null" {
		err = into.DecodeNode(n)
	}
	return wrap(err)
}

// MarshalJSON writes the bath in the one form that all readers take.
func (b Bath) MarshalJSON() ([]byte, error) { return strictjson.Encode(b) }

// UnmarshalJSON reads what MarshalJSON writes.
//
// Errors: a [*units.FileError] with line and field.
func (b *Bath) UnmarshalJSON(raw []byte) error {
	if b == nil {
		return units.Missing("bath to read into", "a pointer to one")
	}
	n, err := strictjson.Read(strings.NewReader(string(raw)),
		strictjson.Doc{What: "bath", Need: "an object with metal and efficiency"})
	if err == nil {
		var v Bath
		if err = strictjson.Decode(n, &v); err == nil {
			*b = v
		}
	}
	return wrap(err)
}
