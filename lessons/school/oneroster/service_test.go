package oneroster_test

import (
	"context"
	"errors"
	"fmt"
	"net/http"
	"os"
	"reflect"
	"slices"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"scratchpass/lessons/school/oneroster"
	"scratchpass/lessons/school/oneroster/onerostertest"
	"scratchpass/quiz/set"
)

func service(t *testing.T, s *onerostertest.Server, clock func() time.Time) *oneroster.Service {
	t.Helper()
	o, err := oneroster.New(s.Settings(), clock)
	if err != nil {
		t.Fatal(err)
	}
	return o
}

// All of a class come, however the service divides and tells its pages; who is not there any more
// does not.
func TestStudents(t *testing.T) {
	for _, row := range []struct {
		n, most       int
		totals, links bool
	}{
		{0, 0, true, false}, {1, 0, true, true}, {100, 0, true, false}, {101, 0, true, false}, {250, 0, true, true}, {250, 40, true, false},
		{0, 0, false, false}, {100, 0, false, false}, {250, 40, false, true}, {250, 40, false, false}, {99, 100, false, true}, {200, 0, false, true},
	} {
		t.Run(fmt.Sprint(row), func(t *testing.T) {
			s := onerostertest.New(t)
			s.Totals, s.Links, s.Most = row.totals, row.links, row.most
			s.Class("17", onerostertest.Students(row.n)...)
			people, err := service(t, s, time.Now).Students(t.Context(), "17")
			if err != nil || len(people) != row.n {
				t.Fatal(len(people), err)
			}
			for i, p := range people {
				if p.ID != fmt.Sprintf("person-%04d", i) || p.Name != fmt.Sprintf("Given%d Family%d", i, i) {
					t.Fatal(i, p)
				}
			}
			if s.Tokens() != 1 {
				t.Error("tokens: ", s.Tokens())
			}
		})
	}
	s := onerostertest.New(t)
	s.Class("a/b ?", onerostertest.Student{ID: "1", Given: "Adelaide", Family: "Brook", Preferred: "Ada"}, onerostertest.Student{ID: "2", Given: "Ben", Family: "Carr", Gone: true},
		onerostertest.Student{ID: "3", Given: "Cy", Family: "Dale", Disabled: true}, onerostertest.Student{ID: "4", Given: " Zoë\u202e ", Family: "van  Dam"})
	people, err := service(t, s, time.Now).Students(t.Context(), "a/b ?")
	if want := []set.Apprentice{{ID: "1", Name: "Ada Brook"}, {ID: "4", Name: "Zoë van Dam"}}; err != nil || !reflect.DeepEqual(people, want) {
		t.Error(people, err)
	}
}

func and(class []onerostertest.Student, one onerostertest.Student) []onerostertest.Student {
	return append(slices.Clone(class), one)
}

