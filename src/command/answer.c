#include "answer.h"

#include <unistd.h>

void say_document(const Document *document, gboolean json)
{
    if (json) {
        json_t *whole = document_json(document);
        say_json(whole);
        json_decref(whole);
        return;
    }
    g_autofree char *text = document_text(document);
    if (isatty(STDOUT_FILENO)) // a form feed is for printers
        g_strdelimit(text, "\f", '\n');
    say("%s", text);
}
