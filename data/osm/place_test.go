package osm

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"ullage/data/osm/file"
	"ullage/data/osm/file/filetest"
	"ullage/data/osm/tag"
	"ullage/planner/trip"
)

// offersText writes offers as words: yes +, no -, unknown ?, likely ~, for guests only g.
func offersText(offers []trip.Offer) string {
	var words []string
	for _, o := range offers {
		sign := map[trip.Answer]string{trip.Yes: "+", trip.No: "-", trip.Unknown: "?"}[o.Answer]
		if o.Likely {
			sign = "~"
		}
		if o.Guests {
			sign += "g"
		}
		words = append(words, o.Tank+sign)
	}
	return strings.Join(words, " ")
}

// Every row follows from the definitions on the tag's page at wiki.openstreetmap.org, see the rules.
var offerCases = []struct{ name, tags, want string }{
	{"plain station", "amenity=fuel", "fuel: def? diesel~ lpg?"},
	{"all three", "amenity=fuel | fuel:diesel=yes | fuel:adblue=yes | fuel:lpg=yes", "fuel: def+ diesel+ lpg+"},
	{"no diesel", "amenity=fuel | fuel:diesel=no", "fuel: def? diesel- lpg?"},
	{"diesel only", "amenity=fuel | fuel:diesel=only", "fuel: def? diesel+ lpg?"},
	{"petrol tagged", "amenity=fuel | fuel:octane_95=yes", "fuel: def? diesel~ lpg?"},
	{"autogas only", "amenity=fuel | fuel:lpg=yes", "fuel: def? diesel? lpg+"},
	{"autogas only, by the card", "amenity=fuel | fuel:lpg=yes | fuel:lpg:self_service=yes", "fuel: def? diesel? lpg+"},
	{"autogas and petrol", "amenity=fuel | fuel:lpg=yes | fuel:octane_95=yes", "fuel: def? diesel~ lpg+"},
	{"gas denied says nothing of diesel", "amenity=fuel | fuel:lpg=no", "fuel: def? diesel~ lpg-"},
	// Diesel made from gas suits some engines only, so that it is no yes to diesel, and no reason to doubt it.
	{"diesel from gas", "amenity=fuel | fuel:GTL_diesel=yes", "fuel: def? diesel~ lpg?"},
	{"diesel from gas at a service area", "highway=services | fuel:GTL_diesel=yes", "service: diesel~"},
	{"truck lane", "amenity=fuel | fuel:HGV_diesel=yes", "fuel: def? diesel~ lpg?"},
	{"canister", "amenity=fuel | fuel:adblue=no | fuel:adblue:canister=yes", "fuel: def+ diesel~ lpg?"},
	{"nothing else", "amenity=fuel | fuel:octane_95=yes | fuel:others=no", "fuel: def- diesel- lpg-"},
	{"no exhaust fluid", "amenity=fuel | fuel:adblue=no", "fuel: def- diesel~ lpg?"},
	{"fuel burnt is not fuel sold", "amenity=fuel | fuel=lpg", "fuel: def? diesel~ lpg?"},
	{"propane", "amenity=fuel | fuel:propane=yes", "fuel: def? diesel? lpg~"},
	{"unknown word", "amenity=fuel | fuel:lpg=maybe", "fuel: def? diesel? lpg?"},
	{"customers", "amenity=fuel | access=customers", "fuel: def?g diesel~g lpg?g"},
	{"water at the station", "amenity=fuel | water_point=yes", "fuel: def? diesel~ fresh+ lpg?"},
	{"dump at the station", "amenity=fuel | sanitary_dump_station=yes", "fuel: cassette+ def? diesel~ grey~ lpg?"},

	{"dump for the station's customers", "amenity=fuel | sanitary_dump_station=customers", "fuel: cassette+g def? diesel~ grey~g lpg?"},
	{"boats' jetty", "amenity=fuel | fuel:diesel=yes | motorboat=designated", ""},
	{"airfield", "amenity=fuel | fuel:avgas_100_ll=yes", "fuel: def? diesel? lpg?"},

	{"dump", "amenity=sanitary_dump_station", "dump: cassette+ fresh? grey~"},
	{"dump for guests", "amenity=sanitary_dump_station | access=customers | water_point=yes", "dump: cassette+g fresh+g grey~g"},
	{"chemical toilets only", "amenity=sanitary_dump_station | sanitary_dump_station:chemical_toilet=yes | sanitary_dump_station:grey_water=no", "dump: cassette+ fresh? grey-"},
	{"hose only", "amenity=sanitary_dump_station | sanitary_dump_station:basin=no | sanitary_dump_station:round_drain=yes", "dump: cassette- fresh? grey~"},
	{"accepted", "amenity=sanitary_dump_station | sanitary_dump_station:accepted=black_water; grey_water", "dump: cassette+ fresh? grey+"},
	{"accepted without grey", "amenity=sanitary_dump_station | sanitary_dump_station:accepted=chemical_toilet", "dump: cassette+ fresh? grey-"},
	{"accepted grey only", "amenity=sanitary_dump_station | sanitary_dump_station:accepted=grey_water", "dump: cassette- fresh? grey+"},
	{"property of a car park", "amenity=parking | sanitary_dump_station=yes", "dump: cassette+ grey~"},
	{"property for guests", "leisure=marina | sanitary_dump_station=customers", "dump: cassette+g grey~g"},
	{"property of a car park, old value", "amenity=parking | sanitary_dump_station=public", "dump: cassette+ grey~"},
	{"no chemical toilets", "amenity=sanitary_dump_station | sanitary_dump_station:chemical_toilet=no", "dump: cassette- fresh? grey~"},
	{"boats only", "waterway=sanitary_dump_station", ""},
	{"no dump", "amenity=parking | sanitary_dump_station=no", ""},

	{"water point", "amenity=water_point", "water: fresh+"},
	{"water point not to drink", "amenity=water_point | drinking_water=no", "water: fresh-"},
	{"water point as property", "amenity=parking | water_point=yes", "water: fresh+"},
	{"drinking fountain", "amenity=drinking_water", "water: fresh?"},
	{"drinking water from a tap", "amenity=drinking_water | man_made=water_tap", "water: fresh~"},
	{"tap", "man_made=water_tap", "tap: fresh?"},
	{"potable tap", "man_made=water_tap | drinking_water=yes", "tap: fresh~"},
	{"tap not to drink", "man_made=water_tap | drinking_water=no", "tap: fresh-"},

	{"stopover", "tourism=caravan_site", "stopover: battery? cassette? fresh? grey?"},
	{"stopover, old power", "tourism=caravan_site | power_supply=cee_17_blue", "stopover: battery+ cassette? fresh? grey?"},
	{"stopover, new power", "tourism=caravan_site | socket:cee_blue=4", "stopover: battery+ cassette? fresh? grey?"},
	{"stopover, no power", "tourism=caravan_site | power_supply=no | socket:cee_blue=4", "stopover: battery- cassette? fresh? grey?"},
	{"power on demand", "tourism=caravan_site | power_supply=intermittent", "stopover: battery? cassette? fresh? grey?"},
	{"no sockets", "tourism=caravan_site | socket:cee_blue=0", "stopover: battery? cassette? fresh? grey?"},
	{"stopover with all", "tourism=caravan_site | sanitary_dump_station=yes | sanitary_dump_station:grey_water=yes | water_point=yes | power_supply=yes", "stopover: battery+ cassette+ fresh+ grey+"},
	{"stopover, basic", "tourism=caravan_site | camp_site=basic", "stopover: battery- cassette? fresh- grey?"},
	{"stopover, standard", "tourism=caravan_site | camp_site=standard", "stopover: battery? cassette? fresh~ grey?"},
	{"stopover, water for guests", "tourism=caravan_site | water_point=customers", "stopover: battery? cassette? fresh+g grey?"},
	{"stopover, no water", "tourism=caravan_site | water_point=no", "stopover: battery? cassette? fresh- grey?"},
	{"stopover, power for guests", "tourism=caravan_site | power_supply=customers", "stopover: battery+g cassette? fresh? grey?"},
	{"stopover, no dump", "tourism=caravan_site | sanitary_dump_station=no", "stopover: battery? cassette- fresh? grey-"},
	{"stopover, chemical toilets", "tourism=caravan_site | sanitary_dump_station:chemical_toilet=yes", "stopover: battery? cassette+ fresh? grey?"},
	{"stopover, basin", "tourism=caravan_site | sanitary_dump_station:basin=yes", "stopover: battery? cassette+ fresh? grey?"},
	{"campsite", "tourism=camp_site", "campsite: battery?g cassette?g fresh~g grey?g"},
	{"campsite, basic", "tourism=camp_site | camp_site=basic", "campsite: battery-g cassette?g fresh-g grey?g"},
	{"campsite, serviced", "tourism=camp_site | camp_site=serviced", "campsite: battery+g cassette?g fresh~g grey?g"},
	{"campsite, drinking water", "tourism=camp_site | drinking_water=yes", "campsite: battery?g cassette?g fresh+g grey?g"},
	{"campsite without drinking water", "tourism=camp_site | camp_site=deluxe | drinking_water=no", "campsite: battery+g cassette?g fresh-g grey?g"},

	{"service area", "highway=services", ""},
	{"service area with dump", "highway=services | sanitary_dump_station=yes", "service: cassette+ grey~"},
	{"rest area with water", "highway=rest_area | drinking_water=yes", "service: fresh~"},
	{"service area that sells", "highway=services | fuel:diesel=yes | fuel:lpg=yes", "service: diesel+ lpg+"},
	{"bottled gas", "shop=gas", "gas: lpg?"},
	{"bottled gas and autogas", "shop=gas | fuel:lpg=yes", "gas: lpg+"},

	{"private", "amenity=fuel | access=private", ""},
	{"boats", "amenity=fuel | access=boat", ""},
	{"no cars", "amenity=drinking_water | motor_vehicle=no", ""},
	{"boats' own", "amenity=water_point | boat=only", ""},
	{"no vehicles", "amenity=water_point | vehicle=private", ""},
	{"no motorcars", "amenity=water_point | motorcar=no", ""},
	{"abandoned", "amenity=fuel | abandoned=yes", ""},
	{"demolished", "amenity=fuel | demolished=yes", ""},
	{"removed", "amenity=fuel | removed=yes", ""},
	{"razed", "amenity=fuel | razed=yes", ""},
	{"being built", "amenity=fuel | construction=yes", ""},
	{"planned", "amenity=fuel | proposed=yes", ""},
	{"disused", "amenity=fuel | disused=yes", ""},
	{"disused, prefixed", "disused:amenity=fuel", ""},
	{"abandoned, prefixed", "abandoned:tourism=camp_site", ""},
	{"out of order", "amenity=water_point | operational_status=broken", ""},
}

