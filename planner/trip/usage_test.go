package trip_test

import (
	"slices"
	"testing"

	"ullage/planner"
	"ullage/planner/life"
	"ullage/planner/trip"
	"ullage/planner/trip/triptest"
)

// usage is of a trip that drives a kilometre a minute.
func usage(t *testing.T, tr trip.Trip, km float64, ferries ...trip.Crossing) trip.Usage {
	t.Helper()
	a := trip.NewAxis(km, ferries)
	u, err := trip.NewUsage(tr, []planner.Pace{{ToKm: a.Driven(km), MinPerKm: 1}}, a)
	if err != nil {
		t.Fatal(err)
	}
	return u
}

// night is one at a place that says nothing, km along.
func night(u trip.Usage, km float64) []life.Band {
	return u.Nights(nil, life.Where{Lat: 47}, km, 1)
}

// A usual day has as much at the wheel as the days that the limits make: 200 min
// fit into one of 200 and no less; 190 and a ferry of 30 into one of 221, not of 219.
func TestUsualDay(t *testing.T) {
	ferry := trip.Crossing{Ferry: trip.Ferry{FromKm: 0, ToKm: 10, Min: 30}}
	for _, c := range []struct {
		maxMin  float64
		ferries []trip.Crossing
		whole   bool // one day is enough
	}{{200, nil, true}, {199, nil, false}, {221, []trip.Crossing{ferry}, true}, {219, []trip.Crossing{ferry}, false}} {
		tr := triptest.Lived(0, "2027-01-15")
		tr.Day.MaxKm, tr.Day.MaxMin = 1000, c.maxMin
		got := night(usage(t, tr, 200, c.ferries...), 200)
		tr.Day.MaxMin = 1000
		if want := night(usage(t, tr, 200, c.ferries...), 200); slices.Equal(got, want) != c.whole {
			t.Errorf("%v min a day, %d ferries: a night takes %v, in one day %v, want the same: %v", c.maxMin, len(c.ferries), got, want, c.whole)
		}
	}
}

// Ten days on 10 km, a kilometre a day: the night at km 9.5 is that of the tenth
// day, as cold as the first one of a trip that begins nine days later.
func TestDayOfTheNight(t *testing.T) {
	tr := triptest.Lived(0, "2027-03-01")
	tr.Stays.MinNights = 9
	last := night(usage(t, tr, 10), 9.5)
	tr.Start = tr.Start.Plus(9)
	if want := night(usage(t, tr, 10), 0.5); !slices.Equal(last, want) {
		t.Errorf("the tenth night takes %v, want %v", last, want)
	}
}
