// Command notices prints the licences of everything that is compiled into the program, on
// any system it is built for, as `scratchpass notices` has them. go-licenses, which must be
// in PATH, says what each licence is called; the texts are the files of the modules.
//
//	go run ./.ci/notices >cmd/scratchpass/internal/lookup/notices.txt
package main

import (
	"bytes"
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strings"
)

const program = "./cmd/scratchpass"

// targets are the systems that the program is built for.
var targets = []string{"linux/amd64", "linux/arm64", "darwin/amd64", "darwin/arm64", "windows/amd64", "windows/arm64"}

// called are the licences that go-licenses can't tell, or tells in part: one is worded in
// another way, two stand in a file with others, and one has no file.
var called = map[string]string{
	"gopkg.in/yaml.v3":                 "MIT and Apache-2.0",
	"modernc.org/libc":                 "BSD-3-Clause, and MIT where it comes from musl",
	"modernc.org/mathutil":             "BSD-3-Clause",
	"github.com/mattn/go-localereader": "MIT",
}

// apart are files that license something else than the code of their module.
var apart = map[string]notice{
	"LICENSE-DejaVu": {Name: "DejaVu fonts, in github.com/go-fonts/dejavu", Licence: "Bitstream-Vera"},
	"LICENSE-SQLITE": {Name: "SQLite, in modernc.org/sqlite", Licence: "public domain"},
}

// licenceFile is what files of licences are called.
var licenceFile = regexp.MustCompile(`(?i)^(.*-)?(licen[cs]es?|copying|notices?|patents)(-.*|\.txt|\.md)?$`)

// notice is one thing that is compiled in.
type notice struct{ Name, Version, Licence, Text string }

func main() {
	if err := run(); err != nil {
		fmt.Fprintln(os.Stderr, "notices:", err)
		os.Exit(1)
	}
}

func run() error {
	modules, names := map[string]module{}, map[string][]string{}
	for _, target := range targets {
		if err := list(target, modules); err != nil {
			return fmt.Errorf("%s: %w", target, err)
		}
		if err := classify(target, names); err != nil {
			return fmt.Errorf("%s: %w", target, err)
		}
	}
	all, err := goItself()
	if err != nil {
		return err
	}
	for _, m := range modules {
		more, err := m.notices(names)
		if err != nil {
			return fmt.Errorf("%s: %w", m.Path, err)
		}
		all = append(all, more...)
	}
	slices.SortFunc(all, func(a, b notice) int { return cmp.Compare(strings.ToLower(a.Name), strings.ToLower(b.Name)) })
	for _, n := range all {
		fmt.Printf("%s%s\t%s\t%s\n\n%s\n\n", heading, n.Name, n.Version, n.Licence, n.Text)
	}
	return nil
}

// heading begins the line that stands in front of each text.
const heading = "### "

// module is a module that is compiled in, with the folders of those of its packages.
type module struct {
	Path, Version, Dir string
	packages           []string
}

// list adds the modules that are compiled in for a target.
func list(target string, modules map[string]module) error {
	out, err := output(target, "go", "list", "-deps", "-json=Dir,Module", program)
	if err != nil {
		return err
	}
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		var p struct {
			Dir    string
			Module *struct {
				module
				Main    bool
				Replace *module
			}
		}
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			return nil
		} else if err != nil {
			return err
		}
		if p.Module == nil || p.Module.Main {
			continue
		}
		m, seen := modules[p.Module.Path]
		if !seen {
			m = p.Module.module
		}
		m.packages = append(m.packages, p.Dir)
		modules[m.Path] = m
	}
}

// classify adds what the licences of what is compiled in for a target are called.
func classify(target string, names map[string][]string) error {
	form, err := os.CreateTemp("", "notices")
	if err != nil {
		return err
	}
	defer os.Remove(form.Name())
	if _, err := form.WriteString("{{range .}}{{.Name}}\t{{.LicenseName}}\n{{end}}"); err != nil {
		return err
	}
	if err := form.Close(); err != nil {
		return err
	}
	out, err := output(target, "go-licenses", "report", program, "--ignore", "scratchpass", "--template", form.Name())
	if err != nil {
		return err
	}
	for line := range strings.Lines(string(out)) {
		name, licence, _ := strings.Cut(strings.TrimSpace(line), "\t")
		if licence != "" && licence != "Unknown" && !slices.Contains(names[name], licence) {
			names[name] = append(names[name], licence)
		}
	}
	return nil
}

