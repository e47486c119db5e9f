package answer

import (
	"slices"

	"ullage/planner/fact"
	"ullage/planner/life"
	"ullage/planner/trip"
)

// Kinds of what would give a trip a plan.
const (
	cureCorridor      fact.Kind = "cure.corridor"
	cureShowersSite   fact.Kind = "cure.showers_site"
	cureShowersFrugal fact.Kind = "cure.showers_frugal"
	cureToiletsSite   fact.Kind = "cure.toilets_site"
	cureCookLittle    fact.Kind = "cure.cook_little"
	cureCooler        fact.Kind = "cure.cooler"
	cureTepid         fact.Kind = "cure.tepid"
	cureLessCare      fact.Kind = "cure.less_care"
	cureCampsites     fact.Kind = "cure.campsites"
	cureStopovers     fact.Kind = "cure.stopovers"
	cureNoHookup      fact.Kind = "cure.no_hookup"
	cureHookup        fact.Kind = "cure.hookup"
	cureAnyFee        fact.Kind = "cure.any_fee"
	cureNotAvoid      fact.Kind = "cure.not_avoid"   // {place}
	cureNotRequire    fact.Kind = "cure.not_require" // {place}
	cureNotWish       fact.Kind = "cure.not_wish"    // {what}
	cureNoBackup      fact.Kind = "cure.no_backup"
	cureEarlier       fact.Kind = "cure.earlier" // {clock}
	cureKeys          fact.Kind = "cure.keys"    // {clock}
)

// A remedy changes a trip in a way that the planner, which knows numbers only,
// cannot think of; ok is false where there is nothing to change.
type remedy struct {
	says  fact.Fact
	field string    // of the form, which it changes
	wish  fact.Kind // of the reason, where it drops a wish; "": it drops none
	apply func(*trip.Trip) bool
}

// set is a remedy that gives a choice its value.
func set[T comparable](r remedy, value T, of func(*trip.Trip) *T) remedy {
	r.apply = func(t *trip.Trip) bool {
		at := of(t)
		changes := *at != value
		*at = value
		return changes
	}
	return r
}

// Fields of the form that remedies and levers change.
const (
	fieldHookup, fieldCampsites, fieldStopovers, fieldMaxFee = "hookup", "campsites", "stopovers", "max_fee"
	fieldBackup, fieldCorridor, fieldDepart, fieldKeys       = "backup", "corridor", "depart", "keys"
	fieldShowers, fieldToilet, fieldCooking                  = "showers", "toilet", "cooking"
	fieldInside, fieldHot, fieldConfidence                   = "inside", "hot", "confidence"
	fieldAvoid, fieldRequire                                 = "avoid", "require"
)

// Kinds of a wish that is to blame.
const (
	wishHookup    fact.Kind = "reason.hookup"
	wishCampsites fact.Kind = "reason.campsites" // none are allowed
	wishStopovers fact.Kind = "reason.stopovers"
	wishMaxFee    fact.Kind = "reason.max_fee"
	wishAvoid     fact.Kind = "reason.avoid"
	wishOne       fact.Kind = "reason.wish" // {what}
)

// wishes are those of a trip that can be dropped.
func (b asker) wishes() []remedy {
	out := []remedy{
		set(remedy{says: fact.Of(cureNoHookup, nil), field: fieldHookup, wish: wishHookup}, false, func(t *trip.Trip) *bool { return &t.Stays.HookUp }),
		set(remedy{says: fact.Of(cureCampsites, nil), field: fieldCampsites, wish: wishCampsites}, true, func(t *trip.Trip) *bool { return &t.Stays.Campsites }),
		set(remedy{says: fact.Of(cureStopovers, nil), field: fieldStopovers, wish: wishStopovers}, true, func(t *trip.Trip) *bool { return &t.Stays.Stopovers }),
		set(remedy{says: fact.Of(cureAnyFee, nil), field: fieldMaxFee, wish: wishMaxFee}, 0, func(t *trip.Trip) *float64 { return &t.Stays.MaxFee }),
		set(remedy{says: fact.Of(cureNoBackup, nil), field: fieldBackup}, false, func(t *trip.Trip) *bool { return &t.Backup }),
	}
	for _, id := range b.Trip.Avoid {
		out = append(out, remedy{says: fact.Of(cureNotAvoid, fact.V{"place": b.placeOf(id)}), field: fieldAvoid, wish: wishAvoid, apply: func(t *trip.Trip) bool { return drop(&t.Avoid, id) }})
	}
	for i, w := range b.Trip.Wishes {
		what := fact.V{"what": fact.Clause(w.Says(b.placeOf))}
		out = append(out, remedy{says: fact.Of(cureNotWish, what), field: fieldRequire, wish: wishOne, apply: func(t *trip.Trip) bool {
			was := len(t.Wishes)
			t.Wishes = slices.DeleteFunc(slices.Clone(t.Wishes), func(o trip.Wish) bool { return o == b.Trip.Wishes[i] })
			return len(t.Wishes) < was
		}})
	}
	for _, id := range b.Trip.Require {
		out = append(out, remedy{says: fact.Of(cureNotRequire, fact.V{"place": b.placeOf(id)}), field: fieldRequire, apply: func(t *trip.Trip) bool { return drop(&t.Require, id) }})
	}
	return out
}

