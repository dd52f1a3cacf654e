// One line: when and who, the verb, its endings; and what it comes to, numbered.
#include "take.h"

#include <standbook/base/error.h>
#include <standbook/base/text.h>
#include <standbook/record/live.h>
#include <string.h>

static void carry_clear(LineCarry *carry)
{
    g_free(carry->date);
    g_free(carry->time);
    g_free(carry->by);
}

static LineCarry carry_copy(const LineCarry *carry)
{
    return (LineCarry){g_strdup(carry->date), g_strdup(carry->time), g_strdup(carry->by)};
}

static void name_free(gpointer data)
{
    LineName *name = data;
    g_free(name->id);
    g_free(name->name);
    g_free(name);
}

// TAKER -----------------------------------------------------------------------------------------

static void names_clear(PlanNames *names)
{
    g_ptr_array_unref(names->checks);
    g_ptr_array_unref(names->groups);
    g_ptr_array_unref(names->parts);
    g_ptr_array_unref(names->steps);
    g_ptr_array_unref(names->consumables);
}

static PlanNames names_of(const Plan *plan)
{
    PlanNames names = {g_ptr_array_new(), g_ptr_array_new(), g_ptr_array_new(), g_ptr_array_new(),
                       g_ptr_array_new()};
    for (guint i = 0; plan && i < plan->steps->len; i++) {
        const PlanStep *step = g_ptr_array_index(plan->steps, i);
        g_ptr_array_add(names.steps, (gpointer)step->name);
        for (guint j = 0; j < step->checks->len; j++)
            g_ptr_array_add(names.checks, (gpointer)((PlanCheck *)step->checks->pdata[j])->name);
        for (guint j = 0; j < step->parts->len; j++)
            g_ptr_array_add(names.parts, (gpointer)((PlanPart *)step->parts->pdata[j])->name);
        for (guint j = 0; j < step->tightenings->len; j++) {
            const PlanTightening *tightening = step->tightenings->pdata[j];
            if (!tightening->again)
                g_ptr_array_add(names.groups, (gpointer)tightening->group->name);
        }
    }
    for (guint i = 0; plan && i < plan->consumables->len; i++)
        g_ptr_array_add(names.consumables,
                        (gpointer)((PlanConsumable *)plan->consumables->pdata[i])->name);
    return names;
}

LineTaker *line_taker_new(const Plan *plan, Shop *shop, const char *shop_ledger, const char *build,
                          const LineHelp *help)
{
    LineTaker *taker = g_new0(LineTaker, 1);
    taker->plan = plan;
    taker->names = names_of(plan);
    taker->shop = shop;
    taker->shop_ledger = g_strdup(shop_ledger);
    taker->build = g_strdup(build);
    taker->help = *help;
    taker->entries = g_ptr_array_new_with_free_func((GDestroyNotify)entry_free);
    taker->known = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
    taker->told = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, g_free);
    return taker;
}

void line_taker_free(LineTaker *taker)
{
    if (!taker)
        return;
    carry_clear(&taker->carry);
    names_clear(&taker->names);
    g_hash_table_unref(taker->known);
    g_hash_table_unref(taker->told);
    g_ptr_array_unref(taker->entries);
    g_free(taker->shop_ledger);
    g_free(taker->build);
    g_free(taker);
}

void line_taker_set_plan(LineTaker *taker, const Plan *plan)
{
    names_clear(&taker->names);
    taker->plan = plan;
    taker->names = names_of(plan);
}

void line_taker_trust_times(LineTaker *taker, gboolean trust)
{
    taker->trust_times = trust;
}

const GPtrArray *line_taker_entries(const LineTaker *taker)
{
    return taker->entries;
}

char *line_taker_carried(const LineTaker *taker)
{
    const LineCarry *carry = &taker->carry;
    const Entry *person = carry->by ? shop_by_id(taker->shop, "person", carry->by) : NULL;
    const char *const parts[] = {carry->date, carry->time, person ? shop_label(person) : NULL};
    GString *words = g_string_new(NULL);
    for (gsize i = 0; i < G_N_ELEMENTS(parts); i++)
        if (parts[i])
            g_string_append_printf(words, "%s%s", words->len ? " " : "", parts[i]);
    return g_string_free(words, FALSE);
}

const PlanStep *line_taker_step(const LineTaker *taker)
{
    return taker->step && taker->plan ? plan_step(taker->plan, taker->step) : NULL;
}

