package hours

import (
	"fmt"
	"strconv"
	"strings"
)

// This file holds public holidays. [holidayText] was written from memory with
// the rules of the npm package date-holidays 3.37.0 (ISC; its data from
// Wikipedia, CC BY-SA) at hand, so the comparison with that package, day by
// day from 2024 to 2031, shows that the two agree and is no independent proof:
// TestHolidaysAgainstDateHolidays lists where and why they differ.
//
// A new country is a line here and a border: its code in borders.py, which writes
// borders.bin. Per country, after the name: the days that all of it keeps; then, behind
// semicolons, "REGION REGION: days" that only these regions keep, by their
// code of ISO 3166-2; "?: days" that some municipality, canton or trade keeps
// or the sources dispute. Days of single towns are left out.
//
//	5/1     1 May                      5/1*    and the Monday after, if a Sunday
//	E39     39 days after Easter       5/1^    and the next free weekday, if Saturday or Sunday
//	O-2     before Orthodox Easter     4/27!   the day before, if a Sunday
//	5:Mo-1  the last Monday of May     3/8@2023-2025, @2023-, @-2025, @2023: in these years only
//	9:Su3+1 the day after the third Sunday of September
//	6/20>Sa the first Saturday from 20 June on
const holidayText = `
AD 1/1 1/6 3/14 E-48 E-2 E1 5/1 E50 8/15 9/8 11/1 12/8 12/25 12/26
AT 1/1 1/6 E1 5/1 E39 E50 E60 8/15 10/26 11/1 12/8 12/25 12/26
BE 1/1 E1 5/1 E39 E50 7/21 8/15 11/1 11/11 12/25; ?: E0 E49
CH 1/1 E39 8/1 12/25; ?: 1/2 1/6 3/1 3/19 4/1>Th 4/8>Th E-2 E0 E1 5/1 E49 E50 E60 6/23 6/29 8/15 9:Su1+4 9:Su3 9:Su3+1 9/22 9/25 11/1 12/8 12/24 12/26 12/31
CY 1/1 1/6 O-48 3/25 4/1 O-2 O0 O1 5/1 O50 8/15 10/1 10/28 12/25 12/26; ?: O-47 O-1 O2 O49 12/24
CZ 1/1 E-2 E1 5/1 5/8 7/5 7/6 9/28 10/28 11/17 12/24 12/25 12/26
DE 1/1 E-2 E1 5/1 E39 E50 10/3 12/25 12/26; BW BY ST: 1/6; BE: 3/8 5/8@2025 6/17@2028; MV: 3/8@2023-; BB: E0 E49; BW BY HE NW RP SL: E60; SN? TH?: E60; SL: 8/15; BY?: 8/15 8/8; TH: 9/20; BB HB HH MV NI SH SN ST TH: 10/31; BW BY NW RP SL: 11/1; SN: 11/16>We
DK 1/1 E-3 E-2 E0 E1 E26@-2023 E39 E49 E50 12/25 12/26; ?: 5/1 6/5 12/24
EE 1/1 2/24 E-2 E0 5/1 E49 6/23 6/24 8/20 12/24 12/25 12/26
ES 1/1 1/6 E-2 5/1 8/15 10/12 11/1 12/6 12/8 12/25; ?: 1/1* 1/6* 2/28* 3/1* 3/19* E-3 E1 4/23* 5/1^ 5/2* 5/17* 5/30* 5/31* E50 E60 6/9* 6/24* 6/28* 7/25* 7/28* 8/5* 8/15* 9/2* 9/8* 9/11* 9/15* 10/9* 10/12* 11/1* 12/3 12/6* 12/8* 12/25* 12/26*
FI 1/1 1/6 E-2 E0 E1 5/1 E39 E49 6/20>Sa 10/31>Sa 12/6 12/25 12/26; ?: 6/19>Fr 12/24
FR 1/1 E1 5/1 5/8 E39 E50 7/14 8/15 11/1 11/11 12/25; 57 67 68 6AE: E-2 12/26; GP? MQ? MF? BL? GF? RE? YT?: 4/27 5/22 5/27 6/10 10/9 12/20 E-2
GB 1/1^ E-2 5:Mo1 5:Mo-1 12/25^ 12/26^ 5/8@2023; ENG WLS NIR: E1 8:Mo-1; SCT: 1/2^ 8:Mo1 11/30^; SCT?: E1; NIR: 3/17^ 7/12^
GR 1/1 1/6 O-48 3/25 O-2 O0 O1 5/1 O50 8/15 10/28 12/25 12/26; ?: O49 4/30^ 5/2^
HR 1/1 1/6 E0 E1 5/1 5/30 E60 6/22 8/5 8/15 11/1 11/18 12/25 12/26
HU 1/1 3/15 E-2 E0 E1 5/1 E49 E50 8/20 10/23 11/1 12/25 12/26; ?: 12/24
IE 1/1 2:Mo1@2023-2029 2/1@2030 2:Mo1@2031-2035 2/1@2036 3/17 E1 5:Mo1 6:Mo1 8:Mo1 10:Mo-1 12/25 12/26; ?: E-2 1/1^ 3/17^ 12/25^ 12/26^
IS 1/1 E-3 E-2 E0 E1 4/19>Th 5/1 E39 E49 E50 6/17 8:Mo1 12/25 12/26; ?: 12/24 12/31
IT 1/1 1/6 E0 E1 4/25 5/1 6/2 8/15 10/4@2026- 11/1 12/8 12/25 12/26; 32 BZ: E50
LI 1/1 1/6 E1 5/1 E39 E50 E60 8/15 9/8 11/1 12/8 12/25 12/26; ?: 1/2 2/2 E-47 3/19 E-2 E0 E40 E49 E61 12/24 12/31
LT 1/1 2/16 3/11 E0 E1 5/1 6/24 7/6 8/15 11/1 11/2 12/24 12/25 12/26; ?: 5:Su1 6:Su1
LU 1/1 E1 5/1 5/9 E39 E50 6/23 8/15 11/1 12/25 12/26; ?: E-2 12/24
LV 1/1 E-2 E0 E1 5/1 5/4^ 6/23 6/24 11/18^ 12/24 12/25 12/26 12/31; ?: 5:Su2 E49
MC 1/1 1/27* E1 5/1* E39 E50 E60 8/15 11/1 11/19* 12/8 12/25*; ?: 1/1* 8/15* 11/1* 12/8*
MT 1/1 2/10 3/19 3/31 E-2 5/1 6/7 6/29 8/15 9/8 9/21 12/8 12/13 12/25
NL 1/1 E0 E1 4/27! E39 E49 E50 12/25 12/26; ?: E-2 5/5
NO 1/1 E-3 E-2 E0 E1 5/1 5/17 E39 E49 E50 12/25 12/26
NZ 1/1^ 1/2^ 2/6^ E-2 E1 4/25^ 6:Mo1 7/14@2023 6/28@2024 6/20@2025 7/10@2026 6/25@2027 7/14@2028 7/6@2029 6/21@2030 7/11@2031 10:Mo4 12/25^ 12/26^; ?: 1/19>Mo 1/26>Mo 1/29>Mo 3:Mo2 3/20>Mo E2 9:Mo4 10:Mo4-3 10:Mo4+7 11:Tu2+3 11/27>Mo 11/28>Mo 6/19>Fr@2032- 6/26>Fr@2032- 7/3>Fr@2032- 7/10>Fr@2032-
PL 1/1 1/6 E0 E1 5/1 5/3 E49 E60 8/15 11/1 11/11 12/24@2025- 12/25 12/26
PT 1/1 E-2 E0 4/25 5/1 6/10 E60 8/15 10/5 11/1 12/1 12/8 12/25; ?: E-47 7/1 12/26
RO 1/1 1/2 1/6@2024- 1/7@2024- 1/24 O-2 O0 O1 5/1 6/1 O49 O50 8/15 11/30 12/1 12/25 12/26
SE 1/1 1/6 E-2 E0 E1 5/1 E39 E49 6/6 6/20>Sa 10/31>Sa 12/25 12/26; ?: 6/19>Fr 12/24 12/31
SI 1/1 1/2 2/8 E0 E1 4/27 5/1 5/2 E49 6/25 8/15 10/31 11/1 12/25 12/26
SK 1/1 1/6 E-2 E1 5/1 5/8@-2025 7/5 8/29 9/1@-2023 9/15@-2025 11/1 11/17@-2024 12/24 12/25 12/26; ?: 5/8 9/1 9/15 10/28 11/17
SM 1/1 1/6 2/5 3/25 4/1 E0 E1 5/1 E60 7/28 8/15 9/3 10/1 11/1 11/2 12/8 12/25 12/26; ?: 12/24 12/31
`

