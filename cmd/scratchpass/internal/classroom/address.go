package classroom

import (
	"fmt"
	"net"
	"slices"
	"strconv"

	"scratchpass/cmd/scratchpass/internal/cli"
)

// port is where a class is served first if nothing else is said and it is free.
const port = 8460

// place is where a class is to be served.
type place struct {
	host, port string
	free       bool // where the port is taken, any other will do: no link hangs on it
}

// readPlace reads --listen; the host may be empty there.
func readPlace(listen string) (place, error) {
	if listen == "" {
		return place{}, nil
	}
	host, port, err := net.SplitHostPort(listen)
	if err != nil {
		return place{}, cli.Usagef("--listen %q: give HOST:PORT, such as 192.168.1.23:8460", listen)
	}
	return place{host: host, port: port, free: port == "0"}, nil
}

// where is the place at which the links of a class hold. Where port 0 is asked for, or none, it
// is that of last time; and where no host is given, so is that, if this computer still has it.
// Before the first time, and in another network, there are no links yet that could hold.
func (p place) where(last string, choose func([]cli.Reach) (cli.Reach, error)) (place, error) {
	host, lastPort, err := net.SplitHostPort(last)
	if err != nil {
		lastPort = ""
	}
	if p.port != "" {
		if p.free && lastPort != "" {
			p.port = lastPort
		}
		return p, nil
	}
	found, err := cli.Reaches()
	if err != nil {
		return p, err
	}
	if lastPort != "" && has(found, host) {
		return place{host: host, port: lastPort}, nil
	}
	one := cli.Reach{IP: net.IPv4(127, 0, 0, 1)}
	switch {
	case len(found) == 1:
		one = found[0]
	case len(found) > 1:
		if one, err = choose(found); err != nil {
			return p, err
		}
	}
	return place{host: one.IP.String(), port: strconv.Itoa(port), free: true}, nil
}

// has reports whether a host is this computer still: one of its addresses, alone where it is in
// no network, or a name, which whoever chose it answers for.
func has(found []cli.Reach, host string) bool {
	ip := net.ParseIP(host)
	if ip == nil {
		return true
	}
	if len(found) == 0 {
		return ip.IsLoopback()
	}
	return slices.ContainsFunc(found, func(r cli.Reach) bool { return r.IP.Equal(ip) })
}

// listen begins to listen.
func (p place) listen() (net.Listener, error) {
	at := net.JoinHostPort(p.host, p.port)
	l, err := net.Listen("tcp", at)
	if err != nil && p.free {
		l, err = net.Listen("tcp", net.JoinHostPort(p.host, "0"))
	}
	if err != nil {
		return nil, fmt.Errorf("can't serve at %s: %w; --listen takes another address", at, err)
	}
	return l, nil
}
