package read

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"ullage/geo"
	"ullage/planner"
	"ullage/planner/backup"
	"ullage/planner/life"
	"ullage/planner/trip"
)

// call reads one visit of a plan; closed is what becomes of the trip if the
// place is, nil if that was not looked into.
func (b reader) call(s *planner.Stop, v planner.Visit, closed *backup.Closure) trip.Call {
	at := b.Calls[s.ID]
	p, cand := at.Place, b.Candidates[at.Candidate]
	c := trip.Call{Place: p.ID, Stop: s.ID, Kind: p.Kind, Name: cmp.Or(p.Name, trip.KindName(p.Kind)), Point: p.Point, Km: cand.Km, OffKm: cand.OffKm,
		DetourKm: s.DetourKm, DetourMin: s.DetourMin, ByRoad: cand.ByRoad, ArriveMin: v.Arrive.Min, LeaveMin: v.Leave.Min,
		Night: v.Night, Arrive: v.Arrive.Levels, Leave: v.Leave.Levels, Cost: s.Fee}
	if e := at.Entry; e != nil && geo.DistanceM(e.Point, p.Point) > entryM {
		c.Entry = e
	}
	if v.Night {
		c.Nights, c.Cost = s.Night.Nights, c.Cost+s.Night.Fee
	}
	for _, k := range b.Trip.Vehicle.Tanks {
		if t, ok := task(k, s, v); ok {
			c.Tasks, c.Cost = append(c.Tasks, t), c.Cost+t.Cost
		}
	}
	c.Facts = b.facts(s, p, c)
	c.HowTo = b.howTos(c)
	c.Cautions = b.cautionsOf(s.ID, p, c, at.Hours)
	switch {
	case closed == nil:
	case closed.Survived:
		c.Fallback = b.fallback(s, v, closed)
	default:
		c.Cautions = append([]string{b.noWayOn(closed)}, c.Cautions...)
	}
	return c
}

// task is what a visit does to one tank; ok is false if nothing.
func task(k trip.Tank, s *planner.Stop, v planner.Visit) (t trip.Task, ok bool) {
	t = trip.Task{Tank: k.ID, Verb: known(k.ID).Verb, Unit: k.Unit, Before: v.Arrive.Levels[k.ID], After: v.Leave.Levels[k.ID]}
	if i := slices.IndexFunc(v.Serve, func(y planner.Serve) bool { return y.Tank == k.ID }); i >= 0 {
		x := s.Serves[slices.IndexFunc(s.Serves, func(x planner.Service) bool { return x.Tank == k.ID })]
		t.Amount = v.Serve[i].Amount
		t.Cost = x.Fee
		if k.Kind == planner.Supply {
			t.Cost += t.Amount * x.Price
		}
		return t, true
	}
	if known(k.ID).ByNight && v.Night && t.After > t.Before+planner.Tolerance {
		t.Amount = t.After - t.Before
		return t, true
	}
	return trip.Task{}, false
}

// facts are what the data say about what is done here, with the tag, and what
// a price or a fee that counts here rests on.
func (b reader) facts(s *planner.Stop, p *trip.Place, c trip.Call) []string {
	var out []string
	say := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	cur := b.Trip.Currency
	for _, t := range c.Tasks {
		name := b.tankName(t.Tank)
		o, _ := p.Offer(t.Tank)
		switch {
		case known(t.Tank).ByNight:
			say("%s: charged by the hook-up (power_supply)", name)
		case o.Answer == trip.Yes:
			say("%s: %s", name, o.Tag)
		default:
			say("%s: likely, not tagged", name)
		}
		if _, stated := trip.ParseAmount(o.PriceTag, cur, trip.LitreUnits...); t.Cost > 0 && !stated {
			say("%s: %s, counted as %.2f %s/%s", name, notRead("no price in the data", "price", o.PriceTag, cur), t.Cost/t.Amount, cur, t.Unit)
		}
	}
	_, stated := trip.ParseAmount(p.Charge, cur)
	switch {
	case p.Stay != nil:
	case p.Fee == trip.No:
		say("no fee: fee=no")
	case stated:
		say("fee: charge=%s", p.Charge)
	case s.Fee > 0 || p.Charge != "":
		say("fee: %s, counted as %.2f %s", notRead("amount not in the data", "charge", p.Charge, cur), s.Fee, cur)
	}
	if c.Night {
		say("night: %s", p.Stay.Tag)
		_, stated := trip.ParseAmount(p.Stay.Charge, cur, trip.NightUnits...)
		switch {
		case p.Stay.Fee == trip.No:
			say("night without fee: fee=no")
		case stated:
			say("night: charge=%s", p.Stay.Charge)
		default:
			say("night: %s, counted as %.2f %s", notRead("fee not in the data", "charge", p.Stay.Charge, cur), s.Night.Fee/float64(s.Night.Nights), cur)
		}
		for _, f := range []struct {
			what string
			a    trip.Answer
		}{{"hook-up", p.Stay.HookUp}, {"showers", p.Stay.Showers}, {"toilets", p.Stay.Toilets}} {
			say("%s: %s", f.what, f.a)
		}
	}
	if p.Hours != "" {
		say("opening_hours=%s", p.Hours)
	}
	if p.Limits.HeightM > 0 {
		say("maxheight=%g m", p.Limits.HeightM)
	}
	if p.Access != "" {
		say("access=%s", p.Access)
	}
	return out
}

