package onward

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"
	"ullage/geo"
	"ullage/planner"
	"ullage/planner/backup"
	"ullage/planner/fact"
	"ullage/planner/life"
	"ullage/planner/solve"
	"ullage/planner/trip"
	"ullage/planner/trip/answer"
	"ullage/planner/trip/build"
	"ullage/planner/trip/read"
	"ullage/planner/trip/triptest"
	"ullage/planner/trip/triptest/built"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"
)

// BenchmarkOnward reads seven gauges on the way and makes the rest of the
func BenchmarkOnward(b *testing.B) {
	tr := triptest.Eastwards(300)
	tr.Vehicle, tr.Party.Showers = trip.Fleet()[0], "sites"
	site := triptest.At("n2", "campsite", 150, 0, triptest.Yes("fresh"), triptest.Yes("grey"), triptest.Yes("cassette"))
	site.Stay = &trip.Stay{HookUp: trip.Yes}
	it, err := answer.Trip(b.Context(), tr, []trip.Place{site, triptest.At("n3", "fuel", 200, 0, triptest.Yes("diesel")), triptest.At("n4", "dump", 290, 0, triptest.Yes("grey"), triptest.Yes("cassette"))}, answer.Options{})
	if err != nil || len(it.Days) == 0 {
		b.Fatal(it.Why, err)
	}
	now := Now{Km: new(220.0), Time: "2026-06-13T11:00", Gauges: map[string]Shown{}}
	for _, k := range tr.Vehicle.Tanks {
		now.Gauges[k.ID] = Shown{Kind: "percent", Value: 50}
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := From(tr, it, now); err != nil {
			b.Fatal(err)
		}
	}
}

// Stations where the trip begins, at a pier where one leaves and at one where one
// lands: passed without a call, what they sell is not in the tank.
func TestPassedByFerry(t *testing.T) {
	tr := triptest.Eastwards(200)
	tr.Levels = map[string]float64{"diesel": 40}
	tr.Ferries = []trip.Ferry{{FromKm: 50, ToKm: 80.1, Min: 120}}
	var places []trip.Place
	var visits []planner.Visit
	for id, km := range map[string]float64{"a": 0, "b": 50, "c": 80.1} {
		places = append(places, triptest.At(id, "fuel", km, 0, triptest.Yes("diesel")))
	}
	for _, id := range []string{"a", "b", "c"} {
		visits = append(visits, planner.Visit{Stop: id, Serve: []planner.Serve{{Tank: "diesel", Amount: 5}}})
	}
	it := driven(t, built.Trip(t, tr, places, build.Options{}), visits...)
	at := Now{Km: new(100.0), Time: "2026-06-12T14:00"}
	all := mustOnward(t, tr, it, at).Trip.Levels["diesel"]
	for _, id := range []string{"a", "b", "c"} {
		at.Called = map[string]bool{id: false}
		if got := mustOnward(t, tr, it, at).Trip.Levels["diesel"]; math.Abs(all-5-got) > 0.01 {
			t.Errorf("%s passed: %v L, want 5 less than %v", id, got, all)
		}
		// What a gauge teaches counts from the last call, where the 5 L were missing already.
		if id != "c" {
			diesel := it.Strips[0]
			made, missed := watched{tank: tr.Vehicle.Tanks[0], strip: diesel}, watched{tank: tr.Vehicle.Tanks[0], strip: diesel}
			made.look(it, Now{here: 100, min: 840})
			missed.look(it, Now{here: 100, min: 840, Called: at.Called})
			if math.Abs(made.from.L-5-missed.from.L) > 1e-9 {
				t.Errorf("%s passed: counts from %v L, want 5 less than %v", id, missed.from.L, made.from.L)
			}
		}
	}
}

