package life

// An Item is one line of a how-to or a checklist. ID stays the same over
// versions, so that a tick can be stored and a text translated.
type Item struct {
	ID   string   `json:"id"`
	Text string   `json:"text"`
	If   []string `json:"if,omitempty"` // conditions that must all hold; none: always
}

// A HowTo says how a kind of stop is done, what can go wrong, and who decides
// where this text and the place disagree.
type HowTo struct {
	ID       string `json:"id"` // a tank id, or night, ferry, driving, heating, hot-water, frost, awning
	Title    string `json:"title"`
	Steps    []Item `json:"steps"`
	Cautions []Item `json:"cautions"`
	Defer    string `json:"defer"` // never left out
}

// A Checklist is what is ticked off at one moment.
type Checklist struct {
	ID    string `json:"id"` // set-off, arrival, service, return
	Title string `json:"title"`
	Items []Item `json:"items"`
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

// holds says whether all conditions of an item hold. A nil has holds all.
func (i Item) holds(has func(condition string) bool) bool {
	for _, c := range i.If {
		if has != nil && !has(c) {
			return false
		}
	}
	return true
}

func those(items []Item, has func(string) bool) []Item {
	var out []Item
	for _, i := range items {
		if i.holds(has) {
			out = append(out, i)
		}
	}
	return out
}

// HowToFor is the how-to with an id, with the items whose conditions hold; has
// nil takes all. ok is false if there is none.
func HowToFor(id string, has func(condition string) bool) (h HowTo, ok bool) {
	for _, h := range howTos() {
		if h.ID == id {
			h.Steps, h.Cautions = those(h.Steps, has), those(h.Cautions, has)
			return h, true
		}
	}
	return HowTo{}, false
}

// HowTos are all how-tos, whole, in the order of a day.
func HowTos() []HowTo { return howTos() }

// ChecklistFor is the checklist with an id, with the items whose conditions
// hold; has nil takes all. ok is false if there is none.
func ChecklistFor(id string, has func(condition string) bool) (c Checklist, ok bool) {
	for _, c := range checklists() {
		if c.ID == id {
			c.Items = those(c.Items, has)
			return c, true
		}
	}
	return Checklist{}, false
}

// Checklists are all checklists, whole, in the order of a trip.
func Checklists() []Checklist { return checklists() }

// Conditions of a model on a day, for [HowToFor] and [ChecklistFor]. more
// holds what only the trip knows: awning, ferry, hookup, heavy.
func (m Model) Conditions(air Air, more ...string) func(condition string) bool {
	v := m.Vehicle
	holds := map[string]bool{
		HasGas: v.HasLPG, HasAbsorption: v.Fridge == Absorption, HasDEF: v.DEFShare >= 0, HasLithium: v.Battery.Chemistry == LiFePO4,
		HasBoiler: v.Heater != NoHeater, HasCassette: true, HasGrey: true, HasFresh: true, IsFrost: air.MinC < FrostDumpC,
	}
	for _, c := range more {
		holds[c] = true
	}
	return func(c string) bool { return holds[c] }
}
