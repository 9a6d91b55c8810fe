package onerostertest

import (
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"slices"
	"strconv"
	"strings"
)

const changed = "2026-09-01T08:00:00.000Z"

func (s *Server) to(kind, path, id string) map[string]string {
	return map[string]string{"href": s.URL + "/ims/oneroster/rostering/v1p2/" + path + "/" + id, "sourcedId": id, "type": kind}
}

func (s *Server) of(id string) ([]Student, bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	of, ok := s.classes[id]
	return slices.Clone(of), ok
}

func (s *Server) class(w http.ResponseWriter, r *http.Request) {
	id := r.PathValue("id")
	if _, ok := s.of(id); !ok {
		s.refuse(w, http.StatusNotFound, "unknownobject", "there is no class "+id)
		return
	}
	s.answer(w, http.StatusOK, "SingleClass", map[string]any{"class": map[string]any{"sourcedId": id, "status": "active", "dateLastModified": changed, "title": "Class " + id,
		"classType": "scheduled", "course": s.to("course", "courses", "turning"), "school": s.to("org", "orgs", "our-school"), "terms": []any{s.to("academicSession", "terms", "autumn")}}})
}

// students gives a page of a class, with what the standard has of pages in its head.
func (s *Server) students(w http.ResponseWriter, r *http.Request) {
	id := r.PathValue("id")
	of, ok := s.of(id)
	if !ok {
		s.refuse(w, http.StatusNotFound, "unknownobject", "there is no class "+id)
		return
	}
	number := func(name string, otherwise int) int {
		n, err := strconv.Atoi(r.FormValue(name))
		if err != nil {
			return otherwise
		}
		return n
	}
	limit, from := number("limit", 100), number("offset", 0)
	if limit < 1 || from < 0 || r.FormValue("sort") != "sourcedId" {
		s.refuse(w, http.StatusBadRequest, "invaliddata", "limit, offset or sort is not good: "+r.URL.RawQuery)
		return
	}
	if s.Most > 0 {
		limit = min(limit, s.Most)
	}
	if s.Totals {
		w.Header().Set("X-Total-Count", strconv.Itoa(len(of)))
	}
	if s.Links && from+limit < len(of) {
		w.Header().Set("Link", fmt.Sprintf(`<%s%s?limit=%d&offset=%d>; rel="next"`, s.URL, r.URL.Path, limit, from+limit))
	} else if s.Links {
		w.Header().Set("Link", fmt.Sprintf(`<%s%s?limit=%d&offset=0>; rel="first"`, s.URL, r.URL.Path, limit))
	}
	users := []any{}
	for _, p := range of[min(from, len(of)):min(from+limit, len(of))] {
		users = append(users, s.user(p))
	}
	s.answer(w, http.StatusOK, "UserSet", map[string]any{"users": users})
}

func (s *Server) user(p Student) map[string]any {
	u := map[string]any{"sourcedId": p.ID, "status": "active", "dateLastModified": changed, "enabledUser": strconv.FormatBool(!p.Disabled), "givenName": p.Given, "familyName": p.Family,
		"roles": []any{map[string]any{"roleType": "primary", "role": "student", "org": s.to("org", "orgs", "our-school")}}}
	if p.Gone {
		u["status"] = "tobedeleted"
	}
	if p.Preferred != "" {
		u["preferredFirstName"] = p.Preferred
	}
	return u
}

// put takes something into the book, if it is as the standard wants it and hangs on what is there.
func (s *Server) put(kind, name string) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		text, err := io.ReadAll(r.Body)
		if err == nil {
			err = holds(kind, text)
		}
		if err == nil && r.Header.Get("Content-Type") != "application/json" {
			err = fmt.Errorf("it is %q", r.Header.Get("Content-Type"))
		}
		if err != nil {
			s.t.Errorf("the service was sent what is no %s: %v\n%s", kind, err, text)
			s.refuse(w, http.StatusBadRequest, "invaliddata", err.Error())
			return
		}
		var box map[string]struct {
			ID                                 string `json:"sourcedId"`
			Class, LineItem, Student, Category struct {
				ID string `json:"sourcedId"`
			}
		}
		_ = json.Unmarshal(text, &box) // it holds
		what := box[name]
		path := strings.TrimPrefix(r.URL.Path, "/ims/oneroster/gradebook/v1p2/")
		s.mu.Lock()
		missing := ""
		_, inClass := s.classes[what.Class.ID]
		student := slices.ContainsFunc(s.classes[what.Class.ID], func(p Student) bool { return p.ID == what.Student.ID })
		switch {
		case what.ID != r.PathValue("id"):
			missing = "the sourcedId is another than the address has"
		case what.Class.ID != "" && !inClass:
			missing = "there is no class " + what.Class.ID
		case what.Category.ID != "" && s.book["categories/"+what.Category.ID] == nil:
			missing = "there is no category " + what.Category.ID
		case what.LineItem.ID != "" && s.book["lineItems/"+what.LineItem.ID] == nil:
			missing = "there is no line item " + what.LineItem.ID
		case what.Student.ID != "" && !student:
			missing = "there is no student " + what.Student.ID + " in the class"
		default:
			s.book[path], s.puts = text, append(s.puts, path)
		}
		s.mu.Unlock()
		if missing != "" {
			s.refuse(w, http.StatusNotFound, "unknownobject", missing)
			return
		}
		w.WriteHeader(http.StatusCreated)
	}
}
