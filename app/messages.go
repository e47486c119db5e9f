package page

// This file holds every word that the page shows, in one place.

var word = struct {
	title, lead, skip                                                                                                   string
	open, save, print, draw, drawn, drawnFromTo, drawnRound, drawThere, elsewhere                                       string
	groupTrip, groupPeople, groupDay, groupNights, groupPlan, groupVehicle, groupTanks, groupPrices                     string
	fName, fStart, fAdults, fChildren, fShowers, fToilet, fCooking, fMaxKm, fMaxH, fDepart, fSpeed                      string
	fMinNights, fMaxNights, fMaxFee, fCampsites, fStopovers, fHookUp                                                    string
	fCorridor, fCircuity, fValueH, fBackup, fVehicle, fLevel, fSize                                                     string
	hChildren, hMaxKm, hMaxH, hSpeed, hMaxNights, hMaxFee, hCorridor, hCircuity, hValueH, hBackup                       string
	groupComfort, fInside, fInsideNight, hInsideNight, fHot, hHot, fDishes, fDevices, fConfidence, hConfidence, onTrips string
	fUnits, fCurrency, hCurrency, wantCurrency, fKeys, hKeys, fGear, hGear                                              string
	wantWhole, wantNumber, wantChoice, wantDate, wantClock                                                              string
	left, roomFor, capacityOf, reserve, unknown                                                                         string
	stLoading, stLoadingShare, stPlanning, stPlanned, stPlannedGap, stImproving, stRefused, stError                     string
	stNothing, stEmpty                                                                                                  string
	refusedHead, refusedWhere, refusedMissing, cure, nearest, notValid                                                  string
	mapTitle, mapAlt, mapDrawn, zoomIn, zoomOut, whole, wholeMap, off, notUsed                                          string
	stripsTitle, stripsHelp, stripsLabel, cursorAt, cursorNight, stripLow                                               string
	legend, care, careMost, likely                                                                                      string
	roadTitle, roadHelp, roadHere, roadWhere, roadBetween, roadKm, roadMap, roadMapped, roadTime, roadWantKm            string
	roadAskHelp                                                                                                         string
	roadAsk, roadAsking, roadFix, roadFixOff, roadNotAllowed, roadNoPosition, roadTooLong, roadBehind, roadBehindHelp   string
	roadGauges, gaugeNone, gaugeQuarters, gaugeLamp, gaugeShows, roadShut, roadOther, roadNoOther                       string
	roadGo, roadNews, roadBack, roadLearnt, behind, made, next, stayed                                                  string
	returnTitle, returnStation, returnAgreed, weight                                                                    string
	listsTitle, listsHelp, listDone, listClear, howTitle, navLists                                                      string
	countedTitle, countedLine, countedGain, countedNight, countedLearnt                                                 string
	daysTitle, noDays, day, dayLine, toEnd                                                                              string
	call, night, nightsMany, arrive, leave, detour, estimate, byRoad, onRoute, from, to, free                           string
	fallback, facts, cautions, known, pointsToMind, avoid, avoidThis, avoidAgain, required                              string
	groupFerries, hFerries, ferryLine, ferryAdd, ferryRemove, ferryTo, ferryNamed, wantFerryEnd, wantFerryApart         string
	fFerryFrom, fFerryTo, fFerryMin, hFerryMin                                                                          string
	tripTitle, change, done, editHelp                                                                                   string
	sumPeople, sumDay, sumNights, sumAny                                                                                string
	adults, children, calls, days, nightsWord, places, points                                                           string
	othersTitle, othersMore, othersLess, othersSame, afresh                                                             string
	costTitle, goods, fees, nightFees, refill, timeValue, paid, withTime                                                string
	limitsTitle, limitsMind, limits1, limits2, limits3, limits4                                                         string
	filesTitle, filesHelp, filesDrop, attribution, sample, dataOf                                                       string
	drawHelp, undo, redo, clear, remove, middle, use, cancel, drawCount, drawOff, round                                 string
	at, driveIn, driveInFrom, otherWays, noOtherWays, byWay, wayMore                                                    string
	roadsComing, roadsReady, roadsNone, roadsBroken, track, trackAsIs, notMatched, barred, leadRound, noWayRound        string
	newVersion, reload, offline, notKept, notSaved, gpx, demoName, lastTrip                                             string
	navDays, navStrips, navMap, navTrip, navLabel                                                                       string
}{
	title: "Ullage",
	lead:  "where to refuel, fill, drain, empty and sleep",
	skip:  "Skip to the days",

	open: "Open files", save: "Save trip", print: "Print", draw: "Draw route", drawn: "Drawn route", drawnFromTo: "%s to %s", drawnRound: "Round trip from %s",
	drawThere: "Draw a route there", elsewhere: "The route is not where the map data are. Draw one there, or open map data of where the route is.",

	groupTrip: "Trip", groupPeople: "People", groupDay: "A day on the road", groupNights: "Nights",
	groupPlan: "How to plan", groupVehicle: "Vehicle", groupTanks: "Tanks", groupPrices: "Prices where a place states none",

	fName: "Name", fStart: "First day", fAdults: "Adults", fChildren: "Children",
	fShowers: "Showers", fToilet: "Toilet", fCooking: "Cooking",
	fMaxKm: "At most", fMaxH: "Under way at most", fDepart: "Leave at", fSpeed: "Average speed",
	fMinNights: "At least", fMaxNights: "At most", fMaxFee: "A night costs at most",
	fCampsites: "Campsites", fStopovers: "Plain places for motorhomes", fHookUp: "Only with an electric hook-up",
	fCorridor: "Look beside the route up to", fCircuity: "Detour factor", fValueH: "An hour is worth",
	fBackup: "Stay safe if a place is closed", fVehicle: "Vehicle",
	fLevel: "%s at the start", fSize: "%s, tank size",

	hChildren: "up to 12 years", hMaxKm: "a day, detours included", hMaxH: "from leaving to arriving, stops included",
	hSpeed: "along the route, without stops", hMaxNights: "0: as many as it takes", hMaxFee: "0: any price",
	hCorridor: "straight line; more finds more places and takes longer",
	hCircuity: "road distance ÷ straight distance; 0: the usual 1.4",
	hValueH:   "what an hour of detour, stop and waiting counts in the plan",
	hBackup:   "arrive with enough to reach the next place that helps",

	groupComfort: "Warmth and hot water", fInside: "Inside by day", fInsideNight: "Inside by night", hInsideNight: "22:00 to 06:00",
	fHot: "Hot water", hHot: "at 40 °C legionella can grow: mind the handbook",
	fDishes: "Dishes", fDevices: "Phones, laptops and the like",
	fConfidence: "Plan with enough for", hConfidence: "weather, driving and habits vary", onTrips: "%.0f of 100 such trips",
	fUnits: "Units", fCurrency: "Currency", hCurrency: "three letters, as EUR; nothing is exchanged: prices in another currency do not count", wantCurrency: "Three letters, as EUR or GBP.",
	fKeys: "Keys back by", hKeys: "on the last day; empty: not agreed", fGear: "Things on board", hGear: "0: the usual for so many people",

	wantWhole: "A whole number from %d to %d.", wantNumber: "A number from %s to %s.", wantChoice: "Choose one of the list.",
	wantDate: "A date such as 2026-06-12.", wantClock: "A time such as 09:00.",

	left: "%s left", roomFor: "room for %s", capacityOf: "of %s", reserve: "reserve %s",
	unknown: "Neither a plan nor a proof that there is none was found in the time given. Fewer places (a narrower corridor) or looser limits help.",

	stLoading: "Reading %s …", stLoadingShare: "Reading %s … %d %%", stPlanning: "Planning …",
	stPlanned:    "Planned and checked: no plan is cheaper.",
	stPlannedGap: "Planned and checked; a better plan could save at most %s.",
	stImproving:  "Planned and checked; looking for a cheaper plan (at most %s less) …",
	stRefused:    "No plan is possible.", stError: "Something went wrong: %s",
	stNothing: "No trip yet.",
	stEmpty:   "Open a route, or draw one.",

	refusedHead: "This trip cannot be made as it is", refusedWhere: "%s to %s", refusedMissing: "%s short", cure: "What would help",
	nearest: "What comes nearest to a plan", notValid: "This is not a valid plan. It breaks:",

	mapTitle: "Map", mapAlt: "The route with the stops in their order", mapDrawn: "Drawn overview: this browser shows no live map.",
	zoomIn: "Closer", zoomOut: "Farther", whole: "Whole route", wholeMap: "Whole map", off: "off the route", notUsed: "not used",

	stripsTitle: "Levels", stripsHelp: "Point, or use the arrow and page keys.",
	stripsLabel: "Moment of the trip", cursorAt: "%s, %s, %s", cursorNight: "%s, %s, overnight at %s", stripLow: "lowest: %s on day %d",

	legend: "Full: planned with, enough on %.0f of 100 such trips. Dotted: likely. Pale: at best.", care: "The caution costs %s.", careMost: "The caution costs at most %s.", likely: "likely %s",

	roadTitle: "On the road", roadHelp: "Where are you, when, and what do the gauges show? The rest is planned anew, without a network.",
	roadHere: "Here and now", roadWhere: "At stop", roadBetween: "between stops", roadKm: "Along the route", roadMap: "or click on the map", roadMapped: "from the map or the device", roadTime: "Local time",
	roadWantKm: "Say where you are: a place before the end of the route (%s).",
	roadAsk:    "Where am I?", roadAskHelp: "Only this asks the device. Without a satellite receiver the browser may ask a service of its maker.", roadAsking: "Asking the device …", roadFix: "The device says %s, to within %s.", roadFixOff: "The device says %s, to within %s; the route is %s away: the plan goes on from where you are.",
	roadNotAllowed: "This page may not know where the device is. Allow it for this page in the browser's settings (that needs https), or say the place.",
	roadNoPosition: "The device does not know where it is: switch its position on, go where it sees the sky, or say the place.",
	roadTooLong:    "The device found no position in time: go where it sees the sky and ask again, or say the place.",
	roadBehind:     "Stops behind you", roadBehindHelp: "Untick where you did not call: what was to be done there is then still to do.",
	roadGauges: "Gauges", gaugeNone: "not read", gaugeQuarters: "quarters", gaugeLamp: "a lamp", gaugeShows: " shows",
	roadShut: "Closed, or of no use", roadOther: "Another place", roadNoOther: "none",
	roadGo: "Plan from here", roadNews: "From the gauges and the clock", roadBack: "Take back the plan from the road", roadLearnt: "%s: planned with %.0f %% of the usual use, learnt from the gauges.",
	behind: "Behind you", made: "Done", next: "Next", stayed: "%s of it for the stay",

	returnTitle: "Giving it back", returnStation: "Last place for diesel", returnAgreed: "Then", weight: "About %.0f kg of %.0f kg as it sets off",
	listsTitle: "Checklists", listsHelp: "Ticks stay on this machine.", listDone: "%d of %d", listClear: "Clear the ticks", howTitle: "How it is done", navLists: "Lists",
	countedTitle: "Counted with, enough on %.0f of 100 such trips", countedLine: "likely %s, planned %s %s on %s", countedGain: "gains likely %s, planned %s %s on %s", countedNight: "a day and night without hook-up", countedLearnt: "learnt: %.0f %% of the usual",

	daysTitle: "Day by day", noDays: "There is no plan to follow yet.", day: "Day %d", dayLine: "%s · %s driving · %s to %s", toEnd: "Arrive at the end of the route",
	call: "Stop", night: "night", nightsMany: "%d nights", arrive: "arrive", leave: "leave",
	detour: "detour about %s, %s", estimate: "estimate", byRoad: "by road %s and %s more", at: "At", driveIn: "Drive in at", driveInFrom: "Drive in from %s at", onRoute: "on the route", from: "from", to: "to", free: "nothing to pay",
	fallback: "If it is closed", facts: "What the map data say", cautions: "Mind", known: "Mind, as before: %s", pointsToMind: "point|points", avoid: "Plan without this place", avoidThis: "Plan without %s",
	avoidAgain: "Left out: %s. Use it again", required: "required",

	groupFerries: "Ferries", hFerries: "Those of the map data are taken anyway. Name others here, or the minutes of one that you know better.",
	ferryLine: "%s to %s, %s", ferryAdd: "Add the ferry", ferryRemove: "Remove", ferryTo: "Ferry to %s, %s without driving", ferryNamed: "Ferry %s to %s, %s without driving",
	fFerryFrom: "From", fFerryTo: "To", fFerryMin: "Takes", hFerryMin: "from the queue to driving off",
	wantFerryEnd: "A ferry ends after it begins: more than %s.", wantFerryApart: "There is a ferry from %s to %s already: remove it first.",

	tripTitle: "The trip", change: "Change the trip", done: "Done", editHelp: "Every change is planned at once.",
	sumPeople: "%s in %s, from %s.", sumDay: "Up to %s or %s a day, leaving at %s.",
	sumNights: "%s to %s", sumAny: "Nights as they come.",
	adults: "adult|adults", children: "child|children", calls: "stop|stops", days: "day|days", nightsWord: "night|nights",
	places: "place|places", points: "point|points",

	othersTitle: "Other plans", othersMore: "%s more", othersLess: "%s less", othersSame: "same cost", afresh: "Plan afresh",

	costTitle: "Cost", goods: "Fuel, gas and water", fees: "Fees of stops", nightFees: "Nights", refill: "Missing at the return",
	timeValue: "Time of detours and stops", paid: "to pay", withTime: "with the time counted",

	limitsTitle: "What this plan does not know", limitsMind: "What to mind",
	limits1: "Detours are estimates: the straight distance to the place times a factor, there and back. Roads may be longer.",
	limits2: "Places, hours, prices and heights are what the map data say, and they can be out of date. Where the data say nothing, nothing is promised.",
	limits3: "Use of fuel, water and current is an average. Read the gauges; they are right and the plan is not.",
	limits4: "The vehicle's handbook, the signs on the road, the rules of the place and licensed fitters come before this plan.",

	filesTitle: "Data", filesHelp: "A route (GPX, GeoJSON), an OpenStreetMap extract (.osm.pbf, .osm, .bz2, .gz), places or a trip file. They stay on this device.",
	filesDrop: "Drop the files anywhere.", attribution: "© OpenStreetMap contributors, ODbL", sample: "invented island",
	dataOf: "data of %s",

	drawHelp: "Click on the map to add a point. Drag a point, or the line between two.", undo: "Undo", redo: "Redo", clear: "Clear",
	remove: "Remove point %d", middle: "Add the middle of the map", use: "Use this route", cancel: "Cancel",
	otherWays: "Other ways, %d to %d", noOtherWays: "No other way worth it is known from %d to %d.", byWay: "%s: by %s", wayMore: "%s, %s, %s",
	drawCount: "%s, %s, about %s.", drawOff: "Dashed: no road is known there; it stays as drawn.", round: "This vehicle does not go by %s.",
	roadsComing: "Reading roads, %d %%: ways to places are estimates until then.", roadsReady: "Ways to places follow the roads.",
	roadsNone: "No roads in the map data: ways to places are estimates.", roadsBroken: "Ways to places are estimates: %s",
	track: "Put route on roads", trackAsIs: "Route as in its file", notMatched: "The route was not put on roads: %s",
	barred: "The route goes where this vehicle may not go.", leadRound: "Lead the route round", noWayRound: "No way round is known for this vehicle: %s.",

	newVersion: "A new version is ready.", reload: "Reload", offline: "Ready without a network.",
	notKept:  "This device could not keep everything for the next visit (%s). Save the trip as a file.",
	notSaved: "The file could not be saved: %s", gpx: "Save the stops as GPX",
	demoName: "The demo island", lastTrip: "the last trip",
	navDays: "Days", navStrips: "Levels", navMap: "Map", navTrip: "Trip", navLabel: "Parts of the page",
}

