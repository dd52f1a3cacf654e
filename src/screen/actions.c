#include "actions.h"

static const ActionInfo infos[ACTIONS] = {
    [ACTION_NONE] = {"", "", 0, -1, ""},
    [ACTION_TAKE] = {"Enter", "take", 0, -1,
                     "takes what stands in the field, or does what it says; else nothing"},
    [ACTION_STRIKE] = {"*", "strike", 's', -1,
                       "strikes your last entry, 6 what is unplaced; 0 takes the strike back"},
    [ACTION_PUT_DOWN] = {"/", "put down", 'p', -1, "put down; a digit picks up and says who works"},
    [ACTION_ON] = {"+Enter", "on", 0, -1, "on: the next place; after the last, the closing page"},
    [ACTION_BACK] = {"-Enter", "back", 0, -1, "back: the place or bolt before"},
    [ACTION_MORE] = {".Enter", "more", 0, -1, "more; then the digit of a word"},
    [ACTION_GAUGE] = {"g", "gauge", 'g', 1, "the gauge or wrench in hand"},
    [ACTION_BIG] = {"b", "big", 'b', 2, "the far view, and back"},
    [ACTION_NOTE] = {"n", "note", 'n', 3, "words on the place in hand"},
    [ACTION_CONCEDE] = {"c", "concede", 'c', 4, "accepts, upholds or decides"},
    [ACTION_WHY] = {"w", "why", 'w', 5, "what a verdict rests on"},
    [ACTION_AGAIN] = {"l", "again", 'l', 6, "again, loosens, or worked on"},
    [ACTION_UNPLACED] = {"t", "take", 't', 7, "takes the unplaced burst"},
    [ACTION_BUILD] = {"e", "build", 'e', 8, "the build: steps, what is left"},
    [ACTION_SHOP] = {"h", "shop", 'h', 9, "the shop: all builds, clocks"},
    [ACTION_HELP] = {"?", "help", '?', 0, "this page; any key goes back"},
    [ACTION_FIND] = {"f", "find", 'f', -1, "any words: 3 main, a lot, a name"},
    [ACTION_OVER] = {"o", "one check", 'o', -1, "one check over all engines"},
    [ACTION_ADD] = {"a", "add", 'a', -1, "adds work, limits, or an engine"},
    [ACTION_UPHOLD] = {"u", "uphold", 'u', -1, "argues a doubt away, and why"},
    [ACTION_PRINT] = {"r", "print", 'r', -1, "the sheets"},
    [ACTION_CLOSE] = {"d", "close", 'd', -1, "closes the step; ends a tool"},
    [ACTION_CLEAR] = {"Escape", "empty", 0, -1, "empties the field, as Ctrl-U"},
    [ACTION_UP] = {"q", "leave", 'q', -1, "up one screen; in the shop, out"},
};

const ActionInfo *action_info(Action action)
{
    return &infos[action];
}

Action action_of_letter(gunichar letter)
{
    for (guint i = 1; i < ACTIONS; i++)
        if (infos[i].letter && (gunichar)infos[i].letter == letter)
            return (Action)i;
    return ACTION_NONE;
}

Action action_of_more(guint digit)
{
    for (guint i = 1; i < ACTIONS; i++)
        if (infos[i].more == (gint)digit)
            return (Action)i;
    return ACTION_NONE;
}
