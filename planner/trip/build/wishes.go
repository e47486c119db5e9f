package build

import (
	"slices"

	"ullage/planner"
	"ullage/planner/trip"
)

// This file makes wishes by place and date into windows and lists.

// wishes lists, for each wish about places, the stops of which one is wanted, and
// limits when one arrives there; and it leaves out nights without hook-up from the day on
// from which they are not wanted. A wish for a day that is over is kept.
func (b *gathering) wishes() {
	for _, w := range b.Trip.Wishes {
		if from := w.HookUpFrom; from != "" {
			b.hookUpFrom(b.day(from))
		}
		if w.Place == "" && w.WithinKm == 0 || w.On != "" && b.day(w.On) < 0 || len(b.Lists) >= planner.MostLists {
			continue
		}
		b.Lists = append(b.Lists, b.wished(w))
	}
}

// wished are the stops of which a wish about places wants one, there when it wants them.
func (b *gathering) wished(w trip.Wish) []string {
	list := []string{""} // never none: where no stop fits, the wish cannot be kept
	for i := range b.Around {
		s := &b.Around[i]
		if !about(w, b.Calls[s.ID].Place) || w.Nights > 0 && (s.Night == nil || s.Night.Nights != w.Nights) || w.Place == "" && s.Night == nil {
			continue
		}
		list = append(list, s.ID)
		if w.On == "" {
			continue
		}
		last := b.day(w.On)
		first := last
		if s.Night != nil {
			first = last - s.Night.Nights + 1
		}
		s.Open = within(s.Open, 1440*float64(first), 1440*float64(last+1)-1)
	}
	return list
}

// hookUpFrom lets nights without hook-up be only so that they are over by a day.
func (b *gathering) hookUpFrom(day int) {
	for i := range b.Around {
		s := &b.Around[i]
		if s.Night == nil || b.Calls[s.ID].Place.Stay.HookUp == trip.Yes {
			continue
		}
		if last := day - s.Night.Nights; last >= 0 {
			s.Open = within(s.Open, 0, 1440*float64(last+1)-1)
			continue
		}
		s.Night = nil
		s.Serves = slices.DeleteFunc(s.Serves, func(x planner.Service) bool { return x.GuestsOnly })
	}
}

// within is the part of windows from one minute to another; none are all of the time.
func within(open [][2]float64, from, to float64) [][2]float64 {
	if len(open) == 0 {
		return [][2]float64{{from, to}}
	}
	out := [][2]float64{}
	for _, w := range open {
		if lo, hi := max(w[0], from), min(w[1], to); lo <= hi {
			out = append(out, [2]float64{lo, hi})
		}
	}
	if len(out) == 0 {
		return [][2]float64{{-2, -1}} // never
	}
	return out
}