var (
	showerWords     = []Option{{"aboard", "A shower aboard every day"}, {"sites", "Showers at the sites"}, {"frugal", "A wash at the basin"}}
	toiletWords     = []Option{{"aboard", "The toilet aboard"}, {"sites", "Toilets at the sites by day"}}
	quarterWords    = []Option{{"", "–"}, {"0", "empty"}, {"1", "1/4"}, {"2", "1/2"}, {"3", "3/4"}, {"4", "full"}}
	lampWords       = []Option{{"", "–"}, {"1", "lit"}, {"0", "dark"}}
	dishesWords     = []Option{{"", "Where the showers are"}, {"aboard", "Washed aboard"}, {"sites", "Washed at the sites"}}
	deviceWords     = []Option{{"little", "Little is charged"}, {"usual", "The usual"}, {"many", "Many, or work on board"}}
	unitChoices     = []Option{{"", "km, L, °C, kg"}, {"british", "miles, L, °C, kg"}, {"american", "miles, US gallons, °F, lb"}}
	confidenceWords = []Option{{"0.5", "the likely use: 1 of 2 such trips"}, {"0.8", "4 of 5 such trips"}, {"0.9", "9 of 10 such trips (usual)"}, {"0.95", "19 of 20 such trips"}, {"0.99", "99 of 100 such trips"}}
	cookingWords    = []Option{{"aboard", "Cooked aboard"}, {"little", "Little, mostly out"}}
)

// kindWords names the kinds of places.
var kindWords = map[string]string{
	"fuel": "fuel station", "dump": "waste disposal", "water": "drinking water", "tap": "water tap",
	"stopover": "motorhome stopover", "campsite": "campsite", "service": "service point",
}

// limitWords names the limits of a refusal that are no tank.
var limitWords = map[string]string{"km": "distance of a day", "min": "time of a day", "nights": "nights", "plan": "all limits together", "backup": "safety", "open": "opening hours", "map": "map data"}

// unitWords are their units.
var unitWords = map[string]string{"km": "km", "min": "min", "nights": "nights"}
