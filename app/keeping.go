package page

import (
	"bytes"
	"encoding/json"
	"errors"
	"slices"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
	"github.com/paulmach/orb"

	"ullage/app/browser"
	"ullage/app/keep"
	"ullage/app/model"
	"ullage/app/say"
	"ullage/data/tripfile"
	"ullage/planner/trip"
)

// This file keeps what is open for the next visit: it says what the desk of this page
// holds, and has it written.

// A keeper keeps what is open, on this device.
type keeper struct {
	*core
	tab     *keep.Tab   // nil until the store is open
	was     []keep.Item // the trip of the last visit, until there is one here
	maps    []keep.Item // that are open; none: the demo's
	fleet   []keep.Item // one at most
	unread  []keep.Item // what could not be read
	asides  []keep.Item // of that, what a person went on without
	example string      // the untouched trip of the site
	asked   bool        // that the browser clears nothing

	route, origin, before made
	marks                 model.Marks // as they are kept
}

// save keeps what is open: it is noted when this returns, and written beside the page.
func (k *keeper) save(ctx app.Context) {
	if k.tab == nil {
		return
	}
	items, err := k.items()
	if err != nil {
		k.tell(ctx, model.NotKept{Why: err.Error()})
		return
	}
	if !k.untouched(items) && k.tab.Save(items) {
		k.flush(ctx)
	}
}

// items is all that this page works on.
func (k *keeper) items() ([]keep.Item, error) {
	out := k.was
	if k.m.HasTrip() {
		var err error
		if out, err = k.tripItems(); err != nil {
			return nil, err
		}
	}
	return slices.Concat(out, k.maps, k.fleet, k.asides), nil
}

// tripItems are the trip and what is half done of it.
func (k *keeper) tripItems() ([]keep.Item, error) {
	t, m := k.m.Trip, k.m
	t.Route = nil // it is long, and seldom another: it is an item of its own
	var b bytes.Buffer
	err := tripfile.Write(&b, t)
	out := []keep.Item{keep.NewItem(keep.Trip, t.Name, b.Bytes())}
	add := func(of *made, part string, what any, write func() ([]byte, error)) {
		if err == nil {
			var i keep.Item
			i, err = of.item(part, what, write)
			out = append(out, i)
		}
	}
	if line := m.Trip.Route; len(line) > 0 {
		add(&k.route, keep.Route, lineOf(line), func() ([]byte, error) { return tripfile.Route(line) })
		type origin struct {
			route, track lineAt
			matched      bool
		}
		add(&k.origin, keep.Origin, origin{lineOf(line), lineOf(m.Track), m.Matched}, func() ([]byte, error) { return json.Marshal(model.OriginOf(m)) })
	}
	if m.Before != nil {
		add(&k.before, keep.Before, m.Before, func() ([]byte, error) { return json.Marshal(model.BeforeOf(*m.Before)) })
	}
	if w := model.WorkOf(m); !w.Nothing() {
		add(&made{}, keep.Work, w.Format, func() ([]byte, error) { return json.Marshal(w) })
	}
	return out, err
}

// made is an item that is made anew only if what it is made of is another.
type made struct {
	of any
	is keep.Item
}

func (m *made) item(part string, of any, write func() ([]byte, error)) (keep.Item, error) {
	if m.of == nil || m.of != of {
		b, err := write()
		if err != nil {
			return keep.Item{}, err
		}
		m.of, m.is = of, keep.NewItem(part, "", b)
	}
	return m.is, nil
}

// A lineAt tells one line from another by where it lies: what a model points to never changes.
type lineAt struct {
	first *orb.Point
	n     int
}

func lineOf(l orb.LineString) lineAt {
	if len(l) == 0 {
		return lineAt{}
	}
	return lineAt{&l[0], len(l)}
}

// untouched tells whether there is nothing of the person's own yet: the example as the
// site has it is not kept, and is always that of the newest version.
func (k *keeper) untouched(items []keep.Item) bool {
	if _, kept := k.tab.Desk(); len(kept.Entries) > 0 {
		return false
	}
	own := slices.ContainsFunc(items, func(i keep.Item) bool {
		return i.Part == keep.Work || i.Part == keep.Fleet || i.Part == keep.Aside || i.Part == keep.Map && i.Hash != ""
	})
	return !own && k.m.HasTrip() && unplanned(k.m.Trip) == k.example
}

// isExample says that a trip is that of the site.
func (k *keeper) isExample(t trip.Trip) { k.example = unplanned(t) }

// unplanned is a trip without its plan, to be compared.
func unplanned(t trip.Trip) string {
	t.Keep = nil
	var b bytes.Buffer
	if err := tripfile.Write(&b, t); err != nil {
		return ""
	}
	return b.String()
}

