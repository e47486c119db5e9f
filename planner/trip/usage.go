package trip

import (
	"fmt"
	"math"
	"time"

	"ullage/planner"
	"ullage/planner/life"
)

// This file asks package life what a trip uses, and makes of its answers what
// the planner counts with.

// A Usage is what the trip uses, with what has been learnt and how careful it
// is to be. Vehicles without a life of their own use what their tanks state.
type Usage struct {
	Trip   Trip
	Model  life.Model
	Lives  bool // the model answers; else the tanks' own Use does
	start  time.Time
	Sea    Axis
	perDay float64   // km of a usual day on this trip
	wheelH float64   // hours at the wheel of such a day
	Road   life.Uses // of 100 km as this trip drives them
}

// Confident is the share of trips on which each tank's use stays within what
// the plan counts with: Confidence, or the usual where that is 0.
func (t Trip) Confident() float64 {
	if t.Confidence == 0 {
		return life.DefaultConfidence
	}
	return t.Confidence
}

// Model is the trip's vehicle and people as package life has them; ok is false
// where the vehicle does not say how it lives.
func (t Trip) Model() (m life.Model, ok bool) {
	if t.Vehicle.Life == nil {
		return life.Model{}, false
	}
	p := t.Party
	return life.Model{Vehicle: *t.Vehicle.Life, Comfort: t.Comfort, Party: life.Party{
		Adults: p.Adults, Children: p.Children, Showers: string(p.Showers), Toilet: string(p.Toilet), Cooking: string(p.Cooking), Dishes: string(p.Dishes), Devices: string(p.Devices)}}, true
}

// NewUsage of a valid trip with a pace on the planner's axis, which ends with the route.
func NewUsage(t Trip, pace []planner.Pace, sea Axis) (Usage, error) {
	u := Usage{Trip: t, Sea: sea}
	u.start = t.Start.Time()
	sections, km, wheelH := driving(pace)
	minutes := 60 * wheelH
	for _, f := range sea.Ferries {
		minutes += f.Min
	}
	days := math.Ceil(max(km/t.Day.MaxKm, minutes/t.Day.MaxMin) - 1e-9)
	days = max(days, float64(t.Stays.MinNights+1), 1)
	u.perDay, u.wheelH = km/days, wheelH/days
	if u.Model, u.Lives = t.Model(); !u.Lives {
		return u, nil
	}
	for i := range sections {
		sections[i].UpM, sections[i].DownM = t.UpM*sections[i].Km/km, t.DownM*sections[i].Km/km
	}
	road, err := u.Model.Drive(sections)
	if err != nil {
		return u, fmt.Errorf("trip: vehicle %s: %w", t.Vehicle.ID, err)
	}
	for _, use := range road {
		u.Road = append(u.Road, use.Times(100/km))
	}
	return u, nil
}

// driving is how a pace is driven: for each section the usual mix of roads that
// makes its average, and the km and hours of all.
func driving(pace []planner.Pace) (sections []life.Section, km, hours float64) {
	at := 0.0
	for _, p := range pace {
		// What is no longer than a metre holds minutes that nobody drives.
		if d := p.ToKm - at; d > 1.5*Metre && p.MinPerKm > 0 {
			sections = append(sections, life.MixedProfile(d, 60/p.MinPerKm)...)
			km, hours = km+d, hours+d*p.MinPerKm/60
		}
		at = p.ToKm
	}
	return sections, max(km, Metre), hours
}

// PerKm is what a kilometre takes from a tank. Its High is planned with.
func (u Usage) PerKm(k Tank) life.Band {
	if !u.Lives {
		return life.Band{Low: k.Use.PerKm, Likely: k.Use.PerKm, High: k.Use.PerKm}
	}
	return Scaled(u.Band(k, u.Road.Of(k.ID)), 1.0/100)
}

// Band is a use at the trip's confidence, for as long as the tank lasts.
func (u Usage) Band(k Tank, use life.Use) life.Band {
	for _, f := range u.Trip.Learned {
		if f.Tank == k.ID {
			use = use.Learned(f)
		}
	}
	return use.Band(u.Trip.Confident(), use.Lasts(k.Capacity-k.Reserve))
}

// Stay asks the model for the first day at a place that lies km along the route,
// which is reached by driving. A nil place says nothing of what it has. Ferries of
// the usual day's way before it belong to its 24 hours: gas is off on them.
func (u Usage) Stay(p *Place, at life.Where, km float64) life.Night {
	s := u.day(p, at, km)
	s.WheelHours = u.wheelH
	km = u.Sea.Driven(km)
	for _, f := range u.Sea.Between(km-u.perDay, km) {
		s.FerryHours += f.Min / 60
	}
	return u.ask(s)
}

// later asks the model for a day at a place without driving.
func (u Usage) later(p *Place, at life.Where, km float64) life.Night {
	s := u.day(p, at, km)
	s.HookHours = 24
	return u.ask(s)
}

// day is one at a place, whatever else is done on it.
func (u Usage) day(p *Place, at life.Where, km float64) life.Stay {
	day := int(u.Sea.Driven(km) / max(u.perDay, 1))
	s := life.Stay{At: at, YearDay: u.start.AddDate(0, 0, day).YearDay()}
	if p != nil && p.Stay != nil {
		s.HookUp, s.Amps = p.Stay.HookUp == Yes, p.Stay.Amps
		s.Showers, s.Toilets = p.Stay.Showers == Yes, p.Stay.Toilets == Yes
	}
	return s
}

func (u Usage) ask(s life.Stay) life.Night {
	n, err := u.Model.Stay(s)
	if err != nil {
		panic("trip: a valid trip has a valid model: " + err.Error())
	}
	return n
}

// Nights is what so many nights at a place take from each tank, in the
// vehicle's order. High is planned with.
func (u Usage) Nights(p *Place, at life.Where, km float64, nights int) []life.Band {
	out, later := u.FirstAndLater(p, at, km)
	for i := range out {
		out[i] = Sum(out[i], Scaled(later[i], float64(nights-1)))
	}
	return out
}

// FirstAndLater is what the first night at a place takes from each tank, which is
// reached by driving, and what each later one does.
func (u Usage) FirstAndLater(p *Place, at life.Where, km float64) (first, later []life.Band) {
	first = make([]life.Band, len(u.Trip.Vehicle.Tanks))
	if !u.Lives {
		var stay *Stay
		if p != nil {
			stay = p.Stay
		}
		for i, k := range u.Trip.Vehicle.Tanks {
			use := nightUse(k, u.Trip.Party, stay)
			first[i] = life.Band{Low: use, Likely: use, High: use}
		}
		return first, first
	}
	arrived, stayed := u.Stay(p, at, km), u.later(p, at, km)
	later = make([]life.Band, len(first))
	for i, k := range u.Trip.Vehicle.Tanks {
		first[i], later[i] = u.Band(k, arrived.Of(k.ID)), u.Band(k, stayed.Of(k.ID))
	}
	return first, later
}

// Where is where a place lies, for package life.
func Where(p *Place) life.Where {
	return life.Where{Lat: p.Point.Lat(), Lon: p.Point.Lon(), AltM: p.EleM}
}

// Scaled is k times a band.
func Scaled(b life.Band, k float64) life.Band {
	return life.Band{Low: k * b.Low, Likely: k * b.Likely, High: k * b.High}
}

// Sum adds two bands.
func Sum(a, b life.Band) life.Band {
	return life.Band{Low: a.Low + b.Low, Likely: a.Likely + b.Likely, High: a.High + b.High}
}
