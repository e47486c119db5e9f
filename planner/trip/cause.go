package trip

import (
	"cmp"
	"slices"
)

var causes = []Cause{CauseData, CauseAgreement, CauseWish, CauseTank}

// ByCause sorts reasons by what they lie in, and else leaves them as they are.
func ByCause(reasons []Reason) {
	slices.SortStableFunc(reasons, func(a, b Reason) int {
		return cmp.Compare(slices.Index(causes, a.Cause), slices.Index(causes, b.Cause))
	})
}
