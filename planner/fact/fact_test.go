package fact_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"reflect"
	"testing"

	"ullage/planner/fact"
)

func Example() {
	f := fact.Of("place.too_low", fact.V{"limit": fact.Metres(2.7, 2), "vehicle": fact.Metres(2.85, 2)})
	text, _ := json.Marshal(f)
	fmt.Println(string(text))
	// Output:
	// {"kind":"place.too_low","values":{"limit":{"is":"quantity","n":2.7,"digits":2,"unit":"m"},"vehicle":{"is":"quantity","n":2.85,"digits":2,"unit":"m"}}}
}

// A fact travels between the page and its worker: nothing may get lost.
func TestFactTravels(t *testing.T) {
	want := fact.Of("all", fact.V{
		"text": fact.Text("Ellern"), "term": fact.Term("place.fuel"), "tank": fact.Tank("fresh", "Fresh water"), "count": fact.Count(2),
		"km": fact.Km(12.5, 1), "mark": fact.Mark(30, 0), "money": fact.Money(9.5, "EUR"), "rate": fact.Rate(1.6, "EUR", "L"), "at": fact.Clock(605),
		"for": fact.Span(90), "day": fact.Date("2026-06-12"), "share": fact.Share(0.9, 0), "list": fact.Texts([]string{"a", "b"}),
		"clause": fact.Clause(fact.Of("inner", fact.V{"kg": fact.Kg(3500), "at": fact.Celsius(-4)})),
	})
	text, err := json.Marshal(want)
	if err != nil {
		t.Fatal(err)
	}
	var got fact.Fact
	if err := json.Unmarshal(text, &got); err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(got, want) || !got.Equal(want) {
		t.Errorf("came back as %+v, want %+v", got, want)
	}
}

// Cautions that several stops share are shown once: equality looks at values.
func TestEqual(t *testing.T) {
	a := fact.Of("k", fact.V{"x": fact.Km(1, 0), "y": fact.Text("s")})
	if !a.Equal(fact.Of("k", fact.V{"y": fact.Text("s"), "x": fact.Km(1, 0)})) {
		t.Error("the order of values counts")
	}
	for _, other := range []fact.Fact{
		fact.Of("k", fact.V{"x": fact.Km(2, 0), "y": fact.Text("s")}),
		fact.Of("k", fact.V{"x": fact.Metres(1, 0), "y": fact.Text("s")}),
		fact.Of("j", fact.V{"x": fact.Km(1, 0), "y": fact.Text("s")}),
		fact.Of("k", nil), {},
	} {
		if a.Equal(other) {
			t.Errorf("%+v counts as the same", other)
		}
	}
	if !(fact.Fact{}).Nothing() || a.Nothing() {
		t.Error("Nothing is wrong")
	}
	if !fact.Contains([]fact.Fact{{}, a}, a) || fact.Contains([]fact.Fact{{}}, a) {
		t.Error("Contains is wrong")
	}
	if got := fact.Of("odd", fact.V{"x": fact.Km(math.NaN(), 0)}).Key(); got != "odd" {
		t.Errorf("a number that is not finite gives %q", got)
	}
}

// told is an error that says something.
type told struct{}

func (told) Error() string   { return "for who mends it" }
func (told) Fact() fact.Fact { return fact.Of("k", nil) }

// People read what an error says, however it was wrapped, and its text where it says nothing.
func TestWhy(t *testing.T) {
	if v := fact.Why(fmt.Errorf("plan: %w", told{})); v.Is != fact.IsFact || v.Fact.Kind != "k" {
		t.Errorf("a told error is %+v", v)
	}
	if v := fact.Why(errors.New("line 3")); v.Is != fact.IsText || v.S != "line 3" || v.Fact != nil {
		t.Errorf("another error is %+v", v)
	}
}
