// Package safety has the tasks about what can hurt someone.
package safety
