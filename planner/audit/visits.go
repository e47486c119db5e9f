package audit

import (
	"math"
	"slices"
	"strings"

	"ullage/planner"
)

// A leg is a visit with the stop it is at.
type leg struct {
	planner.Visit
	at *planner.Stop
}

// checkVisits checks what is visited and taken, apart from numbers.
func checkVisits(p *planner.Problem, plan planner.Plan) ([]leg, error) {
	var legs []leg
	next := 0
	for _, v := range plan.Visits {
		i := slices.IndexFunc(p.Stops[next:], func(s planner.Stop) bool { return s.ID == v.Stop })
		if i < 0 {
			return nil, &planner.Broken{Rule: planner.RuleOrder, Stop: v.Stop}
		}
		next += i + 1
		legs = append(legs, leg{v, &p.Stops[next-1]})
	}
	return legs, checkNights(p, legs)
}

// checkNights checks services and nights of all visits, and what is required.
func checkNights(p *planner.Problem, legs []leg) error {
	nights := 0
	for _, l := range legs {
		if err := checkServices(l.at, l.Visit); err != nil {
			return err
		}
		if !l.Night {
			continue
		}
		if l.at.Night == nil {
			return &planner.Broken{Rule: planner.RuleNight, Stop: l.Stop, Km: l.at.Km, Detail: planner.NightNotThere}
		}
		nights += l.at.Night.Nights
	}
	if err := checkRequired(p, legs); err != nil {
		return err
	}
	if r := p.Nights; r != nil && nights < r.Min {
		return &planner.Broken{Rule: planner.RuleNights, Km: p.LengthKm, Have: float64(nights), Need: float64(r.Min)}
	} else if r != nil && nights > r.Max {
		return &planner.Broken{Rule: planner.RuleNights, Km: p.LengthKm, Have: float64(nights), Need: float64(r.Max)}
	}
	return nil
}

// checkRequired wants the stops that must be visited, and one of each list.
func checkRequired(p *planner.Problem, legs []leg) error {
	for _, s := range p.Stops {
		i := slices.IndexFunc(legs, func(l leg) bool { return l.Stop == s.ID })
		if s.Required && (i < 0 || s.Night != nil && !legs[i].Night) {
			return &planner.Broken{Rule: planner.RuleRequired, Stop: s.ID, Km: s.Km}
		}
	}
	for _, list := range p.RequireOne {
		if !slices.ContainsFunc(legs, func(l leg) bool { return slices.Contains(list, l.Stop) && (l.Night || l.at.Night == nil) }) {
			return &planner.Broken{Rule: planner.RuleOne, Found: strings.Join(list, " ")}
		}
	}
	return nil
}

// checkServices walks the stop's own list: each service taken must come next.
func checkServices(s *planner.Stop, v planner.Visit) error {
	i := 0
	for _, y := range v.Serve {
		for i < len(s.Serves) && s.Serves[i].Tank != y.Tank {
			i++
		}
		if i == len(s.Serves) || s.Serves[i].GuestsOnly && !v.Night {
			return &planner.Broken{Rule: planner.RuleService, Stop: s.ID, Tank: y.Tank, Km: s.Km}
		}
		i++
	}
	return nil
}

func offered(s *planner.Stop, tank string) planner.Service {
	for _, x := range s.Serves {
		if x.Tank == tank {
			return x
		}
	}
	return planner.Service{}
}

// differ says whether a number that a plan states is another than the audited one.
func differ(stated, audited float64) bool {
	return !(math.Abs(stated-audited) <= statedTolerance+1e-9*math.Abs(audited))
}

// statedTolerance is what a number stated in a plan may differ from the
// audited one: files may round to six decimals.
const statedTolerance = 1e-5
