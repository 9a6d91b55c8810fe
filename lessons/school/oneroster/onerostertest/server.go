// Package onerostertest is a OneRoster service for tests: class lists, a book of grades, and tokens for
// a client. What it is sent and what it gives is held against the schema of the standard.
package onerostertest

import (
	"bytes"
	_ "embed"
	"encoding/json"
	"fmt"
	"io"
	"maps"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"scratchpass/lessons/school"
)

// What a client has to give.
const (
	Client = "scratchpass"
	Secret = "a secret with a + and a %"
)

// The scopes of the standard that its pages want.
const (
	readLists  = "https://purl.imsglobal.org/spec/or/v1p2/scope/roster.readonly"
	writeMarks = "https://purl.imsglobal.org/spec/or/v1p2/scope/gradebook.createput"
)

// Server is a service that does what a test wants it to.
type Server struct {
	URL string
	t   testing.TB

	mu      sync.Mutex
	classes map[string][]Student
	book    map[string]json.RawMessage // by path, such as results/17
	puts    []string                   // paths, as they came
	fail    func(*http.Request) Failure
	tokens  map[string]string // scopes, by token
	no      string            // a scope that the client has no right to
	given   int               // tokens, in all

	InBody        bool // the client's secret is wanted in the body of the request for a token
	Totals, Links bool // pages say how many there are in all, and which is the next
	Most          int  // people on a page, whatever is asked for; 0 for what is asked for
}

// Student is someone in a class.
type Student struct {
	ID, Given, Family, Preferred string
	Gone, Disabled               bool
}

// Failure is what goes wrong with a request; the zero one is nothing.
type Failure struct {
	Status int
	Retry  string // Retry-After
	Body   string
	Cut    bool // the line is cut before there is an answer
}

// New starts a service that ends with the test.
func New(t testing.TB) *Server {
	t.Helper()
	s := &Server{t: t, classes: map[string][]Student{}, book: map[string]json.RawMessage{}, tokens: map[string]string{}, Totals: true}
	mux := http.NewServeMux()
	mux.HandleFunc("POST /token", s.token)
	mux.HandleFunc("GET /ims/oneroster/rostering/v1p2/classes/{id}", s.only(readLists, s.class))
	mux.HandleFunc("GET /ims/oneroster/rostering/v1p2/classes/{id}/students", s.only(readLists, s.students))
	mux.HandleFunc("PUT /ims/oneroster/gradebook/v1p2/categories/{id}", s.only(writeMarks, s.put("SingleCategory", "category")))
	mux.HandleFunc("PUT /ims/oneroster/gradebook/v1p2/lineItems/{id}", s.only(writeMarks, s.put("SingleLineItem", "lineItem")))
	mux.HandleFunc("PUT /ims/oneroster/gradebook/v1p2/results/{id}", s.only(writeMarks, s.put("SingleResult", "result")))
	at := httptest.NewServer(s.failing(mux))
	t.Cleanup(at.Close)
	s.URL = at.URL
	return s
}

// Settings are those of a school that has this service; the secret is in a file of the test's.
func (s *Server) Settings() school.OneRoster {
	s.t.Helper()
	file := filepath.Join(s.t.TempDir(), "secret")
	if err := os.WriteFile(file, []byte(Secret+"\n"), 0o600); err != nil {
		s.t.Fatal(err)
	}
	return school.OneRoster{Address: s.URL, Token: s.URL + "/token", Client: Client, SecretFile: file}
}

// Class makes a class of some students, or another of one that is there.
func (s *Server) Class(id string, of ...Student) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.classes[id] = of
}

// Students are so many, with ids and names that stand nowhere else.
func Students(n int) (all []Student) {
	for i := range n {
		all = append(all, Student{ID: fmt.Sprintf("person-%04d", i), Given: fmt.Sprintf("Given%d", i), Family: fmt.Sprintf("Family%d", i)})
	}
	return all
}

// Fail has requests go wrong as a test wants; nil for none.
func (s *Server) Fail(how func(*http.Request) Failure) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.fail = how
}

// NoMarks gives no right to send marks.
func (s *Server) NoMarks() {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.no = writeMarks
}

// Revoke makes all tokens worthless that were given.
func (s *Server) Revoke() {
	s.mu.Lock()
	defer s.mu.Unlock()
	clear(s.tokens)
}

// Tokens is how many tokens were given.
func (s *Server) Tokens() int {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.given
}

