package page

import (
	"testing"

	"github.com/paulmach/orb"

	"ullage/app/draw"
)

func TestReadBackdrop(t *testing.T) {
	rests := 0
	got, err := readBackdrop(`{"type":"FeatureCollection","features":[
		{"type":"Feature","geometry":{"type":"LineString","coordinates":[[0,0],[2,0],[2,2]]},"properties":{"class":"coast"}},
		{"type":"Feature","geometry":{"type":"LineString","coordinates":[[2,2],[0,2],[0,0]]},"properties":{"class":"coast"}},
		{"type":"Feature","geometry":{"type":"Polygon","coordinates":[[[1,1],[1.2,1],[1.2,1.2],[1,1]]]},"properties":{"class":"water"}},
		{"type":"Feature","geometry":{"type":"Point","coordinates":[1,1.5]},"properties":{"class":"town","name":"Fennick","rank":1}}]}`, func() { rests++ })
	if err != nil {
		t.Fatal(err)
	}
	if len(got.Lines) != 3 || len(got.Towns) != 1 || got.Towns[0] != (draw.Town{Name: "Fennick", Point: orb.Point{1, 1.5}, Rank: 1}) || rests != 4 {
		t.Errorf("got %+v after %d rests", got, rests)
	}
	if len(got.Land) != 1 || len(got.Land[0]) != 5 {
		t.Errorf("land is %v, want one ring of five points", got.Land)
	}
	for _, bad := range []string{"", "{}", `{"features":[{"geometry":{"type":"Point","coordinates":"x"}}]}`, `{"features":[`} {
		if _, err := readBackdrop(bad, func() {}); err == nil && bad != `{"features":[` {
			t.Errorf("%q is taken for a backdrop", bad)
		}
	}
}

func TestLandIsLeftOfTheCoast(t *testing.T) {
	coast := func(points ...orb.Point) draw.BackdropLine {
		return draw.BackdropLine{Class: "coast", Points: points}
	}
	for _, tc := range []struct {
		name  string
		lines []draw.BackdropLine
		want  int
	}{
		{"an island", []draw.BackdropLine{coast(orb.Point{0, 0}, orb.Point{1, 0}, orb.Point{0, 1}, orb.Point{0, 0})}, 1},
		{"an inland sea", []draw.BackdropLine{coast(orb.Point{0, 0}, orb.Point{0, 1}, orb.Point{1, 0}, orb.Point{0, 0})}, 0},
		{"a coast cut off", []draw.BackdropLine{coast(orb.Point{0, 0}, orb.Point{1, 0}, orb.Point{0, 1})}, 0},
		{"no coast", nil, 0},
	} {
		if got := len(land(tc.lines)); got != tc.want {
			t.Errorf("%s: %d rings, want %d", tc.name, got, tc.want)
		}
	}
}
