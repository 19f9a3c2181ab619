package ui

// hasKeys is part of what lies over the desk and has the keys while it lies there:
// nothing shows that it has them, and what it types into it hears by a TypedRune of
// its own.
type hasKeys struct{}

// FocusGained does nothing.
func (hasKeys) FocusGained() {}

// FocusLost does nothing.
func (hasKeys) FocusLost() {}

// TypedRune has nothing to type into.
func (hasKeys) TypedRune(rune) {}
