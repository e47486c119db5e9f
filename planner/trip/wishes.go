package trip

// How people live on board. The zero value of each is what is usual: aboard, or as many as usual.
type (
	Showers string
	Toilet  string
	Cooking string
	Dishes  string
	Devices string
)

const (
	ShowerAboard Showers = "aboard"
	ShowerSites  Showers = "sites"
	ShowerFrugal Showers = "frugal"

	ToiletAboard Toilet = "aboard"
	ToiletSites  Toilet = "sites"

	CookAboard Cooking = "aboard"
	CookLittle Cooking = "little"

	DishesAboard Dishes = "aboard"
	DishesSites  Dishes = "sites"

	DevicesLittle Devices = "little"
	DevicesUsual  Devices = "usual"
	DevicesMany   Devices = "many"
)

// Party is who travels and how they live on board.
type Party struct {
	Adults   int     `json:"adults"`
	Children int     `json:"children"`
	Showers  Showers `json:"showers"`
	Toilet   Toilet  `json:"toilet"`
	Cooking  Cooking `json:"cooking"`
	Dishes   Dishes  `json:"dishes,omitempty"`  // "": where the showers are
	Devices  Devices `json:"devices,omitempty"` // charged aboard; "": usual
}

// DayLimits bound one day on the road.
type DayLimits struct {
	MaxKm     float64 `json:"max_km"`
	MaxMin    float64 `json:"max_min"`
	DepartMin float64 `json:"depart_min"` // minutes after midnight
	SpeedKmh  float64 `json:"speed_kmh"`  // average along the route
}

// StayWishes say where the nights may be spent.
type StayWishes struct {
	MinNights int     `json:"min_nights"`
	MaxNights int     `json:"max_nights"`        // 0: any number
	Campsites bool    `json:"campsites"`         // sites with service
	Stopovers bool    `json:"stopovers"`         // plain places for motorhomes
	HookUp    bool    `json:"hookup"`            // only with hook-up
	MaxFee    float64 `json:"max_fee,omitempty"` // money per night; 0: any
}

// Allow tells whether the wishes let a night be spent at a kind of place.
func (w StayWishes) Allow(k PlaceKind) bool {
	if k.Custom().Site {
		return w.Campsites
	}
	return w.Stopovers
}
