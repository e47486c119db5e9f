package net

// A Why is a reason for which a vehicle may not use a road. The zero value is none.
type Why uint8

const (
	MayDrive        Why = iota
	NoEntry             // closed to motor vehicles, or one-way against it
	NoHeavy             // closed to vehicles above [HeavyT]
	FerryUnwanted       // the vehicle's own wishes
	TollUnwanted        //
	TrackUnwanted       //
	UnpavedUnwanted     //
	HighwayUnwanted     // a motorway or trunk road
	TooHigh             // limits of size, in metres
	TooWide             //
	TooLong             //
	TooHeavy            // limits of mass, in tonnes
	AxleTooHeavy        //
)

// A Bar is what keeps a vehicle off a road; the zero value is nothing. Bars are equal if they say the same.
type Bar struct {
	Why   Why
	Limit float64 // of the road: metres or tonnes, > 0 from [TooHigh] on, else 0
	Has   float64 // what the vehicle has of it
	Spare float64 // metres that the vehicle keeps free, if it would fit without; else 0
}
