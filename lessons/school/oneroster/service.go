// Package oneroster is what a school has by the standard OneRoster 1.2 of 1EdTech: class lists from its
// own service or from its files, and marks to its book of grades. Names in the standard, such as
// sourcedId, line item and result, are used as it has them.
package oneroster

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net/http"
	"os"
	"strconv"
	"strings"
	"sync"
	"time"

	"golang.org/x/oauth2"

	"scratchpass/content"
	"scratchpass/lessons/school"
)

// Where the two services are below a school's address, and the scopes that are asked for. Source:
// 1EdTech, OneRoster 1.2, the REST bindings of the Rostering and of the Gradebook Service, and their
// OpenAPI definitions.
const (
	rostering = "/ims/oneroster/rostering/v1p2"
	gradebook = "/ims/oneroster/gradebook/v1p2"

	scopes     = "https://purl.imsglobal.org/spec/or/v1p2/scope/"
	readLists  = scopes + "roster.readonly"
	writeMarks = scopes + "gradebook.createput"
)

// Limits on what comes from outside.
const (
	mostAnswer  = 8 << 20 // bytes of an answer
	longestAsk  = 20 * time.Second
	longestWait = 30 * time.Second // that the service may ask for between two tries
	tries       = 4                // of one request, before it has failed
)

// Service is a school's OneRoster service.
type Service struct {
	o      school.OneRoster
	secret string
	client *http.Client
	clock  func() time.Time
	wait   func(context.Context, time.Duration) error // before the next try

	mu     sync.Mutex
	tokens map[string]held // by scope
}

// New reads what is needed for a service. It is reached when it is first needed.
func New(o school.OneRoster, clock func() time.Time) (*Service, error) {
	secret, err := os.ReadFile(o.SecretFile)
	if err != nil {
		return nil, fmt.Errorf("the secret of one-roster: %w", err)
	}
	return &Service{o: o, secret: strings.TrimSpace(string(secret)), clock: clock, wait: pause, tokens: map[string]held{},
		client: &http.Client{Timeout: longestAsk, CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}}, nil
}

func pause(ctx context.Context, d time.Duration) error {
	t := time.NewTimer(d)
	defer t.Stop()
	select {
	case <-t.C:
		return nil
	case <-ctx.Done():
		return ctx.Err()
	}
}

// ErrAway says that the service does not answer, or not in time.
var ErrAway = errors.New("the OneRoster service is out of reach")

// Refusal is an answer of the service that says no.
type Refusal struct {
	Status int    // of HTTP
	Code   string // the minor code of the standard, such as unknownobject; may be empty
	Says   string // its own words; may be empty
}

func (r *Refusal) Error() string {
	text := "the OneRoster service says " + strconv.Itoa(r.Status)
	if r.Code != "" {
		text += " " + r.Code
	}
	if r.Says != "" {
		text += fmt.Sprintf(" (%q)", r.Says)
	}
	return text
}

// Logged is an error as a log may have it: without the service's own words, which may name someone.
func Logged(err error) string {
	var no *Refusal
	if errors.As(err, &no) {
		return (&Refusal{Status: no.Status, Code: no.Code}).Error()
	}
	return err.Error()
}

// ask sends a request until it is answered, for as long as that may help. Each of ours may be sent
// twice: it reads, or it puts what is the same again.
func (s *Service) ask(ctx context.Context, method, path, scope string, body any) (head http.Header, text []byte, err error) {
	var sent []byte
	if body != nil {
		if sent, err = json.Marshal(body); err != nil {
			return nil, nil, err
		}
	}
	var token, stale *oauth2.Token
	for try := 1; ; try++ {
		if token, err = s.token(ctx, scope, stale); err != nil {
			return nil, nil, err
		}
		status, head, text, err := s.once(ctx, method, path, token, sent)
		if err == nil && status < http.StatusMultipleChoices {
			return head, text, nil
		}
		again, wait := s.again(status, head, try)
		if status == http.StatusUnauthorized && stale == nil { // it may have run out before its time
			stale, again, wait = token, true, 0
		}
		if err == nil {
			err = refusal(status, text)
		}
		if !again || ctx.Err() != nil {
			return nil, nil, err
		}
		if s.wait(ctx, wait) != nil {
			return nil, nil, err
		}
	}
}

// again reports whether a try that was answered with a status, 0 for not at all, is worth another,
// and after how long.
func (s *Service) again(status int, head http.Header, try int) (bool, time.Duration) {
	switch status {
	case 0, http.StatusTooManyRequests, http.StatusInternalServerError, http.StatusBadGateway, http.StatusServiceUnavailable, http.StatusGatewayTimeout:
	default:
		return false, 0
	}
	wait := time.Second << (try - 1)
	if asked := head.Get("Retry-After"); asked != "" {
		if n, err := strconv.Atoi(asked); err == nil {
			wait = time.Duration(n) * time.Second
		} else if at, err := http.ParseTime(asked); err == nil {
			wait = at.Sub(s.clock())
		}
	}
	return try < tries && wait <= longestWait, max(wait, 0)
}

// once sends a request. An answer that is too long or breaks off is none.
func (s *Service) once(ctx context.Context, method, path string, token *oauth2.Token, sent []byte) (status int, head http.Header, text []byte, err error) {
	r, err := http.NewRequestWithContext(ctx, method, s.o.Address+path, bytes.NewReader(sent))
	if err != nil {
		return 0, nil, nil, err
	}
	token.SetAuthHeader(r)
	r.Header.Set("Accept", "application/json")
	if sent != nil {
		r.Header.Set("Content-Type", "application/json")
	}
	answer, err := s.client.Do(r)
	if err != nil {
		return 0, nil, nil, fmt.Errorf("%w: %w", ErrAway, err)
	}
	defer answer.Body.Close()
	text, err = io.ReadAll(io.LimitReader(answer.Body, mostAnswer+1))
	switch {
	case err != nil:
		return 0, nil, nil, fmt.Errorf("%w: its answer broke off: %w", ErrAway, err)
	case len(text) > mostAnswer:
		return answer.StatusCode, answer.Header, nil, fmt.Errorf("the OneRoster service: an answer has more than %d MB", mostAnswer>>20)
	}
	return answer.StatusCode, answer.Header, text, nil
}

// statusInfo is how the standard says that something went wrong; some put it into a box of its name.
type statusInfo struct {
	Description string      `json:"imsx_description"`
	Minor       minor       `json:"imsx_CodeMinor"`
	Box         *statusInfo `json:"imsx_StatusInfo"`
}

type minor struct {
	Fields []struct {
		Value string `json:"imsx_codeMinorFieldValue"`
	} `json:"imsx_codeMinorField"`
}

// longestSaid is how many letters of what a service says are told.
const longestSaid = 200

// refusal reads an answer that says no, whatever is in it.
func refusal(status int, text []byte) *Refusal {
	var info statusInfo
	_ = json.Unmarshal(text, &info) // what can't be read says nothing
	if info.Box != nil {
		info = *info.Box
	}
	r := &Refusal{Status: status, Says: shortened(info.Description)}
	if len(info.Minor.Fields) > 0 {
		r.Code = shortened(info.Minor.Fields[0].Value)
	}
	return r
}

func shortened(text string) string {
	letters := []rune(strings.TrimSpace(content.Printable(strings.ToValidUTF8(text, "?"))))
	if len(letters) > longestSaid {
		letters = append(letters[:longestSaid-1], '…')
	}
	return string(letters)
}
