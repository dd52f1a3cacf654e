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

int no_gate(const Opened *opened, const char *gate)
{
    const GPtrArray *gates = opened_plan(opened)->gates;
    g_autofree char *all = gates_words(opened_plan(opened));
    g_autofree char *hint = hint_nearest(gate, (const char *const *)gates->pdata, gates->len, "");
    return fail_saying(STANDBOOK_ERROR_MISUSE, "the plan has no gate `%s`; it has %s%s", gate, all,
                       hint);
}
