package ledger_test

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
	"testing"
	"time"

	"example.com/laydown/plating"
	"example.com/laydown/plating/ledger"
	"example.com/laydown/units"
)

var sheetDay = time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC)

// bookWith returns a book of the workshop's gold bath with some entries, an hour apart, and
// its text.
func bookWith(t *testing.T, bath ledger.Account, entries ...ledger.Entry) (*ledger.Ledger, []byte) {
	t.Helper()
	var text bytes.Buffer
	l, err := ledger.Start(&text, bath, sheetDay)
	for i, e := range entries {
		if e.When.IsZero() {
			e.When = sheetDay.Add(time.Duration(i+1) * time.Hour)
		}
		if err == nil {
			_, err = l.Append(&text, e)
		}
	}
	if err != nil {
		t.Fatal(err)
	}
	return l, text.Bytes()
}

// sheetOf prints a book.
func sheetOf(t *testing.T, l *ledger.Ledger, p ledger.Page) string {
	t.Helper()
	var b bytes.Buffer
	if err := l.WriteSheet(&b, p); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// TestPropertyStops: what to add to an acid gold bath is told when the pH is known and high
// enough, with the caution before it, and not after an entry that speaks of acid.
func TestPropertyStops(t *testing.T) {
	bath := workshopBath()
	bath.Target = 8.5 * units.GramPerLitre
	fresh, _ := bookWith(t, bath)
	bath.PH = plating.PHWindow{Low: 4.2, High: 4.6}
	kept, _ := bookWith(t, bath)
	soured, _ := bookWith(t, bath, ledger.Entry{
		Event: ledger.Addition{Water: units.Millilitre}, Note: "citric acid for the pH"})
	corrected, _ := bookWith(t, bath, ledger.Entry{
		Event: ledger.Correction{Volume: units.Millilitre, Reason: "sulfuric acid"}})
	for _, c := range []struct {
		name string
		book *ledger.Ledger
		pH   plating.PH
		tell bool
		hint bool
	}{
		{"not known", fresh, 0, false, true}, {"measured", fresh, 4.4, true, false}, {"too low", fresh, 2.9, false, false},
		{"in the book", kept, 0, true, false}, {"measured too low", kept, 2.9, false, false},
		{"acid added", soured, 0, false, true}, {"acid, then measured", soured, 4.4, true, false},
		{"acid corrected", corrected, 0, false, true},
	} {
		out := sheetOf(t, c.book, ledger.Page{PH: c.pH, Working: true, Measure: "Dip the meter."})
		amount := strings.Index(out, "   to target    3.6") // g of KAu(CN)2 for 2.5 g of gold
		stop := strings.Contains(out, "   STOP  ")
		caution := strings.Index(out, "CYANIDE IN ACID")
		if (amount >= 0) != c.tell || stop == c.tell || caution < 0 || amount >= 0 && caution > amount ||
			strings.Contains(out, "Dip the meter.") != c.hint || strings.Contains(out, "WORKING") != c.tell ||
			strings.Contains(out, "FORECAST") != c.tell {
			t.Errorf("%s:\n%s", c.name, out)
		}
	}
	if s := (*ledger.Ledger)(nil).Solution(4); s.PH.Given() {
		t.Errorf("%+v", s)
	}
}

// TestPropertyForecastDragOut: the forecast says whether the drag-out is in it.
func TestPropertyForecastDragOut(t *testing.T) {
	bath := workshopBath()
	bath.PH = plating.PHWindow{Low: 4.2, High: 4.6}
	without := ledger.Entry{Event: ledger.Load{Charge: 20 * units.AmpereMinute}}
	with := ledger.Entry{Event: ledger.Load{Charge: 20 * units.AmpereMinute, DragOut: 4 * units.Millilitre}}
	for _, c := range []struct {
		loads []ledger.Entry
		want  string
	}{
		{[]ledger.Entry{without, without}, ", drag-out not in it, for none is entered (mean of the last 2 loads)"},
		{[]ledger.Entry{with, without, with}, ", drag-out in it for 2 of 3 loads (mean of the last 3 loads)"},
		{[]ledger.Entry{with, with}, ", drag-out in it (mean of the last 2 loads)"},
	} {
		book, _ := bookWith(t, bath, c.loads...)
		if out := sheetOf(t, book, ledger.Page{}); !strings.Contains(out, c.want) {
			t.Errorf("no %q:\n%s", c.want, out)
		}
	}
}

// TestPropertyPage: what a page asks for is on the sheet, and what it does not is not.
func TestPropertyPage(t *testing.T) {
	bath := workshopBath()
	bath.PH = plating.PHWindow{Low: 4.2, High: 4.6}
	book, _ := bookWith(t, bath, ledger.Entry{Event: ledger.Load{Charge: 20 * units.AmpereMinute}},
		ledger.Entry{Event: ledger.Load{Charge: 10 * units.AmpereMinute}, Note: "six hands"},
		ledger.Entry{Event: ledger.Void{Entry: 2, Reason: "of the other bath"}})
	plain := sheetOf(t, book, ledger.Page{})
	for word, p := range map[string]ledger.Page{
		"\nENTRIES\n": {Entries: true}, "\nWORKING\n": {Working: true}, "BATH BOOK   a copy\n": {Remark: "a copy"},
		"\nDAMAGED in line 5:":     {Damaged: &ledger.DamageError{Line: 5}},
		"VOIDED by no. 3: load   ": {Entries: true},
		"strike the entry out with scissors and enter": {Now: sheetDay.AddDate(0, 0, -2),
			Void: func(int) string { return "scissors" }},
		"strike the entry out and enter": {Now: sheetDay.AddDate(0, 0, -2)},
	} {
		out := strings.Join(strings.Fields(sheetOf(t, book, p)), " ")
		word = strings.Join(strings.Fields(word), " ")
		if strings.Contains(strings.Join(strings.Fields(plain), " "), word) || !strings.Contains(out, word) {
			t.Errorf("%q:\n%s", word, out)
		}
	}
	for _, want := range []string{"3 entries, 1 of them voided, the last that counts on 2 March 2026",
		"   deposited         -0.86 g", "drag-out not in it, for none is entered (the last load)", "by meter     1.25 g of KAu(CN)2 for 20 A·min"} {
		if !strings.Contains(plain, want) {
			t.Errorf("no %q:\n%s", want, plain)
		}
	}
	damaged := sheetOf(t, book, ledger.Page{Damaged: &ledger.DamageError{Line: 5}, Working: true})
	for _, not := range []string{"TO ADD NOW", "FORECAST", "WORKING"} {
		if strings.Contains(damaged, not) {
			t.Errorf("advice from half a book:\n%s", damaged)
		}
	}
	for name, err := range map[string]error{"no book": (*ledger.Ledger)(nil).WriteSheet(io.Discard, ledger.Page{}),
		"no writer": book.WriteSheet(nil, ledger.Page{})} {
		if !errors.Is(err, units.ErrNotGiven) {
			t.Errorf("%s: %v", name, err)
		}
	}
	full := errors.New("no space left")
	for room := range 3 {
		if err := book.WriteSheet(&shortDisk{room, full}, ledger.Page{}); !errors.Is(err, full) {
			t.Errorf("a full disk: %v", err)
		}
	}
}

// The sheet for the bench, of a nickel bath whose anodes feed it.
func ExampleLedger_WriteSheet() {
	book, err := ledger.New(ledger.Account{
		Name: "nickel, Watts type", Metal: "Ni", Volume: 20 * units.Litre, Content: 75 * units.GramPerLitre,
		Equivalent: 1.0947 * units.GramPerAmpereHour, Efficiency: ledger.EfficiencyRange{Value: 0.95},
		Anode: ledger.Anode{Share: 1, Efficiency: ledger.EfficiencyRange{Value: 0.99}},
	}, time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC))
	if err != nil {
		fmt.Println(err)
		return
	}
	if err := book.WriteSheet(os.Stdout, ledger.Page{Remark: "a lesson"}); err != nil {
		fmt.Println(err)
	}
	// Output:
	// BATH BOOK   a lesson
	//
	// nickel, Watts type; anodes: soluble
	// opened 2 March 2026, no entry yet
	//
	// CAUTION
	//    ! NICKEL SALTS: gloves, extraction on; they sensitise the skin and the mist causes cancer.
	//      [NickelHealth]
	//    ! Pour nothing down the drain: collect rinse water and old baths, recover the metal. They are
	//      hazardous waste. Safety data sheets, local codes and licensed practice decide over this
	//      sheet. [common practice, no source]
	//
	// STATE
	//    content      75.00 g/L, uncertainty not given    (target 75.00 g/L)
	//    metal        1500.00 g Ni in 20.00 L (mark 20.00 L), uncertainty not given
	//    charge       0 A·min; 0 A·min since metal was added, 0 A·min since an analysis
	//    turnovers    0.00
	//    efficiency   95.0 % in the book
	//    alarms       none
	//
	// BALANCE of Ni
	//    opening         1500.00 g
	//    added              0.00 g
	//    from anodes        0.00 g
	//    dragged in         0.00 g
	//    deposited          0.00 g
	//    dragged out        0.00 g
	//    corrected          0.00 g
	//    by analyses        0.00 g
	//    now             1500.00 g
	//
	// TO ADD NOW
	//    no salt named in the book
	//
	// FORECAST
	//    needs a salt, a low alarm and a load with a charge in the book
}

// shortDisk takes a few lines, refuses one, and takes others again.
type shortDisk struct {
	room int
	err  error
}

func (d *shortDisk) Write(p []byte) (int, error) {
	if d.room--; d.room == -1 {
		return 0, d.err
	}
	return len(p), nil
}
