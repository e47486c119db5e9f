package life

import "ullage/planner/fact"

// Source is where the model's numbers for a tank come from, in short; nothing for
// an unknown tank. The constants name their sources one by one.
func Source(tank string) fact.Fact { return sources[tank] }

var sources = map[string]fact.Fact{
	"diesel": fact.Of("source.diesel", fact.V{
		"van": per100(bodies[PanelVan].per100, 0), "low_profile": per100(bodies[LowProfile].per100, 1), "integrated": per100(bodies[Integrated].per100, 0), "over_cab": per100(bodies[OverCab].per100, 0),
		"spread": fact.Share(0.15, 0), "van_least": per100(8, 0), "van_most": per100(11, 0), "coachbuilt": per100(10, 0),
	}),
	"def": fact.Of("source.def", fact.V{"usual": fact.Share(defShare, 0), "least": fact.Share(0.01, 0), "most": fact.Share(0.10, 0)}),
	"lpg": fact.Of("source.lpg", fact.V{
		"fridge_least": fact.Quantity(10, "g/h", 0), "fridge_most": fact.Quantity(25, "g/h", 0),
		"cooking_least": fact.Quantity(0.1, "kg", 1), "cooking_most": fact.Quantity(0.2, "kg", 1),
	}),
	"fresh": ofWater, "grey": ofWater,
	"cassette": fact.Of("source.cassette", fact.V{"aboard": litres(bodyL+flushL, 1), "sites": litres(siteToiletShare*(bodyL+flushL), 1)}),
	"battery": fact.Of("source.battery", fact.V{
		"measured": fact.Quantity(standbyAh+lightAh, "Ah", 0), "split": fact.Quantity(SplitChargeA, "A", 0), "booster": fact.Quantity(BoosterA, "A", 0),
	}),
}

// ofWater is where fresh and grey water's numbers come from: it is the same water.
var ofWater = fact.Of("source.water", fact.V{
	"drink": litres(drinkL, 0), "cook": litres(cookL, 0), "dishes": litres(dishesL, 0), "wash": litres(washL, 0),
	"flush": litres(flushL, 0), "shower": litres(showerL, 0), "crew": litres(45, 0),
})

func per100(l float64, digits int) fact.Value { return fact.Quantity(l, "L/100 km", digits) }
func litres(l float64, digits int) fact.Value { return fact.Quantity(l, "L", digits) }
