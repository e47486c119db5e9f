package read

import (
	"context"
	"math"
	"testing"
	"ullage/planner"
	"ullage/planner/backup"
	"ullage/planner/life"
	"ullage/planner/solve"
	"ullage/planner/trip"
	"ullage/planner/trip/build"
	"ullage/planner/trip/triptest"
	"ullage/planner/trip/triptest/built"

	"pgregory.net/rapid"
)

// Whatever the places are, the problem is valid, every stop is a candidate
// that is not excluded, and what comes back from the planner reads as levels
// that never leave the tank.
func TestBuildAnyPlaces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tr := triptest.Eastwards(rapid.Float64Range(20, 400).Draw(t, "length"))
		tr.Vehicle = rapid.SampledFrom(trip.Fleet()).Draw(t, "vehicle")
		tr.Backup = rapid.Bool().Draw(t, "backup")
		tr.Start = rapid.SampledFrom([]trip.Date{"2026-01-20", "2026-06-12", "2027-12-31"}).Draw(t, "start")
		tr.Confidence = rapid.SampledFrom([]float64{0, 0.5, 0.75, 0.99}).Draw(t, "confidence")
		tr.Comfort.InsideC = rapid.SampledFrom([]float64{0, 15, 25}).Draw(t, "inside")
		tr.FromMin = rapid.SampledFrom([]float64{0, 0, 800}).Draw(t, "from")
		tr.Stays.MinNights = rapid.IntRange(0, 4).Draw(t, "nights")
		tr.Ferries = triptest.SomeFerries(t, 20)
		b, err := build.Trip(tr, triptest.SomePlaces(t, 400), build.Options{})
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range b.Problem.Stops {
			if c := b.Candidates[b.Calls[s.ID].Candidate]; c.Excluded != nil || math.Abs(b.Axis.Driven(c.Km)-s.Km) > trip.Metre {
				t.Fatalf("stop %s is candidate %+v", s.ID, c)
			}
		}
		// The first plan that comes to hand will do.
		plan, err := solve.Solve(context.Background(), b.Problem, solve.Options{MaxLabels: 500})
		if err != nil || plan.End == nil {
			return
		}
		it := Itinerary(b, plan, backup.Closures(b.Whole(), plan))
		for _, s := range it.Strips {
			for i, p := range s.Points {
				if i > 0 && (p.Km < s.Points[i-1].Km-1e-6 || p.Min < s.Points[i-1].Min-0.1) {
					t.Fatalf("%s: back from %+v to %+v", s.Tank, s.Points[i-1], p)
				}
				if p.L < -planner.Tolerance || p.L > s.Capacity+planner.Tolerance {
					t.Fatalf("%s: %+v is outside 0 to %v", s.Tank, p, s.Capacity)
				}
				// As planned is the worse edge of the band.
				edge := p.Low
				if s.Kind == planner.Waste {
					edge = p.High
				}
				if math.Abs(edge-p.L) > 1e-4 || p.Low > p.Likely+1e-6 || p.Likely > p.High+1e-6 {
					t.Fatalf("%s: the band of %+v", s.Tank, p)
				}
			}
		}
	})
}

