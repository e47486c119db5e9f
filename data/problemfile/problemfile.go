package problemfile

import (
	"fmt"

	"ullage/data/strict"
	"ullage/data/wrong"
	"ullage/planner"
)

// maxFile is the size in bytes of the largest file that is decoded: about
// twenty times a problem of 4,000 km.
const maxFile = 32 << 20

// Decode reads a problem in format ullage-problem-2, or the one before it. It is strict: unknown,
// repeated fields, null for anything but a list or table, wrong types and anything after the problem are
// errors that name the file, line, column and field; so are the faults that
// [planner.Problem.Validate] finds. name is the file's name for errors. b is not
// changed or kept. Files over 32 MiB are refused.
func Decode(name string, b []byte) (*planner.Problem, error) {
	p := new(planner.Problem)
	if err := decode(name, b, p); err != nil {
		return nil, err
	}
	p.Upgrade()
	if err := p.Validate(); err != nil {
		return nil, wrong.In(name, err)
	}
	return p, nil
}

// DecodePlan reads a plan in format ullage-plan-2, as strictly as [Decode].
// Whether it is a valid plan is for audit.Check to say.
func DecodePlan(name string, b []byte) (planner.Plan, error) {
	var plan planner.Plan
	if err := decode(name, b, &plan); err != nil {
		return planner.Plan{}, err
	}
	if plan.Format != planner.PlanFormat {
		return planner.Plan{}, wrong.In(name, fmt.Errorf("format is %q, want %q: solve the problem again", plan.Format, planner.PlanFormat))
	}
	return plan, nil
}

func decode(name string, b []byte, into any) error {
	if len(b) > maxFile {
		return wrong.In(name, fmt.Errorf("%d bytes, but at most %d are read", len(b), maxFile))
	}
	if err := strict.Unmarshal(b, into); err != nil {
		return wrong.In(name, err)
	}
	return nil
}
