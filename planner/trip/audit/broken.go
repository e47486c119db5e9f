package audit

import (
	"fmt"
	"time"

	"ullage/planner/fact"
	"ullage/planner/trip"
)

// A Rule is one of the things that every itinerary keeps.
type Rule string

const (
	RuleDate   Rule = "date"   // days follow each other, each with its date
	RuleRoad   Rule = "road"   // kilometres go on where they ended, and add up
	RuleClock  Rule = "clock"  // minutes go on, and add up
	RuleDay    Rule = "day"    // no day is longer than wanted
	RuleNight  Rule = "night"  // each day ends with a night where one may be spent
	RuleHours  Rule = "hours"  // one arrives when one is let in, and not late in the evening
	RuleMove   Rule = "move"   // one stay a place; no moving for a few kilometres, unless it is said
	RuleTank   Rule = "tank"   // levels between empty and full
	RuleAct    Rule = "act"    // no act moves more than a tank holds, and it leads from level to level
	RuleUse    Rule = "use"    // driving uses the same of a tank on each kilometre
	RuleEnd    Rule = "end"    // tanks come back as agreed
	RuleMass   Rule = "mass"   // no departure over the plate
	RuleKeys   Rule = "keys"   // the keys are back in time, or it is said
	RuleWish   Rule = "wish"   // what is wanted is there, what is not wanted is not
	RuleClosed Rule = "closed" // no call at a place that is shut
	RuleCost   Rule = "cost"   // what is paid at the stops is what is paid
)

// Broken is a rule that an itinerary breaks: on which day, at which stop, of which tank.
type Broken struct {
	Rule       Rule
	Day        int
	Stop, Tank string
	Have, Need float64
}

func (b *Broken) Error() string {
	return fmt.Sprintf("sheet: %s, day %d, stop %q, tank %q: %.6g, want %.6g", b.Rule, b.Day, b.Stop, b.Tank, b.Have, b.Need)
}

// SheetBroken is the kind of a fact about a broken rule: {rule} on day {n}.
const SheetBroken fact.Kind = "sheet.broken"

// Fact is for people: that the program is at fault, and where.
func (b *Broken) Fact() fact.Fact {
	return fact.Of(SheetBroken, fact.V{"field": fact.Text(string(b.Rule)), "n": fact.Count(b.Day), "name": fact.Text(b.Stop)})
}

// Open says when a place is open over a number of days: windows in minutes since 00:00
// local of from's day; known is false if its hours cannot be told.
type Open func(p trip.Place, from time.Time, days int) (windows [][2]float64, known bool)

// A checker looks at one itinerary.
type checker struct {
	trip   trip.Trip
	places map[string]*trip.Place
	it     trip.Itinerary
	broken []Broken
}

func (c *checker) breaks(b Broken) { c.broken = append(c.broken, b) }

// near says whether numbers differ by no more than rounding of sums.
func near(a, b float64) bool { return a-b < 0.01 && b-a < 0.01 }

// place of a call; an empty one if there is none such, which breaks a rule elsewhere.
func (c *checker) place(id string) *trip.Place {
	if p := c.places[id]; p != nil {
		return p
	}
	return &trip.Place{ID: id}
}
