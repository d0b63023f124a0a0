package mesh

import (
	"errors"
	"strings"
	"testing"
)

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
