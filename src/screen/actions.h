// The one list of what keys can do. It feeds the keys themselves, the foot line, the card behind
// `.` Enter, the help page and the man page, so that help cannot lie.
#pragma once
#include <glib.h>

typedef enum {
    ACTION_NONE,
    ACTION_TAKE,     // Enter on a field
    ACTION_STRIKE,   // *
    ACTION_PUT_DOWN, // /
    ACTION_ON,       // + Enter
    ACTION_BACK,     // - Enter
    ACTION_MORE,     // . Enter
    ACTION_GAUGE,
    ACTION_BIG,
    ACTION_NOTE,
    ACTION_CONCEDE,
    ACTION_WHY,
    ACTION_AGAIN,
    ACTION_UNPLACED,
    ACTION_BUILD,
    ACTION_SHOP,
    ACTION_HELP,
    ACTION_FIND,
    ACTION_OVER,
    ACTION_ADD,
    ACTION_UPHOLD,
    ACTION_PRINT,
    ACTION_CLOSE,
    ACTION_CLEAR, // Escape
    ACTION_UP, // Backspace on an empty list field, q
} Action;

enum { ACTIONS = ACTION_UP + 1 };

typedef struct {
    const char *keys;  // as the foot line writes them
    const char *word;  // what it does, in a word or two
    char letter;       // the same from a letter; 0 if none
    gint more;         // its digit on the card behind `.` Enter; -1 if it is not there
    const char *about; // a sentence for the help page
} ActionInfo;

const ActionInfo *action_info(Action action);
// The action of a letter, ACTION_NONE if there is none.
Action action_of_letter(gunichar letter);
// The action of a digit on the card, ACTION_NONE if there is none.
Action action_of_more(guint digit);

// A set of actions, as bits.
typedef guint32 Actions;

static inline Actions action_bit(Action action)
{
    return (Actions)1 << action;
}
