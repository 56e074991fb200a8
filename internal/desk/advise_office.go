package desk

import (
	"garner/internal/advise"
	"garner/internal/num"
)

// advisers are those last asked: of the plan as it stands and of what is tried.
type advisers struct {
	last, tried adviserOf
}

// adviserOf is an adviser with the name of what it was made from.
type adviserOf struct {
	name    num.Digest
	adviser *advise.Adviser
}

// adviser makes an adviser for what was asked, or returns it when it is at hand.
func (o *Office) adviser(a *asked) (*advise.Adviser, error) {
	key := a.answer("adviser").Sum()
	o.computing.Lock()
	defer o.computing.Unlock()
	kept := &o.advisers.last
	if a.tried {
		kept = &o.advisers.tried
	}
	if kept.adviser == nil || kept.name != key {
		made, err := advise.New(a.setting, o.memory)
		if err != nil {
			return nil, err
		}
		*kept = adviserOf{key, made}
	}
	return kept.adviser, nil
}
