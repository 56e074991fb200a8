package web

import (
	"net/url"
	"strings"
	"time"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/words"
)

// cropBody is the page of one crop in one of its uses.
type cropBody struct {
	View      *desk.CropView
	Title     string
	Says      []string
	Uses      []wayLink
	Vegetable string // page of its vegetable; empty: not at this table
	Brief     []briefRow
	Year      *yearBody
	NoYear    string // why there is none
	Coming    string // with the year still being worked out: where to look again
	Recorded  []string
	Ages      *agesBody
	Varieties []varietyRow
	Keeping   []keepingRow
	Groups    []numberGroup
}

// wayLink is one of several views of a page.
type wayLink struct {
	Name, Path string
	Here       bool
}

// briefRow is a number that a grower looks for first.
type briefRow struct{ Name, Value string }

// varietyRow is a variety of the household's by how it differs.
type varietyRow struct{ Name, Says string }

// keepingRow is a way of keeping.
type keepingRow struct {
	How, Life, At, Loss, Sure, Source, URL string
	Prepare                                []string
}

// cropPage shows one crop of the book.
func cropPage(v *visit) error {
	id := v.r.PathValue("id")
	view, err := v.office.CropView(id, v.query("use"))
	if err != nil {
		return err
	}
	b := &cropBody{View: view, Title: capital(view.Plural), Says: v.cropSays(view), Brief: v.brief(view), Recorded: v.recorded(view),
		Varieties: v.varietyRows(view), Keeping: v.keepingRows(view), Groups: v.numberGroups(view)}
	if len(view.Uses) > 1 {
		for _, u := range view.Uses {
			b.Uses = append(b.Uses, wayLink{capital(u.Label), v.onSite(cropPath(id, u.Name)), u.Name == view.Use})
		}
	}
	if view.OnTable {
		b.Vegetable = vegetablePath(view.Vegetable)
	}
	if view.AgeYield != nil {
		b.Ages = v.ages(view.AgeYield, view.Heirs, view.Today)
	}
	switch year, err := v.office.CropYearWithin(id, view.Use, v.query("site"), yearPatience); {
	case err == nil && year == nil:
		b.Coming = v.here()
	case err == nil:
		b.Year = v.year(view, year)
	case fault.KindOf(err) == fault.NotFound && (v.query("site") == "" || desk.LacksWeather(err)):
		b.NoYear = v.say("web.crop_no_year", nil)
	default:
		return err
	}
	return v.showPart(page{Name: "crop", Nav: "crops", Body: b})
}

// yearPatience is how long a page waits for a year that is being worked out for
// the first time; it shows the rest then, and the year when it is there.
const yearPatience = 200 * time.Millisecond

// onSite keeps the site that was asked about in an address.
func (v *visit) onSite(path string) string {
	if site := v.query("site"); site != "" {
		return path + "&site=" + url.QueryEscape(site)
	}
	return path
}

// cropSays tells a crop's names, its family and when that may come back.
func (v *visit) cropSays(view *desk.CropView) []string {
	var out []string
	if len(view.Names) > 0 {
		out = append(out, v.say("web.crop_also", words.Args{"names": view.Names}))
	}
	out = append(out, v.say("web.crop_family", words.Args{"botanical": view.Botanical, "family": view.FamilyName, "latin": view.Family}))
	if view.Vegetable != "" && view.Vegetable != view.Name {
		out = append(out, v.say("web.crop_counted", words.Args{"vegetable": view.Vegetable}))
	}
	out = append(out, v.named("web.rotation_", view.Rotation))
	if view.RotationYear > 0 {
		out = append(out, v.say("web.crop_rotation", words.Args{"n": view.RotationYear}))
	}
	return out
}

// brief tells the numbers a grower looks for first, each where the book has it.
func (v *visit) brief(view *desk.CropView) []briefRow {
	b, f := &view.Brief, v.words.Format()
	rows := []briefRow{{v.say("web.brief_distance", nil), v.say("web.brief_apart", words.Args{"row": v.length(b.InRowM), "between": v.length(b.BetweenRowM)})}}
	add := func(name, value string) { rows = append(rows, briefRow{name, value}) }
	if b.SowDepthM > 0 {
		add(v.say("web.brief_depth", nil), v.length(b.SowDepthM))
	}
	if b.SeedGPerM > 0 {
		add(v.say("web.brief_seed_row", nil), v.say("web.brief_seed_row_says", words.Args{"seeds": b.SowPerM, "weight": f.Grams(b.SeedGPerM)}))
		add(v.say("web.brief_seed_area", nil), f.Weight(b.SeedGPerM2*10/1000))
	}
	for _, d := range b.Days {
		add(v.named("web.brief_days_", d.Method), v.say("web.brief_days_says", words.Args{"n": d.Days}))
	}
	if b.TableG > 0 {
		add(v.say("web.brief_size", nil), f.Weight(b.TableG/1000))
	}
	if b.YieldKgM2[1] > 0 {
		add(v.say("web.brief_yield", nil), v.say("web.brief_yield_says", words.Args{"low": b.YieldKgM2[0], "middle": b.YieldKgM2[1], "high": b.YieldKgM2[2]}))
	}
	return rows
}

