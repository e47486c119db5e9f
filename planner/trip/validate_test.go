package trip

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"ullage/planner"
)

func TestFleetIsValidAndDiffers(t *testing.T) {
	without := map[string]int{"def": 0, "lpg": 0}
	for _, v := range Fleet() {
		if err := v.Validate(); err != nil {
			t.Error(err)
		}
		for id := range without {
			if !strings.Contains(v.tankIDs(), id) {
				without[id]++
			}
		}
	}
	if without["def"] == 0 || without["lpg"] == 0 || len(Fleet()) < 3 {
		t.Errorf("models without exhaust fluid and LPG = %v of %d, want one each of at least three", without, len(Fleet()))
	}
}

// Every fault names the field and says what to do.
func TestTripValidate(t *testing.T) {
	if err := eastwards(100).Validate(); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name   string
		change func(*Trip)
		want   string
	}{
		{"format", func(t *Trip) { t.Format = "ullage-trip-9" }, `"ullage-trip-1"`},
		{"date", func(t *Trip) { t.Start = "12.6.2026" }, "write it as 2026-06-12"},
		{"no tanks", func(t *Trip) { t.Vehicle.Tanks = nil }, "has no tanks"},
		{"height", func(t *Trip) { t.Vehicle.HeightM = 29 }, "height in m is 29: give 1 to 4.5"},
		{"level of no tank", func(t *Trip) { t.Levels = map[string]float64{"beer": 1} }, `"beer"`},
		{"level", func(t *Trip) { t.Levels = map[string]float64{"diesel": 76} }, "give 0 to 75"},
		{"nobody", func(t *Trip) { t.Party.Adults = 0 }, "adults is 0: give 1 to 20"},
		{"showers", func(t *Trip) { t.Party.Showers = "often" }, "write one of aboard, frugal, sites"},
		{"speed", func(t *Trip) { t.Day.SpeedKmh = math.NaN() }, "speed in km/h is NaN"},
		{"nights", func(t *Trip) { t.Stays.MinNights, t.Stays.MaxNights = 3, 2 }, "raise the most"},
		{"corridor", func(t *Trip) { t.CorridorKm = 51 }, "corridor in km is 51"},
		{"circuity", func(t *Trip) { t.Circuity = 0.5 }, "give 1 to 5"},
		{"price", func(t *Trip) { t.Prices = map[string]float64{"diesel": -1} }, "price of diesel is -1"},
		{"both", func(t *Trip) { t.Avoid, t.Require = []string{"n1"}, []string{"n1"} }, "choose one"},
		{"no route", func(t *Trip) { t.Route = nil }, "draw or load"},
		{"drawn off the earth", func(t *Trip) { t.Points = orb.LineString{{0, 0}, {0, 91}} }, "drawn point 2"},
		{"off the earth", func(t *Trip) { t.Route = orb.LineString{{0, 0}, {0, 91}} }, "route point 2"},
		{"tank twice", func(t *Trip) { t.Vehicle.Tanks = append(t.Vehicle.Tanks, t.Vehicle.Tanks[0]) }, "twice"},
		{"unknown tank", func(t *Trip) { t.Vehicle.Tanks = append([]Tank{}, Tank{ID: "beer"}) }, "unknown: use one of"},
		{"reserve", func(t *Trip) { t.Vehicle.Tanks[0].Reserve = 76 }, "reserve is 76"},
		{"kind", func(t *Trip) { t.Vehicle.Tanks[0].Kind = "both" }, "supply or waste"},
	} {
		t.Run(c.name, func(t *testing.T) {
			tr := eastwards(100)
			c.change(&tr)
			if err := tr.Validate(); err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("Validate() = %v, want it to say %q", err, c.want)
			}
		})
	}
}

// An end condition that the tank cannot hold is refused where it stands: the
// planner would otherwise say of every plan that there is none.
func TestEndConditionFitsTheTank(t *testing.T) {
	for _, c := range []struct {
		name string
		tank string
		end  func(capacity float64) planner.End
		want string // "" is valid
	}{
		{"all of it", "diesel", func(c float64) planner.End { return planner.End{AtLeast: &c} }, ""},
		{"a litre more", "diesel", func(c float64) planner.End { return planner.End{AtLeast: new(c + 1)} }, "end at_least"},
		{"less than nothing", "diesel", func(float64) planner.End { return planner.End{AtLeast: new(-1.0)} }, "end at_least"},
		{"full waste", "grey", func(c float64) planner.End { return planner.End{AtMost: &c} }, ""},
		{"more than full waste", "grey", func(c float64) planner.End { return planner.End{AtMost: new(c + 1)} }, "end at_most"},
		{"a waste tank that is to be filled", "grey", func(float64) planner.End { return planner.End{AtLeast: new(1.0)} }, "remove it"},
		{"a supply tank that is to be emptied", "diesel", func(float64) planner.End { return planner.End{AtMost: new(1.0)} }, "remove it"},
		{"no price", "diesel", func(float64) planner.End { return planner.End{AtLeast: new(1.0), RefillPrice: new(-0.1)} }, "end refill_price"},
	} {
		t.Run(c.name, func(t *testing.T) {
			tr := eastwards(100)
			i := slices.IndexFunc(tr.Vehicle.Tanks, func(k Tank) bool { return k.ID == c.tank })
			end := c.end(tr.Vehicle.Tanks[i].Capacity)
			tr.Vehicle.Tanks[i].End = &end
			err := tr.Validate()
			if c.want == "" && err != nil || c.want != "" && (err == nil || !strings.Contains(err.Error(), c.want)) {
				t.Errorf("Validate() = %v, want %q", err, c.want)
			}
		})
	}
}
