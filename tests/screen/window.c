#define _GNU_SOURCE // execvpe
#include "window.h"

#include <errno.h>
#include <fcntl.h>
#include <poll.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/wait.h>
#include <termios.h>
#include <unistd.h>

enum {
    BRING_LIMIT = 1000,  // ms for a key to arrive, and for a program to stop
    LEAVE_LIMIT = 1000,  // ms a program may take to end after a hang-up
    MOST_REPEATED = 1000 // times a character is repeated
};

gint64 window_now(void)
{
    return g_get_monotonic_time() / 1000;
}

// THE PTY ---------------------------------------------------------------------------------------

static void send_bytes(const char *bytes, size_t length, void *user)
{
    Window *window = user;
    if (window->master < 0 || length > sizeof window->outgoing - window->waiting)
        return;
    memcpy(window->outgoing + window->waiting, bytes, length);
    window->waiting += length;
}

static void set_window(const Window *window)
{
    struct winsize size = {.ws_col = (unsigned short)window->columns,
                           .ws_row = (unsigned short)window->rows};
    ioctl(window->master, TIOCSWINSZ, &size);
}

static bool open_pty(Window *window)
{
    window->master = posix_openpt(O_RDWR | O_NOCTTY | O_CLOEXEC);
    if (window->master < 0 || grantpt(window->master) || unlockpt(window->master))
        return false;
    set_window(window);
    window->slave = open(ptsname(window->master), O_RDWR | O_NOCTTY | O_CLOEXEC);
    return window->slave >= 0 && fcntl(window->master, F_SETFL, O_NONBLOCK) == 0;
}

_Noreturn static void become(const Window *window, char **command, char **environment)
{
    setsid();
    ioctl(window->slave, TIOCSCTTY, 0);
    for (int descriptor = 0; descriptor < 3; descriptor++)
        dup2(window->slave, descriptor);
    signal(SIGPIPE, SIG_DFL);
    execvpe(command[0], command, environment);
    fprintf(stderr, "%s: %s\n", command[0], strerror(errno));
    _exit(127);
}

// libvterm takes a character repeated (CSI n b) up to the last column but one for a full row, so
// that the next one wraps. Here the character itself is given so many times.
static void write_repeated(Window *window)
{
    char many[MOST_REPEATED];
    int count = atoi(window->sequence + 2);
    memset(many, window->before, sizeof many);
    vterm_input_write(window->vt, many, (size_t)CLAMP(count, 1, MOST_REPEATED));
}

static bool belongs_to_repeat(const Window *window, char byte)
{
    switch (window->in_sequence) {
    case 0:
        return byte == '\x1b';
    case 1:
        return byte == '[';
    default:
        return g_ascii_isdigit(byte) && window->in_sequence + 1 < sizeof window->sequence;
    }
}

static void write_byte(Window *window, char byte)
{
    bool repeats = window->in_sequence > 2 && byte == 'b' && g_ascii_isprint(window->before);
    if (!repeats && belongs_to_repeat(window, byte)) {
        window->sequence[window->in_sequence++] = byte;
        return;
    }
    size_t held = window->in_sequence;
    window->in_sequence = 0;
    if (repeats) {
        write_repeated(window);
        memset(window->sequence, 0, sizeof window->sequence);
        return;
    }
    vterm_input_write(window->vt, window->sequence, held);
    memset(window->sequence, 0, sizeof window->sequence);
    window->before = held ? 0 : byte;
    if (held && byte == '\x1b')
        window->sequence[window->in_sequence++] = byte;
    else
        vterm_input_write(window->vt, &byte, 1);
}

// One read of what was printed; false if there was nothing.
static bool take_output(Window *window)
{
    char bytes[65536];
    ssize_t length = window->master < 0 ? 0 : read(window->master, bytes, sizeof bytes);
    if (length <= 0)
        return false;
    window->bytes += (size_t)length;
    for (ssize_t i = 0; i < length; i++)
        write_byte(window, bytes[i]);
    window->printed = window_now();
    return true;
}

// What it has printed, but not without end.
static void drain(Window *window)
{
    for (int i = 0; i < 64 && take_output(window); i++)
        ;
}

static void give_input(Window *window)
{
    if (window->master < 0 || window->waiting == 0)
        return;
    ssize_t length = write(window->master, window->outgoing, window->waiting);
    if (length <= 0)
        return;
    window->waiting -= (size_t)length;
    memmove(window->outgoing, window->outgoing + length, window->waiting);
}

static void reap(Window *window)
{
    if (window->ended || waitpid(window->child, &window->end, WNOHANG) != window->child)
        return;
    window->ended = true;
    drain(window);
}

bool window_pump(Window *window, int milliseconds, int request)
{
    struct pollfd polled[] = {
        {.fd = request, .events = POLLIN},
        {.fd = window->master, .events = (short)(window->waiting ? POLLIN | POLLOUT : POLLIN)}};
    poll(polled, G_N_ELEMENTS(polled), milliseconds);
    if (polled[1].revents & POLLIN)
        take_output(window);
    give_input(window);
    reap(window);
    return polled[0].revents & (POLLIN | POLLHUP);
}

void window_pump_for(Window *window, gint64 milliseconds)
{
    gint64 until = window_now() + milliseconds;
    for (gint64 left = milliseconds; left > 0; left = until - window_now())
        window_pump(window, (int)left, -1);
}

