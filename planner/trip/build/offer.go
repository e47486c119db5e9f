package build

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"ullage/geo"
	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

const (
	// detourKmh is the speed off the route: 50 rural, 25 town (Europe, from memory).
	detourKmh = 40.0
	// stopMin is spent by any call: turn in, wait, pay, turn out. From memory.
	stopMin = 4.0
	// marginM is left above and beside the vehicle. Common practice, no source;
	// the plate on the vehicle may be without aerial, load and tyres pumped up.
	marginM = 0.10
)

// stopFee is what a call at a place of a kind costs where the data state no
// amount but do not say that it is free. From memory; the municipal price list
// above asks for 1 EUR.
var stopFee = map[string]float64{"dump": 2, "service": 2, "water": 1}

// customerByCall are kinds where who calls is a customer: what is for
// customers only is served without a night. Elsewhere the customer is the guest.
var customerByCall = map[string]bool{"fuel": true, "service": true}

// An offer is what a place can do for this trip, wherever the route passes it.
type offer struct {
	place    *trip.Place
	excluded *fact.Fact // why the vehicle or the person cannot use the place; nil: they can
	serves   []planner.Service
	fee      float64
	open     [][2]float64
	hours    bool // opening hours are known
	night    *planner.Night
	km       float64 // the first pass: about when the night is
	longest  int     // nights that the place allows; 0: any
}

func (o offer) empty() bool { return len(o.serves) == 0 && o.night == nil }

// offer decides what a place can do for the trip.
func (b *Built) offer(p *trip.Place, km float64, hours Hours) offer {
	o := offer{place: p, km: km}
	o.night = b.night(p, km)
	if p.Stay != nil {
		o.longest = longestStay(p.Stay.MaxStay)
	}
	o.serves = b.serves(p, o.night != nil)
	if o.empty() {
		return o
	}
	if p.Stay == nil {
		o.fee = b.callFee(p)
	}
	o.excluded = b.refused(p)
	if o.excluded == nil && hours != nil && p.Hours != "" {
		days := b.Days()
		o.open, o.hours = hours(*p, b.Start, days)
		switch {
		case !o.hours:
			o.open = nil
		case len(o.open) == 0:
			o.excluded = because(shut, fact.V{"tag": fact.Text("opening_hours=" + p.Hours)})
		case len(o.open) == 1 && o.open[0][0] <= 0 && o.open[0][1] >= float64(days)*1440:
			o.open = nil // always open
		}
	}
	return o
}

// serves lists the tanks that a place restores, in the vehicle's order: what
// the data affirm and what is likely, never what is unknown.
func (b *Built) serves(p *trip.Place, night bool) []planner.Service {
	var out []planner.Service
	for _, k := range b.Trip.Vehicle.Tanks {
		o, stated := p.Offer(k.ID)
		s := trip.KindOfTank(k.ID)
		guests := o.Guests && !customerByCall[p.Kind]
		if !stated || s.ByNight || !(o.Answer == trip.Yes || o.Answer == trip.Unknown && o.Likely) || guests && !night {
			continue
		}
		x := planner.Service{Tank: k.ID, Min: s.Minutes, GuestsOnly: guests}
		if k.Kind == planner.Supply {
			x.Price = b.price(k.ID, o)
		}
		out = append(out, x)
	}
	return out
}

// price is the place's own, else the trip's, else the default.
func (b *Built) price(tank string, o trip.Offer) float64 {
	if v, ok := trip.ParseAmount(o.PriceTag, b.Trip.Currency, trip.LitreUnits...); ok {
		return v
	}
	v, _ := b.Trip.Price(tank)
	return v
}

// callFee is what a call costs besides the goods.
func (b *Built) callFee(p *trip.Place) float64 {
	if p.Fee == trip.No {
		return 0
	}
	if v, ok := trip.ParseAmount(p.Charge, b.Trip.Currency); ok {
		return v
	}
	return stopFee[p.Kind]
}

// night is one night at the place, or nil if it offers none that the wishes
// allow. A missing answer about hook-up is not a yes.
func (b *Built) night(p *trip.Place, km float64) *planner.Night {
	s, w := p.Stay, b.Trip.Stays
	if s == nil {
		return nil
	}
	fee := b.nightFee(p)
	if !trip.StayKindOf(p.Kind).Allowed(w) || w.HookUp && s.HookUp != trip.Yes || w.MaxFee > 0 && fee > w.MaxFee {
		return nil
	}
	return &planner.Night{Fee: fee, Nights: 1, Use: b.nightUses(p, km, 1)}
}

// nightUses is what nights at a place use of each tank, to plan with.
func (b *Built) nightUses(p *trip.Place, km float64, nights int) map[string]float64 {
	out := map[string]float64{}
	for i, use := range b.Use.Nights(p, trip.Where(p), km, nights) {
		if use.High != 0 {
			out[b.Trip.Vehicle.Tanks[i].ID] = use.High
		}
	}
	return out
}

func (b *Built) nightFee(p *trip.Place) float64 {
	if p.Stay.Fee == trip.No {
		return 0
	}
	if v, ok := trip.ParseAmount(p.Stay.Charge, b.Trip.Currency, trip.NightUnits...); ok {
		return v
	}
	return trip.StayKindOf(p.Kind).Fee
}

// Kinds of why a place is of no use to a trip.
const (
	avoided   fact.Kind = "out.avoided"
	noAccess  fact.Kind = "out.access"
	tooLow    fact.Kind = "out.low"
	tooNarrow fact.Kind = "out.narrow"
	tooShort  fact.Kind = "out.short"
	tooWeak   fact.Kind = "out.weak"
	shut      fact.Kind = "out.shut"
	aboard    fact.Kind = "out.aboard"
)

