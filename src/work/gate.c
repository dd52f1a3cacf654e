#include <standbook/work/gate.h>

#include <standbook/base/text.h>
#include <standbook/record/live.h>
#include <standbook/work/ago.h>
#include <standbook/work/summary.h>
#include <string.h>

static guint count_of(const Agenda *agenda)
{
    return agenda->assessment->requirements->len;
}

gboolean gate_asks(guint gate, const Requirement *made)
{
    return made->gate <= gate && !made->withdrawn;
}

guint gate_next(const Agenda *agenda)
{
    const GPtrArray *gates = agenda->assessment->gates;
    guint gate = 0;
    while (gate + 1 < gates->len && gate_is_sealed(gates->pdata[gate]))
        gate++;
    return gate;
}

guint gate_optional(const guint counts[VERDICTS], guint left)
{
    return counts[VERDICT_OPEN] + counts[VERDICT_FAIL] + counts[VERDICT_IN_DOUBT] - left;
}

guint gate_all_optional(const Assessment *assessment)
{
    const GPtrArray *gates = assessment->gates;
    const GateCount *last = gates->len ? gates->pdata[gates->len - 1] : NULL;
    return last ? gate_optional(last->counts, last->left) : 0;
}

char *gate_left_words(const GateCount *gate)
{
    return g_strdup_printf("%u left before %s", gate->left, gate->name);
}

gboolean gate_is_sealed(const GateCount *gate)
{
    return gate->sealed && !gate->since;
}

char *gate_since_words(const GateCount *gate)
{
    GString *words = g_string_new(NULL);
    for (guint i = 0; i < VERDICTS; i++)
        if (gate->turned[i])
            g_string_append_printf(words, "%s%u %s", words->len ? ", " : "", gate->turned[i],
                                   verdict_words((Verdict)i));
    g_autofree char *entries = text_counted(gate->since, "entry");
    if (gate->since && !words->len)
        g_string_append(words, entries);
    return g_string_free(words, FALSE);
}

char *gate_seal_words(const GateCount *gate, const Entry *const *entries, Moment now)
{
    if (!gate->sealed)
        return g_strdup("");
    g_autofree char *day = ago_day(entry_moment(entries[gate->sealed - 1]), now);
    g_autofree char *since = gate_since_words(gate);
    return g_strconcat("sealed ", day, *since ? ", " : "", since, *since ? " since" : "", NULL);
}

const PlanStep *gate_step(const Agenda *agenda, guint gate)
{
    for (guint i = agenda->plan->steps->len; i-- > 0;) {
        const PlanStep *step = agenda->plan->steps->pdata[i];
        if (step->gate == gate)
            return step;
    }
    return NULL;
}

gboolean gate_is_last(const Agenda *agenda, guint gate, const PlanStep *step)
{
    const PlanStep *last = gate_step(agenda, gate);
    return step == last || (last && step && step->gate == gate && last->phase &&
                            g_strcmp0(step->phase, last->phase) == 0);
}

// SUMS ------------------------------------------------------------------------------------------

enum { STEPS, BOLTS, CHECKS, PARTS, SUMS };

static guint sum_of(const Requirement *made)
{
    return made->asked == ASKED_SIGN     ? STEPS
           : requirement_is_bolted(made) ? BOLTS
           : made->check                 ? CHECKS
                                         : PARTS;
}

// Whether the step has a signature left (`sign`), or something else that it asks for: it may be
// signed all the same.
static gboolean has_left(const Agenda *agenda, guint gate, const PlanStep *step, gboolean sign)
{
    for (guint i = 0; i < count_of(agenda); i++) {
        const Requirement *made = agenda_made(agenda, i);
        if (made->step == step && gate_asks(gate, made) && (made->asked == ASKED_SIGN) == sign &&
            requirement_is_left(made))
            return TRUE;
    }
    return FALSE;
}

// `steps S01 to S36`, and how many of them are signed; one that is, with something left in it, is
// not settled.
static void say_steps(const Agenda *agenda, guint gate, GateSum *sum)
{
    guint all = 0, whole = 0, faulty = 0, first = 0, last = 0;
    for (guint i = 0; i < agenda->plan->steps->len; i++) {
        const PlanStep *step = agenda->plan->steps->pdata[i];
        if (step->gate > gate || gate_is_last(agenda, gate, step))
            continue;
        first = all++ ? first : i;
        last = i;
        gboolean is_signed = !has_left(agenda, gate, step, TRUE);
        whole += is_signed ? 1 : 0;
        faulty += is_signed && has_left(agenda, gate, step, FALSE) ? 1 : 0;
    }
    sum->what = first == last ? g_strdup_printf("step S%02u", first + 1)
                              : g_strdup_printf("steps S%02u to S%02u", first + 1, last + 1);
    sum->settled -= MIN(sum->settled, faulty);
    g_autofree char *open =
        faulty ? g_strdup_printf(", %u with something left in it", faulty) : g_strdup("");
    sum->said = whole == all && !faulty ? g_strdup_printf("%u signed, none left", all)
                : whole == all          ? g_strdup_printf("%u signed%s", all, open)
                                        : g_strdup_printf("%u of %u signed%s", whole, all, open);
}

