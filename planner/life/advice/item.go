package advice

import (
	"slices"
	"strings"

	"ullage/planner/fact"
)

// An Item is one line of a how-to or a checklist.
type Item struct {
	ID   string    `json:"id"`
	If   []string  `json:"if,omitempty"` // conditions that must all hold; none: always
	Says fact.Fact `json:"says"`
}

// Conditions of items: what the vehicle has, and what the moment is like.
const (
	HasGas        = "gas"        // runs something on LPG
	HasAbsorption = "absorption" // a fridge for gas, 12 V and mains
	HasDEF        = "def"
	HasCassette   = "cassette"
	HasGrey       = "grey"
	HasFresh      = "fresh"
	HasHookUp     = "hookup" // is plugged in, or will be
	HasLithium    = "lithium"
	HasAwning     = "awning"
	HasBoiler     = "boiler"
	IsFrost       = "frost"
	IsFerry       = "ferry"
	IsHeavy       = "heavy" // allowed mass over 3.5 t
)

// Has says whether a condition holds. A nil one lets all hold.
type Has func(condition string) bool

func (has Has) all(conditions []string) bool {
	return has == nil || !slices.ContainsFunc(conditions, func(c string) bool { return !has(c) })
}

// A row is an item of the tables.
type row struct {
	id     string
	when   string // conditions, separated by blanks
	values fact.V
}

// items are those rows whose conditions hold; their kinds begin with of.
func items(of string, rows []row, has Has) []Item {
	var out []Item
	for _, r := range rows {
		if when := strings.Fields(r.when); has.all(when) {
			out = append(out, Item{r.id, when, fact.Of(kind(of, r.id), r.values)})
		}
	}
	return out
}

// kind is the kind of a line: kind("check", "set-off", "gas") is check.set_off.gas.
func kind(parts ...string) fact.Kind {
	return fact.Kind(strings.ReplaceAll(strings.Join(parts, "."), "-", "_"))
}

// About tells whether a fact is a line of the how-to with an id.
func About(f fact.Fact, id string) bool {
	return strings.HasPrefix(string(f.Kind), string(kind("howto", id))+".")
}
