// Words on the place in hand: a note, or why a bolt is loosened.
#include "line_words.h"
#include "view.h"

#include <string.h>

// What a note is on, as a log line writes it: the place in hand, its step, "" the build.
typedef struct {
    GPtrArray *on; // char *, in that order, as far as they are known
    guint at;
} Note;

// The argument: the place, and its step behind a line feed; NULL for the build.
static gpointer open(Desk *desk, const char *argument)
{
    Note *note = g_new0(Note, 1);
    g_auto(GStrv) parts = g_strsplit(argument ? argument : "", "\n", 2);
    (void)desk;
    note->on = g_ptr_array_new_with_free_func(g_free);
    for (guint i = 0; parts[i]; i++)
        if (*parts[i])
            g_ptr_array_add(note->on, g_strdup(parts[i]));
    g_ptr_array_add(note->on, g_strdup(""));
    return note;
}

static void close(gpointer state)
{
    Note *note = state;
    g_ptr_array_unref(note->on);
    g_free(note);
}

static gboolean is_last(const Note *note)
{
    return note->at + 1 == note->on->len;
}

static const char *on_words(const Note *note, guint at)
{
    const char *on = note->on->pdata[at];
    return *on ? on : "the build";
}

static void paint_words(const char *next, const char *on, const char *does, const char *typed,
                        Page *page)
{
    page->ask = FALSE;
    page->field = ASKS_TEXT;
    page->means = FALSE;
    page_say(&page->unit, " ");
    page_say(&page->next, "%s", next);
    page_say(&page->then, "%s", on);
    memset(page->keys, 0, sizeof page->keys);
    page->keys[0] = (PageKey){ACTION_TAKE, "Enter", *typed ? does : "leaves, nothing is entered"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "on an empty field leaves"};
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    const Note *note = state;
    g_autofree char *words =
        g_strdup_printf("on %s; or photo and the name of its file", on_words(note, note->at));
    (void)desk;
    paint_words("note", words, "keeps it", typed, page);
    if (!*typed && !is_last(note))
        page->keys[0].word =
            note->at + 2 == note->on->len ? "on the build instead" : "on the step instead";
}

// What was dropped on the terminal, as the file is named: without quotes round it, or `file://`.
static char *file_named(const char *typed)
{
    static const char url[] = "file://";
    g_autofree char *name = g_strstrip(g_strdup(typed));
    gsize length = strlen(name);
    gboolean is_quoted = length > 1 && strchr("'\"", *name) && name[length - 1] == *name;
    char *bare = is_quoted ? g_strndup(name + 1, length - 2) : g_strcompress(name);
    char *file = g_strdup(g_str_has_prefix(bare, url) ? bare + strlen(url) : bare);
    g_free(bare);
    return file;
}

// Whether words behind `photo` name a file: one that is there, or a name with its ending.
static gboolean is_file(const char *said)
{
    return g_file_test(said, G_FILE_TEST_IS_REGULAR) || (strchr(said, '.') && !strchr(said, ' '));
}

// A note, or behind `photo` the name of a picture, which is read for its digest.
static Go enter(gpointer state, Desk *desk, const char *typed)
{
    static const char photo[] = "photo ";
    Note *note = state;
    if (!*typed && is_last(note))
        return go(GO_UP);
    if (!*typed) {
        note->at++;
        return go(GO_STAY);
    }
    const char *on = note->on->pdata[note->at];
    gboolean photographed = g_ascii_strncasecmp(typed, photo, strlen(photo)) == 0;
    g_autofree char *file = photographed ? file_named(typed + strlen(photo)) : NULL;
    gboolean picture = file && is_file(file);
    const char *said = picture ? file : typed;
    g_autofree char *words = line_quoted(said);
    g_autofree char *where = g_strconcat(*on ? " on " : "", on, NULL);
    g_autofree char *line = picture ? g_strdup_printf("photo %s%s", words, where)
                                    : g_strdup_printf("note%s %s", where, words);
    if (!desk_line(desk, line, NULL))
        return go(GO_KEEP);
    desk_last(desk, "%s: %s", picture ? "photo" : "note", said);
    return go(GO_UP);
}

const ViewOps note_view = {
    .name = "note", .small = TRUE, .open = open, .close = close, .paint = paint, .enter = enter};

// The state is what comes loose, as a log line writes it.
static gpointer open_loosen(Desk *desk, const char *argument)
{
    (void)desk;
    return g_strdup(argument);
}

static void paint_loosen(gpointer state, Desk *desk, const char *typed, Page *page)
{
    g_autofree char *words =
        g_strconcat((const char *)state, " comes loose; what rests on it falls", NULL);
    (void)desk;
    paint_words("why loosen?", words, "loosens it", typed, page);
}

static Go enter_loosen(gpointer state, Desk *desk, const char *typed)
{
    if (!*typed)
        return go(GO_UP);
    g_autofree char *words = line_quoted(typed);
    g_autofree char *line = g_strdup_printf("slacken %s %s", (const char *)state, words);
    if (!desk_line(desk, line, NULL))
        return go(GO_KEEP);
    desk_last(desk, "loosened %s: %s", (const char *)state, typed);
    return go(GO_UP);
}

const ViewOps loosen_view = {.name = "loosen",
                             .small = TRUE,
                             .open = open_loosen,
                             .close = g_free,
                             .paint = paint_loosen,
                             .enter = enter_loosen};
