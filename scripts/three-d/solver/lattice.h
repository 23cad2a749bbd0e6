// D3Q27: directions, weights, and what the time steps work on. Distributions are kept as f - w in single precision.
#pragma once
#include "parallel.h"
#include <cmath>
#include <cstdint>

/** Lattice units: density less 1, velocity. */
struct Macro {
  float r, x, y, z;
};

/** A cut link at a wall: what comes back is near * f[first] + far * f[second]. */
struct WallLink {
  int first, second;
  float near, far;
};

/** What an open end does: holds the pressure, or lets its vein in, or lets out its part of what comes in. */
enum EndKind { PRESSED, LOWER, UPPER, OUT, END_KINDS };

/** Parts of full flow at the moment, by kind of end. */
struct Flowing {
  float part[END_KINDS];
};

/** A cut link at an open end: cell and direction, 6 w c.u at full flow; the pressure end ignores the speed. */
struct EndLink {
  int cell, direction;
  float speed;
  EndKind kind;
};

struct Lattice {
  int cells, columns, walls, ends, edges;
  /** [27][cells], then one place a link: walls, then ends */
  float *now, *next;
  /** column of a cell that has all its neighbours, else -1 - its row in `around` */
  int* where;
  /** [9][columns]: from a column's cell to the neighbouring column's at the same height */
  int* shift;
  /** [27][edges]: index in `now` of what streams in */
  int* around;
  WallLink* wall;
  EndLink* end;
  uint8_t *sponge, *inside;
  Macro* macro;
  float viscosity, spongeRise;
};

HD void direction(int d, int& x, int& y, int& z) {
  x = d / 9 - 1;
  y = (d / 3) % 3 - 1;
  z = d % 3 - 1;
}
HD float weight(int d) {
  int x, y, z;
  direction(d, x, y, z);
  return (x ? 1.f / 6 : 2.f / 3) * (y ? 1.f / 6 : 2.f / 3) * (z ? 1.f / 6 : 2.f / 3);
}

/** What comes back from an open end: velocity bounced back, or pressure (anti-bounce-back) at a density of 1. */
HD float fromEnd(const Lattice& l, const float* f, const EndLink& link, const Flowing& flowing) {
  const int n = l.cells, c = link.cell, back = 26 - link.direction;
  const float out = f[back * n + c];
  if (link.kind != PRESSED) return out - flowing.part[link.kind] * link.speed;
  float r = 0, mx = 0, my = 0, mz = 0;
  for (int d = 0; d < 27; d++) {
    int x, y, z;
    direction(d, x, y, z);
    const float g = f[d * n + c];
    r += g;
    mx += x * g;
    my += y * g;
    mz += z * g;
  }
  const float over = 1 / (1 + r), ux = mx * over, uy = my * over, uz = mz * over;
  int x, y, z;
  direction(back, x, y, z);
  const float along = x * ux + y * uy + z * uz;
  return -out + 2 * weight(back) * (4.5f * along * along - 1.5f * (ux * ux + uy * uy + uz * uz));
}
