package files

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"time"
)

// Folders that files are gathered in, and files that are written beside their place, are
// named so with a number behind it.
const (
	gatheredIn = ".scratchpass-"
	doneWith   = ".scratchpass-done-"
)

var (
	gathered = regexp.MustCompile(`^\.scratchpass-\d+$`)
	done     = regexp.MustCompile(`^\.scratchpass-done-\d+$`)
)

// Mended is what was found in a folder of a run that was killed there.
type Mended struct {
	Finished bool     // it was between old and new, and is all new now
	Aside    []string // folders with files that an earlier version of the program took away and did not put back
}

// Mend finishes what a run that was killed, or that met an error, left between old and new
// in a folder. A folder that is not there or is whole stays as it is. Where another run is
// writing the error is ErrHeld.
func Mend(dir string) (Mended, error) { return mendWith(disk{}, dir) }

func mendWith(d disk, dir string) (Mended, error) {
	found := look(dir)
	if len(found[planned]) == 0 {
		return Mended{Aside: found[setAside]}, nil
	}
	lock, err := lockFolder(dir)
	if err != nil {
		return Mended{}, err
	}
	defer lock.free()
	return mendLocked(d, dir)
}

// mendLocked is Mend for who has the lock of the folder. Nobody else is writing there, so
// that it sweeps away too what a killed run had only gathered: there may be keys in it.
func mendLocked(d disk, dir string) (m Mended, err error) {
	found := look(dir)
	for _, tmp := range found[planned] {
		p, err := readPlan(tmp)
		if err == nil {
			err = p.swap(d, dir, tmp)
		}
		if err == nil {
			err = p.end(d, dir, tmp)
		}
		if err != nil {
			return m, &UnfinishedError{dir, err}
		}
		m.Finished = true
	}
	for _, path := range found[junk] {
		_ = d.removeAll(path) // what can't be taken away is in nobody's way
	}
	m.Aside = found[setAside]
	sweepFiles(dir)
	return m, nil
}

// kind is what a folder is that an earlier run left.
type kind int

const (
	foreign  kind = iota // someone else's
	junk                 // new files that nobody waits for, or old ones that were replaced
	planned              // has a plan
	setAside             // has old files and no plan
)

// look finds what earlier runs left in a folder, by kind.
func look(dir string) map[kind][]string {
	found := map[kind][]string{}
	entries, _ := os.ReadDir(dir) // one that can't be read has nothing to mend
	for _, e := range entries {
		path := filepath.Join(dir, e.Name())
		switch {
		case !e.IsDir():
		case done.MatchString(e.Name()):
			found[junk] = append(found[junk], path)
		case gathered.MatchString(e.Name()):
			k := kindOf(path)
			found[k] = append(found[k], path)
		}
	}
	return found
}

func kindOf(tmp string) kind {
	entries, err := os.ReadDir(tmp)
	if err != nil {
		return foreign
	}
	old := false
	for _, e := range entries {
		switch e.Name() {
		case planName:
			return planned
		case oldFiles:
			old = old || hasFiles(filepath.Join(tmp, oldFiles))
		case newFiles, planDraft, SignName:
		default:
			return foreign
		}
	}
	if old {
		return setAside
	}
	return junk
}

// hasFiles reports whether anything but folders is below a folder.
func hasFiles(dir string) bool {
	entries, err := os.ReadDir(dir)
	return err != nil || slices.ContainsFunc(entries, func(e os.DirEntry) bool { return !e.IsDir() || hasFiles(filepath.Join(dir, e.Name())) })
}

// sweepFiles takes away the files that killed runs left beside the place of those they
// wrote. To write one takes seconds: after an hour nobody does any more.
func sweepFiles(dir string) {
	entries, _ := os.ReadDir(dir) // one that can't be read is not swept
	for _, e := range entries {
		if !e.Type().IsRegular() || !gathered.MatchString(e.Name()) {
			continue
		}
		if info, err := e.Info(); err == nil && time.Since(info.ModTime()) > time.Hour {
			os.Remove(filepath.Join(dir, e.Name())) // what can't be taken away is in nobody's way
		}
	}
}
