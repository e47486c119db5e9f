package life

import (
	"errors"
	"fmt"
	"math"
)

// This file is the physics of driving: what a section of road takes from the
// diesel tank.

const (
	gravity = 9.81
	// airDensity at 20 °C and sea level, kg/m³ (ISO 2533 has 1.225 at 15 °C).
	airDensity = 1.20
	// rolling resistance of camper tyres, share of the weight: class F of the EU's label for
	// van tyres (C2: 9.3–10.5 kg/t of A ≤ 5.5 to G ≥ 10.6, Regulation 1222/2009, annex I),
	// measured on a smooth drum; the choice of the class is ours.
	rolling = 0.010
	// dieselMJ in a litre: calculated from 42.6 MJ/kg (from memory) and 0.84 kg/L (EN 590:
	// 0.820–0.845, ncheurope.com); the UK's conversion factors of 2025 have 35.66
	// (42.84 × 0.832, universal-converter.org).
	dieselMJ = 35.8
	// auxiliaryKW are alternator, steering, fan and pumps at the shaft, from memory.
	auxiliaryKW = 1.5
	// stopSpeedKmh: what a stop throws away is the kinetic energy of this speed, calculated.
	stopSpeedKmh                 = 50.0
	minEfficiency, maxEfficiency = 0.20, 0.45
	// climbShare of a hilly section goes steadily up or down, the rest is flat; from memory.
	climbShare = 0.5
)

// Bodies are the shapes of the vehicle, in order of what they use.
const (
	PanelVan   = "van"
	LowProfile = "low-profile"
	Integrated = "integrated"
	OverCab    = "over-cab"
)

type body struct {
	dragM2 float64 // drag coefficient × frontal area
	per100 float64 // usual average, L/100 km
}

// bodies: averages from memory (±15 %); owners' logs seen: van 8–11
// (vanamericana.ch), coachbuilt never above 10 (exsis55.com). Drag: 2.3 m² for
// an integrated body, from memory (light vans 0.35–0.5,
// civilengineeringhandbook.tk, × some 5.5 m²); low-profile +12 %, over-cab +40 % of it
// (Höh, "Wohnmobil-Handbuch"); van from memory.
var bodies = map[string]body{
	PanelVan:   {2.0, 9.0},
	LowProfile: {2.6, 10.5},
	Integrated: {2.3, 11.0},
	OverCab:    {3.2, 12.0},
}

// A Section is a stretch of road or sea. Speed and stops describe how it is
// driven, UpM and DownM how much it climbs and falls in all.
type Section struct {
	Km         float64
	SpeedKmh   float64 // while moving, > 0
	StopsPerKm float64 // full stops and the like
	UpM, DownM float64
	Ferry      bool // no driving: no fuel, no charging; gas is off
}

// Hours at the wheel, without stops to rest.
func (s Section) Hours() float64 {
	if s.Ferry || s.SpeedKmh <= 0 {
		return 0
	}
	return s.Km / s.SpeedKmh
}

// ReferenceProfile is 100 km of the mix that a trade magazine tests with: 13 %
// town, 41 % rural, 46 % motorway, mostly at 100 km/h (freenet.de/promobil).
// Speeds in town and on rural roads, and the stops: from memory.
func ReferenceProfile() []Section {
	return []Section{
		{Km: 13, SpeedKmh: 30, StopsPerKm: 1},
		{Km: 41, SpeedKmh: 70, StopsPerKm: 0.1},
		{Km: 46, SpeedKmh: 100},
	}
}

// MixedProfile is so many kilometres at an average pace: the reference mix,
// with more town or more motorway in it until the average is met. Faster than
// the motorway's 100 km/h, all is motorway; slower than 30 km/h, all is town. A pace that is not
// positive gives the reference mix.
func MixedProfile(km, kmh float64) []Section {
	mix := ReferenceProfile()
	var hours float64
	for _, s := range mix {
		hours += s.Hours()
	}
	town, road := &mix[0], &mix[2]
	share, more := 0.0, town
	switch pace := 100 / hours; {
	case !(kmh > 0) || math.IsInf(kmh, 0) || kmh == pace:
	case kmh <= town.SpeedKmh || kmh >= road.SpeedKmh:
		if kmh >= road.SpeedKmh {
			more = road
		}
		more.SpeedKmh, share = kmh, 1
	default: // share at the one speed, the rest at the mix's pace
		if kmh > pace {
			more = road
		}
		share = (1/kmh - 1/pace) / (1/more.SpeedKmh - 1/pace)
	}
	for i := range mix {
		mix[i].Km *= km / 100 * (1 - share)
	}
	more.Km += km * share
	return mix
}

