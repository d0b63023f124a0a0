package thinspot

import (
	"encoding/json"
	"math"

	"example.com/laydown/plating/coat"
	"example.com/laydown/units"
)

// ResultFormat is the value of "format" in the JSON of a [Result].
const ResultFormat = "laydown thin spot 1"

// MarshalJSON writes the figures of the page under names that say their units.
//
//	case, part, method            names of the case and the workpiece; the solution in words
//	area_cm2, volume_cm3, faces   of the workpiece as the case gives it
//	patches, unknowns             of the solution
//	part_current_A, total_current_A, cell_voltage_V
//	current_balance               what the currents fail to sum to zero by, relative
//	min_thickness_um              asked for
//	minutes_to_min_thickness      until the thinnest spot has it; all that follows is of then
//	min_um, p05_um, average_um, p95_um, max_um
//	min_to_average, basis, uncertainty         the last two for a job
//	thinnest_at_mm                x, y and z; by profile the radius, 0 and the height
//	thinnest_where, unresolved    in words; true when the mesh is too coarse for it
//	error_estimate                of the least density, relative; null when not known, and then
//	error_unknown_because         why
//	significant_cm2               where the minimum thickness holds
//	below_min_thickness_at_90_percent_cm2      of that, too thin in nine tenths of the time
//	metal, metal_g                symbol; on the workpiece
//	given_away_g                  of that, above the minimum thickness
//	given_away_price, price_per_g, currency    where the case has a price; amounts as text
//	warnings, cautions            in words; what was mended stands with the warnings
//	arrangements                  name; minutes, min_to_average, saved_minutes, saved_g against
//	                              the first; unresolved; no: why there are no figures
//	saves_metal, saves_time       the names of those that do, most first
//
// What is not known is null; price, warnings and arrangements are left out where there
// are none.
//
// Errors: those of [Result.WriteText] about the result, and of [json.Marshal].
func (r Result) MarshalJSON() ([]byte, error) {
	if err := r.check(); err != nil {
		return nil, err
	}
	c := &r.Coat
	um := func(l units.Length) float64 { return l.In(units.Micrometre) }
	cm2 := func(a units.Area) float64 { return a.In(units.SquareCentimetre) }
	f := map[string]any{
		"format": ResultFormat, "case": r.Case.Name, "method": r.Surface.Basis, "part": r.Workpiece,
		"area_cm2": cm2(r.Area), "volume_cm3": r.Volume.In(units.CubicCentimetre), "faces": r.Faces,
		"patches": len(r.Surface.Patches), "unknowns": r.Unknowns,
		"total_current_A": float64(r.Total), "part_current_A": float64(r.Current), "cell_voltage_V": float64(r.Voltage),
		"min_thickness_um": um(r.Case.MinThickness), "min_um": um(c.Min), "average_um": um(c.Average), "max_um": um(c.Max),
		"p05_um": um(c.P05), "p95_um": um(c.P95), "min_to_average": float64(c.MinToAverage),
		"basis": r.Ratio.Basis, "uncertainty": float64(r.Ratio.Uncertainty),
		"minutes_to_min_thickness": c.Time.In(units.Minute),
		"thinnest_at_mm":           []float64{1e3 * r.Spot.X, 1e3 * r.Spot.Y, 1e3 * r.Spot.Z}, "thinnest_where": r.Where,
		"metal": r.Case.Bath.Metal, "metal_g": c.FineMass.In(units.Gram), "given_away_g": r.Above.In(units.Gram),
		"significant_cm2":                       cm2(c.Area),
		"below_min_thickness_at_90_percent_cm2": cm2(r.Below),
		"current_balance":                       r.Balance, "error_estimate": nil, "unresolved": r.Surface.Unresolved,
		"cautions": r.Cautions,
	}
	if !math.IsNaN(r.Surface.MinError) {
		f["error_estimate"] = r.Surface.MinError
	} else {
		f["error_unknown_because"] = r.ErrorUnknown
	}
	if v, given := r.worth(r.Above); given {
		f["price_per_g"], f["given_away_price"] = r.Case.PricePerGram.String(), v.StringFixed(2)
		f["currency"] = r.Case.Currency
	}
	var others []map[string]any
	for _, o := range r.Others {
		v := map[string]any{"name": o.Name, "saved_g": nil, "minutes": nil, "min_to_average": nil, "saved_minutes": nil,
			"no": nil, "unresolved": o.Unresolved}
		if o.Err != nil {
			v["no"] = o.Err.Error()
		} else {
			v["saved_g"], v["minutes"], v["min_to_average"], v["saved_minutes"] = o.SavedMass.In(units.Gram),
				o.Time.In(units.Minute), float64(o.MinToAverage), o.SavedTime.In(units.Minute)
		}
		others = append(others, v)
	}
	if others != nil {
		f["arrangements"] = others
		f["saves_metal"], f["saves_time"] = coat.Best(r.Others)
	}
	if list := r.beware(); list != nil {
		f["warnings"] = list
	}
	return json.Marshal(f)
}

// UnmarshalJSON refuses: a result is made by [Case.Solve] and written one way.
func (r *Result) UnmarshalJSON([]byte) error {
	return &units.ValueError{Field: "result of a thin-spot case", Value: "JSON", Need: "the case, solved again",
		Err: units.ErrInconsistent}
}
