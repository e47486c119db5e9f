package life

import (
	"errors"
	"fmt"
)

// A Model says what a trip uses. [Model.Validate] rejects the zero value.
type Model struct {
	Vehicle Vehicle
	Party   Party
	Comfort Comfort
}

// Validate names the first thing that is wrong.
func (m Model) Validate() error {
	v := m.Vehicle
	if _, err := NewEngine(v.Body, v.LoadedKg, v.Per100); err != nil {
		return err
	}
	switch v.Heater {
	case LPGHeater, DieselHeater, NoHeater:
	default:
		return fmt.Errorf("life: heater %q is not known: use %s, %s or %s", v.Heater, LPGHeater, DieselHeater, NoHeater)
	}
	switch v.Fridge {
	case Absorption, Compressor, NoFridge:
	default:
		return fmt.Errorf("life: fridge %q is not known: use %s, %s or %s", v.Fridge, Absorption, Compressor, NoFridge)
	}
	if v.Heater == LPGHeater && !v.HasLPG {
		return errors.New("life: the heater burns gas, but the vehicle has none: set HasLPG or another heater")
	}
	if !(v.ElectricW >= 0) || !(v.DEFShare <= 0.2) {
		return fmt.Errorf("life: electric heating %v W, exhaust fluid %v of the diesel: out of range", v.ElectricW, v.DEFShare)
	}
	if c := m.Comfort.usual(); !(c.InsideC >= CoolestC && c.InsideC <= WarmestC && c.NightC >= 0 && c.NightC <= WarmestC && c.HotC >= CoolestWaterC && c.HotC <= HottestWaterC) {
		return fmt.Errorf("life: wished are %v °C by day, %v °C by night, water of %v °C: use %d–%d, 0–%d and %d–%d", c.InsideC, c.NightC, c.HotC,
			CoolestC, WarmestC, WarmestC, CoolestWaterC, HottestWaterC)
	}
	return errors.Join(v.Shell.validate(), v.Battery.validate(), m.Party.Validate())
}
