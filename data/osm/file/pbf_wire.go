package file

// This file reads the protocol buffers wire format, as much of it as PBF needs. By hand, because the block decoder
// must skip what nobody asked for, and because the general library is larger than the rest of the reader.
// Source: protobuf.dev/programming-guides/encoding.

// wire types
const (
	wireVarint = 0
	wire64     = 1
	wireBytes  = 2
	wire32     = 5
)

// A wire is a cursor over a message. Reading past the end or over nonsense sets bad and empties it, so that loops end;
// callers ask for bad once, at the end. It never panics.
type wire struct {
	b   []byte
	bad bool
}

func (w *wire) fail() {
	w.b, w.bad = nil, true
}

// more reports whether there is something left.
func (w *wire) more() bool { return len(w.b) > 0 }

// field reads the number and wire type of the next field.
func (w *wire) field() (num uint64, typ int) {
	key := w.varint()
	return key >> 3, int(key & 7)
}

func (w *wire) varint() uint64 {
	if len(w.b) > 0 && w.b[0] < 0x80 { // most are short
		v := w.b[0]
		w.b = w.b[1:]
		return uint64(v)
	}
	var v uint64
	for i, c := range w.b {
		if i == 10 {
			break
		}
		v |= uint64(c&0x7f) << (7 * i)
		if c < 0x80 {
			w.b = w.b[i+1:]
			return v
		}
	}
	w.fail()
	return 0
}

// zigzag reads a signed varint (sint64).
func (w *wire) zigzag() int64 {
	return unzigzag(w.varint())
}

func unzigzag(v uint64) int64 { return int64(v>>1) ^ -int64(v&1) }

// bytes reads a field with a length: text, a message or packed numbers. The result shares the message's memory.
func (w *wire) bytes() []byte {
	n := w.varint()
	if n > uint64(len(w.b)) {
		w.fail()
		return nil
	}
	part := w.b[:n]
	w.b = w.b[n:]
	return part
}

// skip passes over the value of a field.
func (w *wire) skip(typ int) {
	n := 0
	switch typ {
	case wireVarint:
		w.varint()
	case wireBytes:
		w.bytes()
	case wire64:
		n = 8
	case wire32:
		n = 4
	default:
		w.fail()
	}
	if n > len(w.b) {
		w.fail()
		return
	}
	w.b = w.b[n:]
}

// fields are the first fields of a message by number, which are all that objects have: each as a number or as bytes, the last of
// equals; absent ones are zero.
type fields struct {
	number [11]uint64
	bytes  [11][]byte
}

// signed returns a number that is written as zigzag (sint64).
func (f *fields) signed(num int) int64 { return unzigzag(f.number[num]) }

// read takes a message apart; false if it is damaged.
func (f *fields) read(message []byte) bool {
	*f = fields{}
	w := wire{b: message}
	for w.more() {
		switch num, t := w.field(); {
		case num < uint64(len(f.bytes)) && t == wireBytes:
			f.bytes[num] = w.bytes()
		case num < uint64(len(f.number)) && t == wireVarint:
			f.number[num] = w.varint()
		default:
			w.skip(t)
		}
	}
	return !w.bad
}
