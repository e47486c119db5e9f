package tag

import (
	"testing"

	"ullage/data/osm/file"
	"ullage/data/osm/file/filetest"
	"ullage/geo/road/net"
)

// Who may drive each way, from Key:access and the keys below it: the most telling for a motorhome counts, a side before both.
func TestAccess(t *testing.T) {
	words := map[net.Access]string{net.Open: "yes", net.Guests: "guests", net.Closed: "no"}
	for _, tc := range []struct {
		tags  string
		class net.Class
		want  string // along, against
	}{
		{"x=y", net.Residential, "yes yes"},
		{"access=no", net.Residential, "no no"},
		{"access=customers", net.Residential, "guests guests"},
		{"access=unknown", net.Residential, "guests guests"},
		{"access=no;destination", net.Residential, "guests guests"}, // the part that lets in most
		{"access=destination; no", net.Residential, "guests guests"},
		{"access=no; private", net.Residential, "no no"},
		{"access=private;yes", net.Residential, "yes yes"},
		{"access=;no", net.Residential, "no no"},
		{"access=no | motorcar=yes", net.Residential, "yes yes"},
		{"motorcar=no | motorhome=yes", net.Residential, "yes yes"},
		{"motorhome=no | motorcar=yes", net.Residential, "no no"},
		{"vehicle=no | motor_vehicle=destination", net.Residential, "guests guests"},
		{"motor_vehicle:forward=no", net.Residential, "no yes"},
		{"motor_vehicle=no | motor_vehicle:backward=yes", net.Residential, "no yes"},
		{"motorhome=yes | motor_vehicle:forward=no", net.Residential, "yes yes"},
		{"x=y", net.Track, "guests guests"},
		{"access=yes", net.Track, "yes yes"},
		{"access=no", net.Track, "no no"},
		{"service=driveway", net.Service, "guests guests"},
		{"service=driveway | access=yes", net.Service, "guests guests"}, // for those who go there, whoever may
		{"service=driveway | access=private", net.Service, "no no"},
		{"service=alley", net.Service, "yes yes"},
	} {
		a := Access(filetest.Tags(tc.tags), tc.class)
		if got := words[a[0]] + " " + words[a[1]]; got != tc.want {
			t.Errorf("%s: %s, want %s", tc.tags, got, tc.want)
		}
	}
}

// A gate may be shut and is for guests; what is put there to keep vehicles out does; what only restricts their size does not.
func TestBarrierOf(t *testing.T) {
	for value, want := range map[string]Barrier{
		"gate": {"gate", net.Guests, true}, "lift_gate": {"lift_gate", net.Guests, true}, "chain": {"chain", net.Closed, false},
		"bollard": {"bollard", net.Closed, false}, "log": {"log", net.Closed, false}, "yes": {"yes", net.Closed, false},
		"height_restrictor": {"height_restrictor", net.Open, false}, "toll_booth": {"toll_booth", net.Open, false},
	} {
		if got, ok := BarrierOf(file.Tags{"barrier": value}); !ok || got != want {
			t.Errorf("barrier=%s: %+v, want %+v", value, got, want)
		}
	}
	for _, value := range []string{"", "kerb", "fence", "entrance", "gates"} {
		if got, ok := BarrierOf(file.Tags{"barrier": value}); ok {
			t.Errorf("barrier=%s: %+v, want none", value, got)
		}
	}
}

// A value is in a table of its key, whole.
func TestValues(t *testing.T) {
	v := Values{"access": "no private", "boat": "only"}
	for tags, want := range map[string]bool{"access=no": true, "access=private": true, "boat=only": true, "access=n": false, "access=no private": false,
		"access=only": false, "boat=": false, "x=no": false} {
		if got := v.In(filetest.Tags(tags)); got != want {
			t.Errorf("%s: %v, want %v", tags, got, want)
		}
	}
}
