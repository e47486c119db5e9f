package model

import (
	"strconv"
	"strings"
	"testing"

	"ullage/geo"
	"ullage/planner/trip"
)

// typed are the fields of a ferry.
func typed(from, to, min string) []Msg {
	return []Msg{Edited{"ferry:from", from}, Edited{"ferry:to", to}, Edited{"ferry:min", min}, FerryAdded{}}
}

// What is wrong stands beside its field, and nothing is planned; what is right is
// a ferry of the trip, in the order of the route.
func TestAddFerry(t *testing.T) {
	m := planned()
	m.Trip.Ferries = []trip.Ferry{{FromKm: 20, ToKm: 30, Min: 60}}
	for _, tc := range []struct{ name, from, to, min, field, want string }{
		{"nothing", "", "", "", "min", "A number from 0 to 10000."},
		{"no number", "x", "12", "30", "from", "A number from 0"},
		{"beyond the route", "10", "9999", "30", "to", "A number from 0"},
		{"backwards", "12", "10", "30", "to", "A ferry ends after it begins: more than 12"},
		{"over another", "10", "21", "30", "from", "There is already a ferry from km" + thin + "20"},
	} {
		t.Run(tc.name, func(t *testing.T) {
			got := m
			for _, msg := range typed(tc.from, tc.to, tc.min) {
				got = then(got, msg)
			}
			if w := m.Say.Fact(got.Wrong["ferry:"+tc.field]); !strings.Contains(w, tc.want) || got.Wanted != m.Wanted || len(got.Trip.Ferries) != 1 {
				t.Errorf("%v, %+v; want %q and no other plan", got.Wrong, got.Trip.Ferries, tc.want)
			}
			if got = then(got, Edited{"ferry:" + tc.field, "1"}); !got.Wrong["ferry:"+tc.field].Nothing() {
				t.Errorf("typed anew, and still %v", got.Wrong)
			}
		})
	}
	line, err := geo.Measure(m.Trip.Route)
	if err != nil {
		t.Fatal(err)
	}
	last := m
	for _, msg := range typed("100", strconv.FormatFloat(line.LengthM()/1000-0.01, 'f', 3, 64), "45") {
		last = then(last, msg)
	}
	if len(last.Trip.Ferries) != 2 {
		t.Errorf("a ferry to the end of the route: %v", last.Wrong)
	}
	got := m
	for _, msg := range typed("5", "12,5", "45") {
		got = then(got, msg)
	}
	if f := got.Trip.Ferries; len(f) != 2 || f[0] != (trip.Ferry{FromKm: 5, ToKm: 12.5, Min: 45}) || got.Wanted != m.Wanted+1 || got.Typed["ferry:from"] != "" || len(m.Trip.Ferries) != 1 {
		t.Errorf("ferries %+v, wanted %d, typed %q", f, got.Wanted, got.Typed)
	}
	later := m
	for _, msg := range typed("30", "40", "45") { // as the one before it ends
		later = then(later, msg)
	}
	if f := later.Trip.Ferries; len(f) != 2 || f[0].FromKm != 20 || f[1].FromKm != 30 {
		t.Errorf("ferries %+v, want the later one behind", f)
	}
	earlier := m
	for _, msg := range typed("10", "20", "45") { // until it begins
		earlier = then(earlier, msg)
	}
	if f := earlier.Trip.Ferries; len(f) != 2 || f[0].FromKm != 10 || f[1].FromKm != 20 {
		t.Errorf("ferries %+v, want the earlier one before", f)
	}
	got = then(got, FerryRemoved{1})
	if f := got.Trip.Ferries; len(f) != 1 || f[0].FromKm != 5 || got.Wanted != m.Wanted+2 {
		t.Errorf("ferries %+v after the second is removed", f)
	}
	// Another route has other ferries.
	got.Trip.UpM = 100
	if got = then(got, RouteRead{Line: m.Trip.Route, File: File{Climb: [2]float64{0, 50}}}); len(got.Trip.Ferries) != 0 || got.Trip.UpM != 0 || got.Trip.DownM != 50 {
		t.Errorf("a new route keeps %+v, and climbs %v and %v", got.Trip.Ferries, got.Trip.UpM, got.Trip.DownM)
	}
}
