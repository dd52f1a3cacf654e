// A terminal without a window: starts a program on a pty, keeps what it paints, and answers
// requests, so that a test can type and look. It is the tests' only way to the real front end.
//
//   terminal COLUMNSxROWS [NAME=VALUE…] COMMAND [ARGUMENT…]
//
// The program gets an environment of PATH and TERM=xterm-256color, and what is named; nothing of
// the caller's. Requests come on standard input, one a line; each is answered by one line of JSON
// on standard output: {"error": "…"} if it was not understood or could not be done.
//
//   keys TEXT          types TEXT at once. \r \n \t \e \b \\ and \xHH stand for what they do in C
//   slow MS TEXT       types TEXT key by key; the next comes MS after the program read the one
//                      before, and not before it sleeps again. A UTF-8 character or an escape
//                      sequence is one key
//   press MS NAME      presses a key as the terminal sends it in the mode it was put in, and lets
//   MS
//                      go by as above: Enter Tab Backspace Escape Up Down Left Right Home End
//                      Insert Delete PageUp PageDown, and on the number pad Pad0 to Pad9 Pad+ Pad-
//                      Pad* Pad/ Pad. PadEnter
//   wait MS            lets time pass
//   settle MS [LIMIT]  until the program sleeps, has read every key and printed nothing for MS;
//                      {"settled": false} if that does not come within LIMIT (5000)
//   screen             {"rows": […], "columns": n, "alternate": whether on the second screen}; a
//   row
//                      is its text without the blanks at its end
//   cells ROW          {"cells": […]}, from 0: text, and bold, reverse, underline, blink, italic,
//                      foreground and background (a number of the palette, or "#rrggbb") where set
//   cursor             {"row": n, "column": n, "visible": …}, from 0
//   bytes              {"bytes": n} printed since it was asked last
//   bells              {"bells": n} rung since it was asked last
//   resize COLUMNSxROWS   the kernel tells the program (SIGWINCH)
//   signal NAME        HUP INT TERM KILL WINCH STOP CONT TSTP
//   hangup             the terminal goes away
//   status             {"running": true}, {"exit": n} or {"signal": n}
//
// At the end of its input it hangs up, and kills a program that still runs a second later.
#include "window.h"

#include <jansson.h>
#include <signal.h>
#include <stdio.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

enum {
    MOST_CELLS = 1000,   // columns, rows
    MOST_LINE = 16384,   // bytes of a request
    MOST_MS = 600000,    // of a request to wait
    SETTLE_LIMIT = 5000, // ms
    READ_LIMIT = 10000   // ms a program may take to read a key and come to rest
};

// THE SCREEN ------------------------------------------------------------------------------------

static json_t *row_json(const Window *window, int row)
{
    g_autoptr(GString) text = g_string_new(NULL);
    for (int column = 0; column < window->columns; column++) {
        VTermScreenCell cell = window_cell(window, row, column);
        window_cell_text(&cell, text);
    }
    while (text->len && text->str[text->len - 1] == ' ')
        g_string_truncate(text, text->len - 1);
    return json_stringn_nocheck(text->str, text->len);
}

static json_t *colour_json(const VTermColor *colour)
{
    char text[8];
    if (VTERM_COLOR_IS_DEFAULT_FG(colour) || VTERM_COLOR_IS_DEFAULT_BG(colour))
        return NULL;
    if (VTERM_COLOR_IS_INDEXED(colour))
        return json_integer(colour->indexed.idx);
    snprintf(text, sizeof text, "#%02x%02x%02x", colour->rgb.red, colour->rgb.green,
             colour->rgb.blue);
    return json_string(text);
}

static json_t *cell_json(const VTermScreenCell *cell)
{
    const struct {
        const char *name;
        bool is;
    } attributes[] = {{"bold", cell->attrs.bold},
                      {"reverse", cell->attrs.reverse},
                      {"underline", cell->attrs.underline},
                      {"blink", cell->attrs.blink},
                      {"italic", cell->attrs.italic}};
    g_autoptr(GString) text = g_string_new(NULL);
    window_cell_text(cell, text);
    json_t *made = json_pack("{s:s}", "text", text->str);
    for (size_t i = 0; i < G_N_ELEMENTS(attributes); i++)
        if (attributes[i].is)
            json_object_set_new(made, attributes[i].name, json_true());
    json_object_set_new(made, "foreground", colour_json(&cell->fg));
    json_object_set_new(made, "background", colour_json(&cell->bg));
    return made;
}

