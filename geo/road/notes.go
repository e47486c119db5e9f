package road

import (
	"slices"
	"sort"
	"strings"

	"github.com/paulmach/orb"

	"ullage/geo/road/net"
)

// A NoteKind says what a note is about.
type NoteKind uint8

const (
	Barred           NoteKind = iota // the vehicle may not use it: Bar says why
	UnclearLimit                     // a limit that gives no sure number, Tags as it is tagged
	TurnAtTimes                      // a turn that is forbidden at times, Tags as it is tagged
	UnstatedHeadroom                 // in a tunnel, below a bridge or under a roof: it is often low there
	GasRules                         // rules for dangerous goods, which may concern gas on board
	GasOnFerry                       // a ferry has rules for gas on board
	FerryNote
	TollNote
	GateNote // whether it is open is not stated
	UnpavedNote
	NarrowNote
	GuestsNote // only for who has business there
)

// A Note is something about a piece of a path that its driver should know.
type Note struct {
	Kind    NoteKind
	Bar     net.Bar // of [Barred], else zero
	Tags    string  // of [UnclearLimit] and [TurnAtTimes], else ""
	AlongM  float64 // from the start of the path
	LengthM float64
	Point   orb.Point // where it begins
	Road    string    // name; may be ""
}

// says is what two notes must share to be one.
func (n *Note) says() Note { return Note{Kind: n.Kind, Bar: n.Bar, Tags: n.Tags, Road: n.Road} }

// unknownHeights are roads whose clearance should be stated: it is often low there.
const unknownHeights = net.Tunnel | net.Covered | net.Under

// Notes lists what a driver should know of a path, in the order of driving; pieces of one road that follow each other and say
// the same are one note. What the vehicle may not use is not among them, see [Router.Avoided]. A path without steps has none.
// Cost linear in its steps.
func (r *Router) Notes(p Path) []Note {
	v := &r.Vehicle
	list := r.notes(p, func(road *net.Road, _ int) (list []Note) {
		add := func(is bool, kind NoteKind) {
			if is {
				list = append(list, Note{Kind: kind})
			}
		}
		ferry := road.Class == net.Ferry
		if unclear := concerned(v, road.Unclear); unclear != "" {
			list = append(list, Note{Kind: UnclearLimit, Tags: unclear})
		} else {
			add(road.Flags&unknownHeights != 0 && road.Limits.HeightCm == 0 && v.HeightM > 0, UnstatedHeadroom)
		}
		add(road.Flags&net.GasRules != 0 && !ferry, GasRules)
		add(ferry, FerryNote)
		add(ferry, GasOnFerry)
		add(road.Flags&net.Toll != 0, TollNote)
		add(road.Flags&net.Gated != 0, GateNote)
		add(road.Flags&net.Unpaved != 0, UnpavedNote)
		add(road.Flags&net.Narrow != 0, NarrowNote)
		add(v.Guest(road, 0) && v.Guest(road, 1) && road.Flags&net.Gated == 0, GuestsNote)
		return list
	})
	list = append(list, r.turnNotes(p)...)
	sort.SliceStable(list, func(i, j int) bool { return list[i].AlongM < list[j].AlongM }) // one sort for all types: less program
	return list
}

// concerned leaves out the limits for goods vehicles only, which bind none up to [HeavyT].
func concerned(v *net.Vehicle, unclear string) string {
	if v.MassT > net.HeavyT || v.MassT == 0 || !strings.Contains(unclear, "hgv") {
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
	return r.notes(p, func(road *net.Road, direction int) []Note {
		if bar := r.Vehicle.Closes(road, direction); bar.Why != net.MayDrive {
			return []Note{{Kind: Barred, Bar: bar}}
		}
		return nil
	})
}

// turnNotes lists the turns of a path that are forbidden at times.
func (r *Router) turnNotes(p Path) (list []Note) {
	n := r.Net
	for _, t := range n.TurnsAtTimes(p.Steps, &r.Vehicle) {
		along := uint64(0)
		for _, s := range p.Steps[:t.Step] {
			along += uint64(s.LengthCm())
		}
		s := p.Steps[t.Step]
		list = append(list, Note{Kind: TurnAtTimes, Tags: t.At, AlongM: float64(along) / 100, Point: n.StepLine(s)[0], Road: n.Road(s.Edge()).Name})
	}
	return list
}

// notes asks of every step what is to be noted; what goes on from one to the next is one note.
func (r *Router) notes(p Path, of func(road *net.Road, direction int) []Note) []Note {
	n := r.Net
	var list []Note
	var open []int // notes that went on to the step before
	run, name := 0.0, ""
	for _, s := range p.Steps {
		road := n.Road(s.Edge())
		length := float64(s.LengthCm()) / 100
		if road.Name != "" || length > 0.1 {
			name = road.Name // a barrier has the name of its road
		}
		var still []int
		for _, note := range of(road, int(s.Dir&1)) {
			note.AlongM, note.LengthM, note.Road = run, length, name
			i := slices.IndexFunc(open, func(i int) bool { return list[i].says() == note.says() })
			if i >= 0 {
				list[open[i]].LengthM += length
				still = append(still, open[i])
				continue
			}
			note.Point = n.StepLine(s)[0]
			still = append(still, len(list))
			list = append(list, note)
		}
		open = still
		run += length
	}
	return list
}
