package page

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"time"

	"ullage/planner"
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

func whole(key, group, label, hint string, least, most int, of func(*trip.Trip) *int) Field {
	return Field{Key: key, Group: group, Label: label, Hint: hint, Input: "whole",
		Get: func(t trip.Trip) string { return strconv.Itoa(*of(&t)) },
		Set: func(t trip.Trip, s string) (trip.Trip, error) {
			v, err := strconv.Atoi(strings.TrimSpace(s))
			if err != nil || v < least || v > most {
				return t, fmt.Errorf(say.wantWhole, least, most)
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
				return t, fmt.Errorf("%s", say.wantChoice)
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
func tankFields(k trip.Tank, i int) []Field {
	group := say.groupTanks
	return []Field{
		{Key: "level:" + k.ID, Group: group, Label: fmt.Sprintf(say.fLevel, k.Name), Unit: k.Unit, Input: "number",
			Get: func(t trip.Trip) string { return plain(startLevel(t, t.Vehicle.Tanks[i])) },
			Set: func(t trip.Trip, s string) (trip.Trip, error) {
				v, err := parseNumber(s, 0, t.Vehicle.Tanks[i].Capacity)
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
		{Key: "size:" + k.ID, Group: group, Label: fmt.Sprintf(say.fSize, k.Name), Unit: k.Unit, Input: "number",
			Get: func(t trip.Trip) string { return plain(t.Vehicle.Tanks[i].Capacity) },
			Set: func(t trip.Trip, s string) (trip.Trip, error) {
				least := max(t.Vehicle.Tanks[i].Reserve, startLevel(t, t.Vehicle.Tanks[i]), 0.1)
				v, err := parseNumber(s, least, 2000)
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
	return t, fmt.Errorf("%s", say.wantChoice)
}

func setDate(t trip.Trip, s string) (trip.Trip, error) {
	if _, err := time.Parse(trip.DateLayout, s); err != nil {
		return t, fmt.Errorf("%s", say.wantDate)
	}
	t.Start = s
	return t, nil
}

func setClock(t trip.Trip, s string) (trip.Trip, error) {
	at, err := time.Parse("15:04", s)
	if err != nil {
		return t, fmt.Errorf("%s", say.wantClock)
	}
	t.Day.DepartMin = float64(at.Hour()*60 + at.Minute())
	return t, nil
}

// parseNumber reads a number from least to most.
func parseNumber(s string, least, most float64) (float64, error) {
	v, err := strconv.ParseFloat(strings.Replace(strings.TrimSpace(s), ",", ".", 1), 64)
	if err != nil || !(v >= least && v <= most) {
		return 0, fmt.Errorf(say.wantNumber, plain(least), plain(most))
	}
	return v, nil
}

// plain writes a number as it is typed, at most to a hundredth.
func plain(v float64) string {
	s := strconv.FormatFloat(v, 'f', 2, 64)
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
}