// A service that gives no whole list, or one that can't be, is told so, and names nobody.
func TestBadLists(t *testing.T) {
	class := onerostertest.Students(3)
	for name, row := range map[string]struct {
		of   []onerostertest.Student
		page string // what the service says instead
		want string
	}{
		"no id":         {and(class, onerostertest.Student{Given: "Secret", Family: "Name"}), "", "person 4 of the list: no sourcedId"},
		"no name":       {and(class, onerostertest.Student{ID: "x"}), "", "person 4 of the list: no name"},
		"twice":         {and(class, onerostertest.Student{ID: "Person-0001", Given: "Secret", Family: "Name"}), "", "another has the same sourcedId"},
		"long":          {and(class, onerostertest.Student{ID: strings.Repeat("x", 81), Given: "Secret", Family: "Name"}), "", "a sourcedId may have 80 letters"},
		"odd":           {and(class, onerostertest.Student{ID: "x\u202e", Given: "Secret", Family: "Name"}), "", "can't be printed"},
		"long name":     {and(class, onerostertest.Student{ID: "x", Given: "Secret", Family: strings.Repeat("n", 120)}), "", "a name may have 120 letters"},
		"many":          {onerostertest.Students(2001), "", "more than 2000 people"},
		"no users":      {class, `{}`, "a page of people has no users"},
		"no list":       {class, `{"users": {}}`, "a page of people can't be read"},
		"no JSON":       {class, `<html>Secret</html>`, "a page of people can't be read"},
		"broken JSON":   {class, `{"users": [{"sourcedId": "1", "givenName": "Secret`, "a page of people can't be read"},
		"too much":      {class, `{"users": [` + strings.Repeat(" ", 8<<20) + `]}`, "an answer has more than 8 MB"},
		"not that one":  {class, `{"users": [], "x": [`, "can't be read"},
		"other numbers": {class, `{"users": [{"sourcedId": 17}]}`, "can't be read"},
	} {
		t.Run(name, func(t *testing.T) {
			s := onerostertest.New(t)
			s.Class("17", row.of...)
			if row.page != "" {
				s.Fail(func(r *http.Request) onerostertest.Failure {
					if strings.HasSuffix(r.URL.Path, "/students") {
						return onerostertest.Failure{Status: http.StatusOK, Body: row.page}
					}
					return onerostertest.Failure{}
				})
			}
			people, err := service(t, s, time.Now).Students(t.Context(), "17")
			if err == nil || !strings.Contains(err.Error(), row.want) || strings.Contains(err.Error(), "Secret") || len(people) > 0 && err == nil {
				t.Error(len(people), err)
			}
		})
	}
	s := onerostertest.New(t)
	var no *oneroster.Refusal
	if _, err := service(t, s, time.Now).Students(t.Context(), "18"); !errors.As(err, &no) || no.Status != 404 || no.Code != "unknownobject" || !strings.Contains(err.Error(), `has no class "18"`) {
		t.Error(err)
	}
}

// A list that is changed between two pages is not taken for a whole one.
func TestListChangesMeanwhile(t *testing.T) {
	s := onerostertest.New(t)
	s.Class("17", onerostertest.Students(150)...)
	s.Fail(func(r *http.Request) onerostertest.Failure {
		if r.FormValue("offset") == "100" { // the first of all has gone: the 101st slips on to the first page
			s.Class("17", onerostertest.Students(150)[1:]...)
		}
		return onerostertest.Failure{}
	})
	if people, err := service(t, s, time.Now).Students(t.Context(), "17"); err == nil || !strings.Contains(err.Error(), "changed between two pages") {
		t.Error("one of the class is missing, and nobody says so: ", len(people), err)
	}
}

