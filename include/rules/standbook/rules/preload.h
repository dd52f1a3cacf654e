// How far a bolt is pulled by a torque, by an angle from snug, or by a stretch. Every answer is a
// band: friction, the wrench and the joint are never known better than that. Newtons, metres,
// radians, N·m, Pa, N/m.
#pragma once
#include <standbook/rules/thread.h>

typedef struct {
    double low, high; // low <= high
} Band;

double band_middle(Band band);
// Value and what it may differ by, as a share: 80 and 0.04 are 76.8 to 83.2.
Band band_around(double value, double share);

// What words say of a figure: nothing; one band; several that differ, and the band is from the
// least to the greatest of them.
typedef enum { KNOWN_NOT, KNOWN_ALONE, KNOWN_UNITED } Known;

// Coefficients of friction in thread and under the head for what is put on them, by the classes of
// VDI 2230-1, table A5: solid lubricants (moly, graphite) A and B together, oil and grease B,
// nothing or adhesive C. `moly on threads, dry under head` is both together; `clean` and
// `degreased` count where nothing is put on. `X-free` is passed over (`lead-free moly` is moly).
// Words that name none of them, or say what is not there (`no oil`), give all classes together, the
// widest band there is, and KNOWN_NOT.
Known friction_of(const char *lubricant, Band *friction);

// Torque of a preload and the other way round, one coefficient in thread and under the head:
// T = F (P/2π + d2 µ/√3 + D µ/2) (VDI 2230-1, 5.4.3; ISO 16047).
double preload_torque(const Thread *thread, double bearing, double friction, double preload);
// The bands of both widen the answer's. `bearing`: thread_bearing_diameter, or as measured.
Band preload_by_torque(const Thread *thread, double bearing, Band friction, Band torque);
// Preload at which pull and twist together use a share of the yield (VDI 2230-1, R7).
double preload_at_yield(const Thread *thread, double yield, double friction, double share);

// Stiffness of the bolt over its clamped length, of which `shank` is without thread and of full
// diameter: A_d A_t E / (A_d l_t + A_t l_d), steel (Shigley, 9th ed., table 8-7).
double bolt_stiffness(const Thread *thread, double clamped, double shank);
// Stiffness of one cone of 30° under a ring of diameter `face` (Shigley, 9th ed., eq. 8-20).
double cone_stiffness(double elasticity, double hole, double face, double thickness);
// Of what is clamped, two cones of half its thickness from rings of 1.5 diameters (eq. 8-22).
double joint_stiffness(const Thread *thread, double clamped, double elasticity);
// Modulus of elasticity, Pa, of `steel`, `iron` or `alloy` (Shigley, table 8-8), of several
// together from the least to the greatest; any other words give the band of all three, and
// KNOWN_NOT. What is said of a gasket (`steel gasket`) is passed over.
Known elasticity_of(const char *material, Band *elasticity);
// Whether a gasket is named among what is clamped: `alloy on iron, paper gasket`.
gboolean names_gasket(const char *material);

// Behind a snug of that preload: the travel of the thread is shared by bolt and joint,
// F = snug + P θ/2π · k_b k_c / (k_b + k_c). Nothing yields in it, so that the upper end may lie
// above what the bolt can carry.
Band preload_by_angle(const Thread *thread, Band snug, Band angle, Band bolt, Band joint);
// The same where a gasket lies between. How far one gives way differs even within one make and does
// not rise in a straight line (Bickford, Introduction to the Design and Behavior of Bolted Joints,
// stiffness and strain): there is no figure to reckon with. But it can only give way, so that the
// angle adds something between nothing and what it would add on bare metal.
Band preload_by_angle_on_gasket(const Thread *thread, Band snug, Band angle, Band bolt, Band joint);
// The bolt alone, by its measured stretch.
Band preload_by_stretch(Band bolt, Band stretch);
