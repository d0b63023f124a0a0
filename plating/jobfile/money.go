package jobfile

import (
	"errors"
	"strings"

	"example.com/laydown/alloys"
	"example.com/laydown/faraday"
	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/plating/price"
	"example.com/laydown/plating/rinse"
	"example.com/laydown/plating/traveller"
	"example.com/laydown/units"
	"github.com/shopspring/decimal"
)

// readRinse reads how the work drains and is rinsed.
func readRinse(n *strictjson.Node) (*traveller.Rinse, error) {
	if n == nil {
		return nil, nil
	}
	o := strictjson.Object(n)
	var q traveller.Rinse
	shape := o.Field("hangs")
	if shape != nil {
		q.Shape = hangs(o, shape)
	}
	measured := strictjson.Positive(o, "drag_out", &q.Measured)
	strictjson.Positive(o, "drain", &q.Drain)
	q.Thickness = rinse.Thickness(o.Choice("liquid", "as printed", "thin", "medium", "syrupy"))
	ratio := o.Field("ratio")
	o.Scan(ratio, &q.Ratio, true)
	q.Stages = o.Whole("stages", 1, 9, 0)
	tank := strictjson.Positive(o, "drag_out_tank", &q.DragOutTank)
	q.Loads = o.Whole("loads", 1, 1_000_000, 0)
	evaporation := strictjson.Positive(o, "evaporation", &q.Evaporation)
	if err := o.Done(); err != nil {
		return nil, err
	}
	switch {
	case measured == (shape != nil && q.Shape != rinse.NoShape):
		return nil, n.Fail(units.ErrInconsistent,
			`need either "hangs" (how the work hangs and drains) or "drag_out" (measured, of the load)`)
	case measured && (q.Drain > 0 || q.Thickness != rinse.AsPrinted):
		return nil, n.Fail(units.ErrInconsistent,
			`"drain" and "liquid" correct the table's figure, and "drag_out" is measured`)
	case ratio != nil && !(q.Ratio >= 1 && q.Ratio <= 1e12):
		return nil, ratio.Fail(units.ErrOutOfRange,
			"is %s; need a number from 1 to 1e12: how many times weaker than the bath the last water must be",
			strictjson.Describe(ratio))
	case !tank && (q.Loads > 0 || evaporation):
		return nil, n.Fail(units.ErrInconsistent, `"loads" and "evaporation" go with "drag_out_tank", its volume`)
	}
	return &q, nil
}

// hangs reads a row of the drag-out table by its words.
func hangs(o *strictjson.Reader, f *strictjson.Node) rinse.Shape {
	var words []string
	for s := rinse.VerticalWell; s <= rinse.CupVeryPoor; s++ {
		if f.Kind == "text" && f.Text == s.String() {
			return s
		}
		words = append(words, `"`+s.String()+`"`)
	}
	o.Keep(f.Fail(nil, "is %s; need one of %s", strictjson.Describe(f), strings.Join(words, "; ")))
	return rinse.NoShape
}

// readPrice reads what a quote needs.
func readPrice(n *strictjson.Node, pieces int) (*traveller.Price, error) {
	if n == nil {
		return nil, nil
	}
	o := strictjson.Object(n)
	var q traveller.Price
	m := money{o}
	var err error
	if f := o.Must("currency", `three capital letters, as "EUR"`); f != nil {
		if q.Currency, err = price.CurrencyOf(f.Text); err != nil {
			o.Keep(f.Fail(err, "%v", err))
		}
	}
	if f := o.Field("rounding"); f != nil {
		strictjson.Word(o, f, &q.Rounding)
	}
	m.read("line_per_hour", &q.LinePerHour)
	strictjson.Positive(o, "handling", &q.Handling)
	strictjson.Share(o, o.Field("rectifier"), &q.Rectifier)
	strictjson.Positive(o, "heating", &q.Heating)
	m.read("per_kilowatt_hour", &q.Electricity.PerKilowattHour)
	m.read("set_up", &q.SetUp.Amount)
	q.SetUp.SharedBy = o.Whole("shared_by", 1, 1_000_000, 0)
	m.share("yield", &q.Allowance.Yield, true)
	m.read("strip", &q.Allowance.Strip)
	m.share("recovered", &q.Allowance.Recovered, false)
	m.share("margin", &q.Margin.OfPrice, false)
	m.share("markup", &q.Markup.OfCost, false)
	m.read("minimum", &q.Minimum)
	m.share("tax", &q.Tax.Rate, false)
	q.Tax.BeforeCredits = o.Yes("tax_before_credits")
	metals, labour := o.Items("metals", "prices of metals", false), o.Items("labour", "tasks", false)
	salts, refined := o.Items("salts", "salts used up", false), o.Items("refined", "metal that comes back", false)
	if err := o.Done(); err != nil {
		return nil, err
	}
	if err := readPrices(&q, metals, labour, salts, refined); err != nil {
		return nil, err
	}
	// What shows only when it is computed shows here.
	probe := q.Job
	probe.Pieces = pieces
	probe.Prices = append([]price.MetalPrice(nil), q.Prices...)
	if _, err := probe.Quote(); err != nil {
		return nil, blamed(o, n, err).Fail(err, "%v", err)
	}
	return &q, nil
}

