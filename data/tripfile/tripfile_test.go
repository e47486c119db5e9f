package tripfile

import (
	"bytes"
	"reflect"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"ullage/planner/fact"
	"ullage/planner/life"
	"ullage/planner/trip"
)

func summer() trip.Trip {
	return trip.Trip{
		Format: trip.Format, Name: "Summer <1>", Start: "2026-06-12", Vehicle: trip.Fleet()[2],
		Levels:  map[string]float64{"diesel": 33.3, "grey": 1.0 / 3},
		Party:   trip.Party{Adults: 2, Children: 1, Showers: "sites", Toilet: "aboard", Cooking: "little", Dishes: "aboard", Devices: "many"},
		Comfort: life.Comfort{InsideC: 21, NightC: 17, HotC: 40}, Confidence: 0.8, GearKg: 120,
		Learned:    []life.Factor{{Tank: "fresh", Factor: 1.1, SD: 0.1, Readings: 2, PriorSD: 0.15}},
		Day:        trip.DayLimits{MaxKm: 250, MaxMin: 480, DepartMin: 540, SpeedKmh: 55},
		Stays:      trip.StayWishes{MinNights: 1, MaxNights: 4, Campsites: true, HookUp: true, MaxFee: 40},
		CorridorKm: 4, Circuity: 1.3, ValuePerH: 12, Currency: "EUR",
		Prices: map[string]float64{"diesel": 1.7}, FromMin: 660, KeysByMin: 960, UpM: 250, DownM: 120.5, Ferries: []trip.Ferry{{FromKm: 3, ToKm: 9, Min: 60}},
		Done: []trip.Done{{Date: "2026-06-11", Km: 40, Place: "n9", Name: "Nine", Night: true, Tasks: []trip.Did{{Verb: trip.Fill, Tank: "fresh"}, {Verb: trip.TopUp, Tank: "def"}, {Tank: "swim"}}}}, DoneKm: 120,
		Points: orb.LineString{{1.461, 42.43}, {1.73, 42.54}}, Round: []string{"Low Lane: height limit 2.70 m"},
		Backup: true, Avoid: []string{"n1"}, Require: []string{"w2"},
		Route: orb.LineString{{1.4610000000000001, 42.43}, {1.5, 42.51}, {1.73, 42.54}},
	}
}

func TestTripRoundTrip(t *testing.T) {
	want := summer()
	var b bytes.Buffer
	if err := Write(&b, want); err != nil {
		t.Fatal(err)
	}
	got, _, err := Read("summer.geojson", &b)
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("Read(Write(t)) =\n%+v, want\n%+v", got, want)
	}
}

func TestFleetRoundTrip(t *testing.T) {
	var b bytes.Buffer
	if err := WriteFleet(&b, trip.Fleet()); err != nil {
		t.Fatal(err)
	}
	got, _, err := ReadFleet("fleet.json", &b)
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(got, trip.Fleet()) {
		t.Errorf("ReadFleet(WriteFleet(f)) = %+v", got)
	}
}

// fields of a small trip file; vehicle by id.
const small = `{"type":"FeatureCollection",
"ullage":{"format":"ullage-trip-1","name":"Small","start":"2026-06-12","vehicle":"ulmar","colour":"unknown members are told",
"party":{"adults":2,"children":0,"showers":"aboard","toilet":"aboard","cooking":"aboard"},
"day":{"max_km":200,"max_min":480,"depart_min":540,"speed_kmh":60},
"stays":{"min_nights":0,"max_nights":0,"campsites":true,"stopovers":true,"hookup":false},
"corridor_km":3,"circuity":0,"value_per_h":10,"currency":"EUR","backup":false},
"features":[{"type":"Feature","properties":{"n":1},"geometry":{"type":"Point","coordinates":[1,2]}},
{"type":"Feature","properties":null,"geometry":{"type":"LineString","coordinates":[[1,42,900],[1.5,42.5,1000]]}}]}`

func TestReadVehicleOfTheFleet(t *testing.T) {
	got, notes, err := Read("small.geojson", strings.NewReader("\xef\xbb\xbf"+small))
	if err != nil {
		t.Fatal(err)
	}
	if want := []fact.Fact{fact.Of(unknownMembers, fact.V{"file": fact.Text("small.geojson"), "list": fact.Texts([]string{"ullage.colour"})})}; !reflect.DeepEqual(notes, want) {
		t.Errorf("notes %+v, want %+v", notes, want)
	}
	if !reflect.DeepEqual(got.Vehicle, trip.Fleet()[0]) || !reflect.DeepEqual(got.Route, orb.LineString{{1, 42}, {1.5, 42.5}}) {
		t.Errorf("Read(small) = vehicle %+v, route %v", got.Vehicle, got.Route)
	}
}

func TestReadWithoutRoute(t *testing.T) {
	text := small[:strings.Index(small, `"features"`)] + `"features":[]}`
	got, _, err := Read("small.geojson", strings.NewReader(text))
	if err != nil || got.Route != nil {
		t.Errorf("Read = route %v, %v, want none", got.Route, err)
	}
}

