#include "over_list.h"

#include <standbook/sheet/figures.h>
#include <string.h>

OverList *over_list_new(const char *check)
{
    OverList *list = g_new0(OverList, 1);
    list->check = check && *check ? g_strdup(check) : NULL;
    list->checks = g_ptr_array_new();
    list->rows = g_array_new(FALSE, FALSE, sizeof(Over));
    list->known = G_MAXUINT;
    return list;
}

static void clear_shape(OverList *list)
{
    list->place_width = list->value_width = list->engines = 0;
    list->wear = list->away = FALSE;
    g_clear_pointer(&list->words, g_free);
    g_clear_pointer(&list->doubt, g_free);
    g_clear_pointer(&list->from, number_free);
    g_clear_pointer(&list->to, number_free);
}

void over_list_free(OverList *list)
{
    clear_shape(list);
    g_array_unref(list->rows);
    g_ptr_array_unref(list->checks);
    g_free(list->check);
    g_free(list->asked);
    g_free(list);
}

static Session *session_of(const Desk *desk, const char *number)
{
    return number ? g_hash_table_lookup(desk->sessions, number) : NULL;
}

// The build in hand, else the newest that is open.
static Session *leading(const Desk *desk, const GPtrArray *numbers)
{
    Session *session = session_of(desk, desk->number);
    for (guint i = 0; !session && i < numbers->len; i++)
        session = session_of(desk, numbers->pdata[i]);
    return session;
}

// Of the family: those of the plan in hand first, then what only others have.
static void add_checks(const OverList *list, Session *session)
{
    g_autoptr(GPtrArray) checks = over_checks(session_assessment(session));
    for (guint i = 0; i < checks->len; i++) {
        const PlanCheck *check = checks->pdata[i];
        if (!g_ptr_array_find_with_equal_func(list->checks, check->name, g_str_equal, NULL))
            g_ptr_array_add(list->checks, (gpointer)check->name);
    }
}

static gboolean is_family(const Session *session, const Session *lead)
{
    return plan_is_family(session_plan(session), session_plan(lead));
}

// What is worked out from the check asked for, in the build in hand or another; NULL for nothing.
static const char *about_asked(const OverList *list, const Desk *desk, const GPtrArray *numbers)
{
    const char *about = over_about(session_assessment((Session *)list->lead), list->check);
    for (guint i = 0; !about && i < numbers->len; i++) {
        Session *session = session_of(desk, numbers->pdata[i]);
        if (session && is_family(session, list->lead))
            about = over_about(session_assessment(session), list->check);
    }
    return about;
}

// What is shown: the check asked for if it has a value and a limit somewhere, else what is worked
// out from it; the first if none was asked for.
static void settle(OverList *list, const Desk *desk, const GPtrArray *numbers)
{
    if (!list->check) {
        list->check = g_strdup(list->checks->len ? list->checks->pdata[0] : NULL);
        return;
    }
    const char *about = about_asked(list, desk, numbers);
    if (!about || strcmp(about, list->check) == 0)
        return;
    g_free(list->asked);
    list->asked = list->check;
    list->check = g_strdup(about);
}

static void add_rows(OverList *list, const Desk *desk, const char *number)
{
    gpointer key = NULL, session = NULL;
    if (list->check && g_hash_table_lookup_extended(desk->sessions, number, &key, &session) &&
        is_family(session, list->lead))
        over_add(list->rows, key, session_assessment(session), list->check);
}

// Whether what is not shown was read all the same.
static gboolean was_read(const OverList *list, const Desk *desk, const GPtrArray *numbers)
{
    for (guint i = 0; list->check && i < numbers->len; i++) {
        Session *session = session_of(desk, numbers->pdata[i]);
        if (session && is_family(session, list->lead) &&
            over_was_read(session_assessment(session), list->check))
            return TRUE;
    }
    return FALSE;
}

static guint width_of(const char *text)
{
    return (guint)g_utf8_strlen(text, -1);
}

char *over_list_place(const Over *row)
{
    const Requirement *made = row->made;
    gboolean again = made->step != made->check->step;
    return again ? g_strconcat(made->place, *made->place ? ", " : "", made->step->name, NULL)
                 : g_strdup(made->place);
}

// What all rows have in common.
static void find_shape(OverList *list)
{
    for (guint i = 0; i < list->rows->len; i++) {
        const Requirement *made = g_array_index(list->rows, Over, i).made;
        g_autofree char *value = figure_value(made), *doubt = figure_doubt(made);
        g_autofree char *place = over_list_place(&g_array_index(list->rows, Over, i));
        list->place_width = MAX(list->place_width, width_of(place));
        list->value_width = MAX(list->value_width, width_of(value));
        list->wear = list->wear || made->wear;
        list->away = list->away || over_wears_away(made);
        list->engines += over_list_is_first(list, i) ? 1 : 0;
        if (!list->doubt)
            list->doubt = g_steal_pointer(&doubt);
        else if (strcmp(list->doubt, doubt) != 0)
            *list->doubt = '\0';
    }
    if (over_window(list->rows, &list->from, &list->to))
        list->words = over_words(list->rows);
}

static void look_again(OverList *list, const Desk *desk)
{
    g_autoptr(GPtrArray) numbers = desk_numbers(desk);
    Session *lead = leading(desk, numbers);
    g_ptr_array_set_size(list->checks, 0);
    g_array_set_size(list->rows, 0);
    clear_shape(list);
    list->lead = lead;
    if (!lead)
        return;
    add_checks(list, lead);
    for (guint i = 0; i < numbers->len; i++) {
        Session *session = session_of(desk, numbers->pdata[i]);
        if (session && session != lead && is_family(session, lead))
            add_checks(list, session);
    }
    settle(list, desk, numbers);
    for (guint i = 0; i < numbers->len; i++)
        add_rows(list, desk, numbers->pdata[i]);
    list->unlimited = list->rows->len == 0 && was_read(list, desk, numbers);
    find_shape(list);
}

void over_list_look(OverList *list, const Desk *desk)
{
    guint known = desk_entries_known(desk);
    if (list->known == known)
        return;
    look_again(list, desk);
    list->known = known;
}

void over_list_turn(OverList *list, const Desk *desk, const char *check)
{
    g_clear_pointer(&list->asked, g_free);
    g_free(list->check);
    list->check = g_strdup(check);
    list->known = G_MAXUINT;
    over_list_look(list, desk);
}

void over_list_next(OverList *list, const Desk *desk)
{
    guint at = 0;
    over_list_look(list, desk);
    if (list->checks->len == 0)
        return;
    gboolean there = list->check &&
                     g_ptr_array_find_with_equal_func(list->checks, list->check, g_str_equal, &at);
    over_list_turn(list, desk, list->checks->pdata[there ? (at + 1) % list->checks->len : 0]);
}

gboolean over_list_is_first(const OverList *list, guint row)
{
    return row == 0 || strcmp(g_array_index(list->rows, Over, row).number,
                              g_array_index(list->rows, Over, row - 1).number) != 0;
}

guint over_list_engine(const OverList *list, guint row)
{
    guint engine = 0;
    for (guint i = 0; i <= row && i < list->rows->len; i++)
        engine += over_list_is_first(list, i) ? 1 : 0;
    return engine;
}

const char *over_list_build(const OverList *list, guint64 engine)
{
    for (guint i = 0, engines = 0; i < list->rows->len; i++) {
        engines += over_list_is_first(list, i) ? 1 : 0;
        if (engines == engine)
            return g_array_index(list->rows, Over, i).number;
    }
    return NULL;
}
