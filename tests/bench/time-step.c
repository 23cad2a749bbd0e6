/* The flow solver's time step in C, array for array as src/sim/flow-solver/time-step.ts: what the vector kernel is measured against.
   Reads settings and arrays from a file, repeats the step, prints seconds, and writes u back for comparison. */
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

enum { U, V, P, UA, VA, UN, VN, PA, WA, SA, UI, VI, PI, UC, UK, VC, VK, UF, VF, US, VS, USC, USK, VSC, VSK, BY, ARRAYS };

static void momentum_row(int nx, int first, int last, double *const *a, double s, double nu, double eps) {
  double *restrict u = a[U], *restrict v = a[V], *restrict un = a[UN], *restrict vn = a[VN];
  const double *restrict ua = a[UA], *restrict va = a[VA], *restrict pa = a[PA], *restrict wa = a[WA], *restrict sa = a[SA];
  const double *restrict ui = a[UI], *restrict vi = a[VI], *restrict uc = a[UC], *restrict uk = a[UK], *restrict vc = a[VC];
  const double *restrict vk = a[VK], *restrict uf = a[UF], *restrict vf = a[VF], *restrict us = a[US], *restrict vs = a[VS];
  const double *restrict usc = a[USC], *restrict usk = a[USK], *restrict vsc = a[VSC], *restrict vsk = a[VSK], *restrict by = a[BY];
  for (int k = first; k < last; k++) {
    const int n = k + nx, b = k - nx;
    const double west = wa[k] * ua[k], south = sa[k] * va[k];
    const double east = wa[k + 1] * ua[k + 1], north = sa[n] * va[n], below = wa[b] * ua[b];
    const double fe = 0.5 * (west + east), fw = 0.5 * (west + wa[k - 1] * ua[k - 1]);
    const double fn = 0.5 * (south + north), fs = 0.5 * (south + sa[b] * va[b]);
    const double uc0 = 0.5 * (sa[k - 1] * va[k - 1] + south), ucn = 0.5 * (sa[n - 1] * va[n - 1] + north);
    const double rc0 = 0.5 * (below + west), rce = 0.5 * (wa[b + 1] * ua[b + 1] + east);
    double de = ua[k + 1] - ua[k], dw = ua[k] - ua[k - 1], dn = ua[n] - ua[k], ds = ua[k] - ua[b];
    double carried = 0.5 * (fe * ua[k + 1] - fw * ua[k - 1] + ucn * ua[n] - uc0 * ua[b] -
                            (by[k] + by[k - 1]) * ua[k] * (fe - fw + ucn - uc0));
    carried += eps * (fabs(fe) * (usc[k] * (ua[k + 2] - ua[k - 1] - 2.75 * de) - 0.25 * de) -
                      fabs(fw) * (usc[k - 1] * (ua[k + 1] - ua[k - 2] - 2.75 * dw) - 0.25 * dw) +
                      fabs(ucn) * (usk[n] * (ua[n + nx] - ua[b] - 2.75 * dn) - 0.25 * dn) -
                      fabs(uc0) * (usk[k] * (ua[n] - ua[b - nx] - 2.75 * ds) - 0.25 * ds));
    double spread = uc[k] * de - uc[k - 1] * dw + uk[n] * dn - uk[k] * ds;
    double old = u[k];
    double lose = us[k] * old;
    double fresh = (old + s * ui[k] * (nu * spread - carried - wa[k] * (pa[k] - pa[k - 1]))) /
                   (1 + s * nu * uf[k] + s * (lose > 0 ? lose : 0));
    u[k] = fresh;
    un[k] = 1.5 * fresh - 0.5 * old;
    de = va[k + 1] - va[k], dw = va[k] - va[k - 1], dn = va[n] - va[k], ds = va[k] - va[b];
    carried = 0.5 * (rce * va[k + 1] - rc0 * va[k - 1] + fn * va[n] - fs * va[b] -
                     (by[k] + by[b]) * va[k] * (rce - rc0 + fn - fs));
    carried += eps * (fabs(rce) * (vsk[k + 1] * (va[k + 2] - va[k - 1] - 2.75 * de) - 0.25 * de) -
                      fabs(rc0) * (vsk[k] * (va[k + 1] - va[k - 2] - 2.75 * dw) - 0.25 * dw) +
                      fabs(fn) * (vsc[k] * (va[n + nx] - va[b] - 2.75 * dn) - 0.25 * dn) -
                      fabs(fs) * (vsc[b] * (va[n] - va[b - nx] - 2.75 * ds) - 0.25 * ds));
    spread = vk[k + 1] * de - vk[k] * dw + vc[k] * dn - vc[b] * ds;
    old = v[k];
    lose = vs[k] * old;
    fresh = (old + s * vi[k] * (nu * spread - carried - sa[k] * (pa[k] - pa[b]))) /
            (1 + s * nu * vf[k] + s * (lose > 0 ? lose : 0));
    v[k] = fresh;
    vn[k] = 1.5 * fresh - 0.5 * old;
  }
}

