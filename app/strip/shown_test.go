package strip

import (
	"testing"

	"ullage/app/draw"
	"ullage/app/model/sample"
	"ullage/app/say"
)

func TestWords(t *testing.T) {
	plan := sample.Plan()
	diesel, grey := plan.Strips[0], plan.Strips[2]
	us := say.Voice{Units: "american"}
	for _, tc := range []struct{ got, want string }{
		{room(say.Voice{}, diesel, 49.2), "49 L left"},
		{room(say.Voice{}, grey, 85), "room for 25 L"}, // of 110 L
		{room(us, grey, 85), "room for 6.6 gal"},       // a gallon is 3.785 L
		{moment(say.Voice{}, plan, draw.Moment{Min: 630, Km: 90}), "Friday 12 June, 10:30, km 90"},
		{moment(us, plan, draw.Moment{Min: 1440, Km: 150}), "Friday 12 June, 00:00, overnight at mile 93"},
	} {
		if tc.got != tc.want {
			t.Errorf("got %q, want %q", tc.got, tc.want)
		}
	}
	if s := shown(us, diesel); s.Unit != "gal" || s.Points[0].L > 16 || diesel.Points[0].L != 60 {
		t.Errorf("in gallons %v %s, and before %v", s.Points[0].L, s.Unit, diesel.Points[0].L)
	}
}
