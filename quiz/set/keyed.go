package set

import (
	"bytes"
	"crypto/hmac"
	"crypto/rand"
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"strings"

	"scratchpass/calc"
	"scratchpass/quiz/files"
)

// Secret is what a class's numbers hang on. Who has it can make every key.
type Secret []byte

// secretBytes is how long a secret is that is made here.
const secretBytes = 32

// ReadSecret reads a secret that was written by NewSecret, or any text of at least 16
// letters.
func ReadSecret(path string) (Secret, error) {
	text, err := files.Read(path, files.MostWords)
	if err != nil {
		return nil, err
	}
	s := strings.TrimSpace(string(text))
	if len(s) < 16 || len(s) > 4096 {
		return nil, fmt.Errorf("secret %s has %d letters: give 16 to 4096, or delete the file and let set make write one", calc.Quoted(path), len(s))
	}
	return Secret(s), nil
}

// Flaw is what makes a secret easier to guess or to get than it should be.
type Flaw string

// The flaws.
const (
	Short Flaw = "short" // it has fewer than 24 letters
	Alike Flaw = "alike" // it has fewer than 8 different letters, or is one piece over and over
	Open  Flaw = "open"  // others on the machine may read its file, or change it
)

// The least that a secret should have; what NewSecret makes has 64 letters.
const (
	fewLetters   = 24
	fewDifferent = 8
)

// Flaws are those of a secret that can be seen at a glance. path is its file; who may read
// that is known on Unix only.
func (s Secret) Flaws(path string) []Flaw {
	var flaws []Flaw
	if len(s) < fewLetters {
		flaws = append(flaws, Short)
	}
	different := map[byte]bool{}
	for _, b := range s {
		different[b] = true
	}
	if len(different) < fewDifferent || s.repeats() {
		flaws = append(flaws, Alike)
	}
	if info, err := os.Stat(path); err == nil && runtime.GOOS != "windows" && info.Mode().Perm()&0o077 != 0 {
		flaws = append(flaws, Open)
	}
	return flaws
}

// repeats reports whether a secret is one piece over and over, such as abcabcab.
func (s Secret) repeats() bool {
	for piece := 1; piece <= len(s)/2; piece++ {
		if bytes.Equal(s[piece:], s[:len(s)-piece]) {
			return true
		}
	}
	return false
}

// NewSecret makes a secret and writes it to a file that is not there yet, readable by
// its owner alone.
func NewSecret(path string) (Secret, error) {
	raw := make([]byte, secretBytes)
	if _, err := rand.Read(raw); err != nil {
		return nil, err
	}
	s := hex.EncodeToString(raw)
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return nil, err
	}
	err := files.WriteNew(path, func(f *os.File) error { _, err := f.WriteString(s + "\n"); return err })
	if errors.Is(err, fs.ErrExist) {
		return ReadSecret(path) // another run was first
	}
	return Secret(s), err
}

// keyed hashes parts under the secret:
//
//	HMAC-SHA-256(secret, len(part1) part1 len(part2) part2 ...)
//
// The lengths stand in front so that no two lists of parts run together.
func (s Secret) keyed(parts ...[]byte) [sha256.Size]byte {
	h := hmac.New(sha256.New, s)
	var n [4]byte
	for _, p := range parts {
		binary.BigEndian.PutUint32(n[:], uint32(len(p)))
		h.Write(n[:])
		h.Write(p)
	}
	var sum [sha256.Size]byte
	h.Sum(sum[:0])
	return sum
}

// seed is the seed of one try at one question.
func (m *Maker) seed(who string, item, try int) uint32 {
	sum := m.secret.keyed(m.id, []byte("question"), []byte(who), fmt.Appendf(nil, "%d.%d", item, try))
	return binary.BigEndian.Uint32(sum[:])
}

// pick is a number from 0 up to but not including n.
func (m *Maker) pick(n int, what ...string) int {
	parts := [][]byte{m.id}
	for _, w := range what {
		parts = append(parts, []byte(w))
	}
	sum := m.secret.keyed(parts...)
	return int(binary.BigEndian.Uint64(sum[:]) % uint64(n))
}

// shuffle puts things into an order that hangs on what.
func shuffle[T any](m *Maker, things []T, what ...string) {
	for i := len(things) - 1; i > 0; i-- {
		j := m.pick(i+1, append(slices.Clip(what), strconv.Itoa(i))...)
		things[i], things[j] = things[j], things[i]
	}
}

// codeLetters are those of a sheet's code: none is taken for another, in print or by
// hand.
const codeLetters = "23456789ABCDEFGHJKMNPQRSTVWXYZ"

// Code is the code of an apprentice's sheet: K7F-2QXM.
func (m *Maker) Code(who string) string { return m.codeOn(who, m.sides[who]) }

// codeOn is the code of the sheet that someone has on a side: each has one of its own.
func (m *Maker) codeOn(who string, s side) string {
	parts := [][]byte{m.id, []byte("code"), []byte(who)}
	if s != anySide {
		parts = append(parts, fmt.Appendf(nil, "side %d", s))
	}
	sum := m.secret.keyed(parts...)
	x := binary.BigEndian.Uint64(sum[:])
	var b strings.Builder
	for i := range 7 {
		if i == 3 {
			b.WriteByte('-')
		}
		b.WriteByte(codeLetters[x%uint64(len(codeLetters))])
		x /= uint64(len(codeLetters))
	}
	return b.String()
}

// byHand takes out what someone may write between the letters of a code.
var byHand = strings.NewReplacer(" ", "", "-", "", "\u2013", "")

// cleanCode reads a code as it is written by hand: with small letters, spaces, or
// without its hyphen.
func cleanCode(text string) string {
	text = strings.ToUpper(byHand.Replace(strings.TrimSpace(text)))
	if len(text) != 7 {
		return text
	}
	return text[:3] + "-" + text[3:]
}
