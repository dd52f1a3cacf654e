// export and import: a ledger as rows in a file, or into a folder with the plan and the sealed
// assessments that its entries name, so that another shop can judge it and prove it.
#include "answer.h"
#include "subcommands.h"

#include <errno.h>
#include <standbook/base/text.h>
#include <standbook/book/care.h>
#include <standbook/record/digest.h>
#include <standbook/record/entry.h>
#include <string.h>

enum { EXPORT_BYTES = 256 * 1024 * 1024, KEPT_BYTES = 2 * 1024 * 1024 };

static const char ledger_end[] = ".ledger";

static gboolean is_folder(const char *path)
{
    return path && (g_str_has_suffix(path, "/") || g_file_test(path, G_FILE_TEST_IS_DIR));
}

// EXPORT ----------------------------------------------------------------------------------------

static void name_kept(GHashTable *kept, const char *digest, const char *what)
{
    if (digest)
        g_hash_table_insert(kept, g_strdup(digest), (gpointer)what);
}

// What an entry names of the files kept in the store: digest -> `plan` or `assessment`.
static void kept_of(GHashTable *kept, const Entry *entry)
{
    const char *kind = entry->kind->name;
    const json_t *body = entry->body;
    if (strcmp(kind, "take") == 0 || strcmp(kind, "news") == 0) {
        kind = entry_text(entry, "what");
        body = json_object_get(entry->body, "body");
    }
    if (strcmp(kind, "plan") == 0)
        name_kept(kept, json_string_value(json_object_get(body, "digest")), "plan");
    if (strcmp(kind, "build") == 0)
        name_kept(kept, json_string_value(json_object_get(body, "plan")), "plan");
    if (strcmp(kind, "seal") == 0)
        name_kept(kept, json_string_value(json_object_get(body, "assessment")), "assessment");
}

static int put_kept(Book *book, const char *folder, const char *digest, const char *what)
{
    GError *error = NULL;
    g_autofree char *name =
        g_strconcat(what, "-", digest, strcmp(what, "plan") == 0 ? ".yaml" : ".json", NULL);
    g_autofree char *path = g_build_filename(folder, name, NULL);
    g_autoptr(GBytes) bytes = book_kept(book, digest, &error);
    if (!bytes)
        return fail_with(error);
    if (g_file_test(path, G_FILE_TEST_EXISTS)) // its name is its digest: of another ledger here
        return 0;
    gsize length;
    const char *start = g_bytes_get_data(bytes, &length);
    return bytes_out(start, length, path);
}

static int put_folder(Book *book, const char *ledger, const char *rows, const char *label,
                      const char *folder)
{
    GError *error = NULL;
    g_autoptr(GPtrArray) entries = entries_read(book, ledger, &error);
    if (!entries)
        return fail_with(error);
    if (g_mkdir_with_parents(folder, 0700) != 0)
        return fail_saying(3, "the folder %s cannot be made: %s", folder, g_strerror(errno));
    g_autofree char *name = g_strconcat(label, ledger_end, NULL);
    g_autofree char *path = g_build_filename(folder, g_strdelimit(name, "/\\", '-'), NULL);
    int status = bytes_out(rows, strlen(rows), path);
    g_autoptr(GHashTable) kept = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
    for (guint i = 0; i < entries->len; i++)
        kept_of(kept, g_ptr_array_index(entries, i));
    GHashTableIter iter;
    gpointer digest, what;
    g_hash_table_iter_init(&iter, kept);
    while (status == 0 && g_hash_table_iter_next(&iter, &digest, &what))
        status = put_kept(book, folder, digest, what);
    g_autofree char *all = text_counted(entries->len, "entry");
    if (status == 0)
        say("%s, %u %s\n", all, g_hash_table_size(kept),
            g_hash_table_size(kept) == 1 ? "plan" : "plans and assessments");
    return status;
}