static void say_sum(const Agenda *agenda, guint gate, guint at, const guint counts[VERDICTS],
                    GateSum *sum)
{
    static const struct {
        const char *what, *said; // when none is left
        const char *some;        // when some are
    } words[SUMS] = {
        [BOLTS] = {"bolts", "%u ticks, all at the last stage", "%u of %u ticks left"},
        [CHECKS] = {"checks", "%u places, none in doubt, none failed", "%u of %u places left"},
        [PARTS] = {"parts and lots", "%u fitted", "%u of %u left to fit"}};
    guint left = sum->all - sum->settled;
    if (at == STEPS) {
        say_steps(agenda, gate, sum);
        return;
    }
    sum->what = g_strdup(words[at].what);
    sum->said = left ? summary_left(words[at].some, counts, sum->all)
                     : g_strdup_printf(words[at].said, sum->all);
}

static void sum_clear(gpointer data)
{
    g_free(((GateSum *)data)->what);
    g_free(((GateSum *)data)->said);
}

GArray *gate_sums(const Agenda *agenda, guint gate)
{
    GateSum sums[SUMS] = {{0}};
    guint counts[SUMS][VERDICTS] = {{0}}; // of what is left
    for (guint i = 0; i < count_of(agenda); i++) {
        const Requirement *made = agenda_made(agenda, i);
        guint at = sum_of(made);
        if (!gate_asks(gate, made) || (at != PARTS && gate_is_last(agenda, gate, made->step)))
            continue;
        sums[at].all++;
        sums[at].settled += requirement_is_left(made) ? 0 : 1;
        counts[at][made->verdict] += requirement_is_left(made) ? 1 : 0;
    }
    GArray *all = g_array_new(FALSE, TRUE, sizeof(GateSum));
    g_array_set_clear_func(all, sum_clear);
    for (guint i = 0; i < SUMS; i++) {
        if (!sums[i].all)
            continue;
        say_sum(agenda, gate, i, counts[i], &sums[i]);
        g_array_append_val(all, sums[i]);
    }
    return all;
}

// LOTS ------------------------------------------------------------------------------------------

// Whether a date (`2025-02-28`) lies in front of a day, or of a time on it.
static gboolean is_before(const char *date, const char *day)
{
    return strncmp(date, day, strlen(date)) < 0;
}

static gboolean is_used(const GPtrArray *laid, const char *lot)
{
    for (guint i = 0; i < laid->len; i++)
        if (g_strcmp0(entry_text(laid->pdata[i], "lot"), lot) == 0)
            return TRUE;
    return FALSE;
}

// Whether another lot of the same was laid once this one had run out, while the build was on.
static gboolean is_passed_over(const Agenda *agenda, const GPtrArray *laid, const Entry *tin)
{
    const char *expires = entry_text(tin, "expires");
    if (!expires || !agenda->count || is_before(expires, entry_done(agenda->entries[0])) ||
        is_used(laid, entry_text(tin, "lot")))
        return FALSE;
    for (guint i = 0; i < laid->len; i++)
        if (g_strcmp0(entry_text(laid->pdata[i], "consumable"), entry_text(tin, "sort")) == 0 &&
            is_before(expires, entry_done(laid->pdata[i])))
            return TRUE;
    return FALSE;
}

char *gate_lots(const Agenda *agenda, const Shop *shop)
{
    g_autofree gboolean *live = g_new0(gboolean, agenda->count + 1);
    g_autoptr(GPtrArray) laid = g_ptr_array_new(), tins = shop_in_use(shop, "consumable", NULL);
    g_autoptr(GString) names = g_string_new(NULL);
    guint count = 0;
    live_entries(agenda->entries, agenda->count, live);
    for (gsize i = 0; i < agenda->count; i++)
        if (live[i] && strcmp(agenda->entries[i]->kind->name, "laid") == 0)
            g_ptr_array_add(laid, (gpointer)agenda->entries[i]);
    for (guint i = 0; i < tins->len; i++)
        if (is_passed_over(agenda, laid, tins->pdata[i]))
            g_string_append_printf(names, "%s%s", count++ ? ", " : "",
                                   entry_text(tins->pdata[i], "lot"));
    return count ? g_strdup_printf("%s past %s date, not used", names->str,
                                   count > 1 ? "their" : "its")
                 : NULL;
}
