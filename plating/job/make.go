package job

import (
	"errors"
	"fmt"

	"example.com/laydown/plating"
	"example.com/laydown/plating/bath"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/units"
)

// Sheet works out a job: the sequence, each coat with its spread, rinsing, baths
// afterwards and the price, as far as the job asks for them.
//
//	m_lost = d·C·A_w·(1 - b)
//	t_line = Σ t_tank + n·t_h
//	P      = U·I
//	ΔT     = P_high·t/(V·ρ_w·c_w)
//	W      = Σ U·I·t/η_r
//
//	d      drag-out     volume over wetted area, upper end           [m]
//	C      Content      of the bath                                  [kg/m³]
//	A_w    Wetted       plated and masked area of the load           [m²]
//	b      Back         share that the drag-out tank brings back     [1]
//	t_h    Handling     for each of the n tanks                      [s]
//	U      Volts.High   of the bath, I·t charge of its coat          [V], [C]
//	η_r    Rectifier    efficiency of the rectifier; 1 when 0        [1]
//	ΔT     Warms        of the bath by a coat, no heat lost          [K]
//	ρ_w·c_w             of water, 1000 kg/m³ and 4186 J/(kg·K)
//
// A sequence that must not be run comes back whole, with its findings, and
// [Sheet.Forbidden] is true; what cannot be planned at all is an error: a
// [*sequence.UnsureError] or a [*sequence.RefusedError].
//
// Errors: those, a [*Fault] of [Job.Check], and a [*units.ValueError] that names layer,
// tank or field.
//
// Source: [Definition], [OpenStaxChem2e] section 17.7, [OpenStaxCollegePhysics].
func (j Job) Sheet() (Sheet, error) {
	s := Sheet{Job: j, Name: j.Name, Substrate: j.Substrate}
	if err := j.Check(); err != nil {
		return s, err
	}
	var err error
	if s.Parts, err = j.parts(); err != nil {
		return s, err
	}
	if s.Area, err = plating.LoadArea(s.Parts...); err != nil {
		return s, err
	}
	// A masked face gets no metal, but it carries solution out of the bath like any other:
	// drag-out goes by the wetted area, amps by the plated one.
	for _, p := range s.Parts {
		s.Wetted += units.Area(float64(p.Count)) * (p.Area + p.Masked)
	}
	// The steps build on each other, so their order is fixed. The tanks and coats come first. The
	// spread and the karat need the coats; the claim needs both, since it rests on the low end of
	// the spread. The cards take amps from the coats and times from the spread; immersion and air
	// read the cards. Rinsing needs the stop behind each coat, the baths afterwards need what
	// rinsing brings back, and the price comes last, since it charges for all of them.
	for _, step := range []func() error{s.sequence, s.spread, s.karat, s.claim, s.cards, s.power, s.immersion, s.air,
		s.rinsing, s.after, s.price} {
		if err := step(); err != nil {
			return s, err
		}
	}
	return s, nil
}

// sequence finds the tanks and estimates the coats.
func (s *Sheet) sequence() error {
	j := &s.Job
	asked := j.Finish != sequence.FinishUnknown
	s.Sequenced = j.sequenced()
	if s.Sequenced {
		var err error
		if s.Base, err = sequence.ParseSubstrate(j.Substrate); err != nil {
			return err
		}
	}
	if len(j.Layers) == 0 {
		return s.planned()
	}
	coats, err := s.estimate()
	if err != nil {
		return err
	}
	tanks := make([]sequence.Tank, len(coats))
	for i, c := range coats {
		tanks[i] = c.tank()
	}
	switch {
	// Three ways to a sequence. The shop's own steps are taken as they stand and only reviewed.
	// With a finish, a plan is laid round the coats of the job. With neither, the coats stand
	// alone and there is nothing to review.
	case len(j.Steps) > 0:
		all, err := s.laid(tanks)
		if err != nil {
			return err
		}
		s.stand(all, coats)
		s.Findings = sequence.Check(s.tanks(), s.piece())
	case asked:
		s.stand(tanks, coats) // the piece is asked for its last coat
		var stop *sequence.StopError
		all, found, err := sequence.PlanAround(s.piece(), tanks)
		// A plan that must not be run still comes back, with its tanks and findings: the sheet
		// tells what is wrong. Only a plan without tanks ends here.
		if err != nil && !(errors.As(err, &stop) && len(all) > 0) {
			return err
		}
		s.Findings = found
		s.stand(all, coats)
	default:
		s.stand(tanks, coats)
		return nil
	}
	s.stages()
	s.Practice, err = sequence.PracticeFor(s.Base)
	if err == nil {
		s.Practice = s.Practice.For(s.metals()...)
	}
	return err
}

