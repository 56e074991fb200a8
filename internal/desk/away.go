package desk

import (
	"cmp"
	"math"
	"slices"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/holding"
	"garner/internal/jobs"
	"garner/internal/words"
)

// AwayRest is what a time away asks beside water.
type AwayRest struct {
	Round AwayRound  `json:"round"` // of somebody who waters meanwhile
	Picks []AwayPick `json:"picks"` // what would spoil or coarsen: picked hard before, and meanwhile by somebody else
	Waits []AwayPick `json:"waits"` // what can be picked and waits until you are back
	Due   []AwayJob  `json:"due"`   // sowings and other dated work that falls in the time
	Doors []AwayDoor `json:"doors"` // of covers that warm up in the sun

	Look []words.Phrase `json:"-"` // first on the day of coming back
}

// AwayPick is a planting that is picked in the time away.
type AwayPick struct {
	Planting string     `json:"planting"`
	Bed      string     `json:"bed"`
	Name     string     `json:"name"`
	Kg       float64    `json:"kg"`        // that comes ready meanwhile
	SpoilsKg float64    `json:"spoils_kg"` // of it, were nobody to pick
	EveryD   int        `json:"every_d"`
	Days     []cal.Date `json:"days"` // on which it is picked meanwhile
}

// AwayJob is dated work that falls in the time away.
type AwayJob struct {
	jobs.Job `json:"-"`
	ID       string       `json:"job"`
	Kind     string       `json:"kind"`
	Planting string       `json:"planting"`
	On       cal.Date     `json:"on"`
	First    cal.Date     `json:"first"`
	Last     cal.Date     `json:"last"`
	Move     string       `json:"move"` // before, after, helper
	Place    words.Phrase `json:"-"`
	Says     words.Phrase `json:"-"` // what to do with it
}

// The ways out for work that falls in a time away.
const (
	MoveBefore = "before" // it can be done before leaving
	MoveAfter  = "after"  // it waits until you are back
	MoveHelper = "helper" // neither: somebody else does it, or it is left out
)

// awayKinds are the kinds of dated work that a time away is told of.
var awayKinds = []jobs.Kind{jobs.SowIndoors, jobs.Sow, jobs.Set, jobs.PlantOut, jobs.Replant, jobs.SowGreen, "prick-out", "pot-on", "harden-off",
	jobs.Cover, jobs.Net, jobs.Uncover, jobs.Lift, jobs.CutGreen}

// awayLooksBackDays is how long after coming back work is still looked at [d].
const awayLooksBackDays = 7

// Away works out what a time away asks of a holding: water, and all else. o.Leave and
// o.Back are set.
func Away(h *holding.Holding, o WateringOptions) (*WateringResult, error) {
	r, err := Watering(h, o)
	if err != nil {
		return nil, err
	}
	h, _ = withWeather(h)
	s, err := settingOf(h, OutlookOptions{Seed: o.Seed})
	if err != nil {
		return nil, err
	}
	w, err := newWeekWork(h, s, JobsOptions{}, r.Away.Back+awayLooksBackDays)
	if err != nil {
		return nil, err
	}
	if r.Away.AwayRest, err = awayRest(w, r, 0); err != nil {
		return nil, err
	}
	told := r.withRound(&r.Away.Round)
	return &told, nil
}

// awayRest gathers what a time away asks beside water, by the jobs that the week tells.
// every is how often somebody comes [d]; 0: as seldom as will do.
func awayRest(w *weekWork, r *WateringResult, every int) (AwayRest, error) {
	all, err := w.derive(r.Away.Back + awayLooksBackDays)
	if err != nil {
		return AwayRest{}, err
	}
	n := &jobNamer{namer: newNamer(w.asked)}
	rest := AwayRest{Round: roundOf(r, every), Picks: []AwayPick{}, Waits: []AwayPick{}, Due: []AwayJob{}, Doors: doorsOf(w.holding, r.Away.Leave, r.Away.Back)}
	rest.pickings(all, n, r.Away)
	for i := range all {
		rest.due(&all[i], n, r)
	}
	rest.follow()
	slices.SortStableFunc(rest.Due, func(a, b AwayJob) int { return cmp.Compare(a.On, b.On) })
	rest.look(r)
	return rest, nil
}