gboolean line_taker_add(LineTaker *taker, Entry *entry, GError **error)
{
    if (entry->seq != taker->entries->len + 1) {
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO,
                    "entry %" G_GINT64_FORMAT " of the build's ledger is out of turn", entry->seq);
        entry_free(entry);
        return FALSE;
    }
    char *key = taken_key(entry);
    if (key)
        g_hash_table_add(taker->known, key);
    if (strcmp(entry->kind->name, "pick up") == 0)
        taker->step = entry_text(entry, "step");
    else if (strcmp(entry->kind->name, "put down") == 0)
        taker->step = NULL;
    g_ptr_array_add(taker->entries, entry);
    return TRUE;
}

// ENTRIES ---------------------------------------------------------------------------------------

static Entry *new_entry(const Take *take, const char *kind, const char *ledger)
{
    Entry *entry = entry_new(kind_newest(kind));
    entry->ledger = g_strdup(ledger);
    entry->by = g_strdup(take->carry.by);
    entry->at = g_strdup(take->at);
    entry->done = g_strdup(take->done);
    return entry;
}

Entry *take_entry(Take *take, const char *kind)
{
    Entry *entry = new_entry(take, kind, take->taker->build);
    entry->after = take->after;
    g_ptr_array_add(take->made, entry);
    return entry;
}

Entry *take_shop_entry(Take *take, const char *kind)
{
    Entry *entry = new_entry(take, kind, take->taker->shop_ledger);
    entry->seq = shop_last(take->taker->shop) + take->shop->len + 1;
    g_ptr_array_add(take->shop, entry);
    return entry;
}

const PlanStep *take_step_in_hand(const Take *take)
{
    return line_taker_step(take->taker);
}

const Entry *take_entry_at(const Take *take, gint64 seq)
{
    const GPtrArray *entries = take->taker->entries;
    return seq >= 1 && seq <= entries->len ? entries->pdata[seq - 1] : NULL;
}

gboolean *take_live(const Take *take)
{
    const GPtrArray *entries = take->taker->entries;
    gboolean *live = g_new0(gboolean, entries->len + 1);
    live_entries((const Entry *const *)entries->pdata, entries->len, live);
    return live;
}

void take_remark(Take *take, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    g_autofree char *remark = g_strdup_vprintf(format, arguments);
    va_end(arguments);
    g_ptr_array_add(take->remarks, text_clean(remark, -1));
}

void entry_set_step(const Take *take, Entry *entry, const PlanStep *step)
{
    const PlanStep *here = step ? step : take_step_in_hand(take);
    entry_set_text(entry, "step", here ? here->name : NULL);
}

void entry_set_labels(Entry *entry, const GPtrArray *axes, guint place)
{
    g_auto(GStrv) labels = places_labels(axes, place);
    entry_set_list(entry, "place", (const char *const *)labels, axes->len);
}

void entry_set_reading(Entry *entry, const char *field, const Reading *reading)
{
    static const char *const bounds[] = {
        [BOUND_NONE] = "", [BOUND_BELOW] = "<", [BOUND_ABOVE] = ">"};
    g_autofree char *fraction = number_fraction(reading->number);
    g_autofree char *value = g_strconcat(bounds[reading->bound], fraction, NULL);
    entry_set_value(entry, field, value, reading->unit ? unit_text(reading->unit) : "",
                    reading->typed);
}

// VERBS -----------------------------------------------------------------------------------------

static const VerbRow build_verbs[] = {
    {"not needed", verb_not_needed},
    {"pick up", verb_pick_up},
    {"put down", verb_put_down},
    {"read", verb_read},
    {"look", verb_look},
    {"tighten", verb_tighten},
    {"slacken", verb_slacken},
    {"waited", verb_waited},
    {"move", verb_move},
    {"fit", verb_fit},
    {"rework", verb_rework},
    {"lay", verb_lay},
    {"strike", verb_strike},
    {"concede", verb_concede},
    {"uphold", verb_uphold},
    {"decide", verb_decide},
    {"choose", verb_choose},
    {"add", verb_add},
    {"amend", verb_amend},
    {"withdraw", verb_withdraw},
    {"sign", verb_sign},
    {"reopen", verb_reopen},
    {"close", verb_close},
    {"seal", verb_seal},
    {"note", verb_note},
    {"photo", verb_photo},
    {"cost", verb_cost},
    {"claim", verb_claim},
    {"zero", verb_zero},
    {"shop", verb_shop},
};

