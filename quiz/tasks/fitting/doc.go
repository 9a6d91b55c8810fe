// Package fitting has the tasks about how it is measured and when it fits.
package fitting
