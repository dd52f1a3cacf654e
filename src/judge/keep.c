#include <standbook/judge/keep.h>

#include <standbook/base/error.h>
#include <standbook/record/kind.h>
#include <string.h>

const char EDITION[] = "7";

static json_t *text_or_null(const char *text)
{
    return text && *text ? json_string(text) : json_null();
}

static json_t *keep_requirement(const Requirement *made)
{
    g_autofree char *name = requirement_name(made);
    g_autofree char *value = made->value ? number_text(made->value) : NULL;
    json_t *kept = json_object();
    json_object_set_new(kept, "name", json_string(name));
    json_object_set_new(kept, "verdict",
                        json_string(made->withdrawn ? "withdrawn" : verdict_words(made->verdict)));
    json_object_set_new(kept, "reason", text_or_null(reason_words(made->reason)));
    json_object_set_new(kept, "value", text_or_null(value ? value : made->answer));
    json_object_set_new(kept, "entry", made->entry ? json_integer(made->entry) : json_null());
    return kept;
}

char *assessment_keep(const Assessment *assessment)
{
    json_t *kept = json_object(), *counts = json_object(), *requirements = json_array();
    for (guint i = 0; i < VERDICTS; i++)
        json_object_set_new(counts, verdict_words((Verdict)i), json_integer(assessment->counts[i]));
    for (guint i = 0; i < assessment->requirements->len; i++)
        json_array_append_new(requirements, keep_requirement(assessment->requirements->pdata[i]));
    json_object_set_new(kept, "edition", json_string(EDITION));
    json_object_set_new(kept, "upto", json_integer(assessment->upto));
    json_object_set_new(kept, "counts", counts);
    json_object_set_new(kept, "requirements", requirements);
    char *dumped = json_dumps(kept, JSON_COMPACT);
    char *text = g_strdup(dumped);
    free(dumped);
    json_decref(kept);
    return text;
}

static char *judged_words(const char *verdict, const char *reason)
{
    return reason && *reason ? g_strdup_printf("%s · %s", verdict, reason) : g_strdup(verdict);
}

static char *kept_words(const json_t *one)
{
    const char *verdict = json_string_value(json_object_get(one, "verdict"));
    return judged_words(verdict ? verdict : "?", json_string_value(json_object_get(one, "reason")));
}

// By name, each with what it was judged then.
static GHashTable *kept_by_name(const json_t *kept)
{
    GHashTable *by_name = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, g_free);
    size_t index;
    json_t *one;
    json_array_foreach(json_object_get(kept, "requirements"), index, one)
    {
        const char *name = json_string_value(json_object_get(one, "name"));
        if (name)
            g_hash_table_insert(by_name, g_strdup(name), kept_words(one));
    }
    return by_name;
}

// What is judged differently alike: of one check or bolt set, at one stage.
typedef struct {
    const Requirement *made; // the first of them
    char *said;              // `pass then, in doubt · tool today`
    GPtrArray *places;       // const char *: of all of them
} Difference;

static void difference_free(gpointer data)
{
    Difference *difference = data;
    g_free(difference->said);
    g_ptr_array_unref(difference->places);
    g_free(difference);
}

// How a requirement is judged differently; NULL if it is not.
static char *difference_said(GHashTable *then, const Requirement *made)
{
    g_autofree char *name = requirement_name(made);
    g_autofree char *today =
        judged_words(made->withdrawn ? "withdrawn" : verdict_words(made->verdict),
                     made->withdrawn ? "" : reason_words(made->reason));
    const char *before = g_hash_table_lookup(then, name);
    if (!before)
        return g_strdup_printf("not asked then, %s today", today);
    return strcmp(before, today) == 0 ? NULL : g_strdup_printf("%s then, %s today", before, today);
}

// The axes of its places; NULL where they are not told in runs.
static const GPtrArray *axes_of(const Requirement *made)
{
    const PlanTightening *tightening =
        made->asked == ASKED_BOLT ? plan_tightening(made->step, made->name) : NULL;
    return made->check ? made->check->places : tightening ? tightening->group->axes : NULL;
}

