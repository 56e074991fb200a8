package desk

import (
	"slices"
	"strings"

	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/journal"
	"garner/internal/station"
	"garner/internal/words"
)

// hoursName is what the file is called in faults of what was typed or pasted.
const hoursName = "hours.csv"

// AddHours puts hours into a weather source, in place of those of the same time. What
// is wrong in some rows is told and nothing is kept, unless the good rows are to be.
// It is one entry.
func (o *Office) AddHours(by Author, source, text string, keepGood bool) (*KeptEntry, error) {
	hours, report, err := station.ReadHourly(strings.NewReader(text), hoursName)
	if err != nil {
		return nil, asList(err)
	}
	if len(report.Refused) > 0 && !keepGood {
		return nil, report.Refused
	}
	return o.writeWith(by, func() (journal.Entry, [][]byte, error) {
		h, err := o.Holding()
		if err != nil {
			return journal.Entry{}, nil, err
		}
		own := *h
		own.Weather = slices.Clone(h.Weather)
		at := slices.IndexFunc(own.Weather, func(w holding.WeatherSource) bool { return w.ID == source })
		if at < 0 {
			return journal.Entry{}, nil, fault.List{fault.New(fault.NotFound, "desk.hours_source", nil).In(fault.Place{Column: "source"})}
		}
		w := &own.Weather[at]
		apart := w.Own()
		apart.Hours = climate.LayHours(hours, apart.Hours)
		w.Apart, w.Hours = &apart, climate.LayHours(hours, w.Hours)
		stands, err := o.keeper.Would(nil)
		if err != nil {
			return journal.Entry{}, nil, err
		}
		changes, files, err := replacing(stands.Rows, &own)
		what := words.P("desk.edit_hours", words.Args{"n": len(hours), "name": own.Weather[at].Name})
		return journal.Entry{What: what, Changes: changes}, files, err
	})
}

// asList is an error as a list of faults, where it is of such.
func asList(err error) error {
	if e, ok := err.(*fault.Error); ok {
		return fault.List{e}
	}
	return err
}
