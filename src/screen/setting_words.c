#include "setting_words.h"

#include "bench_field.h"
#include "line_words.h"
#include "widget_groups.h"
#include "words.h"

#include <standbook/sheet/figures.h>
#include <string.h>

const Requirement *setting_made(const Trials *trials, const TrialNext *next)
{
    gboolean reads = next->ask == TRIAL_LOOSE || next->ask == TRIAL_TIGHT;
    return reads && trials->inputs[next->input] ? trials->inputs[next->input] : trials->made[0];
}

// LINES -----------------------------------------------------------------------------------------

gboolean setting_is_step(const Trials *trials, const char *typed)
{
    const Number *least = trials->check->setting->least;
    return *typed == '+' || (*typed == '-' && (!least || number_sign(least) >= 0));
}

static char *move_line(const Trials *trials, const char *typed)
{
    gint64 mistyped = trials_mistyped(trials);
    gboolean by = setting_is_step(trials, typed);
    g_autofree char *after =
        mistyped ? g_strdup_printf(" after #%" G_GINT64_FORMAT, mistyped) : g_strdup("");
    g_autofree char *target =
        trials->labels ? line_target(trials->plan, trials->made[0])
                       : g_strdup_printf("%s in %s", trials->check->name, trials->step->name);
    return g_strdup_printf("move %s %s %s%s", target, by ? "by" : "to",
                           *typed == '+' ? typed + 1 : typed, after);
}

static char *read_line(Desk *desk, const Trials *trials, const TrialNext *next, const char *typed)
{
    const Requirement *made = setting_made(trials, next);
    g_autofree char *target = line_target(trials->plan, made);
    const ToolNeed need = bench_need(made);
    const char *gauge = bench_gauge_for(desk, made, &need);
    return g_strdup_printf("read %s %s%s%s%s", target, typed,
                           next->ask == TRIAL_LOOSE ? " loose" : "", gauge ? " with " : "",
                           gauge ? gauge : "");
}

// The log line for what is typed; NULL where that says nothing.
char *setting_line(Desk *desk, const Trials *trials, const TrialNext *next, const char *typed)
{
    if (!*typed || (strlen(typed) == 1 && strchr("+-.", *typed)))
        return NULL;
    if (next->ask == TRIAL_MOVE)
        return move_line(trials, typed);
    return next->ask == TRIAL_LOOSE || next->ask == TRIAL_TIGHT
               ? read_line(desk, trials, next, typed)
               : NULL;
}

char *setting_wrong_gauge(Desk *desk, const Trials *trials, const TrialNext *next)
{
    const Requirement *made = setting_made(trials, next);
    gboolean read = next->ask == TRIAL_LOOSE || next->ask == TRIAL_TIGHT;
    const ToolNeed need = bench_need(made);
    return read ? bench_wrong_gauge(desk, made, &need, bench_gauge_for(desk, made, &need)) : NULL;
}

// Whether the bolt of a requirement is near what these trials set, and has been tightened.
static gboolean is_tight_here(const Trials *trials, const PlanTightening *tightening,
                              const Requirement *made)
{
    enum { FIRST = 1 }; // without that stage none has been done
    return made->asked == ASKED_BOLT && made->stage == FIRST && made->step == tightening->step &&
           strcmp(made->name, tightening->group->name) == 0 && made->verdict != VERDICT_OPEN &&
           made->verdict != VERDICT_NOT_NEEDED &&
           places_meet(trials->check->places, (const char *const *)trials->labels,
                       tightening->group->axes, (const char *const *)made->labels);
}

void setting_slacken(const Trials *trials, const PlanTightening *tightening, GPtrArray *lines)
{
    const GPtrArray *all = trials->assessment->requirements;
    if (!trials->labels)
        g_ptr_array_add(lines, g_strdup_printf("slacken %s in %s all", tightening->group->name,
                                               trials->step->name));
    for (guint i = 0; trials->labels && i < all->len; i++) {
        if (!is_tight_here(trials, tightening, all->pdata[i]))
            continue;
        g_autofree char *target = line_target(trials->plan, all->pdata[i]);
        g_ptr_array_add(lines, g_strdup_printf("slacken %s", target));
    }
}

// WORDS -----------------------------------------------------------------------------------------

char *setting_place(const Trials *trials)
{
    return trials->labels ? requirement_title(trials->made[0]) : g_strdup("");
}

// `ex 3: ` in front of what is done where each place is set by itself.
static char *before_words(const Trials *trials)
{
    return trials->labels ? g_strdup_printf("%s: ", trials->made[0]->place) : g_strdup("");
}

char *setting_at(const Trials *trials, const Requirement *made)
{
    if (made->check != trials->check) {
        g_autofree char *title = requirement_title(made);
        return g_strconcat(" ", title, NULL);
    }
    return *made->place ? g_strdup_printf(" at %s", made->place) : g_strdup("");
}

