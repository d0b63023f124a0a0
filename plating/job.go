package plating

import (
	"fmt"
	"math"

	"example.com/laydown/faraday"
	"example.com/laydown/units"
)

// An Item is one sort of object in a load.
type Item struct {
	Name  string
	Count int        // how many, 1 or more
	Area  units.Area // plated area of one, what is masked taken off, > 0

	// Masked is the area stopped off on each, for the sheet: it is no longer in Area.
	Masked units.Area
}

// LoadArea returns the plated area of a load.
//
//	A = Σ k·A₁
//
//	k   Count  pieces of each sort, 1 to 1e9
//	A₁  Area   plated area of one, > 0 [m²]
//
// Errors: a [*units.ValueError] that names the part.
//
// Source: [Definition].
func LoadArea(parts ...Item) (units.Area, error) {
	if len(parts) == 0 {
		return 0, &units.ValueError{Field: "parts", Value: "none", Need: "at least one part", Err: units.ErrNotPositive}
	}
	var sum units.Area
	for i, p := range parts {
		name := units.Clip(p.Name)
		if name == "" {
			name = fmt.Sprintf("part %d", i+1)
		}
		if p.Count < 1 || p.Count > 1_000_000_000 {
			return 0, &units.ValueError{Field: "count of " + name, Value: fmt.Sprint(p.Count),
				Need: "a count from 1 to 1000000000", Err: units.ErrOutOfRange}
		}
		if err := units.Positive("area of "+name, p.Area); err != nil {
			return 0, err
		}
		if err := units.NonNegative("masked area of "+name, p.Masked); err != nil {
			return 0, err
		}
		sum += units.Area(float64(p.Count) * float64(p.Area))
	}
	if err := units.Finite("area of the load", sum); err != nil {
		return 0, err
	}
	return sum, nil
}

// A System is a load of parts that goes through plated layers, the first one
// first. A layer with zero Area takes the area of the load.
type System struct {
	Name      string
	Substrate string // base metal, in words
	Parts     []Item
	Layers    []Layer
}

// A SystemResult is what a coating system comes to.
type SystemResult struct {
	Area   units.Area     // of the load
	Layers []LayerResult  // in the order of the system
	Metals []MetalTotal   // by counted metal, in the order met
	Time   units.Duration // of all layers, current on
	Charge units.Charge   // of all layers
}

// Hazards returns the hazards of all baths of the system together.
func (r *SystemResult) Hazards() Hazard {
	var h Hazard
	for i := range r.Layers {
		h |= r.Layers[i].Layer.Bath.AllHazards()
	}
	return h
}

// A LayerResult is one layer of a system with its estimate.
type LayerResult struct {
	Layer  Layer // as it was computed: area and credited minimum thickness filled in
	Result LayerEstimate
	Below  units.Length // thinnest spot of the layers below that counted towards the minimum thickness
	Before []Note       // what to mind on the way in: about its place behind the layer before
	Notes  []Note       // about this layer, see [Notes]
}

// A MetalTotal sums the layers of one metal.
type MetalTotal struct {
	Metal   string       `json:"metal"`
	Average units.Length `json:"average_thickness" in:"µm"` // sum of the means
	// sum of the thinnest spots: exact if the same spot is thinnest in each, else too low
	Thinnest units.Length `json:"thinnest" in:"µm"`
	Mass     units.Mass   `json:"deposit_mass" in:"mg"` // of the deposits
	FineMass units.Mass   `json:"metal_mass" in:"mg"`   // of the metal in them
}

