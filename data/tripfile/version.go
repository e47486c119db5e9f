package tripfile

import (
	"encoding/json"
	"fmt"
	"strconv"
	"strings"

	"ullage/planner/fact"
	"ullage/planner/trip"
)

// FleetFormat is the value of a fleet file's format member.
const FleetFormat = "ullage-fleet-1"

// A NewerError says that a newer version of this program wrote a file.
type NewerError struct {
	File, Format string
	Known        string // the newest format that this version reads
}

func (e *NewerError) Error() string {
	return fmt.Sprintf("%s: a newer version of Ullage wrote it, as %s; this one reads up to %s: get the newer version", e.File, e.Format, e.Known)
}

// isNewer: the {file} is of a newer version.
const isNewer fact.Kind = "file.newer"

// Fact says it in words.
func (e *NewerError) Fact() fact.Fact { return fact.Of(isNewer, fact.V{"file": fact.Text(e.File)}) }

// newer tells whether a format is a later one of the same kind: ullage-trip-2 of
// ullage-trip-1.
func newer(format, known string) bool {
	i := strings.LastIndexByte(known, '-') + 1
	number, same := strings.CutPrefix(format, known[:i])
	have, err := strconv.Atoi(number)
	most, _ := strconv.Atoi(known[i:])
	return same && err == nil && have > most
}

// IsNewer tells whether a trip or fleet file is of a newer version than this. It reads no
// more of it than it must.
func IsNewer(file []byte) bool {
	var l struct {
		Format string `json:"format"`
		Ullage struct {
			Format string `json:"format"`
		} `json:"ullage"`
	}
	_ = json.Unmarshal(file, &l) // what is broken is not newer
	return newer(l.Format, FleetFormat) || newer(l.Ullage.Format, trip.Format)
}
