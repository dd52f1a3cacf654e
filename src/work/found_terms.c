#include "found_inside.h"

#include <standbook/work/words.h>
#include <stdlib.h>
#include <string.h>

static void term_free(gpointer data)
{
    FoundTerm *term = data;
    g_strfreev(term->texts);
    g_free(term->day);
    if (term->builds)
        g_ptr_array_unref(term->builds);
    g_free(term);
}

// The word without what is put around it: `#3` and `main?`; NULL if nothing is left.
static char *bare_word(const char *word)
{
    const char *from = word + strspn(word, "#(\"");
    gsize length = strlen(from);
    while (length > 0 && strchr("?,;:!)\"", from[length - 1]))
        length--;
    return length ? g_strndup(from, length) : NULL;
}

GPtrArray *found_bare_words(const char *words)
{
    g_auto(GStrv) all = g_strsplit_set(words, " \t", -1);
    GPtrArray *bare = g_ptr_array_new_with_free_func(g_free);
    for (guint i = 0; all[i]; i++) {
        char *word = bare_word(all[i]);
        if (word)
            g_ptr_array_add(bare, word);
    }
    return bare;
}

// Whether it is a number in figures, of so many at most.
static gboolean is_figures(const char *word, gsize least, gsize most)
{
    gsize length = strspn(word, "0123456789");
    return word[length] == '\0' && length >= least && length <= most;
}

static gboolean is_iso_day(const char *word)
{
    return strlen(word) == 10 && strspn(word, "0123456789") == 4 && word[4] == '-' &&
           strspn(word + 5, "0123456789") == 2 && word[7] == '-' && is_figures(word + 8, 2, 2);
}

// Reads a day that begins at this word. Returns how many words it has, 0 for no day.
static guint read_day(const GPtrArray *words, guint at, char **day)
{
    const char *word = words->pdata[at], *next = at + 1 < words->len ? words->pdata[at + 1] : "";
    const char *year = at + 2 < words->len ? words->pdata[at + 2] : "";
    guint month = words_month(next, strlen(next));
    if (is_iso_day(word)) {
        *day = g_strdup(word);
        return 1;
    }
    if (!is_figures(word, 1, 2) || !month)
        return 0;
    gboolean of_year = is_figures(year, 4, 4);
    *day = g_strdup_printf("%s-%02u-%02d", of_year ? year : "", month, atoi(word));
    return of_year ? 3 : 2;
}

// The kind of entry that a word of a verdict means, NULL for none.
static const char *kind_meant(const char *word)
{
    static const char *const meant[][2] = {{"conceded", "concede"}, {"upheld", "uphold"},
                                           {"signed", "sign"},      {"decided", "decide"},
                                           {"sealed", "seal"},      {"closed", "close"},
                                           {"reopened", "reopen"},  {"withdrawn", "withdraw"},
                                           {"recalled", "recall"},  {"reworked", "rework"}};
    for (gsize i = 0; i < G_N_ELEMENTS(meant); i++)
        if (g_ascii_strcasecmp(word, meant[i][0]) == 0)
            return meant[i][1];
    return NULL;
}

GPtrArray *found_terms(const char *words)
{
    g_autoptr(GPtrArray) bare = found_bare_words(words);
    GPtrArray *terms = g_ptr_array_new_with_free_func(term_free);
    for (guint at = 0; at < bare->len;) {
        FoundTerm *term = g_new0(FoundTerm, 1);
        guint day = read_day(bare, at, &term->day), count = MAX(day, 1);
        term->texts = g_new0(char *, count + 1);
        for (guint i = 0; i < count; i++)
            term->texts[i] = g_strdup(bare->pdata[at + i]);
        term->kind = kind_meant(bare->pdata[at]);
        term->struck = g_ascii_strcasecmp(bare->pdata[at], "struck") == 0;
        g_ptr_array_add(terms, term);
        at += count;
    }
    return terms;
}
