// Package command is the program without a window: one verb for each job, going
// through the same doors as the window does (headland/ui/session).
//
// It opens no file of a collection itself, decides nothing about a page, and
// shows nothing but words: what was done goes to one writer, what went wrong to
// another. The verbs are listed in verbs.go; each has a file of its own.
package command
