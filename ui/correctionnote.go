package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"headland/pagemodel"
)

// key is a key in the list that is not for typing.
func (l *correctionList) key(k fyne.KeyName) bool {
	switch k {
	case fyne.KeyEscape:
		l.leave()
	case fyne.KeyReturn, fyne.KeyEnter:
		l.goTo(l.rows.chosen)
	case fyne.KeyTab:
		next := l.sieve.chosen + 1
		if next == len(l.states) {
			next = -1
		}
		l.sieve.choose(next)
		l.narrow(0)
	default:
		return l.rows.walk(k)
	}
	return true
}

// stateKeys give the states, in the order of [pagemodel.ReplyStates].
var stateKeys = []fyne.KeyName{fyne.Key1, fyne.Key2, fyne.Key3, fyne.Key4, fyne.Key5}

// shortcut is a key with a modifier in the list.
func (l *correctionList) shortcut(s fyne.Shortcut) bool {
	k, ok := s.(*desktop.CustomShortcut)
	if !ok {
		return false
	}
	switch *k {
	case desktop.CustomShortcut{KeyName: fyne.KeyReturn, Modifier: ctrl}, desktop.CustomShortcut{KeyName: fyne.KeyEnter, Modifier: ctrl}:
		l.askNote()
	case desktop.CustomShortcut{KeyName: fyne.KeyE, Modifier: ctrl}:
		l.export()
	case desktop.CustomShortcut{KeyName: fyne.KeyR, Modifier: ctrlShift}:
		l.askRound()
	default:
		return k.Modifier == ctrl && l.stateKey(k.KeyName)
	}
	return true
}

// stateKey notes the state that a key stands for; false for any other key.
func (l *correctionList) stateKey(key fyne.KeyName) bool {
	for i, name := range stateKeys {
		if name == key {
			l.note(func(r *pagemodel.Reply) { r.State = pagemodel.ReplyStates[i] })
			return true
		}
	}
	return false
}

// reply is what is noted about the correction at hand, or false.
func (l *correctionList) reply() (pagemodel.Reply, bool) {
	c, ok := l.chosen()
	if !ok {
		return pagemodel.Reply{}, false
	}
	return l.w.session.Collection().Reply(l.round, c.Change.Key), true
}

// note notes something about the correction at hand.
func (l *correctionList) note(change func(*pagemodel.Reply)) {
	r, ok := l.reply()
	if !ok {
		return
	}
	change(&r)
	if err := l.w.session.Do(pagemodel.SetReply{Reply: r}); err != nil {
		l.w.fail("It could not be noted", err)
		return
	}
	l.read()
}

// read lists again what is noted now, with the row chosen that stands where the
// one before stood.
func (l *correctionList) read() {
	list, err := l.w.session.Corrections(l.round)
	if err != nil {
		l.w.fail("The corrections can’t be listed", err)
		return
	}
	at := l.rows.chosen
	l.list = list
	l.countStates()
	l.narrow(at)
}

// noteWay is one thing that can be noted about a correction.
type noteWay struct {
	words string
	key   string
	is    bool // it is so
	set   func(*pagemodel.Reply)
}

// noteWays are the states and whose alteration it can be.
func noteWays(state pagemodel.ReplyState, whose pagemodel.Whose) []noteWay {
	var ways []noteWay
	for i, s := range pagemodel.ReplyStates {
		ways = append(ways, noteWay{sentence(s.String()), "Ctrl " + string(stateKeys[i]), s == state, func(r *pagemodel.Reply) { r.State = s }})
	}
	for _, l := range pagemodel.WhoseLetters {
		ways = append(ways, noteWay{sentence(l.Words()), string(l), l == whose, func(r *pagemodel.Reply) { r.Whose = l }})
	}
	return ways
}
