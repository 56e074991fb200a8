package printed

import "strings"

// claim is what a printed row says of one end of a window: a date that lies in
// an interval of days of the common year.
type claim struct {
	end      string // first, last, inside
	from, to int    // days of the common year, 1-365
	counted  bool   // false: told apart, outside the goal
}

// slacks is how many days each printed precision leaves open.
var slacks = map[string]int{"day": 0, "10 days": 9, "third-month": 10, "half-month": 14, "month": 30}

// unknownSlack is taken where the precision is not one of the list.
const unknownSlack = 14

// standInDays widens the autumn dates of a zone whose station stands in for it.
const standInDays = 10

// slack reads the precision of a row's start (0) or end (1).
func slack(precision string, end int) int {
	said := precision
	if parts := strings.SplitN(precision, ", end ", 2); len(parts) == 2 {
		said = parts[end]
	}
	if n, ok := slacks[strings.TrimPrefix(said, "start ")]; ok {
		return n
	}
	return unknownSlack
}

// claims tells what a row says. A spring row speaks of the first safe date, an
// autumn row of the last one, an all-season row of both; a row that calls itself
// no limit need only meet a window; the start of an autumn-to-winter row, after
// the heat, is told apart.
func claims(d *Date, r *Region) []claim {
	if strings.Contains(d.Text, "not the season limits") || strings.Contains(d.Text, "raised from") {
		return []claim{{"inside", either0(d.Start, d.End), either0(d.End, d.Start), true}}
	}
	wide := 0
	if r.StandIn {
		wide = standInDays
	}
	var out []claim
	if (d.Season == "spring" || d.Season == "all") && d.Start > 0 && !(d.Season == "all" && strings.Contains(d.Crop, "storage")) {
		to := OnCircle(d.Start + slack(d.Precision, 0))
		if strings.Contains(d.Text, "EARLIEST") && d.End > 0 {
			to = d.End
		}
		out = append(out, claim{"first", d.Start, to, true})
	}
	if (d.Season == "fall" || d.Season == "fall-winter" || d.Season == "all") && d.End > 0 {
		out = append(out, claim{"last", OnCircle(d.End - slack(d.Precision, 1) - wide), OnCircle(d.End + wide), true})
	}
	if d.Season == "fall-winter" && d.Start > 0 {
		out = append(out, claim{"first", d.Start, OnCircle(d.Start + slack(d.Precision, 0)), false})
	}
	return out
}

func either0(a, b int) int {
	if a > 0 {
		return a
	}
	return b
}

// OnCircle takes a day of the year round the circle to 1-365.
func OnCircle(day int) int { return ((day-1)%365+365)%365 + 1 }

// ahead is the signed distance in days from a to b, -182 to 182.
func ahead(a, b int) int { return ((b-a+182)%365+365)%365 - 182 }

// outside is the signed distance of a day from an interval of the year, 0 inside.
func outside(from, to, day int) int {
	if OnCircle(day-from+1) <= OnCircle(to-from+1) {
		return 0
	}
	before, after := ahead(from, day), ahead(to, day)
	if abs(before) < abs(after) {
		return before
	}
	return after
}

func abs(v int) int { return max(v, -v) }