// On the road, beside and after a ferry: what is behind is not waited for again,
// what is half sailed has half its minutes left, and a reading after it knows
// that its kilometres used nothing.
func TestOnwardByFerry(t *testing.T) {
	tr := triptest.Eastwards(200)
	tr.Vehicle, tr.Day.MaxMin = trip.Fleet()[0], 900
	tr.Ferries = []trip.Ferry{{FromKm: 50, ToKm: 80, Min: 120}}
	it := driven(t, built.Trip(t, tr, nil, build.Options{}))
	half := mustOnward(t, tr, it, Now{Km: new(65.0), Time: "2026-06-12T10:50"})
	if f := half.Trip.Ferries; len(f) != 1 || f[0].FromKm != 0 || math.Abs(f[0].ToKm-15) > 1e-9 || math.Abs(f[0].Min-60) > 1e-9 {
		t.Errorf("on board %+v, want 15 km and an hour", f)
	}
	rest := driven(t, built.Trip(t, half.Trip, nil, build.Options{}))
	if end := rest.Days[0].EndMin; math.Abs(end-(650+60+120)) > 0.1 || math.Abs(rest.Days[0].Ferries[0].StartMin-650) > 0.1 {
		t.Errorf("at the end at %v, on board from %v, want 13:50 and 10:50", end, rest.Days[0].Ferries[0].StartMin)
	}
	if got, want := triptest.Lines(half.Notes), "onward.today easy=250km km=50km"; got != want {
		t.Errorf("notes %q, want the 50 km that were driven", got)
	}
	use := it.Counts[0].Per100.Likely / 100
	later := mustOnward(t, tr, it, Now{Km: new(100.0), Time: "2026-06-12T12:10", Gauges: map[string]Shown{"diesel": {Kind: "litres", Value: 75 - 70*use}}})
	if l := later.Lessons[0]; math.Abs(l.Factor-1) > 0.01 {
		t.Errorf("%+v, want a factor of 1: 70 km were driven", l)
	}
	if len(later.Trip.Ferries) != 0 {
		t.Errorf("ferries ahead %+v", later.Trip.Ferries)
	}
}

// 3,000 m up and down on 200 km, spread evenly, take the diesel that package life
// says; half of them are left from the middle on.
func TestClimbing(t *testing.T) {
	tr := triptest.Eastwards(200)
	tr.Vehicle = trip.Fleet()[2]
	flat := built.Trip(t, tr, nil, build.Options{}).Use.Road.Of("diesel").Likely
	tr.UpM, tr.DownM = 3000, 3000
	b := built.Trip(t, tr, nil, build.Options{})
	sections := life.MixedProfile(100, 60)
	for i := range sections {
		sections[i].UpM, sections[i].DownM = 1500*sections[i].Km/100, 1500*sections[i].Km/100
	}
	want, err := b.Use.Model.Drive(sections)
	if err != nil {
		t.Fatal(err)
	}
	if got := b.Use.Road.Of("diesel").Likely; math.Abs(got-want.Of("diesel").Likely) > 1e-6 || got < flat+0.2 {
		t.Errorf("%v L/100 km in the hills, want %v, flat %v", got, want.Of("diesel").Likely, flat)
	}
	o, err := From(tr, driven(t, b), Now{Km: new(100.0), Time: "2026-06-12T11:00"})
	if err != nil || math.Abs(o.Trip.UpM-1500) > 1 || math.Abs(o.Trip.DownM-1500) > 1 {
		t.Errorf("%v: %v m up and %v m down are left, want 1500 each", err, o.Trip.UpM, o.Trip.DownM)
	}
	tr.DownM = -1
	if err := tr.Validate(); err == nil {
		t.Error("a fall of −1 m is valid")
	}
}

