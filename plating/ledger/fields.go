package ledger

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/units"
)

// A EntryField is one field of an entry or of a bath as people write it: for help texts and
// forms. The fields of an entry are those of its type, by their names in the file.
type EntryField struct {
	Name    string // "drag_out"
	Example string // "4 mL"; what begins with a brace or bracket is JSON
	Means   string // "solution that the parts carried out"; "needed" comes first
}

// Kinds returns the words for the kinds of entries, the commonest first.
func Kinds() []string {
	return []string{"load", "addition", "analysis", "evaporation", "correction", "void"}
}

// Fields returns the fields of an entry of a kind, the commoner ones of the file that a book
// is opened from for "bath", those of its member "book" for that word, and none for another.
// Each example can be read: by [ParseEvent], or in a file by [ReadAccount], in quotes.
func Fields(kind string) []EntryField {
	switch kind {
	case "load": // in the order in which it is known: meter, balance, what clings to the parts
		return []EntryField{
			{"charge", "12 A·min", "by the meter"},
			{"weighed", "412 mg", "deposit by the balance; left out, it follows from the charge"},
			{"weighed_uncertainty", "2 mg", "of the balance"},
			{"drag_out", "4 mL", "solution that the parts carried out"},
			{"drag_out_uncertainty", "1 mL", ""},
			{"drag_in", "3 mL", "rinse water that they carried in"},
			{"drag_in_content", "0.1 g/L", "of the metal in it; not zero behind a recovery rinse"},
		}
	case "addition": // a salt, metal, a ready-made feed, water, or several at once
		return []EntryField{
			{"salt", "KAu(CN)2", "formula, with its water: NiSO4·6H2O"},
			{"salt_mass", "6.9 g", ""},
			{"label", "68.2 %", "metal content by the label; left out, that of the formula"},
			{"metal", "0.5 g", "metal in whatever else was added"},
			{"solution", "100 mL", "of a ready-made feed"},
			{"solution_content", "100 g/L", "of the metal in it"},
			{"water", "55 mL", ""},
			{"uncertainty", "0.02 g", "of the metal added"},
		}
	case "analysis": // without an uncertainty nobody knows how far to follow it
		return []EntryField{
			{"content", "7.9 g/L", "needed"},
			{"uncertainty", "0.1 g/L", "needed, standard"},
			{"reset", "true", "the analysis alone counts; else it is averaged with the book"},
		}
	case "evaporation":
		return []EntryField{{"volume", "120 mL", "needed"}}
	case "correction": // by hand, so it wants a reason
		return []EntryField{
			{"metal", "-0.31 g", "below zero takes away"},
			{"volume", "-40 mL", "below zero takes away"},
			{"uncertainty", "0.05 g", "of the metal"},
			{"reason", "rack dropped", "needed"},
		}
	case "void":
		return []EntryField{
			{"entry", "12", "needed, the number of the wrong entry in the list of entries"},
			{"reason", "year mistyped", "needed"},
		}
	case "bath":
		return bathFields()
	case "book":
		return bookFields()
	}
	return nil
}

// bathFields are the commoner ones of [bath.Bath]: what it is, how much of it there is, what
// deposits and how well, what feeds it, and what its dangers are judged by.
func bathFields() []EntryField {
	return []EntryField{
		{"name", "gold, acid cyanide", "needed, by chemistry"},
		{"metal", "Au", "needed, the one that is counted"},
		{"valence", "1", "of the metal in the bath; left out, the usual one"},
		{"volume", "5 L", "needed, at the level mark"},
		{"content", "8 g/L", "needed, on opening"},
		{"constituents", `[{"metal": "Au", "valence": 1, "share": "99.6 %"}, {"inclusion": true, "share": "0.4 %"}]`,
			"of an alloy deposit; left out, the pure metal"},
		{"efficiency", `{"set": "35 %", "low": "32 %", "high": "38 %"}`,
			"needed, one value or its range; or efficiency_lines"},
		{"anode_kind", "insoluble", "needed, soluble or insoluble"},
		{"salt", "KAu(CN)2", "that it is fed with"},
		{"pH", `{"low": 4.2, "high": 4.6}`,
			"the range it is kept in; an acid gold cyanide bath is fed only when it is known"},
		{"hazards", `["cyanide", "acid"]`, "beside those that name and salts give away"},
		{"source", "our own analyses", "where the figures come from"},
		{"book", `{"low": "7 g/L", "high": "9 g/L"}`, "what only a book has"},
	}
}

