package ledger

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"time"

	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/units"
)

const (
	format  = "laydown ledger 1" // name and version, in the first line
	maxLine = 1 << 16            // bytes
)

// A lineText is the payload of one line. Just one of the pointers is set.
type lineText struct {
	Seq         int          `json:"seq" with:"must" need:"the number of the line"`
	Format      string       `json:"format,omitempty"`
	When        time.Time    `json:"when,omitzero"` // always there; [checkTime] refuses none in better words
	Opening     *Account     `json:"opening,omitempty"`
	Load        *Load        `json:"load,omitempty"`
	Evaporation *Evaporation `json:"evaporation,omitempty"`
	Addition    *Addition    `json:"addition,omitempty"`
	Analysis    *Analysis    `json:"analysis,omitempty"`
	Correction  *Correction  `json:"correction,omitempty"`
	Void        *Void        `json:"void,omitempty"`
	Note        string       `json:"note,omitempty"`
}

// textOf puts an entry into the form of a line.
func textOf(seq int, e Entry) (lineText, error) {
	t := lineText{Seq: seq, When: e.When, Note: e.Note}
	switch v := e.Event.(type) {
	case Load:
		t.Load = &v
	case Evaporation:
		t.Evaporation = &v
	case Addition:
		t.Addition = &v
	case Analysis:
		t.Analysis = &v
	case Correction:
		t.Correction = &v
	case Void:
		t.Void = &v
	default:
		return t, &units.ValueError{Field: "event", Value: fmt.Sprintf("%T", e.Event),
			Need: "a Load, Evaporation, Addition, Analysis, Correction or Void by value", Err: units.ErrSyntax}
	}
	return t, nil
}

// entry is the way back.
func (t *lineText) entry() (Entry, error) {
	e := Entry{When: t.When, Note: t.Note}
	n := 0
	take := func(there bool, event func() Event) {
		if there {
			e.Event = event()
			n++
		}
	}
	take(t.Load != nil, func() Event { return *t.Load })
	take(t.Evaporation != nil, func() Event { return *t.Evaporation })
	take(t.Addition != nil, func() Event { return *t.Addition })
	take(t.Analysis != nil, func() Event { return *t.Analysis })
	take(t.Correction != nil, func() Event { return *t.Correction })
	take(t.Void != nil, func() Event { return *t.Void })
	if n != 1 || t.Opening != nil || t.Format != "" {
		return e, errors.New("need one of load, evaporation, addition, analysis, correction, void")
	}
	return e, nil
}

// A line is {"crc":"xxxxxxxx","entry":PAYLOAD} and a newline.
const (
	head   = `{"crc":"`
	middle = `","entry":`
	sumLen = 8
)

func encode(before uint32, t lineText) (line []byte, sum uint32, err error) {
	var payload bytes.Buffer
	enc := json.NewEncoder(&payload)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(t); err != nil {
		return nil, 0, err
	}
	p := bytes.TrimSuffix(payload.Bytes(), []byte("\n"))
	sum = checksum(before, p)
	line = fmt.Appendf(nil, "%s%08x%s%s}\n", head, sum, middle, p)
	if len(line) > maxLine {
		return nil, 0, &units.ValueError{Field: "line", Value: fmt.Sprintf("%d bytes", len(line)),
			Need: fmt.Sprintf("at most %d", maxLine), Err: units.ErrOutOfRange}
	}
	return line, sum, nil
}

// open takes a line without its newline apart and checks its sum.
func open(before uint32, line []byte) (payload []byte, sum uint32, err error) {
	const least = len(head) + sumLen + len(middle) + 1
	if len(line) < least || string(line[:len(head)]) != head ||
		string(line[len(head)+sumLen:least-1]) != middle || line[len(line)-1] != '}' {
		return nil, 0, errors.New(`need {"crc":"8 digits","entry":{...}} as this package writes it`)
	}
	payload = line[least-1 : len(line)-1]
	sum = checksum(before, payload)
	if got := string(line[len(head) : len(head)+sumLen]); got != fmt.Sprintf("%08x", sum) {
		return nil, 0, fmt.Errorf("checksum %q, the text has %08x", units.Clip(string(got)), sum)
	}
	return payload, sum, nil
}

// decode reads a payload and refuses fields that are unknown, written otherwise, or there
// twice: package encoding/json takes capitals for small letters and the last of two equal
// names, which a book of gold should not.
func decode(payload []byte) (lineText, error) {
	var t lineText
	// Books of before may hold characters that are refused today.
	n, err := strictjson.Parse(payload, strictjson.Doc{What: "line", Need: "an entry", AnyText: true})
	if err == nil {
		err = strictjson.Decode(n, &t)
	}
	return t, inField(err)
}
