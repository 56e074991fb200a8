package outlook

import (
	"sort"

	"garner/internal/cal"
	"garner/internal/larder"
)

// ThinTime is a run of weeks in which the plate is thin: the home-grown share of
// all that is wanted is low, mean over the futures.
type ThinTime struct {
	First, Last cal.Date // first and last day
	Weeks       int
	Share       float64  // of the want over the run that is home-grown, 0-1
	ShortKg     float64  // all that is not [kg]
	On          []string // of what half the want or more is eaten, the heaviest first
	Lacks       []string // of what less is, the heaviest lack first
}

// thinPlate is the home-grown share under which a week's plate is thin.
const thinPlate = 0.6 // judgement

// aheadWeeks is how far the plate is looked at: a year and what is left of the
// season it ends in.
const aheadWeeks = 60

// ThinTimes finds the runs of weeks in the year ahead in which the plate is thin,
// whatever lacks of what would only be nice to have;
// the one in which most lacks comes first.
func (s *Summary) ThinTimes(from cal.Date) []ThinTime {
	var out []ThinTime
	plate := s.plate()
	end := min(aheadWeeks, len(plate))
	for k := 0; k < end; k++ {
		if plate[k] >= thinPlate {
			continue
		}
		first := k
		for ; k < end && plate[k] < thinPlate; k++ {
		}
		out = append(out, s.thinTime(from, first, k))
	}
	sort.SliceStable(out, func(i, k int) bool { return out[i].ShortKg > out[k].ShortKg })
	return out
}

// plate is the home-grown share of what is wanted by week, without what would be
// nice to have.
func (s *Summary) plate() []float64 {
	out := make([]float64, len(s.Share))
	for k := range out {
		got, want := 0.0, 0.0
		for i := range s.Vegetables {
			if w := &s.Vegetables[i]; w.Importance != larder.Nice {
				got, want = got+w.Fresh[k]+w.Stored[k], want+w.Want[k]
			}
		}
		out[k] = share(got, want)
	}
	return out
}

// thinTime sums the weeks from first up to end up.
func (s *Summary) thinTime(from cal.Date, first, end int) ThinTime {
	t := ThinTime{First: from + cal.Date(7*first), Last: from + cal.Date(7*end) - 1, Weeks: end - first}
	on, lacks := map[string]float64{}, map[string]float64{}
	got, want := 0.0, 0.0
	for i := range s.Vegetables {
		w := &s.Vegetables[i]
		if w.Importance == larder.Nice {
			continue
		}
		eaten, wanted := 0.0, 0.0
		for k := first; k < end; k++ {
			eaten += w.Fresh[k] + w.Stored[k]
			wanted += w.Want[k]
		}
		got, want = got+eaten, want+wanted
		if wanted <= 0 {
			continue
		}
		if eaten >= wanted/2 {
			on[w.Name] = eaten
			continue
		}
		lacks[w.Name] = wanted - eaten
	}
	t.Share, t.ShortKg = share(got, want), want-got
	t.On, t.Lacks = heaviest(on), heaviest(lacks)
	return t
}

// heaviest are the names of weights, the heaviest first.
func heaviest(kg map[string]float64) []string {
	names := make([]string, 0, len(kg))
	for name := range kg {
		names = append(names, name)
	}
	sort.Slice(names, func(i, k int) bool {
		if kg[names[i]] != kg[names[k]] {
			return kg[names[i]] > kg[names[k]]
		}
		return names[i] < names[k]
	})
	return names
}
