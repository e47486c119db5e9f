package sheet

import "ullage/planner/life/units"

// prose shows what a finished sentence measures in the units of the voice. Facts
// need none of it: p.say.Fact says them in any units.
func (p *sheet) prose(text string) string {
	switch p.say.Units {
	case "british":
		return units.British().Prose(text)
	case "american":
		return units.American().Prose(text)
	}
	return text
}
