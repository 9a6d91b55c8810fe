//go:build linux || darwin

package main

import (
	"bytes"
	"context"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"strings"
	"syscall"
	"testing"
	"time"

	"scratchpass/quiz/files"
)

var everyShape = flag.Bool("shapes", false, "read files of every bad shape, not only of the worst")

// mostMegabytes is what the program may use at most, whatever file it is given. On a quiet machine
// it is 177; where the memory is cleaned up late, on a busy one, it was 207.
const mostMegabytes = 220

// full is a text repeated until it fills a file of words, behind a beginning.
func full(text string, begin ...string) string {
	head := strings.Join(begin, "")
	return head + strings.Repeat(text, (1<<18-len(head)-20)/len(text))
}

// numbered is full, with a number in each copy.
func numbered(form string) string {
	return numberedTo(1<<18, form)
}

// numberedTo is numbered up to a length.
func numberedTo(length int, form string) string {
	var b strings.Builder
	for i := 0; b.Len() < length-40; i++ {
		fmt.Fprintf(&b, form, i)
	}
	return b.String()
}

// laughs is a list of lists that would be ten to the power of twenty long, written out.
func laughs() string {
	text := "a0: &a0 [" + strings.Repeat("x,", 9) + "x]\n"
	for i := range 20 {
		text += fmt.Sprintf("a%d: &a%d [%sx]\n", i+1, i+1, strings.Repeat(fmt.Sprintf("*a%d,", i), 10))
	}
	return text
}

// hostile are files of bad shapes, by what they are given to the program as. Of each shape
// the file is as long as may be: what is longer is not read.
var hostile = []struct {
	as, shape string
	worst     bool          // of its kind: always tried
	text      func() string // made when it is needed: what the test holds is counted to the program
}{
	{"words", "keys in pairs", true, func() string { return full("? a\n") }},
	{"words", "a list of blocks", true, func() string { return full("- a: b\n") }},
	{"words", "aliases", true, func() string { return laughs() }},
	{"words", "a list on one line", true, func() string { return full("a,", "[") }},
	{"words", "keys", false, func() string { return numbered("k%d: a\n") }},
	{"words", "keys on one line", false, func() string { return "{" + numbered("k%d,") }},
	{"words", "deep lists", true, func() string { return full("[") }},
	{"words", "deep blocks", false, func() string { return full("- ") }},
	{"words", "deep keys", false, func() string { return full("{a: ") }},
	{"words", "a number", false, func() string { return full("9", "minutes: ") }},
	{"words", "one line", false, func() string { return full("x") }},
	{"words", "one key", false, func() string { return full("k", "? ") + "\n: x" }},
	{"words", "empty lines", false, func() string { return full("\n") }},
	{"words", "comments", false, func() string { return full("#\n") }},
	{"words", "documents", false, func() string { return full("---\n") }},
	{"words", "tags", false, func() string { return full("!!a ") }},
	{"words", "merged blocks", false, func() string { return full(" <<: *a\n", "a: &a {x: y}\nb:\n") }},
	{"words", "characters", false, func() string { return full("\x01\n") }},
	{"words", "escapes", false, func() string { return full(`\e`, `title: "`) + `"` }},
	{"words", "figures", false, func() string {
		return full("  - text: \""+strings.Repeat("${a ", 900)+"\"\n", "title: x\nparts:\n- explain:\n")
	}},
	{"job", "keys in pairs", false, func() string { return full("? a\n") }},
	{"job", "a title", true, func() string { return full("x", "title: ") }},
	{"lathe", "keys in pairs", false, func() string { return full("? a\n") }},
	{"lathe", "gears", true, func() string { return full("20,", "gears: [") + "20]" }},
	{"blueprint", "slots", true, func() string { return full("- tasks: [single-depth]\n", "set: a\ntitle: a\nunits: in\nslots:\n") }},
	{"blueprint", "notes", false, func() string {
		return full("- "+strings.Repeat("x", 3990)+"\n", "set: a\ntitle: a\nunits: in\nslots: [{tasks: [single-depth]}]\nnotes:\n")
	}},
	{"script", "passes", true, func() string { return "job adjusting-screw\n" + strings.Repeat("pass 0.001\n", 1400) }},
	{"script", "tests", false, func() string { return "job adjusting-screw\n" + strings.Repeat("test wires\n", 1400) }},
	{"script", "taken back", false, func() string { return "job adjusting-screw\n" + strings.Repeat("dress\nundo\n", 7400) }},
	{"script", "nothing to take back", true, func() string { return "job adjusting-screw\n" + strings.Repeat("undo\n", 200_000) }},
	{"script", "a name", false, func() string { return "job " + strings.Repeat("x", 1<<20-10) }},
	{"script", "a job of its own", false, func() string { return "job a\nas " + strings.Repeat("[", 1<<20-20) }},
	{"codes", "codes", true, func() string { return strings.Repeat("a@1-7f3a\n", files.MostWords/9) }},
	{"codes", "empty lines", false, func() string { return strings.Repeat("\n", files.MostWords) }},
	{"out", "answers", true, func() string { return strings.Repeat(`{"code":"a@1-7f3a","given":"b"}`+"\n", 4<<20/32) }},
	{"out", "empty lines", false, func() string { return strings.Repeat("\n", 4<<20) }},
	{"answers", "commas", true, func() string { return "code,item,answer\n" + strings.Repeat(",", 16<<20-20) }},
	{"answers", "columns", true, func() string { return "code" + strings.Repeat(",a", 8<<20-10) }},
	{"answers", "unknown rows", true, func() string { return "code,item,answer\n" + strings.Repeat("K7F-2QXM,1,0.05\n", 249_000) }},
	{"answers", "empty rows", false, func() string { return "code,item,answer\n" + strings.Repeat("\n", 16<<20-20) }},
	{"answers", "quotes", false, func() string { return "code,item,answer\n" + strings.Repeat("\"a\n", 4<<20) }},
	{"answers", "lines of a quiz", true, func() string { return strings.Repeat(`{"code":"a@1-7f3a","given":"b"}`+"\n", 249_000) }},
	{"roster", "names", true, func() string { return "name\n" + numberedTo(8<<20-10, "a%d\n") }},
	{"roster", "one name", false, func() string { return "name\n" + strings.Repeat("x", 8<<20-10) }},
	{"import", "unknown tasks", true, func() string {
		return strings.Repeat(`{"at":"2026-03-01T09:00:00Z","task":"t","code":"t@1-7f3a","given":"9","verdict":"right"}`+"\n", files.MostAnswers/100)
	}},
	{"import", "one line", false, func() string { return strings.Repeat("x", files.MostAnswers) }},
	{"import", "empty lines", false, func() string { return strings.Repeat("\n", files.MostAnswers) }},
	{"out", "deep", false, func() string { return strings.Repeat(`{"a":`, 4<<20/5) }},
}

