package cli

import (
	"context"
	"errors"
	"os"
	"os/exec"
	"runtime"
	"syscall"
	"testing"
	"time"
)

// The first signal ends the context and nothing else, the second one the program; after
// the end of a run a signal does neither.
func TestStoppedBy(t *testing.T) {
	asked, ended := make(chan os.Signal), make(chan struct{})
	ctx, stop, _ := stoppedBy(context.Background(), asked, func() { close(ended) })
	defer stop()
	if ctx.Err() != nil {
		t.Fatal("stopped before anyone asked")
	}
	asked <- os.Interrupt
	<-ctx.Done()
	select {
	case <-ended:
		t.Fatal("the first one ends the program")
	default:
	}
	asked <- os.Interrupt
	<-ended

	asked, late := make(chan os.Signal), make(chan struct{})
	_, stop, done := stoppedBy(context.Background(), asked, func() { close(late) })
	defer stop()
	close(done)
	select {
	case asked <- os.Interrupt: // seen in the same moment: the first one, which ends no program
	case <-late:
		t.Fatal("it goes on after the end")
	default:
	}
}

// A program that hears nothing any more is ended by the second signal, with the exit code
// of a stopped one.
func TestSecondSignal(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("no process sends these signals there")
	}
	if os.Getenv("SCRATCHPASS_TEST_DEAF") != "" {
		me, err := os.FindProcess(os.Getpid())
		if err != nil {
			t.Fatal(err)
		}
		ctx := New(os.Stdin, os.Stdout, os.Stderr).UntilStopped(context.Background())
		_ = me.Signal(syscall.SIGTERM)
		<-ctx.Done()
		_ = me.Signal(syscall.SIGTERM)
		time.Sleep(time.Minute) // deaf
		os.Exit(ExitFailed)
	}
	cmd := exec.Command(os.Args[0], "-test.run", "^TestSecondSignal$")
	cmd.Env = append(os.Environ(), "SCRATCHPASS_TEST_DEAF=1")
	err := cmd.Run()
	var exit *exec.ExitError
	if !errors.As(err, &exit) || exit.ExitCode() != ExitStopped {
		t.Errorf("it ends with %v, want exit code %d", err, ExitStopped)
	}
}
