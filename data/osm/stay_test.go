package osm

import (
	"reflect"
	"testing"

	"github.com/paulmach/orb"

	"ullage/data/osm/file/filetest"
	"ullage/planner/trip"
)

// Where several tags speak of the mains, power_supply is named, else the first by name that says yes.
func TestHookUpEvidence(t *testing.T) {
	for tags, want := range map[string]string{
		"socket:schuko=2 | socket:cee_blue=4":                    "socket:cee_blue=4",
		"socket:schuko=2 | camp_site=basic":                      "socket:schuko=2",
		"socket:cee_blue=4 | camp_site=serviced":                 "camp_site=serviced",
		"socket:cee_blue=4 | power_supply=no":                    "power_supply=no",
		"socket:cee_blue=4 | power_supply=unknown | camp_site=x": "socket:cee_blue=4",
		"camp_site=standard":                                     "",
	} {
		if _, got := hookUp(filetest.Tags(tags)); got != want {
			t.Errorf("%s: %q, want %q", tags, got, want)
		}
	}
}

// By the definitions of Tag:tourism=camp_site, Key:camp_site, Key:power_supply, Key:socket, Key:maxstay at wiki.openstreetmap.org.
func TestStay(t *testing.T) {
	const site, stop = "tourism=camp_site", "tourism=caravan_site"
	for _, tc := range []struct {
		tags string
		want *trip.Stay
	}{
		{"amenity=fuel | power_supply=yes", nil},
		{stop, &trip.Stay{Tag: stop}},
		{site, &trip.Stay{Tag: site}},
		{site + " | caravans=no", nil},
		{site + " | caravans=no | motorhome=yes", &trip.Stay{Tag: site}},
		{site + " | motorhome=no", nil},
		{site + " | backcountry=yes", nil},
		{site + " | backcountry=yes | motorhome=yes", &trip.Stay{Tag: site}},
		{site + " | permanent_camping=only", nil},
		{site + " | refugee=yes", nil},
		{site + " | amenity=refugee_site", nil},
		{site + " | scout=yes", nil},
		{site + " | static_caravans=only", nil},
		{site + " | camp_type=wildcamp", nil},
		{site + " | impromptu=yes", nil},
		{site + " | disused=yes", nil},
		{stop + " | abandoned=yes", nil},
		{stop + " | construction=yes", nil},
		{site + " | leisure=sports_centre", nil},
		{site + " | leisure=sports_centre | motorhome=yes", &trip.Stay{Tag: site}},
		{site + " | caravans=no | tents=yes", nil},
		{site + " | check_in=14:00-20:00 | check_out=11:00", &trip.Stay{Tag: site, CheckIn: "14:00-20:00", CheckOut: "11:00"}},
		{site + " | reservation=required", &trip.Stay{Tag: site, Reservation: "required"}},
		{site + " | group_only=yes", nil},
		{site + " | tents=no", &trip.Stay{Tag: site, Tents: trip.No}},
		{stop + " | fee=12 EUR | charge=12 EUR", &trip.Stay{Tag: stop, Fee: trip.Yes, Charge: "12 EUR"}},
		{stop + " | fee=no | maxstay=24 hours", &trip.Stay{Tag: stop, Fee: trip.No, MaxStay: "24 hours"}},
		{stop + " | fee=donation", &trip.Stay{Tag: stop}},
		{stop + " | power_supply=cee_17_blue | power_supply:maxcurrent=16", &trip.Stay{Tag: stop, HookUp: trip.Yes, Amps: 16}},
		{stop + " | socket:cee_blue=6 | socket:cee_blue:current=10 A", &trip.Stay{Tag: stop, HookUp: trip.Yes, Amps: 10}},
		{stop + " | power_supply=no", &trip.Stay{Tag: stop, HookUp: trip.No}},
		{stop + " | socket:cee_blue:output=3 kW", &trip.Stay{Tag: stop}},
		{stop + " | capacity=30 | capacity:motorhome=5", &trip.Stay{Tag: stop, Capacity: 5}},
		{stop + " | capacity=many", &trip.Stay{Tag: stop}},
		{stop + " | capacity=1", &trip.Stay{Tag: stop, Capacity: 1}},
		{stop + " | capacity=0 | capacity:pitches=12", &trip.Stay{Tag: stop, Capacity: 12}},
		{stop + " | capacity=99999", &trip.Stay{Tag: stop, Capacity: 99999}},
		{stop + " | capacity=100000", &trip.Stay{Tag: stop}},
		{stop + " | capacity:motorhome=0 | capacity=7", &trip.Stay{Tag: stop, Capacity: 7}},
		{stop + " | power_supply=yes | maxcurrent=0.5", &trip.Stay{Tag: stop, HookUp: trip.Yes, Amps: 0.5}},
		{stop + " | power_supply=yes | maxcurrent=125 A", &trip.Stay{Tag: stop, HookUp: trip.Yes, Amps: 125}},
		{stop + " | power_supply=yes | maxcurrent=126", &trip.Stay{Tag: stop, HookUp: trip.Yes}},
		{stop + " | power_supply=yes | maxcurrent=0", &trip.Stay{Tag: stop, HookUp: trip.Yes}},
		{stop + " | power_supply=yes | power_supply:maxcurrent=x | maxcurrent=6", &trip.Stay{Tag: stop, HookUp: trip.Yes, Amps: 6}},
		{stop + " | power_supply=none", &trip.Stay{Tag: stop, HookUp: trip.No}},
		{stop + " | power_supply=seasonal", &trip.Stay{Tag: stop}},
		{stop + " | socket:schuko=yes", &trip.Stay{Tag: stop, HookUp: trip.Yes}},
		{stop + " | socket:schuko=1", &trip.Stay{Tag: stop, HookUp: trip.Yes}},
		{stop + " | socket:schuko=no | camp_site=basic", &trip.Stay{Tag: stop, HookUp: trip.No, Showers: trip.No, Toilets: trip.No}},
		{stop + " | socket:schuko=2 | camp_site=basic", &trip.Stay{Tag: stop, HookUp: trip.Yes, Showers: trip.No, Toilets: trip.No}},
		{stop + " | camp_site=other", &trip.Stay{Tag: stop}},
		{stop + " | charge=2 EUR", &trip.Stay{Tag: stop, Fee: trip.Yes, Charge: "2 EUR"}},
		{stop + " | charge=0 EUR", &trip.Stay{Tag: stop, Charge: "0 EUR"}},
		{stop + " | fee=0.50", &trip.Stay{Tag: stop, Fee: trip.Yes}},
		{stop + " | caravans=no", &trip.Stay{Tag: stop}}, // made for motorhomes
		{site + " | showers=no | camp_site=deluxe", &trip.Stay{Tag: site, HookUp: trip.Yes, Showers: trip.No, Toilets: trip.Yes}},
		{site + " | camp_site=basic", &trip.Stay{Tag: site, HookUp: trip.No, Showers: trip.No, Toilets: trip.No}},
		{site + " | camp_site=standard", &trip.Stay{Tag: site, Toilets: trip.Yes}},
		{site + " | camp_site=serviced", &trip.Stay{Tag: site, HookUp: trip.Yes, Showers: trip.Yes, Toilets: trip.Yes}},
		{site + " | camp_site=serviced | shower=no", &trip.Stay{Tag: site, HookUp: trip.Yes, Showers: trip.No, Toilets: trip.Yes}},
		{site + " | showers=yes | toilets=customers", &trip.Stay{Tag: site, Showers: trip.Yes, Toilets: trip.Yes}},
	} {
		p, _ := placeOf(object{'n', 1, filetest.Tags(tc.tags)}, orb.Point{})
		if !reflect.DeepEqual(p.Stay, tc.want) {
			t.Errorf("%s: stay = %+v, want %+v", tc.tags, p.Stay, tc.want)
		}
	}
}
