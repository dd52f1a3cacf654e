#include "agenda_inside.h"
#include "reading_place.h"

#include <standbook/record/live.h>
#include <standbook/rules/slip.h>
#include <standbook/work/ago.h>
#include <standbook/work/entry_words.h>
#include <standbook/work/working.h>
#include <string.h>

// TERMS -----------------------------------------------------------------------------------------

static void term_clear(gpointer data)
{
    WorkingTerm *term = data;
    g_free(term->words);
    number_free(term->value);
}

// The one place that a value is, unchanged; NULL if it is worked out from more.
static const Requirement *only_place(const Agenda *agenda, const Place *place)
{
    const Weight *weight = place->weights && place->weights->len == 1
                               ? &g_array_index(place->weights, Weight, 0)
                               : NULL;
    g_autoptr(Number) one = number_from_integer(1);
    if (!weight || weight->source < 0 || !number_equal(weight->weight, one))
        return NULL;
    return agenda->assessment->requirements->pdata[weight->source];
}

static WorkingTerm term_of(const Agenda *agenda, const Requirement *made, const FormulaTerm *term)
{
    WorkingTerm known = {term->subtracted, g_strdup(formula_text(term->formula)), NULL, NULL};
    g_autoptr(Array) array =
        agenda_worked(agenda, made->step, term->formula, made->check->first_doubt);
    gssize at =
        array ? agenda_place_in(array, made->check->places, (const char *const *)made->labels) : -1;
    const Place *place = at < 0 ? NULL : array_place(array, (gsize)at);
    if (!place || !place->value)
        return known;
    known.value = number_copy(place->value);
    known.from = only_place(agenda, place);
    return known;
}

GArray *working_terms(const Agenda *agenda, const Requirement *made)
{
    GArray *known = g_array_new(FALSE, FALSE, sizeof(WorkingTerm));
    g_array_set_clear_func(known, term_clear);
    if (!made->check || !made->check->formula)
        return known;
    g_autoptr(GArray) terms = formula_terms(made->check->formula);
    for (guint i = 0; terms->len > 1 && i < terms->len; i++) {
        WorkingTerm one = term_of(agenda, made, &g_array_index(terms, FormulaTerm, i));
        g_array_append_val(known, one);
    }
    return known;
}

// Where ` over ` or the end of it stands in what is written in brackets; NULL where the bracket
// that opened before closes before the end of the text.
static const char *end_inside(const char *text)
{
    const char *over = NULL;
    guint depth = 1;
    for (const char *at = text; *at; at++) {
        depth += *at == '(' ? 1 : 0;
        depth -= *at == ')' ? 1 : 0;
        if (depth == 0)
            return at[1] ? NULL : over ? over : at;
        if (depth == 1 && !over && g_str_has_prefix(at, " over "))
            over = at;
    }
    return NULL;
}

// `min(main bore over end)` as people say it: `smallest main bore`; `bore[T, mid]`: `bore T, mid`.
static char *term_words(const char *formula)
{
    static const char *const said[][2] = {{"min(", "smallest "}, {"max(", "largest "}};
    for (gsize i = 0; i < G_N_ELEMENTS(said); i++) {
        const char *inside = formula + strlen(said[i][0]);
        const char *end = g_str_has_prefix(formula, said[i][0]) ? end_inside(inside) : NULL;
        if (end)
            return g_strdup_printf("%s%.*s", said[i][1], (int)(end - inside), inside);
    }
    char *words = g_strdelimit(g_strdup(formula), "[", ' ');
    return g_strchomp(g_strdelimit(words, "]", ' '));
}

char *working_formula(const Formula *formula)
{
    GString *words = g_string_new(NULL);
    g_autoptr(GArray) terms = formula_terms(formula);
    for (guint i = 0; i < terms->len; i++) {
        const FormulaTerm *term = &g_array_index(terms, FormulaTerm, i);
        g_autofree char *name = term_words(formula_text(term->formula));
        g_string_append_printf(words, "%s%s", i == 0 ? "" : term->subtracted ? " - " : " + ", name);
    }
    return g_string_free(words, FALSE);
}

