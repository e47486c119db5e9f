package tripfile

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"ullage/data/foreign"
	"ullage/data/strict"
	"ullage/data/wrong"
	"ullage/planner/fact"
)

// maxBytes is the size of the largest file that is read: a route of a
// million points.
const maxBytes = 64 << 20

func load(name string, r io.Reader) ([]byte, error) {
	b, err := io.ReadAll(io.LimitReader(r, maxBytes+1))
	if err != nil {
		return nil, wrong.In(name, err)
	}
	if len(b) > maxBytes {
		return nil, wrong.In(name, fact.Fail(fmt.Errorf("larger than %d MiB: is it a trip or fleet file?", maxBytes>>20), tooLarge, fact.V{"most": fact.Quantity(maxBytes>>20, "MB", 0)}))
	}
	if err := foreign.Recognise(name, b); err != nil {
		return nil, err
	}
	b = bytes.TrimPrefix(b, []byte("\xef\xbb\xbf"))
	if !utf8.Valid(b) {
		return nil, wrong.In(name, fact.Fail(errors.New("not UTF-8 text: save it as UTF-8"), notUTF8, nil))
	}
	return b, nil
}

// Kinds of what keeps a file from being a trip or a fleet.
const (
	tooLarge  fact.Kind = "tripfile.large" // {most}
	notUTF8   fact.Kind = "tripfile.utf8"
	noTrip    fact.Kind = "tripfile.no_trip" // it is GeoJSON of something else
	version   fact.Kind = "tripfile.version" // {found}, not {need}
	noVehicle fact.Kind = "tripfile.vehicle" // {found} is none of {list}
	twoRoutes fact.Kind = "tripfile.routes"
	noFleet   fact.Kind = "tripfile.no_fleet"
)

// ofVersion says that a format is another one.
func ofVersion(err error, found, need string) error {
	return fact.Fail(err, version, fact.V{"found": fact.Text(found), "need": fact.Text(need)})
}

// unknownMembers: what a file says that nothing is known of, {list}.
const unknownMembers fact.Kind = "tripfile.unknown"

// decode reads what is known here, with the place of the fault in the error,
// and tells which members below one of that name are not known.
func decode(name string, b []byte, into any, below string) ([]fact.Fact, error) {
	more, err := strict.UnmarshalKnown(b, into)
	if err != nil {
		return nil, wrong.In(name, err)
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
