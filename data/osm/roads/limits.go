package roads

import (
	"slices"
	"strings"

	"ullage/data/osm/file"
	"ullage/data/osm/tag"
	"ullage/geo/road/net"
)

// limitKeys are the keys of [tag.Limits] and how a road states them.
var limitKeys = []string{"maxheight", "maxheight:physical", "maxwidth", "maxwidth:physical", "maxlength", "maxweight", "maxweightrating", "maxgcweight", "maxgcweightrating"}

// conditionalKeys may have a :conditional form. Source: Conditional restrictions.
var conditionalKeys = append([]string{"maxaxleload", "access", "vehicle", "motor_vehicle", "motorcar", "motorhome", "hgv", "oneway"}, limitKeys...)

// readLimits reads the greatest vehicle. Limits that hold at times or that give no number are kept as text with a caution.
func readLimits(t file.Tags, r *net.Road) {
	unclear := readStated(t, r)
	unclear = append(unclear, readConditional(t, r)...)
	if len(unclear) > 0 {
		r.Flags |= net.Caution
		r.Unclear = strings.Join(unclear, "; ")
	}
}

// readStated reads what holds always, and returns what gives no number. maxheight=default is the country's usual height, 4 m or
// more, which no motorhome reaches (Key:maxheight: Germany 4.5 m, France 4.3 m; 96/53/EC: vehicles up to 4.00 m).
func readStated(t file.Tags, r *net.Road) (unclear []string) {
	stated := file.Tags{}
	highEnough := false
	for _, k := range limitKeys {
		switch v, ok := t[k]; {
		case !ok:
		case tag.HasWord("default", v) || tag.HasWord(tag.NoLimit, v):
			highEnough = highEnough || strings.HasPrefix(k, "maxheight") && tag.HasWord("default none", v) // without a sign it is not known
		default:
			stated[k] = v
		}
	}
	l := tag.Limits(stated)
	r.Limits = net.Limits{HeightCm: hundredths(l.HeightM), WidthCm: hundredths(l.WidthM), LengthCm: hundredths(l.LengthM),
		Mass10Kg: hundredths(l.MassT)}
	if l.Unclear != "" {
		unclear = append(unclear, l.Unclear)
	}
	if v, ok := t["maxaxleload"]; ok && !tag.HasWord(tag.NoLimit, v) && v != "default" {
		if tonnes, ok := tag.Tonnes(v); ok {
			r.Limits.Axle10Kg = hundredths(tonnes)
		} else {
			unclear = append(unclear, "maxaxleload="+v)
		}
	}
	if highEnough && r.Limits.HeightCm == 0 && !strings.Contains(l.Unclear, "maxheight") {
		r.Limits.HeightCm = unlimited
	}
	return unclear
}

// readConditional reads what holds at times only or for some vehicles, and returns what is never taken as kept: all but what is
// about their size alone.
func readConditional(t file.Tags, r *net.Road) (unclear []string) {
	for k, v := range t {
		base, rest, ok := strings.Cut(k, ":")
		if !ok || !slices.Contains(conditionalKeys, base) || rest == "physical" {
			continue
		}
		if sizes, ok := bySize(k, v); ok {
			for _, l := range sizes {
				narrow(&r.Limits, l)
			}
			continue
		}
		if strings.HasSuffix(rest, "conditional") || slices.Contains(limitKeys, base) && !strings.Contains(rest, "signed") {
			unclear = append(unclear, k+"="+strings.ReplaceAll(v, ";", ",")) // a semicolon parts one from the next
		}
	}
	slices.Sort(unclear)
	return unclear
}

// bySize reads a conditional access tag that shuts out vehicles by their size alone.
func bySize(key, value string) ([]net.Limits, bool) {
	base, rest, _ := strings.Cut(key, ":")
	sizes, ok := closedAbove(value)
	return sizes, ok && rest == "conditional" && (slices.Contains(tag.AccessKeys, base) || base == "hgv" && onlyHeavy(sizes))
}
