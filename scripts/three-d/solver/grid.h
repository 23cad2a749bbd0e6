// Cells of a body. The body is even in z, so each column of the plane is one run of cells about its middle.
#pragma once
#include "body.h"
#include "lattice.h"

struct Grid {
  int nx, ny;
  double dx, x0, y0; // mm
  /** column at a place of the plane, or -1 */
  std::vector<int> columnAt;
  /** of each column: place, index of the first cell above the plane, half its height in cells */
  std::vector<int> i, j, middle, half;
  std::vector<int> columnOf; // of each cell
  int cells() const { return (int)columnOf.size(); }
  int column(int a, int b) const { return a < 0 || b < 0 || a >= nx || b >= ny ? -1 : columnAt[(size_t)b * nx + a]; }
  double x(int column) const { return x0 + i[column] * dx; }
  double y(int column) const { return y0 + j[column] * dx; }
  double z(int cell) const { return (cell - middle[columnOf[cell]] + 0.5) * dx; }
  /** cell of a column at height k (0 is the first above the plane), or -1 */
  int cell(int column, int k) const { return column < 0 || k < -half[column] || k >= half[column] ? -1 : middle[column] + k; }
};

inline Grid makeGrid(const Body& body, double dx) {
  Grid g;
  g.dx = dx;
  g.nx = (int)std::ceil(body.nx * body.h / dx);
  g.ny = (int)std::ceil(body.ny * body.h / dx);
  // off the body's own axes, so that no wall lies along a row of cells
  g.x0 = body.x0 + 0.31 * dx;
  g.y0 = body.y0 + 0.17 * dx;
  std::vector<int> halves((size_t)g.nx * g.ny, 0);
#pragma omp parallel for schedule(dynamic, 8)
  for (int b = 0; b < g.ny; b++)
    for (int a = 0; a < g.nx; a++) {
      const double x = g.x0 + a * dx, y = g.y0 + b * dx, v = body.lumen(x, y);
      if (v > 0 && !body.pastEnd(x, y)) halves[(size_t)b * g.nx + a] = std::max(0, (int)std::ceil(std::sqrt(v) / dx - 0.5));
    }
  // Only what hangs together with the first opening: walls drawn past the cut ends may leave islands.
  const Opening& o = body.openings[0];
  const int a0 = (int)std::lround((o.x - g.x0) / dx), b0 = (int)std::lround((o.y - g.y0) / dx);
  std::vector<char> kept(halves.size(), 0);
  std::vector<std::pair<int, int>> queue = {{a0, b0}};
  kept[(size_t)b0 * g.nx + a0] = 1;
  for (size_t q = 0; q < queue.size(); q++)
    for (const auto& step : {std::pair<int, int>{1, 0}, {-1, 0}, {0, 1}, {0, -1}}) {
      const int a = queue[q].first + step.first, b = queue[q].second + step.second;
      if (a < 0 || b < 0 || a >= g.nx || b >= g.ny) continue;
      const size_t at = (size_t)b * g.nx + a;
      if (halves[at] > 0 && !kept[at]) {
        kept[at] = 1;
        queue.push_back({a, b});
      }
    }
  g.columnAt.assign(halves.size(), -1);
  for (int b = 0; b < g.ny; b++)
    for (int a = 0; a < g.nx; a++) {
      const size_t at = (size_t)b * g.nx + a;
      if (!kept[at] || halves[at] == 0) continue;
      const int column = g.columnAt[at] = (int)g.i.size();
      g.i.push_back(a);
      g.j.push_back(b);
      g.half.push_back(halves[at]);
      g.middle.push_back(g.cells() + halves[at]);
      g.columnOf.insert(g.columnOf.end(), 2 * halves[at], column);
    }
  return g;
}
