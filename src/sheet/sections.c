#include "sections.h"

#include <standbook/record/live.h>
#include <standbook/work/concession.h>
#include <standbook/work/told.h>
#include <string.h>

char *date_words(const Entry *entry)
{
    static const char *const months[] = {"January",   "February", "March",    "April",
                                         "May",       "June",     "July",     "August",
                                         "September", "October",  "November", "December"};
    g_autofree char *when = entry_when(entry);
    guint64 month = g_ascii_strtoull(when + 5, NULL, 10);
    if (strlen(when) < 10 || month < 1 || month > G_N_ELEMENTS(months))
        return g_strdup(when);
    return g_strdup_printf("%" G_GUINT64_FORMAT " %s %.4s", g_ascii_strtoull(when + 8, NULL, 10),
                           months[month - 1], when);
}

// HEAD

// The newest entry up to `upto` that says what engine this is; NULL if none does.
static const Entry *engine_at(const SheetSource *source, gsize upto)
{
    for (gsize i = MIN(upto, source->count); i-- > 0;) {
        const Entry *entry = source->entries[i];
        gboolean told =
            strcmp(entry->kind->name, "take") == 0 || strcmp(entry->kind->name, "news") == 0;
        if (told && strcmp(entry_text(entry, "what"), "engine") == 0)
            return entry;
    }
    return NULL;
}

// The engine as a sealed sheet must show it, from the first seal of its gate on: what is told later
// does not change what was handed over.
static const Entry *engine_then(const SheetSource *source)
{
    const Entry *seal = first_seal(source);
    const Entry *then = engine_at(source, seal ? (gsize)seal->seq : source->count);
    return then ? then : engine_at(source, source->count);
}

static const char *engine_text(const Entry *engine, const char *field)
{
    const json_t *body = engine ? json_object_get(engine->body, "body") : NULL;
    return json_string_value(json_object_get(body, field));
}

const char *engine_serial(const SheetSource *source)
{
    return engine_text(engine_then(source), "serial");
}

char *engine_words(const SheetSource *source)
{
    const Entry *engine = engine_then(source);
    const char *family = engine_text(engine, "family"), *serial = engine_text(engine, "serial");
    const char *make = engine_text(engine, "make");
    return g_strconcat(make ? make : "", make ? " " : "",
                       family                 ? family
                       : source->plan->family ? source->plan->family
                                              : "engine",
                       serial ? ", no. " : "", serial ? serial : "", NULL);
}

static char *labelled(const char *before, const char *text)
{
    return text ? g_strconcat(before, text, NULL) : NULL;
}

// Sold after the seal.
static void owner_since(Document *document, const SheetSource *source, const char *then)
{
    const Entry *now = engine_at(source, source->count);
    const char *owner = engine_text(now, "owner");
    if (!owner || g_strcmp0(owner, then) == 0)
        return;
    g_autofree char *day = date_words(now);
    g_autofree char *line =
        g_strdup_printf("Since %s for %s.", day, taken_name(source->taken, owner));
    document_line(document, line);
}

// `hand over 26 March 2025`; NULL of none.
static char *dated(const Entry *seal, const char *what)
{
    g_autofree char *day = seal ? date_words(seal) : NULL;
    return seal ? g_strconcat(what, " ", day, NULL) : NULL;
}

static void head_row(Document *document, const char *left, const char *right)
{
    if (left || right)
        document_row(document, (const char *const[]){left, right});
}

