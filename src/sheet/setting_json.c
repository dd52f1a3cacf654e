#include <standbook/sheet/setting_sheet.h>
#include <string.h>

static json_t *text_json(char *text)
{
    json_t *json = text && *text ? json_string(text) : json_null();
    g_free(text);
    return json;
}

static json_t *number_json(const Number *number)
{
    return text_json(number ? number_text(number) : NULL);
}

// In the unit of the check.
static json_t *value_json(const Trials *trials, const Number *value)
{
    const Unit *unit = trials->check->unit;
    g_autoptr(Number) shown = value ? unit_from_base(unit, value) : NULL;
    return number_json(shown);
}

// In the unit of the moves, a position or (`by`) how far.
static json_t *move_json(const Trials *trials, const Number *number, gboolean by)
{
    const Unit *unit = trials->check->setting->unit;
    if (!number || !unit)
        return number_json(number);
    g_autoptr(Number) shown =
        by ? unit_width_from_base(unit, number) : unit_from_base(unit, number);
    return number_json(shown);
}

// TRIES -----------------------------------------------------------------------------------------

static json_t *tight_json(const Trials *trials, const Trial *trial)
{
    json_t *tight = json_object();
    for (guint i = 0; i < trials->places; i++) {
        const Requirement *made = trial->places[i].made;
        if (made && made->value)
            json_object_set_new(tight, made->place, value_json(trials, made->value));
    }
    return tight;
}

static json_t *line_tight_json(const Trials *trials, const TrialLine *line)
{
    json_t *tight = json_object();
    for (guint i = 0; line->tight && i < trials->places; i++)
        if (line->tight[i])
            json_object_set_new(tight, trials->made[i]->place,
                                value_json(trials, line->tight[i]->value));
    return tight;
}

static json_t *before_json(const Trials *trials, const TrialLine *line)
{
    const char *place = line->loose ? trials->made[line->loose->place]->place : NULL;
    json_t *json = json_object();
    json_object_set_new(json, "moved", move_json(trials, line->position, FALSE));
    json_object_set_new(json, "loose", value_json(trials, line->loose ? line->loose->value : NULL));
    json_object_set_new(json, "place", text_json(g_strdup(place)));
    json_object_set_new(json, "tight", line_tight_json(trials, line));
    return json;
}

static json_t *struck_json(const Trials *trials, const TrialStruck *struck)
{
    gboolean read = strcmp(struck->entry->kind->name, "read") == 0;
    const Requirement *made = read ? trials->inputs[struck->input] : NULL;
    const char *state = read ? entry_text(struck->entry, "state") : NULL;
    json_t *json = json_object();
    json_object_set_new(json, "struck", json_string(struck->cause));
    json_object_set_new(json, "entry", json_integer(struck->entry->seq));
    json_object_set_new(json, "kind", json_string(struck->entry->kind->name));
    json_object_set_new(json, "state", text_json(g_strdup(read && !state ? "tightened" : state)));
    json_object_set_new(json, "place", text_json(made ? g_strdup(made->place) : NULL));
    json_object_set_new(json, "typed", text_json(trial_struck_typed(struck)));
    return json;
}

// How it stood before, what was read again and what was struck, in the order of entry.
static json_t *before_list_json(const Trials *trials, const Trial *trial)
{
    json_t *list = json_array();
    g_autoptr(GArray) lines = trial_lines(trials, trial);
    for (guint i = 0; i < lines->len; i++) {
        const TrialLine *line = &g_array_index(lines, TrialLine, i);
        if (line->kind != TRIAL_STANDS)
            json_array_append_new(list, line->struck ? struck_json(trials, line->struck)
                                                     : before_json(trials, line));
    }
    return list;
}

static json_t *try_json(const Trials *trials, const Trial *trial)
{
    json_t *json = json_object();
    json_object_set_new(json, "try", json_integer(trial->number));
    json_object_set_new(json, "moved", move_json(trials, trial->position, FALSE));
    json_object_set_new(json, "loose", value_json(trials, trial->loose_value));
    json_object_set_new(json, "before", before_list_json(trials, trial));
    json_object_set_new(json, "tight", tight_json(trials, trial));
    json_object_set_new(json, "verdict", json_string(verdict_words(trial->verdict)));
    json_object_set_new(json, "reason", text_json(g_strdup(reason_words(trial->reason))));
    return json;
}

static json_t *tries_json(const Trials *trials)
{
    json_t *list = json_array();
    for (guint i = 0; i < trials->all->len; i++)
        json_array_append_new(list, try_json(trials, trials->all->pdata[i]));
    return list;
}

// ADVICE ----------------------------------------------------------------------------------------

static const char *kind_word(const NextMove *next)
{
    static const char *const words[] = {
        [SETTING_READ_LOOSE] = "read loose",
        [SETTING_READ_TIGHT] = "read tight",
        [SETTING_MOVE] = "move",
        [SETTING_MOVE_DIRECTION] = "direction",
        [SETTING_TIGHTEN] = "tighten",
        [SETTING_READ_AGAIN] = "read again",
        [SETTING_LEAVE] = "leave",
        [SETTING_STOP] = "stop",
    };
    return next->known && next->told ? words[next->advice.kind] : "none";
}

