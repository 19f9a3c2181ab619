// Package prosody tells how English lines sound and how they end: syllables,
// stress, rhyme, and what a line end cuts through.
//
// Words are looked up in the CMU Pronouncing Dictionary, which has them as they
// are said in North America; what it lacks is worked out by rule or guessed from
// the spelling, and what is guessed says so. The package describes and never
// judges: it knows no good line and no bad one. It sets nothing, and knows
// nothing of poems, pages or faces; typeset/choices asks it about lines.
//
// The poet's own word on how a word goes is over all that: see [Lexicon.With].
//
// A word is looked up as it stands; where the dictionary lacks it, these rules
// are tried in turn, in word.go and beside it:
//
//   - closed forms of verse, such as e'en, o'er, 'twere, th' (elisions.go);
//   - digits, read as a number, an ordinal or a year (numbers.go);
//   - compounds with a hyphen, part by part;
//   - endings behind an apostrophe, such as 's, 'd, 'st, n't (endings.go);
//   - a vowel left out for an apostrophe, such as heav'n, wand'ring;
//   - British spellings, and "un" before a word that is told (derived.go);
//   - initials, letter by letter;
//   - two words written as one, and last the letters themselves (guess.go).
//
// What the last line tells is a guess.
//
// The terms are those of the Princeton Encyclopedia of Poetry and Poetics, 4th
// edition (from memory).
package prosody
