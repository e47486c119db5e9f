package data

import (
	"bytes"
	"errors"
	"os"
	"reflect"
	"strings"
	"testing"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"

	"ullage/data/plain"
	"ullage/planner/trip"
)

// What is written is read back the same, whatever is in a place.
func TestPlacesRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		answer := rapid.SampledFrom([]trip.Answer{trip.Unknown, trip.Yes, trip.No})
		var places []trip.Place
		for i := range rapid.IntRange(0, 5).Draw(t, "places") {
			p := trip.Place{
				ID:     rapid.StringMatching(`[nwr][1-9][0-9]{0,10}`).Draw(t, "id") + string(rune('a'+i)),
				Kind:   rapid.SampledFrom([]trip.PlaceKind{"fuel", "dump", "campsite"}).Draw(t, "kind"),
				Name:   plain.Text(rapid.String().Draw(t, "name")),
				Point:  orb.Point{rapid.Float64Range(-180, 180).Draw(t, "lon"), rapid.Float64Range(-90, 90).Draw(t, "lat")},
				Fee:    answer.Draw(t, "fee"),
				Hours:  rapid.String().Draw(t, "hours"),
				Limits: trip.Limits{HeightM: rapid.Float64Range(0, 5).Draw(t, "height"), Unclear: rapid.String().Draw(t, "unclear")},
			}
			for range rapid.IntRange(0, 3).Draw(t, "offers") {
				p.Offers = append(p.Offers, trip.Offer{Tank: "lpg", Answer: answer.Draw(t, "answer"), Likely: rapid.Bool().Draw(t, "likely"), Tag: rapid.String().Draw(t, "tag")})
			}
			if rapid.Bool().Draw(t, "stay") {
				p.Stay = &trip.Stay{HookUp: answer.Draw(t, "hookup"), Amps: rapid.Float64Range(0, 32).Draw(t, "amps"), Capacity: rapid.IntRange(0, 500).Draw(t, "capacity")}
			}
			if rapid.Bool().Draw(t, "area") {
				p.Outline = orb.LineString{{1, 2}, {1.5, 2}, {1.5, 2.5}, {1, 2}}
				p.Gates = []orb.Point{{1.5, 2.25}}
			}
			places = append(places, p)
		}
		var b bytes.Buffer
		if err := WritePlaces(&b, places); err != nil {
			t.Fatal(err)
		}
		got, err := ReadPlaces("places", &b)
		if err != nil || len(got) != len(places) || len(places) > 0 && !reflect.DeepEqual(got, places) {
			t.Fatalf("ReadPlaces = %+v, %v, want %+v", got, err, places)
		}
	})
}

// A place that was moved in a map tool is not entered where it was.
func TestMovedPlace(t *testing.T) {
	p := trip.Place{ID: "w1", Kind: "campsite", Point: orb.Point{1.25, 2.25}, Outline: orb.LineString{{1, 2}, {1.5, 2}, {1.5, 2.5}, {1, 2}}, Gates: []orb.Point{{1.5, 2.25}}}
	var b bytes.Buffer
	if err := WritePlaces(&b, []trip.Place{p}); err != nil {
		t.Fatal(err)
	}
	got, err := ReadPlaces("places", strings.NewReader(strings.Replace(b.String(), `"coordinates":[1.25,2.25]`, `"coordinates":[3,4]`, 1)))
	if err != nil || len(got) != 1 || got[0].Point != (orb.Point{3, 4}) || got[0].Outline != nil || got[0].Gates != nil {
		t.Errorf("moved to %+v, %v", got, err)
	}
}

func TestReadPlacesRefuses(t *testing.T) {
	place := `{"type":"Feature","geometry":{"type":"Point","coordinates":[1,2]},"properties":{"id":"n1","kind":"fuel","point":[1,2]}}`
	for _, tc := range []struct{ name, text, says string }{
		{"empty", "", "line 1"},
		{"cut short", "{\"type\":\"FeatureCollection\",\n\"features\":[", "line 2"},
		{"a line", `{"type":"LineString"}`, "FeatureCollection"},
		{"twice", `{"type":"FeatureCollection","features":[` + place + "," + place + `]}`, `feature 2: the id "n1" is there twice`},
		{"off the earth", `{"type":"FeatureCollection","features":[` + strings.Replace(place, "[1,2]", "[1,92]", 1) + `]}`, "place n1: latitude 92"},
		{"an area", `{"type":"FeatureCollection","features":[` + strings.Replace(place, `"Point"`, `"Polygon"`, 1) + `]}`, "a place is a Point"},
	} {
		t.Run(tc.name, func(t *testing.T) {
			if _, err := ReadPlaces("a file", strings.NewReader(tc.text)); err == nil || !strings.Contains(err.Error(), tc.says) {
				t.Errorf("ReadPlaces = %v, want an error with %q", err, tc.says)
			}
		})
	}
}

// GeoJSON of OpenStreetMap objects is for package osm, and told apart.
func TestReadPlacesForeign(t *testing.T) {
	f, err := os.Open(shared + "/places/finland-fuel-osm-2022-02-13.geojson")
	if err != nil {
		t.Skipf("open data are not beside the project, as ../shared/data: %v", err)
	}
	defer f.Close()
	if _, err := ReadPlaces("finland.geojson", f); !errors.Is(err, ErrForeign) {
		t.Errorf("ReadPlaces = %v, want ErrForeign", err)
	}
}

func FuzzReadPlaces(f *testing.F) {
	f.Add([]byte(`{"type":"FeatureCollection","features":[{"type":"Feature","geometry":{"type":"Point","coordinates":[1,2]},"properties":{"id":"n1","kind":"fuel","point":[1,2]}}]}`))
	f.Fuzz(func(t *testing.T, text []byte) {
		places, err := ReadPlaces("fuzz", bytes.NewReader(text))
		if err != nil {
			return
		}
		var b bytes.Buffer
		if err := WritePlaces(&b, places); err != nil {
			t.Fatal(err)
		}
		again, err := ReadPlaces("again", &b)
		if err != nil || !reflect.DeepEqual(again, places) {
			t.Fatalf("read again: %+v, %v, want %+v", again, err, places)
		}
	})
}
