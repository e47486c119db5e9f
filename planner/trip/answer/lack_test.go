package answer

import (
	"slices"
	"strings"
	"testing"

	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/internal/plantest"
	"ullage/planner/trip"
	"ullage/planner/trip/triptest"
)

// refused plans a trip that has no plan.
func refused(t *testing.T, tr trip.Trip, places []trip.Place) trip.Itinerary {
	t.Helper()
	it := mustPlan(t, tr, places)
	if it.Status != planner.Infeasible || len(it.Why) == 0 {
		t.Fatalf("%s, why %+v", it.Status, it.Why)
	}
	for _, w := range it.Why {
		t.Logf("%s: %s", w.Cause, triptest.Line(w.Says))
		for _, c := range w.Cures {
			t.Logf("    %s", triptest.Line(c))
		}
	}
	t.Logf("cures %s", strings.ReplaceAll(triptest.Lines(it.Cures), " | ", "\n      "))
	t.Logf("tried %s", triptest.Line(it.Tried))
	return it
}

// cured are all cures of a refusal in lines.
func cured(it trip.Itinerary) string {
	var out []string
	for _, w := range it.Why {
		out = append(out, triptest.Lines(w.Cures))
	}
	return strings.Join(append(out, triptest.Lines(it.Cures)), " | ")
}

// withoutBattery is a vehicle whose battery never is the matter.
func withoutBattery(v trip.Vehicle) trip.Vehicle {
	v.Tanks = slices.DeleteFunc(slices.Clone(v.Tanks), func(k trip.Tank) bool { return k.ID == "battery" })
	return v
}

// country is 400 km with sites that have all but a place for the cassette, which the
// agreement wants empty.
func country() (trip.Trip, []trip.Place) {
	tr := triptest.Eastwards(400)
	tr.Vehicle = withoutBattery(tr.Vehicle)
	tr.Stays.MinNights = 2
	var places []trip.Place
	for _, km := range []float64{80, 150, 200, 260, 320} {
		site := triptest.At("s"+string(rune('0'+len(places))), "campsite", km, 0, triptest.Yes("fresh"), triptest.Yes("grey"), triptest.Yes("diesel"))
		site.Stay = &trip.Stay{HookUp: trip.Yes, Fee: trip.No}
		places = append(places, site)
	}
	return tr, places
}

// Where nothing in the data empties a cassette and it must be empty at the return, that
// is said first; the cures are the desk, other data, and a place named by hand. Fewer
// nights are none.
func TestNothingEmptiesACassette(t *testing.T) {
	tr, places := country()
	it := refused(t, tr, places)
	if w := it.Why[0]; w.Cause != trip.CauseData || w.Limit != "cassette" || triptest.Line(w.Says) != "lack.data do=(do.empty tank=cassette)" {
		t.Errorf("first reason %+v", w)
	}
	// Two people and two nights: 10 L.
	for _, want := range []string{"(change.end_unemptied amount=10.0L tank=cassette)", "cure.other_map do=[(do.empty tank=cassette)]", "cure.by_hand"} {
		if !strings.Contains(cured(it), want) {
			t.Errorf("want %s in %s", want, cured(it))
		}
	}
	for _, w := range it.Why {
		if w.Kind == planner.ReasonNightsLess {
			t.Errorf("the nights are blamed: %+v", w)
		}
	}
	if strings.Contains(cured(it), "nights_less") {
		t.Errorf("it is no cure to stay fewer nights: %s", cured(it))
	}
	// Each cure is true: the desk agrees, a map has one place in the stretch.
	agreed := tr
	agreed.Vehicle.Tanks = slices.Clone(tr.Vehicle.Tanks)
	for i, k := range agreed.Vehicle.Tanks {
		if k.ID == "cassette" {
			ten := 10.0
			agreed.Vehicle.Tanks[i].End = &planner.End{AtMost: &ten}
		}
	}
	if it := mustPlan(t, agreed, places); it.Status != planner.Optimal {
		t.Errorf("agreed with the desk: %s", it.Status)
	}
	for _, c := range triptest.Of(it.Cures, cureOtherMap) {
		for _, at := range []fact.Value{c.Values["from"], c.Values["to"]} {
			one := triptest.At("dump", trip.Disposal, at.N, 0, triptest.Yes("cassette"))
			if it := mustPlan(t, tr, append(slices.Clone(places), one)); it.Status != planner.Optimal {
				t.Errorf("with a place at km %v: %s", at.N, it.Status)
			}
		}
	}
	// A place that is too far off, or out, is said to be: that is no lack of the data.
	far := triptest.At("far", trip.Disposal, 200, 20, triptest.Yes("cassette"))
	if got, want := triptest.Line(refused(t, tr, append(slices.Clone(places), far)).Why[0].Says), "lack.far do=(do.empty tank=cassette) km=20km name=FAR"; !strings.HasPrefix(got, want) {
		t.Errorf("far off: %q, want %q", got, want)
	}
	low := triptest.At("low", trip.Disposal, 200, 0, triptest.Yes("cassette"))
	low.Limits.HeightM = 2
	if got := triptest.Line(refused(t, tr, append(slices.Clone(places), low)).Why[0].Says); !strings.HasPrefix(got, "lack.out do=(do.empty tank=cassette) names=[(lack.place name=LOW why=(out.low") {
		t.Errorf("too low: %q", got)
	}
}

