package desk

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/frost"
	"garner/internal/risk"
	"garner/internal/words"
)

// FrostFruit is a tree or bush whose blossom a frost can kill.
type FrostFruit struct {
	ID     string            `json:"id"` // of the planting or of the tree on the plan
	Name   string            `json:"name"`
	Crop   string            `json:"crop"`
	Tree   bool              `json:"tree"`  // on the plan, taken for its fruit by its name
	Stage  string            `json:"stage"` // told, or by its sum of warmth; empty: not known, or none yet
	Told   bool              `json:"told"`
	SeenOn *cal.Date         `json:"seen_on"` // the day its stage was seen
	Stages []FrostStage      `json:"stages"`
	Nights []FrostFruitNight `json:"nights"`
	Bloom  *FrostDay         `json:"full_bloom"`
	Bitten float64           `json:"bitten"` // share of the futures in which a tenth or more is lost before the fruit is set

	Says []words.Phrase `json:"-"`
}

// FrostStage is a stage of blossom with its temperatures. Its odds are those of the
// nights told one by one, as if it stood in it; nil where the stage is known.
type FrostStage struct {
	Stage   string   `json:"stage"`
	Kill10C float64  `json:"kill_10_c"`
	Kill90C float64  `json:"kill_90_c"`
	Odds    *float64 `json:"odds"`
	Source  string   `json:"source"`
	Mark    string   `json:"mark"`

	Name words.Phrase `json:"-"`
}

// FrostFruitNight is what a night does to blossom.
type FrostFruitNight struct {
	Evening cal.Date   `json:"evening"`
	Stage   string     `json:"stage"`
	C       frost.Tens `json:"c"`
	Odds    float64    `json:"odds"`
	Lost    float64    `json:"lost"`
}

func (n *frostNamer) blossom(x *frost.Fruit) FrostFruit {
	out := FrostFruit{ID: x.ID, Crop: x.Crop.ID, Tree: x.Feature != nil, Told: x.Told, Bloom: frostDay(x.Bloom), Bitten: x.Bitten, Stage: stageID(x.Stage), Nights: []FrostFruitNight{}}
	if x.On.IsSet() {
		out.SeenOn = &x.On
	}
	if x.Planting != nil {
		out.Name = n.use(x.Planting.Crop, x.Planting.Use) + ", " + n.bed(x.Planting.Bed)
	} else {
		out.Name = x.Feature.Name
	}
	for k, st := range x.Stages {
		s := FrostStage{Stage: st.Stage, Kill10C: st.Kill10C, Kill90C: st.Kill90C, Source: st.Source, Mark: st.Mark, Name: st.Name()}
		if len(x.If) > 0 {
			s.Odds = &x.If[k].Odds
		}
		out.Stages = append(out.Stages, s)
	}
	for i := range x.Nights {
		night := &x.Nights[i]
		out.Nights = append(out.Nights, FrostFruitNight{night.Evening, stageID(night.Stage), night.C, night.Odds, night.Lost})
	}
	out.Says = fruitSays(x, n.r.Today)
	return out
}

func stageID(b *risk.Blossom) string {
	if b == nil {
		return ""
	}
	return b.Stage
}

// fruitSays tells how a fruit's blossom stands and what the nights do to it.
func fruitSays(x *frost.Fruit, today cal.Date) []words.Phrase {
	var out []words.Phrase
	switch {
	case x.Stage != nil:
		args := words.Args{"stage": x.Stage.Name(), "c": x.Stage.Kill10C, "most": x.Stage.Kill90C}
		key := "desk.frost_blossom_by_sum"
		if x.Told {
			args["on"] = x.On
			switch key = "desk.frost_blossom_told"; {
			case x.On < today && x.Stage.Known():
				key = "desk.frost_blossom_since"
			case x.On < today:
				key = "desk.frost_blossom_saw"
			}
		}
		out = append(out, words.P(key, args))
	case x.Asleep:
		out = append(out, words.P("desk.frost_blossom_asleep", nil))
	case x.Over:
		out = append(out, words.P("desk.frost_blossom_over", nil))
	case x.Stale:
		out = append(out, words.P("desk.frost_blossom_stale", words.Args{"on": x.On}))
	default:
		out = append(out, words.P("desk.frost_blossom_untold", nil))
	}
	if x.Bloom != nil {
		out = append(out, words.P("desk.frost_blossom_when", words.Args{"early": x.Bloom.P10, "half": x.Bloom.P50, "late": x.Bloom.P90}))
	}
	worst := -1
	for i := range x.Nights {
		if x.Nights[i].Odds >= frost.Least && (worst < 0 || x.Nights[i].Odds > x.Nights[worst].Odds) {
			worst = i
		}
	}
	switch {
	case worst >= 0:
		out = append(out, words.P("desk.frost_blossom_night", words.Args{"evening": x.Nights[worst].Evening, "odds": x.Nights[worst].Odds, "lost": x.Nights[worst].Lost}))
	case x.Stage != nil:
		out = append(out, words.P("desk.frost_blossom_safe", nil))
	}
	if x.Bitten >= frost.Least {
		out = append(out, words.P("desk.frost_blossom_bitten", words.Args{"odds": x.Bitten}))
	}
	return out
}

// BlossomStages are the names of all stages of blossom; none where the data cannot be read.
func BlossomStages() []string {
	b, err := risk.Load()
	if err != nil {
		return nil
	}
	var out []string
	for i := range b.Blossoms {
		if !slices.Contains(out, b.Blossoms[i].Stage) {
			out = append(out, b.Blossoms[i].Stage)
		}
	}
	return out
}
