package alloys

import (
	"strconv"
	"strings"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
	"github.com/shopspring/decimal"
)

// A Karat is a share of gold by mass in 24ths: 18 is three quarters. Zero
// stands for "not given". (The carat of gemstones is a mass and has nothing to
// do with it.)
type Karat float64

// A Fineness is a share by mass in per mille: 750 is three quarters. Zero
// stands for "not given".
type Fineness float64

// Fineness returns k in per mille.
//
//	F = 1000 K / 24
//
// 14 K gives 583.33, not the mark 585: see [MarkedFineness]. One rounding of
// the last bit; nothing is checked, see [Karat.Check].
//
// Source: [FinenessMarks].
func (k Karat) Fineness() Fineness { return Fineness(float64(k) * 1000 / 24) }

// FinenessWorking shows how [Karat.Fineness] computes. Errors: that of [Karat.Check].
func (k Karat) FinenessWorking() ([]working.Step, error) {
	if err := k.Check("karat"); err != nil {
		return nil, err
	}
	return []working.Step{{Formula: "F = 1000·K/24", Terms: []working.Term{working.Of("K", "karat", k)},
		Result: working.Of("F", "fineness", k.Fineness()), Source: "FinenessMarks"}}, nil
}

// MassFraction returns k as a mass fraction of gold, K / 24.
//
// Source: [FinenessMarks].
func (k Karat) MassFraction() units.MassFraction { return units.MassFraction(float64(k) / 24) }

// Karat returns f in 24ths.
//
//	K = 24 F / 1000
//
// Source: [FinenessMarks].
func (f Fineness) Karat() Karat { return Karat(float64(f) * 24 / 1000) }

// KaratWorking shows how [Fineness.Karat] computes. Errors: that of [Fineness.Check].
func (f Fineness) KaratWorking() ([]working.Step, error) {
	if err := f.Check("fineness"); err != nil {
		return nil, err
	}
	return []working.Step{{Formula: "K = 24·F/1000", Terms: []working.Term{working.Of("F", "fineness", f)},
		Result: working.Of("K", "karat", f.Karat()), Source: "FinenessMarks"}}, nil
}

// MassFraction returns f as a mass fraction: the float64 nearest to the
// decimal that f shows, divided by 1000.
//
// Source: [ISO9202].
func (f Fineness) MassFraction() units.MassFraction {
	return units.MassFraction(shift(float64(f), -3))
}

// NewFineness returns a mass fraction in per mille: the float64 nearest to the
// decimal that w shows, times 1000.
//
// Source: [ISO9202].
func NewFineness(w units.MassFraction) Fineness { return Fineness(shift(float64(w), 3)) }

// Decimal returns f as a decimal with at most nine places, for comparing with
// marks. Nine places of a per mille are finer than any assay, so 584.9999 stays
// under 585, while the noise of float64 arithmetic (584.99999999999994) goes.
//
// Errors: that of [Fineness.Check].
func (f Fineness) Decimal() (decimal.Decimal, error) {
	if err := f.Check("fineness"); err != nil {
		return decimal.Decimal{}, err
	}
	return decimal.NewFromFloat(float64(f)).RoundBank(9), nil
}

// Check returns a [*units.ValueError] for field unless 0 < k ≤ 24.
func (k Karat) Check(field string) error {
	if err := units.Positive(field, k); err != nil {
		return err
	}
	if k > 24 {
		return bad(field, k.String(), "at most 24 K", units.ErrOutOfRange)
	}
	return nil
}

// Check returns a [*units.ValueError] for field unless 0 < f ≤ 1000.
func (f Fineness) Check(field string) error {
	if err := units.Positive(field, f); err != nil {
		return err
	}
	if f > 1000 {
		return bad(field, f.String(), "at most 1000 ‰", units.ErrOutOfRange)
	}
	return nil
}

// String writes k for people, as "18 K".
func (k Karat) String() string { return number(float64(k)) + " K" }

// String writes f for people, as "750 ‰".
func (f Fineness) String() string { return number(float64(f)) + " ‰" }

// ParseKarat reads a karat such as "18 K", "18K", "18 kt", "18 ct" or "18".
//
// Errors: a [*units.ValueError] for text that is not so, or not above 0 and at most 24.
func ParseKarat(text string) (Karat, error) {
	v, err := parseShare("karat", text, "a number of 24ths such as 18 K", "karat", "carat", "kt", "ct", "K", "k")
	if err != nil {
		return 0, err
	}
	if err := Karat(v).Check("karat"); err != nil {
		return 0, err
	}
	return Karat(v), nil
}

// ParseFineness reads a fineness such as "750 ‰" or "750".
//
// Errors: a [*units.ValueError] for text that is not so, or not above 0 and at most 1000.
func ParseFineness(text string) (Fineness, error) {
	v, err := parseShare("fineness", text, "a number of thousandths such as 750 ‰", "‰")
	if err != nil {
		return 0, err
	}
	if err := Fineness(v).Check("fineness"); err != nil {
		return 0, err
	}
	return Fineness(v), nil
}

// parseShare reads a number and at most one of the unit spellings.
func parseShare(field, text, need string, spellings ...string) (float64, error) {
	s := strings.TrimSpace(text)
	for _, unit := range spellings {
		if cut, found := strings.CutSuffix(s, unit); found {
			s = strings.TrimSpace(cut)
			break
		}
	}
	if plainNumber(s) {
		if v, err := strconv.ParseFloat(s, 64); err == nil {
			return v, nil
		}
	}
	return 0, bad(field, strconv.Quote(units.Clip(text)), need, units.ErrSyntax)
}