// Every error names the file and says where and what to do.
func TestReadErrors(t *testing.T) {
	for _, c := range []struct{ name, from, to, want string }{
		{"syntax", `"start":`, `"start"`, "line 2, column"},
		{"not GeoJSON", `"FeatureCollection"`, `"Feature"`, "a trip file is a GeoJSON FeatureCollection"},
		{"no trip", `"ullage"`, `"other"`, `no member "ullage"`},
		{"format", `ullage-trip-1`, `ullage-2`, `write "ullage-trip-1"`},
		{"vehicle", `"ulmar"`, `"nobody"`, "write one of ulmar, "},
		{"type", `"max_km":200`, `"max_km":"far"`, "line 4, column"},
		{"type in words", `"adults":2`, `"adults":2.5`, "party.adults: number 2.5 is not a whole number"},
		{"misspelt", `"max_km"`, `"max_kms"`, `line 4, column 8: ullage.day: unknown field "max_kms": did you mean "max_km"?`},
		{"misspelt beside", `"backup"`, `"backupp":true,"backup"`, `did you mean "backup"?`},
		{"twice", `"backup"`, `"backup":true,"backup"`, "given twice"},
		{"nothing as a number", `"max_km":200`, `"max_km":null`, "ullage.day.max_km: found null, want a number"},
		{"nothing in a table", `"currency"`, `"levels":{"diesel":null},"currency"`, "ullage.levels.diesel: found null"},
		{"nothing in a point", `[1,42,900]`, `[null,42]`, "[0][0]: found null, want a number"},
		{"value", `"adults":2`, `"adults":0`, "adults is 0"},
		{"point", `[1,42,900]`, `[1]`, "features[1]: point 1 has 1 numbers"},
		{"coordinates", `[1,42,900]`, `"x"`, "features[1]: coordinates are not a list"},
		{"one point", `[[1,42,900],[1.5,42.5,1000]]`, `[[1,42]]`, "the route has 1 points"},
		{"two routes", `"Point","coordinates":[1,2]`, `"LineString","coordinates":[[1,2],[3,4]]`, "second LineString"},
		{"empty", small, ``, "ends in the middle"},
		{"not text", small, "\xff\xfe", "UTF-8"},
	} {
		t.Run(c.name, func(t *testing.T) {
			text := strings.Replace(small, c.from, c.to, 1)
			if text == small {
				t.Fatal("nothing replaced")
			}
			_, _, err := Read("small.geojson", strings.NewReader(text))
			if err == nil || !strings.HasPrefix(err.Error(), "read small.geojson: ") || !strings.Contains(err.Error(), c.want) {
				t.Errorf("Read = %v, want it to say %q", err, c.want)
			}
		})
	}
}

func TestReadFleetErrors(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{`{}`, `write "ullage-fleet-1"`},
		{`{"format":"ullage-fleet-1","vehicles":[]}`, "at least one"},
		{`{"format":"ullage-fleet-1","vehicles":[{"id":"a"}]}`, "vehicles[0]: vehicle a: height"},
		{"{\"format\":\"ullage-fleet-1\",\n\"vehicles\":{}}", "line 2, column"},
	} {
		if _, _, err := ReadFleet("fleet.json", strings.NewReader(c.text)); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("ReadFleet(%s) = %v, want it to say %q", c.text, err, c.want)
		}
	}
}

// What Read accepts, Write keeps: the second round gives the same bytes.
func FuzzRead(f *testing.F) {
	f.Add([]byte(small))
	var b bytes.Buffer
	if err := Write(&b, summer()); err != nil {
		f.Fatal(err)
	}
	f.Add(b.Bytes())
	f.Fuzz(func(t *testing.T, in []byte) {
		got, _, err := Read("fuzz", bytes.NewReader(in))
		if err != nil {
			return
		}
		var one, two bytes.Buffer
		if err := Write(&one, got); err != nil {
			t.Fatal(err)
		}
		again, _, err := Read("fuzz", bytes.NewReader(one.Bytes()))
		if err != nil {
			t.Fatalf("own file is refused: %v", err)
		}
		if err := Write(&two, again); err != nil || !bytes.Equal(one.Bytes(), two.Bytes()) {
			t.Errorf("second round differs (%v):\n%s\n%s", err, &one, &two)
		}
	})
}

func FuzzReadFleet(f *testing.F) {
	var b bytes.Buffer
	if err := WriteFleet(&b, trip.Fleet()); err != nil {
		f.Fatal(err)
	}
	f.Add(b.Bytes())
	f.Fuzz(func(t *testing.T, in []byte) {
		got, _, err := ReadFleet("fuzz", bytes.NewReader(in))
		if err != nil {
			return
		}
		var one bytes.Buffer
		if err := WriteFleet(&one, got); err != nil {
			t.Fatal(err)
		}
		if _, _, err := ReadFleet("fuzz", &one); err != nil {
			t.Errorf("own file is refused: %v", err)
		}
	})
}
