package fact

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
