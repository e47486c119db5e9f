package tripfile

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"

	"ullage/data/plain"
	"ullage/data/wrong"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

type fleet struct {
	Format   string         `json:"format"`
	Vehicles []trip.Vehicle `json:"vehicles"`
}

// ReadFleet reads a fleet file: vehicles with different ids, each valid, in
// the order of the file, and what there is to say of it. name is for errors and
// notes. Files over 64 MiB are refused.
func ReadFleet(name string, r io.Reader) ([]trip.Vehicle, []fact.Fact, error) {
	b, err := load(name, r)
	if err != nil {
		return nil, nil, err
	}
	var f fleet
	notes, err := decode(name, b, &f, "")
	if err != nil {
		return nil, nil, err
	}
	if newer(f.Format, FleetFormat) {
		return nil, nil, &NewerError{name, f.Format, FleetFormat}
	}
	if f.Format != FleetFormat {
		return nil, nil, wrong.In(name, ofVersion(fmt.Errorf("format is %q: write %q", f.Format, FleetFormat), f.Format, FleetFormat))
	}
	if len(f.Vehicles) == 0 {
		return nil, nil, wrong.In(name, fact.Fail(errors.New("has no vehicles: give at least one"), noFleet, nil))
	}
	seen := map[string]int{}
	for i, v := range f.Vehicles {
		f.Vehicles[i] = tidyVehicle(v)
		if err := v.Validate(); err != nil {
			return nil, nil, wrong.In(name, fmt.Errorf("vehicles[%d]: %w", i, err))
		}
		if j, twice := seen[v.ID]; twice {
			return nil, nil, wrong.In(name, fmt.Errorf("vehicles[%d] has the id %q of vehicles[%d]: give each its own", i, v.ID, j))
		}
		seen[v.ID] = i
	}
	return f.Vehicles, notes, nil
}

// tidyVehicle makes the names of a vehicle fit to be shown.
func tidyVehicle(v trip.Vehicle) trip.Vehicle {
	v.Name = plain.Text(v.Name)
	for i := range v.Tanks {
		v.Tanks[i].Name = plain.Text(v.Tanks[i].Name)
	}
	return v
}

// WriteFleet writes a fleet file; [ReadFleet] gives the same vehicles back.
func WriteFleet(w io.Writer, vehicles []trip.Vehicle) error {
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	if err := e.Encode(fleet{FleetFormat, vehicles}); err != nil {
		return fmt.Errorf("write fleet: %w", err)
	}
	return nil
}
