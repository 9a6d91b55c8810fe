package postgrestest

import (
	"fmt"
	"net"
	"os"
	"os/exec"
	"os/user"
	"path/filepath"
	"slices"
	"strconv"
	"testing"
	"time"
)

// Cluster is a server of a test's own, whose data can be lost.
type Cluster struct {
	Folder string // where the server's user may write; it goes with the test

	t        testing.TB
	programs string
	as       []string // how a program is run as the server's user
	uid, gid int      // of that user, where it is another than the test's
	port     string
	known    bool // the port: it stays
	running  bool
}

// NewCluster starts a server with no data, which ends with the test. Like any test of PostgreSQL it is
// skipped where Variable names none; where it does, the programs have to be installed here.
func NewCluster(t testing.TB, settings ...string) *Cluster {
	t.Helper()
	if os.Getenv(Variable) == "" {
		t.Skip("no PostgreSQL: " + Variable + " names none")
	}
	c := &Cluster{t: t, programs: programs(t)}
	var err error
	if c.Folder, err = os.MkdirTemp("", "scratchpass-cluster-"); err != nil { // not the test's own: that is closed to others
		t.Fatal(err)
	}
	t.Cleanup(func() {
		c.stop()
		if err := os.RemoveAll(c.Folder); err != nil {
			t.Error(err)
		}
	})
	if os.Getuid() == 0 { // whom the server does not run for
		c.as = []string{"runuser", "-u", "postgres", "--"}
		owner, err := user.Lookup("postgres")
		if err != nil {
			t.Fatal(err)
		}
		c.uid, _ = strconv.Atoi(owner.Uid)
		c.gid, _ = strconv.Atoi(owner.Gid)
	}
	c.owns(c.Folder)
	c.Empty()
	c.Start(settings...)
	return c
}

// owns lets the server's user write somewhere.
func (c *Cluster) owns(path string) {
	c.t.Helper()
	if len(c.as) == 0 {
		return
	}
	if err := os.Chown(path, c.uid, c.gid); err != nil {
		c.t.Fatal(err)
	}
}

// Subfolder makes a folder in that of the cluster.
func (c *Cluster) Subfolder(name string) string {
	c.t.Helper()
	path := filepath.Join(c.Folder, name)
	if err := os.Mkdir(path, 0o700); err != nil {
		c.t.Fatal(err)
	}
	c.owns(path)
	return path
}

// programs is where PostgreSQL's own programs are.
func programs(t testing.TB) string {
	t.Helper()
	found, err := filepath.Glob("/usr/lib/postgresql/*/bin/initdb") // Debian has some of them in PATH only
	if path, missing := exec.LookPath("initdb"); missing == nil {
		path, err = filepath.EvalSymlinks(path)
		found = []string{path}
	}
	if err != nil || len(found) == 0 {
		t.Fatal(Variable, " is set, and PostgreSQL's own programs are not here: install its server, or unset that. ", err)
	}
	return filepath.Dir(found[len(found)-1])
}

// data is where the server's data are.
func (c *Cluster) data() string { return filepath.Join(c.Folder, "data") }

// Empty makes the data of a server on which there is nothing yet.
func (c *Cluster) Empty() {
	c.t.Helper()
	c.Run("initdb", "--pgdata="+c.data(), "--username=postgres", "--auth=trust", "--no-locale", "--encoding=UTF8", "--no-sync")
}

// Start starts the server with settings such as fsync=off, on the same port each time.
func (c *Cluster) Start(settings ...string) {
	c.t.Helper()
	log := filepath.Join(c.Folder, "log")
	for tries := 1; !c.running; tries++ {
		if !c.known {
			c.port = freePort(c.t) // which another may have taken before the server does
		}
		options := "-p " + c.port
		for _, s := range append([]string{"listen_addresses=127.0.0.1", "unix_socket_directories=" + c.Folder, "fsync=off", "max_connections=60"}, settings...) {
			options += " -c " + s
		}
		said, err := c.command("pg_ctl", "--pgdata="+c.data(), "--log="+log, "--wait", "--silent", "--options="+options, "start").CombinedOutput()
		if c.running = err == nil; !c.running && tries == 5 {
			why, _ := os.ReadFile(log)
			c.t.Fatalf("the server does not start: %v\n%s%s", err, said, why)
		}
	}
	c.known = true
}

func freePort(t testing.TB) string {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	return strconv.Itoa(l.Addr().(*net.TCPAddr).Port)
}

// stop stops the server as a crash does: nothing is written any more, nobody is waited for.
func (c *Cluster) stop() {
	if c.running {
		c.running = false
		if said, err := c.command("pg_ctl", "--pgdata="+c.data(), "--mode=immediate", "--wait", "--silent", "stop").CombinedOutput(); err != nil {
			c.t.Errorf("the server does not stop: %v\n%s", err, said)
		}
	}
}

// Lose loses the server with all its data, in the midst of whatever it does.
func (c *Cluster) Lose() {
	c.t.Helper()
	c.stop()
	if err := os.RemoveAll(c.data()); err != nil {
		c.t.Fatal(err)
	}
}

// Recover makes the data of a server from a copy of its folder, and of its log from where
// restore_command finds it.
func (c *Cluster) Recover(base, restoreCommand string) {
	c.t.Helper()
	settings, err := os.OpenFile(filepath.Join(base, "postgresql.auto.conf"), os.O_APPEND|os.O_WRONLY, 0)
	if err != nil {
		c.t.Fatal(err)
	}
	_, err = fmt.Fprintf(settings, "restore_command = '%s'\n", restoreCommand)
	for _, err := range []error{err, settings.Close(), os.WriteFile(filepath.Join(base, "recovery.signal"), nil, 0o644), os.Rename(base, c.data())} {
		if err != nil {
			c.t.Fatal(err)
		}
	}
	c.Start("hot_standby=off") // it takes nobody before it has read all
	for end := time.Now().Add(time.Minute); c.command("pg_isready", "--quiet").Run() != nil; {
		if time.Now().After(end) {
			c.t.Fatal("the server does not come to the end of its log")
		}
	}
}

// Address is that of a database of the server, for someone.
func (c *Cluster) Address(who, database string) string {
	return "postgres://" + who + "@127.0.0.1:" + c.port + "/" + database
}

// Run runs one of PostgreSQL's programs as the server's user, and wants it to do what it should.
func (c *Cluster) Run(name string, arguments ...string) {
	c.t.Helper()
	if said, err := c.command(name, arguments...).CombinedOutput(); err != nil {
		c.t.Fatalf("%s %q: %v\n%s", name, arguments, err, said)
	}
}

// Begin begins one of PostgreSQL's programs, which is to end by itself when the server does.
func (c *Cluster) Begin(name string, arguments ...string) {
	c.t.Helper()
	cmd := c.command(name, arguments...)
	if err := cmd.Start(); err != nil {
		c.t.Fatal(err)
	}
	c.t.Cleanup(func() { c.stop(); _ = cmd.Wait() }) // that it was cut off is no news
}

func (c *Cluster) command(name string, arguments ...string) *exec.Cmd {
	all := append(slices.Clone(c.as), filepath.Join(c.programs, name))
	all = append(all, arguments...)
	cmd := exec.Command(all[0], all[1:]...)
	cmd.Dir = c.Folder
	cmd.Env = append(os.Environ(), "PGHOST=127.0.0.1", "PGUSER=postgres", "PGDATABASE=postgres")
	if c.port != "" {
		cmd.Env = append(cmd.Env, "PGPORT="+c.port)
	}
	return cmd
}