// A calendar is the holidays of one country.
type calendar struct {
	all     []holiday
	regions []regionDays
}

type regionDays struct {
	region string // "?" is everywhere, perhaps
	maybe  bool
	days   []holiday
}

// A holiday is one token of holidayText.
type holiday struct {
	end         dateEnd
	orthodox    bool
	onOrAfter   int  // a weekday plus 1, 0: none
	moved       byte // '*', '^', '!' or 0
	since, last int  // years
}

// calendars is holidayText, read. It is never changed.
var calendars = readCalendars(holidayText)

func readCalendars(text string) map[string]*calendar {
	all := map[string]*calendar{}
	for _, line := range strings.Split(strings.TrimSpace(text), "\n") {
		country, rest, _ := strings.Cut(line, " ")
		c := &calendar{}
		for i, part := range strings.Split(rest, ";") {
			if i == 0 {
				c.all = readHolidays(part)
				continue
			}
			regions, days, _ := strings.Cut(part, ":")
			list := readHolidays(days)
			for _, region := range strings.Fields(regions) {
				name := strings.TrimSuffix(region, "?")
				c.regions = append(c.regions, regionDays{name, name != region, list})
			}
		}
		all[country] = c
	}
	return all
}

func readHolidays(text string) []holiday {
	var days []holiday
	for _, token := range strings.Fields(text) {
		h, err := readHoliday(token)
		if err != nil {
			panic(fmt.Sprintf("hours: holiday %s: %v", token, err)) // our own table; the tests read it
		}
		days = append(days, h)
	}
	return days
}