static json_t *findings_json(const SettingAdvice *advice)
{
    static const char *const words[SETTING_FINDINGS] = {
        [SETTING_SLIP] = "slip",           [SETTING_SHIFT] = "shift",
        [SETTING_PLACE] = "place",         [SETTING_WRONG_WAY] = "wrong way",
        [SETTING_SLOPE_OFF] = "slope off", [SETTING_CANNOT] = "cannot",
        [SETTING_COARSE] = "coarse",       [SETTING_OUT_OF_REACH] = "out of reach",
        [SETTING_TOO_MANY] = "too many",
    };
    json_t *list = json_array();
    for (guint i = 0; i < advice->finding_count; i++)
        if (words[advice->findings[i].kind])
            json_array_append_new(list, json_string(words[advice->findings[i].kind]));
    return list;
}

static void put_shown(json_t *object, const char *key, const Trials *trials, const NextMove *next,
                      double value)
{
    g_autoptr(Number) shown = next_move_shown(next, value);
    json_object_set_new(object, key, value_json(trials, shown));
}

static json_t *band_json(const Trials *trials, const NextMove *next)
{
    if (!next->banded)
        return json_null();
    json_t *band = json_object();
    put_shown(band, "from", trials, next, next->band.from);
    put_shown(band, "to", trials, next, next->band.to);
    return band;
}

static json_t *expect_json(const Trials *trials, const NextMove *next)
{
    const SettingExpected *expected = next->banded ? &next->band.tightest : &next->advice.tightest;
    json_t *expect = json_object();
    put_shown(expect, "mean", trials, next, expected->mean);
    put_shown(expect, "from", trials, next, expected->from);
    put_shown(expect, "to", trials, next, expected->to);
    return expect;
}

static json_t *sentences_json(const Trials *trials, const NextMove *next, const TrialNext *asked)
{
    g_auto(Advice) advice = advice_of(trials, next, asked);
    json_t *list = json_array();
    for (guint i = 0; i < advice.sentences->len; i++)
        json_array_append_new(list, json_string(advice.sentences->pdata[i]));
    return list;
}

static json_t *advice_json(const Trials *trials, const NextMove *next, const TrialNext *asked)
{
    gboolean says = next->known && next->told, moves = says && next_move_moves(next);
    g_autoptr(Number) by = moves ? next_move_by(trials, next) : NULL;
    g_autoptr(Number) to = moves ? next_move_position(trials, next) : NULL;
    json_t *json = json_object();
    json_object_set_new(json, "kind", json_string(kind_word(next)));
    json_object_set_new(json, "move", move_json(trials, by, TRUE));
    json_object_set_new(json, "to", move_json(trials, to, FALSE));
    json_object_set_new(json, "unit", text_json(g_strdup(trials->check->setting->unit_text)));
    json_object_set_new(json, "tighten", says ? band_json(trials, next) : json_null());
    json_object_set_new(json, "expect", says ? expect_json(trials, next) : json_null());
    json_object_set_new(json, "chance", says ? json_real(next->advice.chance) : json_null());
    json_object_set_new(json, "findings", says ? findings_json(&next->advice) : json_array());
    json_object_set_new(json, "sentences", sentences_json(trials, next, asked));
    json_object_set_new(json, "earlier", json_integer(next->earlier));
    return json;
}

json_t *setting_json(const Trials *trials, const NextMove *next)
{
    static const char *const asks[] = {[TRIAL_DONE] = "done",
                                       [TRIAL_LOOSE] = "loose",
                                       [TRIAL_TIGHTEN] = "tighten",
                                       [TRIAL_TIGHT] = "tight"};
    static const char *const moves[] = {
        [TRIAL_FURTHER] = "move", [TRIAL_STAY] = "tighten", [TRIAL_STOP] = "stop"};
    TrialNext asked = next_move_ask(next, trials, trials_next(trials, FALSE));
    gboolean reads = asked.ask == TRIAL_LOOSE || asked.ask == TRIAL_TIGHT;
    const Requirement *made = reads ? trials->inputs[asked.input] : NULL;
    json_t *json = json_object();
    json_object_set_new(json, "check", json_string(trials->check->name));
    json_object_set_new(json, "set",
                        text_json(trials->labels ? g_strdup(trials->made[0]->place) : NULL));
    json_object_set_new(json, "step", json_string(trials->step->name));
    json_object_set_new(json, "tries", tries_json(trials));
    json_object_set_new(json, "asks",
                        json_string(asked.ask == TRIAL_MOVE ? moves[asked.move] : asks[asked.ask]));
    json_object_set_new(json, "reads", made ? json_string(made->check->name) : json_null());
    json_object_set_new(json, "place", text_json(made ? g_strdup(made->place) : NULL));
    json_object_set_new(json, "advice", advice_json(trials, next, &asked));
    return json;
}
