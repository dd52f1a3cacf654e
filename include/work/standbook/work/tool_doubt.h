// Why a tool puts a place in doubt, told for the page of that place. Pure: everything comes in.
#pragma once
#include <standbook/work/agenda.h>
#include <standbook/work/entry_words.h>

// One thing that is known: `certificate`, `good 30 Jan 2024, due 31 Jan 2025`.
typedef struct {
    const char *head; // static; at most 12 characters
    char *said;
} ToolLine;

// Of a place that is in doubt for its tool, or stands on bolts that are: what was used and when;
// its certificate and dates; what was found wrong since, how much and which way; what else of the
// build is in doubt for it; what settles that. ToolLine, none where a tool is not the reason. The
// caller frees with g_array_unref.
GArray *tool_doubt(const Agenda *agenda, const Taken *taken, guint index,
                   Moment now) G_GNUC_WARN_UNUSED_RESULT;
