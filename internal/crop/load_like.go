package crop

import (
	"io/fs"

	"garner/internal/fault"
	"garner/internal/words"
)

// likeFile names for a crop the relation whose numbers it takes where it has
// none of its own; a book may be without it.
const likeFile = "like.csv"

// likeness is the crop that lends its numbers to another, and the row that says
// so.
type likeness struct {
	lender *Crop
	row    row
}

// loadLike reads which crop is like which. A row that would close a ring is
// refused, the rows before it hold.
func (l *loader) loadLike() {
	if _, err := fs.Stat(l.fsys, likeFile); err != nil {
		return
	}
	for r := range l.sheet(likeFile, "crop", "like", "note").rows {
		c := l.cropOf(r)
		lender, known := l.book.byID[r.get("like")]
		if !known {
			l.refuse(r.at("like"), fault.NotFound, "crop.crop_unknown", words.Args{"crop": r.get("like")})
		}
		if c == nil || !known {
			continue
		}
		if _, twice := l.like[c.ID]; twice {
			l.refuse(r.at("crop"), fault.Invalid, "crop.like_twice", words.Args{"crop": c.Name})
		} else if l.leansOn(lender, c) {
			l.refuse(r.at("like"), fault.Invalid, "crop.like_ring", words.Args{"crop": c.Name, "like": lender.Name})
		} else {
			l.like[c.ID] = likeness{lender, r}
		}
	}
}

// leansOn tells whether a crop is another one, or takes numbers from it in the
// end.
func (l *loader) leansOn(c, other *Crop) bool {
	for c != other {
		link, more := l.like[c.ID]
		if !more {
			return false
		}
		c = link.lender
	}
	return true
}

// lent returns the numbers that a use can take from the crops its own is like,
// the farthest first: those of the whole crop, then those of its use of the same
// name or, when it has none, of its common use. What is fitted to a crop is not
// lent.
func (l *loader) lent(u *Use, facts map[about]numbers) []numbers {
	var layers []numbers
	first, ok := l.like[u.Crop]
	for link := first; ok; link, ok = l.like[link.lender.ID] {
		name := link.lender.CommonUse
		if _, err := link.lender.Use(u.Name); err == nil {
			name = u.Name
		}
		layers = append([]numbers{
			l.borrow(facts[about{link.lender.ID, ""}], link.lender, first.row),
			l.borrow(facts[about{link.lender.ID, name}], link.lender, first.row),
		}, layers...)
	}
	return layers
}

// borrow marks numbers as those of another crop.
func (l *loader) borrow(list numbers, from *Crop, r row) numbers {
	borrowed := make(numbers, len(list))
	for i, number := range list {
		if number == nil || l.book.parameters[i].Scope == "fitted" {
			continue
		}
		fact := number.Fact
		fact.Mark = "borrowed"
		if fact.Where != "" {
			fact.Where = ": " + fact.Where
		}
		fact.Where = "from " + from.Name + fact.Where
		borrowed[i] = &placed{Fact: fact, row: r, column: "like"}
	}
	return borrowed
}

// toldBefore tells whether a number that a crop lacks was given, for it or for a
// crop it is like, and refused.
func (l *loader) toldBefore(crop, parameter string) bool {
	for {
		if l.refused[told{crop, parameter}] {
			return true
		}
		link, more := l.like[crop]
		if !more {
			return l.refused[told{"", parameter}]
		}
		crop = link.lender.ID
	}
}
