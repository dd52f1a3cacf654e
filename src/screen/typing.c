#include "typing.h"

#include <string.h>

void typing_init(Typing *typing)
{
    typing->text = g_string_new(NULL);
    typing->sent = FALSE;
    typing->entered = 0;
    typing->pasted = FALSE;
    typing->before = (Key){.kind = PRESSED_NONE};
    typing->offered = 0;
    typing->word = 0;
}

void typing_clear(Typing *typing)
{
    g_string_free(typing->text, TRUE);
}

static Press press(PressKind kind)
{
    return (Press){.kind = kind};
}

static Press press_action(Action action)
{
    return (Press){.kind = PRESS_ACTION, .action = action};
}

static Press press_say(const char *words)
{
    return (Press){.kind = PRESS_SAY, .words = words};
}

Action typing_command(const Typing *typing)
{
    static const struct {
        const char *sign;
        Action action;
    } signs[] = {{"+", ACTION_ON}, {"-", ACTION_BACK}, {".", ACTION_MORE}};
    for (gsize i = 0; i < G_N_ELEMENTS(signs); i++)
        if (strcmp(typing->text->str, signs[i].sign) == 0)
            return signs[i].action;
    return ACTION_NONE;
}

enum { LONGEST_CHARACTER = 6 }; // bytes

gboolean typing_add(Typing *typing, gunichar character)
{
    if (g_unichar_iscntrl(character) || !g_unichar_validate(character) ||
        typing->text->len + LONGEST_CHARACTER > TYPED_MOST)
        return FALSE;
    g_string_append_unichar(typing->text, character);
    typing->sent = FALSE;
    return TRUE;
}

gsize typing_add_text(Typing *typing, const char *text)
{
    const char *at = text;
    while (*at && typing_add(typing, g_utf8_get_char(at)))
        at = g_utf8_next_char(at);
    return (gsize)(at - text);
}

gboolean field_is_words(Asks field)
{
    return field == ASKS_TEXT || field == ASKS_NAME;
}

gboolean field_takes_burst(Asks field)
{
    return field == ASKS_NUMBER || field == ASKS_TICK || field_is_words(field);
}

gboolean typing_fits_burst(const Typing *typing, Asks field, const char *line)
{
    gsize stays = typing->sent ? 0 : typing->text->len;
    return field_takes_burst(field) && (field_is_words(field) || stays == 0) &&
           stays + strlen(line) + LONGEST_CHARACTER <= TYPED_MOST;
}

void typing_add_burst(Typing *typing, const char *line)
{
    if (typing->sent)
        g_string_truncate(typing->text, 0);
    typing->sent = FALSE;
    typing_add_text(typing, line);
}

void typing_end_burst(Typing *typing, gboolean ended, gboolean waits, gint64 at)
{
    typing->sent = ended;
    typing->entered = waits ? 0 : at;
    typing->pasted = TRUE;
}

// An Enter that comes right behind another.
static Press press_twice(const Typing *typing)
{
    return press_say(typing->pasted ? "what was pasted brought its Enter; one more is dropped"
                                    : "a second Enter so soon is dropped");
}

static Press press_enter(Typing *typing, Asks field, gint64 at)
{
    gboolean twice = typing->entered && at - typing->entered < ENTER_GAP;
    Action command = field == ASKS_DIGIT ? ACTION_NONE : typing_command(typing);
    typing->entered = at;
    if (twice)
        return press_twice(typing);
    typing->pasted = FALSE;
    if (command) {
        g_string_truncate(typing->text, 0);
        return press_action(command);
    }
    if (field == ASKS_DIGIT)
        return press_say("one digit answers here, without Enter; they stand below the question");
    if (field == ASKS_NOTHING ||
        (typing->text->len == 0 && field != ASKS_TICK && !field_is_words(field)))
        return press(PRESS_NOTHING);
    return press(PRESS_ENTER);
}

static Press press_backspace(Typing *typing, Asks field)
{
    GString *text = typing->text;
    if (text->len) {
        const char *last = g_utf8_find_prev_char(text->str, text->str + text->len);
        g_string_truncate(text, last ? (gsize)(last - text->str) : 0);
        typing->sent = FALSE;
        return press(PRESS_TYPED);
    }
    if (field == ASKS_NUMBER || field == ASKS_TICK)
        return press_say("* strikes the last entry; Backspace takes nothing back");
    return press_action(ACTION_UP);
}

// `*` and `/` act at once where no number can begin with them.
static Action action_at_once(const Typing *typing, gunichar character)
{
    if (typing->text->len)
        return ACTION_NONE;
    return character == '*' ? ACTION_STRIKE : character == '/' ? ACTION_PUT_DOWN : ACTION_NONE;
}

// What a letter does at a question: who types a reason or a number there has nothing done with it.
static Actions letters_at_question(Actions offered)
{
    const Actions never = action_bit(ACTION_TAKE) | action_bit(ACTION_STRIKE) |
                          action_bit(ACTION_PUT_DOWN) | action_bit(ACTION_UP);
    return (offered & ~never) | action_bit(ACTION_WHY) | action_bit(ACTION_HELP);
}

// Among words only what needs no letter: signs before Enter, and the digits of the card behind one.
static Actions among_words(Asks field)
{
    Actions all = action_bit(ACTION_TAKE) | action_bit(ACTION_ON) | action_bit(ACTION_BACK) |
                  action_bit(ACTION_MORE) | action_bit(ACTION_CLEAR);
    for (guint digit = 0; digit <= 9; digit++)
        all |= action_bit(action_of_more(digit));
    return field == ASKS_TEXT ? all : all | action_bit(ACTION_STRIKE) | action_bit(ACTION_PUT_DOWN);
}

