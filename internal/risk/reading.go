package risk

import "garner/internal/cal"

// Reading is what a rule makes of one day.
type Reading struct {
	Date      cal.Date
	Value     float64 // what the rule looks at, in its unit
	Sum       float64 // running sum, 0 where the rule keeps none
	Fired     bool
	Threshold float64 // what had to be reached, where it fired
	Event     string  // which of several things it was, "" where there is one
}

// judge is the form of a rule: the days of a record as it sees them. Days that do
// not count have no reading.
type judge func(a *asked) []Reading

// asked is a rule with all it looks at.
type asked struct {
	*Rule
	w     *Weather
	wet   []bool   // leaves wet, by hour
	since cal.Date // sums begin here, cal.None: with the record and each growing year
	seen  cal.Date // insects were seen flying; cal.None: not told
	south bool
}

// form is a way of judging and the numbers it needs.
type form struct {
	judge    judge
	needs    []string // numbers that must be there
	may      []string // numbers that may be there
	table    bool     // looks up severity values
	byEvents bool     // its numbers lie in pests.csv
}

// forms are all of them by the name in rules.csv.
var forms = map[string]form{
	"humid_days":         {judge: humidDays, needs: []string{"tmin_c", "rh_pct", "action_hours", "days"}},
	"humid_spell":        {judge: humidSpell, needs: []string{"temp_c", "rh_pct", "action_hours"}},
	"blight_hours":       {judge: blightHours, needs: []string{"temp_c", "rh_pct", "spore_hours", "wet_from_hour", "dry_from_hour", "rain_from_hour", "rain_to_hour", "rain_mm", "break_hours", "action_hours"}},
	"severity_sum":       {judge: severitySum, table: true, needs: []string{"whole_degrees", "action", "again"}, may: []string{"rh_pct", "rh_above_pct"}},
	"severity_window":    {judge: severityWindow, table: true, needs: []string{"days", "action"}, may: []string{"rh_pct", "rh_above_pct"}},
	"schedule":           {judge: weeklySchedule, table: true, needs: []string{"rh_pct", "mean_c", "mean_days", "tmin_c", "rain_mm", "rain_days", "first_days", "first_severity", "week_days", "action"}},
	"rain_days":          {judge: rainDays, needs: []string{"mean_c", "mean_days", "tmin_c", "rain_mm", "rain_days", "action_days"}},
	"physiological_days": {judge: physiologicalDays, needs: []string{"low_c", "best_c", "high_c", "last_maximum", "action"}},
	"downcast":           {judge: downcast, needs: []string{"rh_above_pct", "from_hour", "to_hour", "low_c", "high_c", "hot_c", "hot_hours", "rain_to_hour", "morning_to_hour", "wet_hours", "later_wet_hours", "later_hours", "die_wet_hours"}},
	"night_spores":       {judge: nightSpores, needs: []string{"rh_pct", "from_hour", "to_hour", "low_c", "high_c", "rain_from_hour"}, may: []string{"day_max_c", "day_mean_c", "hours_over_27", "hours_over_28", "hours_over_29", "hours_over_30"}},
	"botcast":            {judge: botcast, table: true, needs: []string{"rh_above_pct", "hot_c", "hot_hours", "hot_days", "least_wet_hours", "sure_wet_hours", "dry_rh_pct", "dry_hours", "dry_rain_mm", "action", "second"}},
	"mildew_index":       {judge: mildewIndex, needs: []string{"low_c", "high_c", "hours", "start_days", "up", "down", "hot_c", "most", "action"}},
	"wet_logistic":       {judge: wetLogistic, needs: []string{"constant", "per_h", "per_h_c", "per_h_c3", "action"}},
	"morning_wet":        {judge: morningWet, needs: []string{"from_hour", "action_hours"}, may: []string{"early_hours", "early_c", "later_hours", "later_c"}},
	"wet_spell":          {judge: wetSpell, needs: []string{"action_hours", "low_c", "high_c", "gap_hours"}},
	"degree_days":        {judge: degreeDays, byEvents: true},
}

// newYear tells whether a running sum begins anew on day i: at the start asked
// for, else with the record and each growing year.
func (a *asked) newYear(i int) bool {
	d := a.w.Days[i].Date
	if a.since != cal.None {
		return d == a.since || i > 0 && d > a.since && a.w.Days[i-1].Date < a.since
	}
	return i == 0 || YearStart(d, a.south) != YearStart(a.w.Days[i-1].Date, a.south)
}

// before tells whether a day lies before the start asked for.
func (a *asked) before(d cal.Date) bool { return a.since != cal.None && d < a.since }
