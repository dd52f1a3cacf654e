// What is asked next of a setting, led by the advice: kind, words and question are one.
#include "next_move_inside.h"

// How the newest try stands once it was read tightened.
typedef enum {
    NOT_READ,    // or in a doubt that the adviser knows of
    WELL,        // it needs no other
    LOOSENED,    // it needed none, and was disturbed since
    OUTSIDE,     // it does not do as it is
    WRONG_GAUGE, // what was read says nothing: the gauge was found wrong,
    WRONG_HOLD   // or what holds it was tightened wrong
} Standing;

static Standing standing_of(const Trials *trials, gboolean wrong_gauge)
{
    const Trial *last = trials_last(trials);
    if (!last || !last->readings)
        return NOT_READ;
    if (wrong_gauge)
        return WRONG_GAUGE;
    if (last->verdict == VERDICT_IN_DOUBT && last->reason == REASON_BASIS && !last->joined)
        return WRONG_HOLD;
    if (last->fails)
        return OUTSIDE;
    if (last->verdict == VERDICT_IN_DOUBT || last->verdict == VERDICT_OPEN)
        return NOT_READ;
    return last->ended ? LOOSENED : WELL;
}

SettingKind next_move_kind(const Trials *trials, SettingKind kind, gboolean wrong_gauge)
{
    static const struct {
        Standing standing;
        SettingKind advised, serves;
    } others[] = {
        {WELL, SETTING_STOP, SETTING_LEAVE},
        {LOOSENED, SETTING_STOP, SETTING_TIGHTEN},
        {LOOSENED, SETTING_LEAVE, SETTING_TIGHTEN},
        {OUTSIDE, SETTING_LEAVE, SETTING_STOP},
        {WRONG_GAUGE, SETTING_READ_LOOSE, SETTING_READ_AGAIN},
        {WRONG_GAUGE, SETTING_TIGHTEN, SETTING_READ_AGAIN},
        {WRONG_HOLD, SETTING_READ_LOOSE, SETTING_TIGHTEN},
    };
    Standing standing = standing_of(trials, wrong_gauge);
    for (guint i = 0; i < G_N_ELEMENTS(others); i++)
        if (others[i].standing == standing && others[i].advised == kind)
            return others[i].serves;
    return kind;
}

static gboolean is_slack(const Trials *trials)
{
    g_autoptr(GPtrArray) tight = trials_to_slacken(trials);
    return tight->len == 0;
}

// Of a try that was read tightened, whatever the ledger asks of it (`asked`).
static TrialNext after_tight(const Trials *trials, SettingKind kind, TrialNext asked)
{
    static const struct {
        SettingKind kind;
        TrialNext next;
    } moves[] = {
        {SETTING_MOVE, {.ask = TRIAL_MOVE}},
        {SETTING_MOVE_DIRECTION, {.ask = TRIAL_MOVE}},
        {SETTING_TIGHTEN, {.ask = TRIAL_MOVE, .move = TRIAL_STAY}},
        {SETTING_STOP, {.ask = TRIAL_MOVE, .move = TRIAL_STOP}},
    };
    gboolean again = kind == SETTING_READ_AGAIN && !trials_last(trials)->ended;
    gboolean stays = kind == SETTING_TIGHTEN && !trials_has_hold(trials);
    if (again || stays)
        return trials_next_again(trials);
    for (guint i = 0; i < G_N_ELEMENTS(moves); i++)
        if (moves[i].kind == kind)
            return moves[i].next;
    return asked;
}

// Whether a try that does as it is is left: each place of a list goes on to the next one, and where
// the plan names no aim nothing but its limits asks for more.
static gboolean is_left(const Trials *trials)
{
    return standing_of(trials, FALSE) == WELL && (trials->labels || trials->check->aim == AIM_NONE);
}

TrialNext next_move_ask(const NextMove *next, const Trials *trials, TrialNext asked)
{
    const Trial *last = trials_last(trials);
    gboolean told = next->known && next->told;
    gboolean over = asked.ask == TRIAL_DONE || asked.ask == TRIAL_MOVE;
    if (asked.ask == TRIAL_DONE && is_left(trials))
        return asked;
    if (told && over && last && last->read && !trials_mistyped(trials))
        return after_tight(trials, next->advice.kind, asked);
    gboolean read_loose = last && last->loose && last->readings == 0 && is_slack(trials);
    gboolean leads = read_loose && (asked.ask == TRIAL_TIGHTEN || asked.ask == TRIAL_TIGHT);
    return leads && next_move_moves(next) ? (TrialNext){.ask = TRIAL_MOVE} : asked;
}
