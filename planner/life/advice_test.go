package life

import (
	"strings"
	"testing"
)

func words(h HowTo) string {
	var b strings.Builder
	for _, i := range append(append([]Item(nil), h.Steps...), h.Cautions...) {
		b.WriteString(i.ID + ": " + i.Text + "\n")
	}
	return b.String()
}

// What has to be said, by whom it concerns.
func TestHowTosSay(t *testing.T) {
	for _, c := range []struct{ id, word string }{
		{"diesel", "gas off at the cylinder"}, {"ferry", "Gas off at the cylinder"}, {"fresh", "hose that is kept for drinking water"},
		{"cassette", "Close the slide in the toilet before"}, {"cassette", "vent button while you pour"}, {"cassette", "only where the place allows"},
		{"battery", "first into the vehicle, then into the pillar"}, {"battery", "Unwind the cable fully"}, {"night", "Carbon monoxide"},
		{"hot-water", "legionella"}, {"hot-water", "40 °C"}, {"frost", "3 °C"}, {"awning", "wind"}, {"driving", "height on the vehicle's plate"},
		{"driving", "15 minutes"}, {"lpg", "80 %"}, {"def", "never into the diesel"}, {"grey", "road gully"},
	} {
		h, ok := HowToFor(c.id, nil)
		if !ok || !strings.Contains(words(h), c.word) {
			t.Errorf("%s does not say %q", c.id, c.word)
		}
	}
	for _, c := range []struct{ list, id string }{
		{"set-off", "windows"}, {"set-off", "step"}, {"set-off", "gas"}, {"set-off", "height"}, {"arrival", "alarm"}, {"service", "chemicals"},
		{"return", "cassette"}, {"return", "grey"}, {"return", "diesel"}, {"return", "def"}, {"return", "gas"}, {"return", "time"},
	} {
		l, ok := ChecklistFor(c.list, nil)
		found := false
		for _, i := range l.Items {
			found = found || i.ID == c.id
		}
		if !ok || !found {
			t.Errorf("checklist %s has no %s", c.list, c.id)
		}
	}
}

// Every how-to defers to somebody, ids are unique, conditions are known.
func TestAdviceIsWhole(t *testing.T) {
	known := map[string]bool{HasGas: true, HasAbsorption: true, HasDEF: true, HasCassette: true, HasGrey: true, HasFresh: true, HasHookUp: true,
		HasLithium: true, HasAwning: true, HasBoiler: true, IsFrost: true, IsFerry: true, IsHeavy: true}
	seen := map[string]bool{}
	check := func(owner string, items []Item) {
		if len(items) == 0 {
			t.Errorf("%s is empty", owner)
		}
		for _, i := range items {
			id := owner + "/" + i.ID
			if seen[id] || i.ID == "" || i.Text == "" {
				t.Errorf("%s is there twice or empty", id)
			}
			seen[id] = true
			for _, c := range i.If {
				if !known[c] {
					t.Errorf("%s asks for %q", id, c)
				}
			}
		}
	}
	for _, h := range HowTos() {
		check(h.ID, append(append([]Item(nil), h.Steps...), h.Cautions...))
		d := strings.ToLower(h.Defer)
		if !strings.Contains(d, "decide") || !(strings.Contains(d, "handbook") || strings.Contains(d, "rules") || strings.Contains(d, "law")) {
			t.Errorf("%s defers to nobody: %q", h.ID, h.Defer)
		}
	}
	for _, tank := range []string{"diesel", "def", "lpg", "fresh", "grey", "cassette", "battery"} {
		if _, ok := HowToFor(tank, nil); !ok {
			t.Errorf("nothing is said about %s", tank)
		}
	}
	for _, l := range Checklists() {
		check("list "+l.ID, l.Items)
	}
}

func TestConditions(t *testing.T) {
	m := couple()
	summer, frost := m.Conditions(Air{MinC: 12}), m.Conditions(Air{MinC: -5}, HasHookUp)
	warm, _ := HowToFor("lpg", summer)
	cold, _ := HowToFor("lpg", frost)
	if strings.Contains(words(warm), "winter-gas") || !strings.Contains(words(cold), "winter-gas") {
		t.Error("frost is not told apart")
	}
	m.Vehicle.HasLPG = false
	none, _ := ChecklistFor("set-off", m.Conditions(Air{MinC: 12}))
	for _, i := range none.Items {
		if i.ID == "gas" || i.ID == "unplug" {
			t.Errorf("a vehicle without gas and cable is told: %s", i.Text)
		}
	}
	if _, ok := HowToFor("spaceship", nil); ok {
		t.Error("there is advice for a spaceship")
	}
}
