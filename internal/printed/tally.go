package printed

import "sort"

// Tally sums up rows of one kind.
type Tally struct {
	Name     string  `json:"name"`
	Dates    int     `json:"dates"`
	Missed   int     `json:"without_answer"`
	Median   int     `json:"median_days"` // of the distances; those without an answer count as far
	Mean     float64 `json:"mean_days"`   // of the answered
	Agree    float64 `json:"agree_share"` // share of all within 21 days (0-1)
	BiasDays float64 `json:"bias_days"`   // mean signed distance of the answered
}

// far stands for a date without an answer in the median.
const far = 183

// TallyOf sums up the counted rows that a condition lets through.
func TallyOf(name string, rows []Row, in func(*Row) bool) Tally {
	t := Tally{Name: name}
	var off []int
	agree := 0
	for i := range rows {
		r := &rows[i]
		switch {
		case !r.Counted || !in(r):
		case !r.Answer:
			t.Missed++
			off = append(off, far)
		default:
			off = append(off, abs(r.Off))
			t.Mean += float64(abs(r.Off))
			t.BiasDays += float64(r.Off)
			if r.Agrees() {
				agree++
			}
		}
	}
	if t.Dates = len(off); t.Dates == 0 {
		return t
	}
	sort.Ints(off)
	t.Median = off[len(off)/2]
	if n := float64(t.Dates - t.Missed); n > 0 {
		t.Mean /= n
		t.BiasDays /= n
	}
	t.Agree = float64(agree) / float64(t.Dates)
	return t
}

// Tallies are the sums of a scoreboard: all dates, then by the end of the window,
// by region and by group of crop.
type Tallies struct {
	All     Tally   `json:"all"`
	Ends    []Tally `json:"ends"`
	Regions []Tally `json:"regions"`
	Groups  []Tally `json:"groups"`
}

// TalliesOf sums up all rows.
func TalliesOf(rows []Row) Tallies {
	return Tallies{
		All:     TallyOf("", rows, func(*Row) bool { return true }),
		Ends:    talliesBy(rows, func(r *Row) string { return r.End }),
		Regions: talliesBy(rows, func(r *Row) string { return r.Date.Region }),
		Groups:  talliesBy(rows, func(r *Row) string { return r.Group }),
	}
}

func talliesBy(rows []Row, by func(*Row) string) []Tally {
	seen := map[string]bool{}
	var out []Tally
	for i := range rows {
		name := by(&rows[i])
		if name == "" || seen[name] {
			continue
		}
		seen[name] = true
		if t := TallyOf(name, rows, func(r *Row) bool { return by(r) == name }); t.Dates > 0 {
			out = append(out, t)
		}
	}
	sort.Slice(out, func(i, j int) bool { return out[i].Name < out[j].Name })
	return out
}