// REQUESTS --------------------------------------------------------------------------------------

static json_t *error_json(const char *words)
{
    return json_pack("{s:s}", "error", words);
}

static json_t *done_json(void)
{
    return json_pack("{s:b}", "done", 1);
}

// Makes bytes of what is written as in C, in place; false if that cannot be read.
static bool unescape(char *text)
{
    static const char letters[] = "rnteb\\", meant[] = "\r\n\t\x1b\b\\";
    char *to = text;
    for (const char *from = text; *from; from++) {
        const char *letter = *from == '\\' && from[1] ? strchr(letters, from[1]) : NULL;
        if (*from != '\\') {
            *to++ = *from;
        } else if (letter) {
            *to++ = meant[letter - letters];
            from++;
        } else if (from[1] == 'x' && g_ascii_isxdigit(from[2]) && g_ascii_isxdigit(from[3])) {
            *to++ = (char)(g_ascii_xdigit_value(from[2]) * 16 + g_ascii_xdigit_value(from[3]));
            from += 3;
        } else
            return false;
    }
    *to = '\0';
    return true;
}

// Bytes of the first key of a text: an escape sequence, a character, or a lone byte.
static size_t key_length(const char *text)
{
    if (*text == 0x1b && text[1] == 'O' && text[2])
        return 3;
    if (*text == 0x1b && text[1] == '[') {
        size_t length = 2 + strspn(text + 2, "0123456789;");
        return text[length] ? length + 1 : length;
    }
    gunichar character = g_utf8_get_char_validated(text, -1);
    return character > 0x10ffff ? 1 : (size_t)(g_utf8_next_char(text) - text);
}

static bool read_number(const char **text, gint64 *number)
{
    char *end = NULL;
    *number = g_ascii_strtoll(*text, &end, 10);
    bool is_number = g_ascii_isdigit(**text) && (*end == '\0' || *end == ' ') && *number <= MOST_MS;
    *text = *end == ' ' ? end + 1 : end;
    return is_number;
}

static json_t *type_keys(Window *window, char *text)
{
    if (!unescape(text) || !*text)
        return error_json("no keys, or a \\ before what it does not know");
    if (window->master < 0 || window->ended)
        return error_json("nobody is there to type to");
    window_type(window, text, strlen(text));
    return done_json();
}

// Lets the program read a key and come to rest; the answer.
static json_t *key_read(Window *window, gint64 gap)
{
    return window_rest(window, gap, false, READ_LIMIT)
               ? done_json()
               : error_json("the program does not read its keys, or works without end");
}

static VTermKey key_of_name(const char *name)
{
    static const struct {
        const char *name;
        VTermKey key;
    } keys[] = {{"Enter", VTERM_KEY_ENTER},    {"Tab", VTERM_KEY_TAB},
                {"Escape", VTERM_KEY_ESCAPE},  {"Backspace", VTERM_KEY_BACKSPACE},
                {"Up", VTERM_KEY_UP},          {"Down", VTERM_KEY_DOWN},
                {"Left", VTERM_KEY_LEFT},      {"Right", VTERM_KEY_RIGHT},
                {"Home", VTERM_KEY_HOME},      {"End", VTERM_KEY_END},
                {"Insert", VTERM_KEY_INS},     {"Delete", VTERM_KEY_DEL},
                {"PageUp", VTERM_KEY_PAGEUP},  {"PageDown", VTERM_KEY_PAGEDOWN},
                {"Pad+", VTERM_KEY_KP_PLUS},   {"Pad-", VTERM_KEY_KP_MINUS},
                {"Pad*", VTERM_KEY_KP_MULT},   {"Pad/", VTERM_KEY_KP_DIVIDE},
                {"Pad.", VTERM_KEY_KP_PERIOD}, {"PadEnter", VTERM_KEY_KP_ENTER}};
    for (size_t i = 0; i < G_N_ELEMENTS(keys); i++)
        if (strcmp(keys[i].name, name) == 0)
            return keys[i].key;
    bool digit = strncmp(name, "Pad", 3) == 0 && g_ascii_isdigit(name[3]) && !name[4];
    return digit ? (VTermKey)(VTERM_KEY_KP_0 + name[3] - '0') : VTERM_KEY_NONE;
}

