package road_test

import (
	"bytes"
	"context"
	"testing"

	"github.com/paulmach/orb"
	"github.com/paulmach/orb/planar"

	"ullage/data/osm"
	"ullage/data/osm/osmtest"
	"ullage/geo"
	"ullage/geo/road"
	"ullage/geo/road/net"
)

const (
	andorra       = "osm/andorra-2025-01-19.osm.pbf"
	liechtenstein = "osm/liechtenstein-2013-08-03.osm.pbf"
)

// TestRoutesAgainstDijkstra: 300 random pairs for each of five vehicles, fastest and shortest, on three networks: 9,000. Every
// path is followed step by step as well.
func TestRoutesAgainstDijkstra(t *testing.T) {
	for i, path := range []string{andorra, liechtenstein, osmtest.Demo} {
		t.Run(path, func(t *testing.T) {
			n := osmtest.Network(t, path)
			ways := road.CompareWithDijkstra(t, n, 300, uint64(i))
			t.Logf("%d states, %d of 3000 pairs have a way", n.States(), ways)
			if ways < 1500 {
				t.Errorf("only %d of 3000 pairs have a way", ways)
			}
		})
	}
}

// On the road over the Coll d'Ordino a bar leaves 2.5 m: node 9217102850 with barrier=height_restrictor and maxheight=2.5, by
// osmium getid. A van passes below, a coachbuilt goes round, and is told why.
func TestBarOnThePass(t *testing.T) {
	n := osmtest.Network(t, andorra)
	from, to := orb.Point{1.5333, 42.5555}, orb.Point{1.57593, 42.564272} // Ordino, and the road on the other side
	way := func(heightM float64) (*road.Router, road.Path) {
		r, err := road.NewRouter(context.Background(), n, net.Vehicle{HeightM: heightM, MarginM: net.DefaultMarginM}, road.Shortest)
		if err != nil {
			t.Fatal(err)
		}
		p, err := r.Query().Route(r.Snap(from, 100), r.Snap(to, 100))
		if err != nil {
			t.Fatal(err)
		}
		return r, p
	}
	_, low := way(2.3)
	r, high := way(2.9)
	if low.LengthM > 15_000 || high.LengthM < 20_000 {
		t.Errorf("2.3 m high %.0f m, 2.9 m high %.0f m", low.LengthM, high.LengthM)
	}
	why := r.Avoided(low)
	if len(why) != 1 || why[0].Bar != (net.Bar{Why: net.TooHigh, Limit: 2.5, Has: 2.9}) || why[0].Road != "CS-240" {
		t.Errorf("avoided %+v", why)
	}
	if at := (orb.Point{1.5744448, 42.5638096}); len(why) > 0 && geo.DistanceM(why[0].Point, at) > 1 {
		t.Errorf("the bar is at %v, not %v", why[0].Point, at)
	}
}

// TestSitesInAndorra: a site is entered by a road within its outline if any usable road of the file, taken as it is written
// there, has a point inside that a vehicle gets to from the capital and back.
func TestSitesInAndorra(t *testing.T) {
	x, err := osm.Read(context.Background(), andorra, bytes.NewReader(osmtest.Bytes(t, andorra)), osm.Options{NoBackdrop: true})
	if err != nil {
		t.Fatal(err)
	}
	in := osmtest.Roads(t, andorra)
	n := osmtest.Network(t, andorra)
	r, err := road.NewRouter(context.Background(), n, net.Vehicle{}, road.Fastest)
	if err != nil {
		t.Fatal(err)
	}
	q, capital := r.Query(), r.Snap(orb.Point{1.5218, 42.5063}, 200)
	inside := 0
	for _, p := range x.Places {
		ring := orb.Ring(p.Outline)
		if len(ring) == 0 {
			continue
		}
		got := r.SnapSite(road.Site{Point: p.Point, Outline: p.Outline, Gates: p.Gates}, 1000)
		if got.In {
			inside++
			if !planar.RingContains(ring, got.Point(n)) {
				t.Errorf("%s: %v is not inside", p.ID, got.Point(n))
			}
			continue
		}
		for _, w := range in.Ways {
			if w.Road.Class == net.Ferry || w.Road.Flags&net.Tunnel != 0 {
				continue
			}
			for _, k := range w.Nodes {
				at := in.Nodes[k].Point
				if !planar.RingContains(ring, at) || planar.DistanceFrom(orb.LineString(ring), at) < 3e-5 { // 3 m: along the outline
					continue
				}
				if there := r.Snap(at, 1); there.OK {
					_, err1 := q.Route(capital, there)
					_, err2 := q.Route(there, capital)
					if err1 == nil && err2 == nil {
						t.Errorf("%s: way %d has a point inside, %v, and the site is entered from %.0f m away", p.ID, w.ID, at, got.OffM)
					}
				}
			}
		}
	}
	t.Logf("%d sites are entered by a road inside", inside)
	if inside < 10 {
		t.Errorf("only %d sites are entered by a road inside", inside)
	}
}

// A road is joined with the rest if and only if there is a way from it to the capital and back: every road of Andorra, among
// them those behind a forbidden turn, where who arrives is not free to turn back.
func TestJoinedInAndorra(t *testing.T) {
	n := osmtest.Network(t, andorra)
	for _, v := range []net.Vehicle{{}, {HeightM: 3.1, MassT: 7.5}} {
		r, err := road.NewRouter(context.Background(), n, v, road.Fastest)
		if err != nil {
			t.Fatal(err)
		}
		q, capital := r.Query(), r.Snap(orb.Point{1.5218, 42.5063}, 200)
		count := 0
		for e := range uint32(n.Edges()) {
			middle := road.Spot{OK: true, Edge: e, Cm: n.LengthCm(e) / 2}
			_, to := q.Route(capital, middle)
			_, from := q.Route(middle, capital)
			want := to == nil && from == nil
			if got := r.Joined(e); got != want {
				t.Errorf("%+v: edge %d, %q at %v: joined %v, ways there and back: %v, %v", v, e, n.Road(e).Name, middle.Point(n), got, to, from)
			}
			if want {
				count++
			}
		}
		if count < n.Edges()/2 {
			t.Errorf("only %d of %d roads are joined", count, n.Edges())
		}
	}
}
