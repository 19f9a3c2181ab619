package ui

import "slices"

// layOnFlap lays the choice pointed at on the flap: first on the one side, then
// on the other, then in place of the one laid there first. One that lies there
// is taken off.
func (l *choiceLeaf) layOnFlap() {
	if l.at < 0 {
		return
	}
	name := l.nameOf(l.at)
	switch i := slices.Index(l.flap, name); {
	case i >= 0:
		l.flap = slices.Delete(l.flap, i, i+1)
	case len(l.flap) == 2:
		l.flap = []choiceName{l.flap[1], name}
	default:
		l.flap = append(l.flap, name)
	}
	l.blocks = nil
	l.arrange()
	l.reveal(l.at)
	l.tell()
}

// turnFlap shows what lies on the other side of the flap.
func (l *choiceLeaf) turnFlap() {
	if len(l.flap) == 0 {
		l.w.desk.tell("Nothing lies on the flap: Ctrl Enter lays the choice at hand on it")
		return
	}
	to := l.flap[0]
	if l.at >= 0 && l.nameOf(l.at) == to && len(l.flap) == 2 {
		to = l.flap[1]
	}
	l.goTo(l.named(to))
}

// flapWords say on which side of the flap a choice lies.
func (l *choiceLeaf) flapWords(i int) string {
	switch slices.Index(l.flap, l.nameOf(i)) {
	case 0:
		return "on one side of the flap"
	case 1:
		return "on the other side of the flap"
	}
	return ""
}
