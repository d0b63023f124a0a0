package price_test

import (
	"math/rand"
	"reflect"
	"strings"
	"testing"

	"example.com/laydown/alloys"
	"example.com/laydown/plating/price"
	"example.com/laydown/units"
	"github.com/shopspring/decimal"
)

// numbers lists every number of a job that a price is made from, by the name that
// [price.Order.Sensitivity] gives it, written out by hand.
func numbers(j *price.Order) map[string]*decimal.Decimal {
	list := map[string]*decimal.Decimal{
		"energy": &j.Electricity.KilowattHours, "price of energy": &j.Electricity.PerKilowattHour,
		"set-up": &j.SetUp.Amount, "yield": &j.Allowance.Yield, "charge for stripping a piece": &j.Allowance.Strip,
		"share of metal recovered by stripping": &j.Allowance.Recovered, "margin": &j.Margin.OfPrice,
		"markup": &j.Markup.OfCost, "minimum charge": &j.Minimum, "tax rate": &j.Tax.Rate,
	}
	for i := range j.Prices {
		list["price of "+j.Prices[i].Symbol] = &j.Prices[i].Amount
	}
	for i := range j.Deposit {
		list[j.Deposit[i].Symbol+" in the deposit"] = &j.Deposit[i].Mass.Amount
	}
	for i := range j.DragOut {
		list[j.DragOut[i].Symbol+" in the drag-out"] = &j.DragOut[i].Mass.Amount
	}
	for i := range j.Refined {
		list["refined "+j.Refined[i].Symbol] = &j.Refined[i].Mass.Amount
		list["share paid for refined "+j.Refined[i].Symbol] = &j.Refined[i].Paid
	}
	for i := range j.Salts {
		list["mass of "+j.Salts[i].Name] = &j.Salts[i].Mass.Amount
		list["price of "+j.Salts[i].Name] = &j.Salts[i].Amount
	}
	for i := range j.Labour {
		list["minutes of "+j.Labour[i].Name] = &j.Labour[i].Minutes
		list["hourly rate of "+j.Labour[i].Name] = &j.Labour[i].PerHour
	}
	return list
}

// full makes a job whose lists each hold two lines of names of their own.
func full(r *rand.Rand) price.Order {
	j := random(r)
	number := func(most int64, places int32) decimal.Decimal {
		if r.Intn(6) == 0 {
			return decimal.Zero
		}
		return decimal.New(1+r.Int63n(most), -places)
	}
	mass := func() alloys.Weighed {
		return alloys.Weighed{Amount: number(30000, 4), Unit: tradeUnits[r.Intn(4)]}
	}
	j.Deposit = []price.Metal{{Symbol: "Ni", Mass: mass()}, {Symbol: "Au", Mass: mass()}}
	j.DragOut = []price.Metal{{Symbol: "Ag", Mass: mass()}, {Symbol: "Ni", Mass: mass()}}
	j.Refined = []price.Refined{{Symbol: "Ag", Mass: mass(), Paid: number(95, 2)}, {Symbol: "Au", Mass: mass(),
		Paid: number(95, 2)}}
	j.Salts = []price.Salt{{Name: "cleaner", Mass: mass(), Amount: number(9000, 2), Per: alloys.PerKilogram},
		{Name: "pickle", Mass: mass(), Amount: number(9000, 2), Per: alloys.PerGram}}
	j.Labour = []price.Labour{{Name: "line", Minutes: number(5000, 1), PerHour: number(12000, 2)},
		{Name: "polishing", Minutes: number(5000, 1), PerHour: number(12000, 2)}}
	return j
}

// copied is a job with lists of its own.
func copied(j price.Order) price.Order {
	j.Prices, j.Salts = append([]price.MetalPrice(nil), j.Prices...), append([]price.Salt(nil), j.Salts...)
	j.Deposit, j.DragOut = append([]price.Metal(nil), j.Deposit...), append([]price.Metal(nil), j.DragOut...)
	j.Refined, j.Labour = append([]price.Refined(nil), j.Refined...), append([]price.Labour(nil), j.Labour...)
	return j
}

