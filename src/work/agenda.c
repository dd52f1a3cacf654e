#include <standbook/work/agenda.h>

#include <standbook/record/live.h>
#include <string.h>

static const Requirement *made_at(const Agenda *agenda, guint index)
{
    return g_ptr_array_index(agenda->assessment->requirements, index);
}

static guint count_of(const Agenda *agenda)
{
    return agenda->assessment->requirements->len;
}

// A choice is made although its values are worked out.
static gboolean is_worked_out(const Requirement *made)
{
    return made->check && made->check->formula && !made->check->choose;
}

static gboolean is_asked_for(const Requirement *made)
{
    return !made->withdrawn && made->verdict != VERDICT_NOT_NEEDED;
}

gboolean agenda_asks(const Agenda *agenda, const PlanStep *step, guint index)
{
    if (index >= count_of(agenda))
        return FALSE;
    const Requirement *made = made_at(agenda, index);
    return made->step == step && is_asked_for(made) && !is_worked_out(made);
}

gboolean agenda_is_open(const Agenda *agenda, guint index)
{
    if (index >= count_of(agenda))
        return FALSE;
    const Requirement *made = made_at(agenda, index);
    gboolean waits = made->finding && made->own_verdict != VERDICT_OPEN;
    return is_asked_for(made) && !is_worked_out(made) && made->verdict == VERDICT_OPEN && !waits;
}

// NEXT ------------------------------------------------------------------------------------------

// Why something is to be done at a place, in the order in which it is.
typedef enum { TURN_OPEN, TURN_FAULT, TURN_OPTIONAL, TURN_SIGN, TURN_NONE } Turn;

static Turn turn_of(const Agenda *agenda, const PlanStep *step, guint index)
{
    const Requirement *made = made_at(agenda, index);
    if (made->step != step || !is_asked_for(made))
        return TURN_NONE;
    if (made->verdict == VERDICT_FAIL || made->verdict == VERDICT_IN_DOUBT)
        return TURN_FAULT;
    if (!agenda_is_open(agenda, index))
        return TURN_NONE;
    return made->asked == ASKED_SIGN ? TURN_SIGN : made->optional ? TURN_OPTIONAL : TURN_OPEN;
}

// The first that is open of the stages in front of this one, in the same run; else itself.
static guint in_front(const Agenda *agenda, guint index)
{
    const Requirement *made = made_at(agenda, index);
    guint first = index;
    for (guint i = index; requirement_is_bolted(made) && i-- > 0;) {
        const Requirement *before = made_at(agenda, i);
        if (!requirement_is_bolted(before) || before->step != made->step ||
            strcmp(before->name, made->name) != 0 || before->stage > made_at(agenda, i + 1)->stage)
            break;
        if (before->stage < made->stage && agenda_is_open(agenda, i))
            first = i;
    }
    return first;
}

// The next place with that turn behind `from`, round to `from` itself. Where the same reading comes
// up again for another fault, any other goes before it.
static guint next_with(const Agenda *agenda, const PlanStep *step, guint from, Turn turn)
{
    guint count = count_of(agenda), again = AGENDA_NOWHERE;
    guint start = from < count && turn != TURN_SIGN ? from : count - 1;
    for (guint n = 1; n <= count; n++) {
        guint index = (start + n) % count;
        if (turn_of(agenda, step, index) != turn)
            continue;
        guint place = turn == TURN_FAULT ? agenda_input(agenda, index) : in_front(agenda, index);
        if (place != AGENDA_NOWHERE && place != from)
            return place;
        if (place != AGENDA_NOWHERE)
            again = place;
    }
    return again;
}

guint agenda_next(const Agenda *agenda, const PlanStep *step, guint from)
{
    guint found = AGENDA_NOWHERE;
    for (Turn turn = TURN_OPEN; turn < TURN_NONE && found == AGENDA_NOWHERE; turn++)
        found = next_with(agenda, step, from, turn);
    return found;
}

guint agenda_beside(const Agenda *agenda, const PlanStep *step, guint from, gint direction)
{
    guint count = count_of(agenda);
    guint index = from < count ? from + (guint)direction : direction > 0 ? 0 : count - 1;
    for (; index < count; index += (guint)direction) // below 0 it wraps, and ends
        if (agenda_asks(agenda, step, index))
            return index;
    return AGENDA_NOWHERE;
}

// INPUTS ----------------------------------------------------------------------------------------

gboolean agenda_goes_into(const Requirement *input, const Requirement *made)
{
    return input->check && is_asked_for(input) &&
           (input->step == made->step || plan_step_follows(made->step, input->step)) &&
           formula_uses(made->check->formula, input->check->name) &&
           places_meet(input->check->places, (const char *const *)input->labels,
                       made->check->places, (const char *const *)made->labels);
}

// Whether one is asked in a later step than the other, and so nearer to what is worked out.
static gboolean is_nearer(const Requirement *one, const Requirement *other)
{
    return !other || one->step->index > other->step->index;
}

