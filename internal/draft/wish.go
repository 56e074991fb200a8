package draft

import (
	"slices"

	"garner/internal/fault"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/space"
	"garner/internal/words"
)

// The kinds of wish.
const (
	Pin    = plan.Pin
	Forbid = plan.Forbid
	Hours  = plan.Hours
)

// Wish is one thing that a grower asks of a draft.
type Wish struct {
	Kind     plan.WishKind
	Planting string  // of a pin
	Crop     string  // of what is forbidden: id
	Bed      string  // of what is forbidden; empty: all beds
	Hours    float64 // a week, >= 0
}

// Phrase says a wish.
func (w Wish) Phrase() words.Phrase {
	switch w.Kind {
	case Pin:
		return words.P("draft.wish_pin", words.Args{"planting": w.Planting})
	case Hours:
		return words.P("draft.wish_hours", words.Args{"hours": w.Hours})
	}
	if w.Bed == "" {
		return words.P("draft.wish_forbid_all", words.Args{"crop": w.Crop})
	}
	return words.P("draft.wish_forbid", words.Args{"crop": w.Crop, "bed": w.Bed})
}

func (s *Setting) pinned(planting string) bool {
	return slices.ContainsFunc(s.Wishes, func(w Wish) bool { return w.Kind == Pin && w.Planting == planting })
}

// forbidden tells whether a wish keeps a crop out of a bed.
func (s *Setting) forbidden(crop, bed string) bool {
	return slices.ContainsFunc(s.Wishes, func(w Wish) bool {
		return w.Kind == Forbid && w.Crop == crop && (w.Bed == "" || w.Bed == bed)
	})
}

// hours are the fewest hours a week that any wish allows.
func (s *Setting) hours() (least float64, told bool) {
	for _, w := range s.Wishes {
		if w.Kind == Hours && (!told || w.Hours < least) {
			least, told = w.Hours, true
		}
	}
	return least, told
}

// known refuses wishes that name what is not there.
func (s *Setting) known(all []plan.Planting) error {
	var faults fault.List
	for _, w := range s.Wishes {
		switch w.Kind {
		case Pin:
			if !slices.ContainsFunc(all, func(p plan.Planting) bool { return p.ID == w.Planting }) {
				faults = append(faults, fault.New(fault.NotFound, "draft.pin_unknown", words.Args{"planting": w.Planting}))
			}
		case Forbid:
			if _, ok := s.Book.Crop(w.Crop); !ok {
				faults = append(faults, fault.New(fault.NotFound, "draft.crop_unknown", words.Args{"crop": w.Crop}))
			}
			if w.Bed != "" && !s.hasBed(w.Bed) {
				faults = append(faults, fault.New(fault.NotFound, "draft.bed_unknown", words.Args{"bed": w.Bed}))
			}
		case Hours:
			if !(w.Hours >= 0 && w.Hours <= hoursAWeek) {
				faults = append(faults, fault.New(fault.OutOfRange, "draft.hours", words.Args{"given": w.Hours, "most": hoursAWeek}))
			}
		default:
			faults = append(faults, fault.New(fault.Invalid, "draft.wish_kind", words.Args{"given": string(w.Kind)}))
		}
	}
	if len(faults) > 0 {
		return faults
	}
	return nil
}

// hoursAWeek is all the hours there are in a week.
const hoursAWeek = 168

func (s *Setting) hasBed(id string) bool {
	for i := range s.Holding.Beds {
		if s.Holding.Beds[i].ID == id {
			return true
		}
	}
	return false
}

// stand is what a setting's kept plantings come to.
type stand struct {
	kept   []plan.Planting
	scales *outlook.Scales
	ground *space.Ground
}

// standOf lays out what is kept.
func standOf(s *Setting, all []plan.Planting) (*stand, error) {
	out := &stand{kept: kept(s, all)}
	own := s.Setting
	own.Holding = only(s.Holding, out.kept)
	var err error
	if out.scales, err = outlook.NewScales(own, outlook.NewMemory()); err != nil {
		return nil, err
	}
	out.ground, err = space.Of(out.scales.Table, own.Holding, s.Book, s.Today)
	return out, err
}

// met tells whether the wishes can hold together: pinned plantings have room and are
// not forbidden, and what is kept asks for no more hours than there are.
func (s *Setting) met(st *stand) bool {
	for i := range st.kept {
		if p := &st.kept[i]; s.pinned(p.ID) && s.forbidden(p.Crop, p.Bed) {
			return false
		}
	}
	for i := range st.ground.Beds {
		for _, o := range st.ground.Beds[i].Overlaps() {
			if slices.ContainsFunc(o.Plantings, s.pinned) {
				return false
			}
		}
	}
	hours, told := s.hours()
	return !told || slices.Max(workOf(s, st.ground)) <= hours
}

// Smallest leaves out of wishes that cannot hold together every one without which
// they still cannot: a set of which any one wish may be given up (a deletion filter,
// Chinneck & Dravnieks 1991, "Locating minimal infeasible constraint sets in linear
// programs", ORSA Journal on Computing 3:157-168). It is smallest in that none of it
// can be spared; there may be another with fewer wishes.
func Smallest(wishes []Wish, possible func([]Wish) (bool, error)) ([]Wish, error) {
	out := slices.Clone(wishes)
	for i := 0; i < len(out); {
		without := slices.Delete(slices.Clone(out), i, i+1)
		ok, err := possible(without)
		if err != nil {
			return nil, err
		}
		if ok {
			i++
			continue
		}
		out = without
	}
	return out, nil
}

// conflict is the fault of wishes that cannot hold together.
func (s *Setting) conflict(all []plan.Planting) error {
	least, err := Smallest(s.Wishes, func(wishes []Wish) (bool, error) {
		own := *s
		own.Wishes = wishes
		st, err := standOf(&own, all)
		return err == nil && own.met(st), err
	})
	if err != nil {
		return err
	}
	faults := fault.List{fault.New(fault.Invalid, "draft.conflict", words.Args{"n": len(least)})}
	for _, w := range least {
		faults = append(faults, &fault.Error{Kind: fault.Invalid, Phrase: w.Phrase()})
	}
	return faults
}
