package planner

// Shortfall is for the tests outside of the package.
var Shortfall = shortfall
