package draft

import (
	"garner/internal/crop"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/programme"
	"garner/internal/rotation"
	"garner/internal/words"
)

// builder makes one draft.
type builder struct {
	outlook.Setting
	setting *Setting
	draft   *Draft
	problem *programme.Problem
	scales  *outlook.Scales
	history *rotation.History
	// demands of groups by the name of their row in the table
	groupRows map[string]int
	kinds     []kind
	keepings  map[*crop.Use]*keeping
	sheets    map[string]sheet // by bed
	northern  bool
	// kitchenRow is the resource of the kitchen's hours; noHours: they are not limited
	kitchenRow int
}

// Build makes the planning problem of a setting. Wishes that name what is not there
// or cannot hold together are a fault that names them.
func Build(s Setting) (*Draft, error) {
	all, faults := plan.Resolve(s.Holding.Plans, s.Holding.Plantings, s.Holding.Changes, s.Holding.Plan)
	if len(faults) > 0 {
		return nil, faults
	}
	if err := s.known(all); err != nil {
		return nil, err
	}
	st, err := standOf(&s, all)
	if err != nil {
		return nil, err
	}
	if !s.met(st) {
		return nil, s.conflict(all)
	}
	b := &builder{Setting: s.Setting, setting: &s, scales: st.scales, keepings: map[*crop.Use]*keeping{}, groupRows: map[string]int{}, northern: northern(&s),
		problem: &programme.Problem{Name: s.Holding.ID, From: s.From, Weeks: s.Weeks},
		draft:   &Draft{Kept: st.kept, setting: s, present: all, ground: st.ground, demands: map[string]int{}}}
	b.draft.Problem = b.problem
	for f := range s.Years {
		b.problem.Futures = append(b.problem.Futures, f)
	}
	if b.history, err = rotation.NewHistory(rotation.Ground{Book: s.Book, Sites: s.Holding.Sites, Beds: s.Holding.Beds,
		Plantings: st.kept, Records: s.Holding.Records}); err != nil {
		return nil, err
	}
	b.wants()
	b.fixed()
	b.owed()
	if b.sheets, err = b.reach(st.ground); err != nil {
		return nil, err
	}
	if err := b.grounds(st.ground); err != nil {
		return nil, err
	}
	work := b.resources(workOf(&s, st.ground))
	b.kitchen()
	if err := b.sowings(work); err != nil {
		return nil, err
	}
	b.rotate()
	b.ungrown()
	return b.draft, b.problem.Sound()
}

// northern tells in which half of the year it is cold, by the first site.
func northern(s *Setting) bool {
	return len(s.Holding.Sites) == 0 || s.Holding.Sites[0].Location.LatitudeDeg >= 0
}

// ungrown tells of vegetables that none of the free ground can grow in time.
func (b *builder) ungrown() {
	grown := make([]bool, len(b.problem.Demands))
	for j := range b.problem.Sowings {
		grown[b.problem.Sowings[j].Demand] = true
	}
	for d, found := range grown {
		if !found {
			b.draft.Notes = append(b.draft.Notes, words.P("draft.no_bed", words.Args{"vegetable": b.problem.Demands[d].ID}))
		}
	}
}
