package trip

// NightUse is what tests look at.
var NightUse = nightUse
