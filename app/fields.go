package page

import (
	"cmp"
	"slices"
	"strings"

	"ullage/planner/life/units"
	"ullage/planner/trip"
)

// A Field is one control of the trip form. Get and Set are inverse for valid
// text; Set never changes the trip it is given.
type Field struct {
	Key     string
	Group   string // heading it stands under
	Label   string
	Unit    string // after the control
	Hint    string // below it
	Input   string // text, number, date, time, select, checkbox
	Options []Option
	Wide    bool // takes the whole width of the form
	Get     func(trip.Trip) string
	Set     func(trip.Trip, string) (trip.Trip, error)
}

// An Option is one choice of a select.
type Option struct{ Value, Label string }

// fieldsOf lists the form in its order. The vehicle's tanks have fields of
// their own after it.
func fieldsOf(t trip.Trip, fleet []trip.Vehicle, u Units) []Field {
	distance := u.of(units.Distance)
	out := []Field{
		{Key: "name", Group: say.groupTrip, Label: say.fName, Input: "text", Wide: true,
			Get: func(t trip.Trip) string { return t.Name },
			Set: func(t trip.Trip, s string) (trip.Trip, error) {
				t.Name = strings.TrimSpace(s)
				return t, nil
			}},
		{Key: "start", Group: say.groupTrip, Label: say.fStart, Input: "date",
			Get: func(t trip.Trip) string { return t.Start },
			Set: setDate},
		whole("adults", say.groupPeople, say.fAdults, "", 1, 20, func(t *trip.Trip) *int { return &t.Party.Adults }),
		whole("children", say.groupPeople, say.fChildren, say.hChildren, 0, 20, func(t *trip.Trip) *int { return &t.Party.Children }),
		choice("showers", say.groupPeople, say.fShowers, showerWords, func(t *trip.Trip) *string { return &t.Party.Showers }),
		choice("toilet", say.groupPeople, say.fToilet, toiletWords, func(t *trip.Trip) *string { return &t.Party.Toilet }),
		choice("cooking", say.groupPeople, say.fCooking, cookingWords, func(t *trip.Trip) *string { return &t.Party.Cooking }),
		choice("dishes", say.groupPeople, say.fDishes, dishesWords, func(t *trip.Trip) *string { return &t.Party.Dishes }),
		choice("devices", say.groupPeople, say.fDevices, deviceWords, func(t *trip.Trip) *string {
			t.Party.Devices = cmp.Or(t.Party.Devices, "usual")
			return &t.Party.Devices
		}),

		measured("max_km", say.groupDay, say.fMaxKm, say.hMaxKm, distance, 1, 2000, func(t *trip.Trip) *float64 { return &t.Day.MaxKm }),
		number("max_h", say.groupDay, say.fMaxH, "h", say.hMaxH, 0.25, 24, 60, func(t *trip.Trip) *float64 { return &t.Day.MaxMin }),
		{Key: "depart", Group: say.groupDay, Label: say.fDepart, Input: "time",
			Get: func(t trip.Trip) string { return clock(t.Day.DepartMin) },
			Set: func(t trip.Trip, s string) (trip.Trip, error) {
				min, err := parseClock(s)
				t.Day.DepartMin = min
				return t, err
			}},
		{Key: "keys", Group: say.groupDay, Label: say.fKeys, Hint: say.hKeys, Input: "time",
			Get: func(t trip.Trip) string {
				if t.KeysByMin == 0 {
					return ""
				}
				return clock(t.KeysByMin)
			},
			Set: func(t trip.Trip, s string) (_ trip.Trip, err error) {
				if t.KeysByMin = 0; s != "" {
					t.KeysByMin, err = parseClock(s)
				}
				return t, err
			}},
		measured("speed", say.groupDay, say.fSpeed, say.hSpeed, u.of(units.Speed), 5, 130, func(t *trip.Trip) *float64 { return &t.Day.SpeedKmh }),

		whole("min_nights", say.groupNights, say.fMinNights, "", 0, 365, func(t *trip.Trip) *int { return &t.Stays.MinNights }),
		whole("max_nights", say.groupNights, say.fMaxNights, say.hMaxNights, 0, 365, func(t *trip.Trip) *int { return &t.Stays.MaxNights }),
		number("max_fee", say.groupNights, say.fMaxFee, t.Currency, say.hMaxFee, 0, 1e6, 1, func(t *trip.Trip) *float64 { return &t.Stays.MaxFee }),
		check("campsites", say.groupNights, say.fCampsites, "", func(t *trip.Trip) *bool { return &t.Stays.Campsites }),
		check("stopovers", say.groupNights, say.fStopovers, "", func(t *trip.Trip) *bool { return &t.Stays.Stopovers }),
		check("hookup", say.groupNights, say.fHookUp, "", func(t *trip.Trip) *bool { return &t.Stays.HookUp }),

		measured("corridor", say.groupPlan, say.fCorridor, say.hCorridor, distance, 0.01, 50, func(t *trip.Trip) *float64 { return &t.CorridorKm }),
		number("circuity", say.groupPlan, say.fCircuity, "×", say.hCircuity, 0, 5, 1, func(t *trip.Trip) *float64 { return &t.Circuity }),
		number("value_h", say.groupPlan, say.fValueH, t.Currency, say.hValueH, 0, 1e6, 1, func(t *trip.Trip) *float64 { return &t.ValuePerH }),
		check("backup", say.groupPlan, say.fBackup, say.hBackup, func(t *trip.Trip) *bool { return &t.Backup }),
		confidence(t),
		{Key: unitsKey, Group: say.groupPlan, Label: say.fUnits, Input: "select", Options: unitChoices,
			Get: func(trip.Trip) string { return string(u) },
			Set: func(t trip.Trip, _ string) (trip.Trip, error) { return t, nil }}, // the machine's, not the trip's
		{Key: "currency", Group: say.groupPlan, Label: say.fCurrency, Hint: say.hCurrency, Input: "text",
			Get: func(t trip.Trip) string { return t.Currency },
			Set: setCurrency},

		{Key: "vehicle", Group: say.groupVehicle, Label: say.fVehicle, Input: "select", Wide: true, Options: vehicles(t, fleet),
			Get: func(t trip.Trip) string { return t.Vehicle.ID },
			Set: func(t trip.Trip, id string) (trip.Trip, error) { return setVehicle(t, fleet, id) }},
	}
	if t.Vehicle.EmptyKg > 0 {
		out = append(out, measured("gear", say.groupVehicle, say.fGear, say.hGear, u.of(units.Mass), 0, 5000, func(t *trip.Trip) *float64 { return &t.GearKg }))
	}
	for i := range t.Vehicle.Tanks {
		out = append(out, tankFields(t.Vehicle.Tanks[i], i, u)...)
	}
	for _, k := range t.Vehicle.Tanks {
		if _, priced := t.Price(k.ID); priced {
			out = append(out, priceField(k, t.Currency, u.tank(k.Unit)))
		}
	}
	if t.Vehicle.Life != nil { // else the vehicle does not say how it is heated
		at := slices.IndexFunc(out, func(f Field) bool { return f.Group == say.groupDay })
		out = append(append(out[:at:at], comfortFields(u.of(units.Temperature))...), out[at:]...)
	}
	return out
}

// fieldOf finds a field by its key.
func fieldOf(t trip.Trip, fleet []trip.Vehicle, u Units, key string) (Field, bool) {
	for _, f := range fieldsOf(t, fleet, u) {
		if f.Key == key {
			return f, true
		}
	}
	return Field{}, false
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
