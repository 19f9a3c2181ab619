package session

import (
	"errors"
	"fmt"

	"headland/pagemodel"
	"headland/pagemodel/difference"
	"headland/pagemodel/sqlite"
	"headland/typeset"
	"headland/typeset/corrections"
)

// Sent is the book as it went out in a round.
type Sent struct {
	Round   pagemodel.Round
	Setting *typeset.Setting
	Places  corrections.Places // of the lines, as they were recorded then
}

// MarkSent makes a round of the committed book, under a name or, where that is
// "", its usual one: text, pages and rows as they go out. It is one step of
// history. Any preview is dropped.
func (s *Session) MarkSent(name string) error { return s.Do(pagemodel.MarkSent{Name: name}) }

// storeRound has the store keep a round with the places of its lines.
func (s *Session) storeRound(e pagemodel.MarkSent) (*pagemodel.Collection, error) {
	places := map[pagemodel.LineID]sqlite.Place{}
	for line, at := range corrections.PlacesOf(s.committed) {
		places[line] = sqlite.Place{Page: at.Page, Row: at.Row}
	}
	return s.store.MarkSent(e, places)
}

// Sent is the book as it went out in a round that the collection has. It is
// remembered. The error says in words what the file lacks.
func (s *Session) Sent(id pagemodel.RoundID) (*Sent, error) {
	if sent := s.sent[id]; sent != nil {
		return sent, nil
	}
	round, err := s.round(id)
	if err != nil {
		return nil, err
	}
	c, places, err := s.store.Sent(id)
	if err != nil {
		return nil, err
	}
	sent := &Sent{Round: round, Setting: s.setter.Set(s.committed, c), Places: corrections.Places{}}
	for line, at := range places {
		sent.Places[line] = corrections.Place{Page: at.Page, Row: at.Row}
	}
	if s.sent == nil {
		s.sent = map[pagemodel.RoundID]*Sent{}
	}
	s.sent[id] = sent
	return sent, nil
}

func (s *Session) round(id pagemodel.RoundID) (pagemodel.Round, error) {
	for _, r := range s.Collection().Rounds() {
		if r.ID == id {
			return r, nil
		}
	}
	return pagemodel.Round{}, fmt.Errorf("that round is no longer in %s", s.Name())
}

// LastRound is the round that went out last, or false where none has.
func (s *Session) LastRound() (pagemodel.Round, bool) {
	rounds := s.Collection().Rounds()
	if len(rounds) == 0 {
		return pagemodel.Round{}, false
	}
	return rounds[len(rounds)-1], true
}

// LastSent is the book as it went out last, or false where it never has, or the
// file can't say how it was.
func (s *Session) LastSent() (*Sent, bool) {
	last, ok := s.LastRound()
	if !ok {
		return nil, false
	}
	sent, err := s.Sent(last.ID)
	return sent, err == nil
}

// Corrections are what differs from a round: up to the round after it, or, for
// the last, up to the committed book. They are remembered until that changes.
func (s *Session) Corrections(id pagemodel.RoundID) (*corrections.List, error) {
	if known := s.lists[id]; known.list != nil && known.of == s.committed {
		return known.list, nil
	}
	sent, now, until, err := s.span(id)
	if err != nil {
		return nil, err
	}
	replies := func(key string) pagemodel.Reply { return s.Collection().Reply(id, key) }
	list := corrections.Of(sent.Setting, now, sent.Places, sent.Round, until, replies)
	if s.lists == nil {
		s.lists = map[pagemodel.RoundID]listOf{}
	}
	s.lists[id] = listOf{list, s.committed}
	return list, nil
}

// span is what the corrections of a round go from and to, and the name of the round
// up to which they go; "" is today.
func (s *Session) span(id pagemodel.RoundID) (sent *Sent, now *typeset.Setting, until string, err error) {
	if sent, err = s.Sent(id); err != nil {
		return nil, nil, "", err
	}
	next, ok := s.Collection().RoundAfter(id)
	if !ok {
		return sent, s.committed, "", nil
	}
	after, err := s.Sent(next.ID)
	if err != nil {
		return nil, nil, "", err
	}
	return sent, after.Setting, next.Name, nil
}

// proven is the list of a round's corrections, once it has been seen that it makes
// of the text as sent the text up to which it goes: what goes out is never short of
// a correction.
func (s *Session) proven(id pagemodel.RoundID) (*corrections.List, error) {
	list, err := s.Corrections(id)
	if err != nil {
		return nil, err
	}
	sent, now, _, err := s.span(id)
	if err != nil {
		return nil, err
	}
	changes := make([]difference.Change, len(list.All))
	for i := range list.All {
		changes[i] = list.All[i].Change
	}
	made, err := difference.Apply(difference.TextOf(sent.Setting.Collection()), changes)
	if err == nil && !made.Equal(difference.TextOf(now.Collection())) {
		err = errors.New("they do not give the text as it is now")
	}
	if err != nil {
		return nil, fmt.Errorf("the corrections to %s can't go out: %w: save a copy of the collection and tell those who made Headland", sent.Round.Name, err)
	}
	return list, nil
}

// listOf is the corrections as they were for a committed setting.
type listOf struct {
	list *corrections.List
	of   *typeset.Setting
}