static gboolean refuse_verb(const Take *take, const char **phrases, gsize count, GError **error)
{
    const char *at = take->words.at;
    g_autofree char *word = words_peek(&take->words);
    const char *near = words_meant(&take->words, phrases, count);
    if (near)
        return words_refuse(&take->words, at, error, "`%s` is no verb; did you mean `%s`?", word,
                            near);
    if (word && g_ascii_isdigit(*word))
        return words_refuse(&take->words, at, error,
                            "`%s` is no date, time or verb; write a date like 2025-03-13 and a "
                            "time like 11:36",
                            word);
    const char *last = phrases[count - 1];
    phrases[count - 1] = NULL;
    g_autofree char *all = g_strjoinv(", ", (char **)phrases);
    if (word)
        return words_refuse(&take->words, at, error, "`%s` is no verb; write %s or %s", word, all,
                            last);
    return words_refuse(&take->words, at, error, "a verb is missing here: %s or %s", all, last);
}

gboolean take_verb(Take *take, const VerbRow *rows, gsize count, GError **error)
{
    g_autofree const char **phrases = g_new0(const char *, count);
    for (gsize i = 0; i < count; i++) {
        phrases[i] = rows[i].phrase;
        if (words_skip(&take->words, rows[i].phrase))
            return rows[i].take(take, error);
    }
    return refuse_verb(take, phrases, count, error);
}

gboolean take_customer(Take *take, const char **how, GError **error)
{
    static const char *const ways[] = {"present", "telephone", "letter", "mail"};
    *how = NULL;
    if (!words_skip(&take->words, "customer"))
        return TRUE;
    *how = words_name(&take->words, ways, G_N_ELEMENTS(ways));
    return *how || words_refuse(&take->words, take->words.at, error,
                                "how was the customer asked? write present, telephone, letter or "
                                "mail");
}

// THE LINE --------------------------------------------------------------------------------------

static Take take_begin(LineTaker *taker)
{
    return (Take){
        .taker = taker,
        .carry = carry_copy(&taker->carry),
        .takes = g_ptr_array_new_with_free_func((GDestroyNotify)entry_free),
        .made = g_ptr_array_new_with_free_func((GDestroyNotify)entry_free),
        .shop = g_ptr_array_new_with_free_func((GDestroyNotify)entry_free),
        .news = g_ptr_array_new_with_free_func((GDestroyNotify)entry_free),
        .names = g_ptr_array_new_with_free_func(name_free),
        .remarks = g_ptr_array_new_with_free_func(g_free),
        .known = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL),
    };
}

static void take_clear(Take *take)
{
    carry_clear(&take->carry);
    g_free(take->at);
    g_free(take->done);
    g_free(take->day);
    g_ptr_array_unref(take->takes);
    g_ptr_array_unref(take->made);
    g_ptr_array_unref(take->shop);
    g_ptr_array_unref(take->news);
    g_ptr_array_unref(take->names);
    g_ptr_array_unref(take->remarks);
    g_clear_pointer(&take->kept, g_bytes_unref);
    g_hash_table_unref(take->known);
}

// Where nobody is named, it is the one person that the shop has; of several, one must be named.
static gboolean find_who(Take *take, GError **error)
{
    g_autoptr(GPtrArray) people = shop_all(take->taker->shop, "person", NULL);
    if (people->len == 1)
        take->carry.by = g_strdup(entry_text(people->pdata[0], "id"));
    if (take->carry.by)
        return TRUE;
    g_autoptr(GString) named = g_string_new(NULL);
    for (guint i = 0; i < people->len; i++)
        g_string_append_printf(named, "%s%s", i ? ", " : ": ", shop_label(people->pdata[i]));
    return words_refuse(&take->words, take->words.at, error,
                        "nobody is named yet; write the initials in front of the verb%s",
                        named->str);
}

static gboolean read_event(Take *take, GError **error)
{
    if (words_ended(&take->words) && !take->paper && !take->after)
        return TRUE;
    if (!take->carry.by && !find_who(take, error))
        return FALSE;
    if (!take->taker->build)
        return verb_shop(take, error) && words_finish(&take->words, error);
    take_in_build(take);
    const Entry *person = shop_by_id(take->taker->shop, "person", take->carry.by);
    if (person)
        take_in(take, person);
    return take_verb(take, build_verbs, G_N_ELEMENTS(build_verbs), error) &&
           words_finish(&take->words, error);
}

static gboolean read_line(Take *take, Moment at, GError **error)
{
    if (words_ended(&take->words) || *take->words.at == '#')
        return TRUE;
    const char *when = take->words.at;
    return read_when(take, error) && work_out_times(take, at, when, error) &&
           read_who(take, error) && read_event(take, error);
}

// What was typed in from a card says so in its remark, behind what is there.
static void mark_paper(const Take *take)
{
    for (guint i = 0; take->paper && i < take->made->len; i++) {
        Entry *entry = take->made->pdata[i];
        if (!kind_field(entry->kind, "note"))
            continue;
        const char *note = entry_text(entry, "note");
        g_autofree char *marked =
            g_strconcat(note ? note : "", note ? "; " : "", "from paper", NULL);
        entry_set_text(entry, "note", marked);
    }
}

