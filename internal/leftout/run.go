package leftout

import (
	"slices"

	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/printed"
	"garner/internal/words"
)

// Run makes the fits that are missing, the one to all dates first, and hands
// each to done as it is made, so that a run that was broken off goes on where it
// stopped. It returns them all.
func Run(dates *printed.PlantingDates, book *crop.Book, free []Free, have []Fold, workers int, done func(all []Fold) error) ([]Fold, error) {
	exam, err := printed.NewExam(dates, printed.CoarsePace)
	if err != nil {
		return nil, err
	}
	key := digest(dates, free)
	var out []Fold
	for _, id := range append([]string{""}, regionsOf(dates)...) {
		k := slices.IndexFunc(have, func(f Fold) bool { return f.LeftOut == id && f.Digest == key })
		if k >= 0 {
			out = append(out, have[k])
			continue
		}
		values := Fit(exam, book, free, func(d *printed.Date) bool { return d.Region != id }, workers)
		out = append(out, Fold{LeftOut: id, Digest: key, Values: values})
		if err := done(out); err != nil {
			return nil, err
		}
	}
	return out, nil
}

func regionsOf(dates *printed.PlantingDates) (ids []string) {
	for i := range dates.Regions {
		ids = append(ids, dates.Regions[i].ID)
	}
	return ids
}

// Blind computes the dates of every region with the numbers of the kept fit that
// never saw it. A region without such a fit is refused.
func Blind(dates *printed.PlantingDates, book *crop.Book, pace printed.Pace, workers int) ([]printed.Row, error) {
	free, err := FreeNumbers()
	if err != nil {
		return nil, err
	}
	folds, err := Folds(free)
	if err != nil {
		return nil, err
	}
	return blind(dates, book, free, folds, pace, workers)
}

func blind(dates *printed.PlantingDates, book *crop.Book, free []Free, folds []Fold, pace printed.Pace, workers int) ([]printed.Row, error) {
	exam, err := printed.NewExam(dates, pace)
	if err != nil {
		return nil, err
	}
	var out []printed.Row
	for _, id := range regionsOf(dates) {
		k := slices.IndexFunc(folds, func(f Fold) bool { return f.LeftOut == id })
		if k < 0 {
			return nil, fault.New(fault.NotFound, "leftout.missing", words.Args{"region": id})
		}
		unseen := book.WithDefaults(defaults(free, folds[k].Values))
		out = append(out, exam.Rows(unseen, workers, func(d *printed.Date) bool { return d.Region == id })...)
	}
	return out, nil
}