guint agenda_input(const Agenda *agenda, guint index)
{
    const Requirement *made = made_at(agenda, index), *best = NULL;
    guint found = AGENDA_NOWHERE;
    if (!is_worked_out(made))
        return is_asked_for(made) ? index : AGENDA_NOWHERE;
    for (guint i = 0; i < count_of(agenda); i++) {
        if (!agenda_goes_into(made_at(agenda, i), made))
            continue;
        guint place = agenda_input(agenda, i); // formulas never go round
        if (place != AGENDA_NOWHERE && is_nearer(made_at(agenda, place), best)) {
            best = made_at(agenda, place);
            found = place;
        }
    }
    return found;
}

// STEPS -----------------------------------------------------------------------------------------

// Whether anything but signatures is asked for, in that step or (NULL) by the plan itself.
static gboolean has_work(const Agenda *agenda, const PlanStep *step)
{
    for (guint i = 0; i < agenda->assessment->requirements->len; i++) {
        const Requirement *made = agenda->assessment->requirements->pdata[i];
        gboolean meant = step ? made->step == step && !made->withdrawn : !made->added;
        if (meant && made->asked != ASKED_SIGN)
            return TRUE;
    }
    return FALSE;
}

gboolean agenda_is_card(const Agenda *agenda)
{
    return !has_work(agenda, NULL);
}

gboolean agenda_has_work(const Agenda *agenda, const PlanStep *step)
{
    return has_work(agenda, step);
}

gboolean agenda_is_signed(const Agenda *agenda, const PlanStep *step)
{
    for (guint i = 0; i < count_of(agenda); i++)
        if (turn_of(agenda, step, i) == TURN_SIGN)
            return FALSE;
    return TRUE;
}

gboolean agenda_is_done(const Agenda *agenda, const PlanStep *step)
{
    for (guint i = 0; i < count_of(agenda); i++) {
        Turn turn = turn_of(agenda, step, i);
        if (turn != TURN_NONE && turn != TURN_OPTIONAL)
            return FALSE;
    }
    return TRUE;
}

gboolean agenda_is_closed(const Agenda *agenda, const PlanStep *step, gint64 since)
{
    gint64 last = 0;
    for (guint i = 0; i < count_of(agenda); i++) {
        const Requirement *made = made_at(agenda, i);
        if (made->asked != ASKED_SIGN || made->step != step || !is_asked_for(made))
            continue;
        if (requirement_is_left(made))
            return FALSE;
        last = MAX(last, made->entry);
    }
    return last > 0 && (last > since || agenda_is_done(agenda, step));
}

const PlanStep *agenda_held_by(const Agenda *agenda, const PlanStep *step)
{
    for (guint i = 0; i < step->after->len; i++)
        if (!agenda_is_signed(agenda, step->after->pdata[i]))
            return step->after->pdata[i];
    return NULL;
}

static gboolean is_kind(const Entry *entry, const char *kind)
{
    return strcmp(entry->kind->name, kind) == 0;
}

// The step that an entry names; "" where it names none.
static const char *step_named(const Entry *entry)
{
    const char *step = entry_text(entry, "step");
    return step ? step : "";
}

// Walks from the newest entry back. `people` are those whose newest pick-up or put-down has been
// seen, `ended` the steps signed since. Returns whether this entry has a step in hand.
static gboolean has_in_hand(const Entry *entry, GHashTable *people, GHashTable *ended)
{
    if (is_kind(entry, "sign"))
        g_hash_table_add(ended, (gpointer)step_named(entry));
    gboolean up = is_kind(entry, "pick up");
    if ((!up && !is_kind(entry, "put down")) || !g_hash_table_add(people, entry->by))
        return FALSE;
    return up && !g_hash_table_contains(ended, step_named(entry));
}

GArray *agenda_hands(const Agenda *agenda)
{
    GArray *hands = g_array_new(FALSE, FALSE, sizeof(AgendaHand));
    g_autoptr(GHashTable) people = g_hash_table_new(g_str_hash, g_str_equal);
    g_autoptr(GHashTable) ended = g_hash_table_new(g_str_hash, g_str_equal);
    g_autofree gboolean *live = g_new0(gboolean, agenda->count + 1);
    live_entries(agenda->entries, agenda->count, live);
    for (gsize i = agenda->count; i-- > 0;) {
        const Entry *entry = agenda->entries[i];
        const PlanStep *step = live[i] && has_in_hand(entry, people, ended)
                                   ? plan_step(agenda->plan, step_named(entry))
                                   : NULL;
        if (step)
            g_array_append_val(hands, ((AgendaHand){step, entry}));
    }
    return hands;
}

AgendaHand agenda_hand(const Agenda *agenda)
{
    g_autoptr(GArray) hands = agenda_hands(agenda);
    return hands->len ? g_array_index(hands, AgendaHand, 0) : (AgendaHand){NULL, NULL};
}

const PlanStep *agenda_step(const Agenda *agenda)
{
    const PlanStep *here = agenda_hand(agenda).step;
    for (guint i = 0; !here && i < agenda->plan->steps->len; i++) {
        const PlanStep *step = agenda->plan->steps->pdata[i];
        if (!agenda_is_done(agenda, step) && !agenda_held_by(agenda, step))
            here = step;
    }
    return here;
}
