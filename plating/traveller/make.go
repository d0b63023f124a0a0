package traveller

import (
	"errors"
	"fmt"
	"slices"

	"example.com/laydown/plating"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/units"
)

// Make works out a job: the sequence, each coat with its spread, rinsing, baths
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
// [Sheet.Stop] is true; what cannot be planned at all is an error: a
// [*sequence.UnsureError] or a [*sequence.RefusedError].
//
// Errors: those, and a [*units.ValueError] that names layer, tank or field.
//
// Source: [Definition], [OpenStaxChem2e] section 17.7, [OpenStaxCollegePhysics].
func Make(j Job) (Sheet, error) {
	area, err := plating.LoadArea(j.Parts...)
	if err != nil {
		return Sheet{}, err
	}
	j.Layers = slices.Clone(j.Layers)
	for i := range j.Layers {
		j.Layers[i].lend()
	}
	s := Sheet{Job: j, Area: area, Wetted: wetted(j.Parts)}
	if err := s.sequence(); err != nil {
		return Sheet{}, err
	}
	var metals []string
	for i := range s.Result.Layers {
		metals = append(metals, s.Result.Layers[i].Layer.Bath.Metal)
	}
	s.Practice = s.Practice.For(metals...)
	if err := s.spread(); err != nil {
		return Sheet{}, err
	}
	if err := s.claim(); err != nil {
		return Sheet{}, err
	}
	if err := s.cards(); err != nil {
		return Sheet{}, err
	}
	if err := s.power(); err != nil {
		return Sheet{}, err
	}
	s.immersion()
	if err := s.air(); err != nil {
		return Sheet{}, err
	}
	if err := s.rinsing(); err != nil {
		return Sheet{}, err
	}
	if err := s.after(); err != nil {
		return Sheet{}, err
	}
	return s, s.price()
}

// lend fills what an own bath does not say from the bath of like chemistry, as
// far as dangers are judged by it: hazards, pH, anode. A bath of another valence
// lends no pH: what one stands, the other may not.
func (l *Layer) lend() {
	lib := &l.Library
	if lib.Name == "" || l.Whole {
		return
	}
	b := &l.Bath
	b.Hazards |= lib.Hazards
	s := b.Solution()
	if !b.PH.Given() && (s.Valence == 0 || s.Valence == lib.Valence) {
		b.PH, l.lentPH = plating.PHWindow{Low: lib.PH.Low, High: lib.PH.High}, lib.PH.Given()
	}
	if b.Anode == "" && b.InsolubleAnode == lib.Insoluble {
		b.Anode = lib.Anode.Text
	}
}

// wetted is the area that solution clings to: what is masked is wet too.
func wetted(parts []plating.Part) units.Area {
	var sum units.Area
	for _, p := range parts {
		sum += units.Area(float64(p.Count)) * (p.Area + p.Masked)
	}
	return sum
}

// sequence finds the tanks and estimates the coats.
func (s *Sheet) sequence() error {
	j := &s.Job
	asked := j.Finish != sequence.FinishUnknown
	var err error
	switch {
	case len(j.Steps) > 0 && len(j.Layers) == 0:
		return missing("layers", "none", "the coats that the steps name")
	case len(j.Layers) == 0 && !asked:
		return missing("layers and finish", "neither given", "the coats, or the finish to plan for")
	case len(j.Layers) == 0:
		return s.planned()
	}
	if s.Result, err = plating.EstimateJob(s.plain()); err != nil {
		return err
	}
	coats := make([]sequence.Tank, len(j.Layers))
	for i := range j.Layers {
		if coats[i], err = j.Layers[i].tank(&s.Result.Layers[i]); err != nil {
			return fmt.Errorf("%s: %w", units.Clip(title(&j.Layers[i].Layer, i)), err)
		}
	}
	switch {
	case len(j.Steps) > 0:
		if s.Tanks, s.Coats, err = laid(j.Steps, coats); err != nil {
			return err
		}
		s.Findings = sequence.Check(s.Tanks, s.piece())
	case asked:
		var stop *sequence.StopError
		s.Tanks, s.Findings, err = sequence.PlanAround(s.piece(), coats)
		if err != nil && !(errors.As(err, &stop) && len(s.Tanks) > 0) {
			return err
		}
		s.Coats = s.number()
	default:
		return nil
	}
	if err := s.stages(); err != nil {
		return err
	}
	if j.Base != sequence.SubstrateUnknown {
		s.Practice, err = sequence.PracticeFor(j.Base)
		return err
	}
	return nil
}