static char *sum_words(const Agenda *agenda, const Requirement *made, gboolean named)
{
    g_autoptr(GArray) terms = working_terms(agenda, made);
    g_autoptr(GString) words = g_string_new(NULL);
    for (guint i = 0; i < terms->len; i++) {
        const WorkingTerm *term = &g_array_index(terms, WorkingTerm, i);
        if (!term->value)
            return NULL;
        g_autofree char *figure = check_value_words(made->check, term->value);
        g_autofree char *name = named ? term_words(term->words) : NULL;
        const char *joint = i == 0 ? "" : term->subtracted ? " - " : " + ";
        g_string_append_printf(words, "%s%s%s%s", joint, named ? name : "", named ? " " : "",
                               figure);
    }
    return words->len ? g_strdup(words->str) : NULL;
}

char *working_words(const Agenda *agenda, const Requirement *made)
{
    return sum_words(agenda, made, FALSE);
}

char *working_named_words(const Agenda *agenda, const Requirement *made)
{
    return sum_words(agenda, made, TRUE);
}

// APART -----------------------------------------------------------------------------------------

enum { OTHERS_LEAST = 3 };

// Whether it differs from `made` in its first label only.
static gboolean is_beside(const Requirement *one, const Requirement *made)
{
    if (one->check != made->check || one->step != made->step || one->withdrawn)
        return FALSE;
    for (guint i = 1; made->labels[0] && made->labels[i]; i++)
        if (strcmp(one->labels[i], made->labels[i]) != 0)
            return FALSE;
    return TRUE;
}

GPtrArray *working_beside(const Agenda *agenda, const Requirement *made)
{
    GPtrArray *beside = g_ptr_array_new();
    for (guint i = 0; i < agenda->assessment->requirements->len; i++) {
        Requirement *one = agenda->assessment->requirements->pdata[i];
        if (is_beside(one, made))
            g_ptr_array_add(beside, one);
    }
    return beside;
}

static gint compare_numbers(gconstpointer one, gconstpointer other)
{
    return number_compare(*(const Number *const *)one, *(const Number *const *)other);
}

// The values of all, but for `made` (NULL: no exception), the least first.
static GPtrArray *values_of(const GPtrArray *beside, const Requirement *made)
{
    GPtrArray *values = g_ptr_array_new();
    for (guint i = 0; i < beside->len; i++) {
        const Requirement *one = beside->pdata[i];
        if (one != made && one->value && one->bound == BOUND_NONE)
            g_ptr_array_add(values, one->value);
    }
    g_ptr_array_sort(values, compare_numbers);
    return values;
}

// Whether one lies more than twice a range away.
static gboolean is_far(const Number *away, const Number *range)
{
    g_autoptr(Number) size = number_abs(away), twice = number_add(range, range);
    return number_compare(size, twice) > 0;
}

char *working_apart(const Agenda *agenda, const Requirement *made)
{
    if (made->asked != ASKED_READ || !made->value || !*made->place || !made->check->unit)
        return NULL;
    g_autoptr(GPtrArray) beside = working_beside(agenda, made);
    g_autoptr(GPtrArray) others = values_of(beside, made);
    if (others->len < OTHERS_LEAST)
        return NULL;
    g_autoptr(Number) step = check_step(made->check);
    g_autoptr(Number) middle =
        number_add(others->pdata[(others->len - 1) / 2], others->pdata[others->len / 2]);
    g_autoptr(Number) two = number_from_integer(2), median = number_divide(middle, two);
    g_autoptr(Number) range = number_subtract(others->pdata[others->len - 1], others->pdata[0]);
    g_autoptr(Number) away = number_subtract(made->value, median);
    if (!is_far(away, range) ||
        !slip_is_outlier(made->value, (const Number *const *)others->pdata, others->len, step))
        return NULL;
    g_autoptr(Number) size = number_abs(away);
    g_autofree char *words = check_width_words(made->check, size);
    g_autofree char *agree = check_width_words(made->check, range);
    return g_strdup_printf("%s %s is %s %s the other %u; they agree within %s.", made->name,
                           made->place, words, number_sign(away) > 0 ? "above" : "below",
                           others->len, agree);
}

// The number rounded down to a whole count of steps, and one step more.
static Number *whole_below(const Number *number, const Number *step)
{
    mpz_t count;
    mpz_init(count);
    g_autoptr(Number) ratio = number_divide(number, step);
    mpz_fdiv_q(count, mpq_numref(number_rational(ratio)), mpq_denref(number_rational(ratio)));
    g_autofree char *text = mpz_get_str(NULL, 10, count);
    g_autoptr(Number) whole = number_from_text(text, NULL);
    mpz_clear(count);
    return number_multiply(whole, step);
}

