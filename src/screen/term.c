#define _XOPEN_SOURCE_EXTENDED 1
#include "term.h"

#include <curses.h>
#include <langinfo.h>
#include <locale.h>
#include <signal.h>
#include <standbook/base/error.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

// Curses has one terminal, and a signal knows nothing else: the only globals of the program.
static volatile sig_atomic_t hung_up;

struct Term {
    SCREEN *screen;
    gboolean ascii;
    gboolean coloured;
    Canvas *shown; // NULL: not known
};

static const char *const role_names[ROLES] = {"calm", "heed", "unsure", "granted", "here", "faint"};
static const short usual_colours[ROLES] = {-1, COLOR_RED, COLOR_YELLOW, COLOR_CYAN, -1, -1};

static void hang_up(int signal)
{
    (void)signal;
    hung_up = 1;
}

static void listen_to_signals(void)
{
    struct sigaction action = {.sa_handler = hang_up};
    sigemptyset(&action.sa_mask);
    sigaction(SIGHUP, &action, NULL);
    sigaction(SIGTERM, &action, NULL);
    sigaction(SIGINT, &action, NULL);
    signal(SIGPIPE, SIG_IGN);
}

static short colour_of(const char *colours, guint role)
{
    g_auto(GStrv) words = g_strsplit_set(colours ? colours : "", " ,", -1);
    for (guint i = 0; words[i]; i++) {
        gsize length = strlen(role_names[role]);
        if (strncmp(words[i], role_names[role], length) != 0 || words[i][length] != '=')
            continue;
        const char *value = words[i] + length + 1;
        gint64 number = g_ascii_isdigit(*value) ? g_ascii_strtoll(value, NULL, 10) : -1;
        return (short)(number < COLORS && number < 16 ? number : -1);
    }
    return usual_colours[role];
}

static void begin_colours(Term *term, const char *colours)
{
    const char *none = getenv("NO_COLOR");
    term->coloured = has_colors() && !(none && *none) && start_color() == OK;
    if (!term->coloured)
        return;
    use_default_colors();
    for (guint role = 1; role < ROLES; role++)
        init_pair((short)role, colour_of(colours, role), -1);
}

static void begin_input(void)
{
    cbreak();
    noecho();
    nonl();
    intrflush(stdscr, FALSE);
    keypad(stdscr, TRUE);
    set_escdelay(25);
}

Term *term_open(const char *colours, GError **error)
{
    const char *kind = getenv("TERM");
    if (!isatty(STDIN_FILENO) || !isatty(STDOUT_FILENO)) {
        g_set_error_literal(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                            "the front end needs a terminal; standbook --help names the commands "
                            "that do not");
        return NULL;
    }
    setlocale(LC_CTYPE, "");
    SCREEN *screen = newterm(NULL, stdout, stdin);
    if (!screen) {
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                    "a terminal of the kind `%s` is not known here; set TERM, for example to "
                    "vt220 or linux",
                    kind ? kind : "");
        return NULL;
    }
    Term *term = g_new0(Term, 1);
    const char *ascii = getenv("STANDBOOK_ASCII");
    term->screen = screen;
    term->ascii = strcmp(nl_langinfo(CODESET), "UTF-8") != 0 || (ascii && *ascii);
    begin_colours(term, colours);
    begin_input();
    listen_to_signals();
    return term;
}

void term_close(Term *term)
{
    if (!term)
        return;
    canvas_free(term->shown);
    endwin();
    delscreen(term->screen);
    g_free(term);
}

gboolean term_is_ascii(const Term *term)
{
    return term->ascii;
}

void term_size(const Term *term, guint *width, guint *height)
{
    (void)term;
    *width = (guint)COLS;
    *height = (guint)LINES;
}

