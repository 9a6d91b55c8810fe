package oneroster

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"net/http"
	"time"

	"golang.org/x/oauth2"
	"golang.org/x/oauth2/clientcredentials"
)

// held is a token, and until when it is used; zero for as long as it is taken.
type held struct {
	*oauth2.Token
	until time.Time
}

// leeway is how long before its end a token is not used any more: a request takes a while.
const leeway = 10 * time.Second

// Check says whether tokens can be had for all that is asked of the service.
func (s *Service) Check(ctx context.Context) error {
	asked := []string{readLists, writeMarks}
	if s.o.ListsOnly {
		asked = asked[:1]
	}
	for _, scope := range asked {
		if _, err := s.token(ctx, scope, nil); err != nil {
			return fmt.Errorf("for %s: %w", scope, err)
		}
	}
	return nil
}

// token is one that is good for a scope. stale is one that the service did not take.
func (s *Service) token(ctx context.Context, scope string, stale *oauth2.Token) (*oauth2.Token, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if t := s.tokens[scope]; t.Token != nil && t.Token != stale && (t.until.IsZero() || s.clock().Before(t.until)) {
		return t.Token, nil
	}
	t, err := s.newToken(ctx, scope)
	if err != nil {
		return nil, noToken(err)
	}
	h := held{Token: t}
	if !t.Expiry.IsZero() {
		h.until = s.clock().Add(time.Until(t.Expiry) - leeway)
	}
	s.tokens[scope] = h
	return t, nil
}

// newToken has a new token for a scope. The client says who it is in the head of the request, as all
// services have to take it (RFC 6749, 2.3.1), and in its body where one does not know it by that.
func (s *Service) newToken(ctx context.Context, scope string) (*oauth2.Token, error) {
	ctx = context.WithValue(ctx, oauth2.HTTPClient, s.client)
	config := clientcredentials.Config{ClientID: s.o.Client, ClientSecret: s.secret, TokenURL: s.o.Token, Scopes: []string{scope}, AuthStyle: oauth2.AuthStyleInHeader}
	t, err := config.Token(ctx)
	if !unknownClient(err) {
		return t, err
	}
	config.AuthStyle = oauth2.AuthStyleInParams
	if t, other := config.Token(ctx); !unknownClient(other) {
		return t, other
	}
	return nil, err
}

// unknownClient reports whether an error says that the client was not known by what it gave.
func unknownClient(err error) bool {
	var no *oauth2.RetrieveError
	return errors.As(err, &no) && (no.Response.StatusCode == http.StatusUnauthorized || no.ErrorCode == "invalid_client" || no.ErrorCode == "invalid_request")
}

// noToken is why there is no token: never with what was sent for it.
func noToken(err error) error {
	var no *oauth2.RetrieveError
	if !errors.As(err, &no) {
		return fmt.Errorf("%w: no token: %w", ErrAway, err)
	}
	says := cmp.Or(no.ErrorCode, no.Response.Status)
	if no.Response.StatusCode >= http.StatusInternalServerError {
		return fmt.Errorf("%w: no token: it says %.80q", ErrAway, says)
	}
	return fmt.Errorf("the OneRoster service gives no token: it says %.80q; see to client, secret-file and the scopes", says)
}
