#include <standbook/work/entry_words.h>

#include <standbook/value/reading.h>
#include <standbook/value/unit.h>

#include <string.h>

static void put(GString *out, const char *before, const char *text)
{
    if (text)
        g_string_append_printf(out, "%s%s", before, text);
}

// In quotes, as a line has it: a quote within them stands twice.
static void put_in_quotes(GString *out, const char *text)
{
    g_auto(GStrv) parts = g_strsplit(text, "\"", -1);
    g_autofree char *twice = g_strjoinv("\"\"", parts);
    g_string_append_printf(out, " \"%s\"", twice);
}

static void put_quoted(GString *out, const Entry *entry, const char *field)
{
    const char *text = entry_text(entry, field);
    if (text)
        put_in_quotes(out, text);
}

// Whether what was typed ends with a unit, however that is spelled: `2 ft-lb`.
static gboolean has_unit(const char *typed)
{
    gsize front = strcspn(typed, "0123456789."), length = 0, offset = 0;
    if (!reading_span(typed + front, &length, &offset, NULL))
        return FALSE;
    const char *rest = typed + front + length;
    g_autoptr(Unit) unit = unit_parse(rest + strspn(rest, " "), NULL);
    return unit != NULL;
}

char *value_words(const json_t *value)
{
    const char *typed = json_string_value(json_object_get(value, "typed"));
    const char *unit = json_string_value(json_object_get(value, "unit"));
    if (!typed)
        return g_strdup("");
    gboolean said = !unit || !*unit || g_str_has_suffix(typed, unit) || has_unit(typed);
    return g_strconcat(typed, said || strcmp(unit, "°") == 0 ? "" : " ", said ? "" : unit, NULL);
}

static void put_json_value(GString *out, const char *before, const json_t *value)
{
    g_autofree char *words = value_words(value);
    if (*words)
        put(out, before, words);
}

static void put_value(GString *out, const char *before, const Entry *entry, const char *field)
{
    put_json_value(out, before, json_object_get(entry->body, field));
}

static void put_list(GString *out, const Entry *entry, const char *field)
{
    gsize count = entry_list_length(entry, field);
    for (gsize i = 0; i < count; i++)
        g_string_append_printf(out, "%s%s", i == 0 ? "[" : ", ", entry_list_item(entry, field, i));
    if (count)
        g_string_append_c(out, ']');
}

static void put_target(GString *out, const Entry *entry, const char *name)
{
    put(out, " ", entry_text(entry, name));
    put_list(out, entry, "place");
}

static void put_step(GString *out, const Entry *entry)
{
    put(out, " in ", entry_text(entry, "step"));
}

static void put_tool(GString *out, const Taken *taken, const Entry *entry)
{
    put(out, " with ", taken_tool(taken, entry_text(entry, "tool")));
}

typedef void (*Words)(GString *out, const Taken *taken, const Entry *entry);

static void read_words(GString *out, const Taken *taken, const Entry *entry)
{
    put_target(out, entry, "check");
    put_value(out, " ", entry, "value");
    const char *state = entry_text(entry, "state");
    if (state && strcmp(state, "loose") == 0)
        put(out, " ", state);
    put_tool(out, taken, entry);
}

static void look_words(GString *out, const Taken *taken, const Entry *entry)
{
    (void)taken;
    put_target(out, entry, "check");
    put(out, " ", entry_text(entry, "answer"));
}

static void choose_words(GString *out, const Taken *taken, const Entry *entry)
{
    (void)taken;
    put_target(out, entry, "check");
    put(out, " ", entry_text(entry, "label"));
}

static void claim_words(GString *out, const Taken *taken, const Entry *entry)
{
    (void)taken;
    put_target(out, entry, "check");
    put_value(out, " ", entry, "value");
    put_value(out, " ± ", entry, "doubt");
    put(out, " by ", entry_text(entry, "certificate"));
}

static void tick_words(GString *out, const Taken *taken, const Entry *entry)
{
    put(out, " ", entry_text(entry, "tightening"));
    put_list(out, entry, "bolts");
    g_string_append_printf(out, " stage %" G_GINT64_FORMAT, entry_number(entry, "stage"));
    put_value(out, " ", entry, "value");
    put_step(out, entry);
    put_tool(out, taken, entry);
    put(out, " adapter ", entry_text(entry, "adapter"));
}

