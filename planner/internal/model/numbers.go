package model

// Lesser and Greater are min and max of two numbers. (The built-in ones are
// calls where the page runs.)
func Lesser(a, b float64) float64 {
	if b < a {
		return b
	}
	return a
}

func Greater(a, b float64) float64 {
	if b > a {
		return b
	}
	return a
}

// Slack is what a limit may be missed by inside the solver; a tenth of what
// the auditor lets pass.
const Slack = 1e-7

// PerVisit is added to the cost of every visit so that, of plans that cost the
// same, the one with fewer visits is the cheaper. Equal costs differ by less
// than Tie.
const (
	PerVisit = 2e-9
	Tie      = 5e-10
)
