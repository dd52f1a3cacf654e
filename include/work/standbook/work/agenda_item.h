// One place of the agenda: what is asked there, and the log line for what is answered.
#pragma once
#include <standbook/work/agenda.h>

// What is typed at a place.
typedef enum {
    AGENDA_VALUE,     // a number in `unit`
    AGENDA_GO_NO_GO,  // yes or no; 1 and 0 say so too
    AGENDA_CHOICE,    // one of `choices`, or its number from 1 where that is none of them
    AGENDA_COUNT,     // a whole number
    AGENDA_TEXT,      // words
    AGENDA_TICK,      // nothing, or what the wrench showed
    AGENDA_PART,      // the lot or serial that `track` asks for; nothing where it is NULL
    AGENDA_SIGNATURE, // nothing
} AgendaField;

// The texts that are const belong to the plan or the assessment.
typedef struct {
    guint index;
    const Requirement *made;
    AgendaField field;
    gboolean again;         // it fails or is in doubt: to be done once more, or decided
    char *target;           // as a log line writes it: `main bore[1, front] in Main clearances`
    char *place;            // as people say it: `main 1, front`, `bolt 3`, `spring 8`; "" for one
    const char *gauge;      // the kind of gauge, NULL if none is asked for
    const char *unit;       // of a value; NULL for a pure number
    GStrv choices;          // of yes or no too; else NULL
    const PlanSetting *set; // a value that is set by trials, may be read loose; else NULL

    guint pieces;         // of a part: how many at this place
    gboolean new_needed;  // of a part or bolt
    const char *track;    // `lot`, `serial` or NULL
    const char *hold;     // of a signature: what the other person says; NULL for the builder's
    const char *consumed; // the consumable that a bolt asks for, NULL if its lubricant is none

    // Of bolts and waits; else NULL and 0.
    const PlanTightening *tightening;
    const Stage *stage;
    gssize position;       // of the bolt among those of its set; -1 for a wait
    Number *amount;        // torque, angle or time in `amount_unit`; NULL if none, or not yet known
    Unit *amount_unit;     // NULL without amount
    char *amount_words;    // `75 N·m`, `+90°`, `snug`, `wait 10 min`; as written if not yet known
    const char *lubricant; // NULL if none is said
    guint turn, turns;     // of those bolts of its run that are needed at this stage: 5 of 10
    gboolean all_at_once;  // the stage may be ticked for the whole set: `log: group`, no angle
} AgendaItem;

// What is asked at a place of the agenda. The caller clears it with agenda_item_clear; agenda and
// assessment outlive it.
AgendaItem agenda_item(const Agenda *agenda, guint index);
void agenda_item_clear(AgendaItem *item);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(AgendaItem, agenda_item_clear)

typedef enum { AGENDA_NEW, AGENDA_REUSED, AGENDA_REWORKED } AgendaUse;

// What is answered. Texts that are not said are NULL.
typedef struct {
    const char *typed;    // as the field says
    const char *tool;     // label of the gauge or wrench
    const char *initials; // of who did it
    gboolean loose;       // a value of a setting before it is tightened
    gboolean all;         // a stage ticked for the whole set
    AgendaUse use;        // of a part
    const char *why;      // why it may be used again: needed unless it is new
} AgendaAnswer;

// The log line (standbook-log(5)) that enters the answer: `MO read main bore[1, front] in Main
// clearances 59.790 with G03`. NULL if the answer does not say enough yet. The caller frees with
// g_free.
char *agenda_line(const AgendaItem *item, const AgendaAnswer *answer) G_GNUC_WARN_UNUSED_RESULT;
