// Cumulant collision (Geier, Schoenherr, Pasquali, Krafczyk 2015), rates above second order 1. Every moment is carried as its
// deviation from the fluid at rest, so that single precision does.
#pragma once
#include "lattice.h"

/** One dimension of the way back from central moments 0, 1, 2 to distributions -1, 0, 1; K is the rest state's density. */
HD void toDistributions(float& a, float& b, float& c, float K, float u) {
  const float k0 = a, k1 = b, k2 = c;
  b = k0 * (1 - u * u) - K * u * u - 2 * u * k1 - k2;
  a = 0.5f * ((k0 + K) * (u * u - u) + k1 * (2 * u - 1) + k2);
  c = 0.5f * ((k0 + K) * (u * u + u) + k1 * (2 * u + 1) + k2);
}

/** What streams into a cell. */
HD void gather(const Lattice& l, const float* f, int c, float* g) {
  const int n = l.cells, at = l.where[c];
  int shift[9];
#pragma unroll
  for (int e = 0; e < 9; e++) shift[e] = at >= 0 ? l.shift[e * l.columns + at] : 0;
#pragma unroll
  for (int d = 0; d < 27; d++) {
    const int from = at >= 0 ? d * n + c + shift[d / 3] - (d % 3 - 1) : l.around[d * l.edges - 1 - at];
    g[d] = f[from];
  }
}

/** Second-order central moments (deviations of the diagonal ones), velocity and strain rates of a cell. */
struct Moments {
  float r, rho, over, ux, uy, uz, xx, yy, zz, xy, xz, yz, rate, dx, dy, dz;
};

HD Moments moments(const Lattice& l, const float* g, int c) {
  Moments m = {};
  float mx = 0, my = 0, mz = 0;
#pragma unroll
  for (int d = 0; d < 27; d++) {
    const int x = d / 9 - 1, y = (d / 3) % 3 - 1, z = d % 3 - 1;
    const float v = g[d];
    m.r += v;
    if (x) { mx += x * v; m.xx += v; }
    if (y) { my += y * v; m.yy += v; }
    if (z) { mz += z * v; m.zz += v; }
    if (x && y) m.xy += x * y * v;
    if (x && z) m.xz += x * z * v;
    if (y && z) m.yz += y * z * v;
  }
  m.rho = 1 + m.r;
  m.over = 1 / m.rho;
  m.ux = mx * m.over;
  m.uy = my * m.over;
  m.uz = mz * m.over;
  m.xx -= mx * m.ux;
  m.yy -= my * m.uy;
  m.zz -= mz * m.uz;
  m.xy -= mx * m.uy;
  m.xz -= mx * m.uz;
  m.yz -= my * m.uz;
  const float level = l.sponge[c] * (1.f / 255);
  m.rate = 1 / (3 * l.viscosity * (1 + l.spongeRise * level * level) + 0.5f);
  m.dx = -0.5f * m.over * (m.rate * (2 * m.xx - m.yy - m.zz) + (m.xx + m.yy + m.zz - m.r));
  m.dy = m.dx + 1.5f * m.rate * m.over * (m.xx - m.yy);
  m.dz = m.dx + 1.5f * m.rate * m.over * (m.xx - m.zz);
  return m;
}

/** Density, velocity and, over the viscosity, the power dissipated in a cell. */
HD float look(const Lattice& l, const float* f, int c) {
  float g[27];
  gather(l, f, c, g);
  const Moments m = moments(l, g, c);
  l.macro[c] = {m.r, m.ux, m.uy, m.uz};
  const float s = -3 * m.rate * m.over, xy = s * m.xy, xz = s * m.xz, yz = s * m.yz;
  return 2 * (m.dx * m.dx + m.dy * m.dy + m.dz * m.dz) + xy * xy + xz * xz + yz * yz;
}

HD void collide(const Lattice& l, const float* f, float* to, int c) {
  float h[27];
  gather(l, f, c, h);
  const Moments m = moments(l, h, c);
  const float ux2 = m.ux * m.ux * m.dx, uy2 = m.uy * m.uy * m.dy, uz2 = m.uz * m.uz * m.dz, keep = 1 - m.rate, over = m.over;
  const float A = keep * (m.xx - m.yy) - 3 * m.rho * (1 - 0.5f * m.rate) * (ux2 - uy2);
  const float B = keep * (m.xx - m.zz) - 3 * m.rho * (1 - 0.5f * m.rate) * (ux2 - uz2);
  const float T = m.r - 1.5f * m.rho * (ux2 + uy2 + uz2);
  const float a = (A + B + T) / 3, b = a - A, e = a - B;
  const float xy = keep * m.xy, xz = keep * m.xz, yz = keep * m.yz, third = 1.f / 3, ninth = 1.f / 9, r = m.r;
#pragma unroll
  for (int d = 0; d < 27; d++) h[d] = 0;
  // order in h: powers 0..2 of x, y, z
  h[0] = r;
  h[18] = a; h[6] = b; h[2] = e;
  h[12] = xy; h[10] = xz; h[4] = yz;
  h[22] = ((third + a) * yz + 2 * xy * xz) * over;
  h[16] = ((third + b) * xz + 2 * xy * yz) * over;
  h[14] = ((third + e) * xy + 2 * xz * yz) * over;
  h[24] = ((a + b) * third + a * b + 2 * xy * xy - r * ninth) * over;
  h[20] = ((a + e) * third + a * e + 2 * xz * xz - r * ninth) * over;
  h[8] = ((b + e) * third + b * e + 2 * yz * yz - r * ninth) * over;
  const float mixed = (h[8] + h[20] + h[24]) * third + (a + b + e) * ninth + a * h[8] + b * h[20] + e * h[24] +
    4 * (yz * h[22] + xz * h[16] + xy * h[14]);
  const float less = 2 * ((a + b + e) * ninth + (a * b + b * e + a * e) * third + a * b * e) + 16 * xy * xz * yz +
    4 * (xz * xz * (third + b) + yz * yz * (third + a) + xy * xy * (third + e));
  h[26] = (mixed - (less - r * (1 - r) / 27) * over) * over;
  // back along x, then y, then z
#pragma unroll
  for (int y = 0; y < 3; y++)
#pragma unroll
    for (int z = 0; z < 3; z++)
      toDistributions(h[y * 3 + z], h[9 + y * 3 + z], h[18 + y * 3 + z],
        (y == 1 || z == 1) ? 0.f : (y == 2 ? third : 1.f) * (z == 2 ? third : 1.f), m.ux);
#pragma unroll
  for (int x = 0; x < 3; x++)
#pragma unroll
    for (int z = 0; z < 3; z++)
      toDistributions(h[x * 9 + z], h[x * 9 + 3 + z], h[x * 9 + 6 + z],
        z == 1 ? 0.f : (x == 1 ? 2.f / 3 : 1.f / 6) * (z == 2 ? third : 1.f), m.uy);
#pragma unroll
  for (int x = 0; x < 3; x++)
#pragma unroll
    for (int y = 0; y < 3; y++)
      toDistributions(h[x * 9 + y * 3], h[x * 9 + y * 3 + 1], h[x * 9 + y * 3 + 2],
        (x == 1 ? 2.f / 3 : 1.f / 6) * (y == 1 ? 2.f / 3 : 1.f / 6), m.uz);
#pragma unroll
  for (int d = 0; d < 27; d++) to[d * l.cells + c] = h[d];
}
