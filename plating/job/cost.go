package job

import (
	"fmt"
	"slices"

	"example.com/laydown/alloys"
	"example.com/laydown/plating"
	"example.com/laydown/plating/price"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// price fills in what the sheet knows and quotes.
func (s *Sheet) price() error {
	q := s.Job.Price
	if q == nil {
		return nil
	}
	// The order is the customer's part of the price: rates and rules as given. The sheet adds
	// what it has computed: metal deposited and lost, time at the line, energy. Then one quote
	// is made of both.
	j := q.Order
	j.Pieces = s.Job.pieces()
	if err := j.Check(); err != nil { // before anything is added to its numbers
		return fmt.Errorf("price: %w", err)
	}
	deposit, drips, err := s.priced(j)
	if err != nil {
		return err
	}
	j.Deposit, j.DragOut = slices.Concat(j.Deposit, deposit), slices.Concat(j.DragOut, drips)
	if !q.LinePerHour.IsZero() {
		// The typical time: a quote at the long end would charge every job for the worst one.
		minutes, err := price.Minutes(s.Line.Typical, 1, price.HalfEven)
		if err != nil {
			return err
		}
		j.Labour = append(append([]price.Labour(nil), j.Labour...), price.Labour{Name: "work at the line", Minutes: minutes,
			PerHour: q.LinePerHour})
	}
	energy, err := s.energy(q)
	if err != nil {
		return err
	}
	kwh, err := price.KilowattHours(energy, 3, price.Up)
	if err != nil {
		return err
	}
	j.Electricity.KilowattHours = j.Electricity.KilowattHours.Add(kwh)
	quote, err := j.Quote()
	if err != nil {
		return fmt.Errorf("price: %w", err)
	}
	s.Quote = &quote
	s.Swings, err = j.Sensitivity()
	return err
}

// priced lists deposit and drag-out of the metals that have a price, and notes
// those that have none.
func (s *Sheet) priced(j price.Order) (deposit, drips []price.Metal, err error) {
	priced := map[string]bool{}
	// A metal without a price is not an error: a nickel underplate is often covered by the
	// hourly rate. It is left out of the quote, and a note says so.
	for _, p := range j.Prices {
		priced[p.Symbol] = true
	}
	add := func(list []price.Metal, symbol string, m units.Mass) ([]price.Metal, error) {
		if m == 0 {
			return list, nil
		}
		w, err := price.Weigh(m, alloys.PerGram, 4, price.HalfEven)
		return append(list, price.Metal{Symbol: symbol, Mass: w}), err
	}
	for _, m := range s.Metals {
		if !priced[m.Metal] {
			s.Notes = append(s.Notes, plating.Note{Severity: plating.SeverityCaution, Source: "Definition",
				Text: fmt.Sprintf("no price is given for %s: its metal is not in the quote", orText(m.Metal,
					"the metal of a bath that names none")),
				Do: "name its price, or have it covered by the hourly rate"})
			continue
		}
		if deposit, err = add(deposit, m.Metal, m.FineMass); err != nil {
			return nil, nil, err
		}
	}
	if s.Rinsing == nil {
		return deposit, nil, nil
	}
	sums := map[string]units.Mass{}
	var order []string
	for _, m := range s.Rinsing.Metals {
		if !priced[m.Metal] {
			continue
		}
		if _, met := sums[m.Metal]; !met {
			order = append(order, m.Metal)
		}
		sums[m.Metal] += m.Lost
	}
	for _, symbol := range order {
		if drips, err = add(drips, symbol, sums[symbol]); err != nil {
			return nil, nil, err
		}
	}
	return deposit, drips, nil
}

// energy is that of the plating current at the upper end of the volts, through
// the rectifier, and of the heating as given.
func (s *Sheet) energy(q *Price) (units.Energy, error) {
	eff := q.Rectifier
	if eff == 0 {
		eff = 1
	}
	if err := units.PositiveFraction("efficiency of the rectifier", eff); err != nil {
		return 0, err
	}
	sum := 0.0
	for _, c := range s.Coats() {
		v := c.Bath.Volts.High
		if v == 0 {
			s.Notes = append(s.Notes, plating.Note{Severity: plating.SeverityInfo, Source: "Definition",
				Text: c.Name + " has no volts: its electricity is not in the quote",
				Do:   "small beside the rest; give the volts of the bath"})
		}
		// Volts times charge is energy. The upper end of the volts, so that the quote is not too
		// low.
		sum += float64(v) * float64(c.Result.Charge)
	}
	for i := range s.Stops { // electrocleaning and other current without a coat
		k := &s.Stops[i].Tank
		if s.Stops[i].Coat == nil && k.Set > 0 {
			sum += float64(k.Volts.High) * float64(k.Amps) * float64(k.Time.Typical)
		}
	}
	e := units.Energy(sum/float64(eff)) + q.Heating
	return e, units.Finite("energy of the job", e)
}

// Trust says in words how far the figures of a coat may be trusted.
func (p Spread) Trust() string {
	if p.Confidence >= origin.Given && !p.Known {
		return "figures as given; how far they may be off is not said"
	}
	return "rests on figures " + map[origin.Seen]string{origin.FromMemory: "from memory: weigh a trial piece first",
		origin.SecondHand: "known second hand",
		origin.Published:  "that are published", origin.Given: "of your own",
		origin.Measured: "that you measured"}[p.Confidence]
}
