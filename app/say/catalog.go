package say

import (
	"fmt"
	"strings"
)

// A catalog is the sentences of one language by key.
type catalog map[string]message

// readCatalog reads the file of a language. A line is "key = sentence"; a line
// that begins with blanks goes on with the sentence before it; # begins a remark.
// The error names the line.
func readCatalog(text string) (catalog, error) {
	c := catalog{}
	key, sentence, from := "", "", 0
	store := func() error {
		if key == "" {
			return nil
		}
		if _, twice := c[key]; twice {
			return fmt.Errorf("line %d: %s is there twice", from, key)
		}
		m, err := parse(sentence)
		if err != nil {
			return fmt.Errorf("line %d: %s: %w", from, key, err)
		}
		c[key] = m
		return nil
	}
	for n, line := range strings.Split(text, "\n") {
		line = strings.TrimRight(line, " \r")
		switch {
		case line == "" || line[0] == '#':
		case line[0] == ' ' || line[0] == '\t':
			if key == "" {
				return nil, fmt.Errorf("line %d: goes on with a sentence, and there is none before it", n+1)
			}
			sentence = strings.TrimSpace(sentence + " " + strings.TrimSpace(line))
		default:
			if err := store(); err != nil {
				return nil, err
			}
			k, s, found := strings.Cut(line, "=")
			if !found {
				return nil, fmt.Errorf("line %d: %q is not key = sentence", n+1, line)
			}
			key, sentence, from = strings.TrimSpace(k), strings.TrimSpace(s), n+1
		}
	}
	return c, store()
}
