// What is read while the flow runs: energy through each opening of the project, dissipation, shares; and their scatter.
#pragma once
#include "tracers.h"

/** Cells about each opening's plane, each with its part of a slab three cells thick. */
struct Slabs {
  struct One {
    int *cell, count;
    float* part;
  };
  std::vector<One> of;
};

inline Slabs makeSlabs(const Body& body, const Grid& g) {
  Slabs slabs;
  const double dx = g.dx;
  for (const Opening& o : body.openings) {
    std::vector<int> cell;
    std::vector<float> part;
    for (int c = 0; c < g.cells(); c++) {
      const double x = g.x(g.columnOf[c]), y = g.y(g.columnOf[c]), z = g.z(c);
      double s;
      if (std::fabs(o.beyond(x, y, s)) > 2.6 * dx || std::fabs(s) > o.width) continue;
      int in = 0;
      for (int e = 0; e < 216; e++) {
        const double xe = x + ((e % 6) - 2.5) / 6 * dx, ye = y + ((e / 6) % 6 - 2.5) / 6 * dx, ze = z + (e / 36 - 2.5) / 6 * dx;
        in += std::fabs(o.beyond(xe, ye, s)) < 1.5 * dx && body.lumen(xe, ye) > ze * ze;
      }
      if (in == 0) continue;
      cell.push_back(c);
      part.push_back(in / 216.f);
    }
    slabs.of.push_back({put(cell), (int)cell.size(), put(part)});
  }
  return slabs;
}

/** Of an opening: weight, p, flow out, p times flow, kinetic energy times flow; lattice units. */
constexpr int TERMS = 5;

/** Sums over one stretch of time: TERMS for each opening, then dissipation over viscosity. */
using Sums = std::vector<double>;

inline void read(const Lattice& l, const Body& body, const Slabs& slabs, double* sums) {
  const float* f = l.now;
  const int count = (int)body.openings.size();
  sumInto<1>(l.cells, [=] LAMBDA(int c, double* term) {
    const float lost = look(l, f, c);
    if (l.inside[c]) term[0] += lost;
  }, sums + TERMS * count);
  for (int a = 0; a < count; a++) {
    const Slabs::One slab = slabs.of[a];
    const float nx = (float)body.openings[a].nx, ny = (float)body.openings[a].ny;
    const Macro* macro = l.macro;
    sumInto<TERMS>(slab.count, [=] LAMBDA(int e, double* term) {
      const Macro m = macro[slab.cell[e]];
      const double w = slab.part[e], out = w * (1 + m.r) * (m.x * nx + m.y * ny), p = m.r / 3.;
      term[0] += w;
      term[1] += w * p;
      term[2] += out;
      term[3] += p * out;
      term[4] += 0.5 * ((double)m.x * m.x + (double)m.y * m.y + (double)m.z * m.z) * out;
    }, sums + TERMS * a);
  }
}

struct OpeningReading {
  double flow, total, still, kinetic; // mL/s, Pa flux-weighted, Pa, over the mean speed's head
};
struct Reading {
  double power, drop, dissipated; // mW, mmHg, mW
  std::vector<OpeningReading> at;
};

/** Units of a run: m/s and m for one lattice unit. */
struct Units {
  double speed, length, density;
};

/**
 * Power: what enters by the veins less what leaves by the lungs; blood through a fenestration counts as it entered below.
 * Drop: lower vein to the lungs, weighted by their flow. Total pressures are weighted by the flow of each moment.
 */
inline Reading evaluate(const Body& body, const Sums& s, double readings, double viscosity, Units u) {
  Reading r = {};
  const double pascal = u.density * u.speed * u.speed;
  double lungs = 0, leaving = 0, below = 0, hole = 0;
  for (size_t a = 0; a < body.openings.size(); a++) {
    const Opening& o = body.openings[a];
    const double* t = &s[TERMS * a];
    const double flow = t[2] / readings / 3 * u.speed * u.length * u.length, head = 0.5 * u.density * std::pow(o.flow / o.area(), 2);
    const double total = t[2] != 0 ? (t[3] + t[4]) / t[2] * pascal : 0;
    r.at.push_back({flow * 1e6, total, t[0] > 0 ? t[1] / t[0] * pascal : 0, t[2] != 0 && head > 0 ? t[4] / t[2] * pascal / head : 0});
    if (o.inlet()) r.power += o.flow * total;
    if (o.name == "ivc") below = total;
    if (o.name == "fenestration") hole = o.flow;
    if (o.lung()) {
      r.power -= o.flow * total;
      lungs += o.flow;
      leaving += o.flow * total;
    }
  }
  r.power = (r.power - hole * below) * 1e3;
  r.drop = lungs > 0 ? (below - leaving / lungs) / 133.322387 : 0;
  r.dissipated = s[TERMS * body.openings.size()] / readings * viscosity * u.density * std::pow(u.speed, 3) * u.length * u.length * 1e3;
  return r;
}

/** Standard error of a mean over the mean, from batches of `size` windows; 1 when there are fewer than three. */
inline double scatter(const std::vector<double>& windows, int size) {
  std::vector<double> batch;
  for (size_t at = 0; at + size <= windows.size(); at += size) {
    double sum = 0;
    for (int k = 0; k < size; k++) sum += windows[at + k];
    batch.push_back(sum / size);
  }
  const size_t n = batch.size();
  if (n < 3) return 1;
  double mean = 0, square = 0;
  for (double b : batch) mean += b / n;
  for (double b : batch) square += (b - mean) * (b - mean);
  return std::sqrt(square / (n - 1) / n) / std::max(1e-12, std::fabs(mean));
}