// Whatever is in a file that is handed in, the program says what is wrong with it, or reads
// it, in little memory and before anyone's patience ends.
func TestHostileFilesTakeLittleMemory(t *testing.T) {
	if testing.Short() {
		t.Skip("a program that watches for races takes far more")
	}
	for _, h := range hostile {
		if !h.worst && !*everyShape {
			continue
		}
		t.Run(h.as+"/"+strings.ReplaceAll(h.shape, " ", "-"), func(t *testing.T) {
			dir := t.TempDir()
			args := give(t, dir, h.as, h.text())
			debug.FreeOSMemory()
			ctx, end := context.WithTimeout(t.Context(), time.Minute) // a hang, not a measure
			defer end()
			cmd := exec.CommandContext(ctx, os.Args[0], args...)
			cmd.Env = append(os.Environ(), "SCRATCHPASS_TEST_MAIN=1", "HOME="+dir, "XDG_DATA_HOME="+dir, "XDG_CONFIG_HOME="+dir)
			var said bytes.Buffer
			cmd.Stdout, cmd.Stderr = &said, &said
			err := cmd.Run()
			if ctx.Err() != nil || cmd.ProcessState == nil || cmd.ProcessState.ExitCode() < 0 || strings.Contains(said.String(), "goroutine ") {
				t.Fatalf("%v: %.500s", err, said.String())
			}
			peak := cmd.ProcessState.SysUsage().(*syscall.Rusage).Maxrss >> 10
			if runtime.GOOS == "darwin" {
				peak >>= 10 // bytes there
			}
			t.Logf("%d MB, %s: %.120q", peak, cmd.ProcessState.UserTime().Round(10*time.Millisecond), said.String())
			if peak > mostMegabytes {
				t.Errorf("it takes %d MB, more than %d", peak, mostMegabytes)
			}
			if said.Len() > 400_000 {
				t.Errorf("it says %d bytes", said.Len())
			}
		})
	}
}

// give writes a file and returns what has the program read it.
func give(t *testing.T, dir, as, text string) []string {
	t.Helper()
	path := filepath.Join(dir, "file.yaml")
	if as == "words" {
		path = filepath.Join(dir, "words", "lessons", "095-x.yaml")
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		t.Fatal(err)
	}
	secret := filepath.Join(dir, "secret")
	blueprint := filepath.Join(dir, "blueprint.yaml")
	for name, text := range map[string]string{path: text, secret: "no secret, for it stands in a test\n", blueprint: "set: a\ntitle: a\nunits: in\nslots: [{tasks: [single-depth]}]\n"} {
		if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return map[string][]string{
		"words":     {"content", "check", filepath.Join(dir, "words")},
		"job":       {"dryrun", "plan", path},
		"lathe":     {"dryrun", "plan", "adjusting-screw", "--lathe", path},
		"blueprint": {"set", "make", path, "--forms", "2", "--secret", secret, "--format", "text", "--out", filepath.Join(dir, "out")},
		"answers":   {"set", "mark", blueprint, "--forms", "2", "--secret", secret, "--answers", path, "--format", "text", "--out", filepath.Join(dir, "out")},
		"roster":    {"set", "make", blueprint, "--roster", path, "--secret", secret, "--format", "text", "--out", filepath.Join(dir, "out")},
		"import":    {"progress", "import", path},
		"script":    {"dryrun", "--script", path, "--json"},
		"codes":     {"quiz", "--codes", path, "--record", "none"},
		"out":       {"quiz", "pitch-from-tpi", "--count", "1", "--out", path, "--record", "none"},
	}[as]
}
