// The body: z^2 < F(x, y), F on a grid in the project's plane, and its openings, each with a straight round extension.
#pragma once
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <map>
#include <string>
#include <vector>

struct Opening {
  std::string name;
  double x, y, nx, ny, width, extension, flow; // mm, m3/s
  bool inlet() const { return name == "ivc" || name == "svc"; }
  bool lung() const { return name == "left" || name == "right"; }
  /** The lung's outlet on the right holds the pressure; all others hold their flow. */
  bool pressed() const { return name == "right"; }
  double area() const { return M_PI / 4 * width * width * 1e-6; }
  /** mm beyond the opening's plane, and across from its middle */
  double beyond(double px, double py, double& across) const {
    across = (py - y) * nx - (px - x) * ny;
    return (px - x) * nx + (py - y) * ny;
  }
  bool pastEnd(double px, double py) const {
    double across, b = beyond(px, py, across);
    return b >= extension && b < extension + 2 * width && std::fabs(across) < width;
  }
};

[[noreturn]] inline void stop(const std::string& fault) {
  fprintf(stderr, "%s\n", fault.c_str());
  exit(1);
}

struct Body {
  int nx, ny;
  double h, x0, y0, scale;
  std::vector<int16_t> value;
  std::vector<Opening> openings;

  explicit Body(const std::string& path) {
    int count;
    FILE* f = fopen((path + ".meta").c_str(), "r");
    if (!f || fscanf(f, "%d %d %lf %lf %lf %lf %d", &nx, &ny, &h, &x0, &y0, &scale, &count) != 7)
      stop(path + ".meta: found no body; allowed: nx ny step x0 y0 scale and the number of openings");
    for (int a = 0; a < count; a++) {
      char name[32];
      Opening o = {};
      if (fscanf(f, "%31s %lf %lf %lf %lf %lf %lf", name, &o.x, &o.y, &o.nx, &o.ny, &o.width, &o.extension) != 7)
        stop(path + ".meta: opening " + std::to_string(a + 1) + " is cut short");
      o.name = name;
      openings.push_back(o);
    }
    fclose(f);
    value.resize((size_t)nx * ny);
    f = fopen((path + ".i16").c_str(), "rb");
    if (!f || fread(value.data(), 2, value.size(), f) != value.size()) stop(path + ".i16: shorter than its .meta says");
    fclose(f);
  }
  /** F, mm2, bilinear */
  double lumen(double x, double y) const {
    double a = (x - x0) / h, b = (y - y0) / h;
    const int i = (int)std::floor(a), j = (int)std::floor(b);
    if (i < 0 || j < 0 || i >= nx - 1 || j >= ny - 1) return -1e3;
    a -= i;
    b -= j;
    const int16_t* p = &value[(size_t)j * nx + i];
    return scale * ((1 - a) * (1 - b) * p[0] + a * (1 - b) * p[1] + (1 - a) * b * p[nx] + a * b * p[nx + 1]);
  }
  bool pastEnd(double x, double y) const {
    for (const Opening& o : openings)
      if (o.pastEnd(x, y)) return true;
    return false;
  }
};

/** key=value of the command line, all of them numbers. */
struct Options {
  std::map<std::string, double> of;
  Options(int argc, char** argv, int from, std::map<std::string, double> standard) : of(std::move(standard)) {
    for (int a = from; a < argc; a++) {
      const std::string text = argv[a];
      const size_t e = text.find('=');
      if (e == std::string::npos || !of.count(text.substr(0, e))) {
        std::string keys;
        for (auto& k : of) keys += " " + k.first;
        stop("argument '" + text + "': allowed are key=number with keys" + keys);
      }
      of[text.substr(0, e)] = atof(text.c_str() + e + 1);
    }
  }
  double operator[](const char* key) const { return of.at(key); }
};
