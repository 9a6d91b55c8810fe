// Package reading has the tasks about what the drawing calls for.
package reading