static json_t *press_key(Window *window, char *argument)
{
    gint64 gap;
    const char *rest = argument;
    VTermKey key = read_number(&rest, &gap) ? key_of_name(rest) : VTERM_KEY_NONE;
    if (key == VTERM_KEY_NONE)
        return error_json("press wants milliseconds and the name of a key");
    if (window->master < 0 || window->ended)
        return error_json("nobody is there to type to");
    window_hold(window);
    vterm_keyboard_key(window->vt, key, VTERM_MOD_NONE);
    window_release(window);
    return key_read(window, gap);
}

static json_t *type_slow(Window *window, char *argument)
{
    gint64 gap;
    const char *rest = argument;
    if (!read_number(&rest, &gap))
        return error_json("slow wants milliseconds and keys");
    char *text = argument + (rest - argument);
    if (!unescape(text) || !*text)
        return error_json("no keys, or a \\ before what it does not know");
    json_t *made = done_json();
    for (const char *at = text; *at && json_object_get(made, "done"); at += key_length(at)) {
        json_decref(made);
        if (window->master < 0 || window->ended)
            return error_json("the program ended before all keys were typed");
        window_hold(window);
        window_type(window, at, key_length(at));
        window_release(window);
        made = key_read(window, gap);
    }
    return made;
}

static json_t *wait_for_time(Window *window, char *argument)
{
    gint64 milliseconds;
    const char *rest = argument;
    if (!read_number(&rest, &milliseconds))
        return error_json("wait wants milliseconds");
    window_pump_for(window, milliseconds);
    return done_json();
}

static json_t *settle(Window *window, char *argument)
{
    gint64 quiet, limit = SETTLE_LIMIT;
    const char *rest = argument;
    if (!read_number(&rest, &quiet) || (*rest && !read_number(&rest, &limit)))
        return error_json("settle wants milliseconds, and perhaps a limit");
    return json_pack("{s:b}", "settled", window_rest(window, quiet, true, limit));
}

static json_t *show_screen(Window *window, char *argument)
{
    (void)argument;
    json_t *rows = json_array();
    for (int row = 0; row < window->rows; row++)
        json_array_append_new(rows, row_json(window, row));
    return json_pack("{s:o, s:i, s:b}", "rows", rows, "columns", window->columns, "alternate",
                     window->alternate);
}

static json_t *show_cells(Window *window, char *argument)
{
    gint64 row;
    const char *rest = argument;
    if (!read_number(&rest, &row) || row >= window->rows)
        return error_json("cells wants a row of the screen, from 0");
    json_t *cells = json_array();
    for (int column = 0; column < window->columns; column++) {
        VTermScreenCell cell = window_cell(window, (int)row, column);
        json_array_append_new(cells, cell_json(&cell));
    }
    return json_pack("{s:o}", "cells", cells);
}

static json_t *show_cursor(Window *window, char *argument)
{
    VTermPos at;
    (void)argument;
    vterm_state_get_cursorpos(vterm_obtain_state(window->vt), &at);
    return json_pack("{s:i, s:i, s:b}", "row", at.row, "column", at.col, "visible",
                     window->visible);
}

static json_t *count_bytes(Window *window, char *argument)
{
    (void)argument;
    json_t *made = json_pack("{s:I}", "bytes", (json_int_t)window->bytes);
    window->bytes = 0;
    return made;
}

static json_t *count_bells(Window *window, char *argument)
{
    (void)argument;
    json_t *made = json_pack("{s:I}", "bells", (json_int_t)window->bells);
    window->bells = 0;
    return made;
}

static bool read_size(const char *text, int *columns, int *rows)
{
    char end = '\0';
    return sscanf(text, "%4dx%4d%c", columns, rows, &end) == 2 && *columns > 0 && *rows > 0 &&
           *columns <= MOST_CELLS && *rows <= MOST_CELLS;
}

static json_t *resize(Window *window, char *argument)
{
    int columns, rows;
    if (!read_size(argument, &columns, &rows))
        return error_json("resize wants COLUMNSxROWS, 1 to 1000 each");
    window_resize(window, columns, rows);
    return done_json();
}

