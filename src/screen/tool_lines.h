// A tool as a person describes it at the stand, and the lines of the shop that enter it.
#pragma once
#include "toolbox.h"

typedef enum {
    TOOL_LABEL,
    TOOL_WHAT,
    TOOL_RANGE,
    TOOL_STEP,
    TOOL_REACH,
    TOOL_DAY,
    TOOL_DUE,
    TOOL_DOUBT,
    TOOL_ANSWERS
} ToolAnswer;

typedef struct {
    Need need;
    char *sort;                  // the word of plans for it
    char *answers[TOOL_ANSWERS]; // NULL: not said yet; "": not known
} ToolSaid;

// For a sort of gauge (NULL: any); of a wrench or angle gauge the sort is its own.
void tool_said_init(ToolSaid *said, Need need, const char *sort);
void tool_said_clear(ToolSaid *said);

typedef struct {
    const char *word; // what it asks, in a list of them; static
    char *next;
    char *hint;       // with an example
    char *instead;    // the answer that an empty one stands for; NULL: there must be one
    char *otherwise;  // the same in words
} ToolQuestion;

// Whether that is asked of such a tool, as far as it is known: an uncalibrated one has no due date.
gboolean tool_asks(const ToolSaid *said, ToolAnswer answer);
void tool_question(const ToolSaid *said, const Desk *desk, ToolAnswer answer,
                   ToolQuestion *question);
void tool_question_clear(ToolQuestion *question);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(ToolQuestion, tool_question_clear)

// The lines that enter it, as far as it is known; what must be there and is not has a stand-in. The
// second is NULL without a calibration. The caller frees with g_strfreev.
GStrv tool_lines(const ToolSaid *said) G_GNUC_WARN_UNUSED_RESULT;

// Whether the shop would take it as far as it is known, and whether its range is of what it is
// needed for; nothing is stored. FALSE with a warning.
gboolean tool_would_do(const ToolSaid *said, Desk *desk);
