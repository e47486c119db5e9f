package strict_test

import (
	"errors"
	"math"
	"reflect"
	"testing"

	"ullage/data/strict"
)

type sample struct {
	Name  string             `json:"name"`
	Count int                `json:"count"`
	Pair  [2]float64         `json:"pair"`
	Inner *inner             `json:"inner"`
	List  []inner            `json:"list"`
	Table map[string]float64 `json:"table"`
	On    bool               `json:"on"`
}

type inner struct {
	Km float64 `json:"km"`
}

func TestUnmarshal(t *testing.T) {
	var got sample
	err := strict.Unmarshal([]byte(` {"name":"a","count":2,"pair":[1,2.5],"inner":{"km":3},"list":null,"table":{"x":1},"on":true}`+"\n"), &got)
	want := sample{Name: "a", Count: 2, Pair: [2]float64{1, 2.5}, Inner: &inner{3}, Table: map[string]float64{"x": 1}, On: true}
	if err != nil || !reflect.DeepEqual(got, want) {
		t.Errorf("%+v, %v, want %+v", got, err, want)
	}
}

// Every fault names the line and column where it begins, and the path of the value.
func TestUnmarshalErrors(t *testing.T) {
	for _, tc := range []struct {
		text         string
		line, column int
		want         string
	}{
		{"", 1, 1, "the file ends in the middle; copy or export it again"},
		{"{\n \"list\": [{\"km\": 1},", 2, 21, "list[1]: the file ends in the middle; copy or export it again"},
		{"{\n\"name\": }", 2, 9, "name: not JSON: invalid character '}' looking for beginning of value"},
		{"{\"name\":\"a\"}}", 1, 13, "more after the end of the value"},
		{"{} {}", 1, 4, "more after the end of the value"},
		{"{\n\"nam\":1}", 2, 1, `unknown field "nam": did you mean "name"?`},
		{`{"weather":1}`, 1, 2, `unknown field "weather", want one of name, count, pair, inner, list, table, on`},
		{`{"list":[{"km":1,"km":2}]}`, 1, 18, `list[0]: field "km" is given twice`},
		{`{"table":{"x":1,"x":2}}`, 1, 17, `table: field "x" is given twice`},
		{`{"pair":[1]}`, 1, 9, "pair: has 1 values, want 2"},
		{`{"inner":{"km":null}}`, 1, 16, "inner.km: found null, want a number"},
		{`{"count":1.5}`, 1, 10, "count: number 1.5 is not a whole number in range"},
		{`{"count":3e9}`, 1, 10, "count: number 3e9 is not a whole number in range"},
		{`{"inner":{"km":1e999}}`, 1, 16, "inner.km: number 1e999 is out of range"},
		{`{"on":"yes"}`, 1, 7, `on: found text "yes", want true or false`},
		{`{"name":[]}`, 1, 9, "name: found a list, want text"},
		{`[]`, 1, 1, "found a list, want an object"},
	} {
		check(t, tc.text, strict.Unmarshal([]byte(tc.text), new(sample)), tc.line, tc.column, tc.want)
	}
}

// What may say more is read, and told; what is known of it must be right, and nothing nearly known is passed over.
func TestUnmarshalKnown(t *testing.T) {
	var got sample
	more, err := strict.UnmarshalKnown([]byte("{\"name\":\"a\",\"more\":[1,{\"x\":null}],\n\"list\":[{\"weather\":1,\"km\":3}],\"inner\":null}"), &got)
	want := []strict.Unknown{{Line: 1, Path: "more"}, {Line: 2, Path: "list[0].weather"}}
	if err != nil || got.Name != "a" || got.List[0].Km != 3 || !reflect.DeepEqual(more, want) {
		t.Errorf("%+v, %v, %v", got, more, err)
	}
	for _, tc := range []struct {
		text         string
		line, column int
		want         string
	}{
		{"", 1, 1, "the file ends in the middle; copy or export it again"},
		{"{\"name\":", 1, 9, "name: the file ends in the middle; copy or export it again"},
		{"{\n\"name\":\"\",}", 2, 11, "not JSON: invalid character '}' looking for beginning of object key string"},
		{"{\"name\":\"a\",\"name\":\"b\"}", 1, 13, `field "name" is given twice`},
		{"{\"nmae\":\"a\"}", 1, 2, `unknown field "nmae": did you mean "name"?`},
		{"{\"Table\":{}}", 1, 2, `unknown field "Table": did you mean "table"?`},
		{"{\"pair\":[1,null]}", 1, 12, "pair[1]: found null, want a number"},
		{"{\"pair\":[1]}", 1, 9, "pair: has 1 values, want 2"},
		{"{\"table\":{\"x\":null}}", 1, 15, "table.x: found null, want a number"},
		{"{\"other\":[nul]}", 1, 14, "other: not JSON: invalid character ']' in literal null (expecting 'l')"},
		{"{}}", 1, 3, "more after the end of the value"}, // the last byte is wrong, and nothing is missing
		{"{\n\"list\":[{\"km\":\"far\"}]}", 2, 15, `list[0].km: found text "far", want a number`},
		{`{"count":2.5}`, 1, 10, "count: number 2.5 is not a whole number in range"},
		{`{"name":{}}`, 1, 9, "name: found an object, want text"},
	} {
		_, err := strict.UnmarshalKnown([]byte(tc.text), new(sample))
		check(t, tc.text, err, tc.line, tc.column, tc.want)
	}
}

