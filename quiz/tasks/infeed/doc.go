// Package infeed has the tasks about how deep to go, by which slide, and what the dials then read.
package infeed
