package trip

import (
	"fmt"
	"maps"
	"math"
	"slices"
)

// This file lets notes win over the map data.

// noteM is how near to a note the place lies that it is about, where its id is not in
// the data. Own choice: map data move by less when they are drawn anew.
const noteM = 150

// Noted returns places with what notes say of them, the newest note last, and the
// notes that no place fits. A note with a kind that no place fits is a place by itself.
// places is not changed. O(places × notes).
func Noted(places []Place, notes []Note, currency string) (out []Place, left []Note) {
	out = slices.Clone(places)
	sorted := slices.Clone(notes)
	slices.SortStableFunc(sorted, func(a, b Note) int {
		if a.When < b.When {
			return -1
		}
		return 1
	})
	for n, note := range sorted {
		i := about(out, note)
		if i < 0 && note.Kind == "" {
			left = append(left, note)
			continue
		}
		if i < 0 {
			out = append(out, Place{ID: fmt.Sprintf("note%d", n+1), Kind: note.Kind, Name: note.Name, Point: note.Point})
			i = len(out) - 1
		}
		out[i] = note.told(out[i], currency)
	}
	return out, left
}

// about is the place that a note is about; −1 if there is none.
func about(places []Place, note Note) int {
	if i := slices.IndexFunc(places, func(p Place) bool { return note.ID != "" && p.ID == note.ID }); i >= 0 {
		return i
	}
	best, least := -1, noteM/111_000.0 // in degrees of latitude
	for i, p := range places {
		if note.Kind != "" && p.Kind != note.Kind {
			continue
		}
		d := math.Hypot(p.Point[1]-note.Point[1], (p.Point[0]-note.Point[0])*math.Cos(p.Point[1]*math.Pi/180))
		if d < least {
			best, least = i, d
		}
	}
	return best
}

// told is a place as a note says that it is.
func (n Note) told(p Place, currency string) Place {
	p.Notes = append(slices.Clone(p.Notes), n)
	p.Offers = slices.Clone(p.Offers)
	for _, tank := range slices.Sorted(maps.Keys(n.Serves)) {
		p.Offers = slices.DeleteFunc(p.Offers, func(o Offer) bool { return o.Tank == tank })
		p.Offers = append(p.Offers, Offer{Tank: tank, Answer: answer(n.Serves[tank]), Tag: n.evidence()})
	}
	slices.SortStableFunc(p.Offers, func(a, b Offer) int {
		if a.Tank < b.Tank {
			return -1
		}
		return 1
	})
	for i := range p.Offers {
		if price, stated := n.Prices[p.Offers[i].Tank]; stated {
			p.Offers[i].PriceTag = fmt.Sprintf("%.2f %s", price, currency)
		}
	}
	if n.Hours != "" {
		p.Hours = n.Hours
	}
	return n.tellNight(p, currency)
}

// tellNight is what a note says of nights at a place.
func (n Note) tellNight(p Place, currency string) Place {
	stay := Stay{Tag: n.evidence()}
	if p.Stay != nil {
		stay = *p.Stay
	} else if answer(n.Night) != Yes {
		return p
	}
	if answer(n.Night) == No {
		p.Stay = nil
		return p
	}
	if said := answer(n.HookUp); said != Unknown {
		stay.HookUp = said
	}
	if price, stated := n.Prices[NightPrice]; stated {
		stay.Charge, stay.Fee = fmt.Sprintf("%.2f %s", price, currency), Yes
	}
	p.Stay = &stay
	return p
}

// evidence is what stands where the map has a tag.
func (n Note) evidence() string { return "note of " + string(n.When) }
