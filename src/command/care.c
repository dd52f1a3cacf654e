// verify, backup, export, import.
#include "answer.h"
#include "subcommands.h"

#include <standbook/base/text.h>
#include <standbook/book/care.h>
#include <standbook/record/digest.h>
#include <standbook/record/entry.h>
#include <string.h>

enum { EXPORT_BYTES = 256 * 1024 * 1024 };

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

int export_run(int argc, char **argv, Common *common)
{
    int status;
    g_auto(GStrv) words =
        arguments_read(argc, argv, common, "BUILD|shop [FILE]",
                       "Writes a ledger as rows of digest and line; standbook-ledger(5) says how "
                       "to check them\nwithout this program. FILE must not be there yet.",
                       NULL, &status);
    if (!words || !arguments_fit(words, 1, 2, "export BUILD|shop [FILE]"))
        return words ? STANDBOOK_ERROR_MISUSE : status;
    GError *error = NULL;
    g_autoptr(Book) book = store_open(common, BOOK_READ, &error);
    g_autofree char *ledger = book ? ledger_of(book, words[0], &error) : NULL;
    g_autofree char *rows = ledger ? book_export(book, ledger, &error) : NULL;
    return rows ? bytes_out(rows, strlen(rows), words[1]) : fail_with(error);
}

// The number of the build a row speaks of: that of the first `take` of it.
static char *number_in(const Entry *entry)
{
    const char *what = strcmp(entry->kind->name, "take") == 0 ? entry_text(entry, "what") : NULL;
    if (!what || strcmp(what, "build") != 0)
        return NULL;
    json_t *body = json_object_get(entry->body, "body");
    return g_strdup(json_string_value(json_object_get(body, "number")));
}

// Whose ledger the rows are, by the kinds of their entries; a row that is none is left to
// book_import, which says what is wrong with it.
static LedgerSort rows_sort(const char *rows, char **number)
{
    g_auto(GStrv) lines = g_strsplit(rows, "\n", -1);
    LedgerSort sort = LEDGER_SHOP;
    for (guint i = 0; lines[i] && !*number; i++) {
        ChainLink link;
        if (!chain_row_read(lines[i], &link, NULL))
            break;
        g_autoptr(Entry) entry = entry_read(link.line, NULL);
        if (!entry)
            break;
        if (entry->kind->ledgers == LEDGER_BUILD)
            sort = LEDGER_BUILD;
        *number = number_in(entry);
    }
    return sort;
}

static int import_rows(Book *book, GBytes *bytes, const char *label)
{
    gsize length;
    const char *start = g_bytes_get_data(bytes, &length);
    g_autofree char *rows = g_strndup(start ? start : "", length);
    g_autofree char *number = NULL;
    LedgerSort sort = rows_sort(rows, &number);
    const char *name = label ? label : sort == LEDGER_SHOP ? "shop" : number;
    if (!name)
        return fail_saying(2, "these rows do not say the build's number; give it with --label");
    gint64 taken = 0;
    GError *error = NULL;
    if (!book_import(book, start ? start : "", (gssize)length, sort, name, &taken, &error))
        return fail_with(error);
    g_autofree char *clean = text_clean(name, -1);
    say("%s: %" G_GINT64_FORMAT " entries taken\n", clean, taken);
    return 0;
}

int import_run(int argc, char **argv, Common *common)
{
    char *label = NULL;
    const GOptionEntry entries[] = {
        {"label", 0, 0, G_OPTION_ARG_FILENAME, &label, "call the build so here", "NUMBER"},
        {NULL, 0, 0, G_OPTION_ARG_NONE, NULL, NULL, NULL}};
    int status;
    g_auto(GStrv) words = arguments_read(argc, argv, common, "FILE",
                                         "Takes in the rows of an export, all or none; of a "
                                         "ledger already here only what is new.",
                                         entries, &status);
    g_autofree char *owned = label;
    if (!words || !arguments_fit(words, 1, 1, "import FILE"))
        return words ? STANDBOOK_ERROR_MISUSE : status;
    GError *error = NULL;
    g_autoptr(GBytes) bytes = file_read(words[0], EXPORT_BYTES, &error);
    g_autoptr(Book) book = bytes ? store_open(common, BOOK_WRITE, &error) : NULL;
    return book ? import_rows(book, bytes, label) : fail_with(error);
}
