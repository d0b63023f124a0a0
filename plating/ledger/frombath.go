package ledger

import (
	"errors"
	"io"
	"slices"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/plating/bath"
	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/units"
)

// A Keeping is what only a book has of a bath. What is zero is not given.
type Keeping struct {
	Target units.MassConcentration `json:"target" rule:"positive" in:"g/L" doc:"additions bring the content here; left out: the opening content"`
	Low    units.MassConcentration `json:"low" rule:"positive" in:"g/L" doc:"alarm below"`
	High   units.MassConcentration `json:"high" rule:"positive" in:"g/L" doc:"alarm above"`
	Level  units.Volume            `json:"level" rule:"positive" in:"L" doc:"alarm when the volume is below"`
	Due    units.Charge            `json:"due" rule:"positive" in:"A·min" doc:"alarm when that much charge has passed since an analysis"`
	Life   units.Ratio             `json:"life" rule:"positive" doc:"alarm at that many metal turnovers"`

	VolumeUncertainty  units.Volume            `json:"volume_uncertainty" rule:"positive" in:"mL" doc:"standard uncertainty of the level mark"`
	ContentUncertainty units.MassConcentration `json:"content_uncertainty" rule:"positive" in:"g/L" doc:"standard; left out: not known"`

	Salts  []faraday.Formula `json:"salts" rule:"filled" need:"formulas in quotes" doc:"that it is fed with, beside the salt of the bath"`
	Anodes *SolubleAnodes    `json:"anodes" doc:"of a bath whose anodes dissolve"`
}

// SolubleAnodes are the anodes of a bath that dissolve.
type SolubleAnodes struct {
	Share      units.Ratio                  `json:"share" with:"must" need:"the share of the current that they carry, as \"100 %\"" rule:"share" in:"%" doc:"of the current"`
	Efficiency bath.Range[units.Efficiency] `json:"efficiency" with:"must" need:"one value, or low and high, as \"98 %\"" in:"%"`
	Equivalent units.Equivalent             `json:"equivalent" rule:"positive" in:"g/(A·h)" doc:"of the metal as it dissolves; needed where the deposit is an alloy"`
}

// A bathFile is the file that a book is opened from.
type bathFile struct {
	bath.Bath
	Book Keeping `json:"book" doc:"what only a book has"`
}

// Schema returns the JSON Schema of the file that a book is opened from.
func Schema() ([]byte, error) { return strictjson.Schema("bath of a book of laydown", bathFile{}) }

// ReadAccount reads the bath of a new book: an object in the one form of a bath, see
// package bath, with what only a book has in its member "book". Whether the book can be
// kept, [Account.Check] says.
//
// Errors: a [*FieldError] with line and field; its reason may be one of [FromBath].
func ReadAccount(r io.Reader) (Account, error) {
	tree, err := strictjson.Read(r, strictjson.Doc{What: "bath", Need: "an object with name, metal, volume, content " +
		"and efficiency"})
	var f bathFile
	if err == nil {
		err = strictjson.Decode(tree, &f)
	}
	if err != nil {
		return Account{}, inField(err)
	}
	a, path, err := account(f.Bath, f.Book)
	if err != nil {
		wrong := &FieldError{Field: path, What: err.Error(), Err: err}
		if at, rest := tree.At(path); path != "" && rest == "" {
			wrong.Line = at.Line
		}
		return Account{}, wrong
	}
	return a, nil
}

// FromBath returns the account of a bath with the figures that only a book has. Equivalent
// and share of the counted metal follow from the deposit, the ends of the efficiency from
// its range or its lines at the middle of what the bath is run at. A bath that names one of
// the library, or one of like chemistry, is resolved first.
//
// Errors: a [*units.ValueError] for what is not given: metal, volume, content, the kind of
// anode, and of soluble anodes their share and efficiency; those of [bath.Bath.Resolve] and
// [bath.Bath.At].
func FromBath(b bath.Bath, k Keeping) (Account, error) {
	a, _, err := account(b, k)
	return a, err
}

// account also returns the field that an error is about, "" for the bath as a whole.
func account(b bath.Bath, k Keeping) (a Account, field string, err error) {
	missing := func(field, need string) (Account, string, error) {
		return Account{}, field, &units.ValueError{Field: field, Value: "of the bath", Need: need, Err: units.ErrNotGiven}
	}
	if b.Metal == "" && b.Library == "" {
		return missing("metal", "the symbol of the metal that is counted, as Au")
	}
	if b.Use == 0 && b.Library == "" {
		b.Use = bath.UseFinish // no matter to a book
	}
	full, err := b.Resolve(bath.Library())
	if err != nil {
		return Account{}, "", err
	}
	switch {
	case full.Name == "":
		return missing("name", "a few words, by chemistry")
	case full.Volume == 0:
		return missing("volume", "that at the level mark, as 5 L")
	case !b.Content.Given() && b.Content.Set == 0: // that of a library bath is no analysis
		return missing("content", "that on opening, as 8 g/L")
	case full.AnodeKind == bath.AnodeNotGiven:
		return missing("anode_kind", "soluble or insoluble: whether the anodes replace the metal")
	}
	out, err := full.At(bath.OperatingPoint{})
	outside := (*units.RangeError)(nil)
	if err != nil && !errors.As(err, &outside) {
		return Account{}, "", err
	}
	efficiency, err := full.EfficiencyAt(bath.OperatingPoint{})
	if err != nil && !errors.As(err, &outside) {
		return Account{}, "efficiency", err
	}
	a = Account{Name: full.Name, Metal: full.Metal, Valence: full.Valence, Source: full.Source, Hazards: full.Hazards,
		PH: plating.PHWindow{Low: full.PH.Low, High: full.PH.High}, Volume: full.Volume,
		VolumeUncertainty: k.VolumeUncertainty, Content: full.Content.Point(), ContentUncertainty: k.ContentUncertainty,
		Equivalent: out.Deposit.Equivalent, Efficiency: efficiencyOf(efficiency), Target: k.Target, Low: k.Low,
		High: k.High, Level: k.Level, Due: k.Due, Life: k.Life}
	if fine := full.Fine(); fine != 1 {
		a.Fine = fine
	}
	if b.Library != "" || b.Like != "" && a.Source == "" {
		a.Source = out.Source
	}
	if !full.Salt.IsZero() {
		a.Salts = []faraday.Formula{full.Salt}
	}
	for _, s := range k.Salts {
		if !slices.ContainsFunc(a.Salts, func(have faraday.Formula) bool { return have.String() == s.String() }) {
			a.Salts = append(a.Salts, s)
		}
	}
	soluble := full.AnodeKind == bath.SolubleAnode
	switch {
	case soluble && k.Anodes == nil:
		return missing("book.anodes", "share and efficiency of the soluble anodes")
	case !soluble && k.Anodes != nil:
		return Account{}, "book.anodes", &units.ValueError{Field: "anodes", Value: "given", Err: units.ErrInconsistent,
			Need: "none for a bath whose anode_kind is insoluble"}
	case soluble:
		a.Anode = Anode{Share: k.Anodes.Share, Efficiency: efficiencyOf(k.Anodes.Efficiency),
			Equivalent: k.Anodes.Equivalent}
	}
	return a, "", nil
}

// efficiencyOf is the value in use, or the middle, with both ends where they lie apart.
func efficiencyOf(r bath.Range[units.Efficiency]) EfficiencyRange {
	e := EfficiencyRange{Value: r.Point()}
	if r.Low != r.High {
		e.Low, e.High = r.Low, r.High
	}
	return e
}
