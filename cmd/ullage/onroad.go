package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"github.com/paulmach/orb"

	"ullage/cmd/ullage/whole"
	"ullage/data/tripfile"
	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
	"ullage/planner/trip/answer"
	"ullage/planner/trip/build"
	"ullage/planner/trip/onward"
)

// This file plans on from the road: here, now, these gauges, these places closed.

// noTime: time ran out before it was known where the trip is.
type noTime struct{}

var errNoTime error = noTime{}

func (noTime) Error() string   { return "time ran out before the trip as it was had a plan" }
func (noTime) Fact() fact.Fact { return fact.Of("plan.no_time", nil) }

// A roadInput is what the flags say of where somebody is; the zero value is at home.
type roadInput struct{ at, now, gauges, closed, passed, save string }

func (in *roadInput) flags(set *flag.FlagSet) {
	set.StringVar(&in.at, "at", "", "")
	set.StringVar(&in.now, "now", "", "")
	set.StringVar(&in.gauges, "levels", "", "")
	set.StringVar(&in.closed, "closed", "", "")
	set.StringVar(&in.passed, "passed", "", "")
	set.StringVar(&in.save, "save", "", "")
}

func (in roadInput) given() bool { return in != roadInput{} }

func (in roadInput) parse() (onward.Now, error) {
	n := onward.Now{Time: trip.Moment(in.now)}
	if in.now == "" || in.at == "" {
		return n, errors.New("on the road both -at and -now are needed")
	}
	if lat, lon, pair := strings.Cut(in.at, ","); pair {
		n.At = point(lat, lon)
	} else if km, err := strconv.ParseFloat(in.at, 64); err == nil {
		n.Km = &km
	}
	if n.At == nil && n.Km == nil {
		return n, fmt.Errorf("-at %q: write km along the route, or latitude,longitude", in.at)
	}
	if in.closed != "" {
		n.Closed = strings.Split(in.closed, ",")
	}
	var err error
	n.Gauges, err = gauges(in.gauges)
	return n, err
}

// point is a point on the earth, nil if the texts say none.
func point(lat, lon string) *orb.Point {
	y, err1 := strconv.ParseFloat(strings.TrimSpace(lat), 64)
	x, err2 := strconv.ParseFloat(strings.TrimSpace(lon), 64)
	if err1 != nil || err2 != nil || !(y >= -90 && y <= 90 && x >= -180 && x <= 180) {
		return nil
	}
	return &orb.Point{x, y}
}

func gauges(text string) (map[string]onward.Shown, error) {
	out := map[string]onward.Shown{}
	for _, part := range strings.FieldsFunc(text, func(r rune) bool { return r == ',' }) {
		tank, value, _ := strings.Cut(part, "=")
		tank = strings.TrimSpace(tank)
		s, err := shown(strings.TrimSpace(value))
		if err != nil || tank == "" {
			return nil, fmt.Errorf("-levels %q: write %s", part, exampleOf("plan", "levels"))
		}
		if _, twice := out[tank]; twice {
			return nil, fmt.Errorf("-levels: %s is named twice", tank)
		}
		out[tank] = s
	}
	return out, nil
}

// plainNumber is what people write; Go reads NaN and 0x1p4 as well.
var plainNumber = regexp.MustCompile(`^[0-9]*\.?[0-9]+$|^[0-9]+\.$`)

func shown(value string) (onward.Shown, error) {
	kind := "litres"
	switch {
	case value == "lamp":
		return onward.Shown{Kind: "lamp", Value: 1}, nil
	case value == "dark":
		return onward.Shown{Kind: "lamp"}, nil
	case strings.HasSuffix(value, "%"):
		kind, value = "percent", strings.TrimSuffix(value, "%")
	case strings.Contains(value, "/"):
		return fraction(value)
	}
	if !plainNumber.MatchString(value) {
		return onward.Shown{}, errors.New("no number that a gauge shows")
	}
	v, err := strconv.ParseFloat(value, 64)
	return onward.Shown{Kind: kind, Value: v}, err
}

// fraction reads a part of a full dial, such as 1/2 or 3/8.
func fraction(text string) (onward.Shown, error) {
	over, under, _ := strings.Cut(text, "/")
	a, err1 := strconv.ParseUint(over, 10, 16)
	b, err2 := strconv.ParseUint(under, 10, 16)
	if err1 != nil || err2 != nil || b == 0 || a > b {
		return onward.Shown{}, errors.New("no part of a whole")
	}
	return onward.Shown{Kind: "quarters", Value: 4 * float64(a) / float64(b)}, nil
}

// goOn plans the trip as it was, and makes what is left of it a trip.
func (in roadInput) goOn(ctx context.Context, whole tripInput, opt build.Options) (onward.Rest, error) {
	now, err := in.parse()
	if err != nil {
		return onward.Rest{}, err
	}
	for _, id := range now.Closed {
		if !slices.ContainsFunc(whole.from.places, func(p trip.Place) bool { return p.ID == id }) {
			return onward.Rest{}, fmt.Errorf("-closed %q: the map data have no such place", id)
		}
	}
	built, err := build.Trip(whole.trip, whole.from.places, opt)
	if err != nil {
		return onward.Rest{}, err
	}
	ctx, enough := context.WithCancel(ctx)
	defer enough()
	it, err := answer.Plan(ctx, built, answer.Options{Answer: func(trip.Itinerary) { enough() }})
	if err != nil {
		return onward.Rest{}, err
	}
	if it.Status == planner.Unknown {
		return onward.Rest{}, errNoTime
	}
	if now.Called, err = in.notCalled(it); err != nil {
		return onward.Rest{}, err
	}
	return onward.From(whole.trip, it, now)
}

// notCalled marks the stops of the plan that were passed without a call.
func (in roadInput) notCalled(it trip.Itinerary) (map[string]bool, error) {
	out := map[string]bool{}
	if in.passed == "" {
		return out, nil
	}
	for _, id := range strings.Split(in.passed, ",") {
		var stops []string
		found := false
		for _, d := range it.Days {
			for _, c := range d.Calls {
				if c.Place == id || c.Stop == id {
					out[c.Stop], found = false, true
				}
				stops = append(stops, c.Stop)
			}
		}
		if !found {
			return nil, fmt.Errorf("-passed %q: no stop of the plan; it has %s", id, strings.Join(stops, ", "))
		}
	}
	return out, nil
}

// saved writes the rest of a trip that has a plan.
func (in roadInput) saved(t trip.Trip) error {
	if in.save == "" {
		return nil
	}
	return whole.File(in.save, func(w io.Writer) error { return tripfile.Write(w, t) })
}
