package life

import (
	_ "embed"
	"strings"
)

// The texts are data: they are read once, and take a tenth of what they would
// as code.

//go:embed howtos.txt
var howToText string

//go:embed checklists.txt
var checklistText string

var (
	allHowTos     = readAdvice(howToText)
	allChecklists = readAdvice(checklistText)
)

// readAdvice reads the texts, which a test holds to their form.
func readAdvice(text string) []HowTo {
	var out []HowTo
	for line := range strings.Lines(text) {
		line, _, _ = strings.Cut(strings.TrimRight(line, "\n"), "//")
		mark, rest, _ := strings.Cut(strings.TrimSpace(line), " ")
		if mark == "" {
			continue
		}
		if mark == "#" {
			id, title, _ := strings.Cut(rest, ": ")
			out = append(out, HowTo{ID: id, Title: title})
			continue
		}
		h := &out[len(out)-1]
		switch mark {
		case "-":
			h.Steps = append(h.Steps, readItem(rest))
		case "!":
			h.Cautions = append(h.Cautions, readItem(rest))
		case "=":
			h.Defer = rest
		}
	}
	return out
}

func readItem(text string) Item {
	head, text, _ := strings.Cut(text, ": ")
	id, conditions, some := strings.Cut(head, " [")
	i := Item{ID: id, Text: text}
	if some {
		i.If = strings.Fields(strings.TrimSuffix(conditions, "]"))
	}
	return i
}

func howTos() []HowTo {
	out := make([]HowTo, len(allHowTos))
	for i, h := range allHowTos {
		h.Steps, h.Cautions = those(h.Steps, nil), those(h.Cautions, nil)
		out[i] = h
	}
	return out
}

func checklists() []Checklist {
	var out []Checklist
	for _, h := range allChecklists {
		out = append(out, Checklist{h.ID, h.Title, those(h.Steps, nil)})
	}
	return out
}