// What a service may do to a request, and what comes of it.
func TestFaults(t *testing.T) {
	const class = "/ims/oneroster/rostering/v1p2/classes/17"
	type failure = onerostertest.Failure
	for name, row := range map[string]struct {
		first []failure // of the first requests for the class
		waits []time.Duration
		want  string // of the error; empty for none
	}{
		"busy":              {[]failure{{Status: 429, Retry: "7"}}, []time.Duration{7 * time.Second}, ""},
		"busy until":        {[]failure{{Status: 503, Retry: "Fri, 27 Nov 2026 09:00:05 GMT"}}, []time.Duration{5 * time.Second}, ""},
		"busy, in the past": {[]failure{{Status: 503, Retry: "Fri, 27 Nov 2026 08:00:05 GMT"}}, []time.Duration{0}, ""},
		"busy for long":     {[]failure{{Status: 429, Retry: "3600", Body: `{"imsx_codeMajor": "failure", "imsx_severity": "error", "imsx_CodeMinor": {"imsx_codeMinorField": [{"imsx_codeMinorFieldValue": "server_busy"}]}}`}}, nil, "says 429 server_busy"},
		"busy, nonsense":    {[]failure{{Status: 429, Retry: "soon"}}, []time.Duration{time.Second}, ""},
		"broken twice":      {[]failure{{Status: 500}, {Status: 500}}, []time.Duration{time.Second, 2 * time.Second}, ""},
		"broken for good":   {[]failure{{Status: 502}, {Status: 502}, {Status: 502}, {Status: 502, Body: "<h1>Bad"}}, []time.Duration{time.Second, 2 * time.Second, 4 * time.Second}, "says 502"},
		"cut for good":      {slices.Repeat([]failure{{Cut: true}}, 40), []time.Duration{time.Second, 2 * time.Second, 4 * time.Second}, "out of reach"},
		"elsewhere":         {[]failure{{Status: 302}}, nil, "says 302"},
		"forbidden":         {[]failure{{Status: 403, Body: `{"imsx_StatusInfo": {"imsx_description": "not\u202e you"}}`}}, nil, `says 403 ("not you")`},
		"another class":     {[]failure{{Status: 200, Body: `{"class": {"sourcedId": "18", "school": {"sourcedId": "s"}}}`}}, nil, `asked for the class "17", it gives "18"`},
		"a class no more":   {[]failure{{Status: 200, Body: `{"class": {"sourcedId": "17", "status": "tobedeleted", "school": {"sourcedId": "s"}}}`}}, nil, "to be deleted"},
		"of no school":      {[]failure{{Status: 200, Body: `{"class": {"sourcedId": "17"}}`}}, nil, "has no school"},
		"no class":          {[]failure{{Status: 200, Body: `[]`}}, nil, "the class can't be read"},
	} {
		t.Run(name, func(t *testing.T) {
			s := onerostertest.New(t)
			s.Class("17", onerostertest.Students(2)...)
			var n atomic.Int64
			s.Fail(func(r *http.Request) failure {
				if i := int(n.Load()); r.URL.Path == class && i < len(row.first) {
					n.Add(1)
					return row.first[i]
				}
				return failure{}
			})
			o := service(t, s, func() time.Time { return time.Date(2026, 11, 27, 9, 0, 0, 0, time.UTC) })
			var waits []time.Duration
			o.Waits(&waits)
			_, err := o.Class(t.Context(), "17")
			if row.want == "" && err != nil || row.want != "" && (err == nil || !strings.Contains(err.Error(), row.want)) {
				t.Error(err)
			}
			if !slices.Equal(waits, row.waits) {
				t.Error("it waits ", waits)
			}
		})
	}
}

// A token is used until it runs out, and one that the service does not know any more is another's turn,
// once; what is sent for it stands in no error.
func TestTokens(t *testing.T) {
	s := onerostertest.New(t)
	s.Class("17", onerostertest.Students(2)...)
	now := time.Now()
	o := service(t, s, func() time.Time { return now })
	ask := func(tokens int) {
		t.Helper()
		if _, err := o.Students(t.Context(), "17"); err != nil || s.Tokens() != tokens {
			t.Error(s.Tokens(), err)
		}
	}
	ask(1)
	ask(1)
	now = now.Add(time.Hour)
	ask(2)
	s.Revoke()
	ask(3)
	s.Fail(func(r *http.Request) onerostertest.Failure {
		if r.URL.Path == "/token" {
			return onerostertest.Failure{}
		}
		return onerostertest.Failure{Status: 401}
	})
	if _, err := o.Class(t.Context(), "17"); err == nil || !strings.Contains(err.Error(), "says 401") || s.Tokens() != 4 {
		t.Error(s.Tokens(), err)
	}
	for name, row := range map[string]struct {
		f    onerostertest.Failure
		want string
	}{
		"refused":  {onerostertest.Failure{Status: 400, Body: `{"error":"invalid_scope"}`}, `gives no token: it says "invalid_scope"`},
		"broken":   {onerostertest.Failure{Status: 500}, "out of reach: no token"},
		"cut":      {onerostertest.Failure{Cut: true}, "out of reach: no token"},
		"nonsense": {onerostertest.Failure{Status: 200, Body: "<html>"}, "no token"},
		"none":     {onerostertest.Failure{Status: 200, Body: `{"token_type":"Bearer"}`}, "no token"},
	} {
		s.Fail(func(*http.Request) onerostertest.Failure { return row.f })
		o := service(t, s, time.Now)
		if _, err := o.Class(t.Context(), "17"); err == nil || !strings.Contains(err.Error(), row.want) || strings.Contains(err.Error(), "secret with") || strings.Contains(err.Error(), "secret+with") {
			t.Error(name, err)
		}
	}
	settings := s.Settings()
	if err := os.WriteFile(settings.SecretFile, []byte("another"), 0o600); err != nil {
		t.Fatal(err)
	}
	s.Fail(nil)
	other, err := oneroster.New(settings, time.Now)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := other.Class(t.Context(), "17"); err == nil || !strings.Contains(err.Error(), `"invalid_client"; see to client, secret-file`) {
		t.Error(err)
	}
	settings.SecretFile += "x"
	if _, err := oneroster.New(settings, time.Now); err == nil || !strings.Contains(err.Error(), "the secret of one-roster: ") {
		t.Error(err)
	}
}