// planned takes tanks and coats from published practice. Gold on a gold strike counts
// with it, as far as the thinnest spot goes; the plan does not count on that, so the coat
// is better than ordered, not worse.
func (s *Sheet) planned() error {
	p := s.piece()
	var err error
	if p.Distribution, err = s.Job.Evenness.distribution(""); err != nil {
		return err
	}
	// The plan gives the tanks in order; the layers are read off those tanks that deposit, so
	// that tanks and estimates cannot disagree on bath or role.
	tanks, found, err := sequence.Plan(p)
	if err != nil {
		return err
	}
	layers, err := sequence.Layers(tanks, p)
	if err != nil {
		return err
	}
	var coats []*Coat
	for i := range tanks {
		if deposits(tanks[i].Kind) {
			c := &Coat{Bath: tanks[i].Bath, own: tanks[i].Bath}
			c.Bath.Library, c.own.Library = tanks[i].Bath.Key, tanks[i].Bath.Key
			coats = append(coats, c)
		}
	}
	if err := s.lay(coats, layers); err != nil {
		return err
	}
	s.Findings = found
	s.stand(tanks, coats)
	s.stages()
	s.Practice, err = sequence.PracticeFor(s.Base)
	if err == nil {
		s.Practice = s.Practice.For(s.metals()...)
	}
	return err
}

// metals are those of the coats.
func (s *Sheet) metals() []string {
	var list []string
	for _, c := range s.Coats() {
		list = append(list, c.Layer.Bath.Metal)
	}
	return list
}

// estimate resolves the layers of the job and estimates them.
func (s *Sheet) estimate() ([]*Coat, error) {
	j := &s.Job
	known := j.known()
	coats := make([]*Coat, len(j.Layers))
	layers := make([]plating.Layer, len(j.Layers))
	for i := range j.Layers {
		l := &j.Layers[i]
		r, err := l.resolve(fmt.Sprintf("layers[%d]", i+1), s.Area, known)
		if err != nil {
			return nil, err
		}
		// The estimate runs on r.layer. The coat keeps both baths beside it: the full one for the
		// sheet, with the figures lent by a bath of like chemistry, and the own one for the spread
		// and the review of dangers, where only what the shop said may count.
		layers[i] = r.layer
		coats[i] = &Coat{Bath: r.full, own: r.own, evaporation: l.Bath.Evaporation,
			PHLent: l.Bath.Like != "" && !l.Bath.PH.Given() && r.own.PH.Given()}
	}
	return coats, s.lay(coats, layers)
}

// lay estimates the layers, one for each coat.
func (s *Sheet) lay(coats []*Coat, layers []plating.Layer) error {
	// All layers in one call: what lies below counts towards a minimum thickness only when the
	// layers are known together.
	res, err := plating.EstimateSystem(plating.System{Name: s.Name, Substrate: s.Substrate, Parts: s.Parts,
		Layers: layers})
	if err != nil {
		return err
	}
	for i, c := range coats {
		c.LayerResult = res.Layers[i]
		c.Name = titleOf(c.Layer.Name, c.Layer.Bath.Name, i)
		c.Ordered, c.Timed = layers[i].MinThickness, layers[i].Time > 0
		c.listed = len(c.own.Deposit) > 0
	}
	s.Metals, s.Time, s.Charge = res.Metals, res.Time, res.Charge
	return nil
}

// stand puts the tanks in their order, each coat into the one that lays it.
func (s *Sheet) stand(tanks []sequence.Tank, coats []*Coat) {
	s.Stops = make([]Stop, len(tanks))
	next := 0
	for i := range tanks {
		t := &tanks[i]
		s.Stops[i].tank = *t
		s.Stops[i].Tank = sequence.Card{Number: i + 1, Kind: t.Kind,
			Name: orText(t.Name, orText(t.Process.Chemistry, orText(t.Bath.Name, t.Kind.String())))}
		// Coats and depositing tanks come in the same order, so the next coat belongs to the next
		// tank that deposits.
		if deposits(t.Kind) && next < len(coats) {
			s.Stops[i].Coat = coats[next]
			s.Stops[i].Tank.Name = coats[next].Name
			next++
		}
	}
}

