package journal

import "time"

// SlowSync makes each commit wait so long before its sync, as a slow disk does.
func (f *File) SlowSync(wait time.Duration) { f.writer.slow = wait }
