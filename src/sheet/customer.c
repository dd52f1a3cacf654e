#include "sections.h"

#include <standbook/base/text.h>
#include <standbook/record/live.h>
#include <string.h>

// SIZES NOW

// `bore 2`: the part or check that was worked on, and the place.
static char *place_words(const Entry *entry)
{
    GString *words = g_string_new(entry_text(entry, "name"));
    for (gsize i = 0; i < entry_list_length(entry, "place"); i++)
        g_string_append_printf(words, "%s%s", i ? ", " : " ", entry_list_item(entry, "place", i));
    return g_string_free(words, FALSE);
}

// What the next rebuild orders parts from: `89.999 to 90.027 mm`, as a check of that name was left
// at the places that were worked on, read after that; NULL where it was not.
static char *size_words(const SheetSource *source, const Entry *rework)
{
    const char *name = entry_text(rework, "name");
    const GPtrArray *all = source->assessment->requirements;
    const Requirement *least = NULL, *most = NULL;
    g_autofree char *worked = entry_when(rework);
    for (guint i = 0; i < all->len; i++) {
        const Requirement *each = g_ptr_array_index(all, i);
        const Entry *read = source_entry(source, each->entry);
        if (strcmp(each->name, name) != 0 || !is_as_left(source, i) ||
            !entry_reaches(rework, (const char *const *)each->labels))
            continue;
        g_autofree char *when = read ? entry_when(read) : g_strdup("");
        if (strcmp(when, worked) < 0)
            continue;
        if (!least || number_compare(each->value, least->value) < 0)
            least = each;
        if (!most || number_compare(each->value, most->value) > 0)
            most = each;
    }
    if (!least)
        return NULL;
    g_autofree char *one = figure_value(least), *other = figure_value(most);
    gboolean same = strcmp(one, other) == 0;
    return g_strconcat(one, same ? "" : " to ", same ? "" : other, " ", figure_unit(least), NULL);
}

static gboolean same_place(const Entry *one, const Entry *other)
{
    gsize count = entry_list_length(one, "place");
    gboolean same = count == entry_list_length(other, "place");
    for (gsize i = 0; same && i < count; i++)
        same = strcmp(entry_list_item(one, "place", i), entry_list_item(other, "place", i)) == 0;
    return same;
}

// `0.2 mm before`: what was read last at that one place before it was worked on; NULL if nothing
// was, or several places are meant.
static char *before_words(const SheetSource *source, const gboolean *live, gsize rework)
{
    const Entry *work = source->entries[rework];
    const PlanCheck *check = plan_check(source->plan, entry_text(work, "name"));
    for (gsize i = rework; check && i-- > 0;) {
        const Entry *read = source->entries[i];
        if (live[i] && strcmp(read->kind->name, "read") == 0 &&
            g_strcmp0(entry_text(read, "check"), check->name) == 0 && same_place(work, read))
            return g_strdup_printf("%s %s before", entry_value(read, "value", "typed"),
                                   entry_value(read, "value", "unit"));
    }
    return NULL;
}

static gboolean is_live_kind(const SheetSource *source, const gboolean *live, gsize index,
                             const char *kind)
{
    return live[index] && strcmp(source->entries[index]->kind->name, kind) == 0;
}

// A part worked on has no size of its own; of a check there must be one.
static void section_sizes(Document *document, const SheetSource *source)
{
    const DocumentColumn columns[] = {{"", ALIGN_LEFT}, {"", ALIGN_WHOLE}, {"", ALIGN_LEFT}};
    g_autofree gboolean *live = g_new0(gboolean, source->count + 1);
    live_entries(source->entries, source->count, live);
    gboolean begun = FALSE;
    for (gsize i = 0; i < source->count; i++) {
        const Entry *entry = source->entries[i];
        if (!is_live_kind(source, live, i, "rework"))
            continue;
        if (!begun) {
            document_heading(document, 1, "Sizes now");
            document_table(document, columns, G_N_ELEMENTS(columns));
        }
        begun = TRUE;
        gboolean check = plan_check(source->plan, entry_text(entry, "name")) != NULL;
        g_autofree char *name = place_words(entry);
        g_autofree char *size = check ? size_words(source, entry) : NULL;
        g_autofree char *before = size ? before_words(source, live, i) : NULL;
        g_autofree char *work =
            g_strconcat(entry_text(entry, "work"), before ? "; " : "", before, NULL);
        const char *left = size ? size : check ? "not read since" : "";
        document_row(document, (const char *const[]){name, left, work});
    }
}

