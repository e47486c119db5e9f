package mapview

import (
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"ullage/app/model"
	"ullage/planner/byroad"
)

var (
	pa, pb, pc = orb.Point{1, 1}, orb.Point{2, 1}, orb.Point{3, 2}
	bend       = orb.Point{1.5, 1.4}
)

// Legs by road and legs as drawn are told apart.
func TestDraftData(t *testing.T) {
	legs := model.Legs{{pa, pb}: {Line: orb.LineString{pa, bend, pb}}}
	d := model.Draft{Points: orb.LineString{pa, pb, pc}}
	text := draftData(d, legs.Of(d.Points))
	for _, want := range []string{`"index":0,"off":false`, `[1.500000,1.400000]`, `"index":1,"off":true`} {
		if !strings.Contains(text, want) {
			t.Errorf("the map is given %s, want %s", text, want)
		}
	}
}

// Each other way has its letter where a point would be set.
func TestOthersData(t *testing.T) {
	way := [2]byroad.Leg{{Line: orb.LineString{pa, bend}}, {Line: orb.LineString{bend, pb}}}
	d := &model.Draft{Points: orb.LineString{pa, pb}, Ways: &model.OtherWays{Known: true, List: [][2]byroad.Leg{way, way}}}
	if text := othersData(d); !strings.Contains(text, `"letter":"B"`) || !strings.Contains(text, "[1.5,1.4]") {
		t.Errorf("the map is given %s", text)
	}
	d.Ways = nil
	if text := othersData(d); strings.Contains(text, "letter") {
		t.Errorf("the map still shows %s", text)
	}
}
