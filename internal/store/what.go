package store

import (
	"encoding/json"
	"fmt"

	"garner/internal/cal"
	"garner/internal/words"
)

// An entry says in a phrase what it did. As JSON a date is {"date": "2027-06-20"},
// a day of any year {"day": "06-20"} and a phrase {"phrase": "key", "with": {...}};
// texts, numbers and lists are themselves.

func packPhrase(p words.Phrase) string {
	out, _ := json.Marshal(packed(p)) // made of maps, lists, texts and numbers
	return string(out)
}

func packed(v any) any {
	switch v := v.(type) {
	case words.Phrase:
		with := map[string]any{}
		for name, arg := range v.Args {
			with[name] = packed(arg)
		}
		return map[string]any{"phrase": v.Key, "with": with}
	case *words.Phrase:
		return packed(*v)
	case cal.Date:
		return map[string]any{"date": v.String()}
	case cal.MonthDay:
		return map[string]any{"day": v.String()}
	case []words.Phrase:
		return packedList(v)
	case []string:
		return packedList(v)
	case []any:
		return packedList(v)
	case string, bool, int, int64, float64:
		return v
	}
	return fmt.Sprint(v)
}

func packedList[T any](list []T) []any {
	out := make([]any, len(list))
	for i := range list {
		out[i] = packed(list[i])
	}
	return out
}

func unpackPhrase(text string) (words.Phrase, error) {
	var raw any
	if err := json.Unmarshal([]byte(text), &raw); err != nil {
		return words.Phrase{}, err
	}
	p, ok := unpacked(raw).(words.Phrase)
	if !ok {
		return words.Phrase{}, fmt.Errorf("%s is no phrase", text)
	}
	return p, nil
}

func unpacked(v any) any {
	switch v := v.(type) {
	case []any:
		out := make([]any, len(v))
		for i := range v {
			out[i] = unpacked(v[i])
		}
		return out
	case map[string]any:
		return unpackedObject(v)
	}
	return v
}

func unpackedObject(v map[string]any) any {
	if text, ok := v["date"].(string); ok {
		d, err := cal.Parse(text)
		if err != nil {
			return cal.None
		}
		return d
	}
	if text, ok := v["day"].(string); ok {
		d, _ := cal.ParseMonthDay(text) // what cannot be read is no day
		return d
	}
	key, _ := v["phrase"].(string)
	p := words.Phrase{Key: key}
	if with, ok := v["with"].(map[string]any); ok && len(with) > 0 {
		p.Args = words.Args{}
		for name, arg := range with {
			p.Args[name] = unpacked(arg)
		}
	}
	return p
}
