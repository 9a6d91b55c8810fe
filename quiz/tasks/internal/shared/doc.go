// Package shared is what the tasks of several stages have in common: inputs, how numbers
// are drawn and told, steps that many workings begin with, and common errors that many
// tasks know.
package shared
