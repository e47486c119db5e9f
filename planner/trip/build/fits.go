package build

import (
	"slices"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// Kinds of why a place is of no use to a trip.
const (
	avoided   fact.Kind = "out.avoided"
	noAccess  fact.Kind = "out.access"
	tooLow    fact.Kind = "out.low"
	tooNarrow fact.Kind = "out.narrow"
	tooShort  fact.Kind = "out.short"
	tooWeak   fact.Kind = "out.weak"
	shut      fact.Kind = "out.shut"
	aboard    fact.Kind = "out.aboard"
)

// because is a reason to leave a place out.
func because(kind fact.Kind, v fact.V) *fact.Fact { return new(fact.Of(kind, v)) }

// closedAccess are values of access that keep a hired motorhome out.
var closedAccess = map[string]fact.Value{
	"no": fact.Term("access.no"), "private": fact.Term("access.private"), "permit": fact.Term("access.permit"), "members": fact.Term("access.members"),
	"residents": fact.Term("access.residents"), "delivery": fact.Term("access.delivery"), "military": fact.Term("access.military"),
	"agricultural": fact.Term("access.agricultural"), "forestry": fact.Term("access.forestry"), "employees": fact.Term("access.employees"),
}

// refused says why the vehicle or the person cannot use the place; nil if they can.
func (c *Course) refused(p *trip.Place) *fact.Fact {
	if slices.Contains(c.Trip.Avoid, p.ID) {
		return because(avoided, nil)
	}
	if who, closed := closedAccess[p.Access]; closed {
		return because(noAccess, fact.V{"who": who, "tag": fact.Text("access=" + p.Access)})
	}
	v := c.Trip.Vehicle
	for _, l := range []struct {
		kind        fact.Kind
		limit, need float64
	}{
		{tooLow, p.Limits.HeightM, v.HeightM + marginM},
		{tooNarrow, p.Limits.WidthM, v.WidthM + marginM},
		{tooShort, p.Limits.LengthM, v.LengthM},
	} {
		if l.limit > 0 && l.need > l.limit {
			return because(l.kind, fact.V{"limit": fact.Metres(l.limit, 2), "needs": fact.Metres(l.need, 2)})
		}
	}
	if most := 1000 * p.Limits.MassT; most > 0 && v.MassKg > most {
		return because(tooWeak, fact.V{"mass": fact.Kg(most), "allowed": fact.Kg(v.MassKg)})
	}
	return nil
}

// marginM is left above and beside the vehicle. Common practice, no source;
// the plate on the vehicle may be without aerial, load and tyres pumped up.
const marginM = 0.10
