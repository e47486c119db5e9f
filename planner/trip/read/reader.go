package read

import (
	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/life"
	"ullage/planner/trip"
	"ullage/planner/trip/build"
)

// A reader reads plans of one built trip.
type reader struct{ *build.Built }

// called is a tank in a fact.
func (b reader) called(tank string) fact.Value { return b.Trip.Vehicle.Called(tank) }

// placed is a place in a fact, by its id.
func (b reader) placed(id string) fact.Value {
	for i := range b.Places {
		if b.Places[i].ID == id {
			return b.Places[i].Called()
		}
	}
	return fact.Text(id)
}

// nightAt is the night of a stop as package life has it; the vehicle must live.
func (b reader) nightAt(stop string) life.Night {
	c := b.Calls[stop]
	return b.Use.Stay(c.Place, trip.Where(c.Place), c.Km)
}

// cold says whether a night is near frost.
func cold(n life.Night) bool { return n.Air.MinC < life.FrostDumpC }

// stops are the problem's by id.
func (b reader) stops() map[string]*planner.Stop {
	out := map[string]*planner.Stop{}
	for i := range b.Problem.Stops {
		out[b.Problem.Stops[i].ID] = &b.Problem.Stops[i]
	}
	return out
}
