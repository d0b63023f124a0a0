package bath

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"example.com/laydown/plating"
	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// Format is the value of the field "format" that [Read] takes.
const Format = "laydown baths 1"

func wrap(err error) error { return units.InFile("bath file", err) }

// A file is a list of baths.
type file struct {
	Format string `json:"format" is:"laydown baths 1"`
	Baths  []Bath `json:"baths" with:"must" need:"a list of baths" rule:"filled"`
}

// Schema returns the JSON Schema of a file of baths.
func Schema() ([]byte, error) { return strictjson.Schema("baths of laydown", file{}) }

// Read reads baths of your own from JSON. The package comment describes the
// format. Every figure must say where it comes from and how it was seen, itself
// or by the bath's own source and seen; unknown fields are refused with the known
// ones.
//
// Errors: a [*units.FileError] with line and field.
func Read(r io.Reader) ([]Bath, error) {
	all, err := read(r)
	return all, wrap(err)
}

func read(r io.Reader) ([]Bath, error) {
	tree, err := strictjson.Read(r, strictjson.Doc{What: "baths", Need: `an object with format and baths`})
	if err != nil {
		return nil, err
	}
	var f file
	if err := strictjson.Decode(tree, &f); err != nil {
		return nil, err
	}
	known := Library()
	for i := range f.Baths {
		b := &f.Baths[i]
		path := fmt.Sprintf("baths[%d]", i+1)
		n, _ := tree.At(path)
		if err := own(n, b, known); err != nil {
			return nil, err
		}
		// A bath may be like one further up in the file, and its key must differ from all of them.
		known = append(known, *b)
	}
	return f.Baths, nil
}

// own completes a bath of a file and holds it against what a plan needs.
func own(n *strictjson.Node, b *Bath, known []Bath) error {
	if strings.TrimSpace(b.Key) == "" || strings.TrimSpace(b.Name) == "" {
		return n.Fail(units.ErrInconsistent, `need "key", a short name for programs, and "name", by chemistry`)
	}
	if b.Metal == "" {
		return n.Fail(units.ErrInconsistent, `field "metal" is missing; need the symbol of the counted metal, as "Au"`)
	}
	if at, rest := n.At("use"); b.Use == 0 && rest == "" {
		return at.Fail(units.ErrInconsistent, "is empty; need words: strike, underplate, finish")
	} else if b.Use == 0 {
		return n.Fail(units.ErrInconsistent, `field "use" is missing; need words: strike, underplate, finish`)
	}
	if at, rest := n.At("hazards"); rest != "" {
		return n.Fail(units.ErrInconsistent,
			`field "hazards" is missing; need a list of words, empty when there are none: a plan is judged by them`)
	} else if left := plating.Unsaid(b.Hazards, b.Name); left != 0 {
		return at.Fail(units.ErrInconsistent, "leaves out what the name says, %s; need it in the list, or another name: "+
			"the check for hydrogen cyanide goes by the hazards", left)
	}
	for _, other := range known {
		if other.Key == b.Key {
			return n.Fail(nil, "key %q is taken, by the library or by a bath before; need another", units.Clip(b.Key))
		}
	}
	if b.Library != "" || b.Volume != 0 || b.Evaporation != nil {
		return n.Fail(units.ErrInconsistent, `"library", "volume" and "evaporation" are of a bath in a job`)
	}
	if field := b.unsaid(); field != "" && b.Seen == nil {
		return n.Place(field, fmt.Errorf(`field "seen" is missing; need one of %s`, strings.Join(origin.Words(), ", ")))
	} else if field != "" && b.Source == "" && *b.Seen != origin.FromMemory {
		return n.Fail(units.ErrInconsistent, `field "source" is missing; need where the figures were read or measured`)
	}
	// The bath is completed, checked, and looked at for what kills: cyanide in acid is refused
	// when the file is read, not when somebody makes it up.
	full, err := b.Resolve(known)
	if err == nil {
		err = full.Check()
	}
	if err == nil {
		err = plating.Deadly(full.Solution())
	}
	if placed := (*strictjson.Placed)(nil); errors.As(err, &placed) {
		return n.Place(placed.Path, placed.Err)
	} else if err != nil {
		return n.Fail(err, "%v", err)
	}
	// What was lent is now in the bath, with its source. It must not be lent a second time.
	full.Like = ""
	*b = full
	return nil
}
