// Screw threads with a 60° profile, metric (ISO 68-1, ISO 724) and unified (ASME B1.1), and what
// their bolts are proved to carry. Lengths in metres, stresses in pascals; doubles, since all of it
// goes into estimates.
#pragma once
#include <glib.h>

typedef struct {
    double diameter; // nominal, m
    double pitch;    // m
    gboolean inch, left_hand;
} Thread;

// Reads `M10`, `M10 × 1.25`, `M24x1.5 left-hand`, `3/8-16`, `7/16-20 UNF`, `1/2 UNC`, `#10-32`. A
// metric thread without a pitch is the coarse one (ISO 262; M7, M9 and M11: ISO 261). FALSE with a
// sentence for anything else, a taper thread among them.
gboolean thread_parse(const char *text, Thread *thread, GError **error);

// Whether the words say that it is left-handed, whatever else stands there.
gboolean thread_is_left_hand(const char *text);

// Pitch diameter d2, basic minor diameter D1 of the nut and minor diameter d3 of the bolt (ISO 724;
// d3: ISO 898-1, 9.1.6), in m.
double thread_pitch_diameter(const Thread *thread);
double thread_minor_diameter(const Thread *thread);
double thread_root_diameter(const Thread *thread);

// The area that a bolt's stress is counted on, m²: π/4 ((d2 + d3)/2)² (ISO 898-1, 9.1.6.1); for
// unified threads π/4 (D − 0.9743/n)² (ASME B1.1), which is the same profile truncated otherwise.
double thread_stress_area(const Thread *thread);

// What a bolt of a class is made to: stresses in Pa.
typedef struct {
    double proof; // borne without a lasting set (ISO 898-1, table 3; SAE J429)
    double yield; // at 0.2 % lasting strain, the least
} Strength;

// Finds a property class of ISO 898-1 (`8.8`, `10.9`) or a grade of SAE J429 (`grade 8`, `Gr 5`) at
// the thread's diameter. FALSE if there is none of that name or size.
gboolean thread_strength(const Thread *thread, const char *strength, Strength *found);

// Mean diameter of the ring on which a hexagon head turns, m: half of the washer face (ISO 4014,
// grade A, least) and the through hole (ISO 273, medium); for sizes without one of them 1.25 times
// the diameter (Shigley, Mechanical Engineering Design, 9th ed., 8-8).
double thread_bearing_diameter(const Thread *thread);
