package meant_test

import (
	"testing"

	"ullage/data/meant"
)

func TestWhich(t *testing.T) {
	names := []string{"max_km", "max_min", "depart_min", "speed_kmh", "id", "within"}
	for word, want := range map[string]string{
		"max_kms": "max_km", "maxkm": "max_km", "MaxKm": "max_km", "mxa_km": "max_km", "departs_min": "depart_min", "withn": "within",
		"speed": "", "weather": "", "x": "", "": "", "di": "id", "max_mim": "max_min",
	} {
		if got := meant.Which(word, names); got != want {
			t.Errorf("Which(%q) = %q, want %q", word, got, want)
		}
	}
}
