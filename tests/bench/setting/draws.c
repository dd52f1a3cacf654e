#include "draws.h"
#include "methods.h"
#include <inttypes.h>

static void write_number(FILE *file, const char *name, double number)
{
    fprintf(file, "\"%s\":%.17g,", name, number);
}

static void write_job(FILE *file, const Job *job)
{
    fprintf(file, "\"job\":{\"name\":\"%s\",\"difference\":%s,", job->name,
            job->difference ? "true" : "false");
    write_number(file, "width", job->width);
    write_number(file, "geometry", job->geometry);
    fprintf(file, "\"graduation\":%.17g},", job->graduation);
}

static void write_engine(FILE *file, const Engine *engine)
{
    const struct {
        const char *name;
        double number;
    } numbers[] = {{"slope", engine->slope},   {"curve", engine->curve},  {"shift", engine->shift},
                   {"repeat", engine->repeat}, {"ratio", engine->ratio},  {"hand", engine->hand},
                   {"level", engine->level},   {"travel", engine->travel}};
    for (guint i = 0; i < G_N_ELEMENTS(numbers); i++)
        write_number(file, numbers[i].name, numbers[i].number);
    fprintf(file, "\"places\":[");
    for (guint i = 0; i < ENGINE_PLACES; i++)
        fprintf(file, "%s%.17g", i ? "," : "", engine->places[i]);
    fprintf(file, "],\"direction\":%d,", engine->direction);
}

static void write_outcome(FILE *file, const Outcome *outcome)
{
    fprintf(file,
            "\"library\":{\"trials\":%u,\"moves\":%u,\"twice\":%u,\"overran\":%d,\"wrong\":%d,"
            "\"covered\":%u,\"intervals\":%u}",
            outcome->trials, outcome->moves, outcome->twice, outcome->overran, outcome->wrong,
            outcome->covered, outcome->intervals);
}

void draws_write(FILE *file, const Job *job, guint engines, guint64 seed)
{
    for (guint i = 0; i < engines; i++) {
        Random random = random_of(seed, i);
        Engine engine = engine_draw(job, &engine_usual, &random);
        Outcome outcome = method_adviser(&engine, &engine_usual, random);
        fprintf(file, "{");
        write_job(file, job);
        write_engine(file, &engine);
        fprintf(file, "\"random\":%" PRIu64 ",", random.state);
        write_outcome(file, &outcome);
        fprintf(file, "}\n");
    }
}
