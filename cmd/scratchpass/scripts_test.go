package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/postgres/postgrestest"
	"scratchpass/quiz/files"
)

func TestMain(m *testing.M) {
	if os.Getenv("SCRATCHPASS_TEST_MAIN") != "" { // this process plays the program on a terminal
		main()
		return
	}
	testscript.Main(m, map[string]func(){"scratchpass": main})
}

// The whole program, as scripts that are named after what they show. Each runs
// with a home of its own.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir: "testdata/scripts",
		Setup: func(e *testscript.Env) error {
			home := filepath.Join(e.WorkDir, "home")
			e.Setenv("HOME", home)
			e.Setenv("XDG_CONFIG_HOME", filepath.Join(home, ".config"))
			e.Setenv("AppData", filepath.Join(home, "AppData"))
			e.Setenv("LESSONS", mustAbs(t, "../../lessons/course/testdata"))
			e.Setenv("RUNS", mustAbs(t, "../../quiz/bench/testdata/runs"))
			return os.MkdirAll(home, 0o755)
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"private":   private,
			"samewords": sameWords,
			"status":    status,
			"jsonkeys":  jsonKeys,
			"quietout":  quietOut,
			"spoil":     spoil,
			"locked":    locked,
			"database":  func(ts *testscript.TestScript, _ bool, args []string) { ts.Setenv(args[0], postgrestest.Address(t)) },
		},
		Condition: func(name string) (bool, error) {
			return name == "server" && os.Getenv(postgrestest.Variable) != "", nil
		},
		UpdateScripts: os.Getenv("UPDATE_SCRIPTS") != "",
	})
}

func mustAbs(t *testing.T, path string) string {
	t.Helper()
	abs, err := filepath.Abs(path)
	if err != nil {
		t.Fatal(err)
	}
	return abs
}

// sameWords FILE1 FILE2 compares two files word by word, however they are wrapped.
func sameWords(ts *testscript.TestScript, neg bool, args []string) {
	words := func(name string) string { return strings.Join(strings.Fields(ts.ReadFile(name)), " ") }
	if same := words(args[0]) == words(args[1]); same == neg {
		ts.Fatalf("%s and %s: same words %v", args[0], args[1], same)
	}
}

// status N ARGS... runs the program and wants that exit code. Standard input is
// empty.
func status(ts *testscript.TestScript, _ bool, args []string) {
	err := ts.Exec("scratchpass", args[1:]...)
	code := "0"
	if exit, ok := err.(interface{ ExitCode() int }); ok {
		code = string(rune('0' + exit.ExitCode()%10))
		if exit.ExitCode() == cli.ExitStopped {
			code = "130"
		}
	}
	if code != args[0] {
		ts.Fatalf("exit code %s, want %s (%v)", code, args[0], err)
	}
}

// locked FILE takes the lock that a file stands for, as another program would, until the
// script ends.
func locked(ts *testscript.TestScript, _ bool, args []string) {
	free, err := files.Lock(ts.MkAbs(args[0]), 0)
	ts.Check(err)
	ts.Defer(func() { ts.Check(free()) })
}

// jsonKeys FILE KEY... wants exactly these keys at the top of a JSON object, in
// this order, and nothing after the object.
func jsonKeys(ts *testscript.TestScript, _ bool, args []string) {
	d := json.NewDecoder(strings.NewReader(ts.ReadFile(args[0])))
	var keys []string
	depth, isKey := 0, false
	for {
		token, err := d.Token()
		if err != nil {
			break
		}
		switch v := token.(type) {
		case json.Delim:
			switch v {
			case '{', '[':
				depth++
			default:
				depth--
			}
			isKey = depth == 1
			continue
		case string:
			if depth == 1 && isKey {
				keys = append(keys, v)
			}
		}
		if depth == 1 {
			isKey = !isKey
		}
	}
	if got, want := strings.Join(keys, " "), strings.Join(args[1:], " "); got != want {
		ts.Fatalf("keys %q, want %q", got, want)
	}
	if d.More() {
		ts.Fatalf("something follows the object")
	}
}

// spoil FILE OLD NEW writes a text over another of the same length in a file, the last time
// it stands there.
func spoil(ts *testscript.TestScript, _ bool, args []string) {
	path, text := ts.MkAbs(args[0]), ts.ReadFile(args[0])
	at := strings.LastIndex(text, args[1])
	if at < 0 || len(args[1]) != len(args[2]) {
		ts.Fatalf("%s: no %q, or %q is not as long", path, args[1], args[2])
	}
	ts.Check(os.WriteFile(path, []byte(text[:at]+args[2]+text[at+len(args[1]):]), 0o600))
}

// quietOut wants that no control character but newline was printed, on either
// stream, by the last command.
func quietOut(ts *testscript.TestScript, _ bool, args []string) {
	for _, stream := range []string{"stdout", "stderr"} {
		text := ts.ReadFile(stream)
		if bad := regexp.MustCompile(`[\x00-\x08\x0b-\x1f\x7f\x{80}-\x{9f}\x{202a}-\x{202e}\x{2066}-\x{2069}]`).FindString(text); bad != "" {
			ts.Fatalf("%s has %q: %q", stream, bad, text)
		}
	}
}

// The documented JSON is a promise: every key of a problem, with and without its key.
func TestProblemDocumentIsDocumented(t *testing.T) {
	var out bytes.Buffer
	if code := run(t.Context(), []string{"work", "compound-travel", "--tpi", "12", "--angle", "29.5", "--json"}, strings.NewReader(""), &out, &out); code != 0 {
		t.Fatal(code, out.String())
	}
	d := json.NewDecoder(&out)
	d.DisallowUnknownFields()
	var doc struct {
		Task   string `json:"task"`
		Code   string `json:"code"`
		Given  []struct{ Name, Symbol, Value, Unit string }
		Prompt string
		Steps  []struct{ Symbol, Means, Formula, With, Value, Unit string }
		Answer struct {
			Kind, Value, Unit string
			Low, High         float64
		}
		Slips   []struct{ Name, Value string }
		Safety  []string
		Sources []string
	}
	if err := d.Decode(&doc); err != nil {
		t.Fatal(err)
	}
	if doc.Answer.Value != "0.0587" || len(doc.Steps) != 3 || doc.Steps[2].With != "0.051120 / cos(29.5)" || len(doc.Slips) != 9 {
		t.Errorf("%+v", doc)
	}
}

// private FILE... wants that nobody but their owner can read the files.
func private(ts *testscript.TestScript, _ bool, args []string) {
	for _, name := range args {
		info, err := os.Stat(ts.MkAbs(name))
		ts.Check(err)
		if mode := info.Mode().Perm(); mode != 0o600 {
			ts.Fatalf("%s has mode %v", name, mode)
		}
	}
}
