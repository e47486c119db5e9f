// Package triptest has made-up trips, places and roads for the tests of the rooms of planner/trip.
package triptest