func TestItinerary(t *testing.T) {
	tr, places := triptest.Island()
	b := built.Trip(t, tr, places, build.Options{})
	it := driven(t, b,
		planner.Visit{Stop: "n1", Serve: []planner.Serve{{Tank: "diesel", Amount: 3}}},
		planner.Visit{Stop: "n2", Night: true, Serve: []planner.Serve{{Tank: "fresh", Amount: 70}}},
		planner.Visit{Stop: "n3", Serve: []planner.Serve{{Tank: "grey"}, {Tank: "cassette"}}})

	if len(it.Days) != 2 || it.Days[0].Date != "2026-06-12" || it.Days[1].Date != "2026-06-13" {
		t.Fatalf("days = %+v, want two from 2026-06-12", it.Days)
	}
	one, two := it.Days[0], it.Days[1]
	// 150 km and 2 × 2 km × 1.4 off the route at km 40.
	if math.Abs(one.DriveKm-155.6) > 0.02 || math.Abs(one.DriveMin-(150+5.6/40*60)) > 0.05 || math.Abs(one.ToKm-150) > 0.01 {
		t.Errorf("day 1 = %+v, want 155.6 km and 158.4 min to km 150", one)
	}
	if two.StartMin != 1440+540 || math.Abs(two.DriveKm-150) > 0.01 {
		t.Errorf("day 2 = %+v, want 150 km from 9 o'clock", two)
	}

	fuel := one.Calls[0]
	if len(fuel.Tasks) != 1 || fuel.Tasks[0].Verb != "refuel" || math.Abs(fuel.Tasks[0].After-fuel.Tasks[0].Before-3) > 1e-9 || math.Abs(fuel.Cost-3*1.6) > 1e-9 {
		t.Errorf("fuel = %+v, want 3 L for 4.80", fuel)
	}
	if got, want := triptest.Lines(fuel.Fallback), "fallback.place km=20km name=(place.unnamed id=n4 kind=place.fuel) what=[(fallback.left left=69L tank=diesel)]"; got != want {
		t.Errorf("fallback = %q, want %q", got, want)
	}
	if got, want := triptest.Lines(fuel.Cautions), "call.likely tanks=[diesel] | call.hours | call.limit tag=maxheight=below_default | howto.diesel.care gas=gas"; got != want {
		t.Errorf("cautions = %q, want %q", got, want)
	}

	if got, want := triptest.Lines(fuel.Facts), "data.likely tank=diesel | data.price rate=1.60EUR/L tank=diesel why=(price.none)"; got != want {
		t.Errorf("fuel rests on %q, want %q", got, want)
	}
	night := one.Calls[1]
	if got, want := triptest.Lines(night.Facts), "data.tank tag=drinking_water=yes tank=fresh | data.night tag=tourism=camp_site | data.night_typical sum=30.00EUR why=(price.none) | data.has list=[site.hookup] | data.nothing list=[site.showers, site.toilets]"; got != want {
		t.Errorf("the night rests on %q, want %q", got, want)
	}
	has := map[string]bool{}
	for _, h := range it.HowTos {
		has[h.ID] = true
	}
	if !has["diesel"] || !has["fresh"] || !has["night"] || !has["battery"] || has["lpg"] || has["ferry"] {
		t.Errorf("how-tos %v", has)
	}
	// The battery: 40 Ah, 155.6 km × 0.25 Ah charge it to its 47.5 Ah on the way; so the hook-up adds nothing.
	if len(night.Tasks) != 1 || night.Tasks[0].Verb != "fill" || night.Nights != 1 || math.Abs(night.Cost-30) > 1e-9 {
		t.Errorf("night = %+v, want fresh water filled and the night for 30", night)
	}
	// 70 L used, 70 L filled.
	if night.Leave["fresh"] != 90 {
		t.Errorf("fresh water on leaving = %v, want 90", night.Leave["fresh"])
	}
	last := two.Calls[0]
	if len(last.Tasks) != 2 || last.Tasks[0].Verb != "drain" || last.Tasks[1].Verb != "empty" || last.Tasks[1].Amount != 5 || last.Tasks[1].After != 0 {
		t.Errorf("disposal = %+v, want grey drained and 5 L of cassette emptied", last.Tasks)
	}
	if got, want := triptest.Line(last.Cautions[0]), "call.no_way_on why=(closed.end tank=grey)"; got != want {
		t.Errorf("cautions = %q, want the last disposal point named as the last", triptest.Lines(last.Cautions))
	}
	if !it.Estimated || len(it.Places) != 4 || !it.Places[0].Chosen || it.Places[1].Chosen {
		t.Errorf("places = %+v", it.Places)
	}
}

// A strip starts and ends with the trip, jumps at calls, and bends where
// driving has charged the battery to the brim: 7.5 Ah at 0.25 Ah/km are 30 km.
func TestStrips(t *testing.T) {
	tr, places := triptest.Island()
	b := built.Trip(t, tr, places, build.Options{})
	it := driven(t, b, planner.Visit{Stop: "n2", Night: true},
		planner.Visit{Stop: "n3", Serve: []planner.Serve{{Tank: "grey"}, {Tank: "cassette"}}})
	for _, s := range it.Strips {
		var kms []float64
		for i, p := range s.Points {
			kms = append(kms, math.Round(p.Km))
			if p.L < -1e-9 || p.L > s.Capacity+1e-9 {
				t.Errorf("%s: point %d = %+v outside the tank", s.Tank, i, p)
			}
			if i > 0 && (p.Km < s.Points[i-1].Km || p.Min < s.Points[i-1].Min) {
				t.Errorf("%s: point %d goes back", s.Tank, i)
			}
		}
		want := []float64{0, 150, 150, 290, 290, 300}
		if s.Tank == "battery" {
			want = []float64{0, 30, 150, 150, 290, 290, 300}
		}
		if len(kms) != len(want) {
			t.Errorf("%s: points at km %v, want %v", s.Tank, kms, want)
			continue
		}
		for i := range kms {
			if kms[i] != want[i] {
				t.Errorf("%s: points at km %v, want %v", s.Tank, kms, want)
				break
			}
		}
	}
}