// ON RECORD

// What was answered in words, or where nothing is asked that it should be: the complaint, what was
// missing, the numbers of certificates; the number by which the engine is named above not again.
static gboolean is_on_record(const SheetSource *source, const Requirement *made)
{
    gboolean fact = made->verdict == VERDICT_NOTED && !made->finding;
    return made->asked == ASKED_LOOK && !made->withdrawn && made->answer && made->check &&
           (fact || made->check->asks == LIMITS_TEXT) &&
           g_strcmp0(made->answer, engine_serial(source)) != 0;
}

static void section_words(Document *document, const SheetSource *source)
{
    const DocumentColumn columns[] = {{"", ALIGN_LEFT}, {"", ALIGN_LEFT}};
    const GPtrArray *all = source->assessment->requirements;
    gboolean begun = FALSE;
    for (guint i = 0; i < all->len; i++) {
        const Requirement *each = g_ptr_array_index(all, i);
        if (!is_on_record(source, each))
            continue;
        if (!begun) {
            document_heading(document, 1, "On record");
            document_table(document, columns, G_N_ELEMENTS(columns));
        }
        begun = TRUE;
        g_autofree char *name = requirement_title(each);
        document_row(document, (const char *const[]){name, each->answer});
    }
}

// LOOKED AT: what is not as asked, one by one; what is, by its name.

// What was asked to be looked at, by what became of it.
typedef struct {
    guint asked;
    GPtrArray *good; // Requirement *: as it should be
    guint facts;     // answered, without anything that it should be
    guint shown;     // neither, and has a line of its own
} Looks;

// What somebody argued, accepted or asked for anew is not simply as it should be.
static gboolean has_own_line(const Requirement *made)
{
    return made->verdict == VERDICT_FAIL || made->verdict == VERDICT_IN_DOUBT ||
           made->verdict == VERDICT_CONCEDED ||
           (made->verdict == VERDICT_PASS && (made->upheld || made->amended));
}

static void looks_count(Looks *looks, const Requirement *made)
{
    looks->asked++;
    looks->facts += made->verdict == VERDICT_NOTED ? 1 : 0;
    if (made->verdict == VERDICT_PASS && !has_own_line(made))
        g_ptr_array_add(looks->good, (gpointer)made);
}

static gboolean is_seen_alike(const Requirement *one, const Requirement *other)
{
    return one->check == other->check && one->step == other->step &&
           g_strcmp0(one->answer, other->answer) == 0;
}

// `rods free of cracks 1 to 4; fuel leaks: none; rods free of cracks 2, again`: the answer where it
// is not simply yes.
static void good_name(GString *names, const Requirement *first, const GPtrArray *places)
{
    g_autofree char *runs = places_runs(first->check->places, places);
    gboolean yes = g_strcmp0(first->answer, "yes") == 0;
    g_string_append_printf(names, "%s%s%s%s%s%s%s", names->len ? "; " : "", first->name,
                           *runs ? " " : "", runs,
                           first->check->step != first->step ? ", again" : "", yes ? "" : ": ",
                           yes ? "" : first->answer);
}

// Where they are so many that they would fill the page, they are on the workshop's record.
static char *good_names(const GPtrArray *good)
{
    enum { LINES_MOST = 4 };
    GString *names = g_string_new(NULL);
    for (guint i = 0; i < good->len;) {
        const Requirement *first = good->pdata[i];
        g_autoptr(GPtrArray) places = g_ptr_array_new();
        for (; i < good->len && is_seen_alike(first, good->pdata[i]); i++)
            g_ptr_array_add(places, ((const Requirement *)good->pdata[i])->place);
        good_name(names, first, places);
    }
    if (names->len > LINES_MOST * DOCUMENT_WIDTH)
        g_string_truncate(names, 0);
    if (names->len)
        g_string_prepend(names, ": ");
    return g_string_free(names, FALSE);
}

