package osm

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
