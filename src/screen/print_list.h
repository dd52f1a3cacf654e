// Writes the list that a screen shows as a text file, where the program was started.
#pragma once
#include "view.h"

// `WHAT-WORDS.txt`, with what does not belong in a file's name left out of the words. `paint` is
// the view's own: all of its lines are written, whatever the size of the screen. What came of it
// stands on the row `last`, or as a warning.
void print_list(Desk *desk, const char *what, const char *words,
                void (*paint)(gpointer state, Desk *desk, const char *typed, Page *page),
                gpointer state);