// From km 200 of 300, at 11 o'clock of the second day: the rest is 100 km, the
// night is behind, and the new plan ends when the old one did or later.
func TestOnward(t *testing.T) {
	tr, places, it, now := afterTheNight(t)
	now.Closed = []string{"n4"}
	tr.Points, tr.Round = tr.Route[:2:2], []string{"Low Lane: height limit 2.70 m"} // of the whole route
	o := mustOnward(t, tr, it, now)
	line, err := geo.Measure(o.Trip.Route)
	if err != nil || math.Abs(line.LengthM()-100_000) > 1 {
		t.Fatalf("%v m to go, %v, want 100 km", line.LengthM(), err)
	}
	if o.Trip.Start != "2026-06-13" || o.Trip.FromMin != 660 || math.Abs(o.Trip.DoneKm-200) > 1e-9 {
		t.Errorf("begins %s at %v, %v km done", o.Trip.Start, o.Trip.FromMin, o.Trip.DoneKm)
	}
	if got, want := triptest.Lines(o.Notes), "onward.today easy=250km km=50km"; got != want { // slept at km 150
		t.Errorf("notes %q, want %q", got, want)
	}
	if n := len(o.Trip.Done); n == 0 || !o.Trip.Done[n-1].Night || o.Trip.Done[n-1].Place != "n2" || o.Trip.Done[n-1].Date != "2026-06-12" {
		t.Errorf("done %+v, want the night at n2 as the last", o.Trip.Done)
	}
	if o.Trip.Points != nil || o.Trip.Round != nil {
		t.Errorf("the rest is drawn by %v, round %q", o.Trip.Points, o.Trip.Round)
	}
	if strings.Join(o.Trip.Avoid, " ") != "n4" || tr.Avoid != nil {
		t.Errorf("avoid %v, before %v", o.Trip.Avoid, tr.Avoid)
	}
	next, err := answer.Trip(context.Background(), o.Trip, places, answer.Options{})
	if err != nil || len(next.Days) != 1 {
		t.Fatalf("%s, %d days, %v", next.Status, len(next.Days), err)
	}
	if d := next.Days[0]; d.StartMin != 660 || d.DriveMin > 110 {
		t.Errorf("the day begins at %v with %v min at the wheel, want 11:00 and a good 100", d.StartMin, d.DriveMin)
	}
	// 100 km from 11:00 are 12:40, and what is done on the way.
	if got := next.Days[0].EndMin; got < 760 || got > 830 {
		t.Errorf("at the end at %v min, want soon after 12:40", got)
	}
	if len(next.Done) != len(o.Trip.Done) {
		t.Errorf("the new itinerary has %d stops behind", len(next.Done))
	}
	// Once more on the way: history grows, distances add up.
	again := mustOnward(t, o.Trip, next, Now{Km: new(250.0), Time: "2026-06-13T11:55"})
	if math.Abs(again.Trip.DoneKm-250) > 1e-9 {
		t.Errorf("%v km done, want 250", again.Trip.DoneKm)
	}
}

// Without a reading the plan goes on with what it planned; a gauge that says
// more was used plans with less and learns; bounds hold.
func TestOnwardLearns(t *testing.T) {
	tr, _, it, now := afterTheNight(t)
	blind := mustOnward(t, tr, it, now)
	now.Gauges = map[string]Shown{"diesel": {Kind: "litres", Value: blind.Trip.Levels["diesel"] - 6}}
	o := mustOnward(t, tr, it, now)
	if len(o.Lessons) != 1 || len(o.Trip.Learned) != 1 {
		t.Fatalf("lessons %+v, learnt %+v", o.Lessons, o.Trip.Learned)
	}
	if l := o.Lessons[0]; !(l.Factor > 1 && l.Factor <= 2) || len(l.Says) != 2 || l.Says[0].Kind != levelNow || l.Says[1].Kind != life.GaugeRead || o.Trip.Levels["diesel"] >= blind.Trip.Levels["diesel"] {
		t.Errorf("lesson %+v, level %v, blind %v", l, o.Trip.Levels["diesel"], blind.Trip.Levels["diesel"])
	}
	now.Gauges = map[string]Shown{"diesel": {Kind: "percent", Value: 0}}
	if l := mustOnward(t, tr, it, now).Trip.Learned[0]; l.Factor > 2 {
		t.Errorf("factor %v beyond the bound of 2", l.Factor)
	}
	// The battery is filled by driving: its level counts, nothing is learnt.
	now.Gauges = map[string]Shown{"battery": {Kind: "percent", Value: 50}}
	if o := mustOnward(t, tr, it, now); len(o.Trip.Learned) != 0 || len(o.Lessons) != 1 || o.Lessons[0].Factor != 0 {
		t.Errorf("battery: %+v, %+v", o.Trip.Learned, o.Lessons)
	}
	// A dark lamp of the cassette: it is not above the reserve's level.
	now.Gauges = map[string]Shown{"cassette": {Kind: "lamp", Value: 0}}
	if o := mustOnward(t, tr, it, now); o.Trip.Levels["cassette"] > 17-3.4+1e-9 {
		t.Errorf("cassette at %v, the lamp of 13.6 L is dark", o.Trip.Levels["cassette"])
	}
}

