#include "widget_checks_inside.h"

#include "widget_groups.h"
#include "widget_strip.h"
#include "words.h"

#include <standbook/sheet/figures.h>
#include <standbook/sheet/strip.h>
#include <standbook/work/coarse.h>
#include <string.h>

// WHAT BELONGS TOGETHER -------------------------------------------------------------------------

static gboolean same_number(const Number *one, const Number *other)
{
    return one == other || (one && other && number_equal(one, other));
}

const Requirement *checks_at(const Checks *checks, guint index, gboolean *differs)
{
    const Requirement *now = at(checks->now, index);
    gboolean changed = FALSE;
    if (checks->supposed && index < checks->supposed->requirements->len) {
        const Requirement *then = at(checks->supposed, index);
        changed = then != now && // what is not touched is shared
                  (then->verdict != now->verdict || !same_number(then->value, now->value));
        now = changed ? then : now;
    }
    if (differs)
        *differs = changed;
    return now;
}

Agenda checks_agenda(const Checks *checks)
{
    Agenda agenda = *checks->agenda;
    agenda.assessment = checks->supposed ? checks->supposed : checks->now;
    return agenda;
}

// The requirements of one check in this step: `*first`, and how many follow each other.
guint checks_span(const Checks *checks, const PlanCheck *check, guint *first)
{
    guint count = 0;
    for (guint i = 0; i < checks->now->requirements->len; i++) {
        const Requirement *made = at(checks->now, i);
        if (made->check != check || made->step != checks->step)
            continue;
        if (count == 0)
            *first = i;
        count++;
    }
    return count;
}

gboolean check_rests_on(const PlanCheck *derived, const PlanCheck *check)
{
    return derived->formula && formula_uses(derived->formula, check->name);
}

// LINES -----------------------------------------------------------------------------------------

static void put_middle(Canvas *canvas, guint row, guint middle, const char *text)
{
    guint width = canvas_text_width(canvas, text);
    canvas_put(canvas, row, middle > width / 2 ? middle - width / 2 : 0, 0, plain, text);
}

static void put_limits(Canvas *canvas, guint row, const Requirement *made)
{
    g_autofree char *lower = made->lower ? figure_number(made, made->lower) : NULL;
    g_autofree char *upper = made->upper ? figure_number(made, made->upper) : NULL;
    if (lower)
        put_middle(canvas, row, LOWER_MIDDLE, lower);
    if (upper)
        put_middle(canvas, row, UPPER_MIDDLE, upper);
    if (!lower && !upper) {
        g_autofree char *wanted = figure_limits(made);
        const char *none =
            made->check && made->check->asks == LIMITS_TEXT ? "in words" : "no limit known";
        canvas_put(canvas, row, STRIP_COLUMN, 0, plain, *wanted ? wanted : none);
    }
}

static gboolean same_limits(const Requirement *one, const Requirement *other)
{
    g_autofree char *limits = figure_limits(one), *others = figure_limits(other);
    return strcmp(limits, others) == 0;
}

// Whether it is the place in hand, or worked out from it at the same one.
static gboolean is_in_hand(const Checks *checks, const Requirement *made)
{
    const Requirement *in_hand = checks->here;
    return made == in_hand ||
           (in_hand && in_hand->check && made->check &&
            check_rests_on(made->check, in_hand->check) &&
            g_strv_equal((const char *const *)made->labels, (const char *const *)in_hand->labels));
}

// Of a check whose limits differ, those of the place in hand, and which that is.
void checks_put_limits(Canvas *canvas, guint row, const Checks *checks, guint first)
{
    enum { MIDDLE = (LOWER_MIDDLE + UPPER_MIDDLE) / 2, ROOM = 8 };
    const GPtrArray *all = checks->now->requirements;
    const Requirement *one = at(checks->now, first), *shown = NULL;
    gboolean differ = FALSE;
    for (guint i = first; i < all->len; i++) {
        const Requirement *made = at(checks->now, i);
        if (made->check != one->check || made->step != one->step)
            break;
        differ = differ || !same_limits(one, made);
        shown = is_in_hand(checks, made) ? checks_at(checks, i, NULL) : shown;
    }
    if (differ && !shown) {
        canvas_put(canvas, row, STRIP_COLUMN, 0, plain, "limits differ by place");
        return;
    }
    put_limits(canvas, row, shown ? shown : checks_at(checks, first, NULL));
    if (differ && shown->lower && shown->upper)
        put_middle(canvas, row, MIDDLE,
                   canvas_text_width(canvas, shown->place) <= ROOM ? shown->place : "here");
}

