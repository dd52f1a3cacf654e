#include "find_list.h"

#include <standbook/work/builds_meant.h>
#include <standbook/work/parts_at.h>
#include <standbook/work/told.h>
#include <string.h>

// Places of the first build that answers, and of every other build.
enum { PLACES_HERE = 3, PLACES_ELSEWHERE = 1 };

static void build_clear(gpointer data)
{
    FindBuild *build = data;
    g_free(build->number);
    naming_free(build->naming);
}

static void add_build(FindList *list, const char *number)
{
    FindBuild build = {.number = g_strdup(number)};
    g_array_append_val(list->builds, build);
}

FindList *find_list_new(const Desk *desk)
{
    FindList *list = g_new0(FindList, 1);
    g_autoptr(GPtrArray) numbers = desk_numbers(desk);
    list->builds = g_array_new(FALSE, FALSE, sizeof(FindBuild));
    list->lines = g_array_new(FALSE, FALSE, sizeof(FindLine));
    list->meant = g_ptr_array_new_with_free_func(g_free);
    g_array_set_clear_func(list->builds, build_clear);
    if (desk->number)
        add_build(list, desk->number);
    for (guint i = 0; i < numbers->len; i++)
        if (g_strcmp0(numbers->pdata[i], desk->number) != 0)
            add_build(list, numbers->pdata[i]);
    return list;
}

static void forget_told(FindList *list)
{
    g_clear_pointer(&list->told, g_ptr_array_unref);
    g_clear_pointer(&list->lot, g_free);
    g_clear_pointer(&list->lot_words, g_free);
    list->told_of = (FindLine){0};
}

void find_list_free(FindList *list)
{
    forget_told(list);
    g_array_unref(list->lines);
    g_array_unref(list->builds);
    g_clear_pointer(&list->found, g_ptr_array_unref);
    g_free(list->asked);
    g_free(list->left);
    g_ptr_array_unref(list->meant);
    g_free(list);
}

gboolean find_list_open_next(FindList *list, Desk *desk)
{
    if (list->opened >= list->builds->len)
        return FALSE;
    desk_session(desk, g_array_index(list->builds, FindBuild, list->opened++).number);
    return TRUE;
}

// Makes ready what was opened or grew since. TRUE if there was any.
static gboolean make_ready(FindList *list, const Desk *desk)
{
    gboolean news = FALSE;
    for (guint i = 0; i < list->builds->len; i++) {
        FindBuild *build = &g_array_index(list->builds, FindBuild, i);
        build->session = g_hash_table_lookup(desk->sessions, build->number);
        guint entries = build->session ? session_entries(build->session)->len : 0;
        if (!build->session || (build->naming && build->entries == entries))
            continue;
        naming_free(build->naming);
        build->naming = naming_new(session_assessment(build->session));
        build->entries = entries;
        news = TRUE;
    }
    return news;
}

const FindBuild *find_list_build(const FindList *list, const char *number)
{
    for (guint i = 0; i < list->builds->len; i++) {
        const FindBuild *build = &g_array_index(list->builds, FindBuild, i);
        if (build->naming && strcmp(build->number, number) == 0)
            return build;
    }
    return NULL;
}

const Requirement *find_list_about(const FindBuild *build, const Found *found)
{
    const GPtrArray *entries = session_entries(build->session);
    return found->seq >= 1 && found->seq <= (gint64)entries->len
               ? requirement_about(session_assessment(build->session),
                                   entries->pdata[found->seq - 1])
               : NULL;
}

// WHAT IS TOLD OF THE FIRST PLACE ----------------------------------------------------------------

static Agenda agenda_of(const FindBuild *build)
{
    const GPtrArray *entries = session_entries(build->session);
    return (Agenda){session_plan(build->session), session_assessment(build->session),
                    (const Entry *const *)entries->pdata, entries->len};
}

// The parts of that lot in a build, in words; NULL for none.
static char *lot_in(const FindBuild *build, const char *lot)
{
    g_autoptr(GPtrArray) named = naming_asked(build->naming, lot, G_MAXUINT);
    for (guint i = named->len; i-- > 0;) {
        const Requirement *made = named->pdata[i];
        if (made->asked != ASKED_FIT || g_strcmp0(made->answer, lot) != 0)
            g_ptr_array_remove_index(named, i);
    }
    return named->len ? part_names(named) : NULL;
}

