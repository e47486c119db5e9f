package main

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"ullage/planner/life/units"
)

// systems are what -units knows.
var systems = map[string]func() units.System{"metric": units.Metric, "british": units.British, "american": units.American}

func system(name string) (units.System, error) {
	s, ok := systems[name]
	if !ok {
		return nil, fmt.Errorf("-units %q: write one of %s", name, strings.Join(slices.Sorted(maps.Keys(systems)), ", "))
	}
	return s(), nil
}

// km is a distance; mark a position along the route.
func (p *sheet) km(km float64, digits int) string {
	u := p.units.Unit(units.Distance)
	return fmt.Sprintf("%.*f %s", digits, u.Show(km), u.Symbol)
}

func (p *sheet) mark(km float64, digits int) string {
	u := p.units.Unit(units.Distance)
	return fmt.Sprintf("%s %.*f", p.markWord(), digits, u.Show(km))
}

func (p *sheet) markWord() string {
	if u := p.units.Unit(units.Distance); u.ID != "km" {
		return "mile"
	}
	return "km"
}

// amount is a number of a tank's unit as shown, with the unit's symbol.
func (p *sheet) amount(x float64, unit string) (float64, string) {
	if unit != "L" {
		return x, unit
	}
	u := p.units.Unit(units.Volume)
	return u.Show(x), u.Symbol
}

func (p *sheet) metres(m float64) string { return p.units.Unit(units.Length).Format(m) }

// prose shows what a sentence measures as chosen.
func (p *sheet) prose(text string) string { return p.units.Prose(text) }
