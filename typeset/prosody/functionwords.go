package prosody

import "strings"

// The closed classes of English words, after R. Quirk and others, A
// Comprehensive Grammar of the English Language (1985), with the older forms of
// verse (from memory). Behind a proclitic, which in English is an article or a
// preposition, and inside a name of several words, a reader's pause is blocked
// (found of Czech readers, in Languages 8, 2023, article 23).
const (
	articles   = "a an the th'"
	possessive = "my thy our your their its"

	// prepositions that are no adverbs as well, and those that may be.
	prepositions = `of from with at for into onto upon unto to toward towards amid amidst among amongst against
		between betwixt during except like than as per via 'gainst 'twixt 'mid 'midst 'mong 'mongst 'neath o' i' wi'`
	adverbial = `in on up down off out over under by through across along around about above below behind
		beneath beyond near past round within without inside outside after before since o'er thro' thro 'round`

	coordinators  = "and or nor but &"
	subordinators = "if because although unless whereas lest while whilst when whether ere until till tho' though"
	relatives     = "who whom whose which"

	// pronouns that can be nothing but a subject, and the others.
	subjects = "i he she we they thou ye"
	pronouns = "me him us them thee you it one 'em"

	// determiners that can stand alone as well, and adverbs of negation and
	// degree.
	determiners = "his her this these those that all both some any each every such what no"
	quantifiers = "half many few several another either neither"
	degrees     = "not never very so too more most"

	// numerals that come before a noun, and words before a numeral that is the hour.
	numerals = `two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen
		eighteen nineteen twenty thirty forty fifty sixty seventy eighty ninety hundred thousand dozen`
	hours = "at by till until past to since before after"

	modals = "shall will would could should may might must can cannot shalt wilt canst wouldst couldst shouldst mayst"
	be     = "am is are was were be been being art wert wast"
	have   = "have has had hath hast hadst do does did doth dost didst"

	contracted = "'tis 'twas 'twere 'twill 'twould"
	addresses  = "mr mrs ms dr st"
	places     = "new san santa los las saint mount fort cape" // they begin names
)

var (
	// always lean on the word that follows, sometimes do so unless the next
	// line opens a phrase of its own, with a word of opening.
	always    = wordSet(articles, possessive, prepositions, coordinators, subordinators, relatives, subjects, "very every")
	sometimes = wordSet(adverbial, determiners, quantifiers, degrees, modals, be, have, contracted)
	opening   = wordSet(prepositions, coordinators, subordinators, relatives, modals, be)
	titles    = wordSet(addresses)
	names     = wordSet(places)

	// counts lean on a noun, so before no word of a closed class, and not where they
	// are the hour.
	counts, clock = wordSet(numerals, "few many several"), wordSet(hours)

	// auxiliary are verbs that lean on another, participles those of them that stand
	// behind one. partitive may have "of" behind them, infinitival "to".
	auxiliary   = wordSet(modals, be, have, contracted, "ought")
	participles = wordSet("be been being")
	partitive   = wordSet(determiners, quantifiers, numerals, "one none most")
	infinitival = wordSet(be, "have has had hath ought used")

	// joins open a clause or a phrase, opensPhrase one unless the word is an adverb
	// there: up, down, out and off mostly are, behind a verb.
	joins       = wordSet(coordinators, subordinators, relatives)
	opensPhrase = without(wordSet(prepositions, adverbial), "to as than up down off out")

	// weak are those that have no stress unless they are named.
	weak = wordSet(articles, coordinators)

	// functional are those that speech leaves unstressed where they have one
	// syllable; negation and degree keep their stress.
	functional = wordSet(articles, possessive, prepositions, adverbial, coordinators, subordinators, relatives,
		subjects, pronouns, "his her this that some any", modals, be, have, contracted)
)

// wordSet is the set of all words of some lists.
func wordSet(lists ...string) map[string]bool {
	set := map[string]bool{}
	for _, list := range lists {
		for _, word := range strings.Fields(list) {
			set[word] = true
		}
	}
	return set
}

// without is a set with the words of a list taken out.
func without(set map[string]bool, list string) map[string]bool {
	for _, word := range strings.Fields(list) {
		delete(set, word)
	}
	return set
}
