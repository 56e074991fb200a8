package desk

import (
	"sync"
	"time"

	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/observed"
	"garner/internal/words"
)

// BrokerState is how the link to the broker of the instruments stands.
type BrokerState struct {
	Host      string        `json:"host"` // without user or password
	Connected bool          `json:"connected"`
	Since     time.Time     `json:"since"`
	Next      *time.Time    `json:"next_try"`
	Failures  int           `json:"failures"`
	Why       *words.Phrase `json:"-"`
}

// hearing is what an office knows of the broker.
type hearing struct {
	mu    sync.Mutex
	state *BrokerState // nil: the program was told of none
	hours heardHours
}

// BrokerIs notes how the link stands.
func (o *Office) BrokerIs(s BrokerState) {
	o.hearing.mu.Lock()
	defer o.hearing.mu.Unlock()
	o.hearing.state = &s
}

// Broker is how the link to the broker stands; nil where none was told.
func (o *Office) Broker() *BrokerState {
	o.hearing.mu.Lock()
	defer o.hearing.mu.Unlock()
	return o.hearing.state
}

// Topics are those that the instruments of the household send under, each once.
func (o *Office) Topics() ([]string, error) {
	h, err := o.Holding()
	if err != nil {
		return nil, err
	}
	var out []string
	seen := map[string]bool{}
	for i := range h.Sensors {
		if t := h.Sensors[i].Topic; !seen[t] {
			seen[t] = true
			out = append(out, t)
		}
	}
	return out, nil
}

// Hear keeps what was sent, all of it in one transaction: when it returns without
// an error nothing of it is lost any more. Messages of no instrument are passed
// over; those that cannot be read are counted.
func (o *Office) Hear(messages []Message) error {
	k, can := o.keeper.(WeatherKeeper)
	if !can {
		return fault.New(fault.Storage, "desk.hear_no_keeper", nil)
	}
	h, err := o.Holding()
	if err != nil {
		return err
	}
	var figures []Measured
	var refused []RefusedMessage
	for i := range messages {
		m := &messages[i]
		for k := range h.Sensors {
			s := &h.Sensors[k]
			if !MatchTopic(s.Topic, m.Topic) || m.Retained && s.Time == "" {
				continue // when a retained figure was measured is not known
			}
			f, why := heardIn(s, m)
			if why != nil {
				refused = append(refused, RefusedMessage{s.ID, m.At.Unix(), *why})
				continue
			}
			figures = append(figures, f)
		}
	}
	if len(figures)+len(refused) == 0 {
		return nil
	}
	return k.KeepMeasured(figures, refused)
}

// SensorState is what was heard of an instrument.
type SensorState struct {
	ID       string        `json:"id"`
	Name     string        `json:"name"`
	Topic    string        `json:"topic"`
	Bed      string        `json:"bed,omitempty"`
	BedName  string        `json:"-"`
	Quantity string        `json:"quantity"`
	Unit     string        `json:"unit"`
	Value    *float64      `json:"value"`
	At       *time.Time    `json:"at"`
	Refused  int           `json:"refused"`
	Why      *words.Phrase `json:"-"`
	Silent   bool          `json:"silent"` // nothing for a day, or never
}

// silentAfter is how long an instrument may say nothing before it is told.
const silentAfter = 24 * time.Hour

// ownUnits are the units that figures are kept in.
var ownUnits = map[string]string{observed.Temperature: "C", observed.Humidity: "%", observed.Rain: "mm", observed.RainTotal: "mm",
	observed.Radiation: "W/m2", observed.Wind: "m/s", observed.SoilMoisture: "%", observed.SoilTension: "kPa"}

// sensorStates are those of a site's instruments.
func (o *Office) sensorStates(h *holding.Holding, site string) ([]SensorState, error) {
	out := []SensorState{}
	k, can := o.keeper.(WeatherKeeper)
	for i := range h.Sensors {
		s := &h.Sensors[i]
		if s.Site != site {
			continue
		}
		state := SensorState{ID: s.ID, Name: s.Name, Topic: s.Topic, Bed: s.Bed, BedName: bedNameOf(h, s.Bed), Quantity: s.Quantity, Unit: ownUnits[s.Quantity], Silent: true}
		if can {
			heard, err := k.Heard(s.ID)
			if err != nil {
				return nil, err
			}
			if heard != nil {
				state.Refused, state.Why = heard.Refused, heard.Why
				if heard.At != 0 {
					state.Value, state.At = &heard.Value, moment(heard.At, h)
					state.Silent = time.Since(*state.At) > silentAfter
				}
			}
		}
		out = append(out, state)
	}
	return out, nil
}