// What was answered as it should be needs no line of its own; empty where all asked for is facts.
static char *good_words(const Looks *looks)
{
    guint tests = looks->asked - looks->facts, good = looks->good->len;
    const char *other = looks->shown ? "other " : "";
    g_autofree char *names = good_names(looks->good);
    if (tests == 0)
        return g_strdup("");
    if (good == 0)
        return looks->shown ? g_strdup("Nothing else was looked at or tested.")
                            : g_strdup_printf("%u thing%s to be looked at: not looked at yet.",
                                              tests, tests == 1 ? "" : "s");
    if (good == 1)
        return g_strdup_printf("One %sthing was looked at or tested, and is as it should be%s.",
                               other, names);
    return g_strdup_printf("%u %sthings were looked at or tested, all as they should be%s.", good,
                           other, names);
}

// What was only asked for the record is no test, and stands there.
static char *looks_words(const Looks *looks)
{
    g_autofree char *good = good_words(looks);
    if (looks->facts == 0)
        return g_steal_pointer(&good);
    return g_strdup_printf("%s%s%u fact%s noted.", good, *good ? " " : "", looks->facts,
                           looks->facts == 1 ? "" : "s");
}

static gboolean is_looked_at(const Requirement *made)
{
    return made->asked == ASKED_LOOK && !made->withdrawn && !made->finding &&
           made->verdict != VERDICT_NOT_NEEDED;
}

// What was seen, and what was asked for; why it is not simply so stands below.
static void looks_row(Document *document, const SheetSource *source, const Requirement *made)
{
    g_autofree char *name = requirement_title(made), *planned = figure_limits(made);
    g_autofree char *notes = footnotes_of(document, source, made);
    const Entry *amended = source_entry(source, made->amended);
    const char *asked = amended ? entry_text(amended, "limits") : NULL;
    document_row(document, (const char *const[]){name, made->answer, asked ? asked : planned,
                                                 verdict_words(made->verdict), notes});
}

// Left out where the plan asks for nothing of the sort, as on a card with readings alone.
static void section_looks(Document *document, const SheetSource *source)
{
    const DocumentColumn columns[] = {{"", ALIGN_LEFT},
                                      {"seen", ALIGN_LEFT},
                                      {"asked", ALIGN_LEFT},
                                      {"", ALIGN_WHOLE},
                                      {"see", ALIGN_NOTES}};
    g_autoptr(GPtrArray) good = g_ptr_array_new();
    Looks looks = {.good = good};
    const GPtrArray *all = source->assessment->requirements;
    for (guint i = 0; i < all->len; i++) {
        const Requirement *each = g_ptr_array_index(all, i);
        if (!is_looked_at(each))
            continue;
        if (looks.asked == 0)
            document_heading(document, 1, "Looked at");
        looks_count(&looks, each);
        if (!has_own_line(each))
            continue;
        if (looks.shown++ == 0)
            document_table(document, columns, G_N_ELEMENTS(columns));
        looks_row(document, source, each);
    }
    if (looks.asked == 0)
        return;
    g_autofree char *line = looks_words(&looks);
    document_paragraph(document, line);
    document_footnotes(document);
}

// SIGNED: signatures that do not simply count, as one given before a sealant was dry.

