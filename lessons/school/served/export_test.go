package served

// Paths are the pages and forms that want someone who has signed on.
func (s *Server) Paths() []string {
	var all []string
	for _, r := range s.routes() {
		all = append(all, r.Path)
	}
	return all
}

// Leave ends someone's study at this node, as if nobody had looked at it for long.
func (s *Server) Leave(who string) { s.study.leave(who) }
