#include "next_move_inside.h"
#include "trials_inside.h"

#include <standbook/work/next_move.h>

#include <math.h>
#include <standbook/work/entry_words.h>
#include <string.h>

void next_move_clear(NextMove *next)
{
    number_free(next->graduation);
    g_clear_pointer(&next->places, g_array_unref);
}

// GAUGE -----------------------------------------------------------------------------------------

// The tool of the newest reading of the setting; NULL if none was named.
static const char *newest_tool(const Trials *trials)
{
    for (guint i = trials->all->len; i-- > 0;) {
        const Trial *trial = trials->all->pdata[i];
        for (guint j = trial->entries->len; j-- > 0;)
            if (entry_tool(trial->entries->pdata[j]))
                return entry_tool(trial->entries->pdata[j]);
    }
    return NULL;
}

// The division of the gauge in hand, base units; where it has none that is known, the last place
// that is shown.
static Number *graduation_of(const Trials *trials)
{
    g_autoptr(Taken) taken = taken_new(trials->entries, trials->count, NULL);
    Number *known = taken_width(taken, "tool", newest_tool(trials), "graduation");
    if (known && number_sign(known) > 0)
        return known;
    number_free(known);
    g_autoptr(Number) tenth = number_from_ratio(1, 10);
    g_autoptr(Number) place = number_power(tenth, (gint)MIN(trials->check->decimals, 9));
    return unit_width_to_base(trials->check->unit, place);
}

// MODEL -----------------------------------------------------------------------------------------

static double as_double(const Number *number)
{
    return number ? number_double(number) : NAN;
}

// One unit of the moves in base units.
static double move_unit(const PlanSetting *setting)
{
    g_autoptr(Number) one = number_from_integer(1);
    g_autoptr(Number) base = setting->unit ? unit_width_to_base(setting->unit, one) : NULL;
    return base ? number_double(base) : 1;
}

// How well an adjuster is set by hand, one standard deviation, base units: a turn to 1/48, a length
// to 0.005 mm, what is counted or taken from a stock exactly (common practice, no published
// source).
static double hand_of(const PlanSetting *setting)
{
    static const double turn = 360.0 / 48, length = 5e-6;
    const Kind angle = {.angle = 1}, metre = {.length = 1};
    if (setting->stock || !setting->unit)
        return 0;
    Kind kind = unit_kind(setting->unit);
    return kind_equal(kind, angle) ? turn : kind_equal(kind, metre) ? length : 0;
}

static gboolean wants_high(const PlanCheck *check)
{
    gboolean closes = check->wear && !check->wear_above;
    return check->aim == AIM_HIGH || (check->aim == AIM_NONE && closes);
}

// Where to aim, base units; NAN where nothing says it. Without a word of the plan it is the side
// from which wear leads away: low, and high where wear closes.
static double aim_of(const PlanCheck *check, double least, double most)
{
    enum { SHARE = 3 }; // tenths of the tolerance inside the limit
    double inside = (most - least) * SHARE / 10;
    if (check->aim == AIM_VALUE || check->aim == AIM_SMALLEST)
        return as_double(check->aim_value);
    return wants_high(check) ? most - inside : least + inside;
}

// Whether the aim is that of the loosest place: near the maximum.
static gboolean aims_high(const PlanCheck *check, double aim, double least, double most)
{
    if (check->aim == AIM_SMALLEST || check->aim == AIM_LOW)
        return FALSE;
    return wants_high(check) || isnan(least) || (!isnan(most) && aim > (least + most) / 2);
}

// Where one length of shim gives as much of the reading.
static gboolean is_as_thick(const PlanSetting *setting)
{
    const Kind metre = {.length = 1};
    return setting->gives && setting->unit && kind_equal(unit_kind(setting->unit), metre) &&
           fabs(fabs(number_double(setting->gives)) / move_unit(setting) - 1) < 1e-9;
}

// The factor to which the plan's word on how a setting answers is trusted. A shim is as thick as it
// is: a clearance answers it exactly, what is geared to it to a tenth.
static double trust_of(const PlanSetting *setting)
{
    static const double geared = 1.1;
    SettingModel model;
    setting_model_init(&model);
    if (!setting->stock)
        return model.geometry_within;
    return is_as_thick(setting) ? 1 : geared;
}

static void tell_adjuster(const PlanSetting *setting, SettingModel *model, GArray *stock)
{
    model->travel_least = as_double(setting->least);
    model->travel_most = as_double(setting->most);
    model->step = setting->step ? number_double(setting->step) : 0;
    model->hand = hand_of(setting);
    model->geometry =
        setting->gives ? fabs(number_double(setting->gives)) / move_unit(setting) : NAN;
    model->geometry_within = trust_of(setting);
    model->direction = setting->direction;
    model->loose = setting->loose;
    for (guint i = 0; setting->stock && i < setting->stock->len; i++) {
        double size = number_double(setting->stock->pdata[i]);
        g_array_append_val(stock, size);
    }
    model->stock = setting->stock ? (const double *)(const void *)stock->data : NULL;
    model->stock_count = stock->len;
    model->absolute = setting->stock != NULL;
}