static void slacken_words(GString *out, const Taken *taken, const Entry *entry)
{
    (void)taken;
    put(out, " ", entry_text(entry, "tightening"));
    put_list(out, entry, "bolts");
    put_value(out, " ", entry, "turn");
    put_quoted(out, entry, "why");
}

static void waited_words(GString *out, const Taken *taken, const Entry *entry)
{
    (void)taken;
    put(out, " ", entry_text(entry, "tightening"));
    g_string_append_printf(out, " stage %" G_GINT64_FORMAT, entry_number(entry, "stage"));
}

static void move_words(GString *out, const Taken *taken, const Entry *entry)
{
    (void)taken;
    put_target(out, entry, "check");
    put_value(out, " by ", entry, "moved");
    put_value(out, " to ", entry, "to");
}

static void fit_words(GString *out, const Taken *taken, const Entry *entry)
{
    const char *lot = taken_text(taken, "lot", entry_text(entry, "lot"), "label");
    put_target(out, entry, "part");
    put(out, " serial ", entry_text(entry, "serial"));
    put(out, " lot ", lot ? lot : entry_text(entry, "label"));
    if (entry_number(entry, "count") > 0)
        g_string_append_printf(out, " count %" G_GINT64_FORMAT, entry_number(entry, "count"));
    put(out, " ", entry_text(entry, "use"));
    put_quoted(out, entry, "evidence");
}

static void rework_words(GString *out, const Taken *taken, const Entry *entry)
{
    (void)taken;
    put_target(out, entry, "name");
    put_quoted(out, entry, "work");
    put(out, " at ", entry_text(entry, "where"));
}

static void laid_words(GString *out, const Taken *taken, const Entry *entry)
{
    (void)taken;
    put(out, " ", entry_text(entry, "consumable"));
    put(out, " on ", entry_text(entry, "tightening"));
    put(out, " lot ", entry_text(entry, "lot"));
    put(out, " expires ", entry_text(entry, "expires"));
}

// The word by which people know what was taken.
static const char *known_as(const json_t *body)
{
    static const char *const fields[] = {"label", "number", "initials", "serial",
                                         "name",  "part",   "found",    "why"};
    for (gsize i = 0; i < G_N_ELEMENTS(fields); i++) {
        const char *text = json_string_value(json_object_get(body, fields[i]));
        if (text)
            return text;
    }
    return NULL;
}

static const char *text_of(const json_t *body, const char *field)
{
    return json_string_value(json_object_get(body, field));
}

// One word as it is, else in quotes.
static void put_word(GString *out, const char *before, const char *text)
{
    if (!text)
        return;
    g_string_append(out, before);
    if (text[strcspn(text, " \t[]\",#")])
        put_in_quotes(out, text);
    else
        g_string_append_printf(out, " %s", text);
}

// From its day on, in the order of standbook-log(5), so that it can be typed as a line.
static void put_calibration(GString *out, const json_t *body)
{
    const json_t *gave = json_object_get(body, "gave");
    put(out, " ", text_of(body, "date"));
    put(out, " due ", text_of(body, "due"));
    put_word(out, " certificate", text_of(body, "certificate"));
    put(out, " ", text_of(body, "found"));
    if (text_of(body, "note"))
        put_in_quotes(out, text_of(body, "note"));
    put_json_value(out, " U ", json_object_get(body, "uncertainty"));
    put_json_value(out, " repeats ", json_object_get(body, "repeat"));
    for (gsize i = 0; i < json_array_size(gave); i++)
        put(out, i ? ", " : " gave ", json_string_value(json_array_get(gave, i)));
}

// `lot FB-9 of rod bolts "maker's letter: heads crack"`: what is not to be trusted, and why.
static void put_recall(GString *out, const Taken *taken, const json_t *body)
{
    const char *lot = text_of(body, "lot");
    put(out, " lot ", taken_text(taken, "lot", lot, "label"));
    put(out, " of ", taken_text(taken, "lot", lot, "part"));
    if (text_of(body, "why"))
        put_in_quotes(out, text_of(body, "why"));
    put(out, " from ", text_of(body, "from"));
}

static void recall_words(GString *out, const Taken *taken, const Entry *entry)
{
    put_recall(out, taken, entry->body);
}

