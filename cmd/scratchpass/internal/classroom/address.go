package classroom

import (
	"fmt"
	"net"
	"slices"
	"strconv"

	"scratchpass/cmd/scratchpass/internal/cli"
)

// port is where a class is served if nothing else is said: the same each time, so that links
// hold.
const port = 8460

// reach is an address of this computer that phones in the same network may reach.
type reach struct {
	IP        net.IP
	Interface string
}

// reaches are the private addresses of this computer, the one that it speaks from first.
func reaches() ([]reach, error) {
	all, err := net.Interfaces()
	if err != nil {
		return nil, err
	}
	var found []reach
	for _, i := range all {
		if i.Flags&net.FlagUp == 0 || i.Flags&net.FlagLoopback != 0 {
			continue
		}
		addresses, err := i.Addrs()
		if err != nil {
			continue // gone in between
		}
		for _, a := range addresses {
			if n, ok := a.(*net.IPNet); ok && n.IP.To4() != nil && n.IP.IsPrivate() {
				found = append(found, reach{n.IP, i.Name})
			}
		}
	}
	if from := speaksFrom(); from != nil {
		slices.SortStableFunc(found, func(a, b reach) int { return order(b.IP.Equal(from)) - order(a.IP.Equal(from)) })
	}
	return found, nil
}

func order(first bool) int {
	if first {
		return 1
	}
	return 0
}

// speaksFrom is the address that this computer would speak to others from; nil where there is
// no network. Nothing is sent for it.
func speaksFrom() net.IP {
	c, err := net.Dial("udp4", "192.0.2.1:9") // an address for documents. Source: RFC 5737
	if err != nil {
		return nil
	}
	defer c.Close()
	if a, ok := c.LocalAddr().(*net.UDPAddr); ok {
		return a.IP
	}
	return nil
}

// place is where a class is served: as given, or at this computer's address in the network.
func place(listen string, choose func([]reach) (reach, error)) (string, error) {
	if listen != "" {
		if _, _, err := net.SplitHostPort(listen); err != nil {
			return "", cli.Usagef("--listen %q: give HOST:PORT, such as 192.168.1.23:8460", listen)
		}
		return listen, nil
	}
	found, err := reaches()
	if err != nil {
		return "", err
	}
	one := reach{IP: net.IPv4(127, 0, 0, 1)}
	switch {
	case len(found) == 1:
		one = found[0]
	case len(found) > 1:
		if one, err = choose(found); err != nil {
			return "", err
		}
	}
	return net.JoinHostPort(one.IP.String(), strconv.Itoa(port)), nil
}

// shown is an address as it stands in links: where it listens at all, the one that others reach.
func shown(at net.Addr) string {
	host, p, err := net.SplitHostPort(at.String())
	if err != nil {
		return at.String()
	}
	if ip := net.ParseIP(host); ip != nil && ip.IsUnspecified() {
		host = "127.0.0.1"
		if found, err := reaches(); err == nil && len(found) > 0 {
			host = found[0].IP.String()
		}
	}
	return net.JoinHostPort(host, p)
}

// hosts are the names that it may be asked for under.
func hosts(at net.Addr) []string {
	_, p, err := net.SplitHostPort(at.String())
	if err != nil {
		return []string{at.String()}
	}
	names := []string{shown(at), net.JoinHostPort("localhost", p), net.JoinHostPort("127.0.0.1", p)}
	if host, _, _ := net.SplitHostPort(at.String()); net.ParseIP(host).IsUnspecified() {
		if found, err := reaches(); err == nil {
			for _, f := range found {
				names = append(names, fmt.Sprint(net.JoinHostPort(f.IP.String(), p)))
			}
		}
	}
	return names
}
