// A setting by trials as it stands: its tries and what is advised next, as text and for programs.
#pragma once
#include <jansson.h>
#include <standbook/sheet/document.h>
#include <standbook/work/advice.h>
#include <standbook/work/entry_words.h>

// `idler backlash, in mm: 0.08 to 0.18; aim 0.10 at the smallest`. The caller frees with g_free.
char *setting_title(const Trials *trials) G_GNUC_WARN_UNUSED_RESULT;

// The tries as a table, each with its strip, where it stood before it was moved on above, what was
// struck below the try it was made in; nothing where there is no try. The trials are judged.
void section_tries(Document *document, const Trials *trials, const Taken *taken);

// The tries, what is asked next, and the advice in words. `build` is its number. The caller frees.
Document *sheet_setting(const Trials *trials, const NextMove *next, const Taken *taken,
                        const char *build) G_GNUC_WARN_UNUSED_RESULT;

// {"check":…, "step":…, "tries":[{"try":1, "moved":"0.5", "loose":"0.31", "before":[{"moved":"1",
// "loose":"0.6", "place":"1"}], "tight":{"1":"0.35"}, "verdict":"fail", "reason":"high"}],
// "asks":"move", "place":null, "reads":null, "advice":{"kind":"move", "move":"-19/48",
// "to":"5/48", "unit":"turn", "tighten":{"from":…, "to":…}, "expect":{"mean":…, "from":…, "to":…},
// "chance":0.12, "findings":[…], "sentences":[…], "earlier":0}}; standbook(1) says what each is.
// Exact numbers are text, in the units of the check and of its setting; what there is not is null.
// The caller frees with json_decref.
json_t *setting_json(const Trials *trials, const NextMove *next) G_GNUC_WARN_UNUSED_RESULT;
