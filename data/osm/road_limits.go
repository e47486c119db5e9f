package osm

import (
	"slices"
	"strings"

	"ullage/geo/road/net"
)

// limitKeys are the keys of limits.go and how a road states them.
var limitKeys = []string{"maxheight", "maxheight:physical", "maxwidth", "maxwidth:physical", "maxlength", "maxweight", "maxweightrating", "maxgcweight", "maxgcweightrating"}

// unlimited is the limit of a road that says that it has none, so that it is not taken for unknown.
const unlimited = 1<<16 - 1

// readRoadLimits reads the greatest vehicle. maxheight=default is the country's usual height, 4 m or more, which no motorhome
// reaches (Key:maxheight: Germany 4.5 m, France 4.3 m; 96/53/EC: vehicles up to 4.00 m). Limits that hold at times or that
// give no number are kept as text with a caution.
func readRoadLimits(t Tags, r *net.Road) {
	stated := Tags{}
	highEnough := false
	for _, k := range limitKeys {
		switch v, ok := t[k]; {
		case !ok:
		case hasWord("default", v) || hasWord(noLimit, v):
			highEnough = highEnough || strings.HasPrefix(k, "maxheight") && hasWord("default none", v) // without a sign it is not known
		default:
			stated[k] = v
		}
	}
	l := limitsOf(stated)
	r.Limits = net.Limits{HeightCm: hundredths(l.HeightM), WidthCm: hundredths(l.WidthM), LengthCm: hundredths(l.LengthM),
		Mass10Kg: hundredths(l.MassT)}
	var unclear []string
	if l.Unclear != "" {
		unclear = append(unclear, l.Unclear)
	}
	if v, ok := t["maxaxleload"]; ok && !hasWord(noLimit, v) && v != "default" {
		if tonnes, ok := measure(v, massUnits); ok {
			r.Limits.Axle10Kg = hundredths(tonnes)
		} else {
			unclear = append(unclear, "maxaxleload="+v)
		}
	}
	if highEnough && r.Limits.HeightCm == 0 && !strings.Contains(l.Unclear, "maxheight") {
		r.Limits.HeightCm = unlimited
	}
	// What holds at times only, or for some vehicles: never taken as kept, unless it is about their size alone.
	var at []string
	for k, v := range t {
		base, rest, ok := strings.Cut(k, ":")
		if !ok || !slices.Contains(conditionalKeys, base) || rest == "physical" {
			continue
		}
		if sizes, ok := closedAbove(v); ok && rest == "conditional" && (slices.Contains(accessKeys, base) || base == "hgv" && onlyHeavy(sizes)) {
			for _, l := range sizes {
				narrow(&r.Limits, l)
			}
			continue
		}
		if strings.HasSuffix(rest, "conditional") || slices.Contains(limitKeys, base) && !strings.Contains(rest, "signed") {
			at = append(at, k+"="+strings.ReplaceAll(v, ";", ",")) // a semicolon parts one from the next
		}
	}
	slices.Sort(at)
	unclear = append(unclear, at...)
	if len(unclear) > 0 {
		r.Flags |= net.Caution
		r.Unclear = strings.Join(unclear, "; ")
	}
}

// conditionalKeys may have a :conditional form. Source: Conditional restrictions.
var conditionalKeys = append([]string{"maxaxleload", "access", "vehicle", "motor_vehicle", "motorcar", "motorhome", "hgv", "oneway"}, limitKeys...)

// hundredths rounds down: a limit is never made greater.
func hundredths(v float64) uint16 { return uint16(min(v*100+1e-6, unlimited-1)) }
