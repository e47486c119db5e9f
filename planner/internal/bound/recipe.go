package bound

// A Recipe says which bounds to make.
type Recipe struct {
	Worth   []float64 // by tank
	Tanks   []int     // in the nights' group
	Nights  Tally
	Detail  Detail
	Stopped func() bool // says that bounds are no more wanted; nil: never
}

// A Detail is how many classes there may be.
type Detail struct {
	Row    int // in all, on a short route
	Tank   int // of one tank
	Moving int // of the first tank that driving restores; 0: as of others. If not 0, row is that of the others
}

// Up to easilyCounted nights are counted; more get a wage, up to mostCounted
// are counted as well, and up to everCounted in finer bounds.
const EasilyCounted, MostCounted, EverCounted = 4, 8, 21

// A Tally is how the bound takes the wished number of nights into account:
// counted in the table, or left out and a night given a wage.
type Tally struct {
	Counted bool
	Wage    float64
}

var (
	Sketch = Detail{1 << 20, 3, 0}
	Rough  = Detail{1600, 12, 0}
	Fine   = Detail{1600, 48, 0}
	Finest = Detail{12800, 48, 0}
	Sharp  = Detail{48, 48, 160}
)
