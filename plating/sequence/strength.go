package sequence

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/laydown/plating"
	"example.com/laydown/units"
)

const mpa = units.Megapascal

// High strength begins where the practices begin: steel of less needs neither
// stress relief nor bake.
const (
	highStrength units.Pressure = 1000 * mpa // [ASTMB849], [ASTMB850]
	mostBaked    units.Pressure = 1800 * mpa // the last row of the table that was read
	approval     units.Pressure = 1517 * mpa // 220 000 psi [MIL45204]
)

// No steel is weaker or stronger (from memory): what lies outside is a slip of the
// unit or the point.
const (
	softest units.Pressure = 200 * mpa
	hardest units.Pressure = 4000 * mpa
)

// CheckTensile returns a [*units.RangeError] for a tensile strength that no steel
// has: below 200 MPa or above 4000 MPa.
//
// Source: from memory.
func CheckTensile(p units.Pressure) error {
	if err := units.Positive("tensile strength", p); err != nil {
		return err
	}
	if p < softest || p > hardest {
		return &units.RangeError{Field: "tensile strength", Value: p.Text(mpa, -1), Low: softest.Text(mpa, 0),
			High: hardest.Text(mpa, 0), Source: recall}
	}
	return nil
}

// bakeWithin is how soon after the last current the bake begins: "most
// specifications require" three hours, others four [ASTMB850].
const bakeWithin = 3 * units.Hour

// The bake after plating runs at 190 to 220 °C [ASTMB850].
func bakeLow() units.Temperature  { return units.Celsius(190) }
func bakeHigh() units.Temperature { return units.Celsius(220) }

// A BakeClass is one row of the table of bakes by strength.
type BakeClass struct {
	Above, Most units.Pressure // actual tensile strength: over Above, at most Most
	Least       units.Duration // of the bake
}

// BakeClasses returns the shortest bake after plating, at 190 to 220 °C, by the
// tensile strength of the steel. Steel of at most 1000 MPa needs none; above
// 1800 MPa the table that was read ends.
//
// Source: [ASTMB850], second hand.
func BakeClasses() []BakeClass {
	row := func(above, most units.Pressure, hours units.Duration) BakeClass {
		return BakeClass{above * mpa, most * mpa, hours * units.Hour}
	}
	return []BakeClass{row(1000, 1100, 8), row(1100, 1200, 10), row(1200, 1300, 12), row(1300, 1400, 14),
		row(1400, 1500, 16), row(1500, 1600, 18), row(1600, 1700, 20), row(1700, 1800, 22)}
}

// BakeFor returns the shortest bake after plating for a tensile strength: 0 for
// steel that needs none.
//
// Errors: a [*units.ValueError] for a strength that is not positive; a
// [*units.RangeError] above 1800 MPa, where no bake was read.
//
// Source: [ASTMB850], second hand.
func BakeFor(tensile units.Pressure) (units.Duration, error) {
	if err := units.Positive("tensile strength", tensile); err != nil {
		return 0, err
	}
	if tensile <= highStrength {
		return 0, nil
	}
	for _, c := range BakeClasses() {
		if tensile <= c.Most*(1+1e-12) {
			return c.Least, nil
		}
	}
	return 0, &units.RangeError{Field: "tensile strength", Value: tensile.Text(mpa, 0), Low: "0 MPa",
		High: mostBaked.Text(mpa, 0), Source: "ASTMB850"}
}

// A hardness is one row of a conversion table.
type hardness struct{ rockwell, vickers, tensile float64 } // HRC, HV, MPa

// hardnessTables returns two conversion tables for plain carbon and low-alloy
// steel. They differ by up to 105 MPa.
//
// Source: [ISO18265], [SAEJ417], both second hand.
func hardnessTables() [2][]hardness {
	return [2][]hardness{{
		{27.1, 280, 900}, {29.2, 295, 950}, {31.0, 310, 995}, {32.2, 320, 1030}, {34.4, 340, 1095},
		{36.6, 360, 1155}, {37.7, 370, 1190},
		{40.8, 400, 1290}, {43.6, 430, 1385}, {46.1, 460, 1485}, {48.4, 490, 1595}, {50.5, 520, 1700},
		{52.3, 550, 1810},
		{54.1, 580, 1920},
		{55.2, 600, 1995},
	}, {
		{44, 434, 1435}, {45, 446, 1480}, {46, 458, 1530}, {47, 471, 1580}, {48, 484, 1635}, {49, 498, 1695},
		{50, 513, 1760},
		{51, 528, 1820},
		{52, 544, 1880}, {53, 560, 1950}, {54, 577, 2015}, {55, 595, 2075},
	}}
}

