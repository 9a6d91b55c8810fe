package files

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
)

// SignName is the file that stands in a folder while its files are replaced.
const SignName = "UNFINISHED.txt"

// The names in a folder that files are gathered in. From when the plan has its name on,
// whatever stops this run, the next one carries it out.
const (
	newFiles  = "new"
	oldFiles  = "old"
	planName  = "plan.json"
	planDraft = "plan.tmp"
)

// plan is what is to become of a folder. Where a file is tells how far it has come: one to
// go lies in the folder, then among the old files; a new one among the new files, then in
// the folder. All old ones go before the first new one comes, so that files of two runs
// never stand side by side.
type plan struct {
	Away []string `json:"away"`
	In   []string `json:"in"`
	Sign bool     `json:"sign"` // SignName stands in the folder meanwhile, and goes at the end
}

// UnfinishedError says that a folder was left between old and new; the next run that writes
// there, or Mend, finishes it.
type UnfinishedError struct {
	Dir string
	Err error
}

func (e *UnfinishedError) Error() string {
	return fmt.Sprintf("%s is unfinished: %v; mend that and run the same command again: it finishes this first", e.Dir, e.Err)
}

func (e *UnfinishedError) Unwrap() error { return e.Err }

// Commit puts the files in their place, all or none. Unless it is to replace them, what is
// there already stays, and nothing is written. earlier are the names of files that an
// earlier run may have written more of: replaced, they go, and Gone has them. Nothing
// else goes. After an error all is as it was, unless that is an UnfinishedError.
func (f *Staged) Commit(replace bool, there func(where string) error, earlier ...*regexp.Regexp) error {
	if f.tmp == "" {
		return nil // no file was written
	}
	p := plan{In: f.names}
	for _, name := range f.names {
		path := filepath.Join(f.Dir, name)
		switch info, err := os.Lstat(path); {
		case err != nil: // nothing is there
		case !replace:
			return there(path)
		case info.IsDir():
			return fmt.Errorf("%s is a folder: a file of that name is to be written; move the folder away", path)
		default:
			p.Away = append(p.Away, name)
		}
	}
	var stale []string
	if replace {
		stale = f.stale(earlier)
		p.Away = append(p.Away, stale...)
	}
	p.Sign = f.Sign != "" && !isThere(filepath.Join(f.Dir, SignName))
	if err := f.draft(p); err != nil {
		return err
	}
	err := f.disk.rename(filepath.Join(f.tmp, planDraft), filepath.Join(f.tmp, planName))
	if err != nil {
		return err
	}
	if err = p.swap(f.disk, f.Dir, f.tmp); err != nil {
		if p.undo(f.disk, f.Dir, f.tmp) == nil {
			return err
		}
	} else if err = p.end(f.disk, f.Dir, f.tmp); err == nil {
		f.tmp, f.Gone = "", stale
		return nil
	}
	f.tmp = "" // it is the next run's
	return &UnfinishedError{f.Dir, err}
}

// draft writes all that the plan needs, and waits until it is on the disk: once the plan has
// its name nothing more has to be written.
func (f *Staged) draft(p plan) error {
	text, err := json.Marshal(p)
	if err != nil {
		return err
	}
	if p.Sign {
		if err := f.disk.write(filepath.Join(f.tmp, SignName), []byte(f.Sign+"\n")); err != nil {
			return err
		}
	}
	if err := f.disk.write(filepath.Join(f.tmp, planDraft), text); err != nil {
		return err
	}
	return syncAll(f.disk, folders(filepath.Join(f.tmp, newFiles), p.In), f.tmp, f.Dir)
}

// readPlan reads the plan in a folder that files were gathered in. A plan that reaches out
// of its folder was written by nobody here.
func readPlan(tmp string) (p plan, err error) {
	path := filepath.Join(tmp, planName)
	text, err := Read(path, MostAnswers)
	if err != nil {
		return p, err
	}
	if err := json.Unmarshal(text, &p); err != nil {
		return p, fmt.Errorf("%s: %w", path, err)
	}
	for _, name := range slices.Concat(p.Away, p.In) {
		if !filepath.IsLocal(name) || filepath.Clean(name) == "." {
			return p, fmt.Errorf("%s: it names %q, which lies outside of its folder", path, name)
		}
	}
	return p, nil
}

