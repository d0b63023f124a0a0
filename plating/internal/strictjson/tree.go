package strictjson

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"reflect"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.com/laydown/units"
)

// Limits of what [Read] takes in, so that text from outside cannot make it work long.
const (
	maxBytes = 1 << 20
	maxDepth = 12
)

// An Error reports what is wrong with a file, and where; the reader of the file names it.
type Error = units.FileError

// A Node is one JSON value with its place in the file.
type Node struct {
	Line   int
	Path   string
	Kind   string // "object", "list", "text", "number", "true or false", "null"
	Text   string // of a text or number
	Yes    bool
	Values []*Node // members of an object or items of a list
	names  []string
	bare   bool // text that is not in quotes, see [Texts]
}

// Fail returns an [*Error] at the place of n, with the reason below if any.
func (n *Node) Fail(err error, format string, args ...any) *Error {
	if n == nil {
		return &Error{What: fmt.Sprintf(format, args...), Err: err}
	}
	return &Error{Line: n.Line, Path: n.Path, What: fmt.Sprintf(format, args...), Err: err}
}

// Ready returns an error where a value that decodes itself has no node, or is nil: only
// a call from outside of Decode can be so.
func Ready(n *Node, v any) error {
	if n == nil {
		return units.Missing("value of JSON", "one of a file")
	}
	if r := reflect.ValueOf(v); !r.IsValid() || r.Kind() == reflect.Pointer && r.IsNil() {
		return n.Fail(units.Missing("value to read into", "a pointer to one"), "has nowhere to go")
	}
	return nil
}

// A Doc says in words what a file is to hold, for the messages.
type Doc struct {
	What string // "job"
	Need string // "an object with job, parts and layers"

	AnyText bool // text may hold control characters: whoever takes it checks what may be printed
}

// Read reads one JSON value and nothing behind it. It takes at most 1 MiB,
// nested at most twelve deep, no name twice in an object, and no text with
// control characters.
//
// Errors: an [*Error].
func Read(r io.Reader, doc Doc) (*Node, error) {
	if r == nil {
		err := units.Missing("reader", "one that gives the "+doc.What)
		return nil, &Error{What: err.Error(), Err: err}
	}
	// One byte more than allowed tells a file that is too large from one that just fits.
	raw, err := io.ReadAll(io.LimitReader(r, maxBytes+1))
	if err != nil {
		return nil, &Error{What: "cannot be read: " + err.Error(), Err: err}
	}
	return Parse(raw, doc)
}

// Parse is [Read] of text that is in memory.
func Parse(raw []byte, doc Doc) (*Node, error) {
	if len(raw) > maxBytes {
		return nil, &Error{What: fmt.Sprintf("larger than %d bytes", maxBytes)}
	}
	// Some editors put a byte order mark in front. It says nothing in UTF-8.
	raw = bytes.TrimPrefix(raw, []byte("\xef\xbb\xbf"))
	if !utf8.Valid(raw) {
		return nil, &Error{What: "not UTF-8 text; save the file as UTF-8"}
	}
	if len(bytes.TrimSpace(raw)) == 0 {
		return nil, &Error{What: "empty; need " + doc.Need}
	}
	// The tree is built token by token and not with Unmarshal: only the tokens tell how far the
	// decoder has come, and with that the line. Numbers stay text, as typed; a message can then
	// show them so.
	t := &treeReader{raw: raw, dec: json.NewDecoder(bytes.NewReader(raw)), line: 1, anyText: doc.AnyText}
	t.dec.UseNumber()
	n, err := t.value("", 0)
	if err != nil {
		return nil, err
	}
	if _, err := t.dec.Token(); err != io.EOF {
		t.count()
		return nil, &Error{Line: t.line, What: "more text behind the " + doc.What + "; need one object"}
	}
	return n, nil
}

type treeReader struct {
	raw  []byte
	dec  *json.Decoder
	line int
	done int // bytes whose lines are counted

	anyText bool // see Doc
}

// count brings the line number up to the decoder's place.
func (t *treeReader) count() {
	// Only the bytes since the last token are counted, so that a file costs one pass.
	if at := int(t.dec.InputOffset()); at > t.done {
		t.line += bytes.Count(t.raw[t.done:at], []byte("\n"))
		t.done = at
	}
}

