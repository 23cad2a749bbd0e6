// Blood through a pathway in three dimensions: solver BODY NAME key=value ... prints one JSON line. Sparse D3Q27, one source for
// nvcc -O3 -arch=sm_90 --extended-lambda main.cu and for g++ -x c++ -O3 -march=native -fopenmp main.cu.
#include "build.h"
#include "collide.h"
#include "readings.h"
#include <chrono>

const std::map<std::string, double> STANDARD = {
  {"dx", 0.3},          // mm
  {"peak", 0.08},       // lattice speed of the fastest opening's peak
  {"nu", 3.088e-6},     // m2/s
  {"rho", 1060},        // kg/m3
  {"sponge", 60},       // times the viscosity at the lungs' outer ends
  {"noise", 1e-3},      // of the peak, at the start
  {"flat", 0},          // 1: the veins come in with one speed all over
  {"pulse", 0},         // part by which all flows swing
  {"period", 1},        // s
  {"every", 40},        // steps from reading to reading
  {"tracers", 8000},    // for each vein
  // in flush times (the body's volume over the veins' flow): full flow, first averaged, averaged at least and at most
  {"ramp", 1}, {"settle", 3}, {"least", 3}, {"most", 6},
  {"first", 0},         // vein that comes in a ramp and a half before the other: 1 the lower, -1 the upper, 0 both together
  {"tolerance", 0.012}, // standard error of power and drop at which averaging may end
  {"flush", 0},         // s; 0: as above
  {"ivc", 0}, {"svc", 0}, {"left", 0}, {"right", 0}, {"fenestration", 0}, // mL/s
};

struct Run {
  Body body;
  Grid grid;
  Lattice lattice;
  Units units;
  double dt, flush;
};

static Run prepare(const std::string& path, const Options& o) {
  Body body(path);
  double fastest = 0, in = 0;
  for (Opening& p : body.openings) {
    p.flow = o[p.name.c_str()] * 1e-6;
    if (p.inlet()) in += p.flow;
    fastest = std::max(fastest, (p.name == "fenestration" ? 1.7 : 2) * p.flow / p.area());
  }
  Grid grid = makeGrid(body, o["dx"]);
  const double length = o["dx"] * 1e-3, dt = o["peak"] * length / fastest;
  std::vector<double> perStep;
  for (const Opening& p : body.openings) perStep.push_back(p.flow * dt / (length * length * length));
  const Built built = build(body, grid, perStep, o["flat"] > 0);
  const double viscosity = o["nu"] * dt / (length * length);
  double volume = 0;
  for (uint8_t inside : built.inside) volume += inside * length * length * length;
  const Lattice lattice = makeLattice(built, grid, viscosity, std::max(0., std::min(o["sponge"], 0.15 / viscosity) - 1), o["noise"] * o["peak"]);
  return {std::move(body), std::move(grid), lattice, {length / dt, length, o["rho"]}, dt, o["flush"] > 0 ? o["flush"] : volume / in};
}

static void step(Lattice& l, Flowing flowing) {
  const Lattice at = l;
  each(at.walls + at.ends, [=] LAMBDA(int e) {
    const float* f = at.now;
    float came;
    if (e < at.walls) {
      const WallLink w = at.wall[e];
      came = w.near * f[w.first] + w.far * f[w.second];
    } else came = fromEnd(at, f, at.end[e - at.walls], flowing);
    at.now[(size_t)27 * at.cells + e] = came;
  });
  each(at.cells, [=] LAMBDA(int c) { collide(at, at.now, at.next, c); });
  std::swap(l.now, l.next);
}

/** Parts of full flow at a time: how each vein comes in, and what leaves in step with both. */
static Flowing flowingAt(double t, const Run& r, const Options& o) {
  const double ramp = o["ramp"] * r.flush, late = 1.5 * ramp, first = o["first"];
  auto risen = [&](double since) { return since <= 0 ? 0 : since < ramp ? 0.5 * (1 - cos(M_PI * since / ramp)) : 1; };
  const double swing = 1 + o["pulse"] * sin(2 * M_PI * t / o["period"]);
  const double lower = swing * risen(first < 0 ? t - late : t), upper = swing * risen(first > 0 ? t - late : t);
  const double in = o["ivc"] + o["svc"];
  return {{0, (float)lower, (float)upper, (float)((lower * o["ivc"] + upper * o["svc"]) / in)}};
}

struct Course {
  std::vector<double> power, drop;
  std::vector<std::vector<int>> exits;
  Sums total;
  double readings = 0, seconds = 0;
  bool blown = false;
};