// TensileFromHardness returns the tensile strength that a hardness of plain
// carbon or low-alloy steel stands for: "45 HRC" or "450 HV". Of two published
// tables it takes the higher, so that the bake is rather too long. Below 27 HRC
// or 280 HV it returns 900 MPa, the strength of the softest row.
//
//	R = R₁ + (R₂ - R₁)·(h - h₁)/(h₂ - h₁)
//
//	R  tensile strength                [Pa]
//	h  hardness, HRC or HV             20 to 55 HRC, 60 to 595 HV
//
// Accuracy: the tables differ by up to 105 MPa; hardness stands for strength
// only roughly.
//
// Errors: a [*units.ValueError] for text that is no hardness, one above the
// tables, or one below the scale.
//
// Source: [ISO18265], [SAEJ417], second hand.
func TensileFromHardness(text string) (units.Pressure, error) {
	bad := func(err error) (units.Pressure, error) {
		return 0, &units.ValueError{Field: "hardness", Value: strconv.Quote(units.Clip(text)),
			Need: `a hardness as "45 HRC" or "450 HV", from 20 to 55 HRC or 60 to 595 HV`, Err: err}
	}
	fields := strings.Fields(text)
	if len(fields) != 2 {
		return bad(units.ErrSyntax)
	}
	h, err := strconv.ParseFloat(fields[0], 64)
	if err != nil || !(h > 0) {
		return bad(units.ErrSyntax)
	}
	var pick func(hardness) float64
	least := 0.0 // from memory: where the scale of Rockwell C begins, and soft iron
	switch strings.ToUpper(fields[1]) {
	case "HRC":
		pick, least = func(r hardness) float64 { return r.rockwell }, 20
	case "HV":
		pick, least = func(r hardness) float64 { return r.vickers }, 60
	default:
		return bad(units.ErrUnknownUnit)
	}
	if h < least {
		return bad(units.ErrOutOfRange)
	}
	best, above := 0.0, true
	for _, table := range hardnessTables() {
		v, inside := interpolate(table, h, pick)
		best, above = max(best, v), above && !inside
	}
	if above {
		return bad(units.ErrOutOfRange)
	}
	return units.Pressure(best) * mpa, nil
}

// interpolate reads a table of rising hardness; below it the first row counts
// for the longer table, nothing for the other. It reports whether h is not above it.
func interpolate(table []hardness, h float64, pick func(hardness) float64) (float64, bool) {
	first, last := table[0], table[len(table)-1]
	switch {
	case h > pick(last):
		return 0, false
	case h < pick(first):
		if first.tensile <= 900 {
			return first.tensile, true
		}
		return 0, true
	}
	for i := 1; i < len(table); i++ {
		if a, b := table[i-1], table[i]; h <= pick(b) {
			return a.tensile + (b.tensile-a.tensile)*(h-pick(a))/(pick(b)-pick(a)), true
		}
	}
	return last.tensile, true
}

// hardenable reports whether the base metal may be steel of high strength.
func (s Substrate) hardenable() bool { return s.steel() || s == StainlessSteel }

// askStrength reports whether the strength of the steel is a question: steel that
// is high in carbon or said to be of high strength, without a figure.
func (p *Piece) askStrength() bool {
	return p.Tensile == 0 && (p.Substrate == HighCarbonSteel || p.HighStrength && p.Substrate.hardenable())
}

// embrittles reports whether hydrogen may crack the piece: steel of over
// 1000 MPa, and what may be so.
func (p *Piece) embrittles() bool {
	return p.askStrength() || p.Substrate.hardenable() && p.Tensile > highStrength
}

