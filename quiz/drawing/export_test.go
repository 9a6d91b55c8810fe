package drawing

// LatheParts lists the keys of the parts of a lathe that can be drawn alone.
func LatheParts() []string {
	var keys []string
	for _, p := range latheParts {
		if p.key != "" {
			keys = append(keys, p.key)
		}
	}
	return keys
}
