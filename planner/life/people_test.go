package life

import (
	"math"
	"strings"
	"testing"
)

// Totals an adult and day as the trade has them: see people.go.
func TestPersonDay(t *testing.T) {
	for _, c := range []struct {
		name             string
		party            Party
		showers, toilets bool
		fresh, cassette  float64
		warm             float64 // by hand: a third of washing, all of a shower, 60 % of the dishes
	}{
		{"showers aboard", Party{}, false, false, 35, 2.5, 21},
		{"showers at sites, none there", Party{Showers: "sites"}, false, false, 20, 2.5, 6},
		{"showers at the site", Party{Showers: "sites"}, true, false, 9, 2.5, 1},
		{"frugal", Party{Showers: "frugal"}, true, false, 10, 2.5, 2},
		{"toilet at the site", Party{Toilet: "sites"}, true, true, 34.6, 1.5, 21},
		{"toilet at sites, none there", Party{Toilet: "sites"}, true, false, 35, 2.5, 21},
		{"little cooking", Party{Cooking: "little"}, false, false, 32, 2.5, 19.2},
		{"dishes at the site", Party{Dishes: "sites"}, true, false, 30, 2.5, 18},
	} {
		w := c.party.day(amenities{c.showers, c.toilets})
		if math.Abs(w.fresh()-c.fresh) > 1e-9 || math.Abs(c.party.cassette(amenities{c.showers, c.toilets})-c.cassette) > 1e-9 {
			t.Errorf("%s: %v L and %v L, want %v and %v", c.name, w.fresh(), c.party.cassette(amenities{c.showers, c.toilets}), c.fresh, c.cassette)
		}
		if math.Abs(w.warm-c.warm) > 1e-9 {
			t.Errorf("%s: %v L of it warm, want %v", c.name, w.warm, c.warm)
		}
		if w.warm > w.grey || w.grey >= w.fresh() {
			t.Errorf("%s: more comes out than goes in: %+v", c.name, w)
		}
	}
	// Grey is 0.85–0.95 of fresh for those who do everything aboard (from memory).
	w := Party{}.day(amenities{})
	if share := w.grey / w.fresh(); share < 0.85 || share > 0.95 {
		t.Errorf("grey is %.2f of fresh", share)
	}
}

func TestPartyValidate(t *testing.T) {
	if err := (Party{Adults: 2, Showers: "often"}).Validate(); err == nil || !strings.Contains(err.Error(), `"often"`) {
		t.Errorf("often: %v", err)
	}
	if err := (Party{Adults: -1}).Validate(); err == nil {
		t.Error("-1 adults are accepted")
	}
	if err := (Party{}).Validate(); err != nil {
		t.Errorf("nobody on board is refused: %v", err)
	}
	if err := (Party{Adults: 2, Showers: "sites", Devices: "many"}).Validate(); err != nil {
		t.Error(err)
	}
}
