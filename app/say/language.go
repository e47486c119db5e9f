package say

import (
	_ "embed"
	"strings"
	"sync"
)

//go:embed en.txt
var english string

// A language is its catalogue, and what no catalogue can say: how it counts.
type language struct {
	catalog func() catalog
	plural  func(n float64) string // one, other
}

// languages by their code (BCP 47). Another is one more
// file and one more entry here: the file has every key of en.txt, as nothing falls back
// on English, and the tests name those that it has not.
var languages = map[string]language{
	"en": {lazily(english), func(n float64) string {
		if n == 1 {
			return "one"
		}
		return "other"
	}},
}

// lazily reads a catalogue when it is first asked for. Tests hold that it can be read.
func lazily(text string) func() catalog {
	return sync.OnceValue(func() catalog {
		c, err := readCatalog(text)
		if err != nil {
			panic("say: " + err.Error())
		}
		return c
	})
}

// speaks is the language with a code, English where there is none.
func speaks(code string) language {
	if l, ok := languages[strings.ToLower(code)]; ok {
		return l
	}
	return languages["en"]
}
