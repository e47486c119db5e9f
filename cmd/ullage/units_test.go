package main

import (
	"strings"
	"testing"

	"ullage/planner/life/units"
)

// 100 km are 62.1 miles, 10 L are 2.6 US gallons (NIST Special Publication
// 811, appendix B); a time before "km" is a time.
func TestProse(t *testing.T) {
	const text = "12:07 km 100 A: 10 L left, 8.0 km on (20 L), 3 Ah"
	for _, c := range []struct {
		as   units.System
		want string
	}{
		{units.Metric(), text},
		{units.British(), "12:07 mile 62 A: 10 L left, 5.0 mi on (20 L), 3 Ah"},
		{units.American(), "12:07 mile 62 A: 2.6 gal (US) left, 5.0 mi on (5.3 gal (US)), 3 Ah"},
	} {
		if got := (&sheet{units: c.as}).prose(text); got != c.want {
			t.Errorf("prose = %q, want %q", got, c.want)
		}
	}
}

// The sheet of the small trip in miles and gallons: 200.4 km are 124.5 miles,
// 75 L are 20 US gallons.
func TestPlanUnits(t *testing.T) {
	_, american, errs := ullage(small("-units", "american")...)
	american, _, _ = strings.Cut(american, "Counted with") // sources are quoted as published
	for _, want := range []string{"route of 124.5 mi", "Diesel 7/20 gal", "ft high", "7716 lb"} {
		if !strings.Contains(american, want) {
			t.Errorf("no %q on the sheet%s", want, errs)
		}
	}
	if strings.Contains(american, " km ") || strings.Contains(american, " L,") {
		t.Error("the sheet still speaks of km or litres")
	}
	if code, _, errs := ullage(small("-units", "old")...); code != exitUsage || !strings.Contains(errs, "american, british, metric") {
		t.Errorf("exit %d, %s", code, errs)
	}
}
