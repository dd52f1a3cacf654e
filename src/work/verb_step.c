// pick up, put down, sign, reopen, close, note, photo, cost: the steps and what is written beside.
#include "take.h"

#include <standbook/record/live.h>
#include <string.h>

static gboolean is_of(const Entry *entry, const char *kind, const char *step)
{
    return strcmp(entry->kind->name, kind) == 0 && g_strcmp0(entry_text(entry, "step"), step) == 0;
}

static gboolean *live_of(const Take *take)
{
    const GPtrArray *entries = take->taker->entries;
    gboolean *live = g_new0(gboolean, entries->len + 1);
    live_entries((const Entry *const *)entries->pdata, entries->len, live);
    return live;
}

static gboolean has_passed(const Take *take, const char *step, const char *caution)
{
    g_autofree gboolean *live = live_of(take);
    for (guint i = 0; i < take->taker->entries->len; i++) {
        const Entry *entry = take->taker->entries->pdata[i];
        if (live[i] && is_of(entry, "caution passed", step) &&
            g_strcmp0(entry->by, take->carry.by) == 0 &&
            g_strcmp0(entry_text(entry, "caution"), caution) == 0)
            return TRUE;
    }
    return FALSE;
}

gboolean verb_pick_up(Take *take, GError **error)
{
    const PlanStep *step = take_step(take, error);
    if (!step)
        return FALSE;
    entry_set_text(take_entry(take, "pick up"), "step", step->name);
    for (guint i = 0; i < step->cautions->len; i++) {
        const char *caution = g_ptr_array_index(step->cautions, i);
        if (has_passed(take, step->name, caution))
            continue;
        Entry *entry = take_entry(take, "caution passed");
        entry_set_text(entry, "step", step->name);
        entry_set_text(entry, "caution", caution);
    }
    return TRUE;
}

gboolean verb_put_down(Take *take, GError **error)
{
    g_autofree char *words = NULL;
    if (!words_ended(&take->words) && !(words = words_text(&take->words, "the reason", error)))
        return FALSE;
    Entry *entry = take_entry(take, "put down");
    entry_set_step(take, entry, NULL);
    entry_set_text(entry, "note", words);
    return TRUE;
}

// Who signed what since the step was last reopened: `by` of each signature, NULL where it is open.
static void find_signatures(const Take *take, const PlanStep *step, const char **by, guint count)
{
    g_autofree gboolean *live = live_of(take);
    for (guint i = 0; i < take->taker->entries->len; i++) {
        const Entry *entry = take->taker->entries->pdata[i];
        gint64 number = entry_number(entry, "signature");
        if (live[i] && is_of(entry, "reopen", step->name))
            memset(by, 0, count * sizeof *by);
        if (live[i] && is_of(entry, "sign", step->name) && number >= 1 && number <= count)
            by[number - 1] = entry->by;
    }
}

// The words of each signature: those of the hold, which two persons may have to sign; NULL for the
// builder's, which is the first.
static GPtrArray *statements_of(const PlanStep *step)
{
    GPtrArray *statements = g_ptr_array_new();
    g_ptr_array_add(statements, NULL);
    for (guint i = 0; i < step->holds->len; i++) {
        const PlanHold *hold = step->holds->pdata[i];
        for (guint j = 0; j < hold->persons; j++)
            g_ptr_array_add(statements, (gpointer)hold->words);
    }
    return statements;
}

// Whether the person has signed the step as its builder, or the same hold before.
static gboolean has_signed(const Take *take, const char *const *by, const GPtrArray *statements,
                           guint number)
{
    for (guint i = 0; i < number; i++)
        if (g_strcmp0(by[i], take->carry.by) == 0 &&
            (i == 0 || statements->pdata[i] == statements->pdata[number]))
            return TRUE;
    return FALSE;
}

gboolean verb_sign(Take *take, GError **error)
{
    const char *at = take->words.at;
    const PlanStep *step = take_step(take, error);
    if (!step)
        return FALSE;
    g_autoptr(GPtrArray) statements = statements_of(step);
    g_autofree const char **by = g_new0(const char *, statements->len);
    find_signatures(take, step, by, statements->len);
    guint number = 0;
    while (number < statements->len && by[number])
        number++;
    if (number == statements->len)
        return words_refuse(&take->words, at, error,
                            "`%s` is signed already; write `reopen %s` and why, if there is more "
                            "to do",
                            step->name, step->name);
    if (has_signed(take, by, statements, number))
        return words_refuse(&take->words, at, error,
                            "this person has signed `%s` already; its hold (%s) is signed by "
                            "another one",
                            step->name, (const char *)statements->pdata[number]);
    Entry *entry = take_entry(take, "sign");
    entry_set_text(entry, "step", step->name);
    entry_set_number(entry, "signature", number + 1);
    entry_set_text(entry, "statement", statements->pdata[number]);
    return TRUE;
}

