package sequence_test

import (
	"errors"
	"fmt"
	"strings"

	"example.com/laydown/plating/bath"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/units"
)

// One card for the wall: the drag-out tank behind the gold.
func ExampleCard_Text() {
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
	fmt.Print(cards[10].Text())
	// Output:
	// 11. drag-out rinse (drag-out rinse)
	//    water        1 stage, still, deionised
	//    look         drain over the tank before, 5 to 10 s
}

// How far a plan may be trusted: as far as its weakest figure.
func ExampleConfidence() {
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
	fmt.Println(sequence.Confidence(cards))
	// Output: from memory
}

// Somebody hangs a tray of screws up to dry and goes on to the gold.
func ExampleFinding_Sentence() {
	screws := hands()
	screws.Name, screws.Substrate = "screws", sequence.Brass
	tanks, _, err := sequence.Plan(screws)
	if err != nil {
		fmt.Println(err)
		return
	}
	for i := range tanks {
		if tanks[i].Bath.Metal == "Ni" {
			tanks[i+1] = sequence.Tank{Kind: sequence.Dry}
		}
	}
	for _, f := range sequence.Check(tanks, screws) {
		if f.Code == sequence.CodePassiveDry {
			fmt.Println(f.Severity)
			fmt.Println(strings.ReplaceAll(f.Sentence(), ". ", ".\n"))
		}
	}
	// Output:
	// warning
	// tank 8: The piece dries before gold, acid cyanide strike, gold(I).
	// Keep it wet and go straight on, or activate again.
	// A passive film forms as it dries, and the next coat peels.
	// [Guidebook2013]
}

// The order for a spring says nothing of its strength. The piece may be so; a plan of it
// may not, and asks.
func ExamplePiece_Check() {
	spring := sequence.Piece{Name: "click spring", Substrate: sequence.HighCarbonSteel, Finish: sequence.BrightNickel,
		MinThickness: 3 * units.Micrometre}
	fmt.Println(spring.Check())
	_, _, err := sequence.Plan(spring)
	var unsure *sequence.UnsureError
	fmt.Println(errors.As(err, &unsure))
	spring.MinThickness = 0
	fmt.Println(spring.Check())
	// Output:
	// <nil>
	// true
	// minimum thickness 0 µm: not above zero; need a value above zero
}

// A tank without a polarity: hydrogen or oxygen on the piece is not a detail.
func ExampleTank_Check() {
	t := sequence.Tank{Name: "electroclean", Kind: sequence.Electroclean,
		Process: sequence.Process{Chemistry: "alkaline cleaner"}}
	fmt.Println(t.Check())
	t.Process.Polarity = sequence.Anodic
	fmt.Println(t.Check())
	// Output:
	// polarity not said: values that contradict; need cathodic or anodic: hydrogen or oxygen on the piece
	// <nil>
}

// Brass plated with silver only: what gold would suffer is left out.
func ExamplePractice_For() {
	p, err := sequence.PracticeFor(sequence.Brass)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, why := range p.For("Ag").Reasons {
		fmt.Println(why.Text)
	}
	// Output: silver deposits on copper by immersion and does not adhere: strike first
}

// 120 MPa is a slip of the decimal point: no steel is that weak.
func ExampleCheckTensile() {
	fmt.Println(sequence.CheckTensile(1200 * units.Megapascal))
	fmt.Println(sequence.CheckTensile(120 * units.Megapascal))
	// Output:
	// <nil>
	// tensile strength 120 MPa: outside the published range 200 MPa to 4000 MPa [from memory, unverified]
}

func ExampleParseFinish() {
	f, err := sequence.ParseFinish("White Bronze")
	fmt.Println(f, err)
	_, err = sequence.ParseFinish("chrome")
	fmt.Printf("%.52s ...\n", err)
	// Output:
	// white bronze <nil>
	// finish "chrome": out of range; need one of hard gold ...
}

// Each finish stands for a bath of the library.
func ExampleFinish_BathKey() {
	b, err := bath.Get(sequence.Rhodium.BathKey())
	fmt.Println(b.Name, err)
	// Output: rhodium, sulfate, decorative <nil>
}
