package read

import (
	"ullage/planner/life"
	"ullage/planner/life/advice"
	"ullage/planner/trip"
)

// A moment is what only the season and the place know. The zero value is a mild
// day away from any pillar.
type moment struct{ frost, hookUp bool }

// conditions says what holds for the vehicle and a moment, for how-tos and checklists.
func (b reader) conditions(m moment) advice.Has {
	v := b.Trip.Vehicle
	holds := map[string]bool{
		advice.IsFrost: m.frost, advice.HasHookUp: m.hookUp, advice.IsHeavy: v.MassKg > life.LightKg, advice.IsFerry: len(b.Axis.Ferries) > 0,
		advice.HasAwning: true, advice.HasAbsorption: true, advice.HasBoiler: true, // not known: say it
	}
	for _, k := range v.Tanks {
		holds[trip.KindOfTank(k.ID).Means] = true
	}
	if v := v.Life; v != nil {
		holds[advice.HasGas] = holds[advice.HasGas] || v.HasLPG
		holds[advice.HasAbsorption] = v.Fridge == life.Absorption
		holds[advice.HasLithium] = v.Battery.Chemistry == life.LiFePO4
		holds[advice.HasBoiler] = v.Heater != life.NoHeater
	}
	return func(c string) bool { return holds[c] }
}
