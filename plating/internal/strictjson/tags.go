package strictjson

import (
	"encoding"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"sync"
)

// The tags of a struct field say how a file gives it. One table serves
// [Decode], [Encode] and [Schema].
//
//	json:"area"      the name of the member; "-" leaves the field out; no tag on an embedded
//	                 struct, or json:",inline", puts its fields beside the others
//	with:"keep"      written also when it is zero; any other field is then left out
//	with:"must"      it cannot be left out, by the reader or the writer
//	unless:"library" not written as zero where the member of that name is given
//	if:"by=arc"      known only beside a member that holds one of some words (by=arc|cap; of
//	                 one left out the first of its words counts), that is there (file), or
//	                 that is not (!wall); of several conditions all hold. On a struct whose
//	                 fields stand beside the others it is of all of them
//	words:"line, arc" the words that a text may be
//	need:"..."       what it is to hold, for messages
//	rule:"positive"  a quantity above zero; also nonnegative, share (above 0 and at most 1),
//	                 amount and percent (decimals in quotes), "1..9" for numbers,
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
	words []string
	when  string // condition of the tag "if"
	plain bool   // it takes a number without a unit
}

// known holds the fields of the types that were met: their tags are taken apart once.
var known sync.Map // of reflect.Type to []field

// fieldsOf lists the fields of a struct type that files know, in their order.
func fieldsOf(t reflect.Type) []field {
	if list, met := known.Load(t); met {
		return list.([]field)
	}
	var list []field
	for i := range t.NumField() {
		sf := t.Field(i)
		name, flags, _ := strings.Cut(sf.Tag.Get("json"), ",")
		with := sf.Tag.Get("with") // not of json's own options, which other tools know
		switch {
		case name == "-":
			continue
		case (sf.Anonymous && name == "" || strings.Contains(flags, "inline")) && sf.Type.Kind() == reflect.Struct:
			when := sf.Tag.Get("if")
			// The fields of an embedded struct become fields of the outer one. Each gets the way
			// down to it, and the condition of the struct on top of its own.
			for _, f := range fieldsOf(sf.Type) {
				f.index = append([]int{i}, f.index...)
				if when == f.name { // the member that calls for the others
					f.must = false
				} else {
					f.when = strings.TrimSpace(when + " " + f.when)
				}
				list = append(list, f)
			}
			continue
		case !sf.IsExported() || name == "":
			continue
		}
		f := field{index: []int{i}, name: name, need: sf.Tag.Get("need"), rule: sf.Tag.Get("rule"), unit: sf.Tag.Get("in"),
			is: sf.Tag.Get("is"), doc: sf.Tag.Get("doc"), other: sf.Tag.Get("unless"), keep: strings.Contains(with, "keep"),
			when: sf.Tag.Get("if"), low: 1, plain: takesPlain(sf.Type)}
		if words := sf.Tag.Get("words"); words != "" {
			f.words = strings.Split(words, ", ")
		}
		// low starts at 1 and high at 0, so a field without bounds has low above high.
		if low, high, is := strings.Cut(f.rule, ".."); is {
			f.low, _ = strconv.Atoi(low)
			f.high, _ = strconv.Atoi(high)
		}
		f.must = f.is != "" || strings.Contains(with, "must")
		f.keep = f.keep || f.must // the reader asks for it
		if f.must && f.need == "" && f.unit != "" {
			f.need = `number and unit in quotes, as "12.5 ` + f.unit + `"`
		}
		list = append(list, f)
	}
	known.Store(t, list)
	return list
}

// met reports whether the condition of a field holds in an object of its struct.
func (f *field) met(n *Node, list []field) bool {
	// Each term has one of three forms: name=word|word, name, !name. A member with words that is
	// left out counts as the first of them, as the reader takes it.
	for _, term := range strings.Fields(f.when) {
		name, words, equals := strings.Cut(strings.TrimPrefix(term, "!"), "=")
		at := n.member(name)
		holds := at != nil
		if equals {
			word := ""
			if i := slices.IndexFunc(list, func(f field) bool { return f.name == name }); at != nil {
				word = at.Text
			} else if i >= 0 && list[i].words != nil {
				word = list[i].words[0]
			}
			holds = slices.Contains(strings.Split(words, "|"), word)
		}
		if holds == strings.HasPrefix(term, "!") {
			return false
		}
	}
	return true
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

// takesPlain reports whether a type, or that of its items, reads a number without a unit:
// a share, a ratio, a pH.
func takesPlain(t reflect.Type) bool {
	for t.Kind() == reflect.Pointer || t.Kind() == reflect.Slice || t.Kind() == reflect.Array {
		t = t.Elem()
	}
	// The type is asked instead of a list of types: one that is added later is known at once.
	u, ok := reflect.New(t).Interface().(encoding.TextUnmarshaler)
	return ok && t.Kind() == reflect.Float64 && u.UnmarshalText([]byte("0.5")) == nil
}
