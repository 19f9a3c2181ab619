package session

import (
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"headland/pagemodel"
	"headland/typeset/corrections"
)

// sentAndChanged is the three poems, gone out on one day as first proofs, and
// three things changed since.
func sentAndChanged(t *testing.T) *Session {
	t.Helper()
	s := imported(t)
	onDay(t, s, "2026-03-05")
	must(t, s.MarkSent(""))
	onDay(t, s, "2026-03-09")
	ref, _ := lineOf(t, s, 2, 1, 1)
	must(t, s.Do(pagemodel.Break{LineRef: ref, At: strings.Index(long, "and"), In: pagemodel.InEdition}))
	bread, _ := lineOf(t, s, 1, 1, 2)
	must(t, s.Do(pagemodel.Retype{LineRef: bread, Text: "the other in the hearth."}))
	last, _ := lineOf(t, s, 3, 1, 1)
	must(t, s.Do(pagemodel.Indent{LineRef: last, To: pagemodel.OneEm}))
	return s
}

func kinds(list *corrections.List) string {
	var all []string
	for _, c := range list.All {
		all = append(all, fmt.Sprintf("%d %s: %s %d.%d", c.Number, c.Change.Kind, c.Title, c.Stanza, c.LineNumber))
	}
	return strings.Join(all, "\n")
}

// TestRounds: what went out stays as it was, what differs since is told with its
// place, and marking as sent is undone like anything else.
func TestRounds(t *testing.T) {
	s := imported(t)
	if _, ok := s.LastSent(); ok {
		t.Error("a book that never went out has gone out")
	}
	closed(t, s)
	s = sentAndChanged(t)
	round, ok := s.LastRound()
	if !ok || round.Name != "copy-edit" || round.On != "2026-03-05" {
		t.Fatalf("the round is %+v", round)
	}
	sent, ok := s.LastSent()
	if !ok || text(sent.Setting.Collection()) != inOrder(verse) {
		t.Errorf("it went out as\n%s", text(sent.Setting.Collection()))
	}
	list, err := s.Corrections(round.ID)
	must(t, err)
	want := "1 substitute: Bread 1.2\n2 new line: Weights 1.1\n3 indent: Last 1.1"
	if got := kinds(list); got != want {
		t.Errorf("the corrections are\n%s\nwant\n%s", got, want)
	}
	if at := list.All[0]; at.Page != "1" || at.Row != 2 || at.Whose != pagemodel.Authors {
		t.Errorf("the first is on page %s, row %d, %s", at.Page, at.Row, at.Whose)
	}
	if again, _ := s.Corrections(round.ID); again != list {
		t.Error("the list was made anew though nothing changed")
	}
	for range 4 {
		must(t, s.Undo())
	}
	if _, ok := s.LastSent(); ok {
		t.Error("undone, the book has still gone out")
	}
}

// inOrder is the lines of a manuscript as text gives them.
func inOrder(manuscript string) string {
	var b strings.Builder
	for _, poem := range strings.Split(manuscript, "\n## ")[1:] {
		title, lines, _ := strings.Cut(poem, "\n\n")
		fmt.Fprintf(&b, "# %s\n%s\n\n", title, strings.TrimSpace(lines))
	}
	return b.String()
}

// TestRoundAfterRound: once the next round has gone out, the list of the one
// before it stands still, and replies to it are kept.
func TestRoundAfterRound(t *testing.T) {
	s := sentAndChanged(t)
	first, _ := s.LastRound()
	list, err := s.Corrections(first.ID)
	must(t, err)
	must(t, s.Do(pagemodel.SetReply{Reply: pagemodel.Reply{
		Round: first.ID, Key: list.All[1].Change.Key, State: pagemodel.Queried, Question: "A stop before “and”?", Whose: pagemodel.Printers,
	}}))
	must(t, s.MarkSent("second proofs"))
	before := kinds(list)
	ref, _ := lineOf(t, s, 3, 1, 1)
	must(t, s.Do(retyped(ref)))
	path := s.Path()
	closed(t, s)
	s, err = Open(path)
	must(t, err)
	t.Cleanup(func() { closed(t, s) })
	list, err = s.Corrections(first.ID)
	must(t, err)
	if got := kinds(list); got != before || list.Until != "second proofs" {
		t.Errorf("up to %q the corrections are\n%s\nwant\n%s", list.Until, got, before)
	}
	if c := list.All[1]; c.State != pagemodel.Queried || c.Question == "" || c.Whose != pagemodel.Printers {
		t.Errorf("the reply is lost: %+v", c)
	}
	second, _ := s.LastRound()
	list, err = s.Corrections(second.ID)
	must(t, err)
	if got := kinds(list); got != "1 substitute: Last 1.1" {
		t.Errorf("since the second round: %s", got)
	}
	refused(t, s.MarkSent("Second Proofs"), "second proofs", "another name")
}