// A service that wants the secret in the body of the request gets it there; why there is no token is
// what it says of that.
func TestSecretInTheBody(t *testing.T) {
	for _, inBody := range []bool{false, true} {
		s := onerostertest.New(t)
		s.InBody = inBody
		s.NoMarks()
		s.Class("17", onerostertest.Students(2)...)
		o := service(t, s, time.Now)
		if people, err := o.Students(t.Context(), "17"); err != nil || len(people) != 2 || s.Tokens() != 1 {
			t.Error(inBody, people, s.Tokens(), err)
		}
		if err := o.Check(t.Context()); err == nil || !strings.Contains(err.Error(), `scope/gradebook.createput: the OneRoster service gives no token: it says "invalid_scope"`) {
			t.Error(inBody, err)
		}
	}
}

// Who stops waiting is not held up.
func TestStopped(t *testing.T) {
	s := onerostertest.New(t)
	s.Class("17")
	ctx, stop := context.WithCancel(t.Context())
	s.Fail(func(r *http.Request) onerostertest.Failure {
		if r.URL.Path == "/token" {
			return onerostertest.Failure{}
		}
		stop()
		return onerostertest.Failure{Status: 503, Retry: "29"}
	})
	if _, err := service(t, s, time.Now).Class(ctx, "17"); err == nil {
		t.Error("it was answered")
	}
}

func FuzzPage(f *testing.F) {
	f.Add([]byte(`{"users": [{"sourcedId": "1", "status": "active", "enabledUser": "true", "givenName": "Ada", "familyName": "Brook"}]}`))
	f.Add([]byte(`{"users": [{"sourcedId": "1", "enabledUser": false, "preferredFirstName": "A\u202e"}, {"sourcedId": "1"}, null]}`))
	f.Add([]byte(`{"class": {"sourcedId": "17", "school": {"sourcedId": "s"}}, "imsx_description": "x", "imsx_CodeMinor": {"imsx_codeMinorField": [{}]}}`))
	f.Fuzz(func(t *testing.T, text []byte) {
		people, err := oneroster.Page(text)
		seen := map[string]bool{}
		for _, p := range people {
			key := strings.ToLower(p.ID)
			if err == nil && (p.ID == "" || seen[key] || p.Name == "" || strings.ContainsAny(p.ID+p.Name, "\n\x00\u202e")) {
				t.Errorf("%q is on the list", p)
			}
			seen[key] = true
		}
		if no := oneroster.Says(text); len([]rune(no.Says)) > 200 || strings.ContainsAny(no.Says+no.Code, "\n\x00\u202e") {
			t.Errorf("it says %q", no.Says)
		}
		if c, err := oneroster.ReadClass("17", text); err == nil && (c.ID != "17" || c.School == "") {
			t.Errorf("%+v is a class", c)
		}
	})
}