// A stay of three nights gives two days without driving.
func TestItineraryRestDays(t *testing.T) {
	tr, places := triptest.Island()
	tr.Stays.MinNights = 3
	for i := range tr.Vehicle.Tanks {
		tr.Vehicle.Tanks[i].Use.PerPersonNight, tr.Vehicle.Tanks[i].End = 0, nil
	}
	it := driven(t, built.Trip(t, tr, places, build.Options{}), planner.Visit{Stop: "n2*3", Night: true})
	var kms []float64
	for i, d := range it.Days {
		kms = append(kms, math.Round(d.DriveKm))
		if d.Number != i+1 || d.StartMin != float64(i)*1440+540 {
			t.Errorf("day %d = %+v", i+1, d)
		}
	}
	if len(kms) != 4 || kms[0] != 150 || kms[1] != 0 || kms[2] != 0 || kms[3] != 150 {
		t.Errorf("km by day = %v, want 150 0 0 150", kms)
	}
}

func TestItineraryRefused(t *testing.T) {
	tr, places := triptest.Island()
	b := built.Trip(t, tr, places, build.Options{})
	it := Itinerary(b, planner.Plan{Status: planner.Infeasible, Why: []planner.Reason{
		{Kind: planner.ReasonTank, Limit: "fresh", FromKm: 0, ToKm: 150, Missing: 12.34},
		{Kind: planner.ReasonTank, Limit: "cassette", FromKm: 0, ToKm: 290, Missing: 2},
		{Kind: planner.ReasonDayKm, Limit: "km", FromKm: 150, ToKm: 290, Missing: 20},
	}}, nil)
	if len(it.Days) != 0 {
		t.Fatalf("Itinerary = %+v", it)
	}
	if len(it.Why) != 3 {
		t.Fatalf("why = %+v, want three", it.Why)
	}
	for i, want := range []string{
		"reason.day_km from=km150 limit=250km missing=20km to=km290", // what is wished for stands before what a tank holds
		"reason.tank from=km0 missing=12.3L supply=supply tank=fresh to=km150",
		"reason.tank from=km0 missing=2.0L tank=cassette to=km290",
	} {
		if got := triptest.Line(it.Why[i].Says); got != want {
			t.Errorf("why[%d] = %q, want %q", i, got, want)
		}
	}
}

// By hand: a tank of 100 L, 40 L in it, loses 10 to 20 L and then takes in 70 L: what
// is left over is where less was used. A waste tank of the same fills from the other
// end, and is empty once it was emptied.
func TestBand(t *testing.T) {
	use := life.Band{Low: 10, Likely: 15, High: 20}
	supply := newCourse(planner.Tank{ID: "fresh", Kind: planner.Supply, Capacity: 100, Start: 40})
	waste := newCourse(planner.Tank{ID: "grey", Kind: planner.Waste, Capacity: 100, Start: 40})
	for _, c := range []struct {
		name          string
		visit         planner.Visit
		supply, waste trip.Level
	}{
		{"used", planner.Visit{}, trip.Level{Low: 20, Likely: 25, High: 30}, trip.Level{Low: 50, Likely: 55, High: 60}},
		{"served", planner.Visit{Serve: []planner.Serve{{Tank: "fresh", Amount: 90}, {Tank: "grey"}}}, trip.Level{Low: 90, Likely: 100, High: 100}, trip.Level{}},
		{"used again", planner.Visit{}, trip.Level{Low: 70, Likely: 85, High: 90}, trip.Level{Low: 10, Likely: 15, High: 20}},
	} {
		supply.take(use, 0)
		waste.take(use, 0)
		for _, y := range c.visit.Serve {
			map[string]*course{"fresh": &supply, "grey": &waste}[y.Tank].serve(y.Amount)
		}
		if got := supply.fill(trip.Level{}); got != c.supply {
			t.Errorf("%s: fresh water at %+v, want %+v", c.name, got, c.supply)
		}
		if got := waste.fill(trip.Level{}); got != c.waste {
			t.Errorf("%s: grey water at %+v, want %+v", c.name, got, c.waste)
		}
	}
}