func check(t *testing.T, text string, err error, line, column int, want string) {
	t.Helper()
	var e *strict.Error
	if !errors.As(err, &e) {
		t.Errorf("%q: %v is no Error", text, err)
	} else if e.Line != line || e.Column != column || e.Unplaced().Error() != want {
		t.Errorf("%q: line %d, column %d: %v, want %d, %d: %s", text, e.Line, e.Column, e.Unplaced(), line, column, want)
	}
}

func TestParse(t *testing.T) {
	v, err := strict.Parse([]byte("{\"a\":1, \"a\":[[1,2],[3,\"x\"]],\n\"b\":null}"))
	if err != nil {
		t.Fatal(err)
	}
	a := v.Get("a") // the last of equals
	if a.Kind != '[' || len(a.Items) != 2 || !reflect.DeepEqual(a.Items[0].Nums, []float64{1, 2}) || a.Items[0].Items != nil {
		t.Errorf("a = %+v", a)
	}
	if mixed := a.Items[1]; mixed.Nums != nil || len(mixed.Items) != 2 || mixed.Items[0].Nums[0] != 3 || mixed.Items[1].Text != "x" || mixed.Offset != 19 {
		t.Errorf("a list of a number and a text = %+v", mixed)
	}
	if v.Get("b").Kind != 'n' || v.Get("c").Kind != 0 {
		t.Errorf("b %+v, c %+v", v.Get("b"), v.Get("c"))
	}
	deep := make([]byte, 100)
	for i := range deep {
		deep[i] = '['
	}
	for _, tc := range []struct {
		text         string
		line, column int
		want         string
	}{
		{"{\"a\":[1,\n2", 2, 2, "the file ends in the middle; copy or export it again"},
		{"{\n\"a\" 1}", 2, 5, "not JSON: invalid character '1' after object key"},
		{"{\"a\":1,\n\"b\":[tru]}", 2, 9, "not JSON: invalid character ']' in literal true (expecting 'e')"},
		{"{}[]", 1, 3, "not JSON: invalid character '[' after top-level value"},
		{string(deep), 1, 65, "values are nested more than 64 deep"},
	} {
		_, err := strict.Parse([]byte(tc.text))
		check(t, tc.text, err, tc.line, tc.column, tc.want)
	}
}

// Whatever the text: what is read strictly is read the same as what is known of it, and no reader panics.
func FuzzStrict(f *testing.F) {
	f.Add([]byte(`{"name":"a","count":2,"pair":[1,2.5],"inner":{"km":3},"list":[{"km":1}],"table":{"x":1}}`))
	f.Add([]byte(`{"count":1e2`))
	f.Fuzz(func(t *testing.T, text []byte) {
		strict.Parse(text)
		var exact, known sample
		if strict.Unmarshal(text, &exact) != nil {
			return
		}
		if _, err := strict.UnmarshalKnown(text, &known); err != nil || !reflect.DeepEqual(exact, known) || math.IsNaN(known.Pair[0]) {
			t.Errorf("%+v strictly, %+v as known (%v)", exact, known, err)
		}
	})
}