// offered writes what a place of the tags is and offers; "" for none.
func offered(tags string) string {
	p, ok := placeOf(object{'n', 1, filetest.Tags(tags)}, orb.Point{})
	if !ok {
		return ""
	}
	return fmt.Sprintf("%s: %s", p.Kind, offersText(p.Offers))
}

func TestOffers(t *testing.T) {
	for _, tc := range offerCases {
		t.Run(tc.name, func(t *testing.T) {
			if got := offered(tc.tags); got != tc.want {
				t.Errorf("%s\n got %q\nwant %q", tc.tags, got, tc.want)
			}
		})
	}
}

// No row of the tables is idle: without it, or with another answer, a case above comes out differently.
func TestNoRuleIsIdle(t *testing.T) {
	noticed := func(change string, row any) {
		if !slices.ContainsFunc(offerCases, func(tc struct{ name, tags, want string }) bool { return offered(tc.tags) != tc.want }) {
			t.Errorf("%s %v: no case notices: add one to offerCases that does", change, row)
		}
	}
	rules := offerRules
	defer func() { offerRules = rules }()
	for i, r := range rules {
		offerRules = slices.Delete(slices.Clone(rules), i, i+1)
		noticed("without", r)
		for _, other := range []offerRule{{answer: trip.Yes}, {answer: trip.No}, {answer: trip.Unknown}, {answer: trip.Unknown, likely: true}} {
			if other.answer != r.answer || other.likely != r.likely {
				offerRules = slices.Clone(rules)
				offerRules[i].answer, offerRules[i].likely = other.answer, other.likely
				noticed("another answer of", r)
			}
		}
	}
	offerRules = rules
	kinds, guests := kindRules, guestTags
	defer func() { kindRules, guestTags = kinds, guests }()
	for i, r := range kinds {
		kindRules = slices.Delete(slices.Clone(kinds), i, i+1)
		noticed("without", r)
	}
	kindRules = kinds
	for i, g := range guests {
		guestTags = slices.Delete(slices.Clone(guests), i, i+1)
		noticed("without", g)
	}
	guestTags = guests
	for _, table := range []tag.Values{closedBy, shutTo} {
		for key, values := range table {
			table[key] = ""
			noticed("without", key)
			table[key] = values
		}
	}
}

