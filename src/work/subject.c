#include <standbook/work/subject.h>

#include <standbook/work/agenda_item.h>
#include <standbook/work/ago.h>
#include <standbook/work/closing.h>
#include <standbook/work/finding.h>
#include <standbook/work/gate.h>
#include <string.h>

enum { PLACES_NAMED = 8, BOLTS_NAMED = 3 }; // that many are named one by one

static guint count_of(const Agenda *agenda)
{
    return agenda->assessment->requirements->len;
}

static gboolean belong_together(const Requirement *one, const Requirement *other)
{
    return (one->asked == other->asked ||
            (requirement_is_bolted(one) && requirement_is_bolted(other))) &&
           one->step == other->step && strcmp(one->name, other->name) == 0;
}

static const Requirement *first_of(const Agenda *agenda, const Subject *subject)
{
    return agenda_made(agenda, g_array_index(subject->places, guint, 0));
}

static void subject_clear(gpointer data)
{
    Subject *subject = data;
    g_array_unref(subject->places);
    g_free(subject->name);
    g_free(subject->said);
    g_free(subject->note);
}

static GArray *subjects_new(void)
{
    GArray *subjects = g_array_new(FALSE, TRUE, sizeof(Subject));
    g_array_set_clear_func(subjects, subject_clear);
    return subjects;
}

// GATHERING -------------------------------------------------------------------------------------

// What may stand on one line: all that is settled, all that was never done, all bolts of a set.
static gboolean share_a_line(const Agenda *agenda, const Subject *subject, const Requirement *made)
{
    const Requirement *first = first_of(agenda, subject);
    if (!belong_together(first, made))
        return FALSE;
    if (requirement_is_bolted(made))
        return TRUE;
    gboolean left = requirement_is_left(made);
    return subject->left == left &&
           (left ? made->verdict == VERDICT_OPEN && subject->verdict == VERDICT_OPEN
                 : (made->verdict == VERDICT_CONCEDED) == (subject->verdict == VERDICT_CONCEDED));
}

static guint weight_of(Verdict verdict)
{
    static const guint weights[VERDICTS] = {
        [VERDICT_NOTED] = 1, [VERDICT_PASS] = 2,     [VERDICT_CONCEDED] = 3,
        [VERDICT_OPEN] = 4,  [VERDICT_IN_DOUBT] = 5, [VERDICT_FAIL] = 6};
    return weights[verdict];
}

static gboolean is_gathered(const GArray *subjects, guint index)
{
    for (guint i = 0; i < subjects->len; i++) {
        const GArray *places = g_array_index(subjects, Subject, i).places;
        for (guint j = 0; j < places->len; j++)
            if (g_array_index(places, guint, j) == index)
                return TRUE;
    }
    return FALSE;
}

static void subject_add(Subject *subject, const Requirement *made, guint index)
{
    if (!subject->places)
        subject->places = g_array_new(FALSE, FALSE, sizeof(guint));
    if (!subject->places->len || weight_of(made->verdict) > weight_of(subject->verdict)) {
        subject->verdict = made->verdict;
        subject->reason = made->reason;
    }
    g_array_append_val(subject->places, index);
    subject->left = subject->left || requirement_is_left(made);
}

static void gather(const Agenda *agenda, GArray *subjects, guint index)
{
    const Requirement *made = agenda_made(agenda, index);
    if (is_gathered(subjects, index))
        return;
    for (guint i = 0; i < subjects->len; i++) {
        Subject *subject = &g_array_index(subjects, Subject, i);
        if (!share_a_line(agenda, subject, made))
            continue;
        subject_add(subject, made, index);
        return;
    }
    Subject fresh = {0};
    subject_add(&fresh, made, index);
    g_array_append_val(subjects, fresh);
}

// WORDS -----------------------------------------------------------------------------------------

static char *name_of(const Agenda *agenda, const Subject *subject)
{
    const Requirement *first = first_of(agenda, subject);
    if (requirement_is_bolted(first) || !*first->place)
        return g_strdup(first->name);
    gboolean axes = strchr(first->place, ',') != NULL;
    gboolean some = subject->verdict == VERDICT_CONCEDED; // a concession is of these and no other
    if (subject->places->len > PLACES_NAMED || (subject->places->len > 1 && axes && !some))
        return g_strdup_printf("%s, %u places", first->name, subject->places->len);
    GString *name = g_string_new(first->name);
    for (guint i = 0; i < subject->places->len; i++)
        g_string_append_printf(
            name, "%s %s", axes && i ? ";" : "",
            agenda_made(agenda, g_array_index(subject->places, guint, i))->place);
    return g_string_free(name, FALSE);
}

