package broker

import (
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// The broker drops and comes back: the link comes back by itself, and nothing that
// was sent while the program was away is lost, since the broker keeps the session.
func TestNothingIsLostWhenTheLinkDrops(t *testing.T) {
	b, n := begin(t), &notebook{}
	stop := n.listen(t, b, "")
	until(t, "the link", func() bool { s := n.last(); return s.Connected })
	time.Sleep(200 * time.Millisecond) // subscribed
	c := b.sender("", "")
	for _, p := range numbers(0, 20) {
		send(t, c, "shed/air", 1, p)
	}
	until(t, "twenty messages", func() bool { return len(n.heard()) == 20 })

	b.stop()
	until(t, "a state without a link", func() bool { s := n.last(); return !s.Connected && s.Why != nil && s.Next != nil })
	b.start()
	until(t, "the link again", func() bool { return n.last().Connected })
	c = b.sender("", "")
	for _, p := range numbers(20, 40) {
		send(t, c, "probe", 1, p)
	}
	until(t, "forty messages", func() bool { return len(n.heard()) >= 40 })

	stop() // the program is away
	for _, p := range numbers(40, 140) {
		send(t, c, "shed/air", 1, p)
	}
	again := n.listen(t, b, "")
	until(t, "what was sent meanwhile", func() bool { return len(n.heard()) >= 140 })
	again()

	// Both away, and the broker restarted over it.
	for _, p := range numbers(140, 150) {
		send(t, c, "shed/air", 1, p)
	}
	b.stop()
	b.start()
	n.listen(t, b, "")
	until(t, "what the broker kept", func() bool { return len(n.heard()) >= 150 })
	time.Sleep(300 * time.Millisecond)
	each(t, n.heard(), numbers(0, 150))
}

// What cannot be kept is not acknowledged: it comes again once it can.
func TestNothingIsLostThatCannotBeKept(t *testing.T) {
	b, n := begin(t), &notebook{}
	n.listen(t, b, "")
	until(t, "the link", func() bool { return n.last().Connected })
	time.Sleep(200 * time.Millisecond)
	n.failing(errors.New("the disk is full"))
	c := b.sender("", "")
	for _, p := range numbers(0, 50) {
		send(t, c, "shed/air", 1, p)
	}
	until(t, "a failure", func() bool { s := n.last(); return s.Why != nil && s.Why.Key == "broker.not_kept" })
	n.failing(nil)
	until(t, "fifty messages", func() bool { return len(n.heard()) >= 50 })
	time.Sleep(300 * time.Millisecond)
	each(t, n.heard(), numbers(0, 50))
}

// A flood is kept in batches, and all of it.
func TestAFlood(t *testing.T) {
	b, n := begin(t), &notebook{}
	n.listen(t, b, "")
	until(t, "the link", func() bool { return n.last().Connected })
	time.Sleep(200 * time.Millisecond)
	c := b.sender("", "")
	const flood = 5000
	began := time.Now()
	for _, p := range numbers(0, flood) {
		c.Publish("shed/air", 1, false, p)
	}
	until(t, "the flood", func() bool { return len(n.heard()) >= flood })
	t.Logf("%d messages in %s, %d batches", flood, time.Since(began).Round(time.Millisecond), n.batches)
	each(t, n.heard(), numbers(0, flood))
}

// A broker that does not let the program in is told apart, and its password is in
// no log.
func TestABrokerThatRefuses(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "passwords")
	maker, err := exec.LookPath("mosquitto_passwd")
	if err != nil {
		t.Fatal("there is no mosquitto_passwd, which comes with mosquitto")
	}
	if out, err := exec.Command(maker, "-b", "-c", path, "gardener", "right horse").CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	if err := os.Chmod(path, 0o600); err != nil {
		t.Fatal(err)
	}
	b, n := begin(t, "allow_anonymous false", "password_file "+path), &notebook{}
	stop := n.listen(t, b, strings.Replace("mqtt://gardener@127.0.0.1:PORT", "PORT", portOf(b), 1))
	until(t, "the refusal", func() bool { s := n.last(); return s.Why != nil && s.Why.Key == "broker.refused" })
	stop()
	if log := n.log.String(); strings.Contains(log, "horse") || strings.Contains(log, "gardener") {
		t.Errorf("the log tells a secret: %s", log)
	}
}

func TestAddressOfABroker(t *testing.T) {
	for given, want := range map[string]string{"mqtt://shed": "shed:1883", "mqtts://me@shed": "shed:8883", "mqtt://127.0.0.1:9": "127.0.0.1:9",
		"shed": "", "tcp://shed": "", "mqtt://": "", "mqtt://shed/topic": "", "http://shed": ""} {
		u, err := Address(given)
		switch {
		case want == "" && err == nil:
			t.Errorf("%s was taken", given)
		case want != "" && (err != nil || u.Host != want):
			t.Errorf("%s: %v, %v, want %s", given, u, err, want)
		}
	}
}
