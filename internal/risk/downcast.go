package risk

import (
	"math"

	"garner/internal/climate"
)

// downcast looks for nights in which the spores of downy mildew form and, after
// them, for leaves wet long enough to be infected. It fires on the day of the
// infection; its value is 2 then, and 1 in the morning after a night that spores
// formed in.
//
// Source: de Visser 1998. His count of the hours of the night is not printed in
// what was read; those of the Canadian form stand in for it.
func downcast(a *asked) (out []Reading) {
	value := make([]float64, len(a.w.Days))
	for i := range a.w.Days {
		if !a.sporesOvernight(i, 0, int(a.n("rain_to_hour"))) || a.hotDayBefore(i) {
			continue
		}
		value[i] = max(value[i], 1)
		if day := a.infected(i); day >= 0 {
			value[day] = infects
		}
	}
	for i := range a.w.Days {
		d := &a.w.Days[i]
		if !d.Humid && value[i] == 0 {
			continue
		}
		r := Reading{Date: d.Date, Value: value[i]}
		if value[i] == infects {
			r.Fired, r.Threshold = true, infects
		}
		out = append(out, r)
	}
	return out
}

// infects is the value of a day on which leaves are infected.
const infects = 2

// sporesOvernight tells whether spores form in the small hours of a day: every hour
// between two humid enough and neither too cold nor too warm, and none of the hours
// between two others with rain.
func (a *asked) sporesOvernight(day, rainFrom, rainTo int) bool {
	d := &a.w.Days[day]
	from, to := int(a.n("from_hour")), int(a.n("to_hour"))
	known, rain := 0, 0.0
	for _, h := range a.w.of(d) {
		if h.RainMM > 0 && h.Hour >= rainFrom && h.Hour < rainTo {
			rain += h.RainMM
		}
		if h.Hour < from || h.Hour >= to {
			continue
		}
		humid := h.HumidityPct >= a.or("rh_pct", math.Inf(1)) || h.HumidityPct > a.or("rh_above_pct", math.Inf(1))
		if !humid || !(h.TempC >= a.n("low_c") && h.TempC <= a.n("high_c")) {
			return false
		}
		known++
	}
	return known >= to-from && rain == 0
}

// hotDayBefore tells whether the day before had hours enough of heat.
func (a *asked) hotDayBefore(day int) bool {
	if !a.w.next(day) {
		return false
	}
	return hoursOver(a.w.of(&a.w.Days[day-1]), a.n("hot_c")) >= int(a.n("hot_hours"))
}

// hoursOver counts the hours above a temperature [C].
func hoursOver(hours []climate.Hour, c float64) (n int) {
	for i := range hours {
		if hours[i].TempC > c {
			n++
		}
	}
	return n
}

// infected returns the day on which the spores of a morning infect, -1 for none:
// at once where the leaves stay wet in that morning, later where they are wet for
// long enough within the hours that spores live. Leaves that are wet for less kill
// them.
func (a *asked) infected(day int) int {
	d := &a.w.Days[day]
	start, run := d.from, 0
	for start < d.to && a.w.Hours[start].Hour < int(a.n("to_hour")) {
		start++
	}
	begin := int(d.Date)*24 + int(a.n("to_hour"))
	noon := int(d.Date)*24 + int(a.n("morning_to_hour"))
	for j, on := start, day; j < len(a.w.Hours); j++ {
		at := a.w.Hours[j].At()
		if at-begin >= int(a.n("later_hours")) || j > start && !a.w.follows(j) {
			return -1
		}
		for a.w.Days[on].to <= j {
			on++
		}
		if a.wet[j] {
			run++
			if at < noon && run >= int(a.n("wet_hours")) || run >= int(a.n("later_wet_hours")) {
				return on
			}
			continue
		}
		if run >= int(a.n("die_wet_hours")) {
			return -1
		}
		run = 0
	}
	return -1
}
