package file

import (
	"errors"
	"fmt"
)

// This file counts what a file may take of memory. A small file can unpack to very much: what is too much is refused while it
// is read, before there is room for it.

// What one block may hold; usual are 8,000 objects. Anything beyond is damaged, or made to harm.
const (
	mostStrings = 1 << 20
	mostObjects = 1 << 20 // that somebody wants; also nodes of a way, members of a relation
	mostTagged  = 1 << 17 // nodes with tags
	mostText    = 1 << 20 // bytes of the tags of one object of XML
)

var errCrowded = fmt.Errorf("more than %d objects in one block, or of one object; usual are 8,000: the file is damaged; fetch it again, or write it anew: osmium cat IN -o OUT.osm.pbf", mostObjects)

// Bytes that an object takes once it is kept and something was made of it, about; measured.
const (
	objectBytes = 600
	tagBytes    = 80
	cornerBytes = 70
)

// usualMost is 4 GB.
const usualMost = 4 << 30

// A TooMuch error says that a file holds more of what is wanted than may be kept.
type TooMuch struct{ Most int64 } // bytes

func (e *TooMuch) Error() string {
	return fmt.Sprintf("what is looked for in it would take more than %d MB of memory: cut out the region of the trip first: osmium extract -b WEST,SOUTH,EAST,NORTH IN -o OUT.osm.pbf", e.Most>>20)
}

// A kept counts what is kept of a file.
type kept struct{ most, bytes int64 }

func (k *kept) object(tags Tags, corners int) error {
	k.bytes += objectBytes + tagBytes*int64(len(tags)) + cornerBytes*int64(corners)
	if k.bytes > k.most {
		return &TooMuch{k.most}
	}
	return nil
}

// isTooMuch tells such an error from one of the file.
func isTooMuch(err error) bool {
	var much *TooMuch
	return errors.As(err, &much)
}
