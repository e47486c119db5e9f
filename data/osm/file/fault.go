package file

import "fmt"

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