// flush writes beside the page what is noted, and tells what came of it.
func (k *keeper) flush(ctx app.Context) {
	tab, ask := k.tab, !k.asked
	k.asked = true
	k.beside(ctx, func() {
		lost, err := tab.Flush()
		if ask { // there is something of the person's own now
			browser.Persist()
		}
		ctx.Dispatch(func(ctx app.Context) { k.flushed(ctx, lost, err) })
	})
}

func (k *keeper) flushed(ctx app.Context, lost []keep.Entry, err error) {
	for _, e := range lost {
		if e.Part == keep.Map {
			k.tell(ctx, model.MapMissing{Missing: model.Missing{Name: say.Quoted(e.Name), Full: true}})
		}
	}
	_, kept := k.tab.Desk()
	for i, m := range k.maps { // the planner holds the bytes; the page needs them no more
		switch {
		case slices.ContainsFunc(lost, func(e keep.Entry) bool { return e.Hash == m.Hash }):
			k.maps[i].Lost, k.maps[i].Data = true, nil
		case slices.Contains(kept.Entries, m.Entry):
			k.maps[i].Data = nil
		}
	}
	switch {
	case errors.Is(err, keep.ErrOvertaken):
		k.tell(ctx, model.Overtaken{})
	case err != nil:
		k.tell(ctx, model.NotKept{Why: err.Error()})
	}
	k.measure(ctx)
}

// measure looks how much room is used, and what else is kept.
func (k *keeper) measure(ctx app.Context) {
	tab := k.tab
	if tab == nil {
		return
	}
	k.beside(ctx, func() {
		var msg model.KeptRoom
		msg.Used, msg.Most, _ = browser.Room()
		here, _ := tab.Desk()
		if names, desks, err := tab.Desks(); err == nil {
			for _, name := range names {
				for _, e := range desks[name].Of(keep.Trip) {
					if name != here {
						msg.Desks = append(msg.Desks, model.Desk{ID: name, Name: e.Name})
					}
				}
			}
		}
		k.later(ctx, msg)
	})
}

// keepFile keeps a file that was opened: a map in place of those that are there, or
// beside them, or a fleet in place of the one before.
func (k *keeper) keepFile(ctx app.Context, part string, f source, data []byte) {
	item := keep.Item{Entry: keep.Entry{Part: part, Name: f.name, Hash: f.hash, Size: len(data)}, Data: data}
	switch {
	case part == keep.Fleet:
		k.fleet = []keep.Item{item}
	case f.add && len(k.maps) == 0: // beside the demo's
		k.maps = []keep.Item{{Entry: keep.Entry{Part: keep.Map, Name: demoPlaces}}, item}
	case f.add:
		k.maps = append(slices.DeleteFunc(slices.Clone(k.maps), func(m keep.Item) bool { return m.Name == f.name }), item)
	default:
		k.maps = []keep.Item{item}
	}
	k.save(ctx)
}

const marksKey = "marks" // and of a copy its name

// saveMarks keeps units, ticks and kinds of gauges for the next visit. Another tab may
// have ticked something else meanwhile: both count.
func (k *keeper) saveMarks(ctx app.Context) {
	theirs, _ := k.keptMarks()
	merged := model.MergedMarks(k.marks, model.MarksOf(k.m), theirs)
	b, err := json.Marshal(merged)
	if err == nil {
		err = browser.Quick{}.Set(k.marksKey(), string(b))
	}
	if err != nil {
		k.tell(ctx, model.NotKept{Why: err.Error()})
	}
	k.marks = merged
	k.tell(ctx, model.MarksHeard{Marks: merged})
}

// keptMarks are those that are kept, by whichever tab.
func (k *keeper) keptMarks() (m model.Marks, ok bool) {
	text, ok := browser.Quick{}.Get(k.marksKey())
	if ok && json.Unmarshal([]byte(text), &m) != nil {
		return model.Marks{}, false
	}
	return m, ok
}

func (k *keeper) marksKey() string {
	if desk := browser.Session(deskKey); desk != keep.Main {
		return marksKey + "/" + desk
	}
	return marksKey
}

// heard takes what another tab has kept.
func (k *keeper) heard(ctx app.Context, key, text string) {
	switch {
	case k.tab != nil && k.tab.Heard(key, text):
		k.tell(ctx, model.Overtaken{})
	case key == k.marksKey():
		if theirs, ok := k.keptMarks(); ok {
			merged := model.MergedMarks(k.marks, model.MarksOf(k.m), theirs)
			k.marks = theirs
			k.tell(ctx, model.MarksHeard{Marks: merged})
		}
	}
}
