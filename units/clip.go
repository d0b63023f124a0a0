package units

import "strings"

// clipped is how many characters of outside text an error message shows.
const clipped = 40

// Clip cuts text from outside, such as a name in a file, to the 40 characters that an
// error message shows of it, with … behind what was cut. What is not UTF-8 becomes "?".
// Put the result in quotes where it may hold characters that do not print.
func Clip(text string) string { return clipTo(text, clipped) }

func clipTo(text string, most int) string {
	if len(text) > 4*most { // four bytes a character at most: do not look at all of it
		text = text[:min(len(text), 4*most+4)]
	}
	text = strings.ToValidUTF8(text, "?")
	n := 0
	for i := range text {
		if n == most {
			return text[:i] + "…"
		}
		n++
	}
	return text
}
