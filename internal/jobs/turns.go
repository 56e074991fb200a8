package jobs

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/record"
)

// answers are what growers said, by the job's id and by its series.
type answers struct{ byID, bySeries map[string]*turns }

// turns are what is known of the turns of a job that comes again.
type turns struct {
	last     int      // the latest turn that was done or skipped; 0: none
	lastOn   cal.Date // when
	doneOn   cal.Date // when it was last done, not skipped; None: never
	skips    int      // how often it was skipped since it was last done
	finished bool     // of a job that comes once: done or skipped; of any: dropped
	dropped  bool
	kept     bool // asked since, and it is to stay
	done     map[int]bool
	putOff   map[int]cal.Date
}

func newTurns() *turns {
	return &turns{lastOn: cal.None, doneOn: cal.None, done: map[int]bool{}, putOff: map[int]cal.Date{}}
}

// answersOf sorts answers out, in order of time.
func answersOf(all []record.Answer) answers {
	a := answers{map[string]*turns{}, map[string]*turns{}}
	all = slices.Clone(all)
	slices.SortStableFunc(all, func(x, y record.Answer) int { return cmp.Compare(x.Date, y.Date) })
	for i := range all {
		take(a.byID, all[i].Job, 0, &all[i])
		series, turn, ok := cutTurn(all[i].Job)
		if !ok {
			continue
		}
		take(a.bySeries, series, turn, &all[i])
		if whole, year, ok := cutTurn(series); ok && all[i].Did == record.Dropped {
			take(a.bySeries, whole, year, &all[i]) // of every year
		}
	}
	return a
}

// cutTurn parts an id into series and turn.
func cutTurn(id string) (series string, turn int, ok bool) {
	at := strings.LastIndexByte(id, ':')
	if at < 0 {
		return "", 0, false
	}
	turn, err := strconv.Atoi(id[at+1:])
	return id[:at], turn, err == nil && turn > 0
}

func take(to map[string]*turns, key string, turn int, a *record.Answer) {
	t := to[key]
	if t == nil {
		t = newTurns()
		to[key] = t
	}
	switch a.Did {
	case record.Done:
		t.skips, t.kept, t.doneOn = 0, false, a.Date
	case record.Skipped:
		t.skips++
	case record.PutOff:
		t.putOff[turn] = a.Until
		return
	case record.Dropped:
		t.dropped, t.finished = true, true
		return
	case record.Kept:
		t.kept = true
		return
	}
	t.finished, t.done[turn] = true, true
	if turn >= t.last {
		t.last, t.lastOn = turn, a.Date
	}
}

// of is what was said of a job that comes once.
func (a answers) of(id string) *turns {
	if t := a.byID[id]; t != nil {
		return t
	}
	return newTurns()
}

// series is what was said of a job that comes again.
func (a answers) series(series string) *turns {
	if t := a.bySeries[series]; t != nil {
		return t
	}
	return newTurns()
}

// asks tells whether it is the time to ask whether to drop a job: once, when it was
// skipped twice on end.
func (t *turns) asks() bool { return t.skips == 2 && !t.kept }

// again is how a job comes again.
type again struct {
	from  cal.Date // first turn
	every int      // days, > 0
	until cal.Date // last day
	done  int      // turns that records tell of beside answers
	since cal.Date // the last of them; None: none
}

// repeat takes in the turns of a job that are due. A turn that was done or skipped
// moves the next; one that went by unanswered is passed over. Fill may refuse a turn.
func (d *deriver) repeat(j Job, a again, fill func(*Job, cal.Date) bool) {
	t := d.answers.series(j.Series)
	if t.dropped {
		return
	}
	turn, on, every := 1, a.from, cal.Date(a.every)
	last, lastOn := t.last, t.lastOn
	if a.since.IsSet() && (!lastOn.IsSet() || a.since > lastOn) {
		last, lastOn = max(last, a.done), a.since
	}
	if lastOn.IsSet() {
		turn, on = last+1, max(on, lastOn+every)
	}
	for ; d.passed(j.Kind, on, every) && !pending(t, turn, d.Today) && on+every <= a.until; on += every {
		turn++
	}
	ask := t.asks()
	for ; on <= a.until && on < d.Until; on += every {
		next := d.day(j, on)
		next.Turn, next.ID, next.again = turn, j.Series+":"+strconv.Itoa(turn), true
		if to, put := t.putOff[turn]; put {
			next.PutOff = to
			on = max(on, to)
		}
		turn++
		if fill != nil && !fill(&next, on) {
			continue
		}
		next.Ask, ask = ask, false
		d.emit(next)
	}
}

// passed tells whether a turn is passed over: its last day is behind, or the next turn
// is nearer than it.
func (d *deriver) passed(kind Kind, on, every cal.Date) bool {
	late := d.Today - on
	return late > d.kinds[kind].after || late > 0 && 2*late >= every
}

// pending tells whether a turn was put off to a day that is not over.
func pending(t *turns, turn int, today cal.Date) bool {
	to, put := t.putOff[turn]
	return put && to >= today
}

// yearly takes in a job that comes once in a season of every year, its days being
// those of the north. Fill may refuse a year.
func (d *deriver) yearly(j Job, from, to int, south bool, fill func(*Job) bool) {
	t := d.answers.series(j.Series)
	if t.dropped {
		return
	}
	ask := t.asks()
	for year := d.Today.Year() - 1; year <= d.Until.Year(); year++ {
		next := j
		next.First, next.Last = seasonIn(year, from, to, south)
		next.Best = next.First + (next.Last-next.First)/2
		next.Season = true
		next.Turn, next.ID = year, j.Series+":"+strconv.Itoa(year)
		if put, ok := t.putOff[year]; ok {
			next.PutOff = put
		}
		if t.done[year] || fill != nil && !fill(&next) {
			continue
		}
		if next.Last >= d.Today {
			next.Ask, ask = ask, false
		}
		d.emit(next)
	}
}

// halfYear turns days of the north into those of the south.
const halfYear = 182

// seasonIn is the season that begins in a year.
func seasonIn(year, from, to int, south bool) (first, last cal.Date) {
	if south {
		from, to = (from+halfYear-1)%365+1, (to+halfYear-1)%365+1
	}
	first, last = cal.MonthDayOf(from).In(year), cal.MonthDayOf(to).In(year)
	if last < first {
		last = cal.MonthDayOf(to).In(year + 1)
	}
	return first, last
}

// inSeason tells whether a day lies in a season; without one every day does.
func inSeason(day cal.Date, from, to int, south bool) bool {
	if from == 0 {
		return true
	}
	for year := day.Year() - 1; year <= day.Year(); year++ {
		if first, last := seasonIn(year, from, to, south); first <= day && day <= last {
			return true
		}
	}
	return false
}

// split parts a list written with semicolons.
func split(text string) []string {
	var out []string
	for _, part := range strings.Split(text, ";") {
		if part = strings.TrimSpace(part); part != "" {
			out = append(out, part)
		}
	}
	return out
}
