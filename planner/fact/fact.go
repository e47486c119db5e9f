package fact

import (
	"encoding/json"
	"errors"
	"slices"
)

// A Kind names what is said. It is an entry of every catalogue of app/say.
type Kind string

// V are values by name, as the catalogue's sentence calls them.
type V map[string]Value

// A Fact is something that can be said. The zero value says nothing.
type Fact struct {
	Kind   Kind `json:"kind"`
	Values V    `json:"values,omitempty"`
}

// Of is a fact; v may be nil. It keeps v.
//
//go:noinline
func Of(kind Kind, v V) Fact { return Fact{Kind: kind, Values: v} }

// Nothing says whether there is nothing to say.
func (f Fact) Nothing() bool { return f.Kind == "" }

// Key is the same text for the same fact, and for no other.
func (f Fact) Key() string {
	text, err := json.Marshal(f) // a map's keys are sorted
	if err != nil {              // a number that is not finite
		return string(f.Kind)
	}
	return string(text)
}

// Equal says whether two facts say the same.
func (f Fact) Equal(g Fact) bool { return f.Kind == g.Kind && f.Key() == g.Key() }

// A Told error is one for people as well: Error is for who mends the program, and
// Fact is what is said.
type Told interface {
	error
	Fact() Fact
}

// An Error is a [Told] error that is its fact and nothing else. The zero value says nothing.
type Error struct {
	Says Fact
	Err  error // the same for who mends the program; nil: the fact's kind and values do
}

// Fail is an error that says a fact. err is the same for who mends the program; it may be nil.
//
//go:noinline
func Fail(err error, kind Kind, v V) error { return &Error{Of(kind, v), err} }

func (e *Error) Error() string {
	if e.Err != nil {
		return e.Err.Error()
	}
	return e.Says.Key()
}

func (e *Error) Unwrap() error { return e.Err }
func (e *Error) Fact() Fact    { return e.Says }

// Why is what an error says to people: its fact, or its text where it has none.
func Why(err error) Value {
	var told Told
	if errors.As(err, &told) {
		return Clause(told.Fact())
	}
	return Text(err.Error())
}

// Contains says whether a list has a fact.
func Contains(list []Fact, f Fact) bool { return slices.ContainsFunc(list, f.Equal) }
