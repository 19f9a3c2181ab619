package command

import (
	"fmt"

	"headland/pagemodel"
	"headland/ui/session"
)

// The edits of this file say what was decided, and how a word goes.

func makeKeep(f *fields, s *session.Session) pagemodel.Edit {
	ref, line := f.line(s)
	e := pagemodel.Keep{LineRef: ref, Reason: f.text("reason"), Shown: f.yes("shown")}
	f.shows(e.Reason, e.Shown)
	if f.has("turn_after") {
		e.Turns = []int{f.afterWord("turn_after", line)}
	}
	return e
}

// shows says that there is no reason that could go out, where one is to.
func (f *fields) shows(reason string, shown bool) {
	if shown && reason == "" && f.err == nil {
		f.err = fmt.Errorf(`"shown" lets the reason go out with the corrections, and there is none: give a "reason" too`)
	}
}

func makeUnsettle(f *fields, s *session.Session) pagemodel.Edit {
	ref, _ := f.line(s)
	return pagemodel.Unsettle{LineRef: ref}
}

// makeReason changes what is said of the reason, its words or whether it may go
// out.
func makeReason(f *fields, s *session.Session) pagemodel.Edit {
	ref, line := f.line(s)
	if !f.has("reason") && !f.has("shown") && f.err == nil {
		f.err = fmt.Errorf(`"reason" needs "reason", in words, or "shown", whether it may go out with the corrections`)
	}
	e := pagemodel.SetReason{LineRef: ref, Reason: line.Reason(), Shown: line.Shown()}
	f.take("reason", &e.Reason, "words in quotation marks")
	f.take("shown", &e.Shown, "true or false")
	f.shows(e.Reason, e.Shown && f.has("shown"))
	return e
}

func makeWhite(f *fields, s *session.Session) pagemodel.Edit {
	ref, _ := f.line(s)
	f.need("lines")
	return pagemodel.SetAbove{LineRef: ref, Lines: f.integer("lines")}
}

func makeSay(f *fields, _ *session.Session) pagemodel.Edit {
	f.need("word")
	f.need("as")
	return pagemodel.Say{Word: f.text("word"), As: f.text("as")}
}

func makeMarkSent(f *fields, _ *session.Session) pagemodel.Edit {
	return pagemodel.MarkSent{Name: f.text("name")}
}
