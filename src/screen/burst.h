// Keys that came together: whether fingers pressed them, and the lines of what none typed. Pure.
#pragma once
#include "typing.h"

enum {
    FINGERS = 2,       // keys that fingers press as good as at once
    HELD_GAP = 5000,   // µs: what comes closer was not sent by a key held down
    BURST_MOST = 8192, // keys taken in at once
};

// Whether they are the same key, none of a character.
gboolean keys_are_one(const GArray *keys);

// Whether it is one key, none of a character, held down until it repeats itself.
gboolean keys_are_held(const GArray *keys);

// Whether no finger typed that: more keys than two at once, and not all of them the same key
// repeated. Enter is never repeated by a gauge or a paste for its own sake.
gboolean keys_are_burst(const GArray *keys);

typedef struct {
    char *text;     // without controls and sequences of the terminal
    gboolean ended; // by Enter or Tab
} BurstLine;

// The lines of a burst (BurstLine), empty ones left out. The caller frees with g_array_unref.
GArray *burst_lines(const GArray *keys) G_GNUC_WARN_UNUSED_RESULT;