// recorded sums the records up in sentences.
func (v *visit) recorded(view *desk.CropView) []string {
	r := &view.Recorded
	if r.Records == 0 {
		return []string{v.say("web.recorded_none", nil)}
	}
	out := []string{v.say("web.recorded_says", words.Args{"n": r.Records, "plantings": words.P("web.recorded_plantings", words.Args{"n": len(r.Plantings)})})}
	for _, q := range []struct {
		several, one string
		over         desk.Between
	}{{"web.recorded_days", "web.recorded_days_one", r.Days}, {"web.recorded_yield", "web.recorded_yield_one", r.YieldKgM2}} {
		if q.over.Of == 0 {
			continue
		}
		key := q.several
		if q.over.Least == q.over.Most {
			key = q.one
		}
		out = append(out, v.say(key, words.Args{"least": q.over.Least, "most": q.over.Most}))
	}
	return out
}

func (v *visit) varietyRows(view *desk.CropView) []varietyRow {
	var out []varietyRow
	for _, its := range view.Varieties {
		var says []string
		switch days := its.DaysOffset; {
		case days > 0:
			says = append(says, v.say("web.variety_later", words.Args{"n": days}))
		case days < 0:
			says = append(says, v.say("web.variety_sooner", words.Args{"n": -days}))
		}
		if its.Yield != 1 {
			says = append(says, v.say("web.variety_yield", words.Args{"share": its.Yield}))
		}
		if len(says) == 0 {
			says = append(says, v.say("web.variety_as", nil))
		}
		out = append(out, varietyRow{its.Name, strings.Join(says, ", ")})
	}
	return out
}

func (v *visit) keepingRows(view *desk.CropView) []keepingRow {
	var out []keepingRow
	for _, s := range view.Storage {
		how := v.named("desk.value_stores.method.", s.Method)
		if how == s.Method {
			how = v.named("web.value_method_", s.Method)
		}
		row := keepingRow{How: capital(how), Life: v.span(s.LifeDays), At: v.words.Format().Celsius(s.BestC), Sure: v.named("web.sure_", s.Sure),
			Source: s.Source.Text, URL: s.Source.URL}
		for _, step := range s.Prepare {
			row.Prepare = append(row.Prepare, v.sentence(step))
		}
		switch args := (words.Args{"first": s.LossShare, "month": s.Month}); {
		case s.LossShare > 0 && s.Month > 0:
			row.Loss = v.say("web.keeping_loss_says", args)
		case s.LossShare > 0:
			row.Loss = v.say("web.keeping_loss_once", args)
		case s.Month > 0:
			row.Loss = v.say("web.keeping_loss_month", args)
		}
		out = append(out, row)
	}
	return out
}

// agesBody is what a perennial bears by its age, and who follows it.
type agesBody struct {
	Draw  string
	Says  string
	Heirs []string
}

func (v *visit) ages(shares []float64, heirs []desk.HeirView, today cal.Date) *agesBody {
	b := &agesBody{}
	var items []words.Phrase
	settled := len(shares) - 1 // from this season on it bears the same
	for settled > 0 && shares[settled-1] == shares[len(shares)-1] {
		settled--
	}
	for i, share := range shares[:settled+1] {
		key := "web.ages_item"
		switch {
		case i == settled:
			key = "web.ages_from"
		case share == 0:
			key = "web.ages_none"
		}
		items = append(items, words.P(key, words.Args{"share": share, "season": words.P("web.ages_season_"+whole(i), nil)}))
	}
	b.Says = v.say("web.ages_says", words.Args{"list": items})
	b.Draw = v.agesDraw(shares, v.say("web.ages_label", words.Args{"list": items}))
	for _, h := range heirs {
		key := "web.heir_says"
		if h.Heir < today {
			key = "web.heir_late"
		}
		b.Heirs = append(b.Heirs, v.say(key, words.Args{"bed": h.Bed, "since": words.P("web.month_year", words.Args{
			"month": v.words.Format().Month(h.Since.Month()), "year": whole(h.Since.Year())}),
			"heir": words.Sharp(h.Heir, today), "over": words.Sharp(h.Over, today)}))
	}
	return b
}
