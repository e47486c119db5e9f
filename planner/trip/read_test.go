package trip

import (
	"math"
	"strings"
	"testing"

	"ullage/planner"
	"ullage/planner/replay"
)

// driven replays visits of a built trip and reads them back.
func driven(t *testing.T, b *Built, visits ...planner.Visit) Itinerary {
	t.Helper()
	visits, err := replay.WasteAmounts(b.Problem, visits)
	if err != nil {
		t.Fatal(err)
	}
	plan, err := replay.Plan(b.Problem, visits)
	if err != nil {
		t.Fatal(err)
	}
	it, err := b.Itinerary(plan)
	if err != nil {
		t.Fatal(err)
	}
	return it
}

// island is 300 km with a station, a site on hook-up and a disposal point.
func island() (Trip, []Place) {
	tr := eastwards(300)
	tr.Levels = map[string]float64{"battery": 40}
	fuel := at("n1", "fuel", 40, 2, likely("diesel"))
	fuel.Limits.Unclear = "maxheight=below_default"
	site := at("n2", "campsite", 150, 0, Offer{Tank: "fresh", Answer: Yes, Guests: true, Tag: "drinking_water=yes"})
	site.Stay = &Stay{HookUp: Yes, Tag: "tourism=camp_site"}
	dump := at("n3", "dump", 290, 0, yes("grey"), yes("cassette"))
	other := at("n4", "fuel", 60, 0, yes("diesel"))
	other.Name = ""
	return tr, []Place{fuel, site, dump, other}
}

func TestItinerary(t *testing.T) {
	tr, places := island()
	b := mustBuild(t, tr, places, Options{})
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
	if want := "Fuel station n4, 20 km on: Diesel (69 L left)"; fuel.Fallback != want {
		t.Errorf("fallback = %q, want %q", fuel.Fallback, want)
	}
	for _, want := range []string{"Likely here, but not tagged: Diesel", "hours are not known", "maxheight=below_default", "gas off"} {
		if !strings.Contains(strings.Join(fuel.Cautions, "\n"), want) {
			t.Errorf("cautions = %q, want %q among them", fuel.Cautions, want)
		}
	}

	night := one.Calls[1]
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
	if !strings.Contains(last.Cautions[0], "no way on was found: Grey water is not as agreed at the end") {
		t.Errorf("cautions = %q, want the last disposal point named as the last", last.Cautions)
	}
	if !it.Estimated || len(it.Places) != 4 || !it.Places[0].Chosen || it.Places[1].Chosen {
		t.Errorf("places = %+v", it.Places)
	}
}

// A strip starts and ends with the trip, jumps at calls, and bends where
// driving has charged the battery to the brim: 7.5 Ah at 0.25 Ah/km are 30 km.
func TestStrips(t *testing.T) {
	tr, places := island()
	b := mustBuild(t, tr, places, Options{})
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
	tr, places := island()
	tr.Stays.MinNights = 3
	for i := range tr.Vehicle.Tanks {
		tr.Vehicle.Tanks[i].Use.PerPersonNight, tr.Vehicle.Tanks[i].End = 0, nil
	}
	it := driven(t, mustBuild(t, tr, places, Options{}), planner.Visit{Stop: "n2*3", Night: true})
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
	tr, places := island()
	b := mustBuild(t, tr, places, Options{})
	it, err := b.Itinerary(planner.Plan{Status: planner.Infeasible, Why: []planner.Reason{
		{Limit: "fresh", FromKm: 0, ToKm: 150, Missing: 12.34},
		{Limit: "cassette", FromKm: 0, ToKm: 290, Missing: 2},
		{Limit: "km", FromKm: 150, ToKm: 290, Missing: 20},
	}})
	if err != nil || len(it.Days) != 0 {
		t.Fatalf("Itinerary = %+v, %v", it, err)
	}
	for i, want := range []string{
		"Fresh water runs out between km 0 and km 150: 12.3 L more are needed",
		"Toilet cassette is full between km 0 and km 290: it would have to take 2.0 L more",
		"No place for the night is near enough between km 150 and km 290: a day of 250 km is 20 km too short",
	} {
		if !strings.HasPrefix(it.Why[i].Text, want) {
			t.Errorf("why[%d] = %q, want %q", i, it.Why[i].Text, want)
		}
	}
}

