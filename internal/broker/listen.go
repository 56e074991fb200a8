package broker

import (
	"context"
	"errors"
	"log/slog"
	"net/url"
	"slices"
	"time"

	mqtt "github.com/eclipse/paho.mqtt.golang"

	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/words"
)

// Options say where the broker is and who hears what it passes on.
type Options struct {
	Address  string // mqtt://[user@]host:port, mqtts:// over TLS
	Password string
	Client   string // the id under which the broker keeps the session

	Topics func() ([]string, error)            // asked for, again and again
	Keep   func([]desk.Message) error          // returns when they are safe
	State  func(desk.BrokerState)              // told of every change
	Log    *slog.Logger                        // of what is no secret
	Pauses struct{ First, Most time.Duration } // between tries; 0: 2 s, doubling to 5 min
	Look   time.Duration                       // how often topics are asked for; 0: 5 s
}

// Times of the link.
const (
	firstPause = 2 * time.Second
	mostPause  = 5 * time.Minute
	lookAgain  = 5 * time.Second
	linkWithin = 10 * time.Second
	keepAlive  = 30 * time.Second
	farewell   = 2 * time.Second
)

// noTopic is one that nobody listens to. A broker answers in turn (MQTT 3.1.1, 4.6), so
// that once it has answered for this one it has read every acknowledgement before it.
const noTopic = "garner/farewell"

// Address reads where a broker is; the fault says what would be right.
func Address(given string) (*url.URL, error) {
	u, err := url.Parse(given)
	if err != nil || u.Host == "" || !slices.Contains([]string{"mqtt", "mqtts"}, u.Scheme) || u.Path != "" && u.Path != "/" {
		return nil, fault.New(fault.Invalid, "broker.bad_address", nil)
	}
	if u.Port() == "" {
		port := "1883"
		if u.Scheme == "mqtts" {
			port = "8883"
		}
		u.Host += ":" + port
	}
	return u, nil
}

// listener is a link under way.
type listener struct {
	Options
	at    *url.URL
	inbox chan mqtt.Message
	down  chan error
	state desk.BrokerState
	seen  *kept
}

// Listen keeps a link to the broker until the context ends.
func Listen(ctx context.Context, o Options) error {
	at, err := Address(o.Address)
	if err != nil {
		return err
	}
	if o.Pauses.First == 0 {
		o.Pauses.First, o.Pauses.Most = firstPause, mostPause
	}
	if o.Look == 0 {
		o.Look = lookAgain
	}
	l := &listener{Options: o, at: at, seen: newKept()}
	l.state = desk.BrokerState{Host: at.Host, Since: time.Now()}
	l.tell()
	pause := l.Pauses.First
	for ctx.Err() == nil {
		began := time.Now()
		err := l.link(ctx)
		if ctx.Err() != nil {
			break
		}
		if time.Since(began) > time.Minute {
			pause = l.Pauses.First // it held for a while
		}
		l.dropped(err, pause)
		select {
		case <-ctx.Done():
		case <-time.After(pause):
		}
		pause = min(2*pause, l.Pauses.Most)
	}
	return nil
}

func (l *listener) tell() {
	if l.State != nil {
		l.State(l.state)
	}
}

// dropped notes that there is no link.
func (l *listener) dropped(err error, pause time.Duration) {
	why := words.P("broker.no_link", nil)
	switch {
	case refused(err):
		why = words.P("broker.refused", nil)
	case errors.Is(err, errNotKept):
		why = words.P("broker.not_kept", nil)
	}
	next := time.Now().Add(pause)
	if l.state.Connected || l.state.Failures == 0 {
		l.state.Since = time.Now()
		l.Log.Info("no link to the broker", "host", l.at.Host)
	}
	l.state.Connected, l.state.Why, l.state.Next = false, &why, &next
	l.state.Failures++
	l.tell()
}

// link connects, listens and keeps until the link drops or the context ends.
func (l *listener) link(ctx context.Context) error {
	own, stop := context.WithCancel(ctx)
	defer stop()
	l.inbox, l.down = make(chan mqtt.Message, mostBatch), make(chan error, 1)
	client := mqtt.NewClient(l.settings(own))
	if err := wait(own, client.Connect()); err != nil {
		return err
	}
	defer client.Disconnect(250)
	l.state = desk.BrokerState{Host: l.at.Host, Connected: true, Since: time.Now()}
	l.tell()
	l.Log.Info("listening to the broker", "host", l.at.Host)
	failed, ended := make(chan error, 1), make(chan struct{})
	go func() {
		defer close(ended)
		failed <- l.gather(own)
	}()
	defer func() { // what was kept is acknowledged, and the broker has read that, before the link is closed
		stop()
		<-ended
		if client.IsConnectionOpen() {
			client.Unsubscribe(noTopic).WaitTimeout(farewell)
		}
	}()
	heard := map[string]bool{}
	for {
		if err := l.follow(own, client, heard); err != nil {
			return err
		}
		select {
		case <-ctx.Done():
			return nil
		case err := <-l.down:
			return err
		case err := <-failed:
			return err
		case <-time.After(l.Look):
		}
	}
}

// settings are those of one link.
func (l *listener) settings(ctx context.Context) *mqtt.ClientOptions {
	scheme := "tcp"
	if l.at.Scheme == "mqtts" {
		scheme = "ssl"
	}
	o := mqtt.NewClientOptions().AddBroker(scheme + "://" + l.at.Host).SetClientID(l.Client).
		SetCleanSession(false).SetAutoReconnect(false).SetConnectRetry(false).SetAutoAckDisabled(true).SetOrderMatters(true).
		SetConnectTimeout(linkWithin).SetKeepAlive(keepAlive).SetPingTimeout(linkWithin).SetWriteTimeout(linkWithin).
		SetConnectionLostHandler(func(_ mqtt.Client, err error) {
			select {
			case l.down <- err:
			default:
			}
		})
	if user := l.at.User.Username(); user != "" {
		o.SetUsername(user).SetPassword(l.Password)
	}
	inbox := l.inbox
	o.SetDefaultPublishHandler(func(_ mqtt.Client, m mqtt.Message) {
		select {
		case inbox <- m:
		case <-ctx.Done(): // it was not acknowledged and comes again
		}
	})
	return o
}

// follow subscribes to topics that are new and lets go of those that are no more.
func (l *listener) follow(ctx context.Context, client mqtt.Client, heard map[string]bool) error {
	topics, err := l.Topics()
	if err != nil {
		return nil // nothing is told yet
	}
	for _, t := range topics {
		if heard[t] {
			continue
		}
		if err := wait(ctx, client.Subscribe(t, 1, nil)); err != nil {
			return err
		}
		heard[t] = true
	}
	for t := range heard {
		if !slices.Contains(topics, t) {
			if err := wait(ctx, client.Unsubscribe(t)); err != nil {
				return err
			}
			delete(heard, t)
		}
	}
	return nil
}

// wait waits for a token, not longer than a link may take.
func wait(ctx context.Context, t mqtt.Token) error {
	select {
	case <-t.Done():
		return t.Error()
	case <-ctx.Done():
		return ctx.Err()
	case <-time.After(2 * linkWithin):
		return context.DeadlineExceeded
	}
}
