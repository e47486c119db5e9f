package life

// Source says in a line where the model's numbers for a tank come from, for
// people; "" for an unknown tank. The constants name their sources one by one.
func Source(tank string) string {
	switch tank {
	case "diesel":
		return "rolling, air, slopes and stops (physics), set to the vehicle's average; without one: van 9 L/100 km, low-profile 10.5 L/100 km, integrated 11 L/100 km, over-cab 12 L/100 km, ±15 %, from memory; owners' logs: van 8–11 L/100 km, coachbuilt at most 10 L/100 km"
	case "def":
		return "4 % of the diesel, from memory; published shares run from 1 to 10 %"
	case "lpg":
		return "heating from the long-term temperature of the place (NCEP-NCAR 1981–2010) and the vehicle's heat loss (EN 1646-1 grade, from memory); fridge 10–25 g/h (a vehicle manual of 2012); cooking 0.1–0.2 kg/day for two, from memory"
	case "fresh", "grey":
		return "drinking 3 L, cooking 2 L, dishes 5 L, washing 9 L, flushing 1 L, shower 15 L a person and day, from memory within published parts; a careful crew's log: 45 L/day"
	case "cassette":
		return "2.5 L a person and day with rinsing, 1.5 L with site toilets; published: 3–5 days a cassette"
	case "battery":
		return "7 Ah/day measured without compressor fridge and devices; the rest calculated or from memory; 15 A split charge, 30 A booster, from memory"
	}
	return ""
}
