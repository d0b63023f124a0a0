// Package strictjson reads JSON that people write by hand, and says by line and
// field what is wrong with it.
//
// [Read] turns a file into a tree of [Node] values that know their line and
// path. [Decode] reads a tree into a struct: the tags of its fields say what a member is
// called, what it may hold and whether it may be left out. A member that no field names
// is refused with the known ones, so that a misspelt one is never silently left out.
//
//	type tank struct {
//		Depth units.Length `json:"depth" with:"must" rule:"positive" in:"mm"`
//	}
//	tree, err := strictjson.Read(r, strictjson.Doc{What: "tank", Need: "an object with depth"})
//	err = strictjson.Decode(tree, &t)
//
// [Encode] writes the struct back, [Schema] tells other programs what a file holds, by the
// same tags. A type of several forms reads, writes and describes itself: [NodeDecoder],
// [NodeEncoder], [Schemer].
//
// Numbers keep their digits until a quantity reads them. Nothing here panics
// on any input; the readers of jobs, baths, cases and books are fuzzed on top of it.
package strictjson