// Many mornings on the road: readings of a crew that uses 1.3 times the usual
// bring the factor near 1.3.
func TestOnwardConverges(t *testing.T) {
	tr := triptest.Lived(0, "2026-06-12")
	u, err := trip.NewUsage(tr, []planner.Pace{{ToKm: 200, MinPerKm: 60 / tr.Day.SpeedKmh}}, trip.Axis{})
	if err != nil {
		t.Fatal(err)
	}
	k := tr.Vehicle.Tanks[0]
	perKm := u.Road.Of("diesel").Likely / 100
	for range 12 {
		used := 400 * perKm
		learned := 1.0
		for _, f := range tr.Learned {
			learned = f.Factor
		}
		g := watched{tank: k, trip: tr, use: u, from: trip.Level{L: 75, Low: 75, Likely: 75, High: 75},
			expected: trip.Level{Km: 400, L: 75 - used, Low: 75 - 1.2*used, Likely: 75 - learned*used, High: 75 - 0.8*used}}
		_, f, err := g.learn(Shown{Kind: "litres", Value: 75 - 1.3*used})
		if err != nil || f == nil {
			t.Fatal(err)
		}
		tr.Learned = append(tr.Learned[:0], *f)
	}
	if f := tr.Learned[0]; math.Abs(f.Factor-1.3) > 0.04 || f.Readings != 12 {
		t.Errorf("learnt %+v, want 1.3", f)
	}
}

// Out and back on one road: the pass counts that the time tells.
func TestOnwardFindsThePass(t *testing.T) {
	tr, places, _, _ := afterTheNight(t)
	tr.Route = orb.LineString{{0, 0}, {100 / triptest.KmPerDegree, 0}, {0, 0}}
	tr.Stays.MinNights, tr.KeysByMin = 0, 0
	places = append(places, triptest.At("out", "dump", 190, 0, triptest.Yes("grey"), triptest.Yes("cassette")))
	places[len(places)-1].Point = orb.Point{10 / triptest.KmPerDegree, 0}
	it, err := answer.Trip(context.Background(), tr, places, answer.Options{})
	if err != nil || len(it.Days) == 0 {
		t.Fatalf("%v, %v", it.Why, err)
	}
	spot := orb.Point{60 / triptest.KmPerDegree, 0}
	for when, want := range map[trip.Moment]float64{"2026-06-12T10:00": 60, "2026-06-12T11:25": 140} {
		o := mustOnward(t, tr, it, Now{At: &spot, Time: when})
		if math.Abs(o.Trip.DoneKm-want) > 0.1 {
			t.Errorf("%s: km %v, want %v", when, o.Trip.DoneKm, want)
		}
	}
	// Two kilometres beside the road: the way goes on from the very spot.
	spot[1] = 2 / 110.574
	if o := mustOnward(t, tr, it, Now{At: &spot, Time: "2026-06-12T10:00"}); o.Trip.Route[0] != spot {
		t.Errorf("begins at %v, want %v", o.Trip.Route[0], spot)
	}
}

