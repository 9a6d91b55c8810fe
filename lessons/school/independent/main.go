package main

import (
	"flag"
	"fmt"
	"net"
	"net/http"
	"os"
	"strings"
	"time"
)

func main() {
	at := flag.String("listen", "127.0.0.1:9998", "`HOST:PORT` to serve at, on this computer")
	back := flag.String("back", "http://127.0.0.1:8460/back", "`ADDRESS` that people come back to")
	secret := flag.String("secret", "", "the client's `SECRET`; without, it is a public client")
	flag.Parse()
	if err := run(*at, *back, *secret); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run(at, back, secret string) error {
	l, err := net.Listen("tcp", at)
	if err != nil {
		return err
	}
	issuer := "http://" + l.Addr().String()
	fmt.Printf("issuer %s, client scratchpass; people with the password %s:\n", issuer, password)
	for _, s := range people {
		fmt.Printf("  %-5s in %s\n", s.User, strings.Join(s.Groups, ", "))
	}
	server := &http.Server{Handler: Provider(issuer, back, secret, Mixed), ReadHeaderTimeout: 10 * time.Second}
	return server.Serve(l)
}
