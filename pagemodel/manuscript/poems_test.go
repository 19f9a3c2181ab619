package manuscript

import (
	"testing"

	"headland/pagemodel"
)

// Two poems long in the public domain, typed from memory.

const sonnet18 = `---
title: Sonnets
poet: William Shakespeare
---

## 18
[form: sonnet]

Shall I compare thee to a summer’s day?
Thou art more lovely and more temperate:
Rough winds do shake the darling buds of May,
And summer’s lease hath all too short a date;
Sometime too hot the eye of heaven shines,
And often is his gold complexion dimm’d;
And every fair from fair sometime declines,
By chance or nature’s changing course untrimm’d;
But thy eternal summer shall not fade,
Nor lose possession of that fair thou ow’st;
Nor shall death brag thou wander’st in his shade,
When in eternal lines to time thou grow’st:
    So long as men can breathe or eyes can see,
    So long lives this, and this gives life to thee.
`

const raven = `## The Raven

Once upon a midnight dreary, while I pondered, weak and weary,
Over many a quaint and curious volume of forgotten lore—
    While I nodded, nearly napping, suddenly there came a tapping,
As of some one gently rapping, rapping at my chamber door.
“’Tis some visiter,” I muttered, “tapping at my chamber door—
            Only this and nothing more.”
`

func TestPoems(t *testing.T) {
	for _, tc := range []struct {
		text    string
		lines   int
		deepest pagemodel.Em
	}{
		{sonnet18, 14, pagemodel.OneEm},
		{raven, 6, 3 * pagemodel.OneEm},
	} {
		for _, k := range []Kind{Markdown, Text} {
			c, notices := read(t, nameFor(k), tc.text)
			p := c.Order()[0].Poem
			var deepest pagemodel.Em
			for _, l := range p.Lines() {
				deepest = max(deepest, l.Indent())
			}
			if p.LineCount() != tc.lines || deepest != tc.deepest || len(notices) > 0 {
				t.Errorf("%s: %d lines, deepest %v, %v", p.Name(), p.LineCount(), deepest, notices)
			}
			if got := write(t, c, Options{Kind: k}); got != tc.text {
				t.Errorf("%v: written as\n%s\nwant\n%s", k, got, tc.text)
			}
		}
	}
}