// Half a kilometre beside the road is on it; farther off the way goes on from there.
func TestBesideTheRoad(t *testing.T) {
	tr, _, it, _ := afterTheNight(t)
	for off, want := range map[float64]bool{0: false, 0.45: false, 0.55: true} {
		spot := orb.Point{60 / triptest.KmPerDegree, off / 110.574}
		o := mustOnward(t, tr, it, Now{At: &spot, Time: "2026-06-12T10:00"})
		if r := o.Trip.Route; (r[0] == spot && off > 0) != want || len(r) != 2+map[bool]int{true: 1}[want] || math.Abs(r[len(r)-2][0]-spot[0]) > 1e-6 {
			t.Errorf("%v km off: the way goes on by %v", off, r)
		}
	}
}

// A night is over at midnight, wherever it was spent.
func TestNightsAreOverAtMidnight(t *testing.T) {
	tr, _, it, now := afterTheNight(t)
	tr.Stays.MinNights, tr.Stays.MaxNights = 2, 3
	for at, gone := range map[trip.Moment]int{"2026-06-12T23:59": 0, "2026-06-13T00:00": 1, "2026-06-13T23:59": 1, "2026-06-14T00:00": 2, "2026-06-16T12:00": 4} {
		now.Time = at
		if s := mustOnward(t, tr, it, now).Trip.Stays; s.MinNights != max(2-gone, 0) || s.MaxNights != max(3-gone, 1) {
			t.Errorf("%s: %d to %d nights are left of 2 to 3, want %d less", at, s.MinNights, s.MaxNights, gone)
		}
	}
}

func TestOnwardEveningAndMorning(t *testing.T) {
	tr, _, it, now := afterTheNight(t)
	now.Time = "2026-06-13T06:30" // before the usual 9 o'clock
	if o := mustOnward(t, tr, it, now); o.Trip.FromMin != 0 {
		t.Errorf("begins at %v, want the usual departure", o.Trip.FromMin)
	}
	now.Time = "2026-06-13T23:10"
	if o := mustOnward(t, tr, it, now); o.Trip.FromMin != 540+600-60 || !triptest.Has(o.Notes, evening) {
		t.Errorf("begins at %v with %q", o.Trip.FromMin, triptest.Lines(o.Notes))
	}
}

func TestOnwardErrors(t *testing.T) {
	tr, _, it, now := afterTheNight(t)
	for _, c := range []struct {
		change func(*Now)
		want   string
	}{
		{func(n *Now) { n.Time = "noon" }, "onward.want_now"},
		{func(n *Now) { n.Time = "2026-06-11T12:00" }, "onward.too_early"},
		{func(n *Now) { n.Km = new(300.0) }, "onward.past_end"},
		{func(n *Now) { n.Km = new(math.NaN()) }, "onward.past_end"},
		{func(n *Now) { n.Km = nil }, "onward.want_place"},
		{func(n *Now) { n.Km, n.At = nil, &orb.Point{0, 5} }, "onward.off_route"},
		{func(n *Now) { n.Gauges = map[string]Shown{"wine": {}} }, "onward.no_tank"},
		{func(n *Now) { n.Gauges = map[string]Shown{"fresh": {Kind: "quarters", Value: 5}} }, "Fresh water: life: the gauge shows 5"},
	} {
		n := now
		c.change(&n)
		if _, err := From(tr, it, n); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("err = %v, want %q", err, c.want)
		}
	}
	now.Gauges = map[string]Shown{"fresh": {Kind: "quarters", Value: 5}}
	_, err := From(tr, it, now)
	if got, want := triptest.Line(*fact.Why(err).Fact), "onward.gauge tank=fresh why=(gauge.range have=5 most=4)"; got != want {
		t.Errorf("says %q, want %q", got, want)
	}
	if _, err := From(tr, trip.Itinerary{}, now); err == nil || !strings.Contains(err.Error(), "onward.no_plan") {
		t.Errorf("err = %v", err)
	}
}

