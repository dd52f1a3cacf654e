#include <standbook/work/builds_meant.h>

#include "found_inside.h"

#include <string.h>

// A word of fewer letters, or a number of fewer digits, names too much else.
enum { LEAST_LETTERS = 3 };

static gboolean is_same(const char *one, const char *other)
{
    g_autofree char *first = g_utf8_casefold(one, -1), *second = g_utf8_casefold(other, -1);
    return strcmp(first, second) == 0;
}

// Whether it is the serial, or the number behind its stroke.
static gboolean is_serial(const char *serial, const char *word)
{
    const char *stroke = strrchr(serial, '/');
    return is_same(serial, word) || (stroke && is_same(stroke + 1, word));
}

static gboolean is_numbered(const Entry *build, const Entry *engine, const char *word)
{
    if (strspn(word, "0123456789") == strlen(word) && strlen(word) < LEAST_LETTERS)
        return FALSE;
    return is_same(entry_text(build, "number"), word) ||
           (engine && is_serial(entry_text(engine, "serial"), word));
}

// Whether it is a word of what the engine is called.
static gboolean is_called(const Entry *engine, const char *word)
{
    const char *note = engine ? entry_text(engine, "note") : NULL;
    if (!note || g_utf8_strlen(word, -1) < LEAST_LETTERS)
        return FALSE;
    g_autofree char *name = g_strndup(note, strcspn(note, ","));
    g_autoptr(GPtrArray) words = found_bare_words(name);
    for (guint i = 0; i < words->len; i++)
        if (is_same(words->pdata[i], word))
            return TRUE;
    return FALSE;
}

static const Entry *engine_of(const Shop *shop, const Entry *build)
{
    return build ? shop_by_id(shop, "engine", entry_text(build, "engine")) : NULL;
}

static void put_word(GString *out, const char *word)
{
    g_string_append_printf(out, "%s%s", out->len ? " " : "", word);
}

// Adds the number of each build that the word is the number of. Whether there is any.
static gboolean add_numbered(const Shop *shop, const GPtrArray *builds, const char *word,
                             GPtrArray *numbers)
{
    gboolean any = FALSE;
    for (guint i = 0; i < builds->len; i++) {
        const Entry *build = builds->pdata[i];
        if (!is_numbered(build, engine_of(shop, build), word))
            continue;
        g_ptr_array_add(numbers, g_strdup(entry_text(build, "number")));
        any = TRUE;
    }
    return any;
}

char *builds_meant(const Shop *shop, const char *words, GPtrArray *numbers)
{
    g_autoptr(GPtrArray) builds = shop_all(shop, "build", NULL);
    g_autoptr(GPtrArray) all = found_bare_words(words);
    GString *left = g_string_new(NULL);
    for (guint i = 0; i < all->len; i++)
        if (!add_numbered(shop, builds, all->pdata[i], numbers))
            put_word(left, all->pdata[i]);
    return g_string_free(left, FALSE);
}

GPtrArray *builds_named(const Shop *shop, const char *word)
{
    g_autoptr(GPtrArray) builds = shop_all(shop, "build", NULL);
    GPtrArray *ids = g_ptr_array_new();
    for (guint i = 0; i < builds->len; i++) {
        const Entry *build = builds->pdata[i], *engine = engine_of(shop, build);
        if (is_numbered(build, engine, word) || is_called(engine, word))
            g_ptr_array_add(ids, (gpointer)entry_text(build, "id"));
    }
    return ids;
}

GPtrArray *build_asked(const Shop *shop, const char *number, const Naming *naming,
                       const char *words, guint most)
{
    GPtrArray *named = naming_asked(naming, words, most);
    const Entry *engine = named->len ? NULL : engine_of(shop, shop_find(shop, "build", number));
    if (!engine)
        return named;
    g_autoptr(GPtrArray) all = found_bare_words(words);
    g_autoptr(GString) left = g_string_new(NULL);
    for (guint i = 0; i < all->len; i++)
        if (!is_called(engine, all->pdata[i]))
            put_word(left, all->pdata[i]);
    g_ptr_array_unref(named);
    return naming_asked(naming, left->str, most);
}
