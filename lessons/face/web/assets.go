package web

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io/fs"
	"net/http"
	"sync"
)

// Asset is the address of a file of the face, with a sum of what is in it: a browser keeps
// what it has fetched, so that the last page has its style though the program has ended.
func Asset(name string) (string, error) { return assets().Address(name) }

var assets = sync.OnceValue(func() Addresses { return AddressesOf(Static()) })

// Addresses are those of files, by name.
type Addresses map[string]string

// AddressesOf are those of all files of some folders; of two with one name the last has it. They are
// part of the program.
func AddressesOf(folders ...fs.FS) Addresses {
	all := Addresses{}
	for _, files := range folders {
		names, err := fs.Glob(files, "*")
		for _, name := range names {
			var text []byte
			if text, err = fs.ReadFile(files, name); err != nil {
				break
			}
			sum := sha256.Sum256(text)
			all[name] = "/static/" + name + "?v=" + hex.EncodeToString(sum[:8])
		}
		if err != nil {
			panic("web: the files are part of the program: " + err.Error())
		}
	}
	return all
}

// Address is that of one file.
func (a Addresses) Address(name string) (string, error) {
	at, known := a[name]
	if !known {
		return "", fmt.Errorf("there is no file %s: %w", name, fs.ErrNotExist)
	}
	return at, nil
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