// The second pass of a place is the first one once the first is behind.
func TestRenumbered(t *testing.T) {
	places := []trip.Candidate{{Place: "a", Stop: "a", Km: 10}, {Place: "b", Stop: "b", Km: 20}, {Place: "a", Stop: "a@2", Km: 90}, {Place: "a", Stop: "a@3", Km: 95}}
	for _, c := range []struct{ stop, want string }{{"a@2", "a"}, {"a@3", "a@2"}, {"a@3*2", "a@2*2"}, {"a@2*4", "a*4"}} {
		if got := renumbered(trip.Call{Place: "a", Stop: c.stop}, places, 50).String(); got != c.want {
			t.Errorf("%s is %s on the rest, want %s", c.stop, got, c.want)
		}
	}
	for _, here := range []float64{5, 20.3} { // ahead, and here though a little behind
		if got := renumbered(trip.Call{Place: "b", Stop: "b*3"}, places, here).String(); got != "b*3" {
			t.Errorf("from km %v b*3 is %s", here, got)
		}
	}
}

// From wherever and whenever on the way, whatever the gauges say, the rest is a
// trip that a problem can be made of, not longer than what was left.
func TestOnwardFromAnywhere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tr := triptest.Eastwards(rapid.Float64Range(50, 400).Draw(t, "length"))
		tr.Vehicle = rapid.SampledFrom(trip.Fleet()).Draw(t, "vehicle")
		tr.Ferries = triptest.SomeFerries(t, 50)
		places := triptest.SomePlaces(t, 400)
		b, err := build.Trip(tr, places, build.Options{})
		if err != nil {
			t.Fatal(err)
		}
		plan, err := solve.Solve(context.Background(), b.Problem, solve.Options{MaxLabels: 500})
		if err != nil || plan.End == nil {
			return
		}
		it := read.Itinerary(b, plan, backup.Closures(b.Whole(), plan))
		now := Now{Km: new(rapid.Float64Range(0, it.LengthKm-0.1).Draw(t, "km")), Gauges: map[string]Shown{},
			Time: trip.Moment(fmt.Sprintf("2026-06-%02dT%02d:15", rapid.IntRange(12, 16).Draw(t, "day"), rapid.IntRange(0, 23).Draw(t, "hour")))}
		for _, k := range tr.Vehicle.Tanks {
			switch kind := rapid.SampledFrom([]string{"", "litres", "percent", "quarters", "lamp"}).Draw(t, k.ID); kind {
			case "":
			case "litres":
				now.Gauges[k.ID] = Shown{Kind: kind, Value: rapid.Float64Range(0, k.Capacity).Draw(t, "shown")}
			default:
				top := map[string]int{"percent": 100, "quarters": 4, "lamp": 1}[kind]
				now.Gauges[k.ID] = Shown{Kind: kind, Value: float64(rapid.IntRange(0, top).Draw(t, "shown"))}
			}
		}
		o, err := From(tr, it, now)
		if err != nil {
			t.Fatal(err)
		}
		rest, err := build.Trip(o.Trip, places, build.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(rest.Axis.LengthKm+*now.Km-it.LengthKm) > 0.01 {
			t.Fatalf("%v km to go after %v of %v", rest.Axis.LengthKm, *now.Km, it.LengthKm)
		}
		if len(o.Lessons) != len(now.Gauges) {
			t.Fatalf("%d lessons of %d gauges", len(o.Lessons), len(now.Gauges))
		}
	})
}

