package outlook

import (
	"sort"

	"garner/internal/cover"
	"garner/internal/num"
	"garner/internal/place"
	"garner/internal/season"
)

// groundOf is what lies between the open weather and a bed's plants, with the
// name of the shade round it.
func (j *job) groundOf(b place.Bed, site *siteWork) (season.Ground, num.Digest) {
	around, name := site.shades.shadeOf(b)
	return season.Ground{Light: b.Light, Shade: around, Spells: spellsOf(j.Holding.Covers, b.ID)}, name
}

// digestGround hashes what a bed's own weather depends on.
func digestGround(site *siteWork, ground *season.Ground, shade num.Digest, start int) num.Digest {
	g := num.NewDigester("ground")
	g.Digest(site.digest)
	g.Int(int64(start))
	g.Float(ground.Light)
	g.Digest(shade)
	for _, s := range ground.Spells {
		g.Text(string(s.Kind))
		g.Text(string(s.Sides))
		g.Int(int64(s.On))
		g.Int(int64(s.Off))
	}
	return g.Sum()
}

func spellsOf(all []place.CoverSpell, bed string) []cover.Spell {
	var out []cover.Spell
	for _, s := range all {
		if s.Bed == bed {
			out = append(out, s.Spell)
		}
	}
	sort.SliceStable(out, func(i, k int) bool { return out[i].On < out[k].On })
	return out
}
