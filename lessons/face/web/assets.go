package web

import (
	"crypto/sha256"
	"encoding/hex"
	"io/fs"
	"net/http"
)

// Asset is the address of a file of the face, with a sum of what is in it: a browser keeps
// what it has fetched, so that the last page has its style though the program has ended.
func Asset(name string) (string, error) { return AssetIn(Static(), name) }

// AssetIn is Asset for the files of others, which are served beside those of the face.
func AssetIn(files fs.FS, name string) (string, error) {
	text, err := fs.ReadFile(files, name)
	if err != nil {
		return "", err
	}
	sum := sha256.Sum256(text)
	return "/static/" + name + "?v=" + hex.EncodeToString(sum[:8]), nil
}

// Assets serves the files of the face.
func Assets() http.Handler {
	serve := http.StripPrefix("/static/", http.FileServerFS(Static()))
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Query().Has("v") {
			w.Header().Set("Cache-Control", "public, max-age=31536000, immutable")
		}
		serve.ServeHTTP(w, r)
	})
}

// Static are the files of the face: style sheet and scripts.
func Static() fs.FS {
	files, err := fs.Sub(static, "static")
	if err != nil {
		panic("web: the files are part of the program: " + err.Error())
	}
	return files
}
