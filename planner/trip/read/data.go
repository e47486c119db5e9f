package read

import (
	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// This file says what the map data say about a call, with the tag.

// Kinds of what the data say.
const (
	dataCharged      fact.Kind = "data.charged"
	dataTank         fact.Kind = "data.tank"
	dataLikely       fact.Kind = "data.likely"
	dataPrice        fact.Kind = "data.price"
	dataFree         fact.Kind = "data.free"
	dataFee          fact.Kind = "data.fee"
	dataFeeTypical   fact.Kind = "data.fee_typical"
	dataNight        fact.Kind = "data.night"
	dataNightFree    fact.Kind = "data.night_free"
	dataNightTypical fact.Kind = "data.night_typical"
	dataHas          fact.Kind = "data.has"     // {list} is there
	dataLacks        fact.Kind = "data.lacks"   // it is not
	dataNothing      fact.Kind = "data.nothing" // the data do not say
	dataTag          fact.Kind = "data.tag"

	priceNone    fact.Kind = "price.none"
	priceForeign fact.Kind = "price.foreign"
	priceUnclear fact.Kind = "price.unclear"
)

func tag(kind fact.Kind, text string) fact.Fact { return fact.Of(kind, fact.V{"tag": fact.Text(text)}) }

// facts are what the data say about what is done here, and what a price or a
// fee that counts here rests on.
func (b reader) facts(s *planner.Stop, p *trip.Place, c trip.Call) []fact.Fact {
	var out []fact.Fact
	for _, t := range firsts(c.Tasks) {
		out = append(out, b.ofTask(p, t)...)
	}
	if p.Stay == nil {
		out = append(out, b.ofFee(s, p)...)
	}
	if c.Night {
		out = append(out, b.ofNight(s, p.Stay)...)
	}
	if p.Hours != "" {
		out = append(out, tag(dataTag, "opening_hours="+p.Hours))
	}
	if p.Limits.HeightM > 0 {
		out = append(out, fact.Of(dataHeight, fact.V{"limit": fact.Metres(p.Limits.HeightM, 2)}))
	}
	if p.Access != "" {
		out = append(out, tag(dataTag, "access="+p.Access))
	}
	return out
}

// dataHeight: the height that fits.
const dataHeight fact.Kind = "data.height"

func (b reader) ofTask(p *trip.Place, t trip.Task) []fact.Fact {
	name := b.called(t.Tank)
	o, _ := p.Offer(t.Tank)
	says := fact.Of(dataLikely, fact.V{"tank": name})
	switch {
	case trip.KindOfTank(t.Tank).ByNight:
		says = fact.Of(dataCharged, fact.V{"tank": name})
	case o.Answer == trip.Yes:
		says = fact.Of(dataTank, fact.V{"tank": name, "tag": fact.Text(o.Tag)})
	}
	out := []fact.Fact{says}
	if _, stated := trip.ParseAmount(o.PriceTag, b.Trip.Currency, trip.LitreUnits...); t.Cost > 0 && !stated {
		out = append(out, fact.Of(dataPrice, fact.V{"tank": name, "why": b.notRead("price", o.PriceTag), "rate": fact.Rate(t.Cost/t.Amount, b.Trip.Currency, t.Unit)}))
	}
	return out
}

func (b reader) ofFee(s *planner.Stop, p *trip.Place) []fact.Fact {
	_, stated := trip.ParseAmount(p.Charge, b.Trip.Currency)
	switch {
	case p.Fee == trip.No:
		return []fact.Fact{fact.Of(dataFree, nil)}
	case stated:
		return []fact.Fact{tag(dataFee, "charge="+p.Charge)}
	case s.Fee > 0 || p.Charge != "":
		return []fact.Fact{fact.Of(dataFeeTypical, fact.V{"why": b.notRead("charge", p.Charge), "sum": fact.Money(s.Fee, b.Trip.Currency)})}
	}
	return nil
}

func (b reader) ofNight(s *planner.Stop, stay *trip.Stay) []fact.Fact {
	out := []fact.Fact{tag(dataNight, stay.Tag)}
	_, stated := trip.ParseAmount(stay.Charge, b.Trip.Currency, trip.NightUnits...)
	switch {
	case stay.Fee == trip.No:
		out = append(out, fact.Of(dataNightFree, nil))
	case stated:
		out = append(out, tag(dataNight, "charge="+stay.Charge))
	default:
		fee := s.Night.Fee / float64(s.Night.Nights)
		out = append(out, fact.Of(dataNightTypical, fact.V{"why": b.notRead("charge", stay.Charge), "sum": fact.Money(fee, b.Trip.Currency)}))
	}
	for _, x := range [][2]string{{"check_in", stay.CheckIn}, {"check_out", stay.CheckOut}, {"reservation", stay.Reservation}} {
		if x[1] != "" {
			out = append(out, tag(dataTag, x[0]+"="+x[1]))
		}
	}
	return append(out, amenities(stay)...)
}

// amenities are what a site has, what it has not, and of what nothing is known.
func amenities(stay *trip.Stay) []fact.Fact {
	by := map[trip.Answer][]fact.Value{}
	for _, x := range []struct {
		answer trip.Answer
		name   string
	}{{stay.HookUp, "site.hookup"}, {stay.Showers, "site.showers"}, {stay.Toilets, "site.toilets"}} {
		by[x.answer] = append(by[x.answer], fact.Term(x.name))
	}
	var out []fact.Fact
	for _, x := range []struct {
		answer trip.Answer
		kind   fact.Kind
	}{{trip.Yes, dataHas}, {trip.No, dataLacks}, {trip.Unknown, dataNothing}} {
		if list := by[x.answer]; len(list) > 0 {
			out = append(out, fact.Of(x.kind, fact.V{"list": fact.List(list...)}))
		}
	}
	return out
}

// notRead is why a price does not count: there is none, or it is in another
// currency, or it is more than one plain amount.
func (b reader) notRead(key, text string) fact.Value {
	switch {
	case text == "":
		return fact.Clause(fact.Of(priceNone, nil))
	case trip.Foreign(text, b.Trip.Currency):
		return fact.Clause(fact.Of(priceForeign, fact.V{"tag": fact.Text(key + "=" + text), "currency": fact.Text(b.Trip.Currency)}))
	}
	return fact.Clause(tag(priceUnclear, key+"="+text))
}
