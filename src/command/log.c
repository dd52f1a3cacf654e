// log: lines of the logbook, one event each, from a file or standard input.
#include "store.h"
#include "subcommands.h"

#include <errno.h>
#include <standbook/base/text.h>
#include <standbook/work/session.h>
#include <stdio.h>
#include <string.h>

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
// file without lines cannot fill the memory; what is cut is refused as too long. FALSE at the end.
static gboolean next_line(FILE *file, GString *line)
{
    int byte = 0;
    g_string_truncate(line, 0);
    while (line->len <= LEDGER_LINE_MOST + 1 && (byte = getc(file)) != EOF && byte != '\n')
        g_string_append_c(line, (char)byte);
    return byte != EOF || line->len > 0;
}

static gboolean take_lines(Session *session, FILE *file, json_t *list, GError **error)
{
    g_autoptr(GString) text = g_string_new(NULL);
    gboolean taken = TRUE;
    for (guint line = 1; taken && next_line(file, text); line++) {
        g_autofree char *answer = NULL;
        taken = session_line(session, text->str, (gssize)text->len, &answer, error);
        if (taken && answer)
            say_answer(list, line, answer, session_last_slips(session));
    }
    if (!taken || !ferror(file))
        return taken;
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_STORE,
                "what is read cannot be read on: %s; name a file of log lines", g_strerror(errno));
    return FALSE;
}

static int take_file(Session *session, const char *name, gboolean quiet, gboolean check,
                     const Common *common)
{
    gboolean standard = !name || strcmp(name, "-") == 0;
    FILE *file = standard ? stdin : fopen(name, "rb");
    GError *error = NULL;
    if (!file) {
        int number = errno;
        g_autofree char *clean = text_clean(name, -1);
        return fail_saying(STANDBOOK_ERROR_STORE, "%s cannot be read: %s", clean,
                           g_strerror(number));
    }
    json_t *list = common->json ? json_array() : NULL;
    gboolean all = take_lines(session, file, list, &error);
    if (!standard)
        fclose(file);
    if (list)
        say_json(list);
    g_autofree char *taken = text_counted(session_taken(session), "line");
    if (!list && quiet && all)
        say(check ? "%s would be taken\n" : "%s taken\n", taken);
    json_decref(list);
    if (all)
        return 0;
    int status = fail_with(error);
    g_printerr("%s %s taken before it\n", taken,
               check                         ? "would be"
               : session_taken(session) == 1 ? "was"
                                             : "were");
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
        "Without FILE the lines are read from standard input. For example:\n\n"
        "  2025-03-04 10:05 MO read main bore[1, front] 59.790 with G03\n"
        "  tighten main caps stage 1 all with W1\n"
        "  strike last typo",
        entries, &status);
    if (!words ||
        !arguments_fit(words, shop ? 0 : 1, shop ? 1 : 2,
                       shop ? "log --shop [FILE]" : "log BUILD [FILE] | log --shop [FILE]"))
        return words ? STANDBOOK_ERROR_MISUSE : status;
    SessionOptions options = {.now = wall_clock,
                              .new_id = random_id,
                              .check = check,
                              .trust_times = dated,
                              .quiet = quiet};
    GError *error = NULL;
    g_autoptr(Book) book = store_open(common, BOOK_WRITE, &error);
    g_autoptr(Session) session =
        book ? session_open(book, shop ? NULL : words[0], &options, &error) : NULL;
    if (!session)
        return fail_with(error);
    return take_file(session, shop ? words[0] : words[1], quiet, check, common);
}
