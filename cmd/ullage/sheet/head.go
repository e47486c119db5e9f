package sheet

import (
	"strings"

	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

func (p *sheet) head(t trip.Trip) {
	it, v := p.it, t.Vehicle
	p.title(it.Name, "=", len([]rune(it.Name)))
	p.wrap("", p.say.Text("sheet.vehicle", fact.V{"vehicle": fact.Text(v.Name), "adults": fact.Count(t.Party.Adults), "children": fact.Count(t.Party.Children),
		"height": fact.Metres(v.HeightM, 2), "width": fact.Metres(v.WidthM, 2), "length": fact.Metres(v.LengthM, 2), "mass": fact.Kg(v.MassKg)}))
	p.wrap("", p.say.Text("sheet.route", fact.V{"km": fact.Km(it.LengthKm, 1), "date": fact.Text(p.say.LongDate(string(t.Start)))}))
	if w := it.Weight; w != nil {
		p.wrap("", p.say.Text("sheet.weight", fact.V{"kg": fact.Kg(w.Kg), "allowed": fact.Kg(w.AllowedKg)}))
	}
	if len(it.Wishes) > 0 {
		p.wrap("", p.say.Text("sheet.wishes", fact.V{"list": fact.List(fact.Each(it.Wishes, fact.Clause).List...)}))
	}
	if len(it.Days) > 0 {
		p.verdict(t.ValuePerH)
	}
	p.line("")
}

// verdict says what the plan costs and how good it is. The hour's value is
// counted but not paid.
func (p *sheet) verdict(valuePerH float64) {
	it, c := p.it, p.it.Parts
	var sums []fact.Value
	for _, part := range []struct {
		kind fact.Kind
		sum  float64
	}{{"sheet.pay.goods", c.Goods}, {"sheet.pay.fees", c.Fees}, {"sheet.pay.nights", c.Nights}, {"sheet.pay.refill", c.Refill}} {
		if part.sum >= 0.005 {
			sums = append(sums, fact.Clause(fact.Of(part.kind, fact.V{"sum": p.money(part.sum)})))
		}
	}
	if len(sums) == 1 && c.Refill < 0.005 {
		sums = nil // it is what there is to pay
	}
	p.wrap("", p.say.Text("sheet.pay", fact.V{"pay": p.some(it.Cost - c.Time), "sums": fact.List(sums...)}))
	hour := fact.V{"hour": p.some(valuePerH)}
	if l := it.Least; l != nil && it.Status == planner.Optimal && it.Cost-l.Cost >= 0.005 {
		p.wrap("", strings.Join(p.least(*l, hour), " "))
		return
	}
	if it.Status == planner.Optimal {
		p.wrap("", p.say.Text("sheet.cheapest", hour))
		return
	}
	off := it.Cost - it.Bound
	p.wrap("", p.say.Text("sheet.nearly", hour, fact.V{"saving": p.money(off), "share": fact.Share(off/max(it.Cost, 1e-9), 1)}))
}

// least says what the cheapest plan costs less, and for what.
func (p *sheet) least(l trip.Least, hour fact.V) []string {
	out := []string{p.say.Text("sheet.least", hour, fact.V{"saving": p.money(p.it.Cost - l.Cost)})}
	if l.Even >= 0.005 {
		out = append(out, p.say.Text("sheet.least.even", fact.V{"sum": p.money(l.Even), "km": fact.Km(l.LongestKm, 0)}))
	}
	if l.Pump >= 0.005 {
		out = append(out, p.say.Text("sheet.least.pump", fact.V{"sum": p.money(l.Pump)}))
	}
	return out
}
