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
	{"Tamrin", pt{-31, -14}, 1}, {"Velmo Quay", pt{108, -20}, 1},
	{"Savrin", pt{-20, 57}, 2}, {"Pandrel Quay", pt{55, -66}, 2}, {"Tarsil Quay", pt{-118, 2}, 2}, {"Nolbe Bridge", pt{0, -25}, 2},
	{"Lendor", pt{64, 55}, 2}, {"Dalmer Bridge", pt{20, 18}, 2}, {"Arvone Vale", pt{-52, 3}, 2}, {"Fendal Bridge", pt{-80, 36}, 2},
	{"Osmer Quay", pt{14, -53}, 2}, {"Caldrin", pt{80, -20}, 2}, {"Tolmer", pt{46, 31}, 2}, {"Ilmane Vale", pt{52, -7}, 2},
	{"Torlane Quay", pt{-74, -37}, 2}, {"Lindrel Bridge", pt{-84, -9}, 2}, {"Sorvane Quay", pt{-116, 43}, 3}, {"Altrel Quay", pt{123, 3}, 2},
	{"Nerava Wells", pt{98, 29}, 2}, {"Bendro", pt{-52, 45}, 2}, {"Ruvel Quay", pt{15, 48}, 2}, {"Jondel Hill", pt{38, -40}, 2},
	{"Belvone Field", pt{-58, -28}, 2}, {"Evrano Wells", pt{-13, 4}, 2},
	{"ring west", pt{-41, -9}, 0}, {"ring north", pt{-31, -3}, 0}, {"ring east", pt{-20, -13}, 0},
	{"bridge west", pt{21.5, 43}, 0}, {"bridge east", pt{31.5, 43}, 0}, {"motorway end", pt{24, -22}, 0},
}

// highways are the roads that were planned, greatest first: later ones use
// what is there.
var highways = []struct {
	class class
	via   []string
}{
	{motorway, []string{"ring west", "ring north", "ring east", "Nolbe Bridge", "motorway end"}},
	{trunk, []string{"Tamrin", "ring west"}},
	{trunk, []string{"Tamrin", "ring east"}},
	{trunk, []string{"Tamrin", "ring north"}},
	{trunk, []string{"motorway end", "Caldrin", "Velmo Quay"}},
	{trunk, []string{"ring west", "Lindrel Bridge", "Tarsil Quay"}},
	{trunk, []string{"ring north", "Evrano Wells", "Savrin"}},
	{primary, []string{"Savrin", "Ruvel Quay", "bridge west"}},
	{primary, []string{"bridge east", "Lendor", "Nerava Wells", "Altrel Quay", "Velmo Quay"}},
	{primary, []string{"Tamrin", "Belvone Field", "Torlane Quay", "Tarsil Quay", "Fendal Bridge", "Bendro", "Savrin"}},
	{primary, []string{"Nolbe Bridge", "Osmer Quay", "Jondel Hill", "motorway end"}},
	{primary, []string{"Jondel Hill", "Pandrel Quay"}},
	{primary, []string{"Nolbe Bridge", "Dalmer Bridge", "Tolmer", "Lendor"}},
	{primary, []string{"Caldrin", "Ilmane Vale"}},
	{secondary, []string{"Ruvel Quay", "Dalmer Bridge", "Ilmane Vale", "Tolmer", "Nerava Wells"}},
	{secondary, []string{"ring west", "Arvone Vale", "Bendro"}},
	{secondary, []string{"Arvone Vale", "Lindrel Bridge", "Torlane Quay"}},
	{secondary, []string{"Lindrel Bridge", "Fendal Bridge", "Sorvane Quay"}},
	{secondary, []string{"Jondel Hill", "Velmo Quay"}},
	{secondary, []string{"Ilmane Vale", "motorway end"}},
	{secondary, []string{"Evrano Wells", "Dalmer Bridge"}},
	{secondary, []string{"Tamrin", "Nolbe Bridge"}},
	{secondary, []string{"Tolmer", "bridge east"}},
	{secondary, []string{"Altrel Quay", "Caldrin"}},
	{secondary, []string{"Belvone Field", "Lindrel Bridge"}},
}
