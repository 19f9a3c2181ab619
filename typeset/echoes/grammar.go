package echoes

import "strings"

// grammar are the closed classes of English words, which have grammar to do and
// little to say, after R. Quirk and others, A Comprehensive Grammar of the
// English Language (1985), with the older forms of verse, and the adverbs and
// pronouns of so little content that no reader hears them come back (from
// memory). Of what is contracted there is what is left without its ending, as wo
// of won't.
var grammar = wordSet(
	// articles, determiners and pronouns
	`a an the this that these those my mine our ours your yours his her hers its their theirs thy thine
	i me we us you he him she it they them thou thee ye one ones who whom whose which what
	myself ourselves yourself yourselves himself herself itself themselves oneself thyself
	all both some any each every such no none other others another either neither much many more most less least
	few several enough own same half someone somebody something anyone anybody anything everyone everybody
	everything nobody nothing whatever whoever whichever`,

	// prepositions
	`of from with at for into onto upon unto to toward towards amid amidst among amongst against between betwixt
	during except like than as per via in on up down off out over under by through across along around about above
	below behind beneath beyond near past round within without inside outside after before since beside besides
	underneath throughout o'er`,

	// conjunctions
	`and or nor but if because although though unless whereas lest while whilst when whenever whether where
	wherever ere until till so yet how why`,

	// auxiliary verbs
	`am is are was were be been being art wert wast have has had having hath hast hadst do does did doing done doth
	dost didst shall will would could should may might must can cannot wo ca sha ai shalt wilt canst wouldst
	couldst shouldst ought let lets gonna`,

	// adverbs
	`not never very too also just only even still then there here now again ever once quite rather almost
	already always perhaps maybe else thus hence therefore however though yes no oh o ah away back`,

	// elisions
	`tis twas twere twill twould em tho thro`,
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
