/* One pack stepped in a loop, with the arithmetic of Step.Advance and its order
   of operations: the yardstick of BenchmarkStepAgainstC. Reads figures and
   tables from the file named, runs the steps asked for and prints the
   nanoseconds of one and where the pack ends. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

enum { CHARGE = 1400, TEMP = 320 };

typedef struct { double volts, ohm0, ohm1, ohm2; } values;
typedef struct { values at, over; } charge_row;
typedef struct { double ohm, ohm1, ohm2, knee, lost, inv; } warmth;
typedef struct { warmth at, over; } temp_cell;

static struct {
	double cells, ohms, c, most1, most2, head_of, fill_of, knee1, knee2;
	double hours, keep, mix, use, fast, slow, fast_m, slow_m, warm, per_watt;
	double bound, straight;
} p;
static charge_row by_charge[CHARGE];
static temp_cell by_temp[TEMP];

typedef struct { double y1, y2, v1, v2, temp; } state;

static inline double effective(const warmth *w, double h, double z) {
	if (w->lost == 0) return h;
	double d = (1 - h) * w->inv;
	return h - w->lost * (1 + 2 * (z - h)) * d * d * d;
}

static inline const charge_row *place(double z, double *f) {
	double x = (z + 0.25) * (CHARGE / 1.75);
	if (x > CHARGE - 1e-9) x = CHARGE - 1e-9;
	if (!(x >= 0)) { *f = x * 0; return &by_charge[0]; }
	int i = (int)x;
	*f = x - i;
	return &by_charge[i];
}

static double asinh_near(double x) {
	double u = x * x;
	if (u < 16)
		return x * (1 + u * (1.04294687307 + u * (0.263989537139 + u * (0.0151724176669 + u * 9.62845283767e-05)))) /
		       (1 + u * (1.20960563816 + u * (0.390662458138 + u * (0.0339686027833 + u * 0.000519554023556))));
	return asinh(x);
}

static inline double settled(double straight, double knee) {
	return knee == 0 ? straight : knee * asinh_near(straight / knee);
}

static void advance(state *s, double amps, double ambient) {
	double x = (s->temp + 40) * (TEMP / 160.0);
	if (x > TEMP - 1e-9) x = TEMP - 1e-9;
	if (!(x >= 0)) x *= 0;
	int k = (int)x;
	double g = x - k;
	const temp_cell *t = &by_temp[k];
	warmth w = {t->at.ohm + g * t->over.ohm, t->at.ohm1 + g * t->over.ohm1, t->at.ohm2 + g * t->over.ohm2,
	            t->at.knee + g * t->over.knee, t->at.lost + g * t->over.lost, t->at.inv + g * t->over.inv};
	double z = (s->y1 + s->y2) * p.fill_of, f;
	const charge_row *r = place(effective(&w, s->y1 * p.head_of, z), &f);
	double scaled = p.ohms * amps;
	double drop = (r->at.ohm0 + f * r->over.ohm0) * w.ohm * scaled;
	if (p.bound != 0) {
		double e;
		const charge_row *q = place(effective(&w, z, z), &e);
		drop += p.cells * (q->at.volts + e * q->over.volts) - p.cells * (r->at.volts + f * r->over.volts);
	}
	double s1 = (r->at.ohm1 + f * r->over.ohm1) * w.ohm1 * scaled, s2 = (r->at.ohm2 + f * r->over.ohm2) * w.ohm2 * scaled;
	if (p.straight == 0) {
		s1 = settled(s1, p.knee1 * w.knee);
		s2 = settled(s2, p.knee2 * w.knee);
	}
	double v1 = s1 + (s->v1 - s1) * p.fast, v2 = s2 + (s->v2 - s2) * p.slow;
	drop += s1 + (s->v1 - s1) * p.fast_m + s2 + (s->v2 - s2) * p.slow_m;
	s->temp = ambient + (s->temp - ambient) * p.warm + amps * drop * p.per_watt;
	s->v1 = v1;
	s->v2 = v2;
	double total = s->y1 + s->y2;
	double y1 = p.keep * s->y1 + p.mix * total - p.use * amps;
	double y2 = total - p.hours * amps - y1;
	if (amps < 0) {
		if (y1 > p.most1) y1 = p.most1;
		if (y2 > p.most2) y2 = p.most2;
	}
	s->y1 = y1;
	s->y2 = y2;
}

int main(int n, char **arg) {
	state begin, s;
	double amps, ambient;
	FILE *in = n == 3 ? fopen(arg[1], "rb") : NULL;
	if (!in || fread(&p, sizeof p, 1, in) != 1 || fread(by_charge, sizeof by_charge, 1, in) != 1 ||
	    fread(by_temp, sizeof by_temp, 1, in) != 1 || fread(&begin, sizeof begin, 1, in) != 1 ||
	    fread(&amps, sizeof amps, 1, in) != 1 || fread(&ambient, sizeof ambient, 1, in) != 1)
		return 1;
	long steps = atol(arg[2]);
	double best = 1e300;
	for (int round = 0; round < 200; round++) {
		struct timespec a, b;
		s = begin;
		clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &a);
		for (long i = 0; i < steps; i++) advance(&s, amps, ambient);
		clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &b);
		double ns = ((b.tv_sec - a.tv_sec) * 1e9 + (b.tv_nsec - a.tv_nsec)) / steps;
		if (ns < best) best = ns;
	}
	printf("%.17g %.17g %.17g %.17g %.17g %.17g\n", best, s.y1, s.y2, s.v1, s.v2, s.temp);
	return 0;
}
