// The sheets of the build in hand, written as files where the program was started.
#include "print_file.h"
#include "view.h"

#include <standbook/base/text.h>
#include <standbook/sheet/sheet.h>
#include <string.h>

static const struct {
    const char *word, *about, *file;
} sheets[] = {
    {"customer's sheet", "what was measured, tightened, fitted, conceded", "customer"},
    {"workshop record", "everything, struck entries included", "record"},
    {"completion report", "what keeps the next gate from being complete", "completion"},
};

// The state: where the sheet that was written last lies, if the row of the last entry had no room
// for it.
static gpointer open(Desk *desk, const char *argument)
{
    (void)desk;
    (void)argument;
    return g_string_new(NULL);
}

static void close(gpointer state)
{
    g_string_free(state, TRUE);
}

// A path longer than the screen goes on in the row below.
static void paint_path(const char *path, Page *page)
{
    enum { ROW = 10, WIDTH = PAGE_WIDTH - 2 };
    glong length = g_utf8_strlen(path, -1);
    for (glong from = 0; from < length; from += WIDTH) {
        g_autofree char *part = g_utf8_substring(path, from, MIN(from + WIDTH, length));
        canvas_put(page->body, ROW + (guint)(from / WIDTH), 1, 0, style_of(0, 0), part);
    }
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    g_autofree char *title = desk->number ? desk_title(desk, desk->number) : g_strdup("The shop");
    const GString *path = state;
    (void)typed;
    paint_path(path->str, page);
    page_say(&page->status, "%s", title);
    page_say(&page->head, "Print");
    for (guint i = 0; i < G_N_ELEMENTS(sheets); i++) {
        g_autofree char *line =
            g_strdup_printf("%2u  %-20s %s", i + 1, sheets[i].word, sheets[i].about);
        canvas_put(page->body, 1 + 2 * i, 1, 0, style_of(0, 0), line);
    }
    canvas_put(page->body, 8, 1, 0, style_of(0, 0),
               "The maker's current service data, local codes, licensed practice come first.");
    page->field = ASKS_LINE;
    page_say(&page->unit, "no.");
    page_say(&page->next, "which sheet?");
    page_say(&page->then, "a text file where you started; no earlier one is overwritten");
    page->keys[0] = (PageKey){ACTION_TAKE, "number Enter", "writes it"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "back"};
    page_key(page, ACTION_HELP, NULL);
}

// The gate of the completion report: the first that is not complete, else the last.
static guint gate_of(const Assessment *assessment)
{
    for (guint i = 0; i < assessment->gates->len; i++)
        if (((const GateCount *)assessment->gates->pdata[i])->left)
            return i;
    return assessment->gates->len - 1;
}

static Document *document_of(guint sheet, const SheetSource *source)
{
    return sheet == 0   ? sheet_customer(source)
           : sheet == 1 ? sheet_record(source)
                        : sheet_completion(source, gate_of(source->assessment));
}

static PrintDone write_sheet(Desk *desk, guint sheet, char **file, GError **error)
{
    g_autofree char *label = g_strdelimit(g_strdup(desk->number), "/\\", '-');
    g_autofree char *name = g_strdup_printf("%s-%s", label, sheets[sheet].file);
    g_autoptr(Opened) opened = opened_new(desk->book, desk->number, error);
    g_autoptr(Assessment) assessment = opened ? opened_assess(opened, NULL) : NULL;
    if (!assessment || !opened_compare_seal(desk->book, opened, assessment, error))
        return PRINT_FAILED;
    const SheetSource source = opened_source(opened, assessment);
    g_autoptr(Document) document = document_of(sheet, &source);
    g_autofree char *text = document_text(document);
    return print_file(name, text, file, error);
}

// Says where the sheet lies, in words that a shell takes. The page stays for the next one.
static Go say_where(GString *path, Desk *desk, const char *word, PrintDone done, const char *file)
{
    static const struct {
        const char *how, *above;
    } words[] = {
        [PRINT_WRITTEN] = {"written", "the sheet is written; where it lies stands above"},
        [PRINT_BESIDE] = {"written beside the earlier",
                          "written beside the earlier one, which stays; where stands above"},
        [PRINT_THERE] = {"there already", "this very sheet lies there already; where stands above"},
    };
    enum { ROOM = PAGE_WIDTH - 6 };
    g_autofree char *whole = g_canonicalize_filename(file, NULL);
    g_autofree char *shown = text_path(whole);
    g_autofree char *said = g_strdup_printf("%s %s: %s", word, words[done].how, shown);
    gboolean fits = g_utf8_strlen(said, -1) <= ROOM;
    g_string_assign(path, fits ? "" : shown);
    desk_last(desk, "%s", fits ? said : words[done].above);
    return go(GO_STAY);
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    guint64 line = g_ascii_strtoull(typed, NULL, 10);
    if (!desk->number || line < 1 || line > G_N_ELEMENTS(sheets)) {
        desk_warn(desk, desk->number ? "there are three sheets: 1, 2 or 3"
                                     : "no build is in hand; open one first");
        return go(GO_KEEP);
    }
    GError *error = NULL;
    g_autofree char *file = NULL;
    PrintDone done = write_sheet(desk, (guint)line - 1, &file, &error);
    if (done == PRINT_FAILED) {
        desk_warn_error(desk, error);
        return go(GO_KEEP);
    }
    return say_where(state, desk, sheets[line - 1].word, done, file);
}

const ViewOps print_view = {
    .name = "print", .open = open, .close = close, .paint = paint, .enter = enter};