// The letter of proc(5): R runs, S sleeps, T is stopped; 0 if that cannot be known.
static char state_of(const Window *window)
{
    char path[64], text[512];
    snprintf(path, sizeof path, "/proc/%ld/stat", (long)window->child);
    FILE *file = window->ended ? NULL : fopen(path, "r");
    if (!file)
        return 0;
    text[fread(text, 1, sizeof text - 1, file)] = '\0';
    fclose(file);
    const char *name_end = strrchr(text, ')');
    return name_end && name_end[1] ? name_end[2] : 0;
}

// Whether the program waits for something to happen. True also where that cannot be known.
static bool is_asleep(const Window *window)
{
    char state = state_of(window);
    return state != 'R' && state != 'D';
}

static bool is_stopped(const Window *window)
{
    return state_of(window) == 'T';
}

static bool has_unread(const Window *window)
{
    int unread = 0;
    if (window->ended || window->slave < 0)
        return false;
    return window->waiting || (ioctl(window->slave, FIONREAD, &unread) == 0 && unread > 0);
}

static bool is_unread(const Window *window)
{
    return !window->waiting && has_unread(window);
}

static void pump_until(Window *window, bool (*is_so)(const Window *window), gint64 limit)
{
    gint64 until = window_now() + limit;
    while (!window->ended && !is_so(window) && window_now() < until)
        window_pump(window, 1, -1);
}

void window_hold(Window *window)
{
    struct termios mode = {0};
    bool tells = tcgetattr(window->slave, &mode) == 0 && !(mode.c_lflag & ICANON);
    window->held = tells && !window->ended && !is_stopped(window);
    if (!window->held)
        return;
    kill(window->child, SIGSTOP);
    pump_until(window, is_stopped, BRING_LIMIT);
}

void window_release(Window *window)
{
    give_input(window);
    if (!window->held)
        return;
    pump_until(window, is_unread, BRING_LIMIT);
    kill(window->child, SIGCONT);
    window->held = false;
}

bool window_rest(Window *window, gint64 milliseconds, bool silent, gint64 limit)
{
    gint64 begun = window_now(), busy = begun, looked = begun;
    bool waits = false; // it has read all, and was seen asleep since
    while (looked - busy < milliseconds || !is_asleep(window)) {
        looked = window_now();
        if (looked - begun > limit)
            return false;
        window_pump(window, 1, -1);
        waits = !has_unread(window) && (waits || is_asleep(window));
        if (!waits)
            busy = window_now();
        if (silent && window->printed > busy)
            busy = window->printed;
    }
    return true;
}

void window_hang_up(Window *window)
{
    if (window->master < 0)
        return;
    drain(window);
    close(window->master);
    close(window->slave);
    window->master = window->slave = -1;
    window->waiting = 0;
}

// THE SCREEN ------------------------------------------------------------------------------------

static int on_property(VTermProp property, VTermValue *value, void *user)
{
    Window *window = user;
    if (property == VTERM_PROP_CURSORVISIBLE)
        window->visible = value->boolean;
    if (property == VTERM_PROP_ALTSCREEN)
        window->alternate = value->boolean;
    return 1;
}

static int on_bell(void *user)
{
    Window *window = user;
    window->bells++;
    return 1;
}

static void make_screen(Window *window)
{
    static const VTermScreenCallbacks callbacks = {.settermprop = on_property, .bell = on_bell};
    window->vt = vterm_new(window->rows, window->columns);
    window->screen = vterm_obtain_screen(window->vt);
    vterm_set_utf8(window->vt, 1);
    vterm_output_set_callback(window->vt, send_bytes, window);
    vterm_screen_set_callbacks(window->screen, &callbacks, window);
    vterm_screen_enable_altscreen(window->screen, 1);
    vterm_screen_reset(window->screen, 1);
}

void window_cell_text(const VTermScreenCell *cell, GString *text)
{
    if (cell->chars[0] == (uint32_t)-1)
        return;
    if (cell->chars[0] == 0)
        g_string_append_c(text, ' ');
    for (int i = 0; i < VTERM_MAX_CHARS_PER_CELL && cell->chars[i]; i++)
        g_string_append_unichar(text, g_unichar_validate(cell->chars[i]) ? cell->chars[i] : 0xfffd);
}

VTermScreenCell window_cell(const Window *window, int row, int column)
{
    VTermScreenCell cell = {0};
    vterm_screen_get_cell(window->screen, (VTermPos){.row = row, .col = column}, &cell);
    return cell;
}

// OPEN AND CLOSE --------------------------------------------------------------------------------

bool window_open(Window *window, char **command, char **environment)
{
    make_screen(window);
    if (!open_pty(window))
        return false;
    window->child = fork();
    if (window->child == 0)
        become(window, command, environment);
    return window->child > 0;
}

void window_close(Window *window)
{
    window_hang_up(window);
    gint64 until = window_now() + LEAVE_LIMIT;
    while (!window->ended && window_now() < until)
        window_pump(window, 5, -1);
    if (!window->ended) {
        kill(window->child, SIGKILL);
        waitpid(window->child, &window->end, 0);
    }
    vterm_free(window->vt);
}

void window_type(Window *window, const char *bytes, size_t length)
{
    send_bytes(bytes, length, window);
    give_input(window);
}

void window_resize(Window *window, int columns, int rows)
{
    window->columns = columns;
    window->rows = rows;
    vterm_set_size(window->vt, rows, columns);
    set_window(window);
}
