package current

import (
	"fmt"
	"math"
	"strconv"

	"example.com/laydown/units"
)

// Neglect is how much of a current density a Tafel law may leave out: more than
// MostNeglect is refused, more than FewNeglect is worth a warning.
const (
	MostNeglect units.Ratio = 0.1
	FewNeglect  units.Ratio = 0.01
)

// Neglected returns the share of a current density that a Tafel law leaves out:
// the reverse reaction, which the full law (Butler-Volmer) takes off. It is 0 for
// the other laws, and 1 or more below the exchange current density, where the law
// has no meaning.
//
//	r = (j₀/|j|)^(1/α)
//
//	j₀  l.Exchange  exchange current density  > 0 [A/m²]
//	j   local current density                 [A/m²]
//	α   transfer coefficient of the law's side; the reverse reaction has 1 - α,
//	    one electron in the slow step; above 1 the power is held at 1
//
// Accuracy: as good as the assumption on the reverse reaction; it is meant to
// find a law outside its range, not to correct it.
//
// Source: [Derived] from the Butler-Volmer equation of [IUPACKinetics2014].
func (l Law) Neglected(j units.CurrentDensity) units.Ratio {
	if l.Model != Tafel {
		return 0
	}
	alpha := l.Cathodic
	if l.Side == AnodicSide {
		alpha = l.Anodic
	}
	power := math.Max(1, 1/alpha)
	share := math.Pow(float64(l.Exchange)/math.Abs(float64(j)), power)
	if !(share < math.MaxFloat64) {
		return math.MaxFloat64
	}
	return units.Ratio(share)
}

// A TafelError says that a Tafel law was used where its reverse reaction counts:
// the distribution would come out more even than it is.
type TafelError struct {
	Surface  string
	Least    units.CurrentDensity // the least local current density
	Exchange units.CurrentDensity
	Neglects units.Ratio // of it
}

// Error says what is so and what would do.
func (e *TafelError) Error() string {
	left := "all of it or more"
	if e.Neglects < 1 {
		left = e.Neglects.Percent(0) + " of it"
	}
	return fmt.Sprintf("%s: the Tafel law does not hold at its least current density of %s: with an exchange current "+
		"density of %s it leaves out the reverse reaction, %s; "+
		"use the Butler-Volmer law with the same constants, or a current density of %s and more",
		e.Surface, short(e.Least), short(e.Exchange), left, short(units.CurrentDensity(3.2*float64(e.Exchange))))
}

// short writes a current density with three digits.
func short(j units.CurrentDensity) string {
	return strconv.FormatFloat(j.In(units.AmperePerSquareDecimetre), 'g', 3, 64) + " A/dm²"
}

// CheckTafel holds the least local current density of a cathode against its law.
//
// Errors: a [*TafelError] where the law leaves out more than [MostNeglect]. The
// share is returned in any case: above [FewNeglect] it is worth a warning.
//
// Source: [Derived], as [Law.Neglected].
func (l Law) CheckTafel(surface string, least units.CurrentDensity) (units.Ratio, error) {
	share := l.Neglected(least)
	if share > MostNeglect {
		return share, &TafelError{Surface: surface, Least: least, Exchange: l.Exchange, Neglects: share}
	}
	return share, nil
}