static void taken_words(GString *out, const Taken *taken, const Entry *entry)
{
    const json_t *body = json_object_get(entry->body, "body");
    const char *what = entry_text(entry, "what"), *note = text_of(body, "note");
    put(out, " ", what);
    put(out, " of ", taken_tool(taken, text_of(body, "tool")));
    if (g_strcmp0(what, "calibration") == 0) {
        put_calibration(out, body);
        return;
    }
    if (g_strcmp0(what, "recall") == 0) {
        put_recall(out, taken, body);
        return;
    }
    put(out, " ", text_of(body, "date"));
    put(out, " ", known_as(body));
    put(out, " certificate ", text_of(body, "certificate"));
    if (note)
        put_in_quotes(out, note);
}

static void strike_words(GString *out, const Taken *taken, const Entry *entry)
{
    (void)taken;
    g_string_append_printf(out, " #%" G_GINT64_FORMAT " %s", entry_number(entry, "entry"),
                           entry_text(entry, "cause"));
}

static void asked_target(GString *out, const Entry *entry)
{
    put_target(out, entry, "name");
    put_step(out, entry);
    if (entry_number(entry, "stage") > 0)
        g_string_append_printf(out, " stage %" G_GINT64_FORMAT, entry_number(entry, "stage"));
}

static void concede_words(GString *out, const Taken *taken, const Entry *entry)
{
    (void)taken;
    asked_target(out, entry);
    put_value(out, " to ", entry, "bound");
    put_quoted(out, entry, "why");
    put(out, " ", entry_text(entry, "who"));
    put(out, " ", entry_text(entry, "how"));
}

static void uphold_words(GString *out, const Taken *taken, const Entry *entry)
{
    asked_target(out, entry);
    put(out, " ", entry_text(entry, "doubt"));
    put_quoted(out, entry, "why");
    put(out, " second ", taken_initials(taken, entry_text(entry, "second")));
}

static void decide_words(GString *out, const Taken *taken, const Entry *entry)
{
    (void)taken;
    put_target(out, entry, "check");
    put(out, " ", entry_text(entry, "decision"));
    put_quoted(out, entry, "why");
    put(out, " customer ", entry_text(entry, "consent"));
}

static void add_words(GString *out, const Taken *taken, const Entry *entry)
{
    (void)taken;
    put(out, " ", entry_text(entry, "what"));
    put_target(out, entry, "name");
    put_step(out, entry);
    put(out, ": ", entry_text(entry, "definition"));
    put_quoted(out, entry, "why");
}

static void amend_words(GString *out, const Taken *taken, const Entry *entry)
{
    (void)taken;
    put_target(out, entry, "check");
    put(out, " limits ", entry_text(entry, "limits"));
    put(out, " wear ", entry_text(entry, "wear"));
    put_quoted(out, entry, "why");
    if (entry_text(entry, "source"))
        put(out, "", " source");
    put_quoted(out, entry, "source");
}

static void asked_words_of(GString *out, const Taken *taken, const Entry *entry)
{
    (void)taken;
    asked_target(out, entry);
    put_quoted(out, entry, "why");
}

static void step_words(GString *out, const Taken *taken, const Entry *entry)
{
    (void)taken;
    put(out, " ", entry_text(entry, "step"));
    put_quoted(out, entry, "why");
    put_quoted(out, entry, "caution");
    put_quoted(out, entry, "statement");
}

static void seal_words(GString *out, const Taken *taken, const Entry *entry)
{
    (void)taken;
    put(out, " ", entry_text(entry, "gate"));
    if (entry_number(entry, "supplement") > 0)
        g_string_append_printf(out, ", supplement %" G_GINT64_FORMAT,
                               entry_number(entry, "supplement"));
    g_string_append_printf(out, ", covers entries 1 to %" G_GINT64_FORMAT,
                           entry_number(entry, "covers"));
}

static void remark_words(GString *out, const Taken *taken, const Entry *entry)
{
    (void)taken;
    const char *about = entry_text(entry, "about");
    put(out, " on ", about ? about : entry_text(entry, "step"));
    put_list(out, entry, "place");
    put_quoted(out, entry, "text");
    put_quoted(out, entry, "name");
}

static void cost_words(GString *out, const Taken *taken, const Entry *entry)
{
    (void)taken;
    put_quoted(out, entry, "what");
    put_value(out, " ", entry, "amount");
}

