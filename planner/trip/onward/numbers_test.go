package onward_test

import (
	"testing"
	"time"

	"ullage/planner"
	"ullage/planner/trip"
	"ullage/planner/trip/answer"
	"ullage/planner/trip/onward"
	"ullage/planner/trip/triptest"
)

// TestNumbersStay: planned anew from each stop, and on a morning within a stay, what is
// ahead keeps the numbers of its days and stops and its kilometres, where nothing changed.
func TestNumbersStay(t *testing.T) {
	tr := triptest.Eastwards(500)
	tr.Vehicle, tr.Stays.MinNights, tr.Stays.MaxNights = trip.Fleet()[0], 6, 6
	var places []trip.Place
	for i, km := range []float64{90, 180, 290, 400} {
		p := triptest.At([]string{"n1", "n2", "n3", "n4"}[i], "campsite", km, 0, triptest.Yes("fresh"), triptest.Yes("grey"), triptest.Yes("cassette"))
		p.Stay = &trip.Stay{HookUp: trip.Yes}
		places = append(places, p)
	}
	places = append(places, triptest.At("n5", "fuel", 220, 0, triptest.Yes("diesel"), triptest.Yes("def"), triptest.Yes("lpg")),
		triptest.At("n6", "dump", 480, 0, triptest.Yes("grey"), triptest.Yes("cassette")))
	it, err := answer.Trip(t.Context(), tr, places, answer.Options{})
	if err != nil || len(it.Days) == 0 {
		t.Fatal(err, it.Status, it.Why)
	}
	type moment struct{ km, min float64 }
	var moments []moment
	want := map[int]trip.Call{}
	last := map[int]int{} // by stop, the number of its day
	for _, d := range it.Days {
		for _, c := range d.Calls {
			want[c.N], last[c.N] = c, d.Number
			moments = append(moments, moment{c.Km, c.LeaveMin})
			for n := 1; n < c.Nights; n++ { // a morning within a stay
				moments = append(moments, moment{c.Km, c.LeaveMin - 1440*float64(c.Nights-n)})
			}
		}
	}
	inStay := 0
	for _, m := range moments {
		day := tr.Start.Plus(int(m.min / 1440))
		left := map[string]onward.Shown{}
		now := onward.Now{Km: &m.km, Time: trip.Moment(day.Time().Add(minutes(m.min)).Format("2006-01-02T15:04")), Gauges: left}
		rest, err := onward.From(tr, it, now)
		if err != nil {
			t.Fatalf("at km %v, minute %v: %v", m.km, m.min, err)
		}
		if rest.Trip.DoneDays != int(m.min/1440) {
			t.Errorf("minute %v: %d days are over", m.min, rest.Trip.DoneDays)
		}
		again, err := answer.Trip(t.Context(), rest.Trip, places, answer.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if again.Status == planner.Infeasible {
			continue
		}
		if first := again.Days[0].Number; first != int(m.min/1440)+1 {
			t.Errorf("minute %v: day %d is the first", m.min, first)
		}
		for _, d := range again.Days {
			for _, c := range d.Calls {
				was, known := want[c.N]
				if !known || was.Place != c.Place {
					continue // another plan
				}
				if km := c.Km + rest.Trip.DoneKm; km-was.Km > 0.1 || was.Km-km > 0.1 {
					t.Errorf("minute %v: stop %d at km %v, was %v", m.min, c.N, km, was.Km)
				}
				if c.Nights > 0 && c.Nights < was.Nights {
					inStay++
				} else if d.Number != last[c.N] {
					t.Errorf("minute %v: stop %d on day %d, was %d", m.min, c.N, d.Number, last[c.N])
				}
			}
		}
	}
	if inStay == 0 {
		t.Error("no rest of a stay")
	}
}

func minutes(min float64) time.Duration {
	return time.Duration(min-1440*float64(int(min/1440))) * time.Minute
}
