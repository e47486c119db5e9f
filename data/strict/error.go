package strict

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
)

// An Error says what is wrong with a text, and where.
type Error struct {
	Line, Column int    // from 1; columns are bytes
	Path         string // "stops[0].km"; "" for the whole or where it is not known
	Err          error
}

func (e *Error) Error() string {
	return fmt.Sprintf("line %d, column %d: %v", e.Line, e.Column, e.Unplaced())
}

func (e *Error) Unwrap() error { return e.Err }

// Unplaced is the error without line and column, for a text that is itself a part of another.
func (e *Error) Unplaced() error {
	if e.Path == "" {
		return e.Err
	}
	return fmt.Errorf("%s: %w", e.Path, e.Err)
}

// At says that something is wrong at an offset of a text.
func At(text []byte, offset int, err error) *Error {
	before := text[:max(0, min(offset, len(text)))]
	return &Error{Line: 1 + bytes.Count(before, []byte("\n")), Column: len(before) - bytes.LastIndexByte(before, '\n'), Err: err}
}

// ErrCut is of a text that breaks off.
var ErrCut = errors.New("the file ends in the middle; copy or export it again")

// broken says where a text is not JSON. The text is looked at from its beginning: the offsets that encoding/json gives when it
// reads token by token are not those of the text.
func broken(text []byte) *Error {
	end := json.NewDecoder(bytes.NewReader(text)).Decode(new(json.RawMessage))
	if errors.Is(end, io.EOF) || errors.Is(end, io.ErrUnexpectedEOF) {
		return At(text, len(text), ErrCut)
	}
	err := json.Unmarshal(text, new(json.RawMessage))
	var syntax *json.SyntaxError
	if !errors.As(err, &syntax) {
		return At(text, 0, err)
	}
	return At(text, int(syntax.Offset)-1, fmt.Errorf("not JSON: %w", err))
}
