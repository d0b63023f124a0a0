package mesh

import (
	"encoding/binary"
	"fmt"
	"math"
)

// plyText reads numbers from text.
type plyText struct{ words }

// room lets every count through: words end with the file.
func (s *plyText) room(int64, plyKind) error { return nil }

func (s *plyText) number(k plyKind) (float64, error) {
	v, err := s.words.number()
	if err != nil {
		return 0, err
	}
	if k.whole() {
		low, high := k.limits()
		if v != math.Trunc(v) || v < low || v > high {
			return 0, s.fail(ErrSyntax, fmt.Sprintf("a whole number from %.0f to %.0f", low, high), "the number %v", v)
		}
	}
	return v, nil
}

func (s *plyText) end() error {
	if word := s.next(); len(word) != 0 {
		return s.fail(ErrSyntax, "the end of the file", "the word %s behind the last row", clip(word))
	}
	return nil
}

// limits returns the least and the largest number of a whole kind.
func (k plyKind) limits() (low, high float64) {
	bits := 8 * k.size()
	if k == plyUint8 || k == plyUint16 || k == plyUint32 {
		return 0, math.Ldexp(1, bits) - 1
	}
	return -math.Ldexp(1, bits-1), math.Ldexp(1, bits-1) - 1
}

// plyBinary reads numbers from bytes.
type plyBinary struct {
	data []byte
	at   int
	big  bool
}

func (s *plyBinary) room(n int64, k plyKind) error {
	if n > int64(len(s.data)-s.at)/int64(k.size()) {
		return s.fail(ErrTruncated, "as many numbers as the file claims; export it once more",
			"a list of %d numbers, %d bytes left", n, len(s.data)-s.at)
	}
	return nil
}

func (s *plyBinary) number(k plyKind) (float64, error) {
	if err := s.room(1, k); err != nil {
		return 0, s.fail(ErrTruncated, "as many rows as the header counts; export the file once more", "the file ends")
	}
	b := s.data[s.at : s.at+k.size()]
	s.at += len(b)
	order := binary.ByteOrder(binary.LittleEndian)
	if s.big {
		order = binary.BigEndian
	}
	switch k {
	case plyInt8:
		return float64(int8(b[0])), nil
	case plyUint8:
		return float64(b[0]), nil
	case plyInt16:
		return float64(int16(order.Uint16(b))), nil
	case plyUint16:
		return float64(order.Uint16(b)), nil
	case plyInt32:
		return float64(int32(order.Uint32(b))), nil
	case plyUint32:
		return float64(order.Uint32(b)), nil
	case plyFloat32:
		return float64(math.Float32frombits(order.Uint32(b))) + 0, nil
	}
	return math.Float64frombits(order.Uint64(b)) + 0, nil
}

func (s *plyBinary) end() error {
	if n := len(s.data) - s.at; n > 0 {
		return s.fail(ErrSyntax, "the end of the file", "%d bytes behind the last row", n)
	}
	return nil
}

func (s *plyBinary) fail(reason error, need, format string, args ...any) error {
	return &FaultError{What: fmt.Sprintf(format, args...), Need: need, Offset: int64(s.at), Triangle: -1, Err: reason}
}
