package life

// Source says in a line where the model's numbers for a tank come from, for
// people; "" for an unknown tank. The constants name their sources one by one.
func Source(tank string) string {
	switch tank {
	case "diesel":
		return "rolling, air, slopes and stops (physics), set to the vehicle's average; without one: van 9.0, low-profile 10.5, integrated 11, over-cab 12 L/100 km ±15 %, from memory; owners' logs: van 8–11, coachbuilt at most 10"
	case "def":
		return "4 % of the diesel, from memory; published shares run from 1 to 8 %"
	case "lpg":
		return "heating from the long-term temperature of the place (NCEP-NCAR 1981–2010) and the vehicle's heat loss (EN 1646-1 grade, from memory); fridge 10–25 g/h (a vehicle manual of 2012); cooking 0.1–0.2 kg/day for two, from memory"
	case "fresh", "grey":
		return "drinking 3, cooking 2, dishes 5, washing 9, flushing 1, shower 15 L a person and day, from memory within published parts; a careful crew's log: 45 L/day"
	case "cassette":
		return "2.5 L a person and day with rinsing, 1.5 with site toilets; published: 3–5 days a cassette"
	case "battery":
		return "7 Ah/day measured without compressor fridge and devices; the rest calculated or from memory; 15 A split charge, 30 A booster, from memory"
	}
	return ""
}
