package oneroster

import (
	"archive/zip"
	"cmp"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"scratchpass/calc"
	"scratchpass/quiz/files"
	"scratchpass/quiz/set"
)

// The files of OneRoster in bulk that have a class list. Source: 1EdTech, OneRoster CSV Binding 1.2.
const (
	manifestFile    = "manifest.csv"
	usersFile       = "users.csv"
	enrollmentsFile = "enrollments.csv"
)

// Limits of such files.
const (
	mostFile    = 32 << 20 // bytes of one, unpacked
	mostArchive = 64 << 20 // bytes of a zip
)

// IsBulk reports whether a roster is a folder or a zip of OneRoster's files.
func IsBulk(path string) bool {
	if strings.EqualFold(filepath.Ext(path), ".zip") {
		return true
	}
	info, err := os.Stat(path)
	return err == nil && info.IsDir()
}

// ReadBulk reads who is in a class on a day: the students that a folder or a zip of OneRoster's files
// (1.1 or 1.2, in bulk) has in it.
func ReadBulk(path, class string, day time.Time) ([]set.Apprentice, error) {
	if class == "" {
		return nil, fmt.Errorf("%s has several classes: give the sourcedId of one as class", path)
	}
	open := func(name string) ([]byte, error) { return files.Read(filepath.Join(path, name), mostFile) }
	if strings.EqualFold(filepath.Ext(path), ".zip") {
		f, err := files.Open(path, mostArchive)
		if err != nil {
			return nil, err
		}
		defer f.Close()
		info, err := f.Stat()
		if err != nil {
			return nil, err
		}
		z, err := zip.NewReader(f, info.Size())
		if err != nil {
			return nil, fmt.Errorf("%s: it is no zip that can be read: %w", path, err)
		}
		open = func(name string) ([]byte, error) { return unpacked(z, path, name) }
	}
	return readBulk(open, path, class, day)
}

// unpacked is a file of a zip.
func unpacked(z *zip.Reader, path, name string) ([]byte, error) {
	f, err := z.Open(name)
	if err != nil {
		return nil, fmt.Errorf("%s: it has no %s (at the top, not in a folder): %w", path, name, err)
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, mostFile+1))
	switch {
	case err != nil:
		return nil, fmt.Errorf("%s, %s: it can't be unpacked: %w", path, name, err)
	case len(text) > mostFile:
		return nil, fmt.Errorf("%s, %s: it has more than %d MB", path, name, mostFile>>20)
	}
	return text, nil
}

// readBulk is ReadBulk for files that open gives; place is what errors call where they are.
func readBulk(open func(name string) ([]byte, error), place, class string, day time.Time) ([]set.Apprentice, error) {
	table := func(name string, needed ...string) (rows, error) {
		text, err := open(name)
		if err != nil {
			return rows{}, err
		}
		return readRows(place+", "+name, text, needed...)
	}
	manifest, err := table(manifestFile, "propertyName", "value")
	if err != nil {
		return nil, err
	}
	if err := checkManifest(manifest); err != nil {
		return nil, err
	}
	enrollments, err := table(enrollmentsFile, "classSourcedId", "userSourcedId", "role")
	if err != nil {
		return nil, err
	}
	in, err := enrolled(enrollments, class, day)
	if err != nil {
		return nil, err
	}
	users, err := table(usersFile, "sourcedId", "givenName", "familyName")
	if err != nil {
		return nil, err
	}
	return studentsOf(users, enrollments, in)
}

// checkManifest wants files of a form that is known, and whole ones: what has changed since another
// time is no class list.
func checkManifest(m rows) error {
	has := map[string]row{}
	for _, r := range m.all {
		has[r.of("propertyName")] = r
	}
	version := has["oneroster.version"].of("value")
	if !strings.HasPrefix(version, "1.1") && !strings.HasPrefix(version, "1.2") {
		return m.wrong(has["oneroster.version"], "oneroster.version is %s: give files of 1.1 or 1.2", calc.Quoted(version))
	}
	for _, name := range []string{"file.users", "file.enrollments"} {
		if how := has[name].of("value"); how != "bulk" {
			return m.wrong(has[name], "%s is %s: give the whole file (bulk)", name, calc.Quoted(how))
		}
	}
	return nil
}