void section_head(Document *document, const SheetSource *source)
{
    const DocumentColumn columns[] = {{"", ALIGN_LEFT}, {"", ALIGN_LEFT}};
    const Entry *engine = engine_then(source), *seal = first_seal(source),
                *newest = newest_seal(source);
    const char *owner = engine_text(engine, "owner");
    const Plan *plan = source->plan;
    g_autofree char *words = engine_words(source);
    g_autofree char *whose = labelled("for ", taken_name(source->taken, owner));
    g_autofree char *came = source->count ? date_words(source->entries[0]) : NULL;
    g_autofree char *taken_in = labelled("taken in ", came);
    g_autofree char *sealed = dated(seal, seal ? entry_text(seal, "gate") : NULL);
    g_autofree char *supplement = seal == newest ? NULL : dated(newest, "supplement");
    g_autofree char *by = g_strconcat("plan: ", plan->name, plan->revision ? ", revision " : "",
                                      plan->revision ? plan->revision : "", NULL);
    document_table(document, columns, G_N_ELEMENTS(columns));
    head_row(document, words, whose);
    head_row(document, engine_text(engine, "note"), taken_in);
    head_row(document, by, sealed);
    head_row(document, NULL, supplement);
    if (seal)
        owner_since(document, source, owner);
}

const char *precedence_words(void)
{
    return "The maker's current service data, local codes and licensed practice come first. "
           "Figures are this workshop's record and replace none of them.";
}

void section_precedence(Document *document)
{
    document_paragraph(document, precedence_words());
}

char *counts_words(const guint counts[VERDICTS], guint optional)
{
    GString *words = g_string_new(NULL);
    for (guint i = 0; i < VERDICTS; i++) {
        if (counts[i])
            g_string_append_printf(words, "%s%u %s", words->len ? ", " : "", counts[i],
                                   verdict_words((Verdict)i));
        if (i == VERDICT_OPEN && optional)
            g_string_append_printf(words, " (%u optional)", optional);
    }
    if (words->len == 0)
        g_string_append(words, "nothing");
    return g_string_free(words, FALSE);
}

// FOOTNOTES

void note_add(GString *numbers, Document *document, char *text)
{
    g_autofree char *number = g_strdup_printf("%u", document_footnote(document, text));
    g_auto(GStrv) known = g_strsplit(numbers->str, " ", -1);
    if (!g_strv_contains((const char *const *)known, number))
        g_string_append_printf(numbers, "%s%s", numbers->len ? " " : "", number);
    g_free(text);
}

static char *day_of(const Entry *entry)
{
    g_autofree char *when = entry_when(entry);
    return g_strndup(when, 10);
}

// What was noted at that place after it was conceded: `confirmed by letter, 2025-02-28`.
static void append_since(GString *words, const SheetSource *source, const Requirement *requirement,
                         const Entry *concession)
{
    g_autofree gboolean *live = g_new0(gboolean, source->count + 1);
    live_entries(source->entries, source->count, live);
    for (gsize i = (gsize)concession->seq; i < source->count; i++) {
        const Entry *note = source->entries[i];
        if (!live[i] || strcmp(note->kind->name, "note") != 0 ||
            g_strcmp0(entry_text(note, "about"), requirement->name) != 0 ||
            !entry_is_at(note, (const char *const *)requirement->labels))
            continue;
        g_autofree char *day = day_of(note);
        g_string_append_printf(words, " %s, %s.", entry_text(note, "text"), day);
    }
}

// `, bolt R4, stage 4`: which of a bolt set it is; "" of all else.
static char *bolt_words(const Requirement *made)
{
    return made->asked == ASKED_BOLT
               ? g_strdup_printf(", bolt %s, stage %u", made->place, made->stage)
               : g_strdup("");
}

static char *conceded_words(const SheetSource *source, const Requirement *requirement,
                            const Entry *entry)
{
    g_autofree char *outside = figure_far(requirement), *day = day_of(entry);
    g_autofree char *bolt = bolt_words(requirement);
    const char *who = entry_text(entry, "who"), *how = entry_text(entry, "how");
    const char *person = taken_name(source->taken, entry_text(entry, "person"));
    GString *words = g_string_new("Conceded");
    g_string_append(words, bolt);
    if (*outside)
        g_string_append_printf(words, ", %s", outside);
    g_autofree char *why = concession_sentences(entry_text(entry, "why"));
    g_string_append_printf(words, ": %s. Accepted by %s", why,
                           person ? person
                           : who  ? who
                                  : taken_name(source->taken, entry->by));
    if (how)
        g_string_append_printf(words, ", %s", how);
    g_string_append_printf(words, ", %s.", day);
    append_since(words, source, requirement, entry);
    return g_string_free(words, FALSE);
}

