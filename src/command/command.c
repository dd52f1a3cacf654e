#include "command.h"

#include <errno.h>
#include <standbook/base/text.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

static GOptionContext *context_new(const char *usage, const char *about, Common *common,
                                   const GOptionEntry *entries, gboolean *help)
{
    GOptionEntry shared[] = {
        {"store", 0, 0, G_OPTION_ARG_FILENAME, &common->store, "the store to use", "FILE"},
        {"json", 0, 0, G_OPTION_ARG_NONE, &common->json, "answer as JSON", NULL},
        {"help", 'h', 0, G_OPTION_ARG_NONE, help, "say this", NULL},
        {NULL, 0, 0, G_OPTION_ARG_NONE, NULL, NULL, NULL}};
    GOptionContext *context = g_option_context_new(usage);
    g_option_context_set_help_enabled(context, FALSE);
    g_option_context_set_summary(context, about);
    if (entries)
        g_option_context_add_main_entries(context, entries, NULL);
    g_option_context_add_main_entries(context, shared, NULL);
    return context;
}

// GOption takes an argument that begins with a dash for an option; -- ends them and is dropped.
static GStrv rest_of(GStrv arguments)
{
    GStrvBuilder *rest = g_strv_builder_new();
    gboolean ended = FALSE;
    for (guint i = 1; arguments[i]; i++) {
        gboolean dashes = !ended && strcmp(arguments[i], "--") == 0;
        ended = ended || dashes;
        if (!dashes)
            g_strv_builder_add(rest, arguments[i]);
    }
    GStrv result = g_strv_builder_end(rest);
    g_strv_builder_unref(rest);
    return result;
}

// Names, numbers and words are compared as UTF-8; only the name of a file that is there may have
// other bytes.
static const char *not_text(int argc, char **argv)
{
    for (int i = 1; i < argc; i++)
        if (!g_utf8_validate(argv[i], -1, NULL) && !g_file_test(argv[i], G_FILE_TEST_EXISTS))
            return argv[i];
    return NULL;
}

char *hint_nearest(const char *name, const char *const *names, gsize count, const char *otherwise)
{
    const char *nearest = text_nearest(name, names, count);
    return nearest ? g_strdup_printf("; did you mean `%s`?", nearest) : g_strdup(otherwise);
}

// What is wrong with the options, with the nearest to one that there is not.
static int fail_options(const GError *error, const char *command, const GOptionEntry *entries)
{
    const char *option = strstr(error->message, "--");
    g_autoptr(GPtrArray) names = g_ptr_array_new_with_free_func(g_free);
    static const char *const shared[] = {"--store", "--json", "--help"};
    for (gsize i = 0; i < G_N_ELEMENTS(shared); i++)
        g_ptr_array_add(names, g_strdup(shared[i]));
    for (; entries && entries->long_name; entries++)
        g_ptr_array_add(names, g_strconcat("--", entries->long_name, NULL));
    const char *amount = strstr(error->message, " -");
    if (amount && g_ascii_isdigit(amount[2]))
        return fail_saying(2,
                           "an amount below 0 cannot stand here, and `-` begins an option; see "
                           "standbook %s --help",
                           command);
    if (!g_error_matches(error, G_OPTION_ERROR, G_OPTION_ERROR_UNKNOWN_OPTION) || !option)
        return fail_saying(2, "%s; see standbook %s --help", error->message, command);
    g_autofree char *otherwise = g_strdup_printf("; see standbook %s --help", command);
    g_autofree char *hint =
        hint_nearest(option, (const char *const *)names->pdata, names->len, otherwise);
    return fail_saying(2, "%s has no option `%s`%s", command, option, hint);
}

GStrv arguments_read(int argc, char **argv, Common *common, const char *usage, const char *about,
                     const GOptionEntry *entries, int *status)
{
    const char *bytes = not_text(argc, argv);
    if (bytes) {
        *status = fail_saying(2, "`%s` is not UTF-8; type it again", bytes);
        return NULL;
    }
    gboolean help = FALSE;
    g_autofree char *line = g_strconcat(argv[0], *usage ? " " : "", usage, NULL);
    GOptionContext *context = context_new(line, about, common, entries, &help);
    GStrvBuilder *builder = g_strv_builder_new();
    g_strv_builder_add(builder, "standbook");
    for (int i = 1; i < argc; i++)
        g_strv_builder_add(builder, argv[i]);
    GStrv all = g_strv_builder_end(builder), rest = NULL;
    g_strv_builder_unref(builder);
    g_set_prgname("standbook");
    GError *error = NULL;
    *status = 0;
    if (!g_option_context_parse_strv(context, &all, &error)) {
        *status = fail_options(error, argv[0], entries);
        g_error_free(error);
    } else if (help) {
        g_autofree char *text = g_option_context_get_help(context, TRUE, NULL);
        fputs(text, stdout);
    } else {
        rest = rest_of(all);
    }
    g_strfreev(all);
    g_option_context_free(context);
    return rest;
}

gboolean arguments_fit(GStrv arguments, guint least, guint most, const char *usage)
{
    guint count = g_strv_length(arguments);
    if (count >= least && count <= most)
        return TRUE;
    if (count < least)
        fail_saying(2, "that is too little; write: standbook %s", usage);
    else
        fail_saying(2, "that is too much, from `%s` on; write: standbook %s%s", arguments[most],
                    usage, most ? " (a name of several words stands in quotes)" : "");
    return FALSE;
}

// `check FILE | list | show FILE|PLAN`.
static char *verbs_usage(const Verb *verbs)
{
    GString *usage = g_string_new(NULL);
    for (const Verb *verb = verbs; verb->name; verb++)
        g_string_append_printf(usage, "%s%s%s%s", verb == verbs ? "" : " | ", verb->name,
                               *verb->usage ? " " : "", verb->usage);
    return g_string_free(usage, FALSE);
}

