package job

import (
	"github.com/shopspring/decimal"

	"example.com/laydown/plating"
	"example.com/laydown/plating/bath"
	"example.com/laydown/plating/price"
	"example.com/laydown/plating/rinse"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/plating/throwing"
	"example.com/laydown/units"
)

// A Job is what the shop takes in and what it is to deliver. Parts are needed, and one of
// Finish, Layers and Steps. A field left zero is "not given".
type Job struct {
	Name      string `json:"job" doc:"name for the sheet"`
	Substrate string `json:"substrate" doc:"base metal, in words; with a finish or a sequence one of those that package sequence knows"`
	Parts     []Part `json:"parts" with:"must" need:"a list of parts" rule:"filled"`

	// Layers are the shop's own coats, the first one first.
	Layers []OwnCoat `json:"layers" need:"plated layers, the first one first" rule:"filled"`
	// Steps are the shop's own sequence of tanks.
	Steps []OwnTank `json:"sequence" need:"tanks, the first one first" rule:"filled"`

	Finish      sequence.Finish `json:"finish" need:"a word in quotes" doc:"asks for a sequence of tanks"`
	SkinContact bool            `json:"skin_contact" doc:"worn or handled for long"`
	// Steel that hydrogen can break may ask for relief before plating and a bake after it.
	HighStrength bool `json:"high_strength" doc:"hard or highly stressed steel; its strength is then asked for"`
	// Of Tensile and Hardness one is given; the strength is then found from the hardness.
	Tensile  units.Pressure `json:"tensile_strength" rule:"positive" in:"MPa" doc:"actual tensile strength of the steel"`
	Hardness string         `json:"hardness" doc:"of the steel, as 45 HRC or 450 HV, in place of tensile_strength"`
	Relieved bool           `json:"stress_relieved" doc:"the steel was freed of its stresses before it came"`

	// MinThickness and Evenness are of a planned finish: without Layers.
	MinThickness units.Length `json:"min_thickness" rule:"positive" in:"µm" doc:"of the finish on its significant surface"`
	Evenness

	Rinse *Rinse `json:"rinse" doc:"drag-out and water; left out: not computed"`
	Price *Price `json:"price" doc:"left out: no quote"`

	// BathFile names a file of the shop's own baths, for [bath.Read]; Baths are those baths.
	// [Read] reads them with the job.
	BathFile string      `json:"baths" doc:"a file of baths, whose keys stand beside those of the library"`
	Baths    []bath.Bath `json:"-"`
}

// A Part is one sort of piece of the load. One of Area, Shape and Mesh is needed.
type Part struct {
	Name   string     `json:"name"`
	Count  int        `json:"count" rule:"1..1000000" doc:"1 when left out"`
	Area   units.Area `json:"area" rule:"positive" in:"cm²" doc:"of one piece"`
	Shape  *Shape     `json:"shape" doc:"a body with dimensions"`
	Mesh   *MeshFile  `json:"mesh" doc:"a body in an STL or PLY file"`
	Masked units.Area `json:"masked" rule:"nonnegative" in:"cm²" doc:"stopped off on each; taken off the area"`
}

// A OwnCoat is one coat of the shop's own. Of MinThickness, the current density (or the
// current) and Time it gives two; in a library bath the rest is the bath's.
type OwnCoat struct {
	Name string       `json:"name"`
	Role plating.Role `json:"role" doc:"finish, strike or underplate; finish when left out"`
	Bath bath.Bath    `json:"bath" with:"must" need:"the bath as an object"`
	Evenness

	Area           units.Area           `json:"area" rule:"positive" in:"cm²" doc:"when it is not that of the load"`
	MinThickness   units.Length         `json:"min_thickness" rule:"positive" in:"µm" doc:"on the significant surface"`
	CurrentDensity units.CurrentDensity `json:"current_density" rule:"positive" in:"A/dm²"`
	// In place of CurrentDensity: the area of the layer turns it into one.
	Current    units.Current  `json:"current" rule:"positive" in:"A" doc:"for the load, in place of current_density"`
	Time       units.Duration `json:"time" rule:"positive" in:"min"`
	CountBelow bool           `json:"count_below" doc:"layers of the same metal below count towards min_thickness"`
}

// An Evenness says how unevenly a coat lies: the ratio of thinnest to average thickness
// with where it comes from, thicknesses read on a trial piece, or a class of shape.
type Evenness struct {
	MinToAverage units.Ratio    `json:"min_to_average" rule:"share" doc:"thinnest over average thickness, 1 only for an even coat"`
	Basis        string         `json:"basis" doc:"where that ratio comes from"`
	Uncertainty  units.Ratio    `json:"uncertainty" rule:"share" in:"%" doc:"of the ratio, relative"`
	Readings     []units.Length `json:"readings" need:"thicknesses" rule:"filled" in:"µm" doc:"read on a trial piece, in place of min_to_average"`
	ShapeClass   throwing.Class `json:"shape_class" need:"a class in quotes" doc:"a rule of thumb, in place of min_to_average"`
}

