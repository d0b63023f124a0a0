package job_test

import (
	"fmt"
	"math/rand/v2"
	"strings"

	"github.com/shopspring/decimal"

	"example.com/laydown/alloys"
	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/plating/bath"
	"example.com/laydown/plating/job"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/plating/price"
	"example.com/laydown/plating/rinse"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/plating/shape"
	"example.com/laydown/plating/throwing"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// A maker makes jobs with every field that a file can give, in figures of all digits.
type maker struct{ *rand.Rand }

func (m maker) yes(share float64) bool { return m.Float64() < share }

// between gives a value that no short number has.
func between[Q units.Quantity](m maker, low, high Q) Q { return low + (high-low)*Q(m.Float64()) }

func pick[T any](m maker, list ...T) T { return list[m.IntN(len(list))] }

func maybe[T any](m maker, v T) T {
	if m.yes(0.5) {
		return v
	}
	var none T
	return none
}

func (m maker) word() string {
	return pick(m, "bezel", "hand, minute", "Glocke <innen> & außen", `a "quoted" word`, "plain text", "№ 7") +
		fmt.Sprint(m.IntN(90))
}

// said is where a figure comes from: said with it, or not at all.
func (m maker) said() (string, origin.Seen) {
	switch m.IntN(4) {
	case 0:
		return origin.Memory, origin.FromMemory
	case 1:
		return "bench book", pick(m, origin.SecondHand, origin.Computed, origin.Published, origin.Given, origin.Measured)
	}
	return "", 0
}

func (m maker) words() bath.Words {
	w := bath.Words{Text: m.word()}
	w.Source, w.Seen = m.said()
	return w
}

// figure gives one value or a band, in its long form or the short one.
func figure[Q units.Quantity](m maker, low, high Q) bath.Range[Q] {
	r := bath.Range[Q]{Low: between(m, low, high), High: high, Note: maybe(m, "as printed")}
	r.Source, r.Seen = m.said()
	if m.yes(0.3) {
		r = bath.Range[Q]{Low: r.Low, High: r.Low}
	}
	return r
}

// limit may have one end alone.
func limit[Q units.Quantity](m maker, low, high Q) bath.Range[Q] {
	r := figure(m, low, high)
	if m.yes(0.3) {
		r.Low, r.High = 0, high
	}
	return r
}

func (m maker) parts() []job.Part {
	var list []job.Part
	for range 1 + m.IntN(3) {
		p := job.Part{Name: maybe(m, m.word()), Count: 1 + m.IntN(50)}
		switch m.IntN(5) {
		case 0, 1:
			p.Area = between(m, 2, 300*units.SquareCentimetre)
		case 2:
			p.Mesh = &job.MeshFile{Named: mesh.Named{File: "block.ply", Unit: mesh.FileUnit{Length: units.Millimetre}}}
			if m.yes(0.5) {
				p.Mesh.Repair, p.Mesh.Weld = true, maybe(m, 0.001*units.Millimetre)
			}
		default:
			p.Shape = &job.Shape{Piece: m.body(0)}
		}
		p.Masked = maybe(m, between(m, 0, units.SquareMillimetre/100))
		list = append(list, p)
	}
	return list
}

func (m maker) body(depth int) shape.Body {
	const mm = units.Millimetre
	size := func() units.Length { return between(m, 5*mm, 60*mm) }
	faces, ends := pick(m, shape.BothFaces, shape.OneFace), m.IntN(3)
	kinds := 15
	if depth > 1 {
		kinds = 14 // no sums in sums in sums
	}
	switch m.IntN(kinds) {
	case 0:
		return m.drilled(shape.Plate{Length: size(), Width: size(), Thickness: maybe(m, mm), Faces: faces}, faces)
	case 1:
		return m.drilled(shape.Disc{Diameter: size(), Thickness: maybe(m, mm), Faces: faces}, faces)
	case 2:
		d := size()
		return m.drilled(shape.Ring{Outer: d, Inner: d / 4, Thickness: maybe(m, mm), Faces: faces}, faces)
	case 3:
		return shape.Cylinder{Diameter: size(), Length: size(), OpenEnds: ends}
	case 4:
		d := size()
		return shape.Tube{Outer: d, Inner: d / 3, Length: size(), OpenEnds: ends,
			Sides: pick(m, shape.BothSides, shape.OutsideOnly, shape.InsideOnly)}
	case 5:
		return shape.Cone{BaseDiameter: size(), TopDiameter: maybe(m, mm), Height: size(), OpenBase: m.yes(0.5),
			OpenTop: m.yes(0.5)}
	case 6:
		return shape.Sphere{Diameter: size()}
	case 7:
		c := shape.Cap{Height: between(m, mm, 2*mm), OpenBase: m.yes(0.5)}
		if c.BaseDiameter = maybe(m, size()); c.BaseDiameter == 0 {
			c.SphereDiameter = size()
		}
		return c
	case 8:
		d := size()
		return shape.Torus{CentreDiameter: d, TubeDiameter: d / 5}
	case 9:
		return shape.HexBar{AcrossFlats: size(), Length: size(), OpenEnds: ends}
	case 10:
		return shape.Wire{Diameter: between(m, mm/10, mm), Length: size()}
	case 11:
		return shape.Thread{Diameter: between(m, 5*mm, 10*mm), Pitch: mm, Length: size()}
	case 12:
		c := shape.Chain{WireDiameter: mm, Centreline: between(m, 10*mm, 20*mm), Links: 1 + m.IntN(99)}
		if m.yes(0.5) {
			c.Links, c.Length, c.LinkPitch = 0, size(), 4*mm
		}
		return c
	case 13:
		return shape.ScrewHead{Style: pick(m, shape.CheeseHead, shape.PanHead, shape.CountersunkHead),
			Diameter: between(m, 5*mm, 9*mm), Height: 2 * mm, Shank: maybe(m, 2*mm)}
	}
	var all shape.Assembly
	for range 1 + m.IntN(3) {
		all = append(all, m.body(depth+1))
	}
	return all
}

// drilled may put small holes into a flat body.
func (m maker) drilled(p shape.Body, faces shape.Faces) shape.Body {
	if m.yes(0.4) {
		return p
	}
	d := shape.Drilled{Piece: p}
	for range 1 + m.IntN(2) {
		h := shape.Hole{Diameter: units.Millimetre / 10, Depth: maybe(m, units.Millimetre/2), Count: m.IntN(4),
			Blind: m.yes(0.3), Faces: faces}
		if !h.Blind {
			h.Depth *= 2 // the thickness of the body
		}
		h.Bare = h.Depth == 0 || m.yes(0.3)
		d.Holes = append(d.Holes, h)
	}
	return d
}

func (m maker) evenness() job.Evenness {
	e := job.Evenness{Uncertainty: maybe(m, between(m, units.Ratio(0.01), 0.3))}
	switch m.IntN(3) {
	case 0:
		e.MinToAverage, e.Basis = between(m, units.Ratio(0.1), 1), maybe(m, m.word())
	case 1:
		for range 3 + m.IntN(4) {
			e.Readings = append(e.Readings, between(m, units.Micrometre, 3*units.Micrometre))
		}
	default:
		e.ShapeClass = throwing.SmoothRound + throwing.Class(m.IntN(int(throwing.OpenRecess-throwing.SmoothRound)+1))
	}
	return e
}

func salt(text string) faraday.Formula {
	f, err := faraday.ParseFormula(text)
	if err != nil {
		panic(err)
	}
	return f
}

// own is a bath of the shop's own, with all that may be said of one.
func (m maker) own() bath.Bath {
	b := bath.Bath{Key: maybe(m, "ours"), Name: m.word() + ", gold", Metal: "Au", Valence: maybe(m, 1),
		Use:  bath.Use(m.IntN(8)),
		Like: maybe(m, "gold-acid-cobalt"), Hazards: plating.HazardCyanide | maybe(m, plating.HazardAcid|plating.HazardHot),
		Salt: maybe(m, salt("KAu(CN)2")), PH: maybe(m, figure(m, plating.PH(4), 4.8)),
		Content:        maybe(m, limit(m, 4*units.GramPerLitre, 12*units.GramPerLitre)),
		Temperature:    maybe(m, limit(m, units.Celsius(20), units.Celsius(60))),
		CurrentDensity: maybe(m, limit(m, 0.2*units.AmperePerSquareDecimetre, 2*units.AmperePerSquareDecimetre)),
		Volts:          maybe(m, limit(m, 2*units.Volt, 6*units.Volt)),
		Time:           maybe(m, limit(m, units.Minute, 30*units.Minute)),
		MaxThickness:   maybe(m, limit(m, units.Micrometre, 9*units.Micrometre)),
		AnodeKind:      pick(m, bath.AnodeNotGiven, bath.SolubleAnode, bath.InsolubleAnode), Anode: maybe(m, m.words()),
		AnodeRatio: maybe(m, limit(m, units.Ratio(1), 4)), Agitation: maybe(m, m.words()), LiveEntry: m.yes(0.3),
		Look: maybe(m, []string{m.word(), m.word()}), Remarks: maybe(m, []bath.Words{m.words(), m.words()}),
		Makeup: maybe(m, []bath.Ingredient{{Name: "potassium citrate", Range: limit(m, 20*units.GramPerLitre,
			90*units.GramPerLitre)}}),
		Volume: maybe(m, between(m, units.Litre, 20*units.Litre)), DrawLimit: maybe(m, between(m, units.Ratio(0.01), 0.3)),
		Vessel: plating.Vessel(m.IntN(len(plating.VesselWords()))), Source: maybe(m, "demo data")}
	if m.yes(0.3) {
		b.Temperature.Set, b.Content.Set = units.Celsius(40), between(m, 5*units.GramPerLitre, 8*units.GramPerLitre)
	}
	if m.yes(0.5) {
		v := between(m, 0, 50*units.Millilitre)
		b.Evaporation = pick(m, new(units.Volume), &v)
	}
	if m.yes(0.5) {
		seen := pick(m, origin.FromMemory, origin.Given, origin.Measured)
		b.Seen = &seen
	}
	if m.yes(0.5) {
		b.Density = figure(m, 17*units.GramPerCubicCentimetre, 19*units.GramPerCubicCentimetre)
	}
	if m.yes(0.4) {
		b.Deposit = []bath.Constituent{{Symbol: "Au", Valence: 1, Share: 0.99}, {Symbol: "Co", Valence: 2, Share: 0.0075},
			{Share: 0.0025}}
		b.Valence = 0
		b.Composition = maybe(m, m.words())
	}
	if m.yes(0.6) {
		b.Efficiency = figure(m, units.Efficiency(0.2), 0.5)
	}
	if m.yes(0.4) || !b.Efficiency.Given() {
		for k := range 1 + m.IntN(2) {
			l := bath.EfficiencyLine{Temperature: units.Celsius(30 + 5*float64(k)), Content: 8 * units.GramPerLitre}
			l.Source, l.Seen = m.said()
			j := units.CurrentDensity(0)
			for range 1 + m.IntN(3) {
				j += between(m, units.CurrentDensity(10), 90)
				p := bath.EfficiencyBand{CurrentDensity: j, Low: between(m, units.Efficiency(0.2), 0.4)}
				p.High = p.Low + maybe(m, units.Efficiency(0.1))
				l.Points = append(l.Points, p)
			}
			b.Lines = append(b.Lines, l)
		}
	}
	return b
}

// fromLibrary is a bath as it stands, of the library or of the shop's own file.
func (m maker) fromLibrary() bath.Bath {
	b := bath.Bath{Library: pick(m, "gold-acid-cobalt", "our-strike"), Salt: maybe(m, salt("KAu(CN)2")),
		Content: maybe(m, bath.Range[units.MassConcentration]{Low: 8, High: 8}), Volume: maybe(m, 5*units.Litre),
		DrawLimit: maybe(m, units.Ratio(0.07)), Vessel: maybe(m, plating.VesselGlass),
		Evaporation: maybe(m, new(units.Volume))}
	b.Temperature.Set = maybe(m, units.Celsius(35))
	return b
}

func (m maker) layers() []job.OwnCoat {
	var list []job.OwnCoat
	for i := range 1 + m.IntN(3) {
		l := job.OwnCoat{Name: fmt.Sprint("coat ", i+1), Role: pick(m, plating.RoleFinish, plating.RoleStrike,
			plating.RoleUnder),
			Evenness: m.evenness(), Area: maybe(m, between(m, units.SquareCentimetre, 9*units.SquareDecimetre)),
			CountBelow: m.yes(0.3)}
		if l.Bath = m.own(); m.yes(0.3) {
			l.Bath = m.fromLibrary()
		}
		if m.yes(0.2) {
			l.Name = ""
		}
		switch m.IntN(4) {
		case 0:
			l.MinThickness, l.Time = between(m, units.Micrometre/10, units.Micrometre),
				between(m, units.Minute, 90*units.Minute)
		case 1:
			l.MinThickness, l.Current = between(m, units.Micrometre/10, units.Micrometre),
				between(m, units.Ampere/10, units.Ampere)
		case 2:
			l.MinThickness, l.CurrentDensity = between(m, units.Micrometre/10, units.Micrometre),
				between(m, units.CurrentDensity(20), 90)
		default:
			l.Time, l.CurrentDensity = between(m, units.Minute, 9*units.Minute), between(m, units.CurrentDensity(20), 90)
		}
		list = append(list, l)
	}
	return list
}

// steps lays each layer, with other tanks around.
func (m maker) steps(layers []job.OwnCoat) []job.OwnTank {
	var list []job.OwnTank
	for i := range layers {
		list = append(list, m.tank(), m.water())
		l := job.OwnTank{Layer: job.LayerRef(layers[i].Name), LiveEntry: m.yes(0.3),
			Wait: maybe(m, between(m, units.Second, 9*units.Second))}
		if l.Layer == "" || m.yes(0.3) {
			l.Layer = job.LayerRef(fmt.Sprint(i + 1))
		}
		list = append(list, l)
	}
	return append(list, m.water(), job.OwnTank{Kind: sequence.Dry, Name: maybe(m, m.word())})
}

func (m maker) water() job.OwnTank {
	s := job.OwnTank{Kind: pick(m, sequence.Rinse, sequence.FinalRinse, sequence.DragOut), Name: maybe(m, m.word()),
		Stages: m.IntN(4), Deionised: m.yes(0.3), Acidified: m.yes(0.3), Station: maybe(m, "B"),
		Wait: maybe(m, between(m, units.Second, 9*units.Second))}
	if m.yes(0.5) {
		f := pick(m, sequence.Still, sequence.Running, sequence.Counterflow, sequence.Spray)
		s.Flow = &f
	}
	return s
}

func (m maker) tank() job.OwnTank {
	h := plating.HazardAcid | maybe(m, plating.HazardHot)
	if m.yes(0.2) {
		h = 0
	}
	s := job.OwnTank{Kind: pick(m, sequence.SoakClean, sequence.Electroclean, sequence.Activate, sequence.Bake),
		Name:  maybe(m, m.word()),
		Holds: m.word(), Does: sequence.Effect(m.IntN(64)), Hazards: &h, PH: maybe(m, figure(m, plating.PH(1), 3)),
		Polarity: pick(m, sequence.Cathodic, sequence.Anodic), Counter: bath.Words{Text: maybe(m, "lead")},
		Agitation:      bath.Words{Text: maybe(m, "move the piece")},
		Look:           maybe(m, []string{"gas over the whole piece"}),
		CurrentDensity: maybe(m, limit(m, units.CurrentDensity(50), 500)),
		Volts:          maybe(m, limit(m, 2*units.Volt, 6*units.Volt)),
		Temperature:    maybe(m, limit(m, units.Celsius(20), units.Celsius(60))),
		Time:           maybe(m, limit(m, units.Second, units.Minute)), Vessel: maybe(m, plating.VesselPlastic)}
	if m.yes(0.5) {
		s.Mild = m.yes(0.5)
		s.Strong = !s.Mild
	}
	return s
}

func (m maker) money() decimal.Decimal { return decimal.New(1+m.Int64N(1e9), -int32(m.IntN(6))) }

func (m maker) share() decimal.Decimal { return decimal.New(1+m.Int64N(9999), -4) }

func (m maker) weighed() alloys.Weighed {
	return alloys.Weighed{Amount: decimal.New(1+m.Int64N(1e6), -4), Unit: alloys.PerGram}
}

func (m maker) price() *job.Price {
	q := &job.Price{LinePerHour: maybe(m, m.money()), Handling: maybe(m, between(m, units.Second, 90*units.Second)),
		Heating:   maybe(m, between(m, units.Joule, 9e7*units.Joule)),
		Rectifier: maybe(m, between(m, units.Efficiency(0.5), 1))}
	o := &q.Order
	o.Currency, _ = price.ParseCurrency(pick(m, "EUR", "JPY", "USD"))
	o.Rounding = pick(m, price.HalfEven, price.HalfUp, price.Up)
	per := []alloys.TradeUnit{alloys.PerGram, alloys.PerKilogram, alloys.PerTroyOunce, alloys.PerPennyweight}
	o.Prices = []price.MetalPrice{{Symbol: "Au", Amount: m.money(), Per: pick(m, per...),
		AsOf: price.Date{Year: 2000 + m.IntN(90), Month: 1 + m.IntN(12), Day: 1 + m.IntN(28)}}}
	o.Labour = maybe(m, []price.Labour{{Name: maybe(m, m.word()), Minutes: decimal.New(1+m.Int64N(1e5), -2),
		PerHour: m.money()}})
	o.Salts = maybe(m, []price.Salt{{Name: maybe(m, m.word()), Mass: m.weighed(), Amount: m.money(),
		Per: pick(m, per...)}})
	o.Refined = maybe(m, []price.Refined{{Symbol: "Au", Mass: m.weighed(), Paid: m.share()}})
	o.Electricity.PerKilowattHour, o.SetUp.Amount = maybe(m, m.money()), maybe(m, m.money())
	o.SetUp.SharedBy = maybe(m, 900_000)
	o.Allowance = price.Allowance{Yield: m.share(), Strip: maybe(m, m.money()), Recovered: maybe(m, m.share())}
	if m.yes(0.5) {
		o.Margin.OfPrice = m.share()
	} else {
		o.Markup.OfCost = maybe(m, m.share())
	}
	o.Minimum, o.Tax.Rate, o.Tax.BeforeCredits = maybe(m, decimal.NewFromInt(60)), maybe(m, m.share()), m.yes(0.3)
	return q
}

func (m maker) rinse(steps bool) *job.Rinse {
	q := &job.Rinse{Ratio: maybe(m, between(m, units.Ratio(2), 5000))}
	if m.yes(0.5) {
		q.Measured = between(m, units.Millilitre, 9*units.Millilitre)
	} else {
		q.Shape = rinse.VerticalWell + rinse.Drainage(m.IntN(6))
		q.Drain = maybe(m, between(m, units.Second, 30*units.Second))
		q.Thickness = pick(m, rinse.AsPrinted, rinse.Thin, rinse.Medium, rinse.Syrupy)
	}
	if !steps {
		q.Stages = m.IntN(4)
	}
	if m.yes(0.5) {
		q.DragOutTank, q.Loads = between(m, units.Litre, 9*units.Litre), m.IntN(20)
		q.Evaporation = maybe(m, between(m, units.Millilitre, 90*units.Millilitre))
	}
	return q
}

// ourBaths is the file that the jobs of a maker name.
const ourBaths = `{"format": "laydown baths 1", "baths": [{
  "key": "our-strike", "name": "gold, acid cyanide strike of our own", "metal": "Au", "valence": 1, "use": ["strike"],
  "density": {"low": "19 g/cm³", "high": "19.3 g/cm³", "source": "book", "seen": "given"},
  "efficiency": {"low": "6 %", "high": "9 %", "source": "weighed", "seen": "measured"},
  "content": {"low": "1 g/L", "high": "2 g/L", "source": "analysis", "seen": "measured"},
  "current_density": {"low": "2 A/dm²", "high": "4 A/dm²", "source": "book", "seen": "given"},
  "pH": {"low": 3.4, "high": 3.8, "source": "meter", "seen": "measured"},
  "time": {"low": "20 s", "high": "30 s", "source": "book", "seen": "given"},
  "anode": {"text": "platinised titanium", "source": "book", "seen": "given"}, "anode_kind": "insoluble",
  "live_entry": true, "hazards": ["cyanide", "acid"]}]}`

func (m maker) job() job.Job {
	j := job.Job{Name: maybe(m, m.word()), Parts: m.parts(), BathFile: "ours.json"}
	var err error
	if j.Baths, err = bath.Read(strings.NewReader(ourBaths)); err != nil {
		panic(err)
	}
	if m.yes(0.8) {
		j.Layers = m.layers()
	} else {
		j.Finish, j.MinThickness, j.Evenness = sequence.HardGold, between(m, units.Micrometre/10, units.Micrometre),
			m.evenness()
	}
	switch m.IntN(3) {
	case 0:
		if len(j.Layers) > 0 {
			j.Steps = m.steps(j.Layers)
		}
	case 1:
		j.Finish = sequence.SoftGold
	}
	if j.Finish != sequence.FinishUnknown || len(j.Steps) > 0 {
		j.Substrate = pick(m, "stainless steel", "brass", "high-carbon steel")
		j.SkinContact, j.HighStrength, j.Relieved = m.yes(0.3), m.yes(0.3), m.yes(0.3)
		if m.yes(0.3) {
			j.Tensile = between(m, 900*units.Megapascal, 1500*units.Megapascal)
		} else if m.yes(0.3) {
			j.Hardness = pick(m, "45 HRC", "450 HV")
		}
	} else {
		j.Substrate = maybe(m, m.word())
	}
	if m.yes(0.6) {
		j.Rinse = m.rinse(len(j.Steps) > 0)
	}
	if m.yes(0.6) {
		j.Price = m.price()
	}
	return j
}
