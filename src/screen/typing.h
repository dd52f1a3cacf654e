// What keys mean: the text that stands in the field, and what a key does to it. Pure: the time of
// a key comes with it.
#pragma once
#include "actions.h"

// What is asked for, which decides what a key means.
typedef enum {
    ASKS_NOTHING, // nothing is typed here: any letter or sign acts
    ASKS_NUMBER,  // a value
    ASKS_TICK,    // Enter alone is the answer; a value can be typed
    ASKS_LINE,    // the number of a line in a list
    ASKS_DIGIT,   // one digit answers
    ASKS_TEXT,    // words
    ASKS_NAME,    // words that begin with a letter: on an empty field `*` and `/` act at once
    ASKS_KEY,     // any key goes back; where there is a doubt, `u` or 1 upholds it
} Asks;

typedef enum {
    PRESSED_NONE, // nothing was pressed in the time given
    PRESSED_CHARACTER,
    PRESSED_ENTER,
    PRESSED_BACKSPACE,
    PRESSED_CLEAR, // Escape, and Ctrl-U as at a terminal
    PRESSED_TAB,
    PRESSED_BEFORE,   // arrows up and left
    PRESSED_BEHIND,   // arrows down and right
    PRESSED_NUM_LOCK, // Home, End and the like: the pad without its lock
    PRESSED_BREAK,    // Ctrl-C
    PRESSED_STOP,     // Ctrl-Z
    PRESSED_OTHER,    // what no key here sends
    PRESSED_RESIZE,
    PRESSED_HANGUP,
} KeyKind;

typedef struct {
    KeyKind kind;
    gunichar character; // also of a control; 0 for a key of its own
    gint64 at;          // microseconds of a clock that never goes back
} Key;

typedef enum {
    PRESS_NOTHING,
    PRESS_TYPED,  // the text has changed
    PRESS_ENTER,  // take the text
    PRESS_ACTION, // do `action`
    PRESS_DIGIT,  // the answer `digit`
    PRESS_BEFORE, // to the place before
    PRESS_BEHIND, // to the one behind
    PRESS_SAY,    // nothing was done; `words` say why
} PressKind;

typedef struct {
    PressKind kind;
    Action action;
    guint digit;
    const char *words; // static
} Press;

enum {
    BURST_GAP = 30000,    // µs: keys nearer to each other come from no finger
    ENTER_GAP = 250000,   // µs: a second Enter within it is dropped
    REPEAT_GAP = 100000,  // µs: the same key within it is held down, and acts once
    PICK_UP_GAP = 500000, // µs: digits within it of a pick-up are parked
    ASKED_GAP = 1500000,  // µs: likewise of a question that came by itself
    WORD_GAP = 1000000,   // µs: a digit within it of a letter that answers nothing is of a word
    TYPED_MOST = 1024,    // bytes in a field
};

typedef struct {
    GString *text;
    gboolean sent;   // a burst and its Enter that was not taken: the next burst comes in its place
    gint64 entered;  // when Enter was pressed last, 0: not yet
    gboolean pasted; // that one came in a burst
    Key before;      // the key pressed last
    Actions offered; // by the last row of what was painted
    gint64 word;     // when a letter, or a digit behind it, answered nothing; 0: none did
} Typing;

void typing_init(Typing *typing);
void typing_clear(Typing *typing);

// One key pressed by a finger.
Press typing_press(Typing *typing, Asks field, const Key *key);

// What a lone sign in the field would do at Enter: ON, BACK or MORE; else NONE.
Action typing_command(const Typing *typing);

// Whether words are typed there: letters and signs are text.
gboolean field_is_words(Asks field);
// What the keys can do at such a field as long as it is empty, if the view knows it: at a question
// `w`, `?`, and the letters that the last row offers; any other may begin a word.
Actions typing_actions(Asks field, Actions offered);
// Whether a burst goes into such a field. A tick box takes a value too.
gboolean field_takes_burst(Asks field);
// A character into the field: FALSE if it has no place there.
gboolean typing_add(Typing *typing, gunichar character);
// As much of a text as finds room in the field; returns the bytes taken.
gsize typing_add_text(Typing *typing, const char *text);
// Whether a line of a burst has its place here: the whole of it, in a field that takes it, and
// never behind digits that a person has typed.
gboolean typing_fits_burst(const Typing *typing, Asks field, const char *line);
// Puts it there.
void typing_add_burst(Typing *typing, const char *line);
// A burst is over. `ended`: with an Enter that was done; `waits`: its last line stands in the field
// without one, so that an Enter that comes late is its own.
void typing_end_burst(Typing *typing, gboolean ended, gboolean waits, gint64 at);
