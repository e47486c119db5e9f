package life

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Monthly means of January and July against the grid, each read on the page named:
// DWD: Deutscher Wetterdienst, reference 1981–2010 (agrimet's page); guide:
// oslo.sashaguides.com; site: climatestotravel.com and climasyviajes.com (Madrid Cuatro
// Vientos; Davos 1991–2020); airports: a table of 24-hour averages (ida.liu.se,
// course TDP007); French: a table of French towns (fbertran.github.io), whose
// years are not stated and look older than 1981. Positions and heights of stations
// from memory.
func TestCityNormals(t *testing.T) {
	var sum, bias float64
	cities := []struct {
		name          string
		lat, lon, alt float64
		january, july float64
		source        string
	}{
		{"Munich", 48.16, 11.54, 515, 0.3, 19.4, "DWD"},
		{"Oslo", 59.94, 10.72, 94, -4.3, 16.4, "guide"},
		{"Madrid", 40.37, -3.79, 690, 5.5, 25.0, "site"},
		{"Davos", 46.81, 9.84, 1594, -4.3, 13.1, "site"},
		{"London", 51.48, -0.45, 25, 4.9, 18.4, "airports"},
		{"Rome", 41.80, 12.23, 3, 7.2, 24.4, "airports"},
		{"New York", 40.64, -73.78, 4, -0.4, 24.1, "airports"},
		{"Los Angeles", 33.94, -118.40, 38, 13.7, 20.6, "airports"},
		{"Sydney", -33.95, 151.18, 6, 22.1, 11.8, "airports"},
		{"Paris", 48.82, 2.34, 75, 3.4, 19.1, "French"},
		{"Lille", 50.57, 3.10, 47, 2.4, 17.1, "French"},
		{"Strasbourg", 48.55, 7.64, 150, 0.4, 19.0, "French"},
		{"Lyon", 45.72, 4.94, 198, 2.1, 20.7, "French"},
		{"Toulouse", 43.62, 1.38, 151, 4.7, 20.9, "French"},
		{"Bordeaux", 44.83, -0.69, 47, 5.6, 20.9, "French"},
		{"Brest", 48.44, -4.41, 94, 6.1, 15.6, "French"},
		{"Nice", 43.65, 7.21, 4, 7.5, 22.7, "French"},
		{"Clermont", 45.79, 3.15, 331, 2.6, 19.4, "French"},
		{"Grenoble", 45.36, 5.33, 384, 1.5, 20.1, "French"},
		{"Marseille", 43.44, 5.22, 9, 5.5, 23.3, "French"},
		{"Montpellier", 43.58, 3.96, 2, 5.6, 22.7, "French"},
		{"Nantes", 47.15, -1.61, 26, 5.0, 18.8, "French"},
		{"Rennes", 48.07, -1.73, 36, 4.8, 17.9, "French"},
		{"Vichy", 46.13, 3.40, 249, 2.4, 19.3, "French"},
	}
	for _, c := range cities {
		at := Where{c.lat, c.lon, &c.alt}
		jan, jul := Outside(at, midMonth(1)).MeanC, Outside(at, midMonth(7)).MeanC
		t.Logf("%-10s January %5.1f, published %5.1f; July %5.1f, published %5.1f (%s)", c.name, jan, c.january, jul, c.july, c.source)
		for _, d := range []float64{jan - c.january, jul - c.july} {
			sum += d * d
			bias += d / float64(2*len(cities))
			if math.Abs(d) > 4.5 {
				t.Errorf("%s: off by %.1f °C, want at most 4.5", c.name, d)
			}
		}
	}
	rms := math.Sqrt(sum / float64(2*len(cities)))
	t.Logf("root mean square error %.2f °C, mean error %.2f", rms, bias)
	if rms > 2 {
		t.Errorf("root mean square error %.2f °C, want ≤ 2", rms)
	}
}

// Mean daily minimum and maximum: climatestotravel.com and climasyviajes.com for
// Oslo, Madrid, Davos; london.za.net for Greenwich.
func TestDailyRange(t *testing.T) {
	for _, c := range []struct {
		name      string
		lat       float64
		month     int
		low, high float64
	}{
		{"London", 51.5, 1, 2.4, 7.9}, {"London", 51.5, 7, 13.6, 22.8}, {"Oslo", 59.9, 1, -7, -2}, {"Oslo", 59.9, 7, 12, 22},
		{"Madrid", 40.4, 1, 1, 10}, {"Madrid", 40.4, 7, 18, 32}, {"Davos", 46.8, 1, -8.7, 0}, {"Davos", 46.8, 5, 2.4, 12.8},
	} {
		got, want := dailyRange(c.lat, midMonth(c.month)), c.high-c.low
		t.Logf("%-7s month %d: %4.1f, published %4.1f", c.name, c.month, got, want)
		if math.Abs(got-want) > 4 {
			t.Errorf("%s month %d: %.1f °C, published %.1f, want within 4", c.name, c.month, got, want)
		}
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

// midMonth is the day of the year in the middle of a month, 1 to 12.
func midMonth(month int) int { return int(math.Round((float64(month) - 0.5) * 365.25 / 12)) }
