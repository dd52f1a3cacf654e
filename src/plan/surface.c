#include "surface.h"

#include <standbook/plan/tree.h>
#include <string.h>

// A walk over the characters of a file.
typedef struct {
    const char *at, *end;
    gsize index; // in characters from the start
    guint line, column;
} Walk;

static Walk walk_begin(const char *bytes, gsize length)
{
    return (Walk){.at = bytes, .end = bytes + length, .line = 1, .column = 1};
}

// Steps over one valid character.
static void walk_on(Walk *walk)
{
    gboolean new_line = *walk->at == '\n';
    walk->at = g_utf8_next_char(walk->at);
    walk->index++;
    walk->line += new_line ? 1 : 0;
    walk->column = new_line ? 1 : walk->column + 1;
}

gboolean surface_is_hidden(gunichar character)
{
    GUnicodeType type = g_unichar_type(character);
    return type == G_UNICODE_CONTROL || type == G_UNICODE_FORMAT ||
           type == G_UNICODE_LINE_SEPARATOR || type == G_UNICODE_PARAGRAPH_SEPARATOR;
}

// Adds the fault of the character the walk stands on. Returns FALSE if reading cannot go on.
static gboolean check_character(const Walk *walk, gboolean *tab_seen, Faults *faults)
{
    // GLib takes a NUL inside the bytes for a broken character.
    gunichar character = *walk->at ? g_utf8_get_char_validated(walk->at, walk->end - walk->at) : 0;
    if (character == (gunichar)-1 || character == (gunichar)-2) {
        faults_add(faults, walk->line, walk->column,
                   "this is not UTF-8 text (byte 0x%02X); save the plan as UTF-8",
                   (unsigned)(guchar)*walk->at);
        return FALSE;
    }
    if (character == '\t') {
        if (!*tab_seen)
            faults_add(faults, walk->line, walk->column, "there is a tab here; write spaces");
        *tab_seen = TRUE;
        return TRUE;
    }
    gboolean line_end =
        character == '\n' || (character == '\r' && walk->at + 1 < walk->end && walk->at[1] == '\n');
    if (line_end || !surface_is_hidden(character))
        return TRUE;
    faults_add(faults, walk->line, walk->column,
               "there is a hidden character here (U+%04X); take it out", character);
    return FALSE;
}

gboolean surface_check(const char *bytes, gsize length, Faults *faults)
{
    if (length > TREE_BYTES) {
        faults_add(faults, 1, 1, "the file is larger than 2 MB, so it is no plan; check the name");
        return FALSE;
    }
    gboolean tab_seen = FALSE;
    Walk walk = walk_begin(bytes, length);
    while (walk.at < walk.end) {
        if (!check_character(&walk, &tab_seen, faults))
            return FALSE;
        walk_on(&walk);
    }
    return !tab_seen;
}

// Whether the character at `index` stands in a quoted text. `next` moves on through the pairs.
static gboolean in_quotes(const GArray *quoted, gsize *next, gsize index)
{
    while (*next + 1 < quoted->len && g_array_index(quoted, gsize, *next + 1) <= index)
        *next += 2;
    return *next + 1 < quoted->len && g_array_index(quoted, gsize, *next) <= index;
}

static gboolean begins_comment_by_slip(const Walk *walk, gboolean line_empty)
{
    return *walk->at == '#' && !line_empty && walk->at[-1] == ' ' && walk->at + 1 < walk->end &&
           !strchr(" #\r\n", walk->at[1]);
}

void surface_find_comments(const char *bytes, gsize length, const GArray *quoted, Faults *faults)
{
    gsize next = 0;
    gboolean line_empty = TRUE, comment = FALSE;
    for (Walk walk = walk_begin(bytes, length); walk.at < walk.end; walk_on(&walk)) {
        if (walk.column == 1) {
            line_empty = TRUE;
            comment = FALSE;
        }
        if (*walk.at == '#' && !comment && !in_quotes(quoted, &next, walk.index)) {
            comment = line_empty || walk.at[-1] == ' ';
            if (begins_comment_by_slip(&walk, line_empty))
                faults_add(faults, walk.line, walk.column,
                           "from this # on the line would be left out as a comment; put quotes "
                           "round the text, or a space after # if it is a comment");
        }
        line_empty = line_empty && *walk.at == ' ';
    }
}
