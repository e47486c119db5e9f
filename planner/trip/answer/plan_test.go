package answer

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"
	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
	"ullage/planner/trip/build"
	"ullage/planner/trip/triptest"
	"ullage/planner/trip/triptest/built"

	"github.com/paulmach/orb"
)

// What the route was led round is said with the plan.
func TestBuildRound(t *testing.T) {
	b, it := living(t)
	tr, places := b.Trip, b.Places
	tr.Round = []string{"Low Lane: height limit 2.70 m"}
	round, err := Trip(context.Background(), tr, places, Options{})
	const kind, want = "route.round", "route.round road=Low Lane: height limit 2.70 m"
	if got := triptest.Lines(triptest.Of(round.Cautions, kind)); err != nil || got != want || triptest.Has(it.Cautions, kind) {
		t.Errorf("%v: cautions %q, without %q", err, got, triptest.Lines(it.Cautions))
	}
}

// The last stops are in order, the last station is the one at km 295, and the
// keys are in time.
func TestReturn(t *testing.T) {
	_, it := living(t)
	r := it.Return
	if r == nil || triptest.Lines(r.Station) != "station.open km=5km name=N5 off=1.0km open=(open.unknown)" {
		t.Fatalf("return %+v", r)
	}
	if want := 16*60 - math.Mod(r.ArriveMin, 1440); r.InHandMin != want || want < 60 || len(r.Warnings) > 0 {
		t.Errorf("in hand %v min, want %v; %q", r.InHandMin, want, triptest.Lines(r.Warnings))
	}
	all := triptest.Lines(r.Steps)
	if !strings.Contains(all, "(do.drain amount=") || !strings.HasSuffix(all, "return.keys clock=16:00") || !strings.HasSuffix(triptest.Lines(r.Agreed), "agreed.empty tank=cassette") {
		t.Errorf("steps %q, agreed %q", all, triptest.Lines(r.Agreed))
	}
	for _, l := range it.Checklists {
		for _, i := range l.Items {
			if len(l.Items) == 0 || i.Says.Nothing() {
				t.Errorf("%s: %+v", l.ID, i)
			}
		}
	}
	if len(it.Checklists) != 4 {
		t.Errorf("%d checklists, want set-off, arrival, service, return", len(it.Checklists))
	}
	tr, places := triptest.Island()
	tr.Vehicle, tr.KeysByMin, tr.Party.Showers = trip.Fleet()[0], 10*60, "sites"
	late, err := Trip(context.Background(), tr, places, Options{})
	if err != nil || late.Status != planner.Infeasible {
		t.Errorf("%v, %s with keys that are due when the day has hardly begun", err, late.Status)
	}
	t.Log(late.Why, late.Cures)
	tr.DoneKm = 10 // on the road the answer is a plan, and that the desk must be told
	late, err = Trip(context.Background(), tr, places, Options{})
	if err != nil || late.Return == nil || !triptest.Has(late.Return.Warnings, "keys.late") {
		t.Errorf("%v, %+v", err, late.Return)
	}
}

// What is counted with is what the problem counts with.
func TestCounts(t *testing.T) {
	b, it := living(t)
	for i, c := range it.Counts {
		if k := b.Problem.Tanks[i]; c.Tank != k.ID || math.Abs(c.Per100.High-100*k.PerKm) > 1e-9 || c.Source.Nothing() || c.Night.High < c.Night.Likely {
			t.Errorf("%+v for %+v", c, k)
		}
	}
	if len(it.Counts) != 7 {
		t.Errorf("%d counts, want one a tank", len(it.Counts))
	}
}

// A price in another currency is not added to the trip's: the typical one
// counts, and facts and cautions say so. In the trip's own currency it counts.
func TestPricesInAnotherCurrency(t *testing.T) {
	tr, places := triptest.Island()
	tr.Levels = map[string]float64{"diesel": 25} // it must be bought on the way
	for i := range places {
		for j := range places[i].Offers {
			if places[i].Offers[j].Tank == "diesel" {
				places[i].Offers[j].PriceTag = "21.50 NOK/l"
			}
		}
		if s := places[i].Stay; s != nil {
			stay := *s
			stay.Charge = "300 NOK"
			places[i].Stay = &stay
		}
	}
	read := func(currency string) (goods, nights float64, facts, cautions, general string) {
		tr.Currency = currency
		it := mustPlan(t, tr, places)
		for _, d := range it.Days {
			for _, c := range d.Calls {
				for _, x := range c.Tasks {
					if x.Tank == "diesel" {
						goods = x.Cost / x.Amount
					}
				}
				if c.Night {
					nights = c.Cost
				}
				facts += triptest.Lines(c.Facts) + "\n"
				cautions += triptest.Lines(c.Cautions) + "\n"
			}
		}
		return goods, nights, facts, cautions, triptest.Lines(triptest.Of(it.Cautions, "money.currency"))
	}
	goods, nights, facts, cautions, general := read("EUR")
	if math.Abs(goods-1.60) > 1e-9 || nights != trip.StopoverFee && nights != trip.SiteFee {
		t.Errorf("in EUR diesel counts %v, a night %v", goods, nights)
	}
	for _, want := range []string{"data.price rate=1.60EUR/L tank=diesel why=(price.foreign currency=EUR tag=price=21.50 NOK/l)", "data.night_typical sum=30.00EUR why=(price.foreign currency=EUR tag=charge=300 NOK)"} {
		if !strings.Contains(facts, want) {
			t.Errorf("facts %q, want %q", facts, want)
		}
	}
	if !strings.Contains(cautions, "call.currency currency=EUR tags=[21.50 NOK/l]") || !strings.Contains(cautions, "call.currency currency=EUR tags=[300 NOK]") || general != "" {
		t.Errorf("cautions %q, %q", cautions, general)
	}
	goods, nights, facts, cautions, general = read("NOK")
	if goods != 21.5 || nights != 300 || strings.Contains(facts, "price.foreign") || strings.Contains(cautions, "call.currency") {
		t.Errorf("in NOK diesel counts %v, a night %v; %q, %q", goods, nights, facts, cautions)
	}
	if !strings.HasPrefix(general, "money.currency currency=NOK prices=[(money.price rate=1.60NOK/L tank=diesel), ") {
		t.Errorf("in NOK the typical prices are not warned of: %q", general)
	}
	tr.Prices = map[string]float64{"diesel": 20, "def": 12, "lpg": 11}
	if _, _, _, _, general = read("NOK"); !strings.Contains(general, "prices=[] ") {
		t.Errorf("with own prices: %q", general)
	}
}

