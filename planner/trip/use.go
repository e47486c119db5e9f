package trip

// This file holds how habits change what the tanks of a vehicle without Life
// state; with it, package life counts people itself. The litres are those of
// package life, of an adult and day.
const (
	freshAboard    = 35.0 // shower aboard
	freshNoShower  = 20.0 // cooking, dishes, washing
	freshSite      = 9.0  // 8–10 where the site's showers are used
	freshFrugal    = 10.0
	cassetteAboard = 2.5 // rinsing included
	cassetteSite   = 1.5

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
	showerHabits = map[Showers]habit{
		"":           same(nil),
		ShowerAboard: same(nil),
		ShowerSites:  {on: waterScale(freshSite), off: waterScale(freshNoShower)},
		ShowerFrugal: same(waterScale(freshFrugal)),
	}
	toiletHabits = map[Toilet]habit{
		"":           same(nil),
		ToiletAboard: same(nil),
		ToiletSites:  {on: map[string]float64{"cassette": cassetteSite / cassetteAboard}},
	}
	// Cooking little saves the gas of the cooker and the dishes: 5 of 20 L
	// (4–15 L a day for a crew, earthroamer.com).
	cookingHabits = map[Cooking]habit{
		"":         same(nil),
		CookAboard: same(nil),
		CookLittle: same(map[string]float64{"lpg": 0.3, "fresh": 0.85, "grey": 0.85}),
	}
)

// Habits that only package life knows what to make of.
var (
	dishesHabits = map[Dishes]bool{"": true, DishesAboard: true, DishesSites: true}
	deviceHabits = map[Devices]bool{"": true, DevicesLittle: true, DevicesUsual: true, DevicesMany: true}
)

// scale is what a habit makes of the use of a tank; there is whether the place has what it asks for.
func (h habit) scale(tank string, there Answer) float64 {
	m := h.off
	if there == Yes {
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
		showerHabits[p.Showers].scale(t.ID, s.Showers) *
		toiletHabits[p.Toilet].scale(t.ID, s.Toilets) *
		cookingHabits[p.Cooking].scale(t.ID, Unknown)
	return use + person*(float64(p.Adults)+childShare*float64(p.Children))
}
