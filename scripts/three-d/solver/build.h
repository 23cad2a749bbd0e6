// From body and grid to the lattice: who streams where, walls cut at their true place (Bouzidi 2001), open ends.
#pragma once
#include "grid.h"

struct Built {
  std::vector<int> where, shift, around;
  std::vector<WallLink> wall;
  std::vector<EndLink> end;
  std::vector<uint8_t> sponge, inside;
};

/** Part 0..1 of the link from a cell along (hx, hy, hz) mm at which the wall is met; 2 when it is not. */
inline double wallAlong(const Body& body, double x, double y, double z, double hx, double hy, double hz) {
  auto room = [&](double t) {
    const double zz = z + t * hz;
    return body.lumen(x + t * hx, y + t * hy) - zz * zz;
  };
  if (room(1) > 0) return 2;
  double low = 0, high = 1;
  for (int s = 0; s < 14; s++) {
    const double t = 0.5 * (low + high);
    (room(t) > 0 ? low : high) = t;
  }
  return 0.5 * (low + high);
}

/** The open end that a link passes first, and where on the link. */
inline int endAlong(const Body& body, double x, double y, double hx, double hy, double& part) {
  int found = -1;
  part = 2;
  for (size_t a = 0; a < body.openings.size(); a++) {
    const Opening& o = body.openings[a];
    double s0, s1;
    const double b0 = o.beyond(x, y, s0), b1 = o.beyond(x + hx, y + hy, s1);
    if (b1 < o.extension || b0 >= o.extension || std::fabs(s1) >= o.width) continue;
    const double t = (o.extension - b0) / (b1 - b0);
    if (t < part) {
      part = t;
      found = (int)a;
    }
  }
  return found;
}

struct Link {
  int cell, direction, opening; // opening -1: wall
  double part, along;           // along: flow along the link times the profile, per unit of peak speed
};

inline Link cutLink(const Body& body, const Grid& g, int c, int d, bool flat) {
  int ex, ey, ez;
  direction(d, ex, ey, ez);
  const int q = g.columnOf[c];
  const double x = g.x(q), y = g.y(q), z = g.z(c), hx = -ex * g.dx, hy = -ey * g.dx, hz = -ez * g.dx;
  double passed;
  const double part = wallAlong(body, x, y, z, hx, hy, hz);
  const int end = endAlong(body, x, y, hx, hy, passed);
  if (end < 0 || passed >= part) return {c, d, -1, part > 1 ? 0.5 : std::max(1e-3, part), 0};
  const Opening& o = body.openings[end];
  double s;
  o.beyond(x + passed * hx, y + passed * hy, s);
  const double zz = z + passed * hz, R = 0.5 * o.width, parabola = std::max(0., 1 - (s * s + zz * zz) / (R * R));
  // A hole in a wall, and a vein told to be flat, have one speed but for a thin edge.
  const bool even = o.name == "fenestration" || (flat && o.inlet());
  const double profile = even ? 0.5 * std::min(1., 8 * parabola) : parabola;
  return {c, d, end, passed, (-ex * o.nx - ey * o.ny) * (o.inlet() ? -1 : 1) * profile};
}

inline EndKind kindOf(const Opening& o) {
  if (o.pressed()) return PRESSED;
  if (!o.inlet()) return OUT;
  return o.name == "svc" ? UPPER : LOWER;
}

/**
 * @param perStep wanted flow of each opening, cells^3 a step
 * Speeds at an end are scaled so that its links take exactly the wanted flow.
 */
