// What keys do: one by one to what was painted, together as a burst into the open field.
#include "screen_inside.h"

#include "burst.h"

#include <string.h>

static void clear_warning(Screen *screen)
{
    g_clear_pointer(&screen->desk.warning, g_free);
}

// What a number is typed with; at a question also its sign, its point and its Enter.
static gboolean is_of_number(const Screen *screen, const Key *key)
{
    gboolean sign = key->character < 0x80 && key->character && strchr("+-.,", (int)key->character);
    if (key->kind == PRESSED_ENTER)
        return screen->field == ASKS_DIGIT && screen->parking;
    return key->kind == PRESSED_CHARACTER &&
           (g_unichar_isdigit(key->character) || (screen->field == ASKS_DIGIT && sign));
}

static void park_key(Screen *screen, gunichar character)
{
    GPtrArray *unplaced = screen->desk.unplaced;
    gboolean more = screen->parking && unplaced->len;
    g_autoptr(GString) digits =
        g_string_new(more ? unplaced_text(unplaced, unplaced->len - 1) : NULL);
    if (more)
        g_ptr_array_set_size(unplaced, (gint)unplaced->len - 1);
    if (!more && screen->tried >= 0)
        g_string_append_printf(digits, "%d", screen->tried);
    g_string_append_unichar(digits, character);
    screen->tried = -1;
    unplaced_add(unplaced, digits->str, NULL, screen->desk.now);
    gboolean alone = digits->len == 1 && g_ascii_isdigit(*digits->str);
    screen->digit = alone && screen->field == ASKS_DIGIT ? *digits->str - '0' : -1;
}

// Digits right behind a pick-up, or a question that came by itself, were meant for what stood there
// before: they are parked as one, until another key, or a while without any, shows that the person
// has seen what stands there now.
static gboolean is_parked(Screen *screen, const Key *key)
{
    Desk *desk = &screen->desk;
    gboolean bounces = key->kind == PRESSED_ENTER && !screen->parking;
    if (key->at < desk->unseen && bounces && screen->field == ASKS_DIGIT)
        return FALSE;
    if (key->at >= desk->unseen || !is_of_number(screen, key)) {
        desk->unseen = 0;
        screen->tried = -1;
        screen->digit = key->kind == PRESSED_CHARACTER ? screen->digit : -1;
        screen->parking = FALSE;
        return FALSE;
    }
    if (key->kind != PRESSED_ENTER)
        park_key(screen, key->character);
    screen->parking = key->kind != PRESSED_ENTER;
    if (screen->field != ASKS_DIGIT)
        return TRUE;
    desk->unseen = key->at + ASKED_GAP;
    desk_warn(desk, "typed before this was asked: kept, unplaced; press it again to answer");
    return TRUE;
}

// Who pressed the answer before it was taken meant just that.
static void take_parked_digit(Screen *screen, guint digit)
{
    GPtrArray *unplaced = screen->desk.unplaced;
    if (screen->digit == (gint)digit && unplaced->len)
        g_ptr_array_set_size(unplaced, (gint)unplaced->len - 1);
    screen->digit = -1;
}

// A letter, digit or sign that does nothing is no secret; other keys that do nothing need no words.
// A letter that does something where the field is empty says how it is emptied.
static void say_dead(Screen *screen, const Key *key)
{
    char text[7] = "";
    if (key->kind != PRESSED_CHARACTER || !g_unichar_isgraph(key->character))
        return;
    g_unichar_to_utf8(key->character, text);
    Action action = screen->typing.text->len ? action_of_letter(key->character) : ACTION_NONE;
    if (action)
        desk_warn(&screen->desk, "empty the field first (Escape), then `%s` acts: %s",
                  text, action_info(action)->word);
    else
        desk_warn(&screen->desk, "`%s` does nothing here; the last row names the keys that do", text);
}