static json_t *send_signal(Window *window, char *argument)
{
    static const struct {
        const char *name;
        int number;
    } signals[] = {{"HUP", SIGHUP},     {"INT", SIGINT},   {"TERM", SIGTERM}, {"KILL", SIGKILL},
                   {"WINCH", SIGWINCH}, {"STOP", SIGSTOP}, {"CONT", SIGCONT}, {"TSTP", SIGTSTP}};
    if (window->ended)
        return error_json("the program has ended");
    for (size_t i = 0; i < G_N_ELEMENTS(signals); i++)
        if (strcmp(signals[i].name, argument) == 0 && kill(window->child, signals[i].number) == 0)
            return done_json();
    return error_json("a signal it does not know");
}

static json_t *take_away(Window *window, char *argument)
{
    (void)argument;
    window_hang_up(window);
    return done_json();
}

static json_t *show_status(Window *window, char *argument)
{
    (void)argument;
    window_pump(window, 0, -1);
    if (!window->ended)
        return json_pack("{s:b}", "running", 1);
    return WIFSIGNALED(window->end) ? json_pack("{s:i}", "signal", WTERMSIG(window->end))
                                    : json_pack("{s:i}", "exit", WEXITSTATUS(window->end));
}

static json_t *answer(Window *window, char *line)
{
    static const struct {
        const char *name;
        json_t *(*answer)(Window *window, char *argument);
    } requests[] = {{"keys", type_keys},     {"slow", type_slow},     {"press", press_key},
                    {"wait", wait_for_time}, {"settle", settle},      {"screen", show_screen},
                    {"cells", show_cells},   {"cursor", show_cursor}, {"bytes", count_bytes},
                    {"bells", count_bells},  {"resize", resize},      {"signal", send_signal},
                    {"hangup", take_away},   {"status", show_status}};
    size_t length = strcspn(line, " ");
    char *argument = line + length + (line[length] ? 1 : 0);
    line[length] = '\0';
    for (size_t i = 0; i < G_N_ELEMENTS(requests); i++)
        if (strcmp(requests[i].name, line) == 0)
            return requests[i].answer(window, argument);
    return error_json("a request it does not know");
}

static void reply(Window *window, char *line)
{
    json_t *made = answer(window, line);
    json_dumpf(made, stdout, JSON_COMPACT);
    putchar('\n');
    fflush(stdout);
    json_decref(made);
}

// THE LOOP --------------------------------------------------------------------------------------

// Answers the whole lines among `held` bytes; returns how many bytes are left.
static size_t reply_lines(Window *window, char *lines, size_t held)
{
    char *line = lines, *end = NULL;
    while ((end = memchr(line, '\n', held))) {
        *end = '\0';
        held -= (size_t)(end + 1 - line);
        reply(window, line);
        line = end + 1;
    }
    memmove(lines, line, held);
    return held;
}

static bool serve(Window *window)
{
    static char lines[MOST_LINE];
    size_t held = 0;
    for (;;) {
        if (!window_pump(window, 1000, STDIN_FILENO))
            continue;
        ssize_t length = read(STDIN_FILENO, lines + held, sizeof lines - held);
        if (length <= 0)
            return held == 0;
        held = reply_lines(window, lines, held + (size_t)length);
        if (held == sizeof lines) {
            fputs("terminal: a request is longer than 16384 bytes\n", stderr);
            return false;
        }
    }
}

// Takes the NAME=VALUE arguments off `*arguments`.
static char **read_environment(char ***arguments)
{
    const char *path = g_getenv("PATH");
    char **environment = g_environ_setenv(NULL, "TERM", "xterm-256color", TRUE);
    environment = g_environ_setenv(environment, "PATH", path ? path : "/usr/bin:/bin", TRUE);
    for (; **arguments && strchr(**arguments, '='); ++*arguments) {
        g_auto(GStrv) both = g_strsplit(**arguments, "=", 2);
        environment = g_environ_setenv(environment, both[0], both[1], TRUE);
    }
    return environment;
}

int main(int count, char **arguments)
{
    static Window window;
    char **command = count > 1 ? arguments + 2 : arguments;
    g_auto(GStrv) environment = count > 2 ? read_environment(&command) : NULL;
    if (count < 3 || !*command || !read_size(arguments[1], &window.columns, &window.rows)) {
        fputs("use: terminal COLUMNSxROWS [NAME=VALUE...] COMMAND [ARGUMENT...]\n", stderr);
        return 2;
    }
    signal(SIGPIPE, SIG_IGN);
    if (!window_open(&window, command, environment)) {
        perror("terminal: no pty");
        return 3;
    }
    bool served = serve(&window);
    window_close(&window);
    return served ? 0 : 2;
}
