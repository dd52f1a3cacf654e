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
static volatile sig_atomic_t to_stop;
static volatile sig_atomic_t resized;
static void (*curses_resizes)(int signal); // what curses does itself

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

static void stop_soon(int signal)
{
    (void)signal;
    to_stop = 1;
}

static void resize_soon(int signal)
{
    resized = 1;
    if (curses_resizes)
        curses_resizes(signal);
}

// Curses tells of another size only, but a window that went through others and came back to the
// same has lost what was on it.
static void listen_to_resizes(void)
{
    struct sigaction usual, action = {.sa_handler = resize_soon};
    sigaction(SIGWINCH, NULL, &usual);
    gboolean handled = usual.sa_handler != SIG_DFL && usual.sa_handler != SIG_IGN;
    curses_resizes = handled ? usual.sa_handler : NULL;
    sigemptyset(&action.sa_mask);
    sigaction(SIGWINCH, &action, NULL);
}

static void listen_to_signals(void)
{
    static const struct {
        int signal;
        void (*handler)(int signal);
    } heard[] = {{SIGHUP, hang_up},  {SIGTERM, hang_up},   {SIGINT, hang_up},
                 {SIGQUIT, hang_up}, {SIGTSTP, stop_soon}, {SIGPIPE, SIG_IGN}};
    for (gsize i = 0; i < G_N_ELEMENTS(heard); i++) {
        struct sigaction action = {.sa_handler = heard[i].handler};
        sigemptyset(&action.sa_mask);
        sigaction(heard[i].signal, &action, NULL);
    }
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

// The number pad sends these in the mode that curses puts it in, whatever kind of terminal it is;
// `ESC O E` and `ESC [ E` is its middle key without NUM LOCK.
enum { PAD = KEY_MAX + 1 };

static void begin_pad(void)
{
    static const char keys[] = "p0q1r2s3t4u5v6w7x8y9n.l,k+m-j*o/X=";
    for (const char *key = keys; *key; key += 2) {
        const char sequence[] = {0x1b, 'O', *key, 0};
        define_key(sequence, PAD + key[1]);
    }
    define_key("\033OM", KEY_ENTER);
    define_key("\033OE", KEY_B2);
    define_key("\033[E", KEY_B2);
}

// No key may act before it is known whether a finger pressed it: raw, also for Ctrl-C and Ctrl-S.
static void begin_input(void)
{
    raw();
    noecho();
    nonl();
    keypad(stdscr, TRUE);
    begin_pad();
    set_escdelay(25);
    typeahead(-1); // a page is painted whole; the loop looks for keys itself
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
    listen_to_resizes();
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
    return one->character == other->character && one->style.type == other->style.type &&
           one->style.role == other->style.role;
}

// Most rows are as they were.
static void show_row(const Term *term, const Canvas *canvas, guint row)
{
    const Cell *cells = canvas_cell(canvas, row, 0), *shown = canvas_cell(term->shown, row, 0);
    if (memcmp(cells, shown, sizeof *cells * canvas->width) == 0)
        return;
    for (guint column = 0; column < canvas->width; column++)
        if (cells[column].character && !cell_is(&cells[column], &shown[column]))
            show_cell(term, row, column, &cells[column]);
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
    for (guint each = 0; each < canvas->height; each++)
        show_row(term, canvas, each);
    canvas_copy(term->shown, 0, 0, canvas, 0, canvas->height);
    move((int)row, (int)column);
    refresh();
}

void term_forget(Term *term)
{
    g_clear_pointer(&term->shown, canvas_free);
}

static KeyKind function_key(int code)
{
    static const struct {
        int code;
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

enum { CONTROL_C = 3, CONTROL_U = 21, CONTROL_Z = 26, ESCAPE = 27 };

static KeyKind character_kind(gunichar character)
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
    case ESCAPE:
    case CONTROL_U:
        return PRESSED_CLEAR;
    case CONTROL_C:
        return PRESSED_BREAK;
    case CONTROL_Z:
        return PRESSED_STOP;
    default:
        return g_unichar_iscntrl(character) ? PRESSED_OTHER : PRESSED_CHARACTER;
    }
}

// The character that begins with this byte; U+FFFD for what is none.
static gunichar whole_character(int byte)
{
    enum { WAIT = 20 }; // ms
    guint length = byte >= 0xf0 ? 4 : byte >= 0xe0 ? 3 : byte >= 0xc0 ? 2 : 1, got = 1;
    char bytes[4] = {(char)byte};
    timeout(WAIT);
    for (; got < length; got++) {
        int next = getch();
        if (next != ERR && (next & ~0x3f) != 0x80)
            ungetch(next);
        if (next == ERR || (next & ~0x3f) != 0x80)
            break;
        bytes[got] = (char)next;
    }
    gunichar character = g_utf8_get_char_validated(bytes, (gssize)got);
    return character > 0x10ffff ? 0xfffd : character;
}

static Key key_of(int code)
{
    if (code > PAD)
        return (Key){.kind = PRESSED_CHARACTER, .character = (gunichar)(code - PAD)};
    if (code > 0xff)
        return (Key){.kind = function_key(code)};
    gunichar character = whole_character(code);
    return (Key){.kind = character_kind(character), .character = character};
}

// Whether the end of the terminal is what kept a key from coming.
static gboolean is_gone(int code)
{
    return hung_up || (code == ERR && !isatty(STDIN_FILENO));
}

void term_stop(Term *term)
{
    struct sigaction usual = {.sa_handler = SIG_DFL}, ours;
    endwin();
    sigaction(SIGTSTP, &usual, &ours);
    kill(0, SIGTSTP); // all that were started as one, as the terminal itself would
    sigaction(SIGTSTP, &ours, NULL);
    to_stop = 0;
    term_forget(term);
}

Key term_key(Term *term, guint milliseconds)
{
    timeout((int)milliseconds);
    int code = getch();
    Key key = {.kind = PRESSED_NONE};
    if (is_gone(code)) {
        key.kind = PRESSED_HANGUP;
        if (code != ERR)
            ungetch(code); // for term_rest
    } else if (code != ERR) {
        key = key_of(code);
    } else if (to_stop) {
        term_stop(term);
        key.kind = PRESSED_RESIZE;
    }
    if (resized) {
        resized = 0;
        term_forget(term);
        key.kind = key.kind == PRESSED_NONE ? PRESSED_RESIZE : key.kind;
    }
    key.at = g_get_monotonic_time();
    return key;
}

GArray *term_rest(Term *term, guint most)
{
    GArray *keys = g_array_new(FALSE, FALSE, sizeof(Key));
    (void)term;
    for (guint i = 0; i < most; i++) {
        timeout(0);
        int code = getch();
        if (code == ERR)
            break;
        Key key = key_of(code);
        key.at = g_get_monotonic_time();
        if (key.kind != PRESSED_RESIZE)
            g_array_append_val(keys, key);
    }
    return keys;
}

void term_bell(Term *term)
{
    (void)term;
    beep();
}