static void number_entries(const Take *take, GPtrArray *entries)
{
    const LineTaker *taker = take->taker;
    gint64 build = taker->entries->len, shop = shop_last(taker->shop);
    for (guint i = 0; i < entries->len; i++) {
        Entry *entry = entries->pdata[i];
        if (g_strcmp0(entry->ledger, taker->build) == 0)
            entry->seq = ++build;
        else if (g_strcmp0(entry->ledger, taker->shop_ledger) == 0)
            entry->seq = ++shop;
        else
            entry->seq = 0;
    }
}

// The table of kinds has the last word. Whether an entry is too long shows when it is written.
static gboolean check_entries(const Take *take, const GPtrArray *entries, GError **error)
{
    for (guint i = 0; i < entries->len; i++) {
        Entry *entry = entries->pdata[i];
        gint64 seq = entry->seq;
        g_autoptr(GError) why = NULL;
        entry->seq = MAX(seq, 1);
        gboolean right = entry_check(entry, &why);
        entry->seq = seq;
        if (!right)
            return words_refuse(&take->words, take->words.text, error, "%s", why->message);
    }
    return TRUE;
}

static LineTaken *taken_from(Take *take, GError **error)
{
    g_autoptr(LineTaken) taken = g_new0(LineTaken, 1);
    mark_paper(take);
    taken->entries = g_ptr_array_new_with_free_func((GDestroyNotify)entry_free);
    g_ptr_array_extend_and_steal(taken->entries, g_steal_pointer(&take->takes));
    g_ptr_array_extend_and_steal(taken->entries, g_steal_pointer(&take->made));
    g_ptr_array_extend_and_steal(taken->entries, g_steal_pointer(&take->shop));
    g_ptr_array_extend_and_steal(taken->entries, g_steal_pointer(&take->news));
    take->takes = g_ptr_array_new();
    take->made = g_ptr_array_new();
    take->shop = g_ptr_array_new();
    take->news = g_ptr_array_new();
    taken->names = g_ptr_array_ref(take->names);
    taken->remarks = g_ptr_array_ref(take->remarks);
    taken->kept = g_steal_pointer(&take->kept);
    taken->carry = g_new0(LineCarry, 1);
    *taken->carry = take->carry;
    take->carry = (LineCarry){0};
    number_entries(take, taken->entries);
    return check_entries(take, taken->entries, error) ? g_steal_pointer(&taken) : NULL;
}

LineTaken *line_take(LineTaker *taker, const char *text, Moment at, GError **error)
{
    Take take = take_begin(taker);
    LineTaken *taken = NULL;
    if (words_begin(&take.words, text, error)) {
        g_autofree char *line = g_strdup(text);
        gboolean whole = *take.words.at == '#' || cut_endings(&take, line, error);
        take.words = (Words){line, line + strspn(line, " \t")};
        if (whole && read_line(&take, at, error))
            taken = taken_from(&take, error);
    }
    take_clear(&take);
    return taken;
}

void line_keep(LineTaker *taker, LineTaken *taken)
{
    g_ptr_array_set_free_func(taken->entries, NULL);
    for (guint i = 0; i < taken->entries->len; i++) {
        Entry *entry = taken->entries->pdata[i];
        if (g_strcmp0(entry->ledger, taker->build) == 0)
            line_taker_add(taker, entry, NULL);
        else if (g_strcmp0(entry->ledger, taker->shop_ledger) == 0)
            shop_add(taker->shop, entry, NULL);
        else
            entry_free(entry);
    }
    g_ptr_array_set_size(taken->entries, 0);
    for (guint i = 0; i < taken->names->len; i++) {
        const LineName *named = taken->names->pdata[i];
        g_hash_table_replace(taker->told, g_strdup(named->id), g_strdup(named->name));
    }
    carry_clear(&taker->carry);
    taker->carry = *taken->carry;
    *taken->carry = (LineCarry){0};
    line_taken_free(taken);
}

void line_taken_free(LineTaken *taken)
{
    if (!taken)
        return;
    if (taken->carry)
        carry_clear(taken->carry);
    g_free(taken->carry);
    g_clear_pointer(&taken->entries, g_ptr_array_unref);
    g_clear_pointer(&taken->names, g_ptr_array_unref);
    g_clear_pointer(&taken->remarks, g_ptr_array_unref);
    g_clear_pointer(&taken->kept, g_bytes_unref);
    g_free(taken);
}
