package broker

import (
	"bytes"
	"context"
	"fmt"
	"log/slog"
	"net"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	mqtt "github.com/eclipse/paho.mqtt.golang"

	"garner/internal/desk"
)

// mosquitto is a broker of its own for a test, on loopback. It keeps what waits
// over a restart.
type mosquitto struct {
	t       *testing.T
	port    int
	config  string
	running *exec.Cmd
}

// program finds the broker. tools/mosquitto.sh, which make test runs, installs it
// on a Debian-like machine; there it must be.
func program(t *testing.T) string {
	t.Helper()
	for _, name := range []string{"mosquitto", "/usr/sbin/mosquitto", "/usr/local/sbin/mosquitto"} {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	t.Fatal("there is no mosquitto: run tools/mosquitto.sh, or install it (Debian: apt-get install mosquitto)")
	return ""
}

// begin starts a broker with lines added to its configuration.
func begin(t *testing.T, lines ...string) *mosquitto {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	b := &mosquitto{t: t, port: l.Addr().(*net.TCPAddr).Port}
	_ = l.Close()
	dir := t.TempDir()
	b.config = filepath.Join(dir, "mosquitto.conf")
	own := []string{fmt.Sprintf("listener %d 127.0.0.1", b.port), "persistence true", "persistence_location " + dir + "/", "autosave_interval 1", "max_queued_messages 0", "log_type error"}
	if len(lines) == 0 {
		lines = []string{"allow_anonymous true"}
	}
	if os.Getuid() == 0 {
		own = append(own, "user root") // else it gives up its rights and cannot write here
	}
	if err := os.WriteFile(b.config, []byte(strings.Join(append(own, lines...), "\n")+"\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	b.start()
	t.Cleanup(b.stop)
	return b
}

func (b *mosquitto) start() {
	b.t.Helper()
	b.running = exec.Command(program(b.t), "-c", b.config)
	var said bytes.Buffer
	b.running.Stderr = &said
	if err := b.running.Start(); err != nil {
		b.t.Fatal(err)
	}
	for range 200 {
		c, err := net.Dial("tcp", fmt.Sprintf("127.0.0.1:%d", b.port))
		if err == nil {
			_ = c.Close()
			return
		}
		time.Sleep(25 * time.Millisecond)
	}
	b.t.Fatalf("mosquitto did not begin: %s", said.String())
}

// stop ends the broker as a machine that is shut down does.
func (b *mosquitto) stop() {
	if b.running != nil {
		_ = b.running.Process.Signal(os.Interrupt)
		_ = b.running.Wait()
		b.running = nil
	}
}

// sender is an instrument.
func (b *mosquitto) sender(user, password string) mqtt.Client {
	b.t.Helper()
	o := mqtt.NewClientOptions().AddBroker(fmt.Sprintf("tcp://127.0.0.1:%d", b.port)).SetClientID("instrument").SetAutoReconnect(false)
	if user != "" {
		o.SetUsername(user).SetPassword(password)
	}
	c := mqtt.NewClient(o)
	if k := c.Connect(); !k.WaitTimeout(5*time.Second) || k.Error() != nil {
		b.t.Fatal(k.Error())
	}
	b.t.Cleanup(func() { c.Disconnect(50) })
	return c
}

func send(t *testing.T, c mqtt.Client, topic string, qos byte, payload string) {
	t.Helper()
	if k := c.Publish(topic, qos, false, payload); !k.WaitTimeout(10*time.Second) || k.Error() != nil {
		t.Fatalf("%s was not sent: %v", payload, k.Error())
	}
}

// notebook keeps what is heard, and fails when it is told to.
type notebook struct {
	mu      sync.Mutex
	payload []string
	batches int
	refuse  error
	states  []desk.BrokerState
	log     bytes.Buffer
}

func (n *notebook) keep(m []desk.Message) error {
	n.mu.Lock()
	defer n.mu.Unlock()
	if n.refuse != nil {
		return n.refuse
	}
	n.batches++
	for i := range m {
		n.payload = append(n.payload, string(m[i].Payload))
	}
	return nil
}

func (n *notebook) state(s desk.BrokerState) {
	n.mu.Lock()
	defer n.mu.Unlock()
	n.states = append(n.states, s)
}

func (n *notebook) last() desk.BrokerState {
	n.mu.Lock()
	defer n.mu.Unlock()
	if len(n.states) == 0 {
		return desk.BrokerState{}
	}
	return n.states[len(n.states)-1]
}

func (n *notebook) failing(err error) {
	n.mu.Lock()
	defer n.mu.Unlock()
	n.refuse = err
}

func (n *notebook) heard() []string {
	n.mu.Lock()
	defer n.mu.Unlock()
	return append([]string(nil), n.payload...)
}

// listen hears a broker until the function returned is called.
func (n *notebook) listen(t *testing.T, b *mosquitto, address string) (stop func()) {
	t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	ended := make(chan struct{})
	if address == "" {
		address = fmt.Sprintf("mqtt://127.0.0.1:%d", b.port)
	}
	o := Options{Address: address, Password: "wrong horse", Client: "garner-test", Topics: func() ([]string, error) { return []string{"shed/+", "probe"}, nil },
		Keep: n.keep, State: n.state, Log: slog.New(slog.NewTextHandler(&n.log, nil)), Look: 50 * time.Millisecond}
	o.Pauses.First, o.Pauses.Most = 50*time.Millisecond, 200*time.Millisecond
	go func() {
		defer close(ended)
		if err := Listen(ctx, o); err != nil {
			t.Error(err)
		}
	}()
	var once sync.Once
	stop = func() { once.Do(func() { cancel(); <-ended }) }
	t.Cleanup(stop)
	return stop
}

func until(t *testing.T, what string, is func() bool) {
	t.Helper()
	for range 800 {
		if is() {
			return
		}
		time.Sleep(25 * time.Millisecond)
	}
	t.Fatalf("not within twenty seconds: %s", what)
}

func portOf(b *mosquitto) string { return fmt.Sprint(b.port) }

func numbers(from, to int) []string {
	var out []string
	for i := from; i < to; i++ {
		out = append(out, fmt.Sprint(i))
	}
	return out
}

// each tells whether every message was heard once and no other.
func each(t *testing.T, heard, sent []string) {
	t.Helper()
	count := map[string]int{}
	for _, p := range heard {
		count[p]++
	}
	for _, p := range sent {
		if count[p] != 1 {
			t.Errorf("%s was heard %d times", p, count[p])
		}
		delete(count, p)
	}
	if len(count) > 0 {
		t.Errorf("heard what was never sent: %v", count)
	}
}