// Whether a value is worked out from two readings that are subtracted.
static gboolean is_difference(const PlanCheck *check)
{
    g_autoptr(GArray) terms = check->formula ? formula_terms(check->formula) : NULL;
    return terms && terms->len > 1;
}

// The places that are needed, in turn, are those the adviser knows.
static guint needed_before(const Trials *trials, guint place)
{
    guint count = 0;
    for (guint i = 0; i < place; i++)
        count += trials_needs(trials->made[i]) ? 1 : 0;
    return count;
}

guint next_move_place(const Trials *trials, guint told)
{
    guint place = 0;
    while (place + 1 < trials->places &&
           (!trials_needs(trials->made[place]) || needed_before(trials, place) < told))
        place++;
    return place;
}

static gboolean is_same(const Number *one, const Number *other)
{
    return one && other ? number_equal(one, other) : one == other;
}

// Whether there is one pair of limits for all places: with others each place has an aim of its own.
static gboolean has_one_aim(const Trials *trials)
{
    const Requirement *first = trials->made[next_move_place(trials, 0)];
    for (guint i = 0; i < trials->places; i++) {
        const Requirement *made = trials->made[i];
        if (trials_needs(made) &&
            !(is_same(made->lower, first->lower) && is_same(made->upper, first->upper)))
            return FALSE;
    }
    return needed_before(trials, trials->places) > 0;
}

static void tell_limits(const Trials *trials, SettingModel *model)
{
    const Requirement *first = trials->made[next_move_place(trials, 0)];
    model->least = as_double(first->lower);
    model->most = as_double(first->upper);
    model->aim = aim_of(trials->check, model->least, model->most);
    model->closes = aims_high(trials->check, model->aim, model->least, model->most);
}

static SettingAdviser *adviser_for(const Trials *trials, const Number *graduation,
                                   const GArray *earlier)
{
    const PlanCheck *check = trials->check;
    g_autoptr(GArray) stock = g_array_new(FALSE, FALSE, sizeof(double));
    SettingModel model;
    setting_model_init(&model);
    tell_limits(trials, &model);
    model.graduation = number_double(graduation);
    model.difference = is_difference(check);
    model.places = needed_before(trials, trials->places);
    model.floor = model.least >= 0 ? 0 : NAN;
    model.earlier = earlier ? (const SettingLearned *)(const void *)earlier->data : NULL;
    model.earlier_count = earlier ? earlier->len : 0;
    tell_adjuster(check->setting, &model, stock);
    return setting_adviser_new(&model);
}

double next_move_aim(const Trials *trials, gboolean *loosest)
{
    SettingModel model;
    tell_limits(trials, &model);
    *loosest = model.closes;
    return has_one_aim(trials) ? model.aim : NAN;
}

double next_move_supposed(const Trials *trials, const NextMove *next)
{
    g_autoptr(SettingAdviser) adviser = adviser_for(trials, next->graduation, NULL);
    return adviser ? setting_learned(adviser).ln_slope_sd : NAN;
}

// REPLAY ----------------------------------------------------------------------------------------

// What is told to the adviser, and the one that knows all but the last move.
typedef struct {
    SettingAdviser *adviser;
    guint told, tight, doubted;
    gboolean untold; // the newest try was read tightened, and nothing of it can be told: bounds
} Replay;

// A gauge that was found wrong misleads in its loose readings as well.
static gboolean has_wrong_tool(const Trials *trials, const Trial *trial)
{
    for (guint i = 0; i < trials->places; i++) {
        const Requirement *made = trial->places[i].made;
        if (made && made->reason == REASON_TOOL && trial_place_misleads(trial, i))
            return TRUE;
    }
    return FALSE;
}

static void tell_move(Replay *replay, const Entry *entry)
{
    g_autoptr(Number) to = entry_amount(entry, "to"), by = entry_amount(entry, "moved");
    if (to)
        setting_moved_to(replay->adviser, number_double(to), TRUE);
    else if (by)
        setting_moved(replay->adviser, number_double(by), TRUE);
}

// Whether a reading that made it was a bound such as `<0.05`.
static gboolean is_bound(const Trials *trials, const TrialValue *value)
{
    for (guint i = 0; i < trials->reads->len; i++) {
        const char *text = value->read[i] ? entry_value(value->read[i], "value", "value") : NULL;
        if (text && (*text == '<' || *text == '>'))
            return TRUE;
    }
    return FALSE;
}

