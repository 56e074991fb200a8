package desk

import (
	"time"

	"garner/internal/watering"
)

// WaterUseWithin is WaterUse where that is there within so long; else what was given is
// told alone, and the months to come are worked out further: coming tells so.
func (o *Office) WaterUseWithin(patience time.Duration) (u *WaterUse, coming bool, err error) {
	a, err := o.ask(nil)
	if err != nil {
		return nil, false, err
	}
	u, there, err := workedOut(o, a.answer("water by month").Sum(), patience, o.WaterUse)
	if err != nil || there {
		return u, false, err
	}
	u, err = waterUse(a, &watering.Demand{First: a.setting.Today, Futures: 1})
	return u, true, err
}
