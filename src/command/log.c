// log: lines of the logbook, one event each, from a file or standard input.
#include "store.h"
#include "subcommands.h"

#include <errno.h>
#include <standbook/base/text.h>
#include <standbook/work/session.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>

// A line is answered before the next one is read: what was said to be taken is taken.
static void say_answer(json_t *list, guint line, const char *answer, const GPtrArray *slips)
{
    if (list) {
        json_t *said = json_pack("{s:i,s:s}", "line", (int)line, "answer", answer);
        json_t *all = slips && slips->len ? json_array() : NULL;
        for (guint i = 0; all && i < slips->len; i++)
            json_array_append_new(all, json_string(slips->pdata[i]));
        if (all)
            json_object_set_new(said, "slips", all);
        json_array_append_new(list, said);
        return;
    }
    g_autofree char *clean = text_clean(answer, -1);
    say("%s\n", clean);
    fflush(stdout);
}

// Reads the next line, without its line feed. A line that is too long to be taken is cut, so that a
// file without lines cannot fill the memory, and the rest of it passed over; what is cut is refused
// as too long. FALSE at the end.
static gboolean next_line(FILE *file, GString *line)
{
    int byte = 0;
    g_string_truncate(line, 0);
    while (line->len <= LEDGER_LINE_MOST + 1 && (byte = getc(file)) != EOF && byte != '\n')
        g_string_append_c(line, (char)byte);
    return byte != EOF || line->len > 0;
}

// Passes over what was cut of a line that was too long.
static void end_line(FILE *file, const GString *line)
{
    int byte = line->len > LEDGER_LINE_MOST + 1 ? getc(file) : EOF;
    while (byte != EOF && byte != '\n')
        byte = getc(file);
}

// Takes line after line. With `faults` a line that cannot be taken goes there (char *), and the
// next is read; without, and where there is trouble with the store, it is the last.
static gboolean take_lines(Session *session, FILE *file, json_t *list, GPtrArray *faults,
                           GError **error)
{
    g_autoptr(GString) text = g_string_new(NULL);
    for (guint line = 1; next_line(file, text); line++) {
        g_autoptr(GError) why = NULL;
        g_autofree char *answer = NULL;
        gboolean taken = session_line(session, text->str, (gssize)text->len, &answer, &why);
        if (taken && answer)
            say_answer(list, line, answer, session_last_slips(session));
        if (!taken && (!faults || why->code == STANDBOOK_ERROR_STORE)) {
            g_propagate_error(error, g_steal_pointer(&why));
            return FALSE;
        }
        if (taken)
            continue;
        g_ptr_array_add(faults, g_strdup(why->message));
        end_line(file, text);
    }
    if (!ferror(file))
        return TRUE;
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_STORE,
                "what is read cannot be read on: %s; name a file of log lines", g_strerror(errno));
    return FALSE;
}

// What is asked of one run.
typedef struct {
    Book *book;
    const char *number; // of the build; NULL: the shop
    SessionOptions options;
    json_t *list; // NULL: said in words
} Logging;

// What stands entered would be entered twice if all were fed again; and what carries forward from
// it is not known to a new run.
static void say_how_to_go_on(const Session *session)
{
    g_autofree char *carried = session_carried(session);
    g_autofree char *clean = text_clean(carried, -1);
    guint line = session_lines(session);
    if (*clean)
        g_printerr("what was taken stands: go on with line %u, behind a line `%s`\n", line, clean);
    else
        g_printerr("what was taken stands: go on with line %u\n", line);
}

static int say_stopped(const Session *session, gboolean check, GError *error)
{
    guint count = session_taken(session);
    g_autofree char *taken = text_counted(count, "line");
    int status = fail_with(error);
    g_printerr("%s %s taken before it\n", taken, check ? "would be" : count == 1 ? "was" : "were");
    if (!check && count)
        say_how_to_go_on(session);
    return status;
}

static int say_faults(const GPtrArray *faults)
{
    enum { MOST = 20 };
    g_autofree char *lines = text_counted(faults->len, "line");
    for (guint i = 0; i < MIN(faults->len, MOST); i++)
        fail_saying(STANDBOOK_ERROR_MISUSE, "%s", (const char *)faults->pdata[i]);
    if (faults->len > MOST)
        g_printerr("and %u more\n", faults->len - MOST);
    g_printerr("nothing is entered from this file; mend %s and feed it again whole\n", lines);
    return STANDBOOK_ERROR_MISUSE;
}

