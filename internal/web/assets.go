package web

import (
	"bytes"
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"errors"
	"io/fs"
	"net/http"
	"path"
	"sort"
	"strings"
	"time"
)

// Script is bundled into dist before the program is built; without it the pages
// work as they do in a browser without script.
//
//go:embed style all:dist
var assetFiles embed.FS

// asset is a file that a browser may keep for ever: its name holds its content.
type asset struct {
	kind string
	body []byte
	gzip []byte
}

// assets are the files behind /static/.
type assets struct {
	paths map[string]string // by plain name, such as style.css
	files map[string]*asset // by path
}

// kinds are the types of files served.
var kinds = map[string]string{
	".css": "text/css; charset=utf-8", ".js": "text/javascript; charset=utf-8", ".svg": "image/svg+xml",
}

func loadAssets() (*assets, error) {
	a := &assets{paths: map[string]string{}, files: map[string]*asset{}}
	style, err := joinStyles()
	if err != nil {
		return nil, err
	}
	a.add("style.css", style)
	for _, name := range []string{"style/icon.svg", "dist/main.js"} {
		body, err := assetFiles.ReadFile(name)
		if errors.Is(err, fs.ErrNotExist) {
			continue
		}
		if err != nil {
			return nil, err
		}
		a.add(path.Base(name), body)
	}
	return a, nil
}

// joinStyles joins the style files, look.css before all others.
func joinStyles() ([]byte, error) {
	names, err := fs.Glob(assetFiles, "style/*.css")
	if err != nil {
		return nil, err
	}
	sort.SliceStable(names, func(i, j int) bool { return path.Base(names[i]) == "look.css" && path.Base(names[j]) != "look.css" })
	var b bytes.Buffer
	for _, name := range names {
		body, err := assetFiles.ReadFile(name)
		if err != nil {
			return nil, err
		}
		b.Write(body)
	}
	return b.Bytes(), nil
}

func (a *assets) add(name string, body []byte) {
	sum := sha256.Sum256(body)
	ext := path.Ext(name)
	at := "/static/" + strings.TrimSuffix(name, ext) + "." + hex.EncodeToString(sum[:6]) + ext
	a.paths[name] = at
	a.files[at] = &asset{kind: kinds[ext], body: body, gzip: zipped(body)}
}

// path returns where an asset is served; empty when there is none of the name.
func (a *assets) path(name string) string { return a.paths[name] }

// static serves an asset.
func (s *Server) static(w http.ResponseWriter, r *http.Request) {
	file, ok := s.assets.files[r.URL.Path]
	if !ok {
		http.NotFound(w, r)
		return
	}
	w.Header().Set("Content-Type", file.kind)
	w.Header().Set("Cache-Control", "public, max-age=31536000, immutable")
	w.Header().Set("Vary", "Accept-Encoding")
	body := file.body
	if acceptsGzip(r) {
		w.Header().Set("Content-Encoding", "gzip")
		body = file.gzip
	}
	http.ServeContent(w, r, "", time.Time{}, bytes.NewReader(body))
}