char *checks_value_shown(const Requirement *made, gboolean differs)
{
    g_autofree char *value = figure_value(made);
    if (!*value)
        return g_strdup("·");
    return differs ? g_strdup_printf("(%s)", value) : g_strdup(value);
}

static void put_verdict(Canvas *canvas, guint row, const Requirement *made)
{
    g_autofree char *doubt = figure_doubt(made);
    canvas_put(canvas, row, DOUBT_COLUMN, MARK_COLUMN - DOUBT_COLUMN - 1, plain, doubt);
    canvas_put(canvas, row, MARK_COLUMN, 7, verdict_style(made->verdict),
               verdict_mark(made->verdict, made->reason, made->check));
}

// A text that ends there, cut to the columns it may have.
void checks_put_in(Canvas *canvas, guint row, guint end, guint room, Style style, const char *text)
{
    guint width = MIN(canvas_text_width(canvas, text), room);
    canvas_put(canvas, row, end - width, width, style, text);
}

static void put_value(Canvas *canvas, guint row, guint room, const Requirement *made,
                      gboolean differs)
{
    g_autofree char *value = checks_value_shown(made, differs);
    gboolean closed = g_str_has_suffix(value, ")");
    checks_put_in(canvas, row, VALUE_END + (closed ? 1 : 0), room, differs ? bold : plain, value);
}

// The place in hand, with what stands in the field in place of its value.
void checks_put_here(Canvas *canvas, guint row, guint end, guint room, const char *typed)
{
    g_autofree char *text = g_strdup_printf("[%s]", *typed ? typed : " ");
    checks_put_in(canvas, row, end + 1, room, here, text);
}

// `──3.6──  struck: typo`
guint checks_put_struck(Canvas *canvas, guint row, guint column, const StruckReading *struck)
{
    g_autofree char *words = g_strdup_printf("──%s──  struck: %s", struck->figure, struck->reason);
    return canvas_put(canvas, row, column, 0, style_of(0, ROLE_FAINT), words);
}

const StruckReading *checks_struck_at(const Checks *checks, guint index)
{
    for (guint i = 0; checks->struck && i < checks->struck->len; i++)
        if (g_array_index(checks->struck, StruckReading, i).index == index)
            return &g_array_index(checks->struck, StruckReading, i);
    return NULL;
}

// `90.026 - 89.940` in front of the value, if there is room. Returns the column behind.
static guint put_working(Canvas *canvas, guint row, guint label, const Checks *checks,
                         const Requirement *made)
{
    enum { WORKING_COLUMN = 6, VALUE_ROOM = 9 };
    const Agenda agenda = checks_agenda(checks);
    g_autofree char *words =
        made->value && label < WORKING_COLUMN ? working_words(&agenda, made) : NULL;
    if (!words || WORKING_COLUMN + canvas_text_width(canvas, words) + VALUE_ROOM > VALUE_END)
        return label;
    return canvas_put(canvas, row, WORKING_COLUMN, 0, plain, words);
}

// The place; a check without places has its name in the row above.
static const char *line_label(const Requirement *made)
{
    gboolean worked_out = made->check && made->check->formula_text;
    return *made->place ? made->place : worked_out ? "result" : "";
}

// What stands in the field: what is typed, else the answer that was found.
static const char *field_words(const Checks *checks, const Requirement *made)
{
    return *checks->typed || !made->answer || !made->finding ? checks->typed : made->answer;
}

static void put_line(Canvas *canvas, guint row, const Checks *checks, guint index, guint *focus)
{
    gboolean differs;
    const Requirement *made = checks_at(checks, index, &differs);
    gboolean in_hand = at(checks->now, index) == checks->here;
    guint label =
        canvas_put(canvas, row, LABEL_COLUMN, 18, in_hand ? bold : plain, line_label(made));
    label = put_working(canvas, row, label, checks, made);
    guint room = VALUE_END - label - 1;
    put_verdict(canvas, row, made);
    if (in_hand && (!made->value || *checks->typed || made->answer))
        checks_put_here(canvas, row, VALUE_END, room + 1, field_words(checks, made));
    else
        put_value(canvas, row, room, made, differs);
    if (in_hand)
        *focus = row;
    if (made->value && (made->lower || made->upper)) {
        g_autofree char *strip = strip_text(made);
        strip_paint(canvas, row, STRIP_COLUMN, strip, made->verdict);
    }
    const StruckReading *struck = made->value ? NULL : checks_struck_at(checks, index);
    if (struck)
        checks_put_struck(canvas, row, STRIP_COLUMN, struck);
}

