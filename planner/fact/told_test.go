package fact_test

import (
	"errors"
	"fmt"
	"io"
	"testing"

	"ullage/planner/fact"
)

// What people are told is the fact, however deep it is wrapped; programs still find
// the cause.
func TestError(t *testing.T) {
	err := fmt.Errorf("read a: %w", fact.Fail(io.ErrUnexpectedEOF, "file.cut", nil))
	if !errors.Is(err, io.ErrUnexpectedEOF) || err.Error() != "read a: unexpected EOF" {
		t.Errorf("%v is not its cause", err)
	}
	if got := fact.Why(err); got.Fact == nil || got.Fact.Kind != "file.cut" {
		t.Errorf("says %+v, want the fact", got)
	}
	if got := fact.Fail(nil, "k", nil).Error(); got != `{"kind":"k"}` {
		t.Errorf("without a cause: %s", got)
	}
}
