package read

import (
	"math"
	"testing"
	"time"
	"ullage/planner"
	"ullage/planner/replay"
	"ullage/planner/trip"
	"ullage/planner/trip/build"
	"ullage/planner/trip/triptest"
	"ullage/planner/trip/triptest/built"
)

// The last station is one that is not closed when the plan comes by; what is not
// known is said to be not known, and a nearer one that is closed is named.
func TestLastStation(t *testing.T) {
	tr := triptest.Eastwards(300)
	tr.Vehicle = triptest.Careless(tr.Vehicle)
	tr.Day.MaxKm, tr.Day.MaxMin = 300, 600 // from 09:00 at 60 km/h: km 270 at 13:30, 280 at 13:40, 290 at 13:50
	station := func(id, hours string, km float64) trip.Place {
		p := triptest.At(id, "fuel", km, 0, triptest.Yes("diesel"))
		p.Hours = hours
		return p
	}
	hours := func(p trip.Place, _ time.Time, _ int) ([][2]float64, bool) {
		switch p.Hours {
		case "am":
			return [][2]float64{{480, 720}}, true
		case "all day":
			return [][2]float64{{480, 1200}}, true
		}
		return nil, false
	}
	for _, c := range []struct {
		name   string
		places []trip.Place
		want   string
	}{
		{"open", []trip.Place{station("a", "all day", 270), station("b", "all day", 290)}, "station.open km=10km name=B open=(open.at clock=13:50)"},
		{"the last is closed", []trip.Place{station("a", "am", 270), station("b", "all day", 280), station("c", "am", 290)}, "station.open km=20km name=B open=(open.at clock=13:40) | station.closed km=10km name=C"},
		{"not known", []trip.Place{station("a", "all day", 270), station("b", "", 280), station("c", "??", 290)}, "station.open km=10km name=C open=(open.unknown)"},
		{"all closed", []trip.Place{station("a", "am", 270)}, "station.none | station.closed km=30km name=A"},
	} {
		t.Run(c.name, func(t *testing.T) {
			it := driven(t, built.Trip(t, tr, c.places, build.Options{Hours: hours}))
			if got := triptest.Lines(it.Return.Station); got != c.want {
				t.Errorf("%q, want %q", got, c.want)
			}
		})
	}
	// Who sleeps beyond the last station passes it the day before.
	early := driven(t, built.Trip(t, tr, []trip.Place{station("a", "all day", 200), triptest.SiteAt("n", 280)}, build.Options{Hours: hours}), planner.Visit{Stop: "n", Night: true})
	if got, want := triptest.Lines(early.Return.Station), "station.open km=100km name=A open=(open.on_day clock=12:20 n=1)"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	// The night in between counts, and so do the minutes at a stop.
	tr.Day.MaxKm = 200
	b := built.Trip(t, tr, []trip.Place{station("a", "all day", 50), triptest.SiteAt("n", 150), station("b", "am", 290)}, build.Options{Hours: hours})
	plan, err := replay.Plan(b.Problem, []planner.Visit{{Stop: "n", Night: true}})
	if err != nil {
		t.Fatal(err)
	}
	if got, want := (reader{b}).passing(plan, 50), 590.0; math.Abs(got-want) > 0.1 {
		t.Errorf("km 50 at %v, want %v", got, want)
	}
	if got, want := (reader{b}).passing(plan, 290), 1440+540+140.0; math.Abs(got-want) > 0.1 {
		t.Errorf("km 290 at %v, want %v", got, want)
	}
}

// The last morning: leave, sail, stop, arrive, keys, by the clock.
func TestLastMorningInOrder(t *testing.T) {
	tr := triptest.Eastwards(300)
	tr.Vehicle, tr.Day.MaxKm, tr.KeysByMin = triptest.Careless(tr.Vehicle), 200, 960
	tr.Ferries = []trip.Ferry{{FromKm: 200, ToKm: 220, Min: 60}}
	b := built.Trip(t, tr, []trip.Place{triptest.SiteAt("n", 150), triptest.At("a", "fuel", 290, 0, triptest.Yes("diesel"))}, build.Options{})
	it := driven(t, b, planner.Visit{Stop: "n", Night: true}, planner.Visit{Stop: "a", Serve: []planner.Serve{{Tank: "diesel", Amount: 10}}})
	// 09:00, 50 km, an hour at sea, 70 km, 4 min to stop and 6 to refuel, 10 km.
	want := "return.leave clock=09:00 name=N | return.ferry clock=09:50 from=km200 to=km220 | " +
		"return.call clock=12:00 does=[(do.refuel amount=10L tank=diesel)] mark=km290 name=A | return.end clock=12:20 | return.keys clock=16:00"
	if got := triptest.Lines(it.Return.Steps); got != want {
		t.Errorf("%s\nwant\n%s", got, want)
	}
}

// Whoever hands the vehicle back needs an hour for it: what is left between
// the end of the route (14:00, by hand: 300 km at 60 km/h from 09:00) and the
// keys is warned of below 60 minutes, not at 60, and named as late below none.
func TestKeysWarning(t *testing.T) {
	tr := triptest.Eastwards(300)
	tr.Vehicle = triptest.Careless(tr.Vehicle)
	tr.Day.MaxKm, tr.Day.MaxMin = 300, 600
	const arrive = 14 * 60
	for _, c := range []struct {
		inHand float64
		want   string
	}{{-31, "keys.late for=31min"}, {-1, "keys.late for=1min"}, {0, "keys.short for=0min"}, {29, "keys.short for=29min"}, {59, "keys.short for=59min"}, {60, ""}, {89, ""}} {
		tr.KeysByMin = arrive + c.inHand
		r := driven(t, built.Trip(t, tr, nil, build.Options{Ease: build.Ease{LateKeys: true}})).Return
		if r.ArriveMin != arrive || r.InHandMin != c.inHand {
			t.Fatalf("arrives at %v with %v in hand, want %v and %v", r.ArriveMin, r.InHandMin, arrive, c.inHand)
		}
		if got := triptest.Lines(r.Warnings); got != c.want {
			t.Errorf("%v min in hand: %q, want %q", c.inHand, got, c.want)
		}
	}
}
