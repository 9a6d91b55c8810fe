// Package passes has the tasks about the moves of a pass, and what to do when it goes wrong.
package passes