// TestExportCorrections writes each kind of list and reads it with another
// program: poppler, pandoc, encoding/csv.
func TestExportCorrections(t *testing.T) {
	s := sentAndChanged(t)
	round, _ := s.LastRound()
	dir := t.TempDir()
	for _, name := range []string{"list.pdf", "list.docx", "list.odt", "list.csv", "list.txt"} {
		path := filepath.Join(dir, name)
		must(t, s.ExportCorrections(path, round.ID))
		read := readBy(t, path)
		for _, words := range []string{"oven", "hearth", "Bread", "Weights"} {
			if !strings.Contains(read, words) {
				t.Errorf("%s has no %q:\n%s", name, words, read)
			}
		}
	}
	refused(t, s.ExportCorrections(filepath.Join(dir, "list.xls"), round.ID), "list.xls", ".csv")
	refused(t, s.ExportCorrections(s.Path(), round.ID), "collection itself")
}

// readBy is a file's text as another program reads it.
func readBy(t *testing.T, path string) string {
	t.Helper()
	switch filepath.Ext(path) {
	case ".pdf":
		return output(t, "pdftotext", "-layout", path, "-")
	case ".docx", ".odt":
		return output(t, "pandoc", "-t", "plain", "--columns=200", path)
	}
	b, err := os.ReadFile(path)
	must(t, err)
	if filepath.Ext(path) == ".csv" {
		rows, err := csv.NewReader(strings.NewReader(string(b))).ReadAll()
		must(t, err)
		return fmt.Sprint(rows)
	}
	return string(b)
}

// TestExportDocuments: the manuscript for a word processor follows the poem, or
// the edition.
func TestExportDocuments(t *testing.T) {
	s := sentAndChanged(t)
	for _, ending := range []string{".docx", ".odt"} {
		for _, edition := range []bool{false, true} {
			path := filepath.Join(t.TempDir(), "book"+ending)
			notices, err := s.ExportManuscript(path, edition)
			must(t, err)
			read := readBy(t, path)
			if len(notices) > 0 || !strings.Contains(read, "hearth") || strings.Contains(read, "about it, and the") == edition {
				t.Errorf("%s, edition %v: %v\n%s", ending, edition, notices, read)
			}
		}
	}
	_, err := s.ExportManuscript(filepath.Join(t.TempDir(), "book.pages"), false)
	refused(t, err, "book.pages", ".docx")
}

// TestMarkedProof: the proof is of the pages that went out, whatever the book has
// become, with what is to be put in beside them; qpdf finds it sound.
func TestMarkedProof(t *testing.T) {
	s := sentAndChanged(t)
	round, _ := s.LastRound()
	design := s.Collection().Design()
	design.Size = pagemodel.Pt(9)
	must(t, s.Do(pagemodel.SetDesign{Design: design}))
	path := filepath.Join(t.TempDir(), "proof.pdf")
	must(t, s.ExportMarkedProof(path, round.ID, nil))
	output(t, "qpdf", "--check", path)
	read := output(t, "pdftotext", "-layout", path, "-")
	for _, words := range []string{"the other in the oven.", "hearth", "So that was that."} {
		if !strings.Contains(read, words) {
			t.Errorf("the proof has no %q:\n%s", words, read)
		}
	}
	sent, _ := s.LastSent()
	if pages := strings.Count(read, "\f"); pages != sent.Setting.Extent() {
		t.Errorf("the proof has %d pages, %d went out", pages, sent.Setting.Extent())
	}
	refused(t, s.ExportMarkedProof(s.Path(), round.ID, nil), "collection itself")
	if err := s.ExportMarkedProof(path, round.ID, func(int, int) bool { return false }); err != ErrCancelled {
		t.Errorf("stopped, it says %v", err)
	}
}

// TestAListShortOfACorrection does not go out, as a list or on a marked proof.
func TestAListShortOfACorrection(t *testing.T) {
	s := sentAndChanged(t)
	round, _ := s.LastRound()
	list, err := s.Corrections(round.ID)
	must(t, err)
	for i := range list.All {
		short := *list
		short.All = slices.Delete(slices.Clone(list.All), i, i+1)
		s.lists[round.ID] = listOf{&short, s.committed}
		refused(t, s.ExportCorrections(filepath.Join(t.TempDir(), "list.txt"), round.ID), "copy-edit", "save a copy")
		_, err := s.MarkedProof(round.ID)
		refused(t, err, "can't go out")
	}
}
