// A program on a pty, and the screen it paints, as libvterm understands it.
#pragma once
#include <glib.h>
#include <stdbool.h>
#include <sys/types.h>
#include <vterm.h>

typedef struct {
    int columns, rows;
    pid_t child;
    int end; // as waitpid gives it, once it has ended
    bool ended;
    bool held;               // stands still by window_hold
    bool visible, alternate; // the cursor; whether the second screen is shown
    size_t bytes;            // printed, until somebody sets them to nought
    unsigned bells;
    gint64 printed; // when it printed last, by window_now
    VTerm *vt;
    VTermScreen *screen;
    // A hang-up makes these -1. The slave is kept open to see what is still unread.
    int master, slave;
    char outgoing[65536];
    size_t waiting;     // bytes of outgoing
    char sequence[8];   // the beginning of what may be a repeat
    size_t in_sequence; // its bytes
    char before;        // the character before it, 0: none
} Window;

gint64 window_now(void); // ms of a clock that never goes back

// Starts a command (NULL at its end) in a window of `columns` and `rows`, which the caller has set
// in an otherwise empty Window. False, with errno, if there is no pty or no process to be had; a
// command that cannot be run ends with 127 and says so on its screen.
bool window_open(Window *window, char **command, char **environment);
// Hangs up, kills a program that still runs a second later, and frees what the window holds.
void window_close(Window *window);

// Lets the program run for at most so many milliseconds, fewer if it prints something or `request`
// (a descriptor, -1 for none) can be read: true if that can.
bool window_pump(Window *window, int milliseconds, int request);
// The same for all of that time.
void window_pump_for(Window *window, gint64 milliseconds);
// The same until for so many milliseconds every key was read (and, if `silent`, nothing printed)
// and the program sleeps; false if that does not come within `limit`.
bool window_rest(Window *window, gint64 milliseconds, bool silent, gint64 limit);

// Types bytes. They are dropped if there is nobody to read them, or 65536 are unread.
void window_type(Window *window, const char *bytes, size_t length);
// A busy kernel may bring a key late, and the next together with it. So the program can be made to
// stand still while a key is typed, until the key is there to be read. Does nothing where the
// terminal collects lines: there it cannot be seen.
void window_hold(Window *window);
void window_release(Window *window);
// Gives the window another size, and tells the program.
void window_resize(Window *window, int columns, int rows);
// Takes the terminal away from the program.
void window_hang_up(Window *window);

VTermScreenCell window_cell(const Window *window, int row, int column);
// Adds the text of a cell; nothing for the second half of a wide character.
void window_cell_text(const VTermScreenCell *cell, GString *text);
