package web

import (
	"crypto/sha256"
	"encoding/hex"
	"io/fs"
	"net/http"
)

// asset is the address of a file of the face, with a sum of what is in it: a browser keeps
// what it has fetched, so that the last page has its style though the program has ended.
func asset(name string) (string, error) {
	text, err := static.ReadFile("static/" + name)
	if err != nil {
		return "", err
	}
	sum := sha256.Sum256(text)
	return "/static/" + name + "?v=" + hex.EncodeToString(sum[:8]), nil
}

// assets serves the files of the face.
func assets() http.Handler {
	files, err := fs.Sub(static, "static")
	if err != nil {
		panic("web: the files are part of the program: " + err.Error())
	}
	serve := http.StripPrefix("/static/", http.FileServerFS(files))
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Query().Has("v") {
			w.Header().Set("Cache-Control", "public, max-age=31536000, immutable")
		}
		serve.ServeHTTP(w, r)
	})
}
