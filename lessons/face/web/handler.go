package web

import (
	"bytes"
	"cmp"
	"crypto/subtle"
	"html/template"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"scratchpass/lessons/page"
)

// Options are how a talk is served.
type Options struct {
	Key   string   // who has the link has it
	Hosts []string // host and port that it is served under; any other name is refused
	Words Words

	Lookups []Lookup // pages of their own, under the same key

	At string // the path that the talk stands under, such as /study; empty for the whole host

	// Prompt is how forms name the prompt of a view, so that an answer to another is not taken for
	// one to it; nil names it by its number.
	Prompt func(v View) string
}

// prompt is how forms name the prompt of a view.
func (o Options) prompt(v View) string {
	if o.Prompt == nil {
		return strconv.Itoa(v.Number)
	}
	return o.Prompt(v)
}

// mostTyped is how many bytes a form may have.
const mostTyped = 16 << 10

// cookie keeps the key in the browser.
const cookie = "scratchpass"

// Handler serves a talk to whoever has its key. Pages ask nothing of any other host, run no
// script but the program's own, and can't be framed; forms of other sites are refused.
func Handler(t *Talk, o Options) http.Handler {
	mux := http.NewServeMux()
	mux.Handle("GET /static/", Assets())
	mux.HandleFunc("GET /{$}", func(w http.ResponseWriter, r *http.Request) { Show(w, r, t, o) })
	mux.HandleFunc("POST /answer", func(w http.ResponseWriter, r *http.Request) { Take(w, r, t, o) })
	mux.HandleFunc("GET /", func(w http.ResponseWriter, r *http.Request) { refuse(w, o.Words, o.Words.NoPage, http.StatusNotFound) })
	for _, l := range o.Lookups {
		mux.HandleFunc("GET "+l.Path, lookup(l, o))
	}
	return guarded(http.NewCrossOriginProtection().Handler(mux), o)
}

// Guard says how a page is to be treated: it asks nothing of other hosts, runs no script but the
// program's own, a worker of it neither, and stands in no frame.
func Guard(h http.Header) {
	h.Set("Content-Security-Policy", "default-src 'none'; style-src 'self'; script-src 'self'; worker-src 'self'; img-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'")
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("Referrer-Policy", "no-referrer")
	h.Set("Cross-Origin-Opener-Policy", "same-origin")
}

// guarded refuses other names of this host, and who has no key.
func guarded(next http.Handler, o Options) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		Guard(w.Header())
		switch {
		case !slices.Contains(o.Hosts, r.Host):
			refuse(w, o.Words, o.Words.OtherName, http.StatusMisdirectedRequest)
		case same(r.URL.Query().Get("key"), o.Key):
			http.SetCookie(w, &http.Cookie{Name: cookie, Value: o.Key, Path: "/", HttpOnly: true, SameSite: http.SameSiteStrictMode})
			http.Redirect(w, r, "/", http.StatusSeeOther)
		case strings.HasPrefix(r.URL.Path, "/static/") || has(r, o.Key):
			next.ServeHTTP(w, r)
		default:
			refuse(w, o.Words, o.Words.Gone, http.StatusForbidden)
		}
	})
}

// Write writes a page with a status, from a template. An error says that it could not be made: then
// nothing was written.
func Write(w http.ResponseWriter, status int, from *template.Template, name string, data any) error {
	var b bytes.Buffer
	if err := from.ExecuteTemplate(&b, name, data); err != nil {
		return err
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(status)
	_, _ = w.Write(b.Bytes()) // who has gone needs no page
	return nil
}

// refuse is a page that says why there is nothing else.
func refuse(w http.ResponseWriter, words Words, text string, code int) {
	w.Header().Set("Cache-Control", "no-store")
	if err := Write(w, code, pages(), "refused", struct {
		Words Words
		Text  string
	}{words, text}); err != nil {
		http.Error(w, text, code)
	}
}

func has(r *http.Request, key string) bool {
	c, err := r.Cookie(cookie)
	return err == nil && same(c.Value, key)
}

func same(a, b string) bool { return subtle.ConstantTimeCompare([]byte(a), []byte(b)) == 1 }

// Show writes the page of a talk that is to be seen now. Whether who asks may see it is up to the
// caller.
func Show(w http.ResponseWriter, r *http.Request, t *Talk, o Options) {
	var b bytes.Buffer
	v := t.View(r.Context())
	v.Look, v.To, v.Name = links(o.Lookups), o.At+"/answer", o.prompt(v)
	if v.Ended {
		v.Look = nil // nothing answers after that
		defer t.once.Do(func() { close(t.seen) })
	}
	if err := Render(&b, v, o.Words); err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.Header().Set("Cache-Control", "no-store")
	_, _ = w.Write(b.Bytes()) // who has gone needs no page
}

// Take takes a form, and leads back to the page when the flow has gone on. Whether who sends it may
// is up to the caller.
func Take(w http.ResponseWriter, r *http.Request, t *Talk, o Options) {
	words := o.Words
	r.Body = http.MaxBytesReader(w, r.Body, mostTyped)
	if err := r.ParseForm(); err != nil {
		refuse(w, words, "the form can't be read: "+err.Error(), http.StatusBadRequest)
		return
	}
	name := r.PostForm.Get("prompt")
	if name == "" {
		refuse(w, words, "the form has no prompt: go back and send it again", http.StatusBadRequest)
		return
	}
	if v := t.View(r.Context()); name == o.prompt(v) { // else it was answered, in another window for instance
		t.Answer(v.Number, Typed(r.PostForm, v.Prompt))
	}
	t.View(r.Context())
	http.Redirect(w, r, cmp.Or(o.At, "/"), http.StatusSeeOther)
}

// Typed is the answer of a form as someone would have typed it.
func Typed(form map[string][]string, q page.Prompt) string {
	first := func(name string) string { return strings.TrimSpace(strings.Join(form[name], " ")) }
	switch {
	case first("word") != "":
		return first("word")
	case first("sum") != "":
		return "= " + first("sum")
	case first("term") != "":
		return "? " + first("term")
	case first("move") != "": // by its number; its figure may stand in the field
		return strings.TrimSpace(first("move") + " " + first("answer"))
	}
	if _, several := q.Takes.(page.SeveralOf); several {
		return strings.Join(form["answer"], ", ")
	}
	return first("answer")
}
