#include "print_list.h"

#include "print_file.h"

#include <string.h>

enum { WORDS_MOST = 40 };

// `find-3-main`
static char *file_name(const char *what, const char *words)
{
    g_autofree char *part = g_str_to_ascii(words, "C");
    for (char *at = part; *at; at++)
        if (!g_ascii_isalnum(*at))
            *at = '-';
    part[MIN(strlen(part), WORDS_MOST)] = '\0';
    return g_strdup_printf("%s-%s", what, part);
}

static char *text_of(const Page *page)
{
    g_autofree char *body = canvas_text(page->body);
    return g_strdup_printf("%s\n%s%s%s\n\n%s%s%s", page->status ? page->status : "",
                           page->head ? page->head : "", page->count ? "   " : "",
                           page->count ? page->count : "", body, page->remark ? "\n" : "",
                           page->remark ? page->remark : "");
}

void print_list(Desk *desk, const char *what, const char *words,
                void (*paint)(gpointer state, Desk *desk, const char *typed, Page *page),
                gpointer state)
{
    Page page;
    GError *error = NULL;
    g_autofree char *name = file_name(what, words), *file = NULL;
    page_init(&page, PAGE_WIDTH, desk->ascii);
    paint(state, desk, "", &page);
    g_autofree char *text = text_of(&page);
    g_autofree char *lines =
        g_str_has_suffix(text, "\n") ? g_strdup(text) : g_strconcat(text, "\n", NULL);
    page_clear(&page);
    PrintDone done = print_file(name, lines, &file, &error);
    if (done == PRINT_FAILED)
        desk_warn_error(desk, error);
    else
        desk_last(desk, "this list %s %s", done == PRINT_THERE ? "lies already in" : "was written to",
                  file);
}
