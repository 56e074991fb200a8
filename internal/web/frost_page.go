package web

import (
	"maps"
	"math"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/words"
)

// frostBody is the page of frost and heat.
type frostBody struct {
	Lead    []string
	If      bool // tonight's minimum is told, not kept
	Minimum fieldBody
	Stages  []hiddenField // that are told
	Sites   []frostSite
	Risky   []frostBed
	Rest    []frostRest
	Later   []frostLine
	Ahead   []frostLine
	Mend    bool // no cover is left for a bed at risk tonight
	Heat    []frostHeat
	Fruit   []frostFruit
	Untold  bool          // some stage of blossom can be told
	Hidden  []hiddenField // of the form in which it is told
}

// frostLine is a sentence with the page it is about.
type frostLine struct{ Path, Says string }

// frostSite is the cold to come at sites of one weather.
type frostSite struct {
	Name, Draw string
	Says       string
	Nights     []desk.FrostNight
	Weeks      []desk.FrostWeek
}

// frostBed is a bed at risk.
type frostBed struct {
	Name, Path string
	Under      string
	Do, Says   []string
	Plants     []string
	Draw       string
	Nights     []desk.FrostBedNight
	Tonight    bool
}

// frostRest is what stands on a bed that is not at risk.
type frostRest struct {
	Name, Path, Under string
	C                 float64 // tonight's minimum there, in the middle
	Plants            []frostStand
}

// frostStand is a planting in the list of what is not at risk.
type frostStand struct {
	Name    string
	Exposed bool
	FirstC  float64
}

// frostHeat is one matter of heat with the beds and sowings concerned.
type frostHeat struct {
	Name, Does string
	At         []frostHeatAt
	Source     string
}

// frostHeatAt is what is told of some of them.
type frostHeatAt struct {
	Beds []frostLine
	Says []string
}

// frostFruit is a tree or bush in blossom.
type frostFruit struct {
	ID, Name string
	Tree     bool
	Says     []string
	Field    *fieldBody // in which its stage is told; nil: it is known
	Stages   []desk.FrostStage
	Odds     bool // the stages have odds
	Sources  []string
}

// stageField begins the name of a field in which a stage of blossom is told.
const stageField = "stage-"

// frostPage shows what frost and heat do, as it stands or as somebody tells the night.
func frostPage(v *visit) error {
	ask, field := v.frostAsked()
	b := &frostBody{Minimum: field}
	for _, id := range slices.Sorted(maps.Keys(ask.Stages)) {
		b.Stages = append(b.Stages, hiddenField{stageField + id, ask.Stages[id]})
	}
	view, err := v.office.FrostView(ask)
	if ask.Minimum != nil && err != nil && fault.KindOf(err) == fault.OutOfRange {
		b.Minimum.Faults, ask.Minimum = phrasesOf(err), nil
		view, err = v.office.FrostView(ask)
	}
	p := page{Name: "frost", Nav: "weather", Body: b}
	if len(b.Minimum.Faults) > 0 {
		p.Status = http.StatusUnprocessableEntity
	}
	b.If = ask.Minimum != nil
	switch {
	case err != nil && (fault.KindOf(err) == fault.Internal || desk.LacksWeather(err)):
		return err
	case err != nil: // what the page would tell of is not told
		for _, phrase := range phrasesOf(err) {
			b.Lead = append(b.Lead, v.sentence(phrase))
		}
	default:
		v.frostFill(b, view)
		if b.Hidden, err = v.entryOf(); err != nil {
			return err
		}
	}
	return v.show(p)
}

// frostAsked reads what is told of the night and of blossom.
func (v *visit) frostAsked() (desk.FrostOptions, fieldBody) {
	ask := desk.FrostOptions{Stages: map[string]string{}}
	for name, values := range v.r.URL.Query() {
		if id, ok := strings.CutPrefix(name, stageField); ok && len(values) == 1 && values[0] != "" {
			ask.Stages[id] = values[0]
		}
	}
	text := strings.TrimSpace(v.query("minimum"))
	field := fieldBody{Name: "minimum", Label: v.say("web.frost_minimum", nil), Kind: "number", Value: text, Unit: "°C", Must: true}
	if text == "" {
		return ask, field
	}
	c, err := strconv.ParseFloat(strings.NewReplacer(",", ".", "−", "-").Replace(text), 64)
	if err != nil || math.IsNaN(c) {
		field.Faults = []words.Phrase{words.P("web.frost_minimum_wrong", words.Args{"given": text})}
		return ask, field
	}
	ask.Minimum = &c
	return ask, field
}