// Goes through the lines once, from where the file stands.
static int take_once(const Logging *logging, FILE *file, GPtrArray *faults)
{
    GError *error = NULL;
    g_autoptr(Session) session =
        session_open(logging->book, logging->number, &logging->options, &error);
    if (!session)
        return fail_with(error);
    if (!take_lines(session, file, logging->list, faults, &error))
        return faults ? fail_with(error) : say_stopped(session, logging->options.check, error);
    if (faults && faults->len)
        return say_faults(faults);
    g_autofree char *taken = text_counted(session_taken(session), "line");
    if (!logging->list && logging->options.quiet && !faults)
        say(logging->options.check ? "%s would be taken\n" : "%s taken\n", taken);
    return 0;
}

// Every line is tried before the first is entered, so that a file with faults can be mended and fed
// again, and nothing stands twice.
static int look_through(const Logging *logging, FILE *file)
{
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func(g_free);
    Logging trial = *logging;
    trial.options.check = trial.options.quiet = TRUE;
    trial.list = NULL;
    int status = take_once(&trial, file, faults);
    rewind(file);
    return status;
}

// A file can be read twice; lines out of a pipe or a device are entered as they come.
static gboolean is_file(FILE *file)
{
    struct stat status;
    return fstat(fileno(file), &status) == 0 && S_ISREG(status.st_mode);
}

static int take_file(const Logging *logging, const char *name)
{
    gboolean standard = !name || strcmp(name, "-") == 0;
    FILE *file = standard ? stdin : fopen(name, "rb");
    if (!file) {
        int number = errno;
        g_autofree char *clean = text_clean(name, -1);
        return fail_saying(STANDBOOK_ERROR_STORE, "%s cannot be read: %s", clean,
                           g_strerror(number));
    }
    int status = !standard && is_file(file) ? look_through(logging, file) : 0;
    if (status == 0)
        status = take_once(logging, file, NULL);
    if (!standard)
        fclose(file);
    if (logging->list)
        say_json(logging->list);
    return status;
}

int log_run(int argc, char **argv, Common *common)
{
    gboolean shop = FALSE, check = FALSE, dated = FALSE, quiet = FALSE;
    const GOptionEntry entries[] = {
        {"shop", 0, 0, G_OPTION_ARG_NONE, &shop, "lines about the shop, not one build", NULL},
        {"check", 0, 0, G_OPTION_ARG_NONE, &check, "answer as if, and take nothing", NULL},
        {"dated", 0, 0, G_OPTION_ARG_NONE, &dated, "the lines were written down when they happened",
         NULL},
        {"quiet", 0, 0, G_OPTION_ARG_NONE, &quiet, "answer with the count of lines alone", NULL},
        {NULL, 0, 0, 0, NULL, NULL, NULL},
    };
    int status;
    g_auto(GStrv) words = arguments_read(
        argc, argv, common, "BUILD [FILE] | log --shop [FILE]",
        "Takes one event a line, as standbook-log(5) says, and answers each with its verdict.\n"
        "Every line of FILE is tried first: if one cannot be taken, each that cannot is named and\n"
        "nothing is entered. Without FILE lines are entered as they come from standard input, up\n"
        "to the first that cannot be taken. For example:\n\n"
        "  2025-03-04 10:05 MO read main bore[1, front] 59.790 with G03\n"
        "  tighten main caps stage 1 all with W1\n"
        "  strike last typo",
        entries, &status);
    if (!words ||
        !arguments_fit(words, shop ? 0 : 1, shop ? 1 : 2,
                       shop ? "log --shop [FILE]" : "log BUILD [FILE] | log --shop [FILE]"))
        return words ? STANDBOOK_ERROR_MISUSE : status;
    GError *error = NULL;
    g_autoptr(Book) book = store_open(common, BOOK_WRITE, &error);
    if (!book)
        return fail_with(error);
    Logging logging = {book,
                       shop ? NULL : words[0],
                       {.now = wall_clock,
                        .new_id = random_id,
                        .check = check,
                        .trust_times = dated,
                        .quiet = quiet},
                       common->json ? json_array() : NULL};
    status = take_file(&logging, shop ? words[0] : words[1]);
    json_decref(logging.list);
    return status;
}
