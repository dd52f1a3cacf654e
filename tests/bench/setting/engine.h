// Simulated engines to set by trial. They know nothing of the adviser and share no code with it:
// they answer a move as an engine would, and are read by a gauge that rounds.
#pragma once
#include <glib.h>
#include <stdint.h>

enum { ENGINE_PLACES = 4 };

// A stream of numbers (splitmix64, G. Steele and others 2014), so that any engine of any seed can
// be drawn again by itself.
typedef struct {
    uint64_t state;
} Random;

Random random_of(uint64_t seed, uint64_t number);
double random_uniform(Random *random, double from, double to);
double random_normal(Random *random);

// What is measured, with what: one row of the table.
typedef struct {
    const char *name;
    double width, geometry, graduation; // T and the graduation in mm, mm a turn
    gboolean difference;                // of two readings
} Job;

// How engines are drawn; lengths in T. `usual` is what the adviser was made for.
typedef struct {
    const char *name;
    double slope_factor;    // uniform in the logarithm within this factor of the geometry
    double curve;           // slope from one end of the travel to the middle, at most
    double repeat;          // sd of the shift, of itself
    double ratio, ratio_sd; // tight answers more than loose
    double spread;          // over the places, at most
    double hand;            // turns, sd
    double lost;            // turns
    gboolean no_geometry, no_direction; // what the adviser is not told
    gboolean backward;                  // the direction told is wrong
    gboolean slope_off;                 // exactly this factor off, up or down
} Drawing;

extern const Drawing engine_usual;

typedef struct {
    const Job *job;
    double slope, curve, shift, repeat, ratio, hand, lost;
    double places[ENGINE_PLACES], level;
    double travel; // turns to either side of where it starts
    int direction; // as told: 1 the reading rises with the turn
} Engine;

// Where the aim lies: 0.30 T at the tightest place, and the band about it that will do.
double job_aim(const Job *job);
double job_band(const Job *job);

Engine engine_draw(const Job *job, const Drawing *drawing, Random *random);
// Another one of its family: slope and shift differ as engines of a family do.
Engine engine_sister(const Engine *engine, const Drawing *drawing, Random *random);

// The builder at the engine, who turns and reads.
typedef struct {
    const Engine *engine;
    Random random;
    double turned; // where the screw really is
    double slack;  // of the lost motion, taken up so far
    double repeat; // what this tightening adds to the shift, of itself
    guint moves;   // made
    gboolean left; // the travel was left
} Stand;

Stand stand_at(const Engine *engine, Random random);
void stand_turn(Stand *stand, double turns);
void stand_tighten(Stand *stand);
double stand_read(Stand *stand, guint place, gboolean tight);
// The value itself at the tightest and the loosest place, as tightened last.
double stand_least(const Stand *stand);
double stand_most(const Stand *stand);
// All places tightened; returns the least reading.
double stand_read_all(Stand *stand, double values[ENGINE_PLACES]);
