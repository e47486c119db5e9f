package file

import (
	"time"

	"google.golang.org/protobuf/encoding/protowire"
)

// This file finds the newest object of a block, for files that do not state the date of their data.

// newest returns the time of the newest edit in the block, in milliseconds since 1970; 0 if the block has no times.
// Source: Info and DenseInfo in osmformat.proto.
func (b *block) newest() (ms int64) {
	for _, g := range b.groups {
		for w := (wire{b: g}); w.more(); {
			num, t := w.field()
			switch {
			case t != wireBytes:
				w.skip(t)
			case num == 2:
				ms = max(ms, newestDense(w.bytes()))
			default:
				ms = max(ms, timeIn(field(w.bytes(), 4)))
			}
		}
	}
	return ms * b.dateGranularity
}

// newestDense returns the greatest time of dense nodes, in units of the block.
func newestDense(nodes []byte) (newest int64) {
	stamps := wire{b: field(field(nodes, 5), 2)}
	for at := int64(0); stamps.more(); {
		at += stamps.zigzag()
		newest = max(newest, at)
	}
	return newest
}

// field returns the content of a field with a length; nil if there is none.
func field(msg []byte, want protowire.Number) []byte {
	for w := (wire{b: msg}); w.more(); {
		num, t := w.field()
		if num == want && t == wireBytes {
			return w.bytes()
		}
		w.skip(t)
	}
	return nil
}

// timeIn returns the time in the info of a node, way or relation, in units of the block; 0 if there is none.
func timeIn(info []byte) int64 {
	for w := (wire{b: info}); w.more(); {
		num, t := w.field()
		if num == 2 && t == wireVarint {
			return int64(w.varint())
		}
		w.skip(t)
	}
	return 0
}

// dayOf writes a time as a day; "" for 0 and for nonsense.
func dayOf(ms int64) string {
	if ms <= 0 || ms > 1<<45 { // the year 3084
		return ""
	}
	return time.UnixMilli(ms).UTC().Format(time.DateOnly)
}
