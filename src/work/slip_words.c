#include "reading_place.h"
#include "session_inside.h"
#include "take.h"

#include <standbook/book/find.h>
#include <standbook/rules/shown.h>
#include <standbook/rules/slip.h>
#include <standbook/work/agenda_item.h>
#include <standbook/work/part_lots.h>
#include <standbook/work/slip_words.h>
#include <standbook/work/too_soon.h>
#include <string.h>

// What a value is compared with, and how that is called.
typedef struct {
    GPtrArray *values;           // Number *, base units
    const char *one;             // "the other one"
    const char *before, *behind; // of several, round their count: "the other 3"
} Company;

static Company company_new(const char *one, const char *before, const char *behind)
{
    return (Company){g_ptr_array_new_with_free_func((GDestroyNotify)number_free), one, before,
                     behind};
}

static void company_clear(Company *company)
{
    g_ptr_array_unref(company->values);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(Company, company_clear)

// THE VALUE -------------------------------------------------------------------------------------

// One value of a line, and the place it is for.
typedef struct {
    const Entry *entry;
    const Requirement *made;
    Reading reading;
} Typed;

static void typed_clear(Typed *typed)
{
    reading_clear(&typed->reading);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(Typed, typed_clear)

static gboolean read_entry(const Entry *entry, Reading *reading)
{
    const char *typed = entry_value(entry, "value", "typed");
    const char *name = entry_value(entry, "value", "unit");
    g_autoptr(Unit) unit = name && *name ? unit_parse(name, NULL) : NULL;
    return typed && reading_parse(typed, unit, reading, NULL, NULL) && reading->bound == BOUND_NONE;
}

static gboolean typed_of(const Assessment *before, const Entry *entry, Typed *typed)
{
    typed->entry = entry;
    typed->made = strcmp(entry->kind->name, "read") == 0 ? reading_place(before, entry) : NULL;
    return typed->made && read_entry(entry, &typed->reading);
}

static gboolean is_of_inches(const Unit *unit)
{
    static const char *const inches[] = {"in", "thou", "ft", NULL};
    return unit && g_strv_contains(inches, unit_text(unit));
}

static gboolean is_length(const PlanCheck *check)
{
    g_autoptr(Unit) length = unit_parse("mm", NULL);
    return kind_equal(check->kind, unit_kind(length));
}

// Whether a length was typed as a fraction without a unit where the check is not one of inches.
static gboolean is_bare_fraction(const Typed *typed)
{
    const PlanCheck *check = typed->made->check;
    return strchr(typed->reading.typed, '/') && !strpbrk(typed->reading.typed, "\"'") &&
           !typed->reading.decimals && is_length(check) && !is_of_inches(check->unit) &&
           !is_of_inches(typed->reading.unit);
}

// COMPANY ---------------------------------------------------------------------------------------

static void add_value(Company *company, const Number *value)
{
    g_ptr_array_add(company->values, number_copy(value));
}

// The entry that moved what the check is set with last; 0 if none did.
static gint64 moved_last(const GPtrArray *entries, const PlanCheck *check)
{
    for (guint i = check->moved_by->len ? entries->len : 0; i-- > 0;) {
        const Entry *entry = entries->pdata[i];
        for (guint j = 0; strcmp(entry->kind->name, "move") == 0 && j < check->moved_by->len; j++)
            if (g_strcmp0(entry_text(entry, "check"),
                          ((const PlanCheck *)check->moved_by->pdata[j])->name) == 0)
                return entry->seq;
    }
    return 0;
}

// Whether nought lies outside its limits.
static gboolean is_never_nought(const Requirement *made)
{
    return (made->lower && number_sign(made->lower) > 0) ||
           (made->upper && number_sign(made->upper) < 0);
}

static gboolean picks_either(const Formula *formula, const char *check, const char *label,
                             const char *other)
{
    return formula_picks(formula, check, label) || formula_picks(formula, check, other);
}

// Whether two places of a check are of unlike conditions, free and tight: something worked out of
// their difference may not be nought.
static gboolean is_unlike(const Assessment *assessment, const Requirement *made,
                          const Requirement *other)
{
    const char *name = made->check->name;
    gboolean unlike = FALSE;
    for (guint i = 0; i < assessment->requirements->len && !unlike; i++) {
        const Requirement *of = assessment->requirements->pdata[i];
        if (!of->check || !of->check->formula || !is_never_nought(of))
            continue;
        for (guint j = 0; made->labels[j] && other->labels[j] && !unlike; j++)
            unlike = strcmp(made->labels[j], other->labels[j]) != 0 &&
                     picks_either(of->check->formula, name, made->labels[j], other->labels[j]);
    }
    return unlike;
}

// What was read at the other places of the check, since it was moved; `like`: under the same
// condition alone.
static void add_others(Company *company, Session *session, const Requirement *made, gboolean like)
{
    const Assessment *assessment = session_assessment(session);
    gint64 moved = moved_last(session_entries(session), made->check);
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *other = assessment->requirements->pdata[i];
        if (other != made && other->check == made->check && other->step == made->step &&
            other->value && other->bound == BOUND_NONE && !other->withdrawn &&
            other->entry > moved && !(like && is_unlike(assessment, made, other)))
            add_value(company, other->value);
    }
}

// What the same line gives for them.
static void add_of_line(Company *company, const Assessment *before, const GPtrArray *entries,
                        const Typed *typed)
{
    for (guint i = 0; i < entries->len; i++) {
        g_auto(Typed) other = {0};
        if (entries->pdata[i] != typed->entry && typed_of(before, entries->pdata[i], &other) &&
            other.made->check == typed->made->check && other.made->step == typed->made->step)
            add_value(company, other.reading.value);
    }
}

static const char *family_of(const Shop *shop, const char *build)
{
    const Entry *entry = shop_by_id(shop, "build", build);
    const Entry *engine = entry ? shop_by_id(shop, "engine", entry_text(entry, "engine")) : NULL;
    return engine ? entry_text(engine, "family") : NULL;
}

// What was read of it on other engines of the family.
static void add_of_family(Company *company, Session *session, const Requirement *made)
{
    const char *family = family_of(session->shop, session->build);
    g_autoptr(GPtrArray) values = book_values(session->book, made->name, NULL);
    for (guint i = 0; family && values && i < values->len; i++) {
        const BookValue *value = values->pdata[i];
        if (strcmp(value->ledger, session->build) == 0 ||
            g_strcmp0(family_of(session->shop, value->ledger), family) != 0)
            continue;
        g_autoptr(Unit) unit = value->unit && *value->unit ? unit_parse(value->unit, NULL) : NULL;
        g_autoptr(Number) number = number_from_text(value->value, NULL);
        if (number && (!unit || kind_equal(unit_kind(unit), made->check->kind)))
            g_ptr_array_add(company->values, unit_to_base(unit, number));
    }
}

// WORDS -----------------------------------------------------------------------------------------

// How many decimals of a figure are no noughts at its end.
static guint decimals_of(const char *shown)
{
    const char *point = strchr(shown, '.');
    gsize count = point ? strspn(point + 1, G_CSET_DIGITS) : 0;
    while (count && point[count] == '0')
        count--;
    return (guint)count;
}

// With those decimals, or as many more, up to `most`, as it needs to stand there whole.
static char *show_whole(const Unit *unit, const Number *value, guint decimals, guint most)
{
    enum { BEYOND = 6 }; // decimals that tell whether something is left
    g_autofree char *whole = unit_show(unit, value, most + BEYOND);
    guint needed = decimals_of(whole);
    return unit_show(unit, value, needed <= most ? MAX(decimals, needed) : decimals);
}

// With all the decimals that were typed; where ten times was typed, one more is meant.
static char *keeps_in_words(const Unit *unit, guint decimals, const Reading *reading, SlipKind kind,
                            const Number *meant, gboolean ask)
{
    guint most = kind == SLIP_TEN_TIMES ? reading->decimals + 1 : decimals;
    g_autofree char *kept = unit_show(unit, reading->value, MAX(decimals, reading->decimals));
    g_autofree char *without = meant ? show_whole(unit, meant, decimals, most) : NULL;
    return g_strconcat(ask ? "Enter again keeps " : "", kept, ask ? "" : " is kept",
                       without ? ", not " : "", without, NULL);
}

static char *company_words(const Company *company, SlipKind kind)
{
    if (kind == SLIP_FRACTION)
        return g_strdup("millimetres");
    if (!company->values->len)
        return g_strdup("its limits");
    return company->values->len > 1
               ? g_strdup_printf("%s%u%s", company->before, company->values->len, company->behind)
               : g_strdup(company->one);
}

static const char *slip_said(SlipKind kind)
{
    static const char *const slips[] = {
        [SLIP_TEN_TIMES] = "10 times",    [SLIP_A_TENTH] = "A tenth of",
        [SLIP_INCH_TIMES] = "25.4 times", [SLIP_INCH_PART] = "1/25.4 of",
        [SLIP_SIGN] = "Sign unlike",      [SLIP_FRACTION] = "A fraction of",
        [SLIP_FAR] = "Far from"};
    return slips[kind];
}

// The slip of a value in that company; NULL if there is none. `apart`: to be far off is none there.
static char *slip_among(const Typed *typed, const Company *company, gboolean apart, gboolean ask)
{
    const Requirement *made = typed->made;
    g_autoptr(Number) step = check_step(made->check), meant = NULL;
    const SlipQuestion question = {typed->reading.value,
                                   (const Number *const *)company->values->pdata,
                                   company->values->len,
                                   made->lower,
                                   made->upper,
                                   step,
                                   is_bare_fraction(typed),
                                   is_length(made->check)};
    SlipKind kind = step ? slip_likely(&question, &meant) : SLIP_NONE;
    if (kind == SLIP_NONE || (apart && kind == SLIP_FAR))
        return NULL;
    g_autofree char *than = company_words(company, kind);
    g_autofree char *keeps =
        keeps_in_words(made->check->unit, made->check->decimals, &typed->reading, kind, meant, ask);
    return g_strdup_printf("%s %s? %s", slip_said(kind), than, keeps);
}

// BOLTS -----------------------------------------------------------------------------------------

// Whether it is a stage of what the tick tightens, at the bolt that it names there.
static gboolean is_of_tick(const Requirement *made, const Entry *entry, gsize bolt)
{
    return made->asked == ASKED_BOLT && !made->withdrawn &&
           strcmp(made->name, entry_text(entry, "tightening")) == 0 &&
           g_strcmp0(made->step->name, entry_text(entry, "step")) == 0 &&
           strcmp(made->place, entry_list_item(entry, "bolts", bolt)) == 0;
}

static guint stage_of(const Entry *tick)
{
    return (guint)entry_number(tick, "stage");
}

// What the wrench is to show at the first bolt of a tick, in base units: what it was set to through
// its adapter, else what the stage asks; NULL if that is not known.
static Number *asked_of(const Agenda *agenda, const Entry *entry, Unit **unit)
{
    const char *set = entry_value(entry, "setting", "unit");
    *unit = set ? unit_parse(set, NULL) : NULL;
    if (set)
        return entry_amount(entry, "setting");
    for (guint i = 0; i < agenda->assessment->requirements->len; i++) {
        const Requirement *made = agenda->assessment->requirements->pdata[i];
        if (!is_of_tick(made, entry, 0) || made->stage != stage_of(entry))
            continue;
        g_auto(AgendaItem) item = agenda_item(agenda, i);
        *unit = item.amount ? unit_copy(item.amount_unit) : NULL;
        return item.amount ? unit_to_base(item.amount_unit, item.amount) : NULL;
    }
    return NULL;
}

// A factor that brings it within a fifth of what is asked (a rule of our own), else off by more
// than a tenth of that.
static SlipKind slip_from_asked(const Reading *reading, const Number *asked, Number **meant)
{
    g_autoptr(Number) less = number_from_ratio(4, 5), more = number_from_ratio(6, 5);
    g_autoptr(Number) lower = number_multiply(asked, less), upper = number_multiply(asked, more);
    const SlipQuestion question = {
        .value = reading->value, .lower = lower, .upper = upper, .step = reading->place};
    SlipKind kind = slip_likely(&question, meant);
    if (kind != SLIP_NONE || shown_against(reading->value, asked) == SHOWN_AS_ASKED)
        return kind;
    *meant = number_copy(asked);
    return SLIP_FAR;
}

// What a wrench showed, against what is asked.
static char *slip_of_shown(const Agenda *agenda, const Entry *entry, gboolean ask)
{
    g_auto(Reading) reading = {0};
    g_autoptr(Unit) unit = NULL;
    if (!read_entry(entry, &reading))
        return NULL;
    g_autoptr(Number) asked = asked_of(agenda, entry, &unit), meant = NULL;
    if (!asked || number_sign(asked) <= 0)
        return NULL;
    SlipKind kind = slip_from_asked(&reading, asked, &meant);
    if (kind == SLIP_NONE)
        return NULL;
    g_autofree char *keeps = keeps_in_words(unit, reading.decimals, &reading, kind, meant, ask);
    const char *said = slip_said(kind);
    return g_strdup_printf("%s %c%s what is asked? %s",
                           strcmp(unit_text(unit), "°") == 0 ? "Angle" : "Torque",
                           g_ascii_tolower(*said), said + 1, keeps);
}

// The stage by which a bolt of the tick stands turned already; NULL if none does.
static const Requirement *turned_before(const Assessment *before, const Entry *tick)
{
    for (guint i = 0; i < before->requirements->len; i++) {
        const Requirement *made = before->requirements->pdata[i];
        if (made->asked != ASKED_BOLT || made->verdict == VERDICT_OPEN)
            continue;
        const PlanTightening *tightening = plan_tightening(made->step, made->name);
        for (gsize bolt = 0; tightening && bolt < entry_list_length(tick, "bolts"); bolt++)
            if (is_of_tick(made, tick, bolt) &&
                stages_turn_past(tightening->stages, made->stage - 1, stage_of(tick) - 1))
                return made;
    }
    return NULL;
}

static char *slip_of_tick(const Agenda *agenda, const Entry *entry, gboolean ask)
{
    const Requirement *turned = turned_before(agenda->assessment, entry);
    if (!turned)
        return slip_of_shown(agenda, entry, ask);
    return g_strdup_printf(
        ask ? "Bolt %s was turned already: loosen it first, or Enter again: in doubt"
            : "Bolt %s was turned already and not loosened since: in doubt",
        turned->place);
}

// LOTS ------------------------------------------------------------------------------------------

static gint64 pieces_of(const Entry *fit)
{
    return MAX(entry_number(fit, "count"), 1);
}

static gboolean is_out_of(const Entry *entry, const char *lot)
{
    return strcmp(entry->kind->name, "fit") == 0 && g_strcmp0(entry_text(entry, "lot"), lot) == 0 &&
           g_strcmp0(entry_text(entry, "use"), "new") == 0;
}

// How many those entries fit out of a lot, up to that one (NULL: all).
static gint64 pieces_out_of(const GPtrArray *entries, const char *lot, const Entry *until)
{
    gint64 pieces = 0;
    for (guint i = 0; i < entries->len && entries->pdata[i] != until; i++)
        pieces += is_out_of(entries->pdata[i], lot) ? pieces_of(entries->pdata[i]) : 0;
    return pieces;
}

// Asks once of a line, at the entry with which more is fitted out of its lot than is left.
static char *slip_of_fit(Session *session, const GPtrArray *entries, const Entry *entry,
                         gboolean ask)
{
    const char *id = entry_text(entry, "lot");
    const Entry *lot = id && is_out_of(entry, id) ? shop_by_id(session->shop, "lot", id) : NULL;
    gint64 left = 0, before = 0;
    if (!lot || !part_lot_left(session, lot, &left))
        return NULL;
    if (!ask) // the line is stored
        left += pieces_out_of(entries, id, NULL);
    before = pieces_out_of(entries, id, entry);
    gint64 over = before + pieces_of(entry) - left;
    if (over <= 0 || over > pieces_of(entry))
        return NULL;
    g_autofree char *some =
        left > 0 ? g_strdup_printf("Only %" G_GINT64_FORMAT, left) : g_strdup("None");
    return g_strdup_printf("%s of %s %s left of %" G_GINT64_FORMAT ": another lot? %s", some,
                           shop_label(lot), left > 1 ? "are" : "is", entry_number(lot, "quantity"),
                           ask ? "Enter again fits it" : "It is kept");
}

// ALL -------------------------------------------------------------------------------------------

// In the company nearest to it first: its other places, those of the same line, other engines of
// the family, the aim.
static char *slip_in_company(Session *session, const Assessment *before, const GPtrArray *entries,
                             const Typed *typed, gboolean ask)
{
    g_auto(Company) others = company_new("the other one", "the other ", "");
    g_auto(Company) like = company_new("the other one", "the other ", "");
    add_others(&others, session, typed->made, FALSE);
    add_others(&like, session, typed->made, TRUE);
    gboolean apart = like.values->len < others.values->len;
    char *slip = slip_among(typed, &others, apart, ask);
    if (!slip && apart && like.values->len)
        slip = slip_among(typed, &like, FALSE, ask);
    guint alone = others.values->len;
    if (!slip)
        add_of_line(&others, before, entries, typed);
    if (!slip && others.values->len > alone)
        slip = slip_among(typed, &others, apart, ask);
    if (slip || others.values->len)
        return slip;
    g_auto(Company) family = company_new("another engine", "", " earlier readings");
    add_of_family(&family, session, typed->made);
    if (family.values->len)
        return slip_among(typed, &family, FALSE, ask);
    g_auto(Company) aim = company_new("the aim", "", "");
    if (typed->made->check->aim_value)
        add_value(&aim, typed->made->check->aim_value);
    return aim.values->len ? slip_among(typed, &aim, FALSE, ask) : NULL;
}

// A limit; where there is none, as far behind the aim as the other one lies before it. NULL where
// neither is known.
static Number *limit_of(const Number *limit, const Number *other, const Number *aim)
{
    g_autoptr(Number) way = !limit && other && aim ? number_subtract(aim, other) : NULL;
    return limit ? number_copy(limit) : way ? number_add(aim, way) : NULL;
}

// What is set, loose or tightened, begins far out of its limits; not as far as that.
static char *slip_of_setting(const Typed *typed, gboolean ask)
{
    const Requirement *made = typed->made;
    const Number *aim = made->check->aim_value;
    g_autoptr(Number) lower = limit_of(made->lower, made->upper, aim);
    g_autoptr(Number) upper = limit_of(made->upper, made->lower, aim);
    if (!made->check->setting || !lower || !upper ||
        !slip_is_beyond_all(typed->reading.value, lower, upper))
        return NULL;
    g_autofree char *keeps = keeps_in_words(made->check->unit, made->check->decimals,
                                            &typed->reading, SLIP_FAR, NULL, ask);
    return g_strdup_printf("%s its limits? %s", slip_said(SLIP_FAR), keeps);
}

static char *slip_of_reading(Session *session, const Assessment *before, const GPtrArray *entries,
                             const Entry *entry, gboolean ask)
{
    g_auto(Typed) typed = {0};
    if (!typed_of(before, entry, &typed))
        return NULL;
    char *slip = slip_in_company(session, before, entries, &typed, ask);
    return slip ? slip : slip_of_setting(&typed, ask);
}

static GPtrArray *slips_in(Session *session, const GPtrArray *entries, gboolean ask)
{
    const Assessment *before = session_assessment(session);
    const GPtrArray *all = session_entries(session);
    const Agenda agenda = {session_plan(session), before, (const Entry *const *)all->pdata,
                           all->len};
    GPtrArray *slips = g_ptr_array_new_with_free_func(g_free);
    for (guint i = 0; i < entries->len; i++) {
        const Entry *entry = entries->pdata[i];
        gboolean here = strcmp(entry->ledger, session->build) == 0;
        char *slip = !here                                    ? NULL
                     : strcmp(entry->kind->name, "tick") == 0 ? slip_of_tick(&agenda, entry, ask)
                     : strcmp(entry->kind->name, "fit") == 0
                         ? slip_of_fit(session, entries, entry, ask)
                         : slip_of_reading(session, before, entries, entry, ask);
        char *soon = here && !(slip && ask) ? too_soon(&agenda, entry, ask) : NULL;
        if (slip)
            g_ptr_array_add(slips, slip);
        if (soon)
            g_ptr_array_add(slips, soon);
    }
    return slips;
}

GPtrArray *session_slips(Session *session, const LineTaken *taken)
{
    return slips_in(session, taken->entries, FALSE);
}

char *session_slip(Session *session, const char *line)
{
    Moment now = session->options.now(session->options.user);
    g_autoptr(LineTaken) taken = session->build ? line_take(session->taker, line, now, NULL) : NULL;
    if (!taken)
        return NULL;
    g_autoptr(GPtrArray) slips = slips_in(session, taken->entries, TRUE);
    return slips->len ? g_strdup(slips->pdata[0]) : NULL;
}