static gboolean is_alike(const Difference *difference, const Requirement *made, const char *said)
{
    const Requirement *first = difference->made;
    return first->asked == made->asked && first->step == made->step &&
           first->stage == made->stage && strcmp(first->name, made->name) == 0 && axes_of(made) &&
           strcmp(difference->said, said) == 0;
}

static void difference_add(GPtrArray *all, const Requirement *made,
                           char *said) // takes what is said
{
    Difference *found = NULL;
    for (guint i = 0; i < all->len && !found; i++)
        found = is_alike(all->pdata[i], made, said) ? all->pdata[i] : NULL;
    if (!found) {
        found = g_new(Difference, 1);
        *found = (Difference){made, g_strdup(said), g_ptr_array_new()};
        g_ptr_array_add(all, found);
    }
    g_ptr_array_add(found->places, made->place);
    g_free(said);
}

// `bolt caps in Block[1 to 3], stage 1: pass then, in doubt · tool today`
static char *difference_words(const Difference *difference)
{
    g_autofree char *name = requirement_name(difference->made);
    if (difference->places->len == 1)
        return g_strconcat(name, ": ", difference->said, NULL);
    g_autofree char *one = g_strdup_printf("[%s]", difference->made->place);
    g_autofree char *runs = places_runs(axes_of(difference->made), difference->places);
    const char *place = strstr(name, one);
    return g_strdup_printf("%.*s[%s]%s: %s", (int)(place - name), name, runs, place + strlen(one),
                           difference->said);
}

static void compare_all(GPtrArray *differences, GHashTable *then, const Assessment *today)
{
    g_autoptr(GPtrArray) all = g_ptr_array_new_with_free_func(difference_free);
    for (guint i = 0; i < today->requirements->len; i++) {
        const Requirement *made = today->requirements->pdata[i];
        char *said = difference_said(then, made);
        if (said)
            difference_add(all, made, said);
    }
    for (guint i = 0; i < all->len; i++)
        g_ptr_array_add(differences, difference_words(all->pdata[i]));
}

// What was asked then and is not today: an addition that was struck.
static void tell_gone(GPtrArray *differences, GHashTable *then, const Assessment *today)
{
    for (guint i = 0; i < today->requirements->len; i++) {
        g_autofree char *name = requirement_name(today->requirements->pdata[i]);
        g_hash_table_remove(then, name);
    }
    g_autoptr(GList) gone = g_list_sort(g_hash_table_get_keys(then), (GCompareFunc)strcmp);
    for (GList *name = gone; name; name = name->next)
        g_ptr_array_add(differences,
                        g_strdup_printf("%s: %s then, not asked today", (char *)name->data,
                                        (char *)g_hash_table_lookup(then, name->data)));
}

// Why they may differ though nothing was entered: a sentence where the rules had another edition.
static void tell_edition(GPtrArray *differences, const char *then)
{
    guint64 sealed = 0, today = 0;
    if (!differences->len || !then ||
        !g_ascii_string_to_unsigned(then, 10, 1, G_MAXUINT, &sealed, NULL) ||
        !g_ascii_string_to_unsigned(EDITION, 10, 1, G_MAXUINT, &today, NULL) || sealed == today)
        return;
    g_ptr_array_add(
        differences,
        g_strdup_printf("the rules are edition %s %s, the seal was made under edition %u", EDITION,
                        sealed < today ? "now" : "here", (guint)sealed));
}

GPtrArray *assessment_differences(const char *kept, const Assessment *today, GError **error)
{
    json_t *json = json_loads(kept, 0, NULL);
    if (!json_is_array(json_object_get(json, "requirements"))) {
        json_decref(json);
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO,
                    "the kept assessment is damaged; run `standbook verify`");
        return NULL;
    }
    g_autoptr(GHashTable) then = kept_by_name(json);
    g_autofree char *edition = g_strdup(json_string_value(json_object_get(json, "edition")));
    json_decref(json);
    GPtrArray *differences = g_ptr_array_new_with_free_func(g_free);
    compare_all(differences, then, today);
    tell_gone(differences, then, today);
    tell_edition(differences, edition);
    return differences;
}