func (t *treeReader) token() (json.Token, error) {
	tok, err := t.dec.Token()
	if err == nil {
		t.count()
		return tok, nil
	}
	return nil, plainly(t.raw, err)
}

// plainly says of text that cannot be read what its writer has to look for: which character
// is wrong, and not which token was expected.
func plainly(raw []byte, err error) error {
	line := func(upTo []byte) int { return 1 + bytes.Count(upTo, []byte("\n")) }
	// The whole value at once: only then the decoder tells the place of names and brackets too.
	var value json.RawMessage
	var syntax *json.SyntaxError
	if scan := json.NewDecoder(bytes.NewReader(raw)).Decode(&value); errors.As(scan, &syntax) {
		// The offset counts the wrong character in, and may lie behind the end.
		at := min(max(int(syntax.Offset), 1), len(raw)) - 1
		wrong, _ := utf8.DecodeRune(raw[at:])
		return &Error{Line: line(raw[:at]), Err: scan, What: fmt.Sprintf("not JSON: something is wrong before %q; look "+
			"for a comma, colon or quote missing or too many", wrong)}
	}
	return &Error{Line: line(bytes.TrimSpace(raw)), Err: err,
		What: "ends in the middle; a brace, bracket or quote is not closed"}
}

func (t *treeReader) value(path string, depth int) (*Node, error) {
	if depth > maxDepth {
		return nil, &Error{Line: t.line, Path: path, What: fmt.Sprintf("nested deeper than %d", maxDepth)}
	}
	tok, err := t.token()
	if err != nil {
		return nil, err
	}
	n := &Node{Line: t.line, Path: path}
	switch v := tok.(type) {
	case string:
		n.Kind, n.Text = "text", v
		if err := units.CheckPrintable("text", v); err != nil && !t.anyText {
			if strings.ContainsFunc(v, unicode.IsControl) {
				return nil, n.Fail(nil, "holds a line break or another control character; need plain text in one line")
			}
			return nil, n.Fail(nil, "is %v", err)
		}
	case json.Number:
		n.Kind, n.Text = "number", v.String()
	case bool:
		n.Kind, n.Yes = "true or false", v
	case nil:
		n.Kind = "null"
	case json.Delim:
		if v == '{' {
			return n, t.object(n, depth)
		}
		return n, t.list(n, depth)
	}
	return n, nil
}

func (t *treeReader) object(n *Node, depth int) error {
	n.Kind = "object"
	// A name given twice is legal JSON, and most readers take the last. Here one of the two
	// figures would be lost without a word.
	met := map[string]bool{}
	for t.dec.More() {
		tok, err := t.token()
		if err != nil {
			return err
		}
		name, _ := tok.(string)
		if met[name] {
			return &Error{Line: t.line, Path: join(n.Path, name), What: "given twice; need it once"}
		}
		met[name] = true
		v, err := t.value(join(n.Path, name), depth+1)
		if err != nil {
			return err
		}
		n.names, n.Values = append(n.names, name), append(n.Values, v)
	}
	_, err := t.token()
	return err
}

func (t *treeReader) list(n *Node, depth int) error {
	n.Kind = "list"
	for t.dec.More() {
		v, err := t.value(fmt.Sprintf("%s[%d]", n.Path, len(n.Values)+1), depth+1)
		if err != nil {
			return err
		}
		n.Values = append(n.Values, v)
	}
	_, err := t.token()
	return err
}

// Texts returns an object whose members are text that nobody put into quotes, as the fields of
// an entry on a command line: they are read as those of a file are, and true, false and whole
// numbers may be meant as such. There are no lines.
func Texts(names, values []string) *Node {
	n := &Node{Kind: "object", names: names}
	for i, text := range values {
		n.Values = append(n.Values, &Node{Path: join("", names[i]), Kind: "text", Text: text, bare: true})
	}
	return n
}

// Describe shows a value in a message, cut to a length that a line can hold.
func Describe(n *Node) string {
	switch n.Kind {
	case "text":
		return strconv.Quote(units.Clip(n.Text))
	case "number":
		return units.Clip(n.Text)
	case "true or false":
		return strconv.FormatBool(n.Yes)
	case "object":
		return "an object"
	case "list":
		return "a list"
	}
	return units.Clip(n.Kind)
}

func join(path, name string) string {
	name = units.Clip(name)
	if path == "" {
		return name
	}
	return path + "." + name
}
