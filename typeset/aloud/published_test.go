package aloud

import (
	"testing"

	"headland/pagemodel"
	"headland/typeset/prosody"
)

// introduction is what is said before a poem in these tests: two sentences of
// thirty-one words, shorter than any of the sonnets.
const introduction = "I used to say this one to myself on the way to the early shift, when the street " +
	"lamps were still on. It is about what lasts, and I was tired."

var sonnets = []pagemodel.Item{
	{Title: "Sonnet 18", Text: sonnet18, Before: introduction},
	{Title: "Ozymandias", Text: ozymandias, Before: introduction},
	{Title: "Sonnet 19", Text: milton19, Before: introduction},
}

// TestSonnets holds the usual voice against published times: a line takes 3.0 to
// 3.5 s (between these lies the median of 1155 lines of 54 poems in performance,
// Fabb 2013) and a pause 0.3 to 0.6 s, so that fourteen lines take 46 to 57 s; with
// title and talk 60 to 75 s, as four of them fill a slot of five minutes (a
// speakers' club's guide for poets).
func TestSonnets(t *testing.T) {
	c := newShelf().Collection()
	for _, item := range sonnets {
		e := Of(c, item, prosody.English(), pagemodel.Voice{})
		if lines := e.Seconds - e.Title - e.Talk; e.Lines != 14 || lines < 46 || lines > 57 {
			t.Errorf("%s: %d lines take %.1f s, want 46 to 57", item.Title, e.Lines, lines)
		}
		if e.Seconds < 60 || e.Seconds > 75 {
			t.Errorf("%s takes %.1f s with title and talk, want 60 to 75", item.Title, e.Seconds)
		}
		if e.Syllables < 138 || e.Syllables > 144 {
			t.Errorf("%s has %d syllables, want about 140", item.Title, e.Syllables)
		}
	}
}

// TestGrossRate holds that a set with titles and talk comes to 70 to 115 words of
// verse a minute (350 words in five minutes, or four to five sonnets: the same
// guide).
func TestGrossRate(t *testing.T) {
	c := newShelf().Collection()
	plan := PlanOf(c, pagemodel.Reading{Items: sonnets}, prosody.English(), pagemodel.Voice{}, nil)
	words := 0
	for _, item := range plan.Items {
		words += item.Words
	}
	if rate := float64(words) * 60 / plan.Total; rate < 70 || rate > 115 {
		t.Errorf("%d words in %.0f s are %.0f a minute, want 70 to 115", words, plan.Total, rate)
	}
}

// whitman is the beginning of Song of Myself, section 6 (1881), from memory.
const whitman = `A child said What is the grass? fetching it to me with full hands;
How could I answer the child? I do not know what it is any more than he.

I guess it must be the flag of my disposition, out of hopeful green stuff woven.

Or I guess it is the handkerchief of the Lord,
A scented gift and remembrancer designedly dropt,
Bearing the owner’s name someway in the corners, that we may see and remark, and say Whose?

Or I guess the grass is itself a child, the produced babe of the vegetation.

Or I guess it is a uniform hieroglyphic,
And it means, Sprouting alike in broad zones and narrow zones,
Growing among black folks as among white,
Kanuck, Tuckahoe, Congressman, Cuff, I give them the same, I receive them the same.

And now it seems to me the beautiful uncut hair of graves.`

// TestRatesAgree holds that our count of syllables brings two published rates of
// reading aloud together on verse near to prose, within a tenth: 250 syllables a
// minute (Crystal 1988, at second hand) and 183 words a minute (Brysbaert 2019, 77
// studies).
func TestRatesAgree(t *testing.T) {
	e := Of(newShelf().Collection(), pagemodel.Item{Text: whitman}, prosody.English(), pagemodel.Voice{})
	bySyllables, byWords := float64(e.Syllables)*60/250, float64(e.Words)*60/183
	if ratio := bySyllables / byWords; ratio < 0.9 || ratio > 1.1 {
		t.Errorf("%d syllables take %.1f s, %d words %.1f s: a ratio of %.3f", e.Syllables, bySyllables, e.Words, byWords, ratio)
	}
}

// TestSilencesShare holds that an item's time without its silences is its
// syllables at the voice's pace.
func TestSilencesShare(t *testing.T) {
	c := newShelf().Collection()
	for _, pace := range []float64{120, 185, 250} {
		e := Of(c, sonnets[0], prosody.English(), pagemodel.Voice{Syllables: pace, Words: 150})
		want := float64(e.Syllables)*60/pace + float64(e.TalkWords)*60/150
		if diff := e.Seconds - want; diff > 1e-9 || diff < -1e-9 {
			t.Errorf("at %g syllables a minute: %.3f s, want %.3f", pace, e.Seconds, want)
		}
	}
}
