package jobfile

import (
	"errors"

	"example.com/laydown/plating/internal/strictjson"
)

// An Error reports what is wrong with a job or case file, and where.
type Error struct {
	Line int    // counted from 1; 0 when the file as a whole is meant
	Path string // the field, as layers[1].bath.efficiency; "" for the whole
	What string // what is wrong and what would do
	Err  error  // the reason below, if any

	file string // what the file is, "" for a job
}

// Error returns line, field and reason in one line.
func (e *Error) Error() string {
	if e.file != "" {
		return strictjson.Message(e.file, e.Line, e.Path, e.What)
	}
	return strictjson.Message("job file", e.Line, e.Path, e.What)
}

// Unwrap returns the reason below: a [*units.ParseError], a [*units.ValueError] ...
func (e *Error) Unwrap() error { return e.Err }

// atPlace turns an error of the reader below into one of this package.
func atPlace(err error) error { return atPlaceIn("", err) }

func atPlaceIn(file string, err error) error {
	var e *strictjson.Error
	if errors.As(err, &e) {
		return &Error{Line: e.Line, Path: e.Path, What: e.What, Err: e.Err, file: file}
	}
	return err
}
