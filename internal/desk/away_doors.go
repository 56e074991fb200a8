package desk

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/holding"
)

// AwayDoor is what to do with the doors, lights or sides of a cover while away.
type AwayDoor struct {
	Covers []string   `json:"covers"` // ids
	Kind   cover.Kind `json:"kind"`
	Site   string     `json:"site"`
	Beds   []string   `json:"beds"` // names of the beds under it
	Do     string     `json:"do"`   // open, ajar, shut
}

// What to do with doors.
const (
	DoorsOpen = "open" // day and night
	DoorsAjar = "ajar" // a hand's breadth; opened and closed where somebody comes each day
	DoorsShut = "shut"
)

// Mean daily extremes of the air in the open in the time away by which doors are left
// open or shut [C]. Common practice, no source: doors are opened towards 25 C inside and
// stay open once nights are above some 12 C there; on a mean day of the months a closed
// tunnel is some 8 C warmer than the open by day and 2 C by night. judgement.
const (
	doorsOpenMaxC = 17
	doorsOpenMinC = 9
	doorsShutMaxC = 8
)

// ventedKinds are covers that warm up in the sun and are opened by hand.
var ventedKinds = []cover.Kind{cover.Tunnel, cover.TunnelTwo, cover.Glasshouse, cover.ColdFrame, cover.LowTunnel, cover.TunnelInner, cover.Cloche}

// doorsOf tells what to do with the doors of covers that stand in the time away.
func doorsOf(h *holding.Holding, leave, back cal.Date) []AwayDoor {
	out := []AwayDoor{}
	for i := range h.Covers {
		c := &h.Covers[i]
		if !slices.Contains(ventedKinds, c.Kind) || c.On >= back || c.Off.IsSet() && c.Off <= leave {
			continue
		}
		for k := range h.Beds {
			if h.Beds[k].ID != c.Bed {
				continue
			}
			do, known := doorsDo(h, h.Beds[k].Site, leave, back)
			if !known {
				continue
			}
			at := slices.IndexFunc(out, func(d AwayDoor) bool { return d.Kind == c.Kind && d.Site == h.Beds[k].Site })
			if at < 0 {
				out = append(out, AwayDoor{Kind: c.Kind, Site: h.Beds[k].Site, Do: do})
				at = len(out) - 1
			}
			d := &out[at]
			d.Covers = append(d.Covers, c.ID)
			if !slices.Contains(d.Beds, h.Beds[k].Name) {
				d.Beds = append(d.Beds, h.Beds[k].Name)
			}
		}
	}
	return out
}

// doorsDo goes by the mean weather of a site in the months of the time away.
func doorsDo(h *holding.Holding, site string, leave, back cal.Date) (do string, known bool) {
	maxC, minC, days := 0.0, 0.0, 0
	for d := leave; d < back; d++ {
		high, low, ok := meanExtremes(h, site, d.Month())
		if !ok {
			return "", false
		}
		maxC, minC, days = maxC+high, minC+low, days+1
	}
	switch maxC, minC := maxC/float64(days), minC/float64(days); {
	case maxC >= doorsOpenMaxC && minC >= doorsOpenMinC:
		return DoorsOpen, true
	case maxC <= doorsShutMaxC:
		return DoorsShut, true
	}
	return DoorsAjar, true
}

// meanExtremes are the mean daily extremes of a month, from the normals or else the
// record [C].
func meanExtremes(h *holding.Holding, site string, month int) (maxC, minC float64, known bool) {
	for i := range h.Sites {
		for k := range h.Weather {
			w := &h.Weather[k]
			if h.Sites[i].ID != site || h.Sites[i].Weather != w.ID {
				continue
			}
			if w.Normals != nil {
				return w.Normals[month-1].TMaxC, w.Normals[month-1].TMinC, true
			}
			if w.Record == nil {
				continue
			}
			n := 0.0
			for _, d := range w.Record.Days {
				if d.Date.Month() == month && d.TMaxC.Known && d.TMinC.Known {
					maxC, minC, n = maxC+d.TMaxC.Value, minC+d.TMinC.Value, n+1
				}
			}
			if n > 0 {
				return maxC / n, minC / n, true
			}
		}
	}
	return 0, 0, false
}
