package plating_test

import (
	"fmt"
	"strings"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// A layer with one of the three figures only: nothing can be computed from it.
func ExampleLayer_Check() {
	gold, err := faraday.NewDeposit("Au", 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	l := plating.Layer{Name: "gold", Area: 104.4 * units.SquareCentimetre,
		Bath:         plating.OperatingBath{Metal: "Au", Deposit: gold, Efficiency: plating.ConstantEfficiency(0.35)},
		Distribution: plating.Distribution{MinToAverage: 0.6}, MinThickness: 1 * units.Micrometre}
	fmt.Println(strings.ReplaceAll(l.Check().Error(), "; ", ";\n"))
	l.CurrentDensity = 0.8 * units.AmperePerSquareDecimetre
	fmt.Println(l.Check())
	// Output:
	// minimum thickness, current density and time fewer than two given: values that contradict;
	// need two of the three;
	// the third is computed
	// <nil>
}

// A bath without an efficiency.
func ExampleOperatingBath_Check() {
	nickel, err := faraday.NewDeposit("Ni", 2)
	if err != nil {
		fmt.Println(err)
		return
	}
	b := plating.OperatingBath{Name: "nickel, Watts", Metal: "Ni", Deposit: nickel}
	fmt.Println(b.Check())
	b.Efficiency = plating.ConstantEfficiency(0.95)
	fmt.Println(b.Check())
	// Output:
	// current efficiency not given: not above zero; need a fraction above 0 and at most 1, or a curve
	// <nil>
}

// Between the points of a curve the line is straight; outside the end value is held.
func ExampleEfficiencyCurve_At() {
	const dm2 = units.AmperePerSquareDecimetre
	curve, err := plating.NewEfficiencyCurve(
		plating.EfficiencyPoint{CurrentDensity: 0.4 * dm2, Efficiency: 0.40},
		plating.EfficiencyPoint{CurrentDensity: 1.2 * dm2, Efficiency: 0.28})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, j := range []units.CurrentDensity{0.6 * dm2, 2 * dm2} {
		eff, within := curve.At(j)
		fmt.Println(eff, within)
	}
	// Output:
	// 37 % true
	// 28 % false
}

// The hazards of all baths of a coating system together.
func ExampleSystemResult_Hazards() {
	nickel, err := faraday.NewDeposit("Ni", 2)
	if err != nil {
		fmt.Println(err)
		return
	}
	res, err := plating.EstimateSystem(plating.System{
		Parts: []plating.Item{{Name: "bezel", Count: 6, Area: 48 * units.SquareCentimetre}},
		Layers: []plating.Layer{{Name: "underplate", Role: plating.RoleUnder,
			Bath: plating.OperatingBath{Name: "nickel, Watts", Metal: "Ni", Deposit: nickel,
				Efficiency: plating.ConstantEfficiency(0.95), Hazards: plating.HazardNickel | plating.HazardBoric},
			Distribution: plating.Distribution{MinToAverage: 0.6}, MinThickness: 5 * units.Micrometre,
			CurrentDensity: 3 * units.AmperePerSquareDecimetre}}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(res.Hazards())
	// Output: nickel, boric acid
}

// The bath's list is short; its name and its salt are not.
func ExampleOperatingBath_AllHazards() {
	b := plating.OperatingBath{Name: "copper, KCN strike", Metal: "Cu"}
	fmt.Println("listed:", b.Hazards)
	fmt.Println("all:", b.AllHazards())
	// Output:
	// listed: none
	// all: cyanide
}

// What a solution is, as its dangers are judged.
func ExampleSolution_AllHazards() {
	s := plating.Solution{Name: "zincate", PH: plating.PHWindow{Low: 13.5, High: 14}}
	fmt.Println(s.AllHazards())
	// Output: caustic
}

// A stop that asks for a figure, and one that does not.
func ExampleNote_IsQuestion() {
	for _, s := range []plating.Solution{
		{Name: "gold, acid cyanide", Metal: "Au", Valence: 1},
		{Name: "gold, acid cyanide", Metal: "Au", Valence: 1, PH: plating.PHWindow{Low: 2, High: 2.5}}} {
		for _, n := range s.Review() {
			fmt.Println(n.Code, n.IsQuestion())
		}
	}
	// Output:
	// pH-not-given true
	// gold-cyanide-acid false
}

// What must not meet, and what it would make.
func ExampleClashes() {
	for _, c := range plating.Clashes()[:2] {
		fmt.Printf("%s and %s make %s [%s]\n", c.A, c.B, c.Makes, c.Source)
	}
	// Output:
	// sulfide and acid make hydrogen sulfide, which kills [from memory, unverified]
	// hypochlorite and acid make chlorine, which kills [Hypochlorite]
}

// The table that every reader and every sheet goes by.
func ExampleHazardTable() {
	for _, row := range plating.HazardTable()[:3] {
		fmt.Println(row.Word, row.Source)
	}
	// Output:
	// cyanide KCNSheet
	// fluoride HFSheet
	// nitric ICSCNitric, PHENitrogenDioxide
}

// Metals whose drag-out is worth a tank of its own.
func ExamplePrecious() {
	for _, metal := range []string{"Au", "Ag", "Pd", "Rh", "Ni", "Cu"} {
		fmt.Println(metal, plating.Precious(metal))
	}
	// Output:
	// Au true
	// Ag true
	// Pd true
	// Rh true
	// Ni false
	// Cu false
}

func ExampleMetalHazards() {
	fmt.Println(plating.MetalHazards("Ni"))
	fmt.Println(plating.MetalHazards("Cd"))
	fmt.Println(plating.MetalHazards("Au"))
	// Output:
	// nickel
	// toxic metal
	// none
}

// The ends of a pH window the wrong way round.
func ExamplePHWindow_Check() {
	fmt.Println(plating.PHWindow{Low: 3.4, High: 4.2}.Check())
	fmt.Println(plating.PHWindow{Low: 4.2, High: 3.4}.Check())
	// Output:
	// <nil>
	// pH 4.2 to 3.4: values that contradict; need the low end first
}

// Words of a file for what a tank is made of.
func ExampleVesselWords() {
	fmt.Println(plating.VesselWords())
	// Output: [not given glass plastic stainless steel steel aluminium]
}

// What to do first, then why, each as a sentence.
func ExampleSentences() {
	fmt.Println(plating.Sentences("rinse twice", "what clings spoils the gold bath.", ""))
	// Output: Rinse twice. What clings spoils the gold bath.
}
