package page

import (
	"slices"
	"strings"
	"testing"

	"ullage/app/model"
	"ullage/app/model/sample"
	"ullage/planner/fact"
	"ullage/planner/life"
	"ullage/planner/life/advice"
	"ullage/planner/trip"
)

// lived is the sample plan with all that is said about life on board.
func lived() model.Model {
	m := planned()
	p := sample.Plan()
	p.Checklists, p.HowTos, p.Confidence = advice.Checklists(nil), advice.HowTos(nil), 0.9
	p.Return = &trip.Return{Date: "2026-06-14", Station: []fact.Fact{fact.Of("station.closed", fact.V{"name": fact.Text("Corner pumps"), "km": fact.Km(10, 0)})},
		Steps:  []fact.Fact{fact.Of("return.call", fact.V{"clock": fact.Clock(1020), "mark": fact.Mark(470, 0), "name": fact.Text("Corner pumps"), "does": fact.List(trip.Refuel.Does(fact.Tank("diesel", ""), fact.Quantity(20, "L", 0)))})},
		Agreed: []fact.Fact{sample.Tag("Diesel 70 L")}, Warnings: []fact.Fact{fact.Of("keys.short", fact.V{"for": fact.Span(30)})}}
	p.Weight = &trip.Weight{Kg: 3394, AllowedKg: 3500, Says: sample.Tag("Too heavy with full water.")}
	p.Care = &trip.Care{Confidence: 0.9, Price: 3.2, Says: fact.Of("care.costs", fact.V{"trips": fact.Count(90), "sum": fact.Money(3.2, "EUR"), "how": {}})}
	p.Counts = []trip.Count{{Tank: "diesel", Name: "Diesel", Unit: "L", Per100: life.Band{Likely: 10.5, High: 11.4}, Factor: 1.08, Source: fact.Of("source.stated", fact.V{"text": fact.Text("the vehicle's papers")})}}
	return then(m, model.Answered{No: m.Wanted, Plan: p, Last: true})
}

func TestLifeOnBoardIsShown(t *testing.T) {
	m := then(lived(), model.Ticked{Item: "set-off/gas"})
	for _, tc := range []struct {
		units string
		want  []string
	}{
		{"", []string{"3394" + thin + "kg when you set off; the limit is 3500" + thin + "kg", "Too heavy", "Before you drive off", "Giving it back", "17:00 km" + thin + "470, Corner pumps: refuel 20" + thin + "L of diesel", "10" + thin + "km before the end", "Only 30" + thin + "min", "The safety margin adds 3.20" + thin + "EUR.", "expect 10.5" + thin + "L per 100 km, we plan for 11.4" + thin + "L", "you use 8" + thin + "% more than usual", "Diesel: you use more than usual; we now plan for 8" + thin + "% more"}},
		{"american", []string{"7482" + thin + "lb when you set off; the limit is 7716" + thin + "lb", "mile" + thin + "292, Corner pumps", "6" + thin + "mi before the end", "20.6" + thin + "mpg"}},
	} {
		m.Say.Units = tc.units
		html := drawn(t, m)
		for _, w := range tc.want {
			if !strings.Contains(html, w) {
				t.Errorf("%q: the page does not say %q", tc.units, w)
			}
		}
	}
}

// Ticks are kept by the machine, plan nothing, and one list's are cleared alone.
func TestTicks(t *testing.T) {
	if _, todo := model.Update(lived(), model.Ticked{Item: "set-off/gas"}); len(todo) != 1 || todo[0] != (model.SaveMarks{}) {
		t.Errorf("a tick has %v done, want it kept", todo)
	}
	m := lived()
	was := m
	for _, id := range []string{"set-off/gas", "arrival/plug", "set-off/step", "set-off/gas", "set-off/windows"} {
		m = then(m, model.Ticked{Item: id})
	}
	if want := []string{"arrival/plug", "set-off/step", "set-off/windows"}; !slices.Equal(m.Ticks, want) {
		t.Errorf("ticks %q, want %q", m.Ticks, want)
	}
	if m.Wanted != was.Wanted || was.Ticks != nil {
		t.Errorf("ticks want plan %d", m.Wanted)
	}
	if html := drawn(t, m); !strings.Contains(html, "2 of ") {
		t.Error("the list does not say how many are done")
	}
	if m = then(m, model.TicksCleared{List: "set-off"}); !slices.Equal(m.Ticks, []string{"arrival/plug"}) {
		t.Errorf("cleared: %q", m.Ticks)
	}
}
