package mesh

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"runtime"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// textSTL writes a surface as text.
func textSTL(m Mesh) []byte {
	var b strings.Builder
	b.WriteString("solid bezel\n")
	for i := range m.Triangles {
		b.WriteString("facet normal 0 0 0\nouter loop\n")
		p, q, r := m.Corners(i)
		for _, v := range [3]r3.Vec{p, q, r} {
			fmt.Fprintf(&b, "vertex %.9g %.9g %.9g\n", v.X*1e3, v.Y*1e3, v.Z*1e3)
		}
		b.WriteString("endloop\nendfacet\n")
	}
	b.WriteString("endsolid bezel\n")
	return []byte(b.String())
}

// A damage changes a sound binary file of n triangles; want is what must come
// of it: "error" at reading or repair, "repair", or "" for either or no effect.
type damage struct {
	name string
	do   func(b []byte, n int, rng *rand.Rand) []byte
	want string
}

func record(b []byte, i int) []byte { return b[stlHeader+stlFacet*i : stlHeader+stlFacet*(i+1)] }

func setCount(b []byte) []byte {
	binary.LittleEndian.PutUint32(b[80:], uint32((len(b)-stlHeader)/stlFacet))
	return b
}

func damages() []damage {
	single := func(b []byte, at int, v float32) { binary.LittleEndian.PutUint32(b[at:], math.Float32bits(v)) }
	return []damage{
		{"cut off", func(b []byte, n int, rng *rand.Rand) []byte { return b[:rng.IntN(len(b))] }, "error"},
		{"NaN", func(b []byte, n int, rng *rand.Rand) []byte {
			single(record(b, rng.IntN(n)), 12+4*rng.IntN(9), float32(math.NaN()))
			return b
		}, "error"},
		{"infinity", func(b []byte, n int, rng *rand.Rand) []byte {
			single(record(b, rng.IntN(n)), 12+4*rng.IntN(9), float32(math.Inf(1-2*rng.IntN(2))))
			return b
		}, "error"},
		{"far corner", func(b []byte, n int, rng *rand.Rand) []byte {
			single(record(b, rng.IntN(n)), 12+4*rng.IntN(9), 3e38)
			return b
		}, "error"},
		{"NaN in normals", func(b []byte, n int, rng *rand.Rand) []byte {
			for i := range n {
				single(record(b, i), 4*rng.IntN(3), float32(math.NaN()))
			}
			return b
		}, "none"},
		{"huge count", func(b []byte, n int, rng *rand.Rand) []byte {
			binary.LittleEndian.PutUint32(b[80:], []uint32{1 << 31, 1<<32 - 1, 1e9, uint32(n) + 1}[rng.IntN(4)])
			return b
		}, "error"},
		{"low count", func(b []byte, n int, rng *rand.Rand) []byte {
			binary.LittleEndian.PutUint32(b[80:], uint32(rng.IntN(n)))
			return b
		}, "error"},
		{"corner twice", func(b []byte, n int, rng *rand.Rand) []byte { // a copy of a triangle that lost its area
			r := append([]byte(nil), record(b, rng.IntN(n))...)
			copy(r[36:48], r[24:36])
			return setCount(append(b, r...))
		}, "repair"},
		{"area lost", func(b []byte, n int, rng *rand.Rand) []byte { // a triangle that lost its area and leaves a hole
			r := record(b, rng.IntN(n))
			copy(r[36:48], r[24:36])
			return b
		}, "error"},
		{"turned", func(b []byte, n int, rng *rand.Rand) []byte {
			for range 1 + rng.IntN(n/4) {
				r := record(b, rng.IntN(n))
				var v [12]byte
				copy(v[:], r[12:24])
				copy(r[12:24], r[24:36])
				copy(r[24:36], v[:])
			}
			return b
		}, ""}, // one may be turned twice
		{"all turned", func(b []byte, n int, rng *rand.Rand) []byte {
			for i := range n {
				r := record(b, i)
				var v [12]byte
				copy(v[:], r[12:24])
				copy(r[12:24], r[24:36])
				copy(r[24:36], v[:])
			}
			return b
		}, "repair"},
		{"holes", func(b []byte, n int, rng *rand.Rand) []byte {
			at := rng.IntN(n)
			return setCount(append(b[:stlHeader+stlFacet*at], b[stlHeader+stlFacet*(at+1):]...))
		}, "error"},
		{"copies", func(b []byte, n int, rng *rand.Rand) []byte {
			for range 1 + rng.IntN(20) {
				b = append(b, append([]byte(nil), record(b, rng.IntN(n))...)...)
			}
			return setCount(b)
		}, "repair"},
		{"cracks", func(b []byte, n int, rng *rand.Rand) []byte { // corners off by a rounding
			for range 1 + rng.IntN(20) {
				at := 12 + 4*rng.IntN(9)
				r := record(b, rng.IntN(n))
				if bits := binary.LittleEndian.Uint32(r[at:]); math.Abs(float64(math.Float32frombits(bits))) > 1e-3 {
					binary.LittleEndian.PutUint32(r[at:], bits^1)
				}
			}
			return b
		}, ""},
		{"bits", func(b []byte, n int, rng *rand.Rand) []byte {
			for range 1 + rng.IntN(3) {
				b[rng.IntN(len(b))] ^= 1 << rng.IntN(8)
			}
			return b
		}, ""},
		{"garbage", func(b []byte, n int, rng *rand.Rand) []byte {
			for i := rng.IntN(len(b)); i < len(b); i++ {
				b[i] = byte(rng.Uint32())
			}
			return b
		}, ""},
		{"text: cut off", func(b []byte, n int, rng *rand.Rand) []byte { return b[:rng.IntN(len(b)-16)] }, "error"},
		{"text: bits", func(b []byte, n int, rng *rand.Rand) []byte {
			for range 1 + rng.IntN(3) {
				b[rng.IntN(len(b))] ^= 1 << rng.IntN(8)
			}
			return b
		}, ""},
		{"text: number", func(b []byte, n int, rng *rand.Rand) []byte {
			from := rng.IntN(len(b) / 2)
			at := from + bytes.Index(b[from:], []byte("vertex")) + len("vertex")
			return append(b[:at:at], append([]byte(" 1e400 nan "), b[at:]...)...)
		}, "error"},
	}
}

