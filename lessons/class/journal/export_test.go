package journal

import "time"

// SlowSync makes each commit wait so long before its sync, as a slow disk does.
func (r *rooms) SlowSync(wait time.Duration) { r.writer.slow = wait }
