package demo

import (
	"testing"

)

func TestTripsAreValid(t *testing.T) {
	for _, tr := range Trips() {
		if err := tr.Validate(); err != nil {
			t.Errorf("%s: %v", tr.Name, err)
		}
	}
}
