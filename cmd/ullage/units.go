package main

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strconv"
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

var (
	position = regexp.MustCompile(`\bkm (\d+(?:\.\d+)?)`)
	measured = regexp.MustCompile(`([^:.\d]|^)(\d+(?:\.\d+)?) (km|L)\b`)
)

// prose shows the distances and amounts in a sentence about the plan as chosen.
func (p *sheet) prose(text string) string {
	digits := func(n string) int {
		if i := strings.IndexByte(n, '.'); i >= 0 {
			return len(n) - i - 1
		}
		return 0
	}
	text = measured.ReplaceAllStringFunc(text, func(s string) string {
		m := measured.FindStringSubmatch(s)
		n, _ := strconv.ParseFloat(m[2], 64)
		if m[3] == "km" {
			return m[1] + p.km(n, digits(m[2]))
		}
		v, symbol := p.amount(n, m[3])
		if symbol != m[3] {
			return fmt.Sprintf("%s%.*f %s", m[1], digits(m[2])+1, v, symbol)
		}
		return fmt.Sprintf("%s%.*f %s", m[1], digits(m[2]), v, symbol)
	})
	return position.ReplaceAllStringFunc(text, func(s string) string {
		n := position.FindStringSubmatch(s)[1]
		v, _ := strconv.ParseFloat(n, 64)
		return p.mark(v, digits(n))
	})
}
