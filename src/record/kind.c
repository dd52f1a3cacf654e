#include <standbook/record/kind.h>
#include <string.h>

// Fields that mean the same wherever they stand.
// A table is read by its rows, which clang-format would take apart.
// clang-format off
#define STEP {"step", FIELD_TEXT, FALSE, "the step in hand, by its name in the plan", NULL}
#define STEP_NEEDED {"step", FIELD_TEXT, TRUE, "the step, by its name in the plan", NULL}
#define CHECK {"check", FIELD_TEXT, TRUE, "the check, by its name in the plan", NULL}
#define PLACE {"place", FIELD_PLACE, FALSE, "where, if the check has more than one place", NULL}
#define GROUP {"tightening", FIELD_TEXT, TRUE, "the bolt set, by its name in the plan", NULL}
#define STAGE {"stage", FIELD_COUNT, TRUE, "the stage, counted from 1", NULL}
#define BOLTS {"bolts", FIELD_LIST, TRUE, "positions of the bolts, in the order done", NULL}
#define TOOL {"tool", FIELD_ID, FALSE, "the tool used", NULL}
#define CALIBRATION {"calibration", FIELD_ID, FALSE, "its calibration then in force", NULL}
#define WHY {"why", FIELD_TEXT, TRUE, "the reason, in words", NULL}
#define NOTE {"note", FIELD_TEXT, FALSE, "a remark", NULL}
#define TICKED \
    GROUP, STEP, STAGE, BOLTS, \
    {"value", FIELD_VALUE, FALSE, "torque, angle or stretch reached, where read", NULL}, \
    {"setting", FIELD_VALUE, FALSE, "what the wrench was set to", NULL}, \
    {"adapter", FIELD_TEXT, FALSE, "adapter or extension on the wrench", NULL}, TOOL, CALIBRATION
#define ASKED \
    {"asked", FIELD_CHOICE, TRUE, "the sort of requirement", "read/look/bolt/wait/fit/sign"}, \
    {"name", FIELD_TEXT, TRUE, "the check, bolt set, part or step", NULL}, \
    STEP, \
    {"place", FIELD_PLACE, FALSE, "its place, or the bolt's position", NULL}, \
    {"stage", FIELD_COUNT, FALSE, "the stage, or which signature", NULL}
#define TAKEN \
    {"what", FIELD_CHOICE, TRUE, "the kind of the shop's entry", SHOP_KINDS}, \
    {"format", FIELD_COUNT, TRUE, "the format of that kind", NULL}, \
    {"seq", FIELD_SEQ, TRUE, "its number in the shop's ledger", NULL}, \
    {"body", FIELD_BODY, TRUE, "what it says", NULL}
#define SHOP_KINDS "engine/owner/person/tool/calibration/lot/recall/consumable/plan/build/default"
#define REASONS \
    "low/high/beyond wear/look/gauge/tool/order/basis/spent/part/window/disagree/clock"
#define OWN_ID {"id", FIELD_ID, TRUE, "its id", NULL}
#define STOCK {"what", FIELD_CHOICE, TRUE, "which sort of thing", "tool/lot/consumable"}
#define LABEL {"label", FIELD_TEXT, TRUE, "what the shop calls it", NULL}
#define CALIBRATED \
    OWN_ID, {"tool", FIELD_ID, TRUE, "which tool", NULL}, \
    {"date", FIELD_DATE, TRUE, "the day it was done", NULL}, \
    {"due", FIELD_DATE, FALSE, "the day it runs out", NULL}, \
    {"found", FIELD_CHOICE, TRUE, "the tool as found, or that it was only put right", \
     "good/wrong/adjusted"}, \
    {"uncertainty", FIELD_VALUE, FALSE, "expanded uncertainty U in use, k = 2", NULL}, \
    {"repeat", FIELD_VALUE, FALSE, "how well it repeats, k = 2", NULL}, \
    {"certificate", FIELD_TEXT, FALSE, "the paper it stands on", NULL}

