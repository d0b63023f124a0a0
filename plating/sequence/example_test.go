package sequence_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"

	"example.com/laydown/plating"
	"example.com/laydown/plating/bath"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// hands are twenty-four hands of mantel clocks.
func hands() sequence.Piece {
	return sequence.Piece{Name: "24 hands of mantel clocks", Substrate: sequence.StainlessSteel,
		Finish: sequence.HardGold, MinThickness: 1 * units.Micrometre,
		Area: 124 * units.SquareCentimetre, Distribution: plating.Distribution{MinToAverage: 0.6,
			Basis: "given"}}
}

func ExamplePlan() {
	tanks, found, err := sequence.Plan(hands())
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, t := range tanks {
		fmt.Printf("%2d %s\n", i+1, t.Name)
	}
	for _, f := range found {
		fmt.Printf("%s: %s\n", f.Severity, f.Text)
	}
	// Output:
	// 1 soak in mild alkaline cleaner
	//  2 rinse
	//  3 anodic electroclean
	//  4 rinse
	//  5 cathodic activation in sulfuric acid, 5 to 10 % by volume
	//  6 slightly acid rinse
	//  7 gold, acid cyanide strike, gold(I)
	//  8 drag-out rinse
	//  9 rinse
	// 10 gold, acid cyanide, cobalt hardened
	// 11 drag-out rinse
	// 12 rinse
	// 13 final rinse, deionised
	// 14 dry
}

// A bezel of unknown metal: no plan is guessed.
func ExamplePlan_unsure() {
	bezel := hands()
	bezel.Substrate = sequence.SubstrateUnknown
	_, _, err := sequence.Plan(bezel)
	var unsure *sequence.UnsureError
	if errors.As(err, &unsure) {
		fmt.Println(unsure.What)
		fmt.Println(unsure.Ask[1])
	}
	// Output:
	// the base metal is not known
	// a magnet: steel and nickel hold it, stainless steel seldom, brass, zinc, aluminium, tin and silver never
}

// Somebody takes out the rinse between cyanide copper and nickel.
func ExampleCheck() {
	finial := sequence.Piece{Name: "finial", Substrate: sequence.ZincDieCasting, Finish: sequence.HardGold,
		MinThickness: 0.5 * units.Micrometre}
	tanks, _, err := sequence.Plan(finial)
	if err != nil {
		fmt.Println(err)
		return
	}
	for i := range tanks {
		if tanks[i].Bath.Key == "copper-cyanide-build" {
			tanks[i+1].Rinse.Stages = 1
		}
	}
	for _, f := range sequence.Check(tanks, finial) {
		fmt.Println(f.Code, f.Severity, f.Tanks)
		fmt.Println(f.Text)
		fmt.Println(strings.ReplaceAll(f.Remedy, "; ", ";\n"))
	}
	// Output:
	// cyanide-acid stop [4 6]
	// cyanide of copper, cyanide strike and plate in one is carried into acid: 1 clean rinse stage between
	// rinse in two stages or more of running or counterflow water between them;
	// give each a rinse of its own;
	// extraction on
}

func ExampleApprove() {
	err := sequence.Approve(sequence.Check([]sequence.Tank{{Name: "blue tank"}}, hands()))
	var stop *sequence.StopError
	fmt.Println(errors.As(err, &stop), len(stop.Findings))
	// Output: true 2
}

func ExamplePracticeFor() {
	p, err := sequence.PracticeFor(sequence.Brass)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(p.Standard, "-", p.Title)
	fmt.Println("title", p.Seen, "- steps", p.Detail)
	fmt.Println(strings.ReplaceAll(p.Reasons[0].String(), "; ", ";\n"))
	// Output:
	// ASTM B281 - Preparation of Copper and Copper-Base Alloys for Electroplating and Conversion Coatings
	// title published - steps from memory
	// copper diffuses into gold and tarnishes there;
	// nickel and palladium are good barriers, bronze is not (published, DiffusionBarrier)
}

