package net

import (
	"math"
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

// Closes returns what keeps a vehicle off a road in a direction (0 along, 1 against); the zero [Bar] if it may drive there. A
// limit equal to the vehicle with its margin is kept, one below it closes.
func (v *Vehicle) Closes(r *Road, direction int) Bar {
	switch {
	case r.Access[direction] == Closed:
		return Bar{Why: NoEntry}
	case v.MassT > HeavyT && r.Heavy == Closed:
		return Bar{Why: NoHeavy}
	case v.NoFerry && r.Class == Ferry:
		return Bar{Why: FerryUnwanted}
	case v.NoToll && r.Flags&Toll != 0:
		return Bar{Why: TollUnwanted}
	case v.NoTrack && r.Class == Track:
		return Bar{Why: TrackUnwanted}
	case v.NoUnpaved && r.Flags&Unpaved != 0:
		return Bar{Why: UnpavedUnwanted}
	case v.NoHighways && (r.Class == Motorway || r.Class == Trunk):
		return Bar{Why: HighwayUnwanted}
	}
	return v.tooBig(&r.Limits)
}

// tooBig returns the first limit that the vehicle breaks.
func (v *Vehicle) tooBig(l *Limits) Bar {
	for _, c := range [...]struct {
		why             Why
		limit           uint16 // whole centimetres, or units of 10 kg: a hundredth of what the others are in
		has, needsSpare float64
	}{
		{TooHigh, l.HeightCm, v.HeightM, v.MarginM},
		{TooWide, l.WidthCm, v.WidthM, v.MarginM},
		{TooLong, l.LengthCm, v.LengthM, 0},
		{TooHeavy, l.Mass10Kg, v.MassT, 0},
		{AxleTooHeavy, l.Axle10Kg, v.AxleT, 0},
	} {
		if c.limit == 0 || c.has == 0 || math.Round(c.has*100+c.needsSpare*100) <= float64(c.limit) {
			continue
		}
		b := Bar{Why: c.why, Limit: float64(c.limit) / 100, Has: c.has}
		if c.has*100 <= float64(c.limit) {
			b.Spare = c.needsSpare
		}
		return b
	}
	return Bar{}
}

// Guest says that a vehicle may drive a road in a direction only where it has business.
func (v *Vehicle) Guest(r *Road, direction int) bool {
	return r.Access[direction] == Guests || v.MassT > HeavyT && r.Heavy == Guests
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
