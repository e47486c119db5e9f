package tripfile

import (
	"bytes"
	"fmt"
	"io"
	"unicode/utf8"

	"ullage/data/strict"
)

// maxBytes is the size of the largest file that is read: a route of a
// million points.
const maxBytes = 64 << 20

func load(name string, r io.Reader) ([]byte, error) {
	b, err := io.ReadAll(io.LimitReader(r, maxBytes+1))
	if err != nil {
		return nil, fmt.Errorf("read %s: %w", name, err)
	}
	if len(b) > maxBytes {
		return nil, fmt.Errorf("%s: larger than %d MiB: is it a trip or fleet file?", name, maxBytes>>20)
	}
	b = bytes.TrimPrefix(b, []byte("\xef\xbb\xbf"))
	if !utf8.Valid(b) {
		return nil, fmt.Errorf("%s: not UTF-8 text: save it as UTF-8", name)
	}
	return b, nil
}

// decode reads what is known here, with the place of the fault in the error.
func decode(name string, b []byte, into any) error {
	if err := strict.UnmarshalKnown(b, into); err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	return nil
}
