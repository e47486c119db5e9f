package hours

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"slices"
	"sort"
	"strings"
	"testing"
	"time"
)

// reference asks an npm package, if ULLAGE_NODE_MODULES names the folder that
// it is installed in; nothing of it is part of the project.
func reference(t *testing.T, pack, what string, lines []string) []string {
	folder := os.Getenv("ULLAGE_NODE_MODULES")
	if _, err := os.Stat(folder + "/" + pack); folder == "" || err != nil {
		t.Skipf("to compare, npm install %s, and set ULLAGE_NODE_MODULES to the node_modules folder", pack)
	}
	cmd := exec.Command("node", "testdata/reference.js", folder, what)
	// All year one hour ahead: where clocks change, the package shifts hours
	// after midnight, which is no question of opening hours.
	cmd.Env = append(os.Environ(), "TZ=Etc/GMT-1")
	cmd.Stdin = strings.NewReader(strings.Join(lines, "\n"))
	var out, log bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &log
	if err := cmd.Run(); err != nil {
		t.Fatalf("node: %v\n%s", err, log.String())
	}
	answers := strings.Split(strings.TrimSuffix(out.String(), "\n"), "\n")
	if len(answers) != len(lines) {
		t.Fatalf("%d answers to %d questions", len(answers), len(lines))
	}
	return answers
}

// realValues reads the values of opening_hours as mapped.
func realValues(t *testing.T) []string {
	var values []string
	for _, name := range []string{"real-values-203.txt", "real-values-from-saved-osm.tsv"} {
		b, err := os.ReadFile(shared + "/" + name)
		if err != nil {
			t.Skipf("open data are not beside the project, as ../shared/data: %v", err)
		}
		for _, line := range strings.Split(string(b), "\n") {
			if at := strings.IndexByte(line, '\t'); at >= 0 && strings.HasSuffix(name, "tsv") {
				line = line[at+1:]
			}
			if line != "" && !slices.Contains(values, line) {
				values = append(values, line)
			}
		}
	}
	return values
}

// Against opening_hours.js 3.15.0 (npm, LGPL-3.0): of the real values that
// both can read, at least 99 % are in the same state at every minute of 2021
// in Berlin; the sun may differ by three minutes.
func TestAgainstOpeningHoursJS(t *testing.T) {
	values := realValues(t)
	answers := reference(t, "opening_hours", "hours", values)
	zone := time.FixedZone("", 3600)
	both, same, onlyHere, onlyThere, neither := 0, 0, 0, 0, 0
	for i, value := range values {
		s, err := Parse(value)
		refused := strings.HasPrefix(answers[i], "!")
		switch {
		case err != nil && refused:
			neither++
			continue
		case err != nil:
			onlyThere++
			t.Logf("read there only: %v", err)
			continue
		case refused:
			onlyHere++
			t.Logf("read here only: %q: %s", value, answers[i])
			continue
		}
		both++
		ours := minutes(s.Periods(time.Date(2021, 1, 1, 0, 0, 0, 0, zone), 365, Where{52.5, 13.0, "DE-BE"}))
		theirs := minutes(parseAnswer(t, answers[i]))
		first, wrong := -1, 0
		for k := range theirs {
			if ours[k] != theirs[k] && !(s.sun && theirs[max(0, k-3)] != theirs[min(len(theirs)-1, k+3)]) {
				if wrong++; first < 0 {
					first = k
				}
			}
		}
		if wrong == 0 {
			same++
			continue
		}
		d := dateOf(dayNumber(2021, 1, 1) + first/dayMin)
		t.Logf("%q: %d minutes differ, first %d-%d %02d:%02d: %v here, %v there", value, wrong, d.month, d.day, first%dayMin/60, first%60, ours[first], theirs[first])
	}
	t.Logf("%d values: %d read by both, %d of them the same (%.2f %%); read here only %d, there only %d, by neither %d",
		len(values), both, same, 100*float64(same)/float64(both), onlyHere, onlyThere, neither)
	if float64(same) < 0.99*float64(both) || both < 600 {
		t.Errorf("%d of %d are the same, want 99 %%", same, both)
	}
}

func minutes(periods []Period) []State {
	var all []State
	for _, p := range periods {
		for range p.To - p.From {
			all = append(all, p.State)
		}
	}
	return all
}

// parseAnswer reads "2021 1 1 0 0 open;2021 1 1 8 0 closed".
func parseAnswer(t *testing.T, answer string) (periods []Period) {
	for _, part := range strings.Split(answer, ";") {
		var y, mo, d, h, mi int
		var state string
		if _, err := fmt.Sscan(part, &y, &mo, &d, &h, &mi, &state); err != nil {
			t.Fatalf("%q: %v", part, err)
		}
		at := (dayNumber(y, mo, d)-dayNumber(2021, 1, 1))*dayMin + h*60 + mi
		if n := len(periods); n > 0 {
			periods[n-1].To = at
		}
		periods = append(periods, Period{at, 365 * dayMin, map[string]State{"open": Open, "closed": Closed, "unknown": Unknown}[state]})
	}
	return periods
}

// Against date-holidays 3.37.0 (npm, ISC; its data from Wikipedia, CC BY-SA):
// day by day, 2024 to 2031. Where the package knows a day that we leave open,
// or the other way round, the reason stands here.
func TestHolidaysAgainstDateHolidays(t *testing.T) {
	known := map[string]string{
		"AD": "in 2024 the package has Carnival on a Tuesday",
		"CY": "the package has Green Monday on a Tuesday and leaves out Kataklysmos",
		"IS": "the first Thursday after 18 April cannot be the 18th",
		"LI": "the package leaves out 15 August (national day) and All Saints",
	}
	var names []string
	for country, c := range calendars {
		names = append(names, country)
		for _, r := range c.regions {
			if !r.maybe && !slices.Contains([]string{"6AE", "BZ"}, r.region) {
				names = append(names, country+"-"+r.region)
			}
		}
	}
	sort.Strings(names)
	names = slices.Compact(names)
	days := 0
	for i, answer := range reference(t, "date-holidays", "holidays", names) {
		ref := map[int]bool{}
		for _, s := range strings.Split(answer, ";") {
			d, err := time.Parse("2006-01-02", s)
			if err != nil {
				t.Fatalf("%s: %v", names[i], err)
			}
			ref[dayOf(d)] = true
		}
		h := holidaysOf(Where{Country: names[i]})
		for n := dayNumber(2024, 1, 1); n < dayNumber(2032, 1, 1); n++ {
			if state := h.on(n); ref[n] && state == Closed || !ref[n] && state == Open {
				d := dateOf(n)
				country, _, _ := strings.Cut(names[i], "-")
				if known[country] == "" {
					t.Errorf("%s %d-%02d-%02d: %v here, holiday there: %v", names[i], d.year, d.month, d.day, state, ref[n])
				}
			}
		}
		days += len(ref)
	}
	t.Logf("%d calendars, %d holidays", len(names), days)
}
