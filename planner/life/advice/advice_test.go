package advice

import (
	"slices"
	"testing"

	"ullage/planner/fact"
)

var tanks = []string{"diesel", "def", "lpg", "fresh", "grey", "cassette", "battery"}

// only is what holds for a vehicle that has no more than these.
func only(conditions ...string) Has {
	return func(c string) bool { return slices.Contains(conditions, c) }
}

func ids(items []Item) []string {
	var out []string
	for _, i := range items {
		out = append(out, i.ID)
	}
	return out
}

// Kinds are unique, conditions are known, each how-to has a title, care and who decides.
func TestWhole(t *testing.T) {
	known := []string{HasGas, HasAbsorption, HasDEF, HasCassette, HasGrey, HasFresh, HasHookUp, HasLithium, HasAwning, HasBoiler, IsFrost, IsFerry, IsHeavy}
	seen := map[fact.Kind]bool{}
	check := func(facts ...fact.Fact) {
		for _, f := range facts {
			if f.Nothing() || seen[f.Kind] {
				t.Errorf("%q is there twice, or nothing", f.Kind)
			}
			seen[f.Kind] = true
		}
	}
	items := func(of string, items []Item) {
		if len(items) == 0 {
			t.Errorf("%s is empty", of)
		}
		for _, i := range items {
			check(i.Says)
			for _, c := range i.If {
				if !slices.Contains(known, c) {
					t.Errorf("%s asks for %q", i.Says.Kind, c)
				}
			}
		}
	}
	for _, h := range HowTos(nil) {
		check(h.Title, h.Care, h.Defer)
		items(h.ID, h.Steps)
		items(h.ID, h.Cautions)
	}
	for _, l := range Checklists(nil) {
		check(l.Title)
		items(l.ID, l.Items)
	}
	for _, tank := range tanks {
		if _, ok := HowToFor(tank, nil); !ok {
			t.Errorf("nothing is said about %s", tank)
		}
	}
	if _, ok := HowToFor("spaceship", nil); ok {
		t.Error("there is advice for a spaceship")
	}
}

// Ids are stored by ticks: they, their order and their conditions stay.
func TestLists(t *testing.T) {
	for _, c := range []struct {
		list int
		id   string
		has  Has
		want []string
	}{
		{0, "set-off", only(), []string{"hose", "heater", "windows", "step", "inside", "seats", "levels", "height", "wedges"}},
		{0, "set-off", nil, []string{"unplug", "hose", "gas", "heater", "windows", "step", "awning", "inside", "toilet", "drain", "seats", "levels", "height", "ferry", "wedges"}},
		{1, "arrival", only(HasGas, IsFrost), []string{"may", "stand", "gas", "alarm", "frost", "levels", "tomorrow"}},
		{2, "service", only(HasCassette), []string{"gloves", "cassette", "chemicals", "clean", "levels"}},
		{3, "return", only(HasDEF, HasGas), []string{"diesel", "def", "gas", "inside", "parts", "damage", "own", "time"}},
	} {
		l := Checklists(c.has)[c.list]
		if got := ids(l.Items); l.ID != c.id || !slices.Equal(got, c.want) {
			t.Errorf("%s: %q, want %q", l.ID, got, c.want)
		}
	}
}

func TestConditions(t *testing.T) {
	for _, c := range []struct {
		id              string
		has             Has
		steps, cautions []string
	}{
		{"lpg", only(HasGas), []string{"adapter", "ask", "stop", "sniff"}, []string{"all-off", "only-refillable", "smell", "heavier"}},
		{"lpg", only(HasGas, IsFrost), []string{"adapter", "ask", "stop", "sniff"}, []string{"all-off", "only-refillable", "smell", "heavier", "winter-gas"}},
		{"battery", only(IsFrost), []string{"off-first", "order", "unwind", "dry", "read"}, []string{"rcd", "tripped", "polarity"}},
		{"battery", only(HasLithium, IsFrost), []string{"off-first", "order", "unwind", "dry", "read"}, []string{"rcd", "tripped", "polarity", "lithium-cold"}},
		{"awning", only(), nil, nil},
	} {
		h, _ := HowToFor(c.id, c.has)
		if !slices.Equal(ids(h.Steps), c.steps) || !slices.Equal(ids(h.Cautions), c.cautions) {
			t.Errorf("%s: %q and %q, want %q and %q", c.id, ids(h.Steps), ids(h.Cautions), c.steps, c.cautions)
		}
	}
}

// Where a thing is done its care is said, and what the frost adds; the care knows
// whether there is gas to switch off.
func TestHere(t *testing.T) {
	winter := fact.Of("howto.diesel.caution.winter", nil)
	for _, c := range []struct {
		has  Has
		want []fact.Fact
	}{
		{only(), []fact.Fact{fact.Of("howto.diesel.care", fact.V{})}},
		{only(HasGas), []fact.Fact{fact.Of("howto.diesel.care", fact.V{"gas": fact.Text("gas")})}},
		{only(HasGas, IsFrost), []fact.Fact{fact.Of("howto.diesel.care", fact.V{"gas": fact.Text("gas")}), winter}},
	} {
		h, _ := HowToFor("diesel", c.has)
		if got := h.Here(); !slices.EqualFunc(got, c.want, fact.Fact.Equal) {
			t.Errorf("%+v, want %+v", got, c.want)
		}
	}
}
