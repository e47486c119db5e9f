package trip

// This file holds what people, nights and kilometres use by default. "From
// memory" marks values that no published page was found for; each can be
// changed in the vehicle's file.

// The texts that a vehicle's file carries name the kind of source. Behind them:
// diesel, vanamericana.ch (van 8–11) and exsis55.com (a coachbuilt never worse
// than 10 over a year); exhaust fluid, car manuals, greenox, fosterfuels; gas,
// a vehicle manual of 2012, p. 81; water, fergsonthemove (a careful crew);
// cassette, caravanning101 and gorv; battery, 2045.co.uk (5–7 Ah/day measured
// without a compressor fridge).
const (
	sourceDiesel   = "van 9.0, low profile 10.5, over-cab 12 L/100 km ±15 %, from memory; owners' logs: van 8–11, coachbuilt at most 10 over a year"
	sourceDEF      = "4 % of the diesel, from memory; published shares run from 1 to 8 %"
	sourceLPG      = "fridge 0.35 kg/day, within 10–25 g/h of a vehicle manual; heater 77.7 g/h for 1 kW, calculated; liquid 0.51 kg/L"
	sourceWater    = "35 L a person and day with a shower aboard, 20 without, 9 where the site has showers, from memory; a careful crew's log: 45 L/day"
	sourceCassette = "2.5 L a person and day with rinsing, 1.5 with site toilets: 1.5–2.9 calculated from published 3–5 days a cassette"
	sourceBattery  = "20–40 Ah/day with an absorption fridge, 50–80 with a compressor, split charge 15 A, booster 30 A, all from memory"
)

// Litres of liquid gas per kg at 15 °C, propane: 1/0.51.
const lpgLPerKg = 1 / 0.51

const (
	defShare     = 0.04 // of the diesel burnt
	defWarningKm = 2400 // range left at the first warning

	dieselHeaterNight = 0.3 * 5 // L: 0.2–0.5 L/h (vanamericana.ch) × an evening and a morning

	// An evening of heating at 1 kW for 5 h, the fridge, two boilers of hot
	// water (10 L by 45 K at 87 %: 47 g each, calculated).
	lpgNight       = (0.0777*5 + 0.35 + 2*0.047) * lpgLPerKg
	lpgHookUpNight = 0.047 * lpgLPerKg // fridge and heater on mains, one boiler
	lpgCooking     = 0.075 * lpgLPerKg // a person: 0.1–0.2 kg/day for a crew of two, from memory

	freshAboard    = 35.0 // L a person and day, shower aboard
	freshNoShower  = 20.0 // cooking, dishes, washing
	freshSite      = 9.0  // 8–10 where the site's showers are used
	freshFrugal    = 10.0
	greyShare      = 0.90 // 0.85–0.95 of the fresh water comes back
	cassetteAboard = 2.5  // L a person and day, rinsing included
	cassetteSite   = 1.5

	absorptionAh = 30.0 // a day
	compressorAh = 65.0
	splitChargeA = 15.0
	boosterA     = 30.0
	chargeKmh    = 60.0  // km driven per hour of charging: 60 km/h mixed, from memory
	chargerAh    = 100.0 // a hook-up night puts back: a 12 V charger of 15 A for 10 h less the loads, from memory

	// A child counts as this share of an adult: from memory.
	childShare = 0.7
)

// A habit scales what a person uses of some tanks in a night. on is where the
// place has what the habit asks for (showers, toilets), off where it has not
// or does not say.
type habit struct{ on, off map[string]float64 }

func same(f map[string]float64) habit { return habit{f, f} }

var waterScale = func(litres float64) map[string]float64 {
	return map[string]float64{"fresh": litres / freshAboard, "grey": litres / freshAboard}
}

// Vehicles state the use of people who do everything aboard; the habits scale
// that. "" is aboard.
var (
	showerHabits = map[string]habit{
		"":       same(nil),
		"aboard": same(nil),
		"sites":  {on: waterScale(freshSite), off: waterScale(freshNoShower)},
		"frugal": same(waterScale(freshFrugal)),
	}
	toiletHabits = map[string]habit{
		"":       same(nil),
		"aboard": same(nil),
		"sites":  {on: map[string]float64{"cassette": cassetteSite / cassetteAboard}},
	}
	// Cooking little saves the gas of the cooker and the dishes: 5 of 20 L
	// (4–15 L a day for a crew, earthroamer.com).
	cookingHabits = map[string]habit{
		"":       same(nil),
		"aboard": same(nil),
		"little": same(map[string]float64{"lpg": 0.3, "fresh": 0.85, "grey": 0.85}),
	}
)

func (h habit) scale(tank string, there bool) float64 {
	m := h.off
	if there {
		m = h.on
	}
	if f, ok := m[tank]; ok {
		return f
	}
	return 1
}

// nightUse is the headroom that one night takes from a tank. stay is what the
// place offers; nil is a place that says nothing.
func nightUse(t Tank, p Party, stay *Stay) float64 {
	var s Stay
	if stay != nil {
		s = *stay
	}
	use := t.Use.PerNight
	if s.HookUp == Yes && t.Use.HookUpNight != nil {
		use = *t.Use.HookUpNight
	}
	person := t.Use.PerPersonNight *
		showerHabits[p.Showers].scale(t.ID, s.Showers == Yes) *
		toiletHabits[p.Toilet].scale(t.ID, s.Toilets == Yes) *
		cookingHabits[p.Cooking].scale(t.ID, false)
	return use + person*(float64(p.Adults)+childShare*float64(p.Children))
}