static void do_pressed(Screen *screen, const Press *pressed, const Key *key)
{
    switch (pressed->kind) {
    case PRESS_NOTHING:
        say_dead(screen, key);
        break;
    case PRESS_ENTER:
        screen_enter(screen);
        break;
    case PRESS_ACTION:
        screen_act(screen, pressed->action);
        break;
    case PRESS_BEFORE:
        screen_move(screen, -1);
        break;
    case PRESS_BEHIND:
        screen_move(screen, 1);
        break;
    case PRESS_DIGIT:
        screen->answered = screen->pressed;
        take_parked_digit(screen, pressed->digit);
        screen->tried = (gint)pressed->digit;
        screen_answer(screen, pressed->digit);
        break;
    case PRESS_SAY:
        desk_warn(&screen->desk, "%s", pressed->words);
        break;
    default:
        break;
    }
}

// A letter that begins words where a question stood.
static gboolean begins_words(Screen *screen, const Press *pressed, const Key *key)
{
    const Opened *opened = screen_upper(screen, 0);
    gboolean letter = key->kind == PRESSED_CHARACTER && g_unichar_isalpha(key->character);
    return screen->field == ASKS_DIGIT && letter && pressed->kind != PRESS_SAY &&
           opened->ops->letter && opened->ops->letter(opened->state) &&
           typing_add(&screen->typing, key->character);
}

enum { ANSWER_GAP = 500000 }; // µs

// Enter right behind an answer, as one ends a line with it, tightens nothing.
static gboolean ends_answer(const Screen *screen, const Press *pressed)
{
    return pressed->kind == PRESS_ENTER && screen->field == ASKS_TICK && screen->answered &&
           screen->pressed - screen->answered < ANSWER_GAP;
}

// Whether a key does more than to change what stands in the field, or to take it.
static gboolean is_command(const Screen *screen, const Press *pressed)
{
    gboolean whole = screen->field != ASKS_LINE && screen->typing.text->len;
    return pressed->kind == PRESS_ACTION || pressed->kind == PRESS_DIGIT ||
           (pressed->kind == PRESS_ENTER && !whole);
}

// Whether what comes next is asked for by that key: it is no Enter behind a reading or a tick.
static gboolean is_wish(const Screen *screen, const Press *pressed)
{
    gboolean entry = screen->field == ASKS_NUMBER || screen->field == ASKS_TICK;
    return pressed->kind != PRESS_TYPED && !(pressed->kind == PRESS_ENTER && entry);
}

// A key that came `alone`, or with another one closer than a person means it.
static void press(Screen *screen, const Key *key, gboolean alone)
{
    clear_warning(screen);
    if (key->kind == PRESSED_BREAK)
        screen->leave = TRUE;
    else if (key->kind == PRESSED_STOP)
        term_stop(screen->term);
    else if (!is_parked(screen, key)) {
        Press pressed = typing_press(&screen->typing, screen->field, key);
        screen->wished = is_wish(screen, &pressed);
        if (ends_answer(screen, &pressed))
            desk_warn(&screen->desk, "the digit alone was the answer; Enter again if this is done");
        else if (!alone && is_command(screen, &pressed))
            desk_warn(&screen->desk, "two keys at once are no command; press it again");
        else if (!begins_words(screen, &pressed, key))
            do_pressed(screen, &pressed, key);
    }
}

// The key, and whatever comes with it faster than a finger.
GArray *screen_gather(Screen *screen, Key key)
{
    GArray *keys = g_array_new(FALSE, FALSE, sizeof(Key));
    g_array_append_val(keys, key);
    while (keys->len < BURST_MOST && !keys_are_held(keys)) {
        key = term_key(screen->term, BURST_GAP / 1000);
        if (key.kind == PRESSED_NONE || key.kind == PRESSED_HANGUP)
            break;
        if (key.kind != PRESSED_RESIZE)
            g_array_append_val(keys, key);
    }
    if (key.kind != PRESSED_HANGUP)
        return keys;
    g_autoptr(GArray) rest = term_rest(screen->term, BURST_MOST);
    g_array_append_vals(keys, rest->data, rest->len);
    screen->leave = TRUE;
    return keys;
}

static void park(Screen *screen, const BurstLine *line)
{
    unplaced_add(screen->desk.unplaced, line->text, NULL, screen->desk.now);
}

