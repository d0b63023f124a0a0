package main

import (
	"encoding/json"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// byHand is a shipped job as its file gives it, in bench units: A/dm², µm,
// g/cm³, g/L, L, minutes. The figures of a sheet follow from it in plain float
// arithmetic, without a type or a function of this module.
type byHand struct {
	area, drag float64 // cm²; mL carried out on a cm²
	layers     []coatByHand
	// The tanks that plate nothing: shortest and longest stay.
	stays [][2]float64
	tanks int // of the whole line, each with 20 s of handling

	cleaning   []cleaningByHand
	loads, dry float64 // between returns from a drag-out tank; mL that evaporate for a load
	tank       float64 // drag-out tank [L]
	heating    float64 // kWh
}

type cleaningByHand struct{ low, high, volts, minutes float64 } // A/dm², upper volts, usual immersion time

type coatByHand struct {
	metal           string
	j, minutes, um  float64 // the one that is 0 is found
	below           bool    // the coat before counts
	low, high       float64 // efficiency
	rho, eq, fine   float64
	content, volume float64
	voltsLow, volts float64
	top             float64 // upper end of the window
	dry             float64 // mL, where the bath has its own
	soluble, onward bool
	dragOut         bool    // a drag-out tank behind it
	salt            float64 // grams of it that bring a gram of metal
}

func jobsByHand() map[string]byHand {
	const (
		f        = 96485.33212
		au       = 196.966570 / f // g/C
		ag       = 107.8682 / f
		ni       = 58.6934 / 2 / f
		pi       = math.Pi
		cyanides = 2 * (12.011 + 14.007)
		goldSalt = (39.0983 + 196.966570 + cyanides) / 196.966570
		hardEff  = (0.5 - 0.3) / (0.6 - 0.3)
		// US gallons on 1000 ft², in mL on a cm².
		gallons = 231 * 2.54 * 2.54 * 2.54 / (1000 * 12 * 12 * 2.54 * 2.54)
	)
	hands := 12*(2*(62*3.4+62*0.4+3.4*0.4))/1e2 + 12*(2*(44*4.2+44*0.4+4.2*0.4)-2*pi/4*9+pi*3*0.4)/1e2
	torus := 6 * pi * pi * 84 * 6 / 1e2
	whole := (pi*(7+1)*math.Hypot(38, 6) + pi*1 + pi*22*22 + pi*12*9 + pi*13*13 + pi*26*3) / 1e2
	soak, dry := [2]float64{2, 5}, [2]float64{5, 15}
	return map[string]byHand{
		"hands": {area: hands, drag: 0.4 * gallons * hands, tanks: 14, loads: 10, dry: 40, tank: 3, heating: 0.6,
			stays:    [][2]float64{soak, {1, 2}, {0.5, 2}, dry},
			cleaning: []cleaningByHand{{3, 8, 6, 1.5}, {0.5, 2, 6, 1.25}},
			layers: []coatByHand{
				{metal: "Au", j: 3, minutes: 20.0 / 60, low: 0.08, high: 0.12, rho: 19.3, eq: au, fine: 1, content: 1.5,
					volume: 3, voltsLow: 4, volts: 6, top: 5, dry: 5, dragOut: true, salt: goldSalt},
				{metal: "Au", j: 0.5, um: 1, below: true, low: 0.37 + (0.33-0.37)*hardEff, high: 0.43 + (0.39-0.43)*hardEff,
					rho: 17.3, eq: 1 / (0.996/au + 0.002*2*f/58.933194), fine: 0.996, content: 8, volume: 5,
					voltsLow: 2, volts: 3, top: 1.2, dragOut: true, salt: goldSalt}}},
		"bezels": {area: torus - 6*2.5, drag: 0.4 * gallons * torus, tanks: 16, loads: 4, dry: 150, tank: 5, heating: 3.5,
			stays:    [][2]float64{soak, {0.5, 1}, {0.25, 0.5}, dry},
			cleaning: []cleaningByHand{{3, 8, 6, 0.75}},
			layers: []coatByHand{
				{metal: "Ni", j: 3, um: 4, low: 0.95, high: 0.95, rho: 8.9, eq: ni, fine: 1, content: 75, volume: 20,
					voltsLow: 4, volts: 8, top: 5, soluble: true, salt: (58.6934 + 32.06 + 4*15.999 + 6*18.015) / 58.6934},
				{metal: "Au", j: 2, minutes: 20.0 / 60, low: 0.12, high: 0.12, rho: 19.3, eq: au, fine: 1, content: 1.5,
					volume: 5, voltsLow: 3, volts: 6, top: 4, dry: 20, dragOut: true, salt: goldSalt},
				{metal: "Au", minutes: 25, um: 2.5, below: true, low: 0.88, high: 0.96, rho: 19.3, eq: au, fine: 1, content: 10,
					volume: 10, voltsLow: 1.5, volts: 3, top: 0.5, dragOut: true, salt: goldSalt}}},
		"finial": {area: whole - 3.2, drag: 2 * gallons * whole, tanks: 13, loads: 10, dry: 40, tank: 3,
			stays:    [][2]float64{soak, {0.5, 1}, {0.25, 0.5}, dry},
			cleaning: []cleaningByHand{{3, 8, 6, 0.75}},
			layers: []coatByHand{
				{metal: "Ag", j: 1.5, minutes: 0.25, low: 0.3, high: 0.3, rho: 10.5, eq: ag, fine: 1, content: 3, volume: 4,
					voltsLow: 4, volts: 6, top: 2.5, onward: true, salt: (39.0983 + 107.8682 + cyanides) / 107.8682},
				{metal: "Ag", j: 0.8, um: 10, below: true, low: 0.98, high: 1, rho: 10.5, eq: ag, fine: 1, content: 40,
					volume: 8, voltsLow: 0.5, volts: 2, top: 4, soluble: true, dragOut: true}}},
	}
}

// thinnestToAverage is that of all coats of a job.
func thinnestToAverage(name string) float64 {
	return map[string]float64{"hands": 0.6, "bezels": 0.55, "finial": 0.45}[name]
}

// ran is a coat as it comes out by hand.
type ran struct{ amps, j, minutes, mean, mg float64 }

// lay computes a coat on an area [cm²] of which below [µm] is there already.
func (c coatByHand) lay(area, ratio, below, eff float64) ran {
	um := func(j, minutes float64) float64 { return c.eq * eff * j / 100 * minutes * 60 / c.rho * 1e4 }
	r := ran{j: c.j, minutes: c.minutes}
	switch wanted := (c.um - below) / ratio; {
	case c.um == 0:
	case c.j == 0:
		r.j = wanted / um(1, c.minutes)
	case c.minutes == 0:
		r.minutes = wanted / um(c.j, 1)
	}
	r.mean = um(r.j, r.minutes)
	r.amps = r.j * area / 100
	r.mg = r.mean / 1e4 * c.rho * area * 1000
	return r
}

// back simulates a drag-out tank load by load, from one return to the next,
// until it does no more than repeat itself: the share that it brings back.
func back(drag, tank, loads, poured float64) float64 {
	c, lost := 0.0, 0.0
	for range 20_000 {
		c *= 1 - poured/tank
		lost = 0
		for range int(loads) {
			c = (c*tank + drag) / (tank + drag)
			lost += c * drag
		}
	}
	return 1 - lost/(loads*drag)
}

// reader takes figures out of a JSON result by their path and holds them
// against figures computed by hand.
type reader struct {
	t    *testing.T
	name string
	tree any
	n    int
}

func (r *reader) at(path string) any {
	v := r.tree
	for _, key := range strings.Split(path, ".") {
		switch x := v.(type) {
		case map[string]any:
			v = x[key]
		case []any:
			i, _ := strconv.Atoi(key)
			v = x[i]
		}
	}
	return v
}

// tankOf finds the tank of a coat; both are counted from 0.
func (r *reader) tankOf(coat int) int {
	for i, tank := range r.at("tanks").([]any) {
		if tank.(map[string]any)["coat"] == nil {
			continue
		}
		if coat == 0 {
			return i
		}
		coat--
	}
	r.t.Fatalf("%s: no tank for coat %d more", r.name, coat+1)
	return 0
}

func (r *reader) near(path string, want float64, unit string) {
	r.t.Helper()
	r.n++
	var got float64
	switch x := r.at(path).(type) {
	case nil: // what is zero is left out
		if want == 0 {
			return
		}
		r.t.Errorf("%s %s is missing", r.name, path)
		return
	case float64:
		got = x
	case string:
		number, u, _ := strings.Cut(x, " ")
		var err error
		if got, err = strconv.ParseFloat(number, 64); err != nil || u != unit {
			r.t.Errorf("%s %s: %q, want a number of %s", r.name, path, x, unit)
			return
		}
	default:
		r.t.Errorf("%s %s: %v", r.name, path, x)
		return
	}
	if !(math.Abs(got-want) <= 2e-7*math.Abs(want)) {
		r.t.Errorf("%s %s: %v, by hand %v %s", r.name, path, got, want, unit)
	}
}

// TestIndependentSheetFigures recomputes the figures of the JSON results of the
// shipped jobs from what the job files give.
func TestIndependentSheetFigures(t *testing.T) {
	const sixty = 60.0 // seconds in a minute
	for name, job := range jobsByHand() {
		status, out, bad := call(t, "", "-json", shipped(t, name))
		if status != 0 || bad != "" {
			t.Fatalf("%s: status %d, %s", name, status, bad)
		}
		r := &reader{t: t, name: name}
		if err := json.Unmarshal([]byte(out), &r.tree); err != nil {
			t.Fatal(err)
		}
		ratio := thinnestToAverage(name)
		var minutes, charge, low, high, joules, below float64
		most := 0.0 // amps that make hydrogen
		type total = struct{ mean, thinnest, mg, fine float64 }
		totals, met := map[string]total{}, []string{}
		precious := 0
		carried := 0.0 // mg into the bath behind, of the same metal
		for i, c := range job.layers {
			p := fmt.Sprintf("tanks.%d.coat.", r.tankOf(i))
			credit := 0.0
			if c.below {
				credit = below
				r.near(p+"counted_from_below", credit, "µm")
			}
			x := c.lay(job.area, ratio, credit, (c.low+c.high)/2)
			r.near(p+"area", job.area, "cm²")
			r.near(p+"current_density", x.j, "A/dm²")
			r.near(p+"current", x.amps, "A")
			r.near(p+"time", x.minutes, "min")
			r.near(p+"charge", x.amps*x.minutes, "A·min")
			r.near(p+"efficiency", 100*(c.low+c.high)/2, "%")
			r.near(p+"average_thickness", x.mean, "µm")
			r.near(p+"thinnest", x.mean*ratio, "µm")
			r.near(p+"deposit_mass", x.mg, "mg")
			r.near(p+"metal_mass", x.mg*c.fine, "mg")
			r.near(p+"metal_left", c.content*c.volume-x.mg*c.fine/1000, "g")
			r.near(p+"content_left", c.content-x.mg*c.fine/1000/c.volume, "g/L")

			// A low efficiency plates longer, or thinner where the time is given.
			slow, fast := c.lay(job.area, ratio, credit, c.low), c.lay(job.area, ratio, credit, c.high)
			if c.j == 0 { // the rectifier stands where the middle efficiency puts it
				set := c
				set.j, set.um = x.j, 0
				slow, fast = set.lay(job.area, ratio, credit, c.low), set.lay(job.area, ratio, credit, c.high)
			}
			if c.low < c.high {
				r.near(p+"spread.efficiency.low", 100*c.low, "%")
				r.near(p+"spread.efficiency.high", 100*c.high, "%")
				r.near(p+"spread.time.low", fast.minutes, "min")
				r.near(p+"spread.time.high", slow.minutes, "min")
				r.near(p+"spread.thinnest.low", slow.mean*ratio, "µm")
				r.near(p+"spread.thinnest.high", fast.mean*ratio, "µm")
				r.near(p+"spread.metal_mass.low", slow.mg*c.fine, "mg")
				r.near(p+"spread.metal_mass.high", fast.mg*c.fine, "mg")
			}
			below = x.mean * ratio
			minutes, charge = minutes+x.minutes, charge+x.amps*x.minutes
			low, high = low+fast.minutes, high+slow.minutes
			joules += c.volts * x.amps * x.minutes * sixty
			most = max(most, c.top*job.area/100*(1-c.low))
			if _, ok := totals[c.metal]; !ok {
				met = append(met, c.metal)
			}
			s := totals[c.metal]
			totals[c.metal] = total{s.mean + x.mean, s.thinnest + x.mean*ratio, s.mg + x.mg, s.fine + x.mg*c.fine}

			// What clings to the load, and what a drag-out tank brings back of it.
			drips := c.content * job.drag
			lost, dries := drips, job.dry
			if c.dry > 0 {
				dries = c.dry
			}
			m := fmt.Sprintf("rinsing.metals.%d.", precious)
			if c.metal != "Ni" {
				precious++
				r.near(m+"low", drips, "mg")
				r.near(m+"high", drips, "mg")
			}
			switch {
			case c.onward:
				lost = 0
				r.near(m+"brought_back", 0, "%")
			case c.dragOut:
				share := back(job.drag, job.tank*1000, job.loads, job.loads*dries)
				lost = drips * (1 - share)
				r.near(m+"brought_back", 100*share, "%")
				r.near(m+"poured", job.loads*dries, "mL")
			}
			if c.metal != "Ni" {
				r.near(m+"lost", lost, "mg")
			}

			b := fmt.Sprintf("baths.%d.", i)
			gone := lost
			if c.onward {
				gone = drips
			}
			r.near(b+"before", c.content, "g/L")
			r.near(b+"charge", x.amps*x.minutes, "A·min")
			r.near(b+"coat", x.mg*c.fine, "mg")
			r.near(b+"drips", gone, "mg")
			need := gone
			if !c.soluble {
				need += x.mg * c.fine
			}
			if carried > 0 {
				r.near(b+"gained", carried, "mg")
			}
			need = max(need-carried, 0)
			r.near(b+"after", c.content-need/1000/c.volume, "g/L")
			r.near(b+"drawn", 100*need/1000/(c.content*c.volume), "%")
			if need > 0 {
				r.near(b+"salt_metal", need/1000, "g")
				r.near(b+"salt_mass", need/1000*c.salt, "g")
				r.near(b+"loads", math.Floor(0.1*c.content*c.volume*1000/need), "")
			}
			carried = 0
			if c.onward {
				carried = drips
			}
		}
		r.near("area", job.area, "cm²")
		r.near("plating_time", minutes, "min")
		r.near("charge", charge, "A·min")
		for i, metal := range met {
			p := fmt.Sprintf("metals.%d.", i)
			if got := r.at(p + "metal"); got != metal {
				t.Errorf("%s: metal %d is %v, want %s", name, i+1, got, metal)
			}
			r.near(p+"average_thickness", totals[metal].mean, "µm")
			r.near(p+"thinnest", totals[metal].thinnest, "µm")
			r.near(p+"deposit_mass", totals[metal].mg, "mg")
			r.near(p+"metal_mass", totals[metal].fine, "mg")
		}
		// The line: stays, and 20 s for each tank.
		handling := float64(job.tanks) * 20 / 60
		line := minutes
		for _, s := range job.stays {
			low, high, line = low+s[0], high+s[1], line+(s[0]+s[1])/2
		}
		r.near("line_time.low", low+handling, "min")
		r.near("line_time.typical", line+handling, "min")
		r.near("line_time.high", high+handling, "min")
		// Hydrogen at 25 °C and one atmosphere, and air that keeps it below 1 %.
		for _, c := range job.cleaning {
			most = max(most, c.high*job.area/100)
			joules += c.volts * (c.low + c.high) / 2 * job.area / 100 * c.minutes * sixty
		}
		gas := most / (2 * 96485.33212) * 8.314462618 * 298.15 / 101325 * 3600
		r.near("hydrogen.hydrogen_m3_per_h", gas, "")
		r.near("hydrogen.air_m3_per_h", gas*99, "")
		r.near("rinsing.carried_low", job.drag, "mL")
		r.near("rinsing.carried_high", job.drag, "mL")
		// Two stages of counterflow: 1 + q + q² = 1000.
		r.near("rinsing.water", job.drag*(math.Sqrt(1+4*999.0)-1)/2, "mL")
		for i, c := range job.layers {
			p, x := fmt.Sprintf("tanks.%d.coat.power.", r.tankOf(i)), job.result(name, i, 0)
			r.near(p+"low", c.voltsLow*x.amps, "W")
			r.near(p+"high", c.volts*x.amps, "W")
			// All heat stays in the water, for the longest time.
			r.near(p+"warms", c.volts*x.amps*job.result(name, i, -1).minutes*sixty/(c.volume*4186), "K")
		}
		r.bill(totals, joules/0.8/3.6e6+job.heating, line+handling)
		if r.n < 75 {
			t.Errorf("%s: only %d figures held", name, r.n)
		}
	}
}

// result is a coat by hand at the middle, low (-1) or high (+1) efficiency.
func (job byHand) result(name string, i, end int) ran {
	ratio, below := thinnestToAverage(name), 0.0
	if i > 0 && job.layers[i].below {
		below = job.result(name, i-1, 0).mean * ratio
	}
	c := job.layers[i]
	eff := (c.low + c.high) / 2
	if c.j == 0 || end == 0 {
		return c.lay(job.area, ratio, below, eff)
	}
	return c.lay(job.area, ratio, below, map[int]float64{-1: c.low, 1: c.high}[end])
}

var leading = regexp.MustCompile(`^[0-9.]+`)

// bill holds what the price is made of: metal, electricity, minutes. Each basis
// is printed with few digits.
func (r *reader) bill(totals map[string]struct{ mean, thinnest, mg, fine float64 }, kWh, minutes float64) {
	seen := map[string]bool{}
	for _, l := range r.at("price.lines").([]any) {
		line := l.(map[string]any)
		kind, _ := line["kind"].(string)
		metal, _ := line["name"].(string)
		low, high := 0.0, 0.0
		switch {
		case kind == "deposit metal":
			low, high = totals[metal].fine/1000-0.00005, totals[metal].fine/1000+0.00005
		case kind == "electricity":
			low, high = kWh, kWh+0.001 // rounded up
		case metal == "work at the line":
			low, high = minutes-0.05, minutes+0.05
		default:
			continue
		}
		seen[kind] = true
		got, err := strconv.ParseFloat(leading.FindString(line["basis"].(string)), 64)
		if err != nil || !(got >= low-1e-9 && got <= high+1e-9) {
			r.t.Errorf("%s %s %s: %v, by hand %v to %v", r.name, kind, metal, line["basis"], low, high)
		}
	}
	if len(seen) != 3 {
		r.t.Errorf("%s: of the bill only %v", r.name, seen)
	}
}
