package sequence

import (
	"errors"
	"fmt"

	"example.com/laydown/plating"
	"example.com/laydown/plating/bath"
	"example.com/laydown/units"
)

// layerOf makes the layer of a plating tank, without its bath. What the tank gives decides
// what is computed:
//
//	minimum thickness              time, at the current density set
//	minimum thickness and time     current density
//	time, or the usual time        thickness: a strike
func layerOf(t *Tank, p *Piece) plating.Layer {
	l := plating.Layer{Name: t.title(), Area: p.Area, Distribution: p.Distribution, MinThickness: t.MinThickness}
	switch t.Kind {
	case Strike:
		l.Role = plating.RoleStrike
	case Underplate:
		l.Role = plating.RoleUnder
	}
	switch {
	case t.MinThickness > 0 && t.Time > 0 && t.CurrentDensity == 0: // the current is found
		l.Time = t.Time
	case t.MinThickness > 0:
		l.CurrentDensity, l.Time = t.density(), t.Time
	default:
		l.CurrentDensity = t.density()
		if l.Time = t.Time; l.Time == 0 {
			l.Time = t.Bath.Time.Mid()
		}
	}
	return l
}

// notJustOutside drops an error that only says that a setting lies outside the
// published range: the card and the notes of the estimate show that.
func notJustOutside(err error) error {
	var outside *units.RangeError
	if errors.As(err, &outside) {
		return nil
	}
	return err
}

// Layers makes the layers of a sequence for [plating.EstimateSystem]: one for each
// tank that plates, with the bath at the middle of its ranges, strikes by their
// time, the rest by their minimum thickness. A setting outside a bath's range is kept;
// the notes of the estimate question it. The strike is not counted towards the
// finish (CountBelow is false): set it where you want that.
//
// Errors: a [*StopError] when [Check] forbids the sequence; a
// [*units.ValueError], with the tank named, when the piece has no area or ratio
// of thinnest to average.
func Layers(tanks []Tank, p Piece) ([]plating.Layer, error) {
	if err := Approve(Check(tanks, p)); err != nil {
		return nil, err
	}
	var layers []plating.Layer
	for i := range tanks {
		t := &tanks[i]
		if !t.Kind.deposits() {
			continue
		}
		l := layerOf(t, &p)
		b, err := t.Bath.At(bath.OperatingPoint{CurrentDensity: l.CurrentDensity})
		if err = notJustOutside(err); err != nil {
			return nil, fmt.Errorf("tank %d, %s: %w", i+1, units.Clip(t.title()), err)
		}
		l.Bath = b
		if err := l.Check(); err != nil {
			return nil, fmt.Errorf("tank %d, %s: %w", i+1, units.Clip(t.title()), err)
		}
		layers = append(layers, l)
	}
	return layers, nil
}
