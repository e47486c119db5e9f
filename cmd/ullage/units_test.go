package main

import (
	"regexp"
	"strings"
	"testing"
)

// The sheet of the small trip in miles and gallons: 200.4 km are 124.5 miles,
// 75 L are 20 US gallons.
func TestPlanUnits(t *testing.T) {
	_, american, errs := ullage(small("-units", "american")...)
	american = strings.Join(strings.Fields(american), " ")
	for _, want := range []string{"124.5 mi, from", "diesel 7/20 gal", "ft high", "7716 lb", "stood at 104 °F", "coachbuilt at most 23.5 mpg", "drinking 0.8 gal", "EUR/gal"} {
		if !strings.Contains(american, want) {
			t.Errorf("no %q on the sheet%s", want, errs)
		}
	}
	if metric := regexp.MustCompile(`\d (km|km/h|L|°C|kg|m)\b.{0,60}`).FindString(american); metric != "" {
		t.Errorf("the sheet still says %q", metric)
	}
	if code, _, errs := ullage(small("-units", "old")...); code != exitUsage || !strings.Contains(errs, "metric, british, american") {
		t.Errorf("exit %d, %s", code, errs)
	}
}