func ExampleCards() {
	p := hands()
	tanks, _, err := sequence.Plan(p)
	if err != nil {
		fmt.Println(err)
		return
	}
	cards, err := sequence.Cards(tanks, p)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(strings.Replace(cards[6].Text(), "; below", ";\n                below", 1))
	raw, err := json.Marshal(cards[9].Time)
	fmt.Println(len(raw) > 0, err, sequence.Confidence(cards) == origin.FromMemory)
	// Output:
	// 7. gold, acid cyanide strike, gold(I) (strike)
	//    CAUTION      CYANIDE IN ACID: pH meter in the bath, extraction on;
	//                 below pH 3 it frees hydrogen cyanide, which kills. [GoldCyanidePatent]
	//    temperature  20 °C to 50 °C, 68 °F to 122 °F (from memory)
	//    current      3.72 A, cathodic, at 3.00 A/dm²
	//    window       1.24 A to 6.20 A, 1.00 A/dm² to 5.00 A/dm² (from memory)
	//    volts        4 V to 6 V (from memory)
	//    pH           3.2 to 4 (from memory)
	//    time         15 s to 60 s, usual immersion time (from memory)
	//    entry        LIVE: current on before the piece goes in
	//    agitation    move the part (from memory)
	//    anode        platinised titanium (from memory); 124 cm² to 496 cm² of it (from memory)
	//    look         gas over the whole part at once
	//    look         a complete, thin yellow film; strip and start again if any spot is bare
	// true <nil> true
}

func ExampleLayers() {
	p := hands()
	tanks, _, err := sequence.Plan(p)
	if err != nil {
		fmt.Println(err)
		return
	}
	layers, err := sequence.Layers(tanks, p)
	if err != nil {
		fmt.Println(err)
		return
	}
	res, err := plating.EstimateSystem(plating.System{Name: p.Name, Parts: []plating.Item{{Count: 1, Area: p.Area}},
		Layers: layers})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, l := range res.Layers {
		fmt.Printf("%s: %.1f A, %.1f min\n", l.Layer.Role, float64(l.Result.Current), float64(l.Result.Time)/60)
	}
	// Output:
	// strike: 3.7 A, 0.6 min
	// finish: 2.0 A, 4.0 min
}

func ExampleParseSubstrate() {
	s, err := sequence.ParseSubstrate("Zinc die casting")
	fmt.Println(s, err)
	f, err := sequence.ParseFinish("hard gold")
	fmt.Println(f, f.BathKey(), err)
	// Output:
	// zinc die casting <nil>
	// hard gold gold-acid-cobalt <nil>
}

// The whole sheet: findings and general cautions first, then card after card.
func ExampleSheet() {
	p := hands()
	tanks, found, err := sequence.Plan(p)
	if err != nil {
		fmt.Println(err)
		return
	}
	cards, err := sequence.Cards(tanks, p)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.95s\n", sequence.Sheet(p, cards, found))
	// Output:
	// 24 hands of mantel clocks
	// stainless steel, hard gold, 1.00 µm at the thinnest significant spot
}

func ExampleSubstrates() {
	list := sequence.Substrates()
	fmt.Println(len(list), list[0], list[len(list)-1])
	// Output: 17 stainless steel conductive-painted plastic
}

func ExampleFinishes() {
	list := sequence.Finishes()
	fmt.Println(len(list), list[0], list[len(list)-1])
	// Output: 11 hard gold white bronze
}

// The shop has decided on nickel and hard gold for its brass bezels; the tanks
// around them come from published practice, and the review says what it misses.
func ExamplePlanAround() {
	p := hands()
	p.Substrate, p.Name = sequence.Brass, "bezels"
	nickel, err := bath.Get("nickel-watts")
	if err != nil {
		fmt.Println(err)
		return
	}
	gold, err := bath.Get(p.Finish.BathKey())
	if err != nil {
		fmt.Println(err)
		return
	}
	tanks, found, err := sequence.PlanAround(p, []sequence.Tank{
		{Name: "nickel", Kind: sequence.Underplate, Bath: nickel, MinThickness: 5 * units.Micrometre},
		{Name: "gold", Kind: sequence.Plate, Bath: gold, MinThickness: p.MinThickness}})
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, t := range tanks {
		fmt.Println(i+1, t.Kind)
	}
	for _, f := range found {
		fmt.Println(f.Severity, f.Code)
	}
	// Output:
	// 1 soak clean
	// 2 rinse
	// 3 electroclean
	// 4 rinse
	// 5 activate
	// 6 rinse
	// 7 underplate
	// 8 rinse
	// 9 plate
	// 10 drag-out rinse
	// 11 rinse
	// 12 final rinse
	// 13 dry
	// caution leaded-brass
	// caution no-strike
}

func ExampleWorst() {
	p := hands()
	tanks, _, err := sequence.Plan(p)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(sequence.Worst(sequence.Check(tanks, p)))
	fmt.Println(sequence.Worst(sequence.Check(tanks[6:], p)))
	// Output:
	// info
	// warning
}
