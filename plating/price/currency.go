package price

import (
	"fmt"
	"strings"

	"example.com/laydown/units"
)

// A Currency is a money with the number of decimal places of its smallest unit.
type Currency struct {
	Code   string `json:"code"`   // three capital letters, as in ISO 4217: EUR
	Places int32  `json:"places"` // 0, 2 or 3
}

// Currencies of ISO 4217 with other than two places, and those with two. Units
// of account with four places (CLF, UYW), metals and testing codes are left out.
const (
	noPlaces = " BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF "
	two      = " AED AFN ALL AMD ANG AOA ARS AUD AWG AZN BAM BBD BDT BGN BMD BND BOB BOV BRL BSD BTN BWP BYN BZD " +
		"CAD CDF CHE CHF CHW CNY" +
		" COP COU CRC CUC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG " +
		"HUF IDR ILS INR IRR JMD" +
		" KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MXV MYR MZN " +
		"NAD NGN NIO NOK NPR NZD" +
		" PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB " +
		"TJS TMT TOP TRY TTD TWD" +
		" TZS UAH USD USN UYU UZS VED VES WST XCD YER ZAR ZMW ZWG "
	three = " BHD IQD JOD KWD LYD OMR TND "
)

// ParseCurrency returns a currency by its code, with the places that ISO 4217
// gives it in its list of June 2024. A shop that rounds to five or ten of the
// smallest unit does so at the till.
//
// Errors: a [*units.ValueError] for a code that is not three capital letters,
// and for one that the list does not have with 0, 2 or 3 places.
//
// Source: [ISO4217].
func ParseCurrency(code string) (Currency, error) {
	if err := checkCode(code); err != nil {
		return Currency{}, err
	}
	if places, found := listed(code); found {
		return Currency{code, places}, nil
	}
	return Currency{}, bad("currency", code,
		"a code of ISO 4217 with 0, 2 or 3 places, or a Currency that names its places", units.ErrOutOfRange)
}

// listed returns the places that ISO 4217 gives a code, and whether the lists have it.
func listed(code string) (int32, bool) {
	switch {
	case strings.Contains(two, " "+code+" "):
		return 2, true
	case strings.Contains(noPlaces, " "+code+" "):
		return 0, true
	case strings.Contains(three, " "+code+" "):
		return 3, true
	}
	return 0, false
}

// checkCode wants three capital letters, whether ISO 4217 has them or not.
func checkCode(code string) error {
	if len(code) == 3 && strings.Trim(code, "ABCDEFGHIJKLMNOPQRSTUVWXYZ") == "" {
		return nil
	}
	return bad("currency code", quoted(code), "three capital letters, as EUR", units.ErrSyntax)
}

// Check returns a [*units.ValueError] for a code that is no code, for places
// other than 0, 2 or 3, and for a listed currency with other places than ISO
// 4217 gives it. A currency that the list does not know may have any of the three.
func (c Currency) Check() error {
	if err := checkCode(c.Code); err != nil {
		return err
	}
	if c.Places != 0 && c.Places != 2 && c.Places != 3 {
		return bad("places of "+c.Code, fmt.Sprint(c.Places), "0, 2 or 3", units.ErrOutOfRange)
	}
	if places, found := listed(c.Code); found && places != c.Places {
		return bad("places of "+c.Code, fmt.Sprint(c.Places),
			fmt.Sprintf("%d, as in ISO 4217; ParseCurrency fills them in", places), units.ErrInconsistent)
	}
	return nil
}

// String returns the code.
func (c Currency) String() string { return units.Printable(c.Code) }

// quoted puts foreign text into an error message, cut to a decent length.
func quoted(s string) string {
	return fmt.Sprintf("%q", units.Clip(s))
}

// bad makes a [*units.ValueError].
func bad(field, value, need string, reason error) error {
	return &units.ValueError{Field: field, Value: value, Need: need, Err: reason}
}
