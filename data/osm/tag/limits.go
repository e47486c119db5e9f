package tag

import (
	"strings"

	"ullage/data/osm/file"
	"ullage/planner/trip"
)

// NoLimit are values that state that there is none.
const NoLimit = "none no unsigned no_sign noindications no_indications"

// limitRules: of several keys that give a number the smallest counts.
// Source: Key:maxheight, Key:maxwidth, Key:maxlength, Key:maxweight, Key:maxweightrating, Key:maxgcweight.
var limitRules = []struct {
	keys    []string
	measure func(string) (float64, bool)
	field   func(*trip.Limits) *float64
}{
	{[]string{"maxheight", "maxheight:physical"}, Metres, func(l *trip.Limits) *float64 { return &l.HeightM }},
	{[]string{"maxwidth", "maxwidth:physical"}, Metres, func(l *trip.Limits) *float64 { return &l.WidthM }},
	{[]string{"maxlength"}, Metres, func(l *trip.Limits) *float64 { return &l.LengthM }},
	{[]string{"maxweight", "maxweightrating", "maxgcweight", "maxgcweightrating"}, Tonnes, func(l *trip.Limits) *float64 { return &l.MassT }},
}

// Limits reads the greatest height, width, length and mass of vehicles. A stated one that gives no number is kept as text in
// Unclear.
func Limits(tags file.Tags) (l trip.Limits) {
	var unclear []string
	for _, r := range limitRules {
		for _, k := range r.keys {
			text, ok := tags[k]
			if !ok || HasWord(NoLimit, text) {
				continue
			}
			v, ok := r.measure(text)
			if !ok {
				unclear = append(unclear, k+"="+text)
				continue
			}
			if f := r.field(&l); *f == 0 || v < *f {
				*f = v
			}
		}
	}
	l.Unclear = strings.Join(unclear, "; ")
	return l
}