int export_run(int argc, char **argv, Common *common)
{
    int status;
    g_auto(GStrv) words = arguments_read(
        argc, argv, common, "BUILD|shop [FILE|FOLDER/]",
        "Writes a ledger as rows of digest and line; standbook-ledger(5) says how to check them\n"
        "without this program. FILE must not be there yet. Into a FOLDER go also the plan and the\n"
        "assessments sealed, which another shop needs to judge the build and to prove its seals.\n"
        "Names and addresses of people never go along: initials and the owner's label do.",
        NULL, &status);
    if (!words || !arguments_fit(words, 1, 2, "export BUILD|shop [FILE|FOLDER/]"))
        return words ? STANDBOOK_ERROR_MISUSE : status;
    GError *error = NULL;
    g_autoptr(Book) book = store_open(common, BOOK_READ, &error);
    g_autofree char *ledger = book ? ledger_of(book, words[0], &error) : NULL;
    g_autofree char *rows = ledger ? book_export(book, ledger, &error) : NULL;
    if (!rows)
        return fail_with(error);
    return is_folder(words[1]) ? put_folder(book, ledger, rows, words[0], words[1])
                               : bytes_out(rows, strlen(rows), words[1]);
}

// IMPORT ----------------------------------------------------------------------------------------

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

// Says so if the plan or a sealed assessment that an entry names is not here.
static void say_missing(Book *book, const char *rows)
{
    g_auto(GStrv) lines = g_strsplit(rows, "\n", -1);
    g_autoptr(GHashTable) kept = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
    guint missing = 0;
    for (guint i = 0; lines[i]; i++) {
        ChainLink link;
        g_autoptr(Entry) entry =
            chain_row_read(lines[i], &link, NULL) ? entry_read(link.line, NULL) : NULL;
        if (entry)
            kept_of(kept, entry);
    }
    GHashTableIter iter;
    gpointer digest;
    g_hash_table_iter_init(&iter, kept);
    while (g_hash_table_iter_next(&iter, &digest, NULL)) {
        g_autoptr(GBytes) bytes = book_kept(book, digest, NULL);
        missing += bytes ? 0 : 1;
    }
    if (missing)
        say("%u plans and sealed assessments that they name are not here; import the folder that\n"
            "`standbook export BUILD FOLDER/` writes, or add the plan with `standbook plan add`\n",
            missing);
}

// What the ledger of these rows is called here, which no import changes: where it came in before,
// that is not what is asked for now. NULL if it cannot be told; the caller frees.
static char *label_here(Book *book, const char *rows)
{
    ChainLink link;
    g_auto(GStrv) lines = g_strsplit(rows, "\n", 2);
    g_autoptr(Entry) first =
        lines[0] && chain_row_read(lines[0], &link, NULL) ? entry_read(link.line, NULL) : NULL;
    g_autoptr(GPtrArray) ledgers = book_ledgers(book, NULL);
    for (guint i = 0; first && ledgers && i < ledgers->len; i++) {
        const BookLedger *ledger = g_ptr_array_index(ledgers, i);
        if (strcmp(ledger->id, first->ledger) == 0)
            return g_strdup(ledger->label);
    }
    return NULL;
}

static int import_rows(Book *book, const char *rows, gsize length, const char *label)
{
    g_autofree char *number = NULL;
    LedgerSort sort = rows_sort(rows, &number);
    const char *name = label ? label : sort == LEDGER_SHOP ? "shop" : number;
    if (!name)
        return fail_saying(2, "these rows do not say the build's number; give it with --label");
    gint64 taken = 0;
    GError *error = NULL;
    if (!book_import(book, rows, (gssize)length, sort, name, &taken, &error))
        return fail_with(error);
    g_autofree char *here = label_here(book, rows), *entries = text_counted((guint)taken, "entry");
    g_autofree char *clean = text_clean(here ? here : name, -1);
    say("%s: %s taken%s\n", clean, entries,
        label && g_strcmp0(here, label) != 0 ? "; it came in before and keeps its number" : "");
    say_missing(book, rows);
    return 0;
}

static int import_bytes(Book *book, GBytes *bytes, const char *label)
{
    gsize length;
    const char *start = g_bytes_get_data(bytes, &length);
    g_autofree char *rows = g_strndup(start ? start : "", length);
    return import_rows(book, rows, length, label);
}

static int compare_paths(gconstpointer a, gconstpointer b)
{
    return strcmp(*(char *const *)a, *(char *const *)b);
}

// The paths in a folder whose names have that beginning and end (char *), sorted.
static GPtrArray *files_in(const char *folder, const char *start, const char *end)
{
    GPtrArray *paths = g_ptr_array_new_with_free_func(g_free);
    g_autoptr(GDir) dir = g_dir_open(folder, 0, NULL);
    for (const char *name; dir && (name = g_dir_read_name(dir));)
        if (g_str_has_prefix(name, start) && g_str_has_suffix(name, end))
            g_ptr_array_add(paths, g_build_filename(folder, name, NULL));
    g_ptr_array_sort(paths, compare_paths);
    return paths;
}