static void pressure_row(int nx, int first, int last, double *const *a, double rate, double ahead) {
  const double *restrict u = a[U], *restrict v = a[V], *restrict wa = a[WA], *restrict sa = a[SA], *restrict pi = a[PI];
  double *restrict p = a[P], *restrict pa = a[PA];
  for (int k = first; k < last; k++) {
    const double change =
        -rate * pi[k] * (wa[k + 1] * u[k + 1] - wa[k] * u[k] + sa[k + nx] * v[k + nx] - sa[k] * v[k]);
    p[k] += change;
    pa[k] = p[k] + ahead * change;
  }
}

int main(int argc, char **argv) {
  FILE *file = fopen(argv[1], "rb");
  double head[9];
  if (argc < 2 || !file || fread(head, sizeof head, 1, file) != 1) return 1;
  const int nx = (int)head[0], ny = (int)head[1], steps = (int)head[2], slices = (int)head[8], count = nx * ny;
  int32_t *spans = malloc(2 * ny * sizeof *spans);
  double *block = calloc((size_t)ARRAYS * count + 4 * nx, sizeof(double)), *a[ARRAYS];
  if (fread(spans, sizeof *spans, 2 * ny, file) != (size_t)(2 * ny)) return 1;
  if (fread(block, sizeof(double), (size_t)ARRAYS * count, file) != (size_t)ARRAYS * count) return 1;
  fclose(file);
  for (int n = 0; n < ARRAYS; n++) a[n] = block + (size_t)n * count;
  struct timespec from, to;
  double least = 1e9;
  for (int slice = 0; slice < slices; slice++) {
  clock_gettime(CLOCK_MONOTONIC, &from);
  for (int step = 0; step < steps; step++) {
    for (int j = 2; j < ny - 2; j++) {
      if (spans[2 * j + 1] > spans[2 * j])
        momentum_row(nx, j * nx + spans[2 * j], j * nx + spans[2 * j + 1], a, head[3], head[4], head[7]);
      const int b = j - 1;
      if (spans[2 * b + 1] > spans[2 * b])
        pressure_row(nx, b * nx + spans[2 * b], b * nx + spans[2 * b + 1], a, head[3] * head[5], head[6]);
    }
    double *t = a[UA];
    a[UA] = a[UN], a[UN] = t, t = a[VA], a[VA] = a[VN], a[VN] = t;
  }
  clock_gettime(CLOCK_MONOTONIC, &to);
  const double took = (to.tv_sec - from.tv_sec) + 1e-9 * (to.tv_nsec - from.tv_nsec);
  if (took < least) least = took;
  }
  printf("%.9f\n", least);
  file = fopen(argv[1], "wb");
  fwrite(a[U], sizeof(double), count, file);
  fclose(file);
  return 0;
}
