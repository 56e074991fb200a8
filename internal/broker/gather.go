package broker

import (
	"context"
	"crypto/sha256"
	"errors"
	"time"

	mqtt "github.com/eclipse/paho.mqtt.golang"
	"github.com/eclipse/paho.mqtt.golang/packets"

	"garner/internal/desk"
)

// mostBatch is how many messages are kept in one transaction. As many wait; then
// the broker has to.
const mostBatch = 500

// errNotKept says that what came could not be kept.
var errNotKept = errors.New("not kept")

// gather keeps what comes, in batches of what has come by then, and acknowledges
// it once it is safe. What cannot be kept ends the link: unacknowledged, it comes
// again with the next.
func (l *listener) gather(ctx context.Context) error {
	for {
		batch, ok := l.batch(ctx)
		if !ok {
			return nil
		}
		var messages []desk.Message
		for _, m := range batch {
			if !l.seen.again(m) {
				messages = append(messages, desk.Message{Topic: m.Topic(), Payload: m.Payload(), At: time.Now(), Retained: m.Retained()})
			}
		}
		if len(messages) > 0 {
			if err := l.Keep(messages); err != nil {
				l.Log.Error("what instruments sent could not be kept", "messages", len(messages))
				return errNotKept
			}
		}
		for _, m := range batch {
			l.seen.note(m)
			m.Ack()
		}
	}
}

// batch waits for a message and takes all that have come with it.
func (l *listener) batch(ctx context.Context) ([]mqtt.Message, bool) {
	var out []mqtt.Message
	select {
	case <-ctx.Done():
		return nil, false
	case m := <-l.inbox:
		out = append(out, m)
	}
	for len(out) < mostBatch {
		select {
		case m := <-l.inbox:
			out = append(out, m)
		default:
			return out, true
		}
	}
	return out, true
}

// kept knows the last messages that were kept, so that one that comes again is
// known: the broker sends anew what it saw no acknowledgement of.
type kept struct {
	last []mark
	next int
}

type mark struct {
	id  uint16
	sum [sha256.Size]byte
}

// mostKept is more than a broker leaves unacknowledged at once: the message ids
// of a session are fewer than these.
const mostKept = 4096

func newKept() *kept { return &kept{last: make([]mark, 0, mostKept)} }

func markOf(m mqtt.Message) mark {
	return mark{m.MessageID(), sha256.Sum256(append([]byte(m.Topic()+"\x00"), m.Payload()...))}
}

// again tells a message that the broker sends anew and that was kept.
func (k *kept) again(m mqtt.Message) bool {
	if !m.Duplicate() {
		return false
	}
	own := markOf(m)
	for _, known := range k.last {
		if known == own {
			return true
		}
	}
	return false
}

func (k *kept) note(m mqtt.Message) {
	if m.Qos() == 0 {
		return // never sent anew
	}
	if len(k.last) < mostKept {
		k.last = append(k.last, markOf(m))
		return
	}
	k.last[k.next] = markOf(m)
	k.next = (k.next + 1) % mostKept
}

// refused tells that the broker was there and would not have us.
func refused(err error) bool {
	for _, no := range []error{packets.ErrorRefusedBadUsernameOrPassword, packets.ErrorRefusedNotAuthorised, packets.ErrorRefusedIDRejected, packets.ErrorRefusedBadProtocolVersion} {
		if errors.Is(err, no) {
			return true
		}
	}
	return false
}