static guint put_list(Canvas *canvas, guint row, const Checks *checks, guint first, guint count,
                      guint *focus)
{
    const Requirement *made = at(checks->now, first);
    g_autofree char *title = made->check && made->check->formula_text
                                 ? g_strdup_printf("%s = %s", made->name, made->check->formula_text)
                                 : g_strdup(made->name);
    checks_put_limits(canvas, row, checks, first);
    row = canvas_wrap(canvas, row, 1, STRIP_COLUMN - 3, plain, title);
    if (made->check && terms_are_told(made->check))
        row = terms_paint(canvas, row, checks, made, focus);
    for (guint i = 0; i < count; i++)
        put_line(canvas, row++, checks, first + i, focus);
    return row + 1;
}

static guint put_check(Canvas *canvas, guint row, const Checks *checks, const PlanCheck *check,
                       guint *focus)
{
    guint first = 0, count = checks_span(checks, check, &first);
    if (count == 0)
        return row;
    gboolean table = check->places->len > 1 && count == places_count(check->places);
    return table ? table_paint(canvas, row, checks, first, focus)
                 : put_list(canvas, row, checks, first, count, focus);
}

// THE STEP --------------------------------------------------------------------------------------

// Whether it is seen as a term of what is worked out from it, and needs no line of its own.
static gboolean is_told_as_term(const Checks *checks, const PlanCheck *check)
{
    for (guint i = 0; check->limits->len == 0 && i < checks->step->checks->len; i++) {
        const PlanCheck *derived = g_ptr_array_index(checks->step->checks, i);
        if (check_rests_on(derived, check) && terms_are_told(derived))
            return check->places->len == 0;
    }
    return FALSE;
}

// Whether a group's check is painted in full already.
static gboolean is_painted(const Checks *checks, const Group *group)
{
    const PlanCheck *check = group->first->check;
    const PlanCheck *in_hand = checks->here ? checks->here->check : NULL;
    return check && in_hand &&
           (check == in_hand || check_rests_on(check, in_hand) ||
            (is_told_as_term(checks, in_hand) && is_told_as_term(checks, check)));
}

// Of what is worked out from the check in hand, or is it, the first that its gauge cannot decide.
static guint put_coarse(Canvas *canvas, guint row, const Checks *checks, const PlanCheck *in_hand)
{
    for (guint i = 0; i < checks->now->requirements->len; i++) {
        if (at(checks->now, i)->step != checks->step)
            continue;
        const Requirement *made = checks_at(checks, i, NULL);
        if (!made->check || !is_coarse(made))
            continue;
        if (made->check == in_hand || check_rests_on(made->check, in_hand))
            return coarse_paint(canvas, row, checks, made);
    }
    return row;
}

guint checks_paint(Canvas *canvas, guint row, const Checks *checks, guint *focus)
{
    const PlanCheck *in_hand = checks->here ? checks->here->check : NULL;
    const GPtrArray *all = checks->step->checks;
    const char *apart = checks->apart;
    if (in_hand && !is_told_as_term(checks, in_hand))
        row = put_check(canvas, row, checks, in_hand, focus);
    for (guint i = 0; in_hand && i < all->len; i++) {
        if (!check_rests_on(g_ptr_array_index(all, i), in_hand))
            continue;
        row = put_check(canvas, row, checks, g_ptr_array_index(all, i), focus);
        if (apart)
            row = canvas_wrap(canvas, row, 1, 78, plain, g_steal_pointer(&apart)) + 1;
    }
    if (apart)
        row = canvas_wrap(canvas, row, 1, 78, plain, apart) + 1;
    if (in_hand)
        row = put_coarse(canvas, row, checks, in_hand);
    const Assessment *seen = checks->supposed ? checks->supposed : checks->now;
    g_autoptr(GArray) groups = groups_of(seen, checks->step);
    for (guint i = 0; i < groups->len; i++) {
        const Group *group = &g_array_index(groups, Group, i);
        if (is_painted(checks, group))
            continue;
        if (checks->here && at(checks->now, group->index) == checks->here)
            *focus = row;
        group_paint(canvas, row++, seen, group);
    }
    return row;
}
