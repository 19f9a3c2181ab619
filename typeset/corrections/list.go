package corrections

import (
	"headland/pagemodel"
	"headland/pagemodel/difference"
	"headland/typeset"
)

// Correction is one thing to be altered on the pages as they went out.
type Correction struct {
	Number int // in the list, from 1, in the order of the pages as sent
	Change difference.Change

	Title              string // what the poem is known by, as sent; "" of the book
	Stanza, LineNumber int    // as sent, from 1, stanzas counted through the poem; 0 where it is in no line

	Page string // as sent: the folio as printed, or as it would be; "" where there is none
	Row  int    // as sent: among the page's rows of verse and prose, from 1; 0 where there is none

	Moves  string // in words, which pages move with all corrections, at the first of a poem; "" where none does
	Reason string // "" unless it may be shown

	Whose            pagemodel.Whose
	State            pagemodel.ReplyState
	Question, Answer string
}

// List is the corrections of one round.
type List struct {
	About pagemodel.About // as sent
	Round pagemodel.Round // the one whose pages are to be corrected
	Until string          // the name of the round up to which it goes; "" is today
	Rule  string          // how corrections are counted: printed on every list
	All   []Correction
}

// Of lists what differs between the pages that went out in a round and the book as
// it is set now, or was set in the round called until. Places are those recorded
// when the round went out; replies says what has been noted about a correction, by
// its key.
func Of(sent, now *typeset.Setting, places Places, round pagemodel.Round, until string, replies func(key string) pagemodel.Reply) *List {
	was, is := sent.Collection(), now.Collection()
	list := &List{About: was.About(), Round: round, Until: until, Rule: rule}
	changes := difference.Between(was, is)
	f, m := newFinder(sent, places), newMovement(sent, now, changes)
	list.All = make([]Correction, 0, len(changes))
	for i := range changes {
		ch := &changes[i]
		c := Correction{Number: i + 1, Change: *ch, Title: titleOf(ch.Poem, was, is), Moves: m.of(ch, i+1)}
		c.Stanza, c.LineNumber = lineNumber(was, ch.Line)
		place := f.place(ch)
		c.Page, c.Row = place.Page, place.Row
		c.reply(replies(ch.Key), is)
		list.All = append(list.All, c)
	}
	return list
}

// titleOf is what a poem is known by, as sent; one that has come in since, as it
// is now.
func titleOf(id pagemodel.PoemID, was, is *pagemodel.Collection) string {
	if id == 0 {
		return ""
	}
	if p, _, ok := was.Poem(id); ok {
		return p.Name()
	}
	p, _, _ := is.Poem(id)
	return p.Name()
}

// lineNumber is the stanza of a line and its number there, as sent.
func lineNumber(was *pagemodel.Collection, ref pagemodel.LineRef) (stanza, line int) {
	p, at, err := was.Line(ref)
	if err != nil {
		return 0, 0
	}
	return p.StanzaNumber(at), at.Line + 1
}

// reply takes what has been noted about the correction. Nobody having said
// otherwise, a change of the design is the designer's, all others the author's.
func (c *Correction) reply(r pagemodel.Reply, now *pagemodel.Collection) {
	c.State, c.Question, c.Answer, c.Whose = r.State, r.Question, r.Answer, r.Whose
	switch {
	case c.Whose != "":
	case c.Change.Kind == difference.Design:
		c.Whose = pagemodel.Designers
	default:
		c.Whose = pagemodel.Authors
	}
	if r.Shown {
		c.Reason = r.Reason
		return
	}
	if p, at, err := now.Line(c.Change.Line); err == nil && p.Line(at).Shown() {
		c.Reason = p.Line(at).Reason()
	}
}
