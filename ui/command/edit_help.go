package command

const editMore = `SCRIPT is a file, or - for what is typed or piped in. Each line is one JSON
object, one edit and one step of the history. It stops at the first that can't be
done, and says which; those before it stay done. "poem" is a poem's number, or
its title where only one has it; "#7" is always the number. Stanzas are counted
through the poem, lines through the stanza, words through the line, all from 1.

A line:

  {"edit":"break","poem":P,"stanza":2,"line":3,"after":5}
      ends the line after its fifth word ("at":17: after 17 characters);
      "in":"edition" breaks it in this book only
  {"edit":"join","poem":P,"stanza":2,"line":3}
      runs the next line on; with "in":"edition" takes this edition's breaks back
  {"edit":"words","poem":P,"stanza":2,"line":3,"count":1}
      carries a word down over the line's end; -1 draws one up
  {"edit":"keep","poem":P,"stanza":2,"line":3,"turn_after":6,"reason":"a breath"}
      lets the line turn, there and for that reason if said; "shown":true lets the
      reason go out with the corrections
  {"edit":"unsettle","poem":P,"stanza":2,"line":3}
  {"edit":"reason","poem":P,"stanza":2,"line":3,"reason":"a breath","shown":true}
      notes why the line is as it is, and whether that may go out
  {"edit":"indent","poem":P,"stanza":2,"line":3,"em":1.5}
  {"edit":"gap","poem":P,"stanza":2,"line":3,"after":4,"em":2}
  {"edit":"tab","poem":P,"stanza":2,"line":3,"after":4,"em":12}
      moves what follows the fourth word ("at": character) to a tab stop 12 ems
      from the poem's left edge; 0 clears it
  {"edit":"range","poem":P,"stanza":2,"line":3,"to":"centre"}
      left, centre or right
  {"edit":"drop","poem":P,"stanza":2,"line":3}
      begins the line where the one above ended; "off":true takes it back
  {"edit":"white","poem":P,"stanza":2,"line":3,"lines":2}
      puts two lines of white above the line; 0 takes them out
  {"edit":"text","poem":P,"stanza":2,"line":3,"text":"the line, retyped"}
  {"edit":"stanza","poem":P,"stanza":2,"line":3,"open":true}
      opens a stanza break after the line; false closes the one that is there

Pages:

  {"edit":"together","poem":P,"stanza":2,"line":3,"through":{"stanza":3,"line":1}}
      keeps the lines on one page; or "lines":3, how many; "off":true lets them part
  {"edit":"page","poem":P,"stanza":2,"line":3}
      begins a page with the line; "off":true takes it back
  {"edit":"start","poem":P,"start":"verso","blank":true}
      opens the poem on a fresh page, verso, recto, shared page, or facing the one
      before it; "blank" puts a blank page before it
  {"edit":"form","poem":P,"form":"tercets"}
      couplets, tercets, quatrains, sestets or stanza-less; "" takes it back
  {"edit":"run","poem":P,"lines":1}
      runs the poem's pages a line long, or short with -1

A poem and the book:

  {"edit":"head","poem":P,"short_title":"Weights","dedication":"for the ovens"}
      any of title, short_title, subtitle, dedication, place and note, "epigraph",
      a list of lines, "size_pt" (0: the book's), "edge" (as the book, left, centred
      or optical) and "lie" (upright, across the spread or turned)
  {"edit":"matter","kind":"imprint","text":["First published 1911","","at the corner"]}
      puts in a page of the prelims or end matter, or changes its "title" and
      "text"; "off":true takes it out. The kinds are half-title, also by, title,
      imprint, dedication, epigraph, contents, acknowledgements, notes and index
  {"edit":"matter","roman":true,"parts":true,"alphabet":"letter by letter"}
      numbers the prelims in roman; lists parts in the contents; orders the index
  {"edit":"about","title":"Short Weight","poet":"W. Threlfall","language":"en"}
      and "epigraph", a list of lines

The order of the book:

  {"edit":"move","poem":P,"through":Q,"before":R}
      moves a poem, or the poems from P through Q, before another; to the end of the
      book without "before"
  {"edit":"move-section","section":"Night","before":"Day"}
      moves a section with its poems before another, each by its title or its number;
      to the end of the book without "before"
  {"edit":"leave-out","poem":P,"through":Q}
      takes poems out of the book and keeps them in the file
  {"edit":"put-back","poem":"Yeast","before":P}
      puts a poem that was left out, by its title, before another, or at the end
  {"edit":"keep-order","name":"by streets"}
      keeps the order that the book is in; use-order puts the book into it, where
      poems that came in since are left out, and drop-order throws it away
  {"edit":"echo","name":"ovens","words":["oven"],"poems":[P],"lines":[{"poem":P,"stanza":1,"line":2}]}
      marks what is to be seen coming back, by any of the three; "off":true marks it
      no more

Reading aloud:

  {"edit":"reading","name":"Thursday","occasion":"the library","on":"2026-03-05","slot_s":900,
   "items":[{"poem":P},{"poem":Q,"from":{"stanza":2,"line":1},"to":{"stanza":2,"line":4}}]}
      (on one line) makes a running order, or changes what is said of it; what is not
      there stays. "to" gives it another name; drop-reading throws it away. An item
      is a poem, or lines of it; or a poem from elsewhere, "title" and "text", a list
      of lines; and with any, or alone, "before", what is said, "talk_s", how long
      that takes, "drop", which lets it be dropped if time is short, and "said", a
      list of words read otherwise than printed, as in
      {"stanza":1,"line":2,"word":3,"as":"CAR-da-mom"}
  {"edit":"voice","syllables":185,"line_end_s":0.3,"run_on_s":0.15,"stanza_s":0.9,"title_s":2,"words":150}
      any of what times are reckoned from: syllables a minute, silences, seconds for a
      title, words of talk a minute; "usual":true goes back to the usual voice
  {"edit":"fit-voice"}
      takes the voice that comes nearest to what was timed

The design:

  {"edit":"design","trim_mm":[129,198],"margins_mm":{"inner":16},"size_pt":11}
      any of the values that report --json gives under "design"; a "title_size_pt"
      of 0 goes with the size of the verse
  {"edit":"design","trim":"Demy octavo","margins":"canon"}
      a trim by its name; margins by the canon, or, with "binding", the inner
      one that the binding and the extent ask for
  {"edit":"design","edge":"optical","running_heads":"poet and book","signature":8}
      a word that there is none of is answered with those that there are
  {"edit":"keep-design","name":"wide"}
      keeps the design that the book is in; drop-design drops it, and use-design
      sets the book in it

Versions of a poem:

  {"edit":"keep-variant","poem":P,"name":"short"}
      keeps the poem as it stands under a name, beside the one in the book;
      use-variant puts that one into the book, and drop-variant throws it away
  {"edit":"name-variant","poem":P,"from":"short","to":"first"}
      calls it something else; without "from", the one in the book
  {"edit":"bring-back","poem":P,"state":12}
      gives the poem a state again that headland states lists

Rounds and corrections:

  {"edit":"mark-sent","name":"first proofs"}
      marks the book as sent; without "name", as the round that comes next
  {"edit":"reply","number":3,"state":"queried","question":"a comma here?"}
      notes something about a correction of the last round, or of another "round";
      any of "state" (open, made, refused, queried or missed), "whose" (AA, PE, EA
      or DA), "reason", "shown", "question" and "answer"

  {"edit":"say","word":"cardamom","as":"CAR-da-mom"}
      says how a word goes; "" takes it back
  {"edit":"undo"}, {"edit":"redo"}
`
