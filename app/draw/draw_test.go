package draw

import (
	"flag"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"

	"ullage/planner"
	"ullage/planner/trip"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// golden compares a picture with testdata/NAME.svg, one element a line.
func golden(t *testing.T, name string, n Node) {
	t.Helper()
	got := strings.ReplaceAll(svg(n), "><", ">\n<") + "\n"
	path := "testdata/" + name + ".svg"
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s differs from %s; run with -update and look at the change\n%s", name, path, got)
	}
}

// twoDays drive 100 km, sleep, and drive 100 km; a fill at km 50.
func twoDays() trip.Itinerary {
	fill := trip.Call{Place: "n1", Kind: "fuel", Point: orb.Point{10.5, 50.1}, Km: 50, ArriveMin: 570, LeaveMin: 580,
		Tasks: []trip.Task{{Tank: "diesel", Amount: 30, Before: 10, After: 40}}}
	night := trip.Call{Place: "n2", Kind: "stopover", Point: orb.Point{11, 50}, Km: 100, ArriveMin: 640, LeaveMin: 1980, Night: true, Nights: 1}
	return trip.Itinerary{LengthKm: 200,
		Days: []trip.Day{
			{Number: 1, ToKm: 100, StartMin: 540, EndMin: 640, Calls: []trip.Call{fill, night}},
			{Number: 2, FromKm: 100, ToKm: 200, StartMin: 1980, EndMin: 2080},
		},
		Strips: []trip.Strip{
			{Tank: "diesel", Kind: planner.Supply, Unit: "L", Capacity: 50, Reserve: 5,
				Points: []trip.Level{{Km: 0, Min: 540, L: 20}, {Km: 50, Min: 570, L: 10}, {Km: 50, Min: 580, L: 40}, {Km: 100, Min: 640, L: 30}, {Km: 100, Min: 1980, L: 30}, {Km: 200, Min: 2080, L: 10}}},
			{Tank: "grey", Kind: planner.Waste, Unit: "L", Capacity: 100, Reserve: 5,
				Points: []trip.Level{{Km: 0, Min: 540, L: 0}, {Km: 100, Min: 640, L: 0}, {Km: 100, Min: 1980, L: 60}, {Km: 200, Min: 2080, L: 60}}},
		},
	}
}

// banded has more left than planned the longer it goes: supply 4, waste 20.
func banded(it trip.Itinerary) trip.Itinerary {
	for i, wide := range []float64{4, 20} {
		for j, p := range it.Strips[i].Points {
			f := wide * float64(j) / 6
			p.Low, p.Likely, p.High = p.L, p.L+f/2, p.L+f
			if it.Strips[i].Kind == planner.Waste {
				p.Low, p.Likely, p.High = math.Max(p.L-f, 0), math.Max(p.L-f/2, 0), p.L
			}
			it.Strips[i].Points[j] = p
		}
	}
	return it
}

// The likely level lies where the band says, the planned one stays.
func TestBand(t *testing.T) {
	plain := twoDays().Strips[0]
	if _, ok := LikelyAt(plain, 600); ok {
		t.Error("a strip without a band has a likely level")
	}
	s := banded(twoDays()).Strips[0]
	// Between points 2 (580, likely 40+4·2/6/2) and 3 (640, 30+4·3/6/2), by hand.
	if got, ok := LikelyAt(s, 610); !ok || math.Abs(got-(40+4.0/6+30+1)/2) > 1e-9 {
		t.Errorf("likely %v, %v", got, ok)
	}
	if got := LevelAt(s, 610); math.Abs(got-35) > 1e-9 {
		t.Errorf("planned %v, want 35", got)
	}
}

func TestGoldens(t *testing.T) {
	it := twoDays()
	axis := NewAxis(it)
	golden(t, "supply", Strip(it.Strips[0], axis, it.Days))
	band := banded(twoDays())
	golden(t, "supply-band", Strip(band.Strips[0], axis, band.Days))
	golden(t, "waste-band", Strip(band.Strips[1], axis, band.Days))
	golden(t, "waste", Strip(it.Strips[1], axis, it.Days))
	ruler, rows := Ruler(axis, it.Days, []string{"Fri 12", "Sat 13"})
	if rows != 1 {
		t.Errorf("ruler has %d rows, want 1", rows)
	}
	golden(t, "ruler", ruler)
	golden(t, "gauge", Gauge(it.Strips[0], 10, 40))
	route := orb.LineString{{10, 50}, {11, 50}, {12, 50.4}}
	golden(t, "overview", overview(route, it, Backdrop{
		Lines: []BackdropLine{{"coast", orb.LineString{{9.8, 49.9}, {12.2, 49.9}}}, {"primary", orb.LineString{{50, 10}, {51, 10}}}},
		Towns: []Town{{"Fennick & Co", orb.Point{11.5, 50.3}, 1}, {"Under a stop", orb.Point{11, 50}, 2}},
	}, 600, 400))
}

