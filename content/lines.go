package content

import "gopkg.in/yaml.v3"

// lines finds the line on which a key or an item with this text first stands.
func lines(text []byte) func(value string) int {
	var root yaml.Node
	if yaml.Unmarshal(text, &root) != nil {
		return func(string) int { return 0 }
	}
	return func(value string) int {
		line := 0
		walk(&root, func(n *yaml.Node) {
			if line == 0 && n.Kind == yaml.ScalarNode && n.Value == value {
				line = n.Line
			}
		})
		return line
	}
}
