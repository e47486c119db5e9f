package hours

import (
	"bufio"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"
)

const shared = "../../../shared/data/opening_hours"

// The interval files of KOpeningHours (CC0): a value, a count, then the states
// from Saturday, 7 November 2020, 18:32 on, in Berlin, Germany. Every minute
// that a file speaks of is compared.
//
// One reading differs on purpose: where an end is open ("22:00+") the files
// say closed afterwards, we say unknown, since nobody knows.
func TestOpeningHoursIntervals(t *testing.T) {
	files, _ := filepath.Glob(filepath.Join(shared, "kopeninghours", "*.intervals"))
	if len(files) == 0 {
		t.Skip("open data are not beside the project, as ../shared/data")
	}
	if len(files) != 27 {
		t.Errorf("%d files, want 27", len(files))
	}
	berlin, err := time.LoadLocation("Europe/Berlin")
	if err != nil {
		t.Fatal(err) // the data of time zones come with Go
	}
	where := Where{Lat: 52.5, Lon: 13.0, Country: "DE-BE"}
	for _, file := range files {
		name := strings.TrimSuffix(filepath.Base(file), ".intervals")
		t.Run(name, func(t *testing.T) { checkIntervals(t, file, berlin, where) })
	}
}

var intervalLine = regexp.MustCompile(`^(?:\w+ (\S+ \S+?)|-inf) - (?:\w+ (\S+ [0-9:]+)(\+?)|inf): (open|closed|unknown)`)

func checkIntervals(t *testing.T, file string, zone *time.Location, where Where) {
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	scan := bufio.NewScanner(f)
	scan.Scan()
	text := scan.Text()
	schedule, err := Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	const layout = "2006-01-02 15:04"
	var states []State
	epoch := time.Date(2020, 11, 6, 0, 0, 0, 0, time.UTC)
	at := func(s string) int { // minutes on the wall since the first midnight
		m, err := time.Parse(layout, s)
		if err != nil {
			t.Fatal(err)
		}
		return int(m.Sub(epoch).Minutes())
	}
	days := 6 * 365
	for _, p := range schedule.Periods(time.Date(2020, 11, 6, 0, 0, 0, 0, zone), days, where) {
		for range p.To - p.From {
			states = append(states, p.State)
		}
	}
	tolerance := 0
	if schedule.sun {
		tolerance = 2 // minutes
	}
	lines, open := 0, -1 // where the last open end began
	if strings.HasSuffix(text, "18:00+") {
		open = at("2020-11-07 18:00") // before the first line
	}
	for scan.Scan() {
		m := intervalLine.FindStringSubmatch(scan.Text())
		if m == nil {
			continue
		}
		lines++
		from, to := 0, len(states)
		if m[1] != "" {
			from = at(m[1])
		}
		if m[2] != "" {
			to = at(m[2])
		}
		wrong := 0
		for k := from + tolerance; k < to-tolerance; k++ {
			got := states[k]
			if got.String() != m[4] && !(open >= 0 && m[4] == "closed" && got == Unknown && k-open < 10*60) {
				wrong++
			}
		}
		if wrong > 0 {
			t.Errorf("%s: %d minutes are not so: %s", text, wrong, scan.Text())
		}
		if m[3] == "+" {
			open = to
		}
	}
	if lines == 0 {
		t.Errorf("%s: no intervals in the file", file)
	}
}
