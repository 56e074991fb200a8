package cli

import (
	"context"
	"crypto/rand"
	"encoding/hex"
	"log/slog"
	"os"
	"sync"
	"time"

	"garner/internal/broker"
	"garner/internal/desk"
	"garner/internal/fetch"
)

// passwordVariable holds the password at the broker, which is neither among the
// arguments nor in any file of the holding.
const passwordVariable = "GARNER_MQTT_PASSWORD"

const (
	fetchWithin   = 20 * time.Second
	fetchLook     = 30 * time.Second
	closeLook     = 5 * time.Minute
	firstClose    = 2 * time.Minute // what waited at the broker comes first
	clientSetting = "mqtt_client"
)

// listenForWeather fetches forecasts and hears instruments beside the pages. The
// function it returns waits until both have ended.
func (c *serveCommand) listenForWeather(ctx context.Context, h *household, log *slog.Logger) (wait func(), err error) {
	var running sync.WaitGroup
	if !c.NoFetch {
		running.Go(func() { h.office.FetchForecasts(ctx, fetch.New(fetchWithin).Get, fetchLook) })
	}
	if c.MQTT == "" {
		return running.Wait, nil
	}
	client, err := h.clientID()
	if err != nil {
		return running.Wait, err
	}
	running.Go(func() {
		_ = broker.Listen(ctx, broker.Options{Address: c.MQTT, Password: os.Getenv(passwordVariable), Client: client,
			Topics: h.office.Topics, Keep: h.office.Hear, State: h.office.BrokerIs, Log: log}) // the address was looked at before
	})
	running.Go(func() { closeDays(ctx, h.office, log) })
	return running.Wait, nil
}

// closeDays makes readings of the days that are over, now and again.
func closeDays(ctx context.Context, o *desk.Office, log *slog.Logger) {
	next := firstClose
	for {
		select {
		case <-ctx.Done():
			return
		case <-time.After(next):
		}
		next = closeLook
		if s := o.Broker(); s == nil || !s.Connected {
			continue // the day's last messages may wait at the broker
		}
		if err := o.CloseDays(desk.Author{Who: "MQTT", At: now()}); err != nil {
			log.Error("the days of the instruments were not kept", "why", err.Error())
		}
	}
}

// clientID is what the broker knows this household by: made once, since the broker
// keeps what waits under it.
func (h *household) clientID() (string, error) {
	known, err := h.data.Setting(clientSetting)
	if err != nil || known != "" {
		return known, err
	}
	random := make([]byte, 6)
	_, _ = rand.Read(random) // never fails
	id := "garner-" + hex.EncodeToString(random)
	return id, h.data.Set(clientSetting, id)
}
