// Package onscreen holds tests and figures of the whole program in a real
// window: it is built, started on an X screen, and driven by real events of the
// mouse and the keys; what comes of it is read from the screen's pixels and
// from the collection's file. It has no code but tests, and .ci/onscreen and
// .ci/bench run it. Below it, bare is the window that the figures are compared
// with.
package onscreen
