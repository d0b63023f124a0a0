package strictjson

import (
	"encoding"
	"reflect"
	"strconv"
	"strings"
)

// The tags of a struct field say how a file gives it. One table serves
// [Decode], [Encode] and [Schema].
//
//	json:"area"      the name of the member; "-" leaves the field out; no tag on an embedded
//	                 struct, or json:",inline", puts its fields beside the others
//	json:"area,keep" written also when it is zero; any other field is then left out
//	json:"area,must" it cannot be left out, by the reader or the writer
//	unless:"library" not written as zero where the member of that name is given
//	need:"..."       what it is to hold, for messages
//	rule:"positive"  a quantity above zero; also nonnegative, share (above 0 and at most 1),
//	                 amount and percent (decimals in quotes), "1..9" for whole numbers,
//	                 spellings (words that are read in other spellings too),
//	                 filled (a list that is not empty), flags (a list of words in one number)
//	in:"µm"          the unit it is written in; that of MarshalText when left out
//	is:"..."         the one text that it may hold
//	doc:"..."        what it is, for the schema
type field struct {
	index []int
	name  string
	need  string
	rule  string
	unit  string
	is    string
	doc   string
	keep  bool
	other string // member beside which a zero is not kept
	low   int    // of a whole number; high < low: any
	high  int
	must  bool
}

// fieldsOf lists the fields of a struct type that files know, in their order.
func fieldsOf(t reflect.Type) []field {
	var list []field
	for i := range t.NumField() {
		sf := t.Field(i)
		name, flags, _ := strings.Cut(sf.Tag.Get("json"), ",")
		switch {
		case name == "-":
			continue
		case (sf.Anonymous && name == "" || strings.Contains(flags, "inline")) && sf.Type.Kind() == reflect.Struct:
			for _, f := range fieldsOf(sf.Type) {
				f.index = append([]int{i}, f.index...)
				list = append(list, f)
			}
			continue
		case !sf.IsExported() || name == "":
			continue
		}
		f := field{index: []int{i}, name: name, need: sf.Tag.Get("need"), rule: sf.Tag.Get("rule"), unit: sf.Tag.Get("in"),
			is: sf.Tag.Get("is"), doc: sf.Tag.Get("doc"), other: sf.Tag.Get("unless"), keep: strings.Contains(flags, "keep"), low: 1}
		if low, high, is := strings.Cut(f.rule, ".."); is {
			f.low, _ = strconv.Atoi(low)
			f.high, _ = strconv.Atoi(high)
		}
		f.must = f.is != "" || strings.Contains(flags, "must")
		f.keep = f.keep || f.must // the reader asks for it
		if f.must && f.need == "" && f.unit != "" {
			f.need = `number and unit in quotes, as "12.5 ` + f.unit + `"`
		}
		list = append(list, f)
	}
	return list
}

// A NodeDecoder reads itself from a value that has several forms.
type NodeDecoder interface{ DecodeNode(n *Node) error }

// A NodeEncoder gives what is written in its place: text, a number, a list, or a
// struct with tags; or an error for what no file can hold.
type NodeEncoder interface{ EncodeNode() any }

// A Schemer gives the schema of a value that has several forms.
type Schemer interface {
	Schema(d *Definitions) map[string]any
}

func textOf(v reflect.Value) (encoding.TextUnmarshaler, bool) {
	u, ok := v.Addr().Interface().(encoding.TextUnmarshaler)
	return u, ok
}

// takesPlain reports whether a type reads a number without a unit: a share, a
// ratio, a pH.
func takesPlain(t reflect.Type) bool {
	u, ok := reflect.New(t).Interface().(encoding.TextUnmarshaler)
	return ok && t.Kind() == reflect.Float64 && u.UnmarshalText([]byte("0.5")) == nil
}
