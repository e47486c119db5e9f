package demo

// This file is the plan of the country: towns and the roads between them.

// A town is a named settlement: 1 city, 2 town, 3 village, 0 a junction that
// is none.
type town struct {
	name string
	at   pt
	rank int
}

var towns = []town{
	{"Vazhoum", pt{-31, -14}, 1}, {"Quelazhe", pt{108, -20}, 1},
	{"Thamoum", pt{-20, 57}, 2}, {"Nevrazhe", pt{55, -66}, 2}, {"Imrazhe", pt{-118, 2}, 2}, {"Orovilth", pt{0, -25}, 2},
	{"Kessoum", pt{64, 55}, 2}, {"Dolvilth", pt{20, 18}, 2}, {"Yarqoveya", pt{-52, 3}, 2}, {"Zhirilth", pt{-80, 36}, 2},
	{"Othrazhe", pt{14, -53}, 2}, {"Melzhoum", pt{80, -20}, 2}, {"Qathoum", pt{46, 31}, 2}, {"Uqaroveya", pt{52, -7}, 2},
	{"Larazhe", pt{-74, -37}, 2}, {"Vinuilth", pt{-84, -9}, 2}, {"Pouvazhe", pt{-116, 43}, 3}, {"Irthazhe", pt{123, 3}, 2},
	{"Aqelune", pt{98, 29}, 2}, {"Bezhoum", pt{-52, 45}, 2}, {"Olvrazhe", pt{15, 48}, 2}, {"Ruzhethi", pt{38, -40}, 2},
	{"Sefnulve", pt{-58, -28}, 2}, {"Thoulune", pt{-13, 4}, 2},
	{"ring west", pt{-41, -9}, 0}, {"ring north", pt{-31, -3}, 0}, {"ring east", pt{-20, -13}, 0},
	{"bridge west", pt{21.5, 43}, 0}, {"bridge east", pt{31.5, 43}, 0}, {"motorway end", pt{24, -22}, 0},
}

// highways are the roads that were planned, greatest first: later ones use
// what is there.
var highways = []struct {
	class class
	via   []string
}{
	{motorway, []string{"ring west", "ring north", "ring east", "Orovilth", "motorway end"}},
	{trunk, []string{"Vazhoum", "ring west"}},
	{trunk, []string{"Vazhoum", "ring east"}},
	{trunk, []string{"Vazhoum", "ring north"}},
	{trunk, []string{"motorway end", "Melzhoum", "Quelazhe"}},
	{trunk, []string{"ring west", "Vinuilth", "Imrazhe"}},
	{trunk, []string{"ring north", "Thoulune", "Thamoum"}},
	{primary, []string{"Thamoum", "Olvrazhe", "bridge west"}},
	{primary, []string{"bridge east", "Kessoum", "Aqelune", "Irthazhe", "Quelazhe"}},
	{primary, []string{"Vazhoum", "Sefnulve", "Larazhe", "Imrazhe", "Zhirilth", "Bezhoum", "Thamoum"}},
	{primary, []string{"Orovilth", "Othrazhe", "Ruzhethi", "motorway end"}},
	{primary, []string{"Ruzhethi", "Nevrazhe"}},
	{primary, []string{"Orovilth", "Dolvilth", "Qathoum", "Kessoum"}},
	{primary, []string{"Melzhoum", "Uqaroveya"}},
	{secondary, []string{"Olvrazhe", "Dolvilth", "Uqaroveya", "Qathoum", "Aqelune"}},
	{secondary, []string{"ring west", "Yarqoveya", "Bezhoum"}},
	{secondary, []string{"Yarqoveya", "Vinuilth", "Larazhe"}},
	{secondary, []string{"Vinuilth", "Zhirilth", "Pouvazhe"}},
	{secondary, []string{"Ruzhethi", "Quelazhe"}},
	{secondary, []string{"Uqaroveya", "motorway end"}},
	{secondary, []string{"Thoulune", "Dolvilth"}},
	{secondary, []string{"Vazhoum", "Orovilth"}},
	{secondary, []string{"Qathoum", "bridge east"}},
	{secondary, []string{"Irthazhe", "Melzhoum"}},
	{secondary, []string{"Sefnulve", "Vinuilth"}},
}