// Keeps a file that an entry of the rows names by its digest; any other is refused.
static gboolean keep_file(BookTurn *turn, const char *what, const char *path, const char *rows,
                          GError **error)
{
    char digest[65];
    g_autoptr(GBytes) bytes = file_read(path, KEPT_BYTES, error);
    if (!bytes)
        return FALSE;
    g_autofree char *sum = g_compute_checksum_for_bytes(G_CHECKSUM_SHA256, bytes);
    if (strstr(rows, sum))
        return book_turn_keep_bytes(turn, what, bytes, digest, error);
    g_autofree char *shown = text_path(path);
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO,
                "%s: no entry beside it names these bytes; export the build again", shown);
    return FALSE;
}

static gboolean keep_files(Book *book, const char *folder, const char *rows, GError **error)
{
    static const char *const kinds[] = {"plan", "assessment"};
    g_autoptr(BookTurn) turn = book_turn(book, error);
    if (!turn)
        return FALSE;
    for (gsize k = 0; k < G_N_ELEMENTS(kinds); k++) {
        g_autofree char *start = g_strconcat(kinds[k], "-", NULL);
        g_autoptr(GPtrArray) files = files_in(folder, start, "");
        for (guint i = 0; i < files->len; i++)
            if (!keep_file(turn, kinds[k], g_ptr_array_index(files, i), rows, error))
                return FALSE;
    }
    return book_turn_keep(turn, error);
}

// Every ledger of a folder, and before them the files that their entries name.
static int import_folder(Book *book, const char *folder, const char *label)
{
    GError *error = NULL;
    g_autoptr(GPtrArray) ledgers = files_in(folder, "", ledger_end);
    g_autoptr(GString) all = g_string_new(NULL);
    if (ledgers->len == 0)
        return fail_saying(3, "the folder %s has no file that ends in %s", folder, ledger_end);
    if (ledgers->len > 1 && label)
        return fail_saying(2, "the folder %s has %u ledgers; --label is for one", folder,
                           ledgers->len);
    for (guint i = 0; i < ledgers->len; i++) {
        g_autoptr(GBytes) bytes = file_read(g_ptr_array_index(ledgers, i), EXPORT_BYTES, &error);
        if (!bytes)
            return fail_with(error);
        gsize length;
        const char *start = g_bytes_get_data(bytes, &length);
        g_string_append_len(all, start, (gssize)length);
    }
    if (!keep_files(book, folder, all->str, &error))
        return fail_with(error);
    int status = 0;
    for (guint i = 0; status == 0 && i < ledgers->len; i++) {
        g_autoptr(GBytes) bytes = file_read(g_ptr_array_index(ledgers, i), EXPORT_BYTES, &error);
        status = bytes ? import_bytes(book, bytes, label) : fail_with(error);
    }
    return status;
}

static int import_file(Book *book, const char *path, const char *label)
{
    GError *error = NULL;
    g_autoptr(GBytes) bytes = file_read(path, EXPORT_BYTES, &error);
    return bytes ? import_bytes(book, bytes, label) : fail_with(error);
}

int import_run(int argc, char **argv, Common *common)
{
    char *label = NULL;
    const GOptionEntry entries[] = {
        {"label", 0, 0, G_OPTION_ARG_FILENAME, &label, "call the build so here", "NUMBER"},
        {NULL, 0, 0, G_OPTION_ARG_NONE, NULL, NULL, NULL}};
    int status;
    g_auto(GStrv) words = arguments_read(
        argc, argv, common, "FILE|FOLDER",
        "Takes in the rows of an export, all or none; of a ledger already here only what is new.\n"
        "A folder that export wrote brings the plan and the sealed assessments along. Rows alone\n"
        "need the plan to be added here (plan add) before the build can be judged.",
        entries, &status);
    g_autofree char *owned = label;
    if (!words || !arguments_fit(words, 1, 1, "import FILE|FOLDER"))
        return words ? STANDBOOK_ERROR_MISUSE : status;
    GError *error = NULL;
    if (!g_file_test(words[0], G_FILE_TEST_EXISTS) && strcmp(words[0], "-") != 0)
        return fail_saying(3, "%s cannot be opened: it is not there", words[0]);
    g_autoptr(Book) book = store_open(common, BOOK_WRITE, &error);
    if (!book)
        return fail_with(error);
    return is_folder(words[0]) ? import_folder(book, words[0], label)
                               : import_file(book, words[0], label);
}
