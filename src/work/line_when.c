// The front of a line, when and who, and its endings.
#include "take.h"

#include <string.h>

// WHEN AND WHO ----------------------------------------------------------------------------------

gboolean is_initials(const char *word)
{
    glong letters = g_utf8_strlen(word, -1);
    for (const char *at = word; *at; at = g_utf8_next_char(at))
        if (!g_unichar_isupper(g_utf8_get_char(at)))
            return FALSE;
    return letters >= 2 && letters <= 4;
}

gboolean read_when(Take *take, GError **error)
{
    const char *at = take->words.at;
    char *date = NULL, *time = NULL;
    gboolean read =
        words_date(&take->words, &date, error) && words_time(&take->words, &time, error);
    if (date) {
        g_free(take->carry.date);
        take->carry.date = date;
    }
    if (time) {
        g_free(take->carry.time);
        take->carry.time = time;
    }
    return read && (!date || time ||
                    words_refuse(&take->words, at, error,
                                 "a new date needs a time behind it: %s 08:30", date));
}

// The initials in front of the verb, NULL if there are none.
static char *take_initials(Take *take)
{
    g_autofree char *word = words_peek(&take->words);
    if (!word || !is_initials(word))
        return NULL;
    take->words.at += strlen(word);
    take->words.at += strspn(take->words.at, " \t");
    return g_steal_pointer(&word);
}

// Whether the line makes the person whose initials these are: `EV person EV "Edda Vail"`.
static gboolean introduces(const Take *take, const char *initials)
{
    Words words = take->words;
    if (!words_skip(&words, "person"))
        return FALSE;
    g_autofree char *word = words_peek(&words);
    return g_strcmp0(word, initials) == 0;
}

gboolean read_who(Take *take, GError **error)
{
    Words before = take->words;
    g_autofree char *initials = take_initials(take);
    if (!initials)
        return TRUE;
    const Entry *person = shop_find(take->taker->shop, "person", initials);
    g_free(take->carry.by);
    take->carry.by = NULL;
    if (!person && !take->taker->build && introduces(take, initials)) {
        take->carry.by = take->taker->help.new_id(take->taker->help.user);
        return TRUE;
    }
    if (!person) {
        take->words = before;
        return take_shop_label(take, "person", "the initials", error) != NULL;
    }
    take->carry.by = g_strdup(entry_text(person, "id"));
    return TRUE;
}

// The latest time at which anything was typed, in the ledger of this line; empty if nothing was.
static const char *latest_typed(const LineTaker *taker)
{
    const char *latest = "";
    gint64 count = taker->build ? (gint64)taker->entries->len : shop_last(taker->shop);
    for (gint64 i = 0; i < count; i++) {
        const Entry *entry =
            taker->build ? taker->entries->pdata[i] : shop_entry(taker->shop, i + 1);
        latest = strcmp(entry->at, latest) > 0 ? entry->at : latest;
    }
    return latest;
}

// When a line of trusted time was typed: then, but a card of an earlier hour does not set the clock
// back.
static const char *trusted_at(const Take *take)
{
    const char *latest = take->paper ? latest_typed(take->taker) : "";
    return strcmp(latest, take->done) > 0 ? latest : take->done;
}

// A time that the line gives must have been: a minute is left for a watch that is fast. Where this
// computer's clock is behind what was typed before, it is behind, and that is taken as now.
static gboolean has_been(const Take *take, Moment done, Moment now, const char *at, GError **error)
{
    enum { FAST = 60 };
    Moment latest = now;
    if (done <= now + FAST ||
        (moment_parse(latest_typed(take->taker), &latest, NULL) && done <= latest + FAST))
        return TRUE;
    g_autofree char *day_before = moment_text(done - 24 * 60 * 60);
    const char *time = take->carry.time;
    if (!take->carry.date)
        return words_refuse(&take->words, at, error,
                            "%s today is still to come, it is %.5s now; write when it was done, "
                            "with its date if that was yesterday: %.10s %s",
                            time, take->at + 11, day_before, time);
    return words_refuse(&take->words, at, error,
                        "%s %s is still to come, it is %.10s %.5s now; write when it was "
                        "done, or set this computer's clock",
                        take->carry.date, time, take->at, take->at + 11);
}

gboolean work_out_times(Take *take, Moment now, const char *at, GError **error)
{
    take->at = moment_text(now);
    if (take->carry.time) {
        const char *date = take->carry.date ? take->carry.date : take->at;
        g_autofree char *text = g_strdup_printf("%.10sT%s", date, take->carry.time);
        Moment moment = now;
        moment_parse(text, &moment, NULL); // both were read before
        if (!has_been(take, moment, now, at, error))
            return FALSE;
        take->done = moment_text(moment);
    }
    if (take->done && take->taker->trust_times) {
        g_free(take->at);
        take->at = g_strdup(trusted_at(take));
    }
    if (g_strcmp0(take->done, take->at) == 0)
        g_clear_pointer(&take->done, g_free);
    take->day = g_strndup(take->done ? take->done : take->at, 10);
    return TRUE;
}

// ENDINGS ---------------------------------------------------------------------------------------

// Cuts ` from paper` off the end of the line.
static gboolean cut_paper(char *line)
{
    char *blank = g_str_has_suffix(line, "paper") ? line + strlen(line) - strlen("paper") : NULL;
    while (blank && blank > line && strchr(" \t", blank[-1]))
        blank--;
    gsize front = blank ? (gsize)(blank - line) : 0;
    if (front < 5 || strncmp(blank - 4, "from", 4) != 0 || !strchr(" \t", blank[-5]))
        return FALSE;
    blank[-5] = '\0';
    g_strchomp(line);
    return TRUE;
}

// Cuts ` after #41` off the end of the line.
static gboolean cut_after(Take *take, char *line, GError **error)
{
    char *hash = strrchr(line, '#');
    gsize digits = hash ? strspn(hash + 1, "0123456789") : 0;
    char *word = hash;
    while (word && word > line && strchr(" \t", word[-1]))
        word--;
    if (!digits || hash[1 + digits] || word - line < 6 || strncmp(word - 5, "after", 5) != 0 ||
        !strchr(" \t", word[-6]))
        return TRUE;
    take->after = g_ascii_strtoll(hash + 1, NULL, 10);
    if (!take->taker->build || !take_entry_at(take, take->after))
        return words_refuse(&take->words, take->words.text + (hash - line), error,
                            "there is no entry %s; the last one is #%u", hash,
                            take->taker->entries->len);
    word[-6] = '\0';
    g_strchomp(line);
    return TRUE;
}

gboolean cut_endings(Take *take, char *line, GError **error)
{
    g_strchomp(line);
    take->paper = cut_paper(line);
    if (!cut_after(take, line, error))
        return FALSE;
    take->paper = cut_paper(line) || take->paper;
    return TRUE;
}