// because is a reason to leave a place out.
func because(kind fact.Kind, v fact.V) *fact.Fact { return new(fact.Of(kind, v)) }

// closedAccess are values of access that keep a hired motorhome out.
var closedAccess = map[string]fact.Value{
	"no": fact.Term("access.no"), "private": fact.Term("access.private"), "permit": fact.Term("access.permit"), "members": fact.Term("access.members"),
	"residents": fact.Term("access.residents"), "delivery": fact.Term("access.delivery"), "military": fact.Term("access.military"),
	"agricultural": fact.Term("access.agricultural"), "forestry": fact.Term("access.forestry"), "employees": fact.Term("access.employees"),
}

// refused says why the vehicle or the person cannot use the place; nil if they can.
func (b *Built) refused(p *trip.Place) *fact.Fact {
	if slices.Contains(b.Trip.Avoid, p.ID) {
		return because(avoided, nil)
	}
	if who, closed := closedAccess[p.Access]; closed {
		return because(noAccess, fact.V{"who": who, "tag": fact.Text("access=" + p.Access)})
	}
	v := b.Trip.Vehicle
	for _, l := range []struct {
		kind        fact.Kind
		limit, need float64
	}{
		{tooLow, p.Limits.HeightM, v.HeightM + marginM},
		{tooNarrow, p.Limits.WidthM, v.WidthM + marginM},
		{tooShort, p.Limits.LengthM, v.LengthM},
	} {
		if l.limit > 0 && l.need > l.limit {
			return because(l.kind, fact.V{"limit": fact.Metres(l.limit, 2), "needs": fact.Metres(l.need, 2)})
		}
	}
	if most := 1000 * p.Limits.MassT; most > 0 && v.MassKg > most {
		return because(tooWeak, fact.V{"mass": fact.Kg(most), "allowed": fact.Kg(v.MassKg)})
	}
	return nil
}

var stayTag = regexp.MustCompile(`^(\d{1,3}) ?(h|hour|hours|d|day|days|night|nights)$`)

// longestStay reads a maxstay tag in nights; 0 if it says nothing certain.
func longestStay(tag string) int {
	m := stayTag.FindStringSubmatch(strings.TrimSpace(strings.ToLower(tag)))
	if m == nil {
		return 0
	}
	n, _ := strconv.Atoi(m[1])
	if m[2][0] == 'h' {
		n = n / 24
	}
	return max(n, 1)
}

// stops turns an offer at the n-th pass of the route into a candidate and its
// stops: one, and one more for each longer stay that the trip can need.
func (b *Built) stops(o offer, n int, pass geo.Pass) []planner.Stop {
	id := o.place.ID
	if n > 0 {
		id = fmt.Sprintf("%s@%d", id, n+1)
	}
	// A hair over the end is rounding: the pass lies on the line.
	km := min(max(pass.AlongM/1000, 0), b.Axis.LengthKm)
	c := trip.Candidate{Place: o.place.ID, Stop: id, Kind: o.place.Kind, Name: o.place.Name, Point: o.place.Point,
		Km: km, OffKm: pass.OffM / 1000, Night: o.night != nil, Excluded: o.excluded}
	for _, x := range o.serves {
		c.Tanks = append(c.Tanks, x.Tank)
	}
	b.Candidates = append(b.Candidates, c)
	if o.excluded != nil {
		return nil
	}
	detour := 2 * c.OffKm * b.circuity()
	base := planner.Stop{ID: id, Km: b.Axis.Driven(km), DetourKm: detour, DetourMin: detour / detourKmh * 60,
		StopMin: stopMin, Fee: o.fee, Open: o.open, Serves: o.serves, Night: o.night}
	base.Serves = append([]planner.Service{}, base.Serves...) // spare is set per stop; null is no list
	b.Calls[id] = Call{Place: o.place, Candidate: len(b.Candidates) - 1, Hours: o.hours, Km: o.km}
	stops := []planner.Stop{base}
	for _, nights := range b.longerStays(o) {
		s := b.longer(base, o, nights)
		b.Calls[s.ID] = b.Calls[id]
		stops = append(stops, s)
	}
	return stops
}

func (b *Built) circuity() float64 {
	if b.Trip.Circuity == 0 {
		return trip.DefaultCircuity
	}
	return b.Trip.Circuity
}

// longerStays lists the stays of more than one night that are worth offering:
// only if the wishes ask for more nights than the daily limits force, and no
// longer than what is then left over; two, three, or all of it.
func (b *Built) longerStays(o offer) []int {
	if o.night == nil {
		return nil
	}
	most := b.Trip.Stays.MinNights - max(b.forcedNights(), 1) + 1
	if o.longest > 0 {
		most = min(most, o.longest)
	}
	var out []int
	for n := 2; n <= min(most, 3); n++ {
		out = append(out, n)
	}
	if most > 3 {
		out = append(out, most)
	}
	return out
}

// longer is a stop for a stay of several nights. Its services come with the
// stay: who does not stay uses the stop of one night.
func (b *Built) longer(s planner.Stop, o offer, nights int) planner.Stop {
	s.ID = fmt.Sprintf("%s*%d", s.ID, nights)
	s.Night = &planner.Night{Fee: s.Night.Fee * float64(nights), Nights: nights, Use: b.nightUses(o.place, o.km, nights)}
	s.Serves = slices.Clone(s.Serves)
	for i := range s.Serves {
		s.Serves[i].GuestsOnly = true
	}
	return s
}
