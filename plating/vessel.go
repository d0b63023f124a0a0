package plating

import (
	"strconv"
	"strings"

	"example.com/laydown/units"
)

// A Vessel is what a tank or beaker is made of. The zero value is "not given".
type Vessel uint8

// The vessels.
const (
	VesselNotGiven  Vessel = iota // no judgement
	VesselGlass                   // and glazed ceramic, enamel
	VesselPlastic                 // polypropylene, polyethylene, PVC; also a tank lined with it
	VesselStainless               // stainless steel
	VesselSteel                   // bare steel or cast iron
	VesselAluminium               // and zinc-coated ware
	vesselEnd
)

// VesselWords returns the words of the vessels, "not given" first.
func VesselWords() []string {
	return []string{"not given", "glass", "plastic", "stainless steel", "steel", "aluminium"}
}

// String returns the vessel in words.
func (v Vessel) String() string {
	if v >= vesselEnd {
		v = VesselNotGiven
	}
	return VesselWords()[v]
}

// MarshalText writes the vessel in words, for JSON.
//
// Errors: a [*units.ValueError] for a number that names no vessel.
func (v Vessel) MarshalText() ([]byte, error) {
	if v >= vesselEnd {
		return nil, &units.ValueError{Field: "vessel", Value: strconv.Itoa(int(v)),
			Need: "one of those of this package", Err: units.ErrOutOfRange}
	}
	return []byte(v.String()), nil
}

// UnmarshalText reads what MarshalText writes, and the names that the bench
// uses: beaker, enamel, ceramic, polypropylene, PVC, zinc-coated.
//
// Errors: a [*units.ValueError] that lists the words.
func (v *Vessel) UnmarshalText(text []byte) error {
	if v == nil {
		return units.Missing("vessel to read into", "a pointer to one")
	}
	s := strings.ToLower(strings.TrimSpace(string(text)))
	for _, w := range []struct {
		words  string
		vessel Vessel
	}{
		{"glass,beaker,glass beaker,enamel,ceramic,porcelain", VesselGlass},
		{"plastic,polypropylene,polyethylene,pp,pe,pvc,lined steel", VesselPlastic},
		{"stainless steel,stainless", VesselStainless}, {"steel,iron,cast iron", VesselSteel},
		{"aluminium,aluminum,zinc-coated,galvanised", VesselAluminium}, {"not given", VesselNotGiven},
	} {
		for _, have := range strings.Split(w.words, ",") {
			if have == s {
				*v = w.vessel
				return nil
			}
		}
	}
	return &units.ValueError{Field: "vessel", Value: strconv.Quote(units.Clip(s)), Need: "one of " +
		strings.Join(VesselWords()[1:], ", "), Err: units.ErrOutOfRange}
}
