// Package sqlite keeps one collection in one file, with all that was ever done
// to it.
//
// [Create] makes a file, [Open] opens one, and a [Store] stands for it while it
// is open. [Store.Do] applies an edit and commits it before it returns, so a
// crash at any instant loses nothing that was reported as done. Every edit adds
// rows and changes none of the old ones: undo and redo only move a pointer in
// the tree of edits, and both outlive the window. [Store.MarkSent] keeps besides
// where every line stood; [Store.Sent] gives a round back as it went out, and
// [Store.PoemStates] all that a poem ever was. Faces and run-throughs
// ([Store.AddFace], [Store.AddRun]) are facts that lie outside undo.
//
// The package knows nothing of pages or windows: it takes values of
// headland/pagemodel and gives them back. It is the only one that talks to
// SQLite, whose errors it turns into words (see [Error]).
//
// Beside an open collection lies nothing but, for the length of one edit, the
// journal that SQLite writes. That the file is open is noted by a lock in the
// user's cache folder, which goes with the process that holds it.
package sqlite
