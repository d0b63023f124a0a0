package mesh

import (
	"bytes"
	"encoding/binary"
	"errors"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/units"
)

// TestPropertyWriteLimits: what the STL format cannot hold is refused.
func TestPropertyWriteLimits(t *testing.T) {
	far := must(t)(Translate(tetra(1e-6), r3.Vec{X: 1000}))
	if err := WriteSTL(&bytes.Buffer{}, far, units.Metre); !errors.Is(err, ErrCollapse) {
		t.Error(err)
	}
	if err := WriteSTL(&bytes.Buffer{}, tetra(1), 1e-45); !errors.Is(err, ErrTooLarge) {
		t.Error(err)
	}
	if err := WritePLY(&bytes.Buffer{}, tetra(1), 1e-305, Skin{}); !errors.Is(err, ErrTooLarge) {
		t.Error(err)
	}
	broken := errors.New("disk full")
	if err := WriteSTL(failing{broken}, bunny(t, 1), 1); !errors.Is(err, broken) {
		t.Error(err)
	}
	if err := WritePLY(failing{broken}, bunny(t, 1), 1, Skin{}); !errors.Is(err, broken) {
		t.Error(err)
	}
}

type failing struct{ err error }

func (f failing) Write([]byte) (int, error) { return 0, f.err }

// TestPropertySkin reads thickness and colour back by hand: bytes of the last
// triangle, and words of the first.
func TestPropertySkin(t *testing.T) {
	m := tetra(0.01)
	skin := Skin{Thickness: []units.Length{1e-6, 2e-6, 3e-6, 0.5e-6}, Colour: [][3]uint8{{1, 2, 3},
		{4, 5, 6}, {7, 8, 9}, {250, 251, 252}}}
	var b bytes.Buffer
	if err := WritePLY(&b, m, units.Millimetre, skin); err != nil {
		t.Fatal(err)
	}
	end := b.Bytes()[b.Len()-11:]
	if um := math.Float64frombits(binary.LittleEndian.Uint64(end)); apart(um, 0.5) > 1e-12 || end[8] != 250 ||
		end[9] != 251 || end[10] != 252 {
		t.Errorf("last face %v", end)
	}
	b.Reset()
	skin.Text = true
	if err := WritePLY(&b, m, units.Millimetre, skin); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"property double thickness_um\n", "comment one unit of length is 1 mm\n",
		"\n3 0 2 1 1 1 2 3\n"} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("no %q in\n%s", want, b.String())
		}
	}
	for name, s := range map[string]Skin{"short": {Thickness: skin.Thickness[:3]}, "colours": {Colour: skin.Colour[:1]},
		"nan": {Thickness: []units.Length{0, 0, units.Length(math.NaN()), 0}}} {
		typed(t, name, WritePLY(&b, m, 1, s))
	}
}
