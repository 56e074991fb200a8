package fetch

import (
	"context"
	"errors"
	"io"
	"net"
	"net/http"
	"net/url"
	"time"

	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/words"
)

const (
	mostBytes     = 2 << 20
	mostRedirects = 3
)

// Getter gets forecasts.
type Getter struct {
	client *http.Client
}

// New returns a getter that gives an answer so long to be complete.
func New(within time.Duration) *Getter {
	transport := &http.Transport{
		Proxy:                 http.ProxyFromEnvironment,
		DialContext:           (&net.Dialer{Timeout: within / 2}).DialContext,
		TLSHandshakeTimeout:   within / 2,
		ResponseHeaderTimeout: within,
		MaxIdleConns:          2,
		IdleConnTimeout:       time.Minute,
	}
	return &Getter{client: &http.Client{Transport: transport, Timeout: within, CheckRedirect: sameHost}}
}

// errElsewhere says that an address leads to another host.
var errElsewhere = errors.New("elsewhere")

// sameHost lets a redirect pass that stays where it was asked.
func sameHost(next *http.Request, before []*http.Request) error {
	first := before[0].URL
	toTLS := first.Scheme == "http" && next.URL.Scheme == "https" && next.URL.Hostname() == first.Hostname()
	if len(before) > mostRedirects || !toTLS && (next.URL.Host != first.Host || next.URL.Scheme != first.Scheme) {
		return errElsewhere
	}
	return nil
}

// Get asks an address. A desk.Fetch.
func (g *Getter) Get(ctx context.Context, ask desk.FetchAsk) (*desk.FetchAnswer, error) {
	u, err := url.Parse(ask.URL)
	if err != nil || u.Scheme != "http" && u.Scheme != "https" || u.Host == "" {
		return nil, failed("fetch.bad_address", nil)
	}
	r, err := http.NewRequestWithContext(ctx, http.MethodGet, ask.URL, nil)
	if err != nil {
		return nil, failed("fetch.bad_address", nil)
	}
	r.Header.Set("User-Agent", "garner")
	r.Header.Set("Accept", "application/json, text/csv;q=0.9, */*;q=0.5")
	if ask.Tag != "" {
		r.Header.Set("If-None-Match", ask.Tag)
	}
	if ask.Modified != "" {
		r.Header.Set("If-Modified-Since", ask.Modified)
	}
	answer, err := g.client.Do(r)
	if err != nil {
		return nil, reason(err)
	}
	defer answer.Body.Close()
	switch {
	case answer.StatusCode == http.StatusNotModified && (ask.Tag != "" || ask.Modified != ""):
		return &desk.FetchAnswer{Unchanged: true}, nil
	case answer.StatusCode != http.StatusOK:
		return nil, failed("fetch.status", words.Args{"status": answer.StatusCode})
	}
	body, err := io.ReadAll(io.LimitReader(answer.Body, mostBytes+1))
	switch {
	case err != nil:
		return nil, reason(err)
	case len(body) > mostBytes:
		return nil, failed("fetch.long", words.Args{"mb": mostBytes >> 20})
	}
	return &desk.FetchAnswer{Body: body, Tag: answer.Header.Get("ETag"), Modified: answer.Header.Get("Last-Modified")}, nil
}

// reason says why nothing was got, without the address.
func reason(err error) error {
	var timeout net.Error
	var unknown *net.DNSError
	switch {
	case errors.Is(err, errElsewhere):
		return failed("fetch.elsewhere", nil)
	case errors.As(err, &timeout) && timeout.Timeout():
		return failed("fetch.slow", nil)
	case errors.As(err, &unknown):
		return failed("fetch.no_such_host", nil)
	}
	return failed("fetch.no_answer", nil)
}

func failed(key string, args words.Args) error { return fault.New(fault.Invalid, key, args) }