// TestPropertyDamagedFiles damages a thousand files. Each must end in an error
// that says what and what would do, in a repair that is reported, or, where the
// damage touched nothing that counts, in the same surface; never in a panic, a
// wrong area, or memory beyond the length of the file.
func TestPropertyDamagedFiles(t *testing.T) {
	files := 100
	if testdata.Slow() {
		files = 1000
	}
	rng := rand.New(rand.NewPCG(2026, 11))
	var bases []Mesh
	for _, s := range samples() {
		bases = append(bases, must(t)(s.make(Grid{Size: 4e-3, Grade: 1.5})))
	}
	bases = append(bases, bunny(t, units.Millimetre))
	all := damages()
	tally := map[string]int{}
	for k := range files {
		d := all[k%len(all)]
		m := bases[rng.IntN(len(bases))]
		var raw []byte
		if strings.HasPrefix(d.name, "text") {
			raw = textSTL(m)
		} else {
			raw = stl(t, m)
		}
		sound := report(t, must(t)(ReadSTL(bytes.NewReader(raw), units.Millimetre)))
		raw = d.do(raw, len(m.Triangles), rng)
		name := fmt.Sprintf("file %d, %s", k, d.name)

		before := allocated()
		got, err := ReadSTL(bytes.NewReader(raw), units.Millimetre)
		if used, most := allocated()-before, uint64(20*len(raw)+1<<16); used > most {
			t.Errorf("%s: %d bytes for a file of %d", name, used, len(raw))
		}
		outcome := "none"
		var done []Action
		if err == nil {
			before = allocated()
			got, done, err = Repair(got, RepairOptions{Weld: units.Micrometre / 10})
			if used, most := allocated()-before, uint64(60*len(raw)+1<<16); used > most {
				t.Errorf("%s: repair takes %d bytes for a file of %d", name, used, len(raw))
			}
			if len(done) > 0 {
				outcome = "repair"
			}
		}
		if err != nil {
			typed(t, name, err)
			outcome = "error"
		}
		if d.want != "" && outcome != d.want {
			t.Errorf("%s: %s (%v, %v), want %s", name, outcome, err, done, d.want)
		}
		if outcome != "error" {
			r := report(t, got)
			if !r.Sound() || apart(float64(r.Area), float64(sound.Area)) > 1e-5 || apart(float64(r.Volume),
				float64(sound.Volume)) > 1e-5 {
				// A bit may move a whole corner only where all its triangles agree: never.
				t.Errorf("%s: %s leads to %v", name, outcome, r)
			}
		}
		tally[outcome]++
	}
	t.Log(tally)
	if tally["error"] < files*4/10 || tally["repair"] < files*15/100 ||
		tally["error"]+tally["repair"]+tally["none"] != files {
		t.Error("the damages do not cover what they should:", tally)
	}
}