// howStrong lists what tells the strength of steel.
func howStrong() []string {
	return []string{
		`have its hardness measured and give it: "hardness": "45 HRC", or "tensile_strength": "1450 MPa"`,
		"read the drawing or the maker's sheet: a spring, an arbor, a pinion or a blade is hardened until the " +
			"opposite is shown",
		"where nobody can tell and the part carries load, do not plate it",
	}
}

// strength finds steel whose strength is a question, and strength that the practices do not
// reach. Both stop: a bake too short looks like a bake, and the part breaks in use.
func (r *review) strength() {
	p := &r.piece
	switch {
	case !p.embrittles() || len(r.coats) == 0:
	case p.askStrength():
		r.add(CodeStrength, plating.SeverityStop, "ASTMB850", "the strength of the steel is not given",
			"stress relief and the hours of the bake go by the tensile strength: 8 h at 1050 MPa, 22 h at 1750 MPa",
			howStrong()[0]+"; "+howStrong()[2])
	case p.Tensile > mostBaked:
		r.add(CodeStrength, plating.SeverityStop, "ASTMB850", "steel of "+p.Tensile.Text(mpa, 0),
			"the table of bakes that was read ends at "+mostBaked.Text(mpa, 0),
			"do not plate it until whoever is responsible for the part has specified the bake")
	case p.Tensile >= approval && p.Finish.gold():
		r.add(CodeStrength, plating.SeverityCaution, "MIL45204", "gold on steel of "+p.Tensile.Text(mpa, 0),
			"at 220 000 psi and above engineering gold is not plated without approval",
			"ask whoever is responsible for the part")
	}
}

// relief finds hard steel that is not freed of its stresses before it is cleaned.
func (r *review) relief() {
	p := &r.piece
	if !p.embrittles() || p.askStrength() || p.Relieved || len(r.coats) == 0 {
		return
	}
	for i := range r.tanks {
		t := &r.tanks[i]
		if t.Kind == Relieve {
			r.relieved(i)
			return
		}
		if t.solution() {
			break
		}
	}
	r.add(CodeNoRelief, plating.SeverityWarning, "ASTMB849", "steel of "+p.Tensile.Text(mpa, 0)+
		" goes into the first cleaner without stress relief",
		"machined, ground, cold-formed or straightened steel of 1000 MPa and more cracks with the first hydrogen",
		"heat it at 190 to 230 °C before it is cleaned, below its tempering temperature; if that is done, say so")
}

// mercurial reports whether a tank names mercury, by any of its names.
func (t *Tank) mercurial() bool {
	text := strings.ToLower(strings.Join(t.names(), " "))
	return t.Bath.Metal == "Hg" || slices.ContainsFunc([]string{"mercur", "quicksilver", "quickening",
		"quicking", "amalgam", "quecksilber", "calomel", "corrosive sublimate", "hg(", "hgcl2", "hgo", "hg "},
		func(w string) bool { return strings.Contains(text, w) })
}

// heats reports whether the piece grows hotter in a tank than in warm air: in an oven,
// above 100 °C, in a flame or on a hot plate.
func (t *Tank) heats() bool {
	q := &t.Process
	if t.Kind != Dry {
		return t.Kind.oven()
	}
	return max(q.Temperature.Low, q.Temperature.High) > units.Celsius(100) ||
		slices.ContainsFunc([]string{"flame", "torch", "burner", "hot plate", "oven"},
			func(w string) bool { return strings.Contains(strings.ToLower(t.Name+" "+q.Chemistry), w) })
}

// solventHeated finds a solvent that goes into an oven or a flame on the piece.
//
// The walk carries wet: solvent goes on until water that moves, another solution or drying
// in air takes it.
func (r *review) solventHeated() {
	wet := -1
	for i := range r.tanks {
		t := &r.tanks[i]
		switch {
		case t.heats() && wet >= 0:
			r.add(CodeClash, plating.SeverityStop, recall,
				"the piece goes from "+r.tanks[wet].title()+" into "+t.title()+", wet with solvent",
				"solvent vapour burns, and in a closed oven it explodes",
				"let it dry off in moving air away from flame and spark first, or rinse it off", wet, i)
			wet = -1
		case t.hazards().Has(plating.HazardOrganic) && t.solution():
			wet = i
		case t.Kind == Dry, t.Kind.rinses() && t.Rinse.Flow.moves(), t.solution():
			wet = -1
		}
	}
}