// Whether it is a value, of a place that is asked for.
static gboolean is_plain(const Trials *trials, const TrialValue *value)
{
    return value->value && trials_needs(trials->made[value->place]) && !is_bound(trials, value);
}

static void tell_value(const Trials *trials, Replay *replay, const TrialValue *value)
{
    setting_read(replay->adviser, needed_before(trials, value->place), number_double(value->value),
                 value->tight);
    replay->told++;
    replay->tight += value->tight ? 1 : 0;
}

static void tell_loose(const Trials *trials, Replay *replay, const Trial *trial, const Entry *entry)
{
    for (guint i = 0; i < trial->values->len; i++) {
        const TrialValue *value = &g_array_index(trial->values, TrialValue, i);
        if (value->tight || value->entry != entry || value->joined || !is_plain(trials, value))
            continue;
        tell_value(trials, replay, value);
    }
}

// What was done before it was tightened, all or (`but_last`) up to the last move.
static void tell_before(const Trials *trials, Replay *replay, const Trial *trial, gboolean but_last)
{
    gboolean wrong = has_wrong_tool(trials, trial);
    for (guint i = 0; i < trial->entries->len; i++) {
        const Entry *entry = trial->entries->pdata[i];
        if (but_last && entry == trial->move)
            return;
        if (strcmp(entry->kind->name, "move") == 0)
            tell_move(replay, entry);
        else if (!wrong)
            tell_loose(trials, replay, trial, entry);
    }
}

static gboolean can_be_told(const Trials *trials, const Trial *trial, const TrialValue *value)
{
    const Requirement *made = value->tight ? trial->places[value->place].made : NULL;
    return made && made->value && made->bound == BOUND_NONE && !value->later &&
           is_plain(trials, value);
}

// Whether a later value of the same place that is told stands on one of its readings.
static gboolean is_superseded(const Trials *trials, const Trial *trial, const gboolean *told,
                              guint index)
{
    const TrialValue *value = &g_array_index(trial->values, TrialValue, index);
    for (guint i = index + 1; i < trial->values->len; i++) {
        const TrialValue *later = &g_array_index(trial->values, TrialValue, i);
        if (told[i] && later->place == value->place && trial_values_share(trials, value, later))
            return TRUE;
    }
    return FALSE;
}

// Which values are told, from the newest back, so that no reading is in two of them: of a place
// read twice forth and back both, and not what stood between. The caller frees.
static gboolean *told_of(const Trials *trials, const Trial *trial)
{
    gboolean *told = g_new0(gboolean, trial->values->len + 1);
    for (guint i = trial->values->len; i-- > 0;)
        told[i] = can_be_told(trials, trial, &g_array_index(trial->values, TrialValue, i)) &&
                  !is_superseded(trials, trial, told, i);
    return told;
}

static void tell_tight(const Trials *trials, Replay *replay, const Trial *trial)
{
    g_autofree gboolean *told = told_of(trials, trial);
    gboolean tightened = FALSE;
    for (guint i = 0; i < trial->values->len; i++) {
        const TrialValue *value = &g_array_index(trial->values, TrialValue, i);
        if (!told[i])
            continue;
        if (trial_place_misleads(trial, value->place)) {
            replay->doubted++;
            continue;
        }
        if (!tightened)
            setting_tightened(replay->adviser);
        tightened = TRUE;
        tell_value(trials, replay, value);
    }
    gboolean last = trial == trials_last(trials);
    replay->untold = last && trial->readings && !tightened && !replay->doubted;
    if (tightened && (trial->ended || (trial->fails && trial->read == 1)))
        setting_read_enough(replay->adviser);
}

// Tells all; `but_last`: only what came before the last move.
static Replay replay(const Trials *trials, SettingAdviser *adviser, gboolean but_last)
{
    Replay made = {.adviser = adviser};
    for (guint i = 0; i < trials->all->len; i++) {
        const Trial *trial = trials->all->pdata[i];
        gboolean last = i + 1 == trials->all->len;
        tell_before(trials, &made, trial, but_last && last);
        if (!(but_last && last))
            tell_tight(trials, &made, trial);
    }
    return made;
}

// ADVICE ----------------------------------------------------------------------------------------

// The places keep their distances to each other, whatever is moved.
static void expect_places(const Trials *trials, const SettingAdviser *adviser, NextMove *next)
{
    if (!next->banded)
        return;
    double first = setting_expected(adviser, 0).mean;
    next->places = g_array_new(FALSE, FALSE, sizeof(double));
    for (guint i = 0; i < trials->places; i++) {
        guint told = MIN(needed_before(trials, i), needed_before(trials, trials->places) - 1);
        double value = next->band.first.mean + setting_expected(adviser, told).mean - first;
        g_array_append_val(next->places, value);
    }
}