func allocated() uint64 {
	var s runtime.MemStats
	runtime.ReadMemStats(&s)
	return s.TotalAlloc
}

// TestPropertyMemory: reading takes memory by the length of the file, at any size.
func TestPropertyMemory(t *testing.T) {
	large := must(t)(Sphere(0.1, Grid{Size: 1e-3}))
	var ply, text bytes.Buffer
	if err := WritePLY(&ply, large, 1, Skin{}); err != nil {
		t.Fatal(err)
	}
	if err := WritePLY(&text, large, 1, Skin{Text: true}); err != nil {
		t.Fatal(err)
	}
	soup := soup(large, 1e-6, rand.New(rand.NewPCG(1, 1)))
	for name, raw := range map[string][]byte{"stl": stl(t, large), "soup": stl(t, soup), "text": textSTL(large),
		"ply": ply.Bytes(), "ply text": text.Bytes()} {
		before := allocated()
		var err error
		if strings.HasPrefix(name, "ply") {
			_, err = ReadPLY(bytes.NewReader(raw), 1)
		} else {
			_, err = ReadSTL(bytes.NewReader(raw), 1)
		}
		times := float64(allocated()-before) / float64(len(raw))
		t.Logf("%s: %.1f times the file", name, times)
		if err != nil || times > 20 {
			t.Errorf("%s: %.1f times the file, %v", name, times, err)
		}
	}
}

// endless never ends, and counts what is read of it.
type endless struct{ read int64 }

func (e *endless) Read(p []byte) (int, error) {
	e.read += int64(len(p))
	return len(p), nil
}

// TestPropertyBoundedFile: of an endless file no more than the limit is read, and the
// error says so.
func TestPropertyBoundedFile(t *testing.T) {
	for _, most := range []int64{0, 1, 1000, 1 << 20} {
		var e endless
		_, err := readAll(&e, "an STL file", most)
		var about *FaultError
		if !errors.As(err, &about) || !errors.Is(err, ErrTooLarge) || !strings.Contains(err.Error(), "STL file") {
			t.Errorf("%d: %v", most, err)
		}
		if e.read > 2*most+10_000 {
			t.Errorf("%d bytes are read where %d are the limit", e.read, most)
		}
	}
	if data, err := readAll(strings.NewReader("solid"), "an STL file", 5); string(data) != "solid" || err != nil {
		t.Errorf("%q, %v", data, err)
	}
}

// TestPropertyNoReader: nil where a reader or writer belongs is an error, never a panic.
func TestPropertyNoReader(t *testing.T) {
	_, stl := ReadSTL(nil, units.Millimetre)
	_, ply := ReadPLY(nil, units.Millimetre)
	for name, err := range map[string]error{"STL": stl, "PLY": ply,
		"to STL": WriteSTL(nil, Mesh{}, units.Millimetre),
		"to PLY": WritePLY(nil, Mesh{}, units.Millimetre, Skin{})} {
		if !errors.Is(err, units.ErrNotGiven) {
			t.Errorf("%s: %v", name, err)
		}
	}
}
