package thinspot

import (
	"io"

	"github.com/shopspring/decimal"

	"example.com/laydown/plating/bath"
	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/units"
)

// Format is the value of the field "format" that [Read] reads.
const Format = "laydown case 1"

// A CaseFile is what a case file says; the package comment describes it, and the tags name the
// members. What is zero is left out.
type CaseFile struct {
	Name         string             `json:"case"`
	Method       string             `json:"method" words:"profile, mesh" doc:"profile when left out"`
	Solution     bath.Bath          `json:"bath" with:"must" need:"the bath as an object"`
	Conductivity units.Conductivity `json:"conductivity" with:"must" need:"one as \"6 S/m\"" rule:"positive" in:"S/m"`
	Current      units.Current      `json:"current" rule:"positive" in:"A" doc:"of all cathodes; this or the voltage"`
	Voltage      units.Voltage      `json:"voltage" rule:"positive" in:"V" doc:"between the rails"`
	MinThickness units.Length       `json:"min_thickness" with:"must" need:"the thickness at the thinnest spot, as \"2.5 µm\"" rule:"positive" in:"µm"`
	PricePerGram decimal.Decimal    `json:"price_per_g" rule:"amount" doc:"of the counted metal"`
	Currency     string             `json:"currency"`
	ByProfile    ByProfile          `json:",inline" if:"method=profile"`
	ByMesh       ByMesh             `json:",inline" if:"method=mesh"`
	Marks        *Region            `json:"significant" doc:"where the minimum thickness holds; left out: everywhere"`
}

// ByProfile is what a case by profile has: bodies of revolution.
type ByProfile struct {
	Tank  *RoundTank `json:"tank" doc:"left out: an open bath, the anode far away"`
	Parts []Turned   `json:"parts" with:"must" need:"a list of parts, the workpiece first" rule:"filled"`
}

// ByMesh is what a case by mesh has: any bodies.
type ByMesh struct {
	Tank   *CaseTank   `json:"tank"`
	Parts  []CasePart  `json:"parts" with:"must" need:"a list of parts, the workpiece first" rule:"filled"`
	Places []CasePlace `json:"positions" need:"positions" rule:"filled" doc:"of the workpiece, one after the other"`
}

// A RoundTank is the tank of a case by profile.
type RoundTank struct {
	Radius units.Length `json:"radius" with:"must" need:"\"radius\" and \"depth\"" rule:"positive" in:"mm"`
	Depth  units.Length `json:"depth" with:"must" need:"\"radius\" and \"depth\"" rule:"positive" in:"mm"`
}

// A CaseTank is the tank of a case by mesh, with a corner at the origin and the surface of the
// solution on top.
type CaseTank struct {
	Length units.Length `json:"length" with:"must" need:"\"length\", \"width\" and \"depth\"" rule:"positive" in:"mm" doc:"along x"`
	Width  units.Length `json:"width" with:"must" need:"\"length\", \"width\" and \"depth\"" rule:"positive" in:"mm" doc:"along y"`
	Depth  units.Length `json:"depth" with:"must" need:"\"length\", \"width\" and \"depth\"" rule:"positive" in:"mm" doc:"along z"`
	Panel  units.Length `json:"panel" rule:"positive" in:"mm" doc:"of its walls"`
}

// A CaseSurface is what any part says of itself.
type CaseSurface struct {
	Name string   `json:"name"`
	Kind string   `json:"kind" words:"cathode, anode, shield, robber, floating" doc:"cathode when left out"`
	Law  *CaseLaw `json:"law" doc:"how the potential rises with the current density; left out: primary"`
}

// A CaseLaw is the rate law of a surface; see package current.
type CaseLaw struct {
	Model       string               `json:"model" words:"primary, linear, tafel, butler-volmer"`
	Resistance  units.AreaResistance `json:"resistance" if:"model=linear"`
	Exchange    units.CurrentDensity `json:"exchange" if:"model=tafel|butler-volmer" in:"A/m²"`
	Alpha       units.Ratio          `json:"alpha" if:"model=tafel"`
	Anodic      units.Ratio          `json:"anodic" if:"model=butler-volmer"`
	Cathodic    units.Ratio          `json:"cathodic" if:"model=butler-volmer"`
	Temperature units.Temperature    `json:"temperature" if:"model=tafel|butler-volmer" in:"°C"`
}

