package planner

import "ullage/planner/fact"

// Kinds of a [Reason], each with what its Limit names and its Missing counts.
const (
	ReasonTank       fact.Kind = "reason.tank"        // the tank; its amount: it falls short in the stretch
	ReasonEnd        fact.Kind = "reason.end"         // the tank; its amount: it misses what it must hold at the end
	ReasonDayKm      fact.Kind = "reason.day_km"      // "km"; kilometres: a day is too short
	ReasonDayMin     fact.Kind = "reason.day_min"     // "min"; minutes: a day is too short
	ReasonNightsMore fact.Kind = "reason.nights_more" // "nights"; nights: more are needed than allowed
	ReasonNightsLess fact.Kind = "reason.nights_less" // "nights"; nights: fewer can be had than wished
	ReasonOpen       fact.Kind = "reason.open"        // "open": places are closed when the trip comes by
	ReasonBackup     fact.Kind = "reason.backup"      // "backup": no plan survives a closed place
	ReasonStop       fact.Kind = "reason.stop"        // the required stop, which does not fit
	ReasonMass       fact.Kind = "reason.mass"        // "mass"; its unit: the tanks are too heavy to set off
	ReasonPlan       fact.Kind = "reason.plan"        // "plan": none keeps every limit, and no single one is to blame
)

// A Reason names what makes a problem infeasible: the limit, the stretch, how much
// is missing, and what would cure it.
type Reason struct {
	Kind    fact.Kind `json:"kind"`
	Limit   string    `json:"limit"` // a tank, a stop, or "km", "min", "nights", "open", "backup", "plan"
	FromKm  float64   `json:"from_km"`
	ToKm    float64   `json:"to_km"`
	Missing float64   `json:"missing"`
	Changes []Change  `json:"changes,omitempty"`
}

// Kinds of a [Change], each with what its By counts.
const (
	ChangeStartMore  fact.Kind = "change.start_more"  // the tank's amount: start fuller
	ChangeStartLess  fact.Kind = "change.start_less"  // the tank's amount: start emptier
	ChangeUseLess    fact.Kind = "change.use_less"    // a share of 1
	ChangeDayKm      fact.Kind = "change.day_km"      // kilometres more in a day
	ChangeDayMin     fact.Kind = "change.day_min"     // minutes more in a day
	ChangeNightsMore fact.Kind = "change.nights_more" // nights more, where the tank can be restored if one is named
	ChangeNightsLess fact.Kind = "change.nights_less" // nights fewer
	ChangeEndLess    fact.Kind = "change.end_less"    // the tank's amount: hand back with less in it
	ChangeEndMore    fact.Kind = "change.end_more"    // the tank's amount: hand back with more in it
)

// A Change in the hirer's hand that cures a problem without a plan: it was tried.
type Change struct {
	Kind   fact.Kind `json:"kind"`
	Tank   string    `json:"tank,omitempty"`
	By     float64   `json:"by"`
	Cost   float64   `json:"cost"`   // of the trip then
	Proven bool      `json:"proven"` // no plan costs less then; else Cost is at most that
}
