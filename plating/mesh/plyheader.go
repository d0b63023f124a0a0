package mesh

import (
	"bytes"
	"fmt"
	"strconv"
)

// A plyKind is a type of number in a PLY file.
type plyKind uint8

const (
	plyNone plyKind = iota
	plyInt8
	plyUint8
	plyInt16
	plyUint16
	plyInt32
	plyUint32
	plyFloat32
	plyFloat64
)

// size returns the bytes of a number in a binary file.
func (k plyKind) size() int { return [...]int{0, 1, 1, 2, 2, 4, 4, 4, 8}[k] }

// whole reports whether the kind is an integer, as the length of a list must be.
func (k plyKind) whole() bool { return k != plyNone && k < plyFloat32 }

// plyKindOf returns the kind that a word of the header names; each has an old name and one
// with its bits. plyNone for any other word.
func plyKindOf(word []byte) plyKind {
	switch string(word) {
	case "char", "int8":
		return plyInt8
	case "uchar", "uint8":
		return plyUint8
	case "short", "int16":
		return plyInt16
	case "ushort", "uint16":
		return plyUint16
	case "int", "int32":
		return plyInt32
	case "uint", "uint32":
		return plyUint32
	case "float", "float32":
		return plyFloat32
	case "double", "float64":
		return plyFloat64
	}
	return plyNone
}

// A plyProperty is one column of an element; count is the type of a list's
// length, plyNone for a plain number.
type plyProperty struct {
	name        string
	kind, count plyKind
}

// A plyElement is one table of the file.
type plyElement struct {
	name       string
	rows       int64
	line       int // where the header has it
	properties []plyProperty
}

// find returns the place of the property that has one of the names, or -1.
func (e plyElement) find(names ...string) int {
	for i, p := range e.properties {
		for _, n := range names {
			if p.name == n {
				return i
			}
		}
	}
	return -1
}

// A plyHeader is what stands before the data.
type plyHeader struct {
	format   string // ascii, binary_little_endian or binary_big_endian
	elements []plyElement
	line     int // of end_header
	data     int // where the data begin
}

// readPLYHeader reads up to end_header. It allocates by the lines it finds, not
// by the counts they claim.
//
//	ply
//	format ascii 1.0
//	element vertex 8
//	property float x
//	end_header
//
// Comments and obj_info are read over. Unknown elements and properties are kept, since
// their data must be read past; how many, is limited, so that a short file cannot ask for
// much memory.
//
// Errors: a [*FaultError] with the line, wrapping [ErrSyntax], [ErrUnsupported],
// [ErrTooLarge] or [ErrTruncated].
func readPLYHeader(data []byte) (plyHeader, error) {
	var h plyHeader
	fail := func(reason error, need, format string, args ...any) (plyHeader, error) {
		return plyHeader{}, &FaultError{What: fmt.Sprintf(format, args...), Need: need, Line: h.line, Offset: -1,
			Triangle: -1,
			Err:      reason}
	}
	at := 0
	for {
		h.line++
		end := bytes.IndexByte(data[at:], '\n')
		if end < 0 {
			if h.line == 1 {
				return fail(ErrSyntax, "a PLY file, whose first line is ply", "the first line %s", clip(data))
			}
			return fail(ErrTruncated, "the line end_header", "the header does not end")
		}
		line := bytes.TrimSuffix(data[at:at+end], []byte("\r"))
		at += end + 1
		if h.line == 1 {
			if string(line) != "ply" {
				return fail(ErrSyntax, "a PLY file, whose first line is ply", "the first line %s", clip(line))
			}
			continue
		}
		f := bytes.Fields(line)
		if len(f) == 0 {
			continue
		}
		switch string(f[0]) {
		case "comment", "obj_info":
		case "format":
			if len(f) != 3 || h.format != "" {
				return fail(ErrSyntax, "one line such as format ascii 1.0", "%s", clip(line))
			}
			h.format = string(f[1])
			if h.format != "ascii" && h.format != "binary_little_endian" && h.format != "binary_big_endian" ||
				string(f[2]) != "1.0" {
				return fail(ErrUnsupported, "ascii, binary_little_endian or binary_big_endian, 1.0", "%s", clip(line))
			}
		case "element":
			if len(f) != 3 {
				return fail(ErrSyntax, "element, its name and its count", "%s", clip(line))
			}
			n, err := strconv.ParseInt(string(f[2]), 10, 64)
			if err != nil || n < 0 {
				return fail(ErrSyntax, "a count of zero or more", "%s", clip(line))
			}
			if n > maxCount {
				return fail(ErrTooLarge, "500 million rows at most", "%s", clip(line))
			}
			for _, e := range h.elements {
				if e.name == string(f[1]) {
					return fail(ErrSyntax, "each element once", "a second element %s", clip(f[1]))
				}
			}
			if len(h.elements) == maxElements {
				return fail(ErrTooLarge, "100 elements at most", "one element more")
			}
			h.elements = append(h.elements, plyElement{name: string(f[1]), rows: n, line: h.line})
		case "property":
			if len(h.elements) == 0 {
				return fail(ErrSyntax, "an element before its properties", "%s", clip(line))
			}
			p, ok := plyPropertyOf(f)
			if !ok {
				return fail(ErrSyntax, "property, type and name, or property list, type of the count, type and name",
					"%s", clip(line))
			}
			e := &h.elements[len(h.elements)-1]
			if e.find(p.name) >= 0 {
				return fail(ErrSyntax, "each property once", "a second property %s", clip([]byte(p.name)))
			}
			if len(e.properties) == maxProperties {
				return fail(ErrTooLarge, "1000 properties at most", "one property more")
			}
			e.properties = append(e.properties, p)
		case "end_header":
			if h.format == "" {
				return fail(ErrSyntax, "a line such as format ascii 1.0", "a header without format")
			}
			h.data = at
			return h, nil
		default:
			return fail(ErrSyntax, "format, comment, element, property or end_header", "%s", clip(line))
		}
	}
}

// A header of a scanner has some ten columns and two or three tables.
const (
	maxElements   = 100
	maxProperties = 1000
)

// plyPropertyOf reads the words of a property line: property, kind and name, or property
// list, kind of the length, kind and name.
func plyPropertyOf(f [][]byte) (plyProperty, bool) {
	switch {
	case len(f) == 3:
		p := plyProperty{name: string(f[2]), kind: plyKindOf(f[1])}
		return p, p.kind != plyNone
	case len(f) == 5 && string(f[1]) == "list":
		p := plyProperty{name: string(f[4]), kind: plyKindOf(f[3]), count: plyKindOf(f[2])}
		return p, p.kind != plyNone && p.count.whole()
	}
	return plyProperty{}, false
}
