package planner

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"ullage/planner/fact"
)

// This file turns what there is to say of a problem into facts: amounts with the
// unit of their tank, and tanks with the name that people gave them.

// Fact of a reason for p: what it names is tank or stop, with from and to, missing
// (or n nights) and, of a day, its limit. A waste tank has no supply.
func (r Reason) Fact(p *Problem) fact.Fact {
	v := fact.V{"from": fact.Mark(r.FromKm, 0), "to": fact.Mark(r.ToKm, 0)}
	switch r.Kind {
	case ReasonTank, ReasonEnd:
		p.name(v, r.Limit)
		v["missing"] = p.amount(r.Limit, r.Missing)
	case ReasonDayKm:
		v["missing"], v["limit"] = fact.Km(r.Missing, 0), fact.Km(p.Drive.MaxKmPerDay, 0)
	case ReasonDayMin:
		v["missing"], v["limit"] = fact.Span(r.Missing), fact.Span(p.Drive.MaxMinPerDay)
	case ReasonNightsMore, ReasonNightsLess:
		v["n"] = fact.Count(int(r.Missing))
	case ReasonMass:
		v["missing"] = fact.Kg(r.Missing)
	case ReasonStop:
		v["stop"] = fact.Text(r.Limit)
	}
	return fact.Of(r.Kind, v)
}

// Kinds of what a change comes to.
const (
	changeCosts  fact.Kind = "change.costs"
	changeAtMost fact.Kind = "change.costs_at_most"
)

// Fact of a change to p, and of what the trip then costs in a currency.
func (c Change) Fact(p *Problem, currency string) fact.Fact {
	kind := changeCosts
	if !c.Proven {
		kind = changeAtMost
	}
	return fact.Of(kind, fact.V{"do": fact.Clause(c.do(p)), "sum": fact.Money(c.Cost, currency)})
}

// do is what the hirer does.
func (c Change) do(p *Problem) fact.Fact {
	v := fact.V{}
	p.name(v, c.Tank)
	switch c.Kind {
	case ChangeUseLess:
		v["share"] = fact.Share(c.By, 0)
	case ChangeDayKm:
		v["km"] = fact.Km(c.By, 0)
	case ChangeDayMin:
		v["time"] = fact.Span(c.By)
	case ChangeNightsMore, ChangeNightsLess:
		v["n"] = fact.Count(int(c.By))
	default:
		v["amount"] = p.amount(c.Tank, c.By)
	}
	if c.Kind == ChangeEndMore && p.emptied(c.Tank) {
		return fact.Of(changeUnemptied, v)
	}
	return fact.Of(c.Kind, v)
}

// changeUnemptied: hand back a tank with so much in it that was agreed to be empty.
const changeUnemptied fact.Kind = "change.end_unemptied"

// emptied says whether a tank is agreed to be empty, or as good as, at the end.
func (p *Problem) emptied(tank string) bool {
	return slices.ContainsFunc(p.Tanks, func(t Tank) bool {
		return t.ID == tank && t.End != nil && t.End.AtMost != nil && *t.End.AtMost < 0.05*t.Capacity
	})
}

// Fact of a broken rule of p. Its kind is the detail, or "broken." and the rule.
func (b *Broken) Fact(p *Problem) fact.Fact {
	unit := b.unit(p)
	v := fact.V{"at": fact.Mark(b.Km, 1), "have": exactly(b.Have, unit), "need": exactly(b.Need, unit), "by": exactly(math.Abs(b.Have-b.Need), unit)}
	for name, text := range map[string]string{"stop": b.Stop, "field": b.Field, "found": b.Found} {
		if text != "" {
			v[name] = fact.Text(text)
		}
	}
	p.name(v, b.Tank)
	return fact.Of(cmp.Or(b.Detail, fact.Kind("broken."+string(b.Rule))), v)
}

// unit of what the plan has and needs.
func (b *Broken) unit(p *Problem) string {
	_, what, _ := strings.Cut(b.Field, ".")
	switch {
	case b.Tank != "":
		return p.unit(b.Tank)
	case b.Rule == RuleDayKm || b.Rule == RuleMove || what == "km":
		return "km"
	case b.Rule == RuleDayMin || b.Rule == RuleOpen || b.Rule == RuleKeys || what == "min":
		return "min"
	case b.Rule == RuleMass:
		return "kg"
	}
	return ""
}

// name puts the tank of an id into values, and that it is a supply if it is.
func (p *Problem) name(v fact.V, tank string) {
	if tank == "" {
		return
	}
	v["tank"] = fact.Tank(tank, "")
	for _, t := range p.Tanks {
		if t.ID == tank {
			v["tank"] = fact.Tank(tank, t.Name)
			if t.Kind == Supply {
				v["supply"] = fact.Text(string(Supply))
			}
		}
	}
}

func (p *Problem) unit(tank string) string {
	for _, t := range p.Tanks {
		if t.ID == tank {
			return t.Unit
		}
	}
	return ""
}

// amount of a tank with one decimal, or as many as show that it is not nothing.
func (p *Problem) amount(tank string, x float64) fact.Value {
	digits := 1
	for digits < 6 && x != 0 && math.Abs(x) < 0.5*math.Pow10(-digits) {
		digits++
	}
	return fact.Quantity(x, p.unit(tank), digits)
}

// exactly is a number with up to four decimals, or more if it is tiny.
func exactly(x float64, unit string) fact.Value {
	_, decimals, _ := strings.Cut(short(x), ".")
	return fact.Quantity(x, unit, len(decimals))
}
