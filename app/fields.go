package page

import (
	"cmp"
	"slices"
	"strings"

	"ullage/app/say"
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
func fieldsOf(t trip.Trip, fleet []trip.Vehicle, v say.Voice) []Field {
	distance := v.Unit("km")
	out := []Field{
		{Key: "name", Group: word.groupTrip, Label: word.fName, Input: "text", Wide: true,
			Get: func(t trip.Trip) string { return t.Name },
			Set: func(t trip.Trip, s string) (trip.Trip, error) {
				t.Name = strings.TrimSpace(s)
				return t, nil
			}},
		{Key: "start", Group: word.groupTrip, Label: word.fStart, Input: "date",
			Get: func(t trip.Trip) string { return t.Start },
			Set: setDate},
		whole("adults", word.groupPeople, word.fAdults, "", 1, 20, func(t *trip.Trip) *int { return &t.Party.Adults }),
		whole("children", word.groupPeople, word.fChildren, word.hChildren, 0, 20, func(t *trip.Trip) *int { return &t.Party.Children }),
		choice("showers", word.groupPeople, word.fShowers, showerWords, func(t *trip.Trip) *string { return &t.Party.Showers }),
		choice("toilet", word.groupPeople, word.fToilet, toiletWords, func(t *trip.Trip) *string { return &t.Party.Toilet }),
		choice("cooking", word.groupPeople, word.fCooking, cookingWords, func(t *trip.Trip) *string { return &t.Party.Cooking }),
		choice("dishes", word.groupPeople, word.fDishes, dishesWords, func(t *trip.Trip) *string { return &t.Party.Dishes }),
		choice("devices", word.groupPeople, word.fDevices, deviceWords, func(t *trip.Trip) *string {
			t.Party.Devices = cmp.Or(t.Party.Devices, "usual")
			return &t.Party.Devices
		}),

		measured("max_km", word.groupDay, word.fMaxKm, word.hMaxKm, distance, 1, 2000, func(t *trip.Trip) *float64 { return &t.Day.MaxKm }),
		number("max_h", word.groupDay, word.fMaxH, "h", word.hMaxH, 0.25, 24, 60, func(t *trip.Trip) *float64 { return &t.Day.MaxMin }),
		{Key: "depart", Group: word.groupDay, Label: word.fDepart, Input: "time",
			Get: func(t trip.Trip) string { return clock(t.Day.DepartMin) },
			Set: func(t trip.Trip, s string) (trip.Trip, error) {
				min, err := parseClock(s)
				t.Day.DepartMin = min
				return t, err
			}},
		{Key: "keys", Group: word.groupDay, Label: word.fKeys, Hint: word.hKeys, Input: "time",
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
		measured("speed", word.groupDay, word.fSpeed, word.hSpeed, v.Unit("km/h"), 5, 130, func(t *trip.Trip) *float64 { return &t.Day.SpeedKmh }),

		whole("min_nights", word.groupNights, word.fMinNights, "", 0, 365, func(t *trip.Trip) *int { return &t.Stays.MinNights }),
		whole("max_nights", word.groupNights, word.fMaxNights, word.hMaxNights, 0, 365, func(t *trip.Trip) *int { return &t.Stays.MaxNights }),
		number("max_fee", word.groupNights, word.fMaxFee, t.Currency, word.hMaxFee, 0, 1e6, 1, func(t *trip.Trip) *float64 { return &t.Stays.MaxFee }),
		check("campsites", word.groupNights, word.fCampsites, "", func(t *trip.Trip) *bool { return &t.Stays.Campsites }),
		check("stopovers", word.groupNights, word.fStopovers, "", func(t *trip.Trip) *bool { return &t.Stays.Stopovers }),
		check("hookup", word.groupNights, word.fHookUp, "", func(t *trip.Trip) *bool { return &t.Stays.HookUp }),

		measured("corridor", word.groupPlan, word.fCorridor, word.hCorridor, distance, 0.01, 50, func(t *trip.Trip) *float64 { return &t.CorridorKm }),
		number("circuity", word.groupPlan, word.fCircuity, "×", word.hCircuity, 0, 5, 1, func(t *trip.Trip) *float64 { return &t.Circuity }),
		number("value_h", word.groupPlan, word.fValueH, t.Currency, word.hValueH, 0, 1e6, 1, func(t *trip.Trip) *float64 { return &t.ValuePerH }),
		check("backup", word.groupPlan, word.fBackup, word.hBackup, func(t *trip.Trip) *bool { return &t.Backup }),
		confidence(t),
		{Key: unitsKey, Group: word.groupPlan, Label: word.fUnits, Input: "select", Options: unitChoices,
			Get: func(trip.Trip) string { return v.Units },
			Set: func(t trip.Trip, _ string) (trip.Trip, error) { return t, nil }}, // the machine's, not the trip's
		{Key: "currency", Group: word.groupPlan, Label: word.fCurrency, Hint: word.hCurrency, Input: "text",
			Get: func(t trip.Trip) string { return t.Currency },
			Set: setCurrency},

		{Key: "vehicle", Group: word.groupVehicle, Label: word.fVehicle, Input: "select", Wide: true, Options: vehicles(t, fleet),
			Get: func(t trip.Trip) string { return t.Vehicle.ID },
			Set: func(t trip.Trip, id string) (trip.Trip, error) { return setVehicle(t, fleet, id) }},
	}
	if t.Vehicle.EmptyKg > 0 {
		out = append(out, measured("gear", word.groupVehicle, word.fGear, word.hGear, v.Unit("kg"), 0, 5000, func(t *trip.Trip) *float64 { return &t.GearKg }))
	}
	for i := range t.Vehicle.Tanks {
		out = append(out, tankFields(t.Vehicle.Tanks[i], i, v)...)
	}
	for _, k := range t.Vehicle.Tanks {
		if _, priced := t.Price(k.ID); priced {
			out = append(out, priceField(k, t.Currency, v.Unit(k.Unit)))
		}
	}
	if t.Vehicle.Life != nil { // else the vehicle does not say how it is heated
		at := slices.IndexFunc(out, func(f Field) bool { return f.Group == word.groupDay })
		out = append(append(out[:at:at], comfortFields(v)...), out[at:]...)
	}
	return out
}

// fieldOf finds a field by its key.
func fieldOf(t trip.Trip, fleet []trip.Vehicle, v say.Voice, key string) (Field, bool) {
	for _, f := range fieldsOf(t, fleet, v) {
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
