package trip

import (
	"slices"

	"ullage/planner/fact"

	"github.com/paulmach/orb"
)

// A Place is one location that may serve a tank or take a vehicle for the night.
type Place struct {
	ID       string    `json:"id"` // OSM type and number: n123, w45, r6; unique in a data set
	Kind     PlaceKind `json:"kind"`
	Name     string    `json:"name,omitempty"`
	Point    orb.Point `json:"point"`
	Offers   []Offer   `json:"offers,omitempty"` // in order of tank id
	Access   string    `json:"access,omitempty"` // yes, customers, destination, permit…; "" is unknown
	Fee      Answer    `json:"fee,omitempty"`
	Charge   string    `json:"charge,omitempty"`   // as tagged: "2 EUR"
	Hours    string    `json:"hours,omitempty"`    // opening_hours as tagged; "" is unknown
	Operator string    `json:"operator,omitempty"` // who runs it: one operator closed may be all closed
	Limits   Limits    `json:"limits,omitzero"`
	Stay     *Stay     `json:"stay,omitempty"`  // nil: no night here
	Date     Date      `json:"date,omitempty"`  // of the data: 2025-01-19
	EleM     *float64  `json:"ele_m,omitempty"` // metres above the sea, as tagged; nil: not stated
	Contact  Contact   `json:"contact,omitzero"`
	Notes    []Note    `json:"notes,omitempty"` // what people know of it, the newest last

	Outline orb.LineString `json:"outline,omitempty"` // closed, around the place or the site that it is in; nil: not known
	Gates   []orb.Point    `json:"gates,omitempty"`   // where vehicles drive in to the outline; nil: not known
}

// BesideKm: nearer is beside the route, for in whole tenths of a mile it is none
// (0.05 miles of 1.609344 km).
const BesideKm = 0.0805

// An Offer is one service of a place and the tag that says so.
type Offer struct {
	Tank     string `json:"tank"` // a row of tankkind.go
	Answer   Answer `json:"answer"`
	Likely   bool   `json:"likely,omitempty"`    // Unknown, but common practice says yes
	Guests   bool   `json:"guests,omitempty"`    // for customers of the place only
	Tag      string `json:"tag,omitempty"`       // the evidence: "fuel:lpg=yes"
	PriceTag string `json:"price_tag,omitempty"` // a price as tagged
}

// Contact is how to ask a place, as tagged; "" is not stated.
type Contact struct {
	Phone   string `json:"phone,omitempty"`
	Website string `json:"website,omitempty"`
	Email   string `json:"email,omitempty"`
}

// All that is stated, the telephone first.
func (c Contact) All() []string {
	return slices.DeleteFunc([]string{c.Phone, c.Email, c.Website}, func(s string) bool { return s == "" })
}

// Limits are what fits. 0 means that no number is stated.
type Limits struct {
	HeightM float64 `json:"height_m,omitempty"`
	WidthM  float64 `json:"width_m,omitempty"`
	LengthM float64 `json:"length_m,omitempty"`
	MassT   float64 `json:"mass_t,omitempty"`
	Unclear string  `json:"unclear,omitempty"` // a stated limit that gives no number: "maxheight=below_default"
}

// Stay is what a night at the place offers.
type Stay struct {
	HookUp      Answer  `json:"hookup,omitempty"`
	Amps        float64 `json:"amps,omitempty"` // 0: not stated
	Showers     Answer  `json:"showers,omitempty"`
	Toilets     Answer  `json:"toilets,omitempty"`
	Tents       Answer  `json:"tents,omitempty"`
	Capacity    int     `json:"capacity,omitempty"` // 0: not stated
	Fee         Answer  `json:"fee,omitempty"`
	Charge      string  `json:"charge,omitempty"` // as tagged
	MaxStay     string  `json:"max_stay,omitempty"`
	Reservation string  `json:"reservation,omitempty"` // as tagged: yes, recommended, required, no
	CheckIn     string  `json:"check_in,omitempty"`    // as tagged: 14:00-20:00
	CheckOut    string  `json:"check_out,omitempty"`   // as tagged: 11:00
	Tag         string  `json:"tag,omitempty"`         // the evidence: "tourism=caravan_site"
}

// Offer returns what the place says about a tank; ok is false if nothing.
func (p Place) Offer(tank string) (o Offer, ok bool) {
	for _, o := range p.Offers {
		if o.Tank == tank {
			return o, true
		}
	}
	return Offer{}, false
}

// Called is a place among others in a fact: by its name, or what kind of place it is and its id.
func (p *Place) Called() fact.Value {
	if p.Name != "" {
		return fact.Text(p.Name)
	}
	return fact.Clause(fact.Of(unnamed, fact.V{"kind": p.Kind.Says(), "id": fact.Text(p.ID)}))
}

// unnamed is a place without a name.
const unnamed fact.Kind = "place.unnamed"
