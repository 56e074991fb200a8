package risk

import "slices"

// summed are the forms that fire by a running sum; others by what they see of a day.
var summed = []string{"severity_sum", "severity_window", "schedule", "botcast", "physiological_days", "mildew_index"}

// Nearness is how far a rule is toward firing after its last reading, and at how much
// it fires, in its own unit. fired is how often it fired since its sums began. A rule
// that is silent after it fired stands where it fired; one that sums warmth has
// several sums and tells none here.
func (r *Rule) Nearness(last Reading, fired int) (at, of float64) {
	if r.Pest() {
		return 0, 0
	}
	of = r.level(fired)
	at = last.Value
	if r.SumsUp() {
		at = last.Sum
	}
	if last.Fired {
		at = max(at, of)
	}
	return at, of
}

// Level is what has to be reached for it to fire for the first time, in its own unit.
func (r *Rule) Level() float64 { return r.level(0) }

// level is what has to be reached next.
func (r *Rule) level(fired int) float64 {
	if fired > 0 {
		for _, name := range []string{"again", "second"} {
			if v, ok := r.values[name]; ok && v > 0 {
				return v
			}
		}
	}
	for _, name := range []string{"first_severity", "action_hours", "action_days", "action"} {
		if v, ok := r.values[name]; ok {
			return v
		}
	}
	if r.Form == "downcast" {
		return infects
	}
	return 1 // a night that spores form in
}

// SumsUp tells whether it fires by a running sum.
func (r *Rule) SumsUp() bool { return slices.Contains(summed, r.Form) }