// notRead says why a price does not count: there is none, or it is in another
// currency, or it is more than one plain amount.
func notRead(none, key, tag, currency string) string {
	switch {
	case tag == "":
		return none
	case trip.Foreign(tag, currency):
		return fmt.Sprintf("%s=%s is not in %s", key, tag, currency)
	}
	return fmt.Sprintf("%s=%s is not one plain amount", key, tag)
}

// foreignPrices are what a place states in another currency of what is paid at a call.
func (b reader) foreignPrices(p *trip.Place, c trip.Call) []string {
	var tags, out []string
	for _, t := range c.Tasks {
		o, _ := p.Offer(t.Tank)
		tags = append(tags, o.PriceTag)
	}
	switch {
	case p.Stay == nil && p.Fee != trip.No:
		tags = append(tags, p.Charge)
	case c.Night && p.Stay.Fee != trip.No:
		tags = append(tags, p.Stay.Charge)
	}
	for _, tag := range tags {
		if trip.Foreign(tag, b.Trip.Currency) && !slices.Contains(out, tag) {
			out = append(out, tag)
		}
	}
	return out
}

// cautionsOf are first what is doubtful about this place, then what is usual
// wherever these things are done.
func (b reader) cautionsOf(stop string, p *trip.Place, c trip.Call, hours bool) []string {
	var out, likely []string
	for _, t := range c.Tasks {
		if o, ok := p.Offer(t.Tank); ok && o.Answer != trip.Yes && !known(t.Tank).ByNight {
			likely = append(likely, b.tankName(t.Tank))
		}
	}
	if len(likely) > 0 {
		out = append(out, fmt.Sprintf("Likely here, but not tagged: %s. Ask or look before you rely on it.", strings.Join(likely, ", ")))
	}
	if !hours {
		out = append(out, "Opening hours are not known: ask before you rely on it.")
	}
	if tags := b.foreignPrices(p, c); len(tags) > 0 {
		out = append(out, fmt.Sprintf("Stated in another currency, and not counted: %s. A typical price in %s counts instead.", strings.Join(tags, ", "), b.Trip.Currency))
	}
	if p.Limits.Unclear != "" {
		out = append(out, fmt.Sprintf("A limit is stated without a number (%s): look before you turn in.", p.Limits.Unclear))
	}
	if p.Access == "customers" && !c.Night {
		out = append(out, "For customers (access=customers): ask first.")
	}
	frost := false
	if b.Use.Lives {
		n := b.nightAt(stop)
		frost = n.Air.MinC < life.FrostDumpC
		if c.Night {
			out = append(out, n.Cautions...)
		}
	}
	for _, id := range c.HowTo {
		if text, ok := b.minding(id, frost); ok {
			out = append(out, text)
		}
	}
	return out
}

func (b reader) headroom(tank string, level float64) float64 {
	for _, t := range b.Problem.Tanks {
		if t.ID == tank && t.Kind == planner.Waste {
			return t.Capacity - level
		}
	}
	return level
}

func (b reader) tankName(id string) string { return b.Trip.Vehicle.TankName(id) }