// A Turned is a part by profile, one of its bodies of revolution.
type Turned struct {
	CaseSurface
	Profile *Contour  `json:"profile"`
	Rod     *Rod      `json:"rod"`
	Ball    *Ball     `json:"ball"`
	Torus   *CaseRing `json:"torus"`
	Tube    *Sleeve   `json:"tube"`
}

// A Contour is a profile step by step. Points are radius and height.
type Contour struct {
	Start [2]units.Length `json:"start" with:"must,keep" need:"radius and height" in:"mm"`
	Steps []ProfileStep   `json:"steps" with:"must" need:"steps of the profile" rule:"filled"`
}

// A ProfileStep goes to a point: straight, on an arc through another one, or on an arc whose
// centre is on the axis.
type ProfileStep struct {
	To  [2]units.Length  `json:"to" with:"must,keep" need:"radius and height" in:"mm"`
	By  string           `json:"by" words:"line, arc, cap" doc:"line when left out"`
	Via *[2]units.Length `json:"via" with:"must" if:"by=arc" need:"radius and height of a point on the way: an arc needs it" in:"mm"`
}

// A Rod is a cylinder that stands on the axis.
type Rod struct {
	Radius units.Length `json:"radius" with:"must,keep" in:"mm"`
	Low    units.Length `json:"low" with:"must,keep" in:"mm"`
	High   units.Length `json:"high" with:"must,keep" in:"mm"`
}

// A Ball is a sphere on the axis.
type Ball struct {
	Radius units.Length `json:"radius" with:"must,keep" in:"mm"`
	Height units.Length `json:"height" with:"must,keep" in:"mm" doc:"of its middle"`
}

// A CaseRing is a torus about the axis.
type CaseRing struct {
	Radius    units.Length `json:"radius" with:"must,keep" in:"mm" doc:"to the middle of the tube"`
	Height    units.Length `json:"height" with:"must,keep" in:"mm"`
	Thickness units.Length `json:"thickness" with:"must,keep" in:"mm" doc:"of the tube"`
}

// A Sleeve is a tube about the axis.
type Sleeve struct {
	Inner units.Length `json:"inner" with:"must,keep" in:"mm" doc:"radius"`
	Outer units.Length `json:"outer" with:"must,keep" in:"mm" doc:"radius"`
	Low   units.Length `json:"low" with:"must,keep" in:"mm"`
	High  units.Length `json:"high" with:"must,keep" in:"mm"`
}

// A CasePart is a part by mesh: a body, a file with a mesh, or a whole wall of the tank.
type CasePart struct {
	CaseSurface
	Box      *Box      `json:"box"`
	Plate    *Plate    `json:"plate"`
	Cylinder *Cylinder `json:"cylinder"`
	Tube     *Tube     `json:"tube"`
	Sphere   *Sphere   `json:"sphere"`
	Torus    *Torus    `json:"torus"`
	Cup      *Cup      `json:"cup"`

	mesh.Named `if:"file"`
	Wall       string       `json:"wall" words:"low x, high x, low y, high y, low z, high z"`
	Panel      units.Length `json:"panel" if:"!wall" rule:"positive" in:"mm" doc:"longest side of a triangle"`
	Grade      float64      `json:"grade" if:"!wall !file" rule:"1..3" doc:"how much finer at edges; 1 for even panels, 2 when left out"`
	Refine     int          `json:"refine" if:"file" rule:"0..4" doc:"each triangle becomes four, so often"`
	Hung       `if:"!wall"`
}

// A Hung says how a body hangs: turned about its middle, one turn after the other, and where
// its middle comes; at the origin, or where the workpiece hangs, when At is nil.
type Hung struct {
	Turn []Turn           `json:"turn" need:"turns" rule:"filled"`
	At   *[3]units.Length `json:"at" need:"x, y and z" in:"mm"`
}

// A Turn turns a body about an axis.
type Turn struct {
	Axis    string  `json:"axis" with:"must" need:"x, y or z" words:"x, y, z"`
	Degrees float64 `json:"degrees" with:"must,keep" need:"degrees" rule:"-3600..3600"`
}

