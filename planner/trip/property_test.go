package trip

import (
	"context"
	"fmt"
	"math"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"ullage/planner"
	"ullage/planner/solve"
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

// someFerries draws up to two ferries on a route of km.
func someFerries(t *rapid.T, km float64) []Ferry {
	var out []Ferry
	at := 0.0
	for range rapid.IntRange(0, 2).Draw(t, "ferries") {
		from := at + rapid.SampledFrom([]float64{0, 0, 1e-4, 1}).Draw(t, "before")*(km-at)/3
		to := from + rapid.Float64Range(0.001, 1).Draw(t, "long")*(km-from)/2
		out = append(out, Ferry{FromKm: from, ToKm: to, Min: rapid.Float64Range(0, 300).Draw(t, "sea")})
		at = to
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
		tr.Start = rapid.SampledFrom([]string{"2026-01-20", "2026-06-12", "2027-12-31"}).Draw(t, "start")
		tr.Confidence = rapid.SampledFrom([]float64{0, 0.5, 0.75, 0.99}).Draw(t, "confidence")
		tr.Comfort.InsideC = rapid.SampledFrom([]float64{0, 15, 25}).Draw(t, "inside")
		tr.FromMin = rapid.SampledFrom([]float64{0, 0, 800}).Draw(t, "from")
		tr.Stays.MinNights = rapid.IntRange(0, 4).Draw(t, "nights")
		tr.Ferries = someFerries(t, 20)
		b, err := Build(tr, somePlaces(t, 400), Options{})
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range b.Problem.Stops {
			if c := b.Candidates[b.calls[s.ID].candidate]; c.Excluded != "" || math.Abs(b.axis.driven(c.Km)-s.Km) > metre {
				t.Fatalf("stop %s is candidate %+v", s.ID, c)
			}
		}
		// The first plan that comes to hand will do.
		plan, err := solve.Solve(context.Background(), b.Problem, solve.Options{MaxLabels: 500})
		if err != nil || plan.End == nil {
			return
		}
		it, err := b.Itinerary(plan)
		if err != nil {
			t.Fatal(err)
		}
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

// From wherever and whenever on the way, whatever the gauges say, the rest is a
// trip that a problem can be made of, not longer than what was left.
func TestOnwardFromAnywhere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tr := eastwards(rapid.Float64Range(50, 400).Draw(t, "length"))
		tr.Vehicle = rapid.SampledFrom(Fleet()).Draw(t, "vehicle")
		tr.Ferries = someFerries(t, 50)
		places := somePlaces(t, 400)
		b, err := Build(tr, places, Options{})
		if err != nil {
			t.Fatal(err)
		}
		plan, err := solve.Solve(context.Background(), b.Problem, solve.Options{MaxLabels: 500})
		if err != nil || plan.End == nil {
			return
		}
		it, err := b.Itinerary(plan)
		if err != nil {
			t.Fatal(err)
		}
		now := Now{Km: new(rapid.Float64Range(0, it.LengthKm-0.1).Draw(t, "km")), Gauges: map[string]Shown{},
			Time: fmt.Sprintf("2026-06-%02dT%02d:15", rapid.IntRange(12, 16).Draw(t, "day"), rapid.IntRange(0, 23).Draw(t, "hour"))}
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
		o, err := tr.Onward(it, now)
		if err != nil {
			t.Fatal(err)
		}
		rest, err := Build(o.Trip, places, Options{})
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(rest.axis.lengthKm+*now.Km-it.LengthKm) > 0.01 {
			t.Fatalf("%v km to go after %v of %v", rest.axis.lengthKm, *now.Km, it.LengthKm)
		}
		if len(o.Lessons) != len(now.Gauges) {
			t.Fatalf("%d lessons of %d gauges", len(o.Lessons), len(now.Gauges))
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
