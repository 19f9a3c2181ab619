// Package aloud reckons how long it takes to read something aloud, and learns the
// reader's own pace from what has been timed.
//
// [PlanOf] counts each item of a running order (syllables, silences, title, talk) and
// gives its time in a voice, and says what is left out if time is short. [Observe] turns timings of run-throughs into
// counts with seconds, from which [Fit] works out the voice that comes nearest.
//
// What is reckoned, in seconds:
//
//	60/Syllables for a syllable of the text and of a part's heading
//	LineEnd      at the end of a line of verse
//	RunOn        instead, where the line runs on
//	Stanza       instead, at the end of a stanza, a paragraph, a heading or the
//	             whole, and before white that stands above a line
//	Title        for a title and the silence after it
//	60/Words     for a word of what is said before, unless its seconds are given
//
// The lines are the poet's own, whatever this edition does with them. A line runs
// on where it ends against the syntax ([prosody.EndOf]), where it has no sign at its
// end, and where the next line begins below its end; but in a text in which no
// line ends in a sign, a missing one tells nothing. Sections are not read, nor are
// subtitles, dedications, epigraphs and notes: who reads them says so in what is
// said before.
//
// Syllables come from headland/typeset/prosody. It has a dictionary of English
// only; without one they are counted by letters (letters.go), and every word is
// marked as guessed.
//
// The package sets no type, opens no file and keeps no clock.
package aloud
