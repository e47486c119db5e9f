package field

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"ullage/app/say"
	"ullage/data/plain"
	"ullage/planner/fact"
	"ullage/planner/life"
	"ullage/planner/life/units"
	"ullage/planner/trip"
)

// Units is the key of the field of the units, which are the machine's.
const Units = "units"

// Of lists the form in its order.
func Of(t trip.Trip, fleet []trip.Vehicle, v say.Voice) []Field {
	out := slices.Concat(tripFields(), peopleFields(v))
	if t.Vehicle.Life != nil { // else the vehicle does not say how it is heated
		out = append(out, comfortFields(v)...)
	}
	out = slices.Concat(out, dayFields(v), nightFields(t), planFields(t, v), vehicleFields(t, fleet, v))
	for i, k := range t.Vehicle.Tanks {
		out = append(out, levelField(k, i, v), sizeField(k, i, v))
	}
	for _, k := range t.Vehicle.Tanks {
		if _, priced := t.Price(k.ID); priced {
			out = append(out, priceField(k, t.Currency, v))
		}
	}
	return out
}

func tripFields() []Field {
	return []Field{
		{Key: "name", Group: "trip", Input: "text", Wide: true,
			Get: func(t trip.Trip) string { return t.Name },
			Set: func(t trip.Trip, s string) (trip.Trip, fact.Fact) {
				t.Name = plain.Text(s)
				return t, fact.Fact{}
			}},
		{Key: "start", Group: "trip", Input: "date",
			Get: func(t trip.Trip) string { return string(t.Start) },
			Set: setDate},
	}
}

func peopleFields(v say.Voice) []Field {
	people := func(key string, options []Option) Field { return Field{Key: key, Group: "people", Options: options} }
	return []Field{
		whole(people("adults", nil), trip.AdultsRange, func(t *trip.Trip) *int { return &t.Party.Adults }),
		whole(people("children", nil), trip.ChildrenRange, func(t *trip.Trip) *int { return &t.Party.Children }),
		choice(people("showers", Options(v, "showers.", "aboard", "sites", "frugal")), func(t *trip.Trip) *trip.Showers { return &t.Party.Showers }),
		choice(people("toilet", Options(v, "toilet.", "aboard", "sites")), func(t *trip.Trip) *trip.Toilet { return &t.Party.Toilet }),
		choice(people("cooking", Options(v, "cooking.", "aboard", "little")), func(t *trip.Trip) *trip.Cooking { return &t.Party.Cooking }),
		choice(people("dishes", Options(v, "dishes.", "", "aboard", "sites")), func(t *trip.Trip) *trip.Dishes { return &t.Party.Dishes }),
		choice(people("devices", Options(v, "devices.", "little", "usual", "many")), func(t *trip.Trip) *trip.Devices {
			t.Party.Devices = cmp.Or(t.Party.Devices, trip.DevicesUsual)
			return &t.Party.Devices
		}),
	}
}

// comfortFields are what is wished inside. The usual is shown where the trip says nothing.
func comfortFields(v say.Voice) []Field {
	u := v.Unit("°C")
	hot := func(c float64) Option { return Option{Plain(c), v.Quantity(c, "°C", 0)} }
	return []Field{
		measured(Field{Key: "inside", Group: "comfort"}, u, limits{Range: trip.Range{Least: life.CoolestC, Most: life.WarmestC}}, func(t *trip.Trip) *float64 {
			t.Comfort.InsideC = cmp.Or(t.Comfort.InsideC, usualInsideC)
			return &t.Comfort.InsideC
		}),
		measured(Field{Key: "night", Group: "comfort"}, u, limits{Range: trip.Range{Least: 1, Most: life.WarmestC}}, func(t *trip.Trip) *float64 {
			t.Comfort.NightC = cmp.Or(t.Comfort.NightC, cmp.Or(t.Comfort.InsideC, usualInsideC)-nightLessC)
			return &t.Comfort.NightC
		}),
		{Key: "hot", Group: "comfort", Input: "select", Options: []Option{hot(life.HotBoost), hot(life.HotEnough)},
			Get: func(t trip.Trip) string { return Plain(cmp.Or(t.Comfort.HotC, life.HotBoost)) },
			Set: func(t trip.Trip, s string) (_ trip.Trip, wrong fact.Fact) {
				t.Comfort.HotC, wrong = Number(s, life.CoolestWaterC, life.HottestWaterC)
				return t, wrong
			}},
	}
}

// What [life.Comfort] takes for a zero.
const usualInsideC, nightLessC = 20.0, 5.0

func dayFields(v say.Voice) []Field {
	day := func(key string) Field { return Field{Key: key, Group: "day"} }
	return []Field{
		measured(day("max_km"), v.Unit("km"), limits{Range: trip.DayKmRange}, func(t *trip.Trip) *float64 { return &t.Day.MaxKm }),
		number(Field{Key: "max_h", Group: "day", Unit: "h"}, limits{Range: trip.DayMinRange, scale: 60}, func(t *trip.Trip) *float64 { return &t.Day.MaxMin }),
		{Key: "depart", Group: "day", Input: "time",
			Get: func(t trip.Trip) string { return clock(t.Day.DepartMin) },
			Set: func(t trip.Trip, s string) (_ trip.Trip, wrong fact.Fact) {
				t.Day.DepartMin, wrong = readClock(s)
				return t, wrong
			}},
		{Key: "keys", Group: "day", Input: "time",
			Get: func(t trip.Trip) string {
				if t.KeysByMin == 0 {
					return ""
				}
				return clock(t.KeysByMin)
			},
			Set: func(t trip.Trip, s string) (_ trip.Trip, wrong fact.Fact) {
				if t.KeysByMin = 0; s != "" {
					t.KeysByMin, wrong = readClock(s)
				}
				return t, wrong
			}},
		measured(day("speed"), v.Unit("km/h"), limits{Range: trip.SpeedRange}, func(t *trip.Trip) *float64 { return &t.Day.SpeedKmh }),
	}
}