Actions typing_actions(Asks field, Actions offered)
{
    const Actions signs = action_bit(ACTION_PUT_DOWN) | action_bit(ACTION_UP);
    return field == ASKS_DIGIT     ? letters_at_question(offered) | signs
           : field_is_words(field) ? among_words(field)
                                   : ~(Actions)0;
}

// A digit of a word is no answer either.
static Press press_answer(Typing *typing, guint digit, gint64 at)
{
    gboolean word = typing->word && at - typing->word < WORD_GAP;
    typing->word = word ? at : 0;
    return word ? press_say("words are not asked for here; one digit alone answers")
                : (Press){.kind = PRESS_DIGIT, .digit = digit};
}

static Press press_ask(Typing *typing, gunichar character, gint64 at)
{
    if (character >= '0' && character <= '9')
        return press_answer(typing, character - '0', at);
    if (character == '/')
        return press_action(ACTION_PUT_DOWN);
    if (character == '*' && typing->offered & action_bit(ACTION_STRIKE))
        return press_action(ACTION_STRIKE);
    Action action = action_of_letter(character);
    if (action && letters_at_question(typing->offered) & action_bit(action))
        return press_action(action);
    typing->word = g_unichar_isalpha(character) ? at : typing->word;
    return press(PRESS_NOTHING);
}

// A list has names in it, which somebody may type: what takes back or stops is a sign there.
static Action letter_of_list(gunichar character)
{
    Action action = action_of_letter(character);
    return action == ACTION_STRIKE || action == ACTION_PUT_DOWN ? ACTION_NONE : action;
}

static Press press_character(Typing *typing, Asks field, gunichar character, gint64 at)
{
    Action action = ACTION_NONE;
    if (field == ASKS_DIGIT)
        return press_ask(typing, character, at);
    if (field != ASKS_TEXT)
        action = action_at_once(typing, character);
    if (!field_is_words(field)) {
        if (!action && typing->text->len == 0)
            action = field == ASKS_LINE ? letter_of_list(character) : action_of_letter(character);
        if (!action && character == '?')
            action = ACTION_HELP;
    }
    if (action)
        return press_action(action);
    gboolean sign = character < 0x80 && strchr("+-.", (int)character);
    if ((field == ASKS_NOTHING && !sign) ||
        (field == ASKS_LINE && !sign && !(character < 0x80 && g_ascii_isdigit((char)character))))
        return press(PRESS_NOTHING);
    if (field != ASKS_TEXT && typing->text->len == 0 && g_unichar_isspace(character))
        return press_say("nothing begins with a blank; Enter takes what stands in the field");
    typing->entered = 0; // only an Enter right behind an Enter is a bounce
    return typing_add(typing, character) ? press(PRESS_TYPED) : press_say("the field is full");
}

// The keys that can do more than to go back: Enter, `u`, on the number pad 1, `*`, and `w`.
static Action action_of_any_key(const Key *key)
{
    if (key->kind != PRESSED_CHARACTER)
        return key->kind == PRESSED_ENTER ? ACTION_TAKE : ACTION_UP;
    if (key->character == '*')
        return ACTION_STRIKE;
    Action action = action_of_letter(key->character);
    if (key->character == '1')
        return ACTION_UPHOLD;
    return action == ACTION_UPHOLD || action == ACTION_WHY ? action : ACTION_UP;
}

// A second Enter that bounces does nothing here either.
static Press press_any_key(Typing *typing, const Key *key)
{
    gboolean enter = key->kind == PRESSED_ENTER;
    gboolean twice = enter && typing->entered && key->at - typing->entered < ENTER_GAP;
    typing->entered = enter ? key->at : 0;
    return twice ? press_twice(typing) : press_action(action_of_any_key(key));
}

// Page, Home, End and the like: those of the pad without NUM LOCK, or the keys of that name.
static const char pad_or_page[] =
    "NUM LOCK IS OFF, if that was the pad; a list pages by 0 Enter, or the arrows";
static const char pad_or_nothing[] =
    "NUM LOCK IS OFF, if that was the pad; the key itself does nothing here";

static Press press_key(Typing *typing, Asks field, const Key *key)
{
    if (field == ASKS_KEY)
        return press_any_key(typing, key);
    switch (key->kind) {
    case PRESSED_CHARACTER:
        return press_character(typing, field, key->character, key->at);
    case PRESSED_ENTER:
        return press_enter(typing, field, key->at);
    case PRESSED_BACKSPACE:
        return press_backspace(typing, field);
    case PRESSED_CLEAR:
        return typing->text->len ? press_action(ACTION_CLEAR) : press(PRESS_NOTHING);
    case PRESSED_TAB:
    case PRESSED_BEHIND:
        return press(typing->text->len ? PRESS_NOTHING : PRESS_BEHIND);
    case PRESSED_BEFORE:
        return press(typing->text->len ? PRESS_NOTHING : PRESS_BEFORE);
    case PRESSED_NUM_LOCK:
        return press_say(field == ASKS_LINE ? pad_or_page : pad_or_nothing);
    default:
        return press(PRESS_NOTHING);
    }
}

// Whether the key of before is still held down.
static gboolean is_held(const Typing *typing, const Key *key)
{
    return key->kind == typing->before.kind && key->character == typing->before.character &&
           key->at - typing->before.at < REPEAT_GAP;
}

Press typing_press(Typing *typing, Asks field, const Key *key)
{
    gboolean held = is_held(typing, key);
    Press pressed = press_key(typing, field, key);
    typing->before = *key;
    return held && (pressed.kind == PRESS_ACTION || pressed.kind == PRESS_DIGIT)
               ? press_say("a key held down does it once")
               : pressed;
}