// All places of a bolt set in its step, also those that are not of the line.
static GArray *set_places(const Agenda *agenda, const Requirement *first)
{
    GArray *places = g_array_new(FALSE, FALSE, sizeof(guint));
    for (guint i = 0; i < count_of(agenda); i++) {
        const Requirement *made = agenda_made(agenda, i);
        if (belong_together(first, made) && !made->withdrawn && made->verdict != VERDICT_NOT_NEEDED)
            g_array_append_val(places, i);
    }
    return places;
}

// The wrenches with which the bolts of one stage were taken through it: `W4, W3`.
static char *wrenches(const Telling *telling, const GArray *places, guint stage)
{
    const Agenda *agenda = telling->agenda;
    g_autoptr(GPtrArray) labels = g_ptr_array_new();
    for (guint i = 0; i < places->len; i++) {
        const Requirement *made = agenda_made(agenda, g_array_index(places, guint, i));
        const Entry *entry =
            made->stage == stage && made->entry ? agenda->entries[made->entry - 1] : NULL;
        gboolean ticked = entry && strcmp(entry->kind->name, "tick") == 0;
        const char *tool = ticked ? taken_tool(telling->taken, entry_text(entry, "tool")) : NULL;
        if (tool && !g_ptr_array_find_with_equal_func(labels, tool, g_str_equal, NULL))
            g_ptr_array_add(labels, (gpointer)tool);
    }
    g_ptr_array_add(labels, NULL);
    return g_strjoinv(", ", (char **)labels->pdata);
}

// Of the bolts of a set those at its last stage.
typedef struct {
    guint all, done;
    guint stage;
    guint open; // the first that is not through, AGENDA_NOWHERE if all are
    guint last;
} LastStage;

static LastStage last_stage(const Agenda *agenda, const GArray *places)
{
    LastStage last = {.open = AGENDA_NOWHERE};
    for (guint i = 0; i < places->len; i++) {
        guint index = g_array_index(places, guint, i);
        const Requirement *made = agenda_made(agenda, index);
        if (made->asked != ASKED_BOLT || made->stage < last.stage)
            continue;
        if (made->stage > last.stage)
            last = (LastStage){.stage = made->stage, .open = AGENDA_NOWHERE};
        last.all++;
        last.done += made->verdict != VERDICT_OPEN ? 1 : 0;
        last.last = index;
        if (made->verdict == VERDICT_OPEN && last.open == AGENDA_NOWHERE)
            last.open = index;
    }
    return last;
}

// Puts what is asked at that place in place of `item` if it is more (1), or less (-1).
static void widen(const Agenda *agenda, guint index, gint direction, AgendaItem *item)
{
    g_auto(AgendaItem) other = agenda_item(agenda, index);
    if (!other.amount || !item->amount ||
        direction * number_compare(other.amount, item->amount) <= 0)
        return;
    AgendaItem before = *item;
    *item = other;
    other = before;
}

// What the stage asks for at its bolts: `69 N·m`; `67 to 69 N·m` where that differs.
static char *amounts_said(const Agenda *agenda, const GArray *places, const LastStage *last)
{
    g_auto(AgendaItem) least = agenda_item(agenda, last->last);
    g_auto(AgendaItem) most = agenda_item(agenda, last->last);
    for (guint i = 0; i < places->len; i++) {
        guint index = g_array_index(places, guint, i);
        if (agenda_made(agenda, index)->stage != last->stage)
            continue;
        widen(agenda, index, -1, &least);
        widen(agenda, index, 1, &most);
    }
    const char *words = most.amount_words ? most.amount_words : "snug";
    if (!least.amount || number_compare(least.amount, most.amount) == 0)
        return g_strdup(words);
    return g_strdup_printf("%.*s to %s", (int)strcspn(least.amount_words, " "), least.amount_words,
                           words);
}

// `bolts 3, 5 at +90°`, `bolt 3 at +90° and 2 more`: those that fail, at the first stage at which
// one does, and how many of other stages; NULL if none does.
static char *failed_said(const Agenda *agenda, const Subject *subject)
{
    g_autoptr(GString) bolts = g_string_new(NULL);
    guint first = AGENDA_NOWHERE, named = 0, more = 0;
    for (guint i = 0; i < subject->places->len; i++) {
        guint index = g_array_index(subject->places, guint, i);
        const Requirement *made = agenda_made(agenda, index);
        if (made->verdict != VERDICT_FAIL)
            continue;
        first = first == AGENDA_NOWHERE ? index : first;
        if (made->stage == agenda_made(agenda, first)->stage && named < BOLTS_NAMED)
            g_string_append_printf(bolts, "%s %s", named++ ? "," : "", made->place);
        else
            more++;
    }
    if (!named)
        return NULL;
    g_auto(AgendaItem) item = agenda_item(agenda, first);
    g_autofree char *rest = more ? g_strdup_printf(" and %u more", more) : g_strdup("");
    return g_strdup_printf("bolt%s%s at %s%s", named > 1 ? "s" : "", bolts->str,
                           item.amount_words ? item.amount_words : "snug", rest);
}

