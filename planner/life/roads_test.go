package life

import (
	"math"
	"strings"
	"testing"
)

// Limits as the sources in roads.go give them; a heavy vehicle is slower, and
// planned to be no faster than any country of the table lets it.
func TestMassClasses(t *testing.T) {
	for _, c := range []struct{ kg, top float64 }{{2800, 95}, {3500, 95}, {3501, 80}, {4250, 80}, {7500, 80}} {
		if got := TopKmh(c.kg); got != c.top {
			t.Errorf("TopKmh(%v) = %v, want %v", c.kg, got, c.top)
		}
		if says := MassSays(c.kg); (says != "") != (c.kg > 3500) {
			t.Errorf("%v kg: %q", c.kg, says)
		}
	}
	for _, want := range []string{"may weigh 4250 kg", "AT 70/80, BE 90/90,", "FR 80/110", "with 80 km/h at most"} {
		if says := MassSays(4250); !strings.Contains(says, want) {
			t.Errorf("%q does not say %q", says, want)
		}
	}
	for _, l := range heavy {
		if l.motorway < heavyTopKmh || l.rural > l.motorway {
			t.Errorf("%+v, planned with %v", l, heavyTopKmh)
		}
	}
}

// UK Highway Code, rule 91: 15 minutes after every two hours.
func TestBreaks(t *testing.T) {
	for _, c := range []struct {
		min  float64
		want int
	}{{0, 0}, {-5, 0}, {math.NaN(), 0}, {120, 0}, {121, 1}, {240, 1}, {241, 2}, {600, 4}} {
		if got := Breaks(c.min); got != c.want {
			t.Errorf("Breaks(%v) = %v, want %v", c.min, got, c.want)
		}
	}
}