// A plan in use is kept while the other one is cheaper by no more than a per
// cent; the itinerary says that there is a cheaper one, and by how much.
func TestPlanInUseIsKept(t *testing.T) {
	for _, c := range []struct {
		fee  string
		want string
	}{{"29.90 EUR", "one"}, {"29 EUR", "two"}} {
		tr, places := triptest.TwoWays(c.fee)
		if got := mustPlan(t, tr, places).Stops(); fmt.Sprint(got) != "[two]" {
			t.Fatalf("the cheapest stops at %v", got)
		}
		tr.Keep = []string{"one"}
		it := mustPlan(t, tr, places)
		if got := strings.Join(it.Stops(), " "); got != c.want {
			t.Errorf("at %s it goes to %s, want %s", c.fee, got, c.want)
		}
		if kept := c.want == "one"; kept != (it.Status == planner.Feasible) || kept && math.Abs(it.Cost-it.Bound-0.1) > 1e-6 {
			t.Errorf("at %s: %s, %v, bound %v", c.fee, it.Status, it.Cost, it.Bound)
		}
	}
}

func TestWaysReplaceEstimates(t *testing.T) {
	ford, low := fact.Fact{Kind: "ford"}, fact.Fact{Kind: "low"}
	places := []trip.Place{triptest.At("a", "fuel", 100, 1, triptest.Yes("diesel")), triptest.At("b", "fuel", 150, 1, triptest.Yes("diesel")), triptest.At("c", "fuel", 190, 1, triptest.Yes("diesel"))}
	b := built.Trip(t, triptest.Eastwards(200), places, build.Options{Roads: triptest.Signposts{
		On: trip.Course{Cautions: []fact.Fact{ford}},
		By: map[string][]trip.Way{
			"a": {{LeaveKm: 99, RejoinKm: 103, ThereKm: 4.25, Km: 4.5, Min: 9}},
			"b": {{Closed: low}},
		}}})
	a := triptest.StopOf(t, b.Problem, "a")
	// Reached after 99 + 4.25 km, which are 101 and half of 4.5.
	if a.Km != 101 || a.DetourKm != 4.5 || a.DetourMin != 9 {
		t.Errorf("a = km %v, %v km, %v min, want 101, 4.5, 9", a.Km, a.DetourKm, a.DetourMin)
	}
	if c := triptest.StopOf(t, b.Problem, "c"); math.Abs(c.DetourKm-2*1.4) > 0.01 { // not known to the roads: 1 km × 1.4, both ways
		t.Errorf("c detours %v km, want the estimate", c.DetourKm)
	}
	for _, c := range b.Candidates {
		if out := c.Excluded != nil && c.Excluded.Equal(low); out != (c.Place == "b") || c.ByRoad != (c.Place == "a") {
			t.Errorf("%s: excluded %v, by road %v", c.Place, c.Excluded, c.ByRoad)
		}
	}
	for _, s := range b.Problem.Stops {
		if s.ID == "b" {
			t.Error("b is a stop, though it cannot be reached")
		}
	}
	it, err := Plan(t.Context(), b, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if !fact.Contains(it.Cautions[:2], ford) {
		t.Errorf("cautions %q lack the road's", triptest.Lines(it.Cautions))
	}
}

// Where one drives in is said where that is apart from the place.
func TestEntry(t *testing.T) {
	place := triptest.At("a", "fuel", 100, 0.1, triptest.Yes("diesel"))
	for _, tc := range []struct {
		north float64 // metres from the place to its road
		want  bool
	}{{25, false}, {80, true}} {
		entry := trip.Entry{Point: orb.Point{place.Point[0], place.Point[1] + tc.north/110_574}, Road: "Mill Lane"}
		tr := triptest.Eastwards(200)
		tr.Levels = map[string]float64{"diesel": 24} // it must refuel
		b := built.Trip(t, tr, []trip.Place{place}, build.Options{Roads: triptest.Signposts{By: map[string][]trip.Way{"a": {{LeaveKm: 100, RejoinKm: 100, ThereKm: 0.1, Km: 0.2, Min: 1, Entry: entry}}}}})
		it, err := Plan(t.Context(), b, Options{})
		if err != nil || len(it.Days) == 0 || len(it.Days[0].Calls) == 0 {
			t.Fatalf("%v: no call in %+v (%v)", err, it.Days, it.Why)
		}
		if got := it.Days[0].Calls[0].Entry; (got != nil) != tc.want || got != nil && *got != entry {
			t.Errorf("%v m off the road: entry %+v", tc.north, got)
		}
	}
}
