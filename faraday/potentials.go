package faraday

import (
	"fmt"
	"strings"

	"example.com/laydown/units"
)

// A Couple is a half reaction with its standard potential: that of reduction,
// against the standard hydrogen electrode, at 25 °C, all activities 1.
//
// The standard potential says where the couple stands at equilibrium in an
// ideal solution. A bath stands elsewhere: complexes, concentrations and
// overpotential move it, and by volts where cyanide is in play.
type Couple struct {
	Name       string        // oxidised and reduced form: [Au(CN)2]-/Au
	Reaction   string        // [Au(CN)2]- + e- = Au + 2 CN-
	Metal      string        // symbol of the element that changes its valence
	Electrons  int           // in Reaction as it stands
	Potential  units.Voltage // reduction, against the standard hydrogen electrode
	Source     string        // key of the publication
	Resolution units.Voltage // one unit of the last printed digit
}

const (
	appendixL = "OpenStaxChem2e"    // Appendix L
	goldProbl = "GeneralChemistry9" // chapter 21
)

// coupleTable is read only. Figures as printed; Appendix L prints the charge of
// the silver thiosulfate ion as 3+, which is corrected here.
var coupleTable = [...]Couple{
	{"Au+/Au", "Au+ + e- = Au", "Au", 1, 1.692, appendixL, 0.001},
	{"Au3+/Au", "Au3+ + 3 e- = Au", "Au", 3, 1.498, appendixL, 0.001},
	{"[Au(CN)2]-/Au", "[Au(CN)2]- + e- = Au + 2 CN-", "Au", 1, -0.60, goldProbl, 0.01},
	{"Ag+/Ag", "Ag+ + e- = Ag", "Ag", 1, 0.7996, appendixL, 0.0001},
	{"[Ag(CN)2]-/Ag", "[Ag(CN)2]- + e- = Ag + 2 CN-", "Ag", 1, -0.31, appendixL, 0.01},
	{"[Ag(NH3)2]+/Ag", "[Ag(NH3)2]+ + e- = Ag + 2 NH3", "Ag", 1, 0.373, appendixL, 0.001},
	{"[Ag(S2O3)2]3-/Ag", "[Ag(S2O3)2]3- + e- = Ag + 2 [S2O3]2-", "Ag", 1, 0.017, appendixL, 0.001},
	{"Cu2+/Cu", "Cu2+ + 2 e- = Cu", "Cu", 2, 0.337, appendixL, 0.001},
	{"Cu+/Cu", "Cu+ + e- = Cu", "Cu", 1, 0.521, appendixL, 0.001},
	{"[Cu(CN)2]-/Cu", "[Cu(CN)2]- + e- = Cu + 2 CN-", "Cu", 1, -0.43, appendixL, 0.01},
	{"Ni2+/Ni", "Ni2+ + 2 e- = Ni", "Ni", 2, -0.257, appendixL, 0.001},
	{"[Ni(NH3)6]2+/Ni", "[Ni(NH3)6]2+ + 2 e- = Ni + 6 NH3", "Ni", 2, -0.49, appendixL, 0.01},
	{"Co2+/Co", "Co2+ + 2 e- = Co", "Co", 2, -0.28, appendixL, 0.01},
	{"Fe2+/Fe", "Fe2+ + 2 e- = Fe", "Fe", 2, -0.447, appendixL, 0.001},
	{"Zn2+/Zn", "Zn2+ + 2 e- = Zn", "Zn", 2, -0.7618, appendixL, 0.0001},
	{"[Zn(CN)4]2-/Zn", "[Zn(CN)4]2- + 2 e- = Zn + 4 CN-", "Zn", 2, -1.26, appendixL, 0.01},
	{"[Zn(OH)4]2-/Zn", "[Zn(OH)4]2- + 2 e- = Zn + 4 OH-", "Zn", 2, -1.199, appendixL, 0.001},
	{"Cd2+/Cd", "Cd2+ + 2 e- = Cd", "Cd", 2, -0.4030, appendixL, 0.0001},
	{"[Cd(CN)4]2-/Cd", "[Cd(CN)4]2- + 2 e- = Cd + 4 CN-", "Cd", 2, -1.09, appendixL, 0.01},
	{"Sn2+/Sn", "Sn2+ + 2 e- = Sn", "Sn", 2, -0.1375, appendixL, 0.0001},
	{"Sn4+/Sn2+", "Sn4+ + 2 e- = Sn2+", "Sn", 2, 0.151, appendixL, 0.001},
	{"Pb2+/Pb", "Pb2+ + 2 e- = Pb", "Pb", 2, -0.1262, appendixL, 0.0001},
	{"Cr3+/Cr", "Cr3+ + 3 e- = Cr", "Cr", 3, -0.744, appendixL, 0.001},
	{"Cr2+/Cr", "Cr2+ + 2 e- = Cr", "Cr", 2, -0.913, appendixL, 0.001},
	{"Pd2+/Pd", "Pd2+ + 2 e- = Pd", "Pd", 2, 0.987, appendixL, 0.001},
	{"[PdCl4]2-/Pd", "[PdCl4]2- + 2 e- = Pd + 4 Cl-", "Pd", 2, 0.591, appendixL, 0.001},
	{"Pt2+/Pt", "Pt2+ + 2 e- = Pt", "Pt", 2, 1.20, appendixL, 0.01},
	{"[PtCl4]2-/Pt", "[PtCl4]2- + 2 e- = Pt + 4 Cl-", "Pt", 2, 0.755, appendixL, 0.001},
	{"[RhCl6]3-/Rh", "[RhCl6]3- + 3 e- = Rh + 6 Cl-", "Rh", 3, 0.44, appendixL, 0.01},
	{"In3+/In", "In3+ + 3 e- = In", "In", 3, -0.3382, appendixL, 0.0001},
	{"Ga3+/Ga", "Ga3+ + 3 e- = Ga", "Ga", 3, -0.549, appendixL, 0.001},
	{"Mn2+/Mn", "Mn2+ + 2 e- = Mn", "Mn", 2, -1.185, appendixL, 0.001},
	{"Hg2+/Hg", "Hg2+ + 2 e- = Hg", "Hg", 2, 0.851, appendixL, 0.001},
	{"Al3+/Al", "Al3+ + 3 e- = Al", "Al", 3, -1.662, appendixL, 0.001},
	{"H+/H2", "2 H+ + 2 e- = H2", "H", 2, 0, appendixL, 0.01},
	{"H2O/H2", "2 H2O + 2 e- = H2 + 2 OH-", "H", 2, -0.8277, appendixL, 0.0001},
	{"O2/H2O", "O2 + 4 H+ + 4 e- = 2 H2O", "O", 4, 1.229, appendixL, 0.001},
}

