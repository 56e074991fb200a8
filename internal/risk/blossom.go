package risk

import (
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/table"
	"garner/internal/words"
)

// Blossom is a stage of the blossom of fruit: half an hour at one temperature kills
// a tenth of it, at another nine tenths.
type Blossom struct {
	Crop, Stage      string
	Kill10C, Kill90C float64
	Source, Mark     string
}

// Lost is the share of the blossom that a night kills, along a line through both
// figures, 0-1.
func (b *Blossom) Lost(tMinC float64) float64 {
	return min(1, max(0, 0.1+0.8*(b.Kill10C-tMinC)/(b.Kill10C-b.Kill90C)))
}

// BlossomOdds are, by day, the share of the futures in which a tenth of the blossom
// is lost or more.
func (a *Ahead) BlossomOdds(b *Blossom, spells []cover.Spell) ([]float64, error) {
	out := make([]float64, len(a.AboveMJ))
	for day := range out {
		var err error
		if out[day], err = a.share(spells, day, func(in *climate.Day) bool { return in.TMinC <= b.Kill10C }); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// blossom reads the stages of blossom.
func (l *loader) blossom(c *table.Cells) {
	for i := range c.Rows {
		b := Blossom{told(c, i, "crop"), told(c, i, "stage"), c.Within(i, "kill_10_c", -30, 2), c.Within(i, "kill_90_c", -40, 2),
			told(c, i, "source"), oneOf(c, i, "mark", marks)}
		if b.Kill90C >= b.Kill10C {
			c.Refuse(i, "kill_90_c", "risk.data_kill_order", words.Args{"low": b.Kill10C, "high": b.Kill90C})
		}
		l.book.Blossoms = append(l.book.Blossoms, b)
	}
}