static void section_signed(Document *document, const SheetSource *source)
{
    const DocumentColumn columns[] = {{"", ALIGN_LEFT}, {"", ALIGN_WHOLE}, {"see", ALIGN_NOTES}};
    const GPtrArray *all = source->assessment->requirements;
    gboolean begun = FALSE;
    for (guint i = 0; i < all->len; i++) {
        const Requirement *each = g_ptr_array_index(all, i);
        if (each->asked != ASKED_SIGN || each->withdrawn || !has_own_line(each))
            continue;
        if (!begun) {
            document_heading(document, 1, "Signed");
            document_table(document, columns, G_N_ELEMENTS(columns));
        }
        begun = TRUE;
        g_autofree char *notes = footnotes_of(document, source, each);
        document_row(document,
                     (const char *const[]){each->step->name, verdict_words(each->verdict), notes});
    }
    document_footnotes(document);
}

// STILL TO COME: what is open, a line for each step, gate by gate.

// What of a requirement that is open is to come: of a part that is in, its number alone.
static char *open_name(const SheetSource *source, const Requirement *made)
{
    const char *lacks = fit_lacks(source, made);
    return lacks                       ? g_strconcat(lacks, " of ", made->name, NULL)
           : made->asked == ASKED_SIGN ? g_strdup("signature")
                                       : g_strdup(made->name);
}

static void name_open(GString *names, const char *name)
{
    g_auto(GStrv) known = g_strsplit(names->str, ", ", -1);
    if (!g_strv_contains((const char *const *)known, name))
        g_string_append_printf(names, "%s%s", names->len ? ", " : "", name);
}

// `inlet lash, head nuts, signature`: what is open in a step. The caller frees.
static char *open_in(const SheetSource *source, const PlanStep *step)
{
    const GPtrArray *all = source->assessment->requirements;
    GString *names = g_string_new(NULL);
    for (guint i = 0; i < all->len; i++) {
        const Requirement *each = g_ptr_array_index(all, i);
        g_autofree char *name = open_name(source, each);
        if (each->step == step && !each->withdrawn && each->verdict == VERDICT_OPEN)
            name_open(names, name);
    }
    return g_string_free(names, FALSE);
}

static void section_open(Document *document, const SheetSource *source, guint gate)
{
    const DocumentColumn columns[] = {{"", ALIGN_WHOLE}, {"", ALIGN_LEFT}};
    g_autofree char *heading =
        g_strconcat("Still to come before ", g_ptr_array_index(source->plan->gates, gate), NULL);
    gboolean begun = FALSE;
    for (guint s = 0; s < source->plan->steps->len; s++) {
        const PlanStep *step = g_ptr_array_index(source->plan->steps, s);
        g_autofree char *names = step->gate == gate ? open_in(source, step) : g_strdup("");
        if (!*names)
            continue;
        if (!begun) {
            document_heading(document, 1, heading);
            document_table(document, columns, G_N_ELEMENTS(columns));
        }
        begun = TRUE;
        document_row(document, (const char *const[]){step->name, names});
    }
}

// How much more is left than the gate was sealed with.
static guint turned_since(const GateCount *gate)
{
    return gate->turned[VERDICT_OPEN] + gate->turned[VERDICT_FAIL] + gate->turned[VERDICT_IN_DOUBT];
}

// The gates up to one that is complete are; those behind are not, each with what is left. Where a
// gate was sealed with nothing left, what is left stands since its seal.
static void section_state(Document *document, const SheetSource *source)
{
    const GPtrArray *gates = source->assessment->gates;
    g_autoptr(GString) complete = g_string_new(NULL), left = g_string_new(NULL);
    g_autoptr(GString) since = g_string_new(NULL);
    for (guint i = 0; i < gates->len; i++) {
        const GateCount *gate = g_ptr_array_index(gates, i),
                        *next = i + 1 < gates->len ? g_ptr_array_index(gates, i + 1) : NULL;
        const char *joined = next && next->left == 0 ? ", " : " and ";
        if (gate->left && turned_since(gate) >= gate->left)
            g_string_append_printf(since, " Since the seal of %s: %u left.", gate->name, gate->left);
        else if (gate->left)
            g_string_append_printf(left, "%s %s: %u left", left->len ? ", for" : "Not complete for",
                                   gate->name, gate->left);
        else
            g_string_append_printf(complete, "%s%s", complete->len ? joined : "Complete for ",
                                   gate->name);
    }
    g_autofree char *words =
        g_strconcat(complete->str, complete->len ? "." : "", complete->len && left->len ? " " : "",
                    left->str, left->len ? "." : "", since->str, NULL);
    document_line(document, g_strstrip(words));
}

