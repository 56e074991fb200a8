package desk

import (
	"encoding/json"
	"math"
	"strconv"
	"strings"
	"time"

	"garner/internal/observed"
	"garner/internal/words"
)

// Message is what was sent under a topic.
type Message struct {
	Topic    string
	Payload  []byte
	At       time.Time // it came
	Retained bool      // kept by the broker: sent at some time before
}

const (
	mostPayload = 64 << 10
	mostEarly   = 10 * time.Minute    // clocks differ
	mostLate    = 40 * 24 * time.Hour // an instrument that kept its figures
)

// gathers says what the figures of a quantity come to.
var gathers = map[string]Gather{observed.Rain: Parts, observed.RainTotal: Totals}

// heardIn reads one instrument's figure in a message; why tells what is wrong.
func heardIn(s *observed.Sensor, m *Message) (f Measured, why *words.Phrase) {
	refuse := func(key string, args words.Args) (Measured, *words.Phrase) {
		p := words.P(key, args)
		return Measured{}, &p
	}
	f = Measured{Sensor: s.ID, At: m.At.Unix(), How: gathers[s.Quantity]}
	if len(m.Payload) > mostPayload {
		return refuse("desk.heard_long", words.Args{"n": len(m.Payload)})
	}
	var tree any
	if s.Field != "" || s.Time != "" {
		d := json.NewDecoder(strings.NewReader(string(m.Payload)))
		d.UseNumber()
		if d.Decode(&tree) != nil {
			return refuse("desk.heard_no_json", words.Args{"given": excerpt(m.Payload)})
		}
	}
	sent, ok := figureIn(s, m, tree)
	if !ok {
		return refuse("desk.heard_no_figure", words.Args{"given": excerpt(m.Payload)})
	}
	if f.Value, ok = s.Figure(sent); !ok {
		return refuse("desk.heard_impossible", words.Args{"given": sent, "unit": s.Unit})
	}
	if s.Time != "" {
		at, ok := timeIn(stepTo(tree, s.Time))
		if !ok || at.After(m.At.Add(mostEarly)) || at.Before(m.At.Add(-mostLate)) {
			return refuse("desk.heard_time", words.Args{"given": excerpt(m.Payload)})
		}
		f.At = at.Unix()
	}
	return f, nil
}

func figureIn(s *observed.Sensor, m *Message, tree any) (float64, bool) {
	text := strings.TrimSpace(string(m.Payload))
	if s.Field != "" {
		switch v := stepTo(tree, s.Field).(type) {
		case json.Number:
			text = v.String()
		case string:
			text = strings.TrimSpace(v)
		default:
			return 0, false
		}
	}
	v, err := strconv.ParseFloat(text, 64)
	return v, err == nil && !math.IsNaN(v) && !math.IsInf(v, 0)
}

// stepTo walks names parted by points; a number steps into a list.
func stepTo(tree any, path string) any {
	for _, name := range strings.Split(path, ".") {
		switch v := tree.(type) {
		case map[string]any:
			tree = v[name]
		case []any:
			i, err := strconv.Atoi(name)
			if err != nil || i < 0 || i >= len(v) {
				return nil
			}
			tree = v[i]
		default:
			return nil
		}
	}
	return tree
}

// timeIn reads RFC 3339, or seconds or milliseconds since 1970.
func timeIn(v any) (time.Time, bool) {
	switch v := v.(type) {
	case string:
		t, err := time.Parse(time.RFC3339, v)
		return t, err == nil
	case json.Number:
		s, err := v.Float64()
		if err != nil || math.Abs(s) > 1e14 {
			return time.Time{}, false
		}
		if math.Abs(s) > 1e11 {
			s /= 1000
		}
		return time.Unix(int64(s), 0), true
	}
	return time.Time{}, false
}

// excerpt is the beginning of what was sent, fit to be shown.
func excerpt(payload []byte) string {
	text := strings.Map(func(r rune) rune {
		if r < 0x20 || r == 0x7f {
			return ' '
		}
		return r
	}, strings.ToValidUTF8(string(payload[:min(len(payload), 60)]), "?"))
	return strings.TrimSpace(text)
}

// MatchTopic tells whether a topic is one that a filter asks for; + stands for
// one level (MQTT 3.1.1, 4.7).
func MatchTopic(filter, topic string) bool {
	f, t := strings.Split(filter, "/"), strings.Split(topic, "/")
	if len(f) != len(t) || strings.HasPrefix(topic, "$") && !strings.HasPrefix(filter, "$") {
		return false
	}
	for i := range f {
		if f[i] != "+" && f[i] != t[i] {
			return false
		}
	}
	return true
}
