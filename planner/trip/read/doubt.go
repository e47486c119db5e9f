package read

import (
	"slices"

	"ullage/planner/fact"
	"ullage/planner/trip"
)

// Kinds of what is doubtful about a call.
const (
	callLikely   fact.Kind = "call.likely"
	callHours    fact.Kind = "call.hours"
	callCurrency fact.Kind = "call.currency"
	callLimit    fact.Kind = "call.limit"
	callGuests   fact.Kind = "call.customers"
	callBook     fact.Kind = "call.book"
	callBookOft  fact.Kind = "call.book_often"
)

// cautionsOf are first what is doubtful about this place, then what is usual
// wherever these things are done.
func (b reader) cautionsOf(c trip.Call) []fact.Fact {
	out := b.doubts(c)
	frost := false
	if b.Use.Lives {
		n := b.nightAt(c.Stop)
		frost = cold(n)
		if c.Night {
			out = append(out, b.Use.Model.Cautions(n)...)
		}
	}
	return append(out, b.care(c.HowTo, moment{frost: frost})...)
}

// doubts are what to ask or look at before one relies on a place.
func (b reader) doubts(c trip.Call) []fact.Fact {
	at := b.Calls[c.Stop]
	p := at.Place
	var out []fact.Fact
	var likely, tags []fact.Value
	for _, t := range firsts(c.Tasks) {
		if o, ok := p.Offer(t.Tank); ok && o.Answer != trip.Yes && !trip.KindOfTank(t.Tank).ByNight {
			likely = append(likely, b.called(t.Tank))
		}
	}
	if len(likely) > 0 {
		out = append(out, fact.Of(callLikely, fact.V{"tanks": fact.List(likely...)}))
	}
	if !at.Hours {
		out = append(out, fact.Of(callHours, nil))
	}
	if c.Night {
		switch p.Stay.Reservation {
		case "required", "yes", "only":
			out = append(out, fact.Of(callBook, nil))
		case "recommended":
			out = append(out, fact.Of(callBookOft, nil))
		}
	}
	for _, text := range b.foreignPrices(p, c) {
		tags = append(tags, fact.Text(text))
	}
	if len(tags) > 0 {
		out = append(out, fact.Of(callCurrency, fact.V{"tags": fact.List(tags...), "currency": fact.Text(b.Trip.Currency)}))
	}
	if p.Limits.Unclear != "" {
		out = append(out, tag(callLimit, p.Limits.Unclear))
	}
	if p.Access == "customers" && !c.Night {
		out = append(out, tag(callGuests, "access=customers"))
	}
	return out
}

// foreignPrices are what a place states in another currency of what is paid at a call.
func (b reader) foreignPrices(p *trip.Place, c trip.Call) []string {
	var tags, out []string
	for _, t := range c.Tasks {
		o, _ := p.Offer(t.Tank)
		tags = append(tags, o.PriceTag)
	}
	switch {
	case p.Stay == nil && p.Fee != trip.No:
		tags = append(tags, p.Charge)
	case c.Night && p.Stay.Fee != trip.No:
		tags = append(tags, p.Stay.Charge)
	}
	for _, text := range tags {
		if trip.Foreign(text, b.Trip.Currency) && !slices.Contains(out, text) {
			out = append(out, text)
		}
	}
	return out
}
