package shade

import (
	"slices"

	"garner/internal/fault"
	"garner/internal/place"
	"garner/internal/words"
)

// Scene is a site's plan made ready: the sun's ways over it and what stands in
// them. It does not change and may be used from many places at once.
type Scene struct {
	obstacles []obstacle
	days      [Tenths][]step
	round     [skyAzimuths]ray
	states    []int       // a tenth of the year for each state of the leaves
	stateOf   [Tenths]int // which of them each tenth has
}

// NewScene takes the features of a site that throw shade. Those of other sites
// and paths are passed over; what cannot throw shade as it is told is named in
// the faults, and the scene stands without it.
func NewScene(site place.Site, features []place.Feature) (*Scene, fault.List) {
	s := &Scene{}
	kinds, err := usual()
	if err != nil {
		return s, fault.List{{Kind: fault.Internal, Phrase: words.P("shade.data", nil), Err: err}}
	}
	var faults fault.List
	for i := range features {
		f := &features[i]
		if f.Site != site.ID || f.Kind == place.Path {
			continue
		}
		if wrong := check(f); wrong != nil {
			faults = append(faults, wrong)
			continue
		}
		s.obstacles = append(s.obstacles, build(i, f, site.Location.LatitudeDeg >= 0, kinds))
	}
	if len(s.obstacles) > 0 {
		s.days, s.round = daysOf(&site), roundOf(site.UpDeg)
	}
	s.gatherStates()
	return s, faults
}

// check tells why a feature throws no shade; nil when it does.
func check(f *place.Feature) *fault.Error {
	switch {
	case !(f.HeightM > 0):
		return fault.New(fault.Invalid, "shade.no_height", words.Args{"feature": f.Name})
	case !(f.LengthM > 0 && f.WidthM > 0):
		return fault.New(fault.Invalid, "shade.no_ground", words.Args{"feature": f.Name})
	case f.Tree() && !(f.BaseM >= 0 && f.BaseM < f.HeightM):
		return fault.New(fault.Invalid, "shade.base_above_top", words.Args{"feature": f.Name, "base": f.BaseM, "height": f.HeightM})
	}
	return nil
}

// gatherStates finds the tenths between which leaves make a difference.
func (s *Scene) gatherStates() {
	s.states, s.stateOf = nil, [Tenths]int{}
	for t := range Tenths {
		k := slices.IndexFunc(s.states, func(known int) bool { return s.alike(known, t) })
		if k < 0 {
			k = len(s.states)
			s.states = append(s.states, t)
		}
		s.stateOf[t] = k
	}
}

// alike tells whether all leaves are the same in two tenths.
func (s *Scene) alike(a, b int) bool {
	for i := range s.obstacles {
		if s.obstacles[i].lnThrough[a] != s.obstacles[i].lnThrough[b] {
			return false
		}
	}
	return true
}

// Features are the places in the list of features of those that throw shade.
func (s *Scene) Features() []int {
	out := make([]int, len(s.obstacles))
	for i := range s.obstacles {
		out[i] = s.obstacles[i].feature
	}
	return out
}

// Bare tells whether a feature stands without its leaves in the middle of a
// month, 1-12; false of what has none or keeps them.
func (s *Scene) Bare(feature, month int) bool {
	for i := range s.obstacles {
		if o := &s.obstacles[i]; o.feature == feature {
			return o.seasonal && o.leaf[3*month-2] < 0.5
		}
	}
	return false
}

// Without is the scene with one feature gone, by its place in the list.
func (s *Scene) Without(feature int) *Scene {
	less := *s
	less.obstacles = slices.DeleteFunc(slices.Clone(s.obstacles), func(o obstacle) bool { return o.feature == feature })
	less.gatherStates()
	return &less
}
