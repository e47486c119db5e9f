package road

import (
	"testing"

	"github.com/paulmach/orb"

	"ullage/geo/road/net"
)

// Two ways from west to east: a short one under a bridge of 2.7 m and through a tunnel of unknown height, a long one without.
func TestLowBridge(t *testing.T) {
	p := func(x, y float64) net.Node { return net.Node{Point: orb.Point{7 + x/100, 46 + y/100}} }
	in := net.Input{
		Nodes: []net.Node{p(0, 0), p(1, 0), p(2, 0), p(3, 0), p(1.5, 2), p(3.5, 0)},
		Ways: []net.Way{
			{ID: 1, Nodes: []int32{0, 1}, Road: net.Road{Class: net.Primary, Name: "W"}},
			{ID: 2, Nodes: []int32{1, 2}, Road: net.Road{Class: net.Primary, Name: "Low", Limits: net.Limits{HeightCm: 270}}},
			{ID: 3, Nodes: []int32{2, 3}, Road: net.Road{Class: net.Primary, Name: "Tunnel", Flags: net.Tunnel}},
			{ID: 4, Nodes: []int32{1, 4, 2}, Road: net.Road{Class: net.Secondary, Name: "Round", Flags: net.Toll}},
			{ID: 5, Nodes: []int32{3, 5}, Road: net.Road{Class: net.Ferry, Name: "Boat", Flags: net.GasRules}},
		},
	}
	n := built(t, in)
	high := routed(t, n, net.Vehicle{HeightM: 3.05, MarginM: 0.1}, Fastest)
	car := routed(t, n, net.Vehicle{}, Fastest)
	from, to := high.Snap(in.Nodes[0].Point, 50), high.Snap(in.Nodes[5].Point, 50)
	path, err := high.Query().Route(from, to)
	if err != nil {
		t.Fatal(err)
	}
	free, err := car.Query().Route(from, to)
	if err != nil || free.LengthM >= path.LengthM {
		t.Fatal(free.LengthM, path.LengthM, err)
	}
	why := high.Avoided(free)
	if len(why) != 1 || why[0].Road != "Low" || why[0].Bar != (net.Bar{Why: net.TooHigh, Limit: 2.7, Has: 3.05}) || why[0].Point != high.Snap(in.Nodes[1].Point, 5).Point(n) {
		t.Errorf("avoided %+v", why)
	}
	if list := high.Avoided(path); len(list) != 0 {
		t.Errorf("the path found uses %+v", list)
	}
	var kinds []NoteKind
	for _, x := range high.Notes(path) {
		kinds = append(kinds, x.Kind)
	}
	want := []NoteKind{TollNote, UnstatedHeadroom, FerryNote, GasOnFerry}
	if len(kinds) != len(want) {
		t.Fatalf("notes %v, want %v", kinds, want)
	}
	for i := range want {
		if kinds[i] != want[i] {
			t.Errorf("notes %v, want %v", kinds, want)
		}
	}
	line := n.Line(path.Steps)
	if line[0] != in.Nodes[0].Point || line[len(line)-1] != in.Nodes[5].Point || len(line) != 6 {
		t.Errorf("line %v", line)
	}
	if list, err := high.Query().Route(from, Spot{}); err != ErrNoRoad {
		t.Errorf("%v %v", list, err)
	}
	if _, err := NewRouter(t.Context(), n, net.Vehicle{HeightM: -1}, Fastest); err == nil {
		t.Error("a height of -1 m was taken")
	}
}
