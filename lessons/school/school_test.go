package school_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"scratchpass/lessons/school"
)

const settings = `address: https://threads.example.school
sign-on: {issuer: "https://login.example.school", client: scratchpass}
administrators: [it-staff]
auditors: [inspectors]
departments:
  - name: Machining
    heads: [metal-heads]
    groups:
      - {name: turning-1, title: First year, instructors: [teach-1], learners: [first-year]}
      - {name: turning-2, title: Second year, instructors: [teach-2]}
  - name: Evening school
    heads: [evening-heads]
    groups:
      - {name: evening, title: Home turners, instructors: [teach-1, teach-evening], roster: evening.csv}
`

func read(t testing.TB) school.Settings {
	t.Helper()
	s, err := school.Parse("school.yaml", []byte(settings))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// Who may do what, in which group: the whole table.
func TestMay(t *testing.T) {
	s := read(t)
	const none = ""
	for who, want := range map[string]map[school.Act]string{
		"":              {},
		"strangers":     {},
		"first-year":    {school.Study: none},
		"teach-1":       {school.Study: none, school.Watch: "turning-1 evening", school.Teach: "turning-1 evening", school.Grade: "turning-1 evening", school.HandOut: "turning-1 evening"},
		"teach-2":       {school.Study: none, school.Watch: "turning-2", school.Teach: "turning-2", school.Grade: "turning-2", school.HandOut: "turning-2"},
		"metal-heads":   {school.Study: none, school.Watch: "turning-1 turning-2", school.Teach: "turning-1 turning-2", school.Grade: "turning-1 turning-2", school.HandOut: "turning-1 turning-2"},
		"evening-heads": {school.Study: none, school.Watch: "evening", school.Teach: "evening", school.Grade: "evening", school.HandOut: "evening"},
		"inspectors":    {school.ReadAudit: none},
		"it-staff":      {school.HandOut: "turning-1 turning-2 evening", school.Delete: none, school.ReadAudit: none, school.Run: none},
	} {
		p := school.Person{ID: who, Groups: []string{who}}
		for _, act := range school.Acts {
			groups, has := want[act]
			if got := strings.Join(s.Groups(p, act), " "); groups != none && got != groups {
				t.Errorf("%s may %s in %q, want %q", who, act, got, groups)
			}
			for _, group := range []string{"", "turning-1", "turning-2", "evening", "no-such-group"} {
				may := has && (groups == none || slices.Contains(strings.Fields(groups), group))
				if got := s.May(p, act, group); got != may {
					t.Errorf("%s may %s in %q: %v", who, act, group, got)
				}
			}
		}
	}
}

// Whoever is in more groups of the sign-on may do what each of them may, and nothing else.
func TestPartsAdd(t *testing.T) {
	s := read(t)
	all := []string{"it-staff", "inspectors", "metal-heads", "teach-1", "teach-2", "first-year", "evening-heads", "teach-evening", "else"}
	r := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		var p school.Person
		for _, g := range all {
			if r.IntN(3) == 0 {
				p.Groups = append(p.Groups, g)
			}
		}
		for _, act := range school.Acts {
			for _, group := range []string{"", "turning-1", "evening"} {
				any := slices.ContainsFunc(p.Groups, func(g string) bool { return s.May(school.Person{Groups: []string{g}}, act, group) })
				if s.May(p, act, group) != any {
					t.Fatalf("%v: %s in %q", p.Groups, act, group)
				}
			}
		}
	}
}

// Settings that can't be are refused, with all that is wrong in them.
func TestParseErrors(t *testing.T) {
	for _, row := range []struct{ from, to, want string }{
		{"https://threads.example.school", "http://threads.example.school", `address "http://threads.example.school": give it as browsers have it`},
		{"https://threads.example.school", "https://threads.example.school/x", "give it as browsers have it"},
		{"https://login.example.school", "login", `the issuer "login"`},
		{"client: scratchpass", `client: ""`, "sign-on: client"},
		{"administrators: [it-staff]", "administrators: []", "administrators: give a group"},
		{"name: turning-2", "name: turning-1", `there are two groups "turning-1"`},
		{"name: turning-2", "name: Turning 2", `the group "Turning 2": a name has small letters`},
		{"instructors: [teach-2]", "instructors: []", `the group "turning-2" has no instructors`},
		{"auditors:", "auditor:", "auditor"},
	} {
		text := strings.Replace(settings, row.from, row.to, 1)
		if _, err := school.Parse("school.yaml", []byte(text)); err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%s: %v, want %q", row.to, err, row.want)
		}
	}
	const service = "one-roster: {address: \"https://sis.example.school/\", token: \"https://sis.example.school/token\", client: c, secret-file: s}\nauditors:"
	for _, row := range []struct{ from, to, want string }{
		{"https://sis.example.school/\"", "http://sis.example.school\"", `the address "http://sis.example.school": give what stands before /ims/oneroster`},
		{"https://sis.example.school/\"", "https://sis.example.school/ims/oneroster/rostering/v1p2\"", "give what stands before /ims/oneroster"},
		{"https://sis.example.school/token", "sis", `token "sis": give the address where a token is had`},
		{"client: c", "client: ''", "one-roster: give client and secret-file"},
		{", secret-file: s", "", "one-roster: give client and secret-file"},
		{"client: c", "client: c, every: 30s", `every "30s": give 1m or more, such as 24h`},
		{"client: c", "client: c, every: daily", `every "daily": give 1m or more`},
		{"roster: evening.csv", "roster: evening.ZIP", `the roster "evening.ZIP" has several classes: give the sourcedId of one as class`},
	} {
		text := strings.NewReplacer(row.from, row.to, "auditors:", strings.Replace(service, row.from, row.to, 1)).Replace(settings)
		if _, err := school.Parse("school.yaml", []byte(text)); err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%s: %v, want %q", row.to, err, row.want)
		}
	}
	classed := strings.Replace(settings, "roster: evening.csv", "class: c17", 1)
	if _, err := school.Parse("school.yaml", []byte(classed)); err == nil || !strings.Contains(err.Error(), `the group "evening" has the class "c17" and no roster: give one, or one-roster`) {
		t.Error("a class of no service: ", err)
	}
	s, err := school.Parse("school.yaml", []byte(strings.Replace(classed, "auditors:", service, 1)))
	if g, _, _ := s.Group("evening"); err != nil || s.OneRoster.Address != "https://sis.example.school" || s.OneRoster.Rest() != 24*time.Hour || g.Class != "c17" {
		t.Errorf("%+v %+v %v", s.OneRoster, g, err)
	}
	two := strings.NewReplacer("turning-2", "Turning", "[it-staff]", "[]").Replace(settings)
	if _, err := school.Parse("school.yaml", []byte(two)); err == nil || strings.Count(err.Error(), "\n") != 1 {
		t.Error("both at once: ", err)
	}
	if _, err := school.Parse("s", []byte(strings.Replace(settings, "https://threads.example.school", "http://127.0.0.1:8460", 1))); err != nil {
		t.Error("on this computer: ", err)
	}
}

func FuzzParse(f *testing.F) {
	f.Add([]byte(settings))
	f.Fuzz(func(t *testing.T, text []byte) {
		s, err := school.Parse("s", text)
		if err == nil && s.May(school.Person{}, school.Study, "") {
			t.Error("who is in no group may study: ", fmt.Sprintf("%+v", s))
		}
	})
}
