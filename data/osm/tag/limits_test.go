package tag

import (
	"math"
	"testing"

	"ullage/data/osm/file/filetest"
	"ullage/planner/trip"
)

// Spellings from Key:maxheight, Key:maxweight and Map_Features/Units of wiki.openstreetmap.org; 6'7" is the example given
// there. Values by the definitions of foot, inch, pound and ton.
func TestLimits(t *testing.T) {
	for _, tc := range []struct {
		tags string
		want trip.Limits
	}{
		{"maxheight=3.5", trip.Limits{HeightM: 3.5}},
		{"maxheight=3.90", trip.Limits{HeightM: 3.9}},
		{"maxheight=3,5 m", trip.Limits{HeightM: 3.5}},
		{"maxheight=3.5m", trip.Limits{HeightM: 3.5}},
		{"maxheight=350 cm", trip.Limits{HeightM: 3.5}},
		{`maxheight=6'7"`, trip.Limits{HeightM: 6*0.3048 + 7*0.0254}},
		{`maxheight=12'`, trip.Limits{HeightM: 12 * 0.3048}},
		{"maxheight=12 ft 6 in", trip.Limits{HeightM: 12*0.3048 + 6*0.0254}},
		{"maxheight=13.5 ft", trip.Limits{HeightM: 13.5 * 0.3048}},
		{"maxheight=6′7″", trip.Limits{HeightM: 6*0.3048 + 7*0.0254}},
		{"maxheight=none", trip.Limits{}},
		{"maxheight=no_indications", trip.Limits{}},
		{"maxheight=default", trip.Limits{Unclear: "maxheight=default"}},
		{"maxheight=below_default", trip.Limits{Unclear: "maxheight=below_default"}},
		{"maxheight=2.5-3", trip.Limits{Unclear: "maxheight=2.5-3"}},
		{"maxheight=0", trip.Limits{Unclear: "maxheight=0"}},
		{"maxheight=-2", trip.Limits{Unclear: "maxheight=-2"}},
		{"maxheight=NaN", trip.Limits{Unclear: "maxheight=NaN"}},
		{"maxheight=1e9", trip.Limits{Unclear: "maxheight=1e9"}},
		{"maxheight=default | maxheight:physical=3.2", trip.Limits{HeightM: 3.2, Unclear: "maxheight=default"}},
		{"maxheight=3.5 | maxheight:physical=3.2", trip.Limits{HeightM: 3.2}},
		{"maxwidth=2.2 | maxlength=10", trip.Limits{WidthM: 2.2, LengthM: 10}},
		{"maxweight=3.5", trip.Limits{MassT: 3.5}},
		{"maxweight=3.5 t", trip.Limits{MassT: 3.5}},
		{"maxweight=3500 kg", trip.Limits{MassT: 3.5}},
		{"maxweight=10 st", trip.Limits{MassT: 9.0718474}},
		{"maxweight=7000 lbs", trip.Limits{MassT: 3.17514659}},
		{"maxweight=7.5 | maxweightrating=3.5", trip.Limits{MassT: 3.5}},
		{"maxheight=3.2 | maxheight:physical=3.5", trip.Limits{HeightM: 3.2}},
		// Each unit by its name, and where a number is none of a vehicle.
		{"maxheight=3500 mm", trip.Limits{HeightM: 3.5}},
		{"maxheight=3.5 metre", trip.Limits{HeightM: 3.5}},
		{"maxheight=3.5 Metres.", trip.Limits{HeightM: 3.5}},
		{"maxheight=3.5 meter", trip.Limits{HeightM: 3.5}},
		{"maxheight=3.5 meters", trip.Limits{HeightM: 3.5}},
		{"maxheight=12 feet", trip.Limits{HeightM: 12 * 0.3048}},
		{"maxheight=12 foot", trip.Limits{HeightM: 12 * 0.3048}},
		{"maxheight=80 in", trip.Limits{HeightM: 80 * 0.0254}},
		{`maxheight=80"`, trip.Limits{HeightM: 80 * 0.0254}},
		{"maxweight=3.5 tonne", trip.Limits{MassT: 3.5}},
		{"maxweight=3.5 tonnes", trip.Limits{MassT: 3.5}},
		{"maxweight=7000 lb", trip.Limits{MassT: 3.17514659}},
		{"maxweight=3 lt", trip.Limits{MassT: 3.0481407264}},
		{"maxheight=0.5", trip.Limits{HeightM: 0.5}},
		{"maxlength=999.5", trip.Limits{LengthM: 999.5}},
		{"maxlength=1000", trip.Limits{Unclear: "maxlength=1000"}},
		{`maxlength=0'6"`, trip.Limits{LengthM: 6 * 0.0254}},
		{`maxlength=3000'6"`, trip.Limits{LengthM: 3000*0.3048 + 6*0.0254}},
		{`maxlength=0'0"`, trip.Limits{Unclear: `maxlength=0'0"`}},
		{`maxlength=3281'0"`, trip.Limits{Unclear: `maxlength=3281'0"`}}, // 1000.05 m
		{"maxwidth=wide | maxlength=long", trip.Limits{Unclear: "maxwidth=wide; maxlength=long"}},
		{"maxweight=3.5 m", trip.Limits{Unclear: "maxweight=3.5 m"}},
	} {
		got := Limits(filetest.Tags(tc.tags))
		if !near(got.HeightM, tc.want.HeightM) || !near(got.WidthM, tc.want.WidthM) || !near(got.LengthM, tc.want.LengthM) ||
			!near(got.MassT, tc.want.MassT) || got.Unclear != tc.want.Unclear {
			t.Errorf("Limits(%s) = %+v, want %+v", tc.tags, got, tc.want)
		}
	}
}

func near(a, b float64) bool { return math.Abs(a-b) <= 1e-9 }

// The first key that has a value counts.
func TestFirst(t *testing.T) {
	tags := filetest.Tags("b=2 | c=3")
	if got := First(tags, "a", "b", "c"); got != "2" {
		t.Errorf("first of a, b, c is %q", got)
	}
	if got := First(tags, "a"); got != "" {
		t.Errorf("of nothing the first is %q", got)
	}
}
