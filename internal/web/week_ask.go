package web

import (
	"net/url"
	"slices"
	"strconv"
	"strings"

	"garner/internal/desk"
	"garner/internal/words"
)

// weekAsk is what the page was asked for, and the form in which it is asked.
type weekAsk struct {
	Fields []fieldBody
	Wrong  int
	Faults []words.Phrase // those of no field
	Costs  bool
	Open   bool // something else than the usual was asked
	Keep   []hiddenField

	options desk.JobsOptions
}

// What can be asked for: as at the prompt.
const (
	usualDays = 7
	mostDays  = 540 // as far as a table reaches
	mostHands = 9
)

// weekAsked reads what was asked: a value that cannot be is told beside its field, and
// the usual is shown in its place.
func (v *visit) weekAsked(given func(string) string) weekAsk {
	a := weekAsk{options: desk.JobsOptions{Days: usualDays, People: 1}, Costs: given("costs") != ""}
	a.options.Costs = a.Costs
	for _, f := range []fieldBody{v.daysField(), v.hoursField(), v.peopleField(), v.whoField()} {
		usual := f.Value
		if value := strings.TrimSpace(given(f.Name)); value != "" && value != usual {
			f.Value = value
			if wrong := a.take(f.Name, value); wrong.Key != "" {
				f.Faults = append(f.Faults, wrong)
				a.Wrong++
			} else {
				a.Keep = append(a.Keep, hiddenField{f.Name, value})
			}
		}
		f.Options = withChosen(f.Options, f.Value)
		a.Fields = append(a.Fields, f)
	}
	if a.Costs {
		a.Keep = append(a.Keep, hiddenField{"costs", "yes"})
	}
	a.Open = len(a.Keep) > 0 || a.Wrong > 0
	return a
}

// take reads one value; the phrase says what is wrong with it.
func (a *weekAsk) take(name, value string) words.Phrase {
	args := words.Args{"given": value, "most": 0}
	switch name {
	case "days":
		n, err := strconv.Atoi(value)
		if args["most"] = mostDays; err != nil || n < 1 || n > mostDays {
			return words.P("web.week_days_wrong", args)
		}
		a.options.Days = n
	case "hours":
		h, err := strconv.ParseFloat(strings.Replace(value, ",", ".", 1), 64)
		if err != nil || !(h > 0 && h <= mostHours) {
			return words.P("web.week_hours_wrong", args)
		}
		a.options.Hours = h
	case "people":
		n, err := strconv.Atoi(value)
		if args["most"] = mostHands; err != nil || n < 1 || n > mostHands {
			return words.P("web.week_people_wrong", args)
		}
		a.options.People = n
	case "who":
		if !slices.Contains([]string{"child", "newcomer"}, value) {
			return words.P("web.week_who_wrong", args)
		}
		a.options.Who = value
	}
	return words.Phrase{}
}

func (v *visit) daysField() fieldBody {
	f := fieldBody{Name: "days", Label: v.say("web.week_days", nil), Kind: kindChoice, Value: number(usualDays), Must: true}
	for _, n := range []int64{usualDays, 14, 28, 70} {
		f.Options = append(f.Options, option{number(n), v.say("web.week_days_of", words.Args{"n": int(n)})})
	}
	return f
}

func (v *visit) hoursField() fieldBody {
	return fieldBody{Name: "hours", Label: v.say("web.week_hours", nil), Hint: v.say("web.week_hours_hint", nil), Kind: kindNumber, Unit: v.say("web.week_hours_unit", nil)}
}

func (v *visit) peopleField() fieldBody {
	f := fieldBody{Name: "people", Label: v.say("web.week_people", nil), Kind: kindChoice, Value: "1", Must: true}
	for n := range 4 {
		f.Options = append(f.Options, option{number(int64(n + 1)), v.say("web.week_people_of", words.Args{"n": n + 1})})
	}
	return f
}

func (v *visit) whoField() fieldBody {
	return fieldBody{Name: "who", Label: v.say("web.week_who", nil), Kind: kindChoice, Options: []option{
		{"", v.say("web.week_who_anyone", nil)}, {"newcomer", v.say("web.week_who_newcomer", nil)}, {"child", v.say("web.week_who_child", nil)}}}
}

// Path is the address of the page that was asked for.
func (a weekAsk) Path() string {
	q := url.Values{}
	for _, k := range a.Keep {
		q.Set(k.Name, k.Value)
	}
	if len(q) == 0 {
		return weekPath
	}
	return weekPath + "?" + q.Encode()
}
