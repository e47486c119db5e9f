package tripfile

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"ullage/data/foreign"
	"ullage/data/strict"
	"ullage/planner/fact"
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
	if err := foreign.Recognise(name, b); err != nil {
		return nil, err
	}
	b = bytes.TrimPrefix(b, []byte("\xef\xbb\xbf"))
	if !utf8.Valid(b) {
		return nil, fmt.Errorf("%s: not UTF-8 text: save it as UTF-8", name)
	}
	return b, nil
}

// unknownMembers: what a file says that nothing is known of, {list}.
const unknownMembers fact.Kind = "tripfile.unknown"

// decode reads what is known here, with the place of the fault in the error,
// and tells which members below one of that name are not known.
func decode(name string, b []byte, into any, below string) ([]fact.Fact, error) {
	more, err := strict.UnmarshalKnown(b, into)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	var paths []string
	for _, m := range more {
		if strings.HasPrefix(m.Path, below) {
			paths = append(paths, m.Path)
		}
	}
	if len(paths) == 0 {
		return nil, nil
	}
	return []fact.Fact{fact.Of(unknownMembers, fact.V{"file": fact.Text(name), "list": fact.Texts(paths)})}, nil
}
