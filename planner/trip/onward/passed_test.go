package onward

import (
	"math"
	"slices"
	"strings"
	"testing"
	"ullage/planner"
	"ullage/planner/trip"
	"ullage/planner/trip/triptest"

	"github.com/paulmach/orb"
)

// A stop that was passed without a call is no history, and its tank is as full
// as the plan has it on arrival there.
func TestMissedCall(t *testing.T) {
	b, it := living(t)
	now := Now{Km: new(292.0), Time: "2026-06-13T11:40"}
	made := mustOnward(t, b.Trip, it, now)
	now.Called = map[string]bool{"n3": false}
	missed := mustOnward(t, b.Trip, it, now)
	has := func(o Rest) bool {
		return slices.ContainsFunc(o.Trip.Done, func(d trip.Done) bool { return d.Place == "n3" })
	}
	if !has(made) || has(missed) || len(missed.Trip.Done) != len(made.Trip.Done)-1 {
		t.Errorf("behind: made %+v, missed %+v", made.Trip.Done, missed.Trip.Done)
	}
	if triptest.Lines(triptest.Of(missed.Notes, passedBy)) != "onward.passed names=[N3]" {
		t.Errorf("notes %q", triptest.Lines(missed.Notes))
	}
	for i, s := range it.Strips {
		arrival := s.Points[slices.IndexFunc(s.Points, func(p trip.Level) bool { return p.Km == 290 })].L
		want, tolerance := arrival, 0.5 // of driving on to km 292
		if got := missed.Trip.Levels[s.Tank]; math.Abs(got-want) > tolerance {
			t.Errorf("%s is at %v, want the %v of the arrival", b.Trip.Vehicle.Tanks[i].ID, got, want)
		}
		if s.Tank == "grey" && made.Trip.Levels["grey"] != 0 {
			t.Errorf("drained, the grey tank has %v", made.Trip.Levels["grey"])
		}
	}
}

// Who drives past the place of the night on the same day has spent no night
// and used no water for one, whether he called there or not.
func TestPassedTheNight(t *testing.T) {
	b, it := living(t)
	now := Now{Km: new(200.0), Time: "2026-06-12T13:00"}
	passed, err := Behind(b.Trip, it, 200, now.Time)
	if err != nil || len(passed) != 1 || passed[0].Call.Stop != "n2" || passed[0].Over {
		t.Errorf("passed %+v, %v, want the night at n2, not over", passed, err)
	}
	for _, called := range []map[string]bool{nil, {"n2": true}, {"n2": false}} {
		now.Called = called
		o := mustOnward(t, b.Trip, it, now)
		if o.Trip.Levels["fresh"] != 90 || o.Trip.Stays.MinNights != b.Trip.Stays.MinNights {
			t.Errorf("called %v: fresh water at %v, at least %d nights more", called, o.Trip.Levels["fresh"], o.Trip.Stays.MinNights)
		}
		if wrong := len(o.Trip.Done) > 0 && (o.Trip.Done[0].Night || called["n2"] == false && called != nil); wrong {
			t.Errorf("called %v: history %+v", called, o.Trip.Done)
		}
	}
	// The morning after, the night was spent somewhere.
	now.Time, now.Called = "2026-06-13T10:00", map[string]bool{"n2": false}
	if o := mustOnward(t, b.Trip, it, now); o.Trip.Levels["fresh"] > 43 || o.Trip.Stays.MinNights != max(b.Trip.Stays.MinNights-1, 0) {
		t.Errorf("after a night elsewhere: fresh water at %v, at least %d nights more", o.Trip.Levels["fresh"], o.Trip.Stays.MinNights)
	}
}

// Where somebody stands and says that the call is made, it is behind.
func TestCalledHere(t *testing.T) {
	b, it := living(t)
	now := Now{Km: new(290.0), Time: "2026-06-13T11:22"} // 2122 min; the plan leaves at 2135
	if o := mustOnward(t, b.Trip, it, now); o.Trip.Levels["grey"] < 30 || !slices.Contains(o.Trip.Keep, "n3") {
		t.Errorf("before the call: grey water at %v, ahead %v", o.Trip.Levels["grey"], o.Trip.Keep)
	}
	now.Called = map[string]bool{"n3": true}
	if o := mustOnward(t, b.Trip, it, now); o.Trip.Levels["grey"] != 0 || slices.Contains(o.Trip.Keep, "n3") {
		t.Errorf("after it: grey water at %v, ahead %v", o.Trip.Levels["grey"], o.Trip.Keep)
	}
	now.Time, now.Called = "2026-06-13T12:30", map[string]bool{"n3": false} // late, and still to do
	now.Km = new(290.3)                                                     // a little beyond it
	if o := mustOnward(t, b.Trip, it, now); o.Trip.Levels["grey"] < 30 || !slices.Contains(o.Trip.Keep, "n3") || triptest.Has(o.Notes, passedBy) {
		t.Errorf("not yet: grey water at %v, ahead %v, %q", o.Trip.Levels["grey"], o.Trip.Keep, triptest.Lines(o.Notes))
	}
}

