package command

import (
	"fmt"
	"slices"
	"strings"

	"headland/pagemodel"
	"headland/ui/session"
)

// maker makes an edit of a line of a script.
type maker struct {
	kind   string
	fields []string
	make   func(f *fields, s *session.Session) pagemodel.Edit
}

// place are the fields that say which line is meant.
var place = []string{"poem", "stanza", "line"}

func placeAnd(names ...string) []string { return append(place[:len(place):len(place)], names...) }

// makers are all edits that a script can do, besides undo and redo.
var makers = []maker{
	{"break", placeAnd("after", "at", "in"), makeBreak},
	{"join", placeAnd("in", "after", "at"), makeJoin},
	{"words", placeAnd("count"), makeWords},
	{"keep", placeAnd("turn_after", "reason", "shown"), makeKeep},
	{"unsettle", placeAnd(), makeUnsettle},
	{"reason", placeAnd("reason", "shown"), makeReason},
	{"indent", placeAnd("em"), makeIndent},
	{"gap", placeAnd("after", "em"), makeGap},
	{"tab", placeAnd("after", "at", "em"), makeTab},
	{"range", placeAnd("to"), makeRange},
	{"drop", placeAnd("off"), makeDrop},
	{"white", placeAnd("lines"), makeWhite},
	{"text", placeAnd("text"), makeText},
	{"stanza", placeAnd("open"), makeStanza},
	{"together", placeAnd("through", "lines", "off"), makeTogether},
	{"page", placeAnd("off"), makePage},
	{"start", []string{"poem", "start", "blank"}, makeStart},
	{"form", []string{"poem", "form"}, makeForm},
	{"run", []string{"poem", "lines"}, makeRun},
	{"head", append([]string{"poem"}, headFields...), makeHead},
	{"move", []string{"poem", "through", "before"}, makeMove},
	{"move-section", []string{"section", "before"}, makeMoveSection},
	{"leave-out", []string{"poem", "through"}, makeLeaveOut},
	{"put-back", []string{"poem", "before"}, makePutBack},
	{"keep-order", []string{"name"}, makeKeepOrder},
	{"use-order", []string{"name"}, makeUseOrder},
	{"drop-order", []string{"name"}, makeDropOrder},
	{"echo", append([]string{"name", "off"}, echoFields...), makeEcho},
	{"reading", append([]string{"name"}, readingFields...), makeReading},
	{"drop-reading", []string{"name"}, makeDropReading},
	{"voice", append([]string{"usual"}, voiceFields...), makeVoice},
	{"fit-voice", nil, makeFitVoice},
	{"matter", []string{"kind", "title", "text", "off", "roman", "parts", "alphabet"}, makeMatter},
	{"about", aboutFields, makeAbout},
	{"design", slices.Concat(designRules, designFields), makeDesign},
	{"keep-design", []string{"name"}, makeKeepDesign},
	{"drop-design", []string{"name"}, makeDropDesign},
	{"use-design", []string{"name"}, makeUseDesign},
	{"keep-variant", []string{"poem", "name"}, makeKeepVariant},
	{"use-variant", []string{"poem", "name"}, makeUseVariant},
	{"name-variant", []string{"poem", "from", "to"}, makeNameVariant},
	{"drop-variant", []string{"poem", "name"}, makeDropVariant},
	{"bring-back", []string{"poem", "state"}, makeBringBack},
	{"mark-sent", []string{"name"}, makeMarkSent},
	{"reply", append([]string{"number", "round"}, replyFields...), makeReply},
	{"say", []string{"word", "as"}, makeSay},
}

// edit is the edit that the fields ask for.
func (f *fields) edit(s *session.Session) (pagemodel.Edit, error) {
	for _, m := range makers {
		if m.kind != f.kind {
			continue
		}
		if err := f.only(m.fields...); err != nil {
			return nil, err
		}
		e := m.make(f, s)
		return e, f.err
	}
	return nil, fmt.Errorf("there is no edit %q: it is one of %s, undo, redo", f.kind, kinds())
}

func kinds() string {
	names := make([]string, len(makers))
	for i, m := range makers {
		names[i] = m.kind
	}
	return strings.Join(names, ", ")
}

func makeBreak(f *fields, s *session.Session) pagemodel.Edit {
	ref, line := f.line(s)
	if f.has("after") == f.has("at") && f.err == nil {
		f.err = fmt.Errorf(`"break" needs either "after", in words, or "at", in characters`)
	}
	return pagemodel.Break{LineRef: ref, At: f.offset(line), In: f.in()}
}

func makeJoin(f *fields, s *session.Session) pagemodel.Edit {
	ref, line := f.line(s)
	e := pagemodel.Join{LineRef: ref, In: f.in(), At: f.offset(line)}
	if e.At != 0 && e.In != pagemodel.InEdition && f.err == nil {
		f.err = fmt.Errorf(`"join" takes "after" or "at" only in the edition, where a line can have several breaks`)
	}
	return e
}

func makeWords(f *fields, s *session.Session) pagemodel.Edit {
	ref, _ := f.line(s)
	f.need("count")
	return pagemodel.Carry{LineRef: ref, Count: f.integer("count")}
}

func makeIndent(f *fields, s *session.Session) pagemodel.Edit {
	ref, _ := f.line(s)
	f.need("em")
	return pagemodel.Indent{LineRef: ref, To: pagemodel.Ems(f.number("em"))}
}

func makeGap(f *fields, s *session.Session) pagemodel.Edit {
	ref, line := f.line(s)
	f.need("after")
	f.need("em")
	return pagemodel.SetGap{LineRef: ref, At: f.afterWord("after", line), Width: pagemodel.Ems(f.number("em"))}
}

func makeText(f *fields, s *session.Session) pagemodel.Edit {
	ref, _ := f.line(s)
	f.need("text")
	return pagemodel.Retype{LineRef: ref, Text: f.text("text")}
}

func makeStanza(f *fields, s *session.Session) pagemodel.Edit {
	ref, _ := f.line(s)
	f.need("open")
	return pagemodel.StanzaBreak{LineRef: ref, Open: f.yes("open")}
}
