package web

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"net/http"
	"strconv"
	"strings"
)

// leastZipped is the size [bytes] under which zipping is not worth it.
const leastZipped = 1000

// send writes a whole answer: zipped where the browser takes it, and not again
// when it has the same already.
func send(w http.ResponseWriter, r *http.Request, status int, kind string, body []byte) {
	h := w.Header()
	h.Set("Content-Type", kind)
	h.Set("Vary", "Accept-Encoding")
	if h.Get("Cache-Control") == "" {
		h.Set("Cache-Control", "private, no-cache")
	}
	if status == http.StatusOK && r.Method != http.MethodPost {
		sum := sha256.Sum256(body)
		tag := `W/"` + hex.EncodeToString(sum[:12]) + `"`
		h.Set("ETag", tag)
		if strings.Contains(r.Header.Get("If-None-Match"), tag) {
			w.WriteHeader(http.StatusNotModified)
			return
		}
	}
	if len(body) >= leastZipped && acceptsGzip(r) {
		h.Set("Content-Encoding", "gzip")
		body = zipped(body)
	}
	h.Set("Content-Length", strconv.Itoa(len(body)))
	w.WriteHeader(status)
	if r.Method != http.MethodHead {
		_, _ = w.Write(body) // a client that has gone away is no fault
	}
}

// acceptsGzip tells whether a browser takes zipped answers.
func acceptsGzip(r *http.Request) bool {
	for _, part := range strings.Split(r.Header.Get("Accept-Encoding"), ",") {
		name, weight, _ := strings.Cut(strings.TrimSpace(part), ";")
		if name == "gzip" && strings.ReplaceAll(weight, " ", "") != "q=0" {
			return true
		}
	}
	return false
}

func zipped(body []byte) []byte {
	var b bytes.Buffer
	z := gzip.NewWriter(&b)
	_, _ = z.Write(body) // a buffer takes everything
	_ = z.Close()
	return b.Bytes()
}
