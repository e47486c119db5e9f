package trip

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"github.com/paulmach/orb"

	"ullage/planner"
	"ullage/planner/life"
	"ullage/planner/life/units"
)

// Validate says what is wrong with a trip, where, and what to do. It returns
// the first fault in the order of the fields.
func (t Trip) Validate() error {
	if t.Format != "" && t.Format != Format {
		return fmt.Errorf("trip: format is %q: this version reads %q", t.Format, Format)
	}
	if _, ok := ParseDate(string(t.Start)); !ok {
		return fmt.Errorf("trip: start date is %q: write it as 2026-06-12", t.Start)
	}
	if t.Start < firstDay || t.Start > lastDay {
		return fmt.Errorf("trip: start date is %s: give a day from %s to %s", t.Start, firstDay, lastDay)
	}
	for _, check := range []func() error{
		t.Vehicle.Validate, t.levelsFit, t.numbersFit, t.Party.validate, t.modelFits, t.pricesFit, t.placesFit, t.routeFits,
	} {
		if err := check(); err != nil {
			return err
		}
	}
	return nil
}

func (t Trip) levelsFit() error {
	for _, id := range slices.Sorted(maps.Keys(t.Levels)) {
		i := slices.IndexFunc(t.Vehicle.Tanks, func(k Tank) bool { return k.ID == id })
		if i < 0 {
			return fmt.Errorf("trip: level of tank %q: the vehicle has no such tank; it has %s", id, t.Vehicle.TankIDs())
		}
		if k := t.Vehicle.Tanks[i]; !within(t.Levels[id], 0, k.Capacity) {
			return fmt.Errorf("trip: level of %s is %v %s: give 0 to %v", k.Name, t.Levels[id], k.Unit, k.Capacity)
		}
	}
	return nil
}

func (t Trip) numbersFit() error {
	for _, check := range []struct {
		what string
		got  float64
		in   Range
	}{
		{"party: adults", float64(t.Party.Adults), AdultsRange},
		{"party: children", float64(t.Party.Children), ChildrenRange},
		{"day: most km", t.Day.MaxKm, DayKmRange},
		{"day: most minutes on the road", t.Day.MaxMin, DayMinRange},
		{"day: departure in minutes after midnight", t.Day.DepartMin, ClockRange},
		{"day: average speed in km/h", t.Day.SpeedKmh, SpeedRange},
		{"stays: fewest nights", float64(t.Stays.MinNights), NightsRange},
		{"stays: most nights", float64(t.Stays.MaxNights), NightsRange},
		{"stays: highest fee", t.Stays.MaxFee, MoneyRange},
		{"beginning in minutes after midnight", t.FromMin, ClockRange},
		{"keys in minutes after midnight", t.KeysByMin, ClockRange},
		{"metres up", t.UpM, ClimbRange},
		{"metres down", t.DownM, ClimbRange},
		{"corridor in km", t.CorridorKm, CorridorRange},
		{"value of an hour", t.ValuePerH, MoneyRange},
	} {
		if !check.in.Has(check.got) {
			return fmt.Errorf("trip: %s is %v: give %v to %v", check.what, check.got, check.in.Least, check.in.Most)
		}
	}
	return t.usualFits()
}

// usualFits checks what 0 stands for the usual of.
func (t Trip) usualFits() error {
	if t.Confidence != 0 && !ConfidenceRange.Has(t.Confidence) {
		return fmt.Errorf("trip: confidence is %v: give 0.5 to 0.99, or 0 for the usual %v", t.Confidence, life.DefaultConfidence)
	}
	for _, f := range t.Learned {
		if !within(f.Factor, life.MinFactor, life.MaxFactor) || !within(f.SD, 0, 10) || !within(f.PriorSD, 0, 10) {
			return fmt.Errorf("trip: learned factor of %s is %v ± %v: give %v to %v, or remove it to start anew", f.Tank, f.Factor, f.SD, life.MinFactor, life.MaxFactor)
		}
	}
	if !GearRange.Has(t.GearKg) {
		return fmt.Errorf("trip: gear is %v kg: give 0 (the usual) to 5000", t.GearKg)
	}
	if err := ferriesAscend(t.Ferries); err != nil {
		return err
	}
	if err := t.validWishes(); err != nil {
		return err
	}
	if t.Circuity != 0 && !CircuityRange.Has(t.Circuity) {
		return fmt.Errorf("trip: circuity is %v: give 1 to 5, or 0 for the default of %v", t.Circuity, DefaultCircuity)
	}
	if t.Stays.MaxNights > 0 && t.Stays.MaxNights < t.Stays.MinNights {
		return fmt.Errorf("trip: stays: at most %d nights but at least %d: raise the most or lower the fewest", t.Stays.MaxNights, t.Stays.MinNights)
	}
	return nil
}

