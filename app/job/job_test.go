package job

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"reflect"
	"strings"
	"sync"
	"testing"
	"testing/synctest"
	"time"

	"pgregory.net/rapid"

	"ullage/data/demo"
	"ullage/data/osm"
	"ullage/data/tripfile"
	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

func TestFramesGoRound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := Request{ID: rapid.Int().Draw(t, "id"), Open: &Open{
			Name: rapid.String().Draw(t, "name"), Add: rapid.Bool().Draw(t, "add"),
			Data: rapid.SliceOf(rapid.Byte()).Draw(t, "data")}}
		b, err := EncodeRequest(r)
		if err != nil {
			t.Fatal(err)
		}
		got, err := DecodeRequest(b)
		if err != nil {
			t.Fatal(err)
		}
		if got.ID != r.ID || got.Open.Add != r.Open.Add || !bytes.Equal(got.Open.Data, r.Open.Data) || got.Open.Name != strings.ToValidUTF8(r.Open.Name, "\ufffd") {
			t.Fatalf("got %+v, want %+v", got.Open, r.Open)
		}
	})
}

// TestTripGoesRound: nothing of a trip or an itinerary is lost on the way.
func TestTripGoesRound(t *testing.T) {
	want := demo.Trip()
	b, err := EncodeRequest(Request{ID: 1, Plan: &Plan{Trip: want, Route: want.Route}})
	if err != nil {
		t.Fatal(err)
	}
	r, err := DecodeRequest(b)
	if err != nil {
		t.Fatal(err)
	}
	got := r.Plan.Trip
	got.Route = r.Plan.Route
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got %+v, want %+v", got, want)
	}
	o := Opened{Name: "x", Kind: "trip", Trip: &want, Route: want.Route, Backdrop: "é{}"}
	if b, err = EncodeResponse(Response{ID: 2, Opened: &o}); err != nil {
		t.Fatal(err)
	}
	back, err := DecodeResponse(b)
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(*back.Opened, o) {
		t.Errorf("got %+v, want %+v", *back.Opened, o)
	}
}

func FuzzDecode(f *testing.F) {
	b, _ := EncodeRequest(Request{ID: 3, Open: &Open{Name: "a", Data: []byte("b")}})
	f.Add(b)
	f.Add([]byte{255, 255, 255, 255, '{', '}'})
	f.Add([]byte{2, 0, 0, 0, '{', '}'})
	f.Fuzz(func(t *testing.T, b []byte) {
		_, _ = DecodeRequest(b) // must not panic
		_, _ = DecodeResponse(b)
	})
}

func TestKindOf(t *testing.T) {
	var file bytes.Buffer
	if err := tripfile.Write(&file, demo.Trip()); err != nil {
		t.Fatal(err)
	}
	var fleet bytes.Buffer
	if err := tripfile.WriteFleet(&fleet, trip.Fleet()); err != nil {
		t.Fatal(err)
	}
	for _, tc := range []struct{ name, content, want string }{
		{"extract", string(demo.Extract()), "osm"},
		{"xml", `<?xml version="1.0"?><osm version="0.6">`, "osm"},
		{"gzip", "\x1f\x8b\x08", "osm"},
		{"bzip2", "BZh91AY", "osm"},
		{"gpx", "\ufeff<gpx>", "route"},
		{"utf-16", "\xff\xfe<\x00", "route"},
		{"trip", file.String(), "trip"},
		{"fleet", fleet.String(), "fleet"},
		{"line", `{"type":"LineString","coordinates":[[1,2],[3,4]]}`, "route"},
		{"lines", `{"type":"FeatureCollection","features":[{"geometry":{"type":"Point"}},{"geometry":{"type":"LineString"}}]}`, "route"},
		{"points", `{"type":"FeatureCollection","features":[{"geometry":{"type":"Point"}}]}`, "places"},
		{"broken", `{"type":"Feature`, "route"},
		{"empty", " \n", ""},
		{"letter", "Dear all", ""},
		{"zip", "PK\x03\x04", ""},
	} {
		t.Run(tc.name, func(t *testing.T) {
			got, err := kindOf("f", []byte(tc.content))
			if (err != nil) != (tc.want == "") || err == nil && got != tc.want {
				t.Errorf("kindOf = %q, %v, want %q", got, err, tc.want)
			}
			if err != nil && !strings.Contains(err.Error(), " f: ") {
				t.Errorf("%v does not name the file", err)
			}
		})
	}
}

// collect asks a handler and returns all it says.
func collect(h *Handler, r Request) (out []Response) {
	h.Handle(context.Background(), r, func(r Response) { out = append(out, r) })
	return out
}

