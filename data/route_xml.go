package data

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"ullage/data/wrong"

	"github.com/paulmach/orb"
)

// maxDepth is far more than any route needs.
const maxDepth = 64

// An xmlFile walks through an XML text, element by element. encoding/xml
// expands no entities but the five of XML, and includes no other files.
type xmlFile struct {
	*xml.Decoder
	path []string // local names of the open elements
}

// next returns the next start, end or text; io.EOF only after the root ended.
func (x *xmlFile) next() (xml.Token, error) {
	for {
		t, err := x.Token()
		if err != nil {
			return nil, err
		}
		switch t := t.(type) {
		case xml.StartElement:
			if x.path = append(x.path, t.Name.Local); len(x.path) > maxDepth {
				return nil, fmt.Errorf("elements are nested more than %d deep", maxDepth)
			}
			return t, nil
		case xml.EndElement:
			x.path = x.path[:len(x.path)-1]
			return t, nil
		case xml.CharData:
			if len(x.path) > 0 {
				return t, nil
			}
		}
	}
}

// inside says whether one of the open elements has the name.
func (x *xmlFile) inside(name string) bool {
	for _, p := range x.path {
		if p == name {
			return true
		}
	}
	return false
}

// open is the name of the innermost open element: of one that has ended, the one around it. "" if there is none.
func (x *xmlFile) open() string {
	if len(x.path) == 0 {
		return ""
	}
	return x.path[len(x.path)-1]
}

// wrap adds where the decoder stands.
func (x *xmlFile) wrap(err error) error {
	line, column := x.InputPos()
	var syntax *xml.SyntaxError
	switch {
	case errors.Is(err, io.EOF) || errors.As(err, &syntax) && syntax.Msg == "unexpected EOF":
		err = wrong.ErrCut
	case syntax != nil:
		err = fmt.Errorf("broken XML: %s", syntax.Msg)
	}
	return fmt.Errorf("line %d, column %d: %w", line, column, err)
}

// A partReader collects the points of one part.
type partReader struct {
	points  orb.LineString
	heights []float64
}

func (p *partReader) add(lon, lat string) error {
	x, errX := strconv.ParseFloat(strings.TrimSpace(lon), 64)
	y, errY := strconv.ParseFloat(strings.TrimSpace(lat), 64)
	if errX != nil || errY != nil {
		return fmt.Errorf("the point has latitude %q and longitude %q; both must be numbers in degrees", lat, lon)
	}
	point, err := checkPoint(x, y)
	if err != nil {
		return err
	}
	p.points = append(p.points, point)
	p.heights = append(p.heights, math.NaN())
	return nil
}

// height sets the height of the last point, if the text is one.
func (p *partReader) height(text string) {
	if h, err := strconv.ParseFloat(strings.TrimSpace(text), 64); err == nil && len(p.heights) > 0 && math.Abs(h) < 20000 {
		p.heights[len(p.heights)-1] = h
	}
}