func readHoliday(token string) (h holiday, err error) {
	h.last = 9999
	number := func(s string) int {
		n, e := strconv.Atoi(s)
		if e != nil {
			err = e
		}
		return n
	}
	day, years, ok := strings.Cut(token, "@")
	if ok {
		since, last, isRange := strings.Cut(years, "-")
		if since != "" {
			h.since = number(since)
		}
		if !isRange {
			h.last = h.since
		} else if last != "" {
			h.last = number(last)
		}
	}
	if n := len(day) - 1; strings.ContainsRune("*^!", rune(day[n])) {
		h.moved, day = day[n], day[:n]
	}
	switch {
	case day[0] == 'E' || day[0] == 'O':
		h.end.easter, h.orthodox = true, day[0] == 'O'
		h.end.offset = number(day[1:])
	case strings.Contains(day, ":"):
		month, rest, _ := strings.Cut(day, ":")
		h.end.month, h.end.weekday = number(month), weekdays[strings.ToLower(rest[:2])]
		if at := strings.LastIndexAny(rest, "+-"); at > 2 {
			h.end.offset, rest = number(rest[at:]), rest[:at]
		}
		h.end.nth = number(rest[2:])
	default:
		day, weekday, ok := strings.Cut(day, ">")
		if ok {
			h.onOrAfter = weekdays[strings.ToLower(weekday)] + 1
		}
		month, of, _ := strings.Cut(day, "/")
		h.end.month, h.end.day = number(month), number(of)
	}
	return h, err
}

// holds says whether there is such a holiday in a year.
func (h holiday) holds(year int) bool { return year >= h.since && year <= h.last }

// in returns the day of the holiday in a year.
func (h holiday) in(year int) int {
	if h.orthodox {
		return orthodoxEaster(year) + h.end.offset
	}
	n := h.end.first(year)
	if h.onOrAfter > 0 {
		n += (h.onOrAfter - 1 - dateOf(n).weekday + 7) % 7
	}
	if h.moved == '!' && dateOf(n).weekday == 0 {
		n--
	}
	return n
}