// `idler carrier, jackscrew locknut`
static char *set_names(const GPtrArray *tightenings)
{
    GString *names = g_string_new(NULL);
    for (guint i = 0; i < tightenings->len; i++)
        g_string_append_printf(names, "%s%s", i ? ", " : "",
                               ((const PlanTightening *)tightenings->pdata[i])->group->name);
    return g_string_free(names, FALSE);
}

// Whether what holds it must come loose before the next move; a figure typed wrong moves nothing.
static gboolean must_loosen(const Trials *trials)
{
    g_autoptr(GPtrArray) slack = trials_to_slacken(trials);
    return slack->len && !trials_mistyped(trials);
}

// `loosen, turn out 1/20 · then type where it stands`, the end of it in the words of `asks`; a move
// that only betters what would do is left by +Enter.
static char *move_words(const Trials *trials, const TrialNext *next, const NextMove *advised,
                        const char *asks)
{
    const char *loosen = must_loosen(trials) ? "loosen, " : "";
    static const char *const without[] = {[TRIAL_FURTHER] = "%smove the %s · %s",
                                          [TRIAL_STAY] = "%stype where the %s stands; then tighten",
                                          [TRIAL_STOP] = "%sfind the cause, then move the %s"};
    static const char *const put_in[] = {[TRIAL_FURTHER] = "%sput in a %s · %s",
                                         [TRIAL_STAY] = "%stype which %s is in",
                                         [TRIAL_STOP] = "%sfind the cause, then change the %s"};
    const char *const *moves = trials_is_put_in(trials) ? put_in : without;
    gboolean good = trials_next(trials, FALSE).ask == TRIAL_DONE;
    if (!next_move_moves(advised))
        return g_strdup_printf(moves[next->move], loosen, trials->check->setting->move, asks);
    g_autofree char *move = next_move_words(trials, advised);
    return good ? g_strdup_printf("%s, or +Enter leaves it", move)
                : g_strdup_printf("%s%s · then %s", loosen, move, asks);
}

// In front of the field there is room for the longer question, for the shorter, or for one that
// leaves the move to the advice above.
static char *move_asked(const Trials *trials, const TrialNext *next, const NextMove *advised)
{
    enum { ROOM = 54 };
    g_autofree char *before = before_words(trials);
    gboolean put_in = trials_is_put_in(trials);
    g_autofree char *whole =
        move_words(trials, next, advised, put_in ? "type which" : "type where it stands");
    g_autofree char *brief =
        move_words(trials, next, advised, put_in ? "type which" : "type where");
    g_autofree char *least = g_strconcat(must_loosen(trials) ? "loosen, " : "",
                                         "move it as said above · then type where", NULL);
    const char *const forms[] = {whole, brief, least};
    guint form = 0;
    while (form < 2 && g_utf8_strlen(before, -1) + g_utf8_strlen(forms[form], -1) > ROOM)
        form++;
    return g_strconcat(before, next_move_moves(advised) ? forms[form] : forms[MIN(form, 1)], NULL);
}

char *setting_next(Desk *desk, const Trials *trials, const TrialNext *next, const NextMove *advised)
{
    const Requirement *made = setting_made(trials, next);
    g_autofree char *at = setting_at(trials, made);
    const ToolNeed need = bench_need(made);
    const char *sort = need.sort, *label = bench_gauge_for(desk, made, &need);
    g_autofree char *gauge = sort || label ? toolbox_gauge_words(desk, sort, label) : NULL;
    g_autofree char *before = before_words(trials);
    if (next->ask == TRIAL_MOVE)
        return move_asked(trials, next, advised);
    if (next->ask == TRIAL_TIGHTEN)
        return g_strdup_printf("%stighten %s", before, next->tightening->group->name);
    gboolean state = next->ask == TRIAL_LOOSE || trials_has_tight(trials);
    return g_strdup_printf("%s%s%s%s", trials_read_word(trials, next->ask == TRIAL_LOOSE),
                           *at || state ? at : " it", gauge ? "   " : "", gauge ? gauge : "");
}

// What is read behind the reading asked: of a loose one only what the same place needs. NULL if
// there is none.
static const Requirement *read_beside(const Trials *trials, const TrialNext *next)
{
    const GArray *inputs = trials->reads;
    gboolean loose = next->ask == TRIAL_LOOSE;
    if ((!loose && next->ask != TRIAL_TIGHT) || next->input + 1 >= inputs->len)
        return NULL;
    return loose && g_array_index(inputs, PlanInput, next->input + 1).of != next->place
               ? NULL
               : trials->inputs[next->input + 1];
}