// Where the lot fitted there is in all builds.
static void tell_lot(FindList *list, const FindBuild *here, const GPtrArray *parts)
{
    const Shop *shop = session_shop(here->session);
    for (guint i = 0; i < parts->len && !list->lot; i++) {
        const char *answer = ((const Requirement *)parts->pdata[i])->answer;
        list->lot = shop_find(shop, "lot", answer) ? g_strdup(answer) : NULL;
    }
    if (!list->lot)
        return;
    GString *words = g_string_new(NULL);
    for (guint i = 0; i < list->builds->len; i++) {
        const FindBuild *build = &g_array_index(list->builds, FindBuild, i);
        g_autofree char *places = build->naming ? lot_in(build, list->lot) : NULL;
        if (places && build == here)
            g_string_append_printf(words, "%s%s here", words->len ? "; " : "", places);
        else if (places)
            g_string_append_printf(words, "%s%s %s", words->len ? "; " : "", build->number, places);
    }
    list->lot_words = g_string_free(words, FALSE);
}

char *find_list_lot(FindList *list, const Desk *desk, const Requirement *made)
{
    make_ready(list, desk);
    const FindBuild *here = find_list_build(list, desk->number);
    if (!here)
        return NULL;
    const Agenda agenda = agenda_of(here);
    g_autoptr(GPtrArray) parts = parts_at(&agenda, made);
    forget_told(list);
    tell_lot(list, here, parts);
    return list->lot ? g_strdup_printf("lot %s: %s", list->lot, list->lot_words) : NULL;
}

// Worked out anew only when another place is meant, or there is something new.
static void tell(FindList *list, const FindLine *line, Moment now)
{
    if (list->told && line->made == list->told_of.made && line->build == list->told_of.build &&
        list->told_at == line->build->entries)
        return;
    const Agenda agenda = agenda_of(line->build);
    g_autoptr(Taken) taken = taken_new(agenda.entries, agenda.count, NULL);
    g_autoptr(GPtrArray) parts = parts_at(&agenda, line->made);
    forget_told(list);
    list->told_of = *line;
    list->told_at = line->build->entries;
    list->told = told_lines(&agenda, taken, line->made, now);
    tell_lot(list, line->build, parts);
}

// LINES ------------------------------------------------------------------------------------------

// What the words name in a build, nothing if they mean another.
static GPtrArray *asked_of(const FindList *list, const FindBuild *build, guint most)
{
    gboolean meant = list->meant->len == 0 || g_ptr_array_find_with_equal_func(
                                                  list->meant, build->number, g_str_equal, NULL);
    return build->naming && meant ? build_asked(session_shop(build->session), build->number,
                                                build->naming, list->left, most)
                                  : g_ptr_array_new();
}

// The places that the words name in a build; of those that `must_stand` only where something was
// done.
static gboolean add_places(FindList *list, const FindBuild *build, guint most, gboolean must_stand)
{
    guint before = list->lines->len;
    g_autoptr(GPtrArray) named = asked_of(list, build, most);
    for (guint i = 0; i < named->len; i++) {
        const FindLine line = {.build = build, .made = named->pdata[i]};
        if (line.made->entry || !must_stand)
            g_array_append_val(list->lines, line);
    }
    return list->lines->len > before;
}

// Where no place has that name: the place that the newest of the entries found is about.
static void add_place_of_entry(FindList *list)
{
    for (guint i = 0; list->found && i < list->found->len && list->lines->len == 0; i++) {
        const Found *found = list->found->pdata[i];
        const FindBuild *build = find_list_build(list, found->when ? found->label : "");
        const Requirement *made = build ? find_list_about(build, found) : NULL;
        const FindLine line = {.build = build, .made = made};
        if (made)
            g_array_append_val(list->lines, line);
    }
}

static const Found *found_at(const FindList *list, guint at)
{
    return list->found->pdata[at];
}

