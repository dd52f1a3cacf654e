#include <standbook/sheet/assessment_json.h>

#include <standbook/sheet/figures.h>

static json_t *number_json(const Number *number)
{
    g_autofree char *text = number ? number_text(number) : NULL;
    return text ? json_string(text) : json_null();
}

static void set_text(json_t *object, const char *key, char *text)
{
    json_object_set_new(object, key, text && *text ? json_string(text) : json_null());
    g_free(text);
}

static json_t *counts_json(const guint counts[VERDICTS])
{
    json_t *all = json_object();
    for (guint i = 0; i < VERDICTS; i++)
        json_object_set_new(all, verdict_words((Verdict)i), json_integer(counts[i]));
    return all;
}

// What stands otherwise than its seal recorded, by verdict; those of nought left out.
static json_t *turned_json(const GateCount *gate)
{
    json_t *all = json_object();
    for (guint i = 0; i < VERDICTS; i++)
        if (gate->turned[i])
            json_object_set_new(all, verdict_words((Verdict)i), json_integer(gate->turned[i]));
    return all;
}

static json_t *gates_json(const Assessment *assessment)
{
    json_t *list = json_array();
    for (guint i = 0; i < assessment->gates->len; i++) {
        const GateCount *gate = g_ptr_array_index(assessment->gates, i);
        json_array_append_new(list, json_pack("{s:s,s:i,s:o,s:I,s:i,s:o}", "gate", gate->name, "left",
                                              (int)gate->left, "counts", counts_json(gate->counts),
                                              "sealed", (json_int_t)gate->sealed, "since",
                                              (int)gate->since, "turned", turned_json(gate)));
    }
    return list;
}

// Which tool is the reason of a doubt, standing or upheld.
static json_t *tool_json(const ToolCause *tool)
{
    return tool->state == TOOL_GOOD
               ? json_null()
               : json_pack("{s:s,s:I,s:I}", "state", tool_state_words(tool->state), "used",
                           (json_int_t)tool->use, "entry", (json_int_t)tool->entry);
}

static void put_judgement(json_t *object, const Requirement *requirement)
{
    json_object_set_new(object, "verdict", json_string(verdict_words(requirement->verdict)));
    json_object_set_new(object, "reason", json_string(reason_words(requirement->reason)));
    json_object_set_new(object, "own verdict",
                        json_string(verdict_words(requirement->own_verdict)));
    json_object_set_new(object, "own reason", json_string(reason_words(requirement->own_reason)));
    json_t *doubts = json_array();
    for (guint reason = 1; reason < REASONS; reason++)
        if (requirement->doubts & reason_bit((Reason)reason))
            json_array_append_new(doubts, json_string(reason_words((Reason)reason)));
    json_object_set_new(object, "doubts", doubts);
    json_object_set_new(object, "tool", tool_json(&requirement->tool));
}

static void put_figures(json_t *object, const Requirement *requirement)
{
    json_object_set_new(object, "value", number_json(requirement->value));
    set_text(object, "shown", figure_value(requirement));
    set_text(object, "unit", g_strdup(figure_unit(requirement)));
    json_object_set_new(object, "lower", number_json(requirement->lower));
    json_object_set_new(object, "upper", number_json(requirement->upper));
    json_object_set_new(object, "wear", number_json(requirement->wear));
    set_text(object, "limits", figure_limits(requirement));
    json_object_set_new(object, "variance", number_json(requirement->variance));
    set_text(object, "doubt", figure_doubt(requirement));
    set_text(object, "answer", g_strdup(requirement->answer));
}

static void put_entries(json_t *object, const Requirement *requirement)
{
    const struct {
        const char *key;
        gint64 seq;
    } entries[] = {{"entry", requirement->entry},
                   {"conceded", requirement->conceded},
                   {"upheld", requirement->upheld},
                   {"amended", requirement->amended},
                   {"decided", requirement->decided}};
    for (gsize i = 0; i < G_N_ELEMENTS(entries); i++)
        json_object_set_new(object, entries[i].key, json_integer(entries[i].seq));
    const struct {
        const char *key;
        gboolean is;
    } flags[] = {{"by plan", requirement_is_by_plan(requirement)},
                 {"optional", requirement->optional},
                 {"finding", requirement->finding},
                 {"withdrawn", requirement->withdrawn},
                 {"added", requirement->added}};
    for (gsize i = 0; i < G_N_ELEMENTS(flags); i++)
        json_object_set_new(object, flags[i].key, json_boolean(flags[i].is));
    json_t *notes = json_array();
    for (guint i = 0; i < requirement->notes->len; i++)
        json_array_append_new(notes, json_string(g_ptr_array_index(requirement->notes, i)));
    json_object_set_new(object, "notes", notes);
}

static json_t *requirement_json(const Plan *plan, const Requirement *requirement)
{
    g_autofree char *name = requirement_name(requirement);
    const char *gate = g_ptr_array_index(plan->gates, requirement->gate);
    json_t *object = json_pack("{s:s,s:s,s:s,s:s,s:i,s:s,s:s}", "name", name, "asked",
                               asked_words(requirement->asked), "of", requirement->name, "place",
                               requirement->place, "stage", (int)requirement->stage, "step",
                               requirement->step->name, "gate", gate);
    put_judgement(object, requirement);
    put_figures(object, requirement);
    put_entries(object, requirement);
    return object;
}

json_t *assessment_json(const Plan *plan, const Assessment *assessment)
{
    json_t *list = json_array();
    for (guint i = 0; i < assessment->requirements->len; i++)
        json_array_append_new(
            list, requirement_json(plan, g_ptr_array_index(assessment->requirements, i)));
    return json_pack("{s:I,s:i,s:i,s:i,s:o,s:o,s:o}", "upto", (json_int_t)assessment->upto,
                     "planned", (int)assessment->planned, "added", (int)assessment->added,
                     "withdrawn", (int)assessment->withdrawn, "counts",
                     counts_json(assessment->counts), "gates", gates_json(assessment),
                     "requirements", list);
}