// A OwnTank is one tank of the shop's own sequence: Layer for a tank that plates, which takes
// everything else from the layer, or Kind and what the tank holds.
type OwnTank struct {
	Layer     LayerRef       `json:"layer" doc:"name or number of the layer that it plates"`
	LiveEntry bool           `json:"live_entry" doc:"the current is on before the piece goes in"`
	Wait      units.Duration `json:"wait" rule:"positive" in:"s" doc:"in the air before the next tank"`

	Kind sequence.TankKind `json:"kind" need:"what the tank is for, in quotes"`
	Name string            `json:"name"`

	Stages    int                 `json:"stages" rule:"1..9" doc:"of a rinse; 1 when left out"`
	Flow      *sequence.RinseFlow `json:"flow" doc:"of a rinse; running when left out, still behind a precious bath"`
	Deionised bool                `json:"deionised"`
	Acidified bool                `json:"acidified" doc:"a little acid, against a new passive film"`
	Station   string              `json:"station" doc:"the rinse that really stands there: the same name, the same water"`

	Holds string          `json:"holds" doc:"what is in it, by chemistry"`
	Does  sequence.Effect `json:"does" rule:"flags"`
	// Nil is not given, which differs from a list without words: that one says there are none.
	Hazards *plating.Hazard `json:"hazards" rule:"flags" doc:"words of the hazard table; an empty list for none"`
	// A figure that is not given is left out of the review, not taken as zero.
	PH             bath.Range[plating.PH]           `json:"pH"`
	Mild           bool                             `json:"mild" doc:"acid of pH 1 or more, or inhibited caustic"`
	Strong         bool                             `json:"strong" doc:"much caustic"`
	Polarity       sequence.Polarity                `json:"polarity"`
	Counter        bath.Words                       `json:"counter" doc:"the other electrode"`
	Agitation      bath.Words                       `json:"agitation"`
	Look           []string                         `json:"look" doc:"what to look at before going on"`
	CurrentDensity bath.Range[units.CurrentDensity] `json:"current_density" in:"A/dm²"`
	Volts          bath.Range[units.Voltage]        `json:"volts" in:"V"`
	Temperature    bath.Range[units.Temperature]    `json:"temperature" in:"°C"`
	Time           bath.Range[units.Duration]       `json:"time" in:"s"`
	Vessel         plating.Vessel                   `json:"vessel" need:"a word in quotes" doc:"what the tank is made of"`
}

// A LayerRef names a layer by its name, or by its number from 1.
type LayerRef string

// A Rinse says how the work drains and how it is rinsed. One of Shape and Measured is
// needed.
type Rinse struct {
	Shape rinse.Drainage `json:"hangs" need:"a row of the drag-out table in quotes" doc:"a row of the drag-out table"`
	// Measured takes the place of the table, and of what corrects it.
	Measured  units.Volume    `json:"drag_out" rule:"positive" in:"mL" doc:"measured, of the load"`
	Drain     units.Duration  `json:"drain" rule:"positive" in:"s" doc:"over the bath; left out: as printed"`
	Thickness rinse.Thickness `json:"liquid" need:"a word in quotes" doc:"viscosity of what drains"`

	Ratio  units.Ratio `json:"ratio" doc:"how many times weaker than the bath the last water must be; left out: no water is computed"`
	Stages int         `json:"stages" rule:"1..9" doc:"of each proposed counterflow rinse; 2 when left out"`

	// A drag-out tank behind each precious bath, poured back every so many loads. The work
	// comes wet into the bath: there is room for what evaporates only.
	DragOutTank units.Volume `json:"drag_out_tank" rule:"positive" in:"L" doc:"its volume; left out: what it brings back is not computed"`
	Loads       int          `json:"loads" rule:"1..1000000" doc:"between two returns; 1 when left out"`
	Evaporation units.Volume `json:"evaporation" rule:"positive" in:"mL" doc:"from each bath in the time of a load, where the bath says nothing else"`
}

// A Price is what the quote needs beyond the sheet. Of the embedded order the sheet sets
// the pieces, which are those of the parts, and adds the metals, the labour at the line
// and the energy of the plating current to what is there.
type Price struct {
	price.Order

	LinePerHour decimal.Decimal  `json:"line_per_hour" doc:"for the time at the line"`
	Handling    units.Duration   `json:"handling" rule:"positive" in:"s" doc:"to go from tank to tank, for each tank"`
	Heating     units.Energy     `json:"heating" rule:"positive" in:"kW·h" doc:"of the baths for this job, beside the plating current"`
	Rectifier   units.Efficiency `json:"rectifier" rule:"share" in:"%" doc:"efficiency of the rectifier"`
}