// planned takes tanks and coats from published practice.
func (s *Sheet) planned() error {
	j := &s.Job
	p := s.piece()
	var err error
	if s.Tanks, s.Findings, err = sequence.Plan(p); err != nil {
		return err
	}
	layers, err := sequence.Layers(s.Tanks, p)
	if err != nil {
		return err
	}
	s.Coats = s.number()
	if err := s.stages(); err != nil {
		return err
	}
	j.Layers = make([]Layer, len(layers))
	for i, k := range s.Coats {
		if k >= 0 {
			j.Layers[k] = Layer{Layer: layers[k], Library: s.Tanks[i].Bath, Whole: true}
		}
	}
	// Gold on a gold strike counts with it, as far as the thinnest spot goes; the
	// plan does not count on that, so the coat is better than ordered, not worse.
	if s.Result, err = plating.EstimateJob(s.plain()); err != nil {
		return err
	}
	s.Practice, err = sequence.PracticeFor(j.Base)
	return err
}

// stages gives the proposed rinses the stages that the job asks for, and has the
// sequence reviewed again. In the shop's own sequence each rinse says its own.
func (s *Sheet) stages() error {
	q := s.Job.Rinse
	if q == nil || q.Stages == 0 || len(s.Tanks) == 0 {
		return nil
	}
	if len(s.Job.Steps) > 0 {
		return missing("stages of the rinses", fmt.Sprint(q.Stages), "each tank of the sequence to say its own")
	}
	for i := range s.Tanks {
		if t := &s.Tanks[i]; t.Kind == sequence.Rinse && t.Rinse.Flow == sequence.Counterflow {
			t.Rinse.Stages = q.Stages
		}
	}
	s.Findings = sequence.Check(s.Tanks, s.piece())
	return nil
}

// plain is the job as package plating takes it.
func (s *Sheet) plain() plating.Job {
	j := plating.Job{Name: s.Job.Name, Substrate: s.Job.Substrate, Parts: s.Job.Parts, Layers: make([]plating.Layer,
		len(s.Job.Layers))}
	for i := range s.Job.Layers {
		j.Layers[i] = s.Job.Layers[i].Layer
	}
	return j
}

// Plain returns the job as package plating takes it: its coats alone.
func (s *Sheet) Plain() plating.Job { return s.plain() }

// piece is the job as package sequence takes it. The minimum thickness is that of the
// last coat, or what the last coat comes to when it is timed.
func (s *Sheet) piece() sequence.Piece {
	j := &s.Job
	p := sequence.Piece{Name: j.Name, Substrate: j.Base, Finish: j.Finish, SkinContact: j.SkinContact,
		HighStrength: j.HighStrength, Tensile: j.Tensile, Relieved: j.Relieved,
		Area: s.Area, MinThickness: j.MinThickness, Distribution: j.Distribution}
	if n := len(s.Result.Layers); n > 0 {
		p.Distribution = j.Layers[n-1].Distribution
		if p.MinThickness = j.Layers[n-1].MinThickness; p.MinThickness == 0 {
			p.MinThickness = s.Result.Layers[n-1].Result.Thinnest
		}
	}
	return p
}

// number says which tank lays which coat.
func (s *Sheet) number() []int {
	coats := make([]int, len(s.Tanks))
	next := 0
	for i := range s.Tanks {
		coats[i] = -1
		if deposits(s.Tanks[i].Kind) {
			coats[i] = next
			next++
		}
	}
	return coats
}

// laid puts the coats into the shop's own steps. Each must come once, in order.
func laid(steps []Step, coats []sequence.Tank) ([]sequence.Tank, []int, error) {
	tanks, at := make([]sequence.Tank, len(steps)), make([]int, len(steps))
	next := 0
	for i, st := range steps {
		field := fmt.Sprintf("step %d", i+1)
		switch {
		case st.Layer == 0 && deposits(st.Tank.Kind):
			return nil, nil, missing(field, st.Tank.Kind.String(), "the layer that it plates")
		case st.Layer == 0:
			tanks[i], at[i] = st.Tank, -1
			continue
		case st.Layer != next+1:
			return nil, nil, missing(field, fmt.Sprintf("layer %d", st.Layer),
				fmt.Sprintf("layer %d: each comes once, the first one first", next+1))
		case next >= len(coats):
			return nil, nil, missing(field, fmt.Sprintf("layer %d", st.Layer), fmt.Sprintf("one of the %d layers", len(coats)))
		}
		t := coats[next]
		t.Wait = st.Tank.Wait
		t.LiveEntry = st.Tank.LiveEntry
		tanks[i], at[i] = t, next
		next++
	}
	if next < len(coats) {
		return nil, nil, missing("steps", fmt.Sprintf("%d of %d layers", next, len(coats)), "a step for each layer")
	}
	return tanks, at, nil
}

func deposits(k sequence.Kind) bool {
	return k == sequence.Strike || k == sequence.Underplate || k == sequence.Plate
}

func missing(field, value, need string) error {
	return &units.ValueError{Field: field, Value: value, Need: need, Err: units.ErrInconsistent}
}

// title names a layer for a message or a sheet.
func title(l *plating.Layer, i int) string {
	switch {
	case l.Name != "":
		return l.Name
	case l.Bath.Name != "":
		return l.Bath.Name
	}
	return fmt.Sprintf("layer %d", i+1)
}