// blamed returns the member that a refused value stands in, or the whole.
func blamed(o *strictjson.Reader, n *strictjson.Node, err error) *strictjson.Node {
	var v *units.ValueError
	if errors.As(err, &v) {
		for _, is := range [][2]string{{"yield", "yield"}, {"recovered", "recovered"}, {"strip", "strip"}, {"margin",
			"margin"}, {"markup", "markup"}, {"minimum", "minimum"},
			{"tax", "tax"}, {"shared_by", "share the set-up"}, {"set_up", "set up"}, {"rectifier", "rectifier"}} {
			if f := o.Member(is[0]); f != nil && strings.Contains(v.Field, is[1]) {
				return f
			}
		}
	}
	return n
}

func readPrices(q *traveller.Price, metals, labour, salts, refined []*strictjson.Node) error {
	for _, item := range metals {
		o := strictjson.Object(item)
		m := money{o}
		var p price.MetalPrice
		p.Symbol = symbol(o)
		m.need("price", &p.Amount)
		p.Per = per(o)
		if f := o.Must("as_of", `the day of the price, as "2026-11-25"`); f != nil {
			strictjson.Word(o, f, &p.AsOf)
		}
		if err := o.Done(); err != nil {
			return err
		}
		q.Prices = append(q.Prices, p)
	}
	for _, item := range labour {
		o := strictjson.Object(item)
		m := money{o}
		l := price.Labour{Name: o.Text("task")}
		var t units.Duration
		strictjson.Needed(o, "time", &t, `that of the whole batch, as "40 min"`)
		m.need("per_hour", &l.PerHour)
		if err := o.Done(); err != nil {
			return err
		}
		var err error
		if l.Minutes, err = price.Minutes(t, 2, price.HalfEven); err != nil {
			return item.Fail(err, "%v", err)
		}
		q.Labour = append(q.Labour, l)
	}
	for _, item := range salts {
		o := strictjson.Object(item)
		m := money{o}
		s := price.Salt{Name: o.Text("name"), Mass: weighed(o, item)}
		m.need("price", &s.Amount)
		s.Per = per(o)
		if err := o.Done(); err != nil {
			return err
		}
		q.Salts = append(q.Salts, s)
	}
	for _, item := range refined {
		o := strictjson.Object(item)
		m := money{o}
		r := price.Refined{Symbol: symbol(o), Mass: weighed(o, item)}
		m.share("paid", &r.Paid, true)
		if err := o.Done(); err != nil {
			return err
		}
		q.Refined = append(q.Refined, r)
	}
	return nil
}

// symbol reads the symbol of an element.
func symbol(o *strictjson.Reader) string {
	f := o.Must("metal", `its symbol, as "Au"`)
	if f == nil {
		return ""
	}
	if _, err := faraday.Lookup(f.Text); err != nil || f.Kind != "text" {
		o.Keep(f.Fail(err, `is %s; need the symbol of an element, as "Au"`, strictjson.Describe(f)))
	}
	return f.Text
}

// per reads the unit that a price is for.
func per(o *strictjson.Reader) alloys.TradeUnit {
	const need = "the unit that the price is for: g, kg, ozt or dwt"
	f := o.Must("per", need)
	if f == nil {
		return alloys.NoTradeUnit
	}
	u, err := alloys.ParseTradeUnit(f.Text)
	if f.Kind != "text" || err != nil {
		o.Keep(f.Fail(nil, "is %s; need %s", strictjson.Describe(f), need))
	}
	return u
}

// weighed reads a mass to compute money with, to a tenth of a milligram.
func weighed(o *strictjson.Reader, item *strictjson.Node) alloys.Weighed {
	var m units.Mass
	strictjson.Needed(o, "mass", &m, `one as "12.5 g"`)
	if o.Err() != nil {
		return alloys.Weighed{}
	}
	w, err := price.Weigh(m, alloys.PerGram, 4, price.HalfEven)
	if err != nil {
		o.Keep(item.Fail(err, "%v", err))
	}
	return w
}

// money reads decimals exactly: they are text in quotes.
type money struct{ o *strictjson.Reader }

func (m money) need(name string, v *decimal.Decimal) {
	m.o.Must(name, `an amount in quotes, as "98.50"`)
	m.read(name, v)
}

func (m money) read(name string, v *decimal.Decimal) {
	if f := m.o.Field(name); f != nil {
		m.amount(f, f.Text, 0, v, `an amount of 0 or more in quotes, as "98.50"`)
	}
}

// share reads "35 %" or "0.35".
func (m money) share(name string, v *decimal.Decimal, needed bool) {
	const need = `a share of 0 or more in quotes, as "35 %" or "0.35"`
	f := m.o.Field(name)
	if f == nil {
		if needed {
			m.o.Must(name, need)
		}
		return
	}
	text, percent := strings.CutSuffix(f.Text, "%")
	shift := int32(0)
	if percent {
		shift = -2
	}
	m.amount(f, strings.TrimSpace(text), shift, v, need)
}

func (m money) amount(f *strictjson.Node, text string, shift int32, v *decimal.Decimal, need string) {
	d, err := decimal.NewFromString(text)
	if f.Kind != "text" || err != nil || len(f.Text) > 20 || d.IsNegative() || d.Exponent() > 9 || d.Exponent() < -9 {
		m.o.Keep(f.Fail(err, "is %s; need %s", strictjson.Describe(f), need))
		return
	}
	*v = d.Shift(shift)
}
