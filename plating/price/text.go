package price

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"example.com/laydown/units"
)

// Text writes the quote as a few plain lines: what is charged, on what basis,
// the sum for the batch and for a piece, and the days of the metal prices. A quote
// that [Quote.Check] refuses is one line that says why.
func (q Quote) Text() string {
	if err := q.Check(); err != nil {
		return "no quote: " + err.Error() + "\n"
	}
	var b strings.Builder
	labels := make([]string, len(q.Lines))
	total := "total " + units.Printable(q.Currency.Code)
	widest := max(utf8.RuneCountInString("before tax"), utf8.RuneCountInString(total))
	for i, l := range q.Lines {
		if labels[i] = l.Kind.String(); l.Name != "" {
			labels[i] += ", " + units.Printable(l.Name)
		}
		widest = max(widest, utf8.RuneCountInString(labels[i]))
	}
	places := q.Currency.Places
	row := func(label, money, basis string) {
		line := label + strings.Repeat(" ", widest-utf8.RuneCountInString(label)) + fmt.Sprintf(" %12s", money)
		if basis != "" {
			line += "  " + basis
		}
		b.WriteString(line + "\n")
	}
	for i, l := range q.Lines {
		if l.Kind == KindTax {
			row("before tax", q.Net.StringFixed(places), "")
		}
		row(labels[i], l.Amount.StringFixed(places), units.Printable(l.Basis))
	}
	each := ""
	if e, err := q.Each(q.Total); err == nil && q.Pieces > 1 {
		each = fmt.Sprintf("for %d pieces: %s", q.Pieces, e)
	}
	row(total, q.Total.StringFixed(places), each)
	if !q.CreditLeft.IsZero() {
		fmt.Fprintf(&b, "Credit still owed to the customer: %s %s.\n", q.CreditLeft.StringFixed(places),
			q.Currency.Code)
	}
	for _, p := range q.Prices {
		fmt.Fprintf(&b, "%s at %s %s per %s as of %s.\n", units.Printable(p.Symbol), moneyText(p.Amount, places),
			q.Currency.Code, p.Per, p.AsOf)
	}
	return b.String()
}