// The band of the move just made, by what was known before it.
static void band_of_last(const Trials *trials, const Number *graduation, const GArray *earlier,
                         NextMove *next)
{
    g_autoptr(SettingAdviser) before = adviser_for(trials, graduation, earlier);
    replay(trials, before, TRUE);
    SettingAdvice made = setting_advice(before);
    made.move = next->advice.to - made.to + made.move;
    made.to = next->advice.to;
    made.kind = SETTING_MOVE;
    next->banded = setting_band(before, &made, &next->band);
}

// What is expected is said as the gauge will show it.
static void show_as_read(const SettingAdviser *adviser, NextMove *next)
{
    SettingExpected *const all[] = {&next->advice.tightest, &next->advice.loosest,
                                    &next->band.first, &next->band.tightest, &next->band.loosest};
    for (gsize i = 0; i < (next->banded ? G_N_ELEMENTS(all) : 2); i++)
        *all[i] = setting_as_read(adviser, *all[i]);
}

// Whether a move names a place of several though the plan says one adjuster for all: then it seems
// that each has its own, and what one is moved by says nothing of the others.
static gboolean has_many_adjusters(const Trials *trials)
{
    for (guint i = 0; i < trials->all->len && trials->places > 1; i++) {
        const Trial *trial = trials->all->pdata[i];
        for (guint j = 0; j < trial->entries->len; j++) {
            const Entry *entry = trial->entries->pdata[j];
            if (strcmp(entry->kind->name, "move") == 0 && entry_list_length(entry, "place"))
                return TRUE;
        }
    }
    return FALSE;
}

static NextMoveMute mute_of(const Trials *trials)
{
    if (!has_one_aim(trials))
        return NEXT_MOVE_MANY_AIMS;
    return has_many_adjusters(trials) ? NEXT_MOVE_MANY_ADJUSTERS : NEXT_MOVE_SPEAKS;
}

// What an adviser that is told all has learned; without one where it cannot advise.
static NextMove learn(const Trials *trials, const GArray *earlier, SettingAdviser **adviser)
{
    static const double mostly = 0.9; // of what is not known of the slope before anything is read
    NextMove next = {.graduation = graduation_of(trials), .mute = mute_of(trials)};
    // Where a move was typed wrong, where it stands is asked for first.
    *adviser =
        trials_mistyped(trials) || next.mute ? NULL : adviser_for(trials, next.graduation, earlier);
    if (!*adviser)
        return next;
    double unmoved = setting_learned(*adviser).ln_slope_sd;
    Replay made = replay(trials, *adviser, FALSE);
    next.known = !made.untold;
    next.told = made.told;
    next.tight = made.tight;
    next.doubted = made.doubted;
    next.earlier = earlier ? earlier->len : 0;
    next.learned = setting_learned(*adviser);
    next.answered = next.learned.ln_slope_sd < mostly * unmoved;
    return next;
}

NextMove next_move_of(const Trials *trials, const GArray *earlier)
{
    g_autoptr(SettingAdviser) adviser = NULL;
    NextMove next = learn(trials, earlier, &adviser);
    if (!adviser)
        return next;
    const Trial *last = trials_last(trials);
    gboolean wrong_gauge = last && has_wrong_tool(trials, last);
    next_move_aim(trials, &next.loosest);
    next.advice = setting_advice(adviser);
    next.advice.kind = next_move_kind(trials, next.advice.kind, wrong_gauge);
    if (next.advice.kind == SETTING_MOVE)
        next.banded = setting_band(adviser, &next.advice, &next.band);
    else if (next.advice.kind == SETTING_READ_LOOSE && last && last->move && next.told)
        band_of_last(trials, next.graduation, earlier, &next);
    expect_places(trials, adviser, &next);
    show_as_read(adviser, &next);
    return next;
}

SettingFinding next_move_finding(const Trials *trials, const GArray *earlier, guint place,
                                 double value)
{
    g_autoptr(Number) graduation = graduation_of(trials);
    g_autoptr(SettingAdviser) adviser = adviser_for(trials, graduation, earlier);
    replay(trials, adviser, FALSE);
    return setting_read(adviser, needed_before(trials, place), value, FALSE);
}

gboolean next_move_moves(const NextMove *next)
{
    return next->known &&
           (next->advice.kind == SETTING_MOVE || next->advice.kind == SETTING_MOVE_DIRECTION);
}

gboolean next_move_teaches(const Trials *trials, SettingLearned *learned)
{
    g_autoptr(SettingAdviser) adviser = NULL;
    g_auto(NextMove) next = learn(trials, NULL, &adviser);
    *learned = next.learned;
    return next.tight > 0 && next.answered;
}
