package ledger

import (
	"fmt"
	"math"

	"example.com/laydown/units"
)

// The common sources of error: one unknown each for the whole book, so that
// their effects on the loads add up and do not average out.
const (
	byCathode = iota // current efficiency
	byAnode          // anode efficiency
	byVolume         // level mark
	sources
)

// A core holds the running figures of a book, in SI units. It is a plain value:
// a copy is a trial.
type core struct {
	metal, volume float64
	sens          [sources]float64 // change of metal for a unit change of each common source
	own           float64          // variance of metal from errors that each entry has for itself

	opening                                                            float64
	added, anode, dragIn, deposited, dragOut, corrected, analysed      total
	charge, sinceAddition, sinceAnalysis, computedCharge, varianceThen float64
	disagrees                                                          bool
	// the opening content came without uncertainty, and no analysis yet
	guess bool
}

// A total is a sum that keeps the digits a float64 would drop.
type total struct{ sum, rest float64 }

// add adds x; what rounding takes off goes into rest.
func (t *total) add(x float64) {
	s := t.sum + x
	if math.Abs(t.sum) >= math.Abs(x) {
		t.rest += (t.sum - s) + x
	} else {
		t.rest += (x - s) + t.sum
	}
	t.sum = s
}

func (t total) value() float64 { return t.sum + t.rest }

func newCore(b *Account) core {
	c := core{metal: float64(b.Content) * float64(b.Volume), volume: float64(b.Volume)}
	c.opening = c.metal
	c.sens[byVolume] = float64(b.Content)
	c.own = square(float64(b.ContentUncertainty) * float64(b.Volume))
	c.varianceThen = c.variance(b)
	c.guess = b.ContentUncertainty == 0
	return c
}

func square(x float64) float64 { return x * x }

// variance returns the squared standard uncertainty of the metal.
func (c *core) variance(b *Account) float64 {
	v := c.own + square(c.sens[byCathode]*b.Efficiency.spread()) + square(c.sens[byVolume]*float64(b.VolumeUncertainty))
	if b.Anode.Soluble() {
		v += square(c.sens[byAnode] * b.Anode.Efficiency.spread())
	}
	return v
}

// contentVariance is that of metal over volume: a mark that is too high adds
// metal to the opening and thins it by the same, so only the difference counts.
func (c *core) contentVariance(b *Account) float64 {
	slope := c.sens[byVolume]/c.volume - c.metal/square(c.volume)
	v := c.own + square(c.sens[byCathode]*b.Efficiency.spread())
	if b.Anode.Soluble() {
		v += square(c.sens[byAnode] * b.Anode.Efficiency.spread())
	}
	return v/square(c.volume) + square(slope*float64(b.VolumeUncertainty))
}

// mostMarks is how many times the volume at the mark a bath may hold by the book: a
// slip of the pen in litres, which no later entry would show, is more.
const mostMarks = 2

// settle checks that metal and volume are what they can be.
func (c *core) settle(b *Account) error {
	if c.metal < 0 {
		return &units.ValueError{Field: "metal in the bath", Value: units.Mass(c.metal).String(),
			Need: "an analysis or a correction before this entry: the book does not know of that much metal",
			Err:  units.ErrNegative}
	}
	if err := units.Finite("metal in the bath", units.Mass(c.metal)); err != nil {
		return err
	}
	if c.volume <= 0 {
		return &units.ValueError{Field: "volume of the bath", Value: units.Volume(c.volume).String(),
			Need: "water or a correction before this entry: the book does not know of that much solution",
			Err:  units.ErrNotPositive}
	}
	if err := units.Finite("volume of the bath", units.Volume(c.volume)); err != nil {
		return err
	}
	if c.volume > mostMarks*float64(b.Volume) {
		return &units.ValueError{Field: "volume of the bath", Value: units.Volume(c.volume).String(),
			Need: fmt.Sprintf("at most %d times the %s of the mark; for a larger tank open a new book", mostMarks, b.Volume),
			Err:  units.ErrOutOfRange}
	}
	return units.Finite("charge in the book", units.Charge(c.charge))
}

