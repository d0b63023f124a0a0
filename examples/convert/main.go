// Command convert turns a quantity into another unit of the same kind:
//
//	go run ./examples/convert 25 µin µm
//	25 µin = 0.635 µm
//
// The last word or words are the target unit, everything before is the
// quantity. -list prints the kinds and units; -digits rounds the answer.
package main

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"

	"example.com/laydown/examples/internal/terminal"
	"example.com/laydown/units"
)

const usage = `usage: convert [-digits n] quantity unit
       convert -list

  convert 25 µin µm            25 µin = 0.635 µm
  convert "25 uin" um          the same, in ASCII
  convert 4 1/2 in mm          fractions as on an inch rule
  convert 1 h 20 min s         times may be sums
  convert 5 L US gal           a unit may be two words
  convert -digits 3 38 °C °F

Degrees are read as temperatures, not as differences.
  -digits n   round to n significant digits, 1 to 17; without it the answer
              has the fewest digits that name the same value
  -list       print every kind with its units and their other spellings
`

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run returns the exit status: 0 for an answer, 1 for a quantity or unit that
// cannot be converted, 2 for a wrong call.
func run(args []string, stdout, stderr io.Writer) int {
	set := flag.NewFlagSet("convert", flag.ContinueOnError)
	set.SetOutput(io.Discard)
	list := set.Bool("list", false, "")
	digits := set.Int("digits", 0, "")
	switch err := set.Parse(guardNegative(args)); {
	case errors.Is(err, flag.ErrHelp):
		return write(stdout, stderr, usage)
	case err != nil:
		terminal.Error(stderr, "convert", err)
		fmt.Fprint(stderr, usage)
		return 2
	}
	given := map[string]bool{}
	set.Visit(func(f *flag.Flag) { given[f.Name] = true })
	words := strings.Fields(strings.Join(set.Args(), " "))
	switch {
	case given["digits"] && (*digits < 1 || *digits > 17):
		fmt.Fprintf(stderr, "convert: -digits %d: need 1 to 17\n", *digits)
		return 2
	case *list && len(words) > 0:
		fmt.Fprintf(stderr, "convert: -list takes no further words, got %q\n", strings.Join(words, " "))
		return 2
	case *list:
		return write(stdout, stderr, kinds())
	case len(words) == 0:
		fmt.Fprint(stderr, usage)
		return 2
	case len(words) == 1:
		fmt.Fprintf(stderr, "convert: %q alone: need a quantity and a unit, as in convert 25 µin µm\n", words[0])
		return 2
	}
	quantity, answer, err := units.ConvertWords(words)
	if err != nil {
		terminal.Error(stderr, "convert", err)
		return 1
	}
	sign := "="
	if *digits > 0 {
		if rounded := round(answer, *digits); rounded != answer {
			sign, answer = "≈", rounded
		}
	}
	return write(stdout, stderr, units.Printable(fmt.Sprintf("%s %s %s", quantity, sign, answer))+"\n")
}

// guardNegative puts the end of the flags before a negative number, which is
// no flag: convert -40 °C °F.
func guardNegative(args []string) []string {
	for i, a := range args {
		if a == "--" {
			return args
		}
		afterDigits := i > 0 && strings.TrimLeft(args[i-1], "-") == "digits"
		if len(a) > 1 && a[0] == '-' && strings.ContainsRune("0123456789.", rune(a[1])) && !afterDigits {
			return append(append(append([]string{}, args[:i]...), "--"), args[i:]...)
		}
	}
	return args
}

// round writes the number before the unit with n significant digits.
func round(answer string, n int) string {
	number, unit, _ := strings.Cut(answer, " ")
	x, err := strconv.ParseFloat(number, 64)
	if err != nil {
		return answer // beyond float64 in this unit: all digits are better than none
	}
	short := strconv.FormatFloat(x, 'e', n-1, 64)
	if y, err := strconv.ParseFloat(short, 64); err == nil && (y == 0 || 1e-5 <= max(y, -y) && max(y, -y) < 1e15) {
		short = strconv.FormatFloat(y, 'f', -1, 64)
	}
	if y, err := strconv.ParseFloat(short, 64); err == nil && y == x {
		return answer // nothing to round
	}
	return strings.TrimSpace(short + " " + unit)
}

// kinds lists every kind with its units.
func kinds() string {
	var b bytes.Buffer
	for _, k := range units.Kinds() {
		fmt.Fprintf(&b, "%s\n", k)
		for _, u := range k.Units() {
			all := k.Spellings(u)
			if u == "1" {
				all[0] = "(a number alone)"
			}
			fmt.Fprintf(&b, "    %s\n", strings.ReplaceAll(strings.Join(all, ", "), "·", " "))
		}
	}
	b.WriteString("\nAlso: u for µ; 2, ^2 for ²; a space, * or · between factors; ohm for Ω.\n")
	return b.String()
}

// write prints text and says when it cannot.
func write(stdout, stderr io.Writer, text string) int {
	if _, err := io.WriteString(stdout, text); err != nil {
		terminal.Error(stderr, "convert", err)
		return 1
	}
	return 0
}