// An Engine turns sections of road into litres of diesel.
type Engine struct {
	DragM2     float64 // drag coefficient × frontal area
	Efficiency float64 // of engine and gears together
}

// ErrAverage is the cause where a stated average cannot be this vehicle's.
var ErrAverage = errors.New("life: the stated average is out of reach")

// NewEngine makes the engine of a body that uses per100 L/100 km on the
// reference profile with massKg on the wheels. per100 0 takes the body's usual
// average. An unknown body is an error, and so is an average that asks for an
// efficiency outside 20–45 %.
func NewEngine(shape string, massKg, per100 float64) (Engine, error) {
	b, ok := bodies[shape]
	if !ok {
		return Engine{}, fmt.Errorf("life: body %q is not known: use %s, %s, %s or %s", shape, PanelVan, LowProfile, Integrated, OverCab)
	}
	if !(massKg > 0) {
		return Engine{}, fmt.Errorf("life: mass %v kg: state what the loaded vehicle weighs", massKg)
	}
	if per100 == 0 {
		per100 = b.per100
	}
	e := Engine{b.dragM2, 1}
	var mj float64
	for _, s := range ReferenceProfile() {
		mj += e.shaftMJ(massKg, s)
	}
	e.Efficiency = mj / (per100 * dieselMJ)
	if !(e.Efficiency >= minEfficiency && e.Efficiency <= maxEfficiency) {
		return Engine{}, fmt.Errorf("%w: %v L/100 km for a %s of %v kg would mean an efficiency of %.0f %%: check the average, the mass and the body", ErrAverage, per100, shape, massKg, 100*e.Efficiency)
	}
	return e, nil
}

// Litres of diesel for a section at a mass, exact for the formula, ±15 % in
// life. A ferry takes none.
func (e Engine) Litres(massKg float64, s Section) float64 {
	return e.shaftMJ(massKg, s) / (e.Efficiency * dieselMJ)
}

// shaftMJ is the work at the engine's shaft: rolling, air, stops, slopes and
// auxiliaries. Downhill the engine cannot take energy back: what exceeds the
// resistance goes into the brakes.
func (e Engine) shaftMJ(massKg float64, s Section) float64 {
	if s.Ferry || s.Km <= 0 || s.SpeedKmh <= 0 {
		return 0
	}
	v := s.SpeedKmh / 3.6
	stop := stopSpeedKmh / 3.6
	flat := rolling*massKg*gravity + airDensity/2*e.DragM2*v*v // newton
	flat += max(s.StopsPerKm, 0) / 1000 * massKg / 2 * stop * stop

	metres := 1000 * s.Km
	up, down := max(s.UpM, 0), max(s.DownM, 0)
	force := flat
	if climb := up + down; climb > 0 {
		share := min(max(climbShare, climb/(0.3*metres)), 1) // not steeper than 30 %
		slope := climb / (share * metres)
		grade := massKg * gravity * slope
		force = flat*(1-share) + share*((flat+grade)*up/climb+max(flat-grade, 0)*down/climb)
	}
	return force*metres/1e6 + auxiliaryKW*3.6*s.Hours()
}

// driveSpread: averages by body ±15 % (from memory) is the part that stays; wind and
// traffic change by the day: a strong headwind costs 1 L/100 km (gorv
// magazine, a towing car), about a tenth.
var driveSpread = Spread{Trip: 0.10, Day: 0.10}

const (
	// defShare of the diesel. Published: cars 1–2.5 %, general 2–5 %, light
	// trucks 4–8 %; the first vans 18 L on 3,750 miles, 3 L/1,000 km
	// (transportengineer.org.uk), big coachbuilts at times over 10 (eastccservice.com.au),
	// which is 8–10 %. The default is from memory; readings teach it.
	defShare = 0.04
	// defSystematic: the share runs from 2 to 6 %.
	defSystematic = 0.30
)
