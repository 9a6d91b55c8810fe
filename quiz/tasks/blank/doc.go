// Package blank has the tasks about the size of the blank or the bore.
package blank
