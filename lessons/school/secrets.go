package school

import (
	"context"
	"crypto/aes"
	"crypto/cipher"
	"crypto/rand"
	"database/sql"
	"encoding/base64"
	"errors"
	"fmt"

	"scratchpass/lessons/postgres"
)

// keyLength is how many bytes the key has that seals what must not be read in the database.
const keyLength = 32

// NewKey makes a key.
func NewKey() string {
	key := make([]byte, keyLength)
	rand.Read(key) // never an error
	return base64.StdEncoding.EncodeToString(key)
}

// Seal seals texts with a key that is not in the database: who has a copy of that alone can neither
// read them nor put others in their place.
type Seal struct{ with cipher.AEAD }

// NewSeal reads a key as NewKey makes it.
func NewSeal(key string) (Seal, error) {
	raw, err := base64.StdEncoding.DecodeString(key)
	if err != nil || len(raw) != keyLength {
		return Seal{}, fmt.Errorf("the key has to be %d bytes in base64, as serve --new-seal writes it", keyLength)
	}
	block, err := aes.NewCipher(raw)
	if err != nil {
		return Seal{}, err
	}
	with, err := cipher.NewGCMWithRandomNonce(block)
	return Seal{with}, err
}

// letters is how sealed texts are written; one text is written in one way.
var letters = base64.RawURLEncoding.Strict()

// Close seals a text; what it is of is sealed with it, so that it can't be moved elsewhere.
func (s Seal) Close(text, of string) string {
	return letters.EncodeToString(s.with.Seal(nil, nil, []byte(text), []byte(of)))
}

// errSeal says that a text was sealed with another key, for something else, or by nobody.
var errSeal = errors.New("it was sealed with another key than the one that was given, or was changed")

// Open opens a sealed text.
func (s Seal) Open(sealed, of string) (string, error) {
	raw, err := letters.DecodeString(sealed)
	if err != nil {
		return "", errSeal
	}
	text, err := s.with.Open(nil, nil, raw, []byte(of))
	if err != nil {
		return "", errSeal
	}
	return string(text), nil
}

// Secrets are what the numbers of each group hang on.
type Secrets struct {
	DB   *postgres.DB
	Seal Seal
}

// sealedOf is what the secret of a group is sealed with, so that it is no other group's.
func sealedOf(group string) string { return "secret of " + group }

// Of is the secret of a group, which is made when it is first asked for, on whichever node.
func (s Secrets) Of(ctx context.Context, group string) ([]byte, error) {
	secret := make([]byte, keyLength)
	rand.Read(secret)
	if _, err := s.DB.ExecContext(ctx, "INSERT INTO secrets (name, sealed) VALUES ($1, $2) ON CONFLICT (name) DO NOTHING", group, s.Seal.Close(base64.StdEncoding.EncodeToString(secret), sealedOf(group))); err != nil {
		return nil, err
	}
	return s.open(ctx, group)
}

// Check reports whether the secret of a group can be opened, if one was made already; it makes none.
func (s Secrets) Check(ctx context.Context, group string) error {
	if _, err := s.open(ctx, group); !errors.Is(err, sql.ErrNoRows) {
		return err
	}
	return nil
}

func (s Secrets) open(ctx context.Context, group string) ([]byte, error) {
	var sealed string
	if err := s.DB.QueryRowContext(ctx, "SELECT sealed FROM secrets WHERE name = $1", group).Scan(&sealed); err != nil {
		return nil, err
	}
	text, err := s.Seal.Open(sealed, sealedOf(group))
	if err != nil {
		return nil, fmt.Errorf("the secret of the group %q: %w", group, err)
	}
	return base64.StdEncoding.DecodeString(text)
}