static void show_cell(const Term *term, guint row, guint column, const Cell *cell)
{
    static const attr_t attributes[] = {A_BOLD, A_REVERSE, A_UNDERLINE};
    attr_t type = A_NORMAL;
    for (gsize i = 0; i < G_N_ELEMENTS(attributes); i++)
        if (cell->style.type & (1u << i))
            type |= attributes[i];
    wchar_t text[2] = {(wchar_t)cell->character, 0};
    cchar_t shown;
    short pair = term->coloured ? (short)cell->style.role : 0;
    if (setcchar(&shown, text, type, pair, NULL) == OK)
        mvadd_wch((int)row, (int)column, &shown);
}

static gboolean cell_is(const Cell *one, const Cell *other)
{
    return one && other && one->character == other->character &&
           one->style.type == other->style.type && one->style.role == other->style.role;
}

void term_show(Term *term, const Canvas *canvas, guint row, guint column)
{
    if (term->shown &&
        (term->shown->width != canvas->width || term->shown->height != canvas->height))
        term_forget(term);
    if (!term->shown) {
        clear();
        term->shown = canvas_new(canvas->width, canvas->height, canvas->ascii);
    }
    for (guint r = 0; r < canvas->height; r++)
        for (guint c = 0; c < canvas->width; c++) {
            const Cell *cell = canvas_cell(canvas, r, c);
            if (cell->character && !cell_is(cell, canvas_cell(term->shown, r, c)))
                show_cell(term, r, c, cell);
        }
    canvas_copy(term->shown, 0, 0, canvas, 0, canvas->height);
    move((int)row, (int)column);
    refresh();
}

void term_forget(Term *term)
{
    g_clear_pointer(&term->shown, canvas_free);
}

static KeyKind function_key(wint_t code)
{
    static const struct {
        wint_t code;
        KeyKind kind;
    } kinds[] = {
        {KEY_UP, PRESSED_BEFORE},           {KEY_LEFT, PRESSED_BEFORE},
        {KEY_BTAB, PRESSED_BEFORE},         {KEY_DOWN, PRESSED_BEHIND},
        {KEY_RIGHT, PRESSED_BEHIND},        {KEY_HOME, PRESSED_NUM_LOCK},
        {KEY_END, PRESSED_NUM_LOCK},        {KEY_NPAGE, PRESSED_NUM_LOCK},
        {KEY_PPAGE, PRESSED_NUM_LOCK},      {KEY_IC, PRESSED_NUM_LOCK},
        {KEY_DC, PRESSED_NUM_LOCK},         {KEY_B2, PRESSED_NUM_LOCK},
        {KEY_A1, PRESSED_NUM_LOCK},         {KEY_A3, PRESSED_NUM_LOCK},
        {KEY_C1, PRESSED_NUM_LOCK},         {KEY_C3, PRESSED_NUM_LOCK},
        {KEY_BACKSPACE, PRESSED_BACKSPACE}, {KEY_RESIZE, PRESSED_RESIZE},
        {KEY_ENTER, PRESSED_ENTER},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(kinds); i++)
        if (kinds[i].code == code)
            return kinds[i].kind;
    return PRESSED_OTHER;
}

static KeyKind character_key(wint_t character)
{
    switch (character) {
    case '\r':
    case '\n':
        return PRESSED_ENTER;
    case '\b':
    case 0x7f:
        return PRESSED_BACKSPACE;
    case '\t':
        return PRESSED_TAB;
    default:
        return character < 0x20 ? PRESSED_OTHER : PRESSED_CHARACTER;
    }
}

// Whether the end of the terminal is what kept a key from coming.
static gboolean is_gone(void)
{
    return hung_up || !isatty(STDIN_FILENO);
}

Key term_key(Term *term, guint milliseconds)
{
    wint_t code = 0;
    (void)term;
    timeout((int)milliseconds);
    int got = get_wch(&code);
    Key key = {.kind = PRESSED_NONE, .at = g_get_monotonic_time()};
    if (is_gone())
        key.kind = PRESSED_HANGUP;
    else if (got == KEY_CODE_YES)
        key.kind = function_key(code);
    else if (got != ERR) {
        key.kind = character_key(code);
        key.character = (gunichar)code;
    }
    return key;
}

void term_flush(Term *term)
{
    (void)term;
    flushinp();
}

void term_bell(Term *term)
{
    (void)term;
    beep();
}
