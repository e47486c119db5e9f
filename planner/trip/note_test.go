package trip_test

import (
	"testing"

	"github.com/paulmach/orb"

	"ullage/planner/trip"
)

// What people know wins over the map, the newest last; it is found by id, else by where
// it is; a note with a kind that no place fits is a place by itself; the rest is left.
func TestNoted(t *testing.T) {
	places := []trip.Place{
		{ID: "n1", Kind: trip.Campsite, Point: orb.Point{1, 1}, Stay: &trip.Stay{Tag: "tourism=camp_site"}, Offers: []trip.Offer{{Tank: "cassette", Answer: trip.Unknown, Likely: true}}},
		{ID: "n2", Kind: trip.FuelStation, Point: orb.Point{2, 2}, Offers: []trip.Offer{{Tank: "diesel", Likely: true}}},
	}
	out, left := trip.Noted(places, []trip.Note{
		{ID: "n1", HookUp: "yes", Serves: map[string]string{"cassette": "yes", "fresh": "no"}, Prices: map[string]float64{"night": 9}, When: "2027-05-02"},
		{ID: "n1", HookUp: "no", Prices: map[string]float64{"night": 12}, When: "2027-05-01"},
		{ID: "w77", Point: orb.Point{2, 2.0005}, Prices: map[string]float64{"diesel": 1.5}, Hours: "24/7", When: "2027-05-01"}, // 56 m away, with an id of before
		{Kind: trip.Stopover, Name: "Farm", Point: orb.Point{3, 3}, Night: "yes", Serves: map[string]string{"fresh": "yes"}, When: "2027-05-01"},
		{ID: "n9", Point: orb.Point{5, 5}, Text: "closed", When: "2027-05-01"},
	}, "EUR")
	if len(out) != 3 || len(left) != 1 || left[0].ID != "n9" {
		t.Fatalf("%+v, left %+v", out, left)
	}
	site, pump, farm := out[0], out[1], out[2]
	if site.Stay.HookUp != trip.Yes || site.Stay.Charge != "9.00 EUR" || len(site.Notes) != 2 {
		t.Errorf("%+v", site)
	}
	if o, _ := site.Offer("cassette"); o.Answer != trip.Yes || o.Tag != "note of 2027-05-02" {
		t.Errorf("%+v", o)
	}
	if o, _ := site.Offer("fresh"); o.Answer != trip.No {
		t.Errorf("%+v", o)
	}
	if o, _ := pump.Offer("diesel"); o.PriceTag != "1.50 EUR" || pump.Hours != "24/7" || !o.Likely {
		t.Errorf("%+v", pump)
	}
	if o, _ := farm.Offer("fresh"); farm.Stay == nil || o.Answer != trip.Yes || farm.Name != "Farm" {
		t.Errorf("%+v", farm)
	}
	if places[0].Stay.HookUp != trip.Unknown || len(places[0].Notes) > 0 {
		t.Error("the places of before are changed")
	}
	out, _ = trip.Noted(places, []trip.Note{{ID: "n1", Night: "no", When: "2027-05-02"}}, "EUR")
	if out[0].Stay != nil {
		t.Error("a night where a note says that there is none")
	}
}
