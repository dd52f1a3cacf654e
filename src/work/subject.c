#include <standbook/work/subject.h>

#include <standbook/work/agenda_item.h>
#include <standbook/work/ago.h>
#include <standbook/work/closing.h>
#include <string.h>

enum { PLACES_NAMED = 8 }; // that many are named one by one

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
    if (subject->places->len > PLACES_NAMED ||
        (subject->places->len > 1 && strchr(first->place, ',')))
        return g_strdup_printf("%s, %u places", first->name, subject->places->len);
    GString *name = g_string_new(first->name);
    for (guint i = 0; i < subject->places->len; i++)
        g_string_append_printf(
            name, " %s", agenda_made(agenda, g_array_index(subject->places, guint, i))->place);
    return g_string_free(name, FALSE);
}

// The wrenches with which the bolts of one stage were taken through it: `W4, W3`.
static char *wrenches(const Telling *telling, const Subject *subject, guint stage)
{
    const Agenda *agenda = telling->agenda;
    g_autoptr(GPtrArray) labels = g_ptr_array_new();
    for (guint i = 0; i < subject->places->len; i++) {
        const Requirement *made = agenda_made(agenda, g_array_index(subject->places, guint, i));
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

// `6 at 100 N·m, W3`, or `2 of 6 at 100 N·m, W3`: how many are through the last stage of bolts.
static char *bolts_said(const Telling *telling, const Subject *subject)
{
    const Agenda *agenda = telling->agenda;
    guint all = 0, done = 0, stage = 0, last = 0;
    for (guint i = 0; i < subject->places->len; i++) {
        const Requirement *made = agenda_made(agenda, g_array_index(subject->places, guint, i));
        if (made->asked == ASKED_BOLT && made->stage >= stage) {
            stage = made->stage;
            last = g_array_index(subject->places, guint, i);
        }
    }
    for (guint i = 0; i < subject->places->len; i++) {
        const Requirement *made = agenda_made(agenda, g_array_index(subject->places, guint, i));
        gboolean counts = made->asked == ASKED_BOLT && made->stage == stage;
        all += counts ? 1 : 0;
        done += counts && made->verdict != VERDICT_OPEN ? 1 : 0;
    }
    g_auto(AgendaItem) item = agenda_item(agenda, last);
    g_autofree char *tools = wrenches(telling, subject, stage);
    g_autofree char *many =
        done < all ? g_strdup_printf("%u of %u", done, all) : g_strdup_printf("%u", all);
    const char *amount = item.amount_words ? item.amount_words : "snug";
    return g_strdup_printf("%s%s%s%s%s", many, g_ascii_isdigit(*amount) ? " at " : ", ", amount,
                           *tools ? ", " : "", tools);
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
        if (made->finding && made->verdict == VERDICT_OPEN && made->own_verdict != VERDICT_OPEN)
            return g_strdup("as found; not answered yet");
        if (!subject->left && made->upheld)
            return dated(telling, "upheld", made->upheld);
    }
    return NULL;
}

static void say(const Telling *telling, GArray *subjects)
{
    for (guint i = 0; i < subjects->len; i++) {
        Subject *subject = &g_array_index(subjects, Subject, i);
        subject->name = name_of(telling->agenda, subject);
        subject->said = requirement_is_bolted(first_of(telling->agenda, subject))
                            ? bolts_said(telling, subject)
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
    say(telling, subjects);
    return left_first(subjects);
}

// GATES -----------------------------------------------------------------------------------------

static gboolean is_before(const Requirement *made, guint gate)
{
    return made->gate <= gate && !made->withdrawn;
}

GArray *subjects_missing(const Telling *telling, guint gate)
{
    GArray *subjects = subjects_new();
    for (guint i = 0; i < count_of(telling->agenda); i++) {
        const Requirement *made = agenda_made(telling->agenda, i);
        if (is_before(made, gate) && requirement_is_left(made))
            gather(telling->agenda, subjects, i);
    }
    say(telling, subjects);
    return subjects;
}

GArray *subjects_standing(const Telling *telling, guint gate)
{
    const PlanStep *last = gate_step(telling->agenda, gate);
    GArray *subjects = subjects_new();
    for (guint i = 0; i < count_of(telling->agenda); i++) {
        const Requirement *made = agenda_made(telling->agenda, i);
        gboolean of_last = made->step == last && made->check;
        if (is_before(made, gate) && !requirement_is_left(made) &&
            (made->verdict == VERDICT_CONCEDED || of_last))
            gather(telling->agenda, subjects, i);
    }
    say(telling, subjects);
    return subjects;
}

static gint sum_of(const Requirement *made)
{
    return made->asked == ASKED_SIGN ? 0 : requirement_is_bolted(made) ? 1 : made->check ? 2 : 3;
}

static gboolean is_whole(const Agenda *agenda, guint gate, const PlanStep *step)
{
    for (guint i = 0; i < count_of(agenda); i++) {
        const Requirement *made = agenda_made(agenda, i);
        if (made->step == step && is_before(made, gate) && made->asked == ASKED_SIGN &&
            requirement_is_left(made))
            return FALSE;
    }
    return TRUE;
}

static char *steps_said(const Agenda *agenda, guint gate)
{
    guint all = 0, whole = 0;
    for (guint i = 0; i < agenda->plan->steps->len; i++) {
        const PlanStep *step = agenda->plan->steps->pdata[i];
        if (step->gate > gate)
            continue;
        all++;
        whole += is_whole(agenda, gate, step) ? 1 : 0;
    }
    return whole == all ? g_strdup_printf("%u signed, all", all)
                        : g_strdup_printf("%u of %u signed", whole, all);
}

static void sum_clear(gpointer data)
{
    g_free(((GateSum *)data)->said);
}

GArray *gate_sums(const Agenda *agenda, guint gate)
{
    static const char *const words[] = {"steps", "bolts", "checks", "parts"};
    GateSum sums[G_N_ELEMENTS(words)] = {{0}};
    for (guint i = 0; i < count_of(agenda); i++) {
        const Requirement *made = agenda_made(agenda, i);
        if (!is_before(made, gate))
            continue;
        gint at = sum_of(made);
        sums[at].all++;
        sums[at].settled += requirement_is_left(made) ? 0 : 1;
    }
    GArray *all = g_array_new(FALSE, TRUE, sizeof(GateSum));
    g_array_set_clear_func(all, sum_clear);
    for (guint i = 0; i < G_N_ELEMENTS(words); i++) {
        GateSum *sum = &sums[i];
        guint left = sum->all - sum->settled;
        sum->what = words[i];
        sum->said = i == 0   ? steps_said(agenda, gate)
                    : left   ? g_strdup_printf("%u of %u left", left, sum->all)
                    : i == 1 ? g_strdup_printf("%u through, all at the last stage", sum->all)
                    : i == 2 ? g_strdup_printf("%u, none in doubt, none failed", sum->all)
                             : g_strdup_printf("%u fitted, none left", sum->all);
        if (sum->all)
            g_array_append_val(all, *sum);
        else
            g_free(sum->said);
    }
    return all;
}

guint gate_next(const Agenda *agenda)
{
    const GPtrArray *gates = agenda->assessment->gates;
    guint gate = 0;
    while (gate + 1 < gates->len && ((const GateCount *)gates->pdata[gate])->sealed)
        gate++;
    return gate;
}

const PlanStep *gate_step(const Agenda *agenda, guint gate)
{
    for (guint i = agenda->plan->steps->len; i-- > 0;) {
        const PlanStep *step = agenda->plan->steps->pdata[i];
        if (step->gate == gate)
            return step;
    }
    return NULL;
}
