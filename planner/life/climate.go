package life

import (
	_ "embed"
	"math"
)

// climateGrid is air temperature near the ground, monthly means of 1981–2010,
// on a grid of 2.5°, as two harmonics of the year, with the height of the
// ground. Six planes of one byte a cell: mean (0.5 °C), cosine and sine of the
// year (0.25 °C), cosine and sine of the half year (0.1 °C), height (25 m).
//
// Source: NCEP-NCAR Reanalysis 1 long-term monthly means, NOAA Physical
// Sciences Laboratory, public domain (Kalnay et al., "The NCEP/NCAR 40-year
// reanalysis project", Bull. Amer. Meteor. Soc. 77, 1996); heights: ETOPO5 at
// 20 minutes, NOAA National Geophysical Data Center, public domain, mean of
// each cell. climate_make_test.go makes the file. Two harmonics and the
// rounding leave an error of 0.36 °C (root mean square over cells and months).
//
//go:embed climate.bin
var climateGrid string

const (
	gridStep  = 2.5
	gridNorth = 75.0
	gridRows  = 55 // 75° N to 60° S
	gridCols  = 144
	gridCells = gridRows * gridCols

	meanStep, yearStep, halfStep, heightStep = 0.5, 0.25, 0.1, 25.0

	// How much colder it is per metre of height: 6.5 K/km in midsummer, as the
	// standard atmosphere (ISO 2533), 4.5 in midwinter, when cold air lies in the
	// valleys: C. Rolland, "Spatial and seasonal variations of air temperature lapse
	// rates in Alpine regions", J. Climate 16 (2003), has 5.4–5.8 over the year (abstract
	// read), more in summer; the two ends from memory, their mean is 5.5.
	winterLapse, summerLapse = 0.0045, 0.0065

	// tripWeatherC: the mean of a week on the road differs from the normal by
	// 2–2.5 °C (from memory), and the grid from the place by 1.5 °C (TestCityNormals).
	tripWeatherC = 2.9
	// dayWeatherC: one day differs from its week by 3 °C; from memory.
	dayWeatherC = 3.0
)

// Where is a place on the earth. The zero value is a spot in the sea.
type Where struct {
	Lat, Lon float64  // WGS84 degrees; beyond 75° N and 60° S the edge counts
	AltM     *float64 // nil: unknown, the mean height of the ground around it counts
}

// Air is the temperature outside, as the long-term mean of a day of the year.
type Air struct {
	MeanC, DayC, NightC float64 // whole day, 06–22 h, 22–06 h
	MinC                float64 // mean of the coldest hour
	AltM                float64 // height that was counted
	SpreadC             float64 // one standard deviation of a day's mean around MeanC
}

// Outside is the air at a place on a day of the year, from the grid of
// 1981–2010, corrected to the place's height by the season's lapse rate. Compared with
// the published normals of 24 towns the error is 1.5 °C (root mean square); mild coasts
// read up to 4 °C too warm in winter. NaN coordinates give the equator.
func Outside(at Where, yearDay int) Air {
	x := 2 * math.Pi * (float64(yearDay) - 0.5) / 365.25
	weights := [5]float64{meanStep, yearStep * math.Cos(x), yearStep * math.Sin(x), halfStep * math.Cos(2*x), halfStep * math.Sin(2*x)}
	lapse := (winterLapse+summerLapse)/2 + season(at.Lat, yearDay)*(summerLapse-winterLapse)/2
	var sea, ground float64
	for _, c := range around(at) {
		height := heightStep * float64(climateGrid[5*gridCells+c.cell])
		t := lapse * height
		for plane, w := range weights {
			t += w * float64(int8(climateGrid[plane*gridCells+c.cell]))
		}
		sea += c.weight * t
		ground += c.weight * height
	}
	if at.AltM != nil && !math.IsNaN(*at.AltM) {
		ground = *at.AltM
	}
	mean := sea - lapse*ground
	half := dailyRange(at.Lat, yearDay) / 2
	// The day goes as a cosine with its peak at 15 h. Over 06–22 h it is on
	// average sin(120°)/(2π/3) × cos(15°) = 0.40 of half the range above the mean,
	// over the other 8 h twice that below.
	const above = 0.40
	return Air{MeanC: mean, DayC: mean + above*half, NightC: mean - 2*above*half, MinC: mean - half, AltM: ground, SpreadC: math.Hypot(tripWeatherC, dayWeatherC)}
}

type gridPart struct {
	cell   int
	weight float64
}

// around is the four cells around a place with their bilinear weights.
func around(at Where) [4]gridPart {
	lat, lon := at.Lat, at.Lon
	if math.IsNaN(lat) || math.IsInf(lat, 0) {
		lat = 0
	}
	if math.IsNaN(lon) || math.IsInf(lon, 0) {
		lon = 0
	}
	y := min(max((gridNorth-lat)/gridStep, 0), gridRows-1)
	x := math.Mod(math.Mod(lon+180, 360)+360, 360) / gridStep
	row, col := min(int(y), gridRows-2), int(x)
	fy, fx := y-float64(row), x-float64(col)
	at4 := func(r, c int) int { return r*gridCols + c%gridCols }
	return [4]gridPart{
		{at4(row, col), (1 - fy) * (1 - fx)}, {at4(row, col+1), (1 - fy) * fx},
		{at4(row+1, col), fy * (1 - fx)}, {at4(row+1, col+1), fy * fx},
	}
}

// dailyRange is the usual difference of a day's highest and lowest temperature.
//
// Source: G. Hargreaves and Z. Samani's relation as FAO Irrigation and
// Drainage Paper 56 (Allen et al. 1998), eq. 50, writes it, Rs = k √(Tmax −
// Tmin) Ra with k = 0.16 inland, read backwards with the usual clearness. It
// gives 3–5 °C in a winter and 8–14 °C in a summer of Europe; coasts have less.
func dailyRange(lat float64, yearDay int) float64 {
	return math.Pow(clearness(lat, yearDay)/0.16, 2)
}
