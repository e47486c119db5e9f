package planner

import (
	"fmt"
	"math"
	"strconv"
	"strings"
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
)

// ruleText says what is wrong, with the words for what the plan has and needs.
var ruleText = map[Rule]struct{ what, have, need string }{
	RuleFormat:   {"not a plan in format " + PlanFormat, "", ""},
	RuleStatus:   {"status does not fit the plan", "is", "want"},
	RuleOrder:    {"stop is unknown, visited twice or out of order", "", ""},
	RuleRequired: {"required stop or its night is left out", "", ""},
	RuleNight:    {"night is not offered or ends before it begins", "", ""},
	RuleService:  {"service is not offered here, taken twice or out of order, or for guests only", "", ""},
	RuleAmount:   {"wrong amount", "is", "want"},
	RuleCapacity: {"over capacity", "would hold", "can hold"},
	RuleReserve:  {"below reserve", "headroom left", "must keep"},
	RuleSpare:    {"not enough in hand to reach the next place", "headroom left", "must keep"},
	RuleDayKm:    {"too many kilometres in a day", "has", "limit"},
	RuleDayMin:   {"too many minutes on the road in a day", "has", "limit"},
	RuleOpen:     {"closed", "arrives at minute", "last opening ends at"},
	RuleNights:   {"wrong number of nights", "has", "want"},
	RuleEnd:      {"wrong level at the end", "is", "want"},
	RuleMoment:   {"stated moment is not the replayed one", "states", "replay gives"},
	RuleCost:     {"stated cost is not the replayed one", "states", "replay gives"},
	RuleBound:    {"bound is above the cost", "bound", "cost"},
}

// Broken is the rule that a plan breaks: which, where, and by how much.
type Broken struct {
	Rule   Rule
	Stop   string // "" at the end of the route, or where no stop is meant
	Tank   string // "" where no tank is meant
	Field  string // the stated number that is wrong, where one is
	Km     float64
	Have   float64
	Need   float64
	Detail string // what else helps, "" for none
}

// Error says what is broken, where, and by how much.
func (b *Broken) Error() string {
	text := ruleText[b.Rule]
	var s strings.Builder
	fmt.Fprintf(&s, "planner: %s: %s", b.Rule, text.what)
	for _, part := range []struct{ word, value string }{{"tank", b.Tank}, {"stop", b.Stop}, {"field", b.Field}} {
		if part.value != "" {
			fmt.Fprintf(&s, ", %s %q", part.word, part.value)
		}
	}
	fmt.Fprintf(&s, ", km %s", short(b.Km))
	if text.have != "" {
		fmt.Fprintf(&s, ": %s %s, %s %s, off by %s", text.have, short(b.Have), text.need, short(b.Need), short(math.Abs(b.Have-b.Need)))
	}
	if b.Detail != "" {
		s.WriteString(" (" + b.Detail + ")")
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