// roles are those of enrollments. Source: as above, and those of 1.1.
var roles = []string{"administrator", "aide", "guardian", "parent", "proctor", "relative", "student", "teacher"}

// enrolled are the rows that have students of a class on a day.
func enrolled(e rows, class string, day time.Time) (in []row, err error) {
	known := false
	var wrong []error
	for _, r := range e.all {
		if r.of("classSourcedId") != class {
			continue
		}
		known = true
		now, err := r.holds(e, day)
		switch role := r.of("role"); {
		case err != nil:
			wrong = append(wrong, err)
		case !slices.Contains(roles, role) && !strings.HasPrefix(role, "ext:"):
			wrong = append(wrong, e.wrong(r, "there is no role %s: give one of %s", calc.Quoted(role), strings.Join(roles, ", ")))
		case now && role == "student":
			in = append(in, r)
		}
	}
	switch {
	case len(wrong) > 0:
		return nil, errors.Join(wrong[:min(len(wrong), mostTold)]...)
	case !known:
		return nil, fmt.Errorf("%s: no row has the classSourcedId %s", e.file, calc.Quoted(class))
	case len(in) == 0:
		return nil, fmt.Errorf("%s: the class %s has no student on %s", e.file, calc.Quoted(class), day.Format(time.DateOnly))
	case len(in) > mostPeople:
		return nil, fmt.Errorf("%s: the class %s has more than %d students", e.file, calc.Quoted(class), mostPeople)
	}
	return in, nil
}

// mostTold is how many wrong rows are told at once.
const mostTold = 5

// holds reports whether an enrollment holds on a day: it begins on one, and has ended on another.
func (r row) holds(e rows, day time.Time) (bool, error) {
	status := r.of("status")
	if status != "" && status != "active" && !gone(status) {
		return false, e.wrong(r, "there is no status %s: give active or tobedeleted, or nothing", calc.Quoted(status))
	}
	on := day.Format(time.DateOnly)
	for _, name := range []string{"beginDate", "endDate"} {
		if date := r.of(name); date != "" {
			if _, err := time.Parse(time.DateOnly, date); err != nil {
				return false, e.wrong(r, "the %s %s: give a day such as 2026-09-01", name, calc.Quoted(date))
			}
		}
	}
	begins, ends := r.of("beginDate"), cmp.Or(r.of("endDate"), "9999-12-31")
	return !gone(status) && begins <= on && on < ends, nil
}

// studentsOf are the people of some enrollments, in their order.
func studentsOf(users, enrollments rows, in []row) ([]set.Apprentice, error) {
	known := map[string]row{}
	for _, r := range users.all {
		known[r.of("sourcedId")] = r
	}
	l := list{ids: map[string]bool{}}
	seen := map[string]bool{}
	var wrong []error
	for _, r := range in {
		id := r.of("userSourcedId")
		u, ok := known[id]
		switch {
		case !ok:
			wrong = append(wrong, enrollments.wrong(r, "no row of %s has the sourcedId %s", usersFile, calc.Quoted(id)))
			continue
		case seen[id] || gone(u.of("status")) || strings.EqualFold(u.of("enabledUser"), "false"):
			continue
		}
		seen[id] = true
		a := person(id, cmp.Or(u.of("preferredFirstName"), u.of("givenName")), cmp.Or(u.of("preferredLastName"), u.of("familyName")))
		if why := l.wrong(a); why != "" {
			wrong = append(wrong, users.wrong(u, "sourcedId %s: %s", calc.Quoted(id), why))
			continue
		}
		l.people = append(l.people, a)
	}
	if len(wrong) > 0 {
		return nil, errors.Join(wrong[:min(len(wrong), mostTold)]...)
	}
	if len(l.people) == 0 {
		return nil, fmt.Errorf("%s: nobody of the class is active", users.file)
	}
	return l.people, nil
}
