package sheet

import (
	"bufio"
	"io"

	"ullage/app/say"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// More prints what becomes known after the plan, each thing once as it comes: the
// price of safety, what the margin costs, and plans that one may like better.
type More struct {
	p      *sheet
	began  bool
	safety bool // was printed
}

// NewMore prints to w.
func NewMore(w io.Writer, voice say.Voice) *More {
	return &More{p: &sheet{w: bufio.NewWriter(w), say: voice}}
}

// Tell prints what an itinerary knows for certain by now.
func (m *More) Tell(it trip.Itinerary) error {
	m.p.it, m.p.say.Behind = it, it.DoneKm
	if it.Safety != nil && !m.safety {
		m.safety = true
		m.item(m.p.say.Fact(it.Safety.Says))
	}
	return m.p.w.Flush()
}

// End prints the rest of what there is; nothing if there is nothing.
func (m *More) End(it trip.Itinerary) error {
	if err := m.Tell(it); err != nil {
		return err
	}
	p := m.p
	if it.Care != nil {
		m.item(m.p.say.Fact(it.Care.Says))
	}
	for _, o := range it.Others {
		m.item(p.say.Text("sheet.other", fact.V{"dearer": p.some(o.Extra), "cheaper": p.some(-o.Extra), "what": p.joined(o.Says)}))
		for _, d := range o.Days {
			p.wrap("      ", p.say.Fact(d))
		}
	}
	return p.w.Flush()
}

// item prints one of them, the heading before the first.
func (m *More) item(text string) {
	if !m.began {
		m.began = true
		m.p.line("")
		m.p.line(m.p.say.Text("sheet.others"))
	}
	m.p.wrap("  - ", text)
}
