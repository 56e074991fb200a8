package words

import (
	"encoding/json"
	"fmt"

	"garner/internal/cal"
)

// A phrase that is kept keeps what its values are, so that it is put into words
// years later as it would have been on the day: a date, a day of any year and a
// phrase are each marked as such; numbers, texts and lists stand as they are.
const (
	keptDate     = "date"
	keptMonthDay = "month_day"
	keptPhrase   = "phrase"
)

// keptForm is a phrase as it is kept.
type keptForm struct {
	Key  string         `json:"key"`
	Args map[string]any `json:"args,omitempty"`
}

// MarshalJSON writes a phrase to be kept.
func (p Phrase) MarshalJSON() ([]byte, error) {
	k := keptForm{Key: p.Key}
	for name, v := range p.Args {
		if k.Args == nil {
			k.Args = map[string]any{}
		}
		k.Args[name] = keptValue(v)
	}
	return json.Marshal(k)
}

func keptValue(v any) any {
	switch v := v.(type) {
	case cal.Date:
		return map[string]string{keptDate: v.String()}
	case cal.MonthDay:
		return map[string][2]int{keptMonthDay: {v.Month, v.Day}}
	case Phrase:
		return map[string]Phrase{keptPhrase: v}
	case *Phrase:
		return map[string]Phrase{keptPhrase: *v}
	case []Phrase:
		list := make([]any, len(v))
		for i := range v {
			list[i] = keptValue(v[i])
		}
		return list
	case []any:
		list := make([]any, len(v))
		for i := range v {
			list[i] = keptValue(v[i])
		}
		return list
	case error:
		return v.Error()
	}
	if x, ok := number(v); ok {
		return x
	}
	if s, ok := v.(fmt.Stringer); ok {
		return s.String()
	}
	return v
}

// UnmarshalJSON reads a phrase that was kept.
func (p *Phrase) UnmarshalJSON(text []byte) error {
	var k struct {
		Key  string                     `json:"key"`
		Args map[string]json.RawMessage `json:"args"`
	}
	if err := json.Unmarshal(text, &k); err != nil {
		return err
	}
	*p = Phrase{Key: k.Key}
	for name, raw := range k.Args {
		v, err := readValue(raw)
		if err != nil {
			return fmt.Errorf("%s of %q: %w", name, k.Key, err)
		}
		if p.Args == nil {
			p.Args = Args{}
		}
		p.Args[name] = v
	}
	return nil
}

func readValue(raw json.RawMessage) (any, error) {
	switch raw[0] {
	case '{':
		return readMarked(raw)
	case '[':
		var list []json.RawMessage
		if err := json.Unmarshal(raw, &list); err != nil {
			return nil, err
		}
		out := make([]any, len(list))
		for i := range list {
			var err error
			if out[i], err = readValue(list[i]); err != nil {
				return nil, err
			}
		}
		return out, nil
	}
	var v any
	err := json.Unmarshal(raw, &v)
	return v, err
}

// readMarked reads a value that says what it is.
func readMarked(raw json.RawMessage) (any, error) {
	var marked struct {
		Date     *cal.Date `json:"date"`
		MonthDay *[2]int   `json:"month_day"`
		Phrase   *Phrase   `json:"phrase"`
	}
	if err := json.Unmarshal(raw, &marked); err != nil {
		return nil, err
	}
	switch {
	case marked.Date != nil:
		return *marked.Date, nil
	case marked.MonthDay != nil:
		return cal.MonthDay{Month: marked.MonthDay[0], Day: marked.MonthDay[1]}, nil
	case marked.Phrase != nil:
		return *marked.Phrase, nil
	}
	return nil, fmt.Errorf("%s is no value of a phrase", raw)
}
