// Package build makes a trip and the places around it into a problem for the
// planner.
//
//	b, err := build.Trip(t, places, build.Options{Hours: hours, Roads: roads})
package build
