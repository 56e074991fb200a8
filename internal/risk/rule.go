package risk

import (
	"math"
	"sort"

	"garner/internal/cal"
)

// Rule is a published rule with all its numbers. It never changes once loaded.
type Rule struct {
	ID         string
	Problem    string // what it is about, a disease or pest; several rules may be about one
	Form       string
	Cause      string   // the fungus or insect by its botanical or zoological name
	Crops      []string // ids in the crop book
	Hourly     bool     // looks at hours; rules over days alone are weaker
	Source     string
	URL        string
	Mark       string
	Confidence string // high, medium or low: our own judgement of the figures
	Numbers    []Number
	Events     []Event   // of rules that sum warmth
	Measures   []Measure // what growers do about it, cultural measures first
	Begins     Begin     // when its sums begin beside the day told
	TenderD    int       // days from sowing in which a crop is open to a pest; 0: always

	values map[string]float64
	table  severityTable
	cells  []cell
}

// Begin is what a rule's sums begin with.
type Begin string

// What sums begin with. Those of the year begin with it and need nothing told.
const (
	WithYear Begin = ""         // the growing year, or the day of the year that its source names
	Standing Begin = "standing" // a crop that stands: emerged or planted
	Sighting Begin = "sighting" // the first spots or the first flight that was seen
)

// Number is one number of a rule.
type Number struct {
	Name   string
	Value  float64
	Unit   string
	Mark   string
	Source string // "": the rule's own
}

// Measure is what growers do about it; its text is risk.do_ and its id.
type Measure struct {
	ID     string
	Kind   string // cultural, watch or chemical
	Source string
	Mark   string
}

// Pest tells whether the rule sums warmth toward what an insect does.
func (r *Rule) Pest() bool { return forms[r.Form].byEvents }

// Value is a number of the rule by its name.
func (r *Rule) Value(name string) (v float64, ok bool) {
	v, ok = r.values[name]
	return v, ok
}

// n is a number of the rule; the loader made sure that it is there.
func (r *Rule) n(name string) float64 { return r.values[name] }

// or is a number of the rule, or another where it has none.
func (r *Rule) or(name string, other float64) float64 {
	if v, ok := r.values[name]; ok {
		return v
	}
	return other
}

// Options are what else may be told.
type Options struct {
	Wet   Wetness  // how wet leaves are told; "": by humidity
	Since cal.Date // sums begin here (emergence, the first sighting); cal.None: with the record and each growing year
	Seen  cal.Date // insects were seen flying: later flights are counted on from it; 0 or cal.None: not told
	South bool     // the site lies south of the equator: its growing year begins in July
}

// Needs tells whether a rule says nothing without a day to begin at.
func (r *Rule) Needs() bool {
	for i := range r.Events {
		if r.Events[i].Start == (cal.MonthDay{}) {
			return true
		}
	}
	return false
}

// Humid tells whether the rule looks at humidity or at wet leaves.
func (r *Rule) Humid() bool { return r.Hourly && r.Form != "mildew_index" }

// Lacks returns the columns that the rule cannot do without and that a record has
// nowhere: humidity, rain of rules that add it up, wind for leaves told by the tree.
func (r *Rule) Lacks(w *Weather, wet Wetness) (columns []string) {
	var humid, rain, wind bool
	for i := range w.Hours {
		h := &w.Hours[i]
		humid = humid || !math.IsNaN(h.HumidityPct)
		rain = rain || !math.IsNaN(h.RainMM)
		wind = wind || !math.IsNaN(h.WindMS)
	}
	if r.Humid() && !humid {
		columns = append(columns, "rh_pct")
	}
	if _, adds := r.values["rain_days"]; adds && !rain {
		columns = append(columns, "rain_mm")
	}
	if r.Humid() && wet == ByTree && !wind {
		columns = append(columns, "wind_ms")
	}
	return columns
}

// Readings runs the rule over a record: a reading for each day that counts, in
// order of date.
func (r *Rule) Readings(w *Weather, o Options) []Reading {
	a := &asked{Rule: r, w: w, since: o.Since, seen: o.Seen, south: o.South, wet: wetHours(w.Hours, o.Wet)}
	if a.seen == 0 {
		a.seen = cal.None
	}
	out := forms[r.Form].judge(a)
	sort.SliceStable(out, func(i, j int) bool { return out[i].Date < out[j].Date })
	return out
}

// Fired runs the rule over a record and returns the readings that fired.
func (r *Rule) Fired(w *Weather, o Options) (out []Reading) {
	for _, x := range r.Readings(w, o) {
		if x.Fired {
			out = append(out, x)
		}
	}
	return out
}

// HumidPct is the humidity from which the rule takes an hour for humid or leaves for
// wet [%]; false of rules that do not look at it.
func (r *Rule) HumidPct() (pct float64, looks bool) {
	if !r.Humid() {
		return 0, false
	}
	if v, ok := r.values["rh_pct"]; ok {
		return v, true
	}
	return r.or("rh_above_pct", humidPct), true
}