// swap puts up the sign, takes the old files away and puts the new ones in their place. It
// goes on from wherever it was stopped.
func (p plan) swap(d disk, dir, tmp string) error {
	before, after := filepath.Join(tmp, oldFiles), filepath.Join(tmp, newFiles)
	err := d.sync(tmp)
	if sign := filepath.Join(tmp, SignName); err == nil && p.Sign && isThere(sign) {
		if err = d.rename(sign, filepath.Join(dir, SignName)); err == nil {
			err = d.sync(dir)
		}
	}
	for _, name := range p.Away {
		from, to := filepath.Join(dir, name), filepath.Join(before, name)
		if err == nil && !isThere(to) && isThere(from) {
			err = d.move(from, to)
		}
	}
	if err == nil {
		err = syncAll(d, append(folders(before, p.Away), folders(dir, p.Away)...), dir)
	}
	for _, name := range p.In {
		if from := filepath.Join(after, name); err == nil && isThere(from) {
			err = d.move(from, filepath.Join(dir, name))
		}
	}
	if err != nil {
		return err
	}
	return syncAll(d, append(folders(after, p.In), folders(dir, p.In)...), dir)
}

// undo puts everything back as it was before swap, the new files first, and takes the plan
// away when all is in its place.
func (p plan) undo(d disk, dir, tmp string) (err error) {
	before, after := filepath.Join(tmp, oldFiles), filepath.Join(tmp, newFiles)
	for _, name := range p.In {
		from, to := filepath.Join(dir, name), filepath.Join(after, name)
		if err == nil && !isThere(to) {
			err = d.rename(from, to)
		}
	}
	for _, name := range p.Away {
		if from := filepath.Join(before, name); err == nil && isThere(from) {
			err = d.rename(from, filepath.Join(dir, name))
		}
	}
	if err == nil && p.Sign && !isThere(filepath.Join(tmp, SignName)) {
		err = d.remove(filepath.Join(dir, SignName))
	}
	if err == nil {
		err = syncAll(d, folders(dir, p.Away), dir)
	}
	if err == nil {
		err = d.remove(filepath.Join(tmp, planName))
	}
	return err
}

// end takes away the sign, the plan and the old files, when the new ones stand in their
// place. Renamed, the folder is nobody's: where it is only half taken away, no plan is read
// in it any more.
func (p plan) end(d disk, dir, tmp string) error {
	if p.Sign {
		if err := d.remove(filepath.Join(dir, SignName)); err != nil {
			return err
		}
	}
	done, err := doneName(tmp)
	if err != nil {
		return err
	}
	if err := d.rename(tmp, done); err != nil {
		return err
	}
	_ = d.sync(dir)       // else the next run ends it once more
	_ = d.removeAll(done) // else the next run sweeps it
	return nil
}

// doneName is the name that a folder gets when all that was in it is done with.
func doneName(tmp string) (string, error) {
	name := filepath.Join(filepath.Dir(tmp), doneWith+filepath.Base(tmp)[len(gatheredIn):])
	if _, err := os.Lstat(name); err == nil {
		return "", fmt.Errorf("%s is in the way: it is left over from an earlier run and can be deleted", name)
	}
	return name, nil
}

// folders are those below a folder in which these files stand, each once.
func folders(below string, names []string) []string {
	var all []string
	for _, name := range names {
		if dir := filepath.Dir(filepath.Join(below, name)); !slices.Contains(all, dir) {
			all = append(all, dir)
		}
	}
	return all
}

func syncAll(d disk, some []string, more ...string) error {
	for _, dir := range slices.Concat(some, more) {
		if !isThere(dir) {
			continue // nothing stood there
		}
		if err := d.sync(dir); err != nil {
			return err
		}
	}
	return nil
}

// stale are the files of an earlier run that this one does not write.
func (f *Staged) stale(names []*regexp.Regexp) []string {
	writes := map[string]bool{}
	for _, name := range f.names {
		writes[name] = true
	}
	return slices.DeleteFunc(written(f.Dir, names), func(name string) bool { return writes[name] })
}
