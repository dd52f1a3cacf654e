// What is worked out at one place: its terms, each with its doubt and its gauge; and, where the
// gauge cannot tell, what would settle it.
#include "widget_checks_inside.h"

#include <standbook/sheet/figures.h>
#include <standbook/work/coarse.h>
#include <string.h>

enum { TERM_COLUMN = 3, TERM_WIDTH = 18, TOOL_COLUMN = 40 };

gboolean terms_are_told(const PlanCheck *derived)
{
    if (derived->places->len > 0 || !derived->formula)
        return FALSE;
    g_autoptr(GArray) terms = formula_terms(derived->formula);
    return terms->len > 1;
}

// `G07 steel rule`; NULL where no tool is known.
static char *tool_words(const Checks *checks, const Requirement *from)
{
    if (!checks->taken || from->entry < 1 || (gsize)from->entry > checks->agenda->count)
        return NULL;
    const Entry *entry = checks->agenda->entries[from->entry - 1];
    const char *id = entry_tool(entry);
    const char *label = taken_tool(checks->taken, id);
    const char *sort = id ? taken_text(checks->taken, "tool", id, "sort") : NULL;
    return label ? g_strconcat(label, sort ? " " : "", sort, NULL) : NULL;
}

static void put_source(Canvas *canvas, guint row, const Checks *checks, const WorkingTerm *term)
{
    if (!term->from)
        return;
    g_autofree char *doubt = figure_doubt(term->from), *tool = tool_words(checks, term->from);
    canvas_put(canvas, row, DOUBT_COLUMN, 0, plain, doubt);
    canvas_put(canvas, row, TOOL_COLUMN, 0, plain, tool ? tool : "");
}

// Words too long for their column lose whole words in front: what tells one term from the next
// stands at the end. The caller frees.
static char *end_of_words(const char *words, glong width)
{
    const char *rest = words;
    while (rest && g_utf8_strlen(rest, -1) + (rest > words ? 1 : 0) > width) {
        rest = strchr(rest, ' ');
        rest += rest ? 1 : 0;
    }
    return rest && rest > words ? g_strconcat("…", rest, NULL) : g_strdup(words);
}

static void put_term(Canvas *canvas, guint row, const Checks *checks, const Requirement *made,
                     const WorkingTerm *term, guint *focus)
{
    const PlanCheck *check = term->from && term->from->check ? term->from->check : made->check;
    g_autofree char *value = term->value ? check_value_words(check, term->value) : g_strdup("·");
    gboolean in_hand = checks->here && strcmp(term->words, checks->here->name) == 0;
    g_autofree char *words = end_of_words(term->words, TERM_WIDTH);
    canvas_put(canvas, row, TERM_COLUMN, TERM_WIDTH, in_hand ? bold : plain, words);
    put_source(canvas, row, checks, term);
    if (!in_hand) {
        checks_put_in(canvas, row, VALUE_END, VALUE_END - TERM_COLUMN - TERM_WIDTH, plain, value);
        return;
    }
    checks_put_here(canvas, row, VALUE_END, VALUE_END - TERM_COLUMN - TERM_WIDTH,
                    *checks->typed || !term->value ? checks->typed : value);
    *focus = row;
}

guint terms_paint(Canvas *canvas, guint row, const Checks *checks, const Requirement *made,
                  guint *focus)
{
    const Agenda agenda = checks_agenda(checks);
    g_autoptr(GArray) terms = working_terms(&agenda, made);
    for (guint i = 0; i < terms->len; i++)
        put_term(canvas, row++, checks, made, &g_array_index(terms, WorkingTerm, i), focus);
    return row;
}

guint coarse_paint(Canvas *canvas, guint row, const Checks *checks, const Requirement *made)
{
    if (!is_coarse(made))
        return row;
    g_autofree char *sentence = coarse_sentence(made);
    g_auto(GStrv) lines = g_strsplit(checks->gauges ? checks->gauges : "", "\n", -1);
    guint column = canvas_put(canvas, row, 1, 0, bold, "THE GAUGE CANNOT TELL.") + 1;
    gboolean fits = column + canvas_text_width(canvas, sentence) <= canvas->width;
    row = canvas_wrap(canvas, fits ? row : row + 1, fits ? column : 1, canvas->width - 2, plain,
                      sentence); // a figure is never cut
    for (guint i = 0; lines[i]; i++)
        canvas_put(canvas, row++, 0, 0, plain, lines[i]);
    canvas_put(canvas, row++, 1, 0, plain,
               "g takes another in hand. This reading stays on record, whatever the next says.");
    return row + 1;
}