func TestHandlerPlansTheDemo(t *testing.T) {
	h := NewHandler()
	all := collect(h, Request{ID: 7, Open: &Open{Name: "demo.osm.pbf", Data: demo.Extract()}})
	o := all[len(all)-1].Opened
	if o == nil || o.Places != len(h.places) || o.Places == 0 || !o.OSM || o.Backdrop == "" || o.Bounds == [4]float64{} {
		t.Fatalf("opened %+v", all[len(all)-1])
	}
	back, err := readBackdrop(o.Backdrop)
	if err != nil {
		t.Fatal(err)
	}
	x, err := osm.Read(context.Background(), "demo", bytes.NewReader(demo.Extract()), osm.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if len(back.Lines) != len(x.Backdrop.Lines) || len(back.Towns) != len(x.Backdrop.Towns) {
		t.Errorf("backdrop has %d lines and %d towns, want %d and %d", len(back.Lines), len(back.Towns), len(x.Backdrop.Lines), len(x.Backdrop.Towns))
	}

	d := demo.Trip()
	all = collect(h, Request{ID: 8, Plan: &Plan{Trip: d, Route: d.Route}})
	first := -1 // that is the answer, with more to say to follow
	for i, r := range all {
		if r.ID != 8 || r.Answer == nil || r.Answer.Last != (i == len(all)-1) {
			t.Fatalf("answer %d is %+v", i, r)
		}
		if first < 0 && r.Answer.Done {
			first = i
		}
		if first >= 0 && (!r.Answer.Done || !reflect.DeepEqual(r.Answer.Itinerary.Days, all[first].Answer.Itinerary.Days)) {
			t.Errorf("answer %d of %d is another plan than the one that was done", i, len(all))
		}
	}
	if first < 0 || first > len(all)-3 || all[first].Answer.Itinerary.Safety != nil || all[len(all)-2].Answer.Itinerary.Safety == nil {
		t.Error("the plan is not shown before the price of safety")
	}
	got := all[len(all)-1].Answer.Itinerary
	if got.Safety == nil || len(got.Others) != 2 {
		t.Errorf("safety %+v, others %+v: want them", got.Safety, got.Others)
	}
	h.wanted = func() bool { return true } // a file waits to be read
	all = collect(h, Request{ID: 9, Plan: &Plan{Trip: d, Route: d.Route}})
	if hurried := all[len(all)-1].Answer; !hurried.Last || len(hurried.Itinerary.Others) > 0 || !reflect.DeepEqual(hurried.Itinerary.Days, got.Days) {
		t.Errorf("with a file waiting: last %v, others %v", hurried.Last, hurried.Itinerary.Others)
	}
	if got.Status != planner.Optimal && got.Status != planner.Feasible || len(got.Days) < 2 {
		t.Errorf("status %s, %d days", got.Status, len(got.Days))
	}
}

func TestOpenReplacesOrAdds(t *testing.T) {
	h := NewHandler()
	a := []trip.Place{{ID: "n1", Kind: "fuel", Name: "old"}, {ID: "n2", Kind: "fuel"}}
	b := []trip.Place{{ID: "n3", Kind: "dump"}, {ID: "n1", Kind: "fuel", Name: "new"}}
	names := func() (s string) {
		for _, p := range h.places {
			s += p.ID + p.Name + " "
		}
		return s
	}
	var o Opened
	h.take(Open{Add: false}, &o, a)
	h.take(Open{Add: true}, &o, b)
	if got := names(); got != "n1new n2 n3 " {
		t.Errorf("after adding: %q", got)
	}
	h.take(Open{Add: false}, &o, b)
	if got := names(); got != "n1new n3 " {
		t.Errorf("after replacing: %q", got)
	}
	h.most = 3
	if err := h.take(Open{Add: true}, &o, []trip.Place{{ID: "n1"}, {ID: "n8"}}); err != nil || len(h.places) != 3 {
		t.Errorf("with as many as there may be: %v, %q", err, names())
	}
	err := h.take(Open{Name: "more", Add: true}, &o, []trip.Place{{ID: "n9"}})
	if says := fact.Why(err).Fact; says == nil || says.Kind != manyPlaces || says.Values["n"].N != 4 || len(h.places) != 3 {
		t.Errorf("with one too many: %v, %q", err, names())
	}
}

func TestErrorsSayWhat(t *testing.T) {
	h := NewHandler()
	for _, r := range []Request{
		{ID: 1},
		{ID: 1, Open: &Open{Name: "cut.osm.pbf", Data: demo.Extract()[:5000]}},
		{ID: 1, Open: &Open{Name: "cut.gpx", Data: []byte("<gpx><trk>")}},
		{ID: 1, Plan: &Plan{}},
	} {
		all := collect(h, r)
		last := all[len(all)-1]
		if last.Error == "" || r.Open != nil && !strings.Contains(last.Error, r.Open.Name) {
			t.Errorf("%+v is answered %+v", r, last)
		}
	}
}

// busy is a link to a side that never answers by itself.
type busy struct {
	receive func([]byte)
	died    func(error)
	frames  [][]byte
	closed  bool
}

func (b *busy) Send(f []byte) error { b.frames = append(b.frames, f); return nil }
func (b *busy) Close()              { b.closed = true }

func (b *busy) say(t *testing.T, r Response) {
	t.Helper()
	f, err := EncodeResponse(r)
	if err != nil {
		t.Fatal(err)
	}
	b.receive(f)
}

func TestLatestPlanWins(t *testing.T) {
	var link *busy
	c := NewClient(func(receive func([]byte), died func(error)) (Link, error) {
		link = &busy{receive: receive, died: died}
		return link, nil
	}, func(f func()) { f() })
	var heard []string
	note := func(who string) func(Answer) {
		return func(a Answer) { heard = append(heard, fmt.Sprint(who, a.Last, a.Err)) }
	}
	c.Plan(Plan{}, note("first "))
	link.say(t, Response{ID: 1, Answer: &Answer{}})
	c.Plan(Plan{}, note("second "))
	link.say(t, Response{ID: 1, Answer: &Answer{Last: true}}) // too late
	link.say(t, Response{ID: 2, Answer: &Answer{Last: true}})
	link.say(t, Response{ID: 2, Answer: &Answer{Last: true}}) // nobody waits any more
	c.Plan(Plan{}, note("third "))
	c.Cancel()
	link.say(t, Response{ID: 3, Answer: &Answer{Last: true}})
	if want := []string{"first false <nil>", "second true <nil>"}; !reflect.DeepEqual(heard, want) {
		t.Errorf("heard %q, want %q", heard, want)
	}
}

// TestWorkerDies: who waits is told, and the next worker is given the places
// that the last one held.
func TestWorkerDies(t *testing.T) { synctest.Test(t, testWorkerDies) }

func testWorkerDies(t *testing.T) {
	var links []*busy
	c := NewClient(func(receive func([]byte), died func(error)) (Link, error) {
		links = append(links, &busy{receive: receive, died: died})
		return links[len(links)-1], nil
	}, func(f func()) { f() })
	again := 0
	c.Open("a", []byte("A"), OpenOptions{Again: func() ([]byte, error) { again++; return []byte("A"), nil }}, func(Opened, error) {})
	c.Open("b", []byte("B"), OpenOptions{Add: true}, func(Opened, error) {})
	links[0].say(t, Response{ID: 1, Opened: &Opened{Kind: "places"}})
	links[0].say(t, Response{ID: 2, Opened: &Opened{Kind: "places"}})
	if c.places[0].Data != nil || c.places[1].Data == nil {
		t.Error("the page holds bytes that can be read again, or not those that cannot")
	}
	var told error
	c.Plan(Plan{}, func(a Answer) { told = a.Err })
	links[0].died(errors.New("out of memory"))
	if told == nil || !strings.Contains(told.Error(), "out of memory") {
		t.Errorf("told %v", told)
	}
	c.Plan(Plan{}, func(Answer) {})
	synctest.Wait()
	if len(links) != 2 || len(links[1].frames) != 3 {
		t.Fatalf("%d workers; the last was sent %d frames, want 2 files and a plan", len(links), len(links[len(links)-1].frames))
	}
	for i, want := range []string{"A", "B"} {
		if r, err := DecodeRequest(links[1].frames[i]); err != nil || string(r.Open.Data) != want || r.Open.Add != (i > 0) {
			t.Errorf("frame %d: %+v, %v", i, r.Open, err)
		}
	}
	if again != 1 {
		t.Errorf("read again %d times, want once", again)
	}
	// One that dies while it is given its places again fails who waits for that.
	links[1].died(errors.New("out of memory"))
	told = nil
	c.Plan(Plan{}, func(a Answer) { told = a.Err })
	links[2].died(errors.New("again"))
	if told == nil || !strings.Contains(told.Error(), "again") {
		t.Errorf("told %v", told)
	}
}

// TestServerStopsTheOlderPlan: a plan asked for later is begun as soon as the
// older one asks its context.
func TestServerStopsTheOlderPlan(t *testing.T) {
	h := NewHandler()
	collect(h, Request{Open: &Open{Name: "demo", Data: demo.Extract()}})
	s := NewServer(h)
	var mu sync.Mutex
	last := map[int]int{}
	done := make(chan struct{})
	stop := func(id int) {
		b, err := EncodeRequest(Request{ID: id, Cancel: true})
		if err != nil {
			t.Error(err)
		}
		s.Receive(b, func([]byte) error { return nil })
	}
	reply := func(b []byte) error {
		r, err := DecodeResponse(b)
		if err != nil {
			t.Error(err)
		}
		mu.Lock()
		defer mu.Unlock()
		if r.Error != "" {
			t.Errorf("request %d: %s", r.ID, r.Error)
		}
		if r.Answer != nil && r.Answer.Done && !r.Answer.Last { // what would follow is of no interest here
			go stop(r.ID)
		}
		if r.Error != "" || r.Answer != nil && r.Answer.Last {
			last[r.ID]++
			if r.ID == 3 {
				close(done)
			}
		}
		return nil
	}
	for id := 1; id <= 3; id++ {
		d := demo.Trip()
		d.CorridorKm += float64(id) / 10
		b, err := EncodeRequest(Request{ID: id, Plan: &Plan{Trip: d, Route: d.Route}})
		if err != nil {
			t.Fatal(err)
		}
		s.Receive(b, reply)
	}
	<-done
	mu.Lock()
	defer mu.Unlock()
	if want := map[int]int{3: 1}; !reflect.DeepEqual(last, want) {
		t.Errorf("ended: %v, want %v", last, want)
	}
}

// TestSlices: whoever asks the context rests once a slice, and not more often.
func TestSlices(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		ctx := paced(context.Background(), func() {})
		begin := time.Now()
		for range 1000 {
			if ctx.Err() != nil {
				t.Fatal(ctx.Err())
			}
		}
		if d := time.Since(begin); d != 0 {
			t.Errorf("rested %v within the first slice", d)
		}
		for range 10 {
			time.Sleep(Slice) // work
			before := time.Now()
			_ = ctx.Err()
			_ = ctx.Err()
			if d := time.Since(before); d != time.Millisecond {
				t.Errorf("rested %v after a slice", d)
			}
		}
	})
}

