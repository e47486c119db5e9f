package life

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Monthly means of January and July at weather stations, against the grid.
//
// Munich: Deutscher Wetterdienst, reference 1981–2010, as agrimet's page shows
// it; Oslo: 1961–90, from a travel guide's table; Madrid and Davos: a climate
// site's pages (Cuatro Vientos; 1991–2020). The others are 1981–2010 normals
// of the national services from memory.
func TestCityNormals(t *testing.T) {
	var sum float64
	cities := []struct {
		name          string
		lat, lon, alt float64
		january, july float64
		source        string
	}{
		{"Munich", 48.16, 11.54, 515, 0.3, 19.4, "DWD"},
		{"Oslo", 59.94, 10.72, 94, -4.3, 16.4, "seen, 1961–90"},
		{"Madrid", 40.37, -3.79, 690, 5.5, 25.0, "seen"},
		{"Davos", 46.81, 9.84, 1594, -4.3, 13.1, "seen, 1991–2020"},
		{"London", 51.48, -0.45, 25, 5.2, 18.7, "memory"},
		{"Paris", 48.82, 2.34, 75, 4.9, 20.5, "memory"},
		{"Berlin", 52.46, 13.30, 51, 0.6, 19.1, "memory"},
		{"Vienna", 48.25, 16.36, 198, 0.3, 20.7, "memory"},
		{"Lisbon", 38.72, -9.15, 77, 11.6, 22.6, "memory"},
		{"Helsinki", 60.17, 24.94, 4, -3.9, 17.8, "memory"},
		{"Edinburgh", 55.97, -3.21, 23, 4.3, 15.2, "memory"},
		{"Innsbruck", 47.26, 11.38, 578, -1.2, 18.9, "memory"},
		{"Rome", 41.80, 12.23, 3, 8.0, 23.5, "memory"},
	}
	for _, c := range cities {
		at := Where{c.lat, c.lon, &c.alt}
		jan, jul := Outside(at, MidMonth(1)).MeanC, Outside(at, MidMonth(7)).MeanC
		t.Logf("%-10s January %5.1f, published %5.1f; July %5.1f, published %5.1f (%s)", c.name, jan, c.january, jul, c.july, c.source)
		for _, d := range []float64{jan - c.january, jul - c.july} {
			sum += d * d
			if math.Abs(d) > 4 {
				t.Errorf("%s: off by %.1f °C, want at most 4", c.name, d)
			}
		}
	}
	rms := math.Sqrt(sum / float64(2*len(cities)))
	t.Logf("root mean square error %.2f °C", rms)
	if rms > 2 {
		t.Errorf("root mean square error %.2f °C, want ≤ 2", rms)
	}
}

func TestOutsideProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lat, lon := rapid.Float64Range(-90, 90).Draw(t, "lat"), rapid.Float64Range(-540, 540).Draw(t, "lon")
		day := rapid.IntRange(1, 366).Draw(t, "day")
		low, high := rapid.Float64Range(0, 2000).Draw(t, "low"), rapid.Float64Range(2000, 4000).Draw(t, "high")
		a, b := Outside(Where{lat, lon, &low}, day), Outside(Where{lat, lon, &high}, day)
		if a.MeanC < b.MeanC {
			t.Errorf("warmer higher up: %v at %v m, %v at %v m", a.MeanC, low, b.MeanC, high)
		}
		if !(a.MinC <= a.NightC && a.NightC <= a.MeanC && a.MeanC <= a.DayC) {
			t.Errorf("night is not the coldest: %+v", a)
		}
		if d := math.Abs((16*a.DayC+8*a.NightC)/24 - a.MeanC); d > 1e-9 {
			t.Errorf("day and night do not add up: off by %v", d)
		}
		near := Outside(Where{lat, lon + 0.01, &low}, day)
		if math.Abs(near.MeanC-a.MeanC) > 1 {
			t.Errorf("a jump of %v °C within 0.01°", near.MeanC-a.MeanC)
		}
	})
}

func TestOutsideOddPlaces(t *testing.T) {
	for _, at := range []Where{{math.NaN(), math.Inf(1), nil}, {90, 180, nil}, {-90, -180, nil}, {0, 359.99, nil}} {
		if a := Outside(at, 400); math.IsNaN(a.MeanC) || a.MeanC < -60 || a.MeanC > 45 {
			t.Errorf("Outside(%v) = %+v", at, a)
		}
	}
}

// FAO 56, example 8: Ra = 32.2 MJ/(m² day) on 3 September at 20° S. From memory.
func TestExtraterrestrial(t *testing.T) {
	if got := extraterrestrial(-20, 246) * 3.6; math.Abs(got-32.2) > 0.1 {
		t.Errorf("Ra = %v MJ/m², want 32.2", got)
	}
	if got := extraterrestrial(80, 356); got != 0 {
		t.Errorf("polar night has %v kWh", got)
	}
}

// Energy of the sun on a level square metre, kWh a day: what public irradiation
// maps give, from memory, ±25 %.
func TestSun(t *testing.T) {
	for _, c := range []struct {
		name           string
		lat            float64
		december, june float64
	}{{"Madrid", 40.4, 1.9, 7.4}, {"Rome", 41.9, 1.7, 7.0}, {"Munich", 48.1, 0.85, 5.4}, {"London", 51.5, 0.6, 4.9}, {"Oslo", 59.9, 0.2, 5.5}} {
		for i, want := range []float64{c.december, c.june} {
			if got := SunKWh(c.lat, []int{350, 166}[i]); math.Abs(got/want-1) > 0.25 {
				t.Errorf("%s: %v kWh/m², published %v", c.name, got, want)
			}
		}
	}
}
