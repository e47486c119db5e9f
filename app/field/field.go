package field

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"ullage/app/say"
	"ullage/planner/fact"
	"ullage/planner/life/units"
	"ullage/planner/trip"
)

// A Field is one control of the trip form. Get and Set are inverse for valid
// text; Set never changes the trip it is given, and says what is wrong with a text.
//
// Its words are in the catalogue: form.NAME, form.hint.NAME if it has a hint,
// group.GROUP, and those of its options.
type Field struct {
	Key     string
	Name    string     // of its words; "": Key
	Group   string     // heading it stands under
	Tank    *trip.Tank // whose it is; nil: of none
	Unit    string     // after the control
	Input   string     // text, number, whole, date, time, select, checkbox
	Options []Option
	Wide    bool // takes the whole width of the form
	Get     func(trip.Trip) string
	Set     func(trip.Trip, string) (trip.Trip, fact.Fact)
}

// Words is the name of the field's words in the catalogue.
func (f Field) Words() string {
	if f.Name != "" {
		return f.Name
	}
	return f.Key
}

// An Option is one choice of a select.
type Option struct{ Value, Label string }

// Options are choices that the catalogue calls by a prefix and their value;
// one without a value is called none.
func Options(v say.Voice, prefix string, values ...string) []Option {
	var out []Option
	for _, x := range values {
		key := prefix + x
		if x == "" {
			key = prefix + "none"
		}
		out = append(out, Option{x, v.Text(key)})
	}
	return out
}

// limits are what a number may be, as stored, how many of those stored are
// one as shown (0: one), and whether 0 may stand for the usual.
type limits struct {
	trip.Range
	scale float64
	usual bool
}

// number is a field of a number with a unit that is the same for everyone.
func number(f Field, l limits, of func(*trip.Trip) *float64) Field {
	if l.scale == 0 {
		l.scale = 1
	}
	f.Input = "number"
	f.Get = func(t trip.Trip) string { return Plain(*of(&t) / l.scale) }
	f.Set = func(t trip.Trip, s string) (trip.Trip, fact.Fact) {
		if l.usual && strings.TrimSpace(s) == "0" {
			*of(&t) = 0
			return t, fact.Fact{}
		}
		v, wrong := Number(s, math.Ceil(100*l.Least/l.scale)/100, l.Most/l.scale)
		*of(&t) = v * l.scale
		return t, wrong
	}
	return f
}

// measured is a number that is shown and typed in another unit than it is
// stored in.
func measured(f Field, u units.Unit, l limits, of func(*trip.Trip) *float64) Field {
	f.Input, f.Unit = "number", u.Symbol
	f.Get = func(t trip.Trip) string { return Plain(u.Show(*of(&t))) }
	f.Set = func(t trip.Trip, s string) (trip.Trip, fact.Fact) {
		v, wrong := Shown(s, u, l.Least, l.Most)
		*of(&t) = v
		return t, wrong
	}
	return f
}

func whole(f Field, in trip.Range, of func(*trip.Trip) *int) Field {
	f.Input = "whole"
	f.Get = func(t trip.Trip) string { return strconv.Itoa(*of(&t)) }
	f.Set = func(t trip.Trip, s string) (trip.Trip, fact.Fact) {
		v, wrong := readWhole(s, int(in.Least), int(in.Most))
		if wrong.Nothing() {
			*of(&t) = v
		}
		return t, wrong
	}
	return f
}

// choice is a field of one of its options.
func choice[T ~string](f Field, of func(*trip.Trip) *T) Field {
	f.Input, f.Wide = "select", true
	f.Get = func(t trip.Trip) string { return string(*of(&t)) }
	f.Set = func(t trip.Trip, s string) (trip.Trip, fact.Fact) {
		if !slices.ContainsFunc(f.Options, func(o Option) bool { return o.Value == s }) {
			return t, fact.Of("form.want_choice", nil)
		}
		*of(&t) = T(s)
		return t, fact.Fact{}
	}
	return f
}

func check(f Field, of func(*trip.Trip) *bool) Field {
	f.Input, f.Wide = "checkbox", true
	f.Get = func(t trip.Trip) string { return strconv.FormatBool(*of(&t)) }
	f.Set = func(t trip.Trip, s string) (trip.Trip, fact.Fact) {
		*of(&t) = s == "true"
		return t, fact.Fact{}
	}
	return f
}
