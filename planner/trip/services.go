package trip

const (
	// DefaultCircuity is road distance ÷ straight distance of a detour. From
	// memory: Ballou, Rahardja, Sakai, "Selected country circuity factors for
	// road travel distance estimation", 2002, has 1.2 to 1.6 by country (Europe
	// 1.46); Boscoe, Henry, Zdeb, "A nationwide comparison of driving distance
	// versus straight-line distance to hospitals", 2012, has 1.42 (USA).
	DefaultCircuity = 1.4
)
