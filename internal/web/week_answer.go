package web

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/record"
	"garner/internal/words"
)

// jobTyped is an answer that could not be taken: it is shown again with what was typed
// and what is wrong with it.
type jobTyped struct {
	job    string
	values map[string]string
	faults fault.List
}

// answerColumns are what is typed into the forms of a job.
var answerColumns = []string{"minutes", "note", "until", "date", "kg", "litres", "store"}

// forms makes the forms in which a job is answered.
func (w *weekWriter) forms(j *weekJob, l *desk.JobLine) error {
	entry, err := w.entry()
	if err != nil {
		return err
	}
	j.Hidden = append([]hiddenField{{"job", l.ID}, {"entry", entry}, {"stop", w.at}}, w.ask.Keep...)
	values := map[string]string{"until": max(w.view.Today+usualDays, l.Due(w.view.Today)+1).String(), "date": w.view.Today.String()}
	asked := w.query("job") == l.ID
	if asked {
		values["until"] = cmp.Or(w.query("until-"+j.Key), values["until"])
	}
	var faults fault.List
	if w.typed.job == l.ID {
		values, faults = w.typed.values, w.typed.faults
	}
	j.Done, err = w.otherwise(l)
	if err != nil {
		return err
	}
	j.Done = append(j.Done, []fieldBody{
		{Name: "minutes", Label: w.say("web.week_minutes", nil), Kind: kindNumber, Unit: w.say("web.week_minutes_unit", nil)},
		{Name: "note", Label: w.say("web.week_note", nil), Kind: kindText},
	}...)
	j.Off = []fieldBody{{Name: "until", Label: w.say("web.week_until", nil), Kind: kindDate, Must: true}}
	for _, fields := range [][]fieldBody{j.Done, j.Off} {
		for i := range fields {
			fill(&fields[i], j.Key, values, faults)
		}
	}
	for _, e := range faults {
		if !slices.Contains(answerColumns, e.At.Column) {
			j.Faults = append(j.Faults, e.Phrase)
		}
	}
	j.Wrong, j.Open = len(faults) > 0, len(faults) > 0 || asked
	if asked {
		return w.cost(j)
	}
	return nil
}

// fill gives a field its value, what is wrong with it and a name of its own.
func fill(f *fieldBody, key string, values map[string]string, faults fault.List) {
	f.Value = values[f.Name]
	for _, e := range faults {
		if e.At.Column == f.Name {
			f.Faults = append(f.Faults, e.Phrase)
		}
	}
	f.Name += "-" + key
}

// cost tells what it costs to put a job off to the day that was asked about.
func (w *weekWriter) cost(j *weekJob) error {
	off := &j.Off[0]
	until, err := cal.Parse(off.Value)
	if err != nil {
		off.Faults = append(off.Faults, words.P("web.tend_day_unreadable", words.Args{"given": off.Value}))
		return nil
	}
	c, err := w.office.PutOffCost(w.ask.options, j.ID, until)
	if err != nil || c == nil {
		return err
	}
	j.Cost = w.sentence(weighedOn(c, w.view.Today))
	return nil
}

// weighedOn tells the days of a cost as they were asked for: they are no forecast.
func weighedOn(c *desk.PutOffCost, today cal.Date) words.Phrase {
	args := words.Args{}
	for name, value := range c.Says.Args {
		if d, ok := value.(cal.Date); ok {
			value = plainSharp(d, today)
		}
		args[name] = value
	}
	return words.P(c.Says.Key, args)
}

// jobAnswered keeps what became of a job.
func jobAnswered(v *visit) error {
	key := jobKey(v.field("job"))
	typed := jobTyped{job: v.field("job"), values: map[string]string{}}
	for _, c := range answerColumns {
		typed.values[c] = strings.TrimSpace(v.field(c + "-" + key))
	}
	a := record.Answer{Job: typed.job, Did: record.Did(v.field("did")), Until: cal.None}
	var as desk.DoneAs
	if a.Did == record.Done {
		a.Note = typed.values["note"]
		typed.faults = append(typed.faults, minutesOf(&a, typed.values["minutes"])...)
		typed.faults = append(typed.faults, doneAs(&a, &as, typed.values)...)
	}
	if a.Did == record.PutOff {
		typed.faults = append(typed.faults, untilOf(&a, typed.values["until"])...)
	}
	ask := v.weekAsked(v.field)
	if len(typed.faults) > 0 {
		return v.showWeek(ask, typed)
	}
	kept, err := v.office.DoneJob(v.author(), a, as)
	if faults := listOf(err); faults != nil && (a.Did == record.Done || a.Did == record.PutOff) {
		typed.faults = faults
		return v.showWeek(ask, typed)
	}
	if err != nil {
		return err
	}
	path := ask.Path()
	if stop := v.field("stop"); stop != "" {
		path += "#" + pathEscaped(stop)
	}
	v.kept(kept, path)
	return nil
}

// minutesOf reads the minutes a job took; blank is not told.
func minutesOf(a *record.Answer, text string) fault.List {
	if text == "" {
		return nil
	}
	n, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
	if err != nil || !(n > 0 && n <= mostNumber) {
		return fault.List{fault.New(fault.Invalid, "web.week_minutes_wrong", words.Args{"given": text}).In(fault.Place{Column: "minutes"})}
	}
	a.Minutes = n
	return nil
}

// untilOf reads the day a job is put off to; a blank one is for the desk to refuse.
func untilOf(a *record.Answer, text string) fault.List {
	if text == "" {
		return nil
	}
	day, err := cal.Parse(text)
	if err != nil {
		return fault.List{fault.New(fault.Invalid, "web.tend_day_unreadable", words.Args{"given": text}).In(fault.Place{Column: "until"})}
	}
	a.Until = day
	return nil
}
