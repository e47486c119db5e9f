package job

import (
	"encoding/binary"
	"fmt"
	"math"

	"github.com/paulmach/orb"
)

// A line of a thousand points takes a millisecond as JSON in a browser. On
// the way between page and worker it is the number of its points and 1e-7
// degrees as whole numbers, as in map data, which is a centimetre.

const perDegree = 1e7

func appendLine(b []byte, line orb.LineString) []byte {
	b = binary.LittleEndian.AppendUint32(b, uint32(len(line)))
	for _, p := range line {
		b = binary.LittleEndian.AppendUint32(b, uint32(int32(math.Round(p[0]*perDegree))))
		b = binary.LittleEndian.AppendUint32(b, uint32(int32(math.Round(p[1]*perDegree))))
	}
	return b
}

func takeLine(b []byte) (line orb.LineString, rest []byte, err error) {
	if len(b) < 4 {
		return nil, nil, fmt.Errorf("a line of %d bytes has no length", len(b))
	}
	n := int(binary.LittleEndian.Uint32(b))
	if b = b[4:]; n > len(b)/8 {
		return nil, nil, fmt.Errorf("a line of %d points in %d bytes", n, len(b))
	}
	line = make(orb.LineString, n)
	for i := range line {
		at := func(k int) float64 { return float64(int32(binary.LittleEndian.Uint32(b[8*i+4*k:]))) / perDegree }
		line[i] = orb.Point{at(0), at(1)}
	}
	return line, b[8*n:], nil
}