// Err and Done say the same: who leaves early leaves for all that ask.
func TestPaceEnds(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		ctx, stop := context.WithTimeout(context.Background(), time.Second)
		defer stop()
		p := paced(ctx, stop)
		if p.Err() != nil {
			t.Error("ended at once")
		}
		time.Sleep(2 * time.Second)
		if !errors.Is(p.Err(), context.DeadlineExceeded) {
			t.Error("did not end")
		}
		ctx, stop = context.WithCancel(context.Background())
		p = paced(ctx, stop)
		p.leave = func() bool { return true }
		if !errors.Is(p.Err(), context.Canceled) {
			t.Error("does not leave")
		}
		<-p.Done()
	})
}

func BenchmarkItineraryFrame(b *testing.B) {
	h := NewHandler()
	collect(h, Request{Open: &Open{Name: "demo", Data: demo.Extract()}})
	d := demo.Trip()
	all := collect(h, Request{Plan: &Plan{Trip: d, Route: d.Route}})
	f, err := EncodeResponse(all[len(all)-1])
	if err != nil {
		b.Fatal(err)
	}
	b.SetBytes(int64(len(f)))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := DecodeResponse(f); err != nil {
			b.Fatal(err)
		}
	}
}

// TestRoadsThatKilledTheWorker: roads that the worker died of are not read
// again by the next one, which would die of them too, for ever; roads that had
// been read are, so that the next plan follows them.
func TestRoadsThatKilledTheWorker(t *testing.T) {
	for _, c := range []struct {
		name string
		read bool // before the worker died
	}{{"while it read them", false}, {"after it had read them", true}} {
		t.Run(c.name, func(t *testing.T) {
			synctest.Test(t, func(t *testing.T) {
				var links []*busy
				client := NewClient(func(receive func([]byte), died func(error)) (Link, error) {
					links = append(links, &busy{receive: receive, died: died})
					return links[len(links)-1], nil
				}, func(f func()) { f() })
				client.Open("a", []byte("A"), OpenOptions{}, func(Opened, error) {})
				links[0].say(t, Response{ID: 1, Opened: &Opened{Kind: "places"}})
				var told error
				client.Roads(nil, func(_ RoadsRead, err error) { told = err })
				if c.read {
					links[0].say(t, Response{ID: 2, Roads: &RoadsRead{Roads: 1}})
				}
				links[0].died(errors.New("out of memory"))
				if (told == nil) != c.read {
					t.Errorf("told %v", told)
				}
				client.Plan(Plan{}, func(Answer) {})
				synctest.Wait()
				if len(links) != 2 {
					t.Fatalf("%d workers, want another", len(links))
				}
				asked := false
				for _, f := range links[1].frames {
					r, err := DecodeRequest(f)
					asked = asked || err == nil && r.Roads
				}
				if asked != c.read {
					t.Errorf("the next worker is asked for roads: %v, want %v", asked, c.read)
				}
			})
		})
	}
}
