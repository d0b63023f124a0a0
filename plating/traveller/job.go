package traveller

import (
	"example.com/laydown/plating"
	"example.com/laydown/plating/baths"
	"example.com/laydown/plating/price"
	"example.com/laydown/plating/rinse"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/units"
	"github.com/shopspring/decimal"
)

// A Job is what the shop takes in and what it is to deliver. Parts are needed, and
// one of Finish, Layers and Steps.
type Job struct {
	Name      string
	Substrate string // base metal in words, for the sheet
	Parts     []plating.Part
	Mended    []string // what was done to the meshes of parts, for the sheet

	Base         sequence.Substrate // needed with Finish or Steps
	Finish       sequence.Finish
	SkinContact  bool
	HighStrength bool
	Tensile      units.Pressure // of the steel; 0: not given
	Relieved     bool           // stress relief is done already

	// Layers are the shop's own coats, the first one first.
	Layers []Layer
	// MinThickness and Distribution are of a planned finish: without Layers.
	MinThickness units.Length
	Distribution plating.Distribution

	Steps []Step // the shop's own sequence

	Rinse *Rinse // nil: drag-out is not computed
	Price *Price // nil: no price
}

// A Layer is one coat of a job, with what the sheet asks for beyond the estimate.
type Layer struct {
	plating.Layer

	// Library is a bath of package baths: the one that the layer is plated in
	// (Whole), or one of like chemistry that lends what the shop does not say.
	// The zero Bath lends nothing.
	Library baths.Bath
	Whole   bool

	// Low and High are the ends between which the current efficiency of an own
	// bath lies; zero curves when that is not known.
	Low, High plating.EfficiencyCurve

	// Evaporation from this bath in the time of a load; nil: as the Rinse says for all.
	// A strike at room temperature leaves less room for what clings to come back
	// than a hot bath.
	Evaporation *units.Volume

	lentPH bool // the pH is that of Library
}

// PHLent reports whether the pH is not the bath's own: one of like chemistry lends it.
func (l *Layer) PHLent() bool { return l.lentPH }

// A Step is one tank of the shop's own sequence. A tank that plates names its
// layer and takes everything else from there.
type Step struct {
	Layer int           // its number in Job.Layers, from 1; 0 for a tank that does not plate
	Tank  sequence.Tank // of a tank that does not plate; of one that does, only Wait and LiveEntry count
}

// A Rinse says how the work drains and how it is rinsed.
type Rinse struct {
	Shape     rinse.Shape    // of the published drag-out table; or
	Measured  units.Volume   // what the load was found to carry out
	Drain     units.Duration // over the bath; 0 keeps the printed figure
	Thickness rinse.Thickness

	Ratio  units.Ratio // how many times weaker than the bath the last water must be; 0: no water is computed
	Stages int         // of each proposed counterflow rinse; 0 means 2; in steps of your own each rinse says its own

	// A drag-out tank behind each precious bath, poured back every so many loads.
	// The work comes wet into the bath: there is room for what evaporates only.
	DragOutTank units.Volume // 0: what it brings back is not computed
	Loads       int          // between two returns; 0 means 1
	Evaporation units.Volume // from each bath in the time of a load, where its layer says nothing else
}

// A Price is what the quote needs beyond the sheet. Of the embedded job, Make sets
// the pieces, which are those of the parts, and adds the metals, the labour at the
// line and the energy of the plating current to what is there already.
type Price struct {
	price.Job

	LinePerHour decimal.Decimal // for the time at the line; 0: it costs nothing
	Handling    units.Duration  // to go from tank to tank, for each tank
	Heating     units.Energy    // of the baths for this job, beside the plating current
	Rectifier   units.Efficiency
}
