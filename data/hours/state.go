package hours

// A State is what a schedule says about a moment. The zero value is Closed.
type State int8

const (
	Closed State = iota
	Open
	Unknown // the text says so, or it depends on what is not known here
)

// A Where is the place of a schedule, for holidays and for the sun.
type Where struct {
	Lat, Lon float64 // degrees; 0, 0 is not known
	Country  string  // ISO 3166: "DE", or with the region "DE-BE"; "": found from Lat, Lon
}

// A Period is a stretch of time in one state, in minutes since 00:00 of the
// first day.
type Period struct {
	From, To int
	State    State
}

const dayMin = 24 * 60
