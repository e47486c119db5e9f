package roads

import (
	"strings"
	"testing"

	"ullage/data/osm/file"
	"ullage/geo/road/net"
)

// A limit, however small, is one: it is neither forgotten nor made greater.
func TestSmallLimitsHold(t *testing.T) {
	for _, when := range []string{"height>0.001", "height>=0.001", "height>=0.01", "weight>=0.005", "weight > 1 kg"} {
		l, ok := above(when)
		if got := l.HeightCm + l.Mass10Kg; !ok || got != 1 {
			t.Errorf("above(%q) = %+v, %v: want the least limit there is", when, l, ok)
		}
	}
}

// FuzzConditional: whatever a conditional tag says, a road is not made wider by it, and what is not taken as kept is said.
func FuzzConditional(f *testing.F) {
	for _, text := range []string{
		"no @ (weight>3.5)", "no @ (height >= 3 m); no @ width>2.2", "3.5 @ (Mo-Fr 07:00-18:00); 7.5 @ (Nov-Mar; PH)",
		"no @ (weight>7.5 AND 22:00-06:00)", "destination @ (length>10)", "no @ weight>=0.001", ";;@@()", "no @ (height>6'7\")",
	} {
		for key := range conditionalKeys {
			f.Add(byte(key), text)
		}
	}
	f.Fuzz(func(t *testing.T, k byte, text string) {
		key := conditionalKeys[int(k)%len(conditionalKeys)]
		for _, c := range clausesOf(text) {
			if c.value != strings.TrimSpace(c.value) || c.value == "" || c.when != strings.TrimSpace(c.when) {
				t.Fatalf("%q has the clause %+v", text, c)
			}
		}
		stated := net.Limits{HeightCm: 300, WidthCm: 250, LengthCm: 800, Mass10Kg: 350, Axle10Kg: 200}
		r := net.Road{Limits: stated}
		unclear := readConditional(file.Tags{key + ":conditional": text}, &r)
		sizes, bound := closedAbove(text)
		for _, l := range sizes {
			narrow(&stated, l)
			members := 0
			for _, v := range []uint16{l.HeightCm, l.WidthCm, l.LengthCm, l.Mass10Kg, l.Axle10Kg} {
				if v > 0 {
					members++
				}
			}
			if members != 1 {
				t.Fatalf("%q has the limits %+v", text, l)
			}
		}
		if r.Limits != stated && len(unclear) == 0 {
			t.Fatalf("%s=%q gives %+v, not %+v, and nothing is unclear", key, text, r.Limits, stated)
		}
		if has := r.Limits; has.HeightCm > 300 || has.WidthCm > 250 || has.LengthCm > 800 || has.Mass10Kg > 350 || has.Axle10Kg > 200 ||
			min(has.HeightCm, has.WidthCm, has.LengthCm, has.Mass10Kg, has.Axle10Kg) == 0 {
			t.Fatalf("%s=%q gives %+v", key, text, has)
		}
		if key == "access" && !bound && len(unclear) != 1 {
			t.Fatalf("access=%q is taken in silence", text)
		}
	})
}
