package life

import (
	"fmt"
	"math"
)

// Drive is what sections of the route use: diesel and exhaust fluid, and what
// the battery gets back (negative). Divide by their kilometres for a use per
// km; count 100 km as one day of [Use.Planned].
func (m Model) Drive(sections []Section) (Uses, error) {
	v := m.Vehicle
	engine, err := NewEngine(v.Body, v.LoadedKg, v.Per100)
	if err != nil {
		return nil, err
	}
	var flat, climb, hours float64
	for i, s := range sections {
		if !(s.Km >= 0) || !s.Ferry && s.Km > 0 && !(s.SpeedKmh > 0) || math.IsInf(s.Km, 0) {
			return nil, fmt.Errorf("life: section %d has %v km at %v km/h: state how it is driven", i+1, s.Km, s.SpeedKmh)
		}
		level := s
		level.UpM, level.DownM = 0, 0
		l := engine.Litres(v.LoadedKg, level)
		flat += l
		climb += engine.Litres(v.LoadedKg, s) - l
		hours += s.Hours()
	}
	share := v.DEFShare
	if share == 0 {
		share = defShare
	}
	def := Spread{Trip: math.Hypot(driveSpread.Trip, defSystematic), Day: driveSpread.Day}
	return Uses{
		NewUse("diesel", Part{"driving", flat, driveSpread}, Part{"climbing", climb, driveSpread}),
		NewUse("def", Part{"exhaust treatment", max(share, 0) * (flat + climb), def}),
		NewUse("battery", Part{"charging by driving", -v.Battery.DriveAhPerHour() * hours, chargeSpread}),
	}, nil
}
