package page

import (
	"cmp"
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"ullage/app/say"
	"ullage/planner"
	"ullage/planner/life"
	"ullage/planner/life/units"
	"ullage/planner/trip"
)

// This file makes the kinds of fields. Numbers are read with a point or a
// comma, and written without trailing zeros.

func number(key, group, label, unit, hint string, least, most, scale float64, of func(*trip.Trip) *float64) Field {
	return Field{Key: key, Group: group, Label: label, Unit: unit, Hint: hint, Input: "number",
		Get: func(t trip.Trip) string { return plain(*of(&t) / scale) },
		Set: func(t trip.Trip, s string) (trip.Trip, error) {
			v, err := parseNumber(s, least, most)
			*of(&t) = v * scale
			return t, err
		}}
}

// measured is a number that is shown and typed in another unit than it is
// stored in; limits are as stored.
func measured(key, group, label, hint string, u units.Unit, least, most float64, of func(*trip.Trip) *float64) Field {
	return Field{Key: key, Group: group, Label: label, Unit: u.Symbol, Hint: hint, Input: "number",
		Get: func(t trip.Trip) string { return plain(u.Show(*of(&t))) },
		Set: func(t trip.Trip, s string) (trip.Trip, error) {
			v, err := parseShown(s, u, least, most)
			*of(&t) = v
			return t, err
		}}
}

// comfortFields are what is wished inside. The usual is shown where the trip says nothing.
func comfortFields(v say.Voice) []Field {
	u := v.Unit("°C")
	return []Field{
		measured("inside", word.groupComfort, word.fInside, "", u, 5, 30, func(t *trip.Trip) *float64 {
			t.Comfort.InsideC = cmp.Or(t.Comfort.InsideC, usualInsideC)
			return &t.Comfort.InsideC
		}),
		measured("night", word.groupComfort, word.fInsideNight, word.hInsideNight, u, 1, 30, func(t *trip.Trip) *float64 {
			t.Comfort.NightC = cmp.Or(t.Comfort.NightC, cmp.Or(t.Comfort.InsideC, usualInsideC)-nightLessC)
			return &t.Comfort.NightC
		}),
		{Key: "hot", Group: word.groupComfort, Label: word.fHot, Hint: word.hHot, Input: "select",
			Options: []Option{{plain(life.HotBoost), v.Quantity(life.HotBoost, "°C", 0)}, {plain(life.HotEnough), v.Quantity(life.HotEnough, "°C", 0)}},
			Get:     func(t trip.Trip) string { return plain(cmp.Or(t.Comfort.HotC, life.HotBoost)) },
			Set: func(t trip.Trip, s string) (_ trip.Trip, err error) {
				t.Comfort.HotC, err = parseNumber(s, 30, 80)
				return t, err
			}},
	}
}

// What [life.Comfort] takes for a zero.
const usualInsideC, nightLessC = 20.0, 5.0

// confidence is how sure each tank is to last; a trip's own value is a choice too.
func confidence(t trip.Trip) Field {
	options := confidenceWords
	now := plain(t.Confident())
	if !slices.ContainsFunc(options, func(o Option) bool { return o.Value == now }) {
		options = append(options[:len(options):len(options)], Option{now, fmt.Sprintf(word.onTrips, 100*t.Confident())})
	}
	return Field{Key: "confidence", Group: word.groupPlan, Label: word.fConfidence, Hint: word.hConfidence, Input: "select", Options: options, Wide: true,
		Get: func(t trip.Trip) string { return plain(t.Confident()) },
		Set: func(t trip.Trip, s string) (_ trip.Trip, err error) {
			t.Confidence, err = parseNumber(s, 0.5, 0.99)
			return t, err
		}}
}

func whole(key, group, label, hint string, least, most int, of func(*trip.Trip) *int) Field {
	return Field{Key: key, Group: group, Label: label, Hint: hint, Input: "whole",
		Get: func(t trip.Trip) string { return strconv.Itoa(*of(&t)) },
		Set: func(t trip.Trip, s string) (trip.Trip, error) {
			v, err := strconv.Atoi(strings.TrimSpace(s))
			if err != nil || v < least || v > most {
				return t, fmt.Errorf(word.wantWhole, least, most)
			}
			*of(&t) = v
			return t, nil
		}}
}

func choice(key, group, label string, options []Option, of func(*trip.Trip) *string) Field {
	return Field{Key: key, Group: group, Label: label, Input: "select", Options: options, Wide: true,
		Get: func(t trip.Trip) string { return *of(&t) },
		Set: func(t trip.Trip, s string) (trip.Trip, error) {
			if !slices.ContainsFunc(options, func(o Option) bool { return o.Value == s }) {
				return t, fmt.Errorf("%s", word.wantChoice)
			}
			*of(&t) = s
			return t, nil
		}}
}

func check(key, group, label, hint string, of func(*trip.Trip) *bool) Field {
	return Field{Key: key, Group: group, Label: label, Hint: hint, Input: "checkbox", Wide: true,
		Get: func(t trip.Trip) string { return strconv.FormatBool(*of(&t)) },
		Set: func(t trip.Trip, s string) (trip.Trip, error) {
			*of(&t) = s == "true"
			return t, nil
		}}
}

