package served

import (
	"crypto/rand"
	"crypto/sha256"
	"encoding/hex"
	"net/http"
	"time"

	"scratchpass/lessons/class"
)

// keptFor is how long a phone is known again.
const keptFor = 180 * 24 * time.Hour

// device is what is kept of a phone's token: who reads the file can't come in with it. It is
// empty for a phone that has none yet.
func device(r *http.Request, code string) string {
	c, err := r.Cookie("room-" + code)
	if err != nil || c.Value == "" {
		return ""
	}
	return kept(c.Value)
}

// kept is what is kept of a token.
func kept(token string) string {
	sum := sha256.Sum256([]byte(token))
	return hex.EncodeToString(sum[:])
}

// newDevice gives a phone a token for a room.
func (s *Server) newDevice(w http.ResponseWriter, code string) string {
	token := rand.Text()
	http.SetCookie(w, &http.Cookie{Name: "room-" + code, Value: token, Path: "/r/" + code, MaxAge: int(keptFor.Seconds()), HttpOnly: true, Secure: s.o.Secure, SameSite: http.SameSiteLaxMode}) // Lax: a link on another page leads to the seat, not to a second phone
	return kept(token)
}

// knows reports whether a phone has a name in a room, or waits for one.
func knows(l *class.Live, r *http.Request) (known bool) {
	l.See(func(room *class.Room) {
		device := device(r, room.Head.Code)
		known = room.Holder(device) != nil || room.Claimed(device) != nil
	})
	return known
}

// who is who holds the phone of a request; ok is false where that is nobody yet.
func who(l *class.Live, r *http.Request) (id, phone string, ok bool) {
	l.See(func(room *class.Room) {
		phone = device(r, room.Head.Code)
		if p := room.Holder(phone); p != nil {
			id, ok = p.ID, true
		}
	})
	return id, phone, ok
}
