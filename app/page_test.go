package page

import (
	"regexp"
	"strings"
	"testing"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/model"
	"ullage/app/model/sample"
	"ullage/app/say"
	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// drawn is the page of a model as HTML.
func drawn(t *testing.T, m model.Model) string {
	t.Helper()
	e := app.NewTestEngine()
	p := &Page{core: core{m: m}}
	if err := e.Load(p); err != nil {
		t.Fatal(err)
	}
	e.ConsumeAll()
	return app.HTMLString(p)
}

func TestThePageOfAModel(t *testing.T) {
	refused := planned()
	plan := sample.Plan()
	plan.Status, plan.Days = planner.Infeasible, nil
	plan.Why = []trip.Reason{{Reason: planner.Reason{Limit: "diesel", FromKm: 120, ToKm: 430, Missing: 14}, Says: sample.Tag("The tank is too small for the gap."), Cures: []fact.Fact{sample.Tag("widen the corridor")}}}
	plan.Nearest = &trip.Nearest{Broken: []fact.Fact{sample.Tag("Diesel runs out after km 300.")}, Days: []fact.Fact{sample.Tag("Day 1: Nearby pumps")}}
	refused = then(refused, model.Answered{No: refused.Wanted, Plan: plan, Last: true})
	more := planned()
	rich := sample.Plan()
	rich.Safety = &trip.Safety{Price: 3.2, Says: sample.Tag("Staying safe costs 3.20 EUR more.")}
	rich.Others = []trip.Other{{Extra: 4.5, Says: []fact.Fact{sample.Tag("night at Reed isle instead of Dune field")}, Days: []fact.Fact{sample.Tag("Day 1: Reed isle (night)")}, Avoid: "n9"}, {Extra: -0.004, Says: []fact.Fact{sample.Tag("4 stops instead of 5")}}}
	more = then(more, model.Answered{No: more.Wanted, Plan: rich, Last: true})
	gap := planned()
	gap.Plan.Status, gap.Plan.Bound = planner.Feasible, 119
	wrong := then(then(planned(), model.FormToggled{}), model.Edited{Field: "adults", Text: "0"})
	osm := then(planned(), model.PlacesRead{File: model.File{Name: "b.osm.pbf", Kind: "places", OSM: true}})
	island := then(planned(), model.PlacesRead{File: model.File{Name: "demo", Kind: "places", OSM: true, Sample: true}})
	for _, tc := range []struct {
		name string
		m    model.Model
		want []string
		not  []string
	}{
		{"nothing yet", model.New(nil), []string{`data-state="loading"`, `id="file"`, `id="map"`, `id="itinerary"`}, []string{`id="strips"`}},
		{"planned", planned(), []string{`data-state="planned"`, `id="strips"`, "Corner pumps", "Refuel 20", "49 → 69", "(estimate)", "amenity=fuel", "Harbour pumps", "50" + thin + "L left", `role="slider"`}, []string{attributionText}},
		{"not proven", gap, []string{"2.50" + thin + "EUR", "Plan afresh"}, nil},
		{"refused", refused, []string{`data-state="refused"`, "Diesel: 14" + thin + "L short", "km" + thin + "120 to 430", "widen the corridor", "This is not a valid plan", "Diesel runs out after km 300.", "Nearby pumps", said("days.none")}, []string{`id="strips"`, "Save the stops", said("limits.estimated")}},
		{"other plans", more, []string{`data-state="planned"`, "Staying safe costs 3.20 EUR more.", "4.50" + thin + "EUR more", "Reed isle (night)", "Plan without Unused", "same cost"}, []string{"Plan afresh"}},
		{"no other plans", planned(), nil, []string{`id="others"`}},
		{"wrong text", wrong, []string{"A whole number from 1 to 20.", `class="field whole wrong"`, `value="0"`}, nil},
		{"data of OpenStreetMap", osm, []string{attributionText}, nil},
		{"the invented island", island, nil, []string{attributionText}},
	} {
		t.Run(tc.name, func(t *testing.T) {
			m := tc.m
			if tc.name == "planned" {
				m = then(m, model.PointedMin{Min: 620})
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
	html := drawn(t, then(then(lived(), model.FormToggled{}), model.ReportToggled{}))
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

// then is the model after messages.
func then(m model.Model, msgs ...model.Msg) model.Model {
	for _, msg := range msgs {
		m, _ = model.Update(m, msg)
	}
	return m
}

// after runs messages from the beginning.
func after(msgs ...model.Msg) model.Model { return then(model.New(trip.Fleet()), msgs...) }

// planned is a page with the sample trip and its plan.
func planned() model.Model {
	m := after(model.PlacesRead{File: model.File{Name: "a.osm.pbf", Kind: "places"}}, model.TripRead{Trip: sample.Trip()})
	return then(m, model.Answered{No: m.Wanted, Plan: sample.Plan(), Last: true})
}

// thin is the narrow space of the page.
const thin = "\u202f"

// said is a text of the page.
func said(key string) string { return app.HTMLString(app.Text(say.Voice{Thin: true}.Text(key))) }
