#include "burst.h"

static const Key *key_at(const GArray *keys, guint at)
{
    return &g_array_index(keys, Key, at);
}

gboolean keys_are_one(const GArray *keys)
{
    gboolean same = keys->len && key_at(keys, 0)->kind != PRESSED_CHARACTER;
    for (guint i = 1; i < keys->len; i++)
        same = same && key_at(keys, i)->kind == key_at(keys, 0)->kind;
    return same;
}

gboolean keys_are_held(const GArray *keys)
{
    return keys->len > FINGERS && keys_are_one(keys) &&
           key_at(keys, keys->len - 1)->at - key_at(keys, 0)->at >= (keys->len - 1) * HELD_GAP;
}

gboolean keys_are_burst(const GArray *keys)
{
    gboolean enters = keys_are_one(keys) && key_at(keys, 0)->kind == PRESSED_ENTER;
    return keys->len > FINGERS && !enters && !keys_are_held(keys);
}

static gboolean is_character(const GArray *keys, guint at, gunichar character)
{
    return at < keys->len && key_at(keys, at)->character == character;
}

static gunichar character_of(const GArray *keys, guint at)
{
    return at < keys->len && key_at(keys, at)->kind == PRESSED_CHARACTER
               ? key_at(keys, at)->character
               : 0;
}

// The last key of the sequence (`ESC [ 200 ~`, `ESC O P`) that begins at one; that one itself if
// none does.
static guint sequence_end(const GArray *keys, guint at)
{
    if (!is_character(keys, at, 0x1b))
        return at;
    if (is_character(keys, at + 1, 'O') && character_of(keys, at + 2))
        return at + 2;
    if (!is_character(keys, at + 1, '['))
        return at;
    guint end = at + 2;
    while (character_of(keys, end) >= 0x20 && character_of(keys, end) < 0x40)
        end++;
    return character_of(keys, end) >= 0x40 && character_of(keys, end) < 0x7f ? end : at;
}

static void end_line(GArray *lines, GString *text, gboolean ended)
{
    BurstLine line = {g_strdup(text->str), ended};
    if (text->len)
        g_array_append_val(lines, line);
    else
        g_free(line.text);
    g_string_truncate(text, 0);
}

static void line_clear(gpointer line)
{
    g_free(((BurstLine *)line)->text);
}

GArray *burst_lines(const GArray *keys)
{
    g_autoptr(GString) text = g_string_new(NULL);
    GArray *lines = g_array_new(FALSE, FALSE, sizeof(BurstLine));
    g_array_set_clear_func(lines, line_clear);
    for (guint i = 0; i < keys->len; i++) {
        KeyKind kind = key_at(keys, i)->kind;
        i = sequence_end(keys, i);
        if (kind == PRESSED_ENTER || kind == PRESSED_TAB)
            end_line(lines, text, TRUE);
        else if (kind == PRESSED_CHARACTER && !g_unichar_iscntrl(key_at(keys, i)->character))
            g_string_append_unichar(text, key_at(keys, i)->character);
    }
    end_line(lines, text, FALSE);
    return lines;
}
