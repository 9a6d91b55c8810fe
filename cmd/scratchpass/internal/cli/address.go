package cli

import (
	"net"
	"slices"
	"strings"
)

// Reach is an address of this computer that others in the same network may reach.
type Reach struct {
	IP        net.IP
	Interface string
}

// Reaches are the private addresses of this computer, the one that it speaks from first.
func Reaches() ([]Reach, error) {
	all, err := net.Interfaces()
	if err != nil {
		return nil, err
	}
	var found []Reach
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
				found = append(found, Reach{n.IP, i.Name})
			}
		}
	}
	if from := speaksFrom(); from != nil {
		slices.SortStableFunc(found, func(a, b Reach) int { return order(b.IP.Equal(from)) - order(a.IP.Equal(from)) })
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

// Served tells how pages are asked for that are served at an address. host is what was to be
// listened at, as it was given: a name stays in the link, for a certificate may be for it.
// Where that is everywhere, the link has the address that others reach, and each address of this
// computer is a name. Any other name is to be refused: pages of others could ask under it.
func Served(host string, at net.Addr) (link string, names []string) {
	_, port, _ := net.SplitHostPort(at.String()) // what is listened at has a port
	host = strings.ToLower(host)
	everywhere := host == "" || net.ParseIP(host).IsUnspecified()
	if everywhere {
		host = "127.0.0.1"
		if found, err := Reaches(); err == nil && len(found) > 0 {
			host = found[0].IP.String()
		}
	}
	hosts := []string{host, "localhost", "127.0.0.1"}
	if own, err := net.InterfaceAddrs(); everywhere && err == nil {
		for _, a := range own {
			if ip, ok := a.(*net.IPNet); ok {
				hosts = append(hosts, ip.IP.String())
			}
		}
	}
	for _, h := range hosts {
		names = append(names, net.JoinHostPort(h, port))
		if port == "80" || port == "443" { // browsers leave those out
			names = append(names, strings.TrimSuffix(net.JoinHostPort(h, port), ":"+port))
		}
	}
	return net.JoinHostPort(host, port), names
}
