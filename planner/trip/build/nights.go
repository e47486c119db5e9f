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
	return c.Nights(p, km, 1)
}

// Nights is a stay of so many nights at a place that offers them, at a km of the route.
func (c *Course) Nights(p *trip.Place, km float64, nights int) *planner.Night {
	custom := p.Kind.Custom()
	n := &planner.Night{Fee: c.nightFee(p) * float64(nights), Nights: nights, Min: custom.SettleMin, CheckIn: c.checkIn(arrival(p.Stay.CheckIn, custom.CheckIn))}
	n.Use, n.ByNight = c.nightUses(p, km, nights)
	return n
}

// lateMin is what a trip that begins late in the day has at least to come to a
// place for the night. Own choice.
const lateMin = 120

// checkIn is the hours of a place for a trip that may begin late.
func (c *Course) checkIn(hours [2]float64) *[2]float64 {
	late := min(max(c.Drive.DepartMin, c.Trip.FromMin)+lateMin, 1440)
	return &[2]float64{hours[0], max(hours[1], late)}
}

// nightUses is what nights at a place use of each tank, to plan with, in all and
// night by night where nights differ. Where one night charges and another does not,
// what is charged is not counted with.
func (c *Course) nightUses(p *trip.Place, km float64, nights int) (use map[string]float64, by map[string][]float64) {
	use = map[string]float64{}
	first, later := c.Use.FirstAndLater(p, trip.Where(p), km)
	for i, k := range c.Trip.Vehicle.Tanks {
		each := make([]float64, nights)
		sum := 0.0
		for n := range each {
			if each[n] = later[i].High; n == 0 {
				each[n] = first[i].High
			}
			if first[i].High*later[i].High < 0 && nights > 1 {
				each[n] = max(each[n], 0)
			}
			sum += each[n]
		}
		if sum != 0 {
			use[k.ID] = sum
		}
		if nights > 1 && each[0] != each[1] {
			if by == nil {
				by = map[string][]float64{}
			}
			by[k.ID] = each
		}
	}
	return use, by
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

var checkInTag = regexp.MustCompile(`^(?:Mo-Su )?(?:from )?(\d{1,2}):(\d{2})(?: ?[-–] ?(\d{1,2}):(\d{2})|\+)?$`)

// arrival reads a check_in tag: from when on, or from when till when. What it does not
// say is as usual.
func arrival(tag string, usual [2]float64) [2]float64 {
	m := checkInTag.FindStringSubmatch(strings.TrimSpace(tag))
	if m == nil {
		return usual
	}
	clock := func(hour, minute string) float64 {
		h, _ := strconv.Atoi(hour)
		n, _ := strconv.Atoi(minute)
		return min(float64(60*h+n), 1440)
	}
	from, to := clock(m[1], m[2]), usual[1]
	if m[3] != "" {
		to = clock(m[3], m[4])
	}
	if to < from {
		to = max(from, usual[1])
	}
	return [2]float64{from, to}
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