// output is what a command prints when it works for a target.
func output(target string, name string, args ...string) ([]byte, error) {
	system, processor, _ := strings.Cut(target, "/")
	cmd := exec.Command(name, args...)
	cmd.Env = append(os.Environ(), "CGO_ENABLED=0", "GOOS="+system, "GOARCH="+processor)
	var said bytes.Buffer
	cmd.Stderr = &said
	out, err := cmd.Output()
	if err != nil {
		err = fmt.Errorf("%s: %w\n%s", name, err, said.String())
	}
	return out, err
}

// notices are the module's own and those of what is in it.
func (m module) notices(names map[string][]string) ([]notice, error) {
	own := notice{Name: m.Path, Version: m.Version, Licence: called[m.Path]}
	for _, name := range slices.Sorted(maps.Keys(names)) {
		if name == m.Path || strings.HasPrefix(name, m.Path+"/") {
			own.Licence = cmp.Or(own.Licence, strings.Join(names[name], " and "))
		}
	}
	if own.Licence == "" {
		return nil, errors.New("no licence is known: read it, and name it in `called`")
	}
	var all []notice
	var texts []string
	for _, file := range m.files() {
		text, err := clean(file)
		if err != nil {
			return nil, err
		}
		if n, ok := apart[filepath.Base(file)]; ok {
			n.Version, n.Text = m.Version, text
			all = append(all, n)
			continue
		}
		texts = append(texts, text)
	}
	if own.Text = strings.Join(texts, "\n\n"); own.Text == "" {
		if called[m.Path] == "" {
			return nil, errors.New("it has no file of a licence")
		}
		own.Text = "It comes without the text of its licence; its README says: " + own.Licence + "."
	}
	return append(all, own), nil
}

// files are the files of licences in the folders of the packages and in those above them.
func (m module) files() []string {
	var all []string
	look := func(dir string) {
		entries, _ := os.ReadDir(dir)
		for _, e := range entries {
			if licenceFile.MatchString(e.Name()) && !e.IsDir() {
				all = append(all, filepath.Join(dir, e.Name()))
			}
		}
	}
	for _, dir := range m.packages {
		for ; strings.HasPrefix(dir, m.Dir); dir = filepath.Dir(dir) {
			look(dir)
		}
	}
	look(filepath.Join(m.Dir, "THIRD_PARTY_LICENSES"))
	slices.Sort(all)
	return slices.Compact(all)
}

// goItself are the licences of the standard library and of what every program is run by.
// Its version is that of whatever the program is built with.
func goItself() ([]notice, error) {
	out, err := output(runtime.GOOS+"/"+runtime.GOARCH, "go", "env", "GOROOT")
	if err != nil {
		return nil, err
	}
	n := notice{Name: "Go, its standard library and run time", Version: "-", Licence: "BSD-3-Clause"}
	var texts []string
	for _, file := range []string{"LICENSE", "PATENTS"} {
		text, err := clean(filepath.Join(strings.TrimSpace(string(out)), file))
		if err != nil {
			return nil, err
		}
		texts = append(texts, text)
	}
	n.Text = strings.Join(texts, "\n\n")
	return []notice{n}, nil
}

// clean is the text of a file in lines that end alike and hold only what can be read. No
// line of it is taken for a heading.
func clean(file string) (string, error) {
	text, err := os.ReadFile(file)
	if err != nil {
		return "", err
	}
	var lines []string
	for line := range strings.Lines(strings.TrimPrefix(string(text), "\ufeff")) {
		line = strings.TrimRight(strings.Map(func(r rune) rune {
			if r < ' ' && r != '\t' {
				return -1
			}
			return r
		}, line), " \t")
		if strings.HasPrefix(line, heading) {
			line = " " + line
		}
		lines = append(lines, line)
	}
	return strings.Trim(strings.Join(lines, "\n"), "\n"), nil
}