// A site whose tags do not say whether it takes the cassette can be rung.
func TestRingForACassette(t *testing.T) {
	tr, places := country()
	for i := range places {
		if i != 2 {
			places[i].Offers = append(places[i].Offers, trip.Offer{Tank: "cassette", Answer: trip.No})
		}
	}
	places[2].Contact.Phone = "+49 30 901820"
	if got, want := cured(refused(t, tr, places)), "(cure.ring do=[(do.empty tank=cassette)] n=0 places=[(ring.place name=S2 phone=+49 30 901820)])"; !strings.Contains(got, want) {
		t.Errorf("want %s in %s", want, got)
	}
}

// Data with fuel only: nowhere to spend a night, and that is said before all else.
func TestFuelOnly(t *testing.T) {
	tr := triptest.Eastwards(600)
	tr.Vehicle = withoutBattery(tr.Vehicle)
	var places []trip.Place
	for km := 40.0; km < 600; km += 60 {
		places = append(places, triptest.At("f"+string(rune('0'+len(places))), trip.FuelStation, km, 0, triptest.Yes("diesel")))
	}
	it := refused(t, tr, places)
	if w := it.Why[0]; w.Cause != trip.CauseData || triptest.Line(w.Says) != "lack.data do=(do.night)" {
		t.Errorf("first reason %+v", w)
	}
	for _, w := range it.Why {
		if w.Limit == "diesel" {
			t.Errorf("diesel is blamed: %+v", w)
		}
	}
	if !strings.Contains(cured(it), "cure.other_maps do=[(do.night), (do.fill tank=fresh), (do.drain tank=grey), (do.empty tank=cassette)]") {
		t.Errorf("cures %s", cured(it))
	}
}

// Hook-up is wished for where two days' drive has none: the wish is named, with where,
// and can be dropped, or sites be rung.
func TestHookUpWishedWhereThereIsNone(t *testing.T) {
	tr := triptest.Eastwards(700)
	tr.Vehicle = withoutBattery(triptest.Careless(tr.Vehicle))
	tr.Stays.HookUp = true
	var places []trip.Place
	for km := 50.0; km < 700; km += 100 {
		site := triptest.At("s"+string(rune('0'+len(places))), "campsite", km, 0, triptest.Yes("fresh"), triptest.Yes("grey"), triptest.Yes("cassette"), triptest.Yes("diesel"))
		site.Stay = &trip.Stay{Fee: trip.No}
		if km < 200 || km > 600 {
			site.Stay.HookUp = trip.Yes
		}
		site.Contact.Phone = "+44 117 496 0" + site.ID
		places = append(places, site)
	}
	it := refused(t, tr, places)
	if w := it.Why[0]; w.Cause != trip.CauseWish || triptest.Line(w.Says) != "reason.hookup from=km150 to=km650" || !strings.Contains(triptest.Lines(w.Cures), "(cure.no_hookup)") {
		t.Errorf("first reason %+v", w)
	}
	if !strings.Contains(cured(it), "(cure.ring do=[(do.plug_in)] n=0 places=[(ring.place name=S") || !strings.Contains(cured(it), "phone=+44 117 496 0s") {
		t.Errorf("cures %s", cured(it))
	}
}

// A day of 30 km is too short where the next place for the night is farther.
func TestDayOf30Km(t *testing.T) {
	tr, places := country()
	tr.Vehicle = triptest.Careless(tr.Vehicle)
	tr.Stays.MinNights, tr.Day.MaxKm = 0, 30
	it := refused(t, tr, places)
	if w := it.Why[0]; w.Cause != trip.CauseWish || w.Limit != "km" {
		t.Errorf("first reason %+v", w)
	}
	if !strings.Contains(cured(it), "(change.day_km km=") { // 80 km to the first and from the last site: 50 more, or more where a tank asks for it
		t.Errorf("cures %s", cured(it))
	}
}

// The battery is short because hook-up that is not tagged does not count: three
// sites can be rung, and their numbers are given.
func TestBatteryShortForUntaggedHookUp(t *testing.T) {
	tr := triptest.Eastwards(240)
	tr.Vehicle = triptest.Careless(tr.Vehicle)
	tr.Day.MaxKm, tr.Stays.MinNights = 70, 3
	for i := range tr.Vehicle.Tanks {
		if k := &tr.Vehicle.Tanks[i]; k.ID == "battery" {
			k.Use.PerNight, k.Use.PerKm = 80, 0 // three nights are 240 Ah, of which it has 73 beside its reserve: 167 are missing
			k.Capacity, k.Start, k.Reserve = 90, 90, 17
		}
	}
	var places []trip.Place
	for _, km := range []float64{60, 120, 180} {
		site := triptest.At("s"+string(rune('0'+len(places))), "campsite", km, 0, triptest.Yes("fresh"), triptest.Yes("grey"), triptest.Yes("cassette"), triptest.Yes("diesel"))
		site.Stay, site.Contact.Phone = &trip.Stay{Fee: trip.No}, "+376 800 00"+site.ID
		places = append(places, site)
	}
	it := refused(t, tr, places)
	if w := it.Why[len(it.Why)-1]; w.Limit != "battery" || !plantest.Near(w.Missing, 167) {
		t.Errorf("last reason %+v", w)
	}
	if !strings.Contains(cured(it), "(cure.ring do=[(do.plug_in)] n=0 places=[(ring.place name=S0 phone=+376 800 00s0), (ring.place name=S1 phone=+376 800 00s1), (ring.place name=S2 phone=+376 800 00s2)])") {
		t.Errorf("cures %s", cured(it))
	}
}
