// Package strictjson reads JSON that people write by hand, and says by line and
// field what is wrong with it.
//
// [Read] turns a file into a tree of [Node] values that know their line and
// path. A [Reader] takes the fields of one object by name: text, quantities
// with a unit (units.Length and its sisters), shares, whole numbers, choices
// and lists. It keeps the first error. [Reader.Done] refuses a field that
// nobody asked for and lists those that are known, so that a misspelt field is
// never silently left out.
//
//	o := strictjson.Object(node)
//	name := o.Text("name")
//	strictjson.Positive(o, "area", &area)
//	err := o.Done()
//
// Numbers keep their digits until a quantity reads them. Nothing here panics
// on any input; a job reader and a bath reader are fuzzed on top of it.
package strictjson
