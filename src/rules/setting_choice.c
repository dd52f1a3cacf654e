#include "setting_state.h"
#include <math.h>

enum { COARSE = 33, FINE = 9 };
static const double seen = 0.001; // nodes with less weight put no candidate up

void setting_travel(const SettingAdviser *adviser, double *least, double *most)
{
    const SettingModel *model = &adviser->model;
    *least = isnan(model->travel_least) ? -INFINITY : model->travel_least - adviser->position;
    *most = isnan(model->travel_most) ? INFINITY : model->travel_most - adviser->position;
}

typedef struct {
    const SettingAdviser *adviser;
    const SettingOutlook *outlook;
    double cap;
    gboolean any; // there is one already
    SettingChoice choice;
} Contest;

// What is read loose before it is tightened has not overrun yet: there the cap is enough.
static double worth(const Contest *contest, SettingChance chance)
{
    const SettingAdviser *adviser = contest->adviser;
    double merit = adviser->model.loose ? chance.inside : setting_merit(adviser, chance);
    return merit - adviser->constants->miss * chance.miss;
}

static gboolean is_better(const Contest *contest, SettingChance chance)
{
    SettingChance best = contest->choice.chance;
    gboolean fits = chance.overrun <= contest->cap, fitted = best.overrun <= contest->cap;
    if (!contest->any || fits != fitted)
        return !contest->any || fits;
    return fits ? worth(contest, chance) > worth(contest, best) : chance.overrun < best.overrun;
}

static void enter(Contest *contest, double move)
{
    SettingChance chance = setting_chance(contest->outlook, SETTING_MOVED, move);
    if (!is_better(contest, chance))
        return;
    contest->any = TRUE;
    contest->choice.move = move;
    contest->choice.chance = chance;
}

static Contest contest_new(const SettingAdviser *adviser, const SettingOutlook *outlook, double cap)
{
    return (Contest){adviser, outlook, .cap = cap};
}

// From the least to the greatest move that any likely slope asks for.
static void reach_of(const SettingOutlook *outlook, double *from, double *to)
{
    *from = INFINITY;
    *to = -INFINITY;
    for (guint i = 0; i < outlook->count; i++) {
        const SettingView *view = &outlook->views[i];
        double move = (outlook->aim - outlook->mean) / view->slope;
        if (view->weight <= seen)
            continue;
        *from = fmin(*from, move);
        *to = fmax(*to, move);
    }
    if (*from > *to)
        *from = *to = 0;
}

static void enter_between(Contest *contest, double from, double to, guint count)
{
    for (guint i = 0; i < count; i++)
        enter(contest, from + (to - from) * i / (count - 1));
}

static void enter_smooth(Contest *contest, double least, double most)
{
    double from, to;
    reach_of(contest->outlook, &from, &to);
    from = CLAMP(from, least, most);
    to = CLAMP(to, least, most);
    enter(contest, CLAMP(0.0, least, most));
    enter_between(contest, from, to, COARSE);
    double apart = (to - from) / (COARSE - 1), at = contest->choice.move;
    enter_between(contest, fmax(at - apart, least), fmin(at + apart, most), FINE);
}

static void enter_stock(Contest *contest, double least, double most)
{
    const SettingAdviser *adviser = contest->adviser;
    const SettingModel *model = &adviser->model;
    double room = 1e-9 * (1 + fabs(adviser->position));
    enter(contest, 0);
    for (gsize i = 0; i < model->stock_count; i++) {
        double move = model->stock[i] - adviser->position;
        if (move >= least - room && move <= most + room)
            enter(contest, fabs(move) <= room ? 0 : move);
    }
}

// The steps are counted from the position where positions can be found again, else from here.
static double step_below(const SettingAdviser *adviser, double move)
{
    double step = adviser->model.step;
    double from = adviser->model.absolute ? adviser->position : 0;
    return floor((from + move) / step + 1e-9) * step - from;
}

static void enter_steps(Contest *contest, double about, double least, double most)
{
    double step = contest->adviser->model.step, room = 1e-9 * step;
    double below = step_below(contest->adviser, about);
    for (int i = 0; i < 2; i++) {
        double move = below + i * step;
        if (move >= least - room && move <= most + room)
            enter(contest, fabs(move) < room ? 0 : move);
    }
    if (!contest->any)
        enter(contest, 0);
}

// The better of the two named steps about the best move. Where the cap leaves only standing still,
// though a move is wanted, the least step is looked at without it: there is no lesser one.
static Contest named_steps(const Contest *smooth, double least, double most)
{
    Contest named = contest_new(smooth->adviser, smooth->outlook, smooth->cap);
    enter_steps(&named, smooth->choice.move, least, most);
    if (named.choice.move != 0 || smooth->choice.move == 0)
        return named;
    named = contest_new(smooth->adviser, smooth->outlook, 1);
    enter_steps(&named, smooth->choice.move, least, most);
    return named;
}

SettingChoice setting_choice(const SettingAdviser *adviser, const SettingOutlook *outlook,
                             double cap)
{
    double least, most;
    setting_travel(adviser, &least, &most);
    Contest contest = contest_new(adviser, outlook, cap);
    if (adviser->model.stock)
        enter_stock(&contest, least, most);
    else
        enter_smooth(&contest, least, most);
    if (!adviser->model.stock && adviser->model.step > 0)
        contest = named_steps(&contest, least, most);
    double step = fmax(adviser->model.step, 1e-9), move = contest.choice.move;
    contest.choice.at_end = move <= least + step || move >= most - step;
    return contest.choice;
}

static double nearest_in_stock(const SettingAdviser *adviser, double move)
{
    const SettingModel *model = &adviser->model;
    double best = 0, least, most;
    setting_travel(adviser, &least, &most);
    for (gsize i = 0; i < model->stock_count; i++) {
        double there = model->stock[i] - adviser->position;
        if (there < least || there > most || fabs(there) < 1e-9)
            continue;
        if (best == 0 || fabs(there - move) < fabs(best - move))
            best = there;
    }
    return best;
}

double setting_choice_near(const SettingAdviser *adviser, double move)
{
    double least, most, step = adviser->model.step;
    setting_travel(adviser, &least, &most);
    if (adviser->model.stock)
        return nearest_in_stock(adviser, move);
    move = CLAMP(move, least, most);
    if (step <= 0)
        return move;
    double below = step_below(adviser, move), above = below + step, room = 1e-9 * step;
    gboolean up = fabs(above - move) < fabs(below - move) || fabs(below) < room;
    double near = up ? above : below, other = up ? below : above;
    if (near < least - room || near > most + room)
        near = other;
    return near < least - room || near > most + room || fabs(near) < room ? 0 : near;
}