// The evidence is the tag itself, as a person finds it on the map.
func TestEvidence(t *testing.T) {
	p, _ := placeOf(object{'w', 45, filetest.Tags("amenity=fuel | fuel:adblue:canister=yes | brand=Gamma | opening_hours=24/7 | fee=no")}, orb.Point{1.5, 42.5})
	if o, _ := p.Offer("def"); o.Tag != "fuel:adblue:canister=yes" {
		t.Errorf("evidence = %q", o.Tag)
	}
	if o, _ := p.Offer("lpg"); o.Tag != "amenity=fuel" || o.Answer != trip.Unknown {
		t.Errorf("lpg of a plain station = %+v, want unknown", o)
	}
	if p.ID != "w45" || p.Name != "Gamma" || p.Operator != "Gamma" || p.Hours != "24/7" || p.Fee != trip.No || p.Stay != nil {
		t.Errorf("place = %+v", p)
	}
}

// Every offer, also an unknown one, names the tag that it rests on.
func TestEveryOfferHasEvidence(t *testing.T) {
	for _, r := range kindRules {
		tags := file.Tags{r.key: r.value}
		for _, o := range offersOf(r.kind, tags) {
			if k, v, _ := strings.Cut(o.Tag, "="); tags[k] != v || v == "" {
				t.Errorf("%v: evidence of %s is %q", tags, o.Tank, o.Tag)
			}
		}
	}
}

