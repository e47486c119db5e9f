package build

import (
	"testing"
	"ullage/geo"
	"ullage/planner/trip"
	"ullage/planner/trip/triptest"

	"github.com/paulmach/orb"
)

// A chain of places within 150 m of each other is one site, and so are all
// passes and lengths of stay of a place; operators are not joined to sites.
func TestSites(t *testing.T) {
	tr := triptest.Eastwards(100)
	tr.Route = append(tr.Route, orb.Point{0, 0}) // back again
	tr.Stays.MinNights = 3
	camp := triptest.At("f", "campsite", 70, 0)
	camp.Stay = &trip.Stay{}
	places := []trip.Place{
		triptest.At("a", "fuel", 30, 0, triptest.Yes("diesel")), triptest.At("b", "water", 30.1, 0.05, triptest.Yes("fresh")), triptest.At("c", "dump", 30.2, 0.1, triptest.Yes("grey")), // 110 m from one to the next
		triptest.At("d", "fuel", 30.5, 0, triptest.Yes("diesel"), triptest.Yes("def")), triptest.At("e", "fuel", 60, 0, triptest.Yes("diesel")), camp,
	}
	places[0].Operator, places[4].Operator = "one", "one"
	b := mustBuild(t, tr, places, Options{})
	site := map[string]string{}
	for _, s := range b.Around {
		site[s.ID] = s.Site + "/" + s.Operator
	}
	for id, want := range map[string]string{"a": "a/one", "a@2": "a/one", "b": "a/", "c@2": "a/", "d": "d/", "e": "e/one", "f": "f/", "f*2": "f/", "f@2*2": "f/"} {
		if site[id] != want {
			t.Errorf("site of %s = %q, want %q", id, site[id], want)
		}
	}
	for _, x := range b.Around {
		for _, y := range b.Around {
			if same := x.SharesFate(y); same != y.SharesFate(x) || same != (x.Site == y.Site || x.Operator != "" && x.Operator == y.Operator) {
				t.Errorf("%s and %s: %v", x.ID, y.ID, same)
			}
		}
	}
}

// Just within 150 m is one site, in whichever direction, and just beyond is not.
func TestSiteReaches(t *testing.T) {
	for _, c := range []struct {
		eastKm, northKm float64
		one             bool
	}{{0, 0.149, true}, {0, 0.1505, false}, {0.149, 0, true}, {0.1505, 0, false}, {0.105, 0.105, true}, {0.108, 0.108, false}} {
		a, b := triptest.At("a", "fuel", 30, 0, triptest.Yes("diesel")), triptest.At("b", "water", 30+c.eastKm, c.northKm, triptest.Yes("fresh"))
		around := mustBuild(t, triptest.Eastwards(100), []trip.Place{a, b}, Options{}).Around
		if len(around) != 2 || (around[0].Site == around[1].Site) != c.one {
			t.Errorf("%v km east and %v km north: %+v, want one site: %v", c.eastKm, c.northKm, around, c.one)
		}
	}
}

// What is skipped for lying aside is truly that far away: at least so many
// degrees of latitude of 110.574 km, the shortest there are (WGS84).
func TestAsideIsNeverTooFar(t *testing.T) {
	for _, p := range []orb.Point{{0, 0}, {1.5, 42.5}, {179.999, 60}, {-70, -54}, {10, 89}} {
		for _, d := range []orb.Point{{0.001, 0}, {0.002, 0.001}, {0.1, -0.5}, {0.0015, 0.0013}, {-0.003, 0}} {
			q := orb.Point{p[0] + d[0], p[1] + d[1]}
			if q[0] > 180 {
				q[0] -= 360
			}
			if far, m := aside(p, q)*110e3, geo.DistanceM(p, q); far > m {
				t.Errorf("%v and %v: %v m aside, %v m away", p, q, far, m)
			}
		}
	}
}