// tankFields are the level at the start and the size of tank i.
func tankFields(k trip.Tank, i int, v say.Voice) []Field {
	group, unit := word.groupTanks, v.Unit(k.Unit)
	return []Field{
		{Key: "level:" + k.ID, Group: group, Label: fmt.Sprintf(word.fLevel, k.Name), Unit: unit.Symbol, Input: "number",
			Get: func(t trip.Trip) string { return plain(unit.Show(startLevel(t, t.Vehicle.Tanks[i]))) },
			Set: func(t trip.Trip, s string) (trip.Trip, error) {
				v, err := parseShown(s, unit, 0, t.Vehicle.Tanks[i].Capacity)
				if err != nil {
					return t, err
				}
				t.Levels = maps.Clone(t.Levels)
				if t.Levels == nil {
					t.Levels = map[string]float64{}
				}
				t.Levels[k.ID] = v
				return t, nil
			}},
		{Key: "size:" + k.ID, Group: group, Label: fmt.Sprintf(word.fSize, k.Name), Unit: unit.Symbol, Input: "number",
			Get: func(t trip.Trip) string { return plain(unit.Show(t.Vehicle.Tanks[i].Capacity)) },
			Set: func(t trip.Trip, s string) (trip.Trip, error) {
				least := max(t.Vehicle.Tanks[i].Reserve, startLevel(t, t.Vehicle.Tanks[i]), 0.1)
				v, err := parseShown(s, unit, least, 2000)
				if err != nil {
					return t, err
				}
				t.Vehicle.Tanks = slices.Clone(t.Vehicle.Tanks)
				tank := &t.Vehicle.Tanks[i]
				tank.Capacity, tank.Start = v, min(tank.Start, v)
				tank.End = endWithin(*tank)
				return t, nil
			}},
	}
}

// priceField is what a unit of a tank's content counts as where a place states no price.
func priceField(k trip.Tank, currency string, u units.Unit) Field {
	return Field{Key: "price:" + k.ID, Group: word.groupPrices, Label: k.Name, Unit: currency + "/" + u.Symbol, Input: "number",
		Get: func(t trip.Trip) string {
			v, _ := t.Price(k.ID)
			return plain(u.ShowPer(v))
		},
		Set: func(t trip.Trip, s string) (trip.Trip, error) {
			v, err := parseNumber(s, 0, 1e6)
			if err != nil {
				return t, err
			}
			if t.Prices = maps.Clone(t.Prices); t.Prices == nil {
				t.Prices = map[string]float64{}
			}
			t.Prices[k.ID] = v * u.Show(1)
			return t, nil
		}}
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

func setVehicle(t trip.Trip, fleet []trip.Vehicle, id string) (trip.Trip, error) {
	for _, v := range fleet {
		if v.ID == id {
			t.Vehicle, t.Levels = v, nil
			return t, nil
		}
	}
	if t.Vehicle.ID == id {
		return t, nil
	}
	return t, fmt.Errorf("%s", word.wantChoice)
}

func setDate(t trip.Trip, s string) (trip.Trip, error) {
	if _, err := time.Parse(trip.DateLayout, s); err != nil {
		return t, fmt.Errorf("%s", word.wantDate)
	}
	t.Start = s
	return t, nil
}

func setCurrency(t trip.Trip, s string) (trip.Trip, error) {
	s = strings.ToUpper(strings.TrimSpace(s))
	if !units.ValidCurrency(s) {
		return t, fmt.Errorf("%s", word.wantCurrency)
	}
	if s != t.Currency {
		t.Currency, t.Prices = s, nil // they were of the other currency
	}
	return t, nil
}

// parseClock reads a time of day as minutes after midnight.
func parseClock(s string) (float64, error) {
	at, err := time.Parse("15:04", s)
	if err != nil {
		return 0, fmt.Errorf("%s", word.wantClock)
	}
	return float64(at.Hour()*60 + at.Minute()), nil
}

// parseNumber reads a number from least to most.
func parseNumber(s string, least, most float64) (float64, error) {
	v, err := strconv.ParseFloat(strings.Replace(strings.TrimSpace(s), ",", ".", 1), 64)
	if err != nil || !(v >= least && v <= most) {
		return 0, fmt.Errorf(word.wantNumber, plain(least), plain(most))
	}
	return v, nil
}

// parseShown reads a number that is typed in a unit; limits and result are as
// stored. A limit is shown rounded, and what is shown is taken.
func parseShown(s string, u units.Unit, least, most float64) (float64, error) {
	v, err := parseNumber(s, math.Floor(100*u.Show(least))/100, math.Ceil(100*u.Show(most))/100)
	if err != nil {
		return 0, err
	}
	stored, err := u.Read(v)
	return min(max(stored, least), most), err
}

// plain writes a number as it is typed, at most to a hundredth.
func plain(v float64) string {
	s := strconv.FormatFloat(v, 'f', 2, 64)
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
}
