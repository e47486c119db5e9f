package road

import (
	"slices"
	"sort"
	"strings"

	"github.com/paulmach/orb"
)

// A NoteKind says what a note is about.
type NoteKind uint8

const (
	UnknownLimit NoteKind = iota // a limit that cannot be read, holds at times, or is not stated where it is usually low
	Avoided                      // the vehicle may not use it
	GasNote                      // ferry, or a tunnel with rules for gas on board
	TollNote
	FerryNote
	GateNote
	UnpavedNote
	NarrowNote
	GuestsNote // only for who has business there
)

// A Note is something about a piece of a path that its driver should know.
type Note struct {
	Kind    NoteKind
	AlongM  float64 // from the start of the path
	LengthM float64
	Point   orb.Point // where it begins
	Road    string    // name; may be ""
	Text    string    // what and why: "height limit 2.70 m, the vehicle has 3.05 m"
}

// unknownHeights are roads whose clearance should be stated: it is often low there.
const unknownHeights = Tunnel | Covered | Under

// Notes lists what a driver should know of a path, in the order of driving; pieces of one road with one text are one note.
func (r *Router) Notes(p Path) []Note {
	list := r.notes(p, func(road *Road, _ int) (list []Note) {
		add := func(is bool, kind NoteKind, text string) {
			if is {
				list = append(list, Note{Kind: kind, Text: text})
			}
		}
		v := &r.Vehicle
		unclear := v.concerned(road.Unclear)
		add(unclear != "", UnknownLimit, "limit not clear: "+unclear)
		add(road.Flags&unknownHeights != 0 && road.Limits.HeightCm == 0 && v.HeightM > 0 && unclear == "", UnknownLimit,
			"headroom is not stated in a tunnel, below a bridge or under a roof")
		add(road.Flags&GasRules != 0 && road.Class != Ferry, GasNote, "rules for dangerous goods, which may concern gas on board")
		add(road.Class == Ferry, FerryNote, "ferry")
		add(road.Class == Ferry, GasNote, "ferry: rules for gas on board")
		add(road.Flags&Toll != 0, TollNote, "toll")
		add(road.Flags&Gated != 0, GateNote, "a gate; whether it is open is not stated")
		add(road.Flags&Unpaved != 0, UnpavedNote, "unpaved")
		add(road.Flags&Narrow != 0, NarrowNote, "narrow")
		add(r.Vehicle.guest(road, 0) && r.Vehicle.guest(road, 1) && road.Flags&Gated == 0, GuestsNote, "for who has business there")
		return list
	})
	list = append(list, r.doubtNotes(p)...)
	sort.SliceStable(list, func(i, j int) bool { return list[i].AlongM < list[j].AlongM }) // one sort for all types: less program
	return list
}

// concerned leaves out the limits for goods vehicles only, which bind none up to [HeavyT].
func (v *Vehicle) concerned(unclear string) string {
	if v.MassT > HeavyT || v.MassT == 0 || !strings.Contains(unclear, "hgv") {
		return unclear
	}
	list := strings.Split(unclear, "; ")
	return strings.Join(slices.DeleteFunc(list, func(s string) bool {
		return strings.Contains(s, ":hgv") || strings.HasPrefix(s, "hgv:")
	}), "; ")
}

// Avoided lists the roads of a path that the router's vehicle may not use, and why. Ask it of the path that a vehicle without
// limits takes, to say why this one goes another way.
func (r *Router) Avoided(p Path) []Note {
	return r.notes(p, func(road *Road, direction int) []Note {
		if why := r.Vehicle.Closes(road, direction); why != "" {
			return []Note{{Kind: Avoided, Text: string(why)}}
		}
		return nil
	})
}

func (r *Router) notes(p Path, of func(road *Road, direction int) []Note) []Note {
	n := r.Net
	var list []Note
	var open []int // notes that went on to the step before
	run, name := 0.0, ""
	for _, s := range p.Steps {
		road := &n.roads[n.road[s.Edge()]]
		length := float64(s.cm()) / 100
		if road.Name != "" || length > 0.1 {
			name = road.Name // a barrier has the name of its road
		}
		var still []int
		for _, note := range of(road, int(s.Dir&1)) {
			note.AlongM, note.LengthM, note.Road = run, length, name
			i := slices.IndexFunc(open, func(i int) bool {
				return list[i].Kind == note.Kind && list[i].Road == note.Road && list[i].Text == note.Text
			})
			if i >= 0 {
				list[open[i]].LengthM += length
				still = append(still, open[i])
				continue
			}
			note.Point = n.stepPoints(s)[0]
			still = append(still, len(list))
			list = append(list, note)
		}
		open = still
		run += length
	}
	return list
}
