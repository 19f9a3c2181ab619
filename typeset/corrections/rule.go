package corrections

// rule is how corrections are counted, in words for whoever pays for them. It is
// ours: printers count each in a way of their own.
const rule = "Words that stand next to each other and change together are one correction, however many they are; " +
	"so is every new line or line run on, stanza opened or closed, indent, space, turn and change of type, every poem moved, and every value of the design. " +
	"Pages and rows are those of the pages as sent. In quotations “/” is the end of a line and “//” the end of a stanza; " +
	"words that have double quotation marks of their own are quoted between « and »."