static Course follow(Run& r, const Options& o) {
  const double T = r.flush, settle = o["settle"] * T, least = settle + o["least"] * T, most = settle + o["most"] * T;
  const int every = (int)o["every"], size = TERMS * (int)r.body.openings.size() + 1;
  // windows: an eighth of a flush, or one period of a pulse
  const double window = o["pulse"] > 0 ? o["period"] : T / 8;
  const int batch = std::max(1, (int)std::lround(T / window));
  const Slabs slabs = makeSlabs(r.body, r.grid);
  const Passage passage = makePassage(r.body, r.grid, r.units.speed);
  const std::vector<Tracer> tracers = makeTracers(r.body, (int)o["tracers"], settle - 2.2 * T, settle - 1.2 * T);
  Tracer* moving = put(tracers);
  int* exits = room<int>(6);
  double* sums = room<double>(size);
  const Sums nought(size, 0);
  Course course;
  course.total = nought;
  Sums host(size), inWindow(size, 0);
  double windowEnd = settle + window, inCount = 0;
  bool counting = false;
  for (int64_t s = 0;; s++) {
    const double t = s * r.dt;
    if (s % every == 0) {
      put(sums, nought.data(), size);
      read(r.lattice, r.body, slabs, sums);
      const Macro* macro = r.lattice.macro;
      const float now = (float)t;
      each((int)tracers.size(), [=] LAMBDA(int a) { advance(passage, macro, moving[a], (float)every, now, exits); });
      get(host.data(), sums, size);
      if (!(std::fabs(host[2]) < 1e12) || !(host[size - 1] < 1e12)) {
        course.blown = true;
        return course;
      }
      if (t >= settle && !counting) {
        counting = true;
        const int none[6] = {};
        put(exits, none, 6);
      }
      if (counting) {
        for (int k = 0; k < size; k++) inWindow[k] += host[k];
        inCount++;
      }
      if (t >= windowEnd) {
        const Reading part = evaluate(r.body, inWindow, inCount, r.lattice.viscosity, r.units);
        course.power.push_back(part.power);
        course.drop.push_back(part.drop);
        std::vector<int> left(6);
        get(left.data(), exits, 6);
        course.exits.push_back(left);
        for (int k = 0; k < size; k++) course.total[k] += inWindow[k];
        course.readings += inCount;
        course.seconds = t - settle;
        inWindow = nought;
        inCount = 0;
        windowEnd += window;
        const double unsure = std::max(scatter(course.power, batch), scatter(course.drop, batch));
        if (t >= most || (t >= least && unsure < o["tolerance"])) return course;
      }
    }
    step(r.lattice, flowingAt(t, r, o));
  }
}

static void print(const std::string& name, const Run& r, const Course& c, const Options& o, double wall) {
  const Reading mean = evaluate(r.body, c.total, c.readings, r.lattice.viscosity, r.units);
  const double steps = (c.seconds + o["settle"] * r.flush) / r.dt;
  printf("{\"name\":\"%s\",\"dx\":%g,\"cells\":%d,\"peak\":%g,\"dt\":%.5g,\"flush\":%.5g,\"averaged\":%.5g,\"power\":%.6g,\"drop\":%.6g,\"dissipated\":%.6g",
    name.c_str(), r.grid.dx, r.lattice.cells, o["peak"], r.dt, r.flush, c.seconds, mean.power, mean.drop, mean.dissipated);
  printf(",\"openings\":{");
  for (size_t a = 0; a < mean.at.size(); a++) {
    const OpeningReading& p = mean.at[a];
    printf("%s\"%s\":{\"flow\":%.5g,\"total\":%.6g,\"still\":%.6g,\"kinetic\":%.5g}", a ? "," : "", r.body.openings[a].name.c_str(), p.flow, p.total, p.still, p.kinetic);
  }
  printf("},\"windows\":{\"power\":[");
  for (size_t k = 0; k < c.power.size(); k++) printf("%s%.5g", k ? "," : "", c.power[k]);
  printf("],\"drop\":[");
  for (size_t k = 0; k < c.drop.size(); k++) printf("%s%.5g", k ? "," : "", c.drop[k]);
  printf("],\"exits\":[");
  for (size_t k = 0; k < c.exits.size(); k++) {
    printf("%s[", k ? "," : "");
    for (int e = 0; e < 6; e++) printf("%s%d", e ? "," : "", c.exits[k][e]);
    printf("]");
  }
  printf("]},\"wall\":%.1f,\"millionUpdatesPerSecond\":%.0f}\n", wall, steps * r.lattice.cells / wall * 1e-6);
}

int main(int argc, char** argv) {
  if (argc < 3) stop("use: solver BODY NAME key=value ...");
  const Options options(argc, argv, 3, STANDARD);
  auto clock = [] { return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count(); };
  const double begin = clock();
  Run run = prepare(argv[1], options);
  const double built = clock();
  fprintf(stderr, "%s: %d cells, %d edges, %d walls, %d ends, dt %.3g s, flush %.3g s, viscosity %.3g, built in %.1f s\n", argv[2], run.lattice.cells,
    run.lattice.edges, run.lattice.walls, run.lattice.ends, run.dt, run.flush, run.lattice.viscosity, built - begin);
  const Course course = follow(run, options);
  if (course.blown) {
    fprintf(stderr, "%s: blown up\n", argv[2]);
    return 2;
  }
  print(argv[2], run, course, options, clock() - built);
  return 0;
}
