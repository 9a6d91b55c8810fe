package school

import (
	"net/url"
	"path/filepath"
	"strings"
	"time"

	"scratchpass/calc"
)

// OneRoster is the school's own service of class lists and marks, by the REST binding of OneRoster
// 1.2. The program is a client of it with a secret (OAuth 2.0 client credentials).
type OneRoster struct {
	Address    string `yaml:"address"` // what stands before /ims/oneroster in its addresses
	Token      string `yaml:"token"`   // the address where a token is had
	Client     string `yaml:"client"`
	SecretFile string `yaml:"secret-file"`
	Every      string `yaml:"every,omitempty"`      // how often class lists are fetched, such as 12h; a day where it is not given
	Category   string `yaml:"category,omitempty"`   // the sourcedId of what marks are filed under; else one of our own
	ListsOnly  bool   `yaml:"lists-only,omitempty"` // no marks are sent
}

// How often class lists are fetched: where nothing is said, and at the most.
const (
	fetchedEvery = 24 * time.Hour
	fetchedMost  = time.Minute
)

// Rest is how long after one fetching of class lists comes the next.
func (o OneRoster) Rest() time.Duration {
	if d, err := time.ParseDuration(o.Every); err == nil {
		return d
	}
	return fetchedEvery
}

// below is what an address of OneRoster has behind what differs from school to school.
const below = "/ims/oneroster"

func (o *OneRoster) check(say func(string, ...any)) {
	o.Address = strings.TrimSuffix(o.Address, "/")
	if u, err := url.Parse(o.Address); err != nil || !isSafe(u) || u.RawQuery != "" || strings.Contains(u.Path, below) {
		say("one-roster: the address %s: give what stands before %s, such as https://sis.example.school", calc.Quoted(o.Address), below)
	}
	if u, err := url.Parse(o.Token); err != nil || !isSafe(u) {
		say("one-roster: token %s: give the address where a token is had, which begins with https", calc.Quoted(o.Token))
	}
	if o.Client == "" || o.SecretFile == "" {
		say("one-roster: give client and secret-file: the name that this program has there, and a file with its secret")
	}
	if d, err := time.ParseDuration(o.Every); o.Every != "" && (err != nil || d < fetchedMost) {
		say("one-roster: every %s: give 1m or more, such as 24h", calc.Quoted(o.Every))
	}
}

// isSafe reports whether what is sent to an address can't be listened to.
func isSafe(u *url.URL) bool { return u.Host != "" && (u.Scheme == "https" || isLoopback(u)) }

func (g Group) checkClass(service bool, say func(string, ...any)) {
	switch {
	case g.Class != "" && g.Roster == "" && !service:
		say("the group %s has the class %s and no roster: give one, or one-roster with the service that has it", calc.Quoted(g.Name), calc.Quoted(g.Class))
	case g.Class == "" && strings.EqualFold(filepath.Ext(g.Roster), ".zip"):
		say("the group %s: the roster %s has several classes: give the sourcedId of one as class", calc.Quoted(g.Name), calc.Quoted(g.Roster))
	}
}