static void section_safety(Document *document)
{
    g_autofree char *words =
        g_strconcat("Fuel, hot water, hot and turning parts injure. Look for fuel leaks before "
                    "cranking, an extinguisher ready and a second person at the stop. Gas, "
                    "pressure, electrics and approvals for road, water or air are licensed work. ",
                    precedence_words(), NULL);
    document_heading(document, 1, "Before it runs");
    document_paragraph(document, words);
}

// How many entries the seal of that gate does not cover.
static guint since_seal(const SheetSource *source, const Entry *seal)
{
    gint gate = seal ? plan_gate(source->plan, entry_text(seal, "gate")) : -1;
    return gate < 0 ? 0 : ((const GateCount *)source->assessment->gates->pdata[gate])->since;
}

// `3 entries since then bear on this and are not covered by the seal.`
static void line_since(Document *document, guint since)
{
    g_autofree char *entries = text_counted(since, "entry");
    g_autofree char *line =
        g_strdup_printf("%s since then %s on this and %s not covered by the seal.", entries,
                        since == 1 ? "bears" : "bear", since == 1 ? "is" : "are");
    if (!since)
        return;
    document_line(document, line);
    document_keep(document);
}

static void section_seal(Document *document, const SheetSource *source, const Entry *seal)
{
    document_heading(document, 1, "Seal and signatures");
    if (!seal) {
        document_line(document, "Not sealed.");
        document_keep(document);
    }
    section_digest(document, source);
    document_keep(document);
    line_since(document, since_seal(source, seal));
    g_autofree char *since =
        source->since_seal
            ? g_strconcat("Judged differently since then: ", source->since_seal, ".", NULL)
            : NULL;
    if (since) {
        document_paragraph(document, since);
        document_keep(document);
    }
    document_paragraph(document, "For the workshop   ____________________   date ____________");
    document_keep(document);
    document_paragraph(document, "Received by        ____________________   date ____________");
}

// Above and below each page: whose sheet it is, and the seal's digest as a person compares it,
// `7f3a 90c1 e25d`.
static void page_frame(Document *document, const SheetSource *source, const Entry *seal)
{
    g_autofree char *sheet = g_strconcat("Build sheet ", source->build, NULL);
    g_autofree char *shop = source->shop ? g_utf8_strup(source->shop, -1) : NULL;
    g_autofree char *engine = engine_words(source);
    const char *digest = seal ? entry_text(seal, "assessment") : NULL;
    guint since = since_seal(source, seal);
    g_autofree char *behind = since ? g_strdup_printf(", %u since", since) : g_strdup("");
    g_autofree char *foot =
        digest ? g_strdup_printf("Maker's current service data governs.   seal %.4s %.4s %.4s%s",
                                 digest, digest + 4, digest + 8, behind)
               : g_strdup("Maker's current service data governs.   not sealed");
    document_pages(document, shop ? shop : sheet, shop ? sheet : engine, foot);
}

Document *sheet_customer(const SheetSource *source)
{
    const Entry *seal = newest_seal(source);
    g_autofree char *title = g_strconcat(source->shop ? source->shop : "", source->shop ? ": " : "",
                                         "Build sheet ", source->build, NULL);
    Document *document = document_new("customer", title);
    page_frame(document, source, seal);
    section_head(document, source);
    section_state(document, source);
    section_words(document, source);
    section_decided(document, source);
    section_sizes(document, source);
    section_measured(document, source);
    section_tightened(document, source);
    section_parts(document, source);
    section_laid(document, source);
    section_looks(document, source);
    section_signed(document, source);
    for (guint gate = 0; gate < source->plan->gates->len; gate++)
        section_open(document, source, gate);
    section_safety(document);
    section_seal(document, source, seal);
    return document;
}