// Whether it is said among what was found where the lot of the first place is.
static gboolean lot_is_found(const FindList *list)
{
    for (guint i = 0; list->found && i < list->found->len; i++)
        if (!found_at(list, i)->when && strcmp(found_at(list, i)->kind, "lot") == 0 &&
            strcmp(found_at(list, i)->by, list->lot) == 0)
            return TRUE;
    return FALSE;
}

static void add_found(FindList *list)
{
    for (guint i = 0; list->found && i < list->found->len; i++) {
        const FindLine line = {.found = found_at(list, i)};
        g_array_append_val(list->lines, line);
    }
}

// The first build in which the place that the words name best was worked on, else the first that
// names one at all; how many there are if none does.
static guint first_answering(const FindList *list)
{
    guint named_in = list->builds->len;
    for (guint i = 0; i < list->builds->len; i++) {
        const FindBuild *build = &g_array_index(list->builds, FindBuild, i);
        g_autoptr(GPtrArray) named = asked_of(list, build, 1);
        if (named->len == 0)
            continue;
        if (((const Requirement *)named->pdata[0])->entry)
            return i;
        named_in = MIN(named_in, i);
    }
    return named_in;
}

// The first build that answers comes with the most places, in front of all others; that in hand
// comes last where nothing was done there yet.
static void fill(FindList *list, Moment now)
{
    guint first = first_answering(list), here = 0;
    g_array_set_size(list->lines, 0);
    if (first < list->builds->len)
        add_places(list, &g_array_index(list->builds, FindBuild, first), PLACES_HERE, FALSE);
    here = list->lines->len;
    for (guint i = 1; i < list->builds->len; i++)
        if (i != first)
            add_places(list, &g_array_index(list->builds, FindBuild, i), PLACES_ELSEWHERE, TRUE);
    if (first > 0 && first < list->builds->len)
        add_places(list, &g_array_index(list->builds, FindBuild, 0), PLACES_ELSEWHERE, FALSE);
    add_place_of_entry(list);
    list->places = list->lines->len;
    if (list->places)
        tell(list, &g_array_index(list->lines, FindLine, 0), now);
    else
        forget_told(list);
    const FindLine lot = {.build = list->told_of.build};
    if (list->lot && !lot_is_found(list))
        g_array_insert_val(list->lines, MAX(here, 1), lot);
    add_found(list);
}

void find_list_ask(FindList *list, const Desk *desk, const char *words)
{
    gboolean news = make_ready(list, desk);
    if (!news && g_strcmp0(list->asked, words) == 0)
        return;
    g_autofree char *before = list->asked;
    list->asked = g_strdup(words);
    g_free(list->left);
    g_ptr_array_set_size(list->meant, 0);
    list->left =
        desk->shop ? builds_meant(session_shop(desk->shop), words, list->meant) : g_strdup(words);
    fill(list, desk->now);
}

gboolean find_list_keep(FindList *list, const Desk *desk, const char *words, GError **error)
{
    g_autoptr(GHashTable) known = g_hash_table_new(g_str_hash, g_str_equal);
    for (guint i = 0; i < list->builds->len; i++) {
        const FindBuild *build = &g_array_index(list->builds, FindBuild, i);
        if (build->session)
            g_hash_table_insert(known, build->number, (gpointer)session_entries(build->session));
    }
    GPtrArray *found = found_words(desk->book, words, known, error);
    if (!found)
        return FALSE;
    find_list_let_go(list);
    list->found = found;
    g_clear_pointer(&list->asked, g_free);
    find_list_ask(list, desk, words);
    return TRUE;
}

void find_list_let_go(FindList *list)
{
    g_array_set_size(list->lines, 0);
    g_clear_pointer(&list->found, g_ptr_array_unref);
    g_clear_pointer(&list->asked, g_free);
}

guint find_list_builds(const FindList *list)
{
    g_autoptr(GHashTable) numbers = g_hash_table_new(g_str_hash, g_str_equal);
    for (guint i = 0; i < list->lines->len; i++) {
        const FindLine *line = &g_array_index(list->lines, FindLine, i);
        const char *number = line->made    ? line->build->number
                             : line->found ? line->found->label
                                           : NULL;
        if (number && find_list_build(list, number))
            g_hash_table_add(numbers, (gpointer)number);
    }
    return g_hash_table_size(numbers);
}
