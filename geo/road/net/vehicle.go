package net

import (
	"fmt"
	"math"
	"strings"
)

// A Vehicle is what a road must take. The zero value is a car that fits everywhere.
type Vehicle struct {
	HeightM, WidthM, LengthM float64 // 0: fits everywhere
	MassT, AxleT             float64 // 0: unlimited
	MarginM                  float64 // kept free above and, once in all, beside; see [DefaultMarginM]
	TopKmh                   float64 // no faster than this; 0: as the class of road allows
	Factor                   float64 // of a stated speed limit that is really driven; 0: 1
	NoToll, NoFerry, NoTrack bool    // roads not to be used
	NoUnpaved                bool
	NoHighways               bool // neither motorways nor trunk roads
}

const (
	// DefaultMarginM is kept free above a vehicle: a road resurfaced, a box on the roof. Common practice, no source.
	DefaultMarginM = 0.10

	// HeavyT is the mass above which signs for goods vehicles are taken to bind a motorhome too. The German sign 253 names
	// vehicles above 3.5 t "except cars and buses" (StVO, annex 2, number 29, from memory), which a motorhome is not.
	HeavyT = 3.5
)

// MotorhomeSpeed are the top speed and the share of speed limits driven with a motorhome. From memory: 80 to 100 km/h on
// motorways, on ordinary roads a tenth below the limit; common practice, no source.
const (
	MotorhomeTopKmh = 95
	MotorhomeFactor = 0.9
)

// classKmh is what is driven on average on a road of a class, whatever the limit. Source: the speed profile of a general
// routing engine, OSRM 4, profiles/car.lua, speed_profile; tracks and ferries (5 there) from memory.
var classKmh = [classes]float64{Motorway: 90, Trunk: 85, Primary: 65, Secondary: 55, Tertiary: 40, Unclassified: 25, Residential: 25,
	Living: 10, Service: 15, Track: 10, Ferry: 20, MotorwayLink: 75, TrunkLink: 70, PrimaryLink: 60, SecondaryLink: 50, TertiaryLink: 30}

// slowKmh is driven where the surface is bad, unpavedKmh where it is loose. Source: the same, tracktype_profile.
const (
	slowKmh    = 15
	unpavedKmh = 30
)

// leastShare of a stated limit is driven at least, from memory.
const leastShare = 0.6

// A Why is a reason for which a vehicle may not use a road. "" is none.
type Why string

// Closes returns why a vehicle may not drive a road in a direction (0 along, 1 against); "" if it may. A limit equal to the
// vehicle with its margin is kept, one below it closes.
func (v *Vehicle) Closes(r *Road, direction int) Why {
	switch {
	case r.Access[direction] == Closed:
		return "closed to motor vehicles or one-way"
	case v.MassT > HeavyT && r.Heavy == Closed:
		return "closed to heavy vehicles"
	case v.NoFerry && r.Class == Ferry:
		return "a ferry, not wanted"
	case v.NoToll && r.Flags&Toll != 0:
		return "toll, not wanted"
	case v.NoTrack && r.Class == Track:
		return "a track, not wanted"
	case v.NoUnpaved && r.Flags&Unpaved != 0:
		return "unpaved, not wanted"
	case v.NoHighways && (r.Class == Motorway || r.Class == Trunk):
		return "motorway or trunk road, not wanted"
	}
	return v.tooBig(r)
}

// Guest says that a vehicle may drive a road in a direction only where it has business.
func (v *Vehicle) Guest(r *Road, direction int) bool {
	return r.Access[direction] == Guests || v.MassT > HeavyT && r.Heavy == Guests
}

// tooBig names the first limit that the vehicle breaks.
func (v *Vehicle) tooBig(r *Road) Why {
	l := r.Limits
	for _, c := range [...]struct {
		what        string
		limit       uint16
		have        float64 // in the limit's unit
		unit        float64
		name        string
		marginUnits float64
	}{
		{"height", l.HeightCm, v.HeightM * 100, 100, "m", v.MarginM * 100},
		{"width", l.WidthCm, v.WidthM * 100, 100, "m", v.MarginM * 100},
		{"length", l.LengthCm, v.LengthM * 100, 100, "m", 0},
		{"mass", l.Mass10Kg, v.MassT * 100, 100, "t", 0},
		{"axle load", l.Axle10Kg, v.AxleT * 100, 100, "t", 0},
	} {
		if c.limit == 0 || c.have == 0 || math.Round(c.have+c.marginUnits) <= float64(c.limit) {
			continue
		}
		text := fmt.Sprintf("%s limit %.2f %s, the vehicle has %.2f %s", c.what, float64(c.limit)/c.unit, c.name, c.have/c.unit, c.name)
		if c.marginUnits > 0 && c.have <= float64(c.limit) {
			text += fmt.Sprintf(" and keeps %.2f m free", v.MarginM)
		}
		return Why(text)
	}
	return ""
}

// Kmh returns the speed on a road in a direction.
func (v *Vehicle) Kmh(r *Road, direction int) float64 {
	kmh := classKmh[r.Class]
	if r.Class == Ferry && r.Kmh[direction] > 0 {
		return float64(r.Kmh[direction]) // from its time table
	}
	if stated := float64(r.Kmh[direction]); stated > 0 {
		f := v.Factor
		if f == 0 {
			f = 1
		}
		// A limit far above the class says that the road is better than most of its class.
		kmh = min(stated*f, max(kmh, leastShare*stated))
	}
	if v.TopKmh > 0 && r.Class != Ferry {
		kmh = min(kmh, v.TopKmh)
	}
	if r.Flags&Unpaved != 0 {
		kmh = min(kmh, unpavedKmh)
	}
	if r.Flags&SlowWay != 0 {
		kmh = min(kmh, slowKmh)
	}
	return max(kmh, 1)
}

// String says the limits that count: "3.10 m high, 3.5 t".
func (v *Vehicle) String() string {
	var words []string
	for _, w := range []struct {
		have       float64
		unit, word string
	}{{v.HeightM, "m", "high"}, {v.WidthM, "m", "wide"}, {v.LengthM, "m", "long"}, {v.MassT, "t", "in all"}, {v.AxleT, "t", "on an axle"}} {
		if w.have > 0 {
			words = append(words, fmt.Sprintf("%.2f %s %s", w.have, w.unit, w.word))
		}
	}
	if words == nil {
		return "any size"
	}
	return strings.Join(words, ", ")
}
