package desk

import (
	"garner/internal/advise"
	"garner/internal/holding"
)

// AdviseOptions say what is asked of a holding that is in no office.
type AdviseOptions struct {
	AdviseQuery                       // the bed by its id or name
	Planting    string                // for leaving or clearing
	Refill      bool                  // from what is on hand or can still be sown
	Years       int                   // futures; 0: as the outlook
	Seed        uint64                // of the random streams
	Progress    func(done, total int) // may be nil
}

// Advise ranks what could be put into ground of a holding's bed.
func Advise(h *holding.Holding, o AdviseOptions) (*AdviseView, error) {
	bed, err := namedBed(h, o.Bed)
	if err != nil {
		return nil, err
	}
	o.Bed = bed
	a, adviser, err := adviserFor(h, o)
	if err != nil {
		return nil, err
	}
	rank := (*advise.Adviser).Rank
	if o.Refill {
		rank = (*advise.Adviser).Refill
	}
	return adviseView(a, adviser, o.AdviseQuery, rank)
}

// KeepOrClear sets leaving a standing planting of a holding against clearing it.
func KeepOrClear(h *holding.Holding, o AdviseOptions) (*KeepOrClearView, error) {
	a, adviser, err := adviserFor(h, o)
	if err != nil {
		return nil, err
	}
	return keepView(a, adviser, o.Planting)
}

func adviserFor(h *holding.Holding, o AdviseOptions) (*asked, *advise.Adviser, error) {
	s, err := settingOf(h, OutlookOptions{Seed: o.Seed, Years: o.Years, Progress: o.Progress})
	if err != nil {
		return nil, nil, err
	}
	if told(o.From) && o.From >= s.From {
		s.Weeks = max(s.Weeks, int(o.From-s.From)/7+weeksAfterFree)
		s.Weeks = min(s.Weeks, mostFreeWeeks+weeksAfterFree)
	}
	adviser, err := advise.New(s, memory())
	return &asked{holding: h, setting: s}, adviser, err
}
