package demo

// This file is the table of service points, tagged the way people tag: unevenly.
// Fuel stations, operators and prices are as made up as the towns.

// A shape is how a service point is drawn in the data.
type shape uint8

const (
	point shape = iota
	area        // a closed way
	ring        // a multipolygon relation with a hole
)

// A service is put beside the road nearest to a town, moved by km east and north.
type service struct {
	near   string
	dx, dy float64
	shape  shape
	tags   string // "k=v; k=v", | for a semicolon inside a value
}

var services = []service{
	// Fuel. Missing keys are left missing: most mappers tag no more than they saw.
	{"Tamrin", -3, 1, area, "amenity=fuel; operator=Ombrel; name=Ombrel Fuel Tamrin; opening_hours=24/7; fuel:diesel=yes; fuel:octane_95=yes; fuel:lpg=no; self_service=yes; compressed_air=yes"},
	{"Tamrin", 0.3, 2.4, point, "amenity=fuel; operator=Kandrel; name=Kandrel Fuel; opening_hours=Mo-Sa 06:00-22:00| Su 08:00-20:00; fuel:diesel=yes; fuel:octane_95=yes"},
	{"Tamrin", 0, 1.5, area, "amenity=fuel; operator=Sembrel; name=Sembrel Fuel; opening_hours=Mo-Sa 07:00-20:00; maxheight=2.6; fuel:diesel=yes; fuel:octane_95=yes; fuel:octane_98=yes"},
	{"ring east", 3, 0, point, "amenity=fuel; operator=Imbrel; name=Imbrel Fuel; opening_hours=24/7; fuel:diesel=yes; fuel:HGV_diesel=yes; hgv=yes"},
	{"Belvone Field", 0.5, 0, point, "amenity=fuel; operator=Kandrel; name=Kandrel Fuel; opening_hours=Mo-Sa 07:00-20:00; fuel:diesel=yes"},
	{"Belvone Field", -9, -4, point, "amenity=fuel; name=Olvane Hill Fuel; fuel:diesel=yes; fuel:octane_95=yes"},
	{"Torlane Quay", 1, 0, point, "amenity=fuel; operator=Ombrel; name=Ombrel Fuel; opening_hours=Mo-Su 06:00-22:00; fuel:diesel=yes; fuel:octane_95=yes"},
	{"Lindrel Bridge", 0.6, 0.3, point, "amenity=fuel; operator=Sembrel; name=Sembrel Fuel; opening_hours=Mo-Sa 07:00-19:00; fuel:diesel=yes"},
	{"Tarsil Quay", 1, -0.5, area, "amenity=fuel; operator=Ombrel; name=Ombrel Fuel; opening_hours=24/7; fuel:diesel=yes; fuel:octane_95=yes"},
	{"Tarsil Quay", 14, 0, point, "amenity=fuel; operator=Imbrel; name=Imbrel Fuel; hgv=yes; opening_hours=24/7; fuel:HGV_diesel=yes; fuel:diesel=yes; fuel:adblue=yes"},
	{"Fendal Bridge", 0.5, -0.5, point, "amenity=fuel; operator=Kandrel; name=Kandrel Fuel; opening_hours=Mo-Sa 07:00-20:00; fuel:diesel=yes; fuel:octane_95=yes"},
	{"Sorvane Quay", 0.4, 0, point, "amenity=fuel; opening_hours=Mo-Sa 08:00-18:00; fuel:diesel=yes"},
	{"Bendro", -0.7, 0, point, "amenity=fuel; operator=Sembrel; name=Sembrel Fuel; fuel:diesel=yes; fuel:octane_95=yes"},
	{"Bendro", 14, 6, point, "amenity=fuel; operator=Kandrel; name=Kandrel Fuel; opening_hours=24/7; self_service=yes; payment:cash=no; fuel:diesel=yes"},
	{"Arvone Vale", 0.3, 0.5, point, "amenity=fuel; opening_hours=Mo-Fr 08:00-12:00,14:00-18:00| Sa 08:00-12:00; fuel:diesel=yes"},
	{"Savrin", -1, -0.6, area, "amenity=fuel; operator=Ombrel; name=Ombrel Fuel Savrin; opening_hours=24/7; fuel:diesel=yes; fuel:octane_95=yes; fuel:adblue:canister=yes; shop=convenience"},
	{"Savrin", 1.3, 0, point, "amenity=fuel; operator=Imbrel; name=Imbrel Fuel; opening_hours=Mo-Sa 07:00-20:00; fuel:diesel=yes; fuel:lpg=yes"},
	{"Evrano Wells", 0.4, 0.6, point, "amenity=fuel; operator=Sembrel; name=Sembrel Fuel; opening_hours=Mo-Sa 07:00-20:00; fuel:diesel=yes"},
	{"Ruvel Quay", 0.6, 0.2, point, "amenity=fuel; operator=Kandrel; name=Kandrel Fuel; fuel:diesel=yes"},
	{"Dalmer Bridge", 0.8, -0.4, point, "amenity=fuel; operator=Ombrel; name=Ombrel Fuel; opening_hours=Mo-Su 06:00-22:00; fuel:diesel=yes; fuel:octane_95=yes"},
	{"Lendor", -0.9, -0.3, point, "amenity=fuel; operator=Kandrel; name=Kandrel Fuel; opening_hours=Mo-Sa 07:00-20:00; fuel:diesel=yes; fuel:octane_95=yes"},
	{"Lendor", 1.5, -1, area, "amenity=fuel; operator=Ombrel; name=Ombrel Fuel; opening_hours=24/7; fuel:diesel=yes; fuel:adblue:canister=yes"},
	{"Tolmer", 0, 0.7, point, "amenity=fuel; operator=Sembrel; name=Sembrel Fuel; opening_hours=Mo-Sa 07:00-19:00; fuel:diesel=yes"},
	{"Nerava Wells", 0.5, 0.4, point, "amenity=fuel; operator=Imbrel; name=Imbrel Fuel; opening_hours=Mo-Sa 06:00-21:00; fuel:diesel=yes; fuel:octane_95=yes"},
	{"Altrel Quay", -0.5, 0.3, point, "amenity=fuel; operator=Sembrel; name=Sembrel Fuel Altrel Quay; opening_hours=Mo-Su 07:00-20:00; fuel:diesel=yes; fuel:lpg=yes; fuel:octane_95=yes"},
	{"Velmo Quay", -2, 0.5, area, "amenity=fuel; operator=Ombrel; name=Ombrel Fuel Velmo Quay; opening_hours=24/7; fuel:diesel=yes; fuel:octane_95=yes; fuel:lpg=no"},
	{"Velmo Quay", 1, -0.8, point, "amenity=fuel; operator=Kandrel; name=Kandrel Fuel; opening_hours=Mo-Sa 06:00-22:00; maxheight=3.0; fuel:diesel=yes"},
	{"Velmo Quay", -12, 0, point, "amenity=fuel; operator=Imbrel; name=Imbrel Fuel; hgv=yes; opening_hours=24/7; fuel:diesel=yes; fuel:HGV_diesel=yes; fuel:adblue=yes"},
	{"Caldrin", 0.7, 0.2, point, "amenity=fuel; operator=Kandrel; name=Kandrel Fuel; fuel:diesel=yes; fuel:octane_95=yes"},
	{"Ilmane Vale", 0.2, -0.4, point, "amenity=fuel; opening_hours=Mo-Sa 08:00-18:00; fuel:diesel=yes"},
	{"Jondel Hill", -0.4, 0.3, point, "amenity=fuel; operator=Sembrel; name=Sembrel Fuel; opening_hours=Mo-Sa 07:00-20:00; fuel:diesel=yes"},
	{"Pandrel Quay", 0.3, 1.2, point, "amenity=fuel; operator=Kandrel; name=Kandrel Fuel; opening_hours=Mo-Sa 07:00-19:00; fuel:diesel=yes"},
	{"Osmer Quay", -0.5, 0.8, point, "amenity=fuel; operator=Ombrel; name=Ombrel Fuel; opening_hours=Mo-Su 06:00-22:00; fuel:diesel=yes; fuel:octane_95=yes"},
	{"Nolbe Bridge", -1.1, 0.2, area, "amenity=fuel; operator=Imbrel; name=Imbrel Fuel Nolbe Bridge; hgv=yes; opening_hours=24/7; fuel:diesel=yes; fuel:adblue=yes"},
	{"Nolbe Bridge", 0.8, -0.9, point, "amenity=fuel; operator=Sembrel; name=Sembrel Fuel; opening_hours=Mo-Sa 07:00-20:00; fuel:diesel=yes; fuel:octane_95=yes"},
	{"motorway end", 1, 0, point, "amenity=fuel; operator=Ombrel; name=Ombrel Fuel; opening_hours=24/7; fuel:diesel=yes; fuel:octane_95=yes; toilets=yes"},

	// Dump stations, water and taps.
	{"Tamrin", -0.3, 0.9, point, "amenity=sanitary_dump_station; name=Tamrin Disposal Point; access=yes; fee=no; sanitary_dump_station:chemical_toilet=yes; sanitary_dump_station:grey_water=yes; water_point=yes"},
	{"Torlane Quay", -1, 0.3, point, "amenity=sanitary_dump_station; name=Torlane Quay Disposal Point; access=yes; fee=yes; charge=2 EUR; sanitary_dump_station:basin=yes; sanitary_dump_station:chemical_toilet=yes; sanitary_dump_station:grey_water=yes"},
	{"Fendal Bridge", 0.8, 0.3, point, "amenity=sanitary_dump_station; fee=no; sanitary_dump_station:grey_water=yes; sanitary_dump_station:chemical_toilet=no"},
	{"Savrin", 0.5, 0.9, point, "amenity=sanitary_dump_station; name=Savrin Disposal Point; access=yes; fee=yes; charge=3 EUR; sanitary_dump_station:chemical_toilet=yes; sanitary_dump_station:grey_water=yes; water_point=yes; opening_hours=Mo-Su 08:00-21:00"},
	{"Dalmer Bridge", -1, 0.2, point, "amenity=sanitary_dump_station; access=yes"},
	{"Lendor", 0.6, 0.8, point, "amenity=sanitary_dump_station; name=Lendor Disposal Point; access=yes; fee=yes; charge=2 EUR; sanitary_dump_station:basin=yes; sanitary_dump_station:chemical_toilet=yes; opening_hours=Apr-Oct"},
	{"Velmo Quay", 1.2, 0.6, point, "amenity=sanitary_dump_station; name=Velmo Quay Disposal Point; access=yes; fee=no; sanitary_dump_station:chemical_toilet=yes; sanitary_dump_station:grey_water=yes; sanitary_dump_station:round_drain=yes; water_point=yes"},
	{"Caldrin", -0.8, -0.4, point, "amenity=sanitary_dump_station; access=customers; fee=yes; charge=4 EUR; operator=Kandrel"},
	{"Osmer Quay", 0.8, 0.6, point, "amenity=sanitary_dump_station; name=Osmer Quay Disposal Point; access=yes; fee=no; sanitary_dump_station:chemical_toilet=yes; sanitary_dump_station:grey_water=yes"},
	{"Nolbe Bridge", 1.6, 0.6, point, "amenity=sanitary_dump_station; access=private"},
	{"Tamrin", 1, -1, point, "amenity=water_point; fee=no; drinking_water=yes"},
	{"Belvone Field", -0.5, 0.5, point, "amenity=drinking_water"},
	{"Torlane Quay", -1.05, 0.32, point, "amenity=water_point; fee=yes; charge=1 EUR"},
	{"Tarsil Quay", -0.6, 0.5, point, "amenity=water_point; fee=no"},
	{"Lindrel Bridge", -0.6, -0.6, point, "man_made=water_tap; drinking_water=no"},
	{"Fendal Bridge", 0.85, 0.3, point, "amenity=water_point; fee=no; opening_hours=Mo-Su 07:00-22:00"},
	{"Bendro", 0.4, 0.4, point, "amenity=drinking_water; drinking_water=yes"},
	{"Bendro", -9, -5, point, "man_made=water_tap"},
	{"Evrano Wells", -0.5, -0.3, point, "amenity=drinking_water; fountain=bottle_refill"},
	{"Ruvel Quay", -0.6, 0.4, point, "amenity=water_point; fee=no"},
	{"Lendor", 0.2, 0.9, point, "man_made=water_tap; drinking_water=yes"},
	{"Tolmer", 0.4, -0.2, point, "man_made=water_tap; drinking_water=no"},
	{"Nerava Wells", -0.4, -0.3, point, "amenity=drinking_water; drinking_water:legal=yes"},
	{"Altrel Quay", 0.4, -0.4, point, "amenity=water_point; fee=yes; charge=1 EUR; opening_hours=Apr-Oct"},
	{"Caldrin", 0.4, 0.6, point, "man_made=water_tap"},
	{"Jondel Hill", 0.5, -0.3, point, "amenity=drinking_water"},
	{"Pandrel Quay", -0.3, 0.4, point, "amenity=water_point; fee=no"},
	{"Nolbe Bridge", 0.3, 0.8, point, "amenity=drinking_water"},

	// Plain places for motorhomes.
	{"Tamrin", 2.4, -1.5, area, "tourism=caravan_site; name=Tamrin Motorhome Park; fee=yes; charge=14 EUR; capacity=30; power_supply=yes; water_point=yes; sanitary_dump_station=yes; maxstay=3 days"},
	{"Belvone Field", 0.9, -1.2, point, "tourism=caravan_site; name=Belvone Field Lay-by; fee=no; capacity=6; power_supply=no; maxstay=24 h"},
	{"Torlane Quay", -1.6, 1.2, area, "tourism=caravan_site; name=Torlane Quay Motorhome Park; fee=yes; charge=9 EUR; capacity=18; power_supply=no; maxstay=48 h"},
	{"Tarsil Quay", 2.4, 1.4, point, "tourism=caravan_site; name=Tarsil Quay Motorhome Park; fee=yes; charge=10 EUR; capacity=12; caravan_site=motorhome_stopover; power_supply=yes; power_supply:maxcurrent=6"},
	{"Tarsil Quay", 16, 13, point, "tourism=caravan_site; name=Tendal Lookout; fee=no; capacity=4"},
	{"Fendal Bridge", -1.4, 1.1, point, "tourism=caravan_site; name=Fendal Bridge Motorhome Park; fee=no; capacity=8; maxstay=24 h; motorhome=yes"},
	{"Bendro", 1.3, 1.4, point, "tourism=caravan_site; name=Bendro Motorhome Park; fee=yes; charge=8 EUR; capacity=10; sanitary_dump_station=yes; water_point=yes"},
	{"Evrano Wells", 1, -1.4, area, "tourism=caravan_site; name=Evrano Wells Motorhome Park; fee=yes; charge=12 EUR; capacity=20; socket:cee_blue=8; power_supply=yes; toilets=yes"},
	{"Dalmer Bridge", 1.3, 1.2, point, "tourism=caravan_site; name=Dalmer Bridge Lay-by; fee=no; capacity=5"},
	{"Lendor", -2.4, 1, point, "tourism=caravan_site; name=Lendor Motorhome Park; fee=yes; charge=9 EUR; capacity=16; power_supply=no"},
	{"Nerava Wells", 1.5, -1.2, point, "tourism=caravan_site; name=Nerava Wells Lay-by; fee=no; capacity=6; maxstay=24 h"},
	{"Ilmane Vale", -0.8, 0.9, point, "tourism=caravan_site; name=Ilmane Vale Motorhome Park; fee=yes; charge=5 EUR; capacity=7"},
	{"Velmo Quay", 2.2, 1.8, area, "tourism=caravan_site; name=Velmo Quay Motorhome Park; fee=yes; charge=13 EUR; capacity=24; power_supply=yes; water_point=yes; sanitary_dump_station=customers"},
	{"Caldrin", 1.4, -1.3, point, "tourism=caravan_site; access=private; name=Caldrin Club Ground; capacity=4"},
	{"Pandrel Quay", -0.8, 1.8, point, "tourism=caravan_site; name=Pandrel Quay Motorhome Park; fee=yes; charge=7 EUR; capacity=9; power_supply=no; maxstay=48 h"},
	{"Osmer Quay", -1.3, 1.5, point, "tourism=caravan_site; name=Osmer Quay Lay-by; fee=no; capacity=6; motorhome=yes; tents=no"},

	// Campsites.
	{"Tamrin", -5.5, -3, area, "tourism=camp_site; name=Tamrin Town Campsite; fee=yes; charge=32 EUR; tents=yes; motorhome=yes; caravans=yes; power_supply=yes; shower=hot; toilets=yes; sanitary_dump_station=yes; water_point=yes; drinking_water=yes; capacity=140; opening_hours=24/7"},
	{"Torlane Quay", 6, -1.5, ring, "tourism=camp_site; name=Torlane Dunes Campsite; fee=yes; charge=29 EUR; tents=yes; motorhome=yes; power_supply=yes; shower=yes; toilets=yes; sanitary_dump_station=customers; water_point=yes; capacity=90; opening_hours=Apr-Oct"},
	{"Lindrel Bridge", -2, 2.5, area, "tourism=camp_site; name=Lindrel River Campsite; fee=yes; charge=22 EUR; tents=yes; motorhome=yes; shower=yes; toilets=yes; capacity=40"},
	{"Tarsil Quay", 5, -6, area, "tourism=camp_site; name=Tarsil Bay Campsite; fee=yes; charge=27 EUR; camp_site=serviced; motorhome=yes; tents=yes; capacity=70; sanitary_dump_station=yes; opening_hours=May-Sep"},
	{"Sorvane Quay", -1.5, 1, area, "tourism=camp_site; name=Sorvane Cliff Campsite; fee=yes; charge=24 EUR; tents=yes; motorhome=yes; power_supply=yes; power_supply:maxcurrent=10; shower=yes; toilets=yes; sanitary_dump_station=yes; water_point=yes; capacity=45"},
	{"Fendal Bridge", 11, 4, point, "tourism=camp_site; name=Fendal Tent Field; fee=yes; tents=yes; motorhome=no; shower=yes; toilets=yes; capacity=25"},
	{"Arvone Vale", -1.4, -1, area, "tourism=camp_site; name=Arvone Farm Campsite; fee=yes; charge=19 EUR; camp_site=standard; tents=yes; capacity=35"},
	{"Bendro", 7, 5, area, "tourism=camp_site; name=Bendro Lake Campsite; fee=yes; charge=26 EUR; tents=yes; motorhome=yes; power_supply=yes; shower=yes; toilets=yes; sanitary_dump_station=yes; water_point=yes; capacity=80"},
	{"Savrin", -6, -1, area, "tourism=camp_site; name=Savrin Shore Campsite; fee=yes; charge=31 EUR; tents=yes; motorhome=yes; socket:cee_blue=60; power_supply=yes; shower=hot; toilets=yes; sanitary_dump_station=customers; water_point=yes; capacity=110; opening_hours=Mar-Oct"},
	{"Evrano Wells", -2.5, 1.2, area, "tourism=camp_site; name=Evrano Lake Campsite; fee=yes; charge=25 EUR; tents=yes; motorhome=yes; power_supply=yes; shower=yes; toilets=yes; sanitary_dump_station=yes; water_point=yes; capacity=60"},
	{"Ruvel Quay", 2.5, -3, area, "tourism=camp_site; name=Ruvel Shore Campsite; fee=yes; charge=23 EUR; tents=yes; motorhome=yes; power_supply=yes; shower=yes; toilets=yes; sanitary_dump_station=customers; capacity=50"},
	{"Lendor", 8, -2, area, "tourism=camp_site; name=Lendor Lake Campsite; fee=yes; charge=28 EUR; tents=yes; motorhome=yes; power_supply=yes; shower=hot; toilets=yes; sanitary_dump_station=yes; water_point=yes; capacity=100"},
	{"Nerava Wells", 7, -6, area, "tourism=camp_site; name=Nerava River Campsite; fee=yes; charge=21 EUR; tents=yes; shower=yes; toilets=yes; capacity=30"},
	{"Altrel Quay", -2, -2, area, "tourism=camp_site; name=Altrel Beach Campsite; fee=yes; charge=26 EUR; tents=yes; motorhome=yes; power_supply=yes; shower=yes; toilets=yes; sanitary_dump_station=yes; water_point=yes; capacity=65; opening_hours=Apr-Oct"},
	{"Velmo Quay", 6, 8, area, "tourism=camp_site; name=Velmo Bay Campsite; fee=yes; charge=34 EUR; tents=yes; motorhome=yes; power_supply=yes; shower=hot; toilets=yes; sanitary_dump_station=customers; water_point=yes; capacity=160"},
	{"Caldrin", -9, 2, point, "tourism=camp_site; access=private; name=Caldrin Club Campsite; tents=yes"},
	{"Jondel Hill", 3, -4, area, "tourism=camp_site; name=Jondel Hill Campsite; fee=yes; charge=20 EUR; camp_site=serviced; tents=yes; motorhome=yes; capacity=30"},
	{"Pandrel Quay", 1, 4, area, "tourism=camp_site; name=Pandrel Point Campsite; fee=yes; charge=30 EUR; tents=yes; motorhome=yes; power_supply=yes; shower=yes; toilets=yes; sanitary_dump_station=yes; water_point=yes; capacity=75; opening_hours=Apr-Sep"},
	{"Osmer Quay", 6, 3, area, "tourism=camp_site; name=Osmer Sands Campsite; fee=yes; charge=27 EUR; tents=yes; motorhome=yes; power_supply=yes; shower=yes; toilets=yes; sanitary_dump_station=customers; water_point=yes; capacity=85"},
	{"Nolbe Bridge", 2, -4, area, "tourism=camp_site; name=Nolbe River Campsite; fee=yes; charge=22 EUR; tents=yes; motorhome=yes; power_supply=yes; shower=yes; toilets=yes; capacity=40"},

	// On the islet.
	{"Tilsan Quay", -1.5, 0.5, area, "tourism=camp_site; name=Tilsan Meadow Campsite; fee=yes; charge=16 EUR; camp_site=basic; tents=yes; motorhome=yes; toilets=yes; capacity=20; opening_hours=Jun-Aug"},
	{"Tilsan Quay", 0.3, 0.2, point, "amenity=drinking_water"},
}
