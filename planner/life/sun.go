package life

import "math"

// extraterrestrial is the sun's energy on a level square metre above the air,
// in kWh a day.
//
// Source: Allen, Pereira, Raes, Smith, "Crop evapotranspiration", FAO
// Irrigation and Drainage Paper 56 (1998), eqs. 21–25.
func extraterrestrial(lat float64, yearDay int) float64 {
	const solar = 0.0820 // MJ/(m² min)
	phi := min(max(lat, -89.9), 89.9) * math.Pi / 180
	x := 2 * math.Pi * float64(yearDay) / 365
	distance := 1 + 0.033*math.Cos(x)
	decl := declination(yearDay)
	sunset := math.Acos(min(max(-math.Tan(phi)*math.Tan(decl), -1), 1))
	mj := 24 * 60 / math.Pi * solar * distance *
		(sunset*math.Sin(phi)*math.Sin(decl) + math.Cos(phi)*math.Cos(decl)*math.Sin(sunset))
	return max(mj, 0) / 3.6
}

// declination of the sun in radians: FAO 56, eq. 24.
func declination(yearDay int) float64 {
	return 0.409 * math.Sin(2*math.Pi*float64(yearDay)/365-1.39)
}

// season is −1 in midwinter and 1 in midsummer.
func season(lat float64, yearDay int) float64 {
	s := declination(yearDay) / 0.409
	if lat < 0 {
		return -s
	}
	return s
}

// clearShares is the usual share of the sun's energy that reaches the ground, by
// latitude, in midwinter and midsummer. From memory: what public irradiation
// maps give for Lisbon, Madrid, Rome, Munich, London and Oslo, divided by
// eq. 21; ±20 %.
var clearShares = []struct{ lat, winter, summer float64 }{
	{0, 0.50, 0.50}, {20, 0.58, 0.56}, {32, 0.54, 0.66}, {38, 0.46, 0.65}, {42, 0.44, 0.61},
	{48, 0.33, 0.47}, {52, 0.29, 0.44}, {60, 0.29, 0.48}, {90, 0.29, 0.47},
}

// clearness is the table above between its lines, by season.
func clearness(lat float64, yearDay int) float64 {
	a := min(math.Abs(lat), 90)
	for i := 1; i < len(clearShares); i++ {
		if lo, hi := clearShares[i-1], clearShares[i]; a <= hi.lat {
			f := (a - lo.lat) / (hi.lat - lo.lat)
			w, s := lo.winter+f*(hi.winter-lo.winter), lo.summer+f*(hi.summer-lo.summer)
			return (w+s)/2 + season(lat, yearDay)*(s-w)/2
		}
	}
	return 0.5
}

// SunKWh is the usual energy of the sun on a level square metre in a day,
// clouds included, ±20 %.
func SunKWh(lat float64, yearDay int) float64 {
	return clearness(lat, yearDay) * extraterrestrial(lat, yearDay)
}

// panelShare of what the panel's plate promises comes out: heat, dirt,
// regulator, cable. 0.70–0.80, from memory (performance ratio as in IEC 61724).
const panelShare = 0.75

// PanelAh is what a panel lying flat on the roof gives to the battery in a
// day. watts is the peak power on its plate, 0 without one; shade is the share
// of the day's sun that trees and houses take, 0 to 1.
func PanelAh(watts, lat float64, yearDay int, shade float64) float64 {
	return max(watts, 0) * SunKWh(lat, yearDay) * panelShare * (1 - min(max(shade, 0), 1)) / batteryV
}
