package read

import "ullage/planner/trip"

func known(tank string) trip.Service {
	s, _ := trip.ServiceOf(tank)
	return s
}
