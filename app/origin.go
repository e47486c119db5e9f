package page

import (
	"encoding/json"
	"fmt"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
	"github.com/paulmach/orb"

	"ullage/app/browser"
	"ullage/app/job"
	"ullage/planner/byroad"
)

// This file is about where the trip's route came from, and about leading it
// round roads that the vehicle may not use. A trip file holds the line, the
// points that it was drawn by and what it goes round, but no track.

// An Origin is the track that the trip's route was made of, kept for the next
// visit beside the trip.
type Origin struct {
	Track   orb.LineString `json:"track,omitempty"`
	Matched bool           `json:"matched,omitempty"`
	Count   int            `json:"count"` // points of the route that it is of
	Ends    [2]orb.Point   `json:"ends"`
}

func originOf(m Model) Origin {
	o := Origin{Track: m.Track, Matched: m.Matched, Count: len(m.Trip.Route)}
	if o.Count > 0 {
		o.Ends = [2]orb.Point{m.Trip.Route[0], m.Trip.Route[o.Count-1]}
	}
	return o
}

type (
	// OriginRead: how the route of the last visit came to be.
	OriginRead struct{ Origin Origin }
	// RoundAsked: lead the route round what is closed to the vehicle.
	RoundAsked struct{}
)

func (OriginRead) isMsg() {}
func (RoundAsked) isMsg() {}

// recall takes what is known of the trip's route, if it is known of this one.
func recall(m Model, o Origin) Model {
	if of := originOf(m); o.Count == of.Count && near2(o.Ends[0], of.Ends[0]) && near2(o.Ends[1], of.Ends[1]) {
		m.Track, m.Matched = o.Track, o.Matched
	}
	return m
}

// near2 allows for the digits that a trip file leaves out.
func near2(a, b orb.Point) bool {
	const digits = 1e-5
	return a[0]-b[0] < digits && b[0]-a[0] < digits && a[1]-b[1] < digits && b[1]-a[1] < digits
}

// barred says that the route goes where the vehicle may not go.
func barred(m Model) bool {
	for _, c := range m.Plan.Cautions {
		if strings.HasPrefix(c, byroad.Barred) {
			return m.Roads.State == RoadsReady && m.Draft == nil
		}
	}
	return false
}

// unmatched is the line that is put on roads: that of the file, or the trip's own.
func unmatched(m Model) orb.LineString {
	if len(m.Track) > 1 {
		return m.Track
	}
	return m.Trip.Route
}

// matched takes the route put on roads in place of the line that it was made of.
func matched(m Model, msg TrackMatched) Model {
	line := joined(msg.Legs)
	if len(line) < 2 || !same(msg.Track, unmatched(m)) {
		return m
	}
	m.Trouble = ""
	var left []string
	for _, l := range msg.Legs {
		left = append(left, m.Say.Facts(l.Closed)...)
	}
	if len(left) > 0 {
		m.Trouble = fmt.Sprintf(word.noWayRound, strings.Join(left, "; "))
	}
	m.Track, m.Matched = msg.Track, true
	m.Trip.Round = avoided(m.Say, msg.Legs)
	return reroute(m, line)
}

// offer is what can be done about a route that goes where the vehicle may not.
func (p *Page) offer() app.UI {
	return app.Div().ID("offer").Class("offer").Role("status").Body(
		app.P().Text(word.barred),
		app.Button().Type("button").Class("main").Text(word.leadRound).OnClick(p.onLeadRound),
	)
}

// onLeadRound sends a message: the button is gone before the answer is kept.
func (p *Page) onLeadRound(ctx app.Context, e app.Event) { send(ctx, RoundAsked{}) }

// onTrack puts the route's file on roads, or takes it as it is again.
func (p *Page) onTrack(ctx app.Context, e app.Event) {
	if p.m.Matched {
		p.tell(ctx, TrackKept{})
		return
	}
	p.putOnRoads(ctx)
}

func (p *Page) putOnRoads(ctx app.Context) {
	line := unmatched(p.m)
	p.client.Follow(job.Follow{Vehicle: bare(p.m.Trip.Vehicle), Track: true, Points: line}, func(f job.Followed, err error) {
		ctx.Dispatch(func(ctx app.Context) {
			if err != nil {
				p.tell(ctx, NotMatched{err.Error()})
				return
			}
			p.tell(ctx, TrackMatched{line, f.Legs})
		})
	})
}

// saveOrigin keeps where the route came from, if that is not kept already.
func (p *Page) saveOrigin(ctx app.Context) {
	b, err := json.Marshal(originOf(p.m))
	if err != nil {
		app.Log(err)
		return
	}
	if text := string(b); text != p.origin {
		p.origin = text
		p.put(ctx, keptOrigin, b)
	}
}

// lastOrigin is what is kept of it. It waits.
func lastOrigin(store *browser.Store) (o Origin) {
	if b, ok, err := store.Get(keptOrigin); err != nil || !ok || json.Unmarshal(b, &o) != nil {
		return Origin{}
	}
	return o
}