// A gauge is believed by how sure it and the plan are, and wholly where it
// contradicts the plan: who looks at an empty tank must not read that the plan
// knows better. By hand, at confidence 0.5 (no caution) for a tank of 100 L:
// the plan expects 60 L and doubts it by 5 % of the tank, a gauge in litres
// errs by 3 %, so 25 of 34 parts of a difference are believed.
func TestGaugeIsBelieved(t *testing.T) {
	tank := trip.Tank{ID: "fresh", Name: "Fresh water", Kind: planner.Supply, Unit: "L", Capacity: 100}
	g := watched{tank: tank, trip: trip.Trip{Confidence: 0.5}, expected: trip.Level{L: 60, Low: 60, Likely: 60, High: 60}}
	for _, c := range []struct{ shown, want float64 }{
		{60, 60},
		{50, 60 - 10*25.0/34}, // within three standard deviations of both together, 17.5 L
		{70, 60 + 10*25.0/34},
		{42, 42}, // beyond them
		{0, 0}, {100, 100},
	} {
		lesson, _, err := g.learn(Shown{Kind: "litres", Value: c.shown})
		if err != nil || math.Abs(lesson.Level-c.want) > 0.01 {
			t.Errorf("the gauge shows %v: planned with %v, want %v (%v)", c.shown, lesson.Level, c.want, err)
		}
	}
	// At 0.9 the plan keeps 1.2816 standard deviations of what is left of the
	// doubt: 3 L where the gauge alone counts, so 42 − 3.84 L.
	g.trip.Confidence = 0.9
	if lesson, _, err := g.learn(Shown{Kind: "litres", Value: 42}); err != nil || math.Abs(lesson.Level-38.155) > 0.01 {
		t.Errorf("at confidence 0.9 planned with %v, want 38.155 (%v)", lesson.Level, err)
	}
	g.tank.Kind = planner.Waste
	if lesson, _, err := g.learn(Shown{Kind: "litres", Value: 42}); err != nil || math.Abs(lesson.Level-45.845) > 0.01 {
		t.Errorf("a waste tank is planned with %v, want 45.845 (%v)", lesson.Level, err)
	}
}

// What the gauges say is what the rest of the trip is planned with, tank by tank.
func TestOnwardTakesTheLevels(t *testing.T) {
	tr, _, it, now := afterTheNight(t)
	blind := mustOnward(t, tr, it, now)
	for _, k := range tr.Vehicle.Tanks {
		now.Gauges = map[string]Shown{k.ID: {Kind: "percent", Value: 37}}
		o := mustOnward(t, tr, it, now)
		if len(o.Lessons) != 1 || o.Trip.Levels[k.ID] != o.Lessons[0].Level {
			t.Errorf("%s goes on with %v, the gauge says %+v", k.ID, o.Trip.Levels[k.ID], o.Lessons)
		}
		for _, other := range tr.Vehicle.Tanks {
			if got, want := o.Trip.Levels[other.ID], blind.Trip.Levels[other.ID]; (got == want) == (other.ID == k.ID) {
				t.Errorf("a gauge of %s: %s goes on with %v, without it %v", k.ID, other.ID, got, want)
			}
		}
	}
}

// A place that was to be called at is called at no more when it is behind or
// closed: the rest of the trip would have no plan.
func TestOnwardRequiresWhatIsAhead(t *testing.T) {
	tr, _, it, now := afterTheNight(t)
	tr.Require, now.Closed = []string{"n2", "n3", "n4"}, []string{"n4"} // the night at n2 is behind
	if got := mustOnward(t, tr, it, now).Trip.Require; len(got) != 1 || got[0] != "n3" {
		t.Errorf("still requires %q, want n3", got)
	}
	if len(tr.Require) != 3 {
		t.Errorf("the trip before requires %q now", tr.Require)
	}
}

// What was learnt of one tank stays when another one's gauge teaches; of the
// same tank the newer lesson takes the older one's place.
func TestOnwardKeepsWhatOthersTaught(t *testing.T) {
	tr, _, it, now := afterTheNight(t)
	tr.Learned = []life.Factor{{Tank: "fresh", Factor: 1.2, SD: 0.1, PriorSD: 0.2, Readings: 1}, {Tank: "diesel", Factor: 1.1, SD: 0.1, PriorSD: 0.2, Readings: 1}}
	now.Gauges = map[string]Shown{"diesel": {Kind: "percent", Value: 37}}
	got := mustOnward(t, tr, it, now).Trip.Learned
	if len(got) != 2 || got[0] != tr.Learned[0] || got[1].Tank != "diesel" || got[1].Readings != 2 {
		t.Errorf("learnt %+v, want fresh water as before and diesel from two readings", got)
	}
}
