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
	{"Vazhoum", -3, 1, area, "amenity=fuel; operator=Thavrum; name=Thavrum Vazhoum; opening_hours=24/7; fuel:diesel=yes; fuel:octane_95=yes; fuel:lpg=no; self_service=yes; compressed_air=yes"},
	{"Vazhoum", 0.3, 2.4, point, "amenity=fuel; operator=Qinzhe; name=Qinzhe; opening_hours=Mo-Sa 06:00-22:00| Su 08:00-20:00; fuel:diesel=yes; fuel:octane_95=yes"},
	{"Vazhoum", 0, 1.5, area, "amenity=fuel; operator=Beloveth; name=Beloveth; opening_hours=Mo-Sa 07:00-20:00; maxheight=2.6; fuel:diesel=yes; fuel:octane_95=yes; fuel:octane_98=yes"},
	{"ring east", 3, 0, point, "amenity=fuel; operator=Uzhimar; name=Uzhimar; opening_hours=24/7; fuel:diesel=yes; fuel:HGV_diesel=yes; hgv=yes"},
	{"Sefnulve", 0.5, 0, point, "amenity=fuel; operator=Qinzhe; name=Qinzhe; opening_hours=Mo-Sa 07:00-20:00; fuel:diesel=yes"},
	{"Sefnulve", -9, -4, point, "amenity=fuel; name=Ovzhethi; fuel:diesel=yes; fuel:octane_95=yes"},
	{"Larazhe", 1, 0, point, "amenity=fuel; operator=Thavrum; name=Thavrum; opening_hours=Mo-Su 06:00-22:00; fuel:diesel=yes; fuel:octane_95=yes"},
	{"Vinuilth", 0.6, 0.3, point, "amenity=fuel; operator=Beloveth; name=Beloveth; opening_hours=Mo-Sa 07:00-19:00; fuel:diesel=yes"},
	{"Imrazhe", 1, -0.5, area, "amenity=fuel; operator=Thavrum; name=Thavrum; opening_hours=24/7; fuel:diesel=yes; fuel:octane_95=yes"},
	{"Imrazhe", 14, 0, point, "amenity=fuel; operator=Uzhimar; name=Uzhimar; hgv=yes; opening_hours=24/7; fuel:HGV_diesel=yes; fuel:diesel=yes; fuel:adblue=yes"},
	{"Zhirilth", 0.5, -0.5, point, "amenity=fuel; operator=Qinzhe; name=Qinzhe; opening_hours=Mo-Sa 07:00-20:00; fuel:diesel=yes; fuel:octane_95=yes"},
	{"Pouvazhe", 0.4, 0, point, "amenity=fuel; opening_hours=Mo-Sa 08:00-18:00; fuel:diesel=yes"},
	{"Bezhoum", -0.7, 0, point, "amenity=fuel; operator=Beloveth; name=Beloveth; fuel:diesel=yes; fuel:octane_95=yes"},
	{"Bezhoum", 14, 6, point, "amenity=fuel; operator=Qinzhe; name=Qinzhe; opening_hours=24/7; self_service=yes; payment:cash=no; fuel:diesel=yes"},
	{"Yarqoveya", 0.3, 0.5, point, "amenity=fuel; opening_hours=Mo-Fr 08:00-12:00,14:00-18:00| Sa 08:00-12:00; fuel:diesel=yes"},
	{"Thamoum", -1, -0.6, area, "amenity=fuel; operator=Thavrum; name=Thavrum Thamoum; opening_hours=24/7; fuel:diesel=yes; fuel:octane_95=yes; fuel:adblue:canister=yes; shop=convenience"},
	{"Thamoum", 1.3, 0, point, "amenity=fuel; operator=Uzhimar; name=Uzhimar; opening_hours=Mo-Sa 07:00-20:00; fuel:diesel=yes; fuel:lpg=yes"},
	{"Thoulune", 0.4, 0.6, point, "amenity=fuel; operator=Beloveth; name=Beloveth; opening_hours=Mo-Sa 07:00-20:00; fuel:diesel=yes"},
	{"Olvrazhe", 0.6, 0.2, point, "amenity=fuel; operator=Qinzhe; name=Qinzhe; fuel:diesel=yes"},
	{"Dolvilth", 0.8, -0.4, point, "amenity=fuel; operator=Thavrum; name=Thavrum; opening_hours=Mo-Su 06:00-22:00; fuel:diesel=yes; fuel:octane_95=yes"},
	{"Kessoum", -0.9, -0.3, point, "amenity=fuel; operator=Qinzhe; name=Qinzhe; opening_hours=Mo-Sa 07:00-20:00; fuel:diesel=yes; fuel:octane_95=yes"},
	{"Kessoum", 1.5, -1, area, "amenity=fuel; operator=Thavrum; name=Thavrum; opening_hours=24/7; fuel:diesel=yes; fuel:adblue:canister=yes"},
	{"Qathoum", 0, 0.7, point, "amenity=fuel; operator=Beloveth; name=Beloveth; opening_hours=Mo-Sa 07:00-19:00; fuel:diesel=yes"},
	{"Aqelune", 0.5, 0.4, point, "amenity=fuel; operator=Uzhimar; name=Uzhimar; opening_hours=Mo-Sa 06:00-21:00; fuel:diesel=yes; fuel:octane_95=yes"},
	{"Irthazhe", -0.5, 0.3, point, "amenity=fuel; operator=Beloveth; name=Beloveth Irthazhe; opening_hours=Mo-Su 07:00-20:00; fuel:diesel=yes; fuel:lpg=yes; fuel:octane_95=yes"},
	{"Quelazhe", -2, 0.5, area, "amenity=fuel; operator=Thavrum; name=Thavrum Quelazhe; opening_hours=24/7; fuel:diesel=yes; fuel:octane_95=yes; fuel:lpg=no"},
	{"Quelazhe", 1, -0.8, point, "amenity=fuel; operator=Qinzhe; name=Qinzhe; opening_hours=Mo-Sa 06:00-22:00; maxheight=3.0; fuel:diesel=yes"},
	{"Quelazhe", -12, 0, point, "amenity=fuel; operator=Uzhimar; name=Uzhimar; hgv=yes; opening_hours=24/7; fuel:diesel=yes; fuel:HGV_diesel=yes; fuel:adblue=yes"},
	{"Melzhoum", 0.7, 0.2, point, "amenity=fuel; operator=Qinzhe; name=Qinzhe; fuel:diesel=yes; fuel:octane_95=yes"},
	{"Uqaroveya", 0.2, -0.4, point, "amenity=fuel; opening_hours=Mo-Sa 08:00-18:00; fuel:diesel=yes"},
	{"Ruzhethi", -0.4, 0.3, point, "amenity=fuel; operator=Beloveth; name=Beloveth; opening_hours=Mo-Sa 07:00-20:00; fuel:diesel=yes"},
	{"Nevrazhe", 0.3, 1.2, point, "amenity=fuel; operator=Qinzhe; name=Qinzhe; opening_hours=Mo-Sa 07:00-19:00; fuel:diesel=yes"},
	{"Othrazhe", -0.5, 0.8, point, "amenity=fuel; operator=Thavrum; name=Thavrum; opening_hours=Mo-Su 06:00-22:00; fuel:diesel=yes; fuel:octane_95=yes"},
	{"Orovilth", -1.1, 0.2, area, "amenity=fuel; operator=Uzhimar; name=Uzhimar Orovilth; hgv=yes; opening_hours=24/7; fuel:diesel=yes; fuel:adblue=yes"},
	{"Orovilth", 0.8, -0.9, point, "amenity=fuel; operator=Beloveth; name=Beloveth; opening_hours=Mo-Sa 07:00-20:00; fuel:diesel=yes; fuel:octane_95=yes"},
	{"motorway end", 1, 0, point, "amenity=fuel; operator=Thavrum; name=Thavrum; opening_hours=24/7; fuel:diesel=yes; fuel:octane_95=yes; toilets=yes"},

	// Dump stations, water and taps.
	{"Vazhoum", -0.3, 0.9, point, "amenity=sanitary_dump_station; name=Vazhoum Saelethi; access=yes; fee=no; sanitary_dump_station:chemical_toilet=yes; sanitary_dump_station:grey_water=yes; water_point=yes"},
	{"Larazhe", -1, 0.3, point, "amenity=sanitary_dump_station; name=Larazhe Ulthe; access=yes; fee=yes; charge=2 EUR; sanitary_dump_station:basin=yes; sanitary_dump_station:chemical_toilet=yes; sanitary_dump_station:grey_water=yes"},
	{"Zhirilth", 0.8, 0.3, point, "amenity=sanitary_dump_station; fee=no; sanitary_dump_station:grey_water=yes; sanitary_dump_station:chemical_toilet=no"},
	{"Thamoum", 0.5, 0.9, point, "amenity=sanitary_dump_station; name=Thamoum Dazhu; access=yes; fee=yes; charge=3 EUR; sanitary_dump_station:chemical_toilet=yes; sanitary_dump_station:grey_water=yes; water_point=yes; opening_hours=Mo-Su 08:00-21:00"},
	{"Dolvilth", -1, 0.2, point, "amenity=sanitary_dump_station; access=yes"},
	{"Kessoum", 0.6, 0.8, point, "amenity=sanitary_dump_station; name=Kessoum Zhavi; access=yes; fee=yes; charge=2 EUR; sanitary_dump_station:basin=yes; sanitary_dump_station:chemical_toilet=yes; opening_hours=Apr-Oct"},
	{"Quelazhe", 1.2, 0.6, point, "amenity=sanitary_dump_station; name=Quelazhe Ovzhe; access=yes; fee=no; sanitary_dump_station:chemical_toilet=yes; sanitary_dump_station:grey_water=yes; sanitary_dump_station:round_drain=yes; water_point=yes"},
	{"Melzhoum", -0.8, -0.4, point, "amenity=sanitary_dump_station; access=customers; fee=yes; charge=4 EUR; operator=Qinzhe"},
	{"Othrazhe", 0.8, 0.6, point, "amenity=sanitary_dump_station; name=Othrazhe Unethi; access=yes; fee=no; sanitary_dump_station:chemical_toilet=yes; sanitary_dump_station:grey_water=yes"},
	{"Orovilth", 1.6, 0.6, point, "amenity=sanitary_dump_station; access=private"},
	{"Vazhoum", 1, -1, point, "amenity=water_point; fee=no; drinking_water=yes"},
	{"Sefnulve", -0.5, 0.5, point, "amenity=drinking_water"},
	{"Larazhe", -1.05, 0.32, point, "amenity=water_point; fee=yes; charge=1 EUR"},
	{"Imrazhe", -0.6, 0.5, point, "amenity=water_point; fee=no"},
	{"Vinuilth", -0.6, -0.6, point, "man_made=water_tap; drinking_water=no"},
	{"Zhirilth", 0.85, 0.3, point, "amenity=water_point; fee=no; opening_hours=Mo-Su 07:00-22:00"},
	{"Bezhoum", 0.4, 0.4, point, "amenity=drinking_water; drinking_water=yes"},
	{"Bezhoum", -9, -5, point, "man_made=water_tap"},
	{"Thoulune", -0.5, -0.3, point, "amenity=drinking_water; fountain=bottle_refill"},
	{"Olvrazhe", -0.6, 0.4, point, "amenity=water_point; fee=no"},
	{"Kessoum", 0.2, 0.9, point, "man_made=water_tap; drinking_water=yes"},
	{"Qathoum", 0.4, -0.2, point, "man_made=water_tap; drinking_water=no"},
	{"Aqelune", -0.4, -0.3, point, "amenity=drinking_water; drinking_water:legal=yes"},
	{"Irthazhe", 0.4, -0.4, point, "amenity=water_point; fee=yes; charge=1 EUR; opening_hours=Apr-Oct"},
	{"Melzhoum", 0.4, 0.6, point, "man_made=water_tap"},
	{"Ruzhethi", 0.5, -0.3, point, "amenity=drinking_water"},
	{"Nevrazhe", -0.3, 0.4, point, "amenity=water_point; fee=no"},
	{"Orovilth", 0.3, 0.8, point, "amenity=drinking_water"},

	// Plain places for motorhomes.
	{"Vazhoum", 2.4, -1.5, area, "tourism=caravan_site; name=Vazhoum Dazhethi; fee=yes; charge=14 EUR; capacity=30; power_supply=yes; water_point=yes; sanitary_dump_station=yes; maxstay=3 days"},
	{"Sefnulve", 0.9, -1.2, point, "tourism=caravan_site; name=Sefnulve Quel; fee=no; capacity=6; power_supply=no; maxstay=24 h"},
	{"Larazhe", -1.6, 1.2, area, "tourism=caravan_site; name=Larazhe Ulth; fee=yes; charge=9 EUR; capacity=18; power_supply=no; maxstay=48 h"},
	{"Imrazhe", 2.4, 1.4, point, "tourism=caravan_site; name=Imrazhe Oqa; fee=yes; charge=10 EUR; capacity=12; caravan_site=motorhome_stopover; power_supply=yes; power_supply:maxcurrent=6"},
	{"Imrazhe", 16, 13, point, "tourism=caravan_site; name=Tezh Wulth; fee=no; capacity=4"},
	{"Zhirilth", -1.4, 1.1, point, "tourism=caravan_site; name=Zhirilth Irmethi; fee=no; capacity=8; maxstay=24 h; motorhome=yes"},
	{"Bezhoum", 1.3, 1.4, point, "tourism=caravan_site; name=Bezhoum Ulve; fee=yes; charge=8 EUR; capacity=10; sanitary_dump_station=yes; water_point=yes"},
	{"Thoulune", 1, -1.4, area, "tourism=caravan_site; name=Thoulune Avem; fee=yes; charge=12 EUR; capacity=20; socket:cee_blue=8; power_supply=yes; toilets=yes"},
	{"Dolvilth", 1.3, 1.2, point, "tourism=caravan_site; name=Dolvilth Hozhu; fee=no; capacity=5"},
	{"Kessoum", -2.4, 1, point, "tourism=caravan_site; name=Kessoum Zhavi; fee=yes; charge=9 EUR; capacity=16; power_supply=no"},
	{"Aqelune", 1.5, -1.2, point, "tourism=caravan_site; name=Aqelune Hozhm; fee=no; capacity=6; maxstay=24 h"},
	{"Uqaroveya", -0.8, 0.9, point, "tourism=caravan_site; name=Uqaroveya Kathe; fee=yes; charge=5 EUR; capacity=7"},
	{"Quelazhe", 2.2, 1.8, area, "tourism=caravan_site; name=Quelazhe Pouv; fee=yes; charge=13 EUR; capacity=24; power_supply=yes; water_point=yes; sanitary_dump_station=customers"},
	{"Melzhoum", 1.4, -1.3, point, "tourism=caravan_site; access=private; name=Melzhoum Tezh; capacity=4"},
	{"Nevrazhe", -0.8, 1.8, point, "tourism=caravan_site; name=Nevrazhe Kath; fee=yes; charge=7 EUR; capacity=9; power_supply=no; maxstay=48 h"},
	{"Othrazhe", -1.3, 1.5, point, "tourism=caravan_site; name=Othrazhe Zhavu; fee=no; capacity=6; motorhome=yes; tents=no"},

	// Campsites.
	{"Vazhoum", -5.5, -3, area, "tourism=camp_site; name=Avem Vazhoum; fee=yes; charge=32 EUR; tents=yes; motorhome=yes; caravans=yes; power_supply=yes; shower=hot; toilets=yes; sanitary_dump_station=yes; water_point=yes; drinking_water=yes; capacity=140; opening_hours=24/7"},
	{"Larazhe", 6, -1.5, ring, "tourism=camp_site; name=Ulth Larazhe; fee=yes; charge=29 EUR; tents=yes; motorhome=yes; power_supply=yes; shower=yes; toilets=yes; sanitary_dump_station=customers; water_point=yes; capacity=90; opening_hours=Apr-Oct"},
	{"Vinuilth", -2, 2.5, area, "tourism=camp_site; name=Vinuoqa; fee=yes; charge=22 EUR; tents=yes; motorhome=yes; shower=yes; toilets=yes; capacity=40"},
	{"Imrazhe", 5, -6, area, "tourism=camp_site; name=Zhavi Imrazhe; fee=yes; charge=27 EUR; camp_site=serviced; motorhome=yes; tents=yes; capacity=70; sanitary_dump_station=yes; opening_hours=May-Sep"},
	{"Pouvazhe", -1.5, 1, area, "tourism=camp_site; name=Kath Pouvazhe; fee=yes; charge=24 EUR; tents=yes; motorhome=yes; power_supply=yes; power_supply:maxcurrent=10; shower=yes; toilets=yes; sanitary_dump_station=yes; water_point=yes; capacity=45"},
	{"Zhirilth", 11, 4, point, "tourism=camp_site; name=Irmethi; fee=yes; tents=yes; motorhome=no; shower=yes; toilets=yes; capacity=25"},
	{"Yarqoveya", -1.4, -1, area, "tourism=camp_site; name=Yarqoveya; fee=yes; charge=19 EUR; camp_site=standard; tents=yes; capacity=35"},
	{"Bezhoum", 7, 5, area, "tourism=camp_site; name=Bezhoqa; fee=yes; charge=26 EUR; tents=yes; motorhome=yes; power_supply=yes; shower=yes; toilets=yes; sanitary_dump_station=yes; water_point=yes; capacity=80"},
	{"Thamoum", -6, -1, area, "tourism=camp_site; name=Dazhe Thamoum; fee=yes; charge=31 EUR; tents=yes; motorhome=yes; socket:cee_blue=60; power_supply=yes; shower=hot; toilets=yes; sanitary_dump_station=customers; water_point=yes; capacity=110; opening_hours=Mar-Oct"},
	{"Thoulune", -2.5, 1.2, area, "tourism=camp_site; name=Zhul Avemi; fee=yes; charge=25 EUR; tents=yes; motorhome=yes; power_supply=yes; shower=yes; toilets=yes; sanitary_dump_station=yes; water_point=yes; capacity=60"},
	{"Olvrazhe", 2.5, -3, area, "tourism=camp_site; name=Olvrazhe Une; fee=yes; charge=23 EUR; tents=yes; motorhome=yes; power_supply=yes; shower=yes; toilets=yes; sanitary_dump_station=customers; capacity=50"},
	{"Kessoum", 8, -2, area, "tourism=camp_site; name=Othri Kessoum; fee=yes; charge=28 EUR; tents=yes; motorhome=yes; power_supply=yes; shower=hot; toilets=yes; sanitary_dump_station=yes; water_point=yes; capacity=100"},
	{"Aqelune", 7, -6, area, "tourism=camp_site; name=Aqeloqa; fee=yes; charge=21 EUR; tents=yes; shower=yes; toilets=yes; capacity=30"},
	{"Irthazhe", -2, -2, area, "tourism=camp_site; name=Irth; fee=yes; charge=26 EUR; tents=yes; motorhome=yes; power_supply=yes; shower=yes; toilets=yes; sanitary_dump_station=yes; water_point=yes; capacity=65; opening_hours=Apr-Oct"},
	{"Quelazhe", 6, 8, area, "tourism=camp_site; name=Quel Ovzhi; fee=yes; charge=34 EUR; tents=yes; motorhome=yes; power_supply=yes; shower=hot; toilets=yes; sanitary_dump_station=customers; water_point=yes; capacity=160"},
	{"Melzhoum", -9, 2, point, "tourism=camp_site; access=private; name=Tezhm; tents=yes"},
	{"Ruzhethi", 3, -4, area, "tourism=camp_site; name=Ruzhm; fee=yes; charge=20 EUR; camp_site=serviced; tents=yes; motorhome=yes; capacity=30"},
	{"Nevrazhe", 1, 4, area, "tourism=camp_site; name=Nevr Kathi; fee=yes; charge=30 EUR; tents=yes; motorhome=yes; power_supply=yes; shower=yes; toilets=yes; sanitary_dump_station=yes; water_point=yes; capacity=75; opening_hours=Apr-Sep"},
	{"Othrazhe", 6, 3, area, "tourism=camp_site; name=Othr Une; fee=yes; charge=27 EUR; tents=yes; motorhome=yes; power_supply=yes; shower=yes; toilets=yes; sanitary_dump_station=customers; water_point=yes; capacity=85"},
	{"Orovilth", 2, -4, area, "tourism=camp_site; name=Thouloqa; fee=yes; charge=22 EUR; tents=yes; motorhome=yes; power_supply=yes; shower=yes; toilets=yes; capacity=40"},

	// On the islet.
	{"Wulthazhe", -1.5, 0.5, area, "tourism=camp_site; name=Wulthe; fee=yes; charge=16 EUR; camp_site=basic; tents=yes; motorhome=yes; toilets=yes; capacity=20; opening_hours=Jun-Aug"},
	{"Wulthazhe", 0.3, 0.2, point, "amenity=drinking_water"},
}
