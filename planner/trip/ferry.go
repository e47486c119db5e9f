package trip

import (
	"fmt"
	"math"

	"github.com/paulmach/orb"

	"ullage/geo"
	"ullage/planner"
	"ullage/planner/life"
)

// A Ferry is a part of the route that the vehicle does not drive. Its minutes
// count as on the road; its kilometres use nothing and charge nothing, and
// count for no day's kilometres. On board gas is off.
type Ferry struct {
	FromKm float64 `json:"from_km"`
	ToKm   float64 `json:"to_km"`
	Min    float64 `json:"min"` // from joining the queue to driving off
}

// A Crossing is a ferry as a plan has it.
type Crossing struct {
	Ferry
	Name     string  `json:"name,omitempty"`
	Basis    string  `json:"basis"`     // where the minutes come from
	StartMin float64 `json:"start_min"` // since 00:00 of day one

	Mind []string `json:"mind,omitempty"` // what of the vehicle is switched, and when
}

// ferryEndKm: a ferry may end so far beyond the route; that is rounding.
const ferryEndKm = 0.1

// ferriesAscend says what is wrong with the ferries of a route.
func ferriesAscend(ferries []Ferry) error {
	at := 0.0
	for i, f := range ferries {
		if !(f.FromKm >= at && f.ToKm > f.FromKm) || math.IsInf(f.ToKm, 0) || !within(f.Min, 0, 10_000) {
			return fmt.Errorf("trip: ferry %d runs from km %v to km %v in %v minutes: give ferries in the order of the route, each longer than nothing", i+1, f.FromKm, f.ToKm, f.Min)
		}
		at = f.ToKm
	}
	return nil
}

// ferries are those that the trip names, and those that roads know where it
// names none. One that the route does not have is an error.
func (t Trip) ferries(lengthKm float64, known []Crossing) ([]Crossing, error) {
	var own, out []Crossing
	for i, f := range t.Ferries {
		if f.ToKm > lengthKm+ferryEndKm {
			return nil, fmt.Errorf("trip: ferry %d runs from km %.1f to km %.1f, but the route ends at km %.1f: change or remove the ferry", i+1, f.FromKm, f.ToKm, lengthKm)
		}
		if f.ToKm = min(f.ToKm, lengthKm); f.FromKm < f.ToKm {
			own = append(own, Crossing{Ferry: f, Basis: "as the trip says"})
		}
	}
	for _, f := range known { // both ascend
		f.FromKm, f.ToKm = max(f.FromKm, 0), min(f.ToKm, lengthKm)
		for len(own) > 0 && own[0].ToKm <= f.FromKm {
			out, own = append(out, own[0]), own[1:]
		}
		clash := len(own) > 0 && own[0].FromKm < f.ToKm
		if n := len(out); f.FromKm < f.ToKm && !clash && (n == 0 || out[n-1].ToKm <= f.FromKm) {
			out = append(out, f)
		}
	}
	out = append(out, own...)
	for i := range out {
		if out[i].FromKm < metre { // one metre holds both a late beginning and the ferry
			out[i].FromKm = 0
		}
	}
	return out, nil
}

// sail gives the problem the planner's axis and clock: the roads' pace with
// ferries in it, and a beginning that may be later than the usual departure.
func (b *Built) sail(known []Crossing) error {
	ferries, err := b.Trip.ferries(b.axis.lengthKm, known)
	if err != nil {
		return err
	}
	b.axis = newAxis(b.axis.lengthKm, ferries)
	b.Problem.LengthKm = b.axis.driven(b.axis.lengthKm)
	d := &b.Problem.Drive
	d.Pace = b.axis.pace(d.Pace)
	if late := b.late(); late > 0 {
		d.Pace = delayed(d.Pace, late)
	}
	return nil
}

// pace puts the ferries into the pace along the route, on the planner's axis.
func (a axis) pace(roads []planner.Pace) []planner.Pace {
	if len(a.ferries) == 0 {
		return roads
	}
	var out []planner.Pace
	at := 0.0 // along the route
	drive := func(to float64) {
		for _, p := range roads {
			if end := min(p.ToKm, to); end > at {
				out, at = append(out, planner.Pace{ToKm: a.driven(end), MinPerKm: p.MinPerKm}), end
			}
		}
	}
	for _, f := range a.ferries {
		drive(f.FromKm)
		out, at = append(out, planner.Pace{ToKm: f.at + metre, MinPerKm: f.Min / metre}), f.ToKm
	}
	drive(a.lengthKm)
	return out
}

// delayed lets so many minutes pass in the first metre.
func delayed(pace []planner.Pace, late float64) []planner.Pace {
	first := planner.Drive{Pace: pace}.Minutes(0, metre) + late
	out := []planner.Pace{{ToKm: metre, MinPerKm: first / metre}}
	for _, p := range pace {
		if p.ToKm > metre {
			out = append(out, p)
		}
	}
	return out
}

