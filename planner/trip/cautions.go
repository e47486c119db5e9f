package trip

// This file holds the usual cautions, in our own words. They are common
// practice unless a source is named; none replaces the vehicle's handbook,
// local rules or a licensed person, and each says which of them decides.

// tankCautions belong to the service of a tank.
var tankCautions = map[string][]string{
	// Gas off before refuelling: EN 1949 as read by gok-blog.de.
	"diesel": {"Before you turn in: gas off at the cylinder, fridge off gas, heater off, no flame. Check the label inside the flap: diesel goes into the diesel filler only. The handbook and the station's rules decide."},
	"def":    {"Exhaust fluid has its own filler, often blue: never into the diesel, and no diesel into it. If the wrong liquid went in, do not start the engine; call the hire desk. In frost do not fill to the brim: it expands."},
	// 80 % stop valve: see trade-values at lpgFill.
	"lpg":      {"Gas appliances and engine off, valves as the handbook says. The filling stops by itself at about 80 %: never fill past it. Fill only a tank or cylinder made for refilling, with the right adapter; some stations refuse cylinders. If you smell gas: close the valves, get everyone out, no switch, call for help. A licensed fitter repairs gas, nobody else."},
	"fresh":    {"Only from a tap for drinking water and through a hose kept for it. Let the tap run, wipe it, and keep the end off the ground. Never use the tap beside the waste drain. If in doubt, boil it or drink from bottles. A full tank is a kilogram a litre: mind the gross mass on the plate."},
	"grey":     {"Only into a drain meant for waste water, never into a road gully, a ditch or the ground: fines are common. Stand with the outlet over the grid before you open it, and close it afterwards."},
	"cassette": {"Close the slide before you take the cassette out; gloves on; press the vent button while you pour. Only into a disposal point for toilets, never into a grey drain. Toilet chemicals only where the place allows them. Rinse with the rinsing tap, never with the drinking tap, and wash your hands."},
	// Cable unwound, ≤ 25 m: voltimum.de; RCD: IEC 60364-7-708.
	"battery": {"Cable: unwind it fully; plug into the vehicle first, then into the pillar, and leave in the opposite order. Switch on no more than the pillar's fuse carries: 6 A are 1.4 kW, a kettle alone can be 2. If the breaker trips, ask the site; a licensed electrician opens it, nobody else."},
}

// nightCautions belong to every night.
var nightCautions = []string{
	// EN 50291, sources: wmfs.net, ficc.org.
	"Carbon monoxide has no smell: test the alarm, keep the vents open, and never heat with a cooker or a grill, inside or in an awning.",
	"Whether you may stay the night is decided on the spot: read the sign, ask the owner, and obey local rules.",
}

// tripCautions belong to every trip.
var tripCautions = []string{
	"Distances off the route are estimates (straight line × circuity), not roads: check each approach with a map, a road sign and your eyes before you turn in.",
	"Map data can be old or wrong: a place may be closed, full, frozen off or too low. The sign on the spot decides. Know the height on the vehicle's plate, and add what is on the roof.",
	"Before you drive off: gas off, steps in, windows and hatches closed, awning in, cable and hose off, everything heavy tied down.",
	"Hot water: a boiler that stood warm at 40 °C can grow legionella; heat it to 60 °C before you shower, and mind scalding. In frost a valve may empty the boiler by itself.",
	"Take a break of 15 minutes after two hours at the wheel.",
	"The vehicle's handbook, local rules and licensed people come before this plan.",
}