// Driving fills a tank to its brim before the leg ends, or it does not: by hand, 0.5 a
// km on 100 km.
func TestBrim(t *testing.T) {
	supply := planner.Tank{Kind: planner.Supply, Capacity: 100, PerKm: -0.5}
	waste := planner.Tank{Kind: planner.Waste, Capacity: 100, PerKm: -0.5}
	used := planner.Tank{Kind: planner.Supply, Capacity: 100, PerKm: 0.5}
	for _, c := range []struct {
		tank  planner.Tank
		level float64
		km    float64 // 0: not before the end
	}{{supply, 80, 40}, {supply, 49, 0}, {supply, 50, 0}, {supply, 51, 98}, {supply, 100, 0}, {waste, 20, 40}, {waste, 51, 0}, {waste, 0, 0}, {used, 80, 0}, {used, 100, 0}} {
		at, ok := brim(c.tank, trip.Level{Km: 200, Min: 600, L: c.level}, trip.Level{Km: 300, Min: 800, Day: 2}, 100)
		full := c.tank.Swap(c.tank.Capacity)
		if want := (trip.Level{Km: 200 + c.km, Min: 600 + 2*c.km, Day: 2, L: full}); ok != (c.km > 0) || ok && at != want {
			t.Errorf("%s at %v: %+v, %v, want %+v", c.tank.Kind, c.level, at, ok, want)
		}
	}
}

// A price is said however small the sum; a stated charge stands for the typical one.
func TestWhatPricesRestOn(t *testing.T) {
	tr, places := triptest.Island()
	tr.Vehicle = triptest.Careless(tr.Vehicle)
	places[1].Stay.Charge = "20 EUR"
	it := driven(t, built.Trip(t, tr, places, build.Options{}),
		planner.Visit{Stop: "n1", Serve: []planner.Serve{{Tank: "diesel", Amount: 0.5}}}, planner.Visit{Stop: "n2", Night: true})
	if got := it.Days[0].Calls[0].Facts; !triptest.Has(got, dataPrice) {
		t.Errorf("half a litre of diesel: %q", triptest.Lines(got))
	}
	if got, want := triptest.Lines(triptest.Of(it.Days[0].Calls[1].Facts, dataNight)), "data.night tag=tourism=camp_site | data.night tag=charge=20 EUR"; got != want {
		t.Errorf("the night rests on %q, want %q", got, want)
	}
}

// Where roads lead to all calls nothing is estimated; without calls the next one would be.
func TestEstimated(t *testing.T) {
	tr := triptest.Eastwards(200)
	place := triptest.At("a", "fuel", 50, 1, triptest.Yes("diesel"))
	b := built.Trip(t, tr, []trip.Place{place}, build.Options{Roads: triptest.Signposts{By: map[string][]trip.Way{"a": {{LeaveKm: 50, RejoinKm: 50, ThereKm: 1, Km: 2, Min: 3}}}}})
	call := planner.Visit{Stop: "a", Serve: []planner.Serve{{Tank: "diesel", Amount: 1}}}
	if it := driven(t, b, call); it.Estimated || !it.Days[0].Calls[0].ByRoad {
		t.Errorf("by road: estimated %v", it.Estimated)
	}
	if it := driven(t, b); !it.Estimated {
		t.Error("no call, and nothing is estimated")
	}
	if it := driven(t, built.Trip(t, tr, []trip.Place{place}, build.Options{}), call); !it.Estimated {
		t.Error("without roads nothing is estimated")
	}
}

// Why nothing leads on from a closed place is said by the rule that breaks.
func TestNoWayOn(t *testing.T) {
	b := reader{built.Trip(t, triptest.Eastwards(100), nil, build.Options{})}
	for rule, want := range map[planner.Rule]string{
		planner.RuleReserve: "(closed.tank tank=diesel)", planner.RuleEnd: "(closed.end tank=diesel)",
		planner.RuleDayKm: "(closed.night)", planner.RuleDayMin: "(closed.night)", planner.RuleService: "(closed.rest)",
	} {
		if got := triptest.Line(b.noWayOn(&backup.Closure{Err: &planner.Broken{Rule: rule, Tank: "diesel"}})); got != "call.no_way_on why="+want {
			t.Errorf("%s: %q, want %q", rule, got, want)
		}
	}
}
