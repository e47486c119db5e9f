package file

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"fmt"
	"io"

	"google.golang.org/protobuf/encoding/protowire"
)

// This file finds and unpacks the blobs of a PBF file.
// Source: wiki.openstreetmap.org/wiki/PBF_Format, "File format" and the limits given there.

const (
	maxBlobHeader = 64 << 10
	maxBlob       = 32 << 20
)

// A blob is a packed block of the file.
type blob struct {
	at   int64 // byte offset of its data
	size int   // of its data, packed
}

// listBlobs walks over the blob headers without reading the data between. The first blob is the file's header.
func listBlobs(r io.ReadSeeker, total int64) ([]blob, error) {
	var list []blob
	for at := int64(0); at < total; {
		if _, err := r.Seek(at, io.SeekStart); err != nil {
			return nil, err
		}
		b, typ, err := readBlobHeader(r, at)
		if err != nil {
			return nil, err
		}
		if len(list) == 0 && typ != "OSMHeader" {
			return nil, faultAt(at, "the first block is %.20q, want OSMHeader: not an OpenStreetMap PBF file", typ)
		}
		end := b.at + int64(b.size)
		if end > total {
			return nil, faultAt(at, "the block ends at byte %d, but the file has only %d: %w; fetch it again", end, total, ErrCut)
		}
		// "Parsers should ignore and skip fileblock types that they do not recognize."
		if typ == "OSMData" || len(list) == 0 {
			list = append(list, b)
		}
		at = end
	}
	return list, nil
}

func readBlobHeader(r io.Reader, at int64) (b blob, typ string, err error) {
	var buf [256]byte
	if _, err := io.ReadFull(r, buf[:4]); err != nil {
		return b, "", faultAt(at, "%w in the length of a block: %w", ErrCut, err)
	}
	n := binary.BigEndian.Uint32(buf[:4])
	if n == 0 || n > maxBlobHeader {
		return b, "", faultAt(at, "a block header of %d bytes, allowed are 1 to %d: the file is damaged", n, maxBlobHeader)
	}
	var head []byte
	if int(n) <= len(buf) {
		head = buf[:n]
	} else {
		head = make([]byte, n)
	}
	if _, err := io.ReadFull(r, head); err != nil {
		return b, "", faultAt(at, "%w in a block header: %w", ErrCut, err)
	}
	if typ, b.size, err = readFrame(head); err != nil {
		return b, "", &Fault{at, err}
	}
	b.at = at + 4 + int64(n)
	return b, typ, nil
}

// readFrame reads the header of a blob: what it holds, and its packed size.
func readFrame(head []byte) (typ string, size int, err error) {
	size = -1
	w := wire{b: head}
	for w.more() {
		switch num, t := w.field(); {
		case num == 1 && t == wireBytes:
			typ = string(w.bytes())
		case num == 3 && t == wireVarint:
			v := w.varint()
			if v > maxBlob {
				return "", 0, fmt.Errorf("a block of %d bytes, allowed are %d: the file is damaged", v, maxBlob)
			}
			size = int(v)
		default:
			w.skip(t)
		}
	}
	if w.bad || size < 0 {
		return "", 0, fmt.Errorf("the block header is damaged (data size %d)", size)
	}
	return typ, size, nil
}

// packings that the format knows but this reader does not unpack.
var otherPackings = map[protowire.Number]string{4: "LZMA", 5: "bzip2", 6: "LZ4", 7: "Zstandard"}

// An unpacker turns blobs into blocks and keeps its buffers between them. Not for concurrent use.
type unpacker struct {
	src bytes.Reader
	z   io.ReadCloser
	out []byte
}

// unpack returns the block in data. The result is valid until the next call. at is for errors.
func (u *unpacker) unpack(data []byte, at int64) ([]byte, error) {
	var raw, packed []byte
	rawSize := -1
	w := wire{b: data}
	for w.more() {
		switch num, t := w.field(); {
		case num == 1 && t == wireBytes:
			raw = w.bytes()
		case num == 2 && t == wireVarint:
			v := w.varint()
			if v > maxBlob {
				return nil, faultAt(at, "a block of %d bytes unpacked, allowed are %d", v, maxBlob)
			}
			rawSize = int(v)
		case num == 3 && t == wireBytes:
			packed = w.bytes()
		case otherPackings[num] != "" && t == wireBytes:
			return nil, faultAt(at, "the block is packed with %s, which is not read here; repack the file: osmium cat IN.osm.pbf -o OUT.osm.pbf", otherPackings[num])
		default:
			w.skip(t)
		}
	}
	switch {
	case w.bad:
		return nil, faultAt(at, "the block is damaged")
	case packed != nil:
		return u.inflate(packed, rawSize, at)
	case raw != nil:
		if len(raw) > maxBlob {
			return nil, faultAt(at, "a block of %d bytes unpacked, allowed are %d", len(raw), maxBlob)
		}
		return raw, nil
	}
	return nil, faultAt(at, "the block holds no data in a packing that is known here")
}

func (u *unpacker) inflate(packed []byte, size int, at int64) ([]byte, error) {
	if size < 0 {
		return nil, faultAt(at, "the block does not state its unpacked size")
	}
	u.src.Reset(packed)
	var err error
	if u.z == nil {
		u.z, err = zlib.NewReader(&u.src)
	} else {
		err = u.z.(zlib.Resetter).Reset(&u.src, nil)
	}
	if err != nil {
		u.z = nil
		return nil, faultAt(at, "unpack the block: %w", err)
	}
	// Grown while it is filled: a lying size must not take 32 MB for a block of ten bytes.
	buf := bytes.NewBuffer(u.out[:0])
	n, err := io.Copy(buf, io.LimitReader(u.z, int64(size)+1))
	u.out = buf.Bytes()
	if err != nil {
		return nil, faultAt(at, "unpack the block: %w", err)
	}
	if n != int64(size) {
		return nil, faultAt(at, "the block has %d bytes or more unpacked, its header says %d", n, size)
	}
	return u.out, nil
}