// By hand: a night that uses 40 L with a service in it, missed but spent elsewhere.
func TestUndone(t *testing.T) {
	night := trip.Call{Stop: "a", Km: 100, ArriveMin: 900, LeaveMin: 2000, Night: true, Nights: 1,
		Tasks: []trip.Task{{Tank: "fresh", Amount: 75, Before: 65, After: 100}, {Tank: "grey", Amount: 70, Before: 30, After: 0}}}
	level := func(l, low, high float64) trip.Level { return trip.Level{L: l, Low: low, Likely: l, High: high} }
	morning := Now{here: 110, min: 2100, Called: map[string]bool{"a": false}}
	evening := Now{here: 110, min: 1000, Called: map[string]bool{"a": false}}
	for _, c := range []struct {
		name          string
		now           Now
		tank          trip.Tank
		before, after trip.Level
		want          trip.Level // without the call
	}{
		{"supply, night elsewhere", morning, trip.Tank{ID: "fresh"}, level(65, 60, 70), level(100, 100, 100), level(25, 20, 30)},
		{"waste, night elsewhere", morning, trip.Tank{ID: "grey", Kind: planner.Waste}, level(30, 25, 36), level(0, 0, 0), level(70, 65, 76)},
		{"supply, no night yet", evening, trip.Tank{ID: "fresh"}, level(65, 60, 70), level(100, 100, 100), level(65, 60, 70)},
		{"waste, no night yet", evening, trip.Tank{ID: "grey", Kind: planner.Waste}, level(30, 25, 36), level(0, 0, 0), level(30, 25, 36)},
		{"not served, no night yet", evening, trip.Tank{ID: "lpg"}, level(20, 19, 21), level(19, 17, 20), level(20, 19, 21)},
		{"not served, night elsewhere", morning, trip.Tank{ID: "lpg"}, level(20, 19, 21), level(19, 17, 20), level(19, 17, 20)},
	} {
		got := plus(c.after, c.now.undone(night, c.tank, c.before, c.after), -1)
		if got != c.want {
			t.Errorf("%s: %+v, want %+v", c.name, got, c.want)
		}
	}
}

// Nights of a call are over by the clock, one at each midnight, and all of them when
// the plan leaves.
func TestNightsOver(t *testing.T) {
	c := trip.Call{Night: true, Nights: 3, ArriveMin: 1440, LeaveMin: 4*1440 + 540} // arrives at midnight
	for min, want := range map[float64]int{1000: 0, 1500: 0, 2879: 0, 2880: 1, 4320: 2, 4*1440 + 539: 3, 4*1440 + 540: 3, 9000: 3} {
		if got := (Now{min: min}).nights(c); got != want {
			t.Errorf("minute %v: %d nights, want %d", min, got, want)
		}
	}
	if got := (Now{min: 9000}).nights(trip.Call{Nights: 3}); got != 0 {
		t.Errorf("by day: %d nights", got)
	}
}

// Where the plan is at a minute: 100 km, a stop of 100 min, 50 km more.
func TestExpectedKm(t *testing.T) {
	it := trip.Itinerary{Strips: []trip.Strip{{Points: []trip.Level{{Km: 0, Min: 500}, {Km: 100, Min: 600}, {Km: 100, Min: 700}, {Km: 150, Min: 750}, {Km: 150, Min: 750}}}}}
	for min, want := range map[float64]float64{400: 0, 500: 0, 550: 50, 600: 100, 650: 100, 700: 100, 725: 125, 750: 150, 900: 150} {
		if got := expectedKm(it, min); got != want {
			t.Errorf("minute %v: km %v, want %v", min, got, want)
		}
	}
}

func TestLocate(t *testing.T) {
	b, it := living(t)
	at := orb.Point{120 / triptest.KmPerDegree, 1 / 110.574}
	if km, off, err := Locate(b.Trip, it, at, "2026-06-12T11:00"); err != nil || math.Abs(km-120) > 0.1 || math.Abs(off-1) > 0.01 {
		t.Errorf("km %v, %v km off, %v, want km 120, 1 km off", km, off, err)
	}
	for _, off := range []float64{26, 49} { // in the widest corridor only
		if km, got, err := Locate(b.Trip, it, orb.Point{at[0], off / 110.574}, "2026-06-12T11:00"); err != nil || math.Abs(km-120) > 0.1 || math.Abs(got-off) > 0.5 {
			t.Errorf("%v km off: km %v, %v km off, %v", off, km, got, err)
		}
	}
	for _, c := range []struct {
		at   orb.Point
		when trip.Moment
		want string
	}{
		{orb.Point{0, 5}, "2026-06-12T11:00", "onward.off_route"},
		{orb.Point{1, 0}, "noon", "onward.want_now"},
		{orb.Point{300 / triptest.KmPerDegree, 0}, "2026-06-12T11:00", "onward.past_end"},
	} {
		if _, _, err := Locate(b.Trip, it, c.at, c.when); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%v at %s: %v, want %q", c.at, c.when, err, c.want)
		}
	}
}
