package cli_test

import (
	"net"
	"slices"
	"testing"

	"scratchpass/cmd/scratchpass/internal/cli"
)

// The link has what was asked for, and no name that others may choose is one of this computer.
func TestServed(t *testing.T) {
	reached := "127.0.0.1"
	if found, err := cli.Reaches(); err == nil && len(found) > 0 {
		reached = found[0].IP.String()
	}
	for _, c := range []struct {
		host string
		at   string
		link string
		also []string
	}{
		{"127.0.0.1", "127.0.0.1:8460", "127.0.0.1:8460", []string{"localhost:8460"}},
		{"192.168.1.23", "192.168.1.23:8460", "192.168.1.23:8460", []string{"localhost:8460", "127.0.0.1:8460"}},
		{"Shop.example", "192.168.1.23:443", "shop.example:443", []string{"shop.example", "localhost:443"}},
		{"shop.example", "192.168.1.23:80", "shop.example:80", []string{"shop.example"}},
		{"", "[::]:8460", reached + ":8460", []string{"localhost:8460", "127.0.0.1:8460"}},
		{"0.0.0.0", "0.0.0.0:8460", reached + ":8460", []string{"127.0.0.1:8460"}},
		{"::", "[::]:8460", reached + ":8460", []string{"127.0.0.1:8460"}},
		{"::1", "[::1]:80", "[::1]:80", []string{"[::1]", "localhost"}},
	} {
		host, port, err := net.SplitHostPort(c.at)
		if err != nil {
			t.Fatal(err)
		}
		at, err := net.ResolveTCPAddr("tcp", net.JoinHostPort(host, port))
		if err != nil {
			t.Fatal(err)
		}
		link, names := cli.Served(c.host, at)
		if link != c.link {
			t.Errorf("%q at %s: the link has %s, not %s", c.host, c.at, link, c.link)
		}
		for _, name := range append(c.also, c.link) {
			if !slices.Contains(names, name) {
				t.Errorf("%q at %s: %s is refused: %v", c.host, c.at, name, names)
			}
		}
		for _, name := range []string{"evil.example:8460", "0.0.0.0:8460", "[::]:8460", ":8460", ""} {
			if slices.Contains(names, name) {
				t.Errorf("%q at %s: %q is let through", c.host, c.at, name)
			}
		}
	}
}
