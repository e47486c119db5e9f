package file

// A Tag is a key with a value. As a thing to look for, an empty value stands for every value.
type Tag struct{ Key, Value string }

// A Want is a set of tags to look for. An object is wanted if it has one of them.
type Want []Tag

// Matches reports whether tags hold one of the wanted. O(len(w)).
func (w Want) Matches(tags Tags) bool {
	for _, t := range w {
		if v, ok := tags[t.Key]; ok && (t.Value == "" || t.Value == v) {
			return true
		}
	}
	return false
}

// mostWants is how many tags may be looked for: a bit for each.
const mostWants = 64

// A lookup tells of a key and of a value for which wants it may stand: bit i for want i. So the strings of a whole block are
// looked up once, and each tag costs an "and".
type lookup struct {
	keys   map[string]uint64
	values map[string]uint64
	every  uint64 // wants that take every value
}

func newLookup(want Want) lookup {
	if len(want) > mostWants {
		panic("file: more than 64 wanted tags")
	}
	l := lookup{keys: map[string]uint64{}, values: map[string]uint64{}}
	for i, t := range want {
		l.keys[t.Key] |= 1 << i
		if t.Value == "" {
			l.every |= 1 << i
		} else {
			l.values[t.Value] |= 1 << i
		}
	}
	return l
}