// `6 at 100 N·m, W3`, or `2 of 6 at 100 N·m, W3`: how many are through the last stage of bolts; of
// one alone that is not, `bolt 4 not tight: 69 N·m`. Where some fail, which.
static char *bolts_said(const Telling *telling, const Subject *subject)
{
    const Agenda *agenda = telling->agenda;
    char *failed = failed_said(agenda, subject);
    if (failed)
        return failed;
    g_autoptr(GArray) places = set_places(agenda, first_of(agenda, subject));
    LastStage last = last_stage(agenda, places);
    if (last.all > 1 && last.done + 1 == last.all) {
        g_auto(AgendaItem) item = agenda_item(agenda, last.open);
        return g_strdup_printf("bolt %s not tight: %s", item.made->place,
                               item.amount_words ? item.amount_words : "snug");
    }
    g_autofree char *amount = amounts_said(agenda, places, &last);
    g_autofree char *tools = wrenches(telling, places, last.stage);
    g_autofree char *many = last.done < last.all ? g_strdup_printf("%u of %u", last.done, last.all)
                                                 : g_strdup_printf("%u", last.all);
    return g_strdup_printf("%s%s%s%s%s", many, g_ascii_isdigit(*amount) ? " at " : ", ", amount,
                           *tools ? ", " : "", tools);
}

// Of signatures which is missing.
static char *signatures_said(const Agenda *agenda, const Subject *subject)
{
    for (guint i = 0; i < subject->places->len; i++) {
        const Requirement *made = agenda_made(agenda, g_array_index(subject->places, guint, i));
        if (requirement_is_left(made))
            return g_strdup(made->verdict != VERDICT_OPEN ? "signed"
                            : made->stage > 1             ? "second signature missing"
                                                          : "not signed");
    }
    return NULL;
}

static char *dated(const Telling *telling, const char *word, gint64 seq)
{
    const Entry *entry = telling->agenda->entries[seq - 1];
    const char *second =
        strcmp(entry->kind->name, "uphold") == 0 ? entry_text(entry, "second") : NULL;
    g_autofree char *day = ago_day(entry_moment(entry), telling->now);
    const char *initials = second ? taken_initials(telling->taken, second) : NULL;
    return g_strdup_printf("%s %s, %s%s%s", word, day, taken_initials(telling->taken, entry->by),
                           initials ? " " : "", initials ? initials : "");
}

// `low, waits for evenness warm`
static char *found_words(const Requirement *made)
{
    g_autofree char *answer = finding_waits_for(made);
    return g_strdup_printf("%s, waits for %s", reason_said(made->own_reason), answer);
}

static char *note_of(const Telling *telling, const Subject *subject)
{
    const Agenda *agenda = telling->agenda;
    for (guint i = 0; i < subject->places->len; i++) {
        guint index = g_array_index(subject->places, guint, i);
        const Requirement *made = agenda_made(agenda, index);
        const Entry *news = made->verdict == VERDICT_IN_DOUBT ? wrong_tool(agenda, index) : NULL;
        if (news)
            return g_strdup_printf("%s is wrong", wrong_tool_label(telling->taken, news));
        if (made->verdict == VERDICT_CONCEDED && made->conceded)
            return dated(telling, "conceded", made->conceded);
        if (finding_waits(made))
            return found_words(made);
        if (!subject->left && made->upheld)
            return dated(telling, "upheld", made->upheld);
        if (requirement_is_by_plan(made))
            return g_strdup("by the plan alone");
    }
    return NULL;
}

static void say(const Telling *telling, GArray *subjects)
{
    for (guint i = 0; i < subjects->len; i++) {
        Subject *subject = &g_array_index(subjects, Subject, i);
        subject->name = name_of(telling->agenda, subject);
        const Requirement *first = first_of(telling->agenda, subject);
        subject->said = requirement_is_bolted(first) ? bolts_said(telling, subject)
                        : first->asked == ASKED_SIGN ? signatures_said(telling->agenda, subject)
                                                     : NULL;
        subject->note = note_of(telling, subject);
    }
}

