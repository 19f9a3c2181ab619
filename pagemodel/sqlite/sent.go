package sqlite

import (
	"database/sql"
	"errors"
	"fmt"
	"maps"
	"slices"

	"headland/pagemodel"
)

// Place is where a line stood in a round.
type Place struct {
	Page string // the folio as printed
	Row  int    // among the set lines of the page, from 1 at its head
}

// sending is what an edit notes of the rounds that it makes.
type sending struct {
	rounds []pagemodel.Round
	places map[pagemodel.LineID]Place
}

// roundsSince are the rounds of a collection that an earlier one has not.
func roundsSince(old, new *pagemodel.Collection) []pagemodel.Round {
	var made []pagemodel.Round
	for _, r := range new.Rounds() {
		if !slices.ContainsFunc(old.Rounds(), func(had pagemodel.Round) bool { return had.ID == r.ID }) {
			made = append(made, r)
		}
	}
	return made
}

// MarkSent makes a round like [Store.Do] and keeps with it, in the same
// transaction, where each line stood. A place without a row is none. Undo takes
// the round out of the collection; what is kept of it stays in the file for Redo.
func (s *Store) MarkSent(e pagemodel.MarkSent, places map[pagemodel.LineID]Place) (*pagemodel.Collection, error) {
	return s.do(e, places)
}

// writeSent puts the rounds that an edit makes into the file.
func (l *ledger) writeSent(edit int64, sent sending) error {
	for _, r := range sent.rounds {
		if _, err := l.say.mark.Exec(int64(r.ID), edit, r.Name, l.time()); err != nil {
			return err
		}
		for _, line := range slices.Sorted(maps.Keys(sent.places)) {
			at := sent.places[line]
			if at.Row < 1 {
				continue
			}
			if _, err := l.say.place.Exec(int64(r.ID), int64(line), at.Page, at.Row); err != nil {
				return err
			}
		}
	}
	return nil
}

// Sent is a round's text as it went out, and where its lines stood. It costs
// what has changed since, not what the book holds. The round may have been
// undone. An identity that was never a round's is an [Error].
func (s *Store) Sent(id pagemodel.RoundID) (*pagemodel.Collection, map[pagemodel.LineID]Place, error) {
	defer s.hold()()
	if s.closed {
		return nil, nil, s.isClosed()
	}
	var edit int64
	err := s.row("SELECT edit FROM mark WHERE id = ?", int64(id)).Scan(&edit)
	if errors.Is(err, sql.ErrNoRows) {
		return nil, nil, &Error{s.path, fmt.Sprintf("does not hold what went out as round %d", id), "choose another round", nil}
	}
	if err != nil {
		return nil, nil, translate(s.path, err)
	}
	changes, err := s.changesTo(edit)
	if err != nil {
		return nil, nil, err
	}
	c, err := s.current.With(changes)
	if err != nil {
		return nil, nil, damaged(s.path, err.Error())
	}
	places, err := s.places(id)
	return c, places, err
}

func (l *ledger) places(id pagemodel.RoundID) (map[pagemodel.LineID]Place, error) {
	places := map[pagemodel.LineID]Place{}
	err := l.each(func(r *sql.Rows) error {
		var line pagemodel.LineID
		var at Place
		err := r.Scan(&line, &at.Page, &at.Row)
		places[line] = at
		return err
	}, "SELECT line, page, row FROM mark_place WHERE mark = ?", int64(id))
	return places, translate(l.path, err)
}
