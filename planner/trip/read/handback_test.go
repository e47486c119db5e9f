package read

import (
	"math"
	"slices"
	"strings"
	"testing"
	"time"
	"ullage/planner"
	"ullage/planner/replay"
	"ullage/planner/trip"
	"ullage/planner/trip/build"
	"ullage/planner/trip/triptest"
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
		{"open", []trip.Place{station("a", "all day", 270), station("b", "all day", 290)}, "B, 10 km before the end; open when you come by at 13:50"},
		{"the last is closed", []trip.Place{station("a", "am", 270), station("b", "all day", 280), station("c", "am", 290)}, "B, 20 km before the end; open when you come by at 13:40; C, 10 km before the end, is closed by then"},
		{"not known", []trip.Place{station("a", "all day", 270), station("b", "", 280), station("c", "??", 290)}, "C, 10 km before the end; whether it is open then is not known"},
		{"all closed", []trip.Place{station("a", "am", 270)}, "none is open when you come by: A, 30 km before the end, is closed by then"},
	} {
		t.Run(c.name, func(t *testing.T) {
			it := driven(t, mustBuild(t, tr, c.places, build.Options{Hours: hours}))
			if got := it.Return.Station; got != c.want {
				t.Errorf("%q, want %q", got, c.want)
			}
		})
	}
	// Who sleeps beyond the last station passes it the day before.
	early := driven(t, mustBuild(t, tr, []trip.Place{station("a", "all day", 200), triptest.SiteAt("n", 280)}, build.Options{Hours: hours}), planner.Visit{Stop: "n", Night: true})
	if got, want := early.Return.Station, "A, 100 km before the end; open when you come by at 12:20 on day 1"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	// The night in between counts, and so do the minutes at a stop.
	tr.Day.MaxKm = 200
	b := mustBuild(t, tr, []trip.Place{station("a", "all day", 50), triptest.SiteAt("n", 150), station("b", "am", 290)}, build.Options{Hours: hours})
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
	b := mustBuild(t, tr, []trip.Place{triptest.SiteAt("n", 150), triptest.At("a", "fuel", 290, 0, triptest.Yes("diesel"))}, build.Options{})
	it := driven(t, b, planner.Visit{Stop: "n", Night: true}, planner.Visit{Stop: "a", Serve: []planner.Serve{{Tank: "diesel", Amount: 10}}})
	// 09:00, 50 km, an hour at sea, 70 km, 4 min to stop and 6 to refuel, 10 km.
	want := "09:00 leave N|09:50 km 200 ferry to km 220, gas off|12:00 km 290 A: refuel Diesel (10 L)|12:20 at the end of the route|16:00 keys"
	if got := strings.Join(it.Return.Steps, "|"); got != want {
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
	}{{-31, "after the keys are due"}, {-1, "after the keys are due"}, {0, "until the keys are due"}, {29, "until the keys are due"}, {59, "until the keys are due"}, {60, ""}, {89, ""}} {
		tr.KeysByMin = arrive + c.inHand
		r := driven(t, mustBuild(t, tr, nil, build.Options{})).Return
		if r.ArriveMin != arrive || r.InHandMin != c.inHand {
			t.Fatalf("arrives at %v with %v in hand, want %v and %v", r.ArriveMin, r.InHandMin, arrive, c.inHand)
		}
		told := slices.DeleteFunc(slices.Clone(r.Warnings), func(s string) bool { return !strings.Contains(s, "keys") })
		if c.want == "" && len(told) > 0 || c.want != "" && (len(told) != 1 || !strings.Contains(told[0], c.want)) {
			t.Errorf("%v min in hand: %q, want %q", c.inHand, told, c.want)
		}
	}
}
