#include "widget_subjects.h"

#include "widget_groups.h"
#include "widget_strip.h"
#include "words.h"

#include <standbook/sheet/figures.h>
#include <standbook/sheet/strip.h>
#include <standbook/work/finding.h>
#include <standbook/work/summary.h>
#include <string.h>

enum { MARK = 1, NAME = 10, SAID = 34, STRIP = 49, NOTE = 58, WIDE = 80 };

static const Requirement *made_at(const Agenda *agenda, const Subject *subject, guint which)
{
    return g_ptr_array_index(agenda->assessment->requirements,
                             g_array_index(subject->places, guint, which));
}

static const char *undone_words(const Requirement *made)
{
    static const char *const words[] = {
        [ASKED_READ] = "not read",   [ASKED_LOOK] = "not looked at", [ASKED_BOLT] = "not tight",
        [ASKED_WAIT] = "not waited", [ASKED_FIT] = "not fitted",     [ASKED_SIGN] = "not signed"};
    return words[made->asked];
}

// One place: `7.5 ±0.7`, `yes`, `MB-2417-C`; "" where there is nothing to say.
static char *place_words(const Requirement *made)
{
    g_autofree char *value = figure_value(made), *doubt = figure_doubt(made);
    if (*value)
        return g_strconcat(value, *doubt ? " " : "", doubt, NULL);
    return g_strdup(made->answer                          ? made->answer
                    : made->verdict == VERDICT_OPEN       ? undone_words(made)
                    : made->asked == ASKED_SIGN           ? "signed"
                    : made->verdict == VERDICT_NOT_NEEDED ? ""
                                                          : summary_did(made->asked));
}

// Values side by side, of the doubt nothing, with the mark of each that is out or in doubt; one
// alone where all say the same. The lots of parts once each.
static char *places_words(const Agenda *agenda, const Subject *subject)
{
    g_autoptr(GString) words = g_string_new(NULL);
    g_autoptr(GPtrArray) fitted = g_ptr_array_new_with_free_func(g_free);
    g_autofree char *first = place_words(made_at(agenda, subject, 0));
    gboolean same = TRUE;
    for (guint i = 0; i < subject->places->len; i++) {
        const Requirement *made = made_at(agenda, subject, i);
        g_autofree char *whole = place_words(made), *value = figure_value(made);
        g_autofree char *mark = fault_mark(made);
        same = same && strcmp(whole, first) == 0;
        g_autofree char *said = g_strconcat(*value ? value : whole, mark, NULL);
        if (g_ptr_array_find_with_equal_func(fitted, said, g_str_equal, NULL))
            continue;
        g_string_append_printf(words, "%s%s", i ? " " : "", said);
        if (made->asked == ASKED_FIT)
            g_ptr_array_add(fitted, g_steal_pointer(&said));
    }
    return g_strdup(same ? first : words->str);
}

char *subject_words(const Agenda *agenda, const Subject *subject)
{
    return subject->said ? g_strdup(subject->said) : places_words(agenda, subject);
}

// `7.0 ▒├▒█▒▒▒──────────┤ 11.0`, the limits a blank beside what is drawn; the lower one is left out
// where it would touch what stands before `from`. FALSE if there is no strip, or no room for it.
static gboolean paint_strip(Canvas *canvas, guint row, guint from, const Requirement *made)
{
    g_autofree char *strip = made->value ? strip_text(made) : g_strdup("");
    guint drawn = STRIP + (guint)strspn(strip, " ");
    if (!*strip || from > drawn)
        return FALSE;
    g_autofree char *lower = made->lower ? figure_number(made, made->lower) : g_strdup("");
    g_autofree char *upper = made->upper ? figure_number(made, made->upper) : g_strdup("");
    strip_paint(canvas, row, STRIP, strip, made->verdict);
    if (from + canvas_text_width(canvas, lower) + 1 <= drawn)
        canvas_put_right(canvas, row, drawn - 1, style_of(0, 0), lower);
    guint behind = STRIP + canvas_text_width(canvas, g_strchomp(strip)) + 1;
    canvas_put(canvas, row, behind, WIDE - behind, style_of(0, 0), upper);
    return TRUE;
}

// Behind a name that is longer than its column, if all that is said has room there.
static guint said_column(const Canvas *canvas, const Subject *subject, const char *words)
{
    guint end = NAME + canvas_text_width(canvas, subject->name), behind = end + 2;
    guint note = subject->note ? canvas_text_width(canvas, subject->note) + 2 : 0;
    return end >= SAID && behind + canvas_text_width(canvas, words) + note <= WIDE ? behind
                                                                                     : SAID;
}

void line_paint(Canvas *canvas, guint row, Verdict verdict, const char *what, const char *said)
{
    canvas_put(canvas, row, MARK, 8, verdict_style(verdict),
               verdict_mark(verdict, REASON_NONE, NULL));
    canvas_put(canvas, row, NAME, SAID - NAME - 1, style_of(0, 0), what);
    canvas_put(canvas, row, SAID, 0, style_of(0, 0), said);
}

void subject_paint(Canvas *canvas, guint row, const Agenda *agenda, const Subject *subject)
{
    static const Style plain;
    const Requirement *made = made_at(agenda, subject, 0);
    g_autofree char *words = subject_words(agenda, subject);
    canvas_put(canvas, row, MARK, 8, verdict_style(subject->verdict),
               verdict_mark(subject->verdict, subject->reason, made->check));
    gboolean alone = subject->left && subject->places->len == 1;
    guint said = alone && made->value ? SAID : said_column(canvas, subject, words);
    canvas_put(canvas, row, NAME, said - NAME - 1, plain, subject->name);
    g_autofree char *seen = whole_words(words, WIDE - said); // no value is cut
    guint behind = canvas_put(canvas, row, said, 0, plain, seen);
    if (alone && !finding_waits(made) && paint_strip(canvas, row, behind + 1, made))
        return;
    g_autofree char *reason =
        subject->verdict == VERDICT_FAIL || subject->verdict == VERDICT_IN_DOUBT
            ? g_strdup(reason_said(subject->reason))
            : NULL;
    const char *note = subject->note ? subject->note : reason;
    guint width = note ? canvas_text_width(canvas, note) : 0;
    guint column = MAX(width <= WIDE - NOTE ? NOTE : 0, behind + 2);
    if (note && column < WIDE)
        canvas_put(canvas, row, column, WIDE - column, plain, note);
}
