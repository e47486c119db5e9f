package life

import (
	"fmt"
	"slices"
)

// A Party is who lives on board and how. The words are those of a trip; ""
// means aboard.
type Party struct {
	Adults, Children int
	Showers          string // aboard, sites, frugal
	Toilet           string // aboard, sites
	Cooking          string // aboard, little
	Dishes           string // aboard, sites; "": at the site where the showers are
	Devices          string // little, usual, many: what is charged from the battery; "": usual
}

// Validate names the first word that is not known.
func (p Party) Validate() error {
	for _, c := range []struct {
		what, word string
		known      []string
	}{
		{"showers", p.Showers, []string{"aboard", "sites", "frugal"}}, {"toilet", p.Toilet, []string{"aboard", "sites"}},
		{"cooking", p.Cooking, []string{"aboard", "little"}}, {"dishes", p.Dishes, []string{"aboard", "sites"}},
		{"devices", p.Devices, []string{"little", "usual", "many"}},
	} {
		if c.word != "" && !slices.Contains(c.known, c.word) {
			return fmt.Errorf("life: %s %q: use one of %v", c.what, c.word, c.known)
		}
	}
	if p.Adults < 0 || p.Children < 0 {
		return fmt.Errorf("life: %d adults, %d children: neither can be negative", p.Adults, p.Children)
	}
	return nil
}

// childShare of an adult's use; from memory.
const childShare = 0.7

// heads is the people in adults.
func (p Party) heads() float64 { return float64(p.Adults) + childShare*float64(p.Children) }

// Litres of fresh water an adult uses in a day. The sums are the usual totals:
// 35 with a shower aboard, 20 without, 9 at a site with showers, 10 frugal
// (from memory; published: a careful crew of unknown size 45 L a day,
// fergsonthemove; 100 L gone in 30 h with four showers, campertraileraustralia).
const (
	drinkL     = 3.0 // 2–3 L (gorv, australiasomuchtosee)
	cookL      = 2.0 // with dishes 4–15 L a day for a crew (earthroamer)
	dishesL    = 5.0
	washL      = 9.0  // hands, face, teeth, cloths; from memory
	flushL     = 1.0  // several of 0.2–0.3 L with a cassette, from memory (1–2 L each with other toilets, earthroamer)
	showerL    = 15.0 // from memory; 6.5 L with care (5incamper.it), 21 L without (campertraileraustralia: 85 L in four)
	siteWashL  = 3.0  // washing goes to the site's washroom
	frugalL    = 10.0 - drinkL - cookL
	cookSteams = 0.5 // of the cooking water is eaten or evaporates; from memory

	// bodyL and flushL make the cassette's 2.5 L a day; with the site's toilets
	// 1.5: the nights are still aboard (published 3–5 days a cassette of 17–19 L:
	// 1.5–2.9 L, calculated from caravanning101, gorv).
	bodyL           = 1.5 // urine 0.8–2 L (cantingsofayamyam)
	siteToiletShare = 0.6
)

// water is what an adult uses in a day, by where it ends.
type water struct{ drunk, grey, flush, warm float64 } // warm is part of grey

func (w water) fresh() float64 { return w.drunk + w.grey + w.flush }

// amenities are what a place offers, in use.
type amenities struct{ showers, toilets bool }

// day is one adult's day at a place.
func (p Party) day(at amenities) water {
	washroom := p.Showers == "sites" && at.showers
	w := water{drunk: drinkL + cookSteams*cookL, grey: (1 - cookSteams) * cookL, flush: flushL}
	switch {
	case p.Showers == "frugal":
		w.grey += frugalL - flushL
		w.warm += 2 // a shower of 4 L every other day
	case washroom:
		w.grey += siteWashL
		w.warm += siteWashL / 3
	default:
		w.grey += washL
		w.warm += washL / 3
	}
	if p.Showers == "" || p.Showers == "aboard" {
		w.grey += showerL
		w.warm += showerL
	}
	if p.Showers != "frugal" && !(p.Dishes == "sites" && at.showers) && !(p.Dishes == "" && washroom) {
		dishes := dishesL
		if p.Cooking == "little" {
			dishes *= 0.4 // mugs and a board; from memory
		}
		w.grey += dishes
		w.warm += 0.6 * dishes
	}
	if p.Toilet == "sites" && at.toilets {
		w.flush *= siteToiletShare
	}
	return w
}

// cassette is what an adult puts into it in a day, flush included.
func (p Party) cassette(at amenities) float64 {
	if p.Toilet == "sites" && at.toilets {
		return siteToiletShare * (bodyL + flushL)
	}
	return bodyL + flushL
}

// Ampere-hours of a day. Standby and little light: 5 and 7 Ah/day measured
// without a compressor fridge (2045.co.uk).
const (
	standbyAh = 5.0
	lightAh   = 2.0   // standby and light make the 7
	pumpAhL   = 0.012 // a pump of 5 A at 7 L/min, calculated
)

// devicesAh an adult: a phone 15 Wh = 1.4 Ah with losses, a laptop 50 Wh,
// calculated; a small television 3 Ah/h, from memory.
var devicesAh = map[string]float64{"little": 1.5, "": 4, "usual": 4, "many": 10}

var (
	// Published totals differ by half, but who sees the gauge fall saves; from memory.
	waterSpread    = Spread{Trip: 0.15, Day: 0.15}
	cassetteSpread = Spread{Trip: 0.15, Day: 0.15} // 1.5–2.9 L
)
