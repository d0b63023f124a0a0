package price

import (
	"reflect"

	"github.com/shopspring/decimal"

	"example.com/laydown/alloys"
	"example.com/laydown/faraday"
	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/units"
)

// DecodeNode reads a code of ISO 4217.
func (c *Currency) DecodeNode(n *strictjson.Node) error {
	if err := strictjson.Ready(n, c); err != nil {
		return err
	}
	v, err := ParseCurrency(n.Text)
	if err != nil {
		return n.Fail(err, "%v", err)
	}
	*c = v
	return nil
}

// EncodeNode gives the code.
func (c Currency) EncodeNode() any { return c.Code }

// Schema is that of the code.
func (c *Currency) Schema(*strictjson.Definitions) map[string]any {
	return map[string]any{"type": "string", "pattern": "^[A-Z]{3}$"}
}

// Masses and times are typed quantities in a file, decimals here: a tenth of a milligram,
// a hundredth of a minute.

type labourForm struct {
	Name    string          `json:"task"`
	Time    units.Duration  `json:"time" with:"must" need:"that of the whole batch, as \"40 min\"" rule:"positive" in:"min"`
	PerHour decimal.Decimal `json:"per_hour" with:"must" need:"an amount in quotes, as \"98.50\""`
}

// DecodeNode reads task, time and hourly rate.
func (l *Labour) DecodeNode(n *strictjson.Node) error {
	if err := strictjson.Ready(n, l); err != nil {
		return err
	}
	var f labourForm
	if err := strictjson.Decode(n, &f); err != nil {
		return err
	}
	minutes, err := Minutes(f.Time, 2, HalfEven)
	if err != nil {
		return n.Fail(err, "%v", err)
	}
	if minutes.IsZero() {
		return n.Place("time", tooLittle("time", f.Time.String(), "a hundredth of a minute"))
	}
	*l = Labour{f.Name, minutes, f.PerHour}
	return nil
}

// EncodeNode gives the form of the file.
func (l Labour) EncodeNode() any {
	return labourForm{l.Name, units.Duration(l.Minutes.InexactFloat64()) * units.Minute, l.PerHour}
}

// Schema is that of the form of the file.
func (l *Labour) Schema(d *strictjson.Definitions) map[string]any {
	return d.Object(reflect.TypeFor[labourForm]())
}

type saltForm struct {
	Name   string           `json:"name"`
	Mass   units.Mass       `json:"mass" with:"must" need:"one as \"12.5 g\"" rule:"positive" in:"g"`
	Amount decimal.Decimal  `json:"price" with:"must" need:"an amount in quotes, as \"98.50\""`
	Per    alloys.TradeUnit `json:"per" with:"must" need:"the unit that the price is for: g, kg, ozt or dwt" rule:"spellings"`
}

// DecodeNode reads name, mass and price.
func (s *Salt) DecodeNode(n *strictjson.Node) error {
	if err := strictjson.Ready(n, s); err != nil {
		return err
	}
	var f saltForm
	err := strictjson.Decode(n, &f)
	if err == nil {
		*s = Salt{Name: f.Name, Amount: f.Amount, Per: f.Per}
		s.Mass, err = weighed(n, f.Mass)
	}
	return err
}

// EncodeNode gives the form of the file.
func (s Salt) EncodeNode() any { return saltForm{s.Name, massOf(s.Mass), s.Amount, s.Per} }

// Schema is that of the form of the file.
func (s *Salt) Schema(d *strictjson.Definitions) map[string]any {
	return d.Object(reflect.TypeFor[saltForm]())
}

type refinedForm struct {
	Symbol string          `json:"metal" with:"must" need:"its symbol, as \"Au\""`
	Mass   units.Mass      `json:"mass" with:"must" need:"one as \"12.5 g\"" rule:"positive" in:"g"`
	Paid   decimal.Decimal `json:"paid" with:"must" need:"a share of 0 or more in quotes, as \"35 %\" or \"0.35\"" rule:"percent"`
}

// DecodeNode reads metal, mass and the share that is paid.
func (r *Refined) DecodeNode(n *strictjson.Node) error {
	if err := strictjson.Ready(n, r); err != nil {
		return err
	}
	var f refinedForm
	if err := strictjson.Decode(n, &f); err != nil {
		return err
	}
	if _, err := faraday.Lookup(f.Symbol); err != nil {
		return n.Place("metal", err)
	}
	mass, err := weighed(n, f.Mass)
	*r = Refined{f.Symbol, mass, f.Paid}
	return err
}

// EncodeNode gives the form of the file.
func (r Refined) EncodeNode() any { return refinedForm{r.Symbol, massOf(r.Mass), r.Paid} }

// Schema is that of the form of the file.
func (r *Refined) Schema(d *strictjson.Definitions) map[string]any {
	return d.Object(reflect.TypeFor[refinedForm]())
}

// tooLittle refuses what money is not computed with: it would cost nothing, without a word.
func tooLittle(field, value, least string) error {
	return &units.ValueError{Field: field, Value: value, Need: least + " or more", Err: units.ErrOutOfRange}
}

// weighed is a mass to compute money with, to a tenth of a milligram.
func weighed(n *strictjson.Node, m units.Mass) (alloys.Weighed, error) {
	w, err := Weigh(m, alloys.PerGram, 4, HalfEven)
	if err != nil {
		return w, n.Fail(err, "%v", err)
	}
	if w.Amount.IsZero() {
		return w, n.Place("mass", tooLittle("mass", m.String(), "a tenth of a milligram"))
	}
	return w, nil
}

func massOf(w alloys.Weighed) units.Mass {
	size, err := inGrams("mass", w.Unit)
	if err != nil {
		return 0
	}
	return units.Mass(w.Amount.Mul(size).InexactFloat64()) * units.Gram
}
