package file

import "google.golang.org/protobuf/encoding/protowire"

// This file walks over protocol buffers messages: a cursor that skips what nobody asked for.
// Source: protobuf.dev/programming-guides/encoding.

// types of fields
const (
	wireVarint = protowire.VarintType
	wireBytes  = protowire.BytesType
)

// A wire is a cursor over a message. Reading past the end or over nonsense sets bad and empties it, so that loops end;
// callers ask for bad once, at the end. It never panics.
type wire struct {
	b   []byte
	bad bool
}

// more reports whether there is something left.
func (w *wire) more() bool { return len(w.b) > 0 }

// step goes on by what was read, or fails where that is negative.
func (w *wire) step(size int) {
	if size < 0 {
		w.b, w.bad = nil, true
		return
	}
	w.b = w.b[size:]
}

// field reads the number and type of the next field.
func (w *wire) field() (protowire.Number, protowire.Type) {
	num, typ, size := protowire.ConsumeTag(w.b)
	w.step(size)
	return num, typ
}

func (w *wire) varint() uint64 {
	if len(w.b) > 0 && w.b[0] < 0x80 { // most are short
		v := w.b[0]
		w.b = w.b[1:]
		return uint64(v)
	}
	v, size := protowire.ConsumeVarint(w.b)
	w.step(size)
	return v
}

// zigzag reads a signed varint (sint64).
func (w *wire) zigzag() int64 { return protowire.DecodeZigZag(w.varint()) }

// bytes reads a field with a length: text, a message or packed numbers. The result shares the message's memory.
func (w *wire) bytes() []byte {
	v, size := protowire.ConsumeBytes(w.b)
	w.step(size)
	return v
}

// skip passes over the value of a field.
func (w *wire) skip(typ protowire.Type) { w.step(protowire.ConsumeFieldValue(1, typ, w.b)) }

// fields are the first fields of a message by number, which are all that objects have: each as a number or as bytes, the last of
// equals; absent ones are zero.
type fields struct {
	number [11]uint64
	bytes  [11][]byte
}

// signed returns a number that is written as zigzag (sint64).
func (f *fields) signed(num int) int64 { return protowire.DecodeZigZag(f.number[num]) }

// read takes a message apart; false if it is damaged.
func (f *fields) read(message []byte) bool {
	*f = fields{}
	w := wire{b: message}
	for w.more() {
		switch num, t := w.field(); {
		case num < protowire.Number(len(f.bytes)) && t == wireBytes:
			f.bytes[num] = w.bytes()
		case num < protowire.Number(len(f.number)) && t == wireVarint:
			f.number[num] = w.varint()
		default:
			w.skip(t)
		}
	}
	return !w.bad
}
