package class

import (
	"crypto/hmac"
	"crypto/rand"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"math/big"
	"strings"
	"time"

	"scratchpass/quiz/set"
)

// Head is what a room is called and for whom it is. It does not change.
type Head struct {
	Code   string       `json:"code"`            // what people type to come in
	Title  string       `json:"title"`           // on pages
	Began  time.Time    `json:"began"`           // in milliseconds
	Key    string       `json:"key"`             // of the instructor's private link
	Roster []Apprentice `json:"roster"`          // whose names are known; others come as visitors
	Listed bool         `json:"listed"`          // phones show the names to tap
	Sheets bool         `json:"sheets"`          // the set may be on paper, too, with a code on each sheet
	Group  string       `json:"group,omitempty"` // of a school, whose instructors see to it; else who has the link does
	Draws  int          `json:"draws"`           // the version that draws the numbers: problem.Draws

	Secret string `json:"secret,omitempty"` // SecretSum of the secret that draws them
}

// ids are those of the roster, in whose order people sit.
func (h Head) ids() []string {
	ids := make([]string, len(h.Roster))
	for i, a := range h.Roster {
		ids[i] = a.ID
	}
	return ids
}

// SecretSum tells one class secret from another, and nothing else of it.
func SecretSum(secret set.Secret) string {
	sum := hmac.New(sha256.New, secret)
	sum.Write([]byte("scratchpass: which class secret"))
	return hex.EncodeToString(sum.Sum(nil)[:4])
}

// With is a maker of the room's sets, where it has the secret that the room was begun with. With
// another everyone would have other numbers.
func (h Head) With(secret set.Secret, makes Maker) Maker {
	if h.Secret == "" || h.Secret == SecretSum(secret) {
		return makes
	}
	return func(string, []string) (*Questions, error) {
		return nil, errors.New("the class was begun with another class secret: give that one with --secret")
	}
}

// letters are those of room codes: none that can be taken for another when read from afar.
const letters = "ACDEFHJKLMNPRTUVWXY34679"

// codeLength is how many letters a room code has: with 24 letters 190 million codes. At the
// rate at which tries are let through that is far from guessed in a lesson.
const codeLength = 6

// NewCode returns a room code.
func NewCode() string {
	var b strings.Builder
	for range codeLength {
		n, err := rand.Int(rand.Reader, big.NewInt(int64(len(letters))))
		if err != nil {
			panic("class: the system gives no random numbers: " + err.Error())
		}
		b.WriteByte(letters[n.Int64()])
	}
	return b.String()
}

// ReadCode is a room code as it was typed: in small letters, with spaces or a hyphen.
func ReadCode(text string) string {
	return strings.Map(func(r rune) rune {
		if strings.ContainsRune(letters, r) {
			return r
		}
		return -1
	}, strings.ToUpper(text))
}

// IsCode reports whether a code may be one of a room: no other is worth a look.
func IsCode(code string) bool { return len(code) == codeLength }