// tanks are the stops as package sequence takes them.
func (s *Sheet) tanks() []sequence.Tank {
	list := make([]sequence.Tank, len(s.Stops))
	for i := range s.Stops {
		list[i] = s.Stops[i].tank
	}
	return list
}

// stages gives the proposed rinses the stages that the job asks for, and has the
// sequence reviewed again. In the shop's own sequence each rinse says its own.
func (s *Sheet) stages() {
	q := s.Job.Rinse
	if q == nil || q.Stages == 0 || len(s.Job.Steps) > 0 {
		return
	}
	for i := range s.Stops {
		if t := &s.Stops[i].tank; t.Kind == sequence.Rinse && t.Rinse.Flow == sequence.Counterflow {
			t.Rinse.Stages = q.Stages
		}
	}
	s.Findings = sequence.Check(s.tanks(), s.piece())
}

// piece is the job as package sequence takes it. The minimum thickness is that of the
// last coat, or what the last coat comes to when it is timed.
func (s *Sheet) piece() sequence.Piece {
	j := &s.Job
	p := sequence.Piece{Name: j.Name, Substrate: s.Base, Finish: j.Finish, SkinContact: j.SkinContact,
		HighStrength: j.HighStrength, Relieved: j.Relieved, Area: s.Area, MinThickness: j.MinThickness}
	p.Tensile, _ = j.tensile() // Check has read it
	if coats := s.Coats(); len(coats) > 0 {
		last := coats[len(coats)-1]
		p.Distribution = last.Layer.Distribution
		if p.MinThickness = last.Ordered; p.MinThickness == 0 {
			p.MinThickness = last.Result.Thinnest
		}
	}
	return p
}

// laid puts the coats into the shop's own steps. Check has seen that each comes once, in
// order.
func (s *Sheet) laid(coats []sequence.Tank) ([]sequence.Tank, error) {
	steps := s.Job.Steps
	tanks := make([]sequence.Tank, len(steps))
	next := 0
	for i := range steps {
		if steps[i].Layer == "" {
			var err error
			if tanks[i], err = steps[i].tank(); err != nil {
				return nil, steps[i].at(fmt.Sprintf("sequence[%d]", i+1), err)
			}
			continue
		}
		tanks[i] = coats[next]
		tanks[i].Wait, tanks[i].LiveEntry = steps[i].Wait, steps[i].LiveEntry
		next++
	}
	return tanks, nil
}

// Steps returns the sequence as the shop's own steps, for [Job.Steps]: a proposal to
// change and to write down ([Job.Write]). Nil without a sequence.
func (s *Sheet) Steps() []OwnTank {
	if s == nil || !s.Sequenced {
		return nil
	}
	list := make([]OwnTank, len(s.Stops))
	for i := range s.Stops {
		list[i] = stepOf(&s.Stops[i].tank)
		if c := s.Stops[i].Coat; c != nil {
			list[i] = OwnTank{Layer: LayerRef(c.Name), LiveEntry: s.Stops[i].tank.LiveEntry, Wait: s.Stops[i].tank.Wait}
		}
	}
	return list
}

// stepOf is a tank that does not plate as a job file gives it.
func stepOf(t *sequence.Tank) OwnTank {
	s := OwnTank{Kind: t.Kind, Name: t.Name, LiveEntry: t.LiveEntry, Wait: t.Wait}
	switch t.Kind {
	case sequence.Rinse, sequence.FinalRinse, sequence.DragOut:
		flow := t.Rinse.Flow
		s.Stages, s.Flow, s.Deionised, s.Acidified, s.Station = t.Rinse.Stages, &flow, t.Rinse.Deionised, t.Rinse.Acidified,
			t.Rinse.Station
		return s
	}
	q := &t.Process
	hazards := q.Hazards
	s.Holds, s.Does, s.Hazards, s.Mild, s.Strong, s.Polarity = q.Chemistry, q.Effect, &hazards, q.Mild, q.Strong,
		q.Polarity
	s.PH = bath.Range[plating.PH]{Low: q.PH.Low, High: q.PH.High}
	s.Temperature, s.CurrentDensity, s.Volts, s.Time = q.Temperature, q.CurrentDensity, q.Volts, q.Time
	s.Counter, s.Agitation, s.Look, s.Vessel = q.Counter, q.Agitation, q.Look, t.Vessel
	return s
}

func deposits(k sequence.TankKind) bool {
	return k == sequence.Strike || k == sequence.Underplate || k == sequence.Plate
}
