package file

import (
	"errors"
	"fmt"
)

// ErrNotOSM is of a file that is nothing of OpenStreetMap, ErrEmpty of one that is nothing at all,
// ErrCut of one that breaks off.
var ErrNotOSM, ErrEmpty, ErrCut = errors.New("not an OpenStreetMap file: neither PBF nor XML, plain or packed with gzip or bzip2"), errors.New("the file is empty"), errors.New("the file is cut off")

// A Fault says where in the file something is wrong.
type Fault struct {
	Offset int64 // in bytes; of the unpacked text, where a text was packed
	Err    error
}

func (f *Fault) Error() string { return fmt.Sprintf("byte %d: %v", f.Offset, f.Err) }
func (f *Fault) Unwrap() error { return f.Err }

func faultAt(offset int64, format string, args ...any) error {
	return &Fault{offset, fmt.Errorf(format, args...)}
}
