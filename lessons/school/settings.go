// Package school is who may do what where several workshops share one program: departments with
// groups of learners, those who teach them, and those who look after all of it. What someone may do
// follows from the groups that the school's sign-on says they are in, and from one file of settings;
// there are no accounts of our own.
package school

import (
	"fmt"
	"net/url"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/files"
)

// Settings are what a school writes down.
type Settings struct {
	Address string `yaml:"address"` // as browsers have it: https://threads.example.school
	SignOn  SignOn `yaml:"sign-on"`

	// Groups of the sign-on whose people have a part in the whole school.
	Administrators []string `yaml:"administrators"`
	Auditors       []string `yaml:"auditors,omitempty"`

	OneRoster *OneRoster `yaml:"one-roster,omitempty"` // nil for none

	Departments []Department `yaml:"departments"`
}

// SignOn is the school's own sign-on, by OpenID Connect.
type SignOn struct {
	Issuer     string `yaml:"issuer"`
	Client     string `yaml:"client"`
	SecretFile string `yaml:"secret-file,omitempty"`  // with the client's secret; none for a public client
	Groups     string `yaml:"groups-claim,omitempty"` // the claim with the groups of a person; groups where none is given
	Scopes     string `yaml:"scopes,omitempty"`       // beside openid and profile, with spaces between
}

// Department is a part of a school.
type Department struct {
	Name   string   `yaml:"name"`
	Heads  []string `yaml:"heads,omitempty"` // groups of the sign-on whose people see all of it
	Groups []Group  `yaml:"groups"`
}

// Group is a class of learners.
type Group struct {
	Name        string   `yaml:"name"` // in addresses: never changed
	Title       string   `yaml:"title"`
	Instructors []string `yaml:"instructors"`        // groups of the sign-on
	Learners    []string `yaml:"learners,omitempty"` // the same; none where learners have no sign-on
	Roster      string   `yaml:"roster,omitempty"`   // a table of the people, the users.csv of OneRoster, or a folder or zip of its files, beside the settings
	Class       string   `yaml:"class,omitempty"`    // the sourcedId of its class, in those files or at the service
}

// mostSettings is the longest file of settings that is read, in bytes.
const mostSettings = 1 << 20

// Read reads a file of settings. All that is wrong comes at once. Names of files in it are taken from
// where it stands.
func Read(path string) (Settings, error) {
	text, err := files.Read(path, mostSettings)
	if err != nil {
		return Settings{}, err
	}
	s, err := Parse(path, text)
	beside := func(name *string) {
		if *name != "" && !filepath.IsAbs(*name) {
			*name = filepath.Join(filepath.Dir(path), *name)
		}
	}
	beside(&s.SignOn.SecretFile)
	if s.OneRoster != nil {
		beside(&s.OneRoster.SecretFile)
	}
	for d := range s.Departments {
		for g := range s.Departments[d].Groups {
			beside(&s.Departments[d].Groups[g].Roster)
		}
	}
	return s, err
}

// groupName is what a group may be called in addresses.
var groupName = regexp.MustCompile(`^[a-z0-9][a-z0-9-]{0,39}$`)

// Parse reads settings from a text; file is what errors call it.
func Parse(file string, text []byte) (s Settings, err error) {
	if err := content.Decode(file, text, &s); err != nil {
		return Settings{}, err
	}
	var wrong content.Findings
	say := func(format string, args ...any) {
		wrong = append(wrong, content.Finding{File: file, Text: fmt.Sprintf(format, args...)})
	}
	s.SignOn.check(say)
	if s.OneRoster != nil {
		s.OneRoster.check(say)
	}
	if u, err := url.Parse(s.Address); err != nil || u.Host == "" || u.Path != "" || u.Scheme != "https" && !isLoopback(u) {
		say("address %s: give it as browsers have it, such as https://threads.example.school; plain http only on this computer", calc.Quoted(s.Address))
	}
	if len(s.Administrators) == 0 {
		say("administrators: give a group of the sign-on; else nobody can delete what is kept of a person")
	}
	seen := map[string]bool{}
	for _, d := range s.Departments {
		if strings.TrimSpace(d.Name) == "" {
			say("a department has no name")
		}
		for _, g := range d.Groups {
			switch {
			case !groupName.MatchString(g.Name):
				say("the group %s: a name has small letters, digits and hyphens, 40 at most: it stands in addresses", calc.Quoted(g.Name))
			case seen[g.Name]:
				say("there are two groups %s: give one of them another name", calc.Quoted(g.Name))
			case len(g.Instructors) == 0:
				say("the group %s has no instructors: give a group of the sign-on", calc.Quoted(g.Name))
			}
			seen[g.Name] = true
			g.checkClass(s.OneRoster != nil, say)
		}
	}
	if len(seen) == 0 {
		say("departments: give one with a group at least")
	}
	if len(wrong) > 0 {
		return Settings{}, wrong
	}
	return s, nil
}

func (o *SignOn) check(say func(string, ...any)) {
	if u, err := url.Parse(o.Issuer); err != nil || !isSafe(u) {
		say("sign-on: the issuer %s: give the address that it names itself by, which begins with https", calc.Quoted(o.Issuer))
	}
	if o.Client == "" {
		say("sign-on: client: give the name that this program has there")
	}
	if o.Groups == "" {
		o.Groups = "groups"
	}
}

// isLoopback reports whether an address leads nowhere but to this computer: there no line can be
// listened to.
func isLoopback(u *url.URL) bool {
	return u.Scheme == "http" && slices.Contains([]string{"localhost", "127.0.0.1", "::1"}, u.Hostname())
}

// Group is the one with a name, and its department.
func (s Settings) Group(name string) (g Group, d Department, ok bool) {
	for _, d := range s.Departments {
		for _, g := range d.Groups {
			if g.Name == name {
				return g, d, true
			}
		}
	}
	return Group{}, Department{}, false
}

// AllGroups are those of all departments, in the order of the settings.
func (s Settings) AllGroups() (all []Group) {
	for _, d := range s.Departments {
		all = append(all, d.Groups...)
	}
	return all
}

// Names are the names of some groups.
func Names(groups []Group) []string {
	names := []string{}
	for _, g := range groups {
		names = append(names, g.Name)
	}
	return names
}
