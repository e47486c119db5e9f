package advice

import (
	"ullage/planner/fact"
	"ullage/planner/life"
)

// HowToFor is the how-to with an id, with the items whose conditions hold. ok is
// false if there is none.
func HowToFor(id string, has Has) (h HowTo, ok bool) {
	for _, s := range howTos {
		if s.id == id {
			return s.howTo(has), true
		}
	}
	return HowTo{}, false
}

// HowTos are all how-tos, with the items whose conditions hold, in the order of a day.
func HowTos(has Has) []HowTo {
	out := make([]HowTo, len(howTos))
	for i, s := range howTos {
		out[i] = s.howTo(has)
	}
	return out
}

// freezing is where water freezes, and where butane no longer evaporates.
var freezing = fact.Celsius(0)

var howTos = []source{
	{
		id: "driving", care: row{values: fact.V{"rest": fact.Span(life.BreakMin), "every": fact.Span(life.BreakEveryMin)}},
		steps: []row{
			{id: "height"},
			{id: "break", values: fact.V{"rest": fact.Span(life.BreakMin), "every": fact.Span(life.BreakEveryMin)}}, // UK Highway Code, rule 91
			{id: "pace"},
		},
		cautions: []row{{id: "low"}, {id: "tail"}, {id: "heavy", when: IsHeavy, values: fact.V{"light": fact.Kg(life.LightKg), "heaviest": fact.Kg(life.HeavyKg), "limits": life.HeavyLimits()}}, {id: "wind"}},
	},
	{
		id: "diesel", care: row{when: HasGas},
		steps: []row{{id: "roof"}, {id: "label"}, {id: "note"}},
		cautions: []row{
			{id: "gas-off", when: HasGas}, // EN 1949 as read by gok-blog.de: appliances off before refuelling
			{id: "heater-off"}, {id: "wrong"}, {id: "winter", when: IsFrost},
		},
	},
	{
		id:    "def",
		steps: []row{{id: "cap"}, {id: "car-pump"}, {id: "drops"}},
		cautions: []row{
			{id: "never-mix", when: HasDEF},
			{id: "dont-run-out"}, // UN R83, annex 6
			{id: "expands", when: IsFrost, values: fact.V{"freezes": fact.Celsius(-11)}}, // API via ccjdigital
		},
	},
	{
		id: "lpg", care: row{values: fact.V{"full": fact.Share(life.FillShare, 0)}},
		steps: []row{
			{id: "adapter"}, {id: "ask"},
			{id: "stop", values: fact.V{"full": fact.Share(life.FillShare, 0)}}, // a supplier's page; leshuttle.com
			{id: "sniff"},
		},
		cautions: []row{
			{id: "all-off"}, {id: "only-refillable"}, {id: "smell"},
			{id: "heavier"}, // EN 589
			{id: "winter-gas", when: IsFrost, values: fact.V{"freezing": freezing}},
		},
	},
	{
		id: "fresh",
		steps: []row{
			{id: "drinking"},
			{id: "hose"}, // DIN 2001-2 (technikplushygiene)
			{id: "flush"}, {id: "filler"},
			{id: "amount", values: fact.V{"water": fact.Quantity(10, "L", 0), "mass": fact.Kg(10)}},
		},
		cautions: []row{{id: "doubt"}, {id: "idle"}, {id: "shut-off", when: IsFrost}},
	},
	{
		id:    "grey",
		steps: []row{{id: "over"}, {id: "run"}, {id: "rinse"}},
		cautions: []row{
			{id: "not-road"}, // Italy CdS art. 185; UK: netregs.org.uk
			{id: "no-toilet"}, {id: "frozen", when: IsFrost},
		},
	},
	{
		id:    "cassette",
		steps: []row{{id: "close"}, {id: "gloves"}, {id: "vent"}, {id: "rinse"}, {id: "back"}},
		cautions: []row{
			{id: "where"},
			{id: "chemicals"}, // nabo.org.uk
			{id: "early"},
		},
	},
	{
		id: "battery",
		steps: []row{
			{id: "off-first"}, {id: "order"},
			{id: "unwind"}, // voltimum.de: ≤ 25 m, 2.5 mm²
			{id: "dry"},
			{id: "read", values: fact.V{"supplies": fact.List(supply(6), supply(10), supply(16))}},
		},
		cautions: []row{
			{id: "rcd"}, {id: "tripped"}, {id: "polarity"},
			{id: "lithium-cold", when: HasLithium + " " + IsFrost, values: fact.V{"freezing": freezing}},
		},
	},
	{
		id:    "night",
		steps: []row{{id: "allowed"}, {id: "level"}, {id: "fridge", when: HasAbsorption}, {id: "awning-in", when: HasAwning}},
		cautions: []row{
			{id: "co"}, // EN 50291; wmfs.net, ficc.org
			{id: "co-signs"}, {id: "exit"}, {id: "slope"},
		},
	},
	{
		id:       "heating",
		steps:    []row{{id: "chimney"}, {id: "night-temp"}, {id: "electric", when: HasHookUp, values: fact.V{"some": kW(1), "more": kW(2)}}},
		cautions: []row{{id: "flame"}, {id: "driving", when: HasGas}},
	},
	{
		id: "hot-water", care: row{values: fact.V{"boost": fact.Celsius(life.HotBoost)}},
		steps: []row{
			{id: "forty", when: HasBoiler, values: fact.V{"enough": fact.Celsius(life.HotEnough), "least": fact.Celsius(55), "boost": fact.Celsius(life.HotBoost)}},
			{id: "fill-first", when: HasBoiler},
		},
		cautions: []row{
			// HSE text via worthing-homes: grows at 20–45 °C, does not survive 60 °C.
			{id: "legionella", when: HasBoiler, values: fact.V{"least": fact.Celsius(20), "most": fact.Celsius(45), "boost": fact.Celsius(life.HotBoost)}},
			{id: "scald", when: HasBoiler, values: fact.V{"boost": fact.Celsius(life.HotBoost)}},
		},
	},
	{
		id: "frost", care: row{values: fact.V{"inside": fact.Celsius(insideC)}},
		steps: []row{
			{id: "keep-warm", when: IsFrost, values: fact.V{"inside": fact.Celsius(insideC)}},
			{id: "drain", when: IsFrost}, {id: "grey-open", when: IsFrost},
		},
		cautions: []row{
			{id: "valve", when: IsFrost, values: fact.V{"valve": fact.Celsius(life.FrostDumpC)}},
			{id: "steps-ice", when: IsFrost}, {id: "gas-more", when: IsFrost + " " + HasGas},
		},
	},
	{
		id: "ferry", care: row{when: HasGas},
		steps: []row{
			{id: "gas-ferry", when: HasGas}, // ssl.fo
			{id: "fridge-ferry", when: HasAbsorption}, {id: "stated"}, {id: "handbrake"},
		},
		cautions: []row{
			{id: "stay-out"},
			{id: "tunnel-gas", when: HasGas}, // leshuttle.com
		},
	},
	{
		id:       "awning",
		steps:    []row{{id: "feet", when: HasAwning}, {id: "watch", when: HasAwning}},
		cautions: []row{{id: "wind", when: HasAwning}, {id: "grill", when: HasAwning}},
	},
}

// insideC keeps what is in lockers and cupboards from freezing; common practice, no source.
const insideC = 10

// supply is what a hook-up of so many amperes carries.
func supply(amps float64) fact.Value {
	return fact.Clause(fact.Of("hookup.carries", fact.V{"amps": fact.Quantity(amps, "A", 0), "power": fact.Quantity(amps*life.MainsV/1000, "kW", 1)}))
}

func kW(n float64) fact.Value { return fact.Quantity(n, "kW", 0) }