// pickings gathers what comes ready while away, by planting along the route.
func (w *AwayRest) pickings(all []jobs.Job, n *jobNamer, away *AwayThirst) {
	at := map[string]int{}
	var found []AwayPick
	for i := range all {
		j := &all[i]
		if j.Kind != jobs.Pick || j.Best < away.Leave || j.Best >= away.Back {
			continue
		}
		k, ok := at[j.Planting]
		if !ok {
			k = len(found)
			at[j.Planting] = k
			found = append(found, AwayPick{Planting: j.Planting, Bed: j.Stop.Bed, Name: n.planting(j.Planting), Days: []cal.Date{}})
		}
		p := &found[k]
		p.Kg += j.Amount.Kg
		p.SpoilsKg = math.Max(p.SpoilsKg, j.SpoilKg)
		if j.Best > away.Leave {
			p.Days = append(p.Days, j.Best)
		}
		if len(p.Days) > 1 {
			p.EveryD = int(p.Days[1] - p.Days[0])
		}
	}
	for _, p := range found {
		p.Kg = tenthOf(p.Kg)
		p.SpoilsKg = tenthOf(n.goesOver(&p, int(away.Back-away.Leave)))
		if p.SpoilsKg >= worthTelling {
			w.Picks = append(w.Picks, p)
		} else {
			p.SpoilsKg = 0
			w.Waits = append(w.Waits, p)
		}
	}
}

// goesOver is what is past its best when nobody has picked for so many days [kg]: all
// but the last days' that what ripens bit by bit holds. What does not ripen so stands.
func (n *jobNamer) goesOver(p *AwayPick, days int) float64 {
	planting := n.plantings[p.Planting]
	_, u, err := useOf(n.a.setting.Book, planting.Crop, planting.Use)
	if err != nil || p.SpoilsKg <= 0 && u.Pattern != crop.Picking || days <= 0 {
		return 0
	}
	return p.Kg * math.Max(0, 1-u.HoldDays/float64(days))
}

// due takes in dated work that falls between leaving and coming back.
func (w *AwayRest) due(j *jobs.Job, n *jobNamer, r *WateringResult) {
	if j.Best <= r.Away.Leave || j.Best >= r.Away.Back || !slices.Contains(awayKinds, j.Kind) {
		return
	}
	line := AwayJob{Job: *j, ID: j.ID, Kind: string(j.Kind), Planting: j.Planting, On: j.Best, First: j.First, Last: j.Last, Place: n.place(j.Stop)}
	args := words.Args{"best": j.Best, "first": max(j.First, r.Today), "last": j.Last}
	switch {
	case j.Last >= r.Away.Back:
		line.Move, line.Says = MoveAfter, words.P("desk.away_after", args)
	case j.First <= r.Away.Leave:
		line.Move, line.Says = MoveBefore, words.P("desk.away_before", args)
	default:
		line.Move, line.Says = MoveHelper, words.P("desk.away_neither", args)
	}
	w.Due = append(w.Due, line)
}

// follow has what is laid over a planting wait with the planting itself.
func (w *AwayRest) follow() {
	waits := map[string]AwayJob{}
	for _, d := range w.Due {
		if d.Move == MoveAfter && d.Planting != "" && d.Job.Kind != jobs.Net && d.Job.Kind != jobs.Cover {
			waits[d.Planting] = d
		}
	}
	for i := range w.Due {
		d := &w.Due[i]
		if with, ok := waits[d.Planting]; ok && (d.Job.Kind == jobs.Net || d.Job.Kind == jobs.Cover) {
			d.Move, d.Says = MoveAfter, words.P("desk.away_with", words.Args{"job": with.Title})
		}
	}
}

// mostLooks is how many things of a kind are named to look at first.
const mostLooks = 3

// look tells what to look at first on the day of coming back.
func (w *AwayRest) look(r *WateringResult) {
	var dry []BedThirst
	for _, b := range r.Beds {
		if b.FailsDry != nil {
			dry = append(dry, b)
		}
	}
	slices.SortStableFunc(dry, func(a, b BedThirst) int { return cmp.Compare(*a.FailsDry, *b.FailsDry) })
	var names []string
	for _, b := range dry[:min(mostLooks, len(dry))] {
		names = append(names, b.Name)
	}
	if len(names) > 0 {
		w.Look = append(w.Look, words.P("desk.away_look_water", words.Args{"beds": names}))
	}
	picks := slices.Clone(w.Picks)
	slices.SortStableFunc(picks, func(a, b AwayPick) int { return cmp.Compare(b.SpoilsKg, a.SpoilsKg) })
	names = nil
	for _, p := range picks[:min(mostLooks, len(picks))] {
		names = append(names, p.Name)
	}
	if len(names) > 0 {
		w.Look = append(w.Look, words.P("desk.away_look_pick", words.Args{"plantings": names}))
	}
	var waiting []words.Phrase
	for _, d := range w.Due {
		if d.Move == MoveAfter && len(waiting) < mostLooks {
			waiting = append(waiting, d.Title)
		}
	}
	if len(waiting) > 0 {
		w.Look = append(w.Look, words.P("desk.away_look_due", words.Args{"jobs": waiting}))
	}
	if len(w.Doors) > 0 {
		w.Look = append(w.Look, words.P("desk.away_look_doors", nil))
	}
	w.Look = append(w.Look, words.P("desk.away_look_rest", nil))
}
