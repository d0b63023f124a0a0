package jobfile

import (
	"errors"

	"github.com/shopspring/decimal"

	"example.com/laydown/plating"
	"example.com/laydown/plating/bath"
	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/units"
)

const aLength = `number and unit in quotes, as "12.5 mm"`

// readBath reads the bath of a case, at its operating point.
func readBath(n *strictjson.Node) (plating.OperatingBath, error) {
	var b bath.Bath
	if err := strictjson.Decode(n, &b); err != nil {
		return plating.OperatingBath{}, err
	}
	full, err := b.Resolve(bath.Library())
	if err != nil {
		return plating.OperatingBath{}, n.Fail(err, "%v", err)
	}
	out, err := full.At(bath.Point{})
	var outside *units.RangeError
	if err != nil && !errors.As(err, &outside) {
		return out, n.Fail(err, "%v", err)
	}
	return out, nil
}

type money struct{ o *strictjson.Reader }

func (m money) read(name string, v *decimal.Decimal) {
	if f := m.o.Field(name); f != nil {
		d, err := decimal.NewFromString(f.Text)
		if err != nil || d.IsNegative() {
			m.o.Keep(f.Fail(err, "need an amount"))
		}
		*v = d
	}
}