// `G03 at 90.000 mm in G02`.
static void zero_words(GString *out, const Taken *taken, const Entry *entry)
{
    const char *tool = taken_tool(taken, entry_text(entry, "tool"));
    put(out, " ", tool);
    put_value(out, " at ", entry, "value");
    put(out, " in ", entry_text(entry, "master"));
}

// The tool's label only where that is known: an id is no word of a line.
static void calibration_words(GString *out, const Taken *taken, const Entry *entry)
{
    put(out, " ", taken_text(taken, "tool", entry_text(entry, "tool"), "label"));
    put_calibration(out, entry->body);
}

// `tool G05 scrapped "spindle bent"`, as standbook-log(5) has it where the label is known.
static void use_words(GString *out, const Taken *taken, const Entry *entry)
{
    const char *what = entry_text(entry, "what");
    put(out, " ", what);
    put(out, " ",
        taken_text(taken, what, entry_text(entry, "id"),
                   g_strcmp0(what, "consumable") == 0 ? "lot" : "label"));
    put(out, " ", entry_text(entry, "how"));
    if (entry_text(entry, "why"))
        put_in_quotes(out, entry_text(entry, "why"));
}

// A kind without its own row says its fields of one word in their order; so every kind is told.
static const struct {
    const char *kind;
    const char *verb; // as in standbook-log(5), NULL where it is the kind's name
    Words words;
} table[] = {
    {"read", NULL, read_words},
    {"look", NULL, look_words},
    {"choose", NULL, choose_words},
    {"claim", NULL, claim_words},
    {"tick", "tighten", tick_words},
    {"waited", NULL, waited_words},
    {"zero", NULL, zero_words},
    {"slacken", NULL, slacken_words},
    {"move", NULL, move_words},
    {"fit", NULL, fit_words},
    {"rework", NULL, rework_words},
    {"laid", "lay", laid_words},
    {"take", NULL, taken_words},
    {"news", NULL, taken_words},
    {"strike", NULL, strike_words},
    {"concede", NULL, concede_words},
    {"uphold", NULL, uphold_words},
    {"decide", NULL, decide_words},
    {"add", NULL, add_words},
    {"amend", NULL, amend_words},
    {"withdraw", NULL, asked_words_of},
    {"not needed", NULL, asked_words_of},
    {"sign", NULL, step_words},
    {"reopen", NULL, step_words},
    {"close", NULL, step_words},
    {"caution passed", NULL, step_words},
    {"put down", NULL, step_words},
    {"pick up", NULL, step_words},
    {"seal", NULL, seal_words},
    {"note", NULL, remark_words},
    {"photo", NULL, remark_words},
    {"cost", NULL, cost_words},
    {"calibration", NULL, calibration_words},
    {"recall", NULL, recall_words},
    {"out of use", NULL, use_words},
    {"back in use", NULL, use_words},
};

static void field_words(GString *out, const Entry *entry)
{
    for (const Field *field = entry->kind->fields; field->name; field++) {
        if (field->type == FIELD_TEXT || field->type == FIELD_CHOICE || field->type == FIELD_DATE)
            put(out, " ", entry_text(entry, field->name));
        else if (field->type == FIELD_VALUE)
            put_value(out, " ", entry, field->name);
    }
}

char *entry_words(const Taken *taken, const Entry *entry)
{
    GString *out = g_string_new(NULL);
    for (gsize i = 0; i < G_N_ELEMENTS(table); i++) {
        if (strcmp(table[i].kind, entry->kind->name) != 0)
            continue;
        g_string_append(out, table[i].verb ? table[i].verb : table[i].kind);
        table[i].words(out, taken, entry);
    }
    if (out->len == 0) {
        g_string_append(out, entry->kind->name);
        field_words(out, entry);
        return g_string_free(out, FALSE);
    }
    gboolean said = strcmp(entry->kind->name, "calibration") == 0; // in its place
    if (!said && kind_field(entry->kind, "note") && entry_text(entry, "note"))
        g_string_append_printf(out, " (%s)", entry_text(entry, "note"));
    return g_string_free(out, FALSE);
}

char *entry_when(const Entry *entry)
{
    const char *moment = entry_done(entry);
    g_autofree char *day = g_strndup(moment, 10);
    return strlen(moment) < 16 ? g_strdup(moment) : g_strdup_printf("%s %.5s", day, moment + 11);
}