// Limits as they are written, with the unit of the check if they name none. The caller frees.
static char *limits_said(const Requirement *requirement, const char *limits)
{
    const PlanCheck *check = requirement->check;
    const char *unit = check && check->unit && g_ascii_isdigit(limits[strlen(limits) - 1])
                           ? unit_text(check->unit)
                           : "";
    return g_strconcat(limits, *unit ? " " : "", unit, NULL);
}

// Both limits: those of the plan as it was kept, or with which it was added, and those in force
// here.
static char *amended_words(const Requirement *requirement, const Entry *entry)
{
    const char *why = entry_text(entry, "why");
    const char *source = entry_text(entry, "source");
    const char *limits = entry_text(entry, "limits"), *wear = entry_text(entry, "wear");
    const PlanCheck *check = requirement->check;
    const PlanLimit *limit =
        check ? check_limit_at(check, (const char *const *)requirement->labels) : NULL;
    g_autofree char *words = g_strconcat(limits ? limits : "", wear ? " wear " : "", wear, NULL);
    g_autofree char *now = limits_said(requirement, words);
    g_autofree char *asked = limits_said(requirement, limit ? limits_text(limit->limits) : "none");
    return g_strdup_printf("Limits amended here to %s; %s %s: %s%s%s.", now,
                           requirement->added ? "it was added here with" : "the plan asks for",
                           asked, why, source ? "; " : "", source ? source : "");
}

static char *undecided_words(const SheetSource *source, const Requirement *requirement)
{
    g_autofree char *soon = signed_too_soon(source, requirement, requirement->reason);
    g_autofree char *reason =
        soon ? g_steal_pointer(&soon) : figure_reason(requirement, source->taken, source->entries);
    if (requirement->verdict == VERDICT_IN_DOUBT)
        return g_strconcat("Undecided. ", reason, NULL);
    g_autofree char *outside = figure_far(requirement);
    g_autofree char *bolt = *outside ? bolt_words(requirement) : g_strdup("");
    return g_strconcat("Failed", bolt, *outside ? ", " : "", outside, ". ", reason,
                       " Nobody has accepted it.", NULL);
}

// ` Decided 2025-03-02: rework, new thrust washers; the customer's consent: telephone.`
static void append_decision(GString *words, const Entry *decided)
{
    g_autofree char *day = day_of(decided);
    const char *who = entry_text(decided, "who"), *consent = entry_text(decided, "consent");
    g_string_append_printf(words, " Decided %s: %s, %s%s%s%s%s.", day,
                           entry_text(decided, "decision"), entry_text(decided, "why"),
                           who ? "; " : "", who ? who : "",
                           consent ? "; the customer's consent: " : "", consent ? consent : "");
}

// How that was judged which is only noted since: work or a decision answered it, or it was read
// again. NULL where nothing was wrong with it.
static char *answered_words(const SheetSource *source, const Requirement *made)
{
    const Entry *decided = source_entry(source, made->decided);
    gboolean failed = made->own_verdict == VERDICT_FAIL;
    if (made->verdict != VERDICT_NOTED || (!failed && made->own_verdict != VERDICT_IN_DOUBT))
        return NULL;
    g_autofree char *outside = figure_far(made);
    g_autofree char *reason =
        figure_doubted(made, made->own_reason, source->taken, source->entries);
    GString *words = g_string_new(made->finding ? "As found" : "Before it was read again");
    g_string_append(words, failed ? " it failed" : " it was in doubt");
    g_string_append_printf(words, "%s%s. %s", failed && *outside ? ", " : "", failed ? outside : "",
                           reason);
    if (decided)
        append_decision(words, decided);
    return g_string_free(words, FALSE);
}