// TestIndependentInputs changes every number of random jobs by hand, by the step that
// is named, and takes the difference of two second calculations. Each number that is
// not zero is listed once, and nothing else is.
func TestIndependentInputs(t *testing.T) {
	r := rand.New(rand.NewSource(31))
	for range 60 {
		j := full(r)
		_, was := second(&j)
		list := must(j.Sensitivity())(t)
		found := map[string]price.Change{}
		for _, c := range list {
			if _, twice := found[c.Input]; twice {
				t.Errorf("%s is listed twice", c.Input)
			}
			found[c.Input] = c
		}
		other := copied(j)
		for name, number := range numbers(&other) {
			c, listed := found[name]
			if listed == number.IsZero() {
				t.Errorf("%s is %s, listed: %v", name, number, listed)
			}
			if !listed {
				continue
			}
			delete(found, name)
			keep := *number
			*number = keep.Mul(dec("1").Add(c.Step))
			_, is := second(&other)
			*number = keep
			want := is.Sub(was)
			if c.Change.Sub(want).Abs().GreaterThan(decimal.New(1, -12)) || !c.Change.Equal(c.Change.Truncate(12)) {
				t.Errorf("%s: %s, by hand %s", name, c.Change, want.StringFixed(14))
			}
		}
		for name := range found {
			t.Errorf("%s is listed and no number of the job", name)
		}
	}
}

// TestPropertyChangePlaces: a change is rounded to twelve places, a tie to the even digit.
func TestPropertyChangePlaces(t *testing.T) {
	for _, c := range []struct{ energy, want string }{
		{"0.00000000005", "0"}, {"0.00000000015", "0.000000000002"}, {"0.00000000025", "0.000000000002"},
	} {
		j := price.Order{Currency: currencies[1], Pieces: 1, Allowance: price.Allowance{Yield: dec("1")},
			Electricity: price.Electricity{KilowattHours: dec(c.energy), PerKilowattHour: dec("1")}}
		for _, change := range must(j.Sensitivity())(t) {
			if change.Input == "energy" {
				equal(t, c.energy, change.Change, dec(c.want))
			}
		}
	}
}

// TestPropertyNoRoomForAChange: a number of as many places as a job takes has no room for
// the two of a step of one per cent. The error names it, and the job stays as it was.
func TestPropertyNoRoomForAChange(t *testing.T) {
	fine := dec("0.100000000000000000000000000003") // thirty places
	spoil := func(pick func(j *price.Order) *decimal.Decimal) func(j *price.Order) {
		return func(j *price.Order) { *pick(j) = fine }
	}
	for says, change := range map[string]func(j *price.Order){
		"price of Au": spoil(func(j *price.Order) *decimal.Decimal { return &j.Prices[0].Amount }),
		"mass of Ni in the deposit metal": spoil(func(j *price.Order) *decimal.Decimal {
			return &j.Deposit[0].Mass.Amount
		}),
		"mass of Au in the drag-out metal": spoil(func(j *price.Order) *decimal.Decimal {
			return &j.DragOut[0].Mass.Amount
		}),
		"mass of refined Au":        spoil(func(j *price.Order) *decimal.Decimal { return &j.Refined[0].Mass.Amount }),
		"share paid for refined Au": spoil(func(j *price.Order) *decimal.Decimal { return &j.Refined[0].Paid }),
		`price of "cleaner"`:        spoil(func(j *price.Order) *decimal.Decimal { return &j.Salts[0].Amount }),
		`minutes of "polishing"`:    spoil(func(j *price.Order) *decimal.Decimal { return &j.Labour[1].Minutes }),
		"energy": spoil(
			func(j *price.Order) *decimal.Decimal { return &j.Electricity.KilowattHours }),
		"yield": spoil(func(j *price.Order) *decimal.Decimal { return &j.Allowance.Yield }),
	} {
		j := bezels()
		change(&j)
		if _, err := j.Quote(); err != nil {
			t.Fatalf("%s: %v", says, err)
		}
		before := copied(j)
		_, err := j.Sensitivity()
		refused(t, says, err, units.ErrOutOfRange)
		if err == nil || !strings.HasPrefix(err.Error(), says+" a number with too many digits") {
			t.Errorf("%s: %v", says, err)
		}
		if !reflect.DeepEqual(j, before) {
			t.Errorf("%s: the job was changed to %+v", says, j)
		}
	}
}