gboolean working_window(const GPtrArray *beside, Number **from, Number **to)
{
    enum { STEPS_MOST = 9 };
    g_autoptr(GPtrArray) values = values_of(beside, NULL);
    if (values->len == 0)
        return FALSE;
    const Requirement *first = beside->pdata[0];
    g_autoptr(Number) step = check_step(first->check), ten = number_from_integer(10);
    g_autoptr(Number) most = number_from_integer(STEPS_MOST);
    g_autoptr(Number) range = number_subtract(values->pdata[values->len - 1], values->pdata[0]);
    for (;;) {
        g_autoptr(Number) reach = number_multiply(step, most);
        if (number_compare(range, reach) <= 0)
            break;
        Number *larger = number_multiply(step, ten);
        number_free(step);
        step = larger;
    }
    *from = whole_below(values->pdata[0], step);
    g_autoptr(Number) last = whole_below(values->pdata[values->len - 1], step);
    *to = number_add(last, step);
    return TRUE;
}

// ZERO ------------------------------------------------------------------------------------------

const Entry *working_zero(const Agenda *agenda, const char *tool)
{
    g_autofree gboolean *live = NULL; // asked for where there is a zero at all
    for (gsize i = agenda->count; i-- > 0;) {
        const Entry *entry = agenda->entries[i];
        if (strcmp(entry->kind->name, "zero") != 0 ||
            g_strcmp0(entry_text(entry, "tool"), tool) != 0)
            continue;
        if (!live) {
            live = g_new(gboolean, agenda->count + 1);
            live_entries(agenda->entries, agenda->count, live);
        }
        if (live[i])
            return entry;
    }
    return NULL;
}

char *working_zero_words(const Agenda *agenda, const char *tool, Moment now)
{
    const Entry *zero = working_zero(agenda, tool);
    if (!zero)
        return g_strdup("");
    const char *master = entry_text(zero, "master");
    g_autofree char *size = master ? NULL : value_words(json_object_get(zero->body, "value"));
    g_autofree char *today = ago_day(now, now), *day = ago_day(entry_moment(zero), now);
    gboolean before = strcmp(day, today) != 0;
    return g_strdup_printf(", zeroed %s%s%s%s", master ? "in " : "on ", master ? master : size,
                           before ? " " : "", before ? day : "");
}

// STRUCK ----------------------------------------------------------------------------------------

static void struck_clear(gpointer data)
{
    g_free(((StruckReading *)data)->figure);
}

static StruckReading *struck_at(GArray *struck, guint index)
{
    for (guint i = 0; i < struck->len; i++)
        if (g_array_index(struck, StruckReading, i).index == index)
            return &g_array_index(struck, StruckReading, i);
    return NULL;
}

static guint index_of(const Assessment *assessment, const Requirement *made)
{
    guint index = AGENDA_NOWHERE;
    g_ptr_array_find(assessment->requirements, made, &index);
    return index;
}

GArray *working_struck(const Agenda *agenda, const PlanStep *step)
{
    GArray *struck = g_array_new(FALSE, FALSE, sizeof(StruckReading));
    g_array_set_clear_func(struck, struck_clear);
    g_autofree gboolean *live = g_new(gboolean, agenda->count + 1);
    live_entries(agenda->entries, agenda->count, live);
    for (gsize i = agenda->count; i-- > 0;) {
        const Entry *strike = agenda->entries[i];
        if (!live[i] || strcmp(strike->kind->name, "strike") != 0)
            continue;
        const Entry *entry = agenda->entries[entry_number(strike, "entry") - 1];
        const Requirement *made = strcmp(entry->kind->name, "read") == 0
                                      ? reading_place(agenda->assessment, entry)
                                      : NULL;
        if (!made || made->step != step || made->value)
            continue;
        guint index = index_of(agenda->assessment, made);
        if (struck_at(struck, index))
            continue;
        StruckReading one = {index, g_strdup(entry_value(entry, "value", "typed")),
                             entry_text(strike, "cause")};
        g_array_append_val(struck, one);
    }
    return struck;
}