func (l Load) apply(b *Account, c *core, r *Record) error {
	in := float64(l.DragIn) * float64(l.DragInContent)
	c.metal += in
	c.volume += float64(l.DragIn)
	c.dragIn.add(in)

	q := float64(l.Charge)
	rates := b.rates()
	out := float64(l.Weighed) * b.fine()
	if l.Weighed > 0 {
		c.own += square(float64(l.WeighedUncertainty) * b.fine())
	} else {
		out = float64(rates.Deposit) * q
		c.sens[byCathode] -= b.fine() * float64(b.Equivalent) * q
		c.computedCharge += q
	}
	back := 0.0
	if b.Anode.Soluble() {
		back = float64(rates.Anode) * q
		c.sens[byAnode] += float64(b.Anode.Share) * b.anodeEquivalent() * q
	}
	c.metal += back
	c.metal -= out
	c.deposited.add(out)
	c.anode.add(back)
	if err := c.settle(b); err != nil {
		return err
	}

	lost := 0.0
	if d := float64(l.DragOut); d > 0 {
		if d >= c.volume {
			return &units.ValueError{Field: "drag-out", Value: l.DragOut.String(), Need: "less than the bath, " +
				units.Volume(c.volume).String(), Err: units.ErrInconsistent}
		}
		content := c.metal / c.volume
		keep := 1 - d/c.volume
		lost = content * d
		for i := range c.sens {
			c.sens[i] *= keep
		}
		c.sens[byVolume] += content * d / c.volume
		c.own = c.own*square(keep) + square(content*float64(l.DragOutUncertainty))
		c.metal -= lost
		c.volume -= d
	}
	c.dragOut.add(lost)
	c.charge += q
	c.sinceAddition += q
	c.sinceAnalysis += q
	r.Deposited, r.FromAnode, r.DraggedIn, r.DraggedOut = units.Mass(out), units.Mass(back), units.Mass(in),
		units.Mass(lost)
	return nil
}

func (e Evaporation) apply(_ *Account, c *core, _ *Record) error {
	c.volume -= float64(e.Volume)
	return nil
}

func (a Addition) apply(b *Account, c *core, r *Record) error {
	m, err := a.MetalMass(b.Metal)
	if err != nil {
		return err
	}
	c.metal += float64(m)
	c.volume += float64(a.Solution) + float64(a.Water)
	c.own += square(float64(a.Uncertainty))
	c.added.add(float64(m))
	if m > 0 {
		c.sinceAddition = 0
	}
	r.Added = m
	return nil
}

func (k Correction) apply(_ *Account, c *core, r *Record) error {
	c.metal += float64(k.Metal)
	c.volume += float64(k.Volume)
	c.own += square(float64(k.Uncertainty))
	c.corrected.add(float64(k.Metal))
	r.Corrected = k.Metal
	return nil
}

func (a Analysis) apply(b *Account, c *core, r *Record) error {
	book := Estimate{Content: units.MassConcentration(c.metal / c.volume),
		Uncertainty: units.MassConcentration(math.Sqrt(c.contentVariance(b)))}
	lab := Estimate{Content: a.Content, Uncertainty: a.Uncertainty}
	_, weight, err := Combine(book, lab)
	if err != nil {
		return err
	}
	if a.Reset || c.guess {
		weight = 1
	}
	cmp := &Comparison{Book: book, Lab: lab, Weight: weight}
	cmp.Apart = units.Ratio(float64(lab.Content-book.Content) / math.Hypot(float64(lab.Uncertainty),
		float64(book.Uncertainty)))
	if !c.guess {
		cmp.imply(b, c)
	}
	k := float64(weight)
	after := (1-k)*c.metal + k*float64(a.Content)*c.volume
	moved := after - c.metal
	for i := range c.sens {
		c.sens[i] *= 1 - k
	}
	c.sens[byVolume] += k * float64(a.Content)
	c.own = square(1-k)*c.own + square(k*c.volume*float64(a.Uncertainty))
	c.metal = after
	c.analysed.add(moved)
	c.sinceAnalysis, c.computedCharge = 0, 0
	c.varianceThen = c.variance(b)
	c.disagrees = math.Abs(float64(cmp.Apart)) > 2 && !c.guess
	c.guess = false
	cmp.Both = Estimate{Content: units.MassConcentration(c.metal / c.volume),
		Uncertainty: units.MassConcentration(math.Sqrt(c.contentVariance(b)))}
	r.Analysed, r.Comparison = units.Mass(moved), cmp
	return nil
}
