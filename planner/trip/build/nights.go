package build

import (
	"regexp"
	"strconv"
	"strings"
	"ullage/planner"
	"ullage/planner/trip"
)

// night is one night at the place, or nil if it offers none that the wishes
// allow. A missing answer about hook-up is not a yes.
func (c *Course) night(p *trip.Place, km float64) *planner.Night {
	s, w := p.Stay, c.Trip.Stays
	if s == nil {
		return nil
	}
	fee := c.nightFee(p)
	if !w.Allow(p.Kind) || w.HookUp && s.HookUp != trip.Yes || w.MaxFee > 0 && fee > w.MaxFee {
		return nil
	}
	return &planner.Night{Fee: fee, Nights: 1, Use: c.nightUses(p, km, 1)}
}

// nightUses is what nights at a place use of each tank, to plan with.
func (c *Course) nightUses(p *trip.Place, km float64, nights int) map[string]float64 {
	out := map[string]float64{}
	for i, use := range c.Use.Nights(p, trip.Where(p), km, nights) {
		if use.High != 0 {
			out[c.Trip.Vehicle.Tanks[i].ID] = use.High
		}
	}
	return out
}

func (c *Course) nightFee(p *trip.Place) float64 {
	if p.Stay.Fee == trip.No {
		return 0
	}
	if v, ok := trip.ParseAmount(p.Stay.Charge, c.Trip.Currency, trip.NightUnits...); ok {
		return v
	}
	return p.Kind.Custom().NightFee
}

var stayTag = regexp.MustCompile(`^(\d{1,3}) ?(h|hour|hours|d|day|days|night|nights)$`)

// longestStay reads a maxstay tag in nights; 0 if it says nothing certain.
func longestStay(tag string) int {
	m := stayTag.FindStringSubmatch(strings.TrimSpace(strings.ToLower(tag)))
	if m == nil {
		return 0
	}
	n, _ := strconv.Atoi(m[1])
	if m[2][0] == 'h' {
		n = n / 24
	}
	return max(n, 1)
}
