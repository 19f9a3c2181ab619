package session

import (
	"path/filepath"
	"strings"
	"testing"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/record"
)

// recorded is the record text of every page.
func recorded(t *testing.T, s *typeset.Setting) string {
	t.Helper()
	var b strings.Builder
	for n := 1; n <= s.Extent(); n++ {
		must(t, record.Glyphs(&b, s.Page(n)))
	}
	return b.String()
}

// TestAPreviewIsWhatIsCommitted drags the end of a line through every stop that
// it has, left and right, with and without the edition, and sees at each that
// the pages previewed are, glyph for glyph, the pages that committing gives.
func TestAPreviewIsWhatIsCommitted(t *testing.T) {
	s, err := Demo(filepath.Join(t.TempDir(), "demo"+Extension))
	must(t, err)
	defer closed(t, s)
	long := s.Setting().Turnovers()[3]
	words := pagemodel.Words(long.Text)
	var drag []pagemodel.Edit
	for i := len(words) - 1; i > 0; i-- {
		drag = append(drag,
			pagemodel.Break{LineRef: long.Ref, At: words[i].Start},
			pagemodel.Break{LineRef: long.Ref, At: words[i].Start, In: pagemodel.InEdition},
			pagemodel.Carry{LineRef: long.Ref, Count: len(words) - i},
			pagemodel.Keep{LineRef: long.Ref, Turns: []int{words[i].Start}})
	}
	for n := 1; n < 4; n++ {
		drag = append(drag, pagemodel.Carry{LineRef: long.Ref, Count: -n})
	}
	before := recorded(t, s.Committed())
	for _, e := range drag {
		must(t, s.Preview(e))
		previewed := recorded(t, s.Setting())
		must(t, s.Release())
		if got := recorded(t, s.Committed()); got != previewed {
			t.Errorf("%v: the preview\n%s\nis not what was committed\n%s", e, previewed, got)
		}
		must(t, s.Undo())
		if recorded(t, s.Committed()) != before {
			t.Fatalf("%v: undone, the pages are not as they were", e)
		}
	}
}
