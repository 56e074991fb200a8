package larder

import (
	"cmp"
	"math"
	"slices"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/words"
)

// Claim is planting stock taken from the household's own store: seed tubers,
// cloves, sets or dry seed.
type Claim struct {
	Planting  string // that is planted from it
	Crop, Use string // as stored
	Commonest bool   // the use is the crop's commonest, which a batch may leave blank
	Day       cal.Date
	Kg        float64 // wanted on that day, >= 0
}

// ClaimYear is what became of a claim in one future [kg].
type ClaimYear struct {
	SownKg  float64 // was there and went into the ground
	ShortKg float64 // was not there
}

// claim is one that falls within the table.
type claim struct {
	day int
	at  int32 // its place among Setting.Claims
	kg  float64
	of  *Claim
}

// heldLot is a part of a lot in store that is not to be eaten.
type heldLot struct {
	lot
	claim int  // index of the pantry's claims
	whole bool // nothing of what came in is left to be eaten
}

// layClaims puts the claims of the table's days in their order.
func (p *Pantry) layClaims(faults fault.List) fault.List {
	for i := range p.in.Claims {
		c := &p.in.Claims[i]
		if !(c.Kg >= 0) || math.IsInf(c.Kg, 0) {
			faults = append(faults, fault.New(fault.Invalid, "larder.claim_weight", words.Args{"planting": c.Planting, "kg": c.Kg}))
			continue
		}
		day := int(c.Day - p.in.First)
		if c.Day.IsSet() && day >= 0 && day < p.in.Days {
			p.claims = append(p.claims, claim{day: day, at: int32(i), kg: c.Kg, of: c})
		}
	}
	slices.SortStableFunc(p.claims, func(a, b claim) int { return cmp.Compare(a.day, b.day) })
	return faults
}

// owe begins a run with all claims open.
func (s *Scratch) owe(out *Year) {
	s.held, s.nextClaim = s.held[:0], 0
	for i := range s.pantry.claims {
		s.owed[i] = s.pantry.claims[i].kg
	}
	clear(out.Claims)
}

// holdBack splits off a lot that comes into store what planting stock claims of
// it, with as much more as will be lost until it is planted. Stock need not last
// as food does: that it sprouts is no harm. The earliest claim comes first; what
// comes in later in the day than it is planted is of no use to it.
func (s *Scratch) holdBack(l *lot) {
	k, from := &s.keepings[l.keeping], len(s.held)
	for i := s.nextClaim; i < len(s.pantry.claims) && l.kg > 0; i++ {
		c := &s.pantry.claims[i]
		if s.owed[i] == 0 || c.day < int(l.since) || !c.of.fits(k) {
			continue
		}
		remains := k.remain[c.day-int(l.since)]
		part := *l
		if kg := s.owed[i] / remains; kg <= l.kg {
			part.kg, s.owed[i] = kg, 0
		} else {
			s.owed[i] -= l.kg * remains
		}
		l.kg -= part.kg
		s.held = append(s.held, heldLot{lot: part, claim: i})
	}
	if l.kg > 0 {
		return
	}
	for i := from; i < len(s.held); i++ {
		s.held[i].whole = true
	}
}

// fits tells whether a claim is on what is kept.
func (c *Claim) fits(k *keeping) bool {
	return c.Crop == k.crop && (c.Use == k.use || c.Commonest && k.use == "")
}

// sow takes out what was held back for the claims of a day.
func (s *Scratch) sow(day int, out *Year) {
	for ; s.nextClaim < len(s.pantry.claims) && s.pantry.claims[s.nextClaim].day == day; s.nextClaim++ {
		c := &s.pantry.claims[s.nextClaim]
		sown := 0.0
		for i := range s.held {
			if h := &s.held[i]; h.claim == s.nextClaim {
				sown += s.sowLot(&h.lot, day, out)
				if h.whole && h.kind == opened {
					out.Batches[h.owner].Out = s.date(day)
				}
			}
		}
		out.Claims[c.at].SownKg = sown
		out.Claims[c.at].ShortKg = max(0, c.kg-sown)
	}
}

// sowLot takes a lot that was held back out of its store and returns what was
// left of it.
func (s *Scratch) sowLot(l *lot, day int, out *Year) float64 {
	kg := s.available(l, day)
	s.weigh(l, kg, day, out)
	s.remove(l, kg)
	l.kg = 0
	out.Stores[s.keepings[l.keeping].store].SownKg += kg
	if l.kind == opened {
		out.Batches[l.owner].SownKg += kg
	} else {
		out.Plantings[l.owner].SownKg += kg
	}
	return kg
}
