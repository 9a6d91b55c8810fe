// Package setup has the tasks about speed, gears, half-nut and thread dial, and how the tool stands.
package setup