func TestItineraryOfAnotherTrip(t *testing.T) {
	tr, places := island()
	b := mustBuild(t, tr, places, Options{})
	_, err := b.Itinerary(planner.Plan{Status: planner.Feasible, Visits: []planner.Visit{{Stop: "n9"}}, End: &planner.PlanEnd{}})
	if err == nil || !strings.Contains(err.Error(), `"n9"`) {
		t.Errorf("err = %v, want the unknown stop named", err)
	}
}

// What alone stands in the way is named with the tank, where and by how much.
func TestObstacles(t *testing.T) {
	site := at("site", "campsite", 100, 0)
	site.Stay = &Stay{}
	fuel := at("fuel", "fuel", 150, 0, yes("diesel"))
	for _, c := range []struct {
		name   string
		change func(*Trip)
		want   planner.Reason
	}{
		// 12 L of reserve and 150 km × 0.09 L are 25.5 L; 20 L are there.
		{"diesel", func(tr *Trip) { tr.Levels = map[string]float64{"diesel": 20} }, planner.Reason{Limit: "diesel", ToKm: 150, Missing: 5.5}},
		// Two people, one night, 5 L; nobody empties it and it must be empty.
		{"cassette", func(tr *Trip) { tr.Stays.MinNights = 1 }, planner.Reason{Limit: "cassette", ToKm: 200, Missing: 5}},
		{"day", func(tr *Trip) { tr.Day.MaxKm = 90 }, planner.Reason{Limit: "km", ToKm: 100, Missing: 10}},
		{"hours", func(tr *Trip) { tr.Day.MaxMin = 80 }, planner.Reason{Limit: "min", ToKm: 100, Missing: 20}},
		{"nights", func(tr *Trip) { tr.Stays.MinNights, tr.Stays.Campsites = 2, false }, planner.Reason{Limit: "nights", ToKm: 200, Missing: 2}},
	} {
		t.Run(c.name, func(t *testing.T) {
			tr := eastwards(200)
			c.change(&tr)
			it, err := Plan(t.Context(), tr, []Place{site, fuel}, Options{})
			if err != nil {
				t.Fatal(err)
			}
			for _, r := range it.Why {
				if r.Limit == c.want.Limit && math.Abs(r.FromKm-c.want.FromKm) < 0.01 && math.Abs(r.ToKm-c.want.ToKm) < 0.01 && math.Abs(r.Missing-c.want.Missing) < 0.01 {
					return
				}
			}
			t.Errorf("why = %+v, want %+v among them", it.Why, c.want)
		})
	}
}

// Each place alone would do, but not both limits together: the night is
// beyond what the water lasts. The refusal names the water.
func TestRefusalNamesTheTank(t *testing.T) {
	tr := eastwards(200)
	tr.Stays.MinNights, tr.Stays.MaxNights = 2, 2
	one, two := at("one", "campsite", 50, 0), at("two", "campsite", 100, 0)
	one.Stay, two.Stay = &Stay{Fee: No}, &Stay{Fee: No}
	water, dump := at("water", "water", 150, 0, yes("fresh")), at("dump", "dump", 150, 0, yes("grey"), yes("cassette"))
	for i := range tr.Vehicle.Tanks {
		if tr.Vehicle.Tanks[i].ID == "battery" {
			tr.Vehicle.Tanks = append(append([]Tank{}, tr.Vehicle.Tanks[:i]...), tr.Vehicle.Tanks[i+1:]...)
			break
		}
	}
	for i := range tr.Vehicle.Tanks {
		if tr.Vehicle.Tanks[i].ID == "grey" {
			tr.Vehicle.Tanks[i].Capacity = 200
		}
	}
	it, err := Plan(t.Context(), tr, []Place{one, two, water, dump}, Options{})
	if err != nil {
		t.Fatal(err)
	}
	// 90 L, two nights of 70 L and 10 L of reserve: 60 L are missing.
	for _, r := range it.Why {
		if it.Status == planner.Infeasible && r.Limit == "fresh" && math.Abs(r.Missing-60) < 0.2 && strings.HasPrefix(r.Text, "Fresh water runs out") {
			return
		}
	}
	t.Errorf("status %s, why = %+v, want fresh water short by 60 L", it.Status, it.Why)
}