// validWishes says which wish by place and date is none. On the road days may be over.
func (t Trip) validWishes() error {
	for i, w := range t.Wishes {
		if err := w.validate(t.Start); err != nil && t.DoneKm == 0 {
			return fmt.Errorf("trip: wish %d: %w", i+1, err)
		}
	}
	return nil
}

func (p Party) validate() error {
	return cmp.Or(
		oneOf("showers", p.Showers, showerHabits),
		oneOf("toilet", p.Toilet, toiletHabits),
		oneOf("cooking", p.Cooking, cookingHabits),
		oneOf("dishes", p.Dishes, dishesHabits),
		oneOf("devices", p.Devices, deviceHabits))
}

func (t Trip) modelFits() error {
	if m, ok := t.Model(); ok {
		if err := m.Validate(); err != nil {
			return fmt.Errorf("trip: %w", err)
		}
	}
	return nil
}

func (t Trip) pricesFit() error {
	if t.Currency != "" && !units.ValidCurrency(t.Currency) {
		return fmt.Errorf("trip: currency is %q: write a code of ISO 4217, such as EUR or GBP", t.Currency)
	}
	for _, id := range slices.Sorted(maps.Keys(t.Prices)) {
		if _, ok := tankKinds[id]; !ok {
			return fmt.Errorf("trip: price of %q, which is no tank: use one of %s", id, strings.Join(TankIDs(), ", "))
		}
		if p := t.Prices[id]; !MoneyRange.Has(p) {
			return fmt.Errorf("trip: price of %s is %v: give 0 or more", id, p)
		}
	}
	return nil
}

func (t Trip) placesFit() error {
	for _, id := range t.Require {
		if slices.Contains(t.Avoid, id) {
			return fmt.Errorf("trip: place %s is both required and avoided: choose one", id)
		}
	}
	return nil
}

func (t Trip) routeFits() error {
	if len(t.Route) < 2 {
		return fmt.Errorf("trip: the route has %d points: draw or load one with at least 2", len(t.Route))
	}
	return cmp.Or(onEarth("route point", t.Route), onEarth("drawn point", t.Points))
}

func onEarth(what string, line orb.LineString) error {
	for i, p := range line {
		if !within(p[0], -180, 180) || !within(p[1], -90, 90) {
			return fmt.Errorf("trip: %s %d is %v: longitude must be −180 to 180, latitude −90 to 90", what, i+1, p)
		}
	}
	return nil
}

