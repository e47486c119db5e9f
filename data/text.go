package data

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"io"
	"math"
	"strings"
	"unicode/utf16"

	"ullage/planner/fact"

	"github.com/paulmach/orb"
)

// This file holds what all text formats share: charsets, and positions on earth.

// utf8Text returns the text in UTF-8 without byte order mark.
func utf8Text(b []byte) ([]byte, error) {
	switch {
	case bytes.HasPrefix(b, []byte{0xef, 0xbb, 0xbf}):
		return b[3:], nil
	case bytes.HasPrefix(b, []byte{0xff, 0xfe}), bytes.HasPrefix(b, []byte{'<', 0}), bytes.HasPrefix(b, []byte{'{', 0}):
		return fromUTF16(b, binary.LittleEndian)
	case bytes.HasPrefix(b, []byte{0xfe, 0xff}), bytes.HasPrefix(b, []byte{0, '<'}), bytes.HasPrefix(b, []byte{0, '{'}):
		return fromUTF16(b, binary.BigEndian)
	}
	return b, nil
}

func fromUTF16(b []byte, order binary.ByteOrder) ([]byte, error) {
	if len(b)%2 != 0 {
		return nil, fmt.Errorf("the UTF-16 text ends in the middle of a character; copy the file again")
	}
	units := make([]uint16, len(b)/2)
	for i := range units {
		units[i] = order.Uint16(b[2*i:])
	}
	return []byte(strings.TrimPrefix(string(utf16.Decode(units)), "\ufeff")), nil
}

// charsetReader is for xml.Decoder: the charsets of old GPX and KML files.
func charsetReader(charset string, r io.Reader) (io.Reader, error) {
	switch strings.ToLower(charset) {
	case "utf-16", "utf-16le", "utf-16be": // utf8Text has been here
		return r, nil
	case "iso-8859-1", "latin1", "iso-8859-15", "windows-1252", "us-ascii", "ascii":
		// They differ in a few signs of names only; coordinates are ASCII.
		b, err := io.ReadAll(r)
		if err != nil {
			return nil, err
		}
		runes := make([]rune, len(b))
		for i, c := range b {
			runes[i] = rune(c)
		}
		return strings.NewReader(string(runes)), nil
	}
	return nil, fmt.Errorf("unknown charset %q; save the file as UTF-8", charset)
}

// Kinds of what is wrong with a position: {found}.
const (
	latLonSwapped fact.Kind = "route.swapped" // is no latitude, but may be a longitude
	notInDegrees  fact.Kind = "route.degrees"
)

// checkPoint says what is wrong with a position of a file.
func checkPoint(lon, lat float64) (orb.Point, error) {
	switch {
	case !(math.Abs(lat) <= 90) && math.Abs(lon) <= 90:
		return orb.Point{}, fact.Fail(fmt.Errorf("latitude %v is beyond 90°; are latitude and longitude swapped?", lat), latLonSwapped, fact.V{"found": fact.Text(fmt.Sprint(lat))})
	case !(math.Abs(lat) <= 90):
		return orb.Point{}, fact.Fail(fmt.Errorf("latitude %v is beyond 90°; the file must be in degrees, WGS 84", lat), notInDegrees, fact.V{"found": fact.Text(fmt.Sprint(lat))})
	case !(math.Abs(lon) <= 360):
		return orb.Point{}, fact.Fail(fmt.Errorf("longitude %v is no longitude; the file must be in degrees, WGS 84", lon), notInDegrees, fact.V{"found": fact.Text(fmt.Sprint(lon))})
	}
	return orb.Point{lon, lat}, nil
}
