package outlook

import "sync"

// sums are a group's vegetables added up to weeks and woven to ribbons, made when
// they are first asked for. They live as long as the group's years, so that after
// an edit only what it touched is added up anew.
type sums struct {
	mu      sync.Mutex
	weekly  map[string]*Weekly
	ribbons map[string]*Ribbon
}

// weeklyOf returns a vegetable's weeks with every future, made by make when they
// are not at hand.
func (s *sums) weeklyOf(vegetable string, make func() Weekly) Weekly {
	s.mu.Lock()
	defer s.mu.Unlock()
	if known := s.weekly[vegetable]; known != nil {
		return *known
	}
	if s.weekly == nil {
		s.weekly = map[string]*Weekly{}
	}
	made := make()
	s.weekly[vegetable] = &made
	return made
}

// ribbonOf is the like for the ribbon.
func (s *sums) ribbonOf(vegetable string, make func() Ribbon) Ribbon {
	s.mu.Lock()
	defer s.mu.Unlock()
	if known := s.ribbons[vegetable]; known != nil {
		return *known
	}
	if s.ribbons == nil {
		s.ribbons = map[string]*Ribbon{}
	}
	made := make()
	s.ribbons[vegetable] = &made
	return made
}