// Couples returns all couples with a standard potential here, those of one
// element together.
//
// The cyanide couples are printed to 0.01 V. For [Ag(CN)2]-/Ag the same book
// prints a formation constant that would make it -0.44 V; do not lean on the
// second digit.
//
// Source: [OpenStaxChem2e] Appendix L; [GeneralChemistry9] chapter 21 for
// [Au(CN)2]-/Au.
func Couples() []Couple { return append([]Couple(nil), coupleTable[:]...) }

// StandardPotential returns the couple of a name, as "Ni2+/Ni" or
// "[Au(CN)2]-/Au". Spaces do not matter.
//
// Errors: a [*CoupleError] for a name that is not in [Couples].
//
// Source: [OpenStaxChem2e] Appendix L; [GeneralChemistry9] chapter 21 for
// [Au(CN)2]-/Au.
func StandardPotential(name string) (Couple, error) {
	want := strings.Join(strings.Fields(name), "")
	for i := range coupleTable {
		if coupleTable[i].Name == want {
			return coupleTable[i], nil
		}
	}
	return Couple{}, &CoupleError{Name: name}
}

// A CoupleError reports a name that is not among [Couples].
type CoupleError struct{ Name string }

// Error returns the name and the names that would do: those of the same metal
// when it can be told.
func (e *CoupleError) Error() string {
	metal := ""
	var found []string
	for i := range coupleTable {
		c := &coupleTable[i]
		if strings.HasPrefix(strings.TrimLeft(e.Name, "[ "), c.Metal) && len(c.Metal) >= len(metal) {
			if len(c.Metal) > len(metal) {
				metal, found = c.Metal, nil
			}
			found = append(found, c.Name)
		}
	}
	if found == nil {
		found = []string{"Ni2+/Ni", "Ag+/Ag", "[Au(CN)2]-/Au and the others of Couples"}
	}
	return fmt.Sprintf("couple %q: unknown; need a name such as %s", units.Clip(e.Name), strings.Join(found, ", "))
}
