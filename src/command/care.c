// verify and backup.
#include "answer.h"
#include "subcommands.h"

#include <standbook/base/text.h>
#include <standbook/book/care.h>

static json_t *fault_json(const BookFault *fault)
{
    return json_pack("{s:s?,s:I,s:s}", "ledger", fault->ledger, "entry", (json_int_t)fault->seq,
                     "fault", fault->fault);
}

static void say_fault(const BookFault *fault)
{
    g_autofree char *ledger = text_clean(fault->ledger ? fault->ledger : "the store", -1);
    g_autofree char *words = text_clean(fault->fault, -1);
    if (fault->seq > 0)
        say("%s, entry #%" G_GINT64_FORMAT ": %s\n", ledger, fault->seq, words);
    else
        say("%s: %s\n", ledger, words);
}

int verify_run(int argc, char **argv, Common *common)
{
    int status;
    g_auto(GStrv) words = arguments_read(argc, argv, common, "",
                                         "Proves that the store is whole: every entry, every "
                                         "digest, every table.",
                                         NULL, &status);
    if (!words || !arguments_fit(words, 0, 0, "verify"))
        return words ? STANDBOOK_ERROR_MISUSE : status;
    GError *error = NULL;
    g_autoptr(Book) book = store_open(common, BOOK_READ, &error);
    g_autoptr(GPtrArray) faults = book ? book_verify(book, &error) : NULL;
    if (!faults)
        return fail_with(error);
    json_t *list = json_array();
    for (guint i = 0; i < faults->len; i++) {
        if (common->json)
            json_array_append_new(list, fault_json(g_ptr_array_index(faults, i)));
        else
            say_fault(g_ptr_array_index(faults, i));
    }
    json_t *all = json_pack("{s:b,s:o}", "whole", faults->len == 0, "faults", list);
    if (common->json)
        say_json(all);
    else if (faults->len == 0)
        say("the store is whole\n");
    json_decref(all);
    return faults->len == 0 ? 0 : STANDBOOK_ERROR_NO;
}

int backup_run(int argc, char **argv, Common *common)
{
    int status;
    g_auto(GStrv) words = arguments_read(
        argc, argv, common, "FILE",
        "Copies the store, as it stands now, into a new file, and verifies the copy.", NULL,
        &status);
    if (!words || !arguments_fit(words, 1, 1, "backup FILE"))
        return words ? STANDBOOK_ERROR_MISUSE : status;
    GError *error = NULL;
    g_autoptr(Book) book = store_open(common, BOOK_READ, &error);
    if (!book || !book_backup(book, words[0], &error))
        return fail_with(error);
    g_autofree char *clean = text_clean(words[0], -1);
    say("%s: copied and verified\n", clean);
    return 0;
}