// EstimateSystem computes a coating system layer by layer: each by [Estimate], with the
// layers below credited where CountBelow asks for it.
//
//	s_left = s_min - Σ s_below
//
//	s_min    MinThickness of the layer  [m]
//	s_below  thinnest spot of each layer directly below of the same metal [m]
//
// The sum takes the same spot to be thinnest in each layer; where it is not,
// the coat is better than the sum says. Only layers on the same area count.
//
// Layers whose baths have the same Name and Metal stand in one bath: each finds
// it with the metal that the ones before have left, and the share drawn is that
// of all of them together. Such baths must agree in content and volume.
//
// Errors: as [LoadArea] and [Estimate], with the layer named; a
// [*units.ValueError] when the layers below already meet a minimum thickness, when
// CountBelow is set in a bath without Metal, and for a Metal that is no element
// (an [*faraday.ElementError]).
//
// Source: [Definition], [OpenStaxChem2e] section 17.7.
func EstimateSystem(job System) (SystemResult, error) {
	area, err := LoadArea(job.Parts...)
	if err != nil {
		return SystemResult{}, err
	}
	if len(job.Layers) == 0 {
		return SystemResult{}, &units.ValueError{Field: "layers", Value: "none", Need: "at least one layer",
			Err: units.ErrNotPositive}
	}
	res := SystemResult{Area: area, Layers: make([]LayerResult, 0, len(job.Layers))}
	for i, l := range job.Layers {
		name := units.Clip(l.title(i))
		if l.Area == 0 {
			l.Area = area
		}
		if l.Bath.Metal != "" {
			if _, err := faraday.Lookup(l.Bath.Metal); err != nil {
				return SystemResult{}, fmt.Errorf("%s: metal of the bath: %w", name, err)
			}
		} else if l.CountBelow {
			return SystemResult{}, fmt.Errorf("%s: %w", name, &units.ValueError{Field: "metal of the bath",
				Value: "not given",
				Need:  "its symbol, so that layers of the same metal below can count", Err: units.ErrInconsistent})
		}
		if err := res.oneBath(&job.Layers[i], job.Layers[:i]); err != nil {
			return SystemResult{}, fmt.Errorf("%s: %w", name, err)
		}
		lr := LayerResult{}
		if l.CountBelow && l.MinThickness > 0 {
			lr.Below = res.below(l.Bath.Metal, l.Area)
			if lr.Below >= l.MinThickness {
				return SystemResult{}, fmt.Errorf("%s: %w", name, &units.ValueError{Field: "minimum thickness",
					Value: l.MinThickness.Text(units.Micrometre, 3),
					Need:  "more than the " + lr.Below.Text(units.Micrometre, 3) + " that lies below already",
					Err:   units.ErrInconsistent})
			}
			l.MinThickness -= lr.Below
		}
		drawn := res.drawnFrom(&l.Bath)
		opening := l.Bath.Content
		if drawn > 0 && l.Bath.Volume > 0 && opening > 0 {
			l.Bath.Content -= units.MassConcentration(math.Min(float64(drawn)/float64(l.Bath.Volume),
				float64(opening)*(1-1e-9)))
		}
		lr.Layer = l
		lr.Result, err = Estimate(&l)
		if err != nil {
			return SystemResult{}, fmt.Errorf("%s: %w", name, err)
		}
		lr.Result.drawAll(&l.Bath, drawn, opening)
		lr.Before, lr.Notes = res.placeNotes(&l), Notes(&l, &lr.Result)
		res.add(lr)
	}
	return res, res.finite()
}

// finite refuses sums that overflowed.
func (r *SystemResult) finite() error {
	if err := units.Finite("time of the job", r.Time); err != nil {
		return err
	}
	if err := units.Finite("charge of the job", r.Charge); err != nil {
		return err
	}
	for _, m := range r.Metals {
		if err := units.Finite("mass of "+m.Metal, m.Mass); err != nil {
			return err
		}
		if err := units.Finite("thickness of "+m.Metal, m.Average); err != nil {
			return err
		}
	}
	return nil
}

// title names a layer for a message or a sheet.
func (l *Layer) title(i int) string {
	switch {
	case l.Name != "":
		return l.Name
	case l.Bath.Name != "":
		return l.Bath.Name
	}
	return fmt.Sprintf("layer %d", i+1)
}

// below sums the thinnest spots of the topmost run of layers of one metal on
// one area.
//
// Another metal, or another area, between ends the run: what lies deeper is not the same
// coat.
func (r *SystemResult) below(metal string, area units.Area) units.Length {
	var sum units.Length
	for i := len(r.Layers) - 1; i >= 0; i-- {
		l := &r.Layers[i].Layer
		if l.Bath.Metal != metal || math.Abs(float64(l.Area-area)) > 1e-9*float64(area) {
			break
		}
		sum += r.Layers[i].Result.Thinnest
	}
	return sum
}

// drawnFrom sums the metal that the layers so far have drawn from a bath. Baths
// without a name are taken to be different ones.
func (r *SystemResult) drawnFrom(b *OperatingBath) units.Mass {
	var sum units.Mass
	for i := range r.Layers {
		if o := &r.Layers[i].Layer.Bath; b.Name != "" && o.Name == b.Name && o.Metal == b.Metal {
			sum += r.Layers[i].Result.FineMass
		}
	}
	return sum
}

// oneBath refuses a bath that has the name and metal of one before and another
// content or volume: it cannot be the same tank.
func (r *SystemResult) oneBath(l *Layer, before []Layer) error {
	for i := range before {
		o := &before[i].Bath
		if b := &l.Bath; b.Name != "" && o.Name == b.Name && o.Metal == b.Metal && (o.Content != b.Content ||
			o.Volume != b.Volume) {
			return &units.ValueError{Field: "bath " + b.Name, Value: b.Content.String() + " in " + b.Volume.String(),
				Need: "the " + o.Content.String() + " in " + o.Volume.String() +
					" that it has in a layer before, or another name for another tank", Err: units.ErrInconsistent}
		}
	}
	return nil
}