// The bodies that a part by mesh may be.
type (
	// A Box has sharp edges.
	Box struct {
		Length units.Length `json:"length" with:"must" rule:"positive" in:"mm"`
		Width  units.Length `json:"width" with:"must" rule:"positive" in:"mm"`
		Height units.Length `json:"height" with:"must" rule:"positive" in:"mm"`
	}
	// A Plate has round edges.
	Plate struct {
		Length     units.Length `json:"length" with:"must" rule:"positive" in:"mm"`
		Width      units.Length `json:"width" with:"must" rule:"positive" in:"mm"`
		Thickness  units.Length `json:"thickness" with:"must" rule:"positive" in:"mm"`
		EdgeRadius units.Length `json:"edge_radius" with:"must" rule:"positive" in:"mm"`
	}
	// A Cylinder lies along z.
	Cylinder struct {
		Diameter units.Length `json:"diameter" with:"must" rule:"positive" in:"mm"`
		Length   units.Length `json:"length" with:"must" rule:"positive" in:"mm"`
	}
	// A Tube lies along z; its diameters are given.
	Tube struct {
		Outer  units.Length `json:"outer" with:"must" rule:"positive" in:"mm"`
		Inner  units.Length `json:"inner" with:"must" rule:"positive" in:"mm"`
		Length units.Length `json:"length" with:"must" rule:"positive" in:"mm"`
	}
	// A Sphere has a diameter.
	Sphere struct {
		Diameter units.Length `json:"diameter" with:"must" rule:"positive" in:"mm"`
	}
	// A Torus lies about z.
	Torus struct {
		Centre units.Length `json:"centre_diameter" with:"must" rule:"positive" in:"mm"`
		Tube   units.Length `json:"tube_diameter" with:"must" rule:"positive" in:"mm"`
	}
	// A Cup is a cylinder with a recess from above; diameters, and depth of the recess.
	Cup struct {
		Outer  units.Length `json:"outer" with:"must" rule:"positive" in:"mm"`
		Height units.Length `json:"height" with:"must" rule:"positive" in:"mm"`
		Recess units.Length `json:"recess" with:"must" rule:"positive" in:"mm"`
		Depth  units.Length `json:"depth" with:"must" rule:"positive" in:"mm"`
	}
)

// A CasePlace is a position of the workpiece for a share of the time: turned from the way it
// hangs, and moved when At is given.
type CasePlace struct {
	Share units.Ratio `json:"share" with:"must" need:"the share of the time in this position" rule:"share" in:"%"`
	Hung
}

// A Region is where the minimum thickness holds: where all of the marks do that are given.
type Region struct {
	Box    *BoxMark    `json:"box"`
	Facing *FacingMark `json:"facing"`
	Edges  *EdgesMark  `json:"away_from_edges" doc:"by mesh"`
}

// A BoxMark holds within a box; by profile of radius, 0 and height.
type BoxMark struct {
	Low  [3]units.Length `json:"low" with:"must,keep" need:"x, y and z" in:"mm"`
	High [3]units.Length `json:"high" with:"must,keep" need:"x, y and z" in:"mm"`
}

// A FacingMark holds where the surface looks in a direction.
type FacingMark struct {
	Direction string  `json:"direction" with:"must" need:"x, -x, y, -y, z or -z" words:"x, -x, y, -y, z, -z"`
	Within    float64 `json:"within" with:"must,keep" need:"degrees" rule:"0..180" doc:"degrees"`
}

// An EdgesMark holds away from edges that bend by more than an angle.
type EdgesMark struct {
	Distance    units.Length `json:"distance" with:"must" rule:"positive" in:"mm"`
	SharperThan float64      `json:"sharper_than" with:"must" need:"degrees" rule:"1..179" doc:"degrees"`
}

// A form is a file with its format.
type form struct {
	Format string `json:"format" is:"laydown case 1"`
	CaseFile
}

// Write writes the case as a file that [Read] reads back. Files that the case names are not
// written.
//
// Errors: a [*units.FileError] for a value that no file can hold, as NaN; those of w.
func (f CaseFile) Write(w io.Writer) error {
	if w == nil {
		return units.Missing("writer", "one that takes the case file")
	}
	// A case need not list the hazards of its bath. An empty list would say that it has none,
	// and a job with a sequence that takes the bath from here would believe it.
	raw, err := strictjson.Encode(form{CaseFile: f}, "bath.hazards")
	if err != nil {
		return &units.FileError{File: "case file", What: err.Error(), Err: err}
	}
	_, err = w.Write(raw)
	return err
}

// Schema returns the JSON Schema of case files, from the fields that [Read] knows.
func Schema() ([]byte, error) { return strictjson.Schema("case of laydown", form{}) }
