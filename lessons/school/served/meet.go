package served

import (
	"context"
	"sync"
	"time"
)

// here is the topic on which nodes tell each other whose pages they serve.
const here = "here"

// Meet tells the other nodes, at each tick, which phones are at this one, and hears of theirs, until
// the context ends: else an instructor's page at one node would call a phone at another away. What is
// not heard is told again at the next tick.
func (s *Server) Meet(ctx context.Context, tick <-chan time.Time) {
	var hearing sync.WaitGroup
	defer hearing.Wait()
	hearing.Go(func() { // what goes wrong with the database is told by who asks for something
		s.o.DB.Listen(ctx, here, s.rooms.Heard, func() {}, func(error) {})
	})
	for {
		select {
		case <-ctx.Done():
			return
		case <-tick:
			_ = s.o.DB.Tell(ctx, here, s.rooms.Here())
		}
	}
}
