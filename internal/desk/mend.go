package desk

import (
	"strings"

	"garner/internal/advise"
	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/mend"
	"garner/internal/words"
)

// MendOptions say what is asked of a holding that is in no office.
type MendOptions struct {
	Crop     string                // a vegetable of the table, or a crop by any of its names
	On       cal.Date              // a day of the gap; None: the gap in which most lacks
	Years    int                   // futures; 0: as the outlook
	Seed     uint64                // of the random streams
	Progress func(done, total int) // may be nil
}

// Mend looks for what would mend a gap of a holding's table.
func Mend(h *holding.Holding, o MendOptions) (*MendView, error) {
	a, m, vegetable, err := menderFor(h, &o)
	if err != nil {
		return nil, err
	}
	return mendView(a, m, vegetable, o.On)
}

// Trim looks for the sowings of a vegetable that could be smaller.
func Trim(h *holding.Holding, o MendOptions) (*TrimView, error) {
	a, m, vegetable, err := menderFor(h, &o)
	if err != nil {
		return nil, err
	}
	return trimView(a, m, vegetable)
}

func menderFor(h *holding.Holding, o *MendOptions) (a *asked, m *mend.Mender, vegetable string, err error) {
	s, err := settingOf(h, OutlookOptions{Seed: o.Seed, Years: o.Years, Progress: o.Progress})
	if err != nil {
		return nil, nil, "", err
	}
	if vegetable, err = namedVegetable(h, s.Book, o.Crop); err != nil {
		return nil, nil, "", err
	}
	adviser, err := advise.New(s, memory())
	if err != nil {
		return nil, nil, "", err
	}
	return &asked{holding: h, setting: s}, mend.New(adviser, h, s.Book), vegetable, nil
}

// namedVegetable finds a row of the table: a vegetable by the name under which it is
// wanted, a group by its own, or a vegetable by that of a crop that is counted as it.
func namedVegetable(h *holding.Holding, b *crop.Book, name string) (string, error) {
	for i := range h.Wants {
		if v := h.Wants[i].Vegetable; strings.EqualFold(v, name) {
			return v, nil
		}
	}
	for i := range h.Groups {
		if strings.EqualFold(h.Groups[i].Name, name) {
			return h.Groups[i].Name, nil
		}
	}
	c, u, err := b.Find(name)
	if err != nil {
		return "", err
	}
	if u != nil {
		return u.Vegetable, nil
	}
	return c.Vegetable, nil
}

// notAtTable is told of a vegetable of which nothing is wanted or grown.
func notAtTable(b *crop.Book, vegetable string) *fault.Error {
	return fault.New(fault.NotFound, "desk.mend_not_at_table", words.Args{"vegetable": vegetablePlural(b, vegetable)})
}
