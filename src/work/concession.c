#include <standbook/work/concession.h>

#include <standbook/record/live.h>
#include <string.h>

enum { SENTENCES_MOST = 9 }; // as many as digits

static const char *const words[CONCESSION_LINES] = {"why",   "instead", "effect",
                                                    "watch", "told",    "answer"};

const char *concession_word(guint line)
{
    return words[line];
}

// ` Instead: `, in front of what that line says.
static char *mark_of(guint line)
{
    return g_strdup_printf(" %c%s: ", g_ascii_toupper(words[line][0]), words[line] + 1);
}

char *concession_reason(const char *const lines[CONCESSION_LINES])
{
    GString *reason = g_string_new(lines[0]);
    for (guint i = 1; i < CONCESSION_LINES; i++) {
        g_autofree char *mark = mark_of(i);
        if (lines[i] && *lines[i])
            g_string_append_printf(reason, "%s%s", mark, lines[i]);
    }
    return g_string_free(reason, FALSE);
}

char *concession_said(const char *reason, guint line)
{
    g_autofree char *mark = line ? mark_of(line) : NULL;
    const char *from = mark ? strstr(reason, mark) : reason;
    if (!from)
        return NULL;
    from += mark ? strlen(mark) : 0;
    const char *end = from + strlen(from);
    for (guint i = line + 1; i < CONCESSION_LINES; i++) {
        g_autofree char *next = mark_of(i);
        const char *found = strstr(from, next);
        end = found && found < end ? found : end;
    }
    return end > from ? g_strndup(from, (gsize)(end - from)) : NULL;
}

char *concession_sentences(const char *reason)
{
    GString *sentences = g_string_new(NULL);
    for (guint i = 0; i < CONCESSION_LINES; i++) {
        g_autofree char *said = concession_said(reason, i);
        gsize length = said ? strlen(said) : 0;
        while (length && strchr(". ", said[length - 1]))
            length--;
        g_autofree char *mark = i ? mark_of(i) : g_strdup("");
        if (length)
            g_string_append_printf(sentences, "%s%s%.*s", sentences->len ? "." : "",
                                   sentences->len ? mark : g_strchug(mark), (int)length, said);
    }
    return g_string_free(sentences, FALSE);
}

char *conceded_line(const Agenda *agenda, const Requirement *made, guint line)
{
    const char *why = made->conceded && !made->withdrawn
                          ? entry_text(agenda->entries[made->conceded - 1], "why")
                          : NULL;
    return why ? concession_said(why, line) : NULL;
}

GPtrArray *concession_before(const Entry *const *entries, gsize count, guint line)
{
    GPtrArray *said = g_ptr_array_new_with_free_func(g_free);
    g_autofree gboolean *live = g_new0(gboolean, count + 1);
    live_entries(entries, count, live);
    for (gsize i = count; i-- > 0 && said->len < SENTENCES_MOST;) {
        if (!live[i] || strcmp(entries[i]->kind->name, "concede") != 0)
            continue;
        char *sentence = concession_said(entry_text(entries[i], "why"), line);
        if (sentence && !g_ptr_array_find_with_equal_func(said, sentence, g_str_equal, NULL))
            g_ptr_array_add(said, sentence);
        else
            g_free(sentence);
    }
    return said;
}
