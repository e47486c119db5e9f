package page

import (
	"regexp"
	"strings"
	"testing"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/say"
	"ullage/planner"
	"ullage/planner/trip"
)

// drawn is the page of a model as HTML.
func drawn(t *testing.T, m Model) string {
	t.Helper()
	e := app.NewTestEngine()
	p := &Page{m: m}
	if err := e.Load(p); err != nil {
		t.Fatal(err)
	}
	e.ConsumeAll()
	return app.HTMLString(p)
}

func TestThePageOfAModel(t *testing.T) {
	refused := planned()
	plan := samplePlan()
	plan.Status, plan.Days = planner.Infeasible, nil
	plan.Why = []trip.Reason{{Reason: planner.Reason{Limit: "diesel", FromKm: 120, ToKm: 430, Missing: 14}, Text: "The tank is too small for the gap.", Cures: []string{"widen the corridor"}}}
	plan.Nearest = &trip.Nearest{Broken: []string{"Diesel runs out after km 300."}, Days: []string{"Day 1: Nearby pumps"}}
	refused = Update(refused, Answered{No: refused.Wanted, Plan: plan, Last: true})
	more := planned()
	rich := samplePlan()
	rich.Safety = &trip.Safety{Price: 3.2, Text: "Staying safe costs 3.20 EUR more."}
	rich.Others = []trip.Other{{Extra: 4.5, Text: "night at Reed isle instead of Dune field", Days: []string{"Day 1: Reed isle (night)"}, Avoid: "n9"}, {Extra: -0.004, Text: "4 stops instead of 5"}}
	more = Update(more, Answered{No: more.Wanted, Plan: rich, Last: true})
	gap := planned()
	gap.Plan.Status, gap.Plan.Bound = planner.Feasible, 119
	wrong := Update(Update(planned(), FormToggled{}), Edited{"adults", "0"})
	osm := Update(planned(), PlacesRead{File: File{Name: "b.osm.pbf", Kind: "places", OSM: true}})
	island := Update(planned(), PlacesRead{File: File{Name: "demo", Kind: "places", OSM: true, Sample: true}})
	for _, tc := range []struct {
		name string
		m    Model
		want []string
		not  []string
	}{
		{"nothing yet", New(nil), []string{`data-state="loading"`, `id="file"`, `id="map"`, `id="itinerary"`}, []string{`id="strips"`}},
		{"planned", planned(), []string{`data-state="planned"`, `id="strips"`, "Corner pumps", "Refuel 20", "49 → 69", "(estimate)", "amenity=fuel", "Harbour pumps", "50" + thin + "L left", `role="slider"`}, []string{attributionText}},
		{"not proven", gap, []string{"2.50" + thin + "EUR", "Plan afresh"}, nil},
		{"refused", refused, []string{`data-state="refused"`, "Diesel: 14" + thin + "L short", "km" + thin + "120 to 430", "widen the corridor", "This is not a valid plan", "Diesel runs out after km 300.", "Nearby pumps", word.noDays}, []string{`id="strips"`, "Save the stops", word.limits1}},
		{"other plans", more, []string{`data-state="planned"`, "Staying safe costs 3.20 EUR more.", "4.50" + thin + "EUR more", "Reed isle (night)", "Plan without Unused", "same cost"}, []string{"Plan afresh"}},
		{"no other plans", planned(), nil, []string{`id="others"`}},
		{"wrong text", wrong, []string{"A whole number from 1 to 20.", `class="field whole wrong"`, `value="0"`}, nil},
		{"data of OpenStreetMap", osm, []string{attributionText}, nil},
		{"the invented island", island, nil, []string{attributionText}},
	} {
		t.Run(tc.name, func(t *testing.T) {
			m := tc.m
			if tc.name == "planned" {
				m = Update(m, PointedMin{620})
			}
			got := drawn(t, m)
			for _, w := range tc.want {
				if !strings.Contains(got, w) {
					t.Errorf("the page does not say %q", w)
				}
			}
			for _, w := range tc.not {
				if strings.Contains(got, w) {
					t.Errorf("the page says %q", w)
				}
			}
			if strings.Contains(got, " style=") || strings.Contains(got, "<script") {
				t.Error("the page has an inline style or script, which its policy forbids")
			}
		})
	}
}

const attributionText = "© OpenStreetMap contributors, ODbL"

// Every id is there once, and every label and reference has its target.
func TestIDs(t *testing.T) {
	html := drawn(t, Update(Update(lived(), FormToggled{}), ReportToggled{}))
	ids := map[string]int{}
	for _, m := range regexp.MustCompile(` id="([^"]*)"`).FindAllStringSubmatch(html, -1) {
		ids[m[1]]++
	}
	for id, n := range ids {
		if n > 1 {
			t.Errorf("id %q is there %d times", id, n)
		}
	}
	for _, m := range regexp.MustCompile(` (?:for|aria-labelledby|aria-describedby|aria-controls)="([^"]*)"`).FindAllStringSubmatch(html, -1) {
		for _, id := range strings.Fields(m[1]) {
			if ids[id] == 0 {
				t.Errorf("%s points at nothing", m[0])
			}
		}
	}
}

// More than a tankful can be filled over a night: the levels alone would lie.
func TestWhatAStayUses(t *testing.T) {
	night := trip.Call{Night: true}
	fresh := trip.Strip{Tank: "fresh", Unit: "L", Capacity: 100}
	for _, c := range []struct {
		call trip.Call
		task trip.Task
		want string
	}{
		{night, trip.Task{Amount: 130, Unit: "L", Before: 35, After: 100}, "65" + thin + "L of it for the stay"},
		{night, trip.Task{Amount: 102, Unit: "L", Before: 51, After: 0}, "51" + thin + "L of it for the stay"},
		{night, trip.Task{Amount: 66, Unit: "L", Before: 35, After: 100}, ""},
		{trip.Call{}, trip.Task{Amount: 65, Unit: "L", Before: 35, After: 100}, ""},
	} {
		if got := (&CallRow{Say: say.Voice{Thin: true}, Call: c.call}).stayed(fresh, c.task); got != c.want {
			t.Errorf("%+v: %q, want %q", c.task, got, c.want)
		}
	}
}