// drawAll makes the share drawn that of all layers in one bath.
func (r *LayerEstimate) drawAll(b *OperatingBath, before units.Mass, opening units.MassConcentration) {
	if before == 0 || r.Warnings.Has(WarnMetalUnknown) {
		return
	}
	r.Drawn = units.Ratio(float64(before+r.FineMass) / float64(opening.Of(b.Volume)))
	if r.Drawn > b.drawLimit() && !r.Warnings.Has(WarnBathEmpty) {
		r.Warnings |= WarnBathDrawn
	}
}

// add appends a layer and its sums. Layers of one metal are one total, wherever they stand;
// layers without a metal stay apart.
func (r *SystemResult) add(lr LayerResult) {
	r.Layers = append(r.Layers, lr)
	r.Time += lr.Result.Time
	r.Charge += lr.Result.Charge
	metal := lr.Layer.Bath.Metal
	for i := range r.Metals {
		if m := &r.Metals[i]; m.Metal == metal && metal != "" {
			m.Average += lr.Result.Average
			m.Thinnest += lr.Result.Thinnest
			m.Mass += lr.Result.Mass
			m.FineMass += lr.Result.FineMass
			return
		}
	}
	r.Metals = append(r.Metals, MetalTotal{Metal: metal, Average: lr.Result.Average, Thinnest: lr.Result.Thinnest,
		Mass: lr.Result.Mass, FineMass: lr.Result.FineMass})
}

// placeNotes says what a layer's place behind another brings with it.
//
// It sees two baths behind each other, not the tanks between: rinses and dips are in
// package sequence. So what may be carried over is marked Between, and a caller who knows
// the tanks drops it.
func (r *SystemResult) placeNotes(l *Layer) []Note {
	var notes []Note
	if l.Area > r.Area*(1+1e-9) {
		notes = append(notes, Note{Severity: SeverityWarning, Source: arithmetic,
			Text: fmt.Sprintf("the layer's area of %s is more than the load has, %s", l.Area, r.Area),
			Do:   "check both areas"})
	}
	if l.Role == RoleStrike {
		notes = append(notes, Note{Code: CodeLiveEntry, Severity: SeverityInfo, Source: practice,
			Text: "without current a noble metal may deposit by exchange, and a passive metal grows its film again; " +
				"no coat holds on either",
			Do: "Switch the current on before the piece touches the bath"})
	}
	if len(r.Layers) == 0 {
		return notes
	}
	prev := &r.Layers[len(r.Layers)-1].Layer
	a, b := prev.Bath.AllHazards(), l.Bath.AllHazards()
	free := func(h Hazard) bool { return h.Has(HazardCyanide) && !h.Has(HazardAcid) }
	switch alkaline := free(a) || free(b); {
	case (free(a) && b.Has(HazardAcid)) || (a.Has(HazardAcid) && free(b)):
		notes = append(notes, Note{Severity: SeverityWarning, Source: practice,
			Text:    "cyanide and acid follow one another; what clings to the load frees hydrogen cyanide, which kills",
			Do:      "Rinse twice in clean running water between the two. Give each a rinse of its own. Extraction on",
			Between: true})
	case !alkaline && a.Has(HazardAcid) && b.Has(HazardCyanide|HazardAcid):
		notes = append(notes, Note{Severity: SeverityCaution, Source: practice,
			Text: "acid carried into a bath of gold cyanide lowers its pH, towards hydrogen cyanide",
			Do:   "Rinse well between the two and watch the pH of the bath", Between: true})
	}
	switch {
	case prev.Role == RoleStrike:
		notes = append(notes, Note{Severity: SeverityInfo, Source: practice,
			Text: "a struck piece that dries or waits stains or grows passive, and the next coat peels",
			Do:   "Rinse and go on at once, wet"})
	case prev.Bath.Metal == "Ni":
		notes = append(notes, Note{Severity: SeverityInfo, Source: practice,
			Text: "nickel that dries or waits grows passive, and the next coat peels",
			Do:   "Rinse and go on at once, wet. Activate nickel that has waited"})
	}
	return notes
}

// Spread returns the ratio of the largest to the smallest part area of a load,
// a hint that small parts on the same rack may take more than their share.
//
//	k = A_max/A_min
//
// Errors: as [LoadArea].
//
// Source: [Definition].
func Spread(parts ...Item) (units.Ratio, error) {
	if _, err := LoadArea(parts...); err != nil {
		return 0, err
	}
	least, most := math.Inf(1), 0.0
	for _, p := range parts {
		least, most = math.Min(least, float64(p.Area)), math.Max(most, float64(p.Area))
	}
	k := units.Ratio(most / least)
	if err := units.Finite("ratio of part areas", k); err != nil {
		return 0, err
	}
	return k, nil
}
