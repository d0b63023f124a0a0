package main

import (
	"encoding"
	"errors"
	"fmt"
	"io"
	"strings"

	"example.com/laydown/units"
)

// A field is one name of an entry or of the bath of -new, as -h lists it.
type field struct{ name, example, means string }

// kinds are the entries that can be posted, in the order of -h.
func kinds() []string {
	return []string{"load", "addition", "analysis", "evaporation", "correction", "void"}
}

// fieldsOf lists the fields of an entry, and those of a bath for "new".
func fieldsOf(kind string) []field {
	switch kind {
	case "load":
		return []field{
			{"charge", "12 A·min", "by the meter"},
			{"weighed", "412 mg", "deposit by the balance; left out, it follows from the charge"},
			{"weighed_uncertainty", "2 mg", "of the balance"},
			{"drag_out", "4 mL", "solution that the parts carried out"},
			{"drag_out_uncertainty", "1 mL", ""},
			{"drag_in", "3 mL", "rinse water that they carried in"},
			{"drag_in_content", "0.1 g/L", "of the metal in it; not zero behind a recovery rinse"},
		}
	case "addition":
		return []field{
			{"salt", "KAu(CN)2", "formula, with its water: NiSO4·6H2O"},
			{"salt_mass", "6.9 g", ""},
			{"label", "68.2 %", "metal content by the label; left out, that of the formula"},
			{"metal", "0.5 g", "metal in whatever else was added"},
			{"solution", "100 mL", "of a ready-made feed"},
			{"solution_content", "100 g/L", "of the metal in it"},
			{"water", "55 mL", ""},
			{"uncertainty", "0.02 g", "of the metal added"},
		}
	case "analysis":
		return []field{
			{"content", "7.9 g/L", "needed"},
			{"uncertainty", "0.1 g/L", "needed, standard"},
			{"reset", "true", "the analysis alone counts; else it is averaged with the book"},
		}
	case "evaporation":
		return []field{{"volume", "120 mL", "needed"}}
	case "correction":
		return []field{
			{"metal", "-0.31 g", "below zero takes away"},
			{"volume", "-40 mL", "below zero takes away"},
			{"uncertainty", "0.05 g", "of the metal"},
			{"reason", "rack dropped", "needed"},
		}
	case "void":
		return []field{
			{"entry", "12", "needed, the number of the wrong entry in the list of -entries"},
			{"reason", "year mistyped", "needed"},
		}
	}
	return []field{
		{"name", "gold, acid cyanide", "needed, by chemistry"},
		{"metal", "Au", "needed, the one that is counted"},
		{"volume", "5 L", "needed, at the level mark"},
		{"volume_uncertainty", "50 mL", "of the mark"},
		{"content", "8 g/L", "needed, on opening"},
		{"content_uncertainty", "0.08 g/L", ""},
		{"equivalent", "7.349 g/(A·h)", "needed, of the whole deposit"},
		{"fine", "99.6 %", "share of the metal in the deposit; left out, all of it"},
		{"efficiency", `{"value": "35 %", "low": "32 %", "high": "38 %"}`, "needed, value at least"},
		{"anode", `{"share": "100 %", "efficiency": {"value": "98 %"}, "equivalent": "7.349 g/(A·h)"}`,
			"left out for insoluble ones"},
		{"salts", `["KAu(CN)2"]`, "those the bath is fed with"},
		{"target", "8 g/L", "left out, the opening content"},
		{"low", "7 g/L", "alarm below"},
		{"high", "9 g/L", "alarm above"},
		{"level", "4.7 L", "alarm when the volume is below"},
		{"due", "200 A·min", "alarm when that much passed since an analysis"},
		{"life", "5", "alarm at that many metal turnovers"},
		{"source", "our own analyses", "where the figures come from"},
		{"valence", "1", "of the metal in the bath; left out, the one that fits the equivalent"},
		{"pH", `{"low": 4.2, "high": 4.6}`,
			"the range it is kept in; an acid gold cyanide bath is fed only when it is known"},
		{"hazards", `["cyanide", "acid"]`, "beside those that name and salts give away"},
	}
}

// writeFields lists the fields for -h.
func writeFields(w io.Writer) {
	for _, kind := range kinds() {
		fmt.Fprintf(w, "\nfields of -%s, with commas between them:\n", kind)
		for _, f := range fieldsOf(kind) {
			fmt.Fprintln(w, strings.TrimRight(fmt.Sprintf("   %-32s  %s", f.name+"="+f.example, f.means), " "))
		}
	}
	fmt.Fprintf(w, "\nfields of the bath file of -new, a JSON object, its values in quotes:\n")
	for _, f := range fieldsOf("new") {
		example := f.example
		if !strings.ContainsAny(example[:1], "{[") {
			example = `"` + example + `"`
		}
		fmt.Fprintln(w, strings.TrimRight(fmt.Sprintf("   %-32s  %s", `"`+f.name+`": `+example, f.means), " "))
	}
	fmt.Fprintln(w, "\nunits:")
	for _, u := range []struct {
		of string
		v  encoding.TextUnmarshaler
	}{{"charge", new(units.Charge)}, {"mass", new(units.Mass)}, {"volume", new(units.Volume)}, {"content",
		new(units.MassConcentration)},
		{"equivalent", new(units.Equivalent)}} {
		fmt.Fprintf(w, "   %-11s %s\n", u.of, strings.Join(accepted(u.v.UnmarshalText(nil)), ", "))
	}
	fmt.Fprintln(w, "   share       none, or % or ‰")
}

// accepted lists the units that would do, when the error knows them.
func accepted(err error) []string {
	var e *units.ParseError
	if errors.As(err, &e) {
		return e.Accepted
	}
	return nil
}
