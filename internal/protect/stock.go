package protect

import (
	"cmp"
	"slices"

	"garner/internal/cal"
	"garner/internal/place"
	"garner/internal/words"
)

// Use is a time for which pieces of a stock are out.
type Use struct {
	Gear   string // id of the stock
	Spell  string // id of the cover spell
	Bed    string
	On     cal.Date
	Off    cal.Date // None: they stay out
	Pieces int
}

// Shortage is a spell for which there is not enough.
type Shortage struct {
	Kind   string // of gear
	Spell  string
	Bed    string
	From   cal.Date // the day it goes on
	Out    int      // pieces out over other beds on that day
	Owned  int
	Short  int  // pieces more that are wanted
	Misfit bool // pieces are free but none is long, wide or fine enough
	Phrase words.Phrase
}

// Stock is how the plan's covers use what is owned.
type Stock struct {
	Uses  []Use // in order of date
	Short []Shortage
}

// Count lays the spells out in the order in which they go on, from a day on.
// Spells that were over before it are left out. The error is of the package's
// own data.
func Count(gear []place.Gear, spells []place.CoverSpell, beds []place.Bed, from cal.Date) (*Stock, error) {
	f, err := known()
	if err != nil {
		return nil, err
	}
	by := map[string]place.Bed{}
	for _, b := range beds {
		by[b.ID] = b
	}
	s := &shelf{gear: gear}
	for _, spell := range inOrder(spells) {
		b, known := by[spell.Bed]
		n, takes := f.need(spell, b)
		if known && takes && (!spell.Off.IsSet() || spell.Off > from) {
			s.lay(&n, from)
		}
	}
	return &s.stock, nil
}

func inOrder(spells []place.CoverSpell) []place.CoverSpell {
	out := slices.Clone(spells)
	slices.SortStableFunc(out, func(a, b place.CoverSpell) int { return cmp.Or(cmp.Compare(a.On, b.On), cmp.Compare(a.ID, b.ID)) })
	return out
}

// shelf is the gear with what is out of it.
type shelf struct {
	gear  []place.Gear
	stock Stock
}

// out is how many pieces of a stock are out on a day.
func (s *shelf) out(gear string, day cal.Date) int {
	n := 0
	for _, u := range s.stock.Uses {
		if u.Gear == gear && u.On <= day && (!u.Off.IsSet() || day < u.Off) {
			n += u.Pieces
		}
	}
	return n
}

// lay takes what a spell needs from the shelf, or tells what is short.
func (s *shelf) lay(n *need, from cal.Date) {
	day := max(n.spell.On, from)
	if s.counts(n.gear) {
		if g, pieces := s.smallest(n, day); g != nil {
			s.take(g.ID, n, pieces)
		} else {
			s.lack(n, day)
		}
	}
	if n.hoops > 0 && s.counts("hoop") {
		s.layHoops(n, day)
	}
}

func (s *shelf) counts(kind string) bool {
	return slices.ContainsFunc(s.gear, func(g place.Gear) bool { return g.Kind == kind })
}

// smallest is the stock that serves with the least cloth and has it free.
func (s *shelf) smallest(n *need, day cal.Date) (best *place.Gear, pieces int) {
	least := 0.0
	for i := range s.gear {
		g := &s.gear[i]
		p := n.piecesOf(g)
		if p == 0 || g.Pieces-s.out(g.ID, day) < p {
			continue
		}
		if size := float64(p) * g.LengthM * g.WidthM; best == nil || size < least {
			best, pieces, least = g, p, size
		}
	}
	return best, pieces
}

func (s *shelf) take(gear string, n *need, pieces int) {
	s.stock.Uses = append(s.stock.Uses, Use{gear, n.spell.ID, n.spell.Bed, n.spell.On, n.spell.Off, pieces})
}

// layHoops takes hoops from all stocks of them.
func (s *shelf) layHoops(n *need, day cal.Date) {
	wanted, owned, out := n.hoops, 0, 0
	for i := range s.gear {
		g := &s.gear[i]
		if g.Kind != "hoop" {
			continue
		}
		gone := s.out(g.ID, day)
		owned, out = owned+g.Pieces, out+gone
		if p := min(wanted, max(0, g.Pieces-gone)); p > 0 {
			s.take(g.ID, n, p)
			wanted -= p
		}
	}
	if wanted > 0 {
		s.tell(Shortage{Kind: "hoop", Out: out, Owned: owned, Short: wanted}, n, day)
	}
}

// lack tells that no piece serves: none is free, or none fits.
func (s *shelf) lack(n *need, day cal.Date) {
	short := Shortage{Kind: n.gear, Short: 1}
	fits := false
	for i := range s.gear {
		g := &s.gear[i]
		if g.Kind != n.gear {
			continue
		}
		gone := s.out(g.ID, day)
		short.Owned, short.Out = short.Owned+g.Pieces, short.Out+gone
		if p := n.piecesOf(g); p > 0 {
			lacking := max(1, p-max(0, g.Pieces-gone))
			if !fits || lacking < short.Short {
				short.Short = lacking
			}
			fits = true
		}
	}
	short.Misfit = !fits
	s.tell(short, n, day)
}

// tell says a shortage.
func (s *shelf) tell(short Shortage, n *need, day cal.Date) {
	short.Spell, short.Bed, short.From = n.spell.ID, n.spell.Bed, day
	kind := words.P("protect.pieces_"+short.Kind, words.Args{"n": short.Out})
	key := "protect.short"
	switch {
	case short.Misfit && n.meshMM > 0:
		key = "protect.misfit_mesh"
	case short.Misfit:
		key = "protect.misfit"
	}
	short.Phrase = words.P(key, words.Args{"from": day, "out": short.Out, "pieces": kind, "short": short.Short, "bed": n.bed.Name,
		"length": n.lengthM, "width": n.widthM, "mm": n.meshMM})
	s.stock.Short = append(s.stock.Short, short)
}
