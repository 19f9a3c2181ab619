package sqlite

import (
	"crypto/sha256"
	"encoding/json"
	"reflect"
	"testing"

	"headland/pagemodel"
)

// newerFields are what designs have that they did not have in the first files.
var newerFields = []string{
	"Tighten", "Edge", "Titles", "TitleSize", "TitleCentred", "Folios", "Running", "Prose", "Hidden", "SectionOpen", "Signature", "Paper",
}

// fromBeforeMatter is a file as it was written before there were prelims, end
// matter and kept designs: without states of those kinds, and with the design of
// that time.
func fromBeforeMatter(t *testing.T) (path string) {
	path = newPath(t)
	s := mustCreate(t, path)
	for _, query := range []string{
		"DELETE FROM change WHERE kind IN ('matter', 'designs')",
		"DELETE FROM head WHERE kind IN ('matter', 'designs')",
		"DELETE FROM state WHERE kind IN ('matter', 'designs')",
	} {
		if err := s.exec(query); err != nil {
			t.Fatal(err)
		}
	}
	body := olderDesign(t, s.Collection())
	hash := sha256.Sum256(body)
	if err := s.exec("UPDATE state SET body = ?, hash = ? WHERE kind = 'design'", body, hash[:]); err != nil {
		t.Fatal(err)
	}
	mustClose(t, s)
	return path
}

func olderDesign(t *testing.T, c *pagemodel.Collection) []byte {
	fields := map[string]any{}
	for _, state := range c.Stored() {
		if state.Kind != "design" {
			continue
		}
		if err := json.Unmarshal(state.Body, &fields); err != nil {
			t.Fatal(err)
		}
	}
	for _, name := range newerFields {
		if _, ok := fields[name]; !ok {
			t.Fatalf("a design has no %s", name)
		}
		delete(fields, name)
	}
	body, err := json.Marshal(fields)
	if err != nil {
		t.Fatal(err)
	}
	return body
}

// TestFromBeforeMatter holds that such a file opens as the book that it was, and
// that what it did not know can be put in, undone, and done again after it has
// been closed.
func TestFromBeforeMatter(t *testing.T) {
	path := fromBeforeMatter(t)
	s := mustOpen(t, path)
	if sum(s.Collection()) != sum(book()) {
		t.Fatal("it is not the book that was written")
	}
	matter := pagemodel.UsualMatter()
	design := s.Collection().Design()
	mustDo(t, s, pagemodel.SetMatter{Matter: matter})
	mustDo(t, s, pagemodel.KeepDesign{Name: "first", Design: design})
	for range 2 {
		if _, err := s.Undo(); err != nil {
			t.Fatal(err)
		}
	}
	mustClose(t, s)
	s = mustOpen(t, path)
	if c := s.Collection(); sum(c) != sum(book()) || len(c.Matter().Pages) != 0 || len(c.Designs()) != 0 {
		t.Errorf("undone and opened again, the book has the matter %+v and the designs %+v", c.Matter(), c.Designs())
	}
	for range 2 {
		if _, err := s.Redo(); err != nil {
			t.Fatal(err)
		}
	}
	mustClose(t, s)
	c := mustOpen(t, path).Collection()
	if !reflect.DeepEqual(c.Matter(), matter) || !reflect.DeepEqual(c.Designs(), []pagemodel.NamedDesign{{Name: "first", Design: design}}) {
		t.Errorf("done again and opened, the book has the matter %+v and the designs %+v", c.Matter(), c.Designs())
	}
}