// mercury finds an oven or a flame behind a tank with mercury.
//
// A fire-gilt clock case may still hold mercury. One tank with mercury marks every oven
// behind it, rinsed or not: mercury that went into the metal does not rinse off. From
// memory.
func (r *review) mercury() {
	for i := range r.tanks {
		t := &r.tanks[i]
		if !t.mercurial() {
			continue
		}
		for k := i + 1; k < len(r.tanks); k++ {
			if r.tanks[k].heats() {
				r.add(CodeMercury, plating.SeverityWarning, recall, r.tanks[k].title()+" behind "+t.title(),
					"heat drives mercury vapour out of the piece; the vapour is poisonous and has no smell",
					"do not heat it; heat nothing that mercury has touched", i, k)
				return
			}
		}
	}
}

// heat returns the ends of an oven's temperature and the shortest time in it; 0 where
// they are not given.
func (t *Tank) heat() (low, high units.Temperature, shortest units.Duration) {
	q := &t.Process
	low, high = q.Temperature.Low, max(q.Temperature.High, q.Temperature.Low)
	if low == 0 {
		low = high
	}
	if shortest = q.Time.Low; t.Time > 0 {
		shortest = t.Time
	}
	return low, high, shortest
}

// relieved judges how hot and how long the stress relief is.
func (r *review) relieved(i int) {
	t := &r.tanks[i]
	low, high, shortest := t.heat()
	warn := func(source, what string) {
		r.add(CodeNoRelief, plating.SeverityWarning, source, t.title()+what,
			"stresses that stay in hard steel crack it with the first hydrogen",
			"heat it at 190 to 230 °C for an hour or more, below its tempering temperature", i)
	}
	switch {
	case high == 0 || shortest == 0:
		warn("ASTMB849", " does not say how hot and how long")
	case low < bakeLow()-0.5:
		warn("ASTMB849", " at "+low.Text(units.CelsiusScale, 0)+", which is too cool for stress relief")
	case high > units.Celsius(230)+0.5:
		warn("ASTMB849", " at "+high.Text(units.CelsiusScale, 0)+", which is above the practice for stress relief")
	case shortest < units.Hour*(1-1e-9):
		warn(recall, " for "+shortest.String()+", which is too short for stress relief")
	}
}

// hydrogen finds hard steel that would keep its hydrogen, and a bake that the piece does
// not stand.
//
//	H⁺ + e⁻ → H, which goes into the iron before it can leave as H₂
//
// Steel over 1000 MPa cracks from it, days later, under load. Four things are asked on the
// walk:
//
//	before the first cleaner   stress relief, or it was done [ASTMB849]
//	cleaners and dips          none cathodic [ASTMB849], none long in strong acid (from memory)
//	after the last coat        a bake, hot and long enough by the strength, within 3 h [ASTMB850]
//	after the bake             nothing that charges hydrogen again (from memory)
//
// The plating tanks charge hydrogen too: that cannot be helped, and is what the bake is
// for. Whatever the metal, an oven must not melt it: 120 °C for solder, pewter, paint and
// zinc castings.
func (r *review) hydrogen() {
	if r.piece.Substrate.melts() {
		for i := range r.tanks {
			if t := &r.tanks[i]; t.Kind == Bake && (!t.Process.Temperature.Given() || max(t.Process.Temperature.High,
				t.Process.Temperature.Low) > bakeMost) {
				r.add(CodeBakeMelts, plating.SeverityWarning, recall, r.piece.Substrate.String()+" in the oven",
					"from about 120 to 180 °C solder, pewter and paint soften or melt, and zinc castings blister",
					"leave the bake out; take the hard part out and plate it by itself", i)
			}
		}
	}
	r.mercury()
	r.strength()
	r.relief()
	if !r.piece.embrittles() || len(r.coats) == 0 {
		return
	}
	for i := range r.tanks {
		t := &r.tanks[i]
		switch {
		case (t.Kind.cleans() || t.Kind == Activate) && t.Process.Polarity == Cathodic:
			r.add(CodeEmbrittle, plating.SeverityWarning, "ASTMB849", t.title()+" on steel prone to hydrogen cracking",
				"cathodic treatment in alkaline or acid solution drives hydrogen into it",
				"clean anodically, dip without current",
				i)
		case t.Kind == Activate && t.strongAcid() && (t.immersion() == 0 || t.immersion() > mayPickle):
			r.add(CodeEmbrittle, plating.SeverityWarning, recall,
				t.title()+lasting(t)+": steel prone to hydrogen cracking",
				"acid that dissolves iron drives hydrogen into the steel for as long as it stays in",
				"dip it for a few seconds, a minute at most, or remove scale by blasting", i)
		}
	}
	r.bake()
}

