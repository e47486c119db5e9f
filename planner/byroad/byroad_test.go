package byroad_test

import (
	"bytes"
	"context"
	"math"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"ullage/data/demo"
	"ullage/data/osm"
	"ullage/data/osm/osmtest"
	"ullage/geo"
	"ullage/geo/road"
	"ullage/geo/road/net"
	"ullage/planner/byroad"
	"ullage/planner/fact"
	"ullage/planner/trip"
	"ullage/planner/trip/build"
	"ullage/planner/trip/triptest"
)

// island is the road network of the demo.
func island(t testing.TB) *net.Network { return osmtest.Network(t, osmtest.Demo) }

func guide(t testing.TB, network *net.Network) *byroad.Guide {
	t.Helper()
	g, err := byroad.New(context.Background(), network)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

// passage returns points on either side of a passage of 2.7 m.
func passage(t testing.TB, network *net.Network) (from, to orb.Point) {
	a, b := osmtest.Passage(t, network)
	return beyond(a, b), beyond(b, a)
}

// beyond is 300 m farther on than a, seen from b.
func beyond(a, b orb.Point) orb.Point {
	d := geo.DistanceM(a, b)
	return orb.Point{a[0] + (a[0]-b[0])*300/d, a[1] + (a[1]-b[1])*300/d}
}

// Sections agree with the whole: the minutes of all sections are those of the course, and there are places by road.
func TestTripOnRoads(t *testing.T) {
	network := island(t)
	g := guide(t, network)
	tr := demo.Trip()
	roads := g.Trip(context.Background())
	line, err := geo.Measure(tr.Route)
	if err != nil {
		t.Fatal(err)
	}
	km := line.LengthM() / 1000
	c, err := roads.Course(tr, km)
	if err != nil {
		t.Fatal(err)
	}
	if len(c.Off) != 0 {
		t.Errorf("off the roads %v, though the route is made of them", c.Off)
	}
	min, at := 0.0, 0.0
	for _, p := range c.Pace {
		if p.ToKm <= at || p.MinPerKm < 60/float64(net.MotorhomeTopKmh) || p.MinPerKm > 12 {
			t.Errorf("pace %+v after km %v", p, at)
		}
		min, at = min+(p.ToKm-at)*p.MinPerKm, p.ToKm
	}
	if at != km {
		t.Errorf("the last section ends at %v of %v", at, km)
	}
	own, err := road.NewRouter(context.Background(), network, byroad.Fits(tr.Vehicle), road.Fastest)
	if err != nil {
		t.Fatal(err)
	}
	short, err := road.NewRouter(context.Background(), network, net.Vehicle{}, road.Shortest)
	if err != nil {
		t.Fatal(err)
	}
	course, err := short.Query().Match(context.Background(), tr.Route, road.MatchOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if _, s := own.Measure(course); math.Abs(min-s/60) > 0.001*min {
		t.Errorf("sections take %v min, the course %v", min, s/60)
	}
}

// A way to a place and back is no shorter than straight there and back from
// where it leaves and rejoins the route; positions are those of the route.
func TestWaysOnRoads(t *testing.T) {
	g := guide(t, island(t))
	tr := demo.Trip()
	x, err := osm.Read(context.Background(), "demo", bytes.NewReader(demo.Extract()), osm.Options{NoBackdrop: true})
	if err != nil {
		t.Fatal(err)
	}
	line, err := geo.Measure(tr.Route)
	if err != nil {
		t.Fatal(err)
	}
	near := geo.NewCorridor(line)
	var places []*trip.Place
	for i, p := range x.Places {
		if len(near.Passes(p.Point, 3000)) > 0 {
			places = append(places, &x.Places[i])
		}
	}
	roads := g.Trip(context.Background())
	if _, err := roads.Course(tr, line.LengthM()/1000); err != nil {
		t.Fatal(err)
	}
	ways, err := roads.Ways(places)
	if err != nil {
		t.Fatal(err)
	}
	reached := map[int]bool{}
	for _, w := range ways {
		if !w.Closed.Nothing() {
			continue
		}
		reached[w.Place] = true
		p := places[w.Place].Point
		straight := (geo.DistanceM(line.At(w.LeaveKm*1000), p) + geo.DistanceM(line.At(w.RejoinKm*1000), p)) / 1000
		if there := w.Km + w.RejoinKm - w.LeaveKm; there < straight-0.1 {
			t.Errorf("%s: %.2f km there and back from km %.2f and %.2f, straight %.2f", places[w.Place].ID, there, w.LeaveKm, w.RejoinKm, straight)
		}
	}
	if len(reached) < len(places)*9/10 {
		t.Errorf("%d of %d places within 3 km are reached", len(reached), len(places))
	}
}

// A high vehicle goes round the passage and is told why; a low one does not.
func TestFollowRoundAPassage(t *testing.T) {
	network := island(t)
	g := guide(t, network)
	a, b := passage(t, network)
	v := demo.Trip().Vehicle
	v.HeightM = 2.5
	low, err := g.Follow(context.Background(), v, [][2]orb.Point{{a, b}}, 500)
	if err != nil {
		t.Fatal(err)
	}
	v.HeightM = 3.05
	high, err := g.Follow(context.Background(), v, [][2]orb.Point{{a, b}}, 500)
	if err != nil {
		t.Fatal(err)
	}
	if low[0].Drawn || high[0].Drawn || len(low[0].Avoided) != 0 || high[0].M < low[0].M+100 {
		t.Errorf("low %.0f m %v, high %.0f m", low[0].M, low[0].Avoided, high[0].M)
	}
	if len(high[0].Avoided) == 0 || !isPassage(high[0].Avoided[0]) {
		t.Errorf("avoided %v, want the limit and the vehicle's height", high[0].Avoided)
	}
	sea, err := g.Follow(context.Background(), v, [][2]orb.Point{{a, {a[0], a[1] + 5}}}, 500)
	if err != nil || !sea[0].Drawn || len(sea[0].Line) != 2 {
		t.Errorf("out to sea: %+v, %v, want a straight line", sea, err)
	}
}

// isPassage says that a fact is about a road that is 2.70 m high and a vehicle of 3.05 m.
func isPassage(f fact.Fact) bool {
	why := f.Values["why"].Fact
	return f.Kind == byroad.RoadBarred && why != nil &&
		why.Equal(fact.Of("road.bar.too_high", fact.V{"limit": fact.Metres(2.7, 2), "has": fact.Metres(3.05, 2)}))
}

// A track through the passage is led round it, and keeps what it has on either side; one that ends in it is not.
func TestMatchRoundAPassage(t *testing.T) {
	network := island(t)
	g := guide(t, network)
	a, b := passage(t, network)
	v := demo.Trip().Vehicle
	v.HeightM = 2.5
	high := v
	high.HeightM = 3.05
	led, err := g.Follow(context.Background(), high, [][2]orb.Point{{a, b}}, 500) // 19 km
	if err != nil {
		t.Fatal(err)
	}
	// Farther back than where the way round sets out, by which a low vehicle comes through the passage.
	back := led[0].Line[len(led[0].Line)*4/10]
	low, err := g.Follow(context.Background(), v, [][2]orb.Point{{back, a}, {a, b}}, 500)
	if err != nil {
		t.Fatal(err)
	}
	track, metres := append(low[0].Line.Clone(), low[1].Line...), low[0].M+low[1].M
	match := func(height float64, track orb.LineString) byroad.Leg {
		v.HeightM = height
		legs, err := g.Match(context.Background(), v, track)
		if err != nil || len(legs) != 1 || legs[0].Drawn {
			t.Fatalf("%v m high: %+v, %v, want one leg by road", height, legs, err)
		}
		return legs[0]
	}
	if as := match(2.5, track); math.Abs(as.M-metres) > 20 || as.Avoided != nil || as.Closed != nil {
		t.Errorf("a low vehicle: %.0f m for %.0f m, %v, %v", as.M, metres, as.Avoided, as.Closed)
	}
	round := match(3.05, track)
	if round.M < metres+100 || len(round.Avoided) != 1 || !isPassage(round.Avoided[0]) || round.Closed != nil {
		t.Errorf("a high vehicle: %.0f m for %.0f m, round %v, closed %v", round.M, metres, round.Avoided, round.Closed)
	}
	if first, last := round.Line[0], round.Line[len(round.Line)-1]; geo.DistanceM(first, track[0]) > 20 || geo.DistanceM(last, track[len(track)-1]) > 20 {
		t.Errorf("led from %v to %v, not from %v to %v", first, last, track[0], track[len(track)-1])
	}
	// What was led round is a route that this vehicle is not warned of.
	if again := match(3.05, round.Line); again.Avoided != nil || again.Closed != nil {
		t.Errorf("led round again: %v, %v", again.Avoided, again.Closed)
	}
	if in := match(3.05, endsInside(t, network, track)); len(in.Closed) != 1 || !isPassage(in.Closed[0]) || in.Avoided != nil {
		t.Errorf("into the passage: round %v, closed %v", in.Avoided, in.Closed)
	}
}

// endsInside is a track up to the middle of the passage.
func endsInside(t *testing.T, network *net.Network, track orb.LineString) (out orb.LineString) {
	t.Helper()
	for e := range uint32(network.Edges()) {
		if network.Road(e).Limits.HeightCm != 270 {
			continue
		}
		middle := road.Spot{OK: true, Edge: e, Cm: network.LengthCm(e) / 2}.Point(network)
		line, err := geo.Measure(track)
		if err != nil {
			t.Fatal(err)
		}
		if near := geo.NewCorridor(line).Passes(middle, 20); len(near) > 0 {
			for i, p := range track {
				if line.AlongM(i) < near[0].AlongM {
					out = append(out, p)
				}
			}
			return append(out, middle)
		}
	}
	t.Fatal("the track does not go through the passage")
	return nil
}

// A route through the passage is warned of, and a place behind it is closed.
func TestClosedWay(t *testing.T) {
	network := island(t)
	g := guide(t, network)
	a, b := passage(t, network)
	tr := demo.Trip()
	tr.Vehicle.HeightM = 2.5
	legs, err := g.Follow(context.Background(), tr.Vehicle, [][2]orb.Point{{a, b}}, 500)
	if err != nil {
		t.Fatal(err)
	}
	tr.Route = legs[0].Line
	tr.Vehicle.HeightM = 3.05
	line, err := geo.Measure(tr.Route)
	if err != nil {
		t.Fatal(err)
	}
	c, err := g.Trip(context.Background()).Course(tr, line.LengthM()/1000)
	if err != nil {
		t.Fatal(err)
	}
	if len(c.Cautions) == 0 || !strings.HasPrefix(triptest.Line(c.Cautions[0]), "road.caution.barred where=(road.where places=[(road.at mark=km0.") || !strings.HasSuffix(triptest.Line(c.Cautions[0]), "why=(road.bar.too_high has=3.05m limit=2.70m)") {
		t.Errorf("cautions %q, want the passage and where it is", triptest.Lines(c.Cautions))
	}
}

// A place at the end of a lane under a bridge of 2.5 m: a low vehicle gets
// there, a high one is told what keeps it and where; a place with no road near
// is not known to the roads.
func TestClosedPlace(t *testing.T) {
	at := func(x, y float64) net.Node { return net.Node{Point: orb.Point{x, y}} }
	main := net.Road{Class: net.Primary, Name: "Main", Kmh: [2]float32{80, 80}}
	lane := net.Road{Class: net.Unclassified, Name: "Hollow Lane", Kmh: [2]float32{50, 50}}
	low := lane
	low.Limits.HeightCm = 250
	network, err := net.Build(context.Background(), net.Input{
		Nodes: []net.Node{at(0, 0), at(0.1, 0), at(0.2, 0), at(0.1, 0.01), at(0.1, 0.02)},
		Ways:  []net.Way{{ID: 1, Nodes: []int32{0, 1, 2}, Road: main}, {ID: 2, Nodes: []int32{1, 3}, Road: low}, {ID: 3, Nodes: []int32{3, 4}, Road: lane}},
	})
	if err != nil {
		t.Fatal(err)
	}
	places := []*trip.Place{{ID: "n1", Point: orb.Point{0.1001, 0.02}}, {ID: "n2", Point: orb.Point{0.1, 0.2}}}
	for _, tc := range []struct {
		height float64
		closed string
		km     float64
	}{
		// 0.02° of a meridian, twice: 4 × 1105.7 m (WGS84, 110.574 km a degree at the equator), and 2 × 11 m beside the road.
		{2.3, "", 4.445},
		{3.05, "road.way.barred km=2.2km road=Hollow Lane why=(road.bar.too_high has=3.05m limit=2.50m)", 0},
	} {
		g := guide(t, network)
		tr := demo.Trip()
		tr.Route, tr.CorridorKm, tr.Vehicle.HeightM = orb.LineString{{0, 0}, {0.2, 0}}, 5, tc.height
		roads := g.Trip(context.Background())
		if _, err := roads.Course(tr, 22.264); err != nil {
			t.Fatal(err)
		}
		ways, err := roads.Ways(places)
		if err != nil || len(ways) != 1 || ways[0].Place != 0 {
			t.Fatalf("%v m: ways %+v, %v, want one to the first place", tc.height, ways, err)
		}
		w := ways[0]
		if triptest.Line(w.Closed) != tc.closed || math.Abs(w.Km-tc.km) > 0.02 {
			t.Errorf("%v m: %+v, want %q, %v km", tc.height, w, tc.closed, tc.km)
		}
		if tc.closed == "" && math.Abs(w.LeaveKm-11.132) > 0.01 {
			t.Errorf("left at km %v, want 11.132", w.LeaveKm)
		}
	}
}

// A main road, a ferry from km 11.132 to km 33.396 (0.1° and 0.3° of the
// equator, WGS84) in two pieces, and a road on the other side. The course knows
// the ferry with its minutes, and ways to places leave and join on one side of it.
func TestCourseByFerry(t *testing.T) {
	at := func(x, y float64) net.Node { return net.Node{Point: orb.Point{x, y}} }
	main := net.Road{Class: net.Primary, Name: "Main", Kmh: [2]float32{80, 80}}
	for _, tc := range []struct {
		name      string
		one, two  float32 // km/h of the pieces
		min, half float64 // of all, and of the second piece from its beginning
		estimated bool
	}{
		// 22.264 km at 40 km/h are 33.4 min, 11.132 km each at 40 and at 20 km/h 50.1 min.
		{"known", 40, 40, 33.4 + 30, 16.7, false},
		{"half known", 40, 0, 50.1 + 30, 33.4, true},
	} {
		t.Run(tc.name, func(t *testing.T) {
			boat := func(kmh float32) net.Road {
				return net.Road{Class: net.Ferry, Name: "Blue Boat", Kmh: [2]float32{kmh, kmh}, Flags: net.GasRules}
			}
			network, err := net.Build(context.Background(), net.Input{
				Nodes: []net.Node{at(0, 0), at(0.1, 0), at(0.2, 0), at(0.3, 0), at(0.4, 0), at(0.1, 0.01), at(0.3, 0.01)},
				Ways: []net.Way{{ID: 1, Nodes: []int32{0, 1}, Road: main}, {ID: 2, Nodes: []int32{1, 2}, Road: boat(tc.one)}, {ID: 3, Nodes: []int32{2, 3}, Road: boat(tc.two)},
					{ID: 4, Nodes: []int32{3, 4}, Road: main}, {ID: 5, Nodes: []int32{1, 5}, Road: main}, {ID: 6, Nodes: []int32{3, 6}, Road: main}},
			})
			if err != nil {
				t.Fatal(err)
			}
			tr := demo.Trip()
			tr.Route, tr.CorridorKm = orb.LineString{{0, 0}, {0.1, 0}, {0.2, 0}, {0.3, 0}, {0.4, 0}}, 5
			roads := guide(t, network).Trip(context.Background())
			c, err := roads.Course(tr, 44.528)
			if err != nil {
				t.Fatal(err)
			}
			if len(c.Ferries) != 1 {
				t.Fatalf("ferries %+v, want one of both pieces", c.Ferries)
			}
			f := c.Ferries[0]
			if math.Abs(f.FromKm-11.132) > 0.01 || math.Abs(f.ToKm-33.396) > 0.01 || math.Abs(f.Min-tc.min) > 0.5 || f.Name != "Blue Boat" || (f.Basis.Kind == byroad.SailsGuessed) != tc.estimated || f.Basis.Values["board"].N != 30 {
				t.Errorf("%+v, want Blue Boat from km 11.132 to 33.396 in %v min, estimated %v", f, tc.min, tc.estimated)
			}
			// Who goes on from the middle of the sea has boarded.
			half := tr
			half.Route = tr.Route[2:]
			if on, err := guide(t, network).Trip(context.Background()).Course(half, 22.264); err != nil || len(on.Ferries) != 1 || on.Ferries[0].FromKm != 0 || math.Abs(on.Ferries[0].Min-tc.half) > 0.5 {
				t.Errorf("%v: from the middle %+v, want %v min", err, on.Ferries, tc.half)
			}
			// Sections do not mix land and sea.
			edges := map[int]bool{}
			for _, p := range c.Pace {
				edges[int(math.Round(p.ToKm))] = true
			}
			if !edges[11] || !edges[33] {
				t.Errorf("sections %+v, want one to end at each pier", c.Pace)
			}
			ways, err := roads.Ways([]*trip.Place{{ID: "n1", Point: orb.Point{0.1, 0.01}}, {ID: "n2", Point: orb.Point{0.3, 0.01}}})
			if err != nil || len(ways) != 2 {
				t.Fatalf("ways %+v, %v, want one to each place", ways, err)
			}
			for _, w := range ways {
				want := []float64{11.132, 33.396}[w.Place]
				if math.Abs(w.LeaveKm-want) > 0.01 || math.Abs(w.RejoinKm-want) > 0.01 || math.Abs(w.Km-2.211) > 0.02 {
					t.Errorf("%+v, want to leave and join at km %v", w, want)
				}
			}
		})
	}
}

// A place on an islet beside the route is no stop on the way: a voyage is drawn.
// 3.3 km at 10 km/h are 20 min of sailing.
func TestPlaceByFerry(t *testing.T) {
	at := func(x, y float64) net.Node { return net.Node{Point: orb.Point{x, y}} }
	main := net.Road{Class: net.Primary, Name: "Main", Kmh: [2]float32{80, 80}}
	network, err := net.Build(context.Background(), net.Input{
		Nodes: []net.Node{at(0, 0), at(0.2, 0), at(0.4, 0), at(0.2, 0.03), at(0.2, 0.04)},
		Ways: []net.Way{{ID: 1, Nodes: []int32{0, 1, 2}, Road: main}, {ID: 3, Nodes: []int32{3, 4}, Road: main},
			{ID: 2, Nodes: []int32{1, 3}, Road: net.Road{Class: net.Ferry, Name: "Blue Boat", Kmh: [2]float32{10, 10}}}},
	})
	if err != nil {
		t.Fatal(err)
	}
	tr := demo.Trip()
	tr.Route, tr.CorridorKm = orb.LineString{{0, 0}, {0.4, 0}}, 5
	roads := guide(t, network).Trip(context.Background())
	if _, err := roads.Course(tr, 44.528); err != nil {
		t.Fatal(err)
	}
	ways, err := roads.Ways([]*trip.Place{{ID: "n1", Point: orb.Point{0.2, 0.04}}, {ID: "n2", Point: orb.Point{0.3, 0.001}}})
	if err != nil || len(ways) != 2 {
		t.Fatalf("%+v, %v", ways, err)
	}
	for _, w := range ways {
		if want := []string{"road.way.sails name=Blue Boat", ""}[w.Place]; triptest.Line(w.Closed) != want {
			t.Errorf("%+v, want %q", w, want)
		}
	}
}

// The island's ferry to the islet sails for 45 min by its tag: a trip over
// there takes it without being told.
func TestIslandFerry(t *testing.T) {
	network := island(t)
	g := guide(t, network)
	var from, to orb.Point
	for e := range uint32(network.Edges()) {
		if network.Road(e).Class == net.Ferry {
			ls := network.Line([]net.Step{{Dir: e << 1, ToCm: network.LengthCm(e)}})
			from, to = beyond(ls[0], ls[len(ls)-1]), beyond(ls[len(ls)-1], ls[0])
		}
	}
	tr := demo.Trip()
	legs, err := g.Follow(context.Background(), tr.Vehicle, [][2]orb.Point{{from, to}}, 500)
	if err != nil || legs[0].Drawn {
		t.Fatalf("%+v, %v", legs, err)
	}
	tr.Route = legs[0].Line
	b, err := build.Trip(tr, nil, build.Options{Roads: g.Trip(context.Background())})
	if err != nil {
		t.Fatal(err)
	}
	line, err := geo.Measure(tr.Route)
	if err != nil {
		t.Fatal(err)
	}
	if driven := b.Problem.LengthKm; driven > 2 || line.LengthM() < 15_000 {
		t.Errorf("%v km are driven of %v, want the two ends only", driven, line.LengthM()/1000)
	}
	if min := b.Problem.Drive.Minutes(0, b.Problem.LengthKm); min < 75 || min > 80 {
		t.Errorf("%v min, want 45 at sea, 30 to board and little more", min)
	}
}

// A heavy vehicle is driven more slowly over the same roads.
func TestHeavyIsSlower(t *testing.T) {
	network := island(t)
	g := guide(t, network)
	tr := demo.Trip()
	line, err := geo.Measure(tr.Route)
	if err != nil {
		t.Fatal(err)
	}
	minutes := func(kg float64) (sum float64) {
		tr.Vehicle.MassKg = kg
		c, err := g.Trip(context.Background()).Course(tr, line.LengthM()/1000)
		if err != nil {
			t.Fatal(err)
		}
		at := 0.0
		for _, p := range c.Pace {
			if kg > 3500 && 60/p.MinPerKm > 80.1 {
				t.Errorf("%v kg: %+v is faster than 80 km/h", kg, p)
			}
			sum, at = sum+(p.ToKm-at)*p.MinPerKm, p.ToKm
		}
		return sum
	}
	if light, heavy := minutes(3500), minutes(4250); heavy <= light {
		t.Errorf("light %v min, heavy %v", light, heavy)
	}
}
