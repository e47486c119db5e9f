package job

import (
	"context"
	"slices"
	"sync"
	"testing"
	"time"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"

	"ullage/data/demo"
	"ullage/planner/byroad"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

func TestLinesGoRound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line := rapid.Custom(func(t *rapid.T) orb.LineString {
			var ls orb.LineString
			for range rapid.IntRange(0, 9).Draw(t, "n") {
				ls = append(ls, orb.Point{float64(rapid.Int32Range(-1_800_000_000, 1_800_000_000).Draw(t, "x")) / perDegree, float64(rapid.Int32Range(-900_000_000, 900_000_000).Draw(t, "y")) / perDegree})
			}
			return ls
		})
		want := Followed{[]byroad.Leg{{Line: line.Draw(t, "a"), M: 3, Avoided: []fact.Fact{fact.Of(byroad.RoadBarred, fact.V{"road": fact.Text("x")})}}, {Line: line.Draw(t, "b"), Drawn: true}}}
		b, err := EncodeResponse(Response{ID: 1, Followed: &want})
		if err != nil {
			t.Fatal(err)
		}
		got, err := DecodeResponse(b)
		if err != nil {
			t.Fatal(err)
		}
		for i, l := range got.Followed.Legs {
			w := want.Legs[i]
			if !l.Line.Equal(w.Line) || l.Drawn != w.Drawn || l.M != w.M || !slices.EqualFunc(l.Avoided, w.Avoided, fact.Fact.Equal) {
				t.Fatalf("got %+v, want %+v", l, w)
			}
		}
		f := Follow{Vehicle: trip.Fleet()[0], Points: line.Draw(t, "c")}
		if b, err = EncodeRequest(Request{ID: 1, Follow: &f}); err != nil {
			t.Fatal(err)
		}
		r, err := DecodeRequest(b)
		if err != nil || !r.Follow.Points.Equal(f.Points) {
			t.Fatalf("got %+v, %v, want %+v", r.Follow, err, f)
		}
		if _, err := DecodeRequest(b[:len(b)-1]); err == nil {
			t.Fatal("a line that is cut off is no error")
		}
	})
}

// steps run one after the other on a client in this program.
type steps struct {
	t *testing.T
	c *Client
}

func newSteps(t *testing.T) steps {
	var mu sync.Mutex
	return steps{t, NewClient(inThisProgram(NewHandler()), func(f func()) { mu.Lock(); defer mu.Unlock(); f() })}
}

func wait[T any](t *testing.T, what string, c <-chan T) T {
	t.Helper()
	select {
	case v := <-c:
		return v
	case <-time.After(time.Minute):
		t.Fatalf("waited a minute for %s", what)
		panic("not reached")
	}
}

func (s steps) open(add bool) {
	done := make(chan error, 1)
	s.c.Open("demo.osm.pbf", demo.Extract(), OpenOptions{Add: add}, func(_ Opened, err error) { done <- err })
	if err := wait(s.t, "the places", done); err != nil {
		s.t.Fatal(err)
	}
}

func (s steps) roads() (RoadsRead, error) {
	type result struct {
		r   RoadsRead
		err error
	}
	done := make(chan result, 1)
	s.c.Roads(nil, func(r RoadsRead, err error) { done <- result{r, err} })
	r := wait(s.t, "the roads", done)
	return r.r, r.err
}

// plan returns the answer; nobody looks at what would follow it.
func (s steps) plan(tr trip.Trip) trip.Itinerary {
	done := make(chan Answer, 1)
	s.c.Plan(Plan{Trip: tr}, func(a Answer) {
		if a.Done || a.Last {
			select {
			case done <- a:
			default: // it was told
			}
		}
	})
	a := wait(s.t, "the plan", done)
	s.c.Cancel()
	if a.Err != nil {
		s.t.Fatal(a.Err)
	}
	return a.Itinerary
}

func (s steps) follow(f Follow) (Followed, error) {
	type result struct {
		f   Followed
		err error
	}
	done := make(chan result, 1)
	s.c.Follow(f, func(f Followed, err error) { done <- result{f, err} })
	r := wait(s.t, "the way", done)
	return r.f, r.err
}

// The first plan has estimates; once roads are read the next one follows
// them, and drawing does. Other places have no roads until theirs are read.
func TestRoadsBesidePlans(t *testing.T) {
	s := newSteps(t)
	tr := demo.Trip()
	a, b := tr.Route[0], tr.Route[len(tr.Route)/4]
	s.open(false)
	if it := s.plan(tr); !it.Estimated {
		t.Error("there are true ways before the roads are read")
	}
	if _, err := s.follow(Follow{Vehicle: tr.Vehicle, Points: orb.LineString{a, b}}); err == nil {
		t.Error("a way is found before the roads are read")
	}
	r, err := s.roads()
	if err != nil || r.Roads == 0 {
		t.Fatalf("roads %+v, %v", r, err)
	}
	if it := s.plan(tr); it.Estimated {
		t.Error("there are estimates after the roads are read")
	}
	f, err := s.follow(Follow{Vehicle: tr.Vehicle, WithinM: 500, Points: orb.LineString{a, b, b, a}})
	if err != nil || len(f.Legs) != 2 || f.Legs[0].Drawn || len(f.Legs[0].Line) < 10 {
		t.Errorf("%d legs, %v, want two along the roads", len(f.Legs), err)
	}
	m, err := s.follow(Follow{Vehicle: tr.Vehicle, Track: true, Points: tr.Route})
	if err != nil || len(m.Legs) != 1 || m.Legs[0].Drawn {
		t.Errorf("%d legs, %v, want the route along the roads", len(m.Legs), err)
	}
	s.open(false)
	if it := s.plan(tr); !it.Estimated {
		t.Error("the roads of other places are still followed")
	}
}

// Roads rest while the first plan is made, and are left when other places are
// opened.
func TestRoadsRest(t *testing.T) {
	busy := true
	asked := 0
	p := paced(context.Background(), func() {})
	p.busy = func() bool {
		asked++
		if asked == 3 {
			busy = false
		}
		return busy
	}
	if err := p.Err(); err != nil || asked < 3 {
		t.Errorf("rested for %d questions, %v", asked, err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	p = paced(ctx, cancel)
	p.busy = func() bool { return true }
	if p.Err() == nil {
		t.Error("goes on though nobody wants it")
	}
	h := NewHandler()
	if _, err := h.readRoads(ctx, []Open{{Name: "demo", Data: demo.Extract()}}, func(int64, int64) {}); err == nil {
		t.Error("reads though nobody wants it")
	}
	if h.roads.guide != nil {
		t.Error("what nobody wants is kept")
	}
}
