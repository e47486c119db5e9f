package job

import (
	"encoding/binary"
	"encoding/json"
	"errors"
	"fmt"

	"github.com/paulmach/orb"

	"ullage/planner/byroad"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// A Request is one thing asked. Exactly one of its other members is set.
type Request struct {
	ID     int     `json:"id"` // ascending
	Open   *Open   `json:"open,omitempty"`
	Plan   *Plan   `json:"plan,omitempty"`
	Roads  bool    `json:"roads,omitempty"` // read the roads of the files that are open
	Follow *Follow `json:"follow,omitempty"`
	Cancel bool    `json:"cancel,omitempty"` // stop the plan that is being made
}

// Open reads a file; what it is is decided by its content.
type Open struct {
	Name string `json:"name"`
	Add  bool   `json:"add,omitempty"` // keep the places that are there
	Data []byte `json:"-"`             // travels behind the head of the frame

	again func() ([]byte, error) // reads it anew; nil: Data is held
}

// bare is the file without its bytes, if they can be read again.
func (o Open) bare() Open {
	if o.again != nil {
		o.Data = nil
	}
	return o
}

// Plan asks for the itinerary of a trip among the places held.
type Plan struct {
	Trip  trip.Trip      `json:"trip"`
	Route orb.LineString `json:"route"` // the trip's, which its own JSON leaves out

	Touched []string `json:"touched,omitempty"` // fields of the form that were just changed
}

// Follow asks for the ways of a vehicle between pairs of points, or, with
// Track, for the roads that a track follows, or, with Others, for other ways
// between two points: two legs for each.
type Follow struct {
	Vehicle trip.Vehicle   `json:"vehicle"`
	Track   bool           `json:"track,omitempty"`
	Others  bool           `json:"others,omitempty"`
	WithinM float64        `json:"within_m,omitempty"` // of a road: what a point means
	Points  orb.LineString `json:"-"`                  // travel behind the head of the frame
}

// A Response belongs to the request of the same ID. Of Progress any number
// may come, of Answer any number of which the last has Last set; the others
// come once and end the request.
type Response struct {
	ID       int        `json:"id"`
	Progress *Progress  `json:"progress,omitempty"`
	Opened   *Opened    `json:"opened,omitempty"`
	Answer   *Answer    `json:"answer,omitempty"`
	Roads    *RoadsRead `json:"roads,omitempty"`
	Followed *Followed  `json:"followed,omitempty"`
	Error    string     `json:"error,omitempty"`
	Says     *fact.Fact `json:"says,omitempty"` // what the error says to people, where it can be said in words
}

// ends tells whether nothing follows.
func (r Response) ends() bool {
	return r.Error != "" || r.Opened != nil || r.Roads != nil || r.Followed != nil || r.Answer != nil && r.Answer.Last
}

// Progress of reading a file, in bytes.
type Progress struct {
	Done  int64 `json:"done"`
	Total int64 `json:"total"`
}

// Opened is what a file held: places, a route, a trip, a fleet.
type Opened struct {
	Name     string         `json:"name"`
	Kind     string         `json:"kind"`             // places, route, trip, fleet
	Places   int            `json:"places,omitempty"` // in this file
	Date     trip.Date      `json:"date,omitempty"`   // of the data: 2025-01-19
	OSM      bool           `json:"osm,omitempty"`    // the attribution of OpenStreetMap is due
	Notes    []fact.Fact    `json:"notes,omitempty"`  // what was left out, and why
	Bounds   [4]float64     `json:"bounds,omitzero"`  // west, south, east, north of places or route
	Route    orb.LineString `json:"route,omitempty"`
	Parts    int            `json:"parts,omitempty"` // pieces the route file had
	Climb    [2]float64     `json:"climb,omitzero"`  // metres that the route rises and falls in all, where it has heights
	Trip     *trip.Trip     `json:"trip,omitempty"`  // its route is in Route too
	Fleet    []trip.Vehicle `json:"fleet,omitempty"`
	Backdrop string         `json:"-"` // GeoJSON: coast, roads, water, towns; behind the head of the frame
}

// RoadsRead is what the roads of the open files are.
type RoadsRead struct {
	Roads  int         `json:"roads"` // stretches between junctions; 0: the files have no roads
	Bytes  int         `json:"bytes"` // of memory
	TookMS int         `json:"took_ms"`
	Notes  []fact.Fact `json:"notes,omitempty"` // what is left out of them
}

// Followed has the legs asked for, those of a track from its start to its end.
type Followed struct {
	Legs []byroad.Leg `json:"legs"`
}

// An Answer is a plan, or a better one than before. It has an Itinerary
// unless Err says why there is none.
type Answer struct {
	Itinerary trip.Itinerary `json:"itinerary"`
	Done      bool           `json:"done"` // no better plan follows; what else there is to say may
	Last      bool           `json:"last"` // nothing follows
	Err       error          `json:"-"`
	TookMS    int            `json:"took_ms"` // since the worker began
}

// EncodeRequest returns the frame of a request.
func EncodeRequest(r Request) ([]byte, error) {
	var body []byte
	if r.Open != nil {
		body = r.Open.Data
	}
	if r.Follow != nil {
		body = appendLine(nil, r.Follow.Points)
	}
	return frame(r, body)
}

// DecodeRequest reads a frame of [EncodeRequest]. The data of Open is part of
// the frame, not a copy.
func DecodeRequest(b []byte) (Request, error) {
	var r Request
	body, err := unframe(b, &r)
	if err == nil && r.Open != nil {
		r.Open.Data = body
	}
	if err == nil && r.Follow != nil {
		r.Follow.Points, _, err = takeLine(body)
	}
	return r, err
}

// EncodeResponse returns the frame of a response.
func EncodeResponse(r Response) ([]byte, error) {
	var body []byte
	if r.Opened != nil {
		body = []byte(r.Opened.Backdrop)
	}
	if r.Followed != nil {
		bare := make([]byroad.Leg, len(r.Followed.Legs))
		for i, l := range r.Followed.Legs {
			body = appendLine(body, l.Line)
			bare[i], bare[i].Line = l, nil
		}
		r.Followed = &Followed{bare}
	}
	return frame(r, body)
}

// DecodeResponse reads a frame of [EncodeResponse].
func DecodeResponse(b []byte) (Response, error) {
	var r Response
	body, err := unframe(b, &r)
	if err != nil {
		return r, err
	}
	if r.Followed != nil {
		for i := range r.Followed.Legs {
			if r.Followed.Legs[i].Line, body, err = takeLine(body); err != nil {
				return r, err
			}
		}
	}
	if o := r.Opened; o != nil {
		o.Backdrop = string(body)
		if o.Trip != nil {
			o.Trip.Route = o.Route
		}
	}
	return r, nil
}

// A frame is the length of its head (4 bytes, little endian), the head as
// JSON, and a body that JSON would only make longer.
func frame(head any, body []byte) ([]byte, error) {
	h, err := json.Marshal(head)
	if err != nil {
		return nil, fmt.Errorf("encode %T: %w", head, err)
	}
	b := make([]byte, 0, 4+len(h)+len(body))
	b = binary.LittleEndian.AppendUint32(b, uint32(len(h)))
	b = append(b, h...)
	return append(b, body...), nil
}

func unframe(b []byte, head any) (body []byte, err error) {
	if len(b) < 4 {
		return nil, fmt.Errorf("a frame of %d bytes has no head", len(b))
	}
	n := binary.LittleEndian.Uint32(b)
	if uint64(n) > uint64(len(b)-4) {
		return nil, fmt.Errorf("a frame of %d bytes says that its head has %d", len(b), n)
	}
	if err := json.Unmarshal(b[4:4+n], head); err != nil {
		return nil, fmt.Errorf("the head of a frame: %w", err)
	}
	return b[4+n:], nil
}

// failed is the response of an error, with what it says to people.
func failed(id int, err error) Response {
	return Response{ID: id, Error: err.Error(), Says: fact.Why(err).Fact}
}

// A fault is an error that came from the worker.
type fault struct {
	text string
	says fact.Fact
}

func (f *fault) Error() string   { return f.text }
func (f *fault) Fact() fact.Fact { return f.says }

// fails is the error of a response; nil if it has none.
func (r Response) fails() error {
	switch {
	case r.Error == "":
		return nil
	case r.Says != nil:
		return &fault{r.Error, *r.Says}
	}
	return errors.New(r.Error)
}