static const EntryKind kinds[] = {
    {"read", 1, LEDGER_BUILD, "a value read at one place",
     {CHECK, PLACE, STEP, {"value", FIELD_VALUE, TRUE, "what was read", NULL},
      {"state", FIELD_CHOICE, FALSE, "whether the setting was held, where that matters",
       "loose/tightened"}, TOOL, CALIBRATION, NOTE}},
    {"zero", 1, LEDGER_BUILD, "a gauge set to zero on a known size",
     {{"tool", FIELD_ID, TRUE, "the gauge", NULL}, CALIBRATION,
      {"value", FIELD_VALUE, TRUE, "the size its zero stands for", NULL},
      {"master", FIELD_TEXT, FALSE, "the ring, block or gauge it was set in", NULL}, NOTE}},
    {"look", 1, LEDGER_BUILD, "an answer to a look: yes or no, a choice, a count or words",
     {CHECK, PLACE, STEP, {"answer", FIELD_TEXT, TRUE, "the answer", NULL}, NOTE}},
    {"choose", 1, LEDGER_BUILD, "the grade chosen where the plan offers several",
     {CHECK, PLACE, STEP, {"label", FIELD_TEXT, TRUE, "the label chosen", NULL}, NOTE}},
    {"claim", 1, LEDGER_BUILD, "a figure out of somebody else's certificate",
     {CHECK, PLACE, STEP, {"value", FIELD_VALUE, TRUE, "the figure", NULL},
      {"certificate", FIELD_TEXT, TRUE, "the paper it stands on", NULL},
      {"from", FIELD_TEXT, FALSE, "who issued it", NULL},
      {"doubt", FIELD_VALUE, FALSE, "its expanded uncertainty, k = 2", NULL}, NOTE}},
    {"tick", 1, LEDGER_BUILD, "bolts taken through one stage", {TICKED, NOTE}},
    {"tick", 2, LEDGER_BUILD, "bolts taken through one stage, with the uses of a worn wrench",
     {TICKED,
      {"uses", FIELD_COUNT, FALSE,
       "uses of the torque wrench since that calibration, over all builds, before this one; from "
       "5,000 on", NULL},
      NOTE}},
    {"tick", 3, LEDGER_BUILD, "bolts taken through one stage, with what wears the wrench",
     {TICKED,
      {"uses", FIELD_COUNT, FALSE,
       "uses of the torque wrench since that calibration, over all builds, before this entry; where "
       "its bolts take them past 5,000", NULL},
      {"pulled", FIELD_CHOICE, FALSE,
       "to what, where the stage asks for no torque: it is no use of a torque wrench",
       "to no torque"},
      NOTE}},
    {"waited", 1, LEDGER_BUILD, "the wait of a stage is over",
     {GROUP, STEP, STAGE, NOTE}},
    {"slacken", 1, LEDGER_BUILD, "bolts slackened",
     {GROUP, STEP, BOLTS, {"turn", FIELD_VALUE, FALSE, "how far, if not wholly", NULL},
      {"why", FIELD_TEXT, FALSE, "the reason, if the plan does not ask for it", NULL}, NOTE}},
    {"move", 1, LEDGER_BUILD, "one adjustment of a setting",
     {{"check", FIELD_TEXT, TRUE, "the setting, by the name of its check", NULL}, PLACE, STEP,
      {"moved", FIELD_VALUE, FALSE, "how far, with its sign", NULL},
      {"to", FIELD_VALUE, FALSE, "the adjuster's own reading afterwards", NULL}, NOTE}},
    {"fit", 1, LEDGER_BUILD, "a part or fastener fitted",
     {{"part", FIELD_TEXT, TRUE, "the part or bolt set, by its name in the plan", NULL}, PLACE,
      STEP, {"use", FIELD_CHOICE, TRUE, "its condition", "new/reused/reworked"},
      {"description", FIELD_TEXT, FALSE, "what it is, maker and number", NULL},
      {"serial", FIELD_TEXT, FALSE, "its serial", NULL},
      {"lot", FIELD_ID, FALSE, "the lot it came from", NULL},
      {"label", FIELD_TEXT, FALSE, "the lot as the packet names it", NULL},
      {"count", FIELD_COUNT, FALSE, "how many, if not one", NULL},
      {"evidence", FIELD_TEXT, FALSE, "why it can be used again", NULL}, NOTE}},
    {"rework", 1, LEDGER_BUILD, "a part worked on, which disturbs what was read on it",
     {{"name", FIELD_TEXT, TRUE, "the part or check, by its name in the plan", NULL}, PLACE, STEP,
      {"work", FIELD_TEXT, TRUE, "what was done", NULL},
      {"where", FIELD_TEXT, FALSE, "in the house or at whose shop", NULL}, NOTE}},
    {"laid", 1, LEDGER_BUILD, "a sealant or lubricant laid: its clock starts",
     {{"consumable", FIELD_TEXT, TRUE, "by its name in the plan", NULL}, STEP,
      {"tightening", FIELD_TEXT, FALSE, "for which bolt set", NULL},
      {"item", FIELD_ID, FALSE, "the tube or tin, in the shop's list", NULL},
      {"lot", FIELD_TEXT, FALSE, "its lot", NULL},
      {"expires", FIELD_DATE, FALSE, "the last day it may be used", NULL}, NOTE}},
    {"take", 1, LEDGER_BUILD, "what the build relies on, copied from the shop's ledger at first use",
     {TAKEN}},
    {"news", 1, LEDGER_BUILD, "what the shop learnt later about something this build took",
     {TAKEN}},
    {"strike", 1, LEDGER_BOTH, "takes back one earlier entry of the same ledger",
     {{"entry", FIELD_EARLIER, TRUE, "the entry taken back", NULL},
      {"cause", FIELD_TEXT, TRUE, "why: a typing mistake, the wrong place, …", NULL}}},
    {"concede", 1, LEDGER_BUILD, "something outside its requirement is accepted",
     {ASKED, {"reasons", FIELD_LIST, TRUE, "the reasons conceded", REASONS},
      {"side", FIELD_CHOICE, FALSE, "which limit", "low/high"},
      {"bound", FIELD_VALUE, FALSE, "how far it may go", NULL}, WHY,
      {"who", FIELD_TEXT, TRUE, "who accepts: customer, foreman, …", NULL},
      {"person", FIELD_ID, FALSE, "the same by id", NULL},
      {"how", FIELD_TEXT, FALSE, "telephone, in writing, …", NULL}}},
    {"uphold", 1, LEDGER_BUILD, "one doubt about the evidence is argued away",
     {ASKED,
      {"doubt", FIELD_CHOICE, TRUE, "which doubt", "tool/order/basis/part/window/disagree/clock"},
      WHY, {"second", FIELD_ID, FALSE, "the second person, where one is asked for", NULL}}},
    {"decide", 1, LEDGER_BUILD, "a finding is answered by a decision",
     {CHECK, PLACE, STEP,
      {"decision", FIELD_CHOICE, TRUE, "what is done about it", "keep/rework/replace/look closer"},
      WHY, {"who", FIELD_TEXT, FALSE, "who decided, if not who typed it", NULL},
      {"consent", FIELD_TEXT, FALSE, "the customer's, and how it was given", NULL}}},
    {"add", 1, LEDGER_BUILD, "work that the plan does not have",
     {{"what", FIELD_CHOICE, TRUE, "what is added", "step/check/tightening/part"},
      {"name", FIELD_TEXT, TRUE, "its name, new in this build", NULL}, STEP,
      {"definition", FIELD_TEXT, FALSE, "what follows the name, as a plan writes it", NULL}, WHY}},
    {"amend", 1, LEDGER_BUILD, "limits changed for this build",
     {CHECK, PLACE, {"limits", FIELD_TEXT, FALSE, "the new limits, as a plan writes them", NULL},
      {"wear", FIELD_TEXT, FALSE, "the new service limit", NULL}, WHY,
      {"source", FIELD_TEXT, FALSE, "on whose authority", NULL}}},
    {"withdraw", 1, LEDGER_BUILD, "an item taken out of this build",
     {{"what", FIELD_CHOICE, TRUE, "what is withdrawn", "step/check/tightening/part"},
      {"name", FIELD_TEXT, TRUE, "its name in the plan", NULL}, PLACE, WHY}},
    {"not needed", 1, LEDGER_BUILD, "a requirement that this engine does not have",
     {ASKED, WHY}},
    {"sign", 1, LEDGER_BUILD, "a step or a hold signed",
     {STEP_NEEDED, {"signature", FIELD_COUNT, TRUE, "which of the step's, counted from 1", NULL},
      {"statement", FIELD_TEXT, FALSE, "the words signed", NULL}, NOTE}},
    {"reopen", 1, LEDGER_BUILD, "a step opened again: undoes its signatures",
     {STEP_NEEDED, WHY}},
    {"close", 1, LEDGER_BUILD, "why a step is left with something open",
     {STEP_NEEDED, WHY}},
    {"caution passed", 1, LEDGER_BUILD, "a step's caution was shown and passed by a key",
     {STEP_NEEDED, {"caution", FIELD_TEXT, TRUE, "its words", NULL}}},
    {"put down", 1, LEDGER_BUILD, "work interrupted",
     {STEP, NOTE}},
    {"pick up", 1, LEDGER_BUILD, "work taken up again",
     {STEP, NOTE}},
    {"seal", 1, LEDGER_BUILD, "an assessment fixed at a gate",
     {{"gate", FIELD_TEXT, TRUE, "the gate, or `abandoned`", NULL},
      {"covers", FIELD_EARLIER, TRUE, "the last entry covered", NULL},
      {"supplement", FIELD_COUNT, FALSE, "0 or left out: the first seal here", NULL},
      {"counts", FIELD_COUNTS, TRUE, "requirements by verdict", NULL},
      {"edition", FIELD_TEXT, TRUE, "the edition of the rules", NULL},
      {"assessment", FIELD_DIGEST, TRUE, "SHA-256 of the kept assessment", NULL}}},
    {"note", 1, LEDGER_BOTH, "a remark in the log",
     {{"text", FIELD_TEXT, TRUE, "the words", NULL}, STEP,
      {"about", FIELD_TEXT, FALSE, "the check, bolt set or part", NULL}, PLACE}},
    {"photo", 1, LEDGER_BUILD, "a picture, kept beside the store",
     {{"name", FIELD_TEXT, TRUE, "the file's name", NULL},
      {"digest", FIELD_DIGEST, TRUE, "its SHA-256", NULL}, STEP,
      {"about", FIELD_TEXT, FALSE, "the check, bolt set or part", NULL}, PLACE, NOTE}},
    {"cost", 1, LEDGER_BUILD, "money or time spent",
     {{"what", FIELD_TEXT, TRUE, "for what", NULL},
      {"amount", FIELD_VALUE, TRUE, "how much; its unit is a currency or a time", NULL}, STEP, NOTE}},

    {"engine", 1, LEDGER_SHOP, "an engine, or what changed about it",
     {OWN_ID, {"make", FIELD_TEXT, FALSE, "maker", NULL},
      {"family", FIELD_TEXT, TRUE, "engine family, as plans name it", NULL},
      {"serial", FIELD_TEXT, TRUE, "its serial", NULL},
      {"owner", FIELD_ID, FALSE, "the owner", NULL}, NOTE}},
    {"owner", 1, LEDGER_SHOP, "an owner; name and address stand outside the chain",
     {OWN_ID, LABEL, NOTE}},
    {"person", 1, LEDGER_SHOP, "somebody who works here; the name stands outside the chain",
     {OWN_ID, {"initials", FIELD_TEXT, TRUE, "as they sign", NULL},
      {"role", FIELD_TEXT, FALSE, "builder, foreman, office, …", NULL},
      {"may", FIELD_LIST, FALSE, "what they may do: second, seal, concede, …", NULL}, NOTE}},
    {"tool", 1, LEDGER_SHOP, "a tool or gauge",
     {OWN_ID, LABEL, {"sort", FIELD_TEXT, TRUE, "micrometer, click wrench, …", NULL},
      {"serial", FIELD_TEXT, FALSE, "its serial", NULL},
      {"least", FIELD_VALUE, FALSE, "lower end of its range", NULL},
      {"greatest", FIELD_VALUE, FALSE, "upper end of its range", NULL},
      {"graduation", FIELD_VALUE, FALSE, "its smallest division", NULL},
      {"reach", FIELD_VALUE, FALSE, "length of a wrench or adapter", NULL}, NOTE}},
    {"calibration", 1, LEDGER_SHOP, "a tool was calibrated or compared",
     {CALIBRATED, NOTE}},
    {"calibration", 2, LEDGER_SHOP, "a tool was calibrated or compared, with what it gave as found",
     {CALIBRATED,
      {"gave", FIELD_LIST, FALSE, "what it gave at what it was set to: `91 N·m at 100 N·m`", NULL},
      NOTE}},
    {"lot", 1, LEDGER_SHOP, "a lot of parts received",
     {OWN_ID, LABEL, {"part", FIELD_TEXT, TRUE, "what they are", NULL},
      {"maker", FIELD_TEXT, FALSE, "maker", NULL},
      {"supplier", FIELD_TEXT, FALSE, "who sold it", NULL},
      {"quantity", FIELD_COUNT, FALSE, "how many", NULL},
      {"grade", FIELD_TEXT, FALSE, "grade", NULL},
      {"received", FIELD_DATE, FALSE, "when", NULL},
      {"expires", FIELD_DATE, FALSE, "the last day it may be used", NULL}, NOTE}},
    {"recall", 1, LEDGER_SHOP, "a lot is not to be trusted",
     {{"lot", FIELD_ID, TRUE, "which lot", NULL}, WHY,
      {"from", FIELD_TEXT, FALSE, "who recalled it", NULL}}},
    {"consumable", 1, LEDGER_SHOP, "a tube, tin or bottle",
     {OWN_ID, LABEL, {"sort", FIELD_TEXT, TRUE, "silicone, assembly oil, …", NULL},
      {"lot", FIELD_TEXT, FALSE, "its lot", NULL},
      {"supplier", FIELD_TEXT, FALSE, "who sold it", NULL},
      {"opened", FIELD_DATE, FALSE, "when it was opened", NULL},
      {"expires", FIELD_DATE, FALSE, "the last day it may be used", NULL}, NOTE}},
    {"out of use", 1, LEDGER_SHOP, "a tool, lot or tin that is not worked with any more",
     {STOCK, OWN_ID,
      {"how", FIELD_CHOICE, TRUE, "what became of it",
       "scrapped/lost/lent/sold/sent back/used up/thrown away/put aside"},
      {"why", FIELD_TEXT, FALSE, "the reason, in words", NULL}}},
    {"back in use", 1, LEDGER_SHOP, "a tool, lot or tin that was out of use and is not now",
     {STOCK, OWN_ID, {"why", FIELD_TEXT, FALSE, "where it was, or what was done", NULL}}},
    {"plan", 1, LEDGER_SHOP, "a plan file taken in",
     {{"digest", FIELD_DIGEST, TRUE, "SHA-256 of the file", NULL},
      {"name", FIELD_TEXT, TRUE, "the plan's name", NULL},
      {"revision", FIELD_TEXT, FALSE, "its revision", NULL},
      {"family", FIELD_TEXT, FALSE, "the engine family", NULL},
      {"source", FIELD_TEXT, FALSE, "where its figures come from", NULL}, NOTE}},
    {"build", 1, LEDGER_SHOP, "a build begun",
     {{"id", FIELD_ID, TRUE, "its id, which is its ledger's", NULL},
      {"number", FIELD_TEXT, TRUE, "its number in the shop's order", NULL},
      {"engine", FIELD_ID, TRUE, "the engine", NULL},
      {"plan", FIELD_DIGEST, TRUE, "SHA-256 of the plan file", NULL},
      {"order", FIELD_TEXT, FALSE, "what the customer asked for", NULL}, NOTE}},
    {"default", 1, LEDGER_SHOP, "a rule of the shop where a plan says nothing",
     {{"name", FIELD_TEXT, TRUE, "which rule", NULL},
      {"setting", FIELD_TEXT, TRUE, "what it is set to", NULL}, NOTE}},
};
// clang-format on

