// Package shape has the tasks about the form of the thread and the tool that cuts it.
package shape
