package protect

import (
	"garner/internal/place"
	"garner/internal/words"
)

// tell puts what was found of a planting into sentences.
func (f *facts) tell(g *Guard, t *stay, barrier *place.CoverSpell) {
	say := func(key string, pests []string, args words.Args) {
		if len(pests) == 0 {
			return
		}
		args["pests"], args["crop"] = f.names(pests), t.crop.Plural
		g.Phrases = append(g.Phrases, words.P(key, args))
	}
	say("protect.keeps", g.Kept, words.Args{})
	say("protect.part", g.Part, words.Args{})
	say("protect.through", g.Through, words.Args{})
	say("protect.wintered", g.Wintered, words.Args{})
	say("protect.open", g.Open, words.Args{})
	if g.Flower {
		g.Phrases = append(g.Phrases, words.P("protect.flower", words.Args{"crop": t.crop.Plural, "cover": words.P("protect.cover_"+coverKey(barrier), nil)}))
	}
}

// coverKey is the end of the key of a barrier's name.
func coverKey(s *place.CoverSpell) string {
	if s.Kind == "mesh" {
		return "mesh"
	}
	return "fleece"
}

// names are the pests of ids as a gardener says them.
func (f *facts) names(ids []string) []string {
	out := make([]string, 0, len(ids))
	for _, id := range ids {
		for i := range f.pests {
			if f.pests[i].ID == id {
				out = append(out, f.pests[i].Name)
			}
		}
	}
	return out
}