static char *verbs_about(const Verb *verbs, const char *about)
{
    GString *text = g_string_new(NULL);
    for (const Verb *verb = verbs; verb->name; verb++) {
        g_autofree char *line = g_strconcat(verb->name, *verb->usage ? " " : "", verb->usage, NULL);
        g_string_append_printf(text, "  %-18s %s\n", line, verb->help);
    }
    g_string_append_printf(text, "%s%s", *about ? "\n" : "", about);
    return g_string_free(text, FALSE);
}

static int no_verb(const char *command, const Verb *verbs, const char *word)
{
    g_autofree char *usage = verbs_usage(verbs);
    g_autoptr(GPtrArray) names = g_ptr_array_new();
    for (const Verb *verb = verbs; verb->name; verb++)
        g_ptr_array_add(names, (gpointer)verb->name);
    if (!word)
        return fail_saying(2, "that is too little; write: standbook %s %s", command, usage);
    g_autofree char *otherwise = g_strdup_printf("; write: standbook %s %s", command, usage);
    g_autofree char *hint =
        hint_nearest(word, (const char *const *)names->pdata, names->len, otherwise);
    return fail_saying(2, "%s cannot do `%s`%s", command, word, hint);
}

int verbs_run(int argc, char **argv, Common *common, const Verb *verbs, const char *about)
{
    int status;
    g_autofree char *usage = verbs_usage(verbs), *text = verbs_about(verbs, about);
    g_auto(GStrv) words = arguments_read(argc, argv, common, usage, text, NULL, &status);
    if (!words)
        return status;
    for (const Verb *verb = verbs; words[0] && verb->name; verb++) {
        if (strcmp(verb->name, words[0]) != 0)
            continue;
        g_autofree char *line =
            g_strdup_printf("%s %s%s%s", argv[0], verb->name, *verb->usage ? " " : "", verb->usage);
        return arguments_fit(words + 1, verb->least, verb->most, line)
                   ? verb->run(words + 1, common)
                   : STANDBOOK_ERROR_MISUSE;
    }
    return no_verb(argv[0], verbs, words[0]);
}

void say(const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    vfprintf(stdout, format, arguments);
    va_end(arguments);
}

void say_clean(const char *text)
{
    g_auto(GStrv) lines = g_strsplit(text, "\n", -1);
    for (guint i = 0; lines[i]; i++) {
        if (!lines[i + 1] && !*lines[i])
            break;
        g_autofree char *clean = text_clean(lines[i], -1);
        say("%s\n", clean);
    }
}

// Jansson leaves C1 and bidirectional marks as they are; as ASCII they cannot reach a terminal.
void say_json(const json_t *json)
{
    char *text = json_dumps(json, JSON_INDENT(1) | JSON_ENSURE_ASCII);
    say("%s\n", text);
    free(text);
}

int fail_saying(int status, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    g_autofree char *text = g_strdup_vprintf(format, arguments);
    va_end(arguments);
    g_autofree char *clean = text_clean(text, -1);
    fflush(stdout);
    fprintf(stderr, "standbook: %s\n", clean);
    return status;
}

int fail_with(GError *error)
{
    int status = error->domain == STANDBOOK_ERROR ? error->code : STANDBOOK_ERROR_STORE;
    fail_saying(status, "%s", error->message);
    g_error_free(error);
    return status;
}

static GBytes *stream_read(FILE *stream, const char *path, gsize most, GError **error)
{
    GByteArray *bytes = g_byte_array_new();
    guint8 part[65536];
    gsize count;
    while ((count = fread(part, 1, sizeof part, stream)) > 0 && bytes->len <= most)
        g_byte_array_append(bytes, part, (guint)count);
    g_autofree char *shown = text_path(path);
    if (ferror(stream))
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_STORE, "%s cannot be read: %s", shown,
                    g_strerror(errno));
    else if (bytes->len > most)
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_STORE,
                    "%s is longer than %" G_GSIZE_FORMAT " bytes; take a shorter file", shown,
                    most);
    else
        return g_byte_array_free_to_bytes(bytes);
    g_byte_array_unref(bytes);
    return NULL;
}

GBytes *file_read(const char *path, gsize most, GError **error)
{
    if (strcmp(path, "-") == 0)
        return stream_read(stdin, "standard input", most, error);
    FILE *file = fopen(path, "rb");
    if (!file) {
        g_autofree char *shown = text_path(path);
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_STORE, "%s cannot be opened: %s", shown,
                    g_strerror(errno));
        return NULL;
    }
    GBytes *bytes = stream_read(file, path, most, error);
    fclose(file);
    return bytes;
}

int bytes_out(const char *bytes, gsize length, const char *file)
{
    gboolean to_file = file && strcmp(file, "-") != 0;
    if (!to_file && isatty(STDOUT_FILENO))
        return fail_saying(2, "name a file for it, or send it on to a program");
    FILE *out = to_file ? fopen(file, "wxb") : stdout;
    if (!out) {
        g_autofree char *shown = text_path(file);
        return fail_saying(3, "%s cannot be made: %s", shown, g_strerror(errno));
    }
    fwrite(bytes, 1, length, out);
    gboolean good = fflush(out) == 0 && !ferror(out);
    if (to_file)
        good = fclose(out) == 0 && good;
    return good ? 0 : fail_saying(3, "it cannot be written out");
}

Moment moment_now(void)
{
    g_autoptr(GDateTime) now = g_date_time_new_now_local();
    return g_date_time_to_unix(now) + g_date_time_get_utc_offset(now) / G_TIME_SPAN_SECOND;
}
