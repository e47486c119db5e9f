package byroad

import (
	"testing"

	"github.com/paulmach/orb"

	"ullage/geo/road"
	"ullage/geo/road/net"
	"ullage/planner/fact"
)

// A road without a name is not called by numbers.
func TestUnnamedRoad(t *testing.T) {
	n := road.Note{Point: orb.Point{1.5, 42.5}, Bar: net.Bar{Why: net.NoEntry}}
	bare := fact.V{"why": fact.Clause(fact.Of("road.bar.entry", nil))}
	if got, want := roadBarred(n), fact.Of(RoadBarred, bare); !got.Equal(want) {
		t.Errorf("%s, want %s", got.Key(), want.Key())
	}
	n.Road, bare["road"] = "Mill Lane", fact.Text("Mill Lane")
	if got, want := roadBarred(n), fact.Of(RoadBarred, bare); !got.Equal(want) {
		t.Errorf("%s, want %s", got.Key(), want.Key())
	}
}