const EntryKind *kind_table(gsize *count)
{
    *count = G_N_ELEMENTS(kinds);
    return kinds;
}

const EntryKind *kind_find(const char *name, int format)
{
    for (gsize i = 0; i < G_N_ELEMENTS(kinds); i++)
        if (strcmp(kinds[i].name, name) == 0 && kinds[i].format == format)
            return &kinds[i];
    return NULL;
}

const EntryKind *kind_newest(const char *name)
{
    for (gsize i = G_N_ELEMENTS(kinds); i-- > 0;)
        if (strcmp(kinds[i].name, name) == 0)
            return &kinds[i];
    return NULL;
}

const Field *kind_field(const EntryKind *kind, const char *name)
{
    for (const Field *field = kind->fields; field->name; field++)
        if (strcmp(field->name, name) == 0)
            return field;
    return NULL;
}

gboolean field_has_choice(const Field *field, const char *word)
{
    g_auto(GStrv) words = g_strsplit(field->choices ? field->choices : "", "/", -1);
    return *word && g_strv_contains((const char *const *)words, word);
}

const char *field_type_words(FieldType type)
{
    static const char *const words[] = {
        [FIELD_TEXT] = "text that is not empty",
        [FIELD_VALUE] = "a value with its unit and the text typed",
        [FIELD_PLACE] = "the labels of a place",
        [FIELD_LIST] = "a list of texts",
        [FIELD_SEQ] = "the number of an entry",
        [FIELD_EARLIER] = "the number of an earlier entry of the same ledger",
        [FIELD_COUNT] = "a whole number",
        [FIELD_CHOICE] = "one of the words listed",
        [FIELD_ID] = "a UUID in lower case",
        [FIELD_DIGEST] = "a SHA-256 in lower-case hexadecimal",
        [FIELD_DATE] = "a date like 2025-03-13",
        [FIELD_COUNTS] = "a count for each of the seven verdicts",
        [FIELD_BODY] = "the body of an entry of the shop",
    };
    return words[type];
}

const char *const *verdict_names(void)
{
    static const char *const names[] = {"open",     "pass",  "fail",       "in doubt",
                                        "conceded", "noted", "not needed", NULL};
    return names;
}