// What was argued about a figure, or about the readings it is worked out from, stands beside it.
static void note_upholds(GString *numbers, Document *document, const SheetSource *source,
                         const Requirement *requirement)
{
    g_autoptr(GPtrArray) upholds =
        upholds_about(source->plan, source->entries, source->count, requirement);
    for (guint i = 0; i < upholds->len; i++)
        note_add(numbers, document, upheld_words(source, requirement, upholds->pdata[i]));
}

// `, found wrong; the later reading decides`: why that reading does not decide.
static char *beside_words(const ReadingBeside *beside)
{
    static const char *const decides[] = {[BESIDE_COARSER] = "the finer gauge decides",
                                          [BESIDE_EARLIER] =
                                              "of two as fine the later reading decides",
                                          [BESIDE_DOUBTED] = "the later reading decides"};
    static const char *const gauges[] = {[TOOL_GOOD] = ", in doubt for what it was read with",
                                         [TOOL_OVERDUE] = ", overdue for its calibration",
                                         [TOOL_UNKNOWN] = ", of which nothing was known",
                                         [TOOL_OUT_OF_RANGE] = ", out of its range",
                                         [TOOL_WRONG] = ", found wrong"};
    return g_strconcat(beside->why == BESIDE_DOUBTED ? gauges[beside->gauge] : "", "; ",
                       decides[beside->why], NULL);
}

// Readings of the same place with another gauge than the one that counts: said beside the figure.
static void note_gauges(GString *numbers, Document *document, const SheetSource *source,
                        const Requirement *counted)
{
    const Entry *best = source_entry(source, counted->entry);
    const char *tool = best ? entry_text(best, "tool") : NULL;
    for (guint i = 0; tool && counted->beside && i < counted->beside->len; i++) {
        const ReadingBeside *beside = &g_array_index(counted->beside, ReadingBeside, i);
        const char *other = entry_text(source_entry(source, beside->entry), "tool");
        if (!other || strcmp(other, tool) == 0)
            continue;
        const char *sort = taken_text(source->taken, "tool", other, "sort");
        g_autofree char *why = beside_words(beside);
        note_add(numbers, document,
                 g_strdup_printf("Also read with %s%s%s.", sort ? "a " : "another gauge",
                                 sort ? sort : "", why));
    }
}

// Those of the check itself, or of the readings at the places it is worked out from.
static void note_all_gauges(GString *numbers, Document *document, const SheetSource *source,
                            const Requirement *requirement)
{
    const Formula *formula = requirement->check->formula;
    const GPtrArray *all = source->assessment->requirements;
    if (!formula)
        note_gauges(numbers, document, source, requirement);
    for (guint i = 0; formula && i < all->len; i++) {
        const Requirement *input = g_ptr_array_index(all, i);
        if (input->asked == ASKED_READ && input->value && input->check->axes->len == 0 &&
            formula_uses(formula, input->name))
            note_gauges(numbers, document, source, input);
    }
}

void footnotes_add(GString *numbers, Document *document, const SheetSource *source,
                   const Requirement *requirement)
{
    const Entry *conceded = source_entry(source, requirement->conceded);
    const Entry *amended = source_entry(source, requirement->amended);
    if (conceded && conceded != amended && requirement->verdict == VERDICT_CONCEDED)
        note_add(numbers, document, conceded_words(source, requirement, conceded));
    gboolean measured = requirement->check && requirement->value;
    if (requirement->upheld || measured)
        note_upholds(numbers, document, source, requirement);
    if (measured)
        note_all_gauges(numbers, document, source, requirement);
    if (amended)
        note_add(numbers, document, amended_words(requirement, amended));
    if (requirement_is_left(requirement) && requirement->verdict != VERDICT_OPEN)
        note_add(numbers, document, undecided_words(source, requirement));
    char *answered = answered_words(source, requirement);
    if (answered)
        note_add(numbers, document, answered);
}

char *footnotes_of(Document *document, const SheetSource *source, const Requirement *requirement)
{
    GString *numbers = g_string_new(NULL);
    footnotes_add(numbers, document, source, requirement);
    return g_string_free(numbers, FALSE);
}