func TestAxisGivesTheNightASlot(t *testing.T) {
	a := NewAxis(twoDays())
	dusk, dawn := a.AtMin(640), a.AtMin(1980)
	// By hand: 200 km of road take 1 − 0.045 of the width, a half each.
	for _, tc := range []struct {
		name      string
		got, want float64
	}{
		{"dusk", dusk.X, 0.4775},
		{"dawn", dawn.X, 0.5225},
		{"end", a.End().X, 1},
		{"start", a.Start().Min, 540},
		{"halfway through the night", a.AtX(0.5).Min, 1310},
		{"before the start", a.AtMin(0).Min, 540},
		{"after the end", a.AtMin(9999).Km, 200},
		{"at km 150", a.AtKm(150).Min, 2030},
		{"at km 50, on arrival", a.AtKm(50).Min, 570},
		{"at the X of the stop, after it", a.AtX(a.AtKm(50).X).Min, 580},
	} {
		if math.Abs(tc.got-tc.want) > 1e-9 {
			t.Errorf("%s: got %v, want %v", tc.name, tc.got, tc.want)
		}
	}
}

func TestAxisOfARefusedPlanIsByKilometres(t *testing.T) {
	a := NewAxis(trip.Itinerary{LengthKm: 80})
	if got := a.AtX(0.25).Km; got != 20 {
		t.Errorf("a quarter is km %v, want 20", got)
	}
	if got := (Axis{}).AtX(0.5); got != (Moment{}) {
		t.Errorf("the zero axis gives %v, want nothing", got)
	}
}

func TestAxisNeverGoesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		it := trip.Itinerary{}
		km, min := 0.0, 540.0
		for i := range rapid.IntRange(1, 8).Draw(t, "days") {
			d := trip.Day{Number: i + 1, FromKm: km, StartMin: min}
			km += rapid.Float64Range(0, 300).Draw(t, "km")
			min += rapid.Float64Range(0, 600).Draw(t, "min")
			d.ToKm, d.EndMin = km, min
			it.Days = append(it.Days, d)
			min = math.Ceil(min/1440)*1440 + 540
		}
		it.LengthKm = km
		a := NewAxis(it)
		last := Moment{}
		for i := range 101 {
			m := a.AtX(float64(i) / 100)
			if m.Km < last.Km || m.Min < last.Min || m.X < 0 || m.X > 1+1e-9 {
				t.Fatalf("at %d %%: %v after %v", i, m, last)
			}
			last = m
		}
	})
}

func TestLevels(t *testing.T) {
	s := twoDays().Strips[0]
	for _, tc := range []struct{ min, want float64 }{
		{0, 20}, {540, 20}, {555, 15}, {575, 25}, {580, 40}, {1000, 30}, {2080, 10}, {9999, 10},
	} {
		if got := LevelAt(s, tc.min); math.Abs(got-tc.want) > 1e-9 {
			t.Errorf("LevelAt(%v) = %v, want %v", tc.min, got, tc.want)
		}
	}
	if p, ok := Lowest(s); !ok || p.Min != 570 {
		t.Errorf("lowest diesel is %v, want the one on arrival at the fill", p)
	}
	if p, ok := Lowest(twoDays().Strips[1]); !ok || p.L != 60 {
		t.Errorf("least room for grey water is at %v, want the level of 60", p)
	}
	if _, ok := Lowest(trip.Strip{}); ok {
		t.Error("a strip without points has a lowest one")
	}
}

func TestHostileNamesStayText(t *testing.T) {
	got := svg(El("text", "title", `"><script>`).Say("<b>&"))
	if want := `<text title="&quot;&gt;&lt;script&gt;">&lt;b&gt;&amp;</text>`; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	if got := num(math.NaN()) + num(-0.01) + num(1.25); got != "001.3" {
		t.Errorf("numbers are %q", got)
	}
}

// svg writes a node as SVG, escaped, deterministic.
func svg(n Node) string {
	var b strings.Builder
	write(&b, n)
	return b.String()
}

var escape = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;")

func write(b *strings.Builder, n Node) {
	if n.Tag == "" {
		return
	}
	b.WriteString("<" + n.Tag)
	for _, a := range n.Attrs {
		b.WriteString(" " + a.Name + `="` + escape.Replace(a.Value) + `"`)
	}
	if n.Text == "" && len(n.Kids) == 0 {
		b.WriteString("/>")
		return
	}
	b.WriteString(">" + escape.Replace(n.Text))
	for _, k := range n.Kids {
		write(b, k)
	}
	b.WriteString("</" + n.Tag + ">")
}

// overview draws the whole route with the places beside it, as a map does
// where none can be shown, and on paper: Ground with Stops over it.
func overview(route orb.LineString, it trip.Itinerary, back Backdrop, w, h float64) Node {
	return El("g").With(Ground(route, back, w, h), Stops(route, it, back.Towns, w, h))
}
