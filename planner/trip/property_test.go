package trip

import (
	"context"
	"fmt"
	"math"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"ullage/planner"
)

// somePlaces draws places of every kind on both sides of a route of km.
func somePlaces(t *rapid.T, km float64) []Place {
	answer := rapid.SampledFrom([]Answer{Unknown, Yes, No})
	var out []Place
	for i := range rapid.IntRange(0, 12).Draw(t, "places") {
		kind := rapid.SampledFrom([]string{"fuel", "dump", "water", "tap", "stopover", "campsite", "service", "gas", "else"}).Draw(t, "kind")
		p := at(fmt.Sprintf("n%d", i), kind, rapid.Float64Range(-5, km+5).Draw(t, "km"), rapid.Float64Range(-7, 7).Draw(t, "off"))
		for _, tank := range []string{"battery", "cassette", "def", "diesel", "fresh", "grey", "lpg"} {
			if rapid.Bool().Draw(t, tank) {
				p.Offers = append(p.Offers, Offer{Tank: tank, Answer: answer.Draw(t, "answer"), Likely: rapid.Bool().Draw(t, "likely"), Guests: rapid.Bool().Draw(t, "guests")})
			}
		}
		if rapid.Bool().Draw(t, "stay") {
			p.Stay = &Stay{HookUp: answer.Draw(t, "hookup"), Showers: answer.Draw(t, "showers"), Fee: answer.Draw(t, "fee")}
		}
		p.Limits.HeightM = rapid.SampledFrom([]float64{0, 2, 2.7, 4}).Draw(t, "height")
		out = append(out, p)
	}
	return out
}

// Whatever the places are, the problem is valid, every stop is a candidate
// that is not excluded, and what comes back from the planner reads as levels
// that never leave the tank.
func TestBuildAnyPlaces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tr := eastwards(rapid.Float64Range(20, 400).Draw(t, "length"))
		tr.Vehicle = rapid.SampledFrom(Fleet()).Draw(t, "vehicle")
		tr.Backup = rapid.Bool().Draw(t, "backup")
		tr.Stays.MinNights = rapid.IntRange(0, 4).Draw(t, "nights")
		b, err := Build(tr, somePlaces(t, 400), Options{})
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range b.Problem.Stops {
			if c := b.Candidates[b.calls[s.ID].candidate]; c.Excluded != "" || math.Abs(c.Km-s.Km) > 1e-9 {
				t.Fatalf("stop %s is candidate %+v", s.ID, c)
			}
		}
		// The first plan that comes to hand will do.
		plan, err := planner.Solve(context.Background(), b.Problem, planner.Options{MaxLabels: 500})
		if err != nil || plan.End == nil {
			return
		}
		it, err := b.Itinerary(plan)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range it.Strips {
			for _, p := range s.Points {
				if p.L < -planner.Tolerance || p.L > s.Capacity+planner.Tolerance {
					t.Fatalf("%s: %+v is outside 0 to %v", s.Tank, p, s.Capacity)
				}
			}
		}
	})
}

// A place that serves nothing changes nothing; nor does the order of places
// that lie apart.
func TestBuildIgnoresWhatIsOfNoUse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tr, places := eastwards(300), somePlaces(t, 300)
		one, err := Build(tr, places, Options{})
		if err != nil {
			t.Fatal(err)
		}
		two, err := Build(tr, append([]Place{at("x", "tap", 50, 0), at("y", "fuel", 60, 9, yes("diesel"))}, places...), Options{})
		if err != nil {
			t.Fatal(err)
		}
		if !reflect.DeepEqual(one.Problem, two.Problem) || !reflect.DeepEqual(one.Candidates, two.Candidates) {
			t.Fatalf("a place of no use changes the problem")
		}
	})
}
