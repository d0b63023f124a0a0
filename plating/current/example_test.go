package current_test

import (
	"encoding/json"
	"fmt"

	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

func ExampleDrive() {
	for _, d := range []current.Drive{current.ByCurrent(300 * units.Milliampere), current.ByVoltage(2 * units.Volt), {}} {
		text, err := json.Marshal(d)
		fmt.Println(string(text), d.Check(), err != nil)
	}
	var read current.Drive
	err := json.Unmarshal([]byte(`{"current":"300 mA","voltage":"2 V"}`), &read)
	fmt.Println(err)
	// Output:
	// {"current":"0.3 A"} <nil> false
	// {"voltage":"2 V"} <nil> false
	//  drive none: not above zero; need ByCurrent or ByVoltage true
	// drive more than one member: not understood; need {"current":"0.3 A"} or {"voltage":"2 V"}
}

func ExampleKind() {
	var k current.Kind
	fmt.Println(k.UnmarshalText([]byte("floating metal")), k, k.Electrode())
	fmt.Println(k.UnmarshalText([]byte("thief")))
	// Output:
	// <nil> floating metal false
	// kind of surface "thief": out of range; need one of cathode, anode, insulator, floating metal
}

func ExampleLaw_CheckOn() {
	law := current.TafelCathode(1*units.AmperePerSquareMetre, 0.5, units.Celsius(25))
	fmt.Println(law.CheckOn(current.Cathode, "bob"))
	fmt.Println(law.CheckOn(current.Floating, "bezel"))
	// Output:
	// <nil>
	// rate law of bezel Tafel: values that contradict; need a law of both signs on floating metal, such as Butler-Volmer
}

func ExampleLaw_WarnTafel() {
	law := current.TafelCathode(1*units.AmperePerSquareMetre, 0.5, units.Celsius(25))
	w, said := law.WarnTafel("bob", 5*units.AmperePerSquareMetre)
	fmt.Println(said, w.Code)
	fmt.Println(w)
	// Output:
	// true Tafel low
	// bob: the Tafel law leaves out 4 % of the least current density; the Butler-Volmer law would give it
}