// onBoard says how a ferry is counted, and what to ask before.
func (b *Built) onBoard(f Crossing) string {
	name := "Ferry"
	if f.Name != "" {
		name += " " + f.Name
	}
	text := fmt.Sprintf("%s, km %.1f to km %.1f: counted as %.0f min without driving (%s). Timetable and fare are not in the plan: ask the operator, and state height, length and mass.", name, f.FromKm, f.ToKm, f.Min, f.Basis)
	if most := b.Trip.Day.MaxMin; f.Min > most {
		text += fmt.Sprintf(" It is longer than a day on the road may be, %.0f min: no plan has it, unless that limit is raised.", most)
	}
	if b.conditions(false)(life.HasGas) {
		text += " Gas off at the cylinder before you drive on, and say that there is gas on board."
	}
	return text
}

// ashoreKm is how much of a stretch the roads know as road: neither a ferry nor off them.
func ashoreKm(f Ferry, c Course) float64 {
	land := f.ToKm - f.FromKm
	less := func(from, to float64) { land -= max(min(to, f.ToKm)-max(from, f.FromKm), 0) }
	for _, o := range c.Off {
		less(o[0], o[1])
	}
	for _, k := range c.Ferries {
		less(k.FromKm, k.ToKm)
	}
	return land
}

// dry warns of ferries that the trip names where the map has roads: their
// kilometres would be driven, and use what nobody counts.
func (b *Built) dry(c Course) {
	for i, f := range b.Trip.Ferries {
		if land := ashoreKm(f, c); land > (f.ToKm-f.FromKm)/2 {
			b.cautions = append(b.cautions, fmt.Sprintf("Ferry %d, km %.1f to km %.1f, is on roads of the map data for %.0f km: nothing is counted as used there. Is it still where the route is? Else change or remove it.", i+1, f.FromKm, f.ToKm, land))
		}
	}
}

// late is how much later than its usual departure the trip begins, in minutes.
func (b *Built) late() float64 { return max(b.Trip.FromMin-b.Trip.Day.DepartMin, 0) }

// afterSettingOff moves stops out of the first metre, where the clock is wrong.
// What lies before a ferry there can no longer be called at.
func (b *Built) afterSettingOff(stops []planner.Stop) []planner.Stop {
	if b.late() == 0 {
		return stops
	}
	aboard := len(b.axis.between(0, metre)) > 0
	var out []planner.Stop
	for _, s := range stops {
		if aboard && s.Km < metre/2 {
			b.Candidates[b.calls[s.ID].candidate].Excluded = "the trip begins on the ferry from there"
			delete(b.calls, s.ID)
			continue
		}
		s.Km = max(s.Km, metre)
		out = append(out, s)
	}
	return out
}

// driving is the minutes at the wheel between two of the planner's km.
func (b *Built) driving(fromKm, toKm float64) float64 {
	minutes := b.Problem.Drive.Minutes(fromKm, toKm)
	if fromKm < metre && toKm >= metre {
		minutes -= b.late()
	}
	for _, f := range b.axis.between(fromKm, toKm) {
		minutes -= f.Min
	}
	return max(minutes, 0)
}

// crossings are the ferries of the leg between two of the planner's km, which begins at a minute.
func (b *Built) crossings(fromKm, toKm, min float64) []Crossing {
	var out []Crossing
	for _, f := range b.axis.between(fromKm, toKm) {
		c := f.Crossing
		c.StartMin = min + b.Problem.Drive.Minutes(fromKm, f.at)
		if f.at < metre/2 { // a late beginning passes in the same metre
			c.StartMin += b.late()
		}
		c.Mind = b.switched()
		out = append(out, c)
	}
	return out
}

// switched is what has to be switched on a vehicle before it goes on board.
func (b *Built) switched() []string {
	var out []string
	h, _ := life.HowToFor("ferry", b.conditions(false))
	for _, s := range h.Steps {
		if len(s.If) > 0 {
			out = append(out, s.Text)
		}
	}
	return out
}

// ashore moves passes that lie at sea to that end of the ferry which is nearer
// to the place, and drops those that are then outside the corridor.
func (b *Built) ashore(passes []geo.Pass, place orb.Point, line *geo.Line) []geo.Pass {
	if len(b.axis.ferries) == 0 {
		return passes
	}
	var out []geo.Pass
	for _, pass := range passes {
		if f, sea := b.axis.atSea(pass.AlongM / 1000); sea {
			pass.OffM = math.Inf(1)
			for _, km := range [2]float64{f.FromKm, f.ToKm} {
				if off := geo.DistanceM(line.At(km*1000), place); off < pass.OffM {
					pass.AlongM, pass.OffM = km*1000, off
				}
			}
		}
		if pass.OffM <= b.Trip.CorridorKm*1000 {
			out = append(out, pass)
		}
	}
	return out
}
