package web

import (
	"sort"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/words"
)

// plantingBody is what the page of one planting is given.
type plantingBody struct {
	ID, Title      string
	VegetableTitle string // its name at the table
	VegetablePath  string // "" of a green manure, which has no row of the table
	BedName        string
	BedPath        string
	When           string
	Why            []string
	Course         string // drawing
	Days           []courseRow
	Stages         []stageRow
	Yield          [3]float64
	AreaM2         float64
	Ends           []endRow
	Cautions       []string
	Facts          []numberRow
	Ages           *agesBody // of a perennial
	Seed           string    // for it; empty: not told
	BookPath       string    // of its crop
	Edit           string
	Beside         string // the page of what stands on the same ground; "" when nothing does
	Tried          []string
	Keep           *keepBody // of one that stands
	Misfits        []string  // what does not fit on its ground
	Pick           string    // the page on which a pick is told, while it is in the ground
	Wrong          []lossWay // what may have become of it, while it is in the ground
}

// stageRow is a stage with the days it is likely to begin.
type stageRow struct {
	Name                string
	Middle, Early, Late words.Phrase
	Spread              bool
}

// endRow is a way to end with the share of years that end so.
type endRow struct {
	Name  string
	Share float64
}

// courseRow is a month's middle of the course in figures.
type courseRow struct {
	desk.CourseDay
	StageName string
}

// plantingPage shows one planting's expected course and why it goes so.
func plantingPage(v *visit) error {
	tried, faults := readTried(v.r.URL.Query())
	if len(faults) > 0 {
		return faults
	}
	id := v.r.PathValue("id")
	view, err := v.office.PlantingView(id, tried)
	if err != nil {
		return err
	}
	g, err := v.grown(tried)
	if err != nil {
		return err
	}
	if g.today, err = v.office.Today(); err != nil {
		return err
	}
	b := v.plantingBody(view, g.today)
	b.Misfits = v.misfits([]string{id}, nil, tried)
	if view.Feeds {
		b.VegetablePath = withTried(vegetablePath(view.Vegetable), tried)
	}
	if g.sharesGround(id) {
		b.Beside = withTried(besidePath(id), tried)
	}
	if len(tried) == 0 {
		if b.Wrong, err = v.lossWays(id); err != nil {
			return err
		}
		if len(b.Wrong) > 0 && view.Feeds {
			b.Pick = plantingPath(id) + "/pick"
		}
	}
	if len(tried) > 0 {
		for _, c := range tried {
			b.Tried = append(b.Tried, v.sentence(g.changeWords(c, nil)))
		}
	}
	if b.Keep, err = v.keepOrClear(id, tried); err != nil {
		return err
	}
	return v.showPart(page{Name: "planting", Nav: "plantings", Body: b})
}

func (v *visit) plantingBody(view *desk.PlantingView, today cal.Date) *plantingBody {
	b := &plantingBody{ID: view.ID, Title: capital(view.Name), VegetableTitle: capital(view.Vegetable),
		When: v.whenWords(&view.PlantingLine, today) + ".", AreaM2: view.AreaM2, Yield: view.YieldKg,
		Cautions: view.Cautions, Edit: plantingPath(view.ID) + "/edit", BookPath: cropPath(view.Crop, view.Use), BedName: view.BedName, BedPath: bedPath(view.Bed)}
	for i := range view.Facts {
		b.Facts = append(b.Facts, v.plainNumber(&view.Facts[i]))
	}
	if view.AgeYield != nil {
		var heirs []desk.HeirView
		if view.Heir != nil {
			heirs = append(heirs, *view.Heir)
		}
		b.Ages = v.ages(view.AgeYield, heirs, today)
	}
	if view.SeedG > 0 {
		b.Seed = v.words.Format().Weight(view.SeedG / 1000)
	}
	for _, why := range view.Why {
		b.Why = append(b.Why, v.sentence(sharpened(why, today)))
	}
	b.Stages = v.stages(view, today)
	b.Ends = v.ends(view)
	b.Course = v.courseDraw(view, today)
	b.Days = v.courseRows(view)
	return b
}

// stages tells when each stage begins: those that decide the table with their
// odds, those between as the middle year has them.
func (v *visit) stages(view *desk.PlantingView, today cal.Date) []stageRow {
	rows := []stageRow{{Name: v.say("web.planting_stage_start", nil), Middle: planned(view.Date, today)}}
	last := ""
	for _, d := range view.Course {
		if d.Stage == last {
			continue
		}
		last = d.Stage
		if d.Stage == "growing" || d.Stage == "young" && d.Date > view.Date+courseSlack {
			rows = append(rows, stageRow{Name: v.named("web.planting_stage_", d.Stage), Middle: words.Sharp(d.Date, today)})
		}
	}
	for _, s := range []struct {
		name string
		odds desk.Odds
	}{{"ready", view.Ready}, {"over", view.Over}} {
		if s.odds.P50.IsSet() {
			rows = append(rows, stageRow{Name: v.named("web.planting_stage_", s.name), Middle: words.Sharp(s.odds.P50, today),
				Early: words.Sharp(s.odds.P10, today), Late: words.Sharp(s.odds.P90, today), Spread: s.odds.P10 != s.odds.P90})
		}
	}
	return rows
}

// courseSlack is the days within which a plant set out counts as there from the
// start.
const courseSlack = 4

// ends tells the ways it ends, the commonest first.
func (v *visit) ends(view *desk.PlantingView) []endRow {
	var rows []endRow
	for key, share := range view.Ends {
		rows = append(rows, endRow{Name: capital(v.say("web.planting_end_"+key, nil)), Share: share})
	}
	sort.Slice(rows, func(i, k int) bool {
		if rows[i].Share != rows[k].Share {
			return rows[i].Share > rows[k].Share
		}
		return rows[i].Name < rows[k].Name
	})
	return rows
}

// courseRows are the course in figures, a row for about every fortnight.
func (v *visit) courseRows(view *desk.PlantingView) []courseRow {
	var rows []courseRow
	for i := 0; i < len(view.Course); i += courseRowStep {
		d := view.Course[i]
		rows = append(rows, courseRow{CourseDay: d, StageName: v.named("web.planting_stage_", d.Stage)})
	}
	return rows
}

// courseRowStep is how many of the course's days a row of figures stands for.
const courseRowStep = 5
