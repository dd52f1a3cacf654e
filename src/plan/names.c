// What can be a name; of what cannot, which sign it is and what would do instead.
#include "read.h"

#include <string.h>

// Whether a hyphen here ties two parts of a word.
static gboolean joins(const char *at)
{
    return *at == '-' && at[1] && g_unichar_isalnum(g_utf8_get_char(at + 1));
}

// The first character that a word cannot have there; NULL if it is a word.
static const char *fault_of_word(const char *word, const char *end, gboolean digits)
{
    gunichar first = g_utf8_get_char(word);
    if (word == end || (!g_unichar_isalpha(first) && !(digits && g_unichar_isdigit(first))))
        return word;
    if (end - word == strlen("over") && strncmp(word, "over", strlen("over")) == 0)
        return word;
    for (const char *at = word; at < end; at = g_utf8_next_char(at))
        if (!g_unichar_isalnum(g_utf8_get_char(at)) && *at != '\'' && !joins(at))
            return at;
    return NULL;
}

// The first character that words cannot have there; NULL if all are words.
static const char *fault_of(const char *text, gboolean digits)
{
    const char *word = text, *fault = NULL;
    for (gboolean more = TRUE; more && !fault;) {
        const char *end = word + strcspn(word, " ");
        fault = fault_of_word(word, end, digits && word > text);
        more = *end != '\0';
        word = end + 1;
    }
    return fault;
}

gboolean is_name(const char *text)
{
    return !fault_of(text, FALSE);
}

gboolean is_check_name(const char *text)
{
    return !fault_of(text, TRUE);
}

// The name with what it cannot have left out, and the numbers in front of it put behind; NULL if
// that is no name either.
static char *name_instead(const char *text)
{
    g_autoptr(GString) front = g_string_new(NULL), behind = g_string_new(NULL);
    g_autofree char *plain = g_strdup(text);
    for (char *at = plain, *next; *at; at = next) {
        gboolean tied = at > plain && *at == '/' && g_ascii_isalnum(at[-1]);
        next = g_utf8_next_char(at);
        if (tied && g_ascii_isalnum(*next))
            *at = '-';
        else if (!g_unichar_isalnum(g_utf8_get_char(at)) && *at != '\'' && !joins(at))
            memset(at, ' ', (gsize)(next - at));
    }
    g_auto(GStrv) words = g_strsplit(plain, " ", -1);
    for (gsize i = 0; words[i]; i++) {
        gboolean first = !front->len && !g_unichar_isalpha(g_utf8_get_char(words[i]));
        GString *where = first ? behind : front;
        if (*words[i])
            g_string_append_printf(where, "%s%s", where->len ? " " : "", words[i]);
    }
    if (behind->len)
        g_string_append_printf(front, " %s", behind->str);
    return is_check_name(front->str) ? g_strdup(front->str) : NULL;
}

// What is wrong with a name at that character.
static char *fault_said(const char *name, const char *fault)
{
    gunichar character = g_utf8_get_char(fault);
    if (!*fault || *fault == ' ')
        return g_strdup("a name has single blanks, none in front or behind");
    if (g_unichar_isalpha(character))
        return g_strdup("`over` is no word of a name");
    g_autofree char *sign = g_strndup(fault, (gsize)(g_utf8_next_char(fault) - fault));
    return g_strdup_printf(fault == name ? "a name begins with a letter, not with `%s`"
                                         : "a name cannot hold `%s`",
                           sign);
}

void check_check_name(Reader *reader, const TreeNode *node, const char *name, const char *where)
{
    const char *fault = fault_of(name, TRUE);
    if (!fault)
        return;
    if (*fault == ':') {
        fault_at(reader, node, (gsize)g_utf8_pointer_to_offset(name, fault), where,
                 "behind the colon of a name stands a blank: `bore: 89.9..90.1`");
        return;
    }
    g_autofree char *said = fault_said(name, fault), *instead = name_instead(name);
    g_autofree char *message = g_strdup_printf(
        "%s; write %s`%s`%s", said, instead ? "" : "words such as ",
        instead ? instead : "main bore", *fault == '=' ? "; a formula stands behind ` = `" : "");
    fault_at(reader, node, (gsize)g_utf8_pointer_to_offset(name, fault), where, message);
}

void check_plain_name(Reader *reader, const TreeNode *node, const char *where)
{
    static const char kept[] = "[]\"\n"; // what log lines need for themselves
    const char *fault = strpbrk(node->text, kept);
    if (!fault)
        return;
    g_autofree char *plain = g_strdelimit(g_strdup(node->text), kept, ' ');
    g_autofree char *said = fault_said(NULL, fault);
    g_autoptr(GString) instead = g_string_new(g_strstrip(plain));
    while (g_string_replace(instead, "  ", " ", 0))
        ;
    g_autofree char *message =
        g_strdup_printf("%s; write `%s`", said, instead->len ? instead->str : "cover bolts");
    fault_at(reader, node, (gsize)g_utf8_pointer_to_offset(node->text, fault), where, message);
}