// drop takes an entry out of a list that others may hold too.
func drop(list *[]string, entry string) bool {
	was := len(*list)
	*list = slices.DeleteFunc(slices.Clone(*list), func(x string) bool { return x == entry })
	return len(*list) < was
}

// placeOf is a place by its id, as people call it.
func (b asker) placeOf(id string) fact.Value {
	if i := slices.IndexFunc(b.Places, func(p trip.Place) bool { return p.ID == id }); i >= 0 {
		return b.Places[i].Called()
	}
	return fact.Text(id)
}

// earlierMin is how much earlier one can set off, laterMin how much later the
// keys can be asked for. Own choice: what people and desks agree to.
const earlierMin, laterMin = 90, 120

// habits are what people can do otherwise, where none of their wishes is in the way.
var habits = []remedy{
	{says: fact.Of(cureCorridor, nil), field: fieldCorridor, apply: func(t *trip.Trip) bool {
		was := t.CorridorKm
		t.CorridorKm = min(2*was, trip.MostCorridorKm)
		return t.CorridorKm > was
	}},
	set(remedy{says: fact.Of(cureHookup, nil), field: fieldHookup}, true, func(t *trip.Trip) *bool { return &t.Stays.HookUp }),
	set(remedy{says: fact.Of(cureShowersSite, nil), field: fieldShowers}, trip.ShowerSites, func(t *trip.Trip) *trip.Showers { return &t.Party.Showers }),
	set(remedy{says: fact.Of(cureShowersFrugal, nil), field: fieldShowers}, trip.ShowerFrugal, func(t *trip.Trip) *trip.Showers { return &t.Party.Showers }),
	set(remedy{says: fact.Of(cureToiletsSite, nil), field: fieldToilet}, trip.ToiletSites, func(t *trip.Trip) *trip.Toilet { return &t.Party.Toilet }),
	set(remedy{says: fact.Of(cureCookLittle, nil), field: fieldCooking}, trip.CookLittle, func(t *trip.Trip) *trip.Cooking { return &t.Party.Cooking }),
	{says: fact.Of(cureCooler, fact.V{"kept": fact.Celsius(coolC), "cold": fact.Celsius(coolNightC)}), field: fieldInside, apply: cooler},
	{says: fact.Of(cureTepid, fact.V{"kept": fact.Celsius(life.HotEnough)}), field: fieldHot, apply: tepid},
	{says: fact.Of(cureLessCare, fact.V{"trips": fact.Count(100 * lessConfidence)}), field: fieldConfidence, apply: lessCare},
}

// clocks are remedies of a trip's hours.
func clocks(t trip.Trip) []remedy {
	depart, keys := max(t.Day.DepartMin-earlierMin, 0), min(t.KeysByMin+laterMin, trip.ClockRange.Most)
	return []remedy{
		set(remedy{says: fact.Of(cureEarlier, fact.V{"clock": fact.Clock(depart)}), field: fieldDepart}, depart, func(t *trip.Trip) *float64 { return &t.Day.DepartMin }),
		{says: fact.Of(cureKeys, fact.V{"clock": fact.Clock(keys)}), field: fieldKeys, apply: func(t *trip.Trip) bool {
			changes := t.KeysByMin > 0 && t.KeysByMin < keys
			if changes {
				t.KeysByMin = keys
			}
			return changes
		}},
	}
}

// remedies of a trip: wishes that can be dropped first, then what else can be done.
func (b asker) remedies() []remedy { return slices.Concat(b.wishes(), habits, clocks(b.Trip)) }

// tepid keeps the water no warmer than is enough for dishes and hands.
func tepid(t *trip.Trip) bool {
	changes := t.Comfort.HotC != life.HotEnough
	t.Comfort.HotC = life.HotEnough
	return changes
}

const (
	coolC, coolNightC = 18, 12
	lessConfidence    = 0.75
)

// cooler wishes less warmth, where more is wished and the vehicle knows what that means.
func cooler(t *trip.Trip) bool {
	if t.Vehicle.Life == nil || t.Comfort.InsideC != 0 && t.Comfort.InsideC <= coolC {
		return false
	}
	t.Comfort.InsideC, t.Comfort.NightC = coolC, coolNightC
	return true
}

// lessCare plans with less than the usual care; nobody is told to count on luck.
func lessCare(t *trip.Trip) bool {
	if t.Vehicle.Life == nil || t.Confident() <= lessConfidence {
		return false
	}
	t.Confidence = lessConfidence
	return true
}
