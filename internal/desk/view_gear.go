package desk

import (
	"cmp"
	"slices"

	"garner/internal/cal"
	"garner/internal/place"
	"garner/internal/protect"
	"garner/internal/words"
)

// GearView is the covers owned and what of them is out when.
type GearView struct {
	Today cal.Date
	Gear  []GearLine
	Short []words.Phrase // what the plan lays out and is not there
}

// GearLine is a stock of covers.
type GearLine struct {
	place.Gear
	Out  int // pieces out today
	Uses []GearUse
}

// GearUse is a time for which pieces of a stock are out.
type GearUse struct {
	Bed, BedName string
	On, Off      cal.Date // Off None: they stay out
	Pieces       int
}

// GearView returns the covers owned against what the plan lays out from today.
func (o *Office) GearView() (*GearView, error) {
	h, err := o.Holding()
	if err != nil {
		return nil, err
	}
	now, err := today(h)
	if err != nil {
		return nil, err
	}
	stock, err := protect.Count(h.Gear, h.Covers, h.Beds, now)
	if err != nil {
		return nil, err
	}
	name := map[string]string{}
	for _, b := range h.Beds {
		name[b.ID] = b.Name
	}
	v := &GearView{Today: now}
	for _, g := range h.Gear {
		line := GearLine{Gear: g}
		for _, u := range stock.Uses {
			if u.Gear != g.ID {
				continue
			}
			line.Uses = append(line.Uses, GearUse{u.Bed, name[u.Bed], u.On, u.Off, u.Pieces})
			if u.On <= now && (!u.Off.IsSet() || now < u.Off) {
				line.Out += u.Pieces
			}
		}
		slices.SortStableFunc(line.Uses, func(a, b GearUse) int { return cmp.Compare(a.On, b.On) })
		v.Gear = append(v.Gear, line)
	}
	for _, s := range stock.Short {
		v.Short = append(v.Short, s.Phrase)
	}
	return v, nil
}
