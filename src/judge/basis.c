// What a reading or an answer stands on (record.md §5): the bolts it was taken with, and what has
// been slackened, replaced, moved or reworked since.
#include "judge.h"

#include <string.h>

void basis_clear(Basis *basis)
{
    g_clear_pointer(&basis->ticks, g_array_unref);
}

static gboolean part_is_fitted(const Judge *judge, const PlanName *name, const GPtrArray *axes,
                               const char *const *labels)
{
    const PartState *part = g_hash_table_lookup(judge->state_of, name->part);
    for (guint i = 0; part && i < part->places; i++) {
        g_autofree const char **at = judge_labels(part->part->axes, i);
        if (!part->fit[i] && !judge_is_left_out(judge, part->requirement[i]) &&
            places_meet(part->part->axes, at, axes, labels))
            return FALSE;
    }
    return part != NULL;
}

Basis basis_at(const Judge *judge, const PlanCheck *check, const GPtrArray *axes, guint place)
{
    Basis basis = {0};
    if (check->with->len == 0)
        return basis;
    g_autofree const char **labels = judge_labels(axes, place);
    basis.ticks = g_array_new(FALSE, FALSE, sizeof(BasisTick));
    for (guint i = 0; i < check->with->len; i++) {
        const PlanName *name = g_ptr_array_index(check->with, i);
        SetState *set = name->group ? g_hash_table_lookup(judge->state_of, name->group) : NULL;
        if (set && !set_is_final(judge, set, name->step, axes, labels, basis.ticks))
            basis.slack = TRUE;
        if (name->part && !part_is_fitted(judge, name, axes, labels))
            basis.slack = TRUE;
    }
    return basis;
}

// The reasons for which a bolt holds nothing, or may not, that nobody argued away or accepted.
static guint32 faults_left(const Judge *judge, const BasisTick *one)
{
    const TickState *tick = tick_at(judge, one->tick);
    guint32 order = one->out_of_order ? reason_bit(REASON_ORDER) : 0;
    guint32 left = tick->doubts | order | (tick->fails ? reason_bit(tick->fails) : 0);
    if (judge->walking)
        return left;
    left &= ~tick->upheld;
    return judge_is_accepted(judge, tick->requirement, left) ? 0 : left;
}

guint32 basis_doubt(const Judge *judge, const Basis *basis, guint *evidence, gint64 *cause)
{
    guint32 doubts = basis->slack ? reason_bit(REASON_BASIS) : 0;
    for (guint i = 0; basis->ticks && i < basis->ticks->len; i++) {
        const BasisTick *one = &g_array_index(basis->ticks, BasisTick, i);
        const TickState *tick = tick_at(judge, one->tick);
        guint32 left = faults_left(judge, one);
        doubts |= left ? reason_bit(REASON_BASIS) : 0;
        if (!(left & ~reason_bit(tick->fails)))
            continue;
        *evidence = MAX(*evidence, tick->evidence);
        if (left & reason_bit(REASON_TOOL))
            *cause = MAX(*cause, tick->cause);
    }
    return doubts;
}

static gboolean names_subject(const GPtrArray *names, const void *subject)
{
    for (guint i = 0; i < names->len; i++) {
        const PlanName *name = g_ptr_array_index(names, i);
        if (subject == name->group || subject == name->part || subject == name->check)
            return TRUE;
    }
    return FALSE;
}

// The step from which a check is asked for once more at this place, if anybody still asks it there.
static guint asked_again_in(const Judge *judge, const CheckState *state, guint place)
{
    for (const CheckState *again = state->again; again; again = again->again) {
        gboolean judged = state->check->places->len == state->check->axes->len;
        if (!judged || !judge_is_left_out(judge, again->requirement[place]))
            return again->step->index;
    }
    return G_MAXUINT;
}

// Whether a disturbance concerns this check at all. One in a step that asks for the check once more
// does not: before that step the check is judged as it stood.
static gboolean concerns(const CheckState *state, const Disturbance *one, guint until,
                         gboolean parting)
{
    const PlanCheck *check = state->check;
    gboolean itself =
        one->moved ? g_ptr_array_find(check->moved_by, one->subject, NULL) : one->subject == check;
    return (!one->step || one->step->index < until) &&
           (itself || names_subject(check->rests_on, one->subject) ||
            (parting && names_subject(check->with, one->subject)));
}

// Which disturbances are looked for.
typedef struct {
    guint after, before; // between these ranks
    gboolean parting;    // also slackenings of what the check is `with`
    gboolean own;        // only in the step in which the check is asked for
    gboolean oldest;     // the oldest of them, not the newest
} Sought;

// The rank of one that concerns a place; 0 if there is none.
static guint find_disturbance(const Judge *judge, const CheckState *state, guint place,
                              const Sought *sought)
{
    const GArray *all = judge->disturbances;
    guint until = all->len ? asked_again_in(judge, state, place) : 0;
    g_autofree const char **labels = NULL;
    for (guint i = 0; i < all->len; i++) {
        const Disturbance *one =
            &g_array_index(all, Disturbance, sought->oldest ? i : all->len - 1 - i);
        if (one->rank <= sought->after || one->rank >= sought->before ||
            (sought->own && one->step != state->step) ||
            !concerns(state, one, until, sought->parting))
            continue;
        if (!labels)
            labels = judge_labels(state->check->axes, place);
        if (places_meet(state->check->axes, labels, one->axes, one->labels))
            return one->rank;
    }
    return 0;
}

guint basis_fell(const Judge *judge, const CheckState *state, guint place, guint after)
{
    return find_disturbance(judge, state, place, &(Sought){.after = after, .before = G_MAXUINT});
}

guint basis_fell_first(const Judge *judge, const CheckState *state, guint place, guint after)
{
    return find_disturbance(judge, state, place,
                            &(Sought){.after = after, .before = G_MAXUINT, .oldest = TRUE});
}

guint basis_undone(const Judge *judge, const CheckState *state, guint place, guint after)
{
    return find_disturbance(judge, state, place,
                            &(Sought){.after = after, .before = G_MAXUINT, .own = TRUE});
}

guint basis_parted(const Judge *judge, const CheckState *state, guint place, guint before)
{
    return find_disturbance(judge, state, place, &(Sought){.before = before, .parting = TRUE});
}