// CLOSING ---------------------------------------------------------------------------------------

// Turns a list so that what is not settled stands in front, in the same order otherwise.
static GArray *left_first(GArray *subjects)
{
    GArray *sorted = subjects_new();
    for (guint pass = 0; pass < 2; pass++)
        for (guint i = 0; i < subjects->len; i++)
            if (g_array_index(subjects, Subject, i).left == (pass == 0))
                g_array_append_val(sorted, g_array_index(subjects, Subject, i));
    g_array_set_clear_func(subjects, NULL);
    g_array_unref(subjects);
    return sorted;
}

// What the plan names in `closes`, in that order; before a place, or all (AGENDA_NOWHERE).
static void gather_closed(const Agenda *agenda, GArray *subjects, const PlanStep *step, guint place)
{
    for (guint i = 0; i < step->closes->len; i++)
        for (guint j = 0; j < count_of(agenda); j++)
            if (closing_means(step, step->closes->pdata[i], agenda_made(agenda, j)) &&
                (place == AGENDA_NOWHERE || closing_comes_before(agenda, step, j, place)))
                gather(agenda, subjects, j);
}

static gboolean has_left(const Agenda *agenda, const Subject *subject)
{
    for (guint i = 0; i < subject->places->len; i++)
        if (closing_is_left(agenda_made(agenda, g_array_index(subject->places, guint, i))))
            return TRUE;
    return FALSE;
}

static gboolean is_at_stake(const Agenda *agenda, const Subject *subject, const PlanStep *step)
{
    for (guint i = 0; i < subject->places->len; i++)
        if (closing_at_stake(step, agenda_made(agenda, g_array_index(subject->places, guint, i))))
            return TRUE;
    return FALSE;
}

GArray *subjects_at_stake(const Telling *telling, const PlanStep *step, guint place)
{
    GArray *subjects = subjects_new();
    gather_closed(telling->agenda, subjects, step, place);
    for (guint i = 0; i < subjects->len; i++) {
        Subject *subject = &g_array_index(subjects, Subject, i);
        subject->left = is_at_stake(telling->agenda, subject, step);
    }
    say(telling, subjects);
    return left_first(subjects);
}

GArray *subjects_closed(const Telling *telling, const PlanStep *step)
{
    const Agenda *agenda = telling->agenda;
    GArray *subjects = subjects_new();
    gather_closed(agenda, subjects, step, AGENDA_NOWHERE);
    for (guint j = 0; j < count_of(agenda); j++) {
        const Requirement *made = agenda_made(agenda, j);
        if (made->step == step && made->asked != ASKED_SIGN && !made->withdrawn)
            gather(agenda, subjects, j);
    }
    for (guint i = 0; i < subjects->len; i++) {
        Subject *subject = &g_array_index(subjects, Subject, i);
        subject->left = has_left(agenda, subject);
    }
    say(telling, subjects);
    return left_first(subjects);
}

// GATES -----------------------------------------------------------------------------------------

GArray *subjects_missing(const Telling *telling, guint gate)
{
    GArray *subjects = subjects_new();
    for (guint i = 0; i < count_of(telling->agenda); i++) {
        const Requirement *made = agenda_made(telling->agenda, i);
        if (gate_asks(gate, made) && requirement_is_left(made))
            gather(telling->agenda, subjects, i);
    }
    say(telling, subjects);
    return subjects;
}

// Whether nothing is left of the bolts of a set in its step.
static gboolean set_is_whole(const Agenda *agenda, const Requirement *first)
{
    g_autoptr(GArray) places = set_places(agenda, first);
    for (guint i = 0; i < places->len; i++)
        if (requirement_is_left(agenda_made(agenda, g_array_index(places, guint, i))))
            return FALSE;
    return TRUE;
}

// Each thing that the last phase of a gate asks for has its own line.
static gboolean is_of_last(const Agenda *agenda, guint gate, const Requirement *made)
{
    return gate_is_last(agenda, gate, made->step) &&
           (requirement_is_bolted(made) ? set_is_whole(agenda, made) : made->check != NULL);
}

GArray *subjects_standing(const Telling *telling, guint gate)
{
    GArray *subjects = subjects_new();
    for (guint i = 0; i < count_of(telling->agenda); i++) {
        const Requirement *made = agenda_made(telling->agenda, i);
        if (gate_asks(gate, made) && !requirement_is_left(made) &&
            (made->verdict == VERDICT_CONCEDED || is_of_last(telling->agenda, gate, made)))
            gather(telling->agenda, subjects, i);
    }
    say(telling, subjects);
    return subjects;
}
