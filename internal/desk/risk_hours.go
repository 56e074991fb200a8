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

// AddHours puts hours into a weather source, in place of those of the same time; those
// with a zone by the holding's clock. What is wrong or doubtful in some rows is told and
// nothing is kept, unless the good rows are to be; hours in another unit are never kept.
// It is one entry.
func (o *Office) AddHours(by Author, source, text string, keepGood bool) (*KeptEntry, error) {
	stood, err := o.Holding()
	if err != nil {
		return nil, err
	}
	options, err := optionsFor(stood, WeatherHow{})
	if err != nil {
		return nil, err
	}
	hours, report, err := station.ReadHourlyBy(strings.NewReader(text), hoursName, options.Clock)
	if err != nil {
		return nil, asList(err)
	}
	if len(report.Wrong) > 0 {
		return nil, report.Wrong
	}
	if faults := slices.Concat(report.Refused, report.Doubtful); len(faults) > 0 && !keepGood {
		return nil, faults
	}
	if keepGood {
		station.DropSpikes(hours)
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
