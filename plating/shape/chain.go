package shape

import (
	"math"
	"strconv"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// A Chain is made of equal closed links of round wire: a weight chain. Its size
// is given as a number of Links, or as a Length together with the LinkPitch.
type Chain struct {
	WireDiameter units.Length `json:"wire_diameter" with:"must" rule:"positive" in:"mm"`
	// of one link: once round along the middle of the wire; see OvalLink
	Centreline units.Length `json:"centreline" with:"must" rule:"positive" in:"mm"`
	Links      int          `json:"links" rule:"1..1000000"`        // how many, or 0
	Length     units.Length `json:"length" rule:"positive" in:"mm"` // of the taut chain, when Links is 0
	// what one link adds to the taut chain: its inner length
	LinkPitch units.Length `json:"link_pitch" rule:"positive" in:"mm"`
}

func (c Chain) check() error {
	if err := firstOf(
		units.Positive("chain wire diameter", c.WireDiameter),
		units.Positive("chain link centreline", c.Centreline)); err != nil {
		return err
	}
	if least := units.Length(math.Pi * float64(c.WireDiameter)); c.Centreline <= least {
		return contradiction("chain link centreline", c.Centreline,
			"more than "+least.String()+": a shorter link of this wire has no hole")
	}
	if c.Links != 0 {
		return c.checkCounted()
	}
	if err := firstOf(
		units.Positive("chain length", c.Length),
		units.Positive("chain link pitch", c.LinkPitch)); err != nil {
		return err
	}
	if most := c.Centreline / 2; c.LinkPitch >= most {
		return contradiction("chain link pitch", c.LinkPitch,
			"less than half the link's centreline, "+most.String())
	}
	return nil
}

func (c Chain) checkCounted() error {
	switch {
	case c.Links < 0:
		return &units.ValueError{Field: "chain links", Value: strconv.Itoa(c.Links),
			Need: "one or more, or 0 to go by length", Err: units.ErrNegative}
	case c.Length != 0:
		return contradiction("chain length", c.Length, "zero when the links are counted")
	case c.LinkPitch != 0:
		return contradiction("chain link pitch", c.LinkPitch, "zero when the links are counted")
	}
	return nil
}

func (c Chain) links() float64 {
	if c.Links != 0 {
		return float64(c.Links)
	}
	return float64(c.Length) / float64(c.LinkPitch)
}

// Area returns the area of all links.
//
//	A = N π d l,   N = X/p
//
//	d  WireDiameter  > 0 [m]
//	l  Centreline    of one link, > π d [m]
//	N  Links         number of links, > 0; by length it need not be whole
//	X  Length        of the taut chain, > 0 [m]
//	p  LinkPitch     inner length of a link, > 0 and < l/2 [m]
//
// One link is exact, whatever its outline, as long as no bend is tighter than
// the wire's own radius. Neglected is what the links hide from each other: they
// touch in spots of no area, but each touch shades a patch about as wide as the
// wire, which plates thinner than the mean (common practice, no source). The
// fillet of a soldered joint is left out too.
//
// Errors: a [*units.ValueError] for a dimension that is not finite or not above
// zero, for negative Links, and for an area that a float64 cannot hold; one that
// wraps [units.ErrInconsistent] for a link without a hole, for a pitch that the
// link cannot have, and when both Links and Length or LinkPitch are given.
//
// Source: [Derived], the wall of a bent wire as for [Wire.Area].
func (c Chain) Area() (units.Area, error) {
	if err := c.check(); err != nil {
		return 0, err
	}
	return total("chain area", c.links()*math.Pi*float64(c.WireDiameter)*float64(c.Centreline))
}

// Working returns the calculation of [Chain.Area], with the same errors: one
// step, or two when the links are counted by length.
func (c Chain) Working() ([]working.Step, error) {
	a, err := c.Area()
	if err != nil {
		return nil, err
	}
	var steps []working.Step
	n := working.Number("N", "number of links", c.links())
	if c.Links == 0 {
		steps = append(steps, working.Step{
			Formula: "N = X/p",
			Terms: []working.Term{
				working.Of("X", "length of the taut chain", c.Length),
				working.Of("p", "inner length of a link", c.LinkPitch)},
			Result: n,
			Source: srcDerived,
		})
	}
	return append(steps, step("area of the chain", "N·π·d·l", srcDerived,
		"What the links hide from each other is not taken off.", a, n,
		working.Of("d", "diameter of the wire", c.WireDiameter),
		working.Of("l", "centreline of one link", c.Centreline))...), nil
}

// OvalLink returns the centreline of a link with straight sides and half-round
// ends from its outer size, which is what a calliper measures.
//
//	l = 2 (L - W) + π (W - d)
//
//	L  outerLength  outer length, ≥ W [m]
//	W  outerWidth   outer width, > 2 d [m]; equal to L for a round link
//	d  wire         diameter of the wire, > 0 [m]
//
// Exact: two straights of L - W each, and two half circles whose middle has the
// diameter W - d. Errors: a [*units.ValueError] for a dimension that is not
// finite or not above zero and for a centreline that a float64 cannot hold; one
// that wraps [units.ErrInconsistent] for a link wider than long or without a hole.
//
// Source: [Derived].
func OvalLink(outerLength, outerWidth, wire units.Length) (units.Length, error) {
	if err := firstOf(
		units.Positive("link outer length", outerLength),
		units.Positive("link outer width", outerWidth),
		units.Positive("link wire diameter", wire)); err != nil {
		return 0, err
	}
	switch {
	case outerWidth > outerLength:
		return 0, contradiction("link outer width", outerWidth, "at most the outer length of "+outerLength.String())
	case wire >= outerWidth/2:
		return 0, contradiction("link wire diameter", wire, "less than half the outer width of "+outerWidth.String())
	}
	l := 2*(outerLength-outerWidth) + math.Pi*(outerWidth-wire)
	if err := units.Finite("link centreline", l); err != nil {
		return 0, err
	}
	return l, nil
}