// frostFill puts the answer on the page.
func (v *visit) frostFill(b *frostBody, view *desk.FrostResult) {
	b.Lead = v.frostSays(view.Lead, view.Today)
	b.Mend = view.Makeshift
	for _, alike := range view.AlikeSites() {
		b.Sites = append(b.Sites, v.frostSite(view, alike))
	}
	for i := range view.Beds {
		bed := &view.Beds[i]
		if bed.Soon {
			b.Risky = append(b.Risky, v.frostBed(bed, view.Today))
		} else {
			b.Rest = append(b.Rest, v.frostRest(bed))
		}
		for _, says := range v.frostSays(bed.Later, view.Today) {
			b.Later = append(b.Later, frostLine{bedPath(bed.Bed), says})
		}
	}
	for i := range view.Ahead {
		b.Ahead = append(b.Ahead, frostLine{plantingPath(view.Ahead[i].Planting), v.sentence(sharpened(view.Ahead[i].Says, view.Today))})
	}
	standing, sown := view.Hot()
	b.Heat = append(v.frostHeats(standing, bedPath, view.Today), v.frostHeats(sown, plantingPath, view.Today)...)
	for i := range view.Fruit {
		f := v.frostFruit(&view.Fruit[i], view.Today)
		b.Untold = b.Untold || f.Field != nil
		b.Fruit = append(b.Fruit, f)
	}
}

// frostHeats are matters of heat, each bed or planting with the page it is about.
func (v *visit) frostHeats(hot []desk.FrostHot, path func(string) string, today cal.Date) []frostHeat {
	var out []frostHeat
	for _, h := range hot {
		f := frostHeat{Name: v.sentence(h.Name), Does: v.sentence(h.Does), Source: h.Source}
		for _, at := range h.At {
			told := frostHeatAt{Says: v.frostSays(at.Says, today)}
			for _, bed := range at.Beds {
				told.Beds = append(told.Beds, frostLine{path(bed.ID), capital(bed.Name)})
			}
			f.At = append(f.At, told)
		}
		out = append(out, f)
	}
	return out
}

// frostSays puts phrases into sentences with their dates as sharp as they deserve.
func (v *visit) frostSays(says []words.Phrase, today cal.Date) []string {
	var out []string
	for _, p := range says {
		out = append(out, v.sentence(sharpened(p, today)))
	}
	return out
}

func (v *visit) frostRest(b *desk.FrostBed) frostRest {
	out := frostRest{Name: b.Name, Path: bedPath(b.Bed), C: b.Nights[0].C.Middle(), Under: v.coverOver(b.Under)}
	for _, p := range b.Plants {
		out.Plants = append(out.Plants, frostStand{p.Name, p.Exposed, p.FirstC})
	}
	return out
}

// coverOver names the cover over a bed, empty in the open.
func (v *visit) coverOver(kind string) string {
	if cover.Kind(kind) == cover.Open {
		return ""
	}
	return v.named("desk.value_covers.kind.", kind)
}

func (v *visit) frostFruit(f *desk.FrostFruit, today cal.Date) frostFruit {
	out := frostFruit{ID: f.ID, Name: capital(f.Name), Tree: f.Tree, Says: v.frostSays(f.Says, today), Stages: f.Stages}
	for _, s := range f.Stages {
		out.Odds = out.Odds || s.Odds != nil
		if !strings.HasPrefix(s.Source, "as above") && !slices.Contains(out.Sources, s.Source) {
			out.Sources = append(out.Sources, s.Source)
		}
	}
	field := &fieldBody{Name: stageField + f.ID, Label: v.say("web.frost_stage", nil), Kind: "choice", Options: []option{{Name: v.say("web.frost_stage_unknown", nil)}}}
	if f.Told {
		field.Value = f.Stage
	}
	for _, s := range f.Stages {
		field.Options = append(field.Options, option{Value: s.Stage, Name: v.words.Text(s.Name)})
	}
	out.Field = field
	return out
}

// frostAlarm is tonight's frost in a line for other pages; empty: none is likely to hurt
// anything, or it is still being worked out.
func (v *visit) frostAlarm() (string, error) {
	t, err := v.office.FrostTonight()
	if err != nil || t == nil {
		return "", err
	}
	return v.sentence(t.Says()), nil
}

// bedAlarm is the same of one bed.
func (v *visit) bedAlarm(bed string) (string, error) {
	t, err := v.office.FrostTonight()
	if err != nil {
		return "", err
	}
	if w, hurt := t.Of(bed); hurt {
		return v.sentence(w.Says()), nil
	}
	return "", nil
}