inline Built build(const Body& body, const Grid& g, const std::vector<double>& perStep, bool flat) {
  Built b;
  const int n = g.cells(), columns = (int)g.i.size();
  b.shift.resize((size_t)9 * columns);
  auto neighbour = [&](int q, int e) { return g.column(g.i[q] - (e / 3 - 1), g.j[q] - (e % 3 - 1)); };
  for (int e = 0; e < 9; e++)
    for (int q = 0; q < columns; q++) {
      const int m = neighbour(q, e);
      b.shift[(size_t)e * columns + q] = m < 0 ? 0 : g.middle[m] - g.middle[q];
    }
  b.where = g.columnOf;
  b.sponge.assign(n, 0);
  b.inside.assign(n, 1);
  std::vector<int> edge;
  std::vector<Link> links;
  for (int c = 0; c < n; c++) {
    const int q = g.columnOf[c], k = c - g.middle[q];
    for (const Opening& o : body.openings) {
      double s;
      const double beyond = o.beyond(g.x(q), g.y(q), s);
      if (std::fabs(s) >= o.width || beyond <= 0 || beyond > o.extension + o.width) continue;
      b.inside[c] = 0;
      // rises over one diameter, then full for the last fifth of one
      const double rise = (beyond - (o.extension - 1.2 * o.width)) / o.width;
      if (!o.inlet() && rise > 0) b.sponge[c] = (uint8_t)(255 * std::min(1., rise));
    }
    const size_t before = links.size();
    for (int d = 0; d < 27; d++)
      if (g.cell(neighbour(q, d / 3), k - (d % 3 - 1)) < 0) links.push_back({c, d, 0, 0, 0});
    if (links.size() == before) continue;
    b.where[c] = -1 - (int)edge.size();
    edge.push_back(c);
  }
#pragma omp parallel for schedule(dynamic, 1024)
  for (size_t l = 0; l < links.size(); l++) links[l] = cutLink(body, g, links[l].cell, links[l].direction, flat);

  std::vector<double> drawn(body.openings.size(), 0);
  for (const Link& l : links)
    if (l.opening >= 0) drawn[l.opening] += std::fabs(6 * weight(l.direction) * l.along);
  const int edges = (int)edge.size();
  int walls = 0, ends = 0;
  for (const Link& l : links) l.opening < 0 ? walls++ : ends++;
  b.around.resize((size_t)27 * edges);
  auto from = [&](int c, int d) {
    const int q = g.columnOf[c];
    return g.cell(neighbour(q, d / 3), c - g.middle[q] - (d % 3 - 1));
  };
  for (int e = 0; e < edges; e++)
    for (int d = 0; d < 27; d++) {
      const int m = from(edge[e], d);
      if (m >= 0) b.around[(size_t)d * edges + e] = d * n + m;
    }
  for (const Link& l : links) {
    const int c = l.cell, d = l.direction, back = 26 - d;
    int& place = b.around[(size_t)d * edges + (-1 - b.where[c])];
    if (l.opening >= 0) {
      const Opening& o = body.openings[l.opening];
      const double scale = drawn[l.opening] > 0 ? perStep[l.opening] / drawn[l.opening] : 0;
      place = 27 * n + walls + (int)b.end.size();
      b.end.push_back({c, d, (float)(6 * weight(d) * l.along * scale), kindOf(o)});
      continue;
    }
    place = 27 * n + (int)b.wall.size();
    const float q = (float)l.part;
    const int behind = from(c, back);
    if (q >= 0.5f) b.wall.push_back({back * n + c, d * n + c, 1 / (2 * q), 1 - 1 / (2 * q)});
    else if (behind >= 0) b.wall.push_back({back * n + c, back * n + behind, 2 * q, 1 - 2 * q});
    else b.wall.push_back({back * n + c, back * n + c, 1, 0});
  }
  return b;
}

/** At rest, with a trace of noise so that symmetry can break. */
inline std::vector<float> restState(int cells, int links, double noise) {
  std::vector<float> f((size_t)27 * cells + links, 0.f);
  uint32_t seed = 7;
  auto next = [&] { return (float)((seed = seed * 1664525u + 1013904223u) * (2. / 4294967296.) - 1); };
  for (int c = 0; c < cells; c++) {
    const float v[3] = {(float)noise * next(), (float)noise * next(), (float)noise * next()};
    for (int d = 0; d < 27; d++) {
      int x, y, z;
      direction(d, x, y, z);
      f[(size_t)d * cells + c] = 3 * weight(d) * (x * v[0] + y * v[1] + z * v[2]);
    }
  }
  return f;
}

inline Lattice makeLattice(const Built& b, const Grid& g, double viscosity, double spongeRise, double noise) {
  Lattice l = {};
  l.cells = g.cells();
  l.columns = (int)g.i.size();
  l.walls = (int)b.wall.size();
  l.ends = (int)b.end.size();
  l.edges = (int)(b.around.size() / 27);
  const std::vector<float> rest = restState(l.cells, l.walls + l.ends, noise);
  l.now = put(rest);
  l.next = room<float>(rest.size());
  l.where = put(b.where);
  l.shift = put(b.shift);
  l.around = put(b.around);
  l.wall = put(b.wall);
  l.end = put(b.end);
  l.sponge = put(b.sponge);
  l.inside = put(b.inside);
  l.macro = room<Macro>(l.cells);
  l.viscosity = (float)viscosity;
  l.spongeRise = (float)spongeRise;
  return l;
}
