package roads

import (
	"regexp"
	"slices"
	"strings"

	"ullage/data/osm/tag"
	"ullage/geo/road/net"
)

// A clause is one part of a conditional tag: what holds, and when. Source: Conditional restrictions,
// "<value> @ <condition>[; <value> @ <condition>]", conditions with a semicolon in parentheses.
type clause struct{ value, when string }

// clausesOf reads the value of a conditional tag. A part without @ has no condition.
func clausesOf(text string) (list []clause) {
	depth, start := 0, 0
	add := func(part string) {
		value, when, _ := strings.Cut(part, "@")
		when = strings.TrimSpace(when)
		if inner, ok := strings.CutPrefix(when, "("); ok {
			when = strings.TrimSuffix(inner, ")")
		}
		if value = strings.TrimSpace(value); value != "" {
			list = append(list, clause{value, strings.TrimSpace(when)})
		}
	}
	for i, c := range text {
		switch {
		case c == '(':
			depth++
		case c == ')':
			depth--
		case c == ';' && depth <= 0:
			add(text[start:i])
			start = i + 1
		}
	}
	add(text[start:])
	return list
}

// unlimited is the limit of a road that says that it has none, so that it is not taken for unknown.
const unlimited = 1<<16 - 1

// hundredths rounds down, for a limit is never made greater, but not to 0, which is none.
func hundredths(v float64) uint16 {
	if v <= 0 {
		return 0
	}
	return max(1, uint16(min(v*100+1e-6, unlimited-1)))
}

var comparison = regexp.MustCompile(`^([a-z]+) *(>=?) *([^ ].*)$`)

// above reads a condition on the vehicle alone, "weight>3.5" or "height >= 3 m", as the limit that a vehicle must keep. ok is
// false for any other: times, several at once, what is below a size.
func above(when string) (l net.Limits, ok bool) {
	m := comparison.FindStringSubmatch(when)
	if m == nil {
		return l, false
	}
	measure, field := tag.Metres, &l.HeightCm
	switch m[1] {
	case "height":
	case "width":
		field = &l.WidthCm
	case "length":
		field = &l.LengthCm
	case "weight", "weightrating", "maxweightrating":
		measure, field = tag.Tonnes, &l.Mass10Kg
	case "axleload":
		measure, field = tag.Tonnes, &l.Axle10Kg
	default:
		return l, false
	}
	v, ok := measure(m[3])
	if *field = hundredths(v); ok && m[2] == ">=" {
		*field = max(1, *field-1)
	}
	return l, ok
}

// closedAbove reads an access tag of which every clause shuts out vehicles above a size, and nothing else.
func closedAbove(text string) (list []net.Limits, ok bool) {
	for _, c := range clausesOf(text) {
		l, sized := above(c.when)
		if !sized || !tag.HasWord(tag.NoEntry, c.value) {
			return nil, false
		}
		list = append(list, l)
	}
	return list, len(list) > 0
}

// onlyHeavy says that limits bind none up to [net.HeavyT].
func onlyHeavy(list []net.Limits) bool {
	return !slices.ContainsFunc(list, func(l net.Limits) bool { return l.Mass10Kg < net.HeavyT*100 })
}

// narrow makes each limit the smaller of the two that are stated.
func narrow(a *net.Limits, b net.Limits) {
	for _, p := range [][2]*uint16{{&a.HeightCm, &b.HeightCm}, {&a.WidthCm, &b.WidthCm}, {&a.LengthCm, &b.LengthCm},
		{&a.Mass10Kg, &b.Mass10Kg}, {&a.Axle10Kg, &b.Axle10Kg}} {
		if have, more := p[0], *p[1]; more > 0 && (*have == 0 || more < *have) {
			*have = more
		}
	}
}