// bookFields are those of a [Keeping].
func bookFields() []EntryField {
	return []EntryField{
		{"target", "8 g/L", "additions bring the content here; left out, the opening content"},
		{"low", "7 g/L", "alarm below"},
		{"high", "9 g/L", "alarm above"},
		{"level", "4.7 L", "alarm when the volume is below"},
		{"due", "200 A·min", "alarm when that much passed since an analysis"},
		{"life", "5", "alarm at that many metal turnovers"},
		{"volume_uncertainty", "50 mL", "of the level mark"},
		{"content_uncertainty", "0.08 g/L", ""},
		{"salts", `["KAu(CN)2"]`, "when it is fed with several"},
		{"anodes", `{"share": "100 %", "efficiency": "98 %", "equivalent": "7.349 g/(A·h)"}`,
			"needed with soluble ones; the equivalent for an alloy"},
	}
}

// A FieldError says what is wrong with an entry or a bath that people wrote, so that the
// writer finds the place and knows what would do. A program may ask for the field by
// errors.As and put the cursor there.
type FieldError struct {
	Line  int    // of the text, from 1; 0 for all of it
	Field string // as efficiency.value or salts[2]; "" for all of it
	What  string // what is wrong and what would do
	Err   error  // the reason below, such as a [*units.ParseError], or nil
}

// Error returns the field, or where there is none the line, and the reason.
func (e *FieldError) Error() string {
	place := e.Field
	if place == "" && e.Line > 0 {
		place = fmt.Sprintf("line %d", e.Line)
	}
	return units.Printable(strings.TrimPrefix(place+": "+e.What, ": "))
}

// Unwrap returns the reason below.
func (e *FieldError) Unwrap() error { return e.Err }

// inField says in which field an error of the strict reader is.
func inField(err error) error {
	var e *strictjson.Error
	if !errors.As(err, &e) {
		return err
	}
	path := e.Path
	if e.Missing != "" {
		path = strings.TrimPrefix(path+"."+e.Missing, ".")
	}
	return &FieldError{Line: e.Line, Field: path, What: e.What, Err: e.Err}
}

// ParseEvent reads an entry of one of the [Kinds] from a list of its [Fields], as "charge=12
// A·min, drag_out=4 mL". A piece without an equals sign belongs to the value before it, so
// that a reason may hold commas. Whether the entry fits the bath, [Ledger.Append] says.
//
// Errors: a [*FieldError]; a [*units.ValueError] for another kind.
func ParseEvent(kind, list string) (Event, error) {
	switch kind {
	case "load":
		return parseEvent[Load](list)
	case "addition":
		return parseEvent[Addition](list)
	case "analysis":
		return parseEvent[Analysis](list)
	case "evaporation":
		return parseEvent[Evaporation](list)
	case "correction":
		return parseEvent[Correction](list)
	case "void":
		return parseEvent[Void](list)
	}
	return nil, &units.ValueError{Field: "kind of the entry", Value: units.Clip(kind),
		Need: "one of " + strings.Join(Kinds(), ", "), Err: units.ErrSyntax}
}

// parseEvent reads the fields of one type. The names are those of the file, so that nobody has to
// learn two sets, and the values are text without quotes.
func parseEvent[E Event](list string) (Event, error) {
	var names, values []string
	for _, piece := range strings.Split(list, ",") {
		name, value, found := strings.Cut(piece, "=")
		name = strings.TrimSpace(name)
		switch last := len(values) - 1; {
		case !found && last < 0: // nothing that the piece could belong to
			return nil, &FieldError{Err: units.ErrSyntax,
				What: fmt.Sprintf("%q has no equals sign; need a list of name=value", units.Clip(strings.TrimSpace(piece)))}
		case !found: // a comma inside of a value
			if names[last] != "reset" { // which is true or false and holds no words
				values[last] += "," + piece
			}
			continue
		case slices.Contains(names, name):
			return nil, &FieldError{What: fmt.Sprintf("%q twice; need it once", units.Clip(name)), Err: units.ErrSyntax}
		}
		names, values = append(names, name), append(values, strings.TrimSpace(value))
	}
	var e E
	if err := strictjson.Decode(strictjson.Texts(names, values), &e); err != nil {
		return nil, inField(err)
	}
	return e, nil
}
