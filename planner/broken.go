package planner

import (
	"cmp"
	"fmt"
	"math"
	"strconv"
	"strings"

	"ullage/planner/fact"
)

// A Rule is one of the things that every plan must keep.
type Rule string

const (
	RuleFormat   Rule = "format"   // the plan's format name, its finite numbers
	RuleStatus   Rule = "status"   // what the status promises
	RuleOrder    Rule = "order"    // known stops, each once, in the order of the problem
	RuleRequired Rule = "required" // required stops are visited, their night taken
	RuleNight    Rule = "night"    // a night is taken only where one is offered, and before the next departure
	RuleService  Rule = "service"  // only what the stop serves, once, to guests where it is for guests
	RuleAmount   Rule = "amount"   // supply: more than nothing; waste: all that is in the tank
	RuleCapacity Rule = "capacity" // no tank is filled over its capacity
	RuleReserve  Rule = "reserve"  // no headroom falls below its reserve
	RuleSpare    Rule = "spare"    // with backup, enough is in hand to reach the next place
	RuleDayKm    Rule = "day_km"   // kilometres between two nights
	RuleDayMin   Rule = "day_min"  // minutes on the road between two nights
	RuleOpen     Rule = "open"     // service, or arrival for a night, begins while the stop is open
	RuleNights   Rule = "nights"   // nights of the whole trip
	RuleEnd      Rule = "end"      // levels at the end
	RuleMoment   Rule = "moment"   // stated positions, times and levels are the replayed ones
	RuleCost     Rule = "cost"     // stated cost and parts are the replayed ones
	RuleBound    Rule = "bound"    // the bound is not above the cost
	RuleMove     Rule = "move"     // kilometres of the route between two nights in a row
	RuleRest     Rule = "rest"     // days without driving
	RuleKeys     Rule = "keys"     // the end of the route is reached in time
	RuleOne      Rule = "one"      // one stop of a list is visited
	RuleMass     Rule = "mass"     // what tanks weigh together at a departure
	RuleDrain    Rule = "drain"    // no more is let out than is too heavy, and none where the tank is filled
	RuleActs     Rule = "acts"     // in a stay a tank is served before it would not last, and before leaving
)

// Details of a [Broken] rule, where the rule alone says too little.
const (
	NotFinite     fact.Kind = "broken.format.not_finite"   // the cost or the bound
	NotStated     fact.Kind = "broken.status.not_stated"   // end and cost_parts of a plan with visits
	NotEmpty      fact.Kind = "broken.status.not_empty"    // visits, end or cost of a plan that is none
	NoReason      fact.Kind = "broken.status.no_reason"    // for having no plan
	BoundOff      fact.Kind = "broken.status.bound"        // of a plan called optimal
	NightNotThere fact.Kind = "broken.night.not_offered"   // at this stop
	NightTooShort fact.Kind = "broken.night.too_short"     // the next departure is before the arrival
	NightTooMuch  fact.Kind = "broken.night.too_much"      // a night takes more than its tank can be restored in a day
	NothingTaken  fact.Kind = "broken.amount.nothing"      // where more than 0 is wanted
	UnknownTank   fact.Kind = "broken.moment.unknown_tank" // the problem has no such tank
)

// Broken is the rule that a plan breaks: which, where, and by how much.
type Broken struct {
	Rule   Rule
	Stop   string // "" at the end of the route, or where no stop is meant
	Tank   string // "" where no tank is meant
	Field  string // the stated number that is wrong, where one is
	Km     float64
	Have   float64
	Need   float64
	Detail fact.Kind // what it is about the rule, "" where the rule says it
	Found  string    // the text that is wrong, where one is
}

// Error gives the rule and its values; [Broken.Fact] is for people.
func (b *Broken) Error() string {
	var s strings.Builder
	s.WriteString("planner: " + cmp.Or(string(b.Detail), "broken."+string(b.Rule)))
	for _, part := range []struct{ word, value string }{{"tank", b.Tank}, {"stop", b.Stop}, {"field", b.Field}, {"found", b.Found}} {
		if part.value != "" {
			fmt.Fprintf(&s, ", %s %q", part.word, part.value)
		}
	}
	fmt.Fprintf(&s, ", km %s", short(b.Km))
	if b.Have != 0 || b.Need != 0 {
		fmt.Fprintf(&s, ": %s, want %s", short(b.Have), short(b.Need))
	}
	return s.String()
}

// short prints a number with up to four decimals, or more if it is tiny.
func short(x float64) string {
	if r := float64(int64(x*1e4+math.Copysign(0.5, x))) / 1e4; math.Abs(x) < 1e12 && (r != 0 || x == 0) {
		return strconv.FormatFloat(r, 'f', -1, 64)
	}
	return strconv.FormatFloat(x, 'g', 6, 64)
}
