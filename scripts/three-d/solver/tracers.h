// Weightless particles that say where each vein's blood goes. One that leaves is released anew at its vein's opening.
#pragma once
#include "grid.h"

struct Tracer {
  float x, y, z; // places of the grid, z from the plane
  int vein;      // 0 lower, 1 upper
  float start;   // s; below 0 once it moves
  uint32_t seed;
};

/** An opening in places of the grid. */
struct Gate {
  float x, y, nx, ny, half, depth;
};

/** What the tracers need of the grid, beside the fields. */
struct Passage {
  int nx, ny;
  const int *columnAt, *middle, *half;
  Gate vein[2], exit[3]; // left, right, fenestration
  float peak[2];         // lattice speed above which no release place is looked for
};

HD float chance(uint32_t& seed) {
  seed = seed * 747796405u + 2891336453u;
  const uint32_t word = ((seed >> ((seed >> 28) + 4)) ^ seed) * 277803737u;
  return ((word >> 22) ^ word) * (1.f / 4294967296.f);
}

HD int cellAt(const Passage& p, int i, int j, int k) {
  if (i < 0 || j < 0 || i >= p.nx || j >= p.ny) return -1;
  const int q = p.columnAt[j * p.nx + i];
  return q < 0 || k < -p.half[q] || k >= p.half[q] ? -1 : p.middle[q] + k;
}

HD void velocityAt(const Passage& p, const Macro* m, const float* at, float* u) {
  const float zz = at[2] - 0.5f;
  const int i = (int)floorf(at[0]), j = (int)floorf(at[1]), k = (int)floorf(zz);
  u[0] = u[1] = u[2] = 0;
  for (int e = 0; e < 8; e++) {
    const int c = cellAt(p, i + (e & 1), j + ((e >> 1) & 1), k + (e >> 2));
    if (c < 0) continue; // at rest in the wall
    const float w = ((e & 1) ? at[0] - i : 1 - at[0] + i) * (((e >> 1) & 1) ? at[1] - j : 1 - at[1] + j) *
      ((e >> 2) ? zz - k : 1 - zz + k);
    u[0] += w * m[c].x;
    u[1] += w * m[c].y;
    u[2] += w * m[c].z;
  }
}

/** At its vein's opening, as often at a place as blood passes there. */
HD void release(const Passage& p, const Macro* m, Tracer& t) {
  const Gate& g = p.vein[t.vein];
  float at[3], u[3];
  for (int tries = 0; tries < 40; tries++) {
    const float r = 0.98f * g.half * sqrtf(chance(t.seed)), angle = 6.2831853f * chance(t.seed), s = r * cosf(angle);
    at[0] = g.x - s * g.ny;
    at[1] = g.y + s * g.nx;
    at[2] = r * sinf(angle);
    velocityAt(p, m, at, u);
    if (-(u[0] * g.nx + u[1] * g.ny) > chance(t.seed) * p.peak[t.vein]) break;
  }
  t.x = at[0];
  t.y = at[1];
  t.z = at[2];
}

/** exits: [vein][left, right, fenestration] */
HD void advance(const Passage& p, const Macro* m, Tracer& t, float steps, float now, int* exits) {
  if (now < t.start) return;
  if (t.start >= 0) {
    release(p, m, t);
    t.start = -1;
  }
  const int sub = 6;
  const float h = steps / sub;
  float at[3] = {t.x, t.y, t.z}, u[3], v[3];
  for (int s = 0; s < sub; s++) {
    velocityAt(p, m, at, u);
    const float middle[3] = {at[0] + 0.5f * h * u[0], at[1] + 0.5f * h * u[1], at[2] + 0.5f * h * u[2]};
    velocityAt(p, m, middle, v);
    const float to[3] = {at[0] + h * v[0], at[1] + h * v[1], at[2] + h * v[2]};
    if (cellAt(p, (int)floorf(to[0] + 0.5f), (int)floorf(to[1] + 0.5f), (int)floorf(to[2])) < 0) break;
    for (int a = 0; a < 3; a++) at[a] = to[a];
  }
  t.x = at[0];
  t.y = at[1];
  t.z = at[2];
  for (int e = 0; e < 3; e++) {
    const Gate& g = p.exit[e];
    const float ex = at[0] - g.x, ey = at[1] - g.y, beyond = ex * g.nx + ey * g.ny;
    if (g.half > 0 && beyond > 0 && beyond < g.depth && fabsf(ey * g.nx - ex * g.ny) < 1.5f * g.half) {
      addOne(exits + 3 * t.vein + e);
      release(p, m, t);
      return;
    }
  }
}

inline Passage makePassage(const Body& body, const Grid& g, double metresPerSecond) {
  Passage p = {};
  p.nx = g.nx;
  p.ny = g.ny;
  p.columnAt = put(g.columnAt);
  p.middle = put(g.middle);
  p.half = put(g.half);
  for (const Opening& o : body.openings) {
    const Gate gate = {(float)((o.x - g.x0) / g.dx), (float)((o.y - g.y0) / g.dx), (float)o.nx, (float)o.ny,
      (float)(0.5 * o.width / g.dx), (float)(o.extension / g.dx)};
    if (o.inlet()) {
      const int v = o.name == "svc";
      p.vein[v] = gate;
      p.peak[v] = (float)(2.2 * o.flow / o.area() / metresPerSecond);
    } else p.exit[o.name == "left" ? 0 : o.name == "right" ? 1 : 2] = gate;
  }
  return p;
}

/** `count` for each vein that flows, started one after another between two moments. */
inline std::vector<Tracer> makeTracers(const Body& body, int count, double from, double to) {
  std::vector<Tracer> all;
  for (const Opening& o : body.openings)
    if (o.inlet() && o.flow > 0)
      for (int a = 0; a < count; a++)
        all.push_back({0, 0, 0, o.name == "svc", (float)(from + (to - from) * a / count), (uint32_t)(all.size() * 2654435761u + 12345u)});
  return all;
}
