package advice

// Checklists are all checklists, with the items whose conditions hold, in the
// order of a trip.
func Checklists(has Has) []Checklist {
	out := make([]Checklist, len(checklists))
	for i, l := range checklists {
		out[i] = l.checklist(has)
	}
	return out
}

var checklists = []list{
	{"set-off", []row{
		{id: "unplug", when: HasHookUp}, {id: "hose"}, {id: "gas", when: HasGas}, {id: "heater"}, {id: "windows"}, {id: "step"},
		{id: "awning", when: HasAwning}, {id: "inside"}, {id: "toilet", when: HasCassette}, {id: "drain", when: HasGrey}, {id: "seats"},
		{id: "levels"}, {id: "height"}, {id: "ferry", when: IsFerry}, {id: "wedges"},
	}},
	{"arrival", []row{
		{id: "may"}, {id: "stand"}, {id: "plug", when: HasHookUp}, {id: "fridge", when: HasAbsorption}, {id: "gas", when: HasGas},
		{id: "alarm"}, {id: "frost", when: IsFrost}, {id: "levels"}, {id: "tomorrow"},
	}},
	{"service", []row{
		{id: "order", when: HasFresh}, {id: "gloves"}, {id: "fresh", when: HasFresh}, {id: "grey", when: HasGrey}, {id: "cassette", when: HasCassette},
		{id: "chemicals", when: HasCassette}, {id: "clean"}, {id: "gas-off", when: HasGas}, {id: "levels"},
	}},
	{"return", []row{
		{id: "cassette", when: HasCassette}, {id: "grey", when: HasGrey}, {id: "fresh", when: HasFresh}, {id: "diesel"}, {id: "def", when: HasDEF},
		{id: "gas", when: HasGas}, {id: "inside"}, {id: "parts"}, {id: "damage"}, {id: "own"}, {id: "time"},
	}},
}
