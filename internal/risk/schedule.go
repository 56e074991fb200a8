package risk

// noMessage is the message of a week that asks for nothing; 0 warns, 1 asks for
// protection every seven days and 2 every five.
const noMessage = -1

// cell is one cell of the schedule: for so many favourable days and severity
// values of the week, both ends within.
type cell struct {
	rainFrom, rainTo, severityFrom, severityTo int
	message                                    int
}

// messageOf looks up a week.
func messageOf(cells []cell, rainDays, severity int) int {
	for _, c := range cells {
		if rainDays >= c.rainFrom && rainDays <= c.rainTo && severity >= c.severityFrom && severity <= c.severityTo {
			return c.message
		}
	}
	return noMessage
}

// weeklySchedule waits for the first forecast (so many severity values since the
// start, or so many favourable days one after the other) and from then looks once a
// week at the week behind. It fires when the message asks for protection every
// seven days (1) or five (2). Its value is the message, its sum the severity values.
//
// Source: Krause, Massie & Hyre 1975.
func weeklySchedule(a *asked) (out []Reading) {
	rain := a.rainFavourable()
	week := int(a.n("week_days"))
	sum, run, next := 0, 0, -1
	severity := make([]int, len(a.w.Days))
	for i := range a.w.Days {
		d := &a.w.Days[i]
		if a.newYear(i) {
			sum, run, next = 0, 0, -1
		}
		if run++; !rain[i] {
			run = 0
		}
		if !d.Humid || a.before(d.Date) {
			continue
		}
		severity[i] = a.severityOf(d)
		sum += severity[i]
		r := Reading{Date: d.Date, Value: noMessage, Sum: float64(sum)}
		if next < 0 && (sum >= int(a.n("first_severity")) || run >= int(a.n("first_days"))) {
			next = int(d.Date)
		}
		if next >= 0 && int(d.Date) >= next {
			next = int(d.Date) + week
			r.Value = float64(a.messageOfWeek(i, week, rain, severity))
			if r.Value >= a.n("action") {
				r.Fired, r.Threshold = true, a.n("action")
			}
		}
		out = append(out, r)
	}
	return out
}

// messageOfWeek is the message for the week that ends on day i.
func (a *asked) messageOfWeek(i, week int, rain []bool, severity []int) int {
	rainDays, values := 0, 0
	for j := i; j >= 0 && int(a.w.Days[i].Date-a.w.Days[j].Date) < week; j-- {
		values += severity[j]
		if rain[j] {
			rainDays++
		}
	}
	return messageOf(a.cells, rainDays, values)
}
