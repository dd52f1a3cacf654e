// pick up, put down, sign, reopen, close, note, photo, cost: the steps and what is written beside.
#include "take.h"

#include <standbook/work/laying.h>
#include <string.h>

static gboolean is_of(const Entry *entry, const char *kind, const char *step)
{
    return strcmp(entry->kind->name, kind) == 0 && g_strcmp0(entry_text(entry, "step"), step) == 0;
}

static gboolean has_passed(const Take *take, const char *step, const char *caution)
{
    g_autofree gboolean *live = take_live(take);
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
    g_autofree gboolean *live = take_live(take);
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

// A step being signed: the persons by id, NULL where a signature is open, and what each says.
typedef struct {
    const PlanStep *step;
    GPtrArray *statements;
    const char **by;
    guint next; // the first that is open; as many as there are statements if none is
} Signing;

static void signing_clear(Signing *signing)
{
    g_clear_pointer(&signing->statements, g_ptr_array_unref);
    g_free(signing->by);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(Signing, signing_clear)

static Signing signing_of(const Take *take, const PlanStep *step)
{
    Signing signing = {.step = step, .statements = statements_of(step)};
    guint count = signing.statements->len;
    signing.by = g_new0(const char *, count + 1);
    find_signatures(take, step, signing.by, count);
    while (signing.next < count && signing.by[signing.next])
        signing.next++;
    return signing;
}

// Whether the person has signed the step before: every signature is by another one.
static gboolean has_signed(const Signing *signing, const char *person)
{
    for (guint i = 0; i < signing->next; i++)
        if (g_strcmp0(signing->by[i], person) == 0)
            return TRUE;
    return FALSE;
}

// How the next signature is typed: by somebody else whom the shop knows. The caller frees.
static char *next_in_words(const Take *take, const Signing *signing)
{
    g_autoptr(GPtrArray) persons = shop_all(take->taker->shop, "person", NULL);
    for (guint i = 0; i < persons->len; i++) {
        const Entry *person = persons->pdata[i];
        const char *id = entry_text(person, "id");
        if (strcmp(id, take->carry.by) != 0 && !has_signed(signing, id))
            return g_strdup_printf("another person writes it, as in `%s sign %s`",
                                   shop_label(person), signing->step->name);
    }
    return g_strdup("another person signs it, whom the shop must know first: `person TB \"First "
                    "Last\"` in `standbook log --shop`");
}

// Which signature the line means, if it says so, and whether this person can give the next one.
static gboolean may_sign(const Take *take, const Target *target, const Signing *signing,
                         GError **error)
{
    const char *name = signing->step->name;
    if (signing->next == signing->statements->len)
        return words_refuse(&take->words, target->at, error,
                            "`%s` is signed already; write `reopen %s` and why, if there is more "
                            "to do",
                            name, name);
    if (target->number && target->number != signing->next + 1)
        return words_refuse(&take->words, target->number_at, error,
                            "the next signature of `%s` is %u", name, signing->next + 1);
    if (!has_signed(signing, take->carry.by))
        return TRUE;
    g_autofree char *next = next_in_words(take, signing);
    return words_refuse(&take->words, target->at, error,
                        "this person has signed `%s` already; its hold (%s) is still open, and %s",
                        name, (const char *)signing->statements->pdata[signing->next], next);
}

// Says what is missing behind this signature.
static void remark_next(Take *take, Signing *signing)
{
    signing->by[signing->next++] = take->carry.by;
    guint left = signing->statements->len - signing->next;
    if (left == 0)
        return;
    g_autofree char *next = next_in_words(take, signing);
    const char *hold = signing->statements->pdata[signing->next];
    if (left == 1)
        take_remark(take, "One signature is missing (%s): %s", hold, next);
    else
        take_remark(take, "%u signatures are missing (%s): %s", left, hold, next);
}

// What the step asks to be laid and nobody has laid: no clock of it runs.
static void remark_not_laid(Take *take, const PlanStep *step)
{
    const GPtrArray *entries = take->taker->entries;
    const Agenda agenda = {take->taker->plan, take_assessment(take),
                           (const Entry *const *)entries->pdata, entries->len};
    g_autoptr(GArray) layings = layings_missed(&agenda, step);
    for (guint i = 0; i < layings->len; i++) {
        const Laying *laying = &g_array_index(layings, Laying, i);
        const char *name = laying->consumable->name;
        g_autoptr(GPtrArray) targets = laying_targets(agenda.plan, laying);
        take_remark(take, "No %s is laid; write `lay %s on %s lot …`", name, name,
                    targets->len ? (const char *)targets->pdata[0] : "…");
    }
}

gboolean verb_sign(Take *take, GError **error)
{
    g_auto(Target) target = {0};
    if (!take_target(take, TARGET_STEPS, TRUE, &target, error))
        return FALSE;
    g_auto(Signing) signing = signing_of(take, target.itself);
    if (!may_sign(take, &target, &signing, error))
        return FALSE;
    Entry *entry = take_entry(take, "sign");
    entry_set_text(entry, "step", target.name);
    entry_set_number(entry, "signature", signing.next + 1);
    entry_set_text(entry, "statement", signing.statements->pdata[signing.next]);
    remark_next(take, &signing);
    remark_not_laid(take, target.itself);
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
    return !words_skip(&take->words, "on") ||
           (take_target(take, all, FALSE, target, error) && target_is_whole(take, target, error));
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
