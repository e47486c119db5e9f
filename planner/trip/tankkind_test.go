package trip_test

import (
	"testing"

	"ullage/planner/life"
	"ullage/planner/life/advice"
	"ullage/planner/trip"
)

// TestTanksAreKnown: what is not in the table of tanks but in one of package life is
// there for every tank. Each is looked up by the tank's id and is nothing where it is
// missing, so that nobody would notice.
func TestTanksAreKnown(t *testing.T) {
	m := life.Model{Vehicle: *trip.Fleet()[0].Life, Party: life.Party{Adults: 1}}
	uses, err := m.Drive(life.MixedProfile(100, 60))
	if err != nil {
		t.Fatal(err)
	}
	night, err := m.Stay(life.Stay{YearDay: 1})
	if err != nil {
		t.Fatal(err)
	}
	used := map[string]bool{}
	for _, u := range append(uses, night.Uses...) {
		used[u.Tank] = true
	}
	for _, id := range trip.TankIDs() {
		kind := trip.KindOfTank(id)
		if kind.Verb == "" || !kind.ByNight && kind.Minutes <= 0 {
			t.Errorf("%s: give its row in tankkind.go a Verb, and Minutes unless a night restores it", id)
		}
		if !used[id] {
			t.Errorf("%s: nothing uses it: give it a Use in planner/life/drive.go or stay.go, also one of nothing", id)
		}
		if life.Source(id).Nothing() {
			t.Errorf("%s: say in the table of planner/life/source.go where the numbers of its use come from", id)
		}
		if kg := (life.Load{Levels: []life.Content{{Tank: id, Level: 1}}}).Kg(); !kind.ByNight && kg <= 0 {
			t.Errorf("%s: say in the table of planner/life/weight.go what a unit of it weighs", id)
		}
		if _, ok := advice.HowToFor(id, nil); !ok {
			t.Errorf("%s: say in the table of planner/life/advice/howtos.go how to %s it", id, kind.Verb)
		}
	}
}

// What was done is read as it was written, into whatever stood there; what begins
// with no verb is a tank.
func TestDid(t *testing.T) {
	done := trip.Did{Verb: trip.Charge, Tank: "battery"}
	for text, want := range map[string]trip.Did{
		"refuel diesel": {Verb: trip.Refuel, Tank: "diesel"}, "top up def": {Verb: trip.TopUp, Tank: "def"}, "empty cassette": {Verb: trip.Empty, Tank: "cassette"},
		"wine": {Tank: "wine"}, "draining": {Tank: "draining"}, "": {},
	} {
		if err := done.UnmarshalText([]byte(text)); err != nil || done != want {
			t.Errorf("%q is %+v, %v, want %+v", text, done, err, want)
		}
		if b, err := want.MarshalText(); err != nil || string(b) != text {
			t.Errorf("%+v is written %q, %v, want %q", want, b, err, text)
		}
	}
}
