package life

// This file holds the checklists: common practice, no source.

func checklists() []Checklist {
	return []Checklist{
		{"set-off", "Before you drive off", []Item{
			item("unplug", "Hook-up cable out, pillar first; cable stowed", HasHookUp),
			item("hose", "Water hose off and stowed, caps closed"),
			item("gas", "Gas off at the cylinder, fridge on 12 V", HasGas),
			item("heater", "Heater and boiler off, or as the handbook allows for driving"),
			item("windows", "Windows, hatches and roof vents closed and locked"),
			item("step", "Step in, awning in, aerial down"),
			item("awning", "Awning locked", HasAwning),
			item("inside", "Cupboards, fridge and doors locked; heavy things low and tied"),
			item("toilet", "Toilet slide closed", HasCassette),
			item("drain", "Grey outlet closed", HasGrey),
			item("seats", "Everybody on a seat with a belt, children in theirs"),
			item("levels", "Levels read and entered"),
			item("height", "Height in mind, mirrors set"),
			item("ferry", "Ferry today: gas closed, size and gas as booked", IsFerry),
			item("wedges", "Wedges in, walk around once"),
		}},
		{"arrival", "When you arrive", []Item{
			item("may", "Sign read, owner asked, fee paid"),
			item("stand", "Level, handbrake, gear in, wedges if needed"),
			item("plug", "Cable unwound, vehicle first, then the pillar; amperes read", HasHookUp),
			item("fridge", "Fridge from 12 V to mains or gas", HasAbsorption),
			item("gas", "Gas on, sniff", HasGas),
			item("alarm", "Carbon monoxide alarm tested, vents free"),
			item("frost", "Heating on before the boiler is filled; outlet as the handbook says", IsFrost),
			item("levels", "Levels read and entered"),
			item("tomorrow", "Tomorrow's first stop and when it opens"),
		}},
		{"service", "At a service point", []Item{
			item("order", "Fresh water first, away from the drain; then grey, the cassette last", HasFresh),
			item("gloves", "Gloves for waste, other hands for water"),
			item("fresh", "Marked drinking tap, drinking hose, filler looked at twice", HasFresh),
			item("grey", "Outlet over the grid, closed afterwards", HasGrey),
			item("cassette", "Slide closed, vent pressed, rinsed with the rinsing tap", HasCassette),
			item("chemicals", "Chemicals only where allowed", HasCassette),
			item("clean", "Place left clean, hands washed"),
			item("gas-off", "Fuel or gas next: gas off before you turn in", HasGas),
			item("levels", "Levels entered"),
		}},
		{"return", "Before you give it back", []Item{
			item("cassette", "Cassette empty and rinsed", HasCassette),
			item("grey", "Grey water drained, outlet closed", HasGrey),
			item("fresh", "Fresh water as agreed; in frost drained", HasFresh),
			item("diesel", "Diesel to the agreed level at the last station; receipt kept"),
			item("def", "Exhaust fluid as agreed", HasDEF),
			item("gas", "Gas as agreed, cylinder closed", HasGas),
			item("inside", "Inside swept, fridge emptied and open, rubbish gone"),
			item("parts", "Cable, adapters, hose, wedges, keys and papers all there"),
			item("damage", "Damage told, photographs of all sides"),
			item("own", "Your own things out: roof locker, garage, under the beds"),
			item("time", "Time of the key hand-over, and time in hand"),
		}},
	}
}
