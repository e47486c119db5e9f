package field

import (
	"maps"
	"slices"

	"ullage/app/say"
	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// This file has the fields of one tank: whichever it is, they are the same.

// levelField is the level of tank i at the start.
func levelField(k trip.Tank, i int, v say.Voice) Field {
	u := v.Unit(k.Unit)
	return Field{Key: "level:" + k.ID, Name: "level", Group: "tanks", Tank: &k, Unit: u.Symbol, Input: "number",
		Get: func(t trip.Trip) string { return Plain(u.Show(startLevel(t, t.Vehicle.Tanks[i]))) },
		Set: func(t trip.Trip, s string) (trip.Trip, fact.Fact) {
			l, wrong := Shown(s, u, 0, t.Vehicle.Tanks[i].Capacity)
			if wrong.Nothing() {
				t.Levels = withNumber(t.Levels, k.ID, l)
			}
			return t, wrong
		}}
}

// sizeField is what tank i holds.
func sizeField(k trip.Tank, i int, v say.Voice) Field {
	u := v.Unit(k.Unit)
	return Field{Key: "size:" + k.ID, Name: "size", Group: "tanks", Tank: &k, Unit: u.Symbol, Input: "number",
		Get: func(t trip.Trip) string { return Plain(u.Show(t.Vehicle.Tanks[i].Capacity)) },
		Set: func(t trip.Trip, s string) (trip.Trip, fact.Fact) {
			least := max(t.Vehicle.Tanks[i].Reserve, startLevel(t, t.Vehicle.Tanks[i]), 0.1)
			c, wrong := Shown(s, u, least, 2000)
			if !wrong.Nothing() {
				return t, wrong
			}
			t.Vehicle.Tanks = slices.Clone(t.Vehicle.Tanks)
			tank := &t.Vehicle.Tanks[i]
			tank.Capacity, tank.Start = c, min(tank.Start, c)
			tank.End = endWithin(*tank)
			return t, wrong
		}}
}

// priceField is what a unit of a tank's content counts as where a place states no price.
func priceField(k trip.Tank, currency string, v say.Voice) Field {
	u := v.Unit(k.Unit)
	return Field{Key: "price:" + k.ID, Name: "price", Group: "prices", Tank: &k, Unit: currency + "/" + u.Symbol, Input: "number",
		Get: func(t trip.Trip) string {
			price, _ := t.Price(k.ID)
			return Plain(u.ShowPer(price))
		},
		Set: func(t trip.Trip, s string) (trip.Trip, fact.Fact) {
			price, wrong := Number(s, 0, 1e6)
			if wrong.Nothing() {
				t.Prices = withNumber(t.Prices, k.ID, price*u.Show(1))
			}
			return t, wrong
		}}
}

// withNumber returns a copy of a map with one entry changed.
func withNumber(m map[string]float64, key string, value float64) map[string]float64 {
	out := maps.Clone(m)
	if out == nil {
		out = map[string]float64{}
	}
	out[key] = value
	return out
}

// endWithin keeps what the tank must hold at the end within a smaller tank.
func endWithin(k trip.Tank) *planner.End {
	if k.End == nil {
		return nil
	}
	end := *k.End
	if end.AtLeast != nil {
		end.AtLeast = new(min(*end.AtLeast, k.Capacity))
	}
	if end.AtMost != nil {
		end.AtMost = new(min(*end.AtMost, k.Capacity))
	}
	return &end
}

// startLevel is the level at the start: what the trip says, or what is usual.
func startLevel(t trip.Trip, k trip.Tank) float64 {
	if v, ok := t.Levels[k.ID]; ok {
		return v
	}
	return k.Start
}
