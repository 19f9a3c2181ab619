package ui

import (
	"path/filepath"
	"testing"

	"headland/pagemodel"
)

// TestNewBook: a new book has its prelims, and lies open at its one empty line,
// which is at hand and can be written.
func TestNewBook(t *testing.T) {
	tb := setTable(t, verses("one loaf\ntwo loaves"))
	tb.w.newFile(filepath.Join(t.TempDir(), "new"+bookKind), pagemodel.About{Title: "Crumb"})
	s := tb.w.session
	if _, ok := s.Collection().Matter().Page(pagemodel.ContentsPage); !ok {
		t.Error("it has no contents")
	}
	first, _ := s.Setting().Body()
	line, ok := s.Focus()
	if page, _ := s.Setting().PageOfLine(line); !ok || page != first {
		t.Fatalf("at hand is %v on page %d, the poems begin on %d", line, page, first)
	}
	if spread := s.Spread(); spread.Recto != first {
		t.Errorf("it lies open at %v, the poems begin on %d", spread, first)
	}
}
