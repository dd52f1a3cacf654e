#include "store.h"
#include "subcommands.h"

#include <errno.h>
#include <standbook/base/text.h>
#include <standbook/book/care.h>
#include <string.h>

char *store_path(const Common *common)
{
    const char *named = common->store ? common->store : g_getenv("STANDBOOK_STORE");
    return named && *named
               ? g_strdup(named)
               : g_build_filename(g_get_user_data_dir(), "standbook", "standbook.db", NULL);
}

Book *store_open(const Common *common, BookUse use, GError **error)
{
    g_autofree char *path = store_path(common);
    return book_open(path, use, error);
}

Moment wall_clock(gpointer user)
{
    (void)user;
    return moment_now();
}

char *random_id(gpointer user)
{
    (void)user;
    return g_uuid_string_random();
}

static int store_new(GStrv words, Common *common)
{
    g_autofree char *path = words[0] ? g_strdup(words[0]) : store_path(common);
    g_autofree char *folder = g_path_get_dirname(path);
    g_autofree char *shown = text_path(path), *shown_folder = text_path(folder);
    GError *error = NULL;
    if (g_mkdir_with_parents(folder, 0700) != 0)
        return fail_saying(3, "the folder %s cannot be made: %s", shown_folder, g_strerror(errno));
    if (!book_create(path, &error))
        return fail_with(error);
    say("%s: a new store\n", shown);
    return 0;
}

static int store_rebuild(GStrv words, Common *common)
{
    (void)words;
    GError *error = NULL;
    g_autoptr(Book) book = store_open(common, BOOK_WRITE, &error);
    if (!book || !book_rebuild(book, &error))
        return fail_with(error);
    say("made again from the entries\n");
    return 0;
}

static int store_where(GStrv words, Common *common)
{
    (void)words;
    g_autofree char *path = store_path(common);
    say_clean(path);
    return 0;
}

int store_run(int argc, char **argv, Common *common)
{
    static const Verb verbs[] = {
        {"new", "[FILE]", 0, 1, store_new, "makes an empty store; overwrites nothing, ever"},
        {"rebuild", "", 0, 0, store_rebuild, "makes the tables that answer questions again"},
        {"where", "", 0, 0, store_where, "says which file is used"},
        {NULL, NULL, 0, 0, NULL, NULL},
    };
    return verbs_run(argc, argv, common, verbs, "");
}
