// Package wrong tells people what is wrong with a file that is of a kind that is read: it is empty, it ends in the middle, it
// is no map, a number of it is no number.
//
// In comes the error of a reader, out goes the same error with its file and a fact. The readers of bytes say in plain errors
// what they found; what is known of them here has words of its own, the rest is quoted as a detail for who made the file.
// What a file is that is of no kind that is read, package foreign tells.
package wrong

import (
	"errors"
	"io"
	"io/fs"

	"ullage/data/foreign"
	"ullage/data/osm/file"
	"ullage/data/strict"
	"ullage/planner/fact"
)

// Kinds of what is wrong with a {file}.
const (
	isNone    fact.Kind = "file.none"
	isDenied  fact.Kind = "file.denied"
	isEmpty   fact.Kind = "file.empty"
	isCut     fact.Kind = "file.cut"
	isDamaged fact.Kind = "file.damaged"
	isNoMap   fact.Kind = "file.no_map"
	atLine    fact.Kind = "file.at"     // {line} and {column}: {what}
	says      fact.Kind = "file.says"   // {why}
	unread    fact.Kind = "file.unread" // {what}
)

// ErrEmpty is of a file without text.
var ErrEmpty = errors.New("the file is empty")

// ErrCut is of a text that breaks off.
var ErrCut = strict.ErrCut

// known are errors that have words. The first that an error is counts.
var known = []struct {
	err  error
	kind fact.Kind
}{
	{fs.ErrNotExist, isNone}, {fs.ErrPermission, isDenied}, {ErrEmpty, isEmpty}, {file.ErrEmpty, isEmpty}, {file.ErrNotOSM, isNoMap},
	{ErrCut, isCut}, {file.ErrCut, isCut}, {io.ErrUnexpectedEOF, isCut},
}

// An Error is what is wrong with a file.
type Error struct {
	File string
	Err  error
}

// In says that an error is of a file; nil for nil. One that names its file already stays as it is.
func In(name string, err error) error {
	var named *Error
	var other *foreign.Error
	if err == nil || errors.As(err, &named) || errors.As(err, &other) {
		return err
	}
	return &Error{name, err}
}

func (e *Error) Error() string { return "read " + e.File + ": " + e.Err.Error() }
func (e *Error) Unwrap() error { return e.Err }

// Fact says it in words.
func (e *Error) Fact() fact.Fact {
	v := fact.V{"file": fact.Text(e.File)}
	for _, k := range known {
		if errors.Is(e.Err, k.err) {
			return fact.Of(k.kind, v)
		}
	}
	var told fact.Told
	var placed *strict.Error
	var damaged *file.Fault
	switch {
	case errors.As(e.Err, &placed):
		v["line"], v["column"], v["what"] = fact.Count(placed.Line), fact.Count(placed.Column), fact.Why(placed.Unplaced())
		return fact.Of(atLine, v)
	case errors.As(e.Err, &told):
		v["why"] = fact.Clause(told.Fact())
		return fact.Of(says, v)
	case errors.As(e.Err, &damaged):
		v["what"] = fact.Text(e.Err.Error())
		return fact.Of(isDamaged, v)
	}
	v["what"] = fact.Text(e.Err.Error())
	return fact.Of(unread, v)
}