void screen_park(Screen *screen, const GArray *keys)
{
    g_autoptr(GArray) lines = burst_lines(keys);
    for (guint i = 0; i < lines->len; i++)
        park(screen, &g_array_index(lines, BurstLine, i));
}

// A burst goes into the open field, and its lines on into the fields behind as long as they are of
// the same sort on the same screen; what finds none is parked.
static void burst(Screen *screen, const GArray *keys)
{
    g_autoptr(GArray) lines = burst_lines(keys);
    const ViewOps *ops = screen_upper(screen, 0)->ops;
    Asks field = screen->field;
    gboolean ended = FALSE; // the one that was put in last, by Enter
    gboolean waits = FALSE; // it stands in the field, and its Enter did not come with it
    clear_warning(screen);
    for (guint i = 0; i < lines->len; i++) {
        const BurstLine *line = &g_array_index(lines, BurstLine, i);
        if (screen->leave || screen->field != field || screen_upper(screen, 0)->ops != ops ||
            !typing_fits_burst(&screen->typing, field, line->text)) {
            park(screen, line);
            waits = FALSE;
            continue;
        }
        typing_add_burst(&screen->typing, line->text);
        ended = line->ended;
        waits = !ended;
        if (!ended || typing_command(&screen->typing))
            continue;
        screen_enter(screen);
        if (!screen->leave)
            screen_paint(screen); // the next field may be another
    }
    // What a scanner sends behind its Enter comes late.
    typing_end_burst(&screen->typing, ended, waits, g_array_index(keys, Key, keys->len - 1).at);
    screen->parking = FALSE;
}

// Keys pressed by fingers, one after the other; a question that one of them opens takes none of the
// others. CR LF is one Enter.
static void press_each(Screen *screen, const GArray *keys)
{
    gboolean alone = keys->len == 1 || keys_are_one(keys);
    for (guint i = 0; i < keys->len && !screen->leave; i++) {
        const Key *key = &g_array_index(keys, Key, i);
        if (i && key->kind == PRESSED_ENTER &&
            g_array_index(keys, Key, i - 1).kind == PRESSED_ENTER)
            continue;
        press(screen, key, alone);
        if (i + 1 < keys->len && !screen->leave)
            screen_paint(screen);
        if (screen->field == ASKS_DIGIT)
            return;
    }
}

enum { SLEEP_AFTER = 600 }; // s without a key

void screen_fall_asleep(Screen *screen)
{
    enum { AGAIN_AFTER = 10 }; // s: whoever is busy at another terminal may stop
    gint64 now = g_get_monotonic_time();
    if ((now - screen->pressed) / G_USEC_PER_SEC < SLEEP_AFTER ||
        (now - screen->dozed) / G_USEC_PER_SEC < AGAIN_AFTER)
        return;
    screen->dozed = now;
    screen->stale = desk_catch_up(&screen->desk) || screen->stale;
    desk_fall_asleep(&screen->desk, SLEEP_AFTER);
}

gboolean screen_ask_who(Screen *screen)
{
    if (!desk_was_put_down(&screen->desk) || screen_upper(screen, 0)->ops == view_ops(VIEW_WHO))
        return FALSE;
    screen_go(screen, go_first(go_open(VIEW_WHO, g_strdup("left"))));
    return TRUE;
}

// Two keys together may be fingers in a field; none answers a question or turns a page so.
static gboolean is_burst(const Screen *screen, const GArray *keys)
{
    gboolean field = field_takes_burst(screen->field) || screen->field == ASKS_LINE;
    return keys_are_burst(keys) || (keys->len == FINGERS && !field && !keys_are_one(keys));
}

void screen_take_keys(Screen *screen, Key key)
{
    screen->pressed = key.at;
    screen->typed_at = screen->desk.options->now(screen->desk.options->user);
    g_autoptr(GArray) keys = screen_gather(screen, key);
    if (screen->leave)
        screen_save_keys(screen, keys);
    else if (is_burst(screen, keys))
        burst(screen, keys);
    else
        press_each(screen, keys);
}