func nightFields(t trip.Trip) []Field {
	nights := func(key string) Field { return Field{Key: key, Group: "nights"} }
	return []Field{
		whole(nights("min_nights"), trip.NightsRange, func(t *trip.Trip) *int { return &t.Stays.MinNights }),
		whole(nights("max_nights"), trip.NightsRange, func(t *trip.Trip) *int { return &t.Stays.MaxNights }),
		number(Field{Key: "max_fee", Group: "nights", Unit: t.Currency}, limits{Range: trip.MoneyRange}, func(t *trip.Trip) *float64 { return &t.Stays.MaxFee }),
		check(nights("campsites"), func(t *trip.Trip) *bool { return &t.Stays.Campsites }),
		check(nights("stopovers"), func(t *trip.Trip) *bool { return &t.Stays.Stopovers }),
		check(nights("hookup"), func(t *trip.Trip) *bool { return &t.Stays.HookUp }),
	}
}

func planFields(t trip.Trip, v say.Voice) []Field {
	plan := func(key, unit string) Field { return Field{Key: key, Group: "plan", Unit: unit} }
	return []Field{
		measured(plan("corridor", ""), v.Unit("km"), limits{Range: trip.CorridorRange}, func(t *trip.Trip) *float64 { return &t.CorridorKm }),
		number(plan("circuity", "×"), limits{Range: trip.CircuityRange, usual: true}, func(t *trip.Trip) *float64 { return &t.Circuity }),
		number(plan("value_h", t.Currency), limits{Range: trip.MoneyRange}, func(t *trip.Trip) *float64 { return &t.ValuePerH }),
		check(plan("backup", ""), func(t *trip.Trip) *bool { return &t.Backup }),
		confidence(t, v),
		{Key: Units, Group: "plan", Input: "select", Options: Options(v, "units.", "", "british", "american"),
			Get: func(trip.Trip) string { return v.Units },
			Set: func(t trip.Trip, _ string) (trip.Trip, fact.Fact) { return t, fact.Fact{} }}, // the machine's, not the trip's
		{Key: "currency", Group: "plan", Input: "text",
			Get: func(t trip.Trip) string { return t.Currency },
			Set: setCurrency},
	}
}

// confidence is how sure each tank is to last; a trip's own value is a choice too.
func confidence(t trip.Trip, v say.Voice) Field {
	var choices []Option
	for _, percent := range []int{50, 80, 90, 95, 99} {
		choices = append(choices, Option{Plain(float64(percent) / 100), v.Text(fmt.Sprintf("confidence.%d", percent))})
	}
	now := Plain(t.Confident())
	if !slices.ContainsFunc(choices, func(o Option) bool { return o.Value == now }) {
		choices = append(choices, Option{now, v.Share(t.Confident(), 0)})
	}
	return Field{Key: "confidence", Group: "plan", Input: "select", Options: choices, Wide: true,
		Get: func(t trip.Trip) string { return Plain(t.Confident()) },
		Set: func(t trip.Trip, s string) (_ trip.Trip, wrong fact.Fact) {
			t.Confidence, wrong = Number(s, trip.ConfidenceRange.Least, trip.ConfidenceRange.Most)
			return t, wrong
		}}
}

func vehicleFields(t trip.Trip, fleet []trip.Vehicle, v say.Voice) []Field {
	out := []Field{
		{Key: "vehicle", Group: "vehicle", Input: "select", Wide: true, Options: vehicles(t, fleet),
			Get: func(t trip.Trip) string { return t.Vehicle.ID },
			Set: func(t trip.Trip, id string) (trip.Trip, fact.Fact) { return setVehicle(t, fleet, id) }},
	}
	if t.Vehicle.EmptyKg > 0 {
		out = append(out, measured(Field{Key: "gear", Group: "vehicle"}, v.Unit("kg"), limits{Range: trip.GearRange}, func(t *trip.Trip) *float64 { return &t.GearKg }))
	}
	return out
}

// vehicles lists the fleet, and the trip's own vehicle if it is none of it.
func vehicles(t trip.Trip, fleet []trip.Vehicle) []Option {
	var out []Option
	for _, v := range fleet {
		out = append(out, Option{v.ID, v.Name})
	}
	if v := t.Vehicle; !slices.ContainsFunc(fleet, func(f trip.Vehicle) bool { return f.ID == v.ID }) {
		out = append(out, Option{v.ID, v.Name})
	}
	return out
}

func setVehicle(t trip.Trip, fleet []trip.Vehicle, id string) (trip.Trip, fact.Fact) {
	for _, v := range fleet {
		if v.ID == id {
			t.Vehicle, t.Levels = v, nil
			return t, fact.Fact{}
		}
	}
	if t.Vehicle.ID == id {
		return t, fact.Fact{}
	}
	return t, fact.Of("form.want_choice", nil)
}

func setDate(t trip.Trip, s string) (trip.Trip, fact.Fact) {
	day, ok := trip.ParseDate(s)
	if !ok {
		return t, fact.Of("form.want_date", nil)
	}
	t.Start = day
	return t, fact.Fact{}
}

func setCurrency(t trip.Trip, s string) (trip.Trip, fact.Fact) {
	s = strings.ToUpper(strings.TrimSpace(s))
	if !units.ValidCurrency(s) {
		return t, fact.Of("form.want_currency", nil)
	}
	if s != t.Currency {
		t.Currency, t.Prices = s, nil // they were of the other currency
	}
	return t, fact.Fact{}
}