// mayPickle is how long hard steel may stay in strong acid: the practice says a short
// dip; the minute is from memory.
const mayPickle units.Duration = 60

// chargedAgain finds hydrogen that is driven into the steel behind the bake.
func (r *review) chargedAgain(bake int) {
	for i := bake + 1; i < len(r.tanks); i++ {
		t := &r.tanks[i]
		if t.Kind == Activate && t.hazards().Has(plating.HazardAcid) || t.solution() && t.Process.Polarity == Cathodic {
			r.add(CodeNoBake, plating.SeverityWarning, recall, t.title()+" behind the bake of hard steel",
				"it drives hydrogen in again, and the steel cracks days later, under load",
				"do it before the bake, or bake again after it", bake, i)
			return
		}
	}
}

// bake judges the bake after the last coat by the strength of the steel.
//
// The wait is the sum of the times in tanks and in the air behind the last coat. It counts
// the longest time of each tank, since hydrogen does not wait. Half a kelvin is allowed for
// rounding in other scales.
func (r *review) bake() {
	least, err := BakeFor(r.piece.Tensile)
	if err != nil {
		return // the strength is a question, or beyond the table: said already
	}
	last := r.coats[len(r.coats)-1].tank
	want := fmt.Sprintf("bake at 190 to 220 °C for %s or more, within %s of the last current",
		least.Text(units.Hour, 0), bakeWithin.Text(units.Hour, 0))
	const cracks = "hydrogen stays in the steel and cracks it days later, under load"
	var waits units.Duration
	for i := last; i < len(r.tanks); i++ {
		t := &r.tanks[i]
		if t.Kind != Bake {
			if waits += t.Wait; i != last {
				waits += t.immersion()
			}
			continue
		}
		low, high, shortest := t.heat()
		switch {
		case shortest == 0 || high == 0:
			r.add(CodeNoBake, plating.SeverityWarning, "ASTMB850", t.title()+" does not say how hot and how long",
				cracks, want, i)
		case shortest < least*(1-1e-9):
			r.add(CodeNoBake, plating.SeverityWarning, "ASTMB850", t.title()+" for "+shortest.Text(units.Hour, 1)+
				", which is too short for steel of "+r.piece.Tensile.Text(mpa, 0), cracks, want, i)
		case low < bakeLow()-0.5:
			r.add(CodeNoBake, plating.SeverityWarning, "ASTMB850", t.title()+" at "+low.Text(units.CelsiusScale, 0)+
				", which is too cool", cracks, want, i)
		case high > bakeHigh()+0.5:
			r.add(CodeNoBake, plating.SeverityWarning, "ASTMB850", t.title()+" at "+high.Text(units.CelsiusScale, 0)+
				", which is above the range of the practice", "above its tempering temperature the steel softens",
				want, i)
		case waits > bakeWithin:
			r.add(CodeNoBake, plating.SeverityWarning, "ASTMB850", t.title()+" begins "+waits.Text(units.Hour, 1)+
				" after the last coat", cracks, want, i)
		}
		r.chargedAgain(i)
		return
	}
	r.add(CodeNoBake, plating.SeverityWarning, "ASTMB850", "hard steel is not baked after plating", cracks, want, last)
}
