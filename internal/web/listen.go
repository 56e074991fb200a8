package web

import (
	"context"
	"errors"
	"net"
	"net/http"
	"time"

	"garner/internal/fault"
	"garner/internal/words"
)

// How long a client may take, and how long one under way may go on when the
// server is told to stop.
const (
	readHeaderTime = 5 * time.Second
	readTime       = 30 * time.Second
	writeTime      = 60 * time.Second
	idleTime       = 2 * time.Minute
	stopTime       = 5 * time.Second
	mostHeader     = 1 << 16
)

// CheckAddress refuses an address that others than this machine could reach:
// there are no accounts.
func CheckAddress(address string) error {
	host, port, err := net.SplitHostPort(address)
	if err != nil || port == "" {
		return fault.New(fault.Invalid, "web.address_form", words.Args{"given": address})
	}
	if ip := net.ParseIP(host); host == "localhost" || ip != nil && ip.IsLoopback() {
		return nil
	}
	return fault.New(fault.Invalid, "web.address_open", words.Args{"given": address})
}

// Listen opens an address of this machine for Serve.
func Listen(address string) (net.Listener, error) {
	if err := CheckAddress(address); err != nil {
		return nil, err
	}
	l, err := net.Listen("tcp", address)
	if err != nil {
		return nil, &fault.Error{Kind: fault.Conflict, Phrase: words.P("web.address_taken", words.Args{"given": address}), Err: err}
	}
	return l, nil
}

// Serve answers until the context ends; then what is under way is finished.
func (s *Server) Serve(ctx context.Context, l net.Listener) error {
	server := &http.Server{Handler: s.handler, ReadHeaderTimeout: readHeaderTime, ReadTimeout: readTime,
		WriteTimeout: writeTime, IdleTimeout: idleTime, MaxHeaderBytes: mostHeader}
	failed := make(chan error, 1)
	go func() { failed <- server.Serve(l) }()
	select {
	case err := <-failed:
		return err
	case <-ctx.Done():
	}
	ending, cancel := context.WithTimeout(context.Background(), stopTime)
	defer cancel()
	if err := server.Shutdown(ending); err != nil && !errors.Is(err, context.DeadlineExceeded) {
		return err
	}
	return nil
}
