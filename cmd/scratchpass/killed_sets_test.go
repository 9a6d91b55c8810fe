package main

import (
	"flag"
	"fmt"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

var setKills = flag.Int("set-kills", 6, "how often set make and set key are killed while they replace files")

const killedBlueprint = "set: killed\ntitle: Killed\nunits: in\nslots: [{tasks: [compound-travel]}, {tasks: [infeed-left]}]\n"

// Sheets and keys that are made anew with another secret while the program is killed are all
// old or all new after the next run, whatever that is asked for, and never of two secrets.
// quiz/files kills at each step; here the whole program is killed wherever it is when the
// folder is seen to change.
func TestKilledWhileReplacing(t *testing.T) {
	dir := t.TempDir()
	at := func(parts ...string) string { return filepath.Join(append([]string{dir}, parts...)...) }
	for name, text := range map[string]string{"killed.yaml": killedBlueprint, "a": strings.Repeat("first secret ", 3) + "1", "b": strings.Repeat("other secret ", 3) + "2"} {
		if err := os.WriteFile(at(name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	program := func(secret, out, command string, more ...string) *exec.Cmd {
		cmd := exec.Command(os.Args[0], append([]string{"set", command, at("killed.yaml"), "--forms", "9", "--secret", at(secret), "--out", out}, more...)...)
		cmd.Env = append(os.Environ(), "SCRATCHPASS_TEST_MAIN=1", "HOME="+dir, "XDG_CONFIG_HOME="+dir, "AppData="+dir)
		cmd.Dir = dir
		return cmd
	}
	for command, format := range map[string]string{"make": "codes,text", "key": "text,html"} {
		whole := map[string]map[string]string{}
		for _, secret := range []string{"a", "b"} {
			if out, err := program(secret, at(command+secret), command, "--format", format).CombinedOutput(); err != nil {
				t.Fatalf("%v: %s", err, out)
			}
			whole[secret] = contentsOf(t, at(command+secret))
		}
		outcomes := map[string]int{}
		for i := range *setKills {
			out := at(fmt.Sprint(command, i))
			if err := os.CopyFS(out, os.DirFS(at(command+"a"))); err != nil {
				t.Fatal(err)
			}
			run := program("b", out, command, "--format", format, "--replace")
			if err := run.Start(); err != nil {
				t.Fatal(err)
			}
			ended := make(chan error, 1)
			go func() { ended <- run.Wait() }()
			if killWhen(run, ended, func() bool { return changed(out, i) }) {
				outcomes["killed"]++
			}
			if _, err := os.Stat(filepath.Join(out, "UNFINISHED.txt")); err == nil {
				outcomes["unfinished"]++
			}
			next := program([]string{"a", "b"}[i%2], out, command, "--format", format) // it is refused, for all is there
			said, err := next.CombinedOutput()
			if next.ProcessState.ExitCode() != 2 {
				t.Errorf("%s %d: the next run: %v, %s", command, i, err, said)
			}
			switch got := contentsOf(t, out); {
			case maps.Equal(got, whole["a"]):
				outcomes["old"]++
			case maps.Equal(got, whole["b"]):
				outcomes["new"]++
			default:
				t.Errorf("%s %d: neither old nor new, the next run said %s", command, i, said)
			}
		}
		t.Logf("set %s --replace: %v", command, outcomes)
	}
}

// killWhen kills a program as soon as something is so, and reports whether it was there still.
func killWhen(run *exec.Cmd, ended chan error, so func() bool) bool {
	for {
		select {
		case <-ended:
			return false
		default:
			if so() {
				killed := run.Process.Kill() == nil
				<-ended
				return killed
			}
		}
	}
}

// changed reports whether a run has come as far in a folder as the n-th is to come.
func changed(dir string, n int) bool {
	pattern := []string{".scratchpass-*", ".scratchpass-*/plan.json", "UNFINISHED.txt", ".scratchpass-*/old/*", ".scratchpass-*/old/codes/*", ".scratchpass-done-*"}[n%6]
	found, err := filepath.Glob(filepath.Join(dir, pattern))
	return err == nil && len(found) > 0
}

// contentsOf are the files in a folder, hidden ones too, by name.
func contentsOf(t *testing.T, dir string) map[string]string {
	t.Helper()
	all := map[string]string{}
	err := filepath.WalkDir(dir, func(path string, e os.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		text, err := os.ReadFile(path)
		name, _ := filepath.Rel(dir, path)
		all[filepath.ToSlash(name)] = string(text)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}
