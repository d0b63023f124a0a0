package job_test

import (
	"fmt"
	"io"
	"os"
	"strings"

	"example.com/laydown/plating/job"
	"example.com/laydown/units"
)

// A job whose part is a mesh in a file: the program says which files may be opened.
func ExampleRead_files() {
	const file = `{"format": "laydown job 1", "job": "cast figure", "substrate": "bronze", "finish": "soft gold", "min_thickness": "1 µm", "min_to_average": 0.5,
	  "parts": [{"name": "figure", "mesh": {"file": "figure.stl", "unit": "mm"}}]}`
	open := func(name string) (io.ReadCloser, error) {
		if name != "figure.stl" {
			return nil, os.ErrPermission
		}
		return io.NopCloser(strings.NewReader(tetrahedron)), nil
	}
	j, err := job.Read(strings.NewReader(file), open)
	if err != nil {
		fmt.Println(err)
		return
	}
	s, err := j.Sheet()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(s.Parts[0].Name, s.Parts[0].Area.Text(units.SquareCentimetre, 2))
	// Output: figure 9.46 cm²
}

// tetrahedron is a corner of a cube of 20 mm.
const tetrahedron = `solid figure
facet normal 0 0 -1
outer loop
vertex 0 0 0
vertex 0 20 0
vertex 20 0 0
endloop
endfacet
facet normal 0 -1 0
outer loop
vertex 0 0 0
vertex 20 0 0
vertex 0 0 20
endloop
endfacet
facet normal -1 0 0
outer loop
vertex 0 0 0
vertex 0 0 20
vertex 0 20 0
endloop
endfacet
facet normal 1 1 1
outer loop
vertex 20 0 0
vertex 0 20 0
vertex 0 0 20
endloop
endfacet
endsolid figure
`