static gboolean step_with_reason(Take *take, const char *kind, GError **error)
{
    const PlanStep *step = take_step(take, error);
    g_autofree char *why = step ? words_text(&take->words, "the reason", error) : NULL;
    if (!why)
        return FALSE;
    Entry *entry = take_entry(take, kind);
    entry_set_text(entry, "step", step->name);
    entry_set_text(entry, "why", why);
    return TRUE;
}

gboolean verb_reopen(Take *take, GError **error)
{
    return step_with_reason(take, "reopen", error);
}

gboolean verb_close(Take *take, GError **error)
{
    return step_with_reason(take, "close", error);
}

// `on` a target or step: sets what the entry is about. Only the labels that were said are kept.
static void entry_set_about(const Take *take, Entry *entry, const Target *target)
{
    entry_set_step(take, entry, target->step);
    if (target->itself || !target->name)
        return;
    entry_set_text(entry, "about", target->name);
    g_autoptr(GPtrArray) labels = g_ptr_array_new();
    for (guint i = 0; i < target->axes->len; i++)
        if (target->picked[i] >= 0)
            g_ptr_array_add(labels, (gpointer)axis_label(g_ptr_array_index(target->axes, i),
                                                         (gsize)target->picked[i]));
    entry_set_list(entry, "place", (const char *const *)labels->pdata, labels->len);
}

static gboolean read_about(Take *take, Target *target, GError **error)
{
    const unsigned all = TARGET_CHECKS | TARGET_GROUPS | TARGET_PARTS | TARGET_STEPS;
    return !words_skip(&take->words, "on") || take_target(take, all, FALSE, target, error);
}

gboolean verb_note(Take *take, GError **error)
{
    g_auto(Target) target = {0};
    if (!read_about(take, &target, error))
        return FALSE;
    g_autofree char *text = words_text(&take->words, "the note", error);
    if (!text)
        return FALSE;
    Entry *entry = take_entry(take, "note");
    entry_set_text(entry, "text", text);
    entry_set_about(take, entry, &target);
    return TRUE;
}

static char *read_digest(Take *take, const char *file, const char *at, GError **error)
{
    const LineHelp *help = &take->taker->help;
    g_autoptr(GError) why = NULL;
    if (words_skip(&take->words, "digest"))
        return words_word(&take->words, "the digest", error);
    char *digest = help->file_digest ? help->file_digest(file, help->user, &why) : NULL;
    if (!digest)
        words_refuse(&take->words, at, error, "%s",
                     why ? why->message : "write `digest` and the file's SHA-256 behind its name");
    return digest;
}

gboolean verb_photo(Take *take, GError **error)
{
    g_auto(Target) target = {0};
    const char *at = take->words.at;
    g_autofree char *name = words_text(&take->words, "the name of the file", error);
    g_autofree char *digest = name ? read_digest(take, name, at, error) : NULL;
    if (!digest || !read_about(take, &target, error))
        return FALSE;
    Entry *entry = take_entry(take, "photo");
    entry_set_text(entry, "name", name);
    entry_set_text(entry, "digest", digest);
    entry_set_about(take, entry, &target);
    return TRUE;
}

// A currency is only text.
gboolean verb_cost(Take *take, GError **error)
{
    g_auto(Reading) amount = {0};
    g_autofree char *what = words_text(&take->words, "what for", error);
    if (!what || !words_number(&take->words, &amount, error))
        return FALSE;
    g_autofree char *currency = words_word(&take->words, "the currency", error);
    if (!currency)
        return FALSE;
    g_autofree char *value = number_fraction(amount.number);
    g_autofree char *typed = g_strconcat(amount.typed, " ", currency, NULL);
    Entry *entry = take_entry(take, "cost");
    entry_set_text(entry, "what", what);
    entry_set_value(entry, "amount", value, currency, typed);
    entry_set_step(take, entry, NULL);
    return TRUE;
}
