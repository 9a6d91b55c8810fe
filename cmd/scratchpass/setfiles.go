package main

import "regexp"

// The files that set commands write, by their names in the folder.
var (
	sheetFiles    = regexp.MustCompile(`^sheets(-\d{3})?\.(pdf|html|txt)$`)
	keyFiles      = regexp.MustCompile(`^key(-\d{3})?\.(pdf|html|txt)$`)
	feedbackFiles = regexp.MustCompile(`^feedback(-\d{3})?\.(pdf|html|txt)$`)
	codeFiles     = regexp.MustCompile(`^codes(\.csv|/[A-Z0-9]{3}-[A-Z0-9]{4}\.txt)$`)
	markFiles     = regexp.MustCompile(`^marks\.(csv|json)$`)
)