// What comes behind the one asked.
char *setting_then(const Trials *trials, const TrialNext *next, const NextMove *advised)
{
    const PlanTightening *hold = trials_open_hold(trials);
    g_autoptr(GPtrArray) slack = trials_to_slacken(trials);
    g_autofree char *names = set_names(slack);
    gboolean holds = trials_has_hold(trials);
    g_autofree char *tighten = hold ? g_strdup_printf("tighten %s", hold->group->name)
                                    : g_strdup(holds                      ? "tighten"
                                               : trials_has_tight(trials) ? "read it tight"
                                                                          : "read it");
    const char *loose = trials->check->setting->loose ? "read it loose" : tighten;
    const Trial *last = trials_last(trials);
    if (next->ask == TRIAL_MOVE && last && last->loose && !last->readings)
        return g_strdup_printf("%s; or +Enter %s it as it stands", loose,
                               holds ? "tightens" : "leaves");
    if (next->ask == TRIAL_MOVE)
        return must_loosen(trials) ? g_strdup_printf("loosened: %s; then %s", names, loose)
                                   : g_strdup(loose);
    const Requirement *beside = read_beside(trials, next);
    g_autofree char *at = beside ? setting_at(trials, beside) : NULL;
    gboolean first = next->ask == TRIAL_TIGHT && last && last->readings == 0;
    if (at)
        return g_strconcat(trials_read_word(trials, next->ask == TRIAL_LOOSE), at,
                           first ? "; outside at the first place: the next move" : "", NULL);
    if (next->ask == TRIAL_LOOSE) // what it reads decides, where a move can be advised
        return g_strdup_printf("%s%s", tighten,
                               advised->known ? ", or the next move, as it reads" : "");
    return g_strdup(next->ask == TRIAL_TIGHTEN ? "read it tight" : "the verdict on this try");
}

// `▼ FAIL, 0.01 under`, `? DOUBT, basis, 0.01 under`, `√ pass`: whatever is in doubt, how far it
// lies outside tells the next move.
static char *reading_words(const Requirement *made)
{
    g_autofree char *fault = fault_words(made), *outside = figure_outside(made);
    gboolean doubted = made->verdict == VERDICT_IN_DOUBT && *outside;
    return *fault ? g_strdup_printf("%s%s%s", fault + strlen(" · "), doubted ? ", " : "",
                                    doubted ? outside : "")
                  : g_strdup(verdict_mark(made->verdict, made->reason, made->check));
}

// How a requirement stands with what is typed.
static const Requirement *supposed_made(const Supposed *supposed, const Trials *trials,
                                        const Requirement *now)
{
    for (guint i = 0; i < trials->assessment->requirements->len; i++)
        if (trials->assessment->requirements->pdata[i] == now)
            return supposed->made->requirements->pdata[i];
    return now;
}

const Requirement *setting_typed(const Supposed *supposed, const Trials *trials,
                                 const TrialNext *next)
{
    gboolean judged = supposed->line && supposed->made && next->ask == TRIAL_TIGHT;
    const Requirement *made =
        judged ? supposed_made(supposed, trials, trials->made[next->place]) : NULL;
    return made && made->value ? made : NULL;
}

// `0.07 mm ±.01   ▼ FAIL, 0.01 under`
static char *value_words_of(const Requirement *made)
{
    g_autofree char *value = figure_value(made), *doubt = figure_doubt(made);
    g_autofree char *fault = reading_words(made);
    return g_strdup_printf("%s %s %s   %s", value, figure_unit(made), doubt, fault);
}

// Whether a reading now makes a place whole, of a setting that is worked out.
static gboolean makes_whole(const Trials *trials, const TrialNext *next)
{
    const GArray *inputs = trials->reads;
    const Trial *trial = trials_last(trials);
    gboolean whole = trials->check->formula && next->ask == TRIAL_TIGHT && trial;
    for (guint i = 0; whole && i < inputs->len; i++)
        whole = g_array_index(inputs, PlanInput, i).of != next->place || i == next->input ||
                trial->tight[i];
    return whole;
}

// What the digits mean: `0.07 mm ±.01   ▼ FAIL, 0.01 under`; NULL while more is still to come.
char *setting_meaning(const Supposed *supposed, const Trials *trials, const TrialNext *next,
                      const char *typed)
{
    const PlanSetting *plan = trials->check->setting;
    const char *unit = plan->unit_text ? plan->unit_text : "";
    if (supposed->problem)
        return g_strdup(supposed_problem(supposed, typed));
    if (next->ask == TRIAL_MOVE)
        return setting_is_step(trials, typed)
                   ? g_strdup_printf("moved by %s %s", typed, unit)
                   : g_strdup_printf(trials_is_put_in(trials) ? "the %s of %s %s is in now"
                                                              : "the %s stands at %s %s now",
                                     plan->move, typed, unit);
    if (next->ask == TRIAL_LOOSE)
        return g_strdup_printf("%s, loose: it advises and is not judged", typed);
    const Requirement *read = supposed_made(supposed, trials, setting_made(trials, next));
    if (!trials->check->formula)
        return value_words_of(read);
    g_autofree char *value = figure_value(read);
    const Requirement *made = supposed_made(supposed, trials, trials->made[next->place]);
    g_autofree char *words = makes_whole(trials, next) ? value_words_of(made) : g_strdup("");
    return g_strdup_printf("%s %s%s%s%s%s", value, figure_unit(read), *words ? "; " : "",
                           *words ? trials->check->name : "", *words ? " " : "", words);
}