// Unknown is never yes: without a tag that speaks of it no tank is served, whatever the kind.
func TestUnknownIsNeverYes(t *testing.T) {
	speaks := map[string]bool{"amenity=sanitary_dump_station cassette": true, "sanitary_dump_station=yes cassette": true,
		"sanitary_dump_station=customers cassette": true, "sanitary_dump_station=public cassette": true,
		"amenity=water_point fresh": true, "water_point=yes fresh": true}
	for _, r := range kindRules {
		for _, o := range offersOf(r.kind, file.Tags{r.key: r.value}) {
			tag := r.key + "=" + r.value
			if o.Answer == trip.Yes != speaks[tag+" "+o.Tank] {
				t.Errorf("%s alone: %s is %v", tag, o.Tank, o.Answer)
			}
		}
	}
}

func TestElevation(t *testing.T) {
	for text, want := range map[string]float64{"1842": 1842, "1842.5 m": 1842.5, "1842m": 1842, "-2": -2, " 7 ": 7, "-449": -449, "8999": 8999} {
		if got := elevation(text); got == nil || *got != want {
			t.Errorf("%q: %v, want %v", text, got, want)
		}
	}
	for _, text := range []string{"", "high", "1,842", "6000 ft", "1e9", "NaN", "-500", "-450", "9000"} {
		if got := elevation(text); got != nil {
			t.Errorf("%q: %v, want none", text, *got)
		}
	}
}
