package file

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
)

// This file writes PBF for tests: small files, and files that are wrong in one place.

// A message is built field by field.
type message []byte

func (m message) number(field int, v uint64) message {
	return message(binary.AppendUvarint(binary.AppendUvarint(m, uint64(field<<3)), v))
}

func (m message) signed(field int, v int64) message { return m.number(field, zigzagged(v)) }

func (m message) data(field int, data []byte) message {
	m = binary.AppendUvarint(binary.AppendUvarint(m, uint64(field<<3)|uint64(wireBytes)), uint64(len(data)))
	return append(m, data...)
}

func (m message) text(field int, text string) message { return m.data(field, []byte(text)) }

func zigzagged(v int64) uint64 { return uint64(v)<<1 ^ uint64(v>>63) }

// packed writes plain numbers, deltas the zigzag differences of numbers.
func packed(list ...uint64) (b []byte) {
	for _, v := range list {
		b = binary.AppendUvarint(b, v)
	}
	return b
}

func deltas(list ...int64) (b []byte) {
	last := int64(0)
	for _, v := range list {
		b = binary.AppendUvarint(b, zigzagged(v-last))
		last = v
	}
	return b
}

// fileBlock frames a blob.
func fileBlock(typ string, blob []byte) []byte {
	head := message{}.text(1, typ).number(3, uint64(len(blob)))
	out := binary.BigEndian.AppendUint32(nil, uint32(len(head)))
	return append(append(out, head...), blob...)
}

func zlibBlob(data []byte) []byte {
	var b bytes.Buffer
	z := zlib.NewWriter(&b)
	z.Write(data)
	z.Close()
	return message{}.number(2, uint64(len(data))).data(3, b.Bytes())
}

func rawBlob(data []byte) []byte { return message{}.data(1, data) }

func headerBlock(features ...string) []byte {
	m := message{}
	for _, f := range features {
		m = m.text(4, f)
	}
	return fileBlock("OSMHeader", rawBlob(m))
}

func stringTable(list ...string) []byte {
	m := message{}
	for _, s := range list {
		m = m.text(1, s)
	}
	return m
}

// sample strings: a number is the place in the list.
var sampleStrings = stringTable("", "amenity", "fuel", "name", "A", "type", "multipolygon", "outer", "inner", "tourism", "camp_site")

// sampleNodes has 4 dense corners of a square about (10.5, 50.5) and one plain node that is a filling station.
func sampleNodes() []byte {
	deg := func(list ...float64) (out []int64) {
		for _, v := range list {
			out = append(out, int64(v*1e7))
		}
		return out
	}
	dense := message{}.data(1, deltas(1, 2, 3, 4)).data(8, deltas(deg(50, 50, 51, 51)...)).data(9, deltas(deg(10, 11, 11, 10)...)).
		data(10, packed(0, 0, 0, 1, 2, 3, 4, 0))
	plain := message{}.signed(1, 7).data(2, packed(1, 3)).data(3, packed(2, 4)).signed(8, 525000000).signed(9, -15000000)
	return message{}.data(1, sampleStrings).data(2, message{}.data(2, dense)).data(2, message{}.data(1, plain))
}

// sampleWays has one closed filling station and the two halves of the outline of a campsite.
func sampleWays() []byte {
	closed := message{}.number(1, 10).data(2, packed(1)).data(3, packed(2)).data(8, deltas(1, 2, 3, 4, 1))
	half1 := message{}.number(1, 11).data(8, deltas(1, 2, 3))
	half2 := message{}.number(1, 12).data(8, deltas(1, 4, 3))
	return message{}.data(1, sampleStrings).data(2, message{}.data(3, closed).data(3, half1).data(3, half2))
}

func sampleRelations() []byte {
	rel := message{}.number(1, 20).data(2, packed(5, 9)).data(3, packed(6, 10)).
		data(8, packed(7, 7)).data(9, deltas(11, 12)).data(10, packed(1, 1))
	return message{}.data(1, sampleStrings).data(2, message{}.data(4, rel))
}

// samplePBF is a file of the three blocks.
func samplePBF() []byte {
	out := headerBlock("OsmSchema-V0.6", "DenseNodes")
	out = append(out, fileBlock("OSMData", zlibBlob(sampleNodes()))...)
	out = append(out, fileBlock("OSMData", rawBlob(sampleWays()))...)
	return append(out, fileBlock("OSMData", zlibBlob(sampleRelations()))...)
}
