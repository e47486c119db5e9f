package life

// This file holds the how-tos. They are common practice, no source, where no source stands
// beside them. None replaces the vehicle's handbook, local rules and licensed people.

func item(id, text string, conditions ...string) Item { return Item{id, text, conditions} }

func howTos() []HowTo {
	return []HowTo{
		{ID: "driving", Title: "On the road",
			Steps: []Item{
				item("height", "Know the height on the vehicle's plate and add what is on the roof. Write it where the driver sees it."),
				item("break", "Take 15 minutes after every two hours at the wheel."), // UK Highway Code, rule 91
				item("pace", "Plan with a lower average than by car, and brake earlier: the vehicle is heavy and catches the wind."),
			},
			Cautions: []Item{
				item("low", "The sign on the bridge or the barrier decides, not the map. If in doubt, stop and let somebody look from outside."),
				item("tail", "The rear swings out in tight turns. Somebody outside guides you backwards."),
				item("heavy", "Over 3.5 t other speed limits, tolls and bans apply.", IsHeavy),
				item("wind", "In strong crosswind slow down, and on exposed bridges stay off if they warn high vehicles."),
			},
			Defer: "Road signs, national law and the vehicle's papers decide."},
		{ID: "diesel", Title: "Refuel diesel",
			Steps: []Item{
				item("roof", "Read the height at the roof of the pumps and keep away from its edge."),
				item("label", "Compare the label inside the flap with the nozzle: diesel into the diesel filler, nothing else."),
				item("note", "Note litres and kilometres: the plan learns from them."),
			},
			Cautions: []Item{
				// EN 1949 as read by gok-blog.de: appliances off before refuelling.
				item("gas-off", "Before you turn in: gas off at the cylinder, fridge on 12 V, heater off, no flame.", HasGas),
				item("heater-off", "Before you turn in: heater off and let it run down."),
				item("wrong", "Wrong liquid in the tank: do not switch on the ignition, call the hire desk."),
				item("winter", "In frost buy winter diesel near the mountains, before you climb.", IsFrost),
			},
			Defer: "The station's rules and the vehicle's handbook decide."},
		{ID: "def", Title: "Top up exhaust fluid",
			Steps: []Item{
				item("cap", "Find the filler, often with a blue cap; the handbook says where."),
				item("car-pump", "Use a pump for cars or a canister: a truck's nozzle is fast and can spill."),
				item("drops", "Rinse spilled drops with water: they turn white and eat paint."),
			},
			Cautions: []Item{
				item("never-mix", "Exhaust fluid never into the diesel, diesel never into the exhaust fluid. If it happened, do not start the engine; call the hire desk.", HasDEF),
				item("dont-run-out", "Do not drive it empty: after a countdown the engine may refuse to start."),      // UN R83, annex 6
				item("expands", "In frost do not fill to the brim: it freezes at about −11 °C and expands.", IsFrost), // API via ccjdigital
			},
			Defer: "The vehicle's handbook decides; the warning on the dashboard counts more than this plan."},
		{ID: "lpg", Title: "Refill LPG",
			Steps: []Item{
				item("adapter", "Have the adapter of the country at hand; use no self-made ones."),
				item("ask", "Ask at the desk before you fill a cylinder: some stations only fill built-in tanks."),
				item("stop", "The filling stops by itself at about 80 %. Stop there, never trick the valve."), // a supplier's page; leshuttle.com
				item("sniff", "Close the cap, open the valve, sniff, listen."),
			},
			Cautions: []Item{
				item("all-off", "Engine, heater, cooker and fridge off, no flame, no smoking, telephone away."),
				item("only-refillable", "Fill only what was made to be filled. An exchange cylinder is exchanged, never filled."),
				item("smell", "If you smell gas: valves shut, everybody out, no switch, no flame, call for help."),
				item("heavier", "The gas is heavier than air and gathers low: keep floor vents free, never over a gully."), // EN 589
				item("winter-gas", "In frost ask for propane or a winter mixture: butane does not evaporate below 0 °C.", IsFrost),
			},
			Defer: "A licensed fitter works on gas, nobody else. The handbook, the station and local rules decide."},
		{ID: "fresh", Title: "Fill fresh water",
			Steps: []Item{
				item("drinking", "Only from a tap that is marked for drinking water. The tap beside the waste drain is not one."),
				item("hose", "Use the hose that is kept for drinking water; a garden hose is not."), // DIN 2001-2 (technikplushygiene)
				item("flush", "Wipe the tap, let it run for a moment, keep the end of the hose off the ground."),
				item("filler", "Look twice: water filler, not diesel."),
				item("amount", "Fill as much as you need and the weight allows: a litre is a kilogram."),
			},
			Cautions: []Item{
				item("doubt", "In doubt boil it, or drink from bottles."),
				item("idle", "Water that stood for days in the warm is for washing only: drain and fill anew."),
				item("shut-off", "In frost taps are often shut off: have a second place in mind.", IsFrost),
			},
			Defer: "Signs at the tap, the owner and local rules decide what may be drunk; the handbook says how the tank is cleaned."},
		{ID: "grey", Title: "Drain grey water",
			Steps: []Item{
				item("over", "Stop with the outlet over the grid, then open it."),
				item("run", "Let it run out, close the valve, look that it is closed."),
				item("rinse", "Rinse the grid if there is a tap for it."),
			},
			Cautions: []Item{
				// Italy CdS art. 185; UK: netregs.org.uk.
				item("not-road", "Never into a road gully, a ditch, a stream or the ground: it is forbidden nearly everywhere and fined."),
				item("no-toilet", "Nothing from the toilet into this drain."),
				item("frozen", "In frost the valve can freeze: do not force it.", IsFrost),
			},
			Defer: "Local rules and the owner of the place decide."},
		{ID: "cassette", Title: "Empty the toilet cassette",
			Steps: []Item{
				item("close", "Close the slide in the toilet before you open the hatch outside, else the cassette does not come out or spills."),
				item("gloves", "Gloves on. Carry it upright."),
				item("vent", "At the disposal point turn the spout out, press the vent button while you pour, and pour slowly."),
				item("rinse", "Rinse with the rinsing tap, never with the drinking tap. Swirl, pour, leave the place clean."),
				item("back", "Put in what the handbook says, push it in until it clicks, wash your hands."),
			},
			Cautions: []Item{
				item("where", "Only into a disposal point for toilets: never into a grey drain, a toilet that is not meant for it, or nature."),
				item("chemicals", "Chemicals only where the place allows them: small sewage works die of them. Without doubt use what septic tanks stand."), // nabo.org.uk
				item("early", "Empty it before the lamp: it lights when there is little left, often at night."),
			},
			Defer: "The sign at the disposal point, local rules and the handbook decide."},
		{ID: "battery", Title: "Plug into the hook-up",
			Steps: []Item{
				item("off-first", "Switch large appliances off."),
				item("order", "Cable first into the vehicle, then into the pillar. Leave in the opposite order: pillar first."),
				item("unwind", "Unwind the cable fully, even if only a piece is needed: on the drum it gets hot."), // voltimum.de: ≤ 25 m, 2.5 mm²
				item("dry", "Keep plugs dry and off the ground, the cable where nobody drives or stumbles."),
				item("read", "Read the amperes on the pillar and switch on no more: 6 A are 1.4 kW, 10 A 2.3, 16 A 3.7."),
			},
			Cautions: []Item{
				item("rcd", "Press the test button of the vehicle's residual-current device now and then. If it trips again, unplug."),
				item("tripped", "If the pillar's breaker trips: load off, ask the site. Do not open the pillar."),
				item("polarity", "Abroad the poles can be swapped: the handbook says whether that matters."),
				item("lithium-cold", "Lithium batteries must not be charged below 0 °C.", HasLithium, IsFrost),
			},
			Defer: "A licensed electrician works on mains, nobody else. The site's rules and the handbook decide."},
		{ID: "night", Title: "Stay the night",
			Steps: []Item{
				item("allowed", "Read the sign, ask the owner: whether you may stay is decided on the spot."),
				item("level", "Stand level, front out, a way to leave free."),
				item("fridge", "Fridge from 12 V to gas or mains: on 12 V it empties the battery.", HasAbsorption),
				item("awning-in", "Take the awning in for the night.", HasAwning),
			},
			Cautions: []Item{
				// EN 50291; wmfs.net, ficc.org.
				item("co", "Carbon monoxide has no smell: test the alarm, keep vents free of snow and covers, never heat with cooker or grill, inside or in an awning."),
				item("co-signs", "Headache and dizziness of several people at once: everybody out into the air, call for help."),
				item("exit", "Everybody knows how the door and the emergency windows open."),
				item("slope", "Not under dead branches, not in a dry stream bed, not below the tide line."),
			},
			Defer: "Local rules, the owner of the ground and the handbook decide."},
		{ID: "heating", Title: "Heat",
			Steps: []Item{
				item("chimney", "Keep the heater's flue and intake free: snow, covers, awning."),
				item("night-temp", "Let it be cooler at night, but never so cold that pipes freeze."),
				item("electric", "On hook-up let one or two kilowatts of mains do the work, if the pillar carries them.", HasHookUp),
			},
			Cautions: []Item{
				item("flame", "Never heat with an open flame."),
				item("driving", "Gas stays off while driving unless the vehicle is approved for it and the handbook says so.", HasGas),
			},
			Defer: "The heater's handbook decides; a licensed fitter repairs."},
		{ID: "hot-water", Title: "Hot water",
			Steps: []Item{
				item("forty", "40 °C is enough for dishes and hands; the boost of 55 to 60 °C is for showers.", HasBoiler),
				item("fill-first", "Fill the boiler with water before you switch it on.", HasBoiler),
			},
			Cautions: []Item{
				// HSE text via worthing-homes: grows at 20–45 °C, does not survive 60 °C.
				item("legionella", "Water that stood warm at 20 to 45 °C can grow legionella, which are breathed in with the spray: heat it to 60 °C before you shower.", HasBoiler),
				item("scald", "60 °C scalds a child in seconds: mix first, test with your hand.", HasBoiler),
			},
			Defer: "The handbook decides how the boiler is heated and cleaned."},
		{ID: "frost", Title: "Frost",
			Steps: []Item{
				item("keep-warm", "Keep the inside above 10 °C day and night, lockers and cupboards a little open.", IsFrost),
				item("drain", "Leaving the vehicle cold: drain boiler, tanks, taps and toilet.", IsFrost),
				item("grey-open", "In hard frost leave the grey outlet open over a bucket, where that is allowed.", IsFrost),
			},
			Cautions: []Item{
				item("valve", "A valve empties the boiler by itself at about 3 °C: that is no fault.", IsFrost), // a vehicle's manual, p. 163
				item("steps-ice", "Steps and service points are icy.", IsFrost),
				item("gas-more", "In frost gas lasts days, not weeks: look every morning.", IsFrost, HasGas),
			},
			Defer: "The handbook decides; damage by frost is usually the hirer's."},
		{ID: "ferry", Title: "Ferry and tunnel",
			Steps: []Item{
				item("gas-ferry", "Gas off at the cylinder before you drive on; the crew may look.", HasGas), // ssl.fo
				item("fridge-ferry", "Fridge off or on 12 V only while the engine runs; keep it shut, it stays cold for hours.", HasAbsorption),
				item("stated", "State length, height and gas when you book."),
				item("handbrake", "Handbrake, gear, windows shut, alarm as the crew says."),
			},
			Cautions: []Item{
				item("stay-out", "Nobody stays in the vehicle."),
				item("tunnel-gas", "Some tunnels refuse gas, or allow it only in limits: ask before you go there.", HasGas), // leshuttle.com
			},
			Defer: "The ferry's or tunnel's rules and crew decide."},
		{ID: "awning", Title: "Awning and wind",
			Steps: []Item{
				item("feet", "Put its feet down and peg it, one side lower for rain.", HasAwning),
				item("watch", "Never leave it out when you go away or to bed.", HasAwning),
			},
			Cautions: []Item{
				item("wind", "Take it in before the wind comes: a gust tears it off, with the wall it hangs on.", HasAwning),
				item("grill", "No grill, cooker or heater under it.", HasAwning),
			},
			Defer: "The handbook and the site's rules decide."},
	}
}