// Book is what was put into the book of grades, by paths such as results/17.
func (s *Server) Book() map[string]json.RawMessage {
	s.mu.Lock()
	defer s.mu.Unlock()
	return maps.Clone(s.book)
}

// Puts are the paths that were put, as they came.
func (s *Server) Puts() []string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return slices.Clone(s.puts)
}

func (s *Server) failing(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		s.mu.Lock()
		how := s.fail
		s.mu.Unlock()
		var f Failure
		if how != nil {
			f = how(r)
		}
		switch {
		case f.Cut:
			panic(http.ErrAbortHandler)
		case f.Status != 0:
			if strings.HasPrefix(f.Body, "{") {
				w.Header().Set("Content-Type", "application/json")
			}
			if f.Retry != "" {
				w.Header().Set("Retry-After", f.Retry)
			}
			w.WriteHeader(f.Status)
			_, _ = io.WriteString(w, f.Body)
		default:
			next.ServeHTTP(w, r)
		}
	})
}

// token gives a token for client credentials (RFC 6749, 4.4).
func (s *Server) token(w http.ResponseWriter, r *http.Request) {
	id, secret, _ := r.BasicAuth()
	scope := r.FormValue("scope")
	if s.InBody {
		id, secret = r.PostFormValue("client_id"), url.QueryEscape(r.PostFormValue("client_secret"))
	}
	w.Header().Set("Content-Type", "application/json")
	if id != Client || secret != url.QueryEscape(Secret) || r.FormValue("grant_type") != "client_credentials" || scope == "" {
		w.WriteHeader(http.StatusUnauthorized)
		_, _ = io.WriteString(w, `{"error":"invalid_client"}`)
		return
	}
	s.mu.Lock()
	if scope == s.no {
		s.mu.Unlock()
		w.WriteHeader(http.StatusBadRequest)
		_, _ = io.WriteString(w, `{"error":"invalid_scope"}`)
		return
	}
	s.given++
	token := fmt.Sprintf("token-%d", s.given)
	s.tokens[token] = scope
	s.mu.Unlock()
	_ = json.NewEncoder(w).Encode(map[string]any{"access_token": token, "token_type": "Bearer", "expires_in": 3600, "scope": scope})
}

func (s *Server) only(scope string, next http.HandlerFunc) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		s.mu.Lock()
		scopes, ok := s.tokens[strings.TrimPrefix(r.Header.Get("Authorization"), "Bearer ")]
		s.mu.Unlock()
		switch {
		case !ok:
			s.refuse(w, http.StatusUnauthorized, "unauthorisedrequest", "the token is not known")
		case !slices.Contains(strings.Fields(scopes), scope):
			s.refuse(w, http.StatusForbidden, "forbidden", "the token is not for this")
		default:
			next(w, r)
		}
	}
}

func (s *Server) refuse(w http.ResponseWriter, status int, minor, says string) {
	s.answer(w, status, "imsx_StatusInfo", map[string]any{"imsx_codeMajor": "failure", "imsx_severity": "error", "imsx_description": says,
		"imsx_CodeMinor": map[string]any{"imsx_codeMinorField": []any{map[string]any{"imsx_codeMinorFieldName": "TargetEndSystem", "imsx_codeMinorFieldValue": minor}}}})
}

// answer gives something of the schema.
func (s *Server) answer(w http.ResponseWriter, status int, kind string, what any) {
	text, err := json.Marshal(what)
	if err == nil {
		err = holds(kind, text)
	}
	if err != nil {
		s.t.Errorf("the service would give what is no %s: %v", kind, err)
	}
	w.Header().Set("Content-Type", "application/json")
	w.WriteHeader(status)
	_, _ = w.Write(text)
}

//go:embed oneroster-1.2.schema.json
var schemaText []byte

// schemas are those of the kinds that are sent, once they were needed.
var schemas = sync.OnceValue(func() *jsonschema.Compiler {
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(schemaText))
	if err != nil {
		panic(err)
	}
	c := jsonschema.NewCompiler()
	c.AssertFormat()
	if err := c.AddResource("oneroster.json", doc); err != nil {
		panic(err)
	}
	return c
})

var compiling sync.Mutex

// holds reports what is wrong with a text that is to be of a kind of the schema.
func holds(kind string, text []byte) error {
	compiling.Lock()
	defer compiling.Unlock()
	schema, err := schemas().Compile("oneroster.json#/$defs/" + kind)
	if err != nil {
		return err
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		return err
	}
	return schema.Validate(doc)
}
