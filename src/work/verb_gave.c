// `gave 91 at 100, 41 at 45 N·m`: what a calibration found a tool to give where it was set.
#include "take.h"

#include <standbook/work/gave.h>
#include <string.h>

// One figure of the row: first what it gave, then what it was set to, and so on by turns.
typedef struct {
    const char *at;
    Reading reading; // a pure number
    Unit *unit;      // NULL until it is known
} Figure;

static void figure_clear(gpointer data)
{
    Figure *figure = data;
    reading_clear(&figure->reading);
    unit_free(figure->unit);
}

static gboolean has_unit(const Words *words)
{
    Words here = *words;
    return !words_end_values(words) && *words->at != ',' && !words_begin_value(words) &&
           !words_skip(&here, "at");
}

static gboolean read_figure(Take *take, GArray *figures, GError **error)
{
    Figure figure = {.at = take->words.at};
    if (!words_number(&take->words, &figure.reading, error))
        return FALSE;
    gboolean plain = !figure.reading.bound && !figure.reading.doubt;
    if (!plain || number_sign(figure.reading.number) <= 0)
        words_refuse(&take->words, figure.at, error,
                     "`%s` is no plain figure above 0; write what it gave and at what, as in `gave "
                     "91 at 100, 41 at 45`",
                     figure.reading.typed);
    else if (!has_unit(&take->words) || (figure.unit = take_unit(take, error))) {
        g_array_append_val(figures, figure);
        return TRUE;
    }
    figure_clear(&figure);
    return FALSE;
}

static gboolean skip_comma(Words *words)
{
    gboolean there = *words->at == ',';
    words->at += there;
    words->at += there ? strspn(words->at, " \t") : 0;
    return there;
}

// Behind a setting stands its end, or a comma and a blank: a tight comma is that of a decimal.
static gboolean check_end(const Take *take, GError **error)
{
    Words here = take->words;
    return !(words_begin_value(&here) || words_skip(&here, "at")) ||
           words_refuse(&take->words, take->words.at, error,
                        "write a comma and a blank between two settings, as in `gave 91 at 100, 41 "
                        "at 45`");
}

static gboolean read_figures(Take *take, GArray *figures, GError **error)
{
    do {
        if (!read_figure(take, figures, error))
            return FALSE;
        if (!words_skip(&take->words, "at"))
            return words_refuse(&take->words, take->words.at, error,
                                "write `at` and what it was set to here, as in `gave 91 at 100`");
        if (!read_figure(take, figures, error) || !check_end(take, error))
            return FALSE;
    } while (skip_comma(&take->words));
    return TRUE;
}

// The unit written last, which holds for all that have none; else that of the tool's range.
static const Unit *unit_for_all(const GArray *figures, const Unit *range)
{
    for (guint i = figures->len; i-- > 0;)
        if (g_array_index(figures, Figure, i).unit)
            return g_array_index(figures, Figure, i).unit;
    return range;
}

// All are of the kind of the range, or where the tool has none of the unit written last.
static gboolean set_units(const Take *take, GArray *figures, const Unit *range, GError **error)
{
    const Unit *last = unit_for_all(figures, range), *asked = range ? range : last;
    for (guint i = 0; i < figures->len; i++) {
        Figure *figure = &g_array_index(figures, Figure, i);
        if (!last)
            return words_refuse(&take->words, figure->at, error,
                                "the tool has no range whose unit this could have; write the unit");
        figure->unit = figure->unit ? figure->unit : unit_copy(last);
        if (kind_equal(unit_kind(figure->unit), unit_kind(asked)))
            continue;
        g_autofree char *has = kind_text(unit_kind(figure->unit));
        return words_refuse(&take->words, figure->at, error,
                            "`%s` is %s; write what this tool gave in %s, as its range is",
                            unit_text(figure->unit), has, unit_text(asked));
    }
    return TRUE;
}

static gboolean is_same_setting(const Figure *one, const Figure *other)
{
    g_autoptr(Number) first = unit_to_base(one->unit, one->reading.number),
                      second = unit_to_base(other->unit, other->reading.number);
    return number_equal(first, second);
}

static gboolean check_settings(const Take *take, const GArray *figures, GError **error)
{
    for (guint i = 1; i < figures->len; i += 2)
        for (guint j = 1; j < i; j += 2) {
            const Figure *figure = &g_array_index(figures, Figure, i);
            if (is_same_setting(figure, &g_array_index(figures, Figure, j)))
                return words_refuse(&take->words, figure->at, error,
                                    "what it gave at %s %s is said already; write each setting "
                                    "once",
                                    figure->reading.typed, unit_text(figure->unit));
        }
    return TRUE;
}

static void set_rows(Entry *entry, const GArray *figures)
{
    g_autoptr(GPtrArray) rows = g_ptr_array_new_with_free_func(g_free);
    for (guint i = 0; i + 1 < figures->len; i += 2) {
        const Figure *gave = &g_array_index(figures, Figure, i), *set = gave + 1;
        g_ptr_array_add(rows, gave_text(&gave->reading, gave->unit, &set->reading, set->unit));
    }
    entry_set_list(entry, "gave", (const char *const *)rows->pdata, rows->len);
}

gboolean take_gave(Take *take, Entry *entry, const Unit *range, GError **error)
{
    g_autoptr(GArray) figures = g_array_new(FALSE, FALSE, sizeof(Figure));
    g_array_set_clear_func(figures, figure_clear);
    if (!words_skip(&take->words, "gave"))
        return TRUE;
    if (!read_figures(take, figures, error) || !set_units(take, figures, range, error) ||
        !check_settings(take, figures, error))
        return FALSE;
    set_rows(entry, figures);
    return TRUE;
}
