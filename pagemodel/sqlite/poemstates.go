package sqlite

import (
	"bytes"
	"database/sql"
	"fmt"
	"strconv"
	"time"

	"headland/pagemodel"
)

// PoemState is a poem as an edit left it.
type PoemState struct {
	Edit   int64     // the edit, numbered as in the file
	At     time.Time // when it was done, UTC
	Label  string    // what it did, in words
	Poem   *pagemodel.Poem
	Undone bool // the edit is not on the way to where the history stands
}

// statesOfPoem goes through every edit that left the poem in some state; the
// last column says whether the edit is on the way to where the history stands.
const statesOfPoem = `WITH RECURSIVE way (id) AS (
		VALUES (?)
		UNION
		SELECT parent FROM edit JOIN way ON edit.id = way.id WHERE parent IS NOT NULL)
	SELECT e.id, e.at, e.label, c.new_state, s.hash, s.body, e.id IN way
	FROM change c JOIN edit e ON e.id = c.edit LEFT JOIN state s ON s.id = c.new_state
	WHERE c.kind = 'poem' AND c.key = ? AND c.new_state IS NOT NULL ORDER BY e.id`

// PoemStates are all states of a poem since it came in, the oldest first, those
// that were undone among them. Of like ones that follow each other only the
// first is there, or the first that was not undone. A poem that was never in the
// book has none.
func (s *Store) PoemStates(id pagemodel.PoemID) ([]PoemState, error) {
	defer s.hold()()
	if s.closed {
		return nil, s.isClosed()
	}
	var all []PoemState
	var last []byte
	err := s.each(func(r *sql.Rows) error {
		state, body, err := s.scanPoemState(r, id)
		if err != nil {
			return err
		}
		switch n := len(all) - 1; {
		case n < 0 || !bytes.Equal(body, last):
			all = append(all, state)
		case all[n].Undone:
			all[n] = state
		}
		last = body
		return nil
	}, statesOfPoem, s.at.edit, strconv.FormatInt(int64(id), 10))
	return all, translate(s.path, err)
}

func (l *ledger) scanPoemState(r *sql.Rows, id pagemodel.PoemID) (PoemState, []byte, error) {
	p := pointer{thing: thing{"poem", strconv.FormatInt(int64(id), 10)}}
	var state PoemState
	var at string
	var hash, body []byte
	var onWay bool
	if err := r.Scan(&state.Edit, &at, &state.Label, &p.state, &hash, &body, &onWay); err != nil {
		return state, nil, err
	}
	state.Undone = !onWay
	if err := l.verify(p, hash, body); err != nil {
		return state, nil, err
	}
	var err error
	if state.At, err = time.Parse(timeForm, at); err != nil {
		return state, nil, damaged(l.path, fmt.Sprintf("edit %d was done at %q, which is no time", state.Edit, at))
	}
	if state.Poem, err = poemOf(id, body); err != nil {
		return state, nil, damaged(l.path, err.Error())
	}
	return state, body, nil
}

// poemOf reads a poem's state by putting it into a book of its own.
func poemOf(id pagemodel.PoemID, body []byte) (*pagemodel.Poem, error) {
	key := strconv.FormatInt(int64(id), 10)
	c, err := pagemodel.FromStored([]pagemodel.Stored{
		{Kind: "poem", Key: key, Body: body},
		{Kind: "order", Body: []byte(`{"order":[` + key + `]}`)},
	}, 1)
	if err != nil {
		return nil, err
	}
	p, _, _ := c.Poem(id)
	return p, nil
}
