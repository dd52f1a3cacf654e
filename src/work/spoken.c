#include "spoken.h"

#include <string.h>

const char *spoken_number(const char *word)
{
    static const char *const numbers[][3] = {
        {"one", "first", "1"},     {"two", "second", "2"},       {"three", "third", "3"},
        {"four", "fourth", "4"},   {"five", "fifth", "5"},       {"six", "sixth", "6"},
        {"seven", "seventh", "7"}, {"eight", "eighth", "8"},     {"nine", "ninth", "9"},
        {"ten", "tenth", "10"},    {"eleven", "eleventh", "11"}, {"twelve", "twelfth", "12"}};
    for (gsize i = 0; i < G_N_ELEMENTS(numbers); i++)
        if (strcmp(word, numbers[i][0]) == 0 || strcmp(word, numbers[i][1]) == 0)
            return numbers[i][2];
    return NULL;
}

gboolean spoken_names_nothing(const char *word)
{
    static const char *const words[] = {"a",      "an",   "and",    "at",    "did",   "do",   "for",
                                        "give",   "how",  "i",      "in",    "is",    "it",   "me",
                                        "number", "no",   "no.",    "of",    "on",    "our",  "say",
                                        "show",   "tell", "that",   "the",   "to",    "was",  "we",
                                        "were",   "what", "what's", "where", "which", "with", NULL};
    return g_strv_contains(words, word);
}