// Validate says what is wrong with a vehicle, where, and what to do.
func (v Vehicle) Validate() error {
	if v.ID == "" {
		return fmt.Errorf("vehicle %q: has no id: give it one", v.Name)
	}
	for _, check := range []struct {
		what     string
		got      float64
		min, max float64
	}{
		{"height in m", v.HeightM, 1, 4.5},
		{"width in m", v.WidthM, 1, 3},
		{"length in m", v.LengthM, 2, 20},
		{"gross mass in kg", v.MassKg, 500, 60000},
	} {
		if !within(check.got, check.min, check.max) {
			return fmt.Errorf("vehicle %s: %s is %v: give %v to %v", v.ID, check.what, check.got, check.min, check.max)
		}
	}
	if v.EmptyKg != 0 && !within(v.EmptyKg, 300, v.MassKg) {
		return fmt.Errorf("vehicle %s: empty mass is %v kg: give 300 to the gross mass of %v, or 0 if it is unknown", v.ID, v.EmptyKg, v.MassKg)
	}
	if v.Life != nil {
		if err := (life.Model{Vehicle: *v.Life, Party: life.Party{Adults: 1}}).Validate(); err != nil {
			return fmt.Errorf("vehicle %s: %w", v.ID, err)
		}
	}
	if len(v.Tanks) == 0 {
		return fmt.Errorf("vehicle %s: has no tanks: give it at least diesel", v.ID)
	}
	seen := map[string]bool{}
	for _, k := range v.Tanks {
		if seen[k.ID] {
			return fmt.Errorf("vehicle %s: tank %q is there twice: remove one", v.ID, k.ID)
		}
		seen[k.ID] = true
		if err := k.validate(); err != nil {
			return fmt.Errorf("vehicle %s: %w", v.ID, err)
		}
		if v.Life != nil && k.Use != (Use{Source: k.Use.Source}) {
			return fmt.Errorf("vehicle %s: tank %s states what it uses, and the vehicle has a life that reckons it: remove one of the two", v.ID, k.ID)
		}
	}
	return nil
}

func (k Tank) validate() error {
	if _, ok := tankKinds[k.ID]; !ok {
		return fmt.Errorf("tank %q is unknown: use one of %s", k.ID, strings.Join(TankIDs(), ", "))
	}
	if k.Kind != planner.Supply && k.Kind != planner.Waste {
		return fmt.Errorf("tank %s: kind is %q: write supply or waste", k.ID, k.Kind)
	}
	if !(k.Capacity > 0 && k.Capacity <= MostCapacity) {
		return fmt.Errorf("tank %s: capacity is %v: give more than 0 and at most %d", k.ID, k.Capacity, MostCapacity)
	}
	if !within(k.Reserve, 0, k.Capacity) {
		return fmt.Errorf("tank %s: reserve is %v: give 0 to the capacity of %v", k.ID, k.Reserve, k.Capacity)
	}
	if !within(k.Start, 0, k.Capacity) {
		return fmt.Errorf("tank %s: start level is %v: give 0 to the capacity of %v", k.ID, k.Start, k.Capacity)
	}
	uses := map[string]float64{"per km": k.Use.PerKm, "per night": k.Use.PerNight, "per person and night": k.Use.PerPersonNight}
	if k.Use.HookUpNight != nil {
		uses["per hook-up night"] = *k.Use.HookUpNight
	}
	for _, what := range slices.Sorted(maps.Keys(uses)) {
		if !within(uses[what], -1e6, 1e6) {
			return fmt.Errorf("tank %s: use %s is %v: give a number", k.ID, what, uses[what])
		}
	}
	return k.endFits()
}

func (k Tank) endFits() error {
	e := k.End
	if e == nil {
		return nil
	}
	for _, end := range []struct {
		what string
		v    *float64
		kind planner.Kind
		max  float64
	}{
		{"at_least", e.AtLeast, planner.Supply, k.Capacity},
		{"refill_price", e.RefillPrice, planner.Supply, 1e6},
		{"at_most", e.AtMost, planner.Waste, k.Capacity},
	} {
		if end.v == nil {
			continue
		}
		if k.Kind != end.kind {
			return fmt.Errorf("tank %s: end %s is for %s tanks: remove it", k.ID, end.what, end.kind)
		}
		if !within(*end.v, 0, end.max) {
			return fmt.Errorf("tank %s: end %s is %v: give 0 to %v", k.ID, end.what, *end.v, end.max)
		}
	}
	return nil
}

// TankIDs lists the ids of the tanks, for people.
func (v Vehicle) TankIDs() string {
	var ids []string
	for _, k := range v.Tanks {
		ids = append(ids, k.ID)
	}
	return strings.Join(ids, ", ")
}

func oneOf[K ~string, V any](what string, got K, table map[K]V) error {
	if _, ok := table[got]; ok {
		return nil
	}
	var words []string
	for _, k := range slices.Sorted(maps.Keys(table)) {
		if k != "" {
			words = append(words, string(k))
		}
	}
	return fmt.Errorf("trip: party: %s is %q: write one of %s", what, got, strings.Join(words, ", "))
}
