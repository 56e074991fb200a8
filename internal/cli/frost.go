package cli

import (
	"slices"
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/words"
)

// frostCommand tells what frost and heat do.
type frostCommand struct {
	Minimum string   `placeholder:"C"`
	Stage   []string `placeholder:"STAGE"`
	Years   string   `placeholder:"N"`
	Seed    string   `placeholder:"S"`
	holdingFlags
	JSON bool `name:"json"`
}

// Run asks the desk what frost and heat do and shows it.
func (c *frostCommand) Run(a *App) error {
	var f flags
	options := desk.FrostOptions{Minimum: f.celsius("--minimum", c.Minimum), Stages: f.stages(c.Stage),
		Years: f.whole("--years", c.Years, 1, maxYears, 0), Seed: f.seed(c.Seed)}
	r, err := ask(a, c.holdingFlags, &f, func(h *holding.Holding, _ reporter) (*desk.FrostResult, error) {
		return desk.FrostOf(h, options)
	})
	if err != nil {
		return err
	}
	if c.JSON {
		return a.json(r)
	}
	a.showFrost(r)
	return nil
}

// celsius reads a temperature; nothing gives none.
func (f *flags) celsius(name, given string) *float64 {
	if given == "" {
		return nil
	}
	c, err := strconv.ParseFloat(strings.ReplaceAll(given, "−", "-"), 64)
	if err != nil || c != c {
		f.refuse(fault.Invalid, words.P("cli.frost_minimum", words.Args{"flag": name, "given": given}))
		return nil
	}
	return &c
}

// stages reads ID:STAGE, the stages of blossom that are told.
func (f *flags) stages(given []string) map[string]string {
	out := map[string]string{}
	for _, text := range given {
		id, stage, found := strings.Cut(text, ":")
		if !found || id == "" || !slices.Contains(desk.BlossomStages(), stage) {
			f.refuse(fault.Invalid, words.P("cli.frost_stage", words.Args{"given": text, "stages": desk.BlossomStages()}))
			continue
		}
		out[id] = stage
	}
	return out
}

// showFrost writes what there is to do and to know, along the route.
func (a *App) showFrost(r *desk.FrostResult) {
	a.sharply(r.Lead, r.Today)
	for _, alike := range r.AlikeSites() {
		a.sharply([]words.Phrase{words.P("cli.frost_site", words.Args{"sites": desk.SiteNames(alike), "says": alike[0].Says})}, r.Today)
	}
	if r.Makeshift {
		a.say(words.P("web.frost_makeshift", nil))
	}
	for i := range r.Beds {
		b := &r.Beds[i]
		if !b.Soon {
			continue
		}
		a.heading(b.Name)
		a.sharply(b.Do, r.Today)
		for k := range b.Plants {
			a.sharply(b.Plants[k].Says, r.Today)
		}
		a.sharply(b.Says, r.Today)
	}
	a.frostStands(r)
	var later, ahead []words.Phrase
	for i := range r.Beds {
		later = append(later, r.Beds[i].Later...)
	}
	for i := range r.Ahead {
		ahead = append(ahead, r.Ahead[i].Says)
	}
	a.frostPart("web.frost_later", later, r.Today)
	a.frostPart("web.frost_ahead", ahead, r.Today)
	a.frostHeat(r)
}

// heading begins a part.
func (a *App) heading(name string) {
	a.gap()
	a.say(words.P("cli.frost_heading", words.Args{"name": name}))
}

// sharply says phrases with their dates as sharp as they deserve.
func (a *App) sharply(says []words.Phrase, today cal.Date) {
	for _, p := range says {
		a.say(words.P("cli.frost_said", words.Args{"says": strings.ReplaceAll(a.Words.Text(words.Sharpened(p, today)), "**", "")}))
	}
}

func (a *App) frostPart(title string, says []words.Phrase, today cal.Date) {
	if len(says) > 0 {
		a.heading(a.Words.Text(words.P(title, nil)))
		a.sharply(says, today)
	}
}

// frostStands lists what stands on beds that are not at risk.
func (a *App) frostStands(r *desk.FrostResult) {
	g := &grid{right: []bool{false, false, true, true}}
	g.add(a.head("cli.column_bed"), a.head("cli.column_crop"), a.head("cli.column_hurt_from"), a.head("cli.column_tonight"))
	lines := 0
	for i := range r.Beds {
		b := &r.Beds[i]
		for k := range b.Plants {
			p := &b.Plants[k]
			if b.Soon || !p.Exposed {
				continue
			}
			g.add(b.Name, p.Name, a.Words.Format().Number(p.FirstC, 1), a.Words.Format().Number(b.Nights[0].C.Middle(), 1))
			lines++
		}
	}
	if lines > 0 {
		a.heading(a.Words.Text(words.P("web.frost_rest", nil)))
		g.write(a)
	}
}

// frostHeat writes what is too hot, and the blossom.
func (a *App) frostHeat(r *desk.FrostResult) {
	if len(r.Heat)+len(r.Sowings) > 0 {
		a.heading(a.Words.Text(words.P("web.frost_heat", nil)))
	}
	standing, sown := r.Hot()
	for _, h := range append(standing, sown...) {
		a.say(words.P("cli.frost_hot", words.Args{"name": h.Name, "does": h.Does}))
		for k := range h.At {
			var names []string
			for _, bed := range h.At[k].Beds {
				names = append(names, bed.Name)
			}
			a.say(words.P("cli.frost_named", words.Args{"name": names}))
			a.sharply(h.At[k].Says, r.Today)
		}
	}
	if len(r.Fruit) > 0 {
		a.heading(a.Words.Text(words.P("web.frost_blossom", nil)))
	}
	for i := range r.Fruit {
		a.say(words.P("cli.frost_fruit", words.Args{"name": r.Fruit[i].Name, "id": r.Fruit[i].ID}))
		a.sharply(r.Fruit[i].Says, r.Today)
	}
}
